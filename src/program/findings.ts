/** What a comparison finds: a code that never changes, how grave, where, and its values. No sentence here. */
import type { Refusal } from "./blocks.ts";
import type { Trouble } from "./machine.ts";
import type { RowFacts } from "./types.ts";

export type Severity = "ok" | "check" | "stop";

/** Lengths in mm, feeds in mm/min. */
export type Finding = {
  readonly severity: Severity;
  /** Line of the program, from 1. */
  readonly line?: number;
  readonly row?: RowFacts;
  /** In how many of the row's features it is, when not in all that were found. */
  readonly count?: readonly [some: number, all: number];
} & (
  | { readonly code: "hand"; readonly found: "right" | "left"; readonly wanted: "right" | "left" }
  | {
      readonly code: "direction";
      readonly what: "way";
      readonly found: "climb" | "conventional";
      readonly clockwise: boolean;
    }
  | { readonly code: "direction"; readonly what: "spindle" }
  | {
      readonly code: "pitch";
      readonly what: "turn" | "tap" | "fall";
      readonly found: number;
      readonly wanted: number;
    }
  | { readonly code: "pitch"; readonly what: "uneven"; readonly off: number; readonly wanted: number }
  | {
      readonly code: "radius";
      readonly found: number;
      readonly wanted: number;
      /** Change of the diameter made: pitch diameter of a thread, diameter of a bore. */
      readonly change: number;
      readonly thread: boolean;
      readonly contour: boolean;
      readonly within: boolean | undefined;
    }
  | {
      readonly code: "edge-feed";
      readonly what: "edge" | "twice" | "contour";
      readonly found: number;
      readonly wanted: number;
      readonly edge: number;
    }
  | { readonly code: "feed"; readonly what: "value"; readonly found: number; readonly wanted: number }
  | { readonly code: "feed"; readonly what: "none"; readonly wanted: number }
  | { readonly code: "speed"; readonly what: "value"; readonly found: number; readonly wanted: number }
  | {
      readonly code: "speed";
      readonly what: "over";
      readonly found: number;
      readonly wanted: number;
      readonly most: number;
      readonly of: "machine" | "tool" | "row";
    }
  | { readonly code: "speed"; readonly what: "stopped"; readonly wanted: number }
  | {
      readonly code: "depth";
      readonly what: "shallow" | "deep" | "bottom" | "top" | "no-point" | "not-through" | "levels" | "turn";
      readonly found: number;
      readonly wanted: number;
      /** The difference is the distance from tip to profile. */
      readonly otherZero?: boolean;
    }
  | { readonly code: "depth"; readonly what: "unknown" }
  | {
      readonly code: "passes";
      readonly what: "missing" | "springs" | "more" | "pecks" | "cuts";
      readonly found: number;
      readonly wanted: number;
    }
  | { readonly code: "passes"; readonly what: "step"; readonly found: number; readonly wanted: number }
  | {
      readonly code: "compensation";
      readonly what: "side";
      readonly found: 41 | 42;
      readonly wanted: 41 | 42;
    }
  | { readonly code: "compensation"; readonly what: "contour-off"; readonly found: number; readonly wanted: number }
  | { readonly code: "compensation"; readonly what: "switched" }
  | { readonly code: "compensation"; readonly what: "wear-unused"; readonly wear: number }
  | { readonly code: "hole"; readonly what: "none"; readonly x: number; readonly y: number }
  | { readonly code: "hole"; readonly what: "later"; readonly drilled: number }
  | {
      readonly code: "hole";
      readonly what: "shallow";
      readonly bottom: number;
      readonly tip: number;
    }
  | {
      readonly code: "not-in-plan";
      readonly what: "thread" | "circle" | "hole" | "more";
      readonly number: number;
      /** Path radius of turns, bottom of holes. */
      readonly size: number;
      readonly pitch: number;
    }
  | {
      readonly code: "not-in-program";
      readonly what: "row" | "some";
      readonly found: number;
      readonly wanted: number;
    }
  | { readonly code: "unreadable"; readonly what: "refused"; readonly refusal: Refusal }
  | { readonly code: "unreadable"; readonly what: "trouble"; readonly trouble: Trouble; readonly number: number }
  | {
      readonly code: "unreadable";
      readonly what: "words";
      readonly words: readonly { readonly word: string; readonly line: number; readonly count: number }[];
      readonly more: number;
    }
  | { readonly code: "unreadable"; readonly what: "units" | "increments"; readonly units: "mm" | "in" }
  | { readonly code: "unreadable"; readonly what: "both-units" | "absolute-centres" | "no-moves" }
  | { readonly code: "unreadable"; readonly what: "skippable"; readonly number: number }
  | { readonly code: "unreadable"; readonly what: "plan" }
  | { readonly code: "same"; readonly number: number; readonly wanted: number }
);

/** Codes as the worksheet shows them, and "same" for a row in which nothing differs. */
export type Code = Finding["code"];
