/** The desk as the build makes it, in Chromium, from the person's side. */
import { execFile } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { promisify } from "node:util";
import ExcelJS from "exceljs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { PLAN } from "../../functions/plan.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { axe } from "./axe.ts";
import {
  type Cell,
  cellsOf,
  choose,
  type Desk,
  goTo,
  isUnsaved,
  letters,
  openDesk,
  ready,
  saveAs,
  typeInto,
  until,
  valueAt,
} from "./page.ts";
import { OUT } from "./serve.ts";

/** Every value of a file, formulas by their cached result. */
async function valuesOf(file: string): Promise<Record<string, Cell>> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.readFile(file);
  const found: Record<string, Cell> = {};
  for (const sheet of book.worksheets) {
    sheet.eachRow((row) =>
      row.eachCell((cell) => {
        const raw = cell.formula ? cell.result : cell.value;
        if (raw === null || raw === undefined || raw === "") return;
        found[`${sheet.name}!${cell.address}`] =
          typeof raw === "object" ? ((raw as { error: string }).error ?? String(raw)) : (raw as Cell);
      }),
    );
  }
  return found;
}

const blank = (cell: Cell | undefined) => cell === null || cell === undefined || cell === "";

/** Rows of the sheet Plan whose results are not those of the worksheet function (an independent way to the same). */
function wrongRows(cells: readonly Cell[][]): string[] {
  const head = cells[0]!;
  const first = head.indexOf("Row");
  const last = head.indexOf("Reasons");
  const inputs = cells
    .filter((row, r) => r === 0 || !blank(row[head.indexOf("Operation")]))
    .map((row) => row.slice(first, last));
  const answers = PLAN(inputs, MATERIALS as any[][], TOOLS as any[][], MACHINES as any[][]) as Cell[][];
  const names = answers[0]!;
  const wrong: string[] = [];
  cells
    .filter((row, r) => r > 0 && !blank(row[head.indexOf("Operation")]))
    .forEach((row, r) => {
      for (const name of ["Verdict", "Spindle speed", "Table feed", "Time", "Cost"]) {
        const theirs = answers[r + 1]![names.indexOf(name)]!;
        const mine = row[head.indexOf(name)] ?? "";
        const same =
          typeof theirs === "number" && typeof mine === "number"
            ? Math.abs(mine - theirs) <= 1e-9 * Math.abs(theirs)
            : mine === theirs;
        if (!same) wrong.push(`row ${r + 2} ${name}: ${mine} for ${theirs}`);
      }
    });
  return wrong;
}

