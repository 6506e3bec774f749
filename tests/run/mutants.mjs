// Mutation tests: small faults are planted one by one in a copy of the sources, and each should turn a test red.
import { spawnSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { Sentence } from "../../taskpane/build/say.mjs";
import { draw, wilson } from "./draw.mjs";

/** Rules and arithmetic; what only shows or tests is not worth the hours. */
const WORTH = /^(?:src|functions)\/.*\.ts$/;
const NOT = /(?:^|\/)generated\/|\.d\.ts$|\.test\.ts$/;
/** Tests of the pages, of the tree, and of how long something takes say nothing of a planted fault. */
const NO_JUDGES = /^tests\/(?:browser|bench|house|host|desk|pane|\.out)\/|^tests\/reading\.test/;

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

const share = (found, all) => (all === 0 ? "  –  " : `${((100 * found) / all).toFixed(1)} %`);

/** A fault in one line. */
const told = ({ location: { start }, mutatorName, replacement, reached }) =>
  `line ${start.line + 1}:${start.column + 1}: ${mutatorName} → ${replacement.replace(/\s+/g, " ").slice(0, 80)}${reached ? "" : " (no test comes here)"}`;

/** What the tests did to the faults, file by file, and where one lived. */
function summary(root, results) {
  const files = new Map();
  for (const fault of results) files.set(fault.fileName, [...(files.get(fault.fileName) ?? []), fault]);
  return [...files].sort().flatMap(([name, faults]) => {
    const lived = faults
      .filter(({ found }) => !found)
      .sort(({ location: { start: a } }, { location: { start: b } }) => a.line - b.line || a.column - b.column);
    const found = faults.length - lived.length;
    const line = `${share(found, faults.length).padStart(7)}  ${found} of ${faults.length}  ${path.relative(root, name)}`;
    return [line, ...lived.map((fault) => `         ${told(fault)}`)];
  });
}

/** What a row of the table becomes is one matter: its cells, its operation, its plan, what is found. */
const ROWS = ["table", "operations", "plan", "findings"];

/** True for the tests of the room that a source lies in: src/mill/arc.ts is judged first by tests/mill, src/time.ts by tests/time.test.ts. */
function near(root) {
  const room = (file, top) => path.relative(path.join(root, top), file).split(/[/.]/)[0];
  return (source, test) => {
    const [made, judged] = [room(source, "src"), room(test, "tests")];
    // What the comments of formulas promise is tried on all of them in one file.
    return made === judged || judged === "refusals" || (ROWS.includes(made) && ROWS.includes(judged));
  };
}

function judges(root) {
  return fs
    .readdirSync(path.join(root, "tests"), { recursive: true })
    .map((file) => path.join("tests", file))
    .filter((file) => file.endsWith(".test.ts") && !NO_JUDGES.test(file.replaceAll(path.sep, "/")))
    .map((file) => path.join(root, file))
    .sort();
}

function wholeNumber(option, text, least) {
  if (!/^\d{1,9}$/.test(text) || Number(text) < least)
    throw new Sentence(`--${option} is "${text}"; a whole number of ${least} or more is wanted.`);
  return Number(text);
}

export async function mutants(root, args) {
  let given;
  try {
    const text = (more) => ({ type: "string", ...more });
    const options = {
      base: text({ default: "main" }),
      sample: text(),
      seed: text({ default: "1" }),
      near: { type: "boolean" },
    };
    given = parseArgs({ args, allowPositionals: true, options });
  } catch (problem) {
    throw new Sentence(
      `${problem.message.split(". ")[0]}. Allowed: --base, --sample, --seed, --near, and files or folders.`,
    );
  }
  const { base, sample, seed } = given.values;
  const size = sample === undefined ? Number.POSITIVE_INFINITY : wholeNumber("sample", sample, 1);
  const start = wholeNumber("seed", seed, 0);
  const names = given.positionals;
  const groups =
    names.length > 0
      ? names.map((name) => [name, chosen(root, [name])])
      : [[`what differs from ${base}`, chosen(root, [], base)]];
  const { planted } = await import("./plant.mjs");
  const { tried } = await import("./judge.mjs");
  const { faults: known, sources } = await planted([
    ...new Set(groups.flatMap(([, files]) => files.map((file) => path.join(root, file)))),
  ]);
  const drawn = [];
  for (const [name, files] of groups) {
    const own = new Set(files.map((file) => path.join(root, file)));
    const all = known.filter(({ fileName }) => own.has(fileName));
    const faults = draw(all, size, start);
    drawn.push({ name, all: all.length, faults });
    console.log(
      `${name}: ${faults.length} of ${all.length} faults${faults.length < all.length ? `, seed ${start}` : ""}`,
    );
  }
  const progress = (text, fault) => {
    if (fault?.found === false) console.error(`${path.relative(root, fault.fileName)} ${told(fault)}`);
    else if (process.stderr.isTTY) process.stderr.write(`\r\x1b[K${text}\r`);
  };
  // In turn, one of each folder: a run that is ended early (Ctrl+C) has tried as many of one as of the other.
  const most = Math.max(...drawn.map(({ faults }) => faults.length));
  const order = Array.from({ length: most }, (_, i) =>
    drawn.flatMap((group) => (group.faults[i] === undefined ? [] : [{ group, fault: group.faults[i] }])),
  ).flat();
  let stopped = false;
  process.once("SIGINT", () => {
    stopped = true;
  });
  const faults = order.map(({ fault }) => fault);
  const isNear = near(root);
  const tests = judges(root).filter(
    (test) => !given.values.near || faults.some(({ fileName }) => isNear(fileName, test)),
  );
  const results = await tried(root, { sources, drawn: faults, tests, near: isNear }, progress, () => stopped);
  for (const drawing of drawn) {
    const { name, all } = drawing;
    const own = results.filter((_, i) => order[i].group === drawing);
    if (own.length === 0) continue;
    const found = own.filter((fault) => fault.found).length;
    const late = own.filter((fault) => fault.late).length;
    console.log(summary(root, own).join("\n"));
    const [low, high] = wilson(found, own.length).map((end) => (100 * end).toFixed(1));
    console.log(
      `${name}: ${found} of ${own.length} planted faults found${late > 0 ? ` (${late} without an end)` : ""}, ${share(found, own.length)}` +
        (own.length < all ? `; of all ${all} between ${low} and ${high} % (95 %)` : ""),
    );
  }
  return 0;
}
