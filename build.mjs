// The one build script: node build.mjs start | test | build | bench | check | clean
// It sets everything up by itself on a fresh clone (npm ci when packages are missing).
import { spawnSync } from "node:child_process";
import fs from "node:fs";
import http from "node:http";
import https from "node:https";
import path from "node:path";
import { gzipSync } from "node:zlib";
import { bundleDesk, DESK_POLICY } from "./taskpane/desk/bundle.mjs";

const root = import.meta.dirname;
const dist = path.join(root, "dist");
const [command = "build", ...flags] = process.argv.slice(2);
const option = (name, otherwise) => {
  const at = flags.indexOf(`--${name}`);
  return at < 0 ? otherwise : flags[at + 1];
};

function run(program, args, settings = {}) {
  const done = spawnSync(program, args, { cwd: root, stdio: "inherit", ...settings });
  if (done.error) throw done.error;
  return done.status ?? 1;
}

function install() {
  const lock = path.join(root, "node_modules", ".package-lock.json");
  const wanted = path.join(root, "package-lock.json");
  if (fs.existsSync(lock) && fs.statSync(lock).mtimeMs >= fs.statSync(wanted).mtimeMs - 1000) return;
  if (fs.existsSync(lock) && samePackages(lock, wanted)) return;
  console.log("Installing packages …");
  if (run("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"]) !== 0) {
    console.error("npm ci failed: the package registry must be reachable, or node_modules must be there already.");
    process.exit(1);
  }
}

/** True when each package of the lock file is installed in its version. */
function samePackages(installed, wanted) {
  const read = (file) => JSON.parse(fs.readFileSync(file, "utf8")).packages ?? {};
  const there = read(installed);
  return Object.entries(read(wanted)).every(
    ([name, entry]) => name === "" || entry.optional || there[name]?.version === entry.version,
  );
}

/** Debian packages the tests use: the browser must be there, the office suite is used when it is. */
function systemPackages() {
  const have = (file) => process.env.PATH.split(":").some((dir) => fs.existsSync(path.join(dir, file)));
  const missing = [];
  if (!have("chromium")) missing.push("chromium");
  if (!have("soffice")) missing.push("libreoffice-calc");
  if (missing.length === 0) return;
  const may = have("apt-get") && process.getuid?.() === 0;
  if (may) {
    console.log(`Installing ${missing.join(" and ")} for the tests …`);
    const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
    run("apt-get", ["update", "-qq"], { env });
    run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...missing], { env, stdio: "ignore" });
  }
  for (const [file, name] of [
    ["chromium", "chromium"],
    ["soffice", "libreoffice-calc"],
  ]) {
    if (!have(file))
      console.log(
        `${name} is not installed: its tests ${file === "chromium" ? "will fail" : "are skipped"}. On Debian: sudo apt-get install ${name}`,
      );
  }
}

