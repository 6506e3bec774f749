/**
 * What is planned of a row, before it is put into words: numbers in the canonical unit of their dimension (units.ts),
 * findings as codes with values.
 */
import type { FactsOf, FindingCode, LimitKey, Verdict } from "../../findings.ts";
import type { Results } from "../../table/results.ts";
import type { StepFacts, StepKey } from "../../table/steps.ts";
import type { DimensionName, Units } from "../../units.ts";
import type { Wall } from "./wall/wall.ts";

/** Something found of a row. */
export type Finding = {
  [C in FindingCode]: { readonly code: C; readonly severity: Verdict; readonly facts: FactsOf<C> };
}[FindingCode];

/** A limit of the row as a ratio: 1 is at the limit. */
export interface Limit {
  readonly key: LimitKey;
  readonly load: number;
  readonly value: number;
  readonly limit: number;
  readonly dimension?: DimensionName;
  /** Load at the good and the bad end of the stated uncertainties, when they were worked out. */
  readonly band?: readonly [number, number];
}

/** One number of the chain with what it was worked out from. */
export interface Step<K extends StepKey = StepKey> {
  readonly key: K;
  readonly value: number | readonly number[] | readonly [number, number];
  readonly facts?: StepFacts<K>;
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

/** What a program of the row runs along, beside the results: the wall of a milling row, the depths of a drill's pecks [mm]. */
export type Path =
  | { readonly kind: "wall"; readonly wall: Wall }
  | { readonly kind: "pecks"; readonly bottoms: readonly number[] };

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

/** The plan of one row: numbers and findings, no words. */
export interface Plan {
  readonly row: string | number | null;
  readonly operation: string;
  readonly units: Units;
  readonly verdict: Verdict;
  /** Weightiest first. */
  readonly findings: readonly Finding[];
  readonly limits: readonly Limit[];
  /** The limit with the largest load. */
  readonly binding?: Limit;
  readonly results: Results;
  readonly steps: readonly Step[];
  readonly sketch?: Sketch;
  readonly path?: Path;
  /** Stock that bending leaves on the wall beyond the programmed one, a side: least and most [mm]. */
  readonly left?: readonly [least: number, most: number];
  /** Where the machine has a rapid and an acceleration and the row is complete. */
  readonly time?: RowTime;
  /** Where the machine has a rate as well. */
  readonly money?: RowMoney;
  /** Life of one edge at the row's surface speed [min], where material and tool tell it. */
  readonly life?: number;
}
