/** What is said of callouts, in English: what was assumed, what was not understood, and what to ask. */
import type { Units } from "../../units.ts";
import { errors } from "../../words/en/errors.ts";
import { errorText } from "../../words/errors.ts";
import { said } from "./say.ts";
import type { Sentences } from "./types.ts";

const WHY = { in: "leading point, fraction or inch mark", mm: "decimal comma or mm" } as const;

/** A size that may be a misreading, in four figures. */
const about = ({ value, units }: { readonly value: number; readonly units: Units | null }) =>
  `${Number(value.toPrecision(4))} ${units ?? ""}`.trim();

const times = (factors: readonly number[]) => factors.join(" × ");
const range = ({ low, high }: { readonly low: number; readonly high: number }) => `limits ${low} to ${high}`;

export const ENGLISH: Sentences = {
  "too-much": ({ characters }) =>
    `not understood: ${characters} characters are more than a drawing has; paste its callouts only`,
  "too-long": () => "too long for a callout",
  "read-as": ({ was, now }) => `"${was}" read as ${now}`,
  "lines-joined": ({ first, last }) => `lines ${first} to ${last} read as one callout`,
  "lines-counted": ({ count }) => `${count} lines read as one callout`,
  "nothing-found": () => "no hole, thread or seat with a size was found",
  "not-understood": ({ because }) => `not understood: ${because.map((remark) => said(remark, ENGLISH)).join("; ")}`,
  "part-left": ({ of }) => `not understood: this part of "${of}"`,
  "words-left": ({ words }) => `"${words}" is not understood and may change what the rest means`,
  "two-sizes": () => "two sizes one under the other: limits of one hole, or two holes?",
  "same-hole": () => "the same hole is written twice: once, or two of them?",
  "bracket-not-opened": () => "a bracket is not opened",
  "bracket-not-closed": () => "a bracket is not closed",
  "in-brackets": () => "in brackets: for reference, not to be made from this",

  "units-assumed": ({ units }) => `${units} assumed: the callout does not tell`,
  "units-stated": ({ units }) => `${units}: the units stated for the drawing`,
  "units-by-numbers": ({ units, other }) =>
    `${units} from the way its numbers are written (${WHY[units]})${other ? `; its thread or class is ${other}` : ""}`,
  "units-by-thread": ({ units }) => `${units} from its ${units === "in" ? "thread" : "thread or tolerance class"}`,
  "units-mixed": () => "inch and mm sizes in one callout: converted",
  "units-in-doubt": () => "units not understood: some numbers look like inches, others like mm",
  "units-not-told": () => "units not told; say mm or in",
  "units-nowhere": () => "units not told: nothing in the callout says mm or in",
  "units-against": ({ written, drawing, taken }) =>
    taken
      ? `${written}: written as ${written} on a drawing in ${drawing}`
      : `written as ${written} on a drawing in ${drawing}: which is it?`,

  "quantity-in-doubt": ({ front, behind }) => `${times(front)} in front and ${behind} behind: how many?`,
  "quantity-too-large": () => "quantity not understood",
  "quantity-product": ({ factors, total }) => `quantity ${times(factors)} = ${total}`,
  "quantity-twice": ({ total }) => `quantity ${total} is written twice: counted once`,
  "both-sides": ({ total }) => `both sides: quantity × 2 = ${total}`,
  "spacing-chord": ({ diameter, holes, equally }) =>
    `spacing is the chord of the bolt circle, ${diameter}·sin(180°/${holes})${equally ? "" : "; taken as equally spaced"}`,
  "circle-without-number": () => "bolt circle without a number of holes: no spacing",
  "equally-on-nothing": () => "equally spaced, but on what is not told",
  "far-side": () => "from the far side: another set-up",
  "near-side": () => "near side",
  typical: () => "TYP: how many is not told",
  least: () => "MIN is written: a least value",
  most: () => "MAX is written: a largest value",
  tapped: () => "the drawing says TAP or THREAD: planned as thread milling, change Operation to tap if it is tapped",

  "without-sign": ({ value }) => `${value} stands without ⌀: read as a diameter`,
  "diameter-not-told": () => "diameter is not told",
  "depth-factor": ({ factor }) => `depth ${factor} × the diameter`,
  "depth-limits": ({ low, high }) => `depth ${low} to ${high}: the middle is taken`,
  "depth-tolerance": () => "the tolerance of a depth is not planned",
  "depth-not-told": () => "depth is not told",
  "depth-through": () => "through: Depth is the thickness there, which is not in the callout",
  "depth-thickness": ({ thickness }) => `through: Depth is the thickness given, ${thickness}`,
  "depth-as-above": ({ operation }) => `the hole under it taken as deep as the ${operation}: not told`,
  "depth-of-cone": () => "depth of the cone from the face: (D − d)/(2·tan(angle/2))",
  "depth-of-spotface": () => "spotface: as deep as cleans up the face, not told",
  "depth-or-angle": () => "a depth or an angle? the degree sign may be lost",
  "angle-not-told": () => "angle is not told",
  angle: ({ degrees }) => `countersink ${degrees}°`,
  "angle-in-doubt": ({ degrees }) => `an angle of ${degrees}°: is that so?`,

  limits: range,
  "limits-middle": ({ fit, middle, half, ...ends }) =>
    `${range(ends)}${fit ? ` (${fit}, ISO 286)` : ""}: middle ${middle} ± ${half}`,
  "limits-lopsided": ({ fit, ...ends }) =>
    `${range(ends)}${fit ? ` (${fit}, ISO 286)` : ""}: not symmetrical about the drill's size, Size tolerance left blank`,
  "tolerance-unread": () => "tolerance not understood",
  "tolerance-half": () => "only one side of the tolerance is written: the other is taken as 0",
  "tolerance-wide": () => "a tolerance so wide: is that so?",
  "fit-unknown": ({ fit }) => `tolerance class ${fit} is not in the table: no limits`,

  drill: ({ name }) => `drill ${name}`,
  "tap-drill": () => "drill size: the thread's tap drill",
  "not-its-drill": () => "the hole beside the thread is not its tap drill: is it the same place?",
  "steps-far-apart": ({ large, small }) => `⌀${large} and ⌀${small} in one callout: is that so?`,
  "counterbore-lost": () => "the sign of a counterbore may be lost",
  counterdrill: () => "counterdrill: opens the hole up to this depth",
  "shaft-class": ({ fit }) => `${fit} is a shaft class: planned as a boss`,
  "shaft-like-hole": ({ fit }) =>
    fit ? `a shaft class on what is written like a hole: ${fit}` : "a boss written like a hole: how high is it?",
  "bored-fine": ({ grade }) => `planned as a bore from solid: the tolerance is less than drilling holds (IT${grade})`,
  "bored-large": ({ drill }) => `planned as a bore from solid: larger than a drill of ${drill} mm`,
  reamed: ({ fit }) => `${fit}: drilled, then reamed; a reamer holds that class in this size`,
  "seat-in-hole": ({ operation }) => `the ${operation} is not larger than its hole: is that so?`,

  "thread-unread": ({ why }) => errorText(why, errors),
  "thread-external": () => "external thread: the diameter before it is not in the callout",
  "small-letters": ({ text }) => `"${text}" is in small letters: read as an internal thread`,
  "older-name": ({ old }) => `${old} is the older name of U${old} (American National series)`,
  "hole-deeper": ({ pitches, depth }) => `hole assumed ${pitches} pitches deeper than the thread: ${depth}`,
  "insert-unknown": ({ designation }) =>
    `${designation} for an insert: not planned, take the sizes from the insert's standard`,
  insert: ({ designation, major, minor, units }) => {
    const least = (value: number) => `${value.toFixed(units === "in" ? 4 : 3)} ${units}`;
    return `${designation} for a wire insert: its hole has a larger thread (major ⌀ at least ${least(major)}, minor ⌀ at least ${least(minor)}; ASME B18.29.1 and DIN 8140, from memory: check), not planned`;
  },

  "so-many": ({ count }) => `${count} of them: is that so?`,
  "so-small": (size) => `⌀${about(size)}: is that so? very small`,
  "so-large": (size) => `⌀${about(size)}: is that so? a decimal point may be lost`,
  "so-far-apart": (size) => `${about(size)} apart: is that so?`,
  "so-large-a-drill": (size) => `a drill of ⌀${about(size)}: is that so?`,
  "seat-not-larger": ({ operation, value, hole, units }) =>
    `the ${operation} is not larger than its hole (${about({ value, units })}, ${about({ value: hole, units })}): is that so?`,
  "start-large": (size) => `⌀${about(size)} for this thread: is that so? too large for a tap drill`,
  "start-small": (size) => `⌀${about(size)} for this thread: is that so? too small for a tap drill`,
  "depth-below-pitch": (size) => `${about(size)} deep: is that so? less than one pitch`,
  "thread-deep": ({ most, ...size }) => `${about(size)} deep: is that so? more than ${most} diameters of thread`,
  "hole-deep": ({ most, seat, ...size }) =>
    `${about(size)} deep: is that so? ${seat ? "a seat of " : ""}more than ${most} diameters`,
  "too-deep": (size) => `${about(size)} deep: is that so? deeper than common work`,
};
