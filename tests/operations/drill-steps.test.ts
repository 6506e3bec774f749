/** What stands behind the numbers of a drilled hole: every step of a row with what it was made from, by hand. */
import { describe, expect, it } from "vitest";
import { drillBreakingTorque, drillBucklingThrust, HELD_POINT } from "../../src/drill/strength.ts";
import { CHISEL, standardChisel, wholeDrillThrust, wholeDrillTorque } from "../../src/drill/whole.ts";
import { about, STEEL } from "../findings/rule.ts";
import { at, facts, known, limits, value } from "./worked-out.ts";

/** Steel C45 by the list: kc1.1 and exponent; drilling speed and feed at 10 mm of high-speed steel. */
const [KC, M, SPEED, FEED] = [2220, 0.14, 25, 0.17];
const rpmOf = (speed: number, diameter: number) => (1000 * speed) / (Math.PI * diameter);
const TAN59 = Math.tan((59 * Math.PI) / 180);
const SIN59 = Math.sin((59 * Math.PI) / 180);

describe("steps of a drilled hole (by hand)", () => {
  const row = { Operation: "drill", Tool: "D-10.2", "Finish diameter": 10.2, Depth: 20 };
  const plan = at(row);
  const rpm = rpmOf(SPEED, 10.2);
  const perTurn = FEED * 1.02 ** 0.8;
  const feed = about(perTurn / 2);
  it("have what they were made from", () => {
    const drill = { diameter: 10.2, kc11: KC, exponent: M, pointAngle: 118, chisel: about(standardChisel(10.2)) };
    expect(Object.fromEntries(at(row).steps.map((s) => [s.key, known(s.facts)]))).toMatchObject({
      size: {},
      speedRange: { engaged: 1 },
      spindleSpeed: { wanted: about(25), diameter: 10.2, cap: 8000, slow: false },
      surfaceSpeed: { rpm: about(rpm), diameter: 10.2 },
      drillFeed: { ten: FEED, depth: 1, typed: false },
      tableFeed: { rpm: about(rpm), teeth: 2, feed, cap: 10_000 },
      chip: { feed, radialDepth: 10.2, diameter: 10.2, edgeAngle: 59, drill: true },
      leastChip: { fraction: 0.3 },
      torque: { ...drill, perRev: about(perTurn), cored: false },
      thrust: { ...drill, perRev: about(perTurn), cored: false },
      power: { efficiency: 0.85 },
      breakingTorque: { safety: 1.5 },
      buckling: { safety: 2 },
      travel: { depth: 20, diameter: 10.2, pointAngle: 118, out: 0 },
    });
  });
  it("come to what the formulas of the trade give", () => {
    const plan = at(row);
    // Machinery's Handbook (from memory): a drill of 10.2 mm cuts 0.117 over
    expect(value(plan, "size")).toBeCloseTo(10.317, 9);
    expect(value(plan, "drillFeed")).toBeCloseTo(perTurn, 9);
    expect(value(plan, "tableFeed")).toBeCloseTo(rpm * perTurn, 6);
    expect(value(plan, "chip")).toBeCloseTo((perTurn / 2) * SIN59, 9);
    expect(value(plan, "leastChip")).toBeCloseTo(0.3 * 0.015, 9);
    const chisel = standardChisel(10.2);
    expect(value(plan, "torque")).toBeCloseTo(wholeDrillTorque(10.2, perTurn, KC, M, 118, chisel), 6);
    expect(value(plan, "thrust")).toBeCloseTo(wholeDrillThrust(10.2, perTurn, KC, M, 118, chisel), 6);
    expect(value(plan, "breakingTorque")).toBeCloseTo(drillBreakingTorque(10.2, 3500, false), 6);
    expect(value(plan, "buckling")).toBeCloseTo(drillBucklingThrust(10.2, 96, 210, HELD_POINT), 4);
    expect(value(plan, "travel")).toBeCloseTo(20 + 5.1 / TAN59, 9);
    expect(plan.results).toMatchObject({
      ...{ tool: "D-10.2", drill: "10.2 mm", startDiameter: null, size: about(10.317), passes: 1, depths: null },
      ...{ feedPerTooth: feed, tableFeed: about(rpm * perTurn, 6), chipThickness: about((perTurn / 2) * SIN59) },
      ...{
        force: about(value(plan, "thrust")),
        stress: about((1.5 * value(plan, "torque")) / value(plan, "breakingTorque")),
      },
    });
  });
  it("are held to the tool, the spindle and the edge", () => {
    const [torque, thrust] = [value(plan, "torque"), value(plan, "thrust")];
    expect(limits(at(row))).toEqual({
      torsion: [about(torque), about(value(plan, "breakingTorque") / 1.5), "torque"],
      buckling: [about(thrust), about(value(plan, "buckling") / 2), "force"],
      torque: [about(torque / 0.85), 80, "torque"],
      power: [about((2 * Math.PI * rpm * torque) / 60_000 / 0.85), 11, "power"],
      spindleSpeed: [about(rpm), 8000, undefined],
      leastChip: [about(0.0045), about((perTurn / 2) * SIN59), "length"],
      feed: [about(rpm * perTurn, 6), 10_000, "feed"],
    });
    expect(at(row).path).toEqual({ kind: "pecks", bottoms: [about(20 + 5.1 / TAN59)] });
    expect(at(row).sketch).toMatchObject({
      ...{ kind: "drill", pointAngle: 118, holeDiameter: 10.2, depth: 20, cutterDiameter: 10.2 },
      tool: [{ length: 87, diameter: 10.2, part: "drill" }],
    });
  });
  it("of a core hole of 6 mm: its disc and its lips are gone, and the chisel edge with them", () => {
    const cored = at({ ...row, "Start diameter": 6 });
    expect(facts(cored, "torque")).toMatchObject({ chisel: 0, cored: true });
    expect(value(cored, "torque")).toBeCloseTo(
      (1 - (6 / 10.2) ** 2) * wholeDrillTorque(10.2, perTurn, KC, M, 118, 0),
      6,
    );
    expect(value(cored, "thrust")).toBeCloseTo((1 - 6 / 10.2) * wholeDrillThrust(10.2, perTurn, KC, M, 118, 0), 6);
    expect(cored.results.startDiameter).toBe(6);
    // one of 95 % only guides the point
    for (const [start, is] of [
      [0.95 * 10.2 - 1e-6, true],
      [0.95 * 10.2 + 1e-6, false],
      [0, false],
    ] as const)
      expect(facts(at({ ...row, "Start diameter": start }), "torque").cored, String(start)).toBe(is);
    expect(at({ ...row, "Start diameter": 0 }).results.startDiameter).toBeNull();
  });
  it("of a carbide drill: a split point, unless the list tells its chisel edge; a worn one cuts harder", () => {
    const carbide = { ...row, Tool: "D-10.2C" };
    expect(facts(at(carbide), "torque")).toMatchObject({ chisel: CHISEL.split, pointAngle: 140 });
    expect(facts(at(row, { tool: { "Chisel ratio": 0.1 } }), "torque")).toMatchObject({ chisel: 0.1 });
    expect(value(at({ ...row, "Wear factor": 1.4 }), "torque") / value(plan, "torque")).toBeCloseTo(1.4, 9);
    expect(value(at({ ...row, "Wear factor": 1.4 }), "thrust") / value(plan, "thrust")).toBeCloseTo(1.4, 9);
  });
  it("with a drill that is not listed: 118°, two lips, high-speed steel, a half as long again as the hole", () => {
    const bare = at({ ...row, "Finish diameter": 10.25, Tool: "no such" });
    expect(facts(bare, "chip")).toMatchObject({ edgeAngle: 59, diameter: 10.25 });
    expect(facts(bare, "tableFeed")).toMatchObject({ teeth: 2 });
    expect(value(bare, "spindleSpeed")).toBeCloseTo(rpmOf(SPEED, 10.25), 6);
    expect(bare.sketch?.tool).toEqual([{ length: 30, diameter: 10.25, part: "drill" }]);
    expect(facts(bare, "torque")).toMatchObject({ chisel: about(standardChisel(10.25)) });
    expect(bare.limits.map((l) => l.key)).not.toContain("torsion");
    expect(bare.results.tool).toBeNull();
    // and so where the list is silent about the drill
    const silent = at(row, { tool: { Teeth: null, "Point angle": null, Substrate: null, "Cutting length": null } });
    expect(facts(silent, "torque")).toMatchObject({ pointAngle: 118, chisel: about(standardChisel(10.2)) });
    expect(facts(silent, "tableFeed")).toMatchObject({ teeth: 2 });
    expect(silent.sketch?.tool).toEqual([{ length: 30, diameter: 10.2, part: "drill" }]);
    const three = at(row, { tool: { Teeth: 3 } });
    expect(facts(three, "tableFeed")).toMatchObject({ teeth: 3, feed: about(perTurn / 3) });
    expect(three.results.feedPerTooth).toBeCloseTo(perTurn / 3, 9);
  });
  it("at a typed feed say so", () => {
    const typed = at({ ...row, "Feed per tooth": 0.08 });
    expect(facts(typed, "drillFeed")).toEqual({ depth: 1, typed: true });
    expect(value(typed, "drillFeed")).toBeCloseTo(0.16, 12);
  });
  it("where the list has no drilling feed: a lip takes half as much again as a mill's tooth of that size", () => {
    const blank = at(row, { material: { "Drill feed HSS [mm per turn at 10 mm]": null } });
    // the list between 6 and 12 mm
    const tooth = 0.03 + (0.04 * 4.2) / 6;
    expect(value(blank, "drillFeed")).toBeCloseTo(2 * 1.5 * tooth, 9);
    expect(facts(blank, "drillFeed")).toEqual({ depth: 1, typed: false });
    const NONE = Object.fromEntries([3, 6, 12, 20].map((d) => [`Feed ${d} mm [mm per tooth]`, null]));
    const none = at(row, { material: { ...NONE, "Drill feed HSS [mm per turn at 10 mm]": null } });
    expect(none.findings.find((f) => f.code === "no-feed")?.facts).toEqual({ material: STEEL.Material });
    expect(none.results.tableFeed).toBeUndefined();
  });
  it("without a depth: all but the time", () => {
    const open = at({ ...row, Depth: null });
    expect(open.results.force).toBeGreaterThan(0);
    expect(open.time).toBeUndefined();
    expect(open.path).toBeUndefined();
    expect(facts(open, "drillFeed")).toMatchObject({ depth: 1 });
  });
  it("of a deep hole go slower, and in pecks; not with coolant through the drill", () => {
    // 6 diameters: nine tenths of speed and feed
    const deep = at({ ...row, Depth: 61.2 });
    const { depth } = facts(deep, "drillFeed") as { depth: number };
    expect(depth).toBeLessThan(1);
    expect(value(deep, "drillFeed")).toBeCloseTo(depth * perTurn, 9);
    expect(value(deep, "surfaceSpeed")).toBeLessThan(25);
    const pecks = value(deep, "pecks") as unknown as number[];
    expect(deep.results.passes).toBe(pecks.length);
    expect(deep.results.depths).toEqual({ pecks: pecks.length });
    expect(pecks.at(-1)).toBeCloseTo(61.2 + 5.1 / TAN59, 9);
    const through = at({ ...row, Depth: 61.2 }, { tool: { "Coolant through": "yes" } });
    expect(value(through, "drillFeed")).toBeCloseTo(perTurn, 9);
    expect(value(through, "surfaceSpeed")).toBeCloseTo(25, 9);
    expect(through.results.passes).toBe(1);
    expect(through.steps.map((s) => s.key)).not.toContain("pecks");
    expect(through.results.depths).toBeNull();
  });
});
