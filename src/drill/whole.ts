/**
 * Thrust and torque of a whole twist drill: lips, chisel edge, and the friction of chips and margins. Two rival forms that
 * share the chisel edge of Shaw and Oxford.
 *
 * Shaw and Oxford took the specific energy of drilling to fall as (f·D)^−0.2 and found, with r = c/D, chisel edge over diameter,
 *
 *   M = K·f^0.8·D^1.8·A,   A = (1 − r²)/(1 + r)^0.2 + 3.2·r^1.8
 *   F = 2·K·f^0.8·D^0.8·B + K·D²·J,   B = (1 − r)/(1 + r)^0.2 + 2.2·r^0.8,   J = r²
 *
 * in inches, with K = 0.087·(Brinell hardness) for steels. Machinery's Handbook prints A, B and J as tables; the brackets
 * above give each of its entries within 3 % (J: its own rounding). That is the handbook form below.
 *
 * The other form takes K from Kienzle's law of the material, so that the shop's own kc1.1 counts. Lips alone carry
 * kc·f·D²/8; a chip that is curled and dragged through a hole costs CONFINED times as much (Paucksch). Both laws are made
 * to agree without a chisel edge at REFERENCE, a 1/2 in drill with a chip of about 0.1 mm: where Kienzle's measurements
 * and those of Shaw and Oxford (drills of 1/4 to 1 in) overlap. Away from it diameter and feed follow Shaw and Oxford,
 * whose size effect makes small drills work harder than Kienzle's law says.
 */
import { positive, within } from "../check.ts";
import { interpolate } from "../numeric.ts";
import { drillTorque } from "./force.ts";

/** Chisel edge over diameter of a drill of standard design, and of a split or thinned point (Machinery's Handbook). */
export const CHISEL = { standard: 0.18, split: 0.03 } as const;
/** Torque in a closed hole over that of the free lips: friction of chips and margins (Paucksch, from memory). */
export const CONFINED = 1.2;
/** Diameter and feed per turn [mm] at which Kienzle's law and that of Shaw and Oxford are made to agree. */
const REFERENCE = { diameter: 12.7, feed: 0.23 } as const;
/** Longest chisel edge of the printed tables, over the diameter. */
const LONGEST_CHISEL = 0.4;
const INCH = 25.4;
/**
 * Web of a twist drill at its point over the diameter, by diameter [mm]: 0.28 to 0.20 below 1.25 mm, 0.19 to 0.15 from 1.5
 * to 12 mm, 0.145 to 0.125 above (Kosilova and Meshcheryakov, from memory).
 */
const WEB: readonly (readonly [number, number])[] = [
  [0.25, 0.28],
  [1.25, 0.2],
  [1.5, 0.19],
  [12, 0.15],
  [13, 0.145],
  [40, 0.125],
];
/** Length of the chisel edge over the web at 118° (Fundamentals of Tool Design, 6th edition, p. 83). */
const CHISEL_OVER_WEB = 1.15;

/**
 * Web at the point of a standard twist drill, over its diameter.
 *
 *   table by diameter
 *
 * @param diameter - D [mm], scalar, > 0
 * @returns web over diameter [-]
 * @throws TradeError "range" when the diameter is not above 0
 * @source KOSILOVA
 * @example
 * webRatio(1.5) //=> 0.19
 * webRatio(12) //=> 0.15
 */
export function webRatio(diameter: number): number {
  return interpolate(WEB, positive("diameter", diameter));
}

/**
 * Length of the chisel edge of a standard twist drill, over its diameter.
 *
 *   c/D = 1.15·web/D
 *
 * @param diameter - D [mm], scalar, > 0
 * @returns c/D [-]
 * @throws TradeError "range" when the diameter is not above 0
 * @source KOSILOVA SHAW1957
 * @example
 * standardChisel(12) //=> 0.1725
 */
export function standardChisel(diameter: number): number {
  return CHISEL_OVER_WEB * webRatio(diameter);
}

/** What the chisel edge does to torque (A), to thrust (B) and by indentation (J) [-]. */
export interface ChiselFactors {
  readonly torque: number;
  readonly thrust: number;
  readonly indentation: number;
}

/**
 * Factors of the chisel edge.
 *
 *   A = (1 − r²)/(1 + r)^0.2 + 3.2·r^1.8,   B = (1 − r)/(1 + r)^0.2 + 2.2·r^0.8,   J = r²
 *
 * @param chiselRatio - r, length of the chisel edge over the diameter [-], scalar, 0 to 0.4; 0 over a pilot hole
 * @returns torque A, thrust B, indentation J [-]
 * @throws TradeError "range" when the ratio is outside its limits
 * @source SHAW1957 MH31
 * @example
 * chiselFactors(0.18).torque //=> 1.0822
 * chiselFactors(0).thrust //=> 1
 */
export function chiselFactors(chiselRatio: number): ChiselFactors {
  const r = within("chiselRatio", chiselRatio, 0, LONGEST_CHISEL);
  const side = (1 + r) ** 0.2;
  return {
    torque: (1 - r * r) / side + 3.2 * r ** 1.8,
    thrust: (1 - r) / side + 2.2 * r ** 0.8,
    indentation: r * r,
  };
}

/**
 * Work material factor of a whole drill from Kienzle's law.
 *
 *   K = 1.2·kc·f₀·D₀²/8/(f₀^0.8·D₀^1.8), in inches, at D₀ 12.7 mm and f₀ 0.23 mm
 *
 * @param kc11 - kc1.1 [MPa], scalar, > 0
 * @param exponent - m [-], scalar, 0 ≤ m < 1
 * @param pointAngle - σ [deg], scalar, 0 < σ ≤ 180
 * @returns K [MPa]
 * @throws TradeError "range" when an argument is outside its limits
 * @source SHAW1957 KIENZLE1952 PAUCKSCH
 * @example
 * drillWorkFactor(2220, 0.14, 118) //=> 156.4913
 */
