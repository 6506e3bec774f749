import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { leastLayer } from "../../src/mill/edge.ts";
import { type BendingThread, threadWalls } from "../../src/mill/threadbias.ts";
import { threadMillForces } from "../../src/mill/threadforce.ts";
import { startWear } from "../../src/mill/wear.ts";
import { passDepths } from "../../src/thread/passes.ts";

const m6: BendingThread = {
  cut: {
    ...{ holeDiameter: 5, cutterDiameter: 4.2, tipFlat: 0.1, profileAngle: 60, feedPerTooth: 0.01, teeth: 3 },
    ...{ kc11: 2220, exponent: 0.14, radialRatio: 0.35, internal: true, edgeTangential: 13, edgeRadial: 13 },
  },
  flexibility: 0.001,
  ends: [0.68, 1.38],
  layers: [leastLayer(0.3, 0.004, 30), leastLayer(0.3, 0.01, 30)],
};

/** One corner by bisection of the path and the layer's own formula. */
function corner(force: (a: number, p: number, edge: number) => number, c: number, layer: number, depths: number[]) {
  let a = 0;
  return depths.map((t) => {
    let [low, high] = [a, 2 * t];
    for (let i = 0; i < 100; i++) {
      const p = (low + high) / 2;
      if (p - t + c * force(a, p, Math.min(1, (p - a) / layer)) < 0) low = p;
      else high = p;
    }
    a = low - layer * (1 - Math.exp(-(low - a) / layer));
    return a;
  });
}

describe("depths beyond the cutter", () => {
  it("are refused when they come first, and when they come after shallower ones", () => {
    // the cutter's radius is 2.1
    expect(() => threadWalls(m6)([2.2])).toThrow(expect.objectContaining({ parameter: "endDepth" }));
    const walls = threadWalls(m6);
    walls([0.3]);
    walls([0.4]);
    expect(() => walls([2.2])).toThrow(expect.objectContaining({ parameter: "endDepth" }));
    expect(() => walls([0.3, 0.5])).not.toThrow();
  });
});

describe("passes that cut nothing (by hand)", () => {
  const walls = threadWalls(m6);
  it("leave the wall where it was", () => {
    expect(walls([])).toEqual({ deepest: [], shallowest: [], last: [0, 0, 0, 0] });
    expect(walls([0, 0])).toEqual({ deepest: [0, 0], shallowest: [0, 0], last: [0, 0, 0, 0] });
    expect(walls([0], "bad")).toEqual({ deepest: [0], shallowest: [0], last: [0, 0] });
    expect(walls([0], "all", [0.3, 0.28, 0.27, 0.29])).toEqual({
      deepest: [0.3],
      shallowest: [0.27],
      last: [0.3, 0.28, 0.27, 0.29],
    });
  });
});

describe("band of a thread's wall (independent)", () => {
  for (const way of ["climb", "conventional"] as const) {
    it(`is the deepest and the shallowest of four corners, each by bisection, ${way}`, () => {
      const depths = passDepths(0.53, 0.1, 60, 2, 2);
      const cut = { ...m6.cut, way };
      const sharp = { ...cut, edgeTangential: 0, edgeRadial: 0 };
      const walls = [0, 1].flatMap((end) => [
        corner(
          (a, p, edge) =>
            p > a
              ? threadMillForces({
                  ...cut,
                  startDepth: a,
                  endDepth: p,
                  edgeTangential: 13 * edge,
                  edgeRadial: 13 * edge,
                }).wallNormal
              : 0,
          m6.flexibility * m6.ends![end]!,
          m6.layers[end]!,
          depths,
        ),
        corner(
          (a, p) => (p > a ? threadMillForces({ ...sharp, startDepth: a, endDepth: p }).meanNormal : 0),
          m6.flexibility * m6.ends![end]!,
          m6.layers[end]!,
          depths,
        ),
      ]);
      const band = threadWalls({ ...m6, cut })(depths);
      depths.forEach((_, i) => {
        expect(band.deepest[i]).toBeCloseTo(Math.max(...walls.map((w) => w[i]!)), 6);
        expect(band.shallowest[i]).toBeCloseTo(Math.min(...walls.map((w) => w[i]!)), 6);
      });
    });
  }
});

