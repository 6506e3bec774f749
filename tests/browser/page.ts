/** Chromium on the desk: no request leaves this machine, and nothing is said on the console. */
import path from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { OUT, type Served, serveDesk } from "./serve.ts";

export interface Desk {
  readonly browser: Browser;
  readonly page: Page;
  /** Requests that wanted to leave, policy violations, console errors and uncaught errors. */
  readonly complaints: string[];
  close(): Promise<void>;
}

export async function startBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: [
      "--no-sandbox",
      "--headless",
      "--disable-gpu",
      "--disable-quic",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--no-first-run",
    ],
  });
}

export async function openDesk(size = { width: 1920, height: 950 }): Promise<Desk> {
  const served: Served = await serveDesk();
  const browser = await startBrowser();
  const context = await browser.newContext({ viewport: size });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" || /content security policy/i.test(message.text()))
      complaints.push(`console: ${message.text()}`);
  });
  page.on("pageerror", (problem) => complaints.push(`uncaught: ${problem.message}`));
  await page.route("**/*", (route) => {
    const address = route.request().url();
    if (address.startsWith(served.address) || /^(?:blob|data):/.test(address)) return route.continue();
    complaints.push(`request: ${address}`);
    return route.abort();
  });
  await page.goto(served.address);
  await ready(page);
  return {
    browser,
    page,
    complaints,
    async close() {
      await browser.close();
      await served.close();
    },
  };
}

/** Waits until the desk says what it shows. */
export async function ready(page: Page): Promise<void> {
  await page.waitForFunction(() => document.getElementById("state")?.dataset.busy === "no", null, { timeout: 30_000 });
}

/** Goes to a cell through the box beside the formula line. */
export async function goTo(page: Page, cell: string): Promise<void> {
  const box = page.locator("#grid [data-u-comp=defined-name] input");
  await box.click();
  await box.fill(cell);
  await page.keyboard.press("Enter");
}

export async function toSheet(page: Page, name: string): Promise<void> {
  await page.locator("#grid").getByText(name, { exact: true }).last().click();
}

/** Types into a cell the way a person does. */
export async function typeInto(page: Page, cell: string, text: string): Promise<void> {
  await goTo(page, cell);
  await page.keyboard.type(text, { delay: 25 });
  await page.keyboard.press("Enter");
}

export async function saveAs(page: Page, name: string, button = "#save"): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent("download"), page.click(button)]);
  const file = path.join(OUT, name);
  await download.saveAs(file);
  return file;
}
