// The one build script: node build.mjs start | test | quick | mutants | build | bench | check
// It sets everything up by itself on a fresh clone (npm ci when packages are missing). Its parts: taskpane/build, tests/run.
import { spawnSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { address, BUILDING, options, portNumber, SERVING, Sentence } from "./taskpane/build/say.mjs";

const root = import.meta.dirname;
const dist = path.join(root, "dist");
const [command = "build", ...args] = process.argv.slice(2);

function run(program, words, settings = {}) {
  // On Windows npm and npx are scripts of the shell.
  const shell = process.platform === "win32";
  const done = spawnSync(program, words, { cwd: root, stdio: "inherit", shell, ...settings });
  if (done.error) throw done.error;
  return done.status ?? 1;
}

function install() {
  const lock = path.join(root, "node_modules", ".package-lock.json");
  const wanted = path.join(root, "package-lock.json");
  if (fs.existsSync(lock) && fs.statSync(lock).mtimeMs >= fs.statSync(wanted).mtimeMs - 1000) return;
  if (fs.existsSync(lock) && samePackages(lock, wanted)) return;
  console.log("Installing packages …");
  if (run("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"]) !== 0)
    throw new Sentence("npm ci failed: the package registry must be reachable, or node_modules must be there already.");
}

/** True when each package of the lock file is installed in its version. */
function samePackages(installed, wanted) {
  const read = (file) => JSON.parse(fs.readFileSync(file, "utf8")).packages ?? {};
  const there = read(installed);
  return Object.entries(read(wanted)).every(
    ([name, entry]) => name === "" || entry.optional || there[name]?.version === entry.version,
  );
}

/** Builds dist for an address, and puts it in place in one step. */
async function build(given, base) {
  const settings = {
    base,
    support: given["support-page"] && address("support-page", given["support-page"]),
    help: given["help-page"] && address("help-page", given["help-page"]),
    readable: given.readable,
    localOffice: given["local-office"],
  };
  const { buildPages, replaceFolder } = await import("./taskpane/build/pages.mjs");
  const { count, script } = await replaceFolder(dist, (out) => buildPages(out, settings));
  console.log(`Built dist for ${base}: ${count} worksheet functions, ${(script / 1024).toFixed(1)} kB gz.`);
}

const COMMANDS = {
  async start() {
    const given = options(args, SERVING);
    const port = given.port === undefined ? 3000 : portNumber(given.port);
    const base = given.base === undefined ? undefined : address("base", given.base);
    install();
    const { serve } = await import("./taskpane/build/serve.mjs");
    let pair;
    if (given.https) {
      const { certificate } = await import("./taskpane/build/certificate.mjs");
      const made = certificate(path.join(root, "node_modules", ".cache", "tablefeed", "https"));
      pair = made.pair;
      console.log(`${made.fresh ? "New certificate" : "Certificate"}: ${made.file}`);
    }
    // The manifest names the port, so over https it is this one or none. First the port: without it nothing is changed.
    const last = pair || given.port !== undefined ? port : port + 19;
    const served = await serve({ folder: dist, port, last, pair });
    try {
      await build(given, base ?? `https://localhost:${port}`);
    } catch (problem) {
      await served.close();
      throw problem;
    }
    console.log(`\nTablefeed desk: ${served.address}   (Ctrl+C stops it)`);
    if (pair) console.log("Excel: trust the certificate (this user, this PC), then side-load dist/manifest.xml.");
  },
  async build() {
    const given = options(args, BUILDING);
    const base = address("base", given.base ?? "https://localhost:3000");
    install();
    await build(given, base);
    const { writeGenerated } = await import("./functions/metadata.mjs");
    await writeGenerated();
  },
  async test() {
    install();
    const { suite } = await import("./tests/run/suite.mjs");
    process.exitCode = suite(root, args);
  },
  async quick() {
    install();
    const { quick } = await import("./tests/run/quick.mjs");
    process.exitCode = await quick(root, args);
  },
  async mutants() {
    install();
    const { mutants } = await import("./tests/run/mutants.mjs");
    process.exitCode = await mutants(root, args);
  },
  async bench() {
    install();
    process.exitCode = run("node", ["tests/bench/run.mjs", ...args]);
  },
  async check() {
    options(
      args.filter((word) => word !== "--write"),
      [],
    );
    install();
    const { lint, types } = await import("./tests/run/steps.mjs");
    const steps = [lint(...(args.includes("--write") ? ["--write"] : [])), types()];
    process.exitCode = steps.reduce((failed, [program, ...words]) => failed || run(program, words), 0);
  },
};

try {
  if (!Object.hasOwn(COMMANDS, command))
    throw new Sentence(`"${command}" is no command; there are ${Object.keys(COMMANDS).join(", ")}.`);
  await COMMANDS[command]();
} catch (problem) {
  console.error(problem instanceof Sentence ? problem.message : problem);
  process.exitCode = problem instanceof Sentence ? 2 : 1;
}
