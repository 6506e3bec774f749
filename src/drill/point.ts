/** The point of a drill, and the feed travel it costs. */
import { notNegative, positive, within } from "../check.ts";

/**
 * Length of a drill's point.
 *
 *   l = (D/2)/tan(σ/2)
 *
 * @param diameter - D [mm], scalar, > 0 (any length unit: the answer is in it)
 * @param pointAngle - σ, included angle of the point [deg], scalar, 0 < σ ≤ 180
 * @returns l [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MH
 * @example
 * pointLength(10, 118) //=> 3.0043031
 * pointLength(10, 90) //=> 5
 */
export function pointLength(diameter: number, pointAngle: number): number {
  const half = (within("pointAngle", pointAngle, 0, 180, undefined, "low") * Math.PI) / 360;
  const D = positive("diameter", diameter);
  return pointAngle === 180 ? 0 : D / 2 / Math.tan(half);
}

/**
 * Feed travel of a drill from the face to a full-diameter depth.
 *
 *   l = t + (D/2)/tan(σ/2) + b
 *
 * @param depth - t, full-diameter depth [mm], scalar, > 0 (any length unit: all three the same)
 * @param diameter - D [mm], scalar, > 0
 * @param pointAngle - σ, included angle of the point [deg], scalar, 0 < σ ≤ 180
 * @param breakthrough - b, extra travel of a through hole [mm], scalar, ≥ 0
 * @returns l [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MH
 * @example
 * drillTravel(20, 10, 118, 1) //=> 24.004303
 */
export function drillTravel(depth: number, diameter: number, pointAngle: number, breakthrough: number): number {
  return positive("depth", depth) + pointLength(diameter, pointAngle) + notNegative("breakthrough", breakthrough);
}
