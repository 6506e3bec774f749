/** What stands behind the numbers of a milled thread: every step of a row with what it was made from, by hand. */
import { describe, expect, it } from "vitest";
import { largestChip } from "../../src/mill/chip.ts";
import { leastLayer } from "../../src/mill/edge.ts";
import { threadWalls } from "../../src/mill/threadbias.ts";
import { engagedChip } from "../../src/mill/threadfeed.ts";
import { type ThreadCut, threadEngagement, threadLoads } from "../../src/mill/threadforce.ts";
import { passDepths } from "../../src/thread/passes.ts";
import { plainPathRadius } from "../../src/thread/path.ts";
import { sweptPathRadius } from "../../src/thread/sweep.ts";
import { deflectionParts } from "../../src/tool/beam.ts";
import { largestPrincipalStress } from "../../src/tool/stress.ts";
import { about, type RowCells, STEEL } from "../findings/rule.ts";
import { all, at, facts, type More, type Plan, value } from "./worked-out.ts";

/** M6 with TM-M6-S in C45, in one pass. ISO 965-1: pitch diameter of M6-6H 5.350 to 5.500. */
const row = {
  ...{ Operation: "thread mill", Thread: "M6", Tool: "TM-M6-S", "Start diameter": 4.95, Depth: 9 },
  ...{ Passes: 1, "Spring passes": 0 },
};
const cutter = { cutterDiameter: 4.2, tipFlat: 0.1, profileAngle: 60, lead: 1 };
const path = sweptPathRadius(cutter, 1, 5.425, "internal");
const tip = 2 * path + 4.2;
const deep = (tip - 4.95) / 2;
// eight thousandths of the diameter along the thread; the centre runs as much slower as its circle is smaller
const edge = 0.008 * 4.2;
const centre = (edge * 2 * path) / tip;
/** Effective depth: where the cutter meets the hole, by the law of cosines. */
const ae = 2.1 * (1 - (2.475 ** 2 - path ** 2 - 2.1 ** 2) / (2 * path * 2.1));
const rpm = 8000;
const CUT: Omit<ThreadCut, "startDepth" | "endDepth"> = {
  ...{ holeDiameter: 4.95, internal: true, cutterDiameter: 4.2, tipFlat: 0.1, profileAngle: 60, teeth: 3, kc11: 2220 },
  ...{ exponent: 0.14, radialRatio: 0.35, way: "climb", turnsInCut: 1, helixAngle: 0, pitch: 1, feedPerTooth: centre },
};
const loads = (more: Partial<ThreadCut> = {}) => threadLoads({ ...CUT, startDepth: 0, endDepth: deep, ...more });
const part = (diameter: number, length: number) => ({ tipDiameter: diameter, holderDiameter: diameter, length });
const BEAM = {
  modulus: 600,
  poisson: 0.22,
  shear: true,
  stepFlexibility: true,
  holderStiffness: 22,
  loadDistance: 0.5,
};
const gives = deflectionParts(1, [part(2.9, 15), part(6, 8)], BEAM).total;

