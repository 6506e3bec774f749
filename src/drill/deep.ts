/**
 * Depth: how speed and feed fall with it, and the pecks in which a hole is drilled. Lengths in any one unit.
 */

import { notNegative, positive, within } from "../check.ts";
import { interpolate } from "../numeric.ts";

/** Depth over diameter: share of speed and of feed that stays (Metal Cutting Tool Handbook, from memory). */
const SPEED: readonly (readonly [number, number])[] = [
  [2, 1],
  [3, 0.9],
  [4, 0.8],
  [5, 0.7],
  [6, 0.65],
  [8, 0.6],
];
const FEED: readonly (readonly [number, number])[] = [
  [2, 1],
  [3, 0.9],
  [4, 0.9],
  [5, 0.8],
  [8, 0.8],
];

/** First peck of a standard drill over its diameter, how each next one compares, and the least (common practice). */
export const PECKING = { first: 3, shrink: 0.6, least: 0.5 } as const;
/** Depth over diameter from which a short pilot hole guides a long drill (common practice). */
export const PILOT_FROM = 12;
/** How deep the pilot is, over the diameter (common practice: 2 to 3). */
export const PILOT_DEPTH = 3;

/** Shares of the speed and of the feed of a shallow hole. */
export interface DepthFactors {
  readonly speed: number;
  readonly feed: number;
}

/**
 * Shares of speed and feed that a plain twist drill keeps in a deep hole without coolant through the tool.
 *
 *   depth/D 3: 0.9, 0.9 · 4: 0.8, 0.9 · 5: 0.7, 0.8 · 6: 0.65, 0.8 · 8 and more: 0.6, 0.8; joined by lines, 1 up to 2
 *
 * @param depth - depth of the hole [mm], scalar, ≥ 0 (any length unit, both the same)
 * @param diameter - D [mm], scalar, > 0
 * @returns shares of speed and feed [-]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MCTI
 * @example
 * depthFactors(50, 10).speed //=> 0.7
 * depthFactors(20, 10).feed //=> 1
 */
export function depthFactors(depth: number, diameter: number): DepthFactors {
  const ratio = notNegative("depth", depth) / positive("diameter", diameter);
  return { speed: interpolate(SPEED, ratio), feed: interpolate(FEED, ratio) };
}

/**
 * Depths below the start at which a drill stops to clear its chips, the last one the bottom. Pecks start at `first`
 * diameters, each is `shrink` of the one before, none is planned below `least` diameters; then all of them are
 * shortened in one ratio so that they end at the bottom. So they never grow, and the last is never a sliver: the share
 * they keep is more than what all but the last would reach.
 *
 *   pᵢ = s·D·max(least, first·shrinkⁱ),   Σpᵢ = travel,   s ≤ 1
 *
 * @param travel - travel from the face to the bottom, point included [mm], scalar, > 0, at most 1000·D (any length unit, both the same)
 * @param diameter - D [mm], scalar, > 0
 * @param first - first peck over the diameter [-], scalar, > 0
 * @param shrink - each peck over the one before [-], scalar, 0 < shrink ≤ 1
 * @param least - least planned peck over the diameter [-], scalar, > 0, at most first
 * @returns depths, rising, the last equal to travel [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source COMMON
 * @example
 * peckDepths(25, 10) //=> [25]
 * peckDepths(48, 10) //=> [30, 48]
 */
export function peckDepths(
  travel: number,
  diameter: number,
  first: number = PECKING.first,
  shrink: number = PECKING.shrink,
  least: number = PECKING.least,
): number[] {
  const D = positive("diameter", diameter);
  within("travel", travel, 0, 1000 * D, "length", "low");
  positive("first", first);
  within("shrink", shrink, 0, 1, undefined, "low");
  within("least", least, 0, first, undefined, "low");
  const pecks: number[] = [];
  let sum = 0;
  let peck = first * D;
  while (sum < travel * (1 - 1e-9)) {
    pecks.push(peck);
    sum += peck;
    peck = Math.max(least * D, shrink * peck);
  }
  const scale = Math.min(1, travel / sum);
  let bottom = 0;
  return pecks.map((p, i) => {
    bottom += scale * p;
    return i === pecks.length - 1 ? travel : bottom;
  });
}
