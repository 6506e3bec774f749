import { describe, expect, it } from "vitest";
import { columnLetters } from "../../taskpane/desk/model/address.ts";
import type { CellValue } from "../../taskpane/host/host.ts";
import { reference } from "../../taskpane/host/reference.ts";
import { findTable, firstBlock, growths } from "../../taskpane/host/region.ts";

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
  it("looks again at headings when what stands under a gap of them has changed, the same row as before", () => {
    const head: CellValue[] = ["Operation", null, "Dia"];
    expect(findTable("S", [head, ["drill", null, 6]], null, score)).toBeNull();
    expect(findTable("S", [head, ["drill", "T4", 6]], null, score)!.headings).toEqual(head);
    expect(findTable("S", [head, ["drill", null, 6]], null, score)).toBeNull();
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
    expect([0, 25, 26, 51, 52, 701, 702, 16383].map(columnLetters)).toEqual([
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

describe("formulas that follow a table (independent)", () => {
  const block = {
    sheet: "Job 7",
    top: 3,
    left: 2,
    headings: ["Op", "Operation", "Dia"],
    rows: [[10, "drill", 5]],
    reference: "",
    address: "",
  };
  const head = (formulas: Record<number, string>, values: Record<number, CellValue> = {}) =>
    Array.from({ length: 12 }, (_, c) => ({ formula: formulas[c] ?? "", value: values[c] ?? null }));

  it("keep the spare rows they had, and take those that repeat their columns with them", () => {
    const formulas = { 0: '=$H$4:$H$24&""', 6: "=CUT.PLAN('Job 7'!$C$4:$E$24,Materials!$A$4:$B$24)" };
    const values = { 0: "Verdict", 2: "Op", 3: "Operation", 4: "Dia", 6: "Row", 7: "Verdict" };
    // Last row was line 5, and becomes line 30; 19 spare rows stay 19.
    expect(growths(head(formulas, values), block, 4, 29)).toEqual([
      {
        column: 6,
        formula: "=CUT.PLAN('Job 7'!$C$4:$E$49,Materials!$A$4:$B$24)",
        from: 24,
        rows: 25,
        columns: 2,
      },
      { column: 0, formula: '=$H$4:$H$49&""', from: 24, rows: 25, columns: 1 },
    ]);
  });
  it("stay as they are where they are long enough, start elsewhere, or belong to another sheet or column", () => {
    for (const formula of [
      "=CUT.PLAN($C$4:$E$60)",
      "=SUM(C5:C6)",
      "=CUT.PLAN('Job 8'!$C$4:$E$5)",
      "=CUT.PLAN(Job!$C$4:$E$5)",
      "=SUM(K4:K6)",
      '="C4:E5"&1',
      "C4:E5",
    ])
      expect(growths(head({ 6: formula }), block, 4, 29), formula).toEqual([]);
  });
});
