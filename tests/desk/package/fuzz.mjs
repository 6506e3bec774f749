// Fuzzes the reading and saving of packages: node tests/desk/package/fuzz.mjs [cases, 2000 unless given] [seed]
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";

const [count = "2000", seed = "1"] = process.argv.slice(2);
const here = import.meta.dirname;
const outfile = path.join(here, "..", "..", ".out", "fuzzing.mjs");
await build({
  entryPoints: [path.join(here, "fuzzing.ts")],
  outfile,
  bundle: true,
  platform: "node",
  format: "esm",
  logLevel: "error",
  define: { "import.meta.dirname": JSON.stringify(here) },
});
const { fuzz } = await import(pathToFileURL(outfile).href);
const start = performance.now();
const result = await fuzz(Number(count), Number(seed));
fs.rmSync(outfile);
console.log(
  JSON.stringify(
    { ...result, faults: result.faults.slice(0, 40), seconds: Math.round((performance.now() - start) / 1000) },
    null,
    1,
  ),
);
process.exitCode = result.faults.length > 0 || result.slowest > 2000 || result.memory > 500 ? 1 : 0;