export function drillWorkFactor(kc11: number, exponent: number, pointAngle: number): number {
  const { diameter, feed } = REFERENCE;
  const torque = CONFINED * 1000 * drillTorque(diameter, feed, kc11, exponent, pointAngle);
  return torque / (INCH ** 3 * (feed / INCH) ** 0.8 * (diameter / INCH) ** 1.8);
}

/**
 * Torque of a whole drill from Kienzle's law.
 *
 *   M = K·f^0.8·D^1.8·A, in inches, K of drillWorkFactor
 *
 * @param diameter - D [mm], scalar, > 0
 * @param feedPerRev - f [mm], scalar, > 0
 * @param kc11 - kc1.1 [MPa], scalar, > 0
 * @param exponent - m [-], scalar, 0 ≤ m < 1
 * @param pointAngle - σ [deg], scalar, 0 < σ ≤ 180
 * @param chiselRatio - length of the chisel edge over the diameter [-], scalar, 0 to 0.4
 * @returns M [N·m]
 * @throws TradeError "range" when an argument is outside its limits
 * @source SHAW1957 KIENZLE1952 PAUCKSCH
 * @example
 * wholeDrillTorque(10, 0.2, 1800, 0.25, 118, 0.18) //=> 11.2501
 */
export function wholeDrillTorque(
  diameter: number,
  feedPerRev: number,
  kc11: number,
  exponent: number,
  pointAngle: number,
  chiselRatio: number,
): number {
  return handbookDrillTorque(diameter, feedPerRev, drillWorkFactor(kc11, exponent, pointAngle), chiselRatio, 1);
}

/**
 * Thrust of a whole drill from Kienzle's law.
 *
 *   F = 2·K·f^0.8·D^0.8·B + K·D²·J, in inches, K of drillWorkFactor
 *
 * @param diameter - D [mm], scalar, > 0
 * @param feedPerRev - f [mm], scalar, > 0
 * @param kc11 - kc1.1 [MPa], scalar, > 0
 * @param exponent - m [-], scalar, 0 ≤ m < 1
 * @param pointAngle - σ [deg], scalar, 0 < σ ≤ 180
 * @param chiselRatio - length of the chisel edge over the diameter [-], scalar, 0 to 0.4
 * @returns F [N]
 * @throws TradeError "range" when an argument is outside its limits
 * @source SHAW1957 KIENZLE1952 PAUCKSCH
 * @example
 * wholeDrillThrust(10, 0.2, 1800, 0.25, 118, 0.18) //=> 3340.00
 */
export function wholeDrillThrust(
  diameter: number,
  feedPerRev: number,
  kc11: number,
  exponent: number,
  pointAngle: number,
  chiselRatio: number,
): number {
  return handbookDrillThrust(diameter, feedPerRev, drillWorkFactor(kc11, exponent, pointAngle), chiselRatio, 1);
}

/**
 * Torque of a drill in the handbook's form.
 *
 *   M = K·f^0.8·D^1.8·A·W, in inches
 *
 * @param diameter - D [mm], scalar, > 0
 * @param feedPerRev - f [mm], scalar, > 0
 * @param workMaterialFactor - K [MPa], scalar, > 0 (lbf/in² over 145.04; for steels 0.087 of the Brinell hardness in MPa)
 * @param chiselRatio - length of the chisel edge over the diameter [-], scalar, 0 to 0.4
 * @param wear - W, 1 for a sharp drill [-], scalar, > 0
 * @returns M [N·m]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MH31 SHAW1957
 * @example
 * handbookDrillTorque(10, 0.2, 165.47, 0.18, 1) //=> 11.3705
 */
export function handbookDrillTorque(
  diameter: number,
  feedPerRev: number,
  workMaterialFactor: number,
  chiselRatio: number,
  wear: number,
): number {
  const { torque } = chiselFactors(chiselRatio);
  return (handbookFree(diameter, feedPerRev, workMaterialFactor, wear) * torque) / 1000;
}

/**
 * Thrust of a drill in the handbook's form.
 *
 *   F = (2·K·f^0.8·D^0.8·B + K·D²·J)·W, in inches
 *
 * @param diameter - D [mm], scalar, > 0
 * @param feedPerRev - f [mm], scalar, > 0
 * @param workMaterialFactor - K [MPa], scalar, > 0 (of thrust, where the handbook gives it one of its own)
 * @param chiselRatio - length of the chisel edge over the diameter [-], scalar, 0 to 0.4
 * @param wear - W, 1 for a sharp drill [-], scalar, > 0
 * @returns F [N]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MH31 SHAW1957
 * @example
 * handbookDrillThrust(10, 0.2, 165.47, 0.18, 1) //=> 3375.75
 */
export function handbookDrillThrust(
  diameter: number,
  feedPerRev: number,
  workMaterialFactor: number,
  chiselRatio: number,
  wear: number,
): number {
  const { thrust, indentation } = chiselFactors(chiselRatio);
  const free = handbookFree(diameter, feedPerRev, workMaterialFactor, wear);
  return (2 * free * thrust) / diameter + workMaterialFactor * wear * diameter ** 2 * indentation;
}

/** K·f^0.8·D^1.8·W [N·mm]. */
function handbookFree(diameter: number, feedPerRev: number, workMaterialFactor: number, wear: number): number {
  const D = positive("diameter", diameter) / INCH;
  const f = positive("feedPerRev", feedPerRev) / INCH;
  return positive("workMaterialFactor", workMaterialFactor) * positive("wear", wear) * f ** 0.8 * D ** 1.8 * INCH ** 3;
}
