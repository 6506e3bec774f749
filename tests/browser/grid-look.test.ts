/** The grid in a real browser: what is seen, touched and heard; how fast, and how much it draws. */
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { axe } from "./axe.ts";
import { type GridPage, type GridSite, openGrid, picture, serveGrid } from "./grid-host.ts";
import { startBrowser } from "./page.ts";

let browser: Browser;
let site: GridSite;
let open: GridPage;
let page: Page;
const start = async (query: string, options = {}) => {
  await open?.close();
  open = await openGrid(browser, site, query, options);
  page = open.page;
};
const select = (row: number, column: number, sheet = "Plan") =>
  page.evaluate(([s, r, c]) => (globalThis as any).tablefeedDesk.select({ sheet: s, row: r, column: c }), [
    sheet,
    row,
    column,
  ] as const);
const value = (row: number, column: number) =>
  page.evaluate(([r, c]) => (globalThis as any).tablefeedDesk.valueAt({ sheet: "Plan", row: r, column: c }), [
    row,
    column,
  ] as const);
const at = () => page.evaluate(() => (globalThis as any).tablefeedDesk.model.selection());
const cell = (row: number, column: number) => page.locator(`.tg-row[data-row="${row}"] [data-column="${column}"]`);
const PHONE = { viewport: { width: 390, height: 800 }, hasTouch: true, isMobile: true };
const SIZES = { 1440: {}, 1024: { viewport: { width: 1024, height: 700 } }, 390: PHONE };

beforeAll(async () => {
  site = await serveGrid();
  browser = await startBrowser();
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});
afterEach(() => expect(open.complaints).toEqual([]));

describe("for everybody (independent: axe-core, the browser's own accessibility tree)", () => {
  for (const [width, options] of Object.entries(SIZES)) {
    // At 1024 px it is the same page as at 1440: looked at, not searched again.
    const search = async () => {
      if (width === "1024") return [];
      // Fewer rows tell the same and take less time.
      const size = page.viewportSize()!;
      await page.setViewportSize({ width: size.width, height: 420 });
      const found = await axe(page);
      await page.setViewportSize(size);
      return found;
    };
    it(`has no finding at ${width} px, with list, menu and filter open too`, { timeout: 240_000 }, async () => {
      await start("rows=73&hide=yes", options);
      await select(4, 6);
      await picture(page, `grid-${width}.png`);
      await page.keyboard.type("steel");
      await page.locator("[role=option]").first().waitFor();
      await picture(page, `grid-${width}-choices.png`);
      expect(await search()).toEqual([]);
      await page.keyboard.press("Escape");
      await page.keyboard.press("Shift+F10");
      await picture(page, `grid-${width}-menu.png`);
      await page.getByRole("menuitem", { name: /Filter/ }).click();
      await picture(page, `grid-${width}-filter.png`);
      if (width === "390") expect(await search()).toEqual([]);
      await page.keyboard.press("Escape");
      await page.keyboard.press("Control+f");
      await page.keyboard.press("Escape");
      await page.keyboard.press("Shift+F10");
      if (width === "1440") expect(await search()).toEqual([]);
    });
  }

  it("puts rows, headings and cells into the accessibility tree, the input inside its cell", async () => {
    await start("rows=73");
    await select(4, 12);
    const { nodes } = (await open.session.send("Accessibility.getFullAXTree")) as unknown as {
      nodes: {
        role?: { value: string };
        name?: { value: string };
        properties?: { name: string; value: { value: unknown } }[];
      }[];
    };
    const named = (role: string) => nodes.filter((n) => n.role?.value === role).map((n) => n.name?.value ?? "");
    expect(named("grid")).toEqual(["Sheet Plan"]);
    expect(named("columnheader")).toContain("Operation, column D");
    expect(named("rowheader")).toContain("Row 5");
    expect(named("gridcell").filter((name) => name === "drill").length).toBeGreaterThan(10);
    const focused = nodes.find(
      (n) => n.role?.value === "textbox" && n.properties?.some((p) => p.name === "focused" && p.value.value === true),
    );
    expect(focused?.name?.value).toBe("Depth, Row 5, M5");
    expect(
      await page.evaluate(() => document.activeElement!.closest("[role=gridcell]")?.getAttribute("aria-selected")),
    ).toBe("true");
  });

  it("shows the active cell and the selection in a Windows contrast theme", async () => {
    await start("rows=73", { forcedColors: "active" });
    await select(4, 4);
    await page.keyboard.press("Shift+ArrowDown");
    const shadow = (row: number) => cell(row, 4).evaluate((element) => getComputedStyle(element, "::before").boxShadow);
    expect(await shadow(4)).not.toBe("none");
    expect(await shadow(5)).not.toBe("none");
    await picture(page, "grid-contrast.png");
  });
});

