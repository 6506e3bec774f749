import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { TradeError } from "../../src/errors.ts";
import { wallLeft } from "../../src/mill/bending.ts";
import { leastLayer } from "../../src/mill/edge.ts";
import { type ThreadCut, threadMillForces } from "../../src/mill/threadforce.ts";
import { passDepths } from "../../src/thread/passes.ts";
import { refusal } from "../refusal.ts";
import { wallsLeft } from "./walls.ts";

describe("what passes of a blunt, springy tool leave (independent)", () => {
  it("agrees with the geometric series of a linear force when the edge is sharp", () => {
    // w = (t + q·a)/(1 + q), q = c·k = 0.4, summed by hand
    const walls = wallsLeft({
      depths: [1, 1, 1, 1],
      flexibility: 0.002,
      layer: 0,
      normalForce: (a, b) => 200 * (b - a),
    });
    walls.forEach((w, i) => {
      expect(w).toBeCloseTo(1 - (0.4 / 1.4) ** (i + 1), 9);
    });
  });
  it("agrees with bisection for a power law with edge force and layer", () => {
    const [c, layer] = [0.0015, 0.004];
    const force = (a: number, b: number) => 90 * (b - a) ** 0.7 + 20 * Math.min(1, (b - a) / layer);
    let a = 0;
    const expected = [0.3, 0.5, 0.6, 0.6, 0.6].map((t) => {
      let [low, high] = [a, t];
      for (let i = 0; i < 200; i++) {
        const m = (low + high) / 2;
        if (m - t + c * force(a, m) < 0) low = m;
        else high = m;
      }
      a = low - layer * (1 - Math.exp(-(low - a) / layer));
      return a;
    });
    const got = wallsLeft({
      depths: [0.3, 0.5, 0.6, 0.6, 0.6],
      flexibility: c,
      layer,
      normalForce: (x, y, edge) => 90 * (y - x) ** 0.7 + 20 * edge,
    });
    got.forEach((w, i) => {
      expect(w).toBeCloseTo(expected[i]!, 8);
    });
  });
  it("stops at a jump of the force, from either side", () => {
    // 100 N more from 0.5 on: below it the tool would go to 0.9, above it back under 0.5
    const jump = (a: number, b: number) => 100 * (b - a) + (b >= 0.5 ? 1000 : 0);
    expect(wallsLeft({ depths: [1], flexibility: 0.001, layer: 0, normalForce: jump })[0]).toBeCloseTo(0.5, 8);
  });
});

describe("how often the force is asked for", () => {
  type Force = (from: number, to: number, edge: number) => number;
  /** Of each pass. */
  const asked = (flexibility: number, layer: number, force: Force, depths: readonly number[]): number[] => {
    let wall = 0;
    return depths.map((depth) => {
      let times = 0;
      const normalForce: Force = (from, to, edge) => {
        times++;
        return force(from, to, edge);
      };
      wall = wallLeft({ flexibility, layer, normalForce }, wall, depth);
      return times;
    });
  };
  it("twice for a force that grows with the depth: at the full depth, and where the line between is nothing", () => {
    expect(asked(0.001, 0, (a, b) => 250 * (b - a), [1, 1, 1.2])).toEqual([2, 2, 2]);
    expect(asked(0.001, 0, (a, b) => -500 * (b - a), [1])).toEqual([2]);
  });
  // halving the way thirty times would come as near: 2^−30 of it
  it("less than half as often as by halving, for a power law with an edge force and a layer", () => {
    const force: Force = (a, b, edge) => 90 * (b - a) ** 0.7 + 20 * edge;
    for (const [flexibility, layer] of [
      [0.0015, 0.004],
      [0.01, 0.02],
      [0.1, 0.004],
      [0.0005, 0.05],
    ] as const)
      expect(Math.max(...asked(flexibility, layer, force, [0.3, 0.5, 0.5, 0.52]))).toBeLessThanOrEqual(12);
  });
  it("hardly more often than by halving where the force jumps", () =>
    expect(asked(0.001, 0, (a, b) => 100 * (b - a) + (b >= 0.5 ? 1000 : 0), [1])[0]).toBeLessThanOrEqual(35));
});

