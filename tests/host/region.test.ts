import { describe, expect, it } from "vitest";
import type { CellValue } from "../../taskpane/host/host.ts";
import { columnName, findTable, firstBlock, reference } from "../../taskpane/host/region.ts";

const score = (headings: readonly CellValue[]) => (headings.includes("Operation") ? headings.length : 0);

describe("finding the planning table (independent)", () => {
  it("takes the table the selection is in when a sheet holds two", () => {
    const grid: CellValue[][] = [
      ["Op", "Operation", null, "Op", "Operation", "Dia"],
      [1, "drill", null, 5, "bore", 20],
      [2, "slot", null, 6, "face", null],
    ];
    expect(findTable("S", grid, { row: 2, column: 1 }, score)).toMatchObject({ left: 0, selected: 1 });
    expect(findTable("S", grid, { row: 1, column: 5 }, score)).toMatchObject({ left: 3, selected: 0 });
    expect(findTable("S", grid, null, score)).toMatchObject({ left: 3, selected: null });
  });
  it("ends at two blank rows and at the next headings", () => {
    const grid: CellValue[][] = [
      ["Op", "Operation"],
      [1, "drill"],
      ["Op", "Operation"],
      [2, "slot"],
      [null, null],
      [null, null],
      ["checked", "by me"],
    ];
    expect(findTable("S", grid, { row: 1, column: 0 }, score)!.rows).toEqual([[1, "drill"]]);
    expect(findTable("S", grid, { row: 3, column: 0 }, score)!.rows).toEqual([[2, "slot"]]);
  });
  it("bridges one column without a heading when there is something below it", () => {
    const grid: CellValue[][] = [
      ["Operation", null, "Dia"],
      ["drill", "T4", 6],
    ];
    expect(findTable("S", grid, null, score)!.headings).toEqual(["Operation", null, "Dia"]);
  });
  it("does not run into a block beside it that a blank column keeps apart", () => {
    const grid: CellValue[][] = [
      ["Row", "Operation", null, "Row", "Verdict"],
      [1, "drill", null, 1, "ok"],
    ];
    expect(findTable("S", grid, { row: 1, column: 4 }, score)).toMatchObject({
      left: 0,
      selected: 0,
      headings: ["Row", "Operation"],
    });
  });
  it("finds nothing on an empty sheet", () => {
    expect(findTable("S", [], null, score)).toBeNull();
    expect(firstBlock("S", [[null, "one"]])).toBeNull();
  });
  it("takes the first headings of a list, whatever text follows", () => {
    const list = firstBlock("L", [
      ["Material", "Group"],
      ["Steel", "P"],
      ["Brass", "N"],
    ]);
    expect(list).toMatchObject({
      rows: [
        ["Steel", "P"],
        ["Brass", "N"],
      ],
      reference: "L!$A$1:$B$3",
    });
  });
});

describe("addresses (independent)", () => {
  it("counts columns as spreadsheets do", () => {
    expect([0, 25, 26, 51, 52, 701, 702, 16383].map(columnName)).toEqual([
      "A",
      "Z",
      "AA",
      "AZ",
      "BA",
      "ZZ",
      "AAA",
      "XFD",
    ]);
  });
  it("quotes the names of sheets that need it", () => {
    expect(reference("Plan", 0, 0, 1, 1)).toBe("Plan!$A$1");
    expect(reference("Job 7", 0, 0, 2, 2)).toBe("'Job 7'!$A$1:$B$2");
    expect(reference("Mia's", 0, 0, 1, 1)).toBe("'Mia''s'!$A$1");
    expect(reference("AB12", 0, 0, 1, 1)).toBe("'AB12'!$A$1");
  });
});
