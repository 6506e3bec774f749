/** Motion times where the acceleration builds up in time. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CellError } from "../../functions/cells.ts";
import { ARCTIME, MOVETIME } from "../../functions/time.ts";
import { arcLength, arcTime, moveTime, pathTime } from "../../src/time.ts";
import cycles from "../published/cycle-times.json" with { type: "json" };

const near = (value: number, wanted: number): number => Math.abs(value / wanted - 1);
const positiveNumber = (max: number) => fc.double({ min: 0.001, max, noNaN: true });

/**
 * Speeds up in steps of time, the acceleration growing with the jerk until it is full, or until letting off at the same
 * rate would just reach the speed. Answers time and way. Speeds in mm/s.
 */
const speedUp = (from: number, to: number, a: number, ramp: number, dt: number) => {
  const jerk = a / ramp;
  let [v, acc, s, t] = [from, 0, 0, 0];
  while (v < to && t < 1e3) {
    const gained = (acc * acc) / (2 * jerk);
    acc = v + gained < to ? Math.min(a, acc + jerk * dt) : Math.max(jerk * dt, acc - jerk * dt);
    s += v * dt + (acc * dt * dt) / 2;
    v += acc * dt;
    t += dt;
  }
  return { s, t };
};

/** A whole move by {@link speedUp}: the highest speed that leaves room to brake, then the rest at that speed. */
const driveSoftly = (length: number, cap: number, a: number, ramp: number, dt = 2e-6) => {
  let [low, high] = [0, cap];
  let up = speedUp(0, cap, a, ramp, dt);
  if (2 * up.s <= length) return 2 * up.t + (length - 2 * up.s) / cap;
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    up = speedUp(0, middle, a, ramp, dt);
    if (2 * up.s < length) low = middle;
    else high = middle;
  }
  return 2 * up.t;
};

describe("motion times with a ramp of the acceleration (independent): driving in steps of time", () => {
  const cases = [
    { length: 1, feed: 3000, a: 0.5, ramp: 0.1, what: "never at full acceleration" },
    { length: 0.05, feed: 3000, a: 5, ramp: 0.05, what: "half the thickness of a hair, with finer steps", dt: 2e-7 },
    { length: 25, feed: 6000, a: 1, ramp: 0.02, what: "full acceleration, no room for the feed" },
    { length: 60, feed: 3000, a: 1, ramp: 0.02, what: "reaches the feed at full acceleration" },
    { length: 60, feed: 600, a: 2, ramp: 0.1, what: "reaches the feed before the acceleration is full" },
  ];
  for (const { length, feed, a, ramp, what, dt } of cases) {
    it(`${length} mm at ${feed} mm/min, ${a} m/s², ${ramp} s: ${what}`, () =>
      expect(near(moveTime(length, feed, a, ramp), driveSoftly(length, feed / 60, 1000 * a, ramp, dt))).toBeLessThan(
        2e-3,
      ));
  }
  it("a path that flows over its joints, corner by corner", () => {
    const [a, ramp] = [1000, 0.03];
    const moves = [
      { length: 20, feed: 3000 },
      { length: arcLength(2, 1, 0), feed: 3000, radius: 2 },
      { length: 20, feed: 3000 },
    ];
    const arc = Math.sqrt(a * 2);
    const [rise, change] = [speedUp(0, 50, a, ramp, 2e-6), speedUp(arc, 50, a, ramp, 2e-6)];
    const line = rise.t + change.t + (20 - rise.s - change.s) / 50;
    const report = pathTime(moves, { acceleration: 1, rampTime: ramp, joints: "flow" });
    expect(near(report.time, 2 * line + moves[1]!.length / arc)).toBeLessThan(1e-3);
  });
  it("a path of moves without room for their feed: each joint as fast as the way to it allows", () => {
    const [a, ramp, dt] = [1000, 0.03, 5e-7];
    /** The speed to which a speed can be raised over a length, and the time of that: found by halving. */
    const over = (from: number, length: number) => {
      let [low, high] = [from, 100];
      for (let i = 0; i < 30; i++) {
        const middle = (low + high) / 2;
        if (speedUp(from, middle, a, ramp, dt).s < length) low = middle;
        else high = middle;
      }
      return { v: low, t: speedUp(from, low, a, ramp, dt).t };
    };
    const first = over(0, 0.3);
    const peak = over(first.v, 0.2);
    const time = (...lengths: number[]) => {
      const moves = lengths.map((length) => ({ length, feed: 6000 }));
      return pathTime(moves, { acceleration: 1, rampTime: ramp, joints: "flow" }).time;
    };
    // Up in the first, down in the second; with one between, up and down in that as well.
    expect(near(time(0.3, 0.3), 2 * first.t)).toBeLessThan(2e-3);
    expect(near(time(0.3, 0.4, 0.3), 2 * first.t + 2 * peak.t)).toBeLessThan(2e-3);
  });
});

