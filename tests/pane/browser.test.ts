import fs from "node:fs";
import path from "node:path";
import { build } from "esbuild";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
// @ts-expect-error plain script without types
import { serve } from "../../taskpane/build/serve.mjs";
import { axe, COLOURS } from "../browser/axe.ts";
import { newPage, startBrowser } from "../browser/page.ts";

const root = path.resolve(import.meta.dirname, "../..");
const out = path.join(root, "tests", ".out", "pane");

let browser: Browser;
let served: { address: string; close(): Promise<void> };
beforeAll(async () => {
  fs.mkdirSync(out, { recursive: true });
  await build({
    entryPoints: [path.join(import.meta.dirname, "page.ts")],
    outfile: path.join(out, "taskpane.js"),
    bundle: true,
    format: "iife",
    absWorkingDir: root,
    logLevel: "warning",
  });
  fs.copyFileSync(path.join(root, "taskpane", "pane.css"), path.join(out, "pane.css"));
  // The page as it is but for Office and the functions: under its own policy, from the server it is served by.
  const html = fs.readFileSync(path.join(root, "taskpane", "index.html"), "utf8");
  fs.writeFileSync(path.join(out, "taskpane.html"), html.replace('<script src="functions.js"></script>', ""));
  fs.writeFileSync(path.join(out, "desk.html"), html);
  served = await serve({ folder: out, port: 0 });
  browser = await startBrowser();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

/** The pane at its narrowest, with what went wrong on the page. */
async function open(query: string, seen = true): Promise<{ page: Page; complaints: string[] }> {
  const { page } = await newPage(browser, { viewport: { width: 320, height: 800 } });
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(message.text());
  });
  if (seen) await page.addInitScript(() => localStorage.setItem("tablefeed.seen", "yes"));
  await page.goto(`${served.address}taskpane.html${query}`);
  await page.waitForFunction(() => !document.body.textContent?.includes("Reading the workbook"));
  return { page, complaints };
}

