import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { wallLeft } from "../../src/mill/bending.ts";
import { type BendingWall, CORNERS, type Corner, wallCorner } from "../../src/mill/wall-bias.ts";
import { wallForces } from "../../src/mill/wallnormal.ts";
import { wallsLeft } from "./walls.ts";

/** Deepest and shallowest wall after each pass, over all corners. */
function wallEnds(wall: BendingWall, depths: readonly number[]) {
  const corners = CORNERS.map((corner) => wallsLeft({ ...wallCorner(wall, corner), depths }));
  const over = (pick: (...values: number[]) => number) => depths.map((_, i) => pick(...corners.map((w) => w[i]!)));
  return { deepest: over(Math.max), shallowest: over(Math.min) };
}

/** A straight wall with a 10 mm cutter, at a typed feed. */
const wallOf = (feedPerTooth: number, way: "climb" | "conventional", over: Partial<BendingWall> = {}): BendingWall => {
  const forces = wallForces({
    ...{ kc11: 2220, exponent: 0.14, feedPerTooth, diameter: 10, teeth: 4, helixAngle: 38 },
    ...{ radialRatio: 0.35, edgeTangential: 18, edgeRadial: 18, way },
  });
  const radialDepth = (from: number, to: number) => Math.max(1e-8, Math.min(10, to - from));
  return {
    wallForce: (a, b, edge) => forces.wall(radialDepth(a, b), 8, edge),
    meanForce: (a, b) => forces.mean(radialDepth(a, b), 8),
    flexibility: 2e-4,
    ends: [0.7, 1.4],
    layers: [0.002, 0.002],
    ...over,
  };
};

describe("what bending leaves of a wall (identity)", () => {
  it("one more pass or spring pass at the same feed never leaves a worse wall, and the wall lies between stock and path", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 5, noNaN: true }),
        fc.double({ min: 0.005, max: 0.15, noNaN: true }),
        fc.double({ min: 1e-5, max: 1e-3, noNaN: true }),
        fc.integer({ min: 1, max: 3 }),
        (stock, feed, flexibility, passes) => {
          const wall = wallOf(feed, "climb", { flexibility });
          const even = (n: number, springs: number) => [
            ...Array.from({ length: n }, (_, i) => (stock * (i + 1)) / n),
            ...Array.from({ length: springs }, () => stock),
          ];
          const last = (depths: number[]) => wallEnds(wall, depths).shallowest.at(-1)!;
          const now = last(even(passes, 0));
          expect(last(even(passes, 1))).toBeGreaterThanOrEqual(now - 1e-6 * stock);
          expect(last(even(passes + 1, 0))).toBeGreaterThanOrEqual(now - 2e-3 * stock);
          for (const w of wallEnds(wall, even(passes, 2)).shallowest) {
            expect(w).toBeGreaterThanOrEqual(0);
            expect(w).toBeLessThanOrEqual(stock * (1 + 1e-9));
          }
        },
      ),
      { numRuns: 120 },
    );
  });
  it("is continuous in feed, depth and edge", () => {
    const at = (feed: number, depth: number, layer: number) =>
      wallEnds(wallOf(feed, "climb", { layers: [layer, layer] }), [depth]).shallowest[0]!;
    for (const [feed, depth, layer] of [
      [0.02, 0.3, 0.002],
      [0.06, 2, 0.0005],
      [0.01, 0.004, 0.003],
    ] as const) {
      const here = at(feed, depth, layer);
      expect(Math.abs(at(feed * 1.0001, depth, layer) - here)).toBeLessThan(1e-3 * depth);
      expect(Math.abs(at(feed, depth * 1.0001, layer) - here)).toBeLessThan(1e-3 * depth);
      expect(Math.abs(at(feed, depth, layer * 1.0001) - here)).toBeLessThan(1e-3 * depth);
    }
  });
  it("a rigid tool with a sharp edge leaves what was programmed", () => {
    const wall = wallOf(0.05, "climb", { flexibility: 0, layers: [0, 0] });
    expect(wallEnds(wall, [1, 2, 2])).toEqual({ deepest: [1, 2, 2], shallowest: [1, 2, 2] });
  });
});

describe("what bending leaves of a wall (independent)", () => {
  it("the corners are both ends with both forces, each once", () =>
    expect(CORNERS.map((c) => c.join(" ")).sort()).toEqual(["bad mean", "bad wall", "good mean", "good wall"]));
  it("each corner takes its own force, ends, edges and layers: by hand for forces in proportion", () => {
    const springs: BendingWall = {
      wallForce: (a, b, edge) => 2000 * (b - a) + 100 * edge,
      meanForce: (a, b) => 500 * (b - a),
      flexibility: 1e-3,
      ends: [0.5, 1.5],
      edges: [0, 2],
      layers: [0, 0],
    };
    const left = (wall: BendingWall, corner: Corner) => wallLeft(wallCorner(wall, corner), 0, 1);
    const wall = (corner: Corner) => left(springs, corner);
    // p = t − c·F: p·(1 + c·e·k) = t − c·e·edge
    expect(wall(["good", "wall"])).toBeCloseTo(1 / (1 + 1), 9);
    expect(wall(["bad", "wall"])).toBeCloseTo((1 - 0.0015 * 200) / (1 + 3), 9);
    expect(wall(["good", "mean"])).toBeCloseTo(1 / 1.25, 9);
    expect(wall(["bad", "mean"])).toBeCloseTo(1 / 1.75, 9);
    // a thick layer is left whole, 0.01 at one end and 0.02 at the other
    const rigid: BendingWall = { ...springs, flexibility: 0, layers: [0.01, 0.02] };
    expect(left(rigid, ["good", "mean"])).toBeCloseTo(0.99, 9);
    expect(left(rigid, ["bad", "mean"])).toBeCloseTo(0.98, 9);
    // without ends and edges both are the middle
    const plain: BendingWall = { ...springs, ends: undefined, edges: undefined };
    for (const end of ["good", "bad"] as const) expect(left(plain, [end, "wall"])).toBeCloseTo((1 - 0.1) / 3, 9);
  });
  it("each end solves its own balance: path and force checked by stepping the path in", () => {
    const wall = wallOf(0.05, "climb", { layers: [0, 0], ends: [1, 1] });
    const { deepest, shallowest } = wallEnds(wall, [1.5]);
    const step = (force: (a: number, b: number) => number) => {
      // drive the tool in from the face until spring and force balance
      let p = 0;
      while (p < 3 && p + 2e-4 * (p > 0 ? force(0, p) : 0) < 1.5) p += 1e-4;
      return p;
    };
    const both = [step((a, b) => wall.wallForce(a, b, 1)), step(wall.meanForce)];
    expect(deepest[0]).toBeCloseTo(Math.max(...both), 3);
    expect(shallowest[0]).toBeCloseTo(Math.min(...both), 3);
  });
});
