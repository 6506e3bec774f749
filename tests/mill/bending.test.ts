import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bentPasses } from "../../src/mill/bending.ts";
import { meanNormalForce, millForces, wallNormalForce } from "../../src/mill/force.ts";
import { threadMillForces, threadWallForce } from "../../src/mill/threadforce.ts";
import { threadNormal } from "../../src/mill/threadnormal.ts";

describe("passes of a bending tool (independent)", () => {
  it("agrees with the geometric series of a linear force", () => {
    // w_i = (t + q·w_{i−1})/(1 + q) with q = c·k, summed by hand: 1 − (q/(1+q))^i
    const q = 0.4;
    const walls = bentPasses({ depths: [1, 1, 1, 1], flexibility: 0.002, normalForce: (a, b) => 200 * (b - a) });
    walls.forEach((w, i) => {
      expect(w).toBeCloseTo(1 - (q / (1 + q)) ** (i + 1), 8);
    });
  });
  it("agrees with bisection for a power-law force", () => {
    const force = (a: number, b: number) => 90 * Math.max(0, b - a) ** 0.7;
    let a = 0;
    const expected = [0.3, 0.5, 0.6, 0.6].map((t) => {
      let low = a;
      let high = t;
      for (let i = 0; i < 100; i++) {
        const m = (low + high) / 2;
        if (m - t + 0.0015 * force(a, m) < 0) low = m;
        else high = m;
      }
      a = low;
      return a;
    });
    const got = bentPasses({ depths: [0.3, 0.5, 0.6, 0.6], flexibility: 0.0015, normalForce: force });
    got.forEach((w, i) => {
      expect(w).toBeCloseTo(expected[i]!, 6);
    });
  });
});

describe("passes of a bending tool (identity)", () => {
  it("reaches the programmed depth with a rigid tool", () =>
    expect(bentPasses({ depths: [0.2, 0.5], flexibility: 0, normalForce: () => 1000 })).toEqual([0.2, 0.5]));
  it("leaves the wall alone when the edge force alone holds the tool off", () =>
    expect(bentPasses({ depths: [0.01], flexibility: 0.001, normalForce: () => 50 })[0]).toBeLessThan(1e-6));
  it("gives no credit to a pass whose chip is under the least chip", () => {
    const walls = bentPasses({
      depths: [1, 1],
      flexibility: 0.001,
      normalForce: (a, b) => 250 * (b - a),
      chip: (a, b) => 0.1 * (b - a),
      leastChip: 0.05,
    });
    expect(walls[1]).toBe(walls[0]);
  });
  it("overcuts when the force pulls in", () =>
    expect(bentPasses({ depths: [1], flexibility: 0.001, normalForce: (a, b) => -100 * (b - a) })[0]).toBeGreaterThan(
      1,
    ));
  it("never goes backwards and never leaves a number that is none", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.001, max: 2, noNaN: true }), { minLength: 1, maxLength: 6 }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        fc.double({ min: 0, max: 3000, noNaN: true }),
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        (steps, flexibility, k, power) => {
          let t = 0;
          const depths = steps.map((s) => {
            t += s;
            return t;
          });
          const walls = bentPasses({ depths, flexibility, normalForce: (a, b) => k * Math.max(0, b - a) ** power });
          walls.forEach((w, i) => {
            expect(Number.isFinite(w)).toBe(true);
            expect(w).toBeGreaterThanOrEqual(i === 0 ? 0 : walls[i - 1]!);
            expect(w).toBeLessThanOrEqual(depths[i]! + 1e-9);
          });
        },
      ),
    );
  });
});

describe("quick parts of the end-mill forces (identity)", () => {
  it("are the figures of the whole calculation", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.integer({ min: 1, max: 8 }),
        fc.constantFrom("climb" as const, "conventional" as const),
        (radial, axial, helixAngle, teeth, way) => {
          const cut = {
            kc11: 1800,
            exponent: 0.25,
            feedPerTooth: 0.05,
            radialDepth: 12 * radial,
            axialDepth: 12 * axial,
            diameter: 12,
            teeth,
            helixAngle,
            radialRatio: 0.35,
            edgeTangential: 9,
            edgeRadial: 9,
            way,
          };
          const whole = millForces(cut);
          expect(meanNormalForce(cut)).toBeCloseTo(whole.meanNormal, 6);
          expect(Math.abs(wallNormalForce(cut) - whole.wallNormal)).toBeLessThan(0.004 * whole.peak);
        },
      ),
    );
  });
  it("are those of a thread mill as well", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 0.95, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        fc.integer({ min: 1, max: 6 }),
        fc.boolean(),
        fc.boolean(),
        fc.constantFrom("climb" as const, "conventional" as const),
        (share, first, last, teeth, internal, full, way) => {
          const cut = {
            holeDiameter: 10,
            cutterDiameter: 10 * share,
            tipFlat: 0.1,
            profileAngle: 60,
            feedPerTooth: 0.03,
            teeth,
            kc11: 1700,
            exponent: 0.25,
            startDepth: first * last,
            endDepth: last,
            radialRatio: 0.35,
            internal,
            edgeTangential: 8,
            edgeRadial: 8,
            way,
            ...(full ? { turnsInCut: 7, helixAngle: 12, pitch: 1.1 } : {}),
          };
          const whole = threadMillForces(cut);
          const sharp = threadMillForces({ ...cut, edgeTangential: 0, edgeRadial: 0 });
          expect(threadWallForce(cut)).toBeCloseTo(whole.wallNormal, 9);
          const quick = threadNormal(cut, cut.startDepth, cut.endDepth);
          expect(Math.abs(quick.mean(cut.startDepth, cut.endDepth) - sharp.meanNormal)).toBeLessThan(2e-5 * sharp.mean);
          expect(quick.wall(cut.startDepth, cut.endDepth, 1)).toBeCloseTo(whole.wallNormal, 7);
          expect(quick.wall(cut.startDepth, cut.endDepth, 0)).toBeCloseTo(sharp.wallNormal, 7);
        },
      ),
    );
  });
});