describe("motion times with a ramp of the acceleration (published)", () => {
  const { acceleration, jerk } = cycles.limits;
  it("with a published control's limits a move of 1 mm takes about twice as long as acceleration alone says", () => {
    const ratio = moveTime(1, 3000, acceleration, acceleration / jerk) / moveTime(1, 3000, acceleration);
    expect(ratio).toBeGreaterThan(1.9);
    expect(ratio).toBeLessThan(2.2);
  });
  for (const run of cycles.runs) {
    it(`${cycles.lines} lines at ${run.feed} mm/min, ${run.tolerance} mm: ${run.measured} s lie between no stop and a stop at each line`, () => {
      // equal lines: the paper tells their number and the length of the whole
      const l = ((run.feed / 60) * run.kinematic) / cycles.lines;
      const a = run.feed / 60 / cycles.riseTime / 1000;
      const stop = cycles.lines * moveTime(l, run.feed, a, cycles.rampTime);
      const flow = pathTime(
        Array.from({ length: cycles.lines }, () => ({ length: l, feed: run.feed })),
        { acceleration: a, rampTime: cycles.rampTime, joints: "flow" },
      ).time;
      expect(flow).toBeGreaterThan(run.kinematic);
      expect(run.measured).toBeGreaterThan(flow);
      expect(run.measured).toBeLessThan(stop);
    });
  }
});

describe("motion times with a ramp of the acceleration (identity)", () => {
  const ramp = fc.double({ min: 0.001, max: 0.3, noNaN: true });
  it("nears the time without as the ramp gets shorter, and is never below it", () => {
    fc.assert(
      fc.property(positiveNumber(300), positiveNumber(20_000), positiveNumber(10), ramp, (l, feed, a, tau) => {
        const bare = moveTime(l, feed, a);
        const t = moveTime(l, feed, a, tau);
        expect(t).toBeGreaterThanOrEqual(bare * (1 - 1e-12));
        // two speed changes, each longer by a ramp at the most
        expect(t).toBeLessThanOrEqual(bare + 2 * tau);
        expect(moveTime(l, feed, a, 1.1 * tau)).toBeGreaterThanOrEqual(t * (1 - 1e-12));
        expect(near(moveTime(l, feed, a, 1e-12), bare)).toBeLessThan(1e-6);
        expect(moveTime(1.1 * l, feed, a, tau)).toBeGreaterThan(t);
      }),
    );
  });
  it("has no jump where the shape of the move changes", () => {
    for (const tau of [0.01, 0.1]) {
      let last = 0;
      for (let l = 0.001; l < 80; l *= 1.01) {
        const t = moveTime(l, 3000, 1, tau);
        if (last > 0) expect(t / last).toBeLessThan(1.0101);
        last = t;
      }
    }
  });
  it("a path that stops at its joints is the sum of its moves, arcs at their limit", () => {
    const moves = [
      { length: 30, feed: 2400 },
      { length: arcLength(1, 1, 0), feed: 2400, radius: 1 },
    ];
    const sum = moveTime(30, 2400, 0.5, 0.05) + arcTime(1, 1, 2400, 0.5, 0, 0.05);
    expect(near(pathTime(moves, { acceleration: 0.5, rampTime: 0.05, joints: "stop" }).time, sum)).toBeLessThan(1e-12);
  });
  it("rejects a ramp below nothing, by its name, and takes a blank for none", () => {
    expect((MOVETIME([[1]], [[100]], [[1]], [["mm"]], [[-0.1]])[0]![0] as CellError).message).toMatch(
      /^rampTime is -0.1/,
    );
    expect(MOVETIME([[1]], [[100]], [[1]], [["mm"]], [[null]])).toEqual(MOVETIME([[1]], [[100]], [[1]], [["mm"]]));
    expect(ARCTIME([[4]], [[1]], [[900]], [[1]], [["mm"]], [[0]], [[0.05]])[0]![0]).toBe(
      arcTime(4, 1, 900, 1, 0, 0.05),
    );
  });
});