describe("steps of a thread of one pass (by hand)", () => {
  it("have what they were made from", () => {
    const thread = "M6×1-6H";
    expect(all(at(row))).toMatchObject({
      percent: { thread, hole: 4.95 },
      pathRadius: { thread, cutter: 4.2, flat: 0.1 },
      neckGap: { side: "inside", thread, hole: 4.95, cutter: 4.2, neck: 2.9, flat: 0.1 },
      turns: { full: false },
      speedRange: { engaged: 1 },
      spindleSpeed: { wanted: about((90 + 145) / 2), diameter: 4.2, cap: 8000, by: "machine", slow: false },
      surfaceSpeed: { rpm: 8000, diameter: 4.2 },
      radialDepth: { side: "inside" },
      edgeFeed: { listed: about(0.0198), by: "contour" },
      edgeTable: { rpm, teeth: 3, feed: about(edge) },
      tableFeed: { edge: about(3 * rpm * edge), finish: about(tip), diameter: 4.2, arc: "inside" },
      chip: { feed: about(centre), radialDepth: about(ae), diameter: 4.2, edgeAngle: 90, held: false },
      depths: { thread, start: 4.95, flat: 0.1, passes: 1, springs: 0, cutter: 4.2 },
      leastChip: { fraction: 0.3 },
      mostChip: { runout: 0.008, teeth: 3 },
      force: { thread: true },
      power: { efficiency: 0.85 },
      deflection: {
        ...{ thread: true, force: about(loads().peak, 6), modulus: 600, holder: 22, poisson: 0.22, cones: false },
        segments: [
          { diameter: 2.9, length: 14.5 },
          { diameter: 6, length: 8 },
        ],
      },
      stress: { notch: 1.4, allowed: about(3500 / 3), safety: 3 },
      scatter: { share: 0.15 },
      size: { of: "pitch diameter", programmed: about(5.425, 3) },
      timeEach: { passes: 1, turns: 10 },
    });
  });
  it("come to what the formulas give", () => {
    const plan = at(row);
    const f = loads();
    expect(value(plan, "sweep")).toBeCloseTo(2 * (plainPathRadius(5.425, 1, 4.2, 0.1, 60, "internal") - path), 9);
    expect(value(plan, "pathRadius")).toBeCloseTo(path, 9);
    expect(value(plan, "majorDiameter")).toBeCloseTo(tip, 9);
    // the neck's way to the wall: radius of the hole less path and half a neck
    expect(value(plan, "neckGap")).toBeCloseTo(4.95 / 2 - path - 1.45, 9);
    expect([value(plan, "turns"), value(plan, "startZ"), value(plan, "tipZ")]).toEqual([10, -9, -9.5]);
    expect(value(plan, "radialDepth")).toBeCloseTo(ae, 6);
    expect(value(plan, "chip")).toBeCloseTo(largestChip(centre, ae, 4.2, 90), 9);
    const pass = { holeDiameter: 4.95, cutterDiameter: 4.2, startDepth: 0, endDepth: deep, internal: true };
    expect(value(plan, "flankChip")).toBeCloseTo(engagedChip(centre, threadEngagement(pass)) / 2, 9);
    expect(plan.steps.find((s) => s.key === "depths")!.value).toEqual([about(deep)]);
    expect(value(plan, "leastChip")).toBeCloseTo(0.0018, 12);
    expect(value(plan, "mostChip")).toBeCloseTo(value(plan, "chip") + 0.008 * Math.sin(Math.PI / 3), 9);
    expect(value(plan, "force")).toBeCloseTo(f.peakTangential, 6);
    expect(value(plan, "deflection")).toBeCloseTo(gives * f.peak, 9);
    const stress = largestPrincipalStress(f.peak, [part(2.9, 14.5), part(6, 8)], {
      ...{ torque: f.meanTorque, notchFactor: 1.4, holderNotchFactor: 1 },
    }).stress;
    expect(value(plan, "stress")).toBeCloseTo(stress, 6);
    expect(plan.results).toMatchObject({
      ...{
        tool: "TM-M6-S",
        startDiameter: 4.95,
        pathRadius: about(path),
        majorDiameter: about(tip),
        startZ: -9,
        endZ: 1,
      },
      ...{ direction: { path: "circle", axis: "up", turn: "counter-clockwise" }, passes: 1, springPasses: 0 },
      ...{ neckGap: about(4.95 / 2 - path - 1.45), feedPerTooth: about(edge), tableFeed: about(3 * rpm * centre, 6) },
      ...{
        force: about(f.peakTangential, 6),
        deflection: about(gives * f.peak),
        stress: about((3 * stress) / 3500, 6),
      },
      ...{ power: about((2 * Math.PI * rpm * f.meanTorque) / 60_000 / 0.85), depths: [about(deep)] },
    });
    expect(plan.limits.find((l) => l.key === "arcFeed")!.limit).toBeCloseTo(
      // √(a/κ): the curvature of a helix of that radius and pitch
      60 * Math.sqrt((3000 * (path ** 2 + (1 / (2 * Math.PI)) ** 2)) / path),
      6,
    );
  });
  it("are drawn", () => {
    const plan = at({ ...row, Through: "yes" });
    expect(plan.sketch).toMatchObject({
      ...{
        kind: "thread mill",
        profileAngle: 60,
        inside: true,
        holeDiameter: about(tip),
        startDiameter: 4.95,
        depth: 9,
      },
      ...{ through: true, pathRadius: about(path), cutterDiameter: 4.2, tipFlat: 0.1, pitch: 1, depths: [about(deep)] },
      ...{ deflection: about(gives * loads().peak) },
      tool: [
        { length: 15, diameter: 2.9, part: "neck" },
        { length: 8, diameter: 6, part: "shank" },
      ],
    });
  });
  it("of a worn edge, against the feed, of other materials", () => {
    const peak = (cells: RowCells, more: More = {}) => facts(at({ ...row, ...cells }, more), "deflection").force;
    const wanted = (more: Partial<ThreadCut>) => about(loads(more).peak, 6);
    expect(peak({ "Wear factor": 1.4 })).toEqual(wanted({ kc11: 1.4 * 2220 }));
    expect(peak({ Way: "conventional" })).toEqual(wanted({ way: "conventional" }));
    expect(peak({}, { material: { "Radial ratio": 0.6 } })).toEqual(wanted({ radialRatio: 0.6 }));
    expect(peak({}, { material: { "Radial ratio": null } })).toEqual(wanted({ radialRatio: 0.35 }));
  });
});

