/**
 * Reach: whether a tool gets down to a depth with its holder, shank and neck clear of the part, and what the holder grips.
 * Heights are counted from the tip; with the tip at a depth below the face, what stands lower than that depth is in the hole.
 */
import { notNegative, positive } from "../check.ts";
import type { Segment } from "./beam.ts";

/**
 * Least stick-out for a depth.
 *
 *   s = t + c
 *
 * @param depth - t, how far the tip goes below the face that the holder would meet [mm], scalar, ≥ 0
 * @param clearance - c, between holder and face [mm], scalar, ≥ 0
 * @returns s [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * leastStickOut(30, 2) //=> 32
 */
export function leastStickOut(depth: number, clearance: number): number {
  return notNegative("depth", depth) + notNegative("clearance", clearance);
}

/**
 * Where the full shank begins: the holder must not grip flutes, cutting part or neck.
 *
 *   g = max(cutting length, neck length)
 *
 * @param cuttingLength - from the tip to the end of the cutting part or flutes [mm], scalar, ≥ 0; 0 when unknown
 * @param neckLength - from the tip to the end of the neck [mm], scalar, ≥ 0; 0 without a neck
 * @returns g from the tip [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source COMMON
 * @example
 * fullShankFrom(13, 30) //=> 30
 */
export function fullShankFrom(cuttingLength: number, neckLength: number): number {
  return Math.max(notNegative("cuttingLength", cuttingLength), notNegative("neckLength", neckLength));
}

/** What of a tool would meet the part: which piece (the number of pieces: the holder), and how much too short the tool is. */
export interface ReachFault {
  /** Index into the pieces; equal to their number for the holder. */
  readonly piece: number;
  /** How much higher that piece would have to begin [mm]. */
  readonly missing: number;
}

/** An opening that the tool goes into, and how. */
export interface Opening {
  /** Diameter of the hole or bore, or width of the slot [mm]. */
  readonly width: number;
  /** How far the tip goes below its mouth [mm]. */
  readonly depth: number;
  /** Radius of the path of the tool's centre, 0 when it goes straight in [mm]. */
  readonly pathRadius: number;
  /** Room wanted between the part's face and what cannot enter [mm]. */
  readonly clearance: number;
  /** Room wanted per side between wall and what enters [mm]. */
  readonly sideRoom: number;
}

/**
 * First piece of a tool that cannot follow its tip into an opening: it is too thick to enter and begins too low to stay out.
 * The widest place of a piece counts; of a cone only the part that is too thick.
 *
 *   enters when d/2 + e + b ≤ w/2; stays out when its beginning h ≥ t + c
 *
 * @param pieces - from the tip to the holder, without the cutting part that makes the hole; the first begins at `from` [mm]
 * @param from - where the first piece begins, from the tip [mm], scalar, ≥ 0
 * @param holderDiameter - diameter of the holder's nose [mm], scalar, > 0; undefined when unknown: it is taken not to enter
 * @param opening - opening.width, opening.depth, opening.pathRadius, opening.clearance, opening.sideRoom [mm]
 * @returns the piece and what is missing [mm], or undefined when the tool reaches [-]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * reachFault([{ tipDiameter: 6, holderDiameter: 6, length: 30 }], 10, undefined, { width: 5, depth: 15, pathRadius: 0, clearance: 1, sideRoom: 0 })?.missing //=> 6
 */
export function reachFault(
  pieces: readonly Segment[],
  from: number,
  holderDiameter: number | undefined,
  opening: Opening,
): ReachFault | undefined {
  const widest =
    positive("width", opening.width) - 2 * (notNegative("pathRadius", opening.pathRadius) + opening.sideRoom);
  const wanted = leastStickOut(opening.depth, opening.clearance);
  const slack = 1e-9 * Math.abs(widest);
  // The holder is one piece more, as thick all along.
  const nose = holderDiameter === undefined ? Number.POSITIVE_INFINITY : positive("holderDiameter", holderDiameter);
  let height = notNegative("from", from);
  for (const [piece, { tipDiameter: p, holderDiameter: r, length }] of [
    ...pieces,
    { tipDiameter: nose, holderDiameter: nose, length: 1 },
  ].entries()) {
    if (Math.max(p, r) > widest + slack) {
      // A cone that widens enters up to the height where it is as wide as allowed.
      const free = p > widest ? 0 : (length * (widest - p)) / (r - p);
      const missing = wanted - (height + free);
      if (missing > 1e-9) return { piece, missing };
    }
    height += positive("pieces", length);
  }
  return undefined;
}
