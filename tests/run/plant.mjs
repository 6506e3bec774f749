// Plants faults in the sources and bundles the tests with them.
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { Instrumenter } from "@stryker-mutator/instrumenter";
import { build } from "esbuild";

/** Words are for people to judge: only numbers, comparisons, conditions and calls are changed. */
const SETTINGS = { excludedMutations: ["StringLiteral"], plugins: null, ignorers: [] };
const SILENT = { debug() {}, info() {}, warn() {}, isDebugEnabled: () => false };

/** All faults that can be planted in the files, and the sources that hold them, each asleep until its id is named. */
export async function planted(files) {
  const read = (name) => ({ name, mutate: true, content: fs.readFileSync(name, "utf8") });
  const made = await new Instrumenter(SILENT).instrument(files.map(read), SETTINGS);
  const sources = new Map(made.files.map(({ name, content }) => [name, content]));
  return { faults: made.mutants.filter(({ status }) => status === undefined), sources };
}

/**
 * Tests and sources as scripts in `out`: each test file one, what they share in others. Answers the script that gives `it` and
 * `expect`, and of each test file that comes to a source with a fault its name, its script and the files it is made of.
 */
export async function scripts(root, out, tests, sources) {
  const shim = path.join(import.meta.dirname, "tests.mjs");
  // While a fault is tried, each test finds the memories empty: what it would have asked for is asked for.
  const forget = `
{ const get = Cache.prototype.get;
  Cache.prototype.get = function (key, make) {
    if (this.tried !== globalThis.tried) this.kept.clear();
    this.tried = globalThis.tried;
    return get.call(this, key, make); }; }
`;
  const cache = path.join(root, "src", "cache.ts");
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
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints: [...tests, shim],
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
    metafile: true,
    plugins: [plugin],
  });
  const outputs = new Map(Object.entries(metafile.outputs).map(([name, made]) => [path.join(root, name), made]));
  const madeOf = (script, seen = new Set()) => {
    if (seen.has(script)) return [];
    seen.add(script);
    const { inputs, imports } = outputs.get(script);
    const own = Object.keys(inputs).map((name) => path.join(root, name));
    const others = imports.filter(({ external }) => !external);
    return [...own, ...others.flatMap((part) => madeOf(path.join(root, part.path), seen))];
  };
  const script = (file) =>
    [...outputs].find(([, { entryPoint }]) => entryPoint && path.join(root, entryPoint) === file)[0];
  const judges = tests.map((test) => ({ test, script: script(test), files: new Set(madeOf(script(test))) }));
  return {
    shim: script(shim),
    judges: judges.filter(({ files }) => [...sources.keys()].some((file) => files.has(file))),
  };
}
