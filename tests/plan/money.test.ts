/** Time and money of a row, added up by hand from the lists. */
import { describe, expect, it } from "vitest";
import { planRow } from "../../src/plan/row.ts";
import { sharedSetups } from "../../src/plan/setups.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import { type Case, caseLists, caseRow, planOf, type RowCells, STEEL } from "../findings/rule.ts";

// Centre V3: 74 an hour, 35 min to set up, 6 s to change the tool. EM-10-4: 48, one edge.
const side = { Operation: "side", Tool: "EM-10-4", Depth: 10, Length: 100, "Radial depth": 1, "Surface speed": 200 };
const at = (row: RowCells, more: Omit<Case, "row"> = {}) => planOf({ row: { ...STEEL, ...side, ...row }, ...more });
const each = (plan: ReturnType<typeof at>) => plan.time!.cutting + plan.time!.moving + plan.time!.waiting;

describe("time of a row (identity)", () => {
  it("is each feature as often as there are, and one change of the tool", () => {
    for (const quantity of [1, 3, 20]) {
      const plan = at({ Quantity: quantity });
      expect(plan.results.timeEach).toBeCloseTo(each(plan), 12);
      expect(plan.results.time).toBeCloseTo(quantity * each(plan) + 6, 9);
    }
    expect(at({}).results.time).toBe(at({ Quantity: 1 }).results.time);
    expect(at({}, { machine: { "Tool change [s]": null } }).results.time).toBeCloseTo(each(at({})), 9);
  });
  it("waits where a cone turns at the bottom, and the plan says whose row it is", () => {
    const sink = { Operation: "countersink", "Start diameter": 6, "Finish diameter": 12 };
    const plan = planOf({ row: { ...STEEL, ...sink } });
    const { cutting, moving, waiting } = plan.time!;
    expect(waiting).toBeGreaterThan(0);
    expect(plan.results.timeEach).toBeCloseTo(cutting + moving + waiting, 9);
    expect(plan.operation).toBe("countersink");
  });
  it("that acceleration lengthens is said: a fifth and half a second more than the feed alone takes", () => {
    const codes = (a: number, length = 100) =>
      at(
        { Length: length, "Feed per tooth": 0.05 },
        { machine: { "Acceleration [m/s²]": a, "Ramp time [s]": 0 } },
      ).findings.map((f) => f.code);
    expect(codes(3)).not.toContain("acceleration-time");
    expect(codes(0.01)).toContain("acceleration-time");
    // how much: the time beyond that of the feed alone, as often as there are features
    const slow = at(
      { "Feed per tooth": 0.05, Quantity: 3 },
      { machine: { "Acceleration [m/s²]": 0.01, "Ramp time [s]": 0 } },
    );
    const said = slow.findings.find((f) => f.code === "acceleration-time")!;
    expect(said.facts).toMatchObject({ value: slow.time!.cutting, limit: slow.time!.ideal });
    expect((said.facts as { more: number }).more).toBeCloseTo(3 * (slow.time!.cutting - slow.time!.ideal), 9);
    // a short move: a large share, but no half a second
    expect(codes(0.2, 1)).not.toContain("acceleration-time");
  });
  it("that only a measured cycle lengthens is no matter of acceleration", () => {
    const codes = (factor: number, a: number) =>
      at(
        { Length: 100, "Feed per tooth": 0.05 },
        { machine: { "Acceleration [m/s²]": a, "Ramp time [s]": 0, "Cycle factor": factor } },
      ).findings.map((f) => f.code);
    expect(codes(3, 3)).not.toContain("acceleration-time");
    expect(codes(0.5, 0.01)).toContain("acceleration-time");
  });
});

