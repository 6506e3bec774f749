/** Specific cutting force, spindle power and torque. */
import { positive, within } from "../check.ts";

/** Loss of specific force per degree of rake [1/deg]; common practice, about 1 to 2 %. */
const RAKE_SHARE = 0.015;

/**
 * Specific cutting force at a chip thickness.
 *
 *   kc = kc1.1·h^(−m)·(1 − 0.015·γ),   h in mm
 *
 * @param kc11 - kc1.1, specific force of a chip of 1 mm × 1 mm [MPa], scalar, > 0
 * @param exponent - m [-], scalar, 0 ≤ m < 1
 * @param chipThickness - h [mm], scalar, > 0
 * @param rakeAngle - γ, against the rake that kc1.1 was measured with [deg], scalar, −60 to 60
 * @returns kc [MPa]
 * @throws TradeError "range" when an argument is outside its limits
 * @source KIENZLE1952 COMMON
 * @example
 * specificForce(1800, 0.25, 0.1, 0) //=> 3200.9
 * specificForce(1800, 0.25, 1, 6) //=> 1638
 */
export function specificForce(kc11: number, exponent: number, chipThickness: number, rakeAngle: number): number {
  const m = within("exponent", exponent, 0, 1, undefined, "high");
  const share = 1 - RAKE_SHARE * within("rakeAngle", rakeAngle, -60, 60);
  return positive("kc11", kc11) * positive("chipThickness", chipThickness) ** -m * share;
}

/**
 * Power that the spindle motor draws for a removal rate.
 *
 *   P = Q·kc/(60000·η)
 *
 * @param removalRate - Q [cm³/min], scalar, > 0
 * @param specificForce - kc [MPa], scalar, > 0
 * @param efficiency - η, from motor to tool [-], scalar, 0 < η ≤ 1
 * @returns P [kW]
 * @throws TradeError "range" when an argument is outside its limits
 * @source KIENZLE1952 MH
 * @example
 * spindlePower(60, 2500, 1) //=> 2.5
 */
export function spindlePower(removalRate: number, specificForce: number, efficiency: number): number {
  const eta = within("efficiency", efficiency, 0, 1, undefined, "low");
  return (positive("removalRate", removalRate) * positive("specificForce", specificForce)) / (60_000 * eta);
}

/**
 * Spindle torque of a cutting power.
 *
 *   M = 60000·P/(2π·n)
 *
 * @param power - P, at the tool [kW], scalar, > 0
 * @param rpm - n [1/min], scalar, > 0
 * @returns M [N·m]
 * @throws TradeError "range" when an argument is not above 0
 * @source MH
 * @example
 * spindleTorque(5, 3000) //=> 15.915494
 */
export function spindleTorque(power: number, rpm: number): number {
  return (60_000 * positive("power", power)) / (2 * Math.PI * positive("rpm", rpm));
}
