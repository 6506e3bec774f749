import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axe, COLOURS } from "../browser/axe.ts";
import { newPage, startBrowser } from "../browser/page.ts";

const root = path.resolve(import.meta.dirname, "../..");
const out = path.join(root, "tests", ".out", "posted");

let browser: Browser;
beforeAll(async () => {
  fs.mkdirSync(out, { recursive: true });
  await build({
    entryPoints: [path.join(import.meta.dirname, "program-page.ts")],
    outfile: path.join(out, "page.js"),
    bundle: true,
    format: "iife",
    absWorkingDir: root,
    logLevel: "warning",
  });
  const style = fs.readFileSync(path.join(root, "taskpane", "pane.css"), "utf8");
  const html = fs
    .readFileSync(path.join(root, "taskpane", "index.html"), "utf8")
    .replace(/<script src="functions.js"><\/script>/, "")
    .replace('<link rel="stylesheet" href="pane.css">', () => `<style>${style}</style>`)
    .replace("taskpane.js", "page.js");
  fs.writeFileSync(path.join(out, "index.html"), html);
  browser = await startBrowser();
});
afterAll(() => browser.close());

async function open(query = "?row=1"): Promise<{ page: Page; complaints: string[] }> {
  const { page } = await newPage(browser, { viewport: { width: 340, height: 900 } });
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(message.text());
  });
  await page.addInitScript(() => localStorage.setItem("tablefeed.seen", "yes"));
  await page.goto(`${pathToFileURL(path.join(out, "index.html"))}${query}`);
  await page.waitForFunction(() => !document.body.textContent?.includes("Reading the workbook"));
  await page.click("#tab-program");
  return { page, complaints };
}
/** A large file is opened from the disk: nothing has to be carried over to the browser. */
function onDisk(name: string, content: string): string {
  const at = path.join(out, name);
  fs.writeFileSync(at, content);
  return at;
}
const done = (page: Page) => page.waitForSelector(".outcome .tally");
const compare = async (page: Page, program: string) => {
  await page.fill("#posted-text", program);
  await page.getByRole("button", { name: "Compare with the table" }).click();
};

