/** Angle of engagement of a cutter on a straight wall. */
import { positive, within } from "../check.ts";

/**
 * Angle over which a tooth cuts on a straight wall, from the finished wall to where it leaves (or enters) the stock.
 *
 *   φe = arccos(1 − 2·ae/D), reckoned as 2·arcsin √(ae/D), which keeps its figures at small depths
 *
 * @param radialDepth - ae [mm], scalar, 0 < ae ≤ D
 * @param diameter - D [mm], scalar, > 0
 * @returns φe [deg]
 * @throws TradeError "range" when D is not above 0 or ae is not in (0, D]
 * @source MARTELLOTTI1941
 * @example
 * engagementAngle(2, 10) //=> 53.130102
 */
export function engagementAngle(radialDepth: number, diameter: number): number {
  const D = positive("diameter", diameter);
  const ae = within("radialDepth", positive("radialDepth", radialDepth), 0, D, "length", "low");
  return (2 * Math.asin(Math.sqrt(ae / D)) * 180) / Math.PI;
}

/**
 * Radial depth that has a given angle of engagement on a straight wall.
 *
 *   ae = (D/2)·(1 − cos φe), reckoned as D·sin²(φe/2)
 *
 * @param angle - φe [deg], scalar, 0 < φe ≤ 180
 * @param diameter - D [mm], scalar, > 0
 * @returns ae [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MARTELLOTTI1941
 * @example
 * engagedDepth(53.130102354, 10) //=> 2.0000
 */
export function engagedDepth(angle: number, diameter: number): number {
  const half = (within("angle", angle, 0, 180, undefined, "low") * Math.PI) / 360;
  return positive("diameter", diameter) * Math.sin(half) ** 2;
}
