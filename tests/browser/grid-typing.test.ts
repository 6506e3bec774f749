/**
 * What is typed is what the cells hold: every input column of a row, by Tab, Enter, arrows and F2, at 0, 35 and 180 ms a key,
 * with the processor slowed six times, at four widths, in 73 and in 2,000 rows. `TYPING=full` runs all 192 combinations;
 * otherwise as many as it takes for any two values to meet.
 */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { ALL, type Case, fieldsOf, fillRow, pairwise } from "./grid-filling.ts";
import { type GridSite, openGrid, serveGrid } from "./grid-host.ts";
import { startBrowser } from "./page.ts";

const full = process.env.TYPING === "full";
const cases = full ? ALL : pairwise(ALL);
/** So many pages type at once; most of their time is waiting between keys. */
const AT_ONCE = 4;

describe(`typing by keyboard: ${cases.length} of ${ALL.length} combinations (independent: what was typed is compared)`, () => {
  let browser: Browser;
  let site: GridSite;
  beforeAll(async () => {
    site = await serveGrid();
    browser = await startBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await site?.close();
  });

  async function run(one: Case): Promise<string[]> {
    const { page, session, complaints, close } = await openGrid(browser, site, `rows=${one.rows}&blank=yes`, {
      viewport: { width: one.width, height: 800 },
    });
    // Slow typing takes long: outside of the full run it fills a third of the columns.
    const all = fieldsOf(1);
    const third = Math.ceil(all.length / 3);
    const start = (one.width % 3) * third;
    const fields = full || one.delay < 100 ? all : all.slice(start, start + third);
    const wrong = await fillRow(page, session, fields, 5, one);
    await close();
    return [...wrong, ...complaints];
  }

  it("keeps every key", { timeout: full ? 7_200_000 : 600_000 }, async () => {
    const queue = [...cases].sort((a, b) => b.delay - a.delay);
    const failed: string[] = [];
    let done = 0;
    const work = async () => {
      for (let one = queue.shift(); one; one = queue.shift()) {
        const wrong = await run(one);
        const name = `${one.way}, ${one.delay} ms, ${one.throttle} ×, ${one.width} px, ${one.rows} rows`;
        if (wrong.length > 0) failed.push(`${name}: ${wrong.join("; ")}`);
        done += 1;
        if (full) console.log(`${done}/${cases.length} ${name}: ${wrong.length === 0 ? "all kept" : wrong.join("; ")}`);
      }
    };
    await Promise.all(Array.from({ length: AT_ONCE }, work));
    expect(failed.join("\n").slice(0, 4000)).toBe("");
    expect(done).toBe(cases.length);
  });

  it("finds out a grid whose input comes a moment after the cell", async () => {
    const { page, session, close } = await openGrid(browser, site, "rows=73&blank=yes&late=yes");
    const wrong = await fillRow(page, session, fieldsOf(1), 5, { way: "Tab", delay: 0, throttle: 1 });
    await close();
    expect(wrong.length).toBeGreaterThan(10);
  });
});
