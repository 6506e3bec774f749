// Mutation tests: small faults are planted one by one in a copy of the tree, and each should turn a test red.
import { spawnSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { Sentence } from "../../taskpane/build/say.mjs";

/** Rules and arithmetic; what only shows or tests is not worth the hours. */
const WORTH = /^(?:src|functions)\/.*\.ts$/;
const NOT = /(?:^|\/)generated\/|\.d\.ts$|\.test\.ts$/;
const OUT = path.join("tests", ".out", "mutants");

function git(root, ...words) {
  const done = spawnSync("git", words, { cwd: root, encoding: "utf8" });
  if (done.error || done.status !== 0) throw new Sentence(`git ${words[0]}: ${done.error ?? done.stderr.trim()}`);
  return done.stdout.split("\n").filter(Boolean);
}

/** Files below the paths that were named, or those that differ from `base`. */
function chosen(root, named, base) {
  const worth = (file) => WORTH.test(file) && !NOT.test(file) && fs.existsSync(path.join(root, file));
  if (named.length > 0)
    return named.flatMap((name) => {
      const at = path.relative(root, path.resolve(root, name));
      if (!fs.existsSync(path.join(root, at))) throw new Sentence(`"${name}" is neither a file nor a folder.`);
      const files = fs.statSync(path.join(root, at)).isDirectory()
        ? fs.readdirSync(path.join(root, at), { recursive: true }).map((file) => path.join(at, file))
        : [at];
      const found = files.filter(worth);
      if (found.length === 0) throw new Sentence(`"${name}" holds no file of src or functions.`);
      return found;
    });
  const [since] = git(root, "merge-base", base, "HEAD");
  const changed = [
    ...git(root, "diff", "--name-only", "--diff-filter=d", since),
    ...git(root, "ls-files", "--others", "--exclude-standard"),
  ].filter(worth);
  if (changed.length === 0)
    throw new Sentence(
      `Nothing in src or functions differs from ${base}. Name files or folders: npm run mutants -- src/mill`,
    );
  return changed;
}

const share = (killed, all) => (all === 0 ? "  –  " : `${((100 * killed) / all).toFixed(1)} %`);

/** What the tests did to the mutants, file by file, and where one lived. */
function summary(root, results) {
  const files = new Map();
  for (const { fileName, status, ...mutant } of results) {
    const file = files.get(fileName) ?? { killed: 0, lived: [] };
    files.set(fileName, file);
    if (status === "Killed" || status === "Timeout") file.killed++;
    else if (status === "Survived" || status === "NoCoverage") file.lived.push({ status, ...mutant });
  }
  const lines = [];
  let [killed, all] = [0, 0];
  for (const [name, file] of [...files].sort()) {
    const total = file.killed + file.lived.length;
    killed += file.killed;
    all += total;
    lines.push(`${share(file.killed, total).padStart(7)}  ${file.killed} of ${total}  ${path.relative(root, name)}`);
    for (const { location, mutatorName, replacement, status } of file.lived)
      lines.push(
        `         line ${location.start.line}: ${mutatorName} → ${(replacement ?? "").replace(/\s+/g, " ").slice(0, 80)}${status === "NoCoverage" ? " (no test comes here)" : ""}`,
      );
  }
  return { lines, killed, all };
}

export async function mutants(root, args) {
  let given;
  try {
    given = parseArgs({ args, allowPositionals: true, options: { base: { type: "string", default: "main" } } });
  } catch (problem) {
    throw new Sentence(`${problem.message.split(". ")[0]}. Allowed: --base, and files or folders.`);
  }
  const files = chosen(root, given.positionals, given.values.base);
  console.log(`${files.length} ${files.length === 1 ? "file" : "files"}: ${files.join(", ")}`);
  const { Stryker } = await import("@stryker-mutator/core");
  const stryker = new Stryker({
    mutate: files,
    testRunner: "vitest",
    plugins: ["@stryker-mutator/vitest-runner"],
    vitest: { configFile: "tests/run/mutants.vitest.config.ts", related: true },
    // Words are for people to judge: only numbers, comparisons, conditions and calls are changed.
    mutator: { excludedMutations: ["StringLiteral"] },
    ignorePatterns: ["/dist", "/tests/.out", "/taskpane/pictures"],
    tempDirName: OUT,
    cleanTempDir: "always",
    reporters: ["progress"],
    logLevel: "warn",
    fileLogLevel: "off",
    concurrency: 2,
    allowEmpty: true,
    disableTypeChecks: false,
    timeoutMS: 10_000,
  });
  const { lines, killed, all } = summary(root, await stryker.runMutationTest());
  console.log(lines.join("\n"));
  console.log(`${killed} of ${all} planted faults found, ${share(killed, all)} (text is not changed)`);
  return 0;
}
