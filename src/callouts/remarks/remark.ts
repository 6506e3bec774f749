/** What the reading of a callout has to say of it: a code that never changes, with its values. No sentence here. */
import type { TradeError } from "../../errors.ts";
import type { Units } from "../../units.ts";

/** Sizes are in the callout's units. */
interface Values {
  // The text
  "too-much": { readonly characters: number };
  "too-long": object;
  /** Read otherwise than it stands there. */
  "read-as": { readonly was: string; readonly now: string };
  /** Lines `first` to `last` of the text. */
  "lines-joined": { readonly first: number; readonly last: number };
  "lines-counted": { readonly count: number };
  "nothing-found": object;
  "not-understood": { readonly because: readonly Remark[] };
  "part-left": { readonly of: string };
  "words-left": { readonly words: string };
  "two-sizes": object;
  "same-hole": object;
  "bracket-not-opened": object;
  "bracket-not-closed": object;
  "in-brackets": object;

  // Units
  "units-assumed": { readonly units: Units };
  "units-stated": { readonly units: Units };
  /** By the way the numbers are written; `other` is the system of the thread or class. */
  "units-by-numbers": { readonly units: Units; readonly other?: Units };
  "units-by-thread": { readonly units: Units };
  "units-mixed": object;
  "units-in-doubt": object;
  "units-not-told": object;
  "units-nowhere": object;
  /** Written in one system on a drawing in the other; `taken`: read as written. */
  "units-against": { readonly written: Units; readonly drawing: Units; readonly taken: boolean };

  // Quantity and pattern
  "quantity-in-doubt": { readonly front: readonly number[]; readonly behind: number };
  "quantity-too-large": object;
  "quantity-product": { readonly factors: readonly number[]; readonly total: number };
  "quantity-twice": { readonly total: number };
  "both-sides": { readonly total: number };
  "spacing-chord": { readonly diameter: number; readonly holes: number; readonly equally: boolean };
  "circle-without-number": object;
  "equally-on-nothing": object;
  "far-side": object;
  "near-side": object;
  typical: object;
  least: object;
  most: object;
  tapped: object;

  // Sizes
  "without-sign": { readonly value: number };
  "diameter-not-told": object;
  "depth-factor": { readonly factor: number };
  "depth-limits": { readonly low: number; readonly high: number };
  "depth-tolerance": object;
  "depth-not-told": object;
  "depth-through": object;
  "depth-thickness": { readonly thickness: number };
  "depth-as-above": { readonly operation: string };
  "depth-of-cone": object;
  "depth-of-spotface": object;
  "depth-or-angle": object;
  "angle-not-told": object;
  angle: { readonly degrees: number };
  "angle-in-doubt": { readonly degrees: number };

  // Limits
  limits: { readonly low: number; readonly high: number };
  "limits-middle": {
    readonly low: number;
    readonly high: number;
    readonly fit?: string;
    readonly middle: number;
    readonly half: number;
  };
  "limits-lopsided": { readonly low: number; readonly high: number; readonly fit?: string };
  "tolerance-unread": object;
  "tolerance-half": object;
  "tolerance-wide": object;
  "fit-unknown": { readonly fit?: string };

  // What is planned
  drill: { readonly name: string };
  "tap-drill": object;
  "not-its-drill": object;
  "steps-far-apart": { readonly large: number; readonly small: number };
  "counterbore-lost": object;
  counterdrill: object;
  "shaft-class": { readonly fit?: string };
  "shaft-like-hole": { readonly fit?: string };
  "bored-fine": { readonly grade: number };
  "bored-large": { readonly drill: number };
  reamed: { readonly fit?: string };
  "seat-in-hole": { readonly operation: string };

  // Threads
  "thread-unread": { readonly why: TradeError };
  "thread-external": object;
  "small-letters": { readonly text: string };
  "older-name": { readonly old: string };
  "hole-deeper": { readonly pitches: number; readonly depth: number };
  "insert-unknown": { readonly designation: string };
  /** Least diameters of the thread cut for it, in the thread's unit. */
  insert: { readonly designation: string; readonly major: number; readonly minor: number; readonly units: Units };

  // Is that so?
  "so-many": { readonly count: number };
  "so-small": InDoubt;
  "so-large": InDoubt;
  "so-far-apart": InDoubt;
  "so-large-a-drill": InDoubt;
  "seat-not-larger": { readonly operation: string; readonly hole: number } & InDoubt;
  "start-large": InDoubt;
  "start-small": InDoubt;
  "depth-below-pitch": InDoubt;
  "thread-deep": { readonly most: number } & InDoubt;
  "hole-deep": { readonly most: number; readonly seat: boolean } & InDoubt;
  "too-deep": InDoubt;
}

/** A size that may be a misreading; units null where the callout does not tell. */
interface InDoubt {
  readonly value: number;
  readonly units: Units | null;
}

export type RemarkCode = keyof Values;
export type Remark = { [C in RemarkCode]: { readonly code: C } & Values[C] }[RemarkCode];
