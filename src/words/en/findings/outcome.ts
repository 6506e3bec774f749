/** Sentences about what comes out: size, time, money. */
import type { Say } from "../../say.ts";
import { findingsOf } from "../../types.ts";
import { sizes } from "../sizes.ts";

/** A wear value smaller than this is not worth typing [mm]. */
const NO_WEAR = 0.002;
/** A wear value with its sign in words. */
const wear = (value: number, say: Say) =>
  value === 0
    ? say.value(0)
    : `${value > 0 ? "+" : "−"}${say.value(Math.abs(value))} (the path ${value > 0 ? "away from" : "into"} the wall)`;
const STIFFER = "a spring pass, more passes, shorter stick-out or a stiffer tool";

export const outcome = findingsOf({
  // size
  "no-size-tolerance": (f, say) => [
    `Size tolerance is blank: bending of ${say.value(f.error)} on the size is shown but not judged`,
    "type the allowed error of the size",
  ],
  "size-out": (f, say) => [
    `${sizes[f.of]} comes out between ${say.value(f.least)} and ${say.value(f.most)}; ${say.value(f.low)} to ${say.value(f.high)} is allowed${f.scrap ? ", and what is cut away cannot be put back" : ": no wear value reaches that"}`,
    f.scrap && f.start !== null ? `start with wear value ${wear(f.start, say)}` : STIFFER,
  ],
  "size-may-be-out": (f, say) => [
    `${sizes[f.of]} comes out between ${say.value(f.least)} and ${say.value(f.most)}${f.typed ? " at this wear value" : ""}; ${say.value(f.low)} to ${say.value(f.high)} is allowed`,
    `start with wear value ${wear(f.start, say)} and gauge the first part; or ${STIFFER}`,
  ],
  "gauge-first": (f, say) => [
    f.start === null || f.typed || Math.abs(f.start) < NO_WEAR
      ? `gauge the first part: bending moves the ${sizes[f.of]} by up to ${say.value(f.value)} from its middle`
      : `gauge the first part, start with wear value ${wear(f.start, say)}: bending moves the ${sizes[f.of]} by up to ${say.value(f.value)}`,
    "type the measured size under Measured",
  ],
  "size-scatter": (f, say) => [
    `the ${sizes[f.of]} changes from part to part by about ${say.value(f.value)}; ${say.value(f.limit)} is left for it, and no wear value takes it away`,
    `${STIFFER}, or a truer holder`,
  ],
  "measured-out": (f, say) => [
    `measured ${say.value(f.value)} is outside its limit ${say.value(f.limit)}${f.scrap ? ": the part is scrap" : ""}`,
    f.scrap
      ? `add ${wear(f.change, say)} to the wear value before the next part`
      : `add ${wear(f.change, say)} to the wear value and cut again`,
  ],
  "wear-change": (f, say) => [
    `measured ${say.value(f.measured)}, wanted ${say.value(f.wanted)}: add ${say.value(f.change)} to the radius wear value${f.becomes === undefined ? "" : `, which makes it ${say.value(f.becomes)}`}`,
    "write down what was changed; gauge the next part",
  ],
  // time and money
  "no-time": () => ["the time of the row is beyond any number that means something", "check its sizes"],
  "no-cost": () => ["the cost is beyond any number that means something", "check Rate, Setup and Price"],
  "acceleration-time": (f) => [
    `acceleration costs ${f.more.toFixed(1)} s of the cutting time per part`,
    "a machine that accelerates faster, or fewer and longer moves",
  ],
  "no-life": (f, say) => [
    `no tool life: ${say.error(f.error)}`,
    "check Taylor n, Reference life and speed; tool cost is not in the cost",
  ],
});
