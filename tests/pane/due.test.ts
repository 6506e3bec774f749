/** What is read again after a change: enough, and not more. */
import { describe, expect, it } from "vitest";
import type { Block } from "../../taskpane/host/host.ts";
import { dueAfter, everything, isNothing, nothing } from "../../taskpane/work/due.ts";

const block = (sheet: string, top: number, left: number, rows: number, width: number): Block => ({
  ...{ sheet, top, left, reference: "", address: "" },
  headings: Array.from({ length: width }, (_, c) => `h${c}`),
  rows: Array.from({ length: rows }, () => new Array(width).fill(1)),
});
const cells = (top: number, left: number, bottom = top, right = left) => ({ top, left, bottom, right });

describe("after a change there is due", () => {
  const table = block("Plan", 3, 1, 10, 5);
  const known = { sheet: "Plan", table, lists: [block("Lists", 0, 0, 20, 4), block("Lists", 0, 10, 20, 4), null] };

  it("everything when it is not known where it happened", () => {
    expect(dueAfter({}, known)).toEqual(everything);
  });
  it("nothing on another sheet", () => {
    expect(isNothing(dueAfter({ sheet: "Stock" }, known))).toBe(true);
  });
  it("the rows that were edited, first and last included", () => {
    const due = dueAfter({ sheet: "Plan", cells: cells(4, 1, 13, 5) }, known);
    expect(due).toEqual({ ...nothing, rows: new Set([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]) });
  });
  it.each([
    ["a heading", cells(3, 2)],
    ["the row below the last", cells(14, 2)],
    ["a cell right beside", cells(5, 6)],
    ["a cell left beside", cells(5, 0)],
    ["rows of the table and some below", cells(10, 1, 14, 3)],
  ])("the table when it was %s", (_, where) => {
    expect(dueAfter({ sheet: "Plan", cells: where }, known)).toEqual({ ...nothing, table: true });
  });
  it("the table when cells moved", () => {
    expect(dueAfter({ sheet: "Plan" }, known)).toEqual({ ...nothing, table: true });
  });
  it("the selected row when formulas of its sheet were worked out again", () => {
    expect(dueAfter({ sheet: "Plan", calculated: true }, known)).toEqual({ ...nothing, selection: true });
  });
  it("the lists when a cell of one changed, or one that would make it longer", () => {
    expect(dueAfter({ sheet: "Lists", cells: cells(20, 3) }, known).lists).toBe(true);
    expect(dueAfter({ sheet: "Lists", cells: cells(21, 3) }, known).lists).toBe(true);
    expect(dueAfter({ sheet: "Lists", calculated: true }, known).lists).toBe(true);
    expect(dueAfter({ sheet: "Lists", cells: cells(40, 3) }, known).lists).toBe(false);
    expect(dueAfter({ sheet: "Lists", cells: cells(5, 7) }, known).lists).toBe(false);
  });
  it("a look for a table when a cell of a sheet without one changed, not when it was only worked out again", () => {
    const without = { ...known, table: null };
    expect(dueAfter({ sheet: "Plan", cells: cells(50, 50) }, without)).toEqual({ ...nothing, table: true });
    expect(isNothing(dueAfter({ sheet: "Plan", calculated: true }, without))).toBe(true);
  });
});