describe("feed of a thread mill (by hand)", () => {
  it("a typed feed is the edge's; the material's contour feed beats the usual one", () => {
    const typed = at({ ...row, "Feed per tooth": 0.02 });
    expect(facts(typed, "edgeFeed")).toEqual({ listed: about(0.0198), by: "row" });
    expect(value(typed, "edgeFeed")).toBe(0.02);
    expect(typed.results.tableFeed).toBeCloseTo((3 * rpm * 0.02 * 2 * path) / tip, 6);
    expect(value(typed, "chip")).toBeCloseTo(largestChip((0.02 * 2 * path) / tip, ae, 4.2, 90), 9);
    const slow = at(row, { material: { "Thread feed [% of diameter]": 0.4 } });
    expect(value(slow, "edgeFeed")).toBeCloseTo(0.004 * 4.2, 9);
    const blank = at(row, { material: { "Thread feed [% of diameter]": null } });
    expect(value(blank, "edgeFeed")).toBeCloseTo(edge, 9);
  });
  it("no more than the listed chip", () => {
    const fast = at(row, { material: { "Thread feed [% of diameter]": 8 } });
    expect(facts(fast, "edgeFeed")).toMatchObject({ by: "chip" });
    expect(value(fast, "chip")).toBeCloseTo(0.0198, 9);
  });
  it("a list without feeds: the typed one stands for it, else the row says so", () => {
    const none = { material: Object.fromEntries([3, 6, 12, 20].map((d) => [`Feed ${d} mm [mm per tooth]`, null])) };
    expect(facts(at({ ...row, "Feed per tooth": 0.02 }, none), "edgeFeed")).toEqual({ listed: 0.02, by: "row" });
    const plan = at(row, none);
    expect(plan.findings.find((f) => f.code === "no-feed")?.facts).toEqual({ material: STEEL.Material });
    expect(plan.results.tableFeed).toBeUndefined();
    expect(plan.results.pathRadius).toBeCloseTo(path, 9);
  });
  it("the chip that a held feed leaves is as much thinner", () => {
    const held = at(row, { machine: { "Max feed [m/min]": (3 * rpm * centre) / 2000 } });
    expect(facts(held, "chip")).toMatchObject({ held: true, feed: about(centre / 2) });
    expect(value(held, "chip")).toBeCloseTo(largestChip(centre, ae, 4.2, 90) / 2, 9);
    expect(value(held, "flankChip")).toBeCloseTo(value(at(row), "flankChip") / 2, 9);
  });
});

