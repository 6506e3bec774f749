// Everything that is served: functions, pane, desk, manifest and notices, built into a folder of their own.
import fs from "node:fs";
import path from "node:path";
import { gzipSync } from "node:zlib";
import * as esbuild from "esbuild";
import { metadata } from "../../functions/metadata.mjs";
import { bundleDesk } from "../desk/bundle.mjs";
import { manifestFor } from "./manifest.mjs";
import { bundledPackages, notices } from "./notices.mjs";
import { OFFICE, serverNotes } from "./policy.mjs";

export const ROOT = path.resolve(import.meta.dirname, "../..");
const CACHE = path.join(ROOT, "node_modules", ".cache", "tablefeed");
const OFFICE_JS = "node_modules/@microsoft/office-js";

/** What every bundle has in common. */
const common = {
  bundle: true,
  target: "es2022",
  absWorkingDir: ROOT,
  logLevel: "warning",
  legalComments: "none",
  metafile: true,
  define: { "process.env.NODE_ENV": '"production"' },
};

/** The classic script that cells run. */
export const buildFunctions = (out, settings = {}) =>
  esbuild.build({
    ...common,
    minify: true,
    ...settings,
    entryPoints: ["functions/main.ts"],
    outfile: path.join(out, "functions.js"),
    format: "iife",
  });

const buildPane = (out, settings) =>
  esbuild.build({
    ...common,
    ...settings,
    entryPoints: { taskpane: "taskpane/main.ts" },
    outdir: out,
    format: "iife",
  });

/** The desk: its page, scripts and the workbooks it begins with. */
export const buildDesk = (out, settings = {}) =>
  bundleDesk({ esbuild, root: ROOT, dist: out, common: { ...common, minify: true, ...settings } });

/** The pane's page: with Office's script from Microsoft, or from beside it and nothing from anywhere else. */
export function panePage(localOffice) {
  const page = fs.readFileSync(path.join(ROOT, "taskpane", "index.html"), "utf8");
  const source = localOffice ? "office/office.js" : `${OFFICE}/lib/1/hosted/office.js`;
  const made = page.replace("<!-- office.js -->", `<script src="${source}"></script>`);
  return localOffice ? made.replace(` ${OFFICE}`, "") : made;
}

/** Office's script for Excel alone: other programs, debugging copies and types stay behind. */
function copyOffice(out) {
  const others = /(?:^|\/)(?:word|outlook|powerpoint|onenote|project|visio|access)[^/]*$|\.debug\.js$|\.d\.ts$/i;
  const from = path.join(ROOT, OFFICE_JS, "dist");
  fs.cpSync(from, path.join(out, "office"), {
    recursive: true,
    filter: (file) => file === from || !others.test(path.relative(from, file)),
  });
}

/**
 * Builds everything into the empty folder `out`.
 *
 * @param settings - base: where it will be served; support, help: pages of the shop; readable: not minified;
 *   localOffice: Office's script is served too
 */
export async function buildPages(out, { base, support, help, readable = false, localOffice = false }) {
  const { json, count } = await metadata(help);
  fs.writeFileSync(path.join(out, "functions.json"), json);
  const settings = { minify: !readable };
  const built = await Promise.all([buildFunctions(out, settings), buildPane(out, settings), buildDesk(out, settings)]);
  fs.writeFileSync(path.join(out, "taskpane.html"), panePage(localOffice));
  fs.copyFileSync(path.join(ROOT, "taskpane", "pane.css"), path.join(out, "pane.css"));
  fs.cpSync(path.join(ROOT, "taskpane", "assets"), path.join(out, "assets"), { recursive: true });
  if (localOffice) copyOffice(out);
  fs.writeFileSync(
    path.join(out, "SERVER.txt"),
    serverNotes((name) => fs.readFileSync(path.join(out, name), "utf8")),
  );
  const { version } = JSON.parse(fs.readFileSync(path.join(ROOT, "package.json"), "utf8"));
  const template = fs.readFileSync(path.join(ROOT, "manifest.xml"), "utf8");
  fs.writeFileSync(path.join(out, "manifest.xml"), manifestFor(template, { base, version, support, help }));
  const packages = bundledPackages(built.map((b) => b.metafile));
  fs.writeFileSync(path.join(out, "NOTICES.txt"), notices(ROOT, localOffice ? [...packages, OFFICE_JS] : packages));
  const script = gzipSync(fs.readFileSync(path.join(out, "functions.js")), { level: 9 }).length;
  return { count, script, packages };
}

/** Does it and says true, or false for the errors that are expected. */
function step(act, expected) {
  try {
    act();
    return true;
  } catch (problem) {
    if (!expected.includes(problem.code)) throw problem;
    return false;
  }
}

/**
 * Lets `make` fill a new folder, then puts it in the place of `folder` in one step. Whoever reads from `folder`
 * meanwhile gets the old files or the new ones, never half of each; when `make` fails, nothing has changed.
 * The new folder grows in `cache`, which has to lie on the same disk.
 */
export async function replaceFolder(folder, make, cache = CACHE) {
  fs.mkdirSync(cache, { recursive: true });
  const work = fs.mkdtempSync(path.join(cache, "build-"));
  try {
    const fresh = path.join(work, "new");
    fs.mkdirSync(fresh);
    const answer = await make(fresh);
    // Another build may move the folder away, or put its own there, between two steps; then ours takes its turn again.
    for (let turn = 0; ; turn++) {
      const old = path.join(work, `old-${turn}`);
      const moved = step(() => fs.renameSync(folder, old), ["ENOENT"]);
      try {
        if (step(() => fs.renameSync(fresh, folder), turn < 20 ? ["ENOTEMPTY", "EEXIST", "EPERM"] : [])) return answer;
      } catch (problem) {
        if (moved && !fs.existsSync(folder)) fs.renameSync(old, folder);
        throw problem;
      }
    }
  } finally {
    fs.rmSync(work, { recursive: true, force: true });
  }
}
