/** Worksheet functions: pitch and limits of size of threads. */
import { threadLength, threadSize } from "../src/thread/limits.ts";
import { lifted } from "./lift.ts";
import { units, word } from "./params.ts";
import { thread } from "./thread-param.ts";

// Limits come in the thread's own unit and convert here, so that 0.4565 in stays 0.4565.
const lead = lifted([thread, units], (t, u) => threadLength(t.lead, t, u));
/**
 * Lead of a thread, the pitch for a single start.
 * @customfunction
 * @param thread Designation, such as "1/2-13 UNC-2B", "M6" or "G1/4".
 * @param units "mm" or "in".
 * @returns Lead [mm or in].
 * @example
 * =CUT.THREADLEAD("M10", "mm") //=> 1.5
 */
export function THREADLEAD(thread: any[][], units: any[][]): any[][] {
  return lead(thread, units);
}

const size = lifted(
  [thread, word("element", ["major", "pitch", "minor"]), word("limit", ["basic", "min", "max"]), units],
  (t, element, limit, u) => threadLength(threadSize(t, element, limit), t, u),
);
/**
 * Limit of size of a thread, rounded as its standard rounds it. Limits the standard leaves open are #N/A.
 * @customfunction
 * @param thread Designation with its class, such as "1/2-13 UNC-2B" or "M6-6g"; without a class 2B or 6H.
 * @param element "major", "pitch" or "minor" diameter.
 * @param limit "basic", "min" or "max".
 * @param units "mm" or "in".
 * @returns Diameter [mm or in].
 * @example
 * =CUT.THREADSIZE("1/2-13 UNC-2B", "pitch", "max", "in") //=> 0.4565
 */
export function THREADSIZE(thread: any[][], element: any[][], limit: any[][], units: any[][]): any[][] {
  return size(thread, element, limit, units);
}
