/** Callouts pasted into the pane of the desk: added to the demo job, planned, undone; and five hundred of them. */
import fs from "node:fs";
import path from "node:path";
import ExcelJS from "exceljs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { axe } from "./axe.ts";
import { type Cell, cellsOf, type Desk, goTo, openDesk, ready, saveAs, until } from "./page.ts";
import { OUT } from "./serve.ts";

const MATERIAL = String(MATERIALS[1]![0]);
const MACHINE = String(MACHINES[1]![0]);

const grid = (desk: Desk, rows: number): Promise<Cell[][]> => cellsOf(desk.page, "Plan", rows);

const FIVE = [
  "6X 3/8-16 UNC-2B ↧ .75",
  "4X ⌀8.5 ↧ 20",
  "M8x1.25-6H ↧ 16/20",
  "⌀.266 ↧ .8 ⌴ ⌀.44 ↧ .25",
  "2X ⌀24 H7 ↧ 12",
].join("\n");

async function openSection(desk: Desk): Promise<void> {
  const { page } = desk;
  await page.click("#tab-table");
  const section = page.locator(".callouts");
  if (!(await section.evaluate((element) => (element as HTMLDetailsElement).open)))
    await section.locator("summary").click();
}

describe("callouts in the desk", () => {
  let desk: Desk;
  let used = 0;
  let verdictAt = 0;
  beforeAll(async () => {
    fs.mkdirSync(OUT, { recursive: true });
    desk = await openDesk("callouts");
    const cells = await grid(desk, 100);
    verdictAt = cells[0]!.indexOf("Verdict");
    used = cells.filter((row) => row.slice(1, 10).some((cell) => cell !== null)).length;
  });
  afterAll(() => desk?.close());

  it("shows what five callouts become, adds them under the job and plans every row", async () => {
    const { page } = desk;
    await goTo(page, "D5");
    await openSection(desk);
    await page.fill("#callouts-text", FIVE);
    await page.selectOption("#callouts-units", "mm");
    await page.selectOption("#callouts-material", MATERIAL);
    await page.selectOption("#callouts-machine", MACHINE);
    await page.waitForSelector(".callouts .tally");
    expect(await page.textContent(".callouts .tally")).toBe("5 callouts → 8 rows, all understood");
    expect(await page.locator(".callouts .read strong").first().textContent()).toBe(
      "6 × drill 3/8-16 UNC-2B tap drill, 0.875 deep [in]",
    );
    await page.screenshot({ path: path.join(OUT, "callouts-preview.png") });
    expect(await axe(page, "#pane")).toEqual([]);

    await page.getByRole("button", { name: "Add these rows to the table" }).click();
    await page.waitForSelector(".message .done");
    expect(await page.textContent(".message")).toMatch(/8 rows added under the table, numbered \d+0 to \d+0/);
    expect(await page.inputValue("#callouts-text")).toBe("");
    await until(async () =>
      (await grid(desk, used + 8)).slice(used).every((row) => ["ok", "check", "stop"].includes(String(row[verdictAt]))),
    );
    const cells = await grid(desk, used + 9);
    const head = cells[0]!;
    const operation = head.indexOf("Operation");
    expect(cells.slice(used, used + 8).map((row) => row[operation])).toEqual([
      "drill",
      "thread mill",
      "drill",
      "drill",
      "thread mill",
      "drill",
      "counterbore",
      "bore",
    ]);
    expect(cells[used]![head.indexOf("Material")]).toBe(MATERIAL);
    const speed = head.indexOf("Spindle speed");
    expect(cells.slice(used, used + 6).every((row) => Number(row[speed]) > 0)).toBe(true);
    await page.screenshot({ path: path.join(OUT, "callouts-added.png") });
  });

  it("takes all of it back in one step", async () => {
    const { page } = desk;
    await goTo(page, "D5");
    await page.keyboard.press("Control+z");
    await until(async () => (await grid(desk, used + 9)).slice(used).every((row) => row.slice(2, 8).every((c) => !c)));
  });

  it("marks what it does not understand, puts it first and keeps it", async () => {
    const { page } = desk;
    await goTo(page, "D5");
    await openSection(desk);
    await page.fill("#callouts-text", "4X ⌀8.5 ↧ 20\nHONE TO SUIT\n3X DRILL 5 ↧ 12");
    await page.selectOption("#callouts-units", "");
    await page.waitForFunction(() => document.querySelector(".callouts .tally")?.textContent?.startsWith("3 callouts"));
    expect(await page.locator(".callouts .open").count()).toBe(3);
    expect(await page.textContent(".callouts .untold")).toMatch(/2 rows do not tell mm or in/);
    await page.selectOption("#callouts-units", "mm");
    expect(await page.locator(".callouts .open").count()).toBe(1);
    expect(await page.locator(".callouts .read > li").first().textContent()).toMatch(/HONE TO SUIT/);
    await page.screenshot({ path: path.join(OUT, "callouts-open.png") });
    await page.getByRole("button", { name: "Add these rows to the table" }).click();
    await page.waitForSelector(".message .done");
    expect(await page.textContent(".message")).toMatch(/not understood: fill in by hand/);
    await goTo(page, "D5");
    await page.keyboard.press("Control+z");
    await until(async () => !(await grid(desk, used + 1))[used]![3]);
  });

  it("asks for the thickness when holes go through, and lists lines without rows", async () => {
    const { page } = desk;
    await goTo(page, "D5");
    await openSection(desk);
    await page.selectOption("#callouts-units", "mm");
    await page.fill("#callouts-text", "4X ⌀8.5 ↧ 20");
    await page.waitForFunction(() => document.querySelector(".callouts .tally")?.textContent?.startsWith("1 callout"));
    expect(await page.isVisible("#callouts-thickness")).toBe(false);
    await page.fill("#callouts-text", "4X ⌀8.5 THRU\n⌖ ⌀0.2 A B\nSHCS M8 X 20");
    await page.waitForSelector("#callouts-thickness", { state: "visible" });
    expect(await page.textContent(".callouts .others")).toMatch(/2 lines without rows.*tolerance frame.*hardware/s);
    await page.fill("#callouts-thickness", "about 20");
    await page.waitForFunction(() =>
      document.querySelector(".callouts .preview")?.textContent?.includes("Write the thickness as a number"),
    );
    await page.fill("#callouts-thickness", "20");
    await page.waitForFunction(() => document.querySelector(".callouts .preview")?.textContent?.includes("20 deep"));
    // The demo job has no remarks, and so no column for them.
    expect(await page.textContent(".callouts .preview")).toMatch(/add a column with the heading Remark/);
    await page.getByRole("button", { name: "Add these rows to the table" }).click();
    await page.waitForSelector(".message .done");
    const cells = await grid(desk, used + 1);
    expect(cells[used]![cells[0]!.indexOf("Depth", 1)]).toBe(20);
    expect(await page.inputValue("#callouts-thickness")).toBe("");
    await goTo(page, "D5");
    await page.keyboard.press("Control+z");
    await until(async () => !(await grid(desk, used + 1))[used]![3]);
  });

  it("plans five hundred pasted callouts, and says how long each part took", async () => {
    const { page } = desk;
    await goTo(page, "D5");
    await openSection(desk);
    const lines = Array.from({ length: 500 }, (_, i) => FIVE.split("\n")[i % 5]!);
    const wanted = 500 + 100 * 3;
    const times = await page.evaluate(
      async ([text, last, verdict]) => {
        const area = document.querySelector<HTMLTextAreaElement>("#callouts-text")!;
        const start = performance.now();
        area.value = text;
        area.dispatchEvent(new Event("input"));
        const when = async (what: () => boolean) => {
          while (!what()) {
            if (performance.now() - start > 60_000) throw new Error("waited in vain");
            await new Promise((resolve) => setTimeout(resolve, 10));
          }
          return performance.now() - start;
        };
        const valueAt = (row: number, column: number) =>
          (globalThis as any).tablefeedDesk.valueAt({ sheet: "Plan", row, column });
        const shown = await when(
          () => document.querySelector(".callouts .tally")?.textContent?.startsWith("500") ?? false,
        );
        document.querySelector<HTMLButtonElement>(".callouts .main")!.click();
        const written = await when(() => valueAt(last, 5) !== null || valueAt(last, 4) !== null);
        const planned = await when(() => ["ok", "check", "stop"].includes(valueAt(last, verdict)));
        const ready = await when(() => document.querySelector(".message .done") !== null);
        return { shown, written, planned, ready };
      },
      [lines.join("\n"), used + wanted - 1, verdictAt] as const,
    );
    console.log(
      `500 callouts: read and shown ${times.shown.toFixed(0)} ms, rows written ${times.written.toFixed(0)} ms, ` +
        `planned ${times.planned.toFixed(0)} ms, pane ready ${times.ready.toFixed(0)} ms (${wanted} rows)`,
    );
    const cells = await grid(desk, used + wanted + 1);
    expect(cells.slice(used, used + wanted).filter((row) => row[verdictAt] === null)).toEqual([]);
    expect(cells[used + wanted - 1]![0]).toBe(cells[used + wanted - 1]![verdictAt]);
    await page.evaluate(
      (row) => (globalThis as any).tablefeedDesk.select({ sheet: "Plan", row, column: 0 }),
      used + wanted - 1,
    );
    await page.screenshot({ path: path.join(OUT, "callouts-500.png") });
  });

  it("gives the last new row the choices, formats and colours of the others, in the saved file too", async () => {
    const file = await saveAs(desk.page, "callouts-500.xlsx");
    await ready(desk.page);
    const book = new ExcelJS.Workbook();
    await book.xlsx.readFile(file);
    const plan = book.getWorksheet("Plan")!;
    const cells = (await grid(desk, 1))[0]!;
    const last = used + 800;
    expect(plan.getCell(last, cells.indexOf("Operation") + 1).value).toBe("bore");
    expect(plan.getCell(last, cells.indexOf("Operation") + 1).dataValidation).toMatchObject({ type: "list" });
    expect(plan.getCell(last, cells.indexOf("Spindle speed") + 1).numFmt).toBe("0");
    const coloured = (plan as any).conditionalFormattings.map((one: { ref: string }) => one.ref).join(" ");
    const ends = [...coloured.matchAll(/:A(\d+)/g)].map((found: RegExpMatchArray) => Number(found[1]));
    expect(Math.max(...ends)).toBeGreaterThanOrEqual(last);
  });

  it("says nothing on the console, and asks nobody", async () => {
    expect(desk.complaints).toEqual([]);
  });
});
