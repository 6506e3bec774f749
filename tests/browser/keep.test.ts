/** Work that outlives its tab, its browser and its server. The browser keeps its profile in a folder, as a person's does. */
import { execFileSync } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import type { BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { choose, goTo, isUnsaved, listen, ready, saveAs, startProfile, typeInto, until, valueAt } from "./page.ts";
import { type Served, serveDesk } from "./serve.ts";

/** Processes of a profile's pages; those that hold the profile itself are not among them. */
function pageProcesses(folder: string): number[] {
  const list = execFileSync("ps", ["-eo", "pid,ppid,args"], { encoding: "utf8" }).split("\n");
  const rows = list.flatMap((line) => {
    const found = /^\s*(\d+)\s+(\d+)\s+(.*)$/.exec(line);
    return found ? [{ pid: Number(found[1]), parent: Number(found[2]), args: found[3]! }] : [];
  });
  const mine = new Set(rows.filter(({ args }) => args.includes(`--user-data-dir=${folder}`)).map(({ pid }) => pid));
  for (let grown = true; grown; ) {
    grown = false;
    for (const { pid, parent } of rows)
      if (mine.has(parent) && !mine.has(pid)) {
        mine.add(pid);
        grown = true;
      }
  }
  return rows.filter(({ pid, args }) => mine.has(pid) && args.includes("--type=renderer")).map(({ pid }) => pid);
}

const offerText = (page: Page) => page.locator("#notices").textContent();

describe("work that is kept in the browser", () => {
  let served: Served;
  let folder: string;
  let context: BrowserContext;
  let page: Page;
  const complaints: string[] = [];

  async function open(): Promise<Page> {
    const next = await context.newPage();
    listen(next, served, complaints);
    await next.goto(served.address);
    await ready(next);
    return next;
  }

  beforeAll(async () => {
    served = await serveDesk("keep");
    folder = fs.mkdtempSync(path.join(os.tmpdir(), "tablefeed-profile-"));
    context = await startProfile(folder);
    page = await open();
  });
  afterAll(async () => {
    await context?.close();
    await served?.close();
    fs.rmSync(folder, { recursive: true, force: true });
  });

  it("is there again, with its steps of undo, when the page is loaded again", async () => {
    await typeInto(page, "C5", "kept by itself");
    await typeInto(page, "C6", "and this");
    await page.reload();
    await ready(page);
    expect(await page.textContent("#state")).toMatch(/Brought back “Demo job.xlsx” with 2 changes/);
    expect([await valueAt(page, "Plan", 4, 2), await valueAt(page, "Plan", 5, 2)]).toEqual([
      "kept by itself",
      "and this",
    ]);
    expect(await isUnsaved(page)).toBe(true);
    await goTo(page, "C5");
    await page.keyboard.press("Control+z");
    expect(await valueAt(page, "Plan", 5, 2)).not.toBe("and this");
    await page.keyboard.press("Control+y");
    expect(await valueAt(page, "Plan", 5, 2)).toBe("and this");
  });

  it("outlives the process of its tab being killed", async () => {
    await typeInto(page, "C7", "typed before the end");
    await until(async () => (await page.textContent("#mark"))!.includes("kept here"));
    const crashed = page.waitForEvent("crash");
    // Each process of a page that this test started, by its own number.
    for (const pid of pageProcesses(folder)) process.kill(pid, "SIGKILL");
    await crashed;
    await page.close();
    page = await open();
    await until(async () =>
      /“Demo job.xlsx”.*3 changes that are in no file are kept here/.test((await offerText(page)) ?? ""),
    );
    await page.getByRole("button", { name: "Bring it back" }).first().click();
    await until(async () => (await valueAt(page, "Plan", 6, 2)) === "typed before the end");
    expect(await valueAt(page, "Plan", 4, 2)).toBe("kept by itself");
  });

  it("is not offered to a second tab while the first one has it, nor written over by it", async () => {
    const other = await open();
    expect((await offerText(other)) ?? "").not.toMatch(/kept here/);
    await typeInto(other, "C5", "of the second tab");
    await until(async () => (await other.textContent("#mark"))!.includes("kept here"));
    await page.bringToFront();
    await typeInto(page, "C8", "of the first tab");
    expect(await valueAt(page, "Plan", 7, 2)).toBe("of the first tab");
    expect(await valueAt(page, "Plan", 4, 2)).toBe("kept by itself");
    await other.close();
    // What the second tab had is offered once it is gone; both are there.
    await page.reload();
    await ready(page);
    await until(async () => / 1 change /.test((await offerText(page)) ?? ""));
    expect([await valueAt(page, "Plan", 4, 2), await valueAt(page, "Plan", 7, 2)]).toEqual([
      "kept by itself",
      "of the first tab",
    ]);
    await page.getByRole("button", { name: "Give it up" }).first().click();
    await page.click("#question-yes");
    await until(async () => (await page.locator(".notice").count()) === 0);
  });

  it("works on with the server gone: starts, plans, calculates, saves, comes back", async () => {
    await page.evaluate(() => navigator.serviceWorker.ready);
    await until(() =>
      page.evaluate(async () => {
        const names = await caches.keys();
        const stored = await Promise.all(names.map(async (name) => (await (await caches.open(name)).keys()).length));
        return stored.some((count) => count >= 8);
      }),
    );
    await served.close();
    complaints.length = 0;
    await page.reload();
    await ready(page);
    expect(await valueAt(page, "Plan", 7, 2)).toBe("of the first tab");
    await typeInto(page, "C9", "without a server");
    await typeInto(page, "B40", "=SUM(B41:B42)+7", "Machines");
    await until(async () => (await valueAt(page, "Machines", 39, 1)) === 7);
    const file = await saveAs(page, "offline.xlsx");
    expect(fs.statSync(file).size).toBeGreaterThan(20_000);
    await choose(page, "#blank");
    await page.waitForFunction(() => document.getElementById("state")!.textContent!.includes("blank"));
    await page.setInputFiles("#file", file);
    await page.waitForFunction(() => document.getElementById("state")!.textContent!.startsWith("Opened"));
    expect(await valueAt(page, "Plan", 8, 2)).toBe("without a server");
    expect(complaints.filter((text) => !/ERR_CONNECTION_REFUSED|Failed to fetch|net::/.test(text))).toEqual([]);
  }, 180_000);
});
