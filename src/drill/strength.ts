/**
 * What a twist drill's fluted part bears: torsion and buckling. A section of two round flutes with a land of 0.59 of the
 * diameter, scaled with the diameter. Its figures come from a computation of the section, not from a formula.
 *
 * Torsion: the section at the point, where the web is thinnest (0.155·D). Buckling: web 0.18·D, its mean over the flutes.
 * A helix turns the strong and the weak direction past each other, so that the drill bends like a bar of their harmonic mean.
 */
import { notNegative, positive, within } from "../check.ts";

/** Section modulus of torsion over D³: torque over largest shear stress (a solid bar has 0.196). */
export const TORSION_MODULUS = 0.0203;
/** Second moment of area over D⁴: weak direction, strong direction (a solid bar has 0.0491). */
export const WEAK_MOMENT = 0.00418;
export const STRONG_MOMENT = 0.0331;
/** Their harmonic mean. */
export const BENDING_MOMENT = (2 * WEAK_MOMENT * STRONG_MOMENT) / (WEAK_MOMENT + STRONG_MOMENT);
/** Free length over real length in Euler's formula: held in the chuck, the point held by the hole's centre but free to tilt. */
export const HELD_POINT = 0.7;
/** The same for a point that walks on the face. */
export const FREE_POINT = 2;

/**
 * Largest shear stress of a twist drill under a torque.
 *
 *   τ = M/(0.0203·D³)
 *
 * @param torque - M [N·m], scalar, ≥ 0
 * @param diameter - D [mm], scalar, > 0
 * @returns τ [MPa]
 * @throws TradeError "range" when an argument is outside its limits
 * @source SECTIONS
 * @example
 * drillShear(10, 10) //=> 492.6108
 */
export function drillShear(torque: number, diameter: number): number {
  return (1000 * notNegative("torque", torque)) / (TORSION_MODULUS * positive("diameter", diameter) ** 3);
}

/**
 * Torque that breaks a twist drill. Carbide breaks where the largest principal stress, which in torsion is the shear
 * stress itself, reaches the rupture strength R; high-speed steel where the equivalent stress of von Mises does.
 *
 *   M = 0.0203·D³·R (carbide), 0.0203·D³·R/√3 (high-speed steel)
 *
 * @param diameter - D [mm], scalar, > 0
 * @param ruptureStrength - R [MPa], scalar, > 0
 * @param brittle - true for carbide [-]
 * @returns M [N·m]
 * @throws TradeError "range" when an argument is outside its limits
 * @source SECTIONS ROARK
 * @example
 * drillBreakingTorque(5, 3500, false) //=> 5.127592
 */
export function drillBreakingTorque(diameter: number, ruptureStrength: number, brittle: boolean): number {
  const shear = positive("ruptureStrength", ruptureStrength) / (brittle ? 1 : Math.sqrt(3));
  return (TORSION_MODULUS * positive("diameter", diameter) ** 3 * shear) / 1000;
}

/**
 * Thrust under which a twist drill buckles (Euler).
 *
 *   F = π²·E·I/(k·L)²,   I = 0.0074·D⁴
 *
 * @param diameter - D [mm], scalar, > 0
 * @param length - L, from the holder or the full shank to the point [mm], scalar, > 0
 * @param modulus - E [GPa], scalar, > 0
 * @param endFactor - k, free length over length [-], scalar, 0.5 to 2; 0.7 with a held point, 2 with one that walks
 * @returns F [N]
 * @throws TradeError "range" when an argument is outside its limits
 * @source SECTIONS ROARK
 * @example
 * drillBucklingThrust(5, 60, 210, 0.7) //=> 5450.782
 */
export function drillBucklingThrust(diameter: number, length: number, modulus: number, endFactor: number): number {
  const k = within("endFactor", endFactor, 0.5, 2);
  const I = BENDING_MOMENT * positive("diameter", diameter) ** 4;
  return (Math.PI ** 2 * 1000 * positive("modulus", modulus) * I) / (k * positive("length", length)) ** 2;
}
