/** A posted program of 100,000 blocks, read and compared without a screen. */

import { ProgramCheck } from "../../src/program/check.ts";
import { long } from "../program/long.ts";

export function programBench() {
  const text = long(100_000);
  const start = performance.now();
  const reading = new ProgramCheck(text, []);
  const found = reading.findings();
  const value = performance.now() - start;
  const note = `${reading.shapes.rounds.length} circles and helices, ${found.length} findings`;
  return { name: "program of 100,000 blocks, read and compared", value, unit: "ms", note };
}
