/** Form of the groove that a swept cutter leaves: overcut of the flanks, flank angle, crest. Lengths in any one unit. */
import { positive } from "../check.ts";
import { TradeError } from "../errors.ts";
import { flankTangent } from "./path.ts";
import { grooveHalfWidth, type SingleProfile } from "./sweep.ts";

/**
 * How much wider than the cutter's own profile the helix makes the groove, on each flank.
 *
 *   δ = W(R) − (f/2 + (Rc − |R − e|)·t)
 *
 * @param cutter - cutter and helix; cutter.cutterDiameter, cutter.tipFlat, cutter.lead, cutter.profileHeight [mm], cutter.profileAngle [deg]
 * @param pathRadius - e [mm], scalar, > 0
 * @param radius - R [mm], scalar, |e − Rc| ≤ R ≤ e + Rc
 * @returns δ [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * flankOvercut({ cutterDiameter: 6, tipFlat: 0.15625, profileAngle: 60, lead: 1.25 }, 1, 3.59405059) //=> 0.02508376
 */
export function flankOvercut(cutter: SingleProfile, pathRadius: number, radius: number): number {
  const Rc = cutter.cutterDiameter / 2;
  const height = Math.min(Math.max(Rc - Math.abs(radius - pathRadius), 0), cutter.profileHeight ?? Rc);
  const still = height * flankTangent(cutter.profileAngle);
  return grooveHalfWidth(cutter, pathRadius, radius) - cutter.tipFlat / 2 - still;
}

/**
 * The same by its leading term; rival of flankOvercut, about 2 % low for close-fitting cutters, wrong near the tip.
 *
 *   δ ≈ (L/2π)²·|R − e|/(2·t·R·e)
 *
 * @param lead - L [mm], scalar, > 0
 * @param profileAngle - included angle of the profile [deg]
 * @param pathRadius - e [mm], scalar, > 0
 * @param radius - R [mm], scalar, > 0
 * @returns δ [mm]
 * @throws TradeError "range" when an argument is not above 0
 * @source DERIVED
 * @example
 * approximateOvercut(1.25, 60, 1, 3.59405059) //=> 0.02473917
 */
export function approximateOvercut(lead: number, profileAngle: number, pathRadius: number, radius: number): number {
  const c = positive("lead", lead) / (2 * Math.PI);
  const e = positive("pathRadius", pathRadius);
  const R = positive("radius", radius);
  return (c * c * Math.abs(R - e)) / (2 * flankTangent(profileAngle) * R * e);
}

/**
 * Width that is left of the thread's crest at the wall (the hole inside, the blank outside); below 0 the grooves meet
 * and the wall itself is cut away.
 *
 *   b = P − 2·W(R)
 *
 * @param cutter - cutter and helix; cutter.cutterDiameter, cutter.tipFlat, cutter.lead, cutter.profileHeight [mm], cutter.profileAngle [deg]
 * @param pitch - P [mm], scalar, > 0
 * @param pathRadius - e [mm], scalar, > 0
 * @param wallDiameter - 2·R, hole or blank [mm], scalar, > 0
 * @returns b [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * sweptCrestFlat({ cutterDiameter: 6, tipFlat: 0.15625, profileAngle: 60, lead: 1.25 }, 1.25, 1, 6.646835307) //=> 0.263890
 */
export function sweptCrestFlat(cutter: SingleProfile, pitch: number, pathRadius: number, wallDiameter: number): number {
  return positive("pitch", pitch) - 2 * grooveHalfWidth(cutter, pathRadius, positive("wallDiameter", wallDiameter) / 2);
}

/**
 * Error of the flank angle that the sweep leaves between two diameters (negative: steeper than the cutter).
 *
 *   Δα = atan((W1 − W2)/(R2 − R1)) − α/2, with the sign of W turned for external threads
 *
 * @param cutter - cutter and helix; cutter.cutterDiameter, cutter.tipFlat, cutter.lead, cutter.profileHeight [mm], cutter.profileAngle [deg]
 * @param pathRadius - e [mm], scalar, > 0
 * @param diameter1 - first diameter [mm], scalar, > 0
 * @param diameter2 - second diameter [mm], scalar, > 0, not the first
 * @returns Δα [deg]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * flankAngleError({ cutterDiameter: 6, tipFlat: 0.15625, profileAngle: 60, lead: 1.25 }, 1, 6.646835307, 7.188101184) //=> -0.123775
 */
export function flankAngleError(
  cutter: SingleProfile,
  pathRadius: number,
  diameter1: number,
  diameter2: number,
): number {
  const across = Math.abs(positive("diameter2", diameter2) - positive("diameter1", diameter1)) / 2;
  if (across === 0)
    throw new TradeError("range", "diameter2", diameter2, { is: "other-than-argument", argument: "diameter1" });
  const W1 = grooveHalfWidth(cutter, pathRadius, diameter1 / 2);
  const W2 = grooveHalfWidth(cutter, pathRadius, diameter2 / 2);
  return (Math.atan(Math.abs(W1 - W2) / across) * 180) / Math.PI - cutter.profileAngle / 2;
}
