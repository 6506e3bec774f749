/** What the words and the comparison know of a planned row. Lengths in mm, feeds in mm/min, Z from the feature's face. */
import type { Verdict } from "../findings.ts";
import type { OperationName } from "../table/rows.ts";
import type { Units } from "../units.ts";

/** Where the length of a thread mill is measured to: its tip, or the middle of its (lowest) profile. */
export const TOOL_ZEROS = ["tip", "profile"] as const;
export type ToolZero = (typeof TOOL_ZEROS)[number];

/** A thread as the cutter's centre runs it; Z is that of the profile's middle. */
export interface ThreadShape {
  readonly kind: "thread";
  readonly inside: boolean;
  readonly hand: "right" | "left";
  readonly climb: boolean;
  readonly counterClockwise: boolean;
  readonly up: boolean;
  readonly pitch: number;
  readonly depth: number;
  /** Path radius of every pass in order, spring passes at the end. */
  readonly radii: readonly number[];
  readonly springs: number;
  /** Ends of the helix. */
  readonly startZ: number;
  readonly endZ: number;
  /** How far each level stands above the lowest one: a full-profile cutter shorter than the thread needs several. */
  readonly levels: readonly number[];
  readonly full: boolean;
  readonly tipToProfile: number;
  readonly cutter: number;
  /** Hole or blank before the thread. */
  readonly start: number;
  /** Limits of the pitch diameter. */
  readonly limits?: readonly [number, number];
  readonly holeDepth?: number;
  readonly through: boolean;
}

/** What circles and arcs about a centre have alike. */
interface TurnedShape {
  readonly inside: boolean;
  readonly climb: boolean;
  readonly counterClockwise: boolean;
  readonly radii: readonly number[];
  readonly springs: number;
  readonly depth: number;
  /** Z steps of the passes at depth. */
  readonly levels: number;
  readonly cutter: number;
  readonly start: number;
  /** Allowed error of the diameter. */
  readonly tolerance?: number;
}

/** Full circles of a bore, boss or counterbore. */
export interface RoundShape extends TurnedShape {
  readonly kind: "round";
  /** Fall per turn of the first pass when it starts from solid, else 0. */
  readonly fall: number;
}

/** A side wall in an arc. */
export interface ArcShape extends TurnedShape {
  readonly kind: "arc";
  /** Degrees of arc. */
  readonly sweep: number;
}

/** A slot, straight side wall or face: straight cuts along X. */
export interface LineShape {
  readonly kind: "line";
  readonly what: "slot" | "side" | "face";
  readonly climb: boolean;
  readonly length: number;
  /** Way beyond the length that the cutter needs to leave. */
  readonly over: number;
  /** Y of the cutter's centre for each pass, from the wall (side) or from the middle of the cut. */
  readonly offsets: readonly number[];
  readonly springs: number;
  readonly depth: number;
  readonly levels: number;
  readonly cutter: number;
}

/** A hole made along Z; the bottoms are those of the tool's tip, one for each peck. */
export interface HoleShape {
  readonly kind: "hole";
  readonly what: "drill" | "tap" | "ream" | "countersink";
  readonly bottoms: readonly number[];
  readonly depth: number;
  /** Length of the drill's point, and how far a through hole goes out. */
  readonly point: number;
  readonly out: number;
  readonly through: boolean;
  readonly diameter: number;
  readonly hand: "right" | "left";
}

export type Shape = ThreadShape | RoundShape | ArcShape | LineShape | HoleShape;

/** A row that goes around or along more often is a slip of the finger: no words are made of it (judgement). */
export const MOST_ROUNDS = 10_000;

export interface RowFacts {
  /** Line of the table, from 0. */
  readonly index: number;
  /** What stands in the Row column, else the line's number. */
  readonly name: string;
  /** Missing where the row does not say it. */
  readonly operation?: OperationName;
  readonly units: Units;
  readonly quantity: number;
  /** Thread designation or feature. */
  readonly title: string;
  readonly tool: string;
  readonly verdict: Verdict;
  /** The weightiest reason of a row that is not ok. */
  readonly reason: string;
  readonly rpm?: number;
  /** Lowest of the speed limits, and whose it is. */
  readonly mostRpm?: { readonly value: number; readonly of: "machine" | "tool" | "row" };
  /** Feed of the cutter's centre. */
  readonly feed?: number;
  /** Feed of the edge on the finished wall, where it is another one. */
  readonly edgeFeed?: number;
  readonly wearValue?: number;
  /** How often the tool would go around or along, where that is more than a program is made of. */
  readonly rounds?: number;
  /** Missing where the plan does not determine it. */
  readonly shape?: Shape;
}
