/** Limits of size of any thread, in its own unit and as its standard prints them. */
import { TradeError } from "../errors.ts";
import type { Units } from "../units.ts";
import { metricLimits } from "./metric.ts";
import { pipeLimits } from "./pipe.ts";
import type { Thread, ThreadElement, ThreadLimit, ThreadLimits } from "./types.ts";
import { unifiedLimits } from "./unified.ts";

const RULES: Readonly<Record<Thread["standard"], (thread: Thread) => ThreadLimits>> = {
  unified: unifiedLimits,
  metric: metricLimits,
  pipe: pipeLimits,
};

/** One entry per thread that is in use; goes with it. */
const cache = new WeakMap<Thread, ThreadLimits>();

/**
 * All limits of a thread, open ones as the code that says why.
 *
 *   major, pitch, minor × basic, min, max
 *
 * @param thread - as parseThread gives it [-]
 * @returns limits in the thread's own unit [mm or in]
 * @throws nothing: parseThread has checked the thread
 * @source ASMEB11 ISO965 ISO228
 * @example
 * threadLimits({ standard: "metric", major: 6, pitch: 1, threadClass: "6H", kind: "internal" }).pitch.min //=> 5.35
 */
export function threadLimits(thread: Thread): ThreadLimits {
  let limits = cache.get(thread);
  if (limits === undefined) {
    limits = RULES[thread.standard](thread);
    cache.set(thread, limits);
  }
  return limits;
}

/**
 * One limit of a thread, rounded as its standard rounds it.
 *
 *   basic size, smallest or largest of the major, pitch or minor diameter
 *
 * @param thread - as parseThread gives it [-]
 * @param element - "major", "pitch" or "minor" [-]
 * @param limit - "basic", "min" or "max" [-]
 * @param parameter - name of the argument for errors [-]
 * @returns the diameter in the thread's own unit [mm or in]
 * @throws TradeError "unknown" when the standard leaves the limit open or has no such tolerance
 * @source ASMEB11 ISO965 ISO228
 * @example
 * threadSize({ standard: "unified", size: "1/2", major: 0.5, tpi: 13, series: "UNC", threadClass: "2B", kind: "internal" }, "pitch", "max") //=> 0.4565
 * threadSize({ standard: "metric", major: 6, pitch: 1, threadClass: "6H", kind: "internal" }, "minor", "max") //=> 5.153
 */
export function threadSize(thread: Thread, element: ThreadElement, limit: ThreadLimit, parameter = "limit"): number {
  const value = threadLimits(thread)[element][limit];
  if (typeof value === "number") return value;
  throw new TradeError("unknown", parameter, `${element} ${limit}`, value);
}

/**
 * A length of a thread in the unit that is wanted; untouched when that is the thread's own, so that 0.4565 in stays 0.4565.
 *
 *   1 in = 25.4 mm
 *
 * @param value - length in the thread's own unit [mm or in], scalar
 * @param thread - whose length it is [-]
 * @param units - unit wanted, "mm" or "in" [-]
 * @returns the length [mm or in]
 * @throws nothing
 * @source SP811
 * @example
 * threadLength(0.4565, { native: "in" }, "mm") //=> 11.5951
 */
export function threadLength(value: number, thread: Thread, units: Units): number {
  if (thread.native === units) return value;
  return units === "mm" ? value * 25.4 : value / 25.4;
}
