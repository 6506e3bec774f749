/** Chip thickness of a milling cut on a straight wall, and the feed that makes a wanted one. */
import { positive, within } from "../check.ts";

/** Sine of the angle at which the chip is thickest: the end of engagement, or 90° once the cut is half the cutter. */
function thickest(radialDepth: number, diameter: number): number {
  const D = positive("diameter", diameter);
  const x = within("radialDepth", positive("radialDepth", radialDepth), 0, D, "length", "low") / D;
  return x >= 0.5 ? 1 : 2 * Math.sqrt(x * (1 - x));
}

function sineOfEdge(edgeAngle: number): number {
  return Math.sin((within("edgeAngle", edgeAngle, 0, 90, undefined, "low") * Math.PI) / 180);
}

/**
 * Largest chip thickness. The path of a tooth is taken as a circle; the true trochoid differs by less than fz/D.
 *
 *   hmax = fz·sin κr·sin φe,   ae < D/2;   fz·sin κr,   ae ≥ D/2
 *
 * @param feedPerTooth - fz [mm], scalar, > 0
 * @param radialDepth - ae [mm], scalar, 0 < ae ≤ D
 * @param diameter - D [mm], scalar, > 0
 * @param edgeAngle - tool cutting edge angle κr [deg], scalar, 0 < κr ≤ 90; 90 minus the lead angle
 * @returns hmax [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MARTELLOTTI1941 ISO3002
 * @example
 * largestChip(0.1, 1, 10, 90) //=> 0.0600
 * largestChip(0.1, 6, 10, 45) //=> 0.07071
 */
export function largestChip(feedPerTooth: number, radialDepth: number, diameter: number, edgeAngle: number): number {
  return positive("feedPerTooth", feedPerTooth) * sineOfEdge(edgeAngle) * thickest(radialDepth, diameter);
}

/**
 * Mean chip thickness over the angle of engagement.
 *
 *   hm = fz·sin κr·(1 − cos φe)/φe = fz·sin κr·(2·ae/D)/φe,   φe in radians
 *
 * @param feedPerTooth - fz [mm], scalar, > 0
 * @param radialDepth - ae [mm], scalar, 0 < ae ≤ D
 * @param diameter - D [mm], scalar, > 0
 * @param edgeAngle - tool cutting edge angle κr [deg], scalar, 0 < κr ≤ 90; 90 minus the lead angle
 * @returns hm [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MARTELLOTTI1941 ISO3002
 * @example
 * meanChip(0.1, 10, 10, 90) //=> 0.063662
 */
export function meanChip(feedPerTooth: number, radialDepth: number, diameter: number, edgeAngle: number): number {
  const D = positive("diameter", diameter);
  const x = within("radialDepth", positive("radialDepth", radialDepth), 0, D, "length", "low") / D;
  return (positive("feedPerTooth", feedPerTooth) * sineOfEdge(edgeAngle) * x) / Math.asin(Math.sqrt(x));
}

/**
 * Feed per tooth that makes a wanted largest chip thickness (chip thinning undone).
 *
 *   fz = hmax/(sin κr·sin φe),   ae < D/2;   hmax/sin κr,   ae ≥ D/2
 *
 * @param chipThickness - hmax [mm], scalar, > 0
 * @param radialDepth - ae [mm], scalar, 0 < ae ≤ D
 * @param diameter - D [mm], scalar, > 0
 * @param edgeAngle - tool cutting edge angle κr [deg], scalar, 0 < κr ≤ 90; 90 minus the lead angle
 * @returns fz [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MARTELLOTTI1941 ISO3002
 * @example
 * thinnedFeed(0.06, 1, 10, 90) //=> 0.1000
 */
export function thinnedFeed(chipThickness: number, radialDepth: number, diameter: number, edgeAngle: number): number {
  return positive("chipThickness", chipThickness) / (sineOfEdge(edgeAngle) * thickest(radialDepth, diameter));
}