describe("the pane in a browser", () => {
  it("asks once what a doubtful heading means, with its first cells, and keeps the answer", async () => {
    const { page, complaints } = await open("?row=1&feed");
    const question = page.getByRole("region", { name: "What does “Feed” mean?" });
    await question.waitFor();
    expect(await question.textContent()).toContain("0.05 · Bay 3");
    expect(await question.getByRole("button").allInnerTexts()).toEqual([
      "→ Feed per tooth",
      "← Table feed",
      "not used",
    ]);
    expect(await axe(page)).toEqual([]);
    await question.getByRole("button", { name: "→ Feed per tooth" }).click();
    await question.waitFor({ state: "hidden" });
    await page.waitForFunction(() => (window as any).host.kept.get("headings")?.includes('"feed","in:feedPerTooth"'));
    expect(complaints).toEqual([]);
  });

  it("lets a person point at the row of headings where none was recognised, and match them by hand", async () => {
    const { page, complaints } = await open("?table=odd&row=-2");
    await page.getByRole("button", { name: "The selected row holds the headings" }).click();
    await page.getByRole("tab", { name: "Whole table" }).click();
    await page.getByText("0 of 3 columns recognised").click();
    await page.getByLabel("Alpha").selectOption({ label: "→ Operation" });
    await page.getByText("1 of 3 columns recognised").waitFor();
    expect(await axe(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it.each([
    ["a row to be checked", "?row=1", true],
    ["a good row", "?row=2", true],
    ["an empty row", "?row=3", true],
    ["no table", "?table=none", true],
    ["no lists and no units", "?lists=none&unit=none", true],
    ["the first time", "?row=1", false],
    ["the first time without a table", "?table=none", false],
  ])("has nothing for axe to find, and nothing wider than the pane: %s", async (_, query, seen) => {
    const { page, complaints } = await open(query, seen);
    for (const view of ["row", "program", "table"]) {
      const tab = page.locator(`#tab-${view}`);
      if (await tab.isVisible()) await tab.click();
      for (const summary of await page.locator("summary").all()) if (await summary.isVisible()) await summary.click();
      expect(await axe(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    }
    await page.evaluate(() => document.documentElement.classList.add("dark"));
    expect(await axe(page, undefined, COLOURS)).toEqual([]);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("would be told by axe of a button without a name and of grey on white", async () => {
    const { page } = await open("?row=1");
    await page.evaluate(() =>
      document.body.insertAdjacentHTML("beforeend", "<button></button><p style='color:#aaa;background:#fff'>faint</p>"),
    );
    expect((await axe(page)).map((finding) => finding.split(":")[0])).toEqual(
      expect.arrayContaining(["button-name", "color-contrast"]),
    );
    expect((await axe(page, undefined, COLOURS)).map((finding) => finding.split(":")[0])).toEqual(COLOURS);
    await page.context().close();
  });

  it("gives gloves something to hit: every control is at least 40 px high, the one that writes 48", async () => {
    const { page } = await open("?lists=none&unit=none", false);
    for (const view of ["row", "program", "table"]) {
      await page.click(`#tab-${view}`);
      for (const control of await page.locator("button, select, summary").all()) {
        if (!(await control.isVisible())) continue;
        const box = (await control.boundingBox())!;
        expect(box.height, (await control.textContent()) ?? "").toBeGreaterThanOrEqual(40);
      }
    }
    expect((await page.locator(".fill .main").boundingBox())!.height).toBeGreaterThanOrEqual(48);
    await page.context().close();
  });

  it("asks column by column before a formula is replaced, by keyboard and by thumb, and keeps what was ticked", async () => {
    const { page, complaints } = await open("?own=formulas&row=1");
    await page.click("#tab-table");
    await page.click(".fill .main");
    const question = page.getByRole("group", { name: "What may be replaced" });
    expect(await question.locator("label").allTextContents()).toEqual([
      "“RPM”: 1 formula would be replaced",
      "“Table feed”: 1 formula would be replaced",
    ]);
    expect(await axe(page)).toEqual([]);
    for (const one of await question.locator("label, button").all())
      expect((await one.boundingBox())!.height).toBeGreaterThanOrEqual(40);
    await question.getByLabel("RPM").focus();
    await page.keyboard.press("Space");
    // Something else happens in the workbook meanwhile.
    await page.evaluate(() => (window as any).host.moveTo(4, 1));
    await page.waitForFunction(() => document.querySelector(".row-title")?.textContent?.includes("Dowel"));
    expect(await question.getByLabel("RPM").isChecked()).toBe(true);
    await question.getByRole("button", { name: "Write", exact: true }).click();
    await page.waitForSelector(".message .done");
    expect(
      await page.evaluate(() => [...(window as any).host.formulas.keys()].filter((key) => /,1[01]$/.test(key))),
    ).toEqual(["Plan!4,11"]);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("keeps its top right corner free", async () => {
    const { page } = await open("?row=1");
    const inCorner = await page.evaluate(
      () =>
        [...document.querySelectorAll("button, select, h1, h2, p")].filter((element) => {
          const box = element.getBoundingClientRect();
          return box.width > 0 && box.top < 32 && box.right > 320 - 40;
        }).length,
    );
    expect(inCorner).toBe(0);
    await page.context().close();
  });

  it("says verdict, reasons and ways out in words, the weightiest first", async () => {
    const { page } = await open("?row=1");
    expect(await page.locator(".verdict strong").textContent()).toBe("CHECK");
    expect(await page.locator(".binding").textContent()).toBe("Over the limit: deflection, 155 % at worst");
    const reasons = await page.locator(".reasons li").allTextContents();
    expect(reasons[0]).toMatch(/^Check: The tip bends 0\.031 mm.*→ One more pass/);
    expect(await page.locator(".program").textContent()).toMatch(/Spindle speed2546 rpmTable feed98 mm\/min/);
    const drawing = page.getByRole("img");
    expect(await drawing.getAttribute("aria-label")).toMatch(
      /cutter 7\.5 mm; neck 4\.8 mm, 27 mm long; hole 10\.25 mm/,
    );
    expect(await drawing.textContent()).toMatch(/bend of 0\.031 mm drawn ×50/);
    await page.context().close();
  });

  it("draws to scale: hole and cutter stand to each other as their sizes do", async () => {
    const { page } = await open("?row=1");
    const sizes = await page.evaluate(() => {
      const box = (selector: string) => {
        const { width, height } = (document.querySelector(selector) as SVGGraphicsElement).getBBox();
        return { width, height };
      };
      return {
        neck: box(".drawing .neck"),
        above: box(".drawing circle.tool").width,
        hole: box(".drawing circle.edge").width,
      };
    });
    expect(sizes.neck.height / sizes.neck.width).toBeCloseTo(27 / 4.8, 1);
    expect(sizes.above / sizes.hole).toBeCloseTo(7.5 / 10.25, 2);
    await page.context().close();
  });

  it("shows what stands in a cell as text, whatever it looks like", async () => {
    const { page, complaints } = await open("?row=1&evil=1");
    await page.click("#tab-table");
    await page.locator(".card", { hasText: "<img src=x" }).waitFor({ state: "attached" });
    expect(await page.locator("img").count()).toBe(0);
    expect(await page.evaluate(() => (window as any).hurt)).toBeUndefined();
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("can be used by the keyboard alone, from the tabs to writing numbers", async () => {
    const { page } = await open("?row=1");
    await page.locator("#tab-row").focus();
    await page.keyboard.press("ArrowRight");
    expect(await page.locator("#tab-table").getAttribute("aria-selected")).toBe("true");
    for (let i = 0; i < 30; i++) {
      if (await page.evaluate(() => document.activeElement?.textContent === "Write numbers")) break;
      await page.keyboard.press("Tab");
    }
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.querySelector(".message .done"));
    expect(await page.locator(".message").textContent()).toContain("2 rows written: 1 ok, 1 check, 0 stop.");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Write numbers");
    expect(await page.evaluate(() => (window as any).host.sheets.get("Plan")[3][10])).toBe(2546.479);
    await page.context().close();
  });

  it("says on a protected sheet what to do, where a screen reader hears it", async () => {
    const { page } = await open("?protected=1");
    await page.click("#tab-table");
    await page.click(".fill .main");
    await page.waitForFunction(() => document.querySelector("[role=status] .failed"));
    expect(await page.locator("[role=status]").textContent()).toMatch(/protected; nothing was written/);
    await page.context().close();
  });

  it("matches a column by hand", async () => {
    const { page } = await open("?row=1");
    await page.click("#tab-table");
    await page.click(".fill summary");
    await page.getByLabel("Inspector").selectOption("out:pathRadius");
    await page.waitForFunction(() => document.querySelector(".writes")?.textContent?.includes("“Inspector”"));
    await page.click(".fill .main");
    // The drilled row has no path radius, and somebody's name stands there.
    expect(await page.locator(".point").allTextContents()).toEqual(["“Inspector”: 1 value would be blanked"]);
    await page.getByRole("button", { name: "Write", exact: true }).click();
    await page.waitForFunction(() => document.querySelector(".message .done"));
    const column = await page.evaluate(() => [3, 4].map((row) => (window as any).host.sheets.get("Plan")[row][12]));
    expect(column).toEqual([expect.closeTo(2.2934, 9), "A. Hale"]);
    await page.context().close();
  });

  it("reads callouts as they are pasted, says what the table lacks, and adds the rows by the keyboard", async () => {
    const { page, complaints } = await open("?row=1");
    await page.click("#tab-table");
    await page.click(".callouts summary");
    await page.fill("#callouts-text", "6X 3/8-16 UNC-2B ↧ .75\nHONE TO SUIT\n<img src=x onerror=window.hurt=1>");
    await page.waitForSelector(".callouts .tally");
    expect(await page.textContent(".callouts .tally")).toBe(
      "3 callouts → 4 rows, 2 not understood or not complete (shown first)",
    );
    expect(await page.locator(".callouts .open").first().textContent()).toMatch(/^✕ Not understood: HONE TO SUIT/);
    expect(await page.textContent(".callouts .warning")).toMatch(/no column for this.*Quantity \(2 rows\)/);
    await page.selectOption("#callouts-material", "Alloy steel, hardened");
    expect(await axe(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    await page.locator(".callouts").screenshot({ path: path.join(out, "callouts.png") });
    await page.evaluate(() => document.documentElement.classList.add("dark"));
    expect(await axe(page, undefined, COLOURS)).toEqual([]);
    await page.locator(".callouts .main").focus();
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.querySelector(".message .done"));
    const rows = await page.evaluate(() => (window as any).host.sheets.get("Plan").slice(5));
    expect(rows.map((row: unknown[]) => row.slice(0, 5))).toEqual([
      [30, "6X 3/8-16 UNC-2B ↧ .75", "drill", "in", "Alloy steel, hardened"],
      [40, "6X 3/8-16 UNC-2B ↧ .75", "thread mill", "in", "Alloy steel, hardened"],
      [50, "HONE TO SUIT", null, null, "Alloy steel, hardened"],
      [60, "<img src=x onerror=window.hurt=1>", null, null, "Alloy steel, hardened"],
    ]);
    expect(await page.evaluate(() => (window as any).hurt)).toBeUndefined();
    expect(await page.inputValue("#callouts-text")).toBe("");
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("shows the welcome once, lets it be skipped, and offers one useful thing", async () => {
    const { page } = await open("?lists=none", false);
    expect(await page.locator(".first .main").textContent()).toBe("Add the starting lists");
    await page.click(".first .main");
    await page.waitForFunction(() => document.querySelector(".message .done"));
    expect(await page.evaluate(() => [...(window as any).host.sheets.keys()])).toEqual([
      "Plan",
      "Materials",
      "Tools",
      "Machines",
    ]);
    expect(await page.locator(".first").isVisible()).toBe(false);
    await page.reload();
    expect(await page.locator(".first").isVisible()).toBe(false);
    await page.context().close();
  });

  it("prints the card on one sheet and nothing else", async () => {
    const { page } = await open("?row=1");
    await page.emulateMedia({ media: "print" });
    expect(await page.locator(".tf").isVisible()).toBe(false);
    expect(await page.locator(".card").textContent()).toMatch(/CHECK FIRST[\s\S]*2546[\s\S]*Starting values only/);
    const pdf = (await page.pdf({ format: "A4" })).toString("latin1");
    expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
    await page.context().close();
  });

  it("puts the card on a sheet in Excel, where panes often cannot print", async () => {
    const { page } = await open("?row=1");
    await page.getByRole("button", { name: "Card on a sheet" }).click();
    await page.waitForFunction(() => document.querySelector(".message .done"));
    const lines = await page.evaluate(() => (window as any).host.sheets.get("Card 10"));
    expect(lines[0]).toEqual(["Row 10 · thread mill · M12x1.75-6H", "CHECK FIRST"]);
    expect(lines).toContainEqual(["Spindle speed", "2546 rpm"]);
    expect(lines.filter(([label]: string[]) => label === "Caution").length).toBeGreaterThanOrEqual(5);
    await page.context().close();
  });

  it("is readable in a contrast theme: lines and words are drawn in the system's colours", async () => {
    const { page } = await open("?row=1");
    await page.emulateMedia({ forcedColors: "active", colorScheme: "dark" });
    const colours = await page.evaluate(() => {
      const style = (selector: string) => getComputedStyle(document.querySelector(selector)!);
      return {
        text: style("svg .small").fill,
        hole: style("svg .edge").stroke,
        ground: getComputedStyle(document.querySelector(".tf")!).backgroundColor,
      };
    });
    expect(colours.text).toBe(colours.hole);
    expect(colours.text).not.toBe(colours.ground);
    await page.context().close();
  });
});
