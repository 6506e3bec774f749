/** Names and designations stay as they are typed, in every table and list that is made here. */
import exceljs from "exceljs";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { blank, demo } from "../../taskpane/desk/books.ts";
import { excelHost } from "../../taskpane/host/excel.ts";
import { emptyTable, STARTING_LISTS } from "../../taskpane/work/starting.ts";
import { FakeExcel } from "../host/excel-fake/excel.ts";

/** Written down from what the columns mean, not from the code: a name may look like a date or a number. */
const TEXTS: Readonly<Record<string, readonly string[]>> = {
  Plan: ["Thread", "Tool", "Material", "Machine", "Feature", "Size class"],
  Materials: ["Material", "Hardness", "Designations"],
  Tools: ["Tool", "Tip modes x", "Tip modes y", "Tip modes on", "Size class"],
  Machines: ["Machine"],
};
/** These stay what the program makes of them: numbers to count with, and long sentences (a cell of text shows none). */
const NOT = ["Row", "Quantity", "Depth", "Diameter", "Max rpm", "Price", "Source", "Remark", "kc1.1 [MPa]", "Units"];

const wrong = (sheet: string, headings: readonly unknown[], formatAt: (column: number) => string) =>
  headings.flatMap((heading, c) => {
    const name = String(heading);
    const is = formatAt(c) === "@";
    if (TEXTS[sheet]!.includes(name)) return is ? [] : [`${sheet} ${name} is no text`];
    return NOT.includes(name) && is ? [`${sheet} ${name} is text`] : [];
  });

describe("in Excel", () => {
  let fake: FakeExcel;
  beforeEach(() => {
    fake = new FakeExcel();
    fake.addSheet("Sheet1");
    fake.install();
  });
  afterEach(() => fake.uninstall());

  it("the table and the lists that the pane puts in have text columns", async () => {
    const host = excelHost();
    for (const sheet of [...STARTING_LISTS, emptyTable([null, null, null])]) {
      await host.addSheet(sheet);
      const { cells } = fake.sheet(sheet.name)!;
      for (const row of [1, sheet.rows.length])
        expect(wrong(sheet.name, sheet.headings, (c) => cells.get(`${row},${c}`)?.format ?? "General")).toEqual([]);
    }
    expect(fake.tables.map((table) => table.name)).toEqual(["Materials", "Tools", "Machines", "Plan"]);
  });

  it("what a person types there is kept", async () => {
    const host = excelHost();
    const table = emptyTable([null, null, null]);
    const block = await host.addSheet(table);
    const at = table.headings.indexOf("Thread");
    await host.writeCells(block, [{ row: 0, column: at, value: "1/2" }]);
    expect(fake.sheet("Plan")!.cells.get(`1,${at}`)).toMatchObject({ value: "1/2", format: "@" });
  });
});

describe("in the workbooks of the desk (read by a general library)", () => {
  it.each([
    ["demo", demo],
    ["blank", blank],
  ])("the %s has text columns, below its tables too", async (_, make) => {
    const book = new exceljs.Workbook();
    await book.xlsx.load(make() as unknown as ArrayBuffer);
    for (const name of Object.keys(TEXTS)) {
      const sheet = book.getWorksheet(name)!;
      const headings = (sheet.getRow(1).values as unknown[]).slice(1);
      expect(headings.filter((heading) => TEXTS[name]!.includes(String(heading))).length).toBeGreaterThan(0);
      const end = sheet.getTables()[0]! as unknown as { table: { tableRef: string } };
      const last = Number(/(\d+)$/.exec(end.table.tableRef)![1]);
      for (const row of [2, last, last + 100])
        expect(
          wrong(name, headings, (c) => sheet.getCell(row, c + 1).numFmt ?? "General"),
          `${name} ${row}`,
        ).toEqual([]);
    }
  });
});
