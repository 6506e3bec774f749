// The bench: figures of this machine in one run, ratios where two ways do the same work. Not a test; nothing is judged.
import { spawnSync } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import vm from "node:vm";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import ExcelJS from "exceljs";
import { buildFunctions } from "../../taskpane/build/pages.mjs";
import { against } from "./against.mjs";
import { deskBench } from "./desk.mjs";

const root = path.resolve(import.meta.dirname, "../..");
const out = path.join(root, "tests", ".out");
fs.mkdirSync(out, { recursive: true });
const line = (name, value, unit, note = "") =>
  console.log(`${name.padEnd(58)} ${value.padStart(10)} ${unit.padEnd(6)} ${note}`);
if (process.argv[2] === "--against") {
  await against(root, process.argv[3], out, line);
  process.exit();
}
const bundle = path.join(out, "bench-cases.mjs");
await build({
  entryPoints: [path.join(root, "tests/bench/cases.ts")],
  bundle: true,
  format: "esm",
  platform: "node",
  outfile: bundle,
  logLevel: "error",
});
await buildFunctions(out);
const { figures, sheetColumns, sheetInputs, SHEET_FORMULAS, time } = await import(pathToFileURL(bundle).href);

/** Loads the classic script in a fresh context, as the custom-functions runtime does; how long, and how many functions. */
function coldLoad() {
  const script = fs.readFileSync(path.join(out, "functions.js"), "utf8");
  const times = [];
  let count = 0;
  for (let i = 0; i < 9; i++) {
    count = 0;
    const context = vm.createContext({ CustomFunctions: { associate: () => count++, Error: class {} } });
    const start = performance.now();
    new vm.Script(script, { filename: `functions-${i}.js` }).runInContext(context);
    times.push(performance.now() - start);
  }
  return { ms: times.sort((a, b) => a - b)[4], count };
}

if (process.argv.includes("--desk")) {
  await deskBench(line, out);
  process.exit();
}
const script = fs.readFileSync(path.join(out, "functions.js"));
line("functions.js, gzip level 9", (gzipSync(script, { level: 9 }).length / 1000).toFixed(1), "kB");
const cold = coldLoad();
line("functions.js, load in a fresh context", cold.ms.toFixed(1), "ms", `${cold.count} functions associated`);
for (const f of await figures()) line(f.name, f.value.toFixed(f.value < 10 ? 2 : 0), f.unit, f.note);
await againstOffice();
await deskBench(line, out);

/** 10,000 × 12 columns of arithmetic: our lifted functions against LibreOffice recalculating its own formulas. */
async function againstOffice() {
  const rows = 10000;
  const inputs = sheetInputs(rows);
  const ours = time(() => sheetColumns(inputs), 9);
  line("10,000 × 12 columns by lifted functions", ours.toFixed(0), "ms");
  if (spawnSync("soffice", ["--version"]).error) {
    console.log("soffice is not installed: no comparison with LibreOffice");
    return;
  }
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Arithmetic");
  inputs.forEach((row, i) => {
    sheet.addRow([...row, ...SHEET_FORMULAS.map((f) => ({ formula: f(i + 1) }))]);
  });
  const file = path.join(out, "bench-arithmetic.xlsx");
  await book.xlsx.writeFile(file);
  const profile = fs.mkdtempSync(path.join(os.tmpdir(), "bench-office-"));
  const result = path.join(profile, "result.txt");
  const office = (...args) => {
    const settings = [`-env:UserInstallation=${pathToFileURL(profile).href}`, "--headless", "--norestore"];
    return spawnSync("soffice", [...settings, ...args], { timeout: 240000, stdio: "ignore" });
  };
  // The first start fills the profile with its own empty library; ours goes in after it.
  office("--terminate_after_init");
  writeMacro(profile, file, result);
  office("macro:///Standard.Bench.Run");
  if (!fs.existsSync(result)) {
    console.log("LibreOffice did not run the macro: no comparison");
    return;
  }
  const [ms, ...values] = fs.readFileSync(result, "utf8").trim().split(/\s+/).map(Number);
  const mine = sheetColumns(inputs).map((column) => column[rows - 1][0]);
  const worst = Math.max(...mine.map((v, k) => Math.abs(v / values[k] - 1)));
  line(
    "the same by LibreOffice, hard recalculation",
    ms.toFixed(0),
    "ms",
    `last row differs by ${worst.toExponential(1)} at most`,
  );
  line("ratio, ours over LibreOffice's", (ours / ms).toFixed(2), "");
  fs.rmSync(profile, { recursive: true, force: true });
}

/** A Basic macro in a profile of its own: opens the file, recalculates five times, writes the median and the last row. */
function writeMacro(profile, file, result) {
  const folder = path.join(profile, "user", "basic", "Standard");
  fs.mkdirSync(folder, { recursive: true });
  const head = '<?xml version="1.0" encoding="UTF-8"?>\n';
  fs.writeFileSync(
    path.join(profile, "user", "basic", "script.xlc"),
    `${head}<!DOCTYPE library:libraries PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "libraries.dtd">\n<library:libraries xmlns:library="http://openoffice.org/2000/library" xmlns:xlink="http://www.w3.org/1999/xlink"><library:library library:name="Standard" library:link="false"/></library:libraries>`,
  );
  fs.writeFileSync(
    path.join(folder, "script.xlb"),
    `${head}<!DOCTYPE library:library PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "library.dtd">\n<library:library xmlns:library="http://openoffice.org/2000/library" library:name="Standard" library:readonly="false" library:passwordprotected="false"><library:element library:name="Bench"/></library:library>`,
  );
  const code = `Sub Run
  Dim hidden(0) As New com.sun.star.beans.PropertyValue
  hidden(0).Name = "Hidden"
  hidden(0).Value = True
  doc = StarDesktop.loadComponentFromURL("${pathToFileURL(file).href}", "_blank", 0, hidden())
  doc.calculateAll()
  Dim t(4) As Double
  For i = 0 To 4
    start = GetSystemTicks()
    doc.calculateAll()
    t(i) = GetSystemTicks() - start
  Next i
  For i = 0 To 3
    For j = i + 1 To 4
      If t(j) < t(i) Then
        swap = t(i)
        t(i) = t(j)
        t(j) = swap
      End If
    Next j
  Next i
  handle = FreeFile
  Open "${result}" For Output As #handle
  Print #handle, Str(t(2))
  For k = 8 To 19
    Print #handle, Str(doc.Sheets(0).getCellByPosition(k, ${10000 - 1}).Value)
  Next k
  Close #handle
  doc.close(True)
  StarDesktop.terminate()
End Sub`;
  fs.writeFileSync(
    path.join(folder, "Bench.xba"),
    `${head}<!DOCTYPE script:module PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "module.dtd">\n<script:module xmlns:script="http://openoffice.org/2000/script" script:name="Bench" script:language="StarBasic">${code.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/"/g, "&quot;")}</script:module>`,
  );
}
