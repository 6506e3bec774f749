/** Opens the grid's page before each test, and gives what tests do with it. */
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect } from "vitest";
import { type GridPage, type GridSite, openGrid, serveGrid } from "./grid-host.ts";
import { startBrowser } from "./page.ts";

type Value = string | number | boolean | null;
const desk = (page: Page) => ({
  value: (row: number, column: number, sheet = "Plan"): Promise<Value> =>
    page.evaluate(([s, r, c]) => (globalThis as any).tablefeedDesk.valueAt({ sheet: s, row: r, column: c }), [
      sheet,
      row,
      column,
    ] as const),
  select: (row: number, column: number, sheet = "Plan") =>
    page.evaluate(([s, r, c]) => (globalThis as any).tablefeedDesk.select({ sheet: s, row: r, column: c }), [
      sheet,
      row,
      column,
    ] as const),
  at: (): Promise<{ sheet: string; row: number; column: number; area: unknown }> =>
    page.evaluate(() => (globalThis as any).tablefeedDesk.model.selection()),
  row: (row: number, from: number, count: number): Promise<Value[]> =>
    page.evaluate(
      ([r, f, n]) =>
        Array.from({ length: n }, (_, i) =>
          (globalThis as any).tablefeedDesk.valueAt({ sheet: "Plan", row: r, column: f + i }),
        ),
      [row, from, count] as const,
    ),
  news: () => page.textContent(".tg-news"),
  async keys(...keys: string[]) {
    for (const key of keys) await page.keyboard.press(key);
  },
});

export interface Driver extends ReturnType<typeof desk> {
  readonly page: Page;
  readonly open: GridPage;
  /** Opens another page instead of the one that each test begins with. */
  start(query?: string): Promise<void>;
  /** Puts text on the clipboard as another program would, and pastes it. */
  paste(text: string, html?: string): Promise<void>;
  copy(type?: "copy" | "cut"): Promise<{ text: string; html: string }>;
}

/** To be called once at the top of a test file; what it answers is filled before each test. */
export function driveGrid(): Driver {
  let browser: Browser;
  let site: GridSite;
  const driver = {} as { -readonly [K in keyof Driver]: Driver[K] };
  driver.start = async (query = "rows=40") => {
    await driver.open?.close();
    driver.open = await openGrid(browser, site, query);
    driver.page = driver.open.page;
    Object.assign(driver, desk(driver.page));
  };
  driver.paste = (text, html) =>
    driver.page.evaluate(
      ([t, h]) => {
        const data = new DataTransfer();
        data.setData("text/plain", t!);
        if (h) data.setData("text/html", h);
        document.activeElement!.dispatchEvent(
          new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }),
        );
      },
      [text, html],
    );
  driver.copy = (type = "copy") =>
    driver.page.evaluate((t) => {
      const data = new DataTransfer();
      document.activeElement!.dispatchEvent(
        new ClipboardEvent(t, { clipboardData: data, bubbles: true, cancelable: true }),
      );
      return { text: data.getData("text/plain"), html: data.getData("text/html") };
    }, type);
  beforeAll(async () => {
    site = await serveGrid();
    browser = await startBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await site?.close();
  });
  beforeEach(() => driver.start());
  afterEach(() => expect(driver.open.complaints).toEqual([]));
  return driver;
}
