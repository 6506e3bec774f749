// Tries the tests on each planted fault, until the first red one.
import fs from "node:fs";
import path from "node:path";
import { bench } from "./bench.mjs";
import { scripts } from "./plant.mjs";
import { counting, LONG } from "./reach.mjs";

/** Processor time [ms] that a trial may take beside four times what its tests take. */
const PATIENCE = 10_000;

/**
 * What the tests of one fault may take together [ms]: of those that take the longest for what they find, some are not asked. Too few
 * may be found, never too many.
 */
const MOST = 16_000;

const keyOf = ({ script, place }) => `${script}#${place}`;

/**
 * Trials with two threads. Most faults are woken and put to sleep in one that goes on: what it answers is believed when the red
 * test is green again without the fault. What lived there is tried again in a thread that has loaded nothing, and so is at once what
 * acts while a file loads: something may be remembered from a time when the fault slept. The many tests of other rooms are asked
 * once, where each does pass by the fault: too few may be found, never too many.
 */
function trials(shim, patience) {
  const warm = bench(shim);
  const cold = bench(shim);
  const alone = new Map();

  /** A test that is red by itself lives on what others before it left behind: it judges no fault. */
  async function fair(test) {
    const key = keyOf(test);
    if (!alone.has(key)) {
      await cold.renew();
      const answer = await cold.ask({ tests: [test] }, patience + 4 * test.ms);
      alone.set(key, answer !== "late" && answer.red === undefined && answer.broken === undefined);
    }
    return alone.get(key);
  }

  /** `late`, or `red` and `by`, the test that was; undefined when all were green: `twice`, in both threads. */
  async function judged(id, all, { atLoad, twice }) {
    let fresh = atLoad;
    let tests = all.filter((test) => alone.get(keyOf(test)) !== false);
    while (tests.length > 0) {
      if (fresh) await cold.renew();
      const order = {
        fault: id,
        tests: tests.map(({ script, place, passes }) => ({ script, place, passes: passes && !fresh })),
      };
      const ms = patience + 4 * tests.reduce((sum, test) => sum + test.ms, 0);
      const answer = await (fresh ? cold : warm).ask(order, ms);
      if (answer === "late") return { late: true };
      if (answer.broken !== undefined && fresh) return { red: answer.broken };
      const green = answer.red === undefined && answer.broken === undefined && !answer.stale;
      if (green && (fresh || !twice)) return;
      const test = tests[answer.at];
      if (green) fresh = true;
      else if (fresh) {
        if (await fair(test)) return { red: answer.red, by: test };
        tests = tests.slice(answer.at + 1);
      } else {
        if (answer.red !== undefined) {
          const again = await warm.ask(
            { tests: [{ ...order.tests[answer.at], passes: false }] },
            patience + 4 * test.ms,
          );
          if (again !== "late" && again.red === undefined && again.broken === undefined)
            return { red: answer.red, by: test };
        }
        await warm.renew();
        fresh = true;
      }
    }
  }

  return { judged, close: () => Promise.all([warm.close(), cold.close()]) };
}

/**
 * Tries each fault that was drawn of `sources`. Answers them with `found` (red, or not done in time), `late`, `by` (what was red) and
 * `reached` (some test runs through the place); fewer when `stopped` says so. `near` says whether a test file is of the same room
 * as a source: only where these live with a fault are others asked.
 */
export async function tried(root, { sources, drawn, tests, near, patience = PATIENCE }, progress, stopped) {
  const parent = path.join(root, "tests", ".out");
  fs.mkdirSync(parent, { recursive: true });
  const out = fs.mkdtempSync(path.join(parent, "planted-"));
  let counter;
  let trial;
  try {
    const { shim, judges } = await scripts(root, out, tests, sources);
    counter = bench(shim);
    trial = trials(shim, patience);
    const reach = counting(root, counter, path.join(parent, "reach"), progress);
    const isNear = ({ test }) => drawn.some(({ fileName }) => near(fileName, test));
    for (const judge of judges.filter(isNear)) await reach.count(judge, true);
    const results = [];
    // Tests of files that were red often for the time they took are tried first.
    const score = new Map(judges.map(({ script }) => [script, { red: 1, ms: 1000 }]));
    const ranked = (all) => {
      let left = MOST;
      return all
        .map((test) => ({ test, rank: ((test.ms + 5) * score.get(test.script).ms) / score.get(test.script).red }))
        .sort((a, b) => a.rank - b.rank)
        .map(({ test }) => test)
        .filter(({ ms }) => {
          if (ms > left) return false;
          left -= ms;
          return true;
        });
    };
    const ask = async (fault, all, twice) => {
      const chosen = ranked(all);
      const answer = await trial.judged(fault.id, chosen, { atLoad: reach.atLoad(fault.id), twice });
      for (const test of chosen) {
        const entry = score.get(test.script);
        if (answer?.by === test) {
          entry.red++;
          break;
        }
        entry.ms += test.ms;
      }
      return answer;
    };
    for (const fault of drawn) {
      if (stopped()) break;
      const room = ({ judge }) => near(fault.fileName, judge.test);
      let chosen = reach.tests(fault.id).filter(room);
      let reached = chosen.length;
      let answer = await ask(fault, chosen, true);
      if (answer === undefined) {
        for (const judge of judges) if (judge.files.has(fault.fileName)) await reach.count(judge, isNear(judge));
        const length = new Map();
        chosen = reach.tests(fault.id).filter((test) => !room(test));
        for (const { script, ms } of chosen) length.set(script, (length.get(script) ?? 0) + ms);
        chosen = chosen.filter(({ script }) => length.get(script) < LONG);
        reached += chosen.length;
        answer = await ask(fault, chosen, false);
      }
      if (stopped()) break;
      const { late = false, red } = answer ?? {};
      results.push({ ...fault, reached: reached > 0, late, found: answer !== undefined, by: red });
      progress(`${results.length} of ${drawn.length}`, results.at(-1));
    }
    return results;
  } finally {
    await Promise.all([counter?.close(), trial?.close()]);
    fs.rmSync(out, { recursive: true, force: true });
  }
}
