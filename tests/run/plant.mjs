// Plants faults in the sources and tries the tests on each, in a process of its own that ends with the first red test.
import { spawn } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { Instrumenter } from "@stryker-mutator/instrumenter";
import { build } from "esbuild";

/** Words are for people to judge: only numbers, comparisons, conditions and calls are changed. */
const SETTINGS = { excludedMutations: ["StringLiteral"], plugins: null, ignorers: [] };
const SILENT = { debug() {}, info() {}, warn() {}, isDebugEnabled: () => false };

const named = ({ fileName, location: { start, end }, mutatorName, replacement }) =>
  [fileName, start.line, start.column, end.line, end.column, mutatorName, replacement].join("|");

/** The faults that can be planted in the files, and the sources that hold them all, each asleep until its id is named. */
async function instrumented(files, ranges) {
  const read = (name) => ({ name, mutate: ranges?.get(name) ?? true, content: fs.readFileSync(name, "utf8") });
  const made = await new Instrumenter(SILENT).instrument(files.map(read), SETTINGS);
  const sources = new Map(made.files.map(({ name, content }) => [name, content]));
  return { faults: made.mutants.filter(({ status }) => status === undefined), sources };
}

/** All faults that could be planted. */
export const faultsOf = async (files) => (await instrumented(files)).faults;

/** The same faults under the ids they have in sources that hold (nearly) nothing else. */
async function planted(faults) {
  const ranges = new Map();
  for (const { fileName, location } of faults) ranges.set(fileName, [...(ranges.get(fileName) ?? []), location]);
  const { faults: all, sources } = await instrumented([...ranges.keys()], ranges);
  const known = new Map(all.map((fault) => [named(fault), fault]));
  return { faults: faults.map((fault) => known.get(named(fault))), sources };
}

/** Tests and sources as scripts in `out`: each test file one, what they share in others. */
async function scripts(root, out, tests, sources) {
  const shim = path.join(import.meta.dirname, "tests.mjs");
  const cache = path.join(root, "src", "cache.ts");
  // While hits are counted, each test finds the memories empty: what it would have asked for is asked for.
  const forget = `
{ const get = Cache.prototype.get;
  Cache.prototype.get = function (key, make) {
    if (this.test !== globalThis.countedTest) this.kept.clear();
    this.test = globalThis.countedTest;
    return get.call(this, key, make); }; }
`;
  const plugin = {
    name: "planted",
    setup(made) {
      made.onResolve({ filter: /^vitest$/ }, ({ importer }) =>
        importer === shim ? { path: "vitest", external: true } : { path: shim },
      );
      made.onLoad({ filter: /\.ts$/ }, ({ path: file }) => {
        const text = sources.get(file) ?? fs.readFileSync(file, "utf8");
        const at = text.replaceAll("import.meta.url", JSON.stringify(pathToFileURL(file).href));
        return { contents: file === cache ? at + forget : at, loader: "ts" };
      });
    },
  };
  await build({
    entryPoints: [...tests, shim].map((file) => path.join(root, path.relative(root, file))),
    outdir: out,
    outbase: path.join(root, "tests"),
    outExtension: { ".js": ".mjs" },
    bundle: true,
    splitting: true,
    format: "esm",
    platform: "node",
    target: "node20",
    packages: "external",
    logLevel: "error",
    plugins: [plugin],
  });
  const script = (file) => path.join(out, path.relative(path.join(root, "tests"), file).replace(/\.\w+$/, ".mjs"));
  return { shim: script(shim), tests: tests.map(script) };
}

/** What a trial answered; "late" when it did not in time. */
function trial(order, ms) {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [path.join(import.meta.dirname, "trial.mjs")], {
      stdio: ["pipe", "ignore", "pipe", "pipe"],
    });
    let [said, wrong] = ["", ""];
    let late = false;
    const clock = setTimeout(() => {
      late = true;
      child.kill("SIGKILL");
    }, ms);
    child.stdio[3].on("data", (part) => {
      said += part;
    });
    child.stderr.on("data", (part) => {
      wrong += part;
    });
    child.on("close", () => {
      clearTimeout(clock);
      if (late) resolve("late");
      else if (said !== "") resolve(JSON.parse(said));
      else if (order.fault !== undefined) resolve({ red: { script: "", name: wrong.slice(0, 200) } });
      else reject(new Error(wrong));
    });
    child.stdin.end(JSON.stringify(order));
  });
}

