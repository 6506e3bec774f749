/**
 * Thrust and torque of a twist drill with two lips, drilling into solid.
 *
 * Each lip cuts a chip of (f/2)·sin(σ/2) thickness and (D/2)/sin(σ/2) width; the force acts at half the radius. Rake and speed
 * change along a lip, and the chisel edge extrudes more than it cuts: these are estimates for a sharp drill.
 */
import { positive, within } from "../check.ts";

/**
 * Chip thickness at a lip of a twist drill.
 *
 *   h = (f/2)·sin(σ/2)
 *
 * @param feedPerRev - f [mm], scalar, > 0
 * @param pointAngle - σ [deg], scalar, 0 < σ ≤ 180
 * @returns h [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source ISO3002
 * @example
 * drillChip(0.2, 118) //=> 0.085717
 */
export function drillChip(feedPerRev: number, pointAngle: number): number {
  return (positive("feedPerRev", feedPerRev) / 2) * halfSine(pointAngle);
}

/**
 * Drilling torque.
 *
 *   M = kc·f·D²/8,   kc = kc1.1·h^(−m)
 *
 * @param diameter - D [mm], scalar, > 0
 * @param feedPerRev - f [mm], scalar, > 0
 * @param kc11 - kc1.1 [MPa], scalar, > 0
 * @param exponent - m [-], scalar, 0 ≤ m < 1
 * @param pointAngle - σ [deg], scalar, 0 < σ ≤ 180
 * @returns M [N·m]
 * @throws TradeError "range" when an argument is outside its limits
 * @source KIENZLE1952
 * @example
 * drillTorque(10, 0.2, 1800, 0.25, 118) //=> 8.316606
 */
export function drillTorque(
  diameter: number,
  feedPerRev: number,
  kc11: number,
  exponent: number,
  pointAngle: number,
): number {
  const D = positive("diameter", diameter);
  return (specific(feedPerRev, kc11, exponent, pointAngle) * feedPerRev * D * D) / 8 / 1000;
}

/**
 * Drilling thrust: feed force of the two lips (half the cutting force, turned by half the point angle), raised for the chisel
 * edge. The chisel factor is a judgement: about 1.5 for common points, less for thinned ones.
 *
 *   F = c·½·kc·f·(D/2)·sin(σ/2),   kc = kc1.1·h^(−m)
 *
 * @param diameter - D [mm], scalar, > 0
 * @param feedPerRev - f [mm], scalar, > 0
 * @param kc11 - kc1.1 [MPa], scalar, > 0
 * @param exponent - m [-], scalar, 0 ≤ m < 1
 * @param pointAngle - σ [deg], scalar, 0 < σ ≤ 180
 * @param chiselFactor - c [-], scalar, > 0
 * @returns F [N]
 * @throws TradeError "range" when an argument is outside its limits
 * @source KIENZLE1952 COMMON
 * @example
 * drillThrust(10, 0.2, 1800, 0.25, 118, 1.5) //=> 2138.6
 */
export function drillThrust(
  diameter: number,
  feedPerRev: number,
  kc11: number,
  exponent: number,
  pointAngle: number,
  chiselFactor: number,
): number {
  const c = positive("chiselFactor", chiselFactor);
  const D = positive("diameter", diameter);
  return c * 0.5 * specific(feedPerRev, kc11, exponent, pointAngle) * feedPerRev * (D / 2) * halfSine(pointAngle);
}

function halfSine(pointAngle: number): number {
  return Math.sin((within("pointAngle", pointAngle, 0, 180, undefined, "low") * Math.PI) / 360);
}

function specific(feedPerRev: number, kc11: number, exponent: number, pointAngle: number): number {
  const m = within("exponent", exponent, 0, 1, undefined, "high");
  return positive("kc11", kc11) * drillChip(feedPerRev, pointAngle) ** -m;
}
