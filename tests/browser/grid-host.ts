/** Builds the page of grid-page.ts, serves it under a strict policy, and opens it in Chromium. */
import fs from "node:fs";
import http from "node:http";
import type { AddressInfo } from "node:net";
import path from "node:path";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import type { Browser, BrowserContextOptions, CDPSession, Page } from "playwright-core";
import { newPage } from "./page.ts";

const root = path.resolve(import.meta.dirname, "../..");
export const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; base-uri 'none'; form-action 'none'";
const HTML = `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Grid</title><link rel="icon" href="data:,"><link rel="stylesheet" href="page.css"><link rel="stylesheet" href="grid.css"><script type="module" src="grid.js"></script></head><body><header><h1>Grid</h1><button id="before">Before the grid</button> <input id="other" aria-label="Elsewhere"></header><main id="grid"></main><footer><button id="after">After the grid</button></footer></body></html>`;
const CSS =
  "html,body{height:100%;margin:0}body{display:flex;flex-direction:column;font:14px system-ui,sans-serif}h1{display:inline;font-size:14px}main{flex:1;min-height:0}";

export interface GridSite {
  readonly address: string;
  /** Bytes of script and style, plain and compressed. */
  readonly size: { readonly script: number; readonly gz: number };
  close(): Promise<void>;
}

export async function serveGrid(): Promise<GridSite> {
  const made = await build({
    entryPoints: { grid: path.join(root, "tests/browser/grid-page.ts") },
    outdir: "/",
    bundle: true,
    minify: true,
    write: false,
    format: "esm",
    target: "es2022",
    absWorkingDir: root,
    logLevel: "warning",
    legalComments: "none",
  });
  const files = new Map<string, [type: string, body: string]>([
    ["/", ["text/html", HTML]],
    ["/page.css", ["text/css", CSS]],
  ]);
  for (const file of made.outputFiles)
    files.set(`/${path.basename(file.path)}`, [file.path.endsWith(".css") ? "text/css" : "text/javascript", file.text]);
  const server = http.createServer((request, response) => {
    const file = files.get(new URL(request.url!, "http://localhost").pathname);
    if (!file) {
      response.writeHead(404).end();
      return;
    }
    response
      .writeHead(200, { "content-type": `${file[0]}; charset=utf-8`, "content-security-policy": POLICY })
      .end(file[1]);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const script = made.outputFiles.map((file) => file.text).join("");
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    size: { script: script.length, gz: gzipSync(script, { level: 9 }).length },
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
}

export interface GridPage {
  readonly page: Page;
  readonly session: CDPSession;
  readonly complaints: string[];
  close(): Promise<void>;
}

export async function openGrid(
  browser: Browser,
  site: GridSite,
  query: string,
  options: BrowserContextOptions = {},
): Promise<GridPage> {
  const { context, page } = await newPage(browser, { viewport: { width: 1440, height: 800 }, ...options });
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" || /content security policy/i.test(message.text())) complaints.push(message.text());
  });
  page.on("pageerror", (problem) => complaints.push(`uncaught: ${problem.stack ?? problem.message}`));
  await page.goto(`${site.address}?${query}`);
  await page.waitForFunction(() => "tablefeedDesk" in globalThis);
  return { page, session: await context.newCDPSession(page), complaints, close: () => context.close() };
}

export const OUT = path.join(root, "tests", ".out");
export const picture = async (page: Page, name: string): Promise<void> => {
  fs.mkdirSync(OUT, { recursive: true });
  await page.screenshot({ path: path.join(OUT, name) });
};