describe("the desk in a browser", () => {
  let desk: Desk;
  beforeAll(async () => {
    fs.mkdirSync(OUT, { recursive: true });
    desk = await openDesk();
  });
  afterAll(() => desk?.close());

  it("starts with the demo job, a verdict for each of its rows, on a row that stops", async () => {
    const cells = await cellsOf(desk.page, "Plan", 80);
    expect(cells[0]!.slice(0, 3)).toEqual(["Verdict", "Row", "Feature"]);
    expect(wrongRows(cells)).toEqual([]);
    expect(await valueAt(desk.page, "Machines", 0, 0)).toBe("Machine");
    expect(await isUnsaved(desk.page)).toBe(false);
    await desk.page.waitForSelector(".verdict.stop, .verdict");
    expect(await desk.page.textContent("#pane")).toMatch(/STOP/i);
    // In sight with its neighbours above and below.
    const seen = await desk.page.evaluate(() => {
      const grid = document.querySelector(".tg-scroll")!.getBoundingClientRect();
      const cell = document.querySelector(".tg-active")!.getBoundingClientRect();
      return { above: cell.top - grid.top, below: grid.bottom - cell.bottom };
    });
    expect(Math.min(seen.above, seen.below)).toBeGreaterThan(100);
    await desk.page.screenshot({ path: path.join(OUT, "desk.png") });
  });

  it("plans a row again with the edit itself, in one step of undo (independent: CUT.PLAN of the same cells)", async () => {
    const { page } = desk;
    const head = (await cellsOf(page, "Plan", 1))[0]!;
    const [depth, time] = [head.indexOf("Depth"), head.indexOf("Time")];
    const before = [await valueAt(page, "Plan", 4, depth), await valueAt(page, "Plan", 4, time)];
    expect(before[1]).toBeTypeOf("number");
    await typeInto(page, `${letters(depth)}5`, "13.5");
    expect(await valueAt(page, "Plan", 4, depth)).toBe(13.5);
    expect(await valueAt(page, "Plan", 4, time)).not.toBe(before[1]);
    expect(wrongRows(await cellsOf(page, "Plan", 80))).toEqual([]);
    expect(await isUnsaved(page)).toBe(true);
    await page.keyboard.press("Control+z");
    expect([await valueAt(page, "Plan", 4, depth), await valueAt(page, "Plan", 4, time)]).toEqual(before);
    expect(await isUnsaved(page)).toBe(false);
  });

  it("plans the rows that share a setup or a list again (independent)", async () => {
    const { page } = desk;
    const head = (await cellsOf(page, "Plan", 1))[0]!;
    await typeInto(page, `${letters(head.indexOf("Machine"))}5`, String(MACHINES[3]![0]));
    await until(async () => (await page.getAttribute("#state", "data-busy")) === "no");
    expect(wrongRows(await cellsOf(page, "Plan", 80))).toEqual([]);
    const rates = (await cellsOf(page, "Machines", 1))[0]!;
    const cost = head.indexOf("Cost");
    const before = await valueAt(page, "Plan", 9, cost);
    const old = await valueAt(page, "Machines", 1, rates.indexOf("Rate [per hour]"));
    expect(old).toBeTypeOf("number");
    await typeInto(page, `${letters(rates.indexOf("Rate [per hour]"))}2`, String(2 * Number(old)), "Machines");
    await until(async () => (await page.getAttribute("#state", "data-busy")) === "no");
    const changed = (await cellsOf(page, "Plan", 80)).filter((row) => row[head.indexOf("Machine")] === MACHINES[1]![0]);
    expect(changed.length).toBeGreaterThan(0);
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Control+z");
    await until(async () => (await page.getAttribute("#state", "data-busy")) === "no");
    expect(await valueAt(page, "Plan", 9, cost)).toBe(before);
    expect(wrongRows(await cellsOf(page, "Plan", 80))).toEqual([]);
  });

  it("answers a formula typed in small letters, and again when its cell is edited (independent: n = 1000·vc/(π·D))", async () => {
    const { page } = desk;
    await typeInto(page, "A30", "120", "Machines");
    await typeInto(page, "B30", '=cut.rpm(A30,10,"mm")', "Machines");
    const is = async (speed: number) =>
      Math.abs(Number(await valueAt(page, "Machines", 29, 1)) - (1000 * speed) / (10 * Math.PI)) < 1e-9;
    await until(() => is(120));
    await typeInto(page, "A30", "60", "Machines");
    await until(() => is(60));
    expect(Number(await valueAt(page, "Machines", 29, 1))).toBeGreaterThan(0);
  });

  it("says the reason of an error while its cell is selected, and keeps a blank cell blank", async () => {
    const { page } = desk;
    await typeInto(page, "C30", '=CUT.RPM(D30,10,"mm")', "Machines");
    await until(async () => (await valueAt(page, "Machines", 29, 2)) === "#VALUE!");
    await goTo(page, "C30", "Machines");
    await page
      .getByText(/surfaceSpeed is blank/)
      .first()
      .waitFor();
    expect(
      await page.evaluate(() => (globalThis as any).tablefeedDesk.reasonAt({ sheet: "Machines", row: 29, column: 2 })),
    ).toMatch(/surfaceSpeed is blank/);
  });

  it("spills a range of answers, each with its own error", async () => {
    const { page } = desk;
    await typeInto(page, "A32", "100", "Machines");
    await typeInto(page, "A34", "300", "Machines");
    await typeInto(page, "B32", '=CUT.RPM(A32:A34,10,"mm")', "Machines");
    await until(async () => typeof (await valueAt(page, "Machines", 33, 1)) === "number");
    expect(await valueAt(page, "Machines", 32, 1)).toBe("#VALUE!");
    expect(await valueAt(page, "Machines", 33, 1)).toBeCloseTo(300_000 / (10 * Math.PI), 9);
  });

  it("hands a file to the browser, says just that, and counts it as saved only when the person has seen it", async () => {
    const { page } = desk;
    expect(await isUnsaved(page)).toBe(true);
    await saveAs(page, "first.xlsx");
    await ready(page);
    expect(await page.textContent("#notices")).toMatch(/“Demo job.xlsx” was given to the browser/);
    expect(await isUnsaved(page)).toBe(true);
    await page.getByRole("button", { name: "It is there" }).click();
    expect(await isUnsaved(page)).toBe(false);
    expect(await page.textContent("#mark")).toMatch(/^saved/);
  });

  it("opens that file again with equal values, and saves them again", async () => {
    const { page } = desk;
    const first = await valuesOf(path.join(OUT, "first.xlsx"));
    expect(first["Machines!B30"]).toBeCloseTo(60_000 / (10 * Math.PI), 9);
    expect(first["Machines!B33"]).toBe("#VALUE!");
    await page.setInputFiles("#file", path.join(OUT, "first.xlsx"));
    await page.waitForFunction(() => document.getElementById("state")!.textContent!.startsWith("Opened"));
    expect(await valueAt(page, "Machines", 32, 1)).toBe("#VALUE!");
    expect(await valueAt(page, "Machines", 33, 1)).toBeCloseTo(300_000 / (10 * Math.PI), 9);
    await typeInto(page, "A40", "one more", "Machines");
    const again = await valuesOf(await saveAs(page, "second.xlsx"));
    expect(again["Machines!A40"]).toBe("one more");
    expect(Object.keys(again).length).toBeGreaterThan(1000);
    expect(Object.fromEntries(Object.entries(again).filter(([where]) => where !== "Machines!A40"))).toEqual(first);
  });

  it("keeps formats, widths, frozen panes, choices, tables and formulas in the file", async () => {
    const book = new ExcelJS.Workbook();
    await book.xlsx.readFile(path.join(OUT, "second.xlsx"));
    const plan = book.getWorksheet("Plan")!;
    expect(plan.views[0]).toMatchObject({ state: "frozen", ySplit: 1 });
    const headings = (plan.getRow(1).values as unknown[]).map(String);
    expect(plan.getCell(5, headings.indexOf("Spindle speed")).numFmt).toBe("0");
    expect(plan.getCell(5, headings.indexOf("Operation")).dataValidation).toMatchObject({ type: "list" });
    expect(book.getWorksheet("Machines")!.getCell("B30").formula).toBe('_xldudf_CUT_RPM(A30,10,"mm")');
    const changed = plan.getCell(5, headings.indexOf("Changed"));
    expect(changed.formula).toMatch(/^IF\(OR\(/);
    expect(changed.result ?? "").toBe("");
    expect(String(plan.getCell(5, headings.indexOf("Basis")).value)).toMatch(/^of /);
  });

  it("saves a file that LibreOffice opens with all values equal", async ({ skip }) => {
    try {
      await promisify(execFile)("soffice", ["--version"]);
    } catch {
      return skip("LibreOffice is not installed");
    }
    const out = path.join(OUT, "libreoffice");
    fs.rmSync(out, { recursive: true, force: true });
    await promisify(execFile)("soffice", [
      `-env:UserInstallation=file://${path.join(OUT, "libreoffice-profile")}`,
      "--headless",
      "--convert-to",
      "xlsx",
      "--outdir",
      out,
      path.join(OUT, "second.xlsx"),
    ]);
    const ours = await valuesOf(path.join(OUT, "second.xlsx"));
    const theirs = await valuesOf(path.join(out, "second.xlsx"));
    for (const [where, mine] of Object.entries(ours)) {
      const other = theirs[where];
      // It works out again what holds an error or fills several cells, and does not know functions of ours.
      if (other === "#NAME?" && /^Machines![BC]3\d$/.test(where)) continue;
      if (typeof mine === "number") expect(other, where).toBeCloseTo(mine, 9);
      else expect(other, where).toEqual(mine);
    }
  });

  it("shows another workbook without asking, because what was open stays kept, and offers it back", async () => {
    const { page } = desk;
    await typeInto(page, "A45", "mine", "Machines");
    await choose(page, "#demo");
    await ready(page);
    expect(await valueAt(page, "Machines", 44, 0)).toBe(null);
    const offer = page.locator(".notice", { hasText: "first.xlsx" });
    await offer.getByRole("button", { name: "Bring it back" }).click();
    await until(async () => (await valueAt(page, "Machines", 44, 0)) === "mine");
    expect(await page.textContent("#book-name")).toBe("first.xlsx");
    expect(await isUnsaved(page)).toBe(true);
    await page.keyboard.press("Control+z");
    await choose(page, "#demo");
    await ready(page);
    await page.locator(".notice", { hasText: "first.xlsx" }).getByRole("button", { name: "Give it up" }).click();
    await page.click("#question-yes");
    await until(async () => (await page.locator(".notice", { hasText: "first.xlsx" }).count()) === 0);
  });

  it("says what is wrong with a file that is none, and keeps what was open", async () => {
    const { page } = desk;
    for (const [name, bytes] of [
      ["notes.xlsx", Buffer.from("not a workbook")],
      ["old.xlsx", Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0])],
      ["broken.xlsx", Buffer.from("PK\u0003\u0004 broken")],
    ] as const) {
      await page.setInputFiles("#file", { name, mimeType: "application/octet-stream", buffer: bytes });
      await page.waitForFunction((n) => document.getElementById("state")!.textContent!.startsWith(`${n}: `), name);
      expect((await page.textContent("#state"))!.length).toBeGreaterThan(name.length + 20);
    }
    expect(await valueAt(page, "Plan", 0, 0)).toBe("Verdict");
  });

  it("offers a blank table that takes words, fractions and thread sizes as they are, and says stop where a row cannot be made", async () => {
    const { page } = desk;
    await choose(page, "#blank");
    await page.waitForFunction(() => document.getElementById("state")!.textContent!.includes("blank"));
    await ready(page);
    const head = (await cellsOf(page, "Plan", 1))[0]!;
    const at = (heading: string, row: number) => `${letters(head.indexOf(heading))}${row}`;
    for (const [heading, row, text] of [
      ["Operation", 2, "drill"],
      ["Units", 2, "in"],
      ["Finish diameter", 2, "3/8"],
      ["Depth", 2, "0.5"],
      ["Thread", 3, "10-24"],
    ] as const)
      await typeInto(page, at(heading, row), text);
    const row = (await cellsOf(page, "Plan", 3))[1]!;
    expect([row[head.indexOf("Finish diameter")], row[head.indexOf("Depth")]]).toEqual(["3/8", 0.5]);
    expect(await valueAt(page, "Plan", 2, head.indexOf("Thread"))).toBe("10-24");
    expect(row[0]).toBe("stop");
    expect(await page.locator("#grid .tg-stop").count()).toBeGreaterThan(0);
    await page.screenshot({ path: path.join(OUT, "blank.png") });
  });

  it("takes pasted rows far below the table into it, as one step", async () => {
    const { page } = desk;
    await desk.context.grantPermissions(["clipboard-read", "clipboard-write"]);
    const head = (await cellsOf(page, "Plan", 1))[0]!;
    const operation = head.indexOf("Operation");
    await goTo(page, `${letters(operation)}2`);
    const rows = Array.from({ length: 110 }, () => "drill\tmm").join("\n");
    await page.evaluate((text) => navigator.clipboard.writeText(text), rows);
    await page.keyboard.press("Control+V");
    await until(async () => (await valueAt(page, "Plan", 110, operation + 1)) === "mm");
    await until(async () => (await valueAt(page, "Plan", 110, 0)) === "stop");
    expect(await valueAt(page, "Plan", 97, 0)).toBe("stop");
    await page.keyboard.press("Control+z");
    await until(async () => (await valueAt(page, "Plan", 110, operation)) === null);
    expect(await valueAt(page, "Plan", 110, 0)).toBe(null);
  });

  it("exports the table as CSV", async () => {
    const { page } = desk;
    await choose(page, "#demo");
    await ready(page);
    await goTo(page, "D5");
    // Where the browser has a dialog for saving there is nobody here to answer it.
    await page.evaluate(() => Object.assign(globalThis, { showSaveFilePicker: undefined }));
    await page.click("#more");
    const [download] = await Promise.all([page.waitForEvent("download"), page.click("#save-csv")]);
    const file = path.join(OUT, "plan.csv");
    await download.saveAs(file);
    const lines = fs.readFileSync(file, "utf8").replace("\ufeff", "").split("\r\n");
    expect(lines[0]).toMatch(/^Verdict,Row,Feature,/);
    const cells = await cellsOf(page, "Plan", 80);
    expect(lines.filter((line) => line !== "")).toHaveLength(cells.filter((row) => !blank(row[1])).length);
  });

  it("leads from bar to grid to pane and round again by F6, and back by Shift+F6", async () => {
    const { page } = desk;
    const where = () =>
      page.evaluate(() => {
        const active = document.activeElement!;
        return active.closest("#grid")
          ? "grid"
          : active.closest("#pane")
            ? "pane"
            : active.closest(".bar")
              ? "bar"
              : "";
      });
    await goTo(page, "D5");
    const seen = [await where()];
    for (let i = 0; i < 3; i++) {
      await page.keyboard.press("F6");
      seen.push(await where());
    }
    expect(seen).toEqual(["grid", "pane", "bar", "grid"]);
    await page.keyboard.press("Control+F6");
    expect(await where()).toBe("pane");
    await page.keyboard.press("Shift+F6");
    expect(await where()).toBe("grid");
  });

  it("opens its menu by keyboard, goes through it and closes it", async () => {
    const { page } = desk;
    await page.focus("#more");
    await page.keyboard.press("Enter");
    expect(await page.evaluate(() => document.activeElement!.id)).toBe("blank");
    await page.keyboard.press("ArrowUp");
    expect(await page.evaluate(() => document.activeElement!.id)).toBe("save-csv");
    await page.keyboard.press("Escape");
    expect(await page.isVisible("#more-menu")).toBe(false);
    expect(await page.evaluate(() => document.activeElement!.id)).toBe("more");
  });

  it("has no accessibility faults, with its menu open and closed, wide and narrow", async () => {
    const { page } = desk;
    expect(await axe(page)).toEqual([]);
    await page.click("#more");
    expect(await axe(page)).toEqual([]);
    await page.keyboard.press("Escape");
    await page.setViewportSize({ width: 390, height: 780 });
    expect(await axe(page)).toEqual([]);
    await page.click("#show-pane");
    expect(await page.isVisible("#grid")).toBe(false);
    expect(await page.isVisible("#pane")).toBe(true);
    expect(await axe(page)).toEqual([]);
    await page.click("#show-table");
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await page.setViewportSize({ width: 1920, height: 950 });
  }, 240_000);

  it("asks nobody for anything and breaks no rule of its page", () => {
    expect(desk.complaints).toEqual([]);
  });
});
