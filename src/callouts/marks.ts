/** What marks stand for, and the numbers that tell a pilot from another hole. */
import type { OperationName } from "../table/rows.ts";
import type { FeatureKind, Mark, Tolerance } from "./types.ts";

/** A plain hole is the pilot of a thread when it is this much of the thread's diameter. */
export const PILOT_SHARE = { low: 0.6, high: 1 } as const;

/** Marks that start or name a feature. */
export const OPERATION: Partial<Record<Mark, FeatureKind>> = {
  counterbore: "counterbore",
  spotface: "spotface",
  countersink: "countersink",
  counterdrill: "counterdrill",
  drill: "drill",
  pilot: "pilot",
  ream: "ream",
  bore: "bore",
  boss: "boss",
};

/** The two sides of a tolerance written one under the other. */
export function bothSides(known: Tolerance | undefined, next: Tolerance): Tolerance {
  if (!known) return { lower: next.lower, upper: next.upper, half: next.half };
  const written = (t: Tolerance) => (t.upper.value === 0 ? t.lower : t.upper);
  const pair = [written(known), written(next)].sort((a, b) => a.value - b.value);
  return { lower: pair[0]!, upper: pair[1]! };
}

/** Words that are kept as a remark and plan nothing. */
export const NOTES: Partial<Record<Mark, string>> = {
  far: "from the far side: another set-up",
  near: "near side",
  typical: "TYP: how many is not told",
  least: "MIN is written: a least value",
  most: "MAX is written: a largest value",
  tap: "the drawing says TAP or THREAD: planned as thread milling, change Operation to tap if it is tapped",
};

/** The operation that a feature is made by. */
export const MADE_BY: Readonly<Record<FeatureKind, OperationName>> = {
  hole: "drill",
  drill: "drill",
  pilot: "drill",
  counterdrill: "drill",
  thread: "drill",
  ream: "ream",
  bore: "bore",
  boss: "boss",
  counterbore: "counterbore",
  spotface: "counterbore",
  countersink: "countersink",
};
