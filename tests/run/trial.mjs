// A thread that tries tests on planted faults, one order after the other: each is the tests that are asked for, in their order, until
// the first red one. A fault sleeps until its id is named; one that acts while a file loads needs a thread that has loaded nothing.
import { parentPort, workerData } from "node:worker_threads";

const space = {};
globalThis.__stryker__ = space;
const { collected } = await import(workerData.shim);

const loaded = new Map();
async function testsOf(file) {
  if (!loaded.has(file)) {
    await import(file);
    loaded.set(file, collected());
  }
  return loaded.get(file);
}

/** Processor time [ms]: what else the machine does is not counted. */
const spent = (start) => {
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
};

/** Runs one test that finds all memories empty. Answers what is wrong, if anything. */
async function run(test, place) {
  globalThis.tried = {};
  space.currentTestId = String(place);
  try {
    await test.run();
  } catch (problem) {
    return `${test.name}: ${problem.message}`;
  } finally {
    space.currentTestId = undefined;
  }
}

/** `tests`, each its script and place in it and whether it passed by the fault when hits were counted, with `fault` awake. */
async function judge({ fault, tests }) {
  space.activeMutant = fault;
  space.hitLimit = Number.POSITIVE_INFINITY;
  for (const [at, { script, place, passes }] of tests.entries()) {
    let test;
    try {
      test = (await testsOf(script))[place];
    } catch (problem) {
      return { at, red: `while it loads: ${problem.message}` };
    }
    // A test that is no longer there was lost to the fault.
    if (test === undefined) return { at, red: "lost" };
    space.hitCount = 0;
    const red = await run(test, place);
    if (red !== undefined) return { at, red };
    // Something was remembered from a time when the fault slept, and the way to it was not gone again.
    if (passes && space.hitCount === 0) return { at, stale: true };
  }
  return {};
}

/** All tests of `script` without a fault: the time of each, and the faults it passes by. */
async function count({ script }) {
  const counted = [];
  for (const [place, test] of (await testsOf(script)).entries()) {
    const start = process.cpuUsage();
    const red = await run(test, place);
    counted.push({ place, ms: spent(start), red });
  }
  const { static: atLoad = {}, perTest = {} } = space.mutantCoverage ?? {};
  for (const test of counted) test.hits = Object.keys(perTest[test.place] ?? {});
  return { counted, atLoad: Object.keys(atLoad) };
}

parentPort.on("message", async (order) => {
  try {
    parentPort.postMessage(await (order.script === undefined ? judge(order) : count(order)));
  } catch (problem) {
    parentPort.postMessage({ broken: String(problem?.stack ?? problem) });
  }
});
