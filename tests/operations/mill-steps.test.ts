/** What stands behind the numbers of a milled wall: every step of a row with what it was made from, by hand. */
import { describe, expect, it } from "vitest";
import { type MillCut, millForces } from "../../src/mill/force.ts";
import { wallRoughness } from "../../src/mill/roughness.ts";
import { deflectionParts } from "../../src/tool/beam.ts";
import { largestPrincipalStress } from "../../src/tool/stress.ts";
import { about, type Case, type RowCells } from "../findings/rule.ts";
import { all, at, facts, limits, value } from "./worked-out.ts";

/** Steel C45 by the list, for a cutter of 10 mm: the feed between 6 and 12 mm, the middle of 120 to 190 m/min. */
const LISTED = 0.03 + (0.04 * 4) / 6;
const rpmOf = (speed: number, diameter = 10) => (1000 * speed) / (Math.PI * diameter);
/** Force of a climbing cut of EM-10-4 in it. */
const CUT: Omit<MillCut, "radialDepth" | "axialDepth" | "feedPerTooth"> = {
  ...{ kc11: 2220, exponent: 0.14, diameter: 10, teeth: 4, helixAngle: 38, radialRatio: 0.35, axialRatio: 0.2 },
  way: "climb",
};
const part = (diameter: number, length: number) => ({ tipDiameter: diameter, holderDiameter: diameter, length });
/** EM-10-4 in Centre V3: 22 mm of flutes bend as 0.8 of their diameter, 34 stick out; the holder gives 22 N/µm. */
const BEAM = { modulus: 600, poisson: 0.22, shear: true, stepFlexibility: true, holderStiffness: 22 };
const PARTS = [part(8, 22), part(10, 12)];
const MILL = { ...{ modulus: 600, holder: 22, poisson: 0.22, cones: false } };

/** Effective radial depth of a pass to the finished wall: where the cutter meets the wall before, by the law of cosines. */
function effective(start: number, finish: number, diameter: number): number {
  const r = diameter / 2;
  const inside = finish > start;
  const e = finish / 2 + (inside ? -r : r);
  const cos = ((inside ? 1 : -1) * ((start / 2) ** 2 - e * e - r * r)) / (2 * e * r);
  return r * (1 - cos);
}
const sineOf = (ae: number, diameter = 10) => Math.sqrt(1 - (1 - (2 * ae) / diameter) ** 2);

