/** Where bending leaves a milled wall: the passes of a row one after the other, each number of them by hand. */
import { describe, expect, it } from "vitest";
import { type BluntTool, wallLeft } from "../../src/mill/bending.ts";
import { type MillCut, millForces } from "../../src/mill/force.ts";
import { wallForces } from "../../src/mill/wallnormal.ts";
import { deflectionParts } from "../../src/tool/beam.ts";
import { about, type Case, planOf, type RowCells, STEEL } from "../findings/rule.ts";

type More = Omit<Case, "row">;
const at = (row: RowCells, more: More = {}) => planOf({ row: { ...STEEL, ...row }, ...more });
type Plan = ReturnType<typeof at>;
const facts = (plan: Plan, key: string) => plan.steps.find((s) => s.key === key)?.facts as Record<string, number>;

const FED = 0.04;
/** EM-10-4 in C45, 10 mm deep, its feed typed. */
const CUT: Omit<MillCut, "radialDepth" | "axialDepth"> = {
  ...{ kc11: 2220, exponent: 0.14, diameter: 10, teeth: 4, helixAngle: 38, radialRatio: 0.35, axialRatio: 0.2 },
  ...{ way: "climb", feedPerTooth: FED },
};
const part = (diameter: number, length: number) => ({ tipDiameter: diameter, holderDiameter: diameter, length });
const BEAM = { modulus: 600, poisson: 0.22, shear: true, stepFlexibility: true, holderStiffness: 22 };
const gives = (stickOut: number, loadDistance: number) =>
  deflectionParts(1, [part(8, 22), part(10, stickOut - 22)], { ...BEAM, loadDistance }).total;

interface Wall {
  readonly cut?: Partial<MillCut>;
  /** Radial depth from one depth of the wall to another [mm]. */
  readonly ae: (from: number, to: number) => number;
  /** Programmed depths [mm]. */
  readonly depths: readonly number[];
  readonly edge?: readonly [tangential: number, radial: number];
  readonly radii?: readonly [number, number];
  readonly edges?: readonly [number, number];
  /** Wall before the first pass, where the tool bends least and where most [mm]. */
  readonly from?: readonly [number, number];
}

/** Wall after all passes, where it ends up deepest and shallowest: 15 % of the force, 20 % of the flexibility, both ways of counting. */
function ends({ cut, ae, depths, edge = [2220 * 0.008, 2220 * 0.008], radii = [0.008, 0.008], ...wall }: Wall) {
  const { edges = [1, 1], from = [0, 0] } = wall;
  const forces = wallForces({ ...CUT, ...cut, edgeTangential: edge[0], edgeRadial: edge[1] });
  const walls = ([0, 1] as const).flatMap((end) =>
    (["wall", "mean"] as const).map((which) => {
      const tool: BluntTool = {
        flexibility: gives(34, 5) * [0.85 * 0.8, 1.15 * 1.2][end]!,
        // the least chip is 0.3 of the edge's radius
        layer: 0.3 * radii[end],
        edges: edges[end],
        deepest: undefined,
        normalForce: (a: number, b: number, share: number) =>
          which === "wall" ? forces.wall(ae(a, b), 10, share) : forces.mean(ae(a, b), 10),
      };
      return depths.reduce((left, depth) => wallLeft(tool, left, depth), from[end]);
    }),
  );
  return [Math.max(...walls), Math.min(...walls)] as const;
}

