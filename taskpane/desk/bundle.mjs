// Makes the desk's files: its script and styles, the reader of files, the worker that keeps it without a server, the two
// workbooks it begins with, and the list of all of these. Used by the build and by the tests.
import { createHash } from "node:crypto";
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";

/**
 * @param esbuild - the bundler
 * @param root - folder of the repository
 * @param dist - folder to write into; it is there
 * @param common - settings of the bundler that all scripts share
 * @returns which files came of it, as the bundler tells
 */
export async function bundleDesk({ esbuild, root, dist, common }) {
  const desk = (...names) => path.join(root, "taskpane", "desk", ...names);
  const shared = {
    ...common,
    bundle: true,
    absWorkingDir: root,
    target: "es2022",
    legalComments: "none",
    metafile: true,
  };
  const outputs = {};
  const build = async (settings) => {
    const { metafile } = await esbuild.build({ ...shared, ...settings });
    Object.assign(outputs, metafile.outputs);
  };
  await build({
    entryPoints: { desk: desk("main.ts") },
    outdir: dist,
    format: "esm",
    splitting: true,
    chunkNames: "desk/[name]-[hash]",
  });
  await build({
    entryPoints: { "desk-reader": desk("package", "worker.ts") },
    outdir: dist,
    format: "iife",
  });
  // The workbooks are made by the same code that plans on the screen, once, here.
  const maker = path.join(dist, "books.mjs");
  await esbuild.build({ ...shared, entryPoints: [desk("books.ts")], outfile: maker, format: "esm", platform: "node" });
  const books = await import(`${pathToFileURL(maker).href}?${Date.now()}`);
  fs.rmSync(maker);
  fs.writeFileSync(path.join(dist, "demo.xlsx"), books.demo());
  fs.writeFileSync(path.join(dist, "blank.xlsx"), books.blank());
  // What the script begins with is asked for at once, not when the script has been read.
  const [script] = Object.entries(outputs).find(([name]) => path.basename(name) === "desk.js");
  const first = outputs[script].imports.filter(({ kind }) => kind === "import-statement");
  const preloads = first.map(({ path: file }) => {
    const name = path.relative(dist, path.resolve(root, file)).replaceAll(path.sep, "/");
    return `\n    <link rel="modulepreload" href="${name}" />`;
  });
  const page = fs.readFileSync(path.join(root, "taskpane", "desk.html"), "utf8");
  const mark = '<link rel="modulepreload" href="desk.js" />';
  if (!page.includes(mark)) throw new Error("desk.html does not preload desk.js");
  fs.writeFileSync(path.join(dist, "desk.html"), page.replace(mark, mark + preloads.join("")));
  fs.copyFileSync(path.join(root, "taskpane", "desk.webmanifest"), path.join(dist, "desk.webmanifest"));
  fs.cpSync(path.join(root, "taskpane", "assets"), path.join(dist, "assets"), { recursive: true });

  const parts = fs.existsSync(path.join(dist, "desk")) ? fs.readdirSync(path.join(dist, "desk")) : [];
  const files = [
    "desk.html",
    "desk.js",
    "desk.css",
    "desk-reader.js",
    "desk.webmanifest",
    "demo.xlsx",
    "blank.xlsx",
    ...parts.filter((name) => name.endsWith(".js")).map((name) => `desk/${name}`),
    "assets/icon-64.png",
    "assets/icon-128.png",
    "assets/icon.svg",
  ];
  const digest = createHash("sha256");
  for (const name of files) digest.update(name).update(fs.readFileSync(path.join(dist, name)));
  await build({
    entryPoints: { "desk-offline": desk("keep", "offline-worker.ts") },
    outdir: dist,
    format: "iife",
    define: {
      ...shared.define,
      DESK_FILES: JSON.stringify(files),
      DESK_MARK: JSON.stringify(digest.digest("hex").slice(0, 16)),
    },
  });
  return { metafile: { outputs } };
}