/** Tests of another room that take longer (in processor time) are left out: they judge their own room. */
const LONG = 1500;

/** Once without a fault, a file at a time: which tests pass by each fault, which files while they load, and how long they take. */
async function counted(root, made, tests, progress) {
  const file = new Map(made.tests.map((script, i) => [script, tests[i]]));
  const loads = new Map();
  const passes = new Map();
  const whole = new Map();
  for (const script of made.tests) {
    const name = path.relative(root, file.get(script));
    const answer = await trial({ shim: made.shim, files: [{ script }] }, 900_000);
    if (answer === "late" || answer.tests.length === 0)
      throw new Error(`Without any fault ${name} is red: ${answer.red?.name ?? "not done in a quarter of an hour"}`);
    // A test that is red without any fault (one that reads the text of the code, say) judges none.
    if (answer.red) console.log(`left out, red without any fault: ${name}: ${answer.red.name}`);
    const fit = answer.tests.filter(({ place }) => !answer.unfit.includes(place));
    const sum = (of) => of.reduce((all, { ms }) => all + ms, 0);
    whole.set(script, { script, places: fit.map(({ place }) => place), ms: sum(fit), whole: sum(fit) });
    const { static: atLoad = {}, perTest = {} } = answer.hits ?? {};
    for (const id of Object.keys(atLoad)) loads.set(id, [...(loads.get(id) ?? []), script]);
    for (const { place, ms } of fit)
      for (const id of Object.keys(perTest[`${script}#${place}`] ?? {})) {
        if (!passes.has(id)) passes.set(id, new Map());
        const scripts = passes.get(id);
        if (!scripts.has(script)) scripts.set(script, { script, places: [], ms: 0, whole: sum(fit) });
        const entry = scripts.get(script);
        entry.places.push(place);
        entry.ms += ms;
      }
    progress(`${name}: ${(sum(fit) / 1000).toFixed(1)} s`);
  }
  return {
    file,
    /** What runs while a file loads concerns all its tests. */
    judging: (id) => [
      ...new Map([
        ...(passes.get(id) ?? []),
        ...(loads.get(id) ?? []).map((script) => [script, whole.get(script)]),
      ]).values(),
    ],
  };
}

/**
 * Tries each fault. Answers them with `found` (red, or not done in time), `by` (what was red) and `reached` (some test runs
 * through the place); fewer when `stopped` says so. `near` says whether a test file is of the same room as a source: it is tried before the others.
 */
export async function tried(root, drawn, tests, near, progress, stopped) {
  const parent = path.join(root, "tests", ".out");
  fs.mkdirSync(parent, { recursive: true });
  const out = fs.mkdtempSync(path.join(parent, "planted-"));
  try {
    const { faults, sources } = await planted(drawn);
    const made = await scripts(root, out, tests, sources);
    const { file, judging } = await counted(root, made, tests, progress);
    const results = [];
    // What was red often for the time it took is tried first.
    const score = new Map(made.tests.map((script) => [script, { red: 1, tried: 4 }]));
    const rate = (script) => score.get(script).red / score.get(script).tried;
    for (const fault of faults) {
      if (stopped()) break;
      const room = (entry) => near(fault.fileName, file.get(entry.script));
      const rank = (entry) => ((entry.ms + 20) / rate(entry.script)) * (room(entry) ? 0.25 : 1);
      const files = judging(fault.id)
        .filter((entry) => room(entry) || entry.whole < LONG)
        .sort((a, b) => rank(a) - rank(b));
      const ms = files.reduce((sum, entry) => sum + entry.ms, 0);
      const order = { shim: made.shim, fault: fault.id, files };
      const answer = files.length === 0 ? {} : await trial(order, 30_000 + 12 * ms);
      if (stopped()) break;
      for (const { script } of files) {
        score.get(script).tried++;
        if (answer.red?.script !== script) continue;
        score.get(script).red++;
        break;
      }
      const late = answer === "late";
      results.push({
        ...fault,
        reached: files.length > 0,
        late,
        found: late || answer.red !== undefined,
        by: answer.red,
      });
      progress(`${results.length} of ${faults.length}`, results.at(-1));
    }
    return results;
  } finally {
    fs.rmSync(out, { recursive: true, force: true });
  }
}
