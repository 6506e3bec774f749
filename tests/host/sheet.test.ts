import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { type Bench, contract, type Sheets } from "./contract.ts";

const root = path.resolve(import.meta.dirname, "../..");
const file = path.join(root, "tests", ".out", "sheet-bench.mjs");

/** Once for the file. */
const bundled = (async () => {
  fs.mkdirSync(path.dirname(file), { recursive: true });
  await build({
    entryPoints: [path.join(import.meta.dirname, "sheet-bench.ts")],
    outfile: file,
    bundle: true,
    format: "esm",
    platform: "node",
    absWorkingDir: root,
    logLevel: "warning",
    banner: { js: `import { createRequire } from "node:module"; const require = createRequire(import.meta.url);` },
  });
  return (await import(pathToFileURL(file).href)) as { openSheets(sheets: Sheets): Promise<Bench> };
})();

contract("sheet", async (sheets) => (await bundled).openSheets(sheets));