describe("a straight wall (by hand)", () => {
  const side = {
    ...{ Operation: "side", Tool: "EM-10-4", Depth: 10, Length: 60, "Radial depth": 1, "Size tolerance": 0.1 },
    ...{ "Feed per tooth": FED, "Spring passes": 0 },
  };
  const ae = (from: number, to: number) => Math.max(1e-8, to - from);
  const expected = (plan: Plan, [deepest, shallowest]: readonly [number, number], stock = 1) => {
    expect(facts(plan, "size")).toMatchObject({ least: about(stock - deepest, 7), most: about(stock - shallowest, 7) });
    expect(plan.left).toEqual([about(stock - deepest, 7), about(stock - shallowest, 7)]);
  };
  it("in one pass, in three, with a spring pass", () => {
    expected(at(side), ends({ ae, depths: [1] }));
    expected(at({ ...side, Passes: 3 }), ends({ ae, depths: [1, 2, 3] }), 3);
    expected(at({ ...side, "Spring passes": 1 }), ends({ ae, depths: [1, 1] }));
  });
  it("against the feed, of a worn edge, with a wear value", () => {
    expected(at({ ...side, Way: "conventional" }), ends({ ae, depths: [1], cut: { way: "conventional" } }));
    const worn = 1.4 * 2220 * 0.008;
    expected(
      at({ ...side, "Wear factor": 1.4 }),
      ends({ ae, depths: [1], cut: { kc11: 1.4 * 2220 }, edge: [worn, worn] }),
    );
    expected(at({ ...side, "Wear value": 0.02 }), ends({ ae, depths: [0.98] }));
    expected(at({ ...side, "Wear value": -0.02, "Spring passes": 1 }), ends({ ae, depths: [1.02, 1.02] }));
  });
  it("of an edge of unknown radius, or of a known force", () => {
    const middle = Math.sqrt(0.003 * 0.01);
    const edge = [2220 * middle, 2220 * middle] as const;
    const radii = [0.003, 0.01] as const;
    const blank = { tool: { "Edge radius": null } };
    expected(at(side, blank), ends({ ae, depths: [1], edge, radii, edges: [0.003 / middle, 0.01 / middle] }));
    const one = { "Kte [N/mm]": 20 };
    expected(at(side, { material: one }), ends({ ae, depths: [1], edge: [20, 20] }));
    const both = { ...one, "Kre [N/mm]": 30 };
    expected(at(side, { material: both }), ends({ ae, depths: [1], edge: [20, 30] }));
    expected(at(side, { ...blank, material: both }), ends({ ae, depths: [1], edge: [20, 30], radii }));
    const worn = { cut: { kc11: 1.4 * 2220 }, edge: [28, 42] as const };
    expected(at({ ...side, "Wear factor": 1.4 }, { material: both }), ends({ ae, depths: [1], ...worn }));
  });
  it("without a tolerance the larger error is told, of the bad end alone", () => {
    const plan = at({ ...side, "Size tolerance": null });
    const found = plan.findings.find((f) => f.code === "no-size-tolerance")!.facts as { error: number };
    expect(found.error).toBeCloseTo(1 - ends({ ae, depths: [1] })[1], 7);
  });
  it("is held to its tolerance: the middle of the band, and both of its ends", () => {
    const [deepest, shallowest] = ends({ ae, depths: [1] });
    const plan = at(side);
    const { load, band, value, limit } = plan.limits.find((l) => l.key === "deflection")!;
    expect([value, limit]).toEqual([about(1 - (deepest + shallowest) / 2, 7), about(0.1)]);
    expect(load).toBeCloseTo((1 - (deepest + shallowest) / 2) / 0.1, 6);
    expect(band).toEqual([about((1 - deepest) / 0.1, 6), about((1 - shallowest) / 0.1, 6)]);
    // what varies of the bending, and seat and runout
    const scatter = Math.hypot(0.15 * (1 - shallowest), Math.hypot(0.25 * 0.01, 0.0015));
    expect(plan.limits.find((l) => l.key === "scatter")).toMatchObject({
      value: about(scatter, 7),
      limit: about(0.05),
    });
    expect([plan.results.sizeMin, plan.results.sizeMax]).toEqual([about(-0.1), about(0.1)]);
  });
  it("as many spring passes as bring it within half of its tolerance, each as long as it is worth its time; two at the most", () => {
    const error = (springs: number) => 1 - ends({ ae, depths: [1, ...Array.from({ length: springs }, () => 1)] })[1];
    const chosen = (tolerance: number) =>
      at({ ...side, "Spring passes": null, "Size tolerance": tolerance }).results.springPasses;
    expect(chosen(2 * error(0) * 1.001)).toBe(0);
    expect(chosen(2 * error(0) * 0.999)).toBe(1);
    expect(chosen(2 * error(1) * 1.001)).toBe(1);
    expect(chosen(2 * error(1) * 0.999)).toBe(2);
    expect(chosen(2 * error(2) * 0.5)).toBe(2);
  });
});

