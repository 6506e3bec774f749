import ExcelJS from "exceljs";
import { describe, expect, it } from "vitest";
import { readXlsx, writeXlsx } from "../../taskpane/desk/xlsx.ts";

/** A file as a shop might keep it, made by a general library. */
async function shopFile(change: (book: ExcelJS.Workbook) => void): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  change(book);
  return new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
}

const round = async (bytes: Uint8Array) => {
  const { data, left } = await readXlsx(bytes, "job.xlsx");
  const written = await writeXlsx({ data, spills: {} });
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(written.bytes as unknown as ExcelJS.Buffer);
  return { data, left: [...left, ...written.left], book };
};

describe(".xlsx files of the shop (identity)", () => {
  it("keeps values of every kind, formulas, formats and their results", async () => {
    const day = new Date(Date.UTC(2026, 2, 5));
    const bytes = await shopFile((book) => {
      const sheet = book.addWorksheet("Job 1");
      sheet.getCell("A1").value = "Dia";
      sheet.getCell("A2").value = 0.1 + 0.2;
      sheet.getCell("A3").value = true;
      sheet.getCell("A4").value = day;
      sheet.getCell("A4").numFmt = "yyyy-mm-dd";
      sheet.getCell("A5").value = { richText: [{ text: "neck " }, { text: "rubs", font: { bold: true } }] };
      sheet.getCell("A6").value = { error: "#DIV/0!" };
      sheet.getCell("A7").value = "0012";
      sheet.getCell("A8").value = "10-24";
      sheet.getCell("B2").value = { formula: "A2*10", result: 3 };
      sheet.getCell("B2").numFmt = "0.00";
      sheet.getCell("B3").value = { formula: '_xldudf_CUT_RPM(120,10,"mm")', result: 3819.718634 };
      sheet.getCell("B4").value = { formula: 'IF(A2>1,1,"small")', result: "small" };
    });
    const { data, left, book } = await round(bytes);
    expect(left).toEqual([]);
    const cells = Object.values(data.sheets)[0]!.cellData as any;
    expect(cells[2][1].f).toBe('=CUT.RPM(120,10,"mm")');
    const sheet = book.getWorksheet("Job 1")!;
    expect(sheet.getCell("A1").value).toBe("Dia");
    expect(sheet.getCell("A2").value).toBe(0.1 + 0.2);
    expect(sheet.getCell("A3").value).toBe(true);
    expect(sheet.getCell("A4").value).toEqual(day);
    expect(sheet.getCell("A5").value).toBe("neck rubs");
    expect(sheet.getCell("A6").value).toEqual({ error: "#DIV/0!" });
    expect(sheet.getCell("A7").value).toBe("0012");
    expect(sheet.getCell("A8").value).toBe("10-24");
    expect(sheet.getCell("B2").formula).toBe("A2*10");
    expect(sheet.getCell("B2").result).toBe(3);
    expect(sheet.getCell("B2").numFmt).toBe("0.00");
    expect(sheet.getCell("B3").formula).toBe('_xldudf_CUT_RPM(120,10,"mm")');
    expect(sheet.getCell("B4").result).toBe("small");
  });

  it("spells out shared formulas", async () => {
    const bytes = await shopFile((book) => {
      const sheet = book.addWorksheet("S");
      sheet.fillFormula("B1:B3", "A1*2", [2, 4, 6]);
    });
    const { book } = await round(bytes);
    expect([1, 2, 3].map((r) => book.getWorksheet("S")!.getCell(r, 2).formula)).toEqual(["A1*2", "A2*2", "A3*2"]);
  });

  it("keeps look, widths, heights, frozen panes, merged and hidden parts", async () => {
    const bytes = await shopFile((book) => {
      const sheet = book.addWorksheet("S", { views: [{ state: "frozen", xSplit: 1, ySplit: 2 }] });
      const cell = sheet.getCell("A1");
      cell.value = "Title";
      cell.font = { bold: true, italic: true, size: 14, name: "Arial", color: { argb: "FF8A1410" } };
      cell.fill = { type: "pattern", pattern: "solid", fgColor: { argb: "FFFBEAC2" } };
      cell.alignment = { horizontal: "center", vertical: "top", wrapText: true };
      cell.border = { bottom: { style: "medium", color: { argb: "FF112233" } } };
      sheet.mergeCells("A1:C1");
      sheet.getColumn(2).width = 22;
      sheet.getColumn(3).hidden = true;
      sheet.getRow(1).height = 30;
      book.addWorksheet("Hidden", { state: "hidden" }).getCell("A1").value = 1;
    });
    const { book } = await round(bytes);
    const sheet = book.getWorksheet("S")!;
    const cell = sheet.getCell("A1");
    expect(cell.font).toMatchObject({ bold: true, italic: true, size: 14, name: "Arial", color: { argb: "FF8A1410" } });
    expect(cell.fill).toMatchObject({ fgColor: { argb: "FFFBEAC2" } });
    expect(cell.alignment).toMatchObject({ horizontal: "center", vertical: "top", wrapText: true });
    expect(cell.border.bottom).toMatchObject({ style: "medium", color: { argb: "FF112233" } });
    expect(sheet.getCell("B1").master.address).toBe("A1");
    expect(sheet.views[0]).toMatchObject({ state: "frozen", xSplit: 1, ySplit: 2 });
    expect(sheet.getColumn(2).width).toBeCloseTo(22, 0);
    expect(sheet.getColumn(3).hidden).toBe(true);
    expect(sheet.getRow(1).height).toBe(30);
    expect(book.getWorksheet("Hidden")!.state).toBe("hidden");
  });

  it("keeps lists of allowed words, conditional formats by formula and defined names", async () => {
    const bytes = await shopFile((book) => {
      const sheet = book.addWorksheet("S");
      (sheet as any).dataValidations.add("A2:B40", { type: "list", allowBlank: true, formulae: ['"mm,in"'] });
      (sheet as any).dataValidations.add("C2:C40", { type: "list", allowBlank: true, formulae: ["Lists!$A$2:$A$9"] });
      sheet.addConditionalFormatting({
        ref: "A2:A40",
        rules: [{ type: "expression", priority: 1, formulae: ['$B2="stop"'], style: { font: { bold: true } } }],
      });
      sheet.addConditionalFormatting({
        ref: "D2:D40",
        rules: [
          { type: "cellIs", operator: "greaterThan", priority: 2, formulae: [1], style: { font: { bold: true } } },
        ],
      });
      book.addWorksheet("Lists").getCell("A2").value = "Steel";
      book.definedNames.add("Lists!$A$2:$A$9", "steels");
    });
    const { left, book } = await round(bytes);
    expect(left).toEqual([]);
    const sheet = book.getWorksheet("S")!;
    expect(sheet.getCell("B40").dataValidation).toMatchObject({ type: "list", formulae: ['"mm,in"'] });
    expect(sheet.getCell("C2").dataValidation).toMatchObject({ type: "list", formulae: ["Lists!$A$2:$A$9"] });
    const rules = (sheet as any).conditionalFormattings.map((c: any) => [c.ref, c.rules[0].formulae[0]]);
    expect(rules).toEqual([
      ["A2:A40", '$B2="stop"'],
      ["D2:D40", "D2>1"],
    ]);
    expect(book.definedNames.getRanges("steels").ranges).toEqual(["Lists!$A$2:$A$9"]);
  });

  it("keeps the values of a table and resolves references into it", async () => {
    const bytes = await shopFile((book) => {
      const sheet = book.addWorksheet("Jobs");
      sheet.addTable({
        name: "Jobs",
        ref: "A1",
        headerRow: true,
        columns: [{ name: "Op" }, { name: "Dia" }],
        rows: [
          ["drill", 6.8],
          ["bore", 24],
        ],
      });
      sheet.getCell("D1").value = { formula: "SUM(Jobs[Dia])", result: 30.8 };
    });
    const { data, left, book } = await round(bytes);
    expect((Object.values(data.sheets)[0]!.cellData as any)[0][3].f).toBe("=SUM($B$2:$B$3)");
    expect(book.getWorksheet("Jobs")!.getCell("B3").value).toBe(24);
    expect(left).toEqual(["table borders and filters"]);
  });

  it("keeps a page a page: as wide as the paper, its headings on each, and no other sheet one", async () => {
    const bytes = await shopFile((book) => {
      const sheet = book.addWorksheet("Quote", {
        pageSetup: { fitToPage: true, fitToWidth: 1, fitToHeight: 0, printTitlesRow: "1:1" },
      });
      sheet.getCell("A1").value = "Section";
      book.addWorksheet("Plan").getCell("A1").value = "Operation";
    });
    const { left, book } = await round(bytes);
    expect(left).toEqual([]);
    const page = { fitToPage: true, fitToWidth: 1, fitToHeight: 0 };
    expect(book.getWorksheet("Quote")!.pageSetup).toMatchObject(page);
    expect(book.getWorksheet("Quote")!.pageSetup.printTitlesRow).toMatch(/^\$?1:\$?1$/);
    expect(book.getWorksheet("Plan")!.pageSetup.fitToPage).toBeFalsy();
  });

  it("names what it does not carry over", async () => {
    const pixel = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";
    const bytes = await shopFile((book) => {
      const sheet = book.addWorksheet("S");
      sheet.getCell("A1").value = 1;
      sheet.getCell("A1").note = "ask Mia";
      sheet.addImage(book.addImage({ base64: pixel, extension: "png" }), "B2:C3");
    });
    const { left } = await round(bytes);
    expect(left.sort()).toEqual(["notes", "pictures"]);
  });
});

