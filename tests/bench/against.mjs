// PLAN of this checkout beside that of another one, turn by turn in one run: each plans its own demo job with its own lists.
import path from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";

const ROWS = 1000;
const TURNS = 9;

/** A fixed sequence in [0, 1): the fractional parts of multiples of the golden ratio. */
const part = (i) => (i * 0.6180339887498949) % 1;

async function planOf(folder, outfile) {
  const contents = [
    'export { PLAN } from "./functions/plan.ts";',
    ...["DEMO:demo", "MATERIALS:materials", "TOOLS:tools", "MACHINES:machines"].map((text) => {
      const [name, file] = text.split(":");
      return `export { ${name} } from "./src/lists/${file}.ts";`;
    }),
  ].join("\n");
  const settings = { bundle: true, format: "esm", platform: "node", logLevel: "error", outfile };
  await build({ ...settings, stdin: { contents, resolveDir: folder, loader: "ts" } });
  return import(pathToFileURL(outfile).href);
}

let call = 0;

/**
 * Rows of the demo job at depths of their own. `alike`: the cut itself comes again and again, as in a job of many equal features;
 * else each row's force is a hair off, so that nothing that was worked out before serves it.
 */
function rows(DEMO, operation, alike) {
  const [head, ...jobs] = DEMO;
  const at = (heading) => head.indexOf(heading);
  const source = jobs.filter((row) => operation === undefined || row[at("Operation")] === operation);
  call++;
  return [
    [...head],
    ...Array.from({ length: ROWS }, (_, i) => {
      const row = [...source[i % source.length]];
      const depth = row[at("Depth")];
      if (typeof depth === "number") row[at("Depth")] = depth * (0.8 + 0.2 * part(i)) * (1 + 1e-6 * call);
      const worn = row[at("Wear factor")];
      if (!alike) row[at("Wear factor")] = (typeof worn === "number" ? worn : 1) * (1 + 1e-7 * (ROWS * call + i));
      return row;
    }),
  ];
}

/** Time of the processor that a run takes [ms]: other programs do not count. */
function cost(run) {
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];

export async function against(root, other, out, line) {
  const here = await planOf(root, path.join(out, "bench-here.mjs"));
  const there = await planOf(path.resolve(other), path.join(out, "bench-there.mjs"));
  for (const operation of [undefined, "thread mill"])
    for (const alike of [true, false]) {
      const times = [here, there].map(() => []);
      for (let turn = 0; turn <= TURNS; turn++)
        [here, there].forEach(({ PLAN, DEMO, MATERIALS, TOOLS, MACHINES }, i) => {
          const table = rows(DEMO, operation, alike);
          const ms = cost(() => PLAN(table, MATERIALS, TOOLS, MACHINES));
          if (turn > 0) times[i].push(ms);
        });
      const [mine, theirs] = times.map(median);
      const what = `PLAN, ${operation ?? "mixed"} rows, ${alike ? "cuts that come again" : "no two cuts alike"}`;
      line(
        what,
        (mine / theirs).toFixed(2),
        "times",
        `${(mine / ROWS).toFixed(2)} and ${(theirs / ROWS).toFixed(2)} ms`,
      );
    }
}