describe("a bore and a boss (by hand)", () => {
  /** Effective radial depth between two diameters, by the law of cosines. */
  const effective = (from: number, to: number, inside: boolean) => {
    const e = to / 2 + (inside ? -5 : 5);
    const cos = ((inside ? 1 : -1) * ((from / 2) ** 2 - e * e - 25)) / (2 * e * 5);
    return Math.max(1e-8, 5 * (1 - cos));
  };
  const bore = {
    ...{ Operation: "bore", Tool: "EM-10-4", "Start diameter": 28, "Finish diameter": 30, Depth: 10, Passes: 1 },
    ...{ "Size tolerance": 0.2, "Feed per tooth": FED, "Spring passes": 0 },
  };
  it("inside the centre goes a third slower, and a shallower wall is a smaller size", () => {
    const ae = (from: number, to: number) => effective(28 + 2 * from, 28 + 2 * to, true);
    const cut = { feedPerTooth: (FED * 20) / 30 };
    const [deepest, shallowest] = ends({ ae, cut, depths: [1] });
    const plan = at(bore);
    expect(facts(plan, "size")).toMatchObject({
      ...{ least: about(30 + 2 * (shallowest - 1), 6), most: about(30 + 2 * (deepest - 1), 6), programmed: 30 },
    });
    expect(plan.left).toEqual([about(1 - deepest, 6), about(1 - shallowest, 6)]);
    expect(plan.results.size).toBeCloseTo(30 + deepest + shallowest - 2, 6);
    expect(facts(at({ ...bore, "Wear value": 0.02 }), "size").programmed).toBeCloseTo(29.96, 9);
    // measured, that is what is left
    expect(at({ ...bore, Measured: 29.9 }).left).toEqual([about(0.05), about(0.05)]);
    const untold = at({ ...bore, "Size tolerance": null });
    const [, least] = ends({ ae, cut, depths: [1] });
    expect(untold.findings.find((f) => f.code === "no-size-tolerance")!.facts).toEqual({
      error: about(2 * (1 - least), 6),
    });
  });
  it("outside it goes a third faster, and a shallower wall is a larger size", () => {
    const ae = (from: number, to: number) => effective(32 - 2 * from, 32 - 2 * to, false);
    const [deepest, shallowest] = ends({ ae, cut: { feedPerTooth: (FED * 40) / 30 }, depths: [1] });
    const plan = at({ ...bore, Operation: "boss", "Start diameter": 32 });
    expect(facts(plan, "size")).toMatchObject({
      ...{ least: about(30 + 2 * (1 - deepest), 6), most: about(30 + 2 * (1 - shallowest), 6), programmed: 30 },
    });
    const worn = at({ ...bore, Operation: "boss", "Start diameter": 32, "Wear value": 0.02 });
    expect(facts(worn, "size").programmed).toBeCloseTo(30.04, 9);
    expect(at({ ...bore, Operation: "boss", "Start diameter": 32, Measured: 30.1 }).left).toEqual([
      about(0.05),
      about(0.05),
    ]);
  });
  it("two passes: the one that bends the tool most is told, with its force", () => {
    const two = at({ ...bore, "Start diameter": 26, Passes: 2 });
    const peak = (from: number, to: number) =>
      millForces({ ...CUT, feedPerTooth: (FED * 20) / 30, radialDepth: effective(from, to, true), axialDepth: 10 });
    const [first, second] = [peak(26, 28), peak(28, 30)];
    expect(facts(two, "deflection").force).toBeCloseTo(Math.max(first.peak, second.peak), 6);
    expect(two.results.force).toBeCloseTo(Math.max(first.peakTangential, second.peakTangential), 6);
  });
});
