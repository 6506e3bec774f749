// Figures of the desk in Chromium, each beside what a plain page needs for the same on this machine at the same time: so many
// cells of text made by the browser alone, and an input whose Enter writes one row of them. Nothing is judged.
import fs from "node:fs";
import http from "node:http";
import os from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { chromium } from "playwright-core";
import { buildDesk } from "../../taskpane/build/pages.mjs";
import { serve } from "../../taskpane/build/serve.mjs";

const root = path.resolve(import.meta.dirname, "../..");
const PROGRAM = process.env.CHROMIUM ?? "/usr/bin/chromium";
const SIZE = { width: 1440, height: 900 };
const [EDITS, LONG, CALLOUTS] = [40, 2000, 500];

const sorted = (list) => [...list].sort((a, b) => a - b);
const median = (list) => sorted(list)[Math.floor(list.length / 2)];

/** Runs in the page: the time from an event until the frame that shows what `there` looks for is drawn [ms]. */
function inPage() {
  globalThis.benchPainted = (there, patience = 60_000) =>
    new Promise((resolve, reject) => {
      const began = performance.now();
      const channel = new MessageChannel();
      // Comes when the frame has been handed over.
      channel.port1.onmessage = () => resolve(performance.now());
      const look = () => {
        if (there()) channel.port2.postMessage(null);
        else if (performance.now() - began > patience) reject(new Error("it was never painted"));
        else requestAnimationFrame(look);
      };
      requestAnimationFrame(look);
    });
  /** From the key press itself, as the browser stamped it. */
  globalThis.benchKey = (there) =>
    new Promise((resolve, reject) => {
      addEventListener(
        "keydown",
        (event) => globalThis.benchPainted(there).then((end) => resolve(end - event.timeStamp), reject),
        { once: true, capture: true },
      );
    });
  /** The machine's own arithmetic: ten million steps of a generator of random numbers [ms]. */
  globalThis.benchArithmetic = () => {
    const start = performance.now();
    let x = 1;
    for (let i = 0; i < 1e7; i++) x = (Math.imul(x, 48_271) + i) | 0;
    globalThis.benchKept = x;
    return performance.now() - start;
  };
}

