/** The quote and the comparison on the desk: written by the pane's buttons, equal to the worksheet function. */
import fs from "node:fs";
import path from "node:path";
import ExcelJS from "exceljs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { QUOTE } from "../../functions/quote.ts";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { axe } from "./axe.ts";
import { type Desk, openDesk, ready, saveAs, until } from "./page.ts";
import { OUT } from "./serve.ts";

const at = (desk: Desk, sheet: string, row: number, column: number) =>
  desk.page.evaluate((place) => (globalThis as any).tablefeedDesk.valueAt(place), { sheet, row, column });

async function filled(desk: Desk, sheet: string): Promise<void> {
  await until(async () => ((await at(desk, sheet, 1, 3).catch(() => null)) ?? "") !== "");
}

describe("the quote on the desk", () => {
  let desk: Desk;
  beforeAll(async () => {
    fs.mkdirSync(OUT, { recursive: true });
    desk = await openDesk("quote");
    await ready(desk.page);
    await desk.page.click("#tab-table");
    await desk.page.locator(".quote summary").click();
  });
  afterAll(() => desk?.close());

  it("has nothing for axe to find in its section", async () => {
    expect(await axe(desk.page, "#pane")).toEqual([]);
    await desk.page.locator(".quote").screenshot({ path: path.join(OUT, "quote-section.png") });
  });
  it("writes the sheet that CUT.QUOTE would spill (independent)", async () => {
    await desk.page.fill("#quote-batch", "25");
    await desk.page.click("text=Write the quote");
    await filled(desk, "Quote");
    const wanted = QUOTE(DEMO as any[][], MATERIALS as any[][], TOOLS as any[][], MACHINES as any[][], [[25]]);
    const read = (await desk.page.evaluate(() =>
      Array.from({ length: 400 }, (_, row) =>
        [1, 3].map((column) => (globalThis as any).tablefeedDesk.valueAt({ sheet: "Quote", row, column }) ?? ""),
      ),
    )) as (string | number)[][];
    // Long sentences go on in rows that begin with two spaces.
    const lines: (string | number)[][] = [];
    for (const [item = "", minutes = ""] of read) {
      const above = lines[lines.length - 1];
      if (String(item).startsWith("  ") && above) above[0] = `${above[0]} ${String(item).trim()}`;
      else if (item !== "") lines.push([item, minutes]);
    }
    expect(lines.map(([item]) => item)).toEqual(wanted.map((line) => line[1]));
    wanted.forEach((line, i) => {
      if (typeof line[3] === "number") expect(lines[i]![1] as number).toBeCloseTo(line[3], 9);
    });
    await desk.page.screenshot({ path: path.join(OUT, "quote-sheet.png") });
  });
  it("leads back to the table, and keeps what the person typed", async () => {
    await desk.page.click("text=Back to the table");
    await desk.page.waitForSelector(".quote #quote-first", { state: "visible" });
    expect(await desk.page.inputValue("#quote-batch")).toBe("25");
  });
  it("sets two machines side by side", async () => {
    await desk.page.selectOption("#quote-first", String(MACHINES[2]![0]));
    await desk.page.selectOption("#quote-second", String(MACHINES[3]![0]));
    await desk.page.click("text=Write the comparison");
    await filled(desk, "Compare");
    expect(await at(desk, "Compare", 0, 1)).toBe(MACHINES[2]![0]);
    expect(await at(desk, "Compare", 0, 2)).toBe(MACHINES[3]![0]);
    expect(await at(desk, "Compare", 1, 3)).toBeTypeOf("number");
    await desk.page.screenshot({ path: path.join(OUT, "compare-sheet.png") });
  });
  it("saves both as pages that print as wide as the paper", async () => {
    const book = new ExcelJS.Workbook();
    await book.xlsx.readFile(await saveAs(desk.page, "quote.xlsx"));
    for (const name of ["Quote", "Compare"])
      expect(book.getWorksheet(name)!.pageSetup).toMatchObject({ fitToPage: true, fitToWidth: 1, fitToHeight: 0 });
    expect(book.getWorksheet("Plan")!.pageSetup.fitToPage).toBeFalsy();
    expect(desk.complaints).toEqual([]);
  });
});