describe("what passes of a blunt, springy tool leave (identity)", () => {
  it("is the programmed depth less the full layer with a rigid tool, and all of it after spring passes", () => {
    const rigid = { flexibility: 0, layer: 0.01, normalForce: () => 1000 };
    expect(wallsLeft({ ...rigid, depths: [0.5] })[0]).toBeCloseTo(0.49, 12);
    const many = wallsLeft({ ...rigid, depths: Array.from({ length: 40 }, () => 0.5) });
    expect(0.5 - many.at(-1)!).toBeLessThan(0.001);
    expect(0.5 - many.at(-1)!).toBeGreaterThan(0);
  });
  it("leaves the wall where a pass does not reach it", () =>
    expect(wallsLeft({ depths: [0.5, 0.4], flexibility: 0, layer: 0, normalForce: () => 0 })).toEqual([0.5, 0.5]));
  it("never asks for the force at the wall itself", () => {
    wallsLeft({
      depths: [0.2, 0.2, 0.2],
      flexibility: 0.01,
      layer: 0.002,
      normalForce: (a, b, edge) => {
        if (!(b > a)) throw new Error("asked at the wall");
        expect(edge).toBeGreaterThan(0);
        return 300 * edge;
      },
    });
  });
  it("is pulled in by twice the pass at the most where no depth is named: the pass, not the whole depth", () => {
    // the first pass cuts without force to 1; the second is pulled in for ever: from 1 to 1.5, so no deeper than 2
    const pulled = wallsLeft({
      depths: [1, 1.5],
      flexibility: 0.001,
      layer: 0,
      normalForce: (a) => (a > 0.5 ? -1e9 : 0),
    });
    expect(pulled).toEqual([1, 2]);
  });
  it("refuses a negative flexibility, layer or depth by its name", () => {
    const fine = { depths: [1], flexibility: 0.001, layer: 0.001, normalForce: () => 10 };
    expect(refusal(() => wallsLeft({ ...fine, flexibility: -1e-6 }))).toMatch(/flexibility is/);
    expect(refusal(() => wallsLeft({ ...fine, layer: -1e-6 }))).toMatch(/layer is/);
    expect(refusal(() => wallsLeft({ ...fine, depths: [1, -0.1] }))).toMatch(/depth is/);
  });
  it("goes deeper than programmed when the force pulls in, and no further than it is let", () => {
    const pull = (k: number, deepest?: number) =>
      wallsLeft({ depths: [1], flexibility: 0.001, layer: 0, deepest, normalForce: (a, b) => -k * (b - a) })[0]!;
    expect(pull(100)).toBeCloseTo(1 / 0.9, 8); // p = 1 + 0.1·p
    expect(pull(2000)).toBe(2); // would run away: twice the pass
    expect(pull(2000, 1.3)).toBe(1.3);
    expect(pull(100, 1.05)).toBe(1.05);
  });
  it("rejects what cannot be, by name", () => {
    const good = { depths: [1], flexibility: 0, layer: 0, normalForce: () => 0 };
    for (const [parameter, change] of [
      ["depth", { depths: [-1] }],
      ["flexibility", { flexibility: -1 }],
      ["layer", { layer: -1 }],
    ] as const) {
      try {
        wallsLeft({ ...good, ...change });
        expect.unreachable(`took a bad ${parameter}`);
      } catch (e) {
        expect((e as TradeError).parameter).toBe(parameter);
      }
    }
  });
});

