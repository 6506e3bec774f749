/** What the readers of drawing text hand to each other: tokens, features, rows. */
import type { TradeError } from "../errors.ts";
import type { OperationName } from "../table/rows.ts";
import type { Thread } from "../thread/types.ts";
import type { Units } from "../units.ts";
import type { Remark } from "./remarks/remark.ts";

export interface ThreadToken {
  readonly kind: "thread";
  /** Normalised where it is known, else as written. */
  readonly designation: string;
  readonly thread?: Thread;
  /** Why it is not known. */
  readonly error?: TradeError;
  readonly note?: Remark;
}

/** Words and symbols that say what a number is or what is done. */
export type Mark =
  | "diameter"
  | "diameter word"
  | "depth symbol"
  | "depth"
  | "hole depth"
  | "through"
  | "counterbore"
  | "spotface"
  | "countersink"
  | "counterdrill"
  | "insert"
  | "drill"
  | "pilot"
  | "ream"
  | "bore"
  | "boss"
  | "tap"
  | "by"
  | "equally"
  | "circle"
  | "spaced"
  | "both"
  | "far"
  | "near"
  | "typical"
  | "least"
  | "most"
  | "left"
  | "right";

/** A length as written. `units` is set where the number carries its own; `tells` where its spelling gives them away. */
export interface Size {
  readonly value: number;
  readonly units?: Units;
  readonly tells?: Units;
  /** Limits, for "12.00-12.02". */
  readonly limits?: readonly [number, number];
  /** Worked out from another size: it tells nothing about units. */
  readonly derived?: boolean;
}

export type Content =
  | { readonly kind: "mark"; readonly mark: Mark }
  /** `loose`: a number that is a quantity by its place only. */
  | { readonly kind: "times" | "count"; readonly count: number; readonly loose?: boolean }
  | { readonly kind: "length"; readonly size: Size; readonly drill?: string }
  | { readonly kind: "angle"; readonly degrees: number }
  | {
      readonly kind: "tolerance";
      readonly lower: Size;
      readonly upper: Size /** Only one side is written. */;
      readonly half?: boolean;
    }
  | { readonly kind: "fit"; readonly text: string }
  | ThreadToken
  /** A depth in diameters. */
  | { readonly kind: "multiple"; readonly factor: number }
  | { readonly kind: "separator"; readonly sign?: string }
  | { readonly kind: "filler" | "unknown" };

export type Token = Content & { readonly at: number; readonly end: number };

/** A token with the line of the callout it stands in. */
export type Placed = Token & { readonly line: number };

export type FeatureKind =
  | "hole"
  | "drill"
  | "pilot"
  | "ream"
  | "bore"
  | "boss"
  | "counterbore"
  | "spotface"
  | "countersink"
  | "counterdrill"
  | "thread";

export interface Tolerance {
  readonly lower: Size;
  readonly upper: Size;
  /** Only one side was written so far. */
  readonly half?: boolean;
}

export interface Feature {
  kind: FeatureKind;
  thread?: ThreadToken;
  diameter?: Size;
  /** Name of the drill when the callout names one. */
  drill?: string;
  tolerance?: Tolerance;
  fit?: string;
  depth?: Size;
  through?: boolean;
  angle?: number;
  hand?: "left" | "right";
  bothSides?: boolean;
  readonly tokens: Placed[];
}

/** Features that share a quantity. */
export interface Group {
  readonly times: number[];
  readonly counts: number[];
  readonly features: Feature[];
  holeDepth?: Size;
  equally?: boolean;
  circle?: Size;
  spacing?: Size;
  readonly notes: Remark[];
  /** What must be asked before these rows are cut. */
  readonly asks: Remark[];
  /** The thread is for an insert. */
  insert?: boolean;
  /** Tokens that found no place. */
  readonly left: Placed[];
}

export type CalloutCell = string | number | null;
export type CalloutHeading =
  | "Row"
  | "Feature"
  | "Operation"
  | "Units"
  | "Quantity"
  | "Material"
  | "Machine"
  | "Thread"
  | "Start diameter"
  | "Finish diameter"
  | "Depth"
  | "Through"
  | "Hand"
  | "Hole depth"
  | "Spacing"
  | "Size tolerance"
  | "Remark";
export type CalloutCells = {
  readonly [H in CalloutHeading]?: H extends "Operation" ? OperationName | null : CalloutCell;
};

export interface RowDraft {
  readonly cells: CalloutCells;
  readonly understood: boolean;
  readonly notes: readonly Remark[];
}
