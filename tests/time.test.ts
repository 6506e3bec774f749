import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CellError } from "../functions/cells.ts";
import { ARCFEEDLIMIT, ARCTIME, MOVETIME } from "../functions/time.ts";
import { arcFeedLimit, arcLength, arcTime, type Move, moveTime, pathTime } from "../src/time.ts";
import motion from "./published/motion.json" with { type: "json" };

const near = (value: number, wanted: number): number => Math.abs(value / wanted - 1);
const positiveNumber = (max: number) => fc.double({ min: 0.001, max, noNaN: true });

interface Part {
  length?: number;
  radius?: number;
  turns?: number;
  rise?: number;
}
const moveOf = (part: Part, feed: number): Move =>
  part.radius === undefined
    ? { length: part.length!, feed }
    : {
        length: arcLength(part.radius, part.turns!, part.rise ?? 0),
        feed,
        radius: part.radius,
        risePerTurn: part.rise ?? 0,
      };

/**
 * Drives a path in small steps of time: in each, speed up if the brakes would still hold every speed ahead, else slow
 * down. Knows nothing of trapezoids. Speeds in mm/s, accelerations in mm/s²; every move ends at rest.
 */
const drive = (length: number, cap: number, a: number, dt: number): number => {
  let s = 0;
  let v = 0;
  let t = 0;
  while (s < length) {
    const faster = Math.min(cap, v + a * dt);
    const after = s + faster * dt;
    const brake = (faster * faster) / (2 * a);
    if (after + brake <= length) v = faster;
    else {
      const left = length - s;
      v = Math.max(Math.min(v, Math.sqrt(2 * a * left)), a * dt * 1e-3);
    }
    s += v * dt;
    t += dt;
  }
  return t;
};

describe(`motion times (independent): ${motion.source}`, () => {
  for (const c of motion.cases) {
    const parts: Part[] = c.parts;
    const flow = c.joints === "flow";
    it(`${c.name}: time, length, top speed`, () => {
      const moves = parts.map((p) => moveOf(p, c.feed));
      const report = pathTime(moves, {
        acceleration: c.acceleration,
        arcAcceleration: c.towards,
        joints: flow ? "flow" : "stop",
      });
      // the flow-through case is known from speed passes over small pieces only
      expect(near(report.time, c.time)).toBeLessThan(flow ? 1e-8 : 1e-12);
      expect(
        near(
          moves.reduce((l, m) => l + m.length, 0),
          c.length,
        ),
      ).toBeLessThan(1e-12);
      expect(near(Math.max(...report.moves.map((m) => m.reached / 60)), c.peak)).toBeLessThan(1e-12);
    });
    const part = parts[0];
    if (parts.length === 1 && part!.radius === undefined) {
      it(`${c.name}: MOVETIME`, () =>
        expect(near(MOVETIME([[part!.length]], [[c.feed]], [[c.acceleration]], [["mm"]])[0]![0], c.time)).toBeLessThan(
          1e-12,
        ));
    }
    if (parts.length === 1 && part!.radius !== undefined && c.acceleration === c.towards) {
      it(`${c.name}: ARCTIME`, () => {
        const args = [part!.radius, part!.turns, c.feed, c.acceleration].map((x) => [[x]]);
        const rise = part!.rise ?? null;
        const time = ARCTIME(args[0]!, args[1]!, args[2]!, args[3]!, [["mm"]], [[rise]])[0]![0];
        expect(near(time, c.time)).toBeLessThan(1e-12);
      });
    }
  }
});

describe("motion times (independent): driving in steps of time", () => {
  const cases = [
    { length: 7, feed: 900, a: 0.8 },
    { length: 0.2, feed: 6000, a: 3 },
    { length: 120, feed: 12000, a: 1.5 },
    { length: 1.2, feed: 2400, a: 1.3333333 },
  ];
  for (const { length, feed, a } of cases) {
    it(`${length} mm at ${feed} mm/min with ${a} m/s²`, () =>
      expect(near(moveTime(length, feed, a), drive(length, feed / 60, 1000 * a, 1e-6))).toBeLessThan(1e-3));
  }
  it("a helix that the acceleration limits", () => {
    const v = Math.sqrt((500 * (0.6 ** 2 + (1 / (2 * Math.PI)) ** 2)) / 0.6);
    const length = 2.5 * Math.sqrt((2 * Math.PI * 0.6) ** 2 + 1);
    expect(near(arcTime(0.6, 2.5, 3000, 0.5, 1), drive(length, v, 500, 1e-6))).toBeLessThan(1e-3);
  });
});