describe("with fingers, at 390 px", () => {
  const touch = async (type: string, x?: number, y?: number) =>
    open.session.send("Input.dispatchTouchEvent", {
      type: type as "touchStart",
      touchPoints: x === undefined ? [] : [{ x, y: y! }],
    });

  it("scrolls by a swipe and leaves the selection where it is", async () => {
    await start("rows=73", PHONE);
    await select(2, 3);
    const before = await at();
    await touch("touchStart", 250, 600);
    for (let y = 590; y >= 200; y -= 30) await touch("touchMove", 250, y);
    await touch("touchEnd");
    await page.waitForFunction(() => document.querySelector(".tg-scroll")!.scrollTop > 150);
    expect(await at()).toEqual(before);
  });

  it("selects by a tap, edits by a second one, and only then asks for a keyboard", async () => {
    await start("rows=73", PHONE);
    await cell(5, 3).tap();
    expect(await at()).toMatchObject({ row: 5, column: 3 });
    const mode = () => page.locator(".tg-entry").getAttribute("inputmode");
    expect(await mode()).toBe("none");
    await cell(5, 3).tap();
    expect(await mode()).toBe("text");
    expect(await page.locator(".tg-entry.tg-open").inputValue()).toBe("drill");
    await page.keyboard.type("!");
    await cell(6, 4).tap();
    expect(await value(5, 3)).toBe("drill!");
    expect(await at()).toMatchObject({ row: 6, column: 4 });
  });

  it("stretches the block by its handle, which is 44 px wide and high", async () => {
    await start("rows=73", PHONE);
    await cell(5, 3).tap();
    const box = (await page.locator(".tg-handle").boundingBox())!;
    expect([box.width, box.height]).toEqual([44, 44]);
    const [x, y] = [box.x + 22, box.y + 22];
    await touch("touchStart", x, y);
    for (let i = 1; i <= 5; i++) await touch("touchMove", x, y + i * 15);
    await touch("touchEnd");
    expect((await at()).area).toEqual({ top: 5, bottom: 7, left: 3, right: 3 });
  });

  it("makes what is pressed at least 44 px high", async () => {
    await start("rows=73", PHONE);
    const small = await page
      .locator(".tg-foot button, .tg-cell, .tg-drop")
      .evaluateAll(
        (all) => all.filter((one) => one.clientHeight > 0 && one.getBoundingClientRect().height < 44).length,
      );
    expect(small).toBe(0);
  });

  it("freezes no more than half of the width", async () => {
    for (const options of Object.values(SIZES)) {
      await start("rows=73", options);
      const [fixed, whole] = await page.evaluate(() => [
        document.querySelector(".tg-body .tg-stick")!.clientWidth,
        document.querySelector(".tg-scroll")!.clientWidth,
      ]);
      expect(fixed).toBeLessThanOrEqual(whole! / 2);
    }
  });
});

