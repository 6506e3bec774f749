/** Sentences about threads and how they are milled. */
import { findingsOf } from "../../types.ts";

export const threads = findingsOf({
  "unknown-thread": (f, say) => [say.error(f.error), "correct the designation"],
  "no-path": (f, say) => [say.error(f.error), "take a smaller cutter or one with a narrower tip flat"],
  "profile-angle": (f) => [
    `the cutter's profile is ${f.value}°, the thread's ${f.limit}°`,
    "take a cutter with the thread's profile",
  ],
  "pitch-differs": (f, say) => [
    `the full-profile cutter's pitch is ${say.value(f.value)}, the thread's ${say.value(f.limit)}`,
    "take a cutter of the thread's pitch, or a single-profile one",
  ],
  "blank-diameter": (f, say) => [
    `the blank ${say.value(f.value)} is outside the thread's major diameter ${say.value(f.low)} to ${say.value(f.limit)}`,
    "turn or mill it to size first",
  ],
  "flat-too-wide": (f, say) => [
    `the tip flat ${say.value(f.flat)} leaves the ${f.inside ? "major" : "minor"} diameter at ${say.value(f.value)}, ${f.inside ? "under" : "over"} the basic ${say.value(f.limit)}: the GO gauge will not enter`,
    f.would === null
      ? "this cutter cannot: take a smaller one"
      : `a tip flat of at most ${say.value(f.would)} would do`,
  ],
  "no-depth": (f, say) => [
    `the cutter does not reach the wall: tip at ${say.value(f.value)}, wall at ${say.value(f.limit)}`,
    "correct the start diameter or the cutter",
  ],
  "neck-rubs": (f, say) => [
    `the neck rubs: it overlaps the wall by ${say.value(-f.value)}`,
    "take a cutter with a thinner neck or a taller profile",
  ],
  "neck-tight": (f, say) => [
    `only ${say.value(f.value)} is left between neck and wall; chips want ${say.value(f.limit)}`,
    "take a thinner neck, or blow the chips out",
  ],
  "profile-shallow": (f, say) => [
    `the cutter's profile is ${say.value(f.value)} high; the thread wants ${say.value(f.limit)}`,
    "take a cutter with a taller profile",
  ],
  "neck-short": (f, say) => [
    `the cutter reaches ${say.value(f.value)}; the thread and its tip want ${say.value(f.limit)}`,
    "take a longer neck",
  ],
  "no-thread": (f, say) => [
    `the tool bends away so far that no thread is left: its pitch diameter would be ${say.value(f.value)} where the wall stands at ${say.value(f.limit)}`,
    "take a stiffer tool, a shorter stick-out or less feed; correct Wear value if one is typed",
  ],
  "hole-too-shallow": (f, say) => [
    `the hole is ${say.value(f.value)} deep; the thread and the cutter's tip want ${say.value(f.limit)}`,
    "drill deeper, or thread less deep",
  ],
});