describe("arcs (independent): a helix walked point by point", () => {
  it("has the length and the curvature of its points", () => {
    const [r, p, n] = [1.3, 1.75, 200_000];
    const at = (i: number) => {
      const u = (2 * Math.PI * i) / n;
      return [r * Math.cos(u), r * Math.sin(u), (p * i) / n] as const;
    };
    let length = 0;
    for (let i = 0; i < n; i++) {
      const [a, b] = [at(i), at(i + 1)];
      length += Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
    }
    expect(near(arcLength(r, 1, p), length)).toBeLessThan(1e-9);
    // curvature from three points: |second difference|/step²
    const k = 200;
    const [a, b, c] = [at(0), at(k), at(2 * k)];
    const step = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
    const bend = Math.hypot(a[0] - 2 * b[0] + c[0], a[1] - 2 * b[1] + c[1], a[2] - 2 * b[2] + c[2]) / step ** 2;
    // v²·curvature = a
    expect(near(arcFeedLimit(r, 2, p) / 60, Math.sqrt(2000 / bend))).toBeLessThan(1e-5);
  });
  it("on a flat arc the limit is √(a·r)", () =>
    expect(ARCFEEDLIMIT([[4]], [[0.4]], [["mm"]])[0]![0]).toBeCloseTo(60 * Math.sqrt(400 * 4), 9));
});

