/** The inverse questions: how far may a tool stick out, how much force may it take, for a deflection that is allowed. */
import { finite, positive } from "../check.ts";
import { type BeamOptions, type Segment, toolDeflection } from "./beam.ts";

/**
 * Longest stick-out of a uniform round bar for a deflection, by elementary beam theory (bending alone).
 *
 *   L = ∛(3·E·I·δ/F),   I = π·d⁴/64
 *
 * Inverse of {@link neckDeflection}. Shear would take about 1 % off at 4 diameters and more below.
 *
 * @param force - F [N], scalar, > 0
 * @param deflectionLimit - δ [mm], scalar, > 0
 * @param diameter - d [mm], scalar, > 0
 * @param modulus - E [GPa], scalar, > 0
 * @returns L [mm]
 * @throws TradeError "range" when an argument is not above 0
 * @source ROARK
 * @example
 * stickOutLimit(100, 0.01, 10, 600) //=> 44.539719
 */
export function stickOutLimit(force: number, deflectionLimit: number, diameter: number, modulus: number): number {
  const F = positive("force", force);
  const delta = positive("deflectionLimit", deflectionLimit);
  const EI = (1000 * positive("modulus", modulus) * Math.PI * positive("diameter", diameter) ** 4) / 64;
  return positive("force", finite("force", Math.cbrt((3 * EI * delta) / F)));
}

/**
 * Largest force on a tool for a deflection at that force.
 *
 *   F = δ/(deflection of a unit force)
 *
 * @param deflectionLimit - δ [mm], scalar, > 0
 * @param segments - cylinders and cones from the tip to the holder; lengths and diameters [mm], > 0
 * @param opts - as for deflectionParts; opts.modulus [GPa]; opts.poisson [-]
 * @returns F [N]
 * @throws TradeError "range" when an argument is outside its limits
 * @source ROARK
 * @example
 * forceLimit(0.01, [{ tipDiameter: 10, holderDiameter: 10, length: 40 }], { modulus: 600, poisson: 0.22, shear: false, stepFlexibility: false }) //=> 138.05827
 */
export function forceLimit(deflectionLimit: number, segments: readonly Segment[], opts: BeamOptions): number {
  return positive("deflectionLimit", deflectionLimit) / toolDeflection(1, segments, opts);
}
