import { describe, expect, it } from "vitest";
import { Axis } from "../../../taskpane/desk/grid/axis.ts";
import type { Layout } from "../../../taskpane/desk/grid/layout.ts";
import { firstScroll } from "../../../taskpane/desk/grid/places.ts";

/** 200 rows of 20 and 30 columns of 100 pixels; a row and a column are frozen, beside letters and row numbers. */
const layout: Layout = {
  rows: new Axis(200, 20, new Map()),
  columns: new Axis(30, 100, new Map()),
  side: 40,
  letters: 22,
  frozenRows: 1,
  frozenColumns: 1,
  fixedHeight: 42,
  fixedWidth: 140,
  headings: new Set(),
};
const at = (row: number, column: number) => firstScroll(layout, 840, 442, { row, column });

describe("where a sheet is scrolled to when it is shown first (identity: by the places of rows and columns)", () => {
  it("is its beginning while the cell is in view, up to the last row and column", () => {
    // Rows 0 to 20 end at 22 + 21 × 20 = 442; columns 0 to 7 at 40 + 8 × 100 = 840.
    expect(at(20, 7)).toEqual({ top: 0, left: 0 });
    expect(at(0, 0)).toEqual({ top: 0, left: 0 });
  });
  it("has a row further down in the middle of what scrolls, and a column further out at its left", () => {
    const { top, left } = at(100, 8);
    // Row 100 begins at 22 + 2000; 42 stay in place of 442, so its middle is to stand at 42 + 200.
    expect(22 + 100 * 20 + 10 - top).toBe(42 + 200);
    expect(40 + 8 * 100 - left).toBe(140);
  });
  it("begins to scroll one row and one column beyond", () => {
    expect(at(21, 0).top).toBeGreaterThan(0);
    expect(at(0, 8).left).toBeGreaterThan(0);
  });
});
