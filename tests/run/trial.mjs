// One trial: the tests that are asked for, until the first red one. The order comes as JSON on standard input:
// `fault`, the planted fault that is live (none: hits are counted), `files`, each with its script and the places of its tests (none: all).
import fs from "node:fs";

const { fault, files, shim } = JSON.parse(fs.readFileSync(0, "utf8"));
const space = { activeMutant: fault };
globalThis.__stryker__ = space;
const counting = fault === undefined;
const { collected } = await import(shim);
const answer = { red: undefined, unfit: [], tests: [] };
/** Processor time: what else the machine does is not counted. */
const spent = (start) => {
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
};
const say = () => {
  fs.writeSync(3, JSON.stringify({ ...answer, hits: counting ? space.mutantCoverage : undefined }));
  process.exit(0);
};

for (const { script, places } of files) {
  try {
    await import(script);
  } catch (problem) {
    answer.red = { script, name: `does not load: ${problem.message}` };
    say();
  }
  const tests = collected();
  for (const place of places ?? tests.keys()) {
    const test = tests[place];
    const start = process.cpuUsage();
    if (counting) globalThis.countedTest = place;
    space.currentTestId = `${script}#${place}`;
    try {
      // A test that is no longer there was lost to the fault.
      if (test === undefined) throw new Error("lost");
      await test.run();
    } catch (problem) {
      answer.red = { script, name: `${test?.name}: ${problem.message}` };
      if (!counting) say();
      answer.unfit.push(place);
    }
    space.currentTestId = undefined;
    if (counting) answer.tests.push({ script, place, ms: spent(start) });
  }
}
say();
