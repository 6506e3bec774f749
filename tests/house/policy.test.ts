/** The pane under its content security policy, with Office's own script, in a browser; and what the pages state. */
import fs from "node:fs";
import path from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
// @ts-expect-error plain script without types
import { buildPages } from "../../taskpane/build/pages.mjs";
// @ts-expect-error plain script without types
import { headerOf, OFFICE, policyOf } from "../../taskpane/build/policy.mjs";
// @ts-expect-error plain script without types
import { serve } from "../../taskpane/build/serve.mjs";
import { newPage, startBrowser } from "../browser/page.ts";
import { root } from "./files.ts";

const out = path.join(root, "tests", ".out", "policy");
const OFFICE_JS = path.join(root, "node_modules/@microsoft/office-js/dist");
const read = (name: string) => fs.readFileSync(path.join(out, name), "utf8");
const parts = (policy: string) =>
  Object.fromEntries(policy.split(";").map((part) => part.trim().split(/ (.*)/, 2) as [string, string]));

describe("the policies of the pages (house)", () => {
  let browser: Browser;
  let served: { address: string; close(): Promise<void> };
  let packages: string[];
  beforeAll(async () => {
    fs.rmSync(out, { recursive: true, force: true });
    fs.mkdirSync(out, { recursive: true });
    ({ packages } = await buildPages(out, { base: "https://localhost:3000" }));
    served = await serve({ folder: out, port: 0 });
    browser = await startBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await served?.close();
  });

  it("let the pane do no more than the desk, but for Office's script and the styles that it sets", () => {
    const desk = parts(policyOf(read("desk.html")));
    const pane = parts(policyOf(read("taskpane.html")));
    expect(pane["script-src"]).toBe(`'self' ${OFFICE}`);
    for (const [what, allowed] of Object.entries(pane))
      if (what !== "script-src")
        for (const source of allowed.split(" "))
          if (`${what} ${source}` !== "style-src 'unsafe-inline'")
            expect(desk[what]?.split(" "), what).toContain(source);
    for (const policy of [pane, desk]) {
      expect(policy["default-src"]).toBe("'none'");
      expect(policy["script-src"]).not.toMatch(/unsafe|\*|data:|blob:/);
      expect(policy["connect-src"]).toBe("'self'");
    }
  });

  it("say who may frame a page: Excel's own pages the pane, nobody the desk", () => {
    expect(parts(headerOf("desk.html", read("desk.html")))["frame-ancestors"]).toBe("'none'");
    const may = parts(headerOf("taskpane.html", read("taskpane.html")))["frame-ancestors"]!.split(" ");
    expect(may[0]).toBe("'self'");
    for (const source of may.slice(1)) expect(source).toMatch(/^https:\/\/(?:\*\.)?[a-z0-9]+(?:\.[a-z0-9]+)+$/);
  });

  it("hold in the pane with Office's own script: no violation, no request to anybody else", async () => {
    const { page } = await newPage(browser);
    const complaints: string[] = [];
    page.on("console", (message) => {
      if (/content security policy|refused/i.test(message.text())) complaints.push(message.text());
    });
    page.on("pageerror", (problem) => complaints.push(problem.message));
    const asked = new Set<string>();
    await page.route("**/*", (route) => {
      const { origin, pathname } = new URL(route.request().url());
      asked.add(origin);
      const file = path.join(OFFICE_JS, pathname.replace(/^\/lib\/1\/hosted\//, ""));
      return origin === OFFICE && fs.existsSync(file) ? route.fulfill({ path: file }) : route.continue();
    });
    await page.goto(`${served.address}taskpane.html`);
    await page.getByText("This version of Excel runs neither the worksheet functions nor this pane.").waitFor();
    expect(complaints).toEqual([]);
    expect([...asked].sort()).toEqual([OFFICE, new URL(served.address).origin].sort());
    // And it does hold: what comes from elsewhere, or stands in the page itself, is not run.
    const ran = await page.evaluate(async () => {
      const inline = document.createElement("script");
      inline.textContent = "window.hurt = 1";
      document.head.append(inline);
      const foreign = await fetch("https://tools.example.org/").then(
        () => "answered",
        () => "refused",
      );
      return [(globalThis as any).hurt ?? "not run", foreign];
    });
    expect(ran).toEqual(["not run", "refused"]);
    await page.close();
  });

  it("are listed for whoever sets up a server", () => {
    const notes = read("SERVER.txt").split("\n");
    for (const name of ["desk.html", "taskpane.html"])
      expect(notes.find((line) => line.startsWith(`/${name}`))).toContain(headerOf(name, read(name)));
  });

  it("name every bundled package and its licence beside the pages", () => {
    const text = read("NOTICES.txt");
    expect(text.startsWith("Tablefeed\n\nMIT License")).toBe(true);
    expect(packages.length).toBeGreaterThan(0);
    for (const folder of packages) {
      const { name, version } = JSON.parse(fs.readFileSync(path.join(root, folder, "package.json"), "utf8"));
      expect(text.split("\n"), folder).toContain(`${name} ${version}`);
    }
    expect(text).not.toMatch(/GNU (?:Affero |Lesser )?General Public License/i);
  });

  it("bundle only packages that are dependencies, or come with one", () => {
    const lock = JSON.parse(fs.readFileSync(path.join(root, "package-lock.json"), "utf8")).packages;
    const own = new Set(
      Object.keys(JSON.parse(fs.readFileSync(path.join(root, "package.json"), "utf8")).devDependencies),
    );
    const wrong = packages.filter(
      (folder) => lock[folder]?.dev === true && own.has(folder.replace("node_modules/", "")),
    );
    expect(wrong).toEqual([]);
  });
});
