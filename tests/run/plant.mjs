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

/** Runs a script for so many seconds of processor time at the most; where no shell counts them, ten times as long by the clock. */
function limited(script, seconds) {
  const settings = { stdio: ["pipe", "ignore", "pipe", "pipe"] };
  if (process.platform === "win32")
    return spawn(process.execPath, [script], { ...settings, timeout: 10_000 * seconds, killSignal: "SIGKILL" });
  const words = ["-c", `ulimit -t ${seconds}; exec "$0" "$@"`, process.execPath, script];
  return spawn("/bin/sh", words, settings);
}

/** What a trial answered; "late" when it did not within its processor time [ms], whatever else the machine does. */
function trial(order, ms) {
  return new Promise((resolve, reject) => {
    const child = limited(path.join(import.meta.dirname, "trial.mjs"), Math.ceil(ms / 1000));
    let [said, wrong] = ["", ""];
    child.stdio[3].on("data", (part) => {
      said += part;
    });
    child.stderr.on("data", (part) => {
      wrong += part;
    });
    child.on("close", (_, signal) => {
      if (signal === "SIGXCPU" || signal === "SIGKILL") resolve("late");
      else if (said !== "") resolve(JSON.parse(said));
      else if (order.fault !== undefined) resolve({ red: { script: "", name: wrong.slice(0, 200) } });
      else reject(new Error(wrong));
    });
    child.stdin.end(JSON.stringify(order));
  });
}

/** A file of tests of another room that takes longer (in processor time) is left out: it judges its own room. */
const LONG = 1500;

/** Once without a fault, a file at a time: which tests pass by each fault, which files while they load, and how long each takes. */
async function counted(root, made, files, isNear, progress) {
  const loads = new Map();
  const passes = new Map();
  const own = new Map();
  const add = (map, id, entries) => map.set(id, [...(map.get(id) ?? []), ...entries]);
  for (const script of made.tests) {
    const name = path.relative(root, files.get(script));
    const answer = await trial({ shim: made.shim, script, most: isNear(script) ? undefined : LONG }, 900_000);
    if (answer.long) continue;
    if (answer === "late" || answer.counted.length === 0) throw new Error(`${name} holds no test, or does not end.`);
    // A test that is red without any fault (one that reads the text of the code, say) judges none.
    const red = answer.counted.filter((test) => test.red !== undefined);
    for (const test of red) console.log(`left out, red without any fault: ${name}: ${test.red.slice(0, 200)}`);
    const tests = answer.counted
      .filter((test) => test.red === undefined)
      .map(({ place, ms }) => ({ script, place, ms }));
    own.set(script, tests);
    const { static: atLoad = {}, perTest = {} } = answer.hits ?? {};
    for (const id of Object.keys(atLoad)) add(loads, id, [script]);
    for (const test of tests) for (const id of Object.keys(perTest[test.place] ?? {})) add(passes, id, [test]);
    progress(`${name}: ${(tests.reduce((sum, { ms }) => sum + ms, 0) / 1000).toFixed(1)} s`);
  }
  /** What runs while a file loads concerns all its tests. */
  return (id) => {
    const whole = new Set(loads.get(id));
    return [
      ...[...whole].flatMap((script) => own.get(script)),
      ...(passes.get(id) ?? []).filter(({ script }) => !whole.has(script)),
    ];
  };
}

/**
 * Tries each fault. Answers them with `found` (red, or not done in time), `by` (what was red) and `reached` (some test runs
 * through the place); fewer when `stopped` says so. `near` says whether a test file is of the same room as a source.
 */
export async function tried(root, drawn, tests, near, progress, stopped) {
  const parent = path.join(root, "tests", ".out");
  fs.mkdirSync(parent, { recursive: true });
  const out = fs.mkdtempSync(path.join(parent, "planted-"));
  try {
    const { faults, sources } = await planted(drawn);
    const made = await scripts(root, out, tests, sources);
    const files = new Map(made.tests.map((script, i) => [script, tests[i]]));
    const isNear = (script) => faults.some(({ fileName }) => near(fileName, files.get(script)));
    const judging = await counted(root, made, files, isNear, progress);
    const results = [];
    // Tests of files that were red often for the time they took are tried first.
    const score = new Map(made.tests.map((script) => [script, { red: 1, ms: 1000 }]));
    const length = new Map();
    // A test that is red by itself lives on what others before it left behind: it judges no fault.
    const alone = new Map();
    const fair = async (test) => {
      const key = `${test.script}#${test.place}`;
      if (!alone.has(key)) {
        const answer = await trial({ shim: made.shim, fault: "none", tests: [test] }, 600_000);
        alone.set(key, answer !== "late" && answer.red === undefined);
      }
      return alone.get(key);
    };
    for (const fault of faults) {
      if (stopped()) break;
      const all = judging(fault.id);
      length.clear();
      for (const { script, ms } of all) length.set(script, (length.get(script) ?? 0) + ms);
      const room = ({ script }) => near(fault.fileName, files.get(script));
      const rank = (test) =>
        ((test.ms + 5) * score.get(test.script).ms) / score.get(test.script).red / (room(test) ? 4 : 1);
      let chosen = all
        .filter((test) => room(test) || length.get(test.script) < LONG)
        .map((test) => ({ test, rank: rank(test) }))
        .sort((a, b) => a.rank - b.rank)
        .map(({ test }) => test);
      const ms = chosen.reduce((sum, test) => sum + test.ms, 0);
      let answer = {};
      while (chosen.length > 0) {
        answer = await trial({ shim: made.shim, fault: fault.id, tests: chosen }, 10_000 + 4 * ms);
        const { red } = answer;
        if (stopped() || red?.place === undefined || (await fair(red))) break;
        chosen = chosen.filter((test) => test.script !== red.script || test.place !== red.place);
        answer = {};
      }
      if (stopped()) break;
      const late = answer === "late";
      for (const test of chosen) {
        const entry = score.get(test.script);
        if (answer.red?.script === test.script) {
          entry.red++;
          break;
        }
        entry.ms += test.ms;
      }
      results.push({
        ...fault,
        reached: chosen.length > 0,
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