/** functions.json and REFERENCE.md from the doc comments; throws when a declaration would be lost. */
async function metadata() {
  const { default: generator } = await import("custom-functions-metadata");
  const { referencePage } = await import("./functions/reference.mjs");
  const folder = path.join(root, "functions");
  const files = fs
    .readdirSync(folder)
    .filter((f) => f.endsWith(".ts") && fs.readFileSync(path.join(folder, f), "utf8").includes("@customfunction"))
    .sort()
    .map((f) => path.join(folder, f));
  const made = await generator.generateCustomFunctionsMetadata(files, false);
  if (made.errors.length > 0) throw new Error(`worksheet function metadata: ${made.errors.join("; ")}`);
  const described = JSON.parse(made.metadataJson);
  const declared = files.flatMap((f) =>
    [...fs.readFileSync(f, "utf8").matchAll(/^export function ([A-Z][A-Z0-9.]*)\(/gm)].map((m) => m[1]),
  );
  const lost = declared.filter((name) => !described.functions.some((f) => f.id === name));
  if (lost.length > 0) throw new Error(`these worksheet functions have no metadata: ${lost.join(", ")}`);
  described.functions.sort((a, b) => (a.id < b.id ? -1 : 1));
  return { json: `${JSON.stringify(described, null, 1)}\n`, reference: referencePage(files, described) };
}

async function build() {
  const base = (option("base", "https://localhost:3000") ?? "").replace(/\/+$/, "");
  if (!/^https:\/\/[^\s"<>]+$/.test(base))
    throw new Error(`--base is "${base}"; an https address is wanted, e.g. https://tools.example.org/tablefeed`);
  const esbuild = await import("esbuild");
  fs.rmSync(dist, { recursive: true, force: true });
  fs.mkdirSync(dist, { recursive: true });
  const { json, reference } = await metadata();
  fs.mkdirSync(path.join(root, "functions", "generated"), { recursive: true });
  fs.writeFileSync(path.join(root, "functions", "generated", "functions.json"), json);
  fs.writeFileSync(path.join(root, "functions", "generated", "REFERENCE.md"), reference);
  fs.writeFileSync(path.join(dist, "functions.json"), json);

  const common = {
    bundle: true,
    minify: !flags.includes("--readable"),
    target: "es2022",
    absWorkingDir: root,
    logLevel: "warning",
    legalComments: "none",
    define: { "process.env.NODE_ENV": '"production"' },
  };
  await esbuild.build({
    ...common,
    entryPoints: ["functions/main.ts"],
    outfile: "dist/functions.js",
    format: "iife",
    // What only the pane shows of a row (numbers with their formulas, its drawing) stays out of the script that cells run.
    dropLabels: ["STEPS"],
  });

  const page = (name) => fs.readFileSync(path.join(root, "taskpane", name), "utf8");
  if (fs.existsSync(path.join(root, "taskpane", "main.ts"))) {
    await esbuild.build({ ...common, entryPoints: { taskpane: "taskpane/main.ts" }, outdir: "dist", format: "iife" });
    const local = flags.includes("--local-office");
    const office = local ? "office/office.js" : "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";
    if (local)
      fs.cpSync(path.join(root, "node_modules/@microsoft/office-js/dist"), path.join(dist, "office"), {
        recursive: true,
      });
    fs.writeFileSync(
      path.join(dist, "taskpane.html"),
      page("index.html").replace("<!-- office.js -->", `<script src="${office}"></script>`),
    );
    fs.cpSync(path.join(root, "taskpane", "assets"), path.join(dist, "assets"), { recursive: true });
    fs.copyFileSync(path.join(root, "taskpane", "pane.css"), path.join(dist, "pane.css"));
  }
  if (fs.existsSync(path.join(root, "taskpane", "desk", "main.ts"))) {
    await bundleDesk({ esbuild, root, dist, common });
  }
  const manifest = path.join(root, "manifest.xml");
  if (fs.existsSync(manifest)) {
    fs.writeFileSync(
      path.join(dist, "manifest.xml"),
      fs.readFileSync(manifest, "utf8").replaceAll("https://localhost:3000", base),
    );
  }
  const script = fs.readFileSync(path.join(dist, "functions.js"));
  console.log(
    `Built dist: functions.js ${(gzipSync(script, { level: 9 }).length / 1024).toFixed(1)} kB gz, ${JSON.parse(json).functions.length} worksheet functions.`,
  );
}

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
  ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  ".xml": "application/xml",
  ".png": "image/png",
  ".svg": "image/svg+xml",
};

/** Static files of dist on this machine only; the desk is the first page. */
function serve(port) {
  const answer = (request, response) => {
    const name = decodeURIComponent(new URL(request.url, "http://localhost").pathname);
    const file = path.join(dist, name === "/" ? "desk.html" : name);
    if (!file.startsWith(dist + path.sep) || !fs.existsSync(file) || fs.statSync(file).isDirectory()) {
      response.writeHead(404, { "content-type": "text/plain" }).end("not found");
      return;
    }
    const headers = {
      "content-type": TYPES[path.extname(file)] ?? "application/octet-stream",
      "cache-control": "no-cache",
      "x-content-type-options": "nosniff",
    };
    if (!file.endsWith("taskpane.html")) headers["content-security-policy"] = DESK_POLICY;
    response.writeHead(200, headers);
    fs.createReadStream(file).pipe(response);
  };
  const secure = flags.includes("--https");
  const server = secure ? https.createServer(certificate(), answer) : http.createServer(answer);
  server.on("error", (problem) => {
    if (problem.code !== "EADDRINUSE" || port > 3019 || secure) throw problem;
    console.log(`Port ${port} is taken, trying ${port + 1} …`);
    serve(port + 1);
  });
  server.listen(port, "127.0.0.1", () => {
    const address = `${secure ? "https" : "http"}://localhost:${port}/`;
    console.log(`\nTablefeed desk: ${address}   (Ctrl+C stops it)`);
    if (secure)
      console.log(`Excel: side-load dist/manifest.xml; the browser must trust the certificate of ${address} first.`);
  });
}

/** A certificate for this machine, made by openssl and kept beside the packages; Excel loads https only. */
function certificate() {
  const folder = path.join(root, "node_modules", ".cache", "tablefeed");
  const [key, cert] = ["key.pem", "cert.pem"].map((f) => path.join(folder, f));
  if (!fs.existsSync(cert)) {
    fs.mkdirSync(folder, { recursive: true });
    const status = run(
      "openssl",
      [
        "req",
        "-x509",
        "-newkey",
        "rsa:2048",
        "-nodes",
        "-days",
        "365",
        "-subj",
        "/CN=localhost",
        "-addext",
        "subjectAltName=DNS:localhost,IP:127.0.0.1",
        "-keyout",
        key,
        "-out",
        cert,
      ],
      { stdio: "ignore" },
    );
    if (status !== 0)
      throw new Error("openssl could not make a certificate; serve dist over https with a certificate of your own");
  }
  return { key: fs.readFileSync(key), cert: fs.readFileSync(cert) };
}

async function test() {
  systemPackages();
  await build();
  const report = path.join(root, "tests", ".out", "report.json");
  fs.mkdirSync(path.dirname(report), { recursive: true });
  fs.rmSync(report, { force: true });
  const status = run("npx", [
    "vitest",
    "run",
    "-c",
    "tests/vitest.config.ts",
    "--reporter=default",
    "--reporter=json",
    `--outputFile.json=${report}`,
    ...flags,
  ]);
  if (!fs.existsSync(report)) process.exit(status || 1);
  const { numPassedTests, numFailedTests, numPendingTests, testResults } = JSON.parse(fs.readFileSync(report, "utf8"));
  const broken = testResults.filter((f) => f.status === "failed" && f.assertionResults.length === 0).length;
  const failed = numFailedTests + broken;
  console.log(`${numPassedTests} passed, ${failed} failed${numPendingTests ? `, ${numPendingTests} skipped` : ""}`);
  process.exit(status !== 0 || failed > 0 ? 1 : 0);
}

install();
if (command === "start") {
  await build();
  serve(Number(option("port", "3000")));
} else if (command === "test") await test();
else if (command === "build") await build();
else if (command === "bench") {
  await build();
  process.exit(run("node", ["tests/bench/run.mjs", ...flags]));
} else if (command === "check") {
  const lint = run("npx", [
    "biome",
    "check",
    "--config-path=.biome.json",
    ...(flags.includes("--write") ? ["--write"] : []),
    ".",
  ]);
  process.exit(lint || run("npx", ["tsc", "-p", "."]));
} else {
  console.error(`command is "${command}"; start, test, build, bench or check is allowed`);
  process.exit(2);
}
