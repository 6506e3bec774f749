/** What marks stand for, and the numbers that tell a pilot from another hole. */
import type { RemarkCode } from "./remarks/remark.ts";
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
export const NOTES = {
  far: "far-side",
  near: "near-side",
  typical: "typical",
  least: "least",
  most: "most",
  tap: "tapped",
} as const satisfies Partial<Record<Mark, RemarkCode>>;
