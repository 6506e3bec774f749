// Every test, the browser's included; the last line says "N passed, N failed".
import { spawnSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";

const PACKAGES = [
  ["chromium", "chromium", "the tests in a browser will fail"],
  ["soffice", "libreoffice-calc", "the tests with LibreOffice are skipped"],
];
const have = (file) => process.env.PATH.split(path.delimiter).some((dir) => fs.existsSync(path.join(dir, file)));

/** Debian packages that the tests use, installed where that is allowed. */
function systemPackages() {
  const missing = PACKAGES.filter(([file]) => !have(file)).map(([, name]) => name);
  if (missing.length === 0) return;
  if (have("apt-get") && process.getuid?.() === 0) {
    console.log(`Installing ${missing.join(" and ")} for the tests …`);
    const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
    spawnSync("apt-get", ["update", "-qq"], { env, stdio: "inherit" });
    spawnSync("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...missing], { env, stdio: "ignore" });
  }
  for (const [file, name, what] of PACKAGES)
    if (!have(file)) console.log(`${name} is not installed: ${what}. On Debian: sudo apt-get install ${name}`);
}

/** Passed, failed and skipped tests of a report. A file that could not be read, or an error outside any test, counts as one failed. */
export function count(report, status) {
  if (report === undefined) return { passed: 0, failed: 1, skipped: 0 };
  const { numPassedTests: passed, numFailedTests, numPendingTests, numTodoTests = 0, testResults } = report;
  const broken = testResults.filter((f) => f.status === "failed" && f.assertionResults.length === 0).length;
  const failed = numFailedTests + broken;
  const nothing = passed + failed === 0;
  return {
    passed,
    failed: failed === 0 && (status !== 0 || nothing) ? 1 : failed,
    skipped: numPendingTests + numTodoTests,
  };
}

/** Runs the tests; `args` go to vitest, e.g. a path or `--project unit`. Answers the exit code. */
export function suite(root, args) {
  systemPackages();
  const file = path.join(root, "tests", ".out", "report.json");
  fs.mkdirSync(path.dirname(file), { recursive: true });
  fs.rmSync(file, { force: true });
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${file}`];
  const words = ["--no-install", "vitest", "run", "-c", "tests/vitest.config.ts", ...reporters, ...args];
  const { status } = spawnSync("npx", words, { cwd: root, stdio: "inherit" });
  const report = fs.existsSync(file) ? JSON.parse(fs.readFileSync(file, "utf8")) : undefined;
  const { passed, failed, skipped } = count(report, status);
  if (skipped > 0) console.log(`${skipped} skipped`);
  console.log(`${passed} passed, ${failed} failed`);
  return failed > 0 ? 1 : 0;
}