/** A page of a table alone. */
const PLAIN = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Plain</title><style>table{table-layout:fixed;border-collapse:collapse;font:14px system-ui,sans-serif}td{width:90px;height:27px;padding:0 6px;overflow:hidden;white-space:nowrap;border:1px solid #ccc}.tall{max-height:860px;overflow:auto}</style></head><body><input id="input" aria-label="Input"><div class="tall"><table id="table"></table></div></body></html>`;

async function servePlain() {
  const server = http.createServer((request, response) =>
    response.writeHead(request.url === "/" ? 200 : 404, { "content-type": "text/html" }).end(PLAIN),
  );
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    address: `http://127.0.0.1:${server.address().port}/`,
    close: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}

async function open(browser, address) {
  const context = await browser.newContext({ viewport: SIZE });
  const page = await context.newPage();
  page.on("pageerror", (problem) => console.log(`  the page failed: ${problem.message}`));
  await page.addInitScript(inPage);
  const session = await context.newCDPSession(page);
  // Time of the page's own thread, so that other programs of the machine do not count.
  await session.send("Performance.enable", { timeDomain: "threadTicks" });
  const work = async () => {
    const { metrics } = await session.send("Performance.getMetrics");
    return metrics.find(({ name }) => name === "TaskDuration").value * 1000;
  };
  await page.goto(address);
  return { page, work, close: () => context.close() };
}

const ready = (page) =>
  page.waitForFunction(
    () => document.documentElement.dataset.ready === "yes" && document.getElementById("state").dataset.busy === "no",
  );

/** Cold: a browser context that has never seen the page; until the plan stands in its cells and is drawn. */
async function cold(browser, address, there, runs = 5) {
  const times = [];
  const works = [];
  for (let i = 0; i < runs; i++) {
    const { page, work, close } = await open(browser, address);
    times.push(await page.evaluate(`benchPainted(${there})`));
    works.push(await work());
    await close();
  }
  return { ms: median(times), work: median(works) };
}

/** What a first visit loads for the plan to be there, compressed as servers do it [kB]: the code, and the demo's workbook. */
async function bytes(browser, address, folder) {
  const { page, close } = await open(browser, address);
  await ready(page);
  const names = await page.evaluate(() =>
    performance.getEntriesByType("resource").map(({ name }) => new URL(name).pathname.slice(1)),
  );
  await close();
  const size = (name) => gzipSync(fs.readFileSync(path.join(folder, name)), { level: 9 }).length / 1000;
  // The calculator and the blank workbook come afterwards, for later.
  const code = new Set([
    "desk.html",
    ...names.filter((name) => /\.(?:js|css)$/.test(name) && !/calculator/.test(name)),
  ]);
  return { code: [...code].reduce((sum, name) => sum + size(name), 0), demo: size("demo.xlsx") };
}

/** Depths typed into rows that are drilled: too deep for the drill, then as before. The verdict's cell is watched. */
async function edits(page, work) {
  const found = await page.evaluate(() => {
    const desk = globalThis.tablefeedDesk;
    const at = (row, column) => desk.valueAt({ sheet: "Plan", row, column });
    const head = {};
    for (let c = 0; at(0, c) !== null; c++) head[at(0, c)] ??= c;
    const rows = [];
    for (let r = 1; at(r, head.Operation) !== null; r++)
      if (at(r, head.Operation) === "drill" && typeof at(r, head.Depth) === "number" && at(r, 0) !== "stop")
        rows.push({ row: r, depth: at(r, head.Depth) });
    return { column: head.Depth, rows };
  });
  const times = [];
  const works = [];
  const some = Math.ceil(EDITS / 2);
  for (let i = 0; i < some; i++) {
    const { row, depth } = found.rows[Math.floor((i * found.rows.length) / some)];
    for (const [typed, stops] of [
      [depth * 400, true],
      [depth, false],
    ]) {
      await page.evaluate((place) => globalThis.tablefeedDesk.select(place), {
        sheet: "Plan",
        row,
        column: found.column,
      });
      // As a person does: the pane has shown the row before the next number is typed.
      await page.waitForFunction(() => document.getElementById("state").dataset.busy === "no");
      await page.keyboard.type(String(typed));
      const before = await work();
      const painted = page.evaluate(
        ([at, stop]) =>
          globalThis.benchKey(() => {
            const cell = document.querySelector(`.tg-row[data-row="${at}"] [data-column="0"]`);
            return (cell?.textContent?.includes("stop") ?? false) === stop;
          }),
        [row, stops],
      );
      await page.evaluate(() => undefined);
      await page.keyboard.press("Enter");
      times.push(await painted);
      works.push((await work()) - before);
    }
  }
  return { times, works };
}

/** The same number of inputs on the plain page: each writes twenty cells of its row. */
async function plainEdits(page, work) {
  const times = [];
  const works = [];
  await page.evaluate(() => {
    document.getElementById("input").addEventListener("keydown", (event) => {
      if (event.key !== "Enter") return;
      const { value, dataset } = event.target;
      const cells = document.getElementById("table").rows[dataset.row].cells;
      for (let c = 0; c < 20; c++) {
        cells[c].textContent = `${value} ${c}`;
        cells[c].className = c % 2 ? "a" : "b";
      }
    });
  });
  for (let i = 0; i < EDITS; i++) {
    await page.evaluate((row) => {
      const input = document.getElementById("input");
      input.dataset.row = row;
      input.value = "";
      input.focus();
    }, i % 30);
    await page.keyboard.type(`${i}.5`);
    const before = await work();
    const painted = page.evaluate(
      ([row, text]) =>
        globalThis.benchKey(() => document.getElementById("table").rows[row].cells[0].textContent === text),
      [i % 30, `${i}.5 0`],
    );
    await page.evaluate(() => undefined);
    await page.keyboard.press("Enter");
    times.push(await painted);
    works.push((await work()) - before);
  }
  return { times, works };
}

/** A file through the page's own input, until its plan is ready and drawn. */
async function opening(page, file) {
  await page.evaluate(() => {
    globalThis.benchOpened = new Promise((resolve) => {
      document.getElementById("file").addEventListener(
        "change",
        () => {
          const start = performance.now();
          document.addEventListener(
            "tablefeed-ready",
            () => globalThis.benchPainted(() => true).then((end) => resolve(end - start)),
            { once: true },
          );
        },
        { once: true, capture: true },
      );
    });
  });
  await page.setInputFiles("#file", file);
  return page.evaluate(() => globalThis.benchOpened);
}

/** The values of the sheet as one plain table in the page [ms]. */
const plainTable = (page, rows, columns) =>
  page.evaluate(
    async ([n, m]) => {
      const start = performance.now();
      const line = (r) => `<tr>${Array.from({ length: m }, (_, c) => `<td>${r * 7 + c}.25</td>`).join("")}</tr>`;
      document.getElementById("table").innerHTML = Array.from({ length: n }, (_, r) => line(r)).join("");
      const end = await globalThis.benchPainted(() => true);
      return end - start;
    },
    [rows, columns],
  );

/** Lines pasted into the pane and added: until the pane shows what they become, and until the last has its verdict. */
async function callouts(page, text, rows) {
  await page.evaluate(() => globalThis.tablefeedDesk.select({ sheet: "Plan", row: 4, column: 3 }));
  await page.click("#tab-table");
  await page.locator(".callouts summary").first().click();
  return page.evaluate(
    async ([pasted, wanted]) => {
      const area = document.querySelector("#callouts-text");
      const desk = globalThis.tablefeedDesk;
      const at = (row, column) => desk.valueAt({ sheet: "Plan", row, column });
      let last = 0;
      while (at(last + 1, 4) !== null) last++;
      let start = performance.now();
      area.value = pasted;
      area.dispatchEvent(new Event("input"));
      const shown =
        (await globalThis.benchPainted(() =>
          document.querySelector(".callouts .tally")?.textContent?.startsWith("500"),
        )) - start;
      start = performance.now();
      document.querySelector(".callouts .main").click();
      const first = (await globalThis.benchPainted(() => ["ok", "check", "stop"].includes(at(last + 1, 0)))) - start;
      const all = (await globalThis.benchPainted(() => ["ok", "check", "stop"].includes(at(last + wanted, 0)))) - start;
      return { shown, first, all };
    },
    [text, rows],
  );
}

export async function deskBench(line, out) {
  if (!fs.existsSync(PROGRAM)) {
    console.log(`${PROGRAM} is not installed: no figures of the desk`);
    return;
  }
  const bundle = path.join(out, "bench-desk-books.mjs");
  await build({
    entryPoints: [path.join(root, "tests/bench/desk-books.ts")],
    bundle: true,
    format: "esm",
    platform: "node",
    outfile: bundle,
    logLevel: "error",
  });
  const { longPlan, manyCallouts, DEMO_ROWS } = await import(pathToFileURL(bundle).href);
  const file = path.join(out, "bench-long.xlsx");
  fs.writeFileSync(file, longPlan(LONG));
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "bench-desk-"));
  await buildDesk(folder);
  const served = await serve({ folder, port: 0 });
  const plain = await servePlain();
  const browser = await chromium.launch({
    executablePath: PROGRAM,
    args: "--no-sandbox --headless --disable-gpu --disable-background-networking --disable-component-update --disable-sync --no-first-run".split(
      " ",
    ),
  });
  const ms = (name, value, yard, note = "") =>
    line(`desk: ${name}`, value.toFixed(0), "ms", `${(value / yard).toFixed(1)} × plain page${note && `; ${note}`}`);
  try {
    const blank = await open(browser, plain.address);
    const arithmetic = median(
      await Promise.all(Array.from({ length: 7 }, () => blank.page.evaluate(() => globalThis.benchArithmetic()))),
    );
    line(
      "desk: the machine, 10,000,000 steps of arithmetic",
      arithmetic.toFixed(0),
      "ms",
      `load ${os.loadavg()[0].toFixed(1)}`,
    );
    const small = await plainTable(blank.page, DEMO_ROWS, 60);
    const plainKeys = await plainEdits(blank.page, blank.work);
    const yard = median(plainKeys.times);
    line(
      "desk: plain page, Enter to painted row",
      yard.toFixed(0),
      "ms",
      `worst ${Math.max(...plainKeys.times).toFixed(0)}, own work ${median(plainKeys.works).toFixed(1)}`,
    );
    await blank.close();

    const first = await cold(browser, plain.address, "() => true");
    const loaded = await cold(
      browser,
      served.address,
      '() => document.documentElement.dataset.ready === "yes" && document.querySelector(".tg-active") !== null',
    );
    ms("ready, cold", loaded.ms, first.ms + small, `own work ${loaded.work.toFixed(0)} ms`);
    const { code, demo } = await bytes(browser, served.address, folder);
    line("desk: code before the calculator, gzip level 9", code.toFixed(0), "kB", `and ${demo.toFixed(0)} of the demo`);

    const desk = await open(browser, served.address);
    const { page, work } = desk;
    const typed = async (rows) => {
      const { times, works } = await edits(page, work);
      ms(
        `Enter to painted verdict, ${rows} rows, median`,
        median(times),
        yard,
        `own work ${median(works).toFixed(0)} ms`,
      );
      const hardest = Math.max(...works);
      ms(
        `Enter to painted verdict, ${rows} rows, worst of ${times.length}`,
        Math.max(...times),
        yard,
        `own work ${hardest.toFixed(0)} ms`,
      );
    };
    await ready(page);
    await typed(DEMO_ROWS);
    const sheet = await open(browser, plain.address);
    const large = await plainTable(sheet.page, LONG, 60);
    await sheet.close();
    const before = await work();
    ms("2,000 rows opened", await opening(page, file), large, `own work ${((await work()) - before).toFixed(0)} ms`);
    await ready(page);
    await typed(LONG);
    await desk.close();

    const other = await open(browser, served.address);
    await ready(other.page);
    const start = await other.work();
    const { shown, first: soon, all } = await callouts(other.page, manyCallouts(CALLOUTS), 800);
    const busy = (await other.work()) - start;
    const row = await open(browser, plain.address);
    const eight = await plainTable(row.page, 800, 60);
    await row.close();
    ms("500 callouts pasted, shown in the pane", shown, eight);
    ms("500 callouts added, first verdict", soon, eight);
    ms("500 callouts added, last verdict", all, eight, `own work ${busy.toFixed(0)} ms in all`);
    await other.close();
  } finally {
    await browser.close();
    await served.close();
    plain.close();
    fs.rmSync(folder, { recursive: true, force: true });
  }
}
