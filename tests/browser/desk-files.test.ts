/** Files of other people in the desk: formulas that nobody has worked out, columns without widths, lists of choices for the pane. */
import fs from "node:fs";
import path from "node:path";
import ExcelJS from "exceljs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Desk, goTo, openDesk, typeInto, until, valueAt } from "./page.ts";
import { OUT } from "./serve.ts";

/** A shop's list as programs write it that do not calculate: formulas without values, columns without widths. */
async function shopList(file: string): Promise<void> {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Plan");
  sheet.addRow(["Op", "Operation", "Units", "Diameter", "Depth", "Quantity", "Due", "Price", "Empty"]);
  for (let i = 0; i < 30; i++) {
    sheet.addRow([(i + 1) * 10, "drill", "mm", 8.5, 12, i + 1, new Date(Date.UTC(2026, 0, i + 1))]);
    sheet.getCell(i + 2, 7).numFmt = "dd.mm.yyyy";
    sheet.getCell(i + 2, 8).value = { formula: `F${i + 2}*1.5` } as ExcelJS.CellFormulaValue;
  }
  await book.xlsx.writeFile(file);
}

describe("files of others", () => {
  let desk: Desk;
  const file = path.join(OUT, "shop-list.xlsx");
  beforeAll(async () => {
    fs.mkdirSync(OUT, { recursive: true });
    await shopList(file);
    desk = await openDesk("desk-files");
  });
  afterAll(() => desk?.close());

  it("says that it calculates only as long as it does", async () => {
    const { page } = desk;
    await typeInto(page, "B30", "=1+2", "Machines");
    await until(async () => (await valueAt(page, "Machines", 29, 1)) === 3);
    await until(async () => (await page.getAttribute("#state", "data-busy")) === "no");
    expect(await page.textContent("#state")).not.toMatch(/calculating/i);
  });

  it("makes the choices of the pane's columns when they are looked at, one list a column", async () => {
    const { page } = desk;
    await goTo(page, "D5");
    await page.click("#tab-table");
    await page.locator("#pane .fill summary").waitFor();
    expect(await page.locator("#pane select[id^=match-]").count()).toBe(0);
    await page.locator("#pane .fill summary").click();
    await page.locator("#pane select[id^=match-]").first().waitFor();
    const headings = await page.evaluate(() => {
      const at = (column: number) => (globalThis as any).tablefeedDesk.valueAt({ sheet: "Plan", row: 0, column });
      let count = 0;
      while (at(count) !== null) count++;
      return count;
    });
    expect(await page.locator("#pane select[id^=match-]").count()).toBe(headings);
    await page.locator("#pane .fill summary").click();
  });

  it("shows columns of formulas that nobody has worked out yet, and works them out", async () => {
    const { page } = desk;
    await page.setInputFiles("#file", file);
    await page.waitForFunction(() => document.getElementById("state")!.textContent!.startsWith("Opened"));
    await until(async () => (await valueAt(page, "Plan", 10, 7)) === 15);
    const cell = page.locator('.tg-row[data-row="10"] [data-column="7"]');
    expect(await cell.textContent()).toBe("15");
    expect((await cell.boundingBox())!.width).toBeGreaterThan(20);
    // The column that holds nothing is out of the way, and the switch says so.
    expect(await page.locator('.tg-row[data-row="10"] [data-column="8"]').count()).toBe(0);
    expect(await page.textContent(".tg-foot")).toMatch(/Show 1 unused column/);
  });

  it("shows numbers and dates whole in columns that have no width of their own", async () => {
    const { page } = desk;
    const cell = page.locator('.tg-row[data-row="10"] [data-column="6"]');
    expect(await cell.textContent()).toBe("10.01.2026");
  });

  it("says nothing on the console, and asks nobody", () => expect(desk.complaints).toEqual([]));
});