describe("mouse and sight", () => {
  it("drags a block, takes whole rows and columns, widens a column, edits by a double click", async () => {
    await start("rows=73");
    await cell(3, 3).hover();
    await page.mouse.down();
    await cell(6, 5).hover();
    await page.mouse.up();
    await expect.poll(async () => (await at()).area).toEqual({ top: 3, bottom: 6, left: 3, right: 5 });
    await page.locator('.tg-row[data-row="8"] .tg-number').click();
    expect((await at()).area).toMatchObject({ top: 8, bottom: 8, right: 16_383 });
    await page.locator('.tg-letter[data-column="4"]').click();
    expect((await at()).area).toMatchObject({ left: 4, right: 4, bottom: 1_048_575 });
    const grip = (await page.locator('.tg-letter[data-column="4"] .tg-grip').boundingBox())!;
    const before = (await cell(3, 4).boundingBox())!.width;
    await page.mouse.move(grip.x + 3, grip.y + 5);
    await page.mouse.down();
    await page.mouse.move(grip.x + 43, grip.y + 5, { steps: 4 });
    await page.mouse.up();
    await expect.poll(async () => Math.round((await cell(3, 4).boundingBox())!.width - before)).toBe(40);
    await cell(3, 2).dblclick();
    await page.keyboard.type("?");
    await page.keyboard.press("Enter");
    expect(await value(3, 2)).toMatch(/clamping\?$/);
  });

  it("keeps rows at one height however long a text is, and headings in two lines at most", async () => {
    await start("rows=73");
    const heights = await page
      .locator(".tg-body .tg-row")
      .evaluateAll((all) => [...new Set(all.map((one) => one.getBoundingClientRect().height))]);
    expect(heights).toEqual([28]);
    expect((await page.locator('.tg-row[data-row="0"]').boundingBox())!.height).toBeLessThan(50);
  });

  it("never shows a number with its end cut off", async () => {
    await start("rows=73");
    await page.evaluate(() => {
      const { model } = (globalThis as any).tablefeedDesk;
      const put = (row: number, number: number, numberFormat?: string) => ({
        kind: "cell",
        sheet: "Plan",
        row,
        column: 4,
        value: number,
        ...(numberFormat ? { numberFormat } : {}),
      });
      model.apply([put(3, 123456789.125, "0.0000"), put(4, Math.PI)], { by: "person" });
    });
    expect(await cell(3, 4).textContent()).toMatch(/^#+$/);
    expect(await cell(4, 4).textContent()).toMatch(/^3\.14159?\d*$/);
    const cut = await page
      .locator(".tg-body .tg-right")
      .evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth).map((one) => one.textContent));
    expect(cut).toEqual([]);
  });

  it("takes unused columns out of the way by a switch", async () => {
    await start("rows=73&hide=yes");
    await select(3, 13);
    await page.keyboard.press("ArrowRight");
    expect((await at()).column).toBe(21);
    await page.getByRole("button", { name: "Show 7 unused columns" }).click();
    await page.keyboard.press("ArrowLeft");
    expect((await at()).column).toBe(20);
  });

  it("shows a merged cell as one", async () => {
    await start("rows=73");
    await page.evaluate(() => {
      const { model, grid } = (globalThis as any).tablefeedDesk;
      model.sheet("Plan").merges = [{ top: 76, bottom: 77, left: 2, right: 4 }];
      grid.refresh();
    });
    await select(77, 3);
    expect(await at()).toMatchObject({ row: 76, column: 2, area: { top: 76, bottom: 77, left: 2, right: 4 } });
    expect(await cell(76, 2).getAttribute("aria-colspan")).toBe("3");
    expect(await cell(77, 3).count()).toBe(0);
    await page.keyboard.press("ArrowRight");
    expect(await at()).toMatchObject({ row: 76, column: 5 });
  });
});

describe("speed (measured here, with wide bounds)", () => {
  for (const rows of [73, 2000]) {
    it(`draws only what changed, soon after Enter, in ${rows} rows`, async () => {
      await start(`rows=${rows}`);
      await select(rows - 20, 12);
      const times: number[] = [];
      let most = 0;
      for (let i = 0; i < 25; i++) {
        await page.evaluate(() => {
          const cells = new Set<Node>();
          const seen = new MutationObserver((records) => {
            for (const one of records) {
              const element = one.target instanceof Element ? one.target : one.target.parentElement;
              const around = element?.closest(".tg-cell");
              if (around && one.type === "characterData") cells.add(around);
            }
          });
          seen.observe(document.querySelector(".tg-body")!, { characterData: true, subtree: true });
          Object.assign(globalThis, { cells, seen });
        });
        await page.keyboard.type(String(1000 + i));
        // From the key to the time when the next frame has been drawn.
        const time = await page.evaluate(async () => {
          const began = performance.now();
          document.activeElement!.dispatchEvent(
            new KeyboardEvent("keydown", { key: "Enter", bubbles: true, cancelable: true }),
          );
          await new Promise<void>((resolve) =>
            requestAnimationFrame(() => {
              const { port1, port2 } = new MessageChannel();
              port1.onmessage = () => resolve();
              port2.postMessage(0);
            }),
          );
          return performance.now() - began;
        });
        times.push(time);
        most = Math.max(most, await page.evaluate(() => ((globalThis as any).cells as Set<Node>).size));
        await page.evaluate(() => (globalThis as any).seen.disconnect());
        await page.keyboard.press("ArrowUp");
      }
      times.sort((a, b) => a - b);
      const made = await page.evaluate(() => (globalThis as any).tablefeedDesk.times);
      console.log(
        `${rows} rows: Enter to painted verdict ${times[12]!.toFixed(1)} ms median, ${times.at(-1)!.toFixed(1)} ms worst; ` +
          `model ${made.model.toFixed(0)} ms, mounted ${made.mount.toFixed(0)} ms; ` +
          `${(site.size.script / 1000).toFixed(0)} kB, ${(site.size.gz / 1000).toFixed(0)} kB gz`,
      );
      // The typed cell and its verdict.
      expect(most).toBeLessThanOrEqual(2);
    });
  }
});