describe("steps of a bore opened from 28 to 30 mm (by hand)", () => {
  const row = { Operation: "bore", Tool: "EM-10-4", "Start diameter": 28, "Finish diameter": 30, Depth: 10, Passes: 1 };
  const ae = effective(28, 30, 10);
  // at the centre the listed chip over the sine of the engagement; at the edge of the bore 30/20 of it
  const centre = LISTED / sineOf(ae);
  const edge = (centre * 30) / 20;
  const rpm = rpmOf(155 * 1.35);
  const cut = () => millForces({ ...CUT, feedPerTooth: centre, radialDepth: ae, axialDepth: 10 });
  it("have what they were made from", () => {
    expect(ae).toBeCloseTo(1.45, 9);
    expect(all(at(row))).toMatchObject({
      pathRadius: { side: "inside" },
      speedRange: { engaged: 1.35 },
      spindleSpeed: { wanted: about(155 * 1.35), diameter: 10, cap: 8000, slow: false },
      surfaceSpeed: { rpm: about(rpm), diameter: 10 },
      radialDepth: { side: "inside", from: 28, to: 30, diameter: 10 },
      edgeFeed: { listed: about(LISTED), by: "chip" },
      edgeTable: { rpm: about(rpm), teeth: 4, feed: about(edge) },
      tableFeed: { edge: about(4 * rpm * edge, 6), finish: 30, diameter: 10, arc: "inside" },
      chip: { feed: about(centre), radialDepth: about(1.45), diameter: 10, edgeAngle: 90, held: false },
      leastChip: { fraction: 0.3 },
      mostChip: { runout: 0.01, teeth: 4 },
      roughness: { of: "wall" },
      axialDepth: { rise: false, levels: 1, helix: false },
      force: { thread: false },
      axialForce: { ratio: 0.2 },
      power: { efficiency: 0.85 },
      deflection: {
        ...{ ...MILL, thread: false, force: about(cut().peak, 6) },
        segments: [
          { diameter: 8, length: 17 },
          { diameter: 10, length: 12 },
        ],
      },
      stress: { notch: 1.3, allowed: about(3500 / 3), safety: 3 },
    });
  });
  it("come to what the formulas give", () => {
    const plan = at(row);
    const f = cut();
    const loaded = [part(8, 17), part(10, 12)];
    expect(plan.results).toMatchObject({
      ...{ tool: "EM-10-4", pathRadius: 10, startDiameter: 28, passes: 1, springPasses: 0, depths: [1] },
      ...{ feedPerTooth: about(edge), tableFeed: about(4 * rpm * centre, 6), radialDepth: about(1.45) },
      ...{ chipThickness: about(LISTED), force: about(f.peakTangential, 6) },
      ...{ power: about((2 * Math.PI * rpm * f.meanTorque) / 60_000 / 0.85, 6) },
    });
    expect(plan.results.neckGap).toBeUndefined();
    expect(value(plan, "edgeTable")).toBeCloseTo(4 * rpm * edge, 6);
    expect(value(plan, "leastChip")).toBeCloseTo(0.3 * 0.008, 12);
    expect(value(plan, "mostChip")).toBeCloseTo(LISTED + 0.01 * Math.SQRT1_2, 9);
    expect(value(plan, "axialDepth")).toBe(10);
    // The mean torque is the mean tangential force on half the diameter; the list's share of it acts along the axis.
    expect(value(plan, "axialForce")).toBeCloseTo((0.2 * 2 * 1000 * f.meanTorque) / 10, 6);
    expect(all(at(row, { material: { "Axial ratio": null } }))).not.toHaveProperty("axialForce");
    const bent = deflectionParts(f.peak, PARTS, { ...BEAM, loadDistance: 5 }).total;
    expect(value(plan, "deflection")).toBeCloseTo(bent, 9);
    expect(plan.results.deflection).toBeCloseTo(bent, 9);
    const stress = largestPrincipalStress(f.peak, loaded, {
      torque: f.meanTorque,
      notchFactor: 1.3,
      holderNotchFactor: 1,
    });
    expect(value(plan, "stress")).toBeCloseTo(stress.stress, 6);
    expect(plan.results.stress).toBeCloseTo((3 * stress.stress) / 3500, 9);
    const rz =
      1000 *
      wallRoughness({
        ...{ edgeFeed: edge, teeth: 4, diameter: 10, runout: 0.01, way: "climb" },
        arc: { diameter: 30, side: "inside" },
      });
    expect(value(plan, "roughness")).toBeCloseTo(rz, 9);
    expect(plan.results.theoreticalRz).toBeCloseTo(rz, 9);
    expect(plan.path).toMatchObject({
      kind: "wall",
      wall: { side: "inside", finish: 30, start: 28, stock: 1, depth: 10 },
    });
  });
  it("are held to machine, list and tool", () => {
    const f = cut();
    expect(limits(at(row))).toMatchObject({
      spindleSpeed: [about(rpm), 8000, undefined],
      chip: [about(LISTED), about(1.1 * LISTED), "length"],
      stickOut: [34, 40, "length"],
      stress: [about(value(at(row), "stress")), about(3500 / 3), "stress"],
      feed: [about(4 * rpm * centre, 6), 10_000, "feed"],
      // √(a·r) on a radius of 10 mm at 3 m/s²
      arcFeed: [about(4 * rpm * centre, 6), about(60 * Math.sqrt(3000 * 10), 6), "feed"],
      leastChip: [about(0.0024), about(LISTED), "length"],
      power: [about((2 * Math.PI * rpm * f.meanTorque) / 60_000 / 0.85, 6), 11, "power"],
      torque: [about(f.meanTorque / 0.85, 6), 80, "torque"],
    });
  });
  it("are drawn", () => {
    const plan = at(row);
    expect(plan.sketch).toMatchObject({
      ...{ kind: "bore", inside: true, holeDiameter: 30, startDiameter: 28, depth: 10, pathRadius: 10, depths: [1] },
      ...{ cutterDiameter: 10, deflection: about(value(plan, "deflection")) },
      tool: [
        { length: 22, diameter: 8, part: "cutting part" },
        { length: 12, diameter: 10, part: "shank" },
      ],
    });
    expect(at({ ...row, Through: "yes" }).sketch?.through).toBe(true);
  });
  it("of a worn edge, against the feed, of a material with less known of its force", () => {
    const force = (cells: RowCells, more: Omit<Case, "row"> = {}) => at({ ...row, ...cells }, more).results.force;
    const tangential = (more: Partial<MillCut>) =>
      about(millForces({ ...CUT, feedPerTooth: centre, radialDepth: ae, axialDepth: 10, ...more }).peakTangential, 6);
    expect(force({ "Wear factor": 1.4 })).toEqual(tangential({ kc11: 1.4 * 2220 }));
    const peak = (cells: RowCells, more: Omit<Case, "row"> = {}) =>
      facts(at({ ...row, ...cells }, more), "deflection").force;
    const bending = (more: Partial<MillCut>) =>
      about(millForces({ ...CUT, feedPerTooth: centre, radialDepth: ae, axialDepth: 10, ...more }).peak, 6);
    expect(peak({}, { material: { "Radial ratio": 0.6 } })).toEqual(bending({ radialRatio: 0.6 }));
    expect(peak({}, { material: { "Radial ratio": null } })).toEqual(bending({ radialRatio: 0.35 }));
    expect(peak({}, { tool: { Helix: null } })).toEqual(bending({ helixAngle: 0 }));
    expect(peak({ Way: "conventional" })).toEqual(bending({ way: "conventional" }));
    for (const none of [null, 0])
      expect(at(row, { material: { "Axial ratio": none } }).steps.map((s) => s.key)).not.toContain("axialForce");
    expect(force({}, { material: { Exponent: 0.2 } })).toEqual(tangential({ exponent: 0.2 }));
  });
  it("of a tool that the list tells less of", () => {
    const bare = at(row, {
      tool: { "Cutting length": null, "Shank diameter": null, "Notch factor": null, Runout: null },
    });
    expect(facts(bare, "deflection").segments).toEqual([{ diameter: 10, length: 29 }]);
    expect(facts(bare, "stress")).toMatchObject({ notch: 1 });
    expect(bare.steps.map((s) => s.key)).not.toContain("mostChip");
    const held = at(
      { ...row, "Stick-out": 30 },
      { tool: { "Safety factor": 4 }, machine: { "Holder stiffness [N/µm]": 11 } },
    );
    expect(facts(held, "deflection")).toMatchObject({ holder: 11 });
    expect(facts(held, "stress")).toMatchObject({ safety: 4, allowed: about(3500 / 4) });
    expect(limits(held).stickOut).toEqual([30, 40, "length"]);
    const none = at(row, { tool: { "Stick-out": null } });
    expect(none.steps.map((s) => s.key)).not.toContain("deflection");
    expect(none.sketch?.tool).toBeUndefined();
    expect(none.sketch?.deflection).toBeUndefined();
    expect(none.results.force).toBeCloseTo(cut().peakTangential, 6);
    // high-speed steel: 210 GPa, and Poisson's ratio of steel
    const steel = at(row, { tool: { Substrate: "HSS", "Modulus [GPa]": null } });
    expect(facts(steel, "deflection")).toMatchObject({ modulus: 210, poisson: 0.29 });
    expect(facts(at(row, { tool: { Substrate: null, "Modulus [GPa]": null } }), "deflection")).toMatchObject({
      modulus: 600,
      poisson: 0.22,
    });
    expect(facts(at(row, { tool: { "Modulus [GPa]": 550 } }), "deflection")).toMatchObject({ modulus: 550 });
  });
  it("of a material without a force: speed, feed and time, and the row says so", () => {
    const plan = at(row, { material: { "kc1.1 [MPa]": null } });
    expect(plan.findings.map((f) => f.code)).toContain("no-kc");
    expect(plan.results).toMatchObject({ tableFeed: about(4 * rpm * centre, 6), springPasses: 0, depths: [1] });
    expect(plan.results.force).toBeUndefined();
    expect(plan.time!.cutting).toBeGreaterThan(0);
    expect(at({ ...row, "Spring passes": 2 }, { material: { "kc1.1 [MPa]": null } }).results.depths).toEqual([1, 1, 1]);
  });
});

