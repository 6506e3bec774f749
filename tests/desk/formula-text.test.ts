import { describe, expect, it } from "vitest";
import { type FileTable, fromFile, toFile, withoutTables } from "../../taskpane/desk/formula-text.ts";

describe("formulas in files (identity)", () => {
  it("writes the names of the worksheet functions as files keep them", () => {
    expect(toFile('=CUT.RPM(A1,10,"mm")*2')).toBe('_xldudf_CUT_RPM(A1,10,"mm")*2');
    expect(toFile("=cut.rpm (A1)")).toBe("_xldudf_CUT_RPM (A1)");
  });
  it("leaves text in quotes and sheets of that name alone", () => {
    expect(toFile('="CUT.RPM(1)"&CUT.RPM(1)')).toBe('"CUT.RPM(1)"&_xldudf_CUT_RPM(1)');
    expect(toFile("='CUT.RPM(1)'!A1+CUTTER.X(1)")).toBe("'CUT.RPM(1)'!A1+CUTTER.X(1)");
  });
  it("reads them back without regard to case, and drops the mark of a single value", () => {
    for (const text of [
      "_xldudf_CUT_RPM(A1)",
      "_XLDUDF_cut_rpm(A1)",
      "@_xldudf_CUT_RPM(A1)",
      "@CUT.RPM(A1)",
      "_xldudf_CUT.RPM(A1)",
    ])
      expect(fromFile(text)).toBe("=CUT.RPM(A1)");
  });
  it("comes back to the same formula", () => {
    const formula = `=IFERROR(CUT.PLAN(Plan!$A$1:$B$9,'My list'!A1:B2,C1,D1),"CUT.PLAN(")`;
    expect(fromFile(toFile(formula))).toBe(formula);
  });
  it("drops the prefixes files put before newer built-in functions", () => {
    expect(fromFile("_xlfn._xlws.FILTER(A1:A9,B1:B9)")).toBe("=FILTER(A1:A9,B1:B9)");
  });
});

describe("references into tables (independent)", () => {
  // Jobs!B3:E7: headings in row 3, three rows, a totals row.
  const jobs: FileTable = {
    name: "Jobs",
    sheet: "Job list",
    top: 2,
    left: 1,
    rows: 5,
    hasHeadings: true,
    hasTotals: true,
    columns: ["Op", "Dia", "Depth [mm]", "Time"],
  };
  const plain = (formula: string, sheet = "Other", row = 4) => withoutTables(formula, [jobs], sheet, row);
  it.each([
    ["=SUM(Jobs[Dia])", "=SUM('Job list'!$C$4:$C$6)"],
    ["=ROWS(Jobs)", "=ROWS('Job list'!$B$4:$E$6)"],
    ["=SUM('Jobs'!A1,Jobs!A1,Jobs2)", "=SUM('Jobs'!A1,Jobs!A1,Jobs2)"],
    ["=SUM(Jobs[[Dia]:[Time]])", "=SUM('Job list'!$C$4:$E$6)"],
    ["=Jobs[[#Headers],[Dia]]", "='Job list'!$C$3"],
    ["=Jobs[[#Totals],[Time]]", "='Job list'!$E$7"],
    ["=COUNTA(Jobs[#All])", "=COUNTA('Job list'!$B$3:$E$7)"],
    ["=SUM(jobs[depth '[mm']])", "=SUM('Job list'!$D$4:$D$6)"],
    ['="Jobs[Dia]"&SUM(Jobs[Dia])', `="Jobs[Dia]"&SUM('Job list'!$C$4:$C$6)`],
    ["=SUM(Jobs[Nothing])", "=SUM(Jobs[Nothing])"],
  ])("turns %s into %s", (formula, expected) => expect(plain(formula)).toBe(expected));
  it("means the row of the formula with this row", () => {
    expect(plain("=Jobs[[#This Row],[Dia]]*2", "Job list")).toBe("=$C$5*2");
    expect(plain("=[@Dia]*[@[Depth '[mm']]]", "Job list")).toBe("=$C$5*$D$5");
  });
});
