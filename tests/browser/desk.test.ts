import { execFile } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { promisify } from "node:util";
import AxeBuilder from "@axe-core/playwright";
import ExcelJS from "exceljs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { MACHINES } from "../../src/lists/machines.ts";
import { type Desk, goTo, openDesk, ready, saveAs, toSheet, typeInto } from "./page.ts";
import { OUT } from "./serve.ts";

type Cell = string | number | boolean | null;
const value = (desk: Desk, sheet: string, row: number, column: number): Promise<Cell> =>
  desk.page.evaluate(([s, r, c]) => (globalThis as any).tablefeedDesk.valueAt({ sheet: s, row: r, column: c }), [
    sheet,
    row,
    column,
  ] as const);
const until = async (what: () => Promise<boolean>, milliseconds = 5000) => {
  const end = Date.now() + milliseconds;
  while (!(await what())) {
    if (Date.now() > end) throw new Error("waited in vain");
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
};

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
          typeof raw === "object" ? ((raw as { error: string }).error ?? String(raw)) : raw;
      }),
    );
  }
  return found;
}

describe("the desk in a browser", () => {
  let desk: Desk;
  let loadedIn = 0;
  beforeAll(async () => {
    const start = Date.now();
    desk = await openDesk();
    loadedIn = Date.now() - start;
  });
  afterAll(async () => {
    console.log(`desk built, served and loaded in ${loadedIn} ms`);
    await desk?.close();
  });

  it("starts with the demo job and a verdict for each of its rows", async () => {
    expect(await value(desk, "Plan", 0, 0)).toBe("Verdict");
    expect(["ok", "check", "stop"]).toContain(await value(desk, "Plan", 1, 0));
    expect(await value(desk, "Machines", 0, 0)).toBe("Machine");
    expect(await desk.page.evaluate(() => (globalThis as any).tablefeedDesk.unsaved())).toBe(false);
    await desk.page.screenshot({ path: path.join(OUT, "desk.png") });
  });

  it("answers a formula typed in small letters, and again when its cell is edited", async () => {
    const { page } = desk;
    await toSheet(page, "Machines");
    await typeInto(page, "A30", "120");
    await typeInto(page, "B30", '=cut.rpm(A30,10,"mm")');
    // n = 1000·vc/(π·D)
    await until(async () => Math.abs(Number(await value(desk, "Machines", 29, 1)) - 120_000 / (10 * Math.PI)) < 1e-9);
    await typeInto(page, "A30", "60");
    await until(async () => Math.abs(Number(await value(desk, "Machines", 29, 1)) - 60_000 / (10 * Math.PI)) < 1e-9);
  });

  it("keeps a blank cell blank: an error that says so, not a zero", async () => {
    const { page } = desk;
    await typeInto(page, "C30", '=CUT.RPM(D30,10,"mm")');
    await until(async () => (await value(desk, "Machines", 29, 2)) === "#VALUE!");
    await goTo(page, "C30");
    await page.waitForSelector("#reason:not([hidden])");
    expect(await page.textContent("#reason")).toMatch(/surfaceSpeed is blank/);
    await goTo(page, "A30");
    await page.waitForSelector("#reason", { state: "hidden" });
  });

  it("leaves an omitted argument out", async () => {
    await typeInto(desk.page, "D31", '=CUT.RPM(120,10,"mm",)');
    await until(async () => Math.abs(Number(await value(desk, "Machines", 30, 3)) - 120_000 / (10 * Math.PI)) < 1e-9);
  });

  it("spills a range of answers, each with its own error", async () => {
    const { page } = desk;
    await typeInto(page, "A32", "100");
    await typeInto(page, "A34", "300");
    await typeInto(page, "B32", '=CUT.RPM(A32:A34,10,"mm")');
    await until(async () => typeof (await value(desk, "Machines", 33, 1)) === "number");
    expect(await value(desk, "Machines", 32, 1)).toBe("#VALUE!");
    expect(await value(desk, "Machines", 33, 1)).toBeCloseTo(300_000 / (10 * Math.PI), 9);
  });

  it("shows the help for an argument while it is typed", async () => {
    const { page } = desk;
    await goTo(page, "A40");
    await page.keyboard.type("=CUT.RPM(120,", { delay: 30 });
    await page
      .getByText(/CUT\.RPM\(/)
      .first()
      .waitFor();
    await page.screenshot({ path: path.join(OUT, "help.png") });
    for (let i = 0; i < 3; i++) await page.keyboard.press("Escape");
    expect(await value(desk, "Machines", 39, 0)).toBeNull();
  });

  it("calculates the plan again within a second of an edit", async () => {
    const { page } = desk;
    await toSheet(page, "Plan");
    const headings: Cell[] = await page.evaluate(() =>
      Array.from({ length: 80 }, (_, column) =>
        (globalThis as any).tablefeedDesk.valueAt({ sheet: "Plan", row: 0, column }),
      ),
    );
    const answers = headings.indexOf("Verdict", 1);
    const depth = headings.indexOf("Depth");
    const column = headings.indexOf("Time each", answers);
    const letters = (n: number): string =>
      (n < 26 ? "" : letters(Math.floor(n / 26) - 1)) + String.fromCharCode(65 + (n % 26));
    const before = await value(desk, "Plan", 4, column);
    expect(typeof before).toBe("number");
    const old = Number(await value(desk, "Plan", 4, depth));
    const times: number[] = [];
    for (const next of [old + 1, old + 2, old + 3]) {
      await goTo(page, `${letters(depth)}5`);
      await page.keyboard.type(String(next));
      await page.evaluate(
        ([c]) => {
          const now = () => (globalThis as any).tablefeedDesk.valueAt({ sheet: "Plan", row: 4, column: c });
          const first = now();
          (globalThis as any).answered = new Promise((resolve) => {
            const pressed = (event: KeyboardEvent) => {
              if (event.key !== "Enter") return;
              removeEventListener("keydown", pressed, true);
              const start = performance.now();
              const look = () => (now() === first ? requestAnimationFrame(look) : resolve(performance.now() - start));
              look();
            };
            addEventListener("keydown", pressed, true);
          });
        },
        [column] as const,
      );
      await page.keyboard.press("Enter");
      times.push(await page.evaluate(() => (globalThis as any).answered));
    }
    console.log(`edit to new result: ${times.map((t) => t.toFixed(0)).join(", ")} ms`);
    expect(Math.min(...times)).toBeLessThan(1000);
  });

  it("saves a file that opens in the desk again with equal values", async () => {
    const { page } = desk;
    const first = await saveAs(page, "first.xlsx");
    await ready(page);
    const values = await valuesOf(first);
    expect(values["Machines!A1"]).toBe("Machine");
    expect(values["Machines!A2"]).toBe(MACHINES[1]![0]);
    expect(values["Machines!B30"]).toBeCloseTo(60_000 / (10 * Math.PI), 9);
    await page.setInputFiles("#file", first);
    await page.waitForFunction(() => document.getElementById("state")!.textContent!.startsWith("Opened"));
    expect(await value(desk, "Machines", 32, 1)).toBe("#VALUE!");
    const second = await saveAs(page, "second.xlsx");
    const again = await valuesOf(second);
    expect(Object.keys(again).length).toBeGreaterThan(1000);
    expect(again).toEqual(values);
  });

  it("keeps formats, widths, frozen panes and choices in the file", async () => {
    const book = new ExcelJS.Workbook();
    await book.xlsx.readFile(path.join(OUT, "second.xlsx"));
    const plan = book.getWorksheet("Plan")!;
    expect(plan.views[0]).toMatchObject({ state: "frozen", xSplit: 4, ySplit: 1 });
    const headings = (plan.getRow(1).values as unknown[]).map((h) =>
      h && typeof h === "object" ? (h as { result: unknown }).result : h,
    );
    const speed = headings.indexOf("Spindle speed");
    expect(plan.getCell(5, speed).numFmt).toBe("0");
    expect(plan.getColumn(4).width).toBeGreaterThan(10);
    const operation = headings.indexOf("Operation");
    expect(plan.getCell(5, operation).dataValidation).toMatchObject({ type: "list" });
    const formulas: string[] = [];
    plan.eachRow((row) => row.eachCell((cell) => cell.formula && formulas.push(cell.formula)));
    expect(formulas.some((f) => f.startsWith("_xldudf_CUT_PLAN("))).toBe(true);
    const machines = book.getWorksheet("Machines")!;
    expect(machines.getCell("B30").formula).toBe('_xldudf_CUT_rpm(A30,10,"mm")'.replace("rpm", "RPM"));
  });

  it("asks before an edited workbook is replaced, and leaves it alone on no", async () => {
    const { page } = desk;
    await toSheet(page, "Machines");
    await typeInto(page, "A45", "mine");
    await page.click("#demo");
    await page.waitForSelector("#question[open]");
    await page.keyboard.press("Escape");
    expect(await value(desk, "Machines", 44, 0)).toBe("mine");
    await page.click("#demo");
    await page.click("#question-yes");
    await ready(page);
    await until(async () => (await value(desk, "Machines", 44, 0)) === null);
  });

  it("says what is wrong with a file that is none, and keeps what was open", async () => {
    const { page } = desk;
    for (const [name, bytes, words] of [
      ["notes.xlsx", Buffer.from("not a workbook"), /not an \.xlsx file/],
      ["old.xlsx", Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0, 0]), /password|\.xls file/],
      ["broken.xlsx", Buffer.from("PK\u0003\u0004 broken"), /damaged/],
    ] as const) {
      await page.setInputFiles("#file", { name, mimeType: "application/octet-stream", buffer: bytes });
      await page.waitForFunction((n) => document.getElementById("state")!.textContent!.startsWith(n), name);
      expect(await page.textContent("#state")).toMatch(words);
    }
    expect(await value(desk, "Plan", 0, 0)).toBe("Verdict");
  });

  it("saves a file that LibreOffice opens with all values equal", async ({ skip }) => {
    const { page } = desk;
    try {
      await promisify(execFile)("soffice", ["--version"]);
    } catch {
      return skip("LibreOffice is not installed");
    }
    const file = await saveAs(page, "for-libreoffice.xlsx");
    const out = path.join(OUT, "libreoffice");
    fs.rmSync(out, { recursive: true, force: true });
    await promisify(execFile)("soffice", [
      `-env:UserInstallation=file://${path.join(OUT, "libreoffice-profile")}`,
      "--headless",
      "--convert-to",
      "xlsx",
      "--outdir",
      out,
      file,
    ]);
    const ours = await valuesOf(file);
    const theirs = await valuesOf(path.join(out, "for-libreoffice.xlsx"));
    for (const [where, mine] of Object.entries(ours)) {
      const other = theirs[where];
      if (typeof mine === "number") expect(other, where).toBeCloseTo(mine, 9);
      else expect(other, where).toEqual(mine);
    }
  });

  it("offers a blank table", async () => {
    const { page } = desk;
    await page.click("#blank");
    if (await page.isVisible("#question-yes")) await page.click("#question-yes");
    await page.waitForFunction(() => document.getElementById("state")!.textContent!.includes("blank"));
    expect(await value(desk, "Plan", 0, 2)).toBe("Row");
    await page.screenshot({ path: path.join(OUT, "blank.png") });
  });

  it("takes words typed into a cell with a list, fractions as fractions, and colours the verdict as it reads", async () => {
    const { page } = desk;
    for (const [cell, text] of [
      ["E2", "drill"],
      ["F2", "in"],
      ["M2", "3/8"],
      ["K3", "10-24"],
      ["N2", "0.5"],
    ] as const)
      await typeInto(page, cell, text);
    await until(async () => (await value(desk, "Plan", 1, 13)) === 0.5);
    expect(await value(desk, "Plan", 1, 4)).toBe("drill");
    expect(await value(desk, "Plan", 1, 12)).toBe("3/8");
    expect(await value(desk, "Plan", 2, 10)).toBe("10-24");
    await until(async () => (await value(desk, "Plan", 1, 0)) === "stop");
    await page.waitForTimeout(500);
    // Where the cell is on the canvas, a colour is asked of the picture: the red of "stop".
    const shot = await page.screenshot({ path: path.join(OUT, "stop.png") });
    const reds = await page.evaluate(async (data) => {
      const image = await createImageBitmap(new Blob([Uint8Array.from(atob(data), (ch) => ch.charCodeAt(0))]));
      const canvas = new OffscreenCanvas(image.width, image.height);
      const context = canvas.getContext("2d")!;
      context.drawImage(image, 0, 0);
      const { data: points } = context.getImageData(0, 0, 400, image.height);
      let count = 0;
      for (let i = 0; i < points.length; i += 4)
        if (points[i] === 0xf8 && points[i + 1] === 0xd7 && points[i + 2] === 0xd4) count++;
      return count;
    }, shot.toString("base64"));
    expect(reds).toBeGreaterThan(200);
  });

  it("takes rows pasted beyond the live block into it", async () => {
    const { page } = desk;
    await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    await goTo(page, "E2");
    const rows = Array.from({ length: 110 }, () => "drill\tmm").join("\n");
    await page.evaluate((text) => navigator.clipboard.writeText(text), rows);
    await page.keyboard.press("Control+V");
    await until(async () => (await value(desk, "Plan", 110, 5)) === "mm");
    await until(async () => (await value(desk, "Plan", 110, 0)) === "stop");
    expect(await value(desk, "Plan", 97, 0)).toBe("stop");
    await page.screenshot({ path: path.join(OUT, "grown.png") });
  });

  it("has a page around the grid without accessibility faults", async () => {
    const found = await new AxeBuilder({ page: desk.page }).exclude("#grid").analyze();
    expect(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html).join(" ")}`)).toEqual([]);
  });

  it("asks nobody for anything and breaks no rule of its page", () => {
    expect(desk.complaints).toEqual([]);
  });
});