describe("money of a row (identity)", () => {
  const cost = (row: RowCells, more: Omit<Case, "row"> = {}) => at(row, more).results.cost!;
  it("is the machine's hours and the edge's wear, without a batch no setup", () => {
    const plan = at({ Quantity: 5 });
    const life = plan.steps.find((s) => s.key === "life")!.value as number;
    const machine = (74 * plan.results.time!) / 3600;
    const tool = ((plan.time!.cutting * 5) / 60 / life) * 48;
    expect(plan.money!.machine).toBeCloseTo(machine, 9);
    expect(plan.money!.tool).toBeCloseTo(tool, 9);
    expect(plan.money!.setup).toBe(0);
    expect(plan.results.cost).toBeCloseTo(machine + tool, 9);
    expect(plan.life).toBe(life);
  });
  it("in a batch each part bears its share of the setup: 35 min at 74 an hour over 10 is 4.317", () => {
    expect(cost({ Batch: 10 }) - cost({})).toBeCloseTo((74 * 35) / 60 / 10, 9);
    expect(at({ Batch: 10 }).money!.setup).toBeCloseTo((74 * 35) / 60 / 10, 9);
    expect(cost({ Batch: 10 }, { machine: { "Setup [min]": null } })).toBeCloseTo(cost({}), 9);
  });
  it("rows on one machine share its setup", () => {
    const one = { row: { ...STEEL, ...side, Batch: 10 } };
    const plan = planRow(caseRow(one), caseLists(one), 4);
    expect(plan.money!.setup).toBeCloseTo((74 * 35) / 60 / 10 / 4, 9);
  });
  it("an edge costs its part of the tool's price: with two edges half as much", () => {
    const tool = (cells: RowCells) => at({}, { tool: cells }).money!.tool;
    expect(tool({}) / tool({ Edges: 2 })).toBeCloseTo(2, 9);
    expect(tool({ Price: 96 }) / tool({})).toBeCloseTo(2, 9);
    expect(tool({ Price: null })).toBe(0);
    expect(tool({ Edges: null })).toBeCloseTo(tool({ Edges: 1 }), 12);
  });
  it("Taylor: a fifth faster wears the edge 1.2⁴ as fast, for n of 0.25", () => {
    const life = (v: number) => at({ "Surface speed": v }).life!;
    expect(life(150) / life(180)).toBeCloseTo(1.2 ** 4, 6);
  });
  it("nothing is known of the life of high-speed steel, nor without Taylor's figures: no wear in the cost", () => {
    for (const plan of [
      at({ Tool: "EM-12-4H", "Surface speed": 30 }),
      at({}, { material: { "Taylor n": null } }),
      at({}, { material: { "Reference life [min]": null } }),
      at({}, { material: { "Speed carbide high [m/min]": null } }),
    ]) {
      expect(plan.life).toBeUndefined();
      expect(plan.findings.map((f) => f.code)).not.toContain("no-life");
      expect(plan.money!.tool).toBe(0);
      expect(plan.results.cost).toBeCloseTo((74 * plan.results.time!) / 3600, 9);
    }
  });
  it("a machine without a rate has a time and no cost; one without its moves neither", () => {
    const free = at({}, { machine: { "Rate [per hour]": null } });
    expect(free.results.time).toBeGreaterThan(0);
    expect(free.results.cost ?? null).toBeNull();
    expect(free.money).toBeUndefined();
    // what its seconds are spent on, and how long the edge lives, has nothing to do with money
    expect(free.time).toEqual(at({}).time);
    expect(free.life).toBe(at({}).life);
    for (const heading of ["Rapid [m/min]", "Acceleration [m/s²]"]) {
      const still = at({}, { machine: { [heading]: null } });
      expect([still.results.time ?? null, still.results.cost ?? null]).toEqual([null, null]);
    }
    expect(at({ Machine: null }).results.time ?? null).toBeNull();
  });
});

describe("rows that share a setup (identity)", () => {
  it("are those with content on one machine, whatever the case of its name", () => {
    const rows = readRows([
      ["Row", "Machine", "Depth"],
      [1, "Centre V3", 1],
      [2, "centre v3", null],
      [3, "Centre V4", 1],
      [4, null, 1],
      [5, null, null],
      [6, "CENTRE V3", 2],
    ]);
    const sharing = sharedSetups(rows);
    expect(rows.map(sharing)).toEqual([3, 3, 1, 1, 1, 3]);
    expect(sharedSetups([])(rows[0]!)).toBe(1);
    // two machines for the list are two for the setup
    const names = ["Große Fräse", "GROSSE FRÄSE"];
    const list = readLists([], [], [["Machine"], ...names.map((name) => [name])]).machines;
    expect(list.items).toHaveLength(2);
    const two = readRows([["Machine"], ...names.map((name) => [name])]);
    expect(two.map(sharedSetups(two))).toEqual([1, 1]);
  });
});
