/** What stands behind the numbers of a tapped, reamed or countersunk hole: every step of a row with what it was made from, by hand. */
import { describe, expect, it } from "vitest";
import { ringTorque } from "../../src/drill/ream.ts";
import { tapBreakingTorque, tapTorque } from "../../src/thread/tapping.ts";
import { about, type RowCells } from "../findings/rule.ts";
import { at, facts, known, limits, value } from "./worked-out.ts";

/** Steel C45 by the list: kc1.1 and exponent; drilling speed and feed at 10 mm of high-speed steel. */
const [KC, M, FEED] = [2220, 0.14, 0.17];
const rpmOf = (speed: number, diameter: number) => (1000 * speed) / (Math.PI * diameter);

describe("steps of a tapped hole (by hand)", () => {
  const row = { Operation: "tap", Tool: "T-M6", Thread: "M6", "Start diameter": 5, Depth: 10 };
  const cut = { kc11: KC, exponent: M, flutes: 3, chamferThreads: 4 };
  const torqueOf = (more: object = {}) =>
    tapTorque({ ...cut, major: 6, pitch: 1, profileAngle: 60, holeDiameter: 5, ...more });
  it("have what they were made from", () => {
    const thread = { thread: "M6×1-6H", standard: "metric" };
    expect(Object.fromEntries(at(row).steps.map((s) => [s.key, known(s.facts)]))).toMatchObject({
      ...{ pitch: thread, pitchMin: thread, pitchMax: thread, minorMin: thread, minorMax: thread },
      percent: { thread: "M6×1-6H", hole: 5 },
      speedRange: { engaged: 1 },
      spindleSpeed: { wanted: about(10), diameter: 6, cap: 8000, slow: false },
      tableFeed: { perTurn: "pitch" },
      tapTorque: { ...cut, thread: "M6×1-6H", hole: 5 },
      breakingTorque: { safety: 1.5 },
      tappedHole: { depth: 10, pitch: 1, chamfer: 4 },
    });
    expect(value(at(row), "percent")).toBeCloseTo(100 / (0.75 * Math.sqrt(3)), 9);
  });
  it("come to what the formulas give", () => {
    const plan = at(row);
    const breaks = tapBreakingTorque(6, 3500, false);
    expect(value(plan, "tapTorque")).toBeCloseTo(torqueOf(), 9);
    expect(value(plan, "breakingTorque")).toBeCloseTo(breaks, 9);
    expect(value(plan, "tappedHole")).toBeCloseTo(14, 12);
    expect(limits(plan)).toEqual({
      torsion: [about(torqueOf()), about(breaks / 1.5), "torque"],
      torque: [about(torqueOf() / 0.85), 80, "torque"],
      power: [about((2 * Math.PI * rpmOf(10, 6) * torqueOf()) / 60_000 / 0.85), 11, "power"],
      spindleSpeed: [about(rpmOf(10, 6)), 8000, undefined],
      feed: [about(rpmOf(10, 6)), 10_000, "feed"],
    });
    expect(plan.results).toMatchObject({
      ...{
        tool: "T-M6",
        startDiameter: 5,
        drill: "5 mm",
        feedPerTooth: null,
        stress: about((1.5 * torqueOf()) / breaks),
      },
      ...{ sizeMin: about(5.35, 3), sizeMax: about(5.5, 3), tableFeed: about(rpmOf(10, 6)) },
    });
    expect(value(at({ ...row, "Wear factor": 1.4 }), "tapTorque")).toBeCloseTo(torqueOf({ kc11: 1.4 * KC }), 9);
  });
  it("with a tap that is not listed: three flutes, a plug chamfer, high-speed steel of 3500 MPa", () => {
    for (const plan of [
      at({ ...row, Tool: "no such" }),
      at(row, { tool: { Teeth: null, "Chamfer [pitches]": null, Substrate: null, "Rupture strength [MPa]": null } }),
    ]) {
      expect(facts(plan, "tapTorque")).toMatchObject({ flutes: 3, chamferThreads: 4 });
      expect(value(plan, "breakingTorque")).toBeCloseTo(tapBreakingTorque(6, 3500, false), 9);
      expect(value(plan, "spindleSpeed")).toBeCloseTo(rpmOf(10, 6), 6);
    }
    const other = at(row, {
      tool: { Teeth: 4, "Chamfer [pitches]": 2, Substrate: "carbide", "Rupture strength [MPa]": 3000, "Max rpm": 400 },
    });
    expect(facts(other, "tapTorque")).toMatchObject({ flutes: 4, chamferThreads: 2 });
    expect(value(other, "breakingTorque")).toBeCloseTo(tapBreakingTorque(6, 3000, true), 9);
    expect(facts(other, "spindleSpeed")).toMatchObject({ cap: 400, by: "tool" });
  });
  it("of a hole that the row chooses: the drill, and what it cuts over", () => {
    const plan = at({ ...row, "Start diameter": null });
    // Machinery's Handbook (from memory): 0.0762 over at 3.175, 0.1016 at 6.35; a carbide drill holds a third of that, and so comes
    // nearer to the middle of 4.917 to 5.153 than one of high-speed steel
    expect(facts(plan, "startDiameter")).toEqual({ oversize: about((0.0762 + (0.0254 * (5 - 3.175)) / 3.175) / 3) });
    expect(value(plan, "startDiameter")).toBe(5);
    expect(at(row).steps.map((s) => s.key)).not.toContain("startDiameter");
    expect(at({ ...row, "Start diameter": 0 }).results.startDiameter).toBe(5);
  });
  it("a hole as large as the thread leaves no torque and no percent; nor is it compared", () => {
    const wide = at({ ...row, "Start diameter": 6 });
    expect(wide.steps.map((s) => s.key)).not.toContain("tapTorque");
    expect(value(wide, "percent")).toBeCloseTo(0, 9);
    expect(facts(wide, "percent")).toEqual({ thread: "M6×1-6H", hole: 6 });
    expect(facts(at({ ...row, "Start diameter": 6.5 }), "percent")).toEqual({});
    expect(value(at({ ...row, "Start diameter": 6.5 }), "percent")).toBeCloseTo(0, 9);
  });
  it("without a depth: no time, nothing of the lead", () => {
    const open = at({ ...row, Depth: null });
    expect(open.time).toBeUndefined();
    expect(open.steps.map((s) => s.key)).not.toContain("tappedHole");
    expect(value(open, "tapTorque")).toBeCloseTo(torqueOf(), 9);
  });
});

