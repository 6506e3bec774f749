/** What the last line of a run counts: a green line only where every test ran and passed. */
import { describe, expect, it } from "vitest";
// @ts-expect-error plain script without types
import { count } from "../run/suite.mjs";

const report = (passed: number, failed: number, pending = 0, files: unknown[] = []) => ({
  numPassedTests: passed,
  numFailedTests: failed,
  numPendingTests: pending,
  testResults: files,
});
const fine = { status: "passed", assertionResults: [{}] };
const broken = { status: "failed", assertionResults: [] };

describe("the count of a run (house)", () => {
  it.each([
    ["all passed", report(12, 0, 2, [fine]), 0, { passed: 12, failed: 0, skipped: 2 }],
    ["some failed", report(11, 1, 0, [fine]), 1, { passed: 11, failed: 1, skipped: 0 }],
    ["a file that does not load", report(11, 0, 0, [fine, broken]), 1, { passed: 11, failed: 1, skipped: 0 }],
    ["an error outside any test", report(12, 0, 0, [fine]), 1, { passed: 12, failed: 1, skipped: 0 }],
    ["no test at all", report(0, 0, 0, []), 0, { passed: 0, failed: 1, skipped: 0 }],
    ["no report", undefined, 1, { passed: 0, failed: 1, skipped: 0 }],
  ])("%s", (_, made, status, wanted) => expect(count(made, status)).toEqual(wanted));
});