describe("pitch diameter of a thread of two passes and a spring pass (by hand: the passes one after the other)", () => {
  const two = { ...row, Passes: 2, "Spring passes": 1, "Stick-out": 30 };
  const flexible = deflectionParts(1, [part(2.9, 15), part(6, 15)], BEAM).total;
  const depths = passDepths(deep, 0.1, 60, 2, 1);
  const sizes = (
    cut: Partial<ThreadCut>,
    radii: readonly [number, number],
    edges: readonly [number, number],
    moved = 0,
  ) => {
    const { deepest, shallowest } = threadWalls({
      cut: { ...CUT, edgeTangential: 2220 * 0.006, edgeRadial: 2220 * 0.006, ...cut },
      flexibility: flexible,
      // 15 % of the force, 20 % of the flexibility
      ends: [0.85 * 0.8, 1.15 * 1.2],
      layers: [leastLayer(0.3, radii[0], 30), leastLayer(0.3, radii[1], 30)],
      edges,
    })(depths.map((d) => d - moved));
    return deepest.map((d, i) => [5.425 + 2 * (d - deep), 5.425 + 2 * (shallowest[i]! - deep)] as const);
  };
  const expected = (plan: Plan, ends: ReturnType<typeof sizes>) => {
    const [high, low] = ends.at(-1)!;
    expect(facts(plan, "size")).toMatchObject({ least: about(low, 6), most: about(high, 6) });
    expect(value(plan, "size")).toBeCloseTo((low + high) / 2, 6);
    expect(plan.results.size).toBeCloseTo((low + high) / 2, 6);
    expect(plan.steps.find((s) => s.key === "left")!.value).toEqual(ends.map(([a, b]) => about((a + b) / 2, 6)));
  };
  const SHARP: readonly [number, number] = [0.006, 0.006];
  it("where the edge's radius is known", () => {
    expected(at(two), sizes({}, SHARP, [1, 1]));
    expect(at(two).results.depths).toEqual(depths.map((d) => about(d)));
  });
  it("with a wear value of 0.01 every pass is a hundredth shallower", () =>
    expected(at({ ...two, "Wear value": 0.01 }), sizes({}, SHARP, [1, 1], 0.01)));
  it("of a worn edge, against the feed", () => {
    const worn = { kc11: 1.4 * 2220, edgeTangential: 1.4 * 2220 * 0.006, edgeRadial: 1.4 * 2220 * 0.006 };
    expected(at({ ...two, "Wear factor": 1.4 }), sizes(worn, SHARP, [1, 1]));
    expected(at({ ...two, Way: "conventional" }), sizes({ way: "conventional" }, SHARP, [1, 1]));
  });
  it("where the list has no edge radius: from 0.003 to 0.010 mm, as sharp and as blunt as is usual", () => {
    const middle = Math.sqrt(0.003 * 0.01);
    const blunt = { edgeTangential: 2220 * middle, edgeRadial: 2220 * middle };
    expected(at(two, { tool: { "Edge radius": null } }), sizes(blunt, [0.003, 0.01], [0.003 / middle, 0.01 / middle]));
  });
  it("where the list tells the edge's force, in one direction or in both", () => {
    const one = { "Kte [N/mm]": 20 };
    expected(at(two, { material: one }), sizes({ edgeTangential: 20, edgeRadial: 20 }, SHARP, [1, 1]));
    const both = { ...one, "Kre [N/mm]": 30 };
    expected(at(two, { material: both }), sizes({ edgeTangential: 20, edgeRadial: 30 }, SHARP, [1, 1]));
    const worn = sizes({ kc11: 1.4 * 2220, edgeTangential: 28, edgeRadial: 42 }, SHARP, [1, 1]);
    expected(at({ ...two, "Wear factor": 1.4 }, { material: both }), worn);
    // of an edge of unknown radius it is what it is
    const unknown = at(two, { material: both, tool: { "Edge radius": null } });
    expected(unknown, sizes({ edgeTangential: 20, edgeRadial: 30 }, [0.003, 0.01], [1, 1]));
  });
  it("without a stick-out there is no size, nor what bends", () => {
    const plan = at({ ...two, "Stick-out": null }, { tool: { "Stick-out": null } });
    for (const key of ["deflection", "size", "left", "stress"]) expect(plan.steps.map((s) => s.key)).not.toContain(key);
    expect(plan.results.size).toBeUndefined();
    expect(plan.results.force).toBeGreaterThan(0);
  });
});
