/** What comes out of a planning row. Numbers are in the canonical unit of their dimension (units.ts). */
import type { SourceId } from "../../sources.ts";
import type { DimensionName, Units } from "../../units.ts";

export type Verdict = "ok" | "check" | "stop";

export interface Reason {
  /** Stable code, e.g. "neck-rubs"; codes are never renamed. */
  readonly code: string;
  readonly severity: Verdict;
  /** Sentence for a person, with the number and its limit in the row's units. */
  readonly text: string;
  /** At least one way out. */
  readonly wayOut: string;
  readonly value?: number;
  readonly limit?: number;
  readonly dimension?: DimensionName;
}

/** A limit of the row as a ratio: 1 is at the limit. */
export interface Limit {
  readonly key: string;
  /** Plain name, e.g. "deflection", "tool stress", "spindle power". */
  readonly name: string;
  readonly load: number;
  readonly value: number;
  readonly limit: number;
  readonly dimension?: DimensionName;
  /** Load at the good and the bad end of the stated uncertainties, when they were worked out. */
  readonly band?: readonly [number, number];
}

/** One number of the chain, so that anyone can check it by hand. */
export interface Step {
  readonly key: string;
  readonly label: string;
  readonly value: number | string;
  readonly dimension?: DimensionName;
  /** Unit when it is none of the dimensions: "1/min", "°", "s", "%". */
  readonly unit?: string;
  /** Formula in symbols, e.g. "n = 1000·vc/(π·D)". */
  readonly formula: string;
  /** The single worksheet function that gives it, with the row's numbers, e.g. `=CUT.RPM(120,10,"mm")`. */
  readonly cell?: string;
  readonly source: SourceId;
}

/** Shapes the pane draws to scale [mm]; all optional. */
export interface Sketch {
  readonly kind: string;
  readonly holeDiameter?: number;
  readonly startDiameter?: number;
  readonly depth?: number;
  readonly through?: boolean;
  readonly pathRadius?: number;
  readonly inside?: boolean;
  /** Tool from the tip to the holder: length and diameter of each part. */
  readonly tool?: readonly { readonly length: number; readonly diameter: number; readonly part: string }[];
  readonly cutterDiameter?: number;
  readonly tipFlat?: number;
  readonly pitch?: number;
  /** Included angles of the thread's profile and of the drill's point [deg]. */
  readonly profileAngle?: number;
  readonly pointAngle?: number;
  /** Radial depth after each pass, from the wall. */
  readonly depths?: readonly number[];
  readonly deflection?: number;
}

/** Result columns by key (columns.ts); null where the operation has none. */
export type Results = Readonly<Record<string, number | string | null>>;

/** Seconds of one feature by what the machine does in them; the tool change is once per row. */
export interface RowTime {
  readonly cutting: number;
  readonly moving: number;
  readonly waiting: number;
  /** What the same cutting path would take at the programmed feed without acceleration. */
  readonly ideal: number;
  readonly change: number;
}

/** Money of one part by what it is paid for; `machine` holds the row's own tool change. */
export interface RowMoney {
  readonly machine: number;
  readonly setup: number;
  readonly tool: number;
}

export interface RowPlan {
  readonly row: string | number | null;
  readonly operation: string;
  readonly units: Units;
  readonly verdict: Verdict;
  readonly reasons: readonly Reason[];
  readonly limits: readonly Limit[];
  /** The limit with the largest load. */
  readonly binding?: Limit;
  readonly results: Results;
  readonly steps: readonly Step[];
  readonly sketch?: Sketch;
  /** Where the machine has a rapid and an acceleration and the row is complete. */
  readonly time?: RowTime;
  /** Where the machine has a rate as well. */
  readonly money?: RowMoney;
  /** Life of one edge at the row's surface speed [min], where material and tool tell it. */
  readonly life?: number;
}
