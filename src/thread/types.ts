/** What a thread designation says, in the units it was written in. */
import type { Allowed } from "../allowed.ts";
export interface Thread {
  /** unified: ASME B1.1; metric: ISO 68-1/965-1; pipe: ISO 228-1 (G). */
  readonly standard: "unified" | "metric" | "pipe";
  /** Normalised designation, e.g. "1/2-13 UNC-2B", "M6×1-6H", "G1/4". */
  readonly designation: string;
  readonly kind: "internal" | "external";
  /** System of `major` and `pitch`. */
  readonly native: "mm" | "in";
  /** Basic major diameter [native]. */
  readonly major: number;
  /** Pitch [native]. */
  readonly pitch: number;
  /** Threads per inch, for threads that are named by it. */
  readonly tpi?: number;
  /** Lead [native]; the pitch for a single start. */
  readonly lead: number;
  /** Unified series "UNC", "UNF", "UNEF", "UN" (constant pitch) or "UNS"; metric "coarse" or "fine"; pipe "G". */
  readonly series: string;
  /** Root form of a Unified thread: flat or rounded as the maker likes, rounded, or the large-radius J form. */
  readonly form?: "UN" | "UNR" | "UNJ";
  /** Name of the size in its standard: "1/2", "#10", "M6", "G1/4". */
  readonly size: string;
  /** "2B", "6H", "4g6g", "A"; what is implied when the designation is silent. */
  readonly threadClass: string;
  readonly hand: "right" | "left";
  /** Included angle of the profile [deg]: 60 or 55. */
  readonly profileAngle: 60 | 55;
}

export type ThreadElement = "major" | "pitch" | "minor";
export type ThreadLimit = "basic" | "min" | "max";

/** One limit: a number in the thread's own unit, or the code that says why the standard leaves it open. */
export type Limit = number | Allowed;
/** Limits of one thread, as its standard prints them. */
export type ThreadLimits = {
  readonly [E in ThreadElement]: { readonly basic: number; readonly min: Limit; readonly max: Limit };
};
