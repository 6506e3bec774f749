/** Surface speed against radial depth: an edge that is out of the cut most of the turn stays cool and lasts as long at more speed. */
import { positive, within } from "../check.ts";

/** Radial depth that the list's speeds are meant for, of the cutter: side milling with half of it. */
export const SPEED_AT = 0.5;
/**
 * Least and largest factor: a full slot against half the cutter, and a thin cut. Common practice has thin cuts 25 to 60 % faster
 * than full slots, so the span is held to 1.6.
 */
export const SPEED_SPAN = { least: 0.84, most: 1.35 } as const;

/**
 * Factor on the list's surface speed for a radial depth, for the same life of the edge.
 *
 *   (SPEED_AT·D/ae)^n, from 0.84 to 1.35
 *
 * Measured life falls in proportion to the radial depth (10 to 70 % of D) and with the fourth power of the speed (Tatar et al. 2020):
 * Taylor's T ~ V^(−1/n) and T ~ ae^(−1) give V ~ ae^(−n).
 *
 * @param radialDepth - ae of the straight cut with the same engagement [mm], scalar, > 0, at most D
 * @param diameter - D [mm], scalar, > 0
 * @param taylorExponent - n [-], scalar, 0 < n < 1
 * @returns factor [-]
 * @throws TradeError "range" when an argument is outside its limits
 * @source TATAR2020 TAYLOR1907 COMMON
 * @example
 * engagedSpeed(5, 10, 0.25) //=> 1
 * engagedSpeed(2, 10, 0.25) //=> 1.25743
 */
export function engagedSpeed(radialDepth: number, diameter: number, taylorExponent: number): number {
  const D = positive("diameter", diameter);
  const ae = within("radialDepth", positive("radialDepth", radialDepth), 0, D, "length");
  const n = within("taylorExponent", taylorExponent, 0, 1, undefined, "both");
  return Math.min(SPEED_SPAN.most, Math.max(SPEED_SPAN.least, ((SPEED_AT * D) / ae) ** n));
}
