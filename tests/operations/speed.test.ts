/** Speed and feed of a row against the lists, worked out by hand. */
import { describe, expect, it } from "vitest";
import { MATERIALS } from "../../src/lists/materials.ts";
import { planOf, type RowCells, STEEL } from "../findings/rule.ts";

const at = (row: RowCells, more: { tool?: RowCells; machine?: RowCells; material?: RowCells } = {}) =>
  planOf({ row: { ...STEEL, ...row }, ...more });
const listed = (heading: string) =>
  MATERIALS.find((m) => m[0] === STEEL.Material)![MATERIALS[0]!.indexOf(heading)] as number;
const facts = (plan: ReturnType<typeof at>, code: string) => plan.findings.find((f) => f.code === code)?.facts;

const drill = { Operation: "drill", Tool: "D-10.2", "Finish diameter": 10.2, Depth: 15 };
const slot = { Operation: "slot", Tool: "EM-10-4", Depth: 5, Length: 60 };

describe("speed of a hole tool (independent)", () => {
  const rpm = (v: number, d: number) => (1000 * v) / (Math.PI * d);
  it("a drill runs at the listed drilling speed of its substrate", () => {
    expect(at(drill).results.spindleSpeed).toBeCloseTo(rpm(listed("Drill speed HSS [m/min]"), 10.2), 6);
    const carbide = at({ ...drill, Tool: "D-10.2C" });
    expect(carbide.results.spindleSpeed).toBeCloseTo(rpm(listed("Drill speed carbide [m/min]"), 10.2), 6);
  });
  it("a drill of which the list does not say the substrate runs as one of high-speed steel, at its feed", () => {
    const blank = { tool: { Substrate: null } };
    for (const key of ["spindleSpeed", "feedPerTooth"] as const)
      expect(at(drill, blank).results[key]).toBe(at(drill).results[key]);
    const speeds = ["Drill speed HSS [m/min]", "Speed HSS low [m/min]", "Speed HSS high [m/min]"];
    const material = Object.fromEntries(speeds.map((heading) => [heading, null]));
    expect(facts(at(drill, { ...blank, material }), "no-speed")).toEqual({ material: STEEL.Material, hss: true });
  });
  it("a tap and a reamer run at two fifths of a drill's speed (common practice: a third to a half)", () => {
    const v = 0.4 * listed("Drill speed HSS [m/min]");
    const tap = at({ Operation: "tap", Tool: "T-M6", Thread: "M6", "Start diameter": 5, Depth: 9, Through: "yes" });
    expect(tap.results.spindleSpeed).toBeCloseTo(rpm(v, 6), 6);
    const ream = at({ Operation: "ream", Tool: "R-10", "Finish diameter": 10, Depth: 9, Through: "yes" });
    expect(ream.results.spindleSpeed).toBeCloseTo(rpm(v, 10), 6);
  });
  it("where the list has no drilling speed, a quarter up the milling range, for carbide six tenths of it", () => {
    const blank = { "Drill speed HSS [m/min]": null, "Drill speed carbide [m/min]": null };
    const quarter = (low: string, high: string) => listed(low) + 0.25 * (listed(high) - listed(low));
    const hss = at(drill, { material: blank });
    const v = quarter("Speed HSS low [m/min]", "Speed HSS high [m/min]");
    expect(hss.results.surfaceSpeed).toBeCloseTo(v, 6);
    const carbide = at({ ...drill, Tool: "D-10.2C" }, { material: blank });
    const w = 0.6 * quarter("Speed carbide low [m/min]", "Speed carbide high [m/min]");
    expect(carbide.results.surfaceSpeed).toBeCloseTo(w, 6);
  });
  it("a typed speed is taken as it is", () => {
    expect(at({ ...drill, "Surface speed": 17 }).results.surfaceSpeed).toBeCloseTo(17, 9);
    expect(at({ ...slot, "Surface speed": 77 }).results.surfaceSpeed).toBeCloseTo(77, 9);
  });
  it("nothing tells it: no speed, and the row says so", () => {
    const blank = {
      ...{ "Drill speed HSS [m/min]": null, "Speed HSS low [m/min]": null, "Speed HSS high [m/min]": null },
    };
    const plan = at(drill, { material: blank });
    expect(facts(plan, "no-speed")).toEqual({ material: STEEL.Material, hss: true });
    expect(plan.results.spindleSpeed ?? null).toBeNull();
  });
});

