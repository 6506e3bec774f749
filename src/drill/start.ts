/** How a drill starts and where it ends: feed by diameter, whether the point walks on the face, how far a deep hole runs off. */
import { notNegative, positive } from "../check.ts";
import { drillBucklingThrust, FREE_POINT } from "./strength.ts";

/** Feed per turn grows as this power of the diameter: the middle of the handbook's ranges from 1 to 30 mm. */
const FEED_POWER = 0.8;
/** Diameter [mm] that lists give a drill's feed per turn at. */
export const FEED_AT = 10;

/**
 * How far a hole runs off over its depth: without guidance a long drill of high-speed steel, and a solid carbide drill or one
 * that a pilot hole guides (judgement, the middle of what shops see).
 */
export const DRIFT = { free: 0.002, guided: 0.0007 } as const;

/**
 * Feed per turn of a drill of another diameter than the list gives it for.
 *
 *   f = f₁₀·(D/10)^0.8
 *
 * @param diameter - D [mm], scalar, > 0
 * @param feedAtTen - f₁₀, feed per turn at 10 mm [mm], scalar, > 0
 * @returns f [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MH COMMON
 * @example
 * drillFeed(5, 0.16) //=> 0.0918959
 */
export function drillFeed(diameter: number, feedAtTen: number): number {
  return positive("feedAtTen", feedAtTen) * (positive("diameter", diameter) / FEED_AT) ** FEED_POWER;
}

/**
 * Thrust over what the drill bears while its point is free to slide on the face: above 1 the point walks and wants a spot.
 *
 *   F/(π²·E·I/(2·L)²)
 *
 * @param thrust - F [N], scalar, ≥ 0
 * @param diameter - D [mm], scalar, > 0
 * @param length - L, from the holder to the point [mm], scalar, > 0
 * @param modulus - E [GPa], scalar, > 0
 * @returns ratio [-]
 * @throws TradeError "range" when an argument is outside its limits
 * @source SECTIONS ROARK
 * @example
 * walkRatio(258.6, 3.3, 42, 210) //=> 1.000124
 */
export function walkRatio(thrust: number, diameter: number, length: number, modulus: number): number {
  return notNegative("thrust", thrust) / drillBucklingThrust(diameter, length, modulus, FREE_POINT);
}

/**
 * How far the bottom of a drilled hole lies off the axis of its mouth, to be expected.
 *
 *   e = 0.002·t, guided or of solid carbide 0.0007·t
 *
 * @param depth - t [mm], scalar, ≥ 0 (any length unit: the answer is in it)
 * @param guided - a pilot hole guides the drill, or it is of solid carbide [-]
 * @returns e [mm]
 * @throws TradeError "range" when the depth is negative
 * @source COMMON
 * @example
 * holeDrift(100, false) //=> 0.2
 */
export function holeDrift(depth: number, guided: boolean): number {
  return notNegative("depth", depth) * (guided ? DRIFT.guided : DRIFT.free);
}
