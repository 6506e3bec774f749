/** What advice says of a row: its outcome before and after, what a cleared cell becomes, and what nothing relieves. */
import { describe, expect, it } from "vitest";
import { advise } from "../../src/plan/advise.ts";
import { withChanges } from "../../src/plan/changes.ts";
import { planRow } from "../../src/plan/row.ts";
import { type Case, caseLists, caseRow, type RowCells, STEEL } from "../findings/rule.ts";

const SIDE = { ...STEEL, Operation: "side", Tool: "EM-12-4", Depth: 12, Length: 100, "Radial depth": 1 };
const SLOT = { ...STEEL, Operation: "slot", Tool: "EM-12-4", Depth: 6, Length: 100 };
const adviceOf = (cells: RowCells, more: Omit<Case, "row"> = {}) => {
  const one = { row: cells, ...more };
  const [read, lists] = [caseRow(one), caseLists(one)];
  return { read, lists, ...advise(read, lists) };
};
// 0.5 mm a tooth breaks the edge, 60 mm hang out where 34 would do
const BROKEN = { ...SLOT, "Feed per tooth": 0.5, "Stick-out": 70 };

describe("advice (identity: the row planned as it says)", () => {
  it.each([BROKEN, { ...SIDE, "Surface speed": 80 }] as RowCells[])(
    "tells verdict, limit, load, time and cost as they are: %o",
    (cells) => {
      const { read, lists, advice, base } = adviceOf(cells);
      expect(advice.length).toBeGreaterThan(0);
      const told = (plan: ReturnType<typeof planRow>) => ({
        ...{ verdict: plan.verdict, limit: plan.limits[0]!.key, load: plan.results.load },
        ...{ time: plan.results.time, cost: plan.results.cost },
      });
      const plain = planRow(read, lists);
      expect(base!.results).toEqual(plain.results);
      // nobody reads the steps of a row that is tried
      expect(base!.steps).toEqual([]);
      for (const { before, after, changes } of advice) {
        expect(before).toEqual(told(plain));
        expect(after).toEqual(told(planRow({ ...read, row: withChanges(read.row, changes) }, lists)));
      }
    },
  );
  it("says nothing of what is not known: no limit, load, time or cost", () => {
    // a machine of which nothing is listed but its name, and a tool without its size
    const bare = {
      machine: Object.fromEntries(["Rapid [m/min]", "Acceleration [m/s²]", "Rate [per hour]"].map((h) => [h, null])),
    };
    const { advice } = adviceOf({ ...SIDE, "Feed per tooth": 0.5 }, bare);
    expect(advice.length).toBeGreaterThan(0);
    for (const { before, after } of advice)
      expect([before.time, before.cost, after.time, after.cost]).toEqual([null, null, null, null]);
    const none = adviceOf(SIDE, { tool: { Diameter: null } }).advice[0]!.before;
    expect([none.verdict, none.limit, none.load]).toEqual(["stop", null, null]);
  });
  it("of a cell that is cleared tells what the plan takes in its place, and of no other", () => {
    const { advice } = adviceOf(BROKEN);
    const all = advice.flatMap(({ changes }) => changes);
    const feed = all.find((c) => c.key === "feedPerTooth" && c.to === null)!;
    // C45 and 12 mm: what the list says
    expect(feed.from).toBe(0.5);
    expect(feed.takes).toBeCloseTo(caseLists({ row: BROKEN }).materials.find(STEEL.Material)!.feed12!, 9);
    for (const { to, takes } of all) if (to !== null) expect(takes).toBeUndefined();
    const tool = adviceOf({ ...SIDE, Tool: "EM-6-4", Depth: 40 })
      .advice.flatMap(({ changes }) => changes)
      .find((c) => c.key === "tool" && c.to === null);
    expect(tool).toMatchObject({ from: "EM-6-4", takes: expect.any(String) });
    expect(tool!.takes).not.toBe("EM-6-4");
  });
  it("knows how many rows share the setup", () => {
    const one = { row: { ...BROKEN, Batch: 10 } };
    const at = (sharing: number) => advise(caseRow(one), caseLists(one), sharing).advice[0]!.before.cost!;
    // Centre V3: 35 min at 74 an hour
    expect(at(1) - at(2)).toBeCloseTo((74 * 35) / 60 / 10 / 2, 9);
    expect(advise(caseRow(one), caseLists(one)).advice[0]!.before.cost).toBe(at(1));
  });
  it("knows what the row above left on the wall", () => {
    const one = { row: { ...SIDE, "Radial depth": 0.5, "Feed per tooth": 0.5, Feature: "A" } };
    const [read, lists] = [caseRow(one), caseLists(one)];
    const handed = { left: [0.2, 0.3] as const, row: 1 };
    expect(advise(read, lists, 1, handed).base!.results.radialDepth).toBeCloseTo(0.8, 9);
    expect(advise(read, lists).base!.results.radialDepth).toBe(0.5);
  });
});

describe("a row that advice has nothing to say of", () => {
  it.each([
    ["no operation", { ...SIDE, Operation: null }],
    ["no units", { ...SIDE, Units: null }],
    ["a cell that cannot be read", { ...SIDE, Depth: "deep" }],
  ] as [string, RowCells][])("%s: it is not worked out", (_, cells) => {
    const { advice, tried, open, base } = adviceOf(cells);
    expect({ advice, tried, open, base }).toEqual({ advice: [], tried: 0, open: [] });
  });
  it("one that only a person can put right: what is wrong is said", () => {
    const { advice, open } = adviceOf({ ...SIDE, Material: "unheard of" });
    expect(advice).toEqual([]);
    expect(open).toContain("unknown-material");
    expect(open).not.toContain("no-size-tolerance");
  });
  it("one that holds has nothing open, one that is helped neither", () => {
    expect(adviceOf({ ...SLOT }).base!.verdict).toBe("ok");
    expect(adviceOf({ ...SLOT }).open).toEqual([]);
    const helped = adviceOf(BROKEN);
    expect(helped.base!.verdict).toBe("stop");
    expect(helped.open).toEqual([]);
  });
});