describe("band of a thread's wall (identity)", () => {
  it("with climb no pass, spring pass or sharper end makes the worst size worse, over 300 random threads", () => {
    fc.assert(
      fc.property(
        fc.record({
          scale: fc.double({ min: 0.4, max: 4, noNaN: true }),
          share: fc.double({ min: 0.5, max: 0.92, noNaN: true }),
          flexibility: fc.double({ min: 1e-5, max: 0.01, noNaN: true }),
          kc11: fc.double({ min: 300, max: 4500, noNaN: true }),
          edge: fc.double({ min: 0, max: 50, noNaN: true }),
          radius: fc.double({ min: 0.001, max: 0.012, noNaN: true }),
          passes: fc.integer({ min: 1, max: 5 }),
          springs: fc.integer({ min: 0, max: 3 }),
          profiles: fc.constantFrom(1, 6),
        }),
        (x) => {
          const k = x.scale;
          const total = 0.53 * k;
          const thread: BendingThread = {
            ...m6,
            cut: {
              ...m6.cut,
              ...{ holeDiameter: 5 * k, cutterDiameter: 5 * k * x.share, tipFlat: 0.1 * k, kc11: x.kc11 },
              ...{ edgeTangential: x.edge, edgeRadial: x.edge },
              ...(x.profiles > 1 ? { turnsInCut: x.profiles, pitch: k, helixAngle: 10 } : {}),
            },
            flexibility: x.flexibility,
            layers: [leastLayer(0.3, 0.7 * x.radius, 30), leastLayer(0.3, x.radius, 30)],
          };
          const left = (passes: number, springs: number) => {
            const { deepest, shallowest } = threadWalls(thread)(passDepths(total, 0.1 * k, 60, passes, springs));
            return [total - deepest.at(-1)!, total - shallowest.at(-1)!] as const;
          };
          const [least, most] = left(x.passes, x.springs);
          expect(least).toBeGreaterThanOrEqual(-1e-9);
          expect(most).toBeGreaterThanOrEqual(least - 1e-12);
          expect(most).toBeLessThanOrEqual(total);
          for (const more of [left(x.passes + 1, x.springs), left(x.passes, x.springs + 1)]) {
            expect(more[0]).toBeLessThanOrEqual(least + 1e-8);
            expect(more[1]).toBeLessThanOrEqual(most + 1e-8);
          }
        },
      ),
      { numRuns: 300 },
    );
  });
  it("a start value for the deepest wall leaves the band below the wanted size, its upper end on it", () => {
    const depths = passDepths(0.53, 0.1, 60, 2, 1);
    const moved = (d: number) => depths.map((t) => t + d);
    const wear = startWear(0.53, (t) => threadWalls(m6)(moved(t - 0.53)).deepest.at(-1)!, 0.2)!;
    const before = threadWalls(m6)(depths);
    const after = threadWalls(m6)(moved(-wear));
    expect(wear).toBeLessThan(0);
    expect(after.deepest.at(-1)!).toBeCloseTo(0.53, 7);
    expect(after.shallowest.at(-1)!).toBeLessThan(0.53);
    expect(0.53 - after.shallowest.at(-1)!).toBeLessThan(0.53 - before.shallowest.at(-1)!);
  });
  it("an edge force with two ends is the band of the two", () => {
    const depths = passDepths(0.53, 0.1, 60, 1, 1);
    const at = (k: number) =>
      threadWalls({ ...m6, cut: { ...m6.cut, edgeTangential: 13 * k, edgeRadial: 13 * k } })(depths);
    const band = threadWalls({ ...m6, edges: [0.5, 2] })(depths);
    expect(band.shallowest).toEqual(at(2).shallowest);
    expect(band.deepest[1]).toBeCloseTo(Math.max(at(0.5).deepest[1]!, at(2).deepest[1]!), 9);
  });
  it("a rigid, sharp tool leaves what is programmed", () => {
    const band = threadWalls({ ...m6, flexibility: 0, layers: [0, 0] })([0.3, 0.5]);
    expect(band).toEqual({ deepest: [0.3, 0.5], shallowest: [0.3, 0.5], last: [0.5, 0.5, 0.5, 0.5] });
  });
});
