// One trial: the tests that are asked for, in their order, until the first red one. What is wanted comes as JSON on standard input:
// `fault`, the planted fault that is live, and `tests`, each its script and place in it; or, to count hits without a fault, `script`
// alone and the milliseconds after which it is given up. The answer goes to the fourth channel.
import fs from "node:fs";

const { fault, tests, script, most, shim } = JSON.parse(fs.readFileSync(0, "utf8"));
const space = { activeMutant: fault };
globalThis.__stryker__ = space;
const { collected } = await import(shim);

function answer(found) {
  fs.writeSync(3, JSON.stringify(found));
  process.exit(0);
}

/** Processor time: what else the machine does is not counted. */
const spent = (start) => {
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
};

const loaded = new Map();
async function testsOf(file) {
  if (!loaded.has(file)) {
    await import(file);
    loaded.set(file, collected());
  }
  return loaded.get(file);
}

if (fault !== undefined) {
  for (const { script: file, place } of tests) {
    let test;
    try {
      test = (await testsOf(file))[place];
      // A test that is no longer there was lost to the fault.
      if (test === undefined) throw new Error("lost");
      await test.run();
    } catch (problem) {
      answer({ red: { script: file, place, name: `${test?.name ?? "while it loads"}: ${problem.message}` } });
    }
  }
  answer({});
} else {
  const counted = [];
  const all = await testsOf(script);
  const began = process.cpuUsage();
  for (const [place, test] of all.entries()) {
    globalThis.countedTest = place;
    space.currentTestId = String(place);
    const start = process.cpuUsage();
    let red;
    try {
      await test.run();
    } catch (problem) {
      red = `${test.name}: ${problem.message}`;
    }
    space.currentTestId = undefined;
    counted.push({ place, ms: spent(start), red });
    if (most !== undefined && spent(began) > most) answer({ long: true });
  }
  answer({ counted, hits: space.mutantCoverage });
}