/** A thread, its cutter and its flexibility, anything from M2 to M30, inside and outside. */
const threads = fc.record({
  internal: fc.boolean(),
  pitch: fc.double({ min: 0.4, max: 3.5, noNaN: true }),
  size: fc.double({ min: 4, max: 14, noNaN: true }), // diameter over pitch
  share: fc.double({ min: 0.35, max: 0.9, noNaN: true }), // cutter over hole
  feed: fc.double({ min: 0.002, max: 0.06, noNaN: true }),
  teeth: fc.integer({ min: 1, max: 6 }),
  kc11: fc.double({ min: 300, max: 4500, noNaN: true }),
  exponent: fc.double({ min: 0.1, max: 0.3, noNaN: true }),
  edgeRadius: fc.double({ min: 0, max: 0.015, noNaN: true }),
  edgeForce: fc.double({ min: 0, max: 60, noNaN: true }),
  flexibility: fc.double({ min: 0, max: 0.01, noNaN: true }),
  way: fc.constantFrom("climb" as const, "conventional" as const),
  passes: fc.integer({ min: 1, max: 5 }),
  springs: fc.integer({ min: 0, max: 4 }),
});
type Case = typeof threads extends fc.Arbitrary<infer T> ? T : never;

/** Walls after so many passes at that feed, by the force at the wall or by the mean force. */
function series(x: Case, passes: number, springs: number, mean = false) {
  const hole = x.pitch * x.size;
  const total = 0.56 * x.pitch;
  const flat = 0.1 * x.pitch;
  const cutter = x.internal ? x.share * hole : 1.5 * hole;
  const cutOf = (from: number, to: number, edge: number): ThreadCut => ({
    holeDiameter: hole,
    internal: x.internal,
    cutterDiameter: cutter,
    tipFlat: flat,
    profileAngle: 60,
    feedPerTooth: x.feed,
    teeth: x.teeth,
    kc11: x.kc11,
    exponent: x.exponent,
    startDepth: from,
    endDepth: to,
    radialRatio: 0.35,
    edgeTangential: edge * x.edgeForce,
    edgeRadial: edge * x.edgeForce,
    way: x.way,
  });
  const walls = wallsLeft({
    depths: passDepths(total, flat, 60, passes, springs),
    flexibility: x.flexibility,
    layer: leastLayer(0.3, x.edgeRadius, 30),
    deepest: 0.49 * Math.min(cutter, hole),
    normalForce: (a, b, edge) => threadMillForces(cutOf(a, b, edge))[mean ? "meanNormal" : "wallNormal"],
  });
  return { walls, total };
}

describe("thread passes at a typed feed (identity)", () => {
  it("the size error never grows with a pass or a spring pass more, over 600 random threads", () => {
    fc.assert(
      fc.property(threads, (x) => {
        const c = { ...x, way: "climb" as const };
        const { walls, total } = series(c, c.passes, c.springs);
        const here = walls.at(-1)!;
        const error = total - here;
        expect(error).toBeGreaterThanOrEqual(-1e-9 * total);
        expect(total - series(c, c.passes + 1, c.springs).walls.at(-1)!).toBeLessThanOrEqual(error + 1e-8 * total);
        expect(total - series(c, c.passes, c.springs + 1).walls.at(-1)!).toBeLessThanOrEqual(error + 1e-8 * total);
      }),
      { numRuns: 600 },
    );
  });
  it("the wall never goes back and never lies outside hole and cutter, either way and with either force", () => {
    fc.assert(
      fc.property(threads, fc.boolean(), (x, mean) => {
        const { walls } = series(x, x.passes, x.springs, mean);
        walls.forEach((w, i) => {
          expect(w).toBeGreaterThanOrEqual(i === 0 ? 0 : walls[i - 1]!);
          expect(Number.isFinite(w)).toBe(true);
        });
      }),
      { numRuns: 150 },
    );
  });
  it("follows feed, depth, edge radius, edge force and flexibility without jumps", () => {
    const keys = ["feed", "edgeRadius", "edgeForce", "flexibility", "pitch", "size", "share"] as const;
    fc.assert(
      fc.property(threads, fc.constantFrom(...keys), (x, key) => {
        const c = { ...x, way: "climb" as const };
        const there = { ...c, [key]: c[key] * (1 + 1e-7) };
        const { walls, total } = series(c, c.passes, c.springs);
        const moved = series(there, c.passes, c.springs).walls.at(-1)!;
        expect(Math.abs(moved - walls.at(-1)!)).toBeLessThan(1e-4 * total);
      }),
      { numRuns: 300 },
    );
  });
});
