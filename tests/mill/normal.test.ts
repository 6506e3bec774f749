import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { millForces } from "../../src/mill/force.ts";
import { threadMillForces } from "../../src/mill/threadforce.ts";
import { threadNormal } from "../../src/mill/threadnormal.ts";
import { wallForces } from "../../src/mill/wallnormal.ts";

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
          const sharp = millForces({ ...cut, edgeTangential: 0, edgeRadial: 0 });
          const quick = wallForces(cut);
          expect(quick.mean(cut.radialDepth, cut.axialDepth)).toBeCloseTo(sharp.meanNormal, 6);
          // worst of 30,000: 0.0038; shrinking towards it finds 0.0040
          expect(Math.abs(quick.wall(cut.radialDepth, cut.axialDepth, 1) - whole.wallNormal)).toBeLessThan(
            0.005 * whole.peak,
          );
          expect(Math.abs(quick.wall(cut.radialDepth, cut.axialDepth, 0) - sharp.wallNormal)).toBeLessThan(
            0.005 * sharp.peak,
          );
        },
      ),
    );
  });
  // conventional cuts whose largest force stands between two of the nine samples: by the samples alone they are 2 to 9 parts in 10,000 low
  it.each([
    [3, 15, 30, 0],
    [10, 6, 30, 10],
    [3, 6, 30, 10],
    [1, 6, 45, 0],
  ])("meet a top between two samples: ae %d, ap %d, helix %d°, edge %d N/mm", (ae, ap, helixAngle, edgeRadial) => {
    const cut = {
      ...{ kc11: 1800, exponent: 0.25, feedPerTooth: 0.05, diameter: 10, teeth: 4, helixAngle, radialRatio: 0.35 },
      ...{ edgeRadial, edgeTangential: edgeRadial / 2, way: "conventional" as const },
    };
    const whole = millForces({ ...cut, radialDepth: ae, axialDepth: ap });
    expect(Math.abs(wallForces(cut).wall(ae, ap, 1) - whole.wallNormal)).toBeLessThan(1e-4 * whole.peak);
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
        fc.constantFrom(undefined, 0.5, 0.8),
        (share, first, last, teeth, internal, full, way, flankThrust) => {
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
            flankThrust,
            ...(full ? { turnsInCut: 7, helixAngle: 12, pitch: 1.1 } : {}),
          };
          const whole = threadMillForces(cut);
          const sharp = threadMillForces({ ...cut, edgeTangential: 0, edgeRadial: 0 });
          const quick = threadNormal(cut, cut.startDepth, cut.endDepth);
          expect(Math.abs(quick.mean(cut.startDepth, cut.endDepth) - sharp.meanNormal)).toBeLessThan(2e-5 * sharp.mean);
          expect(quick.wall(cut.startDepth, cut.endDepth, 1)).toBeCloseTo(whole.wallNormal, 7);
          expect(quick.wall(cut.startDepth, cut.endDepth, 0)).toBeCloseTo(sharp.wallNormal, 7);
        },
      ),
    );
  });
  // Second passes with many teeth in the cut at once: their tips out of it and their flanks still in it, and the other way round.
  for (const internal of [true, false])
    for (const share of [0.5, 0.8, 0.93])
      for (const turnsInCut of [1, 7])
        it(`are those of a second pass too: ${internal ? "inside" : "outside"}, ${share} of the diameter, ${turnsInCut} turns`, () => {
          for (const teeth of [3, 12, 40])
            for (const startDepth of [0.05, 0.3, 0.55]) {
              const cut = {
                ...{ holeDiameter: 10, cutterDiameter: 10 * share, tipFlat: 0.1, profileAngle: 60, feedPerTooth: 0.03 },
                ...{ teeth, kc11: 1700, exponent: 0.25, radialRatio: 0.35, internal, edgeTangential: 8, edgeRadial: 8 },
                ...{ startDepth, endDepth: 0.6, turnsInCut, helixAngle: 12, pitch: 1.1 },
              };
              const whole = threadMillForces(cut);
              const quick = threadNormal(cut, startDepth, 0.6);
              expect(quick.wall(startDepth, 0.6, 1)).toBeCloseTo(whole.wallNormal, 7);
              const sharp = threadMillForces({ ...cut, edgeTangential: 0, edgeRadial: 0 });
              expect(Math.abs(quick.mean(startDepth, 0.6) - sharp.meanNormal)).toBeLessThan(2e-5 * sharp.mean);
            }
        });
});
