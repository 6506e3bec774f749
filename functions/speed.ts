/** Worksheet functions: speed and feed. */
import { feedPerTooth, removalRate, spindleSpeed, surfaceSpeed, tableFeed } from "../src/mill/speed.ts";
import { lifted } from "./lift.ts";
import { count, optional, positive, units } from "./params.ts";

const rpm = lifted(
  [positive("surfaceSpeed", "surface speed"), positive("diameter", "length"), units, optional(positive("maxRpm"))],
  (v, d, _u, limit) => spindleSpeed(v, d, limit),
);
/**
 * Spindle speed [1/min] for a surface speed at a diameter.
 * @customfunction
 * @param surfaceSpeed Surface speed [m/min or ft/min].
 * @param diameter Diameter of the cutter or drill [mm or in].
 * @param units "mm" or "in".
 * @param [maxRpm] Highest spindle speed; the answer is not above it.
 * @returns Spindle speed [1/min].
 * @example
 * =CUT.RPM(120, 10, "mm") //=> 3819.7186
 */
export function RPM(surfaceSpeed: any[][], diameter: any[][], units: any[][], maxRpm?: any[][]): any[][] {
  return rpm(surfaceSpeed, diameter, units, maxRpm);
}

const speed = lifted(
  [positive("rpm"), positive("diameter", "length"), units],
  (n, d) => surfaceSpeed(n, d),
  "surface speed",
);
/**
 * Surface speed [m/min or ft/min] of a spindle speed at a diameter.
 * @customfunction
 * @param rpm Spindle speed [1/min].
 * @param diameter Diameter of the cutter or drill [mm or in].
 * @param units "mm" or "in".
 * @returns Surface speed [m/min or ft/min].
 * @example
 * =CUT.SURFACESPEED(3000, 10, "mm") //=> 94.24778
 */
export function SURFACESPEED(rpm: any[][], diameter: any[][], units: any[][]): any[][] {
  return speed(rpm, diameter, units);
}

const table = lifted(
  [positive("rpm"), count("teeth"), positive("feedPerTooth", "plain length"), optional(positive("maxFeed"))],
  (n, z, fz, limit) => tableFeed(n, z, fz, limit),
);
/**
 * Table feed per minute, in the length unit of feedPerTooth.
 * @customfunction
 * @param rpm Spindle speed [1/min].
 * @param teeth Number of teeth.
 * @param feedPerTooth Feed per tooth [mm or in].
 * @param [maxFeed] Highest feed; the answer is not above it.
 * @returns Table feed [mm/min or in/min].
 * @example
 * =CUT.TABLEFEED(3000, 4, 0.05) //=> 600
 */
export function TABLEFEED(rpm: any[][], teeth: any[][], feedPerTooth: any[][], maxFeed?: any[][]): any[][] {
  return table(rpm, teeth, feedPerTooth, maxFeed);
}

const perTooth = lifted([positive("tableFeed"), positive("rpm"), count("teeth")], (vf, n, z) => feedPerTooth(vf, n, z));
/**
 * Feed per tooth of a table feed, in its length unit.
 * @customfunction
 * @param tableFeed Table feed [mm/min or in/min].
 * @param rpm Spindle speed [1/min].
 * @param teeth Number of teeth.
 * @returns Feed per tooth [mm or in].
 * @example
 * =CUT.FEEDPERTOOTH(600, 3000, 4) //=> 0.05
 */
export function FEEDPERTOOTH(tableFeed: any[][], rpm: any[][], teeth: any[][]): any[][] {
  return perTooth(tableFeed, rpm, teeth);
}

const removal = lifted(
  [positive("radialDepth", "length"), positive("axialDepth", "length"), positive("tableFeed", "feed"), units],
  (ae, ap, vf) => removalRate(ae, ap, vf),
  "removal rate",
);
/**
 * Metal removal rate [cm³/min or in³/min].
 * @customfunction
 * @param radialDepth Radial depth of cut [mm or in].
 * @param axialDepth Axial depth of cut [mm or in].
 * @param tableFeed Table feed [mm/min or in/min].
 * @param units "mm" or "in".
 * @returns Removal rate [cm³/min or in³/min].
 * @example
 * =CUT.REMOVALRATE(2, 10, 600, "mm") //=> 12
 */
export function REMOVALRATE(radialDepth: any[][], axialDepth: any[][], tableFeed: any[][], units: any[][]): any[][] {
  return removal(radialDepth, axialDepth, tableFeed, units);
}
