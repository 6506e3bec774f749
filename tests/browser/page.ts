/** Chromium on the desk: no request leaves this machine, and nothing is said on the console. */
import path from "node:path";
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { OUT, type Served, serveDesk } from "./serve.ts";

export type Cell = string | number | boolean | null;

export interface Desk {
  readonly browser: Browser;
  readonly context: BrowserContext;
  readonly page: Page;
  readonly served: Served;
  /** Requests that wanted to leave, policy violations, console errors and uncaught errors. */
  readonly complaints: string[];
  close(): Promise<void>;
}

const ARGUMENTS = [
  "--no-sandbox",
  "--headless",
  "--disable-gpu",
  "--disable-quic",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-first-run",
];
const program = () => process.env.CHROMIUM ?? "/usr/bin/chromium";

export const startBrowser = (): Promise<Browser> => chromium.launch({ executablePath: program(), args: ARGUMENTS });

/** A browser that keeps what it stores in a folder, as a person's does. */
export async function startProfile(folder: string): Promise<BrowserContext> {
  const options = { executablePath: program(), args: ARGUMENTS, viewport: SIZE };
  const context = await chromium.launchPersistentContext(folder, options);
  context.setDefaultTimeout(PATIENCE);
  return context;
}

const SIZE = { width: 1920, height: 950 };

/** How long a broken page is waited for [ms]: on a busy machine a page is slow, not wrong. */
const PATIENCE = 120_000;

/** A page in a context of its own. */
export async function newPage(
  browser: Browser,
  options: BrowserContextOptions = {},
): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext(options);
  context.setDefaultTimeout(PATIENCE);
  return { context, page: await context.newPage() };
}

/** Notes what a page must not do. */
export function listen(page: Page, served: Served, complaints: string[]): void {
  page.on("console", (message) => {
    if (message.type() === "error" || /content security policy/i.test(message.text()))
      complaints.push(`console: ${message.text()}`);
  });
  page.on("pageerror", (problem) => complaints.push(`uncaught: ${problem.message}`));
  page.on("request", (request) => {
    const address = request.url();
    if (!address.startsWith(served.address) && !/^(?:blob|data):/.test(address)) complaints.push(`request: ${address}`);
  });
}

export async function openDesk(folder = "desk", size = SIZE): Promise<Desk> {
  const served = await serveDesk(folder);
  const browser = await startBrowser();
  const { context, page } = await newPage(browser, { viewport: size });
  const complaints: string[] = [];
  listen(page, served, complaints);
  await page.goto(served.address);
  await ready(page);
  return {
    browser,
    context,
    page,
    served,
    complaints,
    async close() {
      await browser.close();
      await served.close();
    },
  };
}

/** Waits until the plan's cells hold their values and nothing is going on. */
export async function ready(page: Page): Promise<void> {
  await page.waitForFunction(
    () =>
      document.documentElement.dataset.ready === "yes" &&
      document.getElementById("state")!.dataset.busy === "no" &&
      typeof (globalThis as any).tablefeedDesk === "object",
  );
}

export const valueAt = (page: Page, sheet: string, row: number, column: number): Promise<Cell> =>
  page.evaluate((place) => (globalThis as any).tablefeedDesk.valueAt(place), { sheet, row, column });

export const isUnsaved = (page: Page): Promise<boolean> =>
  page.evaluate(() => (globalThis as any).tablefeedDesk.unsaved());

/** Cells of a sheet from A1. */
export const cellsOf = (page: Page, sheet: string, rows: number, columns = 80): Promise<Cell[][]> =>
  page.evaluate(
    ([name, n, m]) =>
      Array.from({ length: n }, (_, row) =>
        Array.from({ length: m }, (_cell, column) =>
          (globalThis as any).tablefeedDesk.valueAt({ sheet: name, row, column }),
        ),
      ),
    [sheet, rows, columns] as const,
  );

/** Waits for something to be so. */
export async function until(what: () => Promise<boolean>, milliseconds = PATIENCE): Promise<void> {
  const end = Date.now() + milliseconds;
  while (!(await what())) {
    if (Date.now() > end) throw new Error("waited in vain");
    await new Promise((resolve) => setTimeout(resolve, 30));
  }
}

function place(cell: string): { row: number; column: number } {
  const [, letters = "A", row = "1"] = /^([A-Z]+)(\d+)$/.exec(cell) ?? [];
  return { row: Number(row) - 1, column: [...letters].reduce((n, ch) => n * 26 + ch.charCodeAt(0) - 64, 0) - 1 };
}

/** Goes to a cell of a sheet, with the focus. */
export async function goTo(page: Page, cell: string, sheet = "Plan"): Promise<void> {
  await page.evaluate((at) => (globalThis as any).tablefeedDesk.select(at), { sheet, ...place(cell) });
}

/** Types into a cell the way a person does. */
export async function typeInto(page: Page, cell: string, text: string, sheet = "Plan"): Promise<void> {
  await goTo(page, cell, sheet);
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
}

export const letters = (column: number): string =>
  (column < 26 ? "" : letters(Math.floor(column / 26) - 1)) + String.fromCharCode(65 + (column % 26));

/** Chooses in the menu of the bar. */
export async function choose(page: Page, id: string): Promise<void> {
  await page.click("#more");
  await page.click(id);
}

export async function saveAs(page: Page, name: string): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent("download"), page.click("#save")]);
  const file = path.join(OUT, name);
  await download.saveAs(file);
  return file;
}