describe("the program in the pane (identity)", () => {
  it("shows the words of the selected row under the caution, for either tool zero", async () => {
    const { page, complaints } = await open();
    const words = await page.locator(".listing").textContent();
    expect(words).toMatch(/^\(WORDS TO COMPARE A PROGRAM WITH: THIS IS NOT A PROGRAM TO RUN\)/);
    expect(words).toMatch(/Z-16\.600/);
    expect(await page.locator(".posted .warning").first().textContent()).toMatch(/not to run/);
    await page.selectOption("#posted-zero", "profile");
    expect(await page.locator(".listing").textContent()).toMatch(/Z-16\.000/);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("says when no row is selected, and why a row has no words", async () => {
    const { page } = await open("?row=4");
    expect(await page.locator(".listing").textContent()).toMatch(/\(NO WORDS: DEPTH IS BLANK\)/);
    await page.context().close();
  });

  it("finds nothing in the words themselves, and draws the path", async () => {
    const { page, complaints } = await open();
    const words = (await page.locator(".listing").textContent())!;
    await compare(page, words);
    await done(page);
    expect(await page.locator(".outcome .tally").textContent()).toMatch(/^0 stop, 4 check|^0 stop, 3 check/);
    // the other rows are not in it; this one is as planned
    await page.click(".fine summary");
    expect(await page.locator(".fine").textContent()).toMatch(/row 10: as planned/);
    expect(await page.locator(".paths svg path.made").count()).toBeGreaterThan(1);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("says what differs with block and row, weightiest first, and draws it", async () => {
    const { page, complaints } = await open();
    const words = (await page.locator(".listing").textContent())!;
    await compare(page, words.replaceAll("G3 ", "G2 ").replace(/S\d+/, "S13500"));
    await done(page);
    const found = await page.locator(".outcome .findings").first().locator("li").allTextContents();
    expect(found[0]).toMatch(/^Stop · Block \d+, row 10: makes a left-hand thread; the plan wants right hand/);
    expect(found.some((f) => /S 13500 rpm is over the machine's limit of 12000 rpm/.test(f))).toBe(true);
    const picture = page.locator(".paths svg");
    expect(await picture.getAttribute("aria-label")).toMatch(/Row 10.*program: broken line/);
    // planned and found radius are one, so the circles lie on each other; the arrows point apart
    const box = (selector: string) =>
      page
        .locator(selector)
        .first()
        .evaluate((e) => {
          const { x, y, width } = (e as SVGGraphicsElement).getBBox();
          return [x, y, width];
        });
    await page.locator(".paths").screenshot({ path: path.join(out, "paths.png") });
    const made = await box(".paths path.made");
    expect(made[2]).toBeGreaterThan(10);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("opens a file, and refuses what is no program with a sentence", async () => {
    const { page, complaints } = await open();
    const file = (name: string, content: string | Buffer) => ({
      name,
      mimeType: "text/plain",
      buffer: Buffer.isBuffer(content) ? content : Buffer.from(content),
    });
    await page.setInputFiles("#posted-file", file("part.nc", "G21 G90\nG0 X0 Y0 Z5\nX#101\n"));
    await expect.poll(() => page.locator(".posted .opened").textContent()).toBe("Opened: part.nc");
    await page.getByRole("button", { name: "Compare with the table" }).click();
    await done(page);
    expect(await page.locator(".findings li").first().textContent()).toMatch(/^Stop · Block 3: "X#101" computes/);
    await page.setInputFiles("#posted-file", file("part.zip", Buffer.from([80, 75, 3, 4, 0, 0, 1, 2, 0, 255, 254])));
    await expect.poll(() => page.locator(".posted .opened").textContent()).toBe("Opened: part.zip");
    await page.getByRole("button", { name: "Compare with the table" }).click();
    await expect.poll(() => page.locator(".findings li").first().textContent()).toMatch(/this is not text/);
    await page.setInputFiles("#posted-file", onDisk("too-long.nc", "G1 X1.000 Y2.000\n".repeat(1_300_000)));
    await expect.poll(() => page.locator(".posted .opened").textContent()).toMatch(/22 MB; at most 20 MB/);
    await page.fill("#posted-text", "");
    await page.getByRole("button", { name: "Compare with the table" }).click();
    expect(await page.locator(".outcome").textContent()).toMatch(/Paste a program/);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("reads a long program without the page standing still, shows how far it is, and stops when told", async () => {
    const { page, complaints } = await open();
    const blocks = ["G21 G90 G94 S9000 M3", "G0 X0 Y0 Z5"];
    for (let n = 0; n < 400_000; n++) blocks.push(`G1 X${n % 977}. Y${n % 31}. Z-${n % 7}. F900.`);
    await page.setInputFiles("#posted-file", onDisk("long.nc", blocks.join("\n")));
    await expect.poll(() => page.locator(".posted .opened").textContent()).toBe("Opened: long.nc");
    await page.evaluate(() => {
      const seen: number[] = [];
      Object.assign(window, { seen });
      const bar = document.querySelector(".posted progress") as HTMLProgressElement;
      const reading = bar.parentElement as HTMLElement;
      const cancel = [...document.querySelectorAll("button")].find((button) => button.textContent === "Cancel")!;
      // Pressed from within the page: on a busy machine a press from outside may come when all has been read.
      let stopped = false;
      const look = () => {
        if (!reading.hidden) {
          if (stopped) seen.push(bar.value);
          else if (bar.value > 0) {
            stopped = true;
            cancel.click();
            Object.assign(window, { stoppedAt: bar.value });
          }
        }
        requestAnimationFrame(look);
      };
      look();
    });
    await page.getByRole("button", { name: "Compare with the table" }).click();
    await page.waitForFunction(() => "stoppedAt" in window);
    expect(await page.evaluate(() => (window as unknown as { stoppedAt: number }).stoppedAt)).toBeLessThan(1);
    expect(await page.locator(".reading").isVisible()).toBe(false);
    expect(await page.locator(".outcome .tally").count()).toBe(0);
    await page.getByRole("button", { name: "Compare with the table" }).click();
    await page.waitForSelector(".outcome .tally");
    const seen = await page.evaluate(() => (window as unknown as { seen: number[] }).seen);
    expect(seen.filter((v) => v > 0 && v < 1).length, "looks while it was reading").toBeGreaterThan(5);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("has nothing for axe to find, with findings and a picture, light and dark", async () => {
    const { page, complaints } = await open("?row=3");
    await compare(page, (await page.locator(".listing").textContent())!.replace(/F\S+/, "F9999."));
    await done(page);
    for (const summary of await page.locator("summary").all()) if (await summary.isVisible()) await summary.click();
    for (const dark of [false, true]) {
      await page.evaluate((d) => document.documentElement.classList.toggle("dark", d), dark);
      expect(await axe(page, undefined, dark ? COLOURS : undefined)).toEqual([]);
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(340);
    await page.screenshot({ path: path.join(out, "posted.png"), fullPage: true });
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("puts the words on the card", async () => {
    const { page } = await open();
    expect(await page.locator(".card .card-words").textContent()).toMatch(/not a program to run.*G3 X/s);
    await page.context().close();
  });
});