describe("steps of a reamed hole (by hand)", () => {
  const row = { Operation: "ream", Tool: "R-10", "Finish diameter": 10, "Start diameter": 9.8, Depth: 20 };
  const torque = (teeth = 6, start = 9.8, kc = KC) => ringTorque(10, start, 1.5 * FEED, teeth, 45, kc, M);
  it("one and a half times a drill's feed, the ring's torque on six teeth at 45°", () => {
    const plan = at(row);
    expect(facts(plan, "tableFeed")).toEqual({ perTurn: "feed" });
    expect(facts(plan, "ringTorque")).toEqual({ teeth: 6 });
    expect(value(plan, "ringTorque")).toBeCloseTo(torque(), 9);
    expect(value(at({ ...row, "Wear factor": 1.4 }), "ringTorque")).toBeCloseTo(torque(6, 9.8, 1.4 * KC), 9);
    expect(plan.results).toMatchObject({
      ...{ tool: "R-10", startDiameter: 9.8, drill: "9.8 mm", feedPerTooth: about(0.255) },
      ...{ tableFeed: about(0.255 * rpmOf(10, 10)), sizeMin: about(10), sizeMax: about(10.015), size: about(10.0075) },
    });
  });
  it("two hundredths of the diameter where the list has no drilling feed; a typed one as it is", () => {
    const blank = at(row, { material: { "Drill feed HSS [mm per turn at 10 mm]": null } });
    expect(blank.results.feedPerTooth).toBeCloseTo(0.2, 12);
    expect(at({ ...row, "Feed per tooth": 0.3 }).results.feedPerTooth).toBeCloseTo(0.3, 12);
    const over = (feed: number) =>
      at({ ...row, "Feed per tooth": feed }).findings.find((f) => f.code === "feed-over-list");
    expect(over(1.5 * 0.255)).toBeUndefined();
    expect(over(0.39)?.facts).toEqual({ value: about(0.39), limit: about(1.5 * 0.255), listed: about(0.255) });
    expect(over(3 * 0.255)?.severity).toBe("check");
    expect(over(0.77)?.severity).toBe("stop");
  });
  it("a reamer that is not listed has six teeth and makes H7; a listed one what its row says", () => {
    for (const plan of [at({ ...row, Tool: "no such" }), at(row, { tool: { Teeth: null, "Size class": null } })]) {
      expect(facts(plan, "ringTorque")).toEqual({ teeth: 6 });
      expect(plan.results.sizeMax).toBeCloseTo(10.015, 9);
      expect(value(plan, "spindleSpeed")).toBeCloseTo(rpmOf(10, 10), 6);
    }
    expect(at({ ...row, Tool: "no such" }).results.tool).toBeNull();
    const other = at(row, { tool: { Teeth: 8, "Size class": "H8" } });
    expect(facts(other, "ringTorque")).toEqual({ teeth: 8 });
    // ISO 286: H8 at 10 is 0.022
    expect(other.results.sizeMax).toBeCloseTo(10.022, 9);
  });
  it("a hole that is chosen: the drill, and what it cuts over", () => {
    const plan = at({ ...row, "Start diameter": null });
    // 9.7 makes 9.815 (0.1016 at 6.35, 0.127 at 12.7 mm)
    expect(value(plan, "startDiameter")).toBe(9.7);
    expect(facts(plan, "startDiameter")).toEqual({ oversize: about(0.1016 + (0.0254 * 3.35) / 6.35) });
    expect(value(plan, "ringTorque")).toBeCloseTo(torque(6, 9.7), 9);
    expect(at(row).steps.map((s) => s.key)).not.toContain("startDiameter");
  });
  it("in the air, or of a material without a force, has no torque", () => {
    const air = at({ ...row, "Start diameter": 10 });
    expect(air.steps.map((s) => s.key)).not.toContain("ringTorque");
    expect(at(row, { material: { "kc1.1 [MPa]": null } }).steps.map((s) => s.key)).not.toContain("ringTorque");
    expect(air.time!.cutting).toBeGreaterThan(0);
  });
  it("without a depth: no time, the rest as it is", () => {
    const open = at({ ...row, Depth: null });
    expect(open.time).toBeUndefined();
    expect(value(open, "ringTorque")).toBeCloseTo(torque(), 9);
  });
});

