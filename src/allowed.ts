/** What an argument may be, or why there is no answer: a code that never changes, with its values. No sentence here. */
import type { Day } from "./calendar.ts";
import type { DimensionName } from "./units.ts";

/** Numbers are in the canonical unit of their dimension; sizes of threads and drills in the unit of their standard. */
interface Values {
  // Numbers
  number: object;
  "above-zero": object;
  "from-zero": object;
  whole: { readonly least: number; readonly most: number };
  between: {
    readonly low: number;
    readonly high: number;
    /** Which of the ends is not allowed itself. */
    readonly open: "none" | "low" | "high" | "both";
    readonly dimension?: DimensionName | undefined;
  };
  below: { readonly high: number; readonly dimension: DimensionName };
  "covered-to": { readonly high: number; readonly dimension: DimensionName };
  "above-argument": { readonly argument: string; readonly low: number; readonly dimension: DimensionName };
  "other-than-argument": { readonly argument: string };
  "beyond-numbers": object;
  "no-change-of-sign": { readonly upTo: number };

  // Words
  "one-of": { readonly words: readonly string[] };
  /** Texts as an argument takes them, for a person to write in quotes. */
  "one-of-texts": { readonly texts: readonly string[] };
  "one-of-angles": { readonly angles: readonly number[] };
  chamfers: { readonly words: readonly string[]; readonly most: number };
  "in-list": { readonly near: readonly string[] };

  // Cells
  "no-error-value": object;
  "one-meaning": { readonly words: readonly string[] };
  "decimal-mark": { readonly decimal: string; readonly whole: string };
  "one-number": { readonly units: readonly string[] };
  "number-limits": {
    readonly whole?: boolean | undefined;
    readonly low?: number | undefined;
    readonly high?: number | undefined;
    /** The limit itself is not allowed. */
    readonly openLow?: boolean | undefined;
    readonly openHigh?: boolean | undefined;
    /** Units that the cell may name, empty where it may name none; left out where units are not the trouble. */
    readonly units?: readonly string[] | undefined;
  };
  "true-or-false": object;
  "row-units-first": object;
  /** `typed`: what may have been typed where the day now stands. */
  "taken-for-date": { readonly day: Day; readonly typed: string | undefined };

  // Drills
  "drill-name": object;
  "drill-names": object;
  "drill-numbers": object;
  "drill-set": object;
  "drill-sets": { readonly sets: readonly string[] };
  "nearest-drill": { readonly name: string; readonly diameter: number };
  "nearest-drills": { readonly names: readonly string[] };
  "nearest-drill-stock": { readonly name: string; readonly diameter: number };

  // ISO 286
  "class-name": object;
  "class-names": object;
  "class-kind": { readonly kind: "hole" | "shaft" };
  "class-letters": { readonly letters: readonly string[] };
  "class-grades": { readonly letter: string; readonly grades: readonly number[] };
  "class-to-grade": { readonly letter: string; readonly grade: number };
  "class-from-size": { readonly letter: string; readonly size: number };
  "class-not-to-size": { readonly letter: string; readonly size: number };
  "fit-names": object;
  grades: object;

  // Threads
  "thread-name": object;
  "thread-names": object;
  "taper-pipe-names": object;
  "thread-not-covered": { readonly family: ThreadFamily };
  "pipe-thread-name": object;
  "one-thread": object;
  "thread-class": { readonly standard: "unified" | "metric" | "pipe"; readonly threadClass: string };
  "metric-class": { readonly threadClass: string; readonly kind: "internal" | "external" | undefined };
  "metric-class-letters": { readonly threadClass: string };
  "metric-size": { readonly size: number; readonly near: readonly number[] };
  "metric-pitches": { readonly pitches: readonly string[] };
  "metric-no-coarse": { readonly size: number; readonly pitches: readonly string[] };
  "pipe-size": { readonly size: string; readonly sizes: readonly string[] };
  "pipe-pitch": { readonly size: string; readonly tpi: number };
  "taper-pipe-sizes": { readonly sizes: readonly string[] };
  "taper-pipe-pitch": { readonly tpi: number };
  "unified-series": { readonly word: string };
  "unified-size": { readonly size: string; readonly near: readonly string[] };
  "unified-not-special": { readonly name: string; readonly series: string };
  "unified-specials": { readonly low: number; readonly high: number; readonly coarse: number; readonly fine: number };
  "unified-pitches": {
    readonly exist: readonly string[];
    /** The special thread that was meant, where there may be one; `listed`: its standard lists it. */
    readonly special: { readonly name: string; readonly listed: boolean } | undefined;
  };
  "unr-external": object;
  "unj-classes": object;
  "limit-open": {
    readonly standard: string;
    readonly of: "internal major" | "external minor" | "external minor least";
  };
  "unj-root-open": object;
  /** A tip so flat that it leaves the root short: at `tip` instead of `root`; `widest` would reach it. */
  "flat-too-wide": {
    readonly kind: "internal" | "external";
    readonly tip: number;
    readonly root: number;
    readonly widest: number;
  };
  "no-tolerance": {
    readonly diameter: "major" | "pitch" | "minor";
    readonly grade: number;
    readonly pitch: number;
  };
  "no-position": { readonly position: string; readonly pitch: number };

  // Tools, speeds and money
  segments: object;
  "segment-rows": object;
  "shank-sizes": object;
  modes: object;
  "free-change": object;
  "no-break-even": object;
  "pair-of-names": object;
}

/** Threads that are known by their name alone. */
export type ThreadFamily =
  | "american pipe"
  | "acme"
  | "buttress"
  | "trapezoidal"
  | "sealed pipe"
  | "whitworth"
  | "round"
  | "conduit"
  | "mj"
  | "miniature"
  | "several starts";

export type AllowedCode = keyof Values;
export type AllowedValues<C extends AllowedCode> = Values[C];
export type Allowed = { [C in AllowedCode]: { readonly is: C } & Values[C] }[AllowedCode];
