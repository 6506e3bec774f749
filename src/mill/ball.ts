/**
 * Ball and bull nose cutters: the diameter that cuts, and the cusps that parallel passes leave.
 *
 * All of it is one circle of radius r, its lowest point on the floor: at a height y above the floor it is √(r² − (r − y)²) =
 * √(y·(2r − y)) wide to each side of its centre, which stands D/2 − r from the axis; there its tangent is arccos(1 − y/r) steep.
 * Two passes s apart meet half way between them, where √(y·(2r − y)) = s/2.
 */
import { notNegative, positive, within } from "../check.ts";

/**
 * Effective cutting diameter of a ball or bull nose: the widest diameter in the cut.
 *
 *   De = D − 2r + 2·√(ap·(2r − ap)),   ap < r;   D,   ap ≥ r;   r = D/2 is a ball
 *
 * @param diameter - D [mm], scalar, > 0
 * @param axialDepth - ap [mm], scalar, > 0
 * @param cornerRadius - r [mm], scalar, 0 ≤ r ≤ D/2
 * @returns De [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * ballDiameter(10, 1, 5) //=> 6.0000
 * ballDiameter(12, 0.5, 2) //=> 10.645751
 */
export function ballDiameter(diameter: number, axialDepth: number, cornerRadius: number): number {
  const D = positive("diameter", diameter);
  const ap = positive("axialDepth", axialDepth);
  const r = within("cornerRadius", cornerRadius, 0, D / 2, "length");
  return ap >= r ? D : D - 2 * r + 2 * Math.sqrt(ap * (2 * r - ap));
}

/**
 * Height of the cusp that parallel passes leave on a flat, exact.
 *
 *   h = r − √(r² − (s/2)²)
 *
 * @param cornerRadius - r, radius of the ball or corner [mm], scalar, > 0
 * @param stepover - s, distance of the passes [mm], scalar, 0 < s ≤ 2·r
 * @returns h [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * scallop(5, 6) //=> 1
 */
export function scallop(cornerRadius: number, stepover: number): number {
  const r = positive("cornerRadius", cornerRadius);
  const half = within("stepover", positive("stepover", stepover), 0, 2 * r, "length", "low") / 2;
  return (half * half) / (r + Math.sqrt((r - half) * (r + half)));
}

/**
 * Distance of parallel passes that leave a given cusp, the inverse of scallop.
 *
 *   s = 2·√(h·(2r − h))
 *
 * @param cornerRadius - r, radius of the ball or corner [mm], scalar, > 0
 * @param scallop - h [mm], scalar, 0 < h ≤ r
 * @returns s [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * stepover(5, 1) //=> 6
 */
export function stepover(cornerRadius: number, scallop: number): number {
  const r = positive("cornerRadius", cornerRadius);
  const h = within("scallop", positive("scallop", scallop), 0, r, "length", "low");
  return 2 * Math.sqrt(h * (2 * r - h));
}

/**
 * Tool cutting edge angle at the top of a cut with a ball or a corner radius: there the chip of the rounded edge is thickest.
 *
 *   κ = arccos(1 − ap/r),   ap < r;   90°,   ap ≥ r
 *
 * With κ and the effective diameter the chip formulas of straight edges hold: further down both the edge angle and the diameter are
 * smaller, and so is the chip.
 *
 * @param axialDepth - ap [mm], scalar, > 0
 * @param cornerRadius - r [mm], scalar, ≥ 0
 * @returns κ [deg]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED ISO3002
 * @example
 * noseAngle(1, 5) //=> 36.8699
 * noseAngle(3, 0.5) //=> 90
 */
export function noseAngle(axialDepth: number, cornerRadius: number): number {
  const ap = positive("axialDepth", axialDepth);
  const r = notNegative("cornerRadius", cornerRadius);
  return ap >= r ? 90 : (2 * Math.asin(Math.sqrt(ap / (2 * r))) * 180) / Math.PI;
}
