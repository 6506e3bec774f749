/** What the Excel host finds, and how it refers to it. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { excelHost } from "../../taskpane/host/excel.ts";
import type { CellValue, Host } from "../../taskpane/host/host.ts";
import { FakeExcel } from "./excel-fake/excel.ts";

const score = (headings: readonly unknown[]) => (headings.includes("Operation") ? headings.length : 0);
const results = (headings: readonly unknown[]) => (headings[0] === "Row" && headings[1] === "Verdict" ? 1 : 0);

describe("reading in Excel", () => {
  let fake: FakeExcel;
  let host: Host;
  beforeEach(() => {
    fake = new FakeExcel();
    fake.install();
    host = excelHost();
  });
  afterEach(() => fake.uninstall());
  const rows = (count: number, word = "drill"): CellValue[][] =>
    Array.from({ length: count }, (_, r) => [r + 1, word, r / 2]);
  const HEAD: CellValue[] = ["Op", "Operation", "Dia"];

  it("refers to a table of Excel's own by its name, so that formulas follow when it grows", async () => {
    const sheet = fake.addSheet("Plan", [HEAD, ...rows(3)]);
    fake.addTable("Plan", sheet, 0, 0, 3, 3);
    fake.cursor = { row: 2, column: 1 };
    expect(await host.readTable(score)).toMatchObject({ reference: "Plan[#All]", address: "Plan A1:C4", selected: 1 });
  });

  it("does not read the totals of a table as a row, and leaves them out of the reference", async () => {
    const sheet = fake.addSheet("Plan", [HEAD, ...rows(3), ["Total", null, 3]]);
    fake.addTable("Work", sheet, 0, 0, 3, 3).totals = true;
    fake.cursor = { row: 4, column: 2 };
    const table = (await host.readTable(score))!;
    expect(table.rows).toHaveLength(3);
    expect(table).toMatchObject({ reference: "Work[[#Headers],[#Data]]", selected: null });
    const tools = fake.addSheet("Tools", [
      ["Tool", "Kind"],
      ["D 5", "drill"],
      ["Total", 1],
    ]);
    fake.addTable("Tools", tools, 0, 0, 1, 2).totals = true;
    expect(await host.readList("Tools")).toMatchObject({
      rows: [["D 5", "drill"]],
      reference: "Tools[[#Headers],[#Data]]",
    });
  });

  it("refers by cells to what goes on below its table, or is wider", async () => {
    const sheet = fake.addSheet("Plan", [HEAD, ...rows(3)]);
    fake.addTable("Part", sheet, 0, 0, 2, 3);
    expect((await host.readTable(score))!.reference).toBe("Plan!$A$1:$C$4");
  });

  it("finds the table in the rows of the selection, of two that stand one below the other", async () => {
    fake.addSheet("Plan", [HEAD, ...rows(80), [null, null, null], [null, null, null], HEAD, ...rows(5, "bore")]);
    fake.cursor = { row: 85, column: 1 };
    expect(await host.readTable(score)).toMatchObject({ top: 83, selected: 1, address: "Plan A84:C89" });
    fake.cursor = { row: 3, column: 1 };
    const first = (await host.readTable(score))!;
    expect(first).toMatchObject({ top: 0, selected: 2 });
    expect(first.rows).toHaveLength(80);
    // From the one into the other: the row alone does not tell.
    fake.cursor = { row: 85, column: 1 };
    expect(await host.readRows(first, [])).toBeNull();
  });

  it("finds a table far down a sheet when a cell in it is selected", async () => {
    const notes = Array.from({ length: 300 }, (_, r): CellValue[] => [`note ${r}`, null, null]);
    fake.addSheet("Plan", [...notes, [null, null, null], HEAD, ...rows(10)]);
    fake.cursor = { row: 305, column: 2 };
    expect(await host.readTable(score)).toMatchObject({ top: 301, selected: 3 });
  });

  it("reads a table of more cells than fit in one answer, in as many as it takes", async () => {
    const wide = [...HEAD, ...Array.from({ length: 27 }, (_, c) => `Note ${c}`)];
    const cells = Array.from({ length: 4000 }, (_, r): CellValue[] => [
      r,
      "drill",
      5,
      ...new Array(27).fill("as the drawing says"),
    ]);
    fake.addSheet("Plan", [wide, ...cells]);
    fake.syncs = 0;
    expect((await host.readTable(score))!.rows).toHaveLength(4000);
    // 4001 × 30 cells, 100,000 at a time, after one look.
    expect(fake.syncs).toBe(3);
  });

  it("tells what stands beside the table: how far down, and whether a formula made it", async () => {
    const head = ["Row", "Verdict", "Reasons"];
    const sheet = fake.addSheet("Plan", [
      [...HEAD, null, ...head],
      ...rows(100).map((row, r) => [...row, null, ...(r < 70 && r !== 20 ? [r + 1, "ok", "…"] : [null, null, null])]),
    ]);
    fake.cursor = { row: 2, column: 1 };
    const numbers = (await host.read({ table: score, beside: results })).beside;
    expect(numbers).toMatchObject({ formula: "", left: 4, headings: head, address: "Plan E1:G71" });
    sheet.cells.set("0,4", { value: "Row", formula: "=CUT.PLAN(Plan!$A$1:$C$101)" });
    expect((await host.read({ table: score, beside: results })).beside?.formula).toMatch(/^=CUT\.PLAN/);
    sheet.cells.set("0,4", { value: "Row" });
    sheet.cells.set("0,5", { value: "Inspector" });
    expect((await host.read({ table: score, beside: results })).beside).toBeNull();
  });

  it("looks for all lists in one go, as tables and as sheets, whatever their case", async () => {
    const sheet = fake.addSheet("Shop", [
      ["Tool", "Kind"],
      ["D 5", "drill"],
      [null, null],
      ["Machine", "Max rpm"],
      ["Mill A", 12000],
    ]);
    fake.addTable("TOOLS", sheet, 0, 0, 1, 2);
    fake.addTable("machines", sheet, 3, 0, 1, 2);
    fake.addSheet("materials", [
      ["Material", "Group"],
      ["Steel 42", "P"],
    ]);
    fake.syncs = 0;
    const { lists } = await host.read({ lists: ["Materials", "Tools", "Machines", "Prices"] });
    expect(fake.syncs).toBe(2);
    expect(lists!.map((list) => list?.reference)).toEqual([
      "materials!$A$1:$B$2",
      "TOOLS[#All]",
      "machines[#All]",
      undefined,
    ]);
    expect(lists![2]!.rows).toEqual([["Mill A", 12000]]);
  });

  it("sees that a table has moved, or that another sheet is in front", async () => {
    const sheet = fake.addSheet("Plan", [HEAD, ...rows(10)]);
    fake.addSheet("Other", [HEAD, ...rows(10)]);
    fake.cursor = { row: 4, column: 1 };
    const table = (await host.readTable(score))!;
    expect(await host.readRows(table, [])).toMatchObject({ selected: 3 });
    fake.insertRows(sheet, 0, 2);
    expect(await host.readRows(table, [])).toBeNull();
    fake.active = 1;
    expect(await host.readRows(table, [])).toBeNull();
  });
});