describe("what holds a spindle speed down (a machinist's rule: the lowest of machine, tool and row)", () => {
  // Surface speed 150 on 10 mm is 4775 rpm
  const row = { ...slot, "Surface speed": 150 };
  const free = (1000 * 150) / (Math.PI * 10);
  it.each([
    ["machine", {}, { machine: { "Max rpm": 4000 } }, 4000],
    ["tool", {}, { tool: { "Max rpm": 3900 } }, 3900],
    ["row", { "Max rpm": 3800 }, {}, 3800],
    ["row", { "Max rpm": 3800 }, { machine: { "Max rpm": 4000 }, tool: { "Max rpm": 3900 } }, 3800],
    ["tool", { "Max rpm": 4100 }, { machine: { "Max rpm": 4000 }, tool: { "Max rpm": 3900 } }, 3900],
    ["machine", { "Max rpm": 4100 }, { machine: { "Max rpm": 3700 }, tool: { "Max rpm": 3900 } }, 3700],
  ] as const)("%s", (by, cells, more, wanted) => {
    const plan = at({ ...row, ...cells }, more);
    expect(plan.results.spindleSpeed).toBeCloseTo(wanted, 9);
    expect(facts(plan, "speed-capped")).toMatchObject({ by, limit: wanted });
    expect((facts(plan, "speed-capped") as { value: number }).value).toBeCloseTo(free, 6);
    const load = plan.limits.find((l) => l.key === "spindleSpeed")!;
    expect(load.load).toBeCloseTo(1, 9);
  });
  it("nothing does: it runs free, and the limit says how near it is", () => {
    const plan = at(row, { machine: { "Max rpm": 9549 } });
    expect(plan.results.spindleSpeed).toBeCloseTo(free, 6);
    expect(facts(plan, "speed-capped")).toBeUndefined();
    expect(plan.limits.find((l) => l.key === "spindleSpeed")!.load).toBeCloseTo(free / 9549, 9);
  });
  it("a slow machine's lowest speed, and the row is told", () => {
    const plan = at({ ...slot, "Surface speed": 5 }, { machine: { "Min rpm": 300 } });
    expect(plan.results.spindleSpeed).toBeCloseTo(300, 9);
    expect(facts(plan, "speed-under-machine")).toMatchObject({ value: 300 });
    expect(
      facts(at({ ...slot, "Surface speed": 10 }, { machine: { "Min rpm": 300 } }), "speed-under-machine"),
    ).toBeUndefined();
  });
});

describe("feed of a drill (independent)", () => {
  it("the list's at 10 mm, in proportion to what a drill of the size takes; a typed one is per tooth", () => {
    const typed = at({ ...drill, "Feed per tooth": 0.08 });
    // two lips
    expect(typed.results.tableFeed! / typed.results.spindleSpeed!).toBeCloseTo(0.16, 9);
  });
  it("a feed of one and a half times the list's is looked at, three times is stopped", () => {
    const plan = at(drill);
    const lip = plan.results.tableFeed! / plan.results.spindleSpeed! / 2;
    const found = (times: number) =>
      at({ ...drill, "Feed per tooth": times * lip }).findings.find((f) => f.code === "feed-over-list");
    expect(found(1.49)).toBeUndefined();
    expect(found(1.51)?.severity).toBe("check");
    expect(found(2.99)?.severity).toBe("check");
    expect(found(3.01)?.severity).toBe("stop");
    expect(found(3.01)?.facts).toMatchObject({ listed: expect.closeTo(2 * lip, 9), limit: expect.closeTo(6 * lip, 9) });
  });
});
