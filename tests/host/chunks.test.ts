/** Writes that are too big for one request. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { blockOf } from "../../taskpane/host/excel/cells.ts";
import { excelHost } from "../../taskpane/host/excel.ts";
import type { CellValue, Change, Host } from "../../taskpane/host/host.ts";
import { FakeExcel } from "./excel-fake/excel.ts";

const ROWS = 10_100;
const COLUMNS = [3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

describe("a table of 10,100 rows, 101,000 cells to be written", () => {
  let fake: FakeExcel;
  let host: Host;
  const cells: CellValue[][] = [
    ["Op", "Operation", "Dia", ...COLUMNS.map((c) => `R${c}`)],
    ...Array.from({ length: ROWS }, (_, r) => [r, "drill", 5, ...COLUMNS.map(() => null)]),
  ];
  const table = blockOf("Big", 0, 0, cells);
  const changes = table.rows.flatMap((_, row) =>
    COLUMNS.map((column): Change => ({ row, column, value: row + column })),
  );
  beforeEach(() => {
    fake = new FakeExcel();
    fake.addSheet("Big", cells);
    fake.install();
    host = excelHost();
  });
  afterEach(() => fake.uninstall());

  it("is written in several requests, none of them too big", async () => {
    await host.writeCells(table, changes, { same: { block: table, columns: [0, 1, 2] } });
    const writing = fake.batches.filter(({ writes }) => writes.length > 2);
    expect(writing.length).toBeGreaterThan(2);
    for (const { request, response } of fake.batches) expect(Math.max(request, response)).toBeLessThan(5 * 1024 * 1024);
    expect(fake.sheet("Big")!.cells.get(`${ROWS},12`)?.value).toBe(ROWS - 1 + 12);
  });

  it("is as it was when the last request breaks off, and says so", async () => {
    const big = fake.sheet("Big")!;
    const filled = () => [...big.cells.values()].filter((cell) => cell.value !== null).length;
    const before = filled();
    fake.fault = { sync: 6, at: 3 };
    await expect(host.writeCells(table, changes)).rejects.toThrow(/taken back/);
    expect(filled()).toBe(before);
  });
});