describe("steps of a bore from solid (by hand)", () => {
  const row = { Operation: "bore", Tool: "EM-10-4", "Start diameter": 0, "Finish diameter": 40, Depth: 10 };
  it("a ramp of 3° on a first circle of 1.9 cutters, and the slot that it is", () => {
    const plan = at(row);
    const rise = 2 * Math.PI * 4.5 * Math.tan((3 * Math.PI) / 180);
    expect(facts(plan, "rise")).toEqual({ typed: false, angle: 3, share: 0.25 });
    expect(value(plan, "rise")).toBeCloseTo(rise, 9);
    expect(facts(plan, "speedRange").engaged).toBeCloseTo(0.5 ** 0.25, 9);
    expect(facts(plan, "radialDepth")).toEqual({ side: "inside", from: 0, to: 19, diameter: 10 });
    expect(value(plan, "radialDepth")).toBe(10);
    expect(facts(plan, "axialDepth")).toEqual({ rise: false, levels: 1, helix: true });
    // 5 mm a pass from the first circle of 19 to 40
    expect(plan.results.depths).toEqual([9.5, 13, 16.5, 20].map((d) => about(d)));
    expect(plan.results.direction).toEqual({ path: "circle", axis: "down", turn: "counter-clockwise" });
    // the widest of the passes after the first, as deep as the bore, bends the tool most
    expect(facts(plan, "deflection").segments).toEqual([
      { diameter: 8, length: 17 },
      { diameter: 10, length: 12 },
    ]);
  });
  it("a typed axial depth is the rise; no more than the hole is deep, nor than a quarter of the cutter", () => {
    const typed = at({ ...row, "Axial depth": 2 });
    expect(facts(typed, "rise")).toMatchObject({ typed: true });
    expect(value(typed, "rise")).toBe(2);
    expect(value(at({ ...row, Depth: 1, "Axial depth": 2 }), "rise")).toBe(1);
    // on a first circle of 9.5 mm radius less the cutter the ramp would rise 2.96 of a cutter of 10: a wide one less
    expect(value(at({ ...row, Tool: "EM-12-4", "Finish diameter": 13 }), "rise")).toBeCloseTo(
      2 * Math.PI * 0.5 * Math.tan((3 * Math.PI) / 180),
      9,
    );
    const one = at({ ...row, "Finish diameter": 14 });
    expect(facts(one, "axialDepth")).toEqual({ rise: true, levels: 1, helix: true });
    expect(value(one, "axialDepth")).toBeCloseTo(2 * Math.PI * 2 * Math.tan((3 * Math.PI) / 180), 9);
    // a hole as wide as the cutter is room for it
    expect(at({ ...row, "Start diameter": 10 }).steps.map((s) => s.key)).not.toContain("rise");
    expect(at({ ...row, "Start diameter": 9.9 }).steps.map((s) => s.key)).toContain("rise");
  });
});