describe("steps of a countersink (by hand)", () => {
  const row = { Operation: "countersink", Tool: "CS-12.5", "Finish diameter": 10, "Start diameter": 6 };
  const torque = (teeth = 3, angle = 90, kc = KC, start = 6) =>
    ringTorque(10, start, 0.6 * FEED, teeth, angle / 2, kc, M);
  it("six tenths of a drill's feed, the ring's torque on three teeth at half the cone", () => {
    const plan = at(row);
    expect(facts(plan, "ringTorque")).toEqual({ teeth: 3 });
    expect(facts(plan, "tableFeed")).toEqual({ perTurn: "feed" });
    expect(value(plan, "ringTorque")).toBeCloseTo(torque(), 9);
    expect(value(at({ ...row, "Wear factor": 1.4 }), "ringTorque")).toBeCloseTo(torque(3, 90, 1.4 * KC), 9);
    expect(plan.results).toMatchObject({
      ...{ tool: "CS-12.5", startDiameter: 6, feedPerTooth: about(0.102), tableFeed: about(0.102 * rpmOf(10, 10)) },
    });
    const solid = at({ ...row, "Start diameter": null });
    expect(value(solid, "ringTorque")).toBeCloseTo(torque(3, 90, KC, 0), 9);
    for (const none of [null, 0])
      expect(at({ ...row, "Start diameter": none }).results.startDiameter, String(none)).toBeNull();
  });
  it("a hundredth of the diameter where the list has no drilling feed", () => {
    const blank = at(row, { material: { "Drill feed HSS [mm per turn at 10 mm]": null } });
    expect(blank.results.feedPerTooth).toBeCloseTo(0.1, 12);
    expect(at({ ...row, "Feed per tooth": 0.11 }).results.feedPerTooth).toBeCloseTo(0.11, 12);
  });
  it("one that is not listed has 90° and three teeth; a listed one what its row says", () => {
    for (const plan of [at({ ...row, Tool: "no such" }), at(row, { tool: { Teeth: null, "Point angle": null } })]) {
      expect(facts(plan, "ringTorque")).toEqual({ teeth: 3 });
      expect(value(plan, "ringTorque")).toBeCloseTo(torque(), 9);
      expect(value(plan, "spindleSpeed")).toBeCloseTo(rpmOf(10, 10), 6);
    }
    expect(at({ ...row, Tool: "no such" }).results.tool).toBeNull();
    const other = at(row, { tool: { Teeth: 5, "Point angle": 120 } });
    expect(facts(other, "ringTorque")).toEqual({ teeth: 5 });
    expect(value(other, "ringTorque")).toBeCloseTo(torque(5, 120), 9);
    expect(at(row, { tool: { Diameter: null } }).findings).toEqual([]);
  });
  it("of a material without a force: said, and planned all the same", () => {
    const plan = at(row, { material: { "kc1.1 [MPa]": null } });
    expect(plan.findings.map((f) => [f.code, f.facts])).toEqual([["no-kc", { bending: false }]]);
    expect(plan.time!.cutting).toBeGreaterThan(0);
  });
  it("as wide as its hole cuts nothing", () => {
    const none = at({ ...row, "Start diameter": 10 });
    expect(none.findings.find((f) => f.code === "no-stock")?.facts).toEqual({ value: 10, limit: 10 });
    expect(none.results.tableFeed).toBeUndefined();
    expect(at({ ...row, "Start diameter": 9.99 }).findings.map((f) => f.code)).not.toContain("no-stock");
  });
  it("through the work may meet nothing below; a blind one may", () => {
    const codes = (cells: RowCells) => at({ ...row, ...cells }).findings.map((f) => f.code);
    expect(codes({ "Hole depth": 4.9 })).toContain("point-through-bottom");
    expect(codes({ "Hole depth": 5 })).not.toContain("point-through-bottom");
    expect(codes({ "Hole depth": 4.9, Through: "yes" })).not.toContain("point-through-bottom");
  });
});