describe("live blocks in files (identity)", () => {
  const spill = { startRow: 0, endRow: 1, startColumn: 1, endColumn: 2 };
  const taken = async () => {
    const bytes = await shopFile((book) => {
      const sheet = book.addWorksheet("Plan");
      sheet.getCell("B1").value = { formula: "_xldudf_CUT_PLAN(A1,A1,A1,A1)", result: "Row" };
      sheet.getCell("C1").value = "Verdict";
      sheet.getCell("B2").value = 10;
      sheet.getCell("C2").value = "ok";
    });
    const { data } = await readXlsx(bytes, "plan.xlsx");
    const cells = Object.values(data.sheets)[0]!.cellData as any;
    cells[0][1].v = "Row";
    return { data, spills: { [data.sheetOrder[0]!]: [spill] } };
  };

  it("are values with the formula in the first cell, and give way to the formula when read again", async () => {
    const { bytes } = await writeXlsx(await taken());
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(bytes as unknown as ExcelJS.Buffer);
    const sheet = book.getWorksheet("Plan")!;
    expect(sheet.getCell("B1").value).toMatchObject({ formula: "_xldudf_CUT_PLAN(A1,A1,A1,A1)", result: "Row" });
    expect(sheet.getCell("B1").value).not.toHaveProperty("shareType");
    expect(sheet.getCell("C2").value).toBe("ok");
    const { data, left } = await readXlsx(bytes, "plan.xlsx");
    expect(left).toEqual([]);
    const cells = Object.values(data.sheets)[0]!.cellData as any;
    expect(cells[0][1]).toMatchObject({ f: "=CUT.PLAN(A1,A1,A1,A1)" });
    expect(cells[1][2]?.v).toBeUndefined();
  });

  it("are array formulas for Excel with the add-in", async () => {
    const { bytes } = await writeXlsx(await taken(), { forExcel: true });
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(bytes as unknown as ExcelJS.Buffer);
    const sheet = book.getWorksheet("Plan")!;
    expect(sheet.getCell("B1").value).toMatchObject({ shareType: "array", ref: "B1:C2", result: "Row" });
    expect(sheet.getCell("C2").value).toBe("ok");
    const { data } = await readXlsx(bytes, "plan.xlsx");
    expect((Object.values(data.sheets)[0]!.cellData as any)[1][2]?.v).toBeUndefined();
  });
});
