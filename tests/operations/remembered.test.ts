/** What is remembered of one row is not taken for another's (identity: the second of two rows as with lists of its own). */
import { describe, expect, it } from "vitest";
import { onlyCells, rememberedFor } from "../../src/operations/shared/remembered.ts";
import { handedOn } from "../../src/plan/handed.ts";
import { planRow } from "../../src/plan/row.ts";
import { type Case, caseLists, caseRow, type RowCells, STEEL } from "../findings/rule.ts";

const thread = { Operation: "thread mill", Thread: "M6", Tool: "TM-M6-S", "Start diameter": 4.95, Depth: 9 };
const full = { Operation: "thread mill", Thread: "M6", Tool: "TM-M6x1-F", "Start diameter": 5, Depth: 9, Passes: 1 };
const bore = {
  ...{ Operation: "bore", Tool: "EM-10-4", "Start diameter": 27, "Finish diameter": 30, Depth: 14 },
  "Size tolerance": 0.1,
};
const slot = { Operation: "slot", Tool: "EM-10-4", Depth: 5, Length: 60, "Axial depth": 5 };
/** The same feeds in the list, another force. */
const OTHER = "Steel 16MnCr5 (AISI 5115)";
/** Of Centre V3 what Centre V4 has, but for one thing. */
const alike = (cells: RowCells): Omit<Case, "row"> => ({ machine: { "Holder stiffness [N/µm]": 26, ...cells } });

const PAIRS: readonly (readonly [string, RowCells, RowCells, Omit<Case, "row">?])[] = [
  ["thread, another material", thread, { Material: OTHER }],
  ["thread, another hole", thread, { "Start diameter": 5.1 }],
  ["thread, another thread", thread, { Thread: "M6x0.75" }],
  ["thread, another tool", { ...thread, Tool: "TM-M6-S" }, { Tool: "TM-M6-SL", "Stick-out": 23 }],
  ["thread, against the feed", thread, { Way: "conventional" }],
  ["thread, passes", { ...thread, Passes: 2 }, { Passes: 3 }],
  ["thread, spring passes", { ...thread, "Spring passes": 0 }, { "Spring passes": 2 }],
  ["thread, feed", { ...thread, "Feed per tooth": 0.03 }, { "Feed per tooth": 0.02 }],
  ["thread, wear", thread, { "Wear factor": 1.5 }],
  ["thread, wear value", thread, { "Wear value": 0.02 }],
  ["thread, held further out", thread, { "Stick-out": 32 }],
  ["thread, deeper with a full profile", full, { Depth: 4 }],
  [
    "thread, less of the tolerance for bending",
    { ...thread, "Stick-out": 26, Machine: "Centre V4" },
    { Machine: "Centre V3" },
    alike({ "Bending share [%]": 10 }),
  ],
  [
    "thread, a softer holder",
    { ...thread, Machine: "Centre V4" },
    { Machine: "Centre V3" },
    { machine: { "Holder stiffness [N/µm]": 9 } },
  ],
  ["bore, another material", bore, { Material: OTHER }],
  ["bore, another hole", bore, { "Start diameter": 26 }],
  ["bore, another tool of the size", bore, { Tool: "EM-10-4L", "Stick-out": 34 }],
  ["bore, against the feed", bore, { Way: "conventional" }],
  ["bore, passes", { ...bore, Passes: 1 }, { Passes: 2 }],
  ["bore, spring passes", { ...bore, "Spring passes": 0 }, { "Spring passes": 2 }],
  ["bore, wear", bore, { "Wear factor": 1.5 }],
  ["bore, wear value", bore, { "Wear value": 0.02 }],
  ["bore, tolerance", bore, { "Size tolerance": 0.02 }],
  ["bore, feed", bore, { "Feed per tooth": 0.03 }],
  ["bore, held further out", bore, { "Stick-out": 40 }],
  [
    "bore, less of the tolerance for bending",
    { ...bore, Machine: "Centre V4" },
    { Machine: "Centre V3" },
    alike({ "Bending share [%]": 5 }),
  ],
  [
    "bore, a softer holder",
    { ...bore, Machine: "Centre V4" },
    { Machine: "Centre V3" },
    { machine: { "Holder stiffness [N/µm]": 9 } },
  ],
  ["slot, against the feed", { ...slot, "Radial depth": 4 }, { "Radial depth": 4, Way: "conventional" }],
  ["slot, spring passes", slot, { "Spring passes": 1 }],
  ["slot, wear", slot, { "Wear factor": 1.5 }],
];

describe("one row after another that differs in one thing", () => {
  for (const [name, first, change, lists = {}] of PAIRS)
    it(name, () => {
      const [before, after] = [first, { ...first, ...change }].map((row) => ({ ...STEEL, ...row }));
      const made = () => caseLists({ row: { ...STEEL, Tool: first.Tool! }, ...lists });
      const shared = made();
      const one = planRow(caseRow({ row: before! }), shared);
      const two = planRow(caseRow({ row: after! }), shared);
      const fresh = planRow(caseRow({ row: after! }), made());
      expect(two.results).toEqual(fresh.results);
      expect(two.limits).toEqual(fresh.limits);
      expect(JSON.stringify([two.results, two.limits])).not.toBe(JSON.stringify([one.results, one.limits]));
    });
  it("what the row above leaves", () => {
    const rough = (measured: number) => ({
      ...STEEL,
      ...bore,
      Row: 1,
      "Start diameter": 24,
      "Finish diameter": 29,
      Measured: measured,
    });
    const finish = { ...STEEL, ...bore, Row: 2, "Start diameter": 29 };
    const plan = (measured: number, lists: ReturnType<typeof caseLists>) => {
      const rows = [caseRow({ row: rough(measured) }), caseRow({ row: finish })];
      return planRow(rows[1]!, lists, 1, true, handedOn(rows, lists)(1)).results;
    };
    const shared = caseLists({ row: STEEL });
    const first = plan(28.8, shared);
    const second = plan(29, shared);
    expect(second).toEqual(plan(29, caseLists({ row: STEEL })));
    expect(second.size).not.toBe(first.size);
  });
  it("one beam after another of the same tool: nine that stick out differently, and the first again", () => {
    const row = (out: number) => ({ ...STEEL, ...slot, "Stick-out": out });
    const shared = caseLists({ row: STEEL });
    for (const out of [30, 31, 32, 33, 34, 35, 36, 37, 38, 39, 30, 39, 31]) {
      const wanted = planRow(caseRow({ row: row(out) }), caseLists({ row: STEEL })).results.deflection;
      expect(planRow(caseRow({ row: row(out) }), shared).results.deflection).toBe(wanted);
    }
  });
});

describe("memories (rule)", () => {
  it("are of one set of lists", () => {
    const of = rememberedFor<number>("tried here", 3);
    const [a, b] = [caseLists({ row: STEEL }), caseLists({ row: STEEL })];
    expect(of(a).get("x", () => 1)).toBe(1);
    expect(of(a).get("x", () => 2)).toBe(1);
    expect(of(b).get("x", () => 3)).toBe(3);
    expect(of(a)).toBe(of(a));
  });
  it("hang on the cells that are named, and no others", () =>
    expect(onlyCells({ depth: 3, way: "climb", length: 2 }, ["depth", "way", "passes"])).toEqual({
      ...{ depth: 3, way: "climb", passes: undefined },
    }));
});
