// Stands in for the test runner where planted faults are tried: tests are collected, and run one after the other.
import { expect } from "vitest";

const tests = [];

/** What was collected since it was asked last. */
export const collected = () => tests.splice(0);

const rows = (table, fn) => table.map((row) => () => (Array.isArray(row) ? fn(...row) : fn(row)));
const body = (args) => args.find((arg) => typeof arg === "function");

export function describe(_name, ...args) {
  body(args)();
}
describe.each =
  (table) =>
  (_name, ...args) => {
    for (const run of rows(table, body(args))) run();
  };

export function it(name, ...args) {
  tests.push({ name, run: body(args) });
}
it.each =
  (table) =>
  (name, ...args) => {
    for (const run of rows(table, body(args))) tests.push({ name, run });
  };

export { expect };