describe("steps of a boss and of sides (by hand)", () => {
  const boss = {
    Operation: "boss",
    Tool: "EM-10-4",
    "Start diameter": 62,
    "Finish diameter": 60,
    Depth: 10,
    Passes: 1,
  };
  const arc = { Operation: "side", Side: "outside", Tool: "EM-10-4", "Finish diameter": 60, Depth: 10, Length: 60 };
  const ae = effective(62, 60, 10);
  const centre = LISTED / sineOf(ae);
  it("outside, the centre runs farther than the edge", () => {
    for (const plan of [at(boss), at({ ...arc, "Radial depth": 1 })]) {
      expect(value(plan, "radialDepth")).toBeCloseTo(ae, 9);
      expect(facts(plan, "radialDepth")).toEqual({ side: "outside", from: 62, to: 60, diameter: 10 });
      expect(plan.results.tableFeed).toBeCloseTo(4 * rpmOf(155 * 1.35) * centre, 6);
      expect(plan.results.feedPerTooth).toBeCloseTo((centre * 60) / 70, 9);
      expect(facts(plan, "tableFeed")).toMatchObject({ finish: 60, diameter: 10, arc: "outside" });
      expect(limits(plan).arcFeed![1]).toBeCloseTo(60 * Math.sqrt(3000 * 35), 6);
    }
    expect(at(boss).results).toMatchObject({
      pathRadius: 35,
      startDiameter: 62,
      direction: { path: "circle", turn: "clockwise" },
    });
    expect(facts(at(boss), "pathRadius")).toEqual({ side: "outside" });
    // an edge that stands outside leaves more, one that goes against it less
    const rz = (way: "climb" | "conventional") =>
      1000 *
      wallRoughness({
        edgeFeed: (centre * 60) / 70,
        teeth: 4,
        diameter: 10,
        runout: 0.01,
        way,
        arc: { diameter: 60, side: "outside" },
      });
    expect(value(at(boss), "roughness")).toBeCloseTo(rz("climb"), 9);
    expect(value(at({ ...boss, Way: "conventional" }), "roughness")).toBeCloseTo(rz("conventional"), 9);
  });
  it("inside an arc of 60 mm a side takes from 58 to 60 mm", () => {
    const plan = at({ ...arc, Side: "inside", "Radial depth": 1 });
    expect(value(plan, "radialDepth")).toBeCloseTo(effective(58, 60, 10), 9);
    expect(facts(plan, "radialDepth")).toEqual({ side: "inside", from: 58, to: 60, diameter: 10 });
    expect(plan.sketch).toMatchObject({
      kind: "side",
      inside: true,
      holeDiameter: 60,
      startDiameter: 58,
      pathRadius: 25,
    });
    // from nothing, where the passes take all of it
    const whole = at({ ...arc, Side: "inside", "Radial depth": 8, Passes: 5, "Finish diameter": 40 });
    expect(whole.sketch?.startDiameter).toBe(0);
  });
  it("of two passes the one that takes more is told", () => {
    const two = at({ ...boss, "Start diameter": 64, Passes: 2 });
    const [first, second] = [effective(64, 62, 10), effective(62, 60, 10)];
    expect(first).toBeGreaterThan(second);
    expect(value(two, "radialDepth")).toBeCloseTo(first, 9);
    expect(facts(two, "radialDepth")).toEqual({ side: "outside", from: 64, to: 62, diameter: 10 });
    const inside = at({ ...boss, Operation: "bore", "Start diameter": 26, "Finish diameter": 30, Passes: 2 });
    const [one, other] = [effective(26, 28, 10), effective(28, 30, 10)];
    expect(value(inside, "radialDepth")).toBeCloseTo(Math.max(one, other), 9);
    expect(facts(inside, "radialDepth")).toMatchObject(one > other ? { from: 26, to: 28 } : { from: 28, to: 30 });
  });
  it("a straight side: the radial depth as it is, no path of a centre", () => {
    const plan = at({ Operation: "side", Tool: "EM-10-4", Depth: 10, Length: 60, "Radial depth": 1 });
    expect(facts(plan, "radialDepth")).toEqual({});
    expect(value(plan, "radialDepth")).toBe(1);
    expect(plan.results.tableFeed).toBeCloseTo((4 * rpmOf(155 * 1.35) * LISTED) / 0.6, 6);
    expect(facts(plan, "tableFeed")).toEqual({ rpm: about(rpmOf(155 * 1.35)), teeth: 4, feed: about(LISTED / 0.6) });
    expect(plan.sketch?.pathRadius).toBeUndefined();
    expect(plan.limits.map((l) => l.key)).not.toContain("arcFeed");
    expect(value(plan, "roughness")).toBeCloseTo(
      1000 * wallRoughness({ edgeFeed: LISTED / 0.6, teeth: 4, diameter: 10, runout: 0.01, way: "climb" }),
      9,
    );
  });
  it("a straight side with an inside corner as tight as the cutter: a slot's engagement at the corner", () => {
    const row = { Operation: "side", Tool: "EM-10-4", Depth: 10, Length: 60, "Radial depth": 1 };
    const [tight, wide] = [at({ ...row, "Inside corner": 5 }), at({ ...row, "Inside corner": 500 })];
    expect(value(tight, "radialDepth")).toBeGreaterThan(3);
    expect(value(wide, "radialDepth")).toBeGreaterThan(1);
    expect(value(wide, "radialDepth")).toBeLessThan(value(tight, "radialDepth"));
    // load counts there, the size does not
    expect(tight.results.force!).toBeGreaterThan(wide.results.force!);
    expect(tight.results.radialDepth).toBe(value(tight, "radialDepth"));
  });
});