describe("motion times (identity)", () => {
  it("is never under length by feed, never under 2·√(l/a), and meets one of them from above", () => {
    fc.assert(
      fc.property(positiveNumber(500), positiveNumber(20_000), positiveNumber(10), (l, feed, a) => {
        const t = moveTime(l, feed, a);
        const least = Math.max((60 * l) / feed, 2 * Math.sqrt(l / (1000 * a)));
        expect(t).toBeGreaterThanOrEqual(least * (1 - 1e-12));
        expect(t).toBeLessThanOrEqual((60 * l) / feed + 2 * Math.sqrt(l / (1000 * a)));
        expect(moveTime(1.1 * l, feed, a)).toBeGreaterThan(t);
        expect(moveTime(l, 1.1 * feed, a)).toBeLessThanOrEqual(t);
        // with room to spare the acceleration hardly counts: equal to the last digit is allowed
        expect(moveTime(l, feed, 1.1 * a)).toBeLessThanOrEqual(t);
      }),
    );
  });
  it("no distance and no turns take no time", () => {
    expect(moveTime(0, 1000, 1)).toBe(0);
    expect(arcTime(5, 0, 1000, 1, 2)).toBe(0);
    expect(pathTime([], { acceleration: 1, joints: "stop" })).toEqual({ time: 0, programmed: 0, lost: 0, moves: [] });
  });
  it("a rise counts the same up and down", () => expect(arcTime(2, 3, 800, 1, -1.5)).toBe(arcTime(2, 3, 800, 1, 1.5)));
  it("a large arc takes as long as a straight line", () =>
    expect(near(arcTime(1e6, 1e-5, 900, 1, 0), moveTime(2 * Math.PI * 10, 900, 1))).toBeLessThan(1e-12));
  it("a path that stops at its joints is the sum of its moves, one that flows is never slower", () => {
    const move = fc.record(
      { length: positiveNumber(50), feed: fc.double({ min: 10, max: 9000, noNaN: true }), radius: positiveNumber(20) },
      { requiredKeys: ["length", "feed"] },
    );
    fc.assert(
      fc.property(fc.array(move, { minLength: 1, maxLength: 6 }), positiveNumber(5), (moves, a) => {
        const stop = pathTime(moves, { acceleration: a, joints: "stop" });
        const flow = pathTime(moves, { acceleration: a, joints: "flow" });
        let sum = 0;
        for (const m of moves) {
          const cap = m.radius === undefined ? m.feed : Math.min(m.feed, 60 * Math.sqrt(1000 * a * m.radius));
          sum += moveTime(m.length, cap, a);
        }
        expect(near(stop.time, sum)).toBeLessThan(1e-9);
        expect(flow.time).toBeLessThanOrEqual(stop.time * (1 + 1e-12));
        expect(flow.time).toBeGreaterThanOrEqual(flow.programmed * (1 - 1e-12));
        for (const report of [stop, flow]) {
          expect(report.lost).toBeGreaterThanOrEqual(0);
          expect(report.lost).toBeLessThan(1);
          for (const [i, m] of report.moves.entries()) {
            expect(m.time).toBeGreaterThan(0);
            expect(m.reached).toBeLessThanOrEqual(moves[i]!.feed * (1 + 1e-12));
          }
        }
      }),
    );
  });
  it("one line cut in two that flows takes as long as the whole line", () => {
    const whole = moveTime(30, 2400, 1);
    const pieces = [12.5, 17.5].map((length) => ({ length, feed: 2400 }));
    expect(near(pathTime(pieces, { acceleration: 1, joints: "flow" }).time, whole)).toBeLessThan(1e-12);
    // Too short for the feed: at the joint it is what the first half allows.
    const halves = [0.5, 0.5].map((length) => ({ length, feed: 6000 }));
    expect(near(pathTime(halves, { acceleration: 2, joints: "flow" }).time, moveTime(1, 6000, 2))).toBeLessThan(1e-12);
  });
  it("says what keeps the feed down and how much time that costs", () => {
    const report = pathTime(
      [
        { length: 100, feed: 1000 },
        { length: arcLength(0.8, 1, 0), feed: 1500, radius: 0.8 },
        { length: 0.3, feed: 6000 },
      ],
      { acceleration: 0.5, joints: "stop" },
    );
    expect(report.moves.map((m) => m.limitedBy)).toEqual(["feed", "arc", "acceleration"]);
    expect(report.moves[1]!.reached).toBeCloseTo(60 * Math.sqrt(500 * 0.8), 9);
    expect(report.moves[2]!.reached).toBeCloseTo(60 * Math.sqrt(500 * 0.3), 9);
    expect(report.programmed).toBeCloseTo(6 + (60 * 2 * Math.PI * 0.8) / 1500 + 0.003, 12);
    expect(report.lost).toBeCloseTo(1 - report.programmed / report.time, 12);
  });
  it("is the same in inches and g", () => {
    const g = 9.80665;
    const inch = [["in"]];
    const mm = [["mm"]];
    const pairs = [
      [MOVETIME([[25.4]], [[6000]], [[0.5 * g]], mm), MOVETIME([[1]], [[6000 / 25.4]], [[0.5]], inch), 1],
      [
        ARCTIME([[4]], [[1.5]], [[3000]], [[0.1 * g]], mm, [[1.27]]),
        ARCTIME([[4 / 25.4]], [[1.5]], [[3000 / 25.4]], [[0.1]], inch, [[0.05]]),
        1,
      ],
      [ARCFEEDLIMIT([[4]], [[0.1 * g]], mm), ARCFEEDLIMIT([[4 / 25.4]], [[0.1]], inch), 25.4],
    ] as const;
    for (const [metric, inches, factor] of pairs)
      expect(near(inches[0]![0] * factor, metric[0]![0])).toBeLessThan(1e-12);
  });
  it("rejects a feed of zero, a negative distance, a radius of zero, each by its name", () => {
    const message = (block: any[][]) => (block[0]![0] as CellError).message;
    expect(message(MOVETIME([[1]], [[0]], [[1]], [["mm"]]))).toMatch(/^feed is 0/);
    expect(message(MOVETIME([[-1]], [[100]], [[1]], [["mm"]]))).toMatch(/^distance is -1/);
    expect(message(MOVETIME([[1]], [[100]], [[]], [["mm"]]))).toMatch(/^acceleration is blank/);
    expect(message(ARCTIME([[0]], [[1]], [[100]], [[1]], [["mm"]]))).toMatch(/^radius is 0/);
    expect(MOVETIME([[0]], [[100]], [[1]], [["mm"]])[0]![0]).toBe(0);
    expect(() => pathTime([], { acceleration: 1, joints: "glide" as "flow" })).toThrow(/joints/);
  });
});
