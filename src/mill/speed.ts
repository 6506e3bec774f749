/** Spindle speed, surface speed and table feed of a rotating cutter. */
import { count, positive } from "../check.ts";

/**
 * Spindle speed that gives a surface speed at a diameter.
 *
 *   n = 1000·vc/(π·D)
 *
 * @param surfaceSpeed - vc [m/min], scalar, > 0
 * @param diameter - D [mm], scalar, > 0
 * @param maxRpm - highest speed allowed [1/min], > 0; without it there is no limit
 * @returns n [1/min]
 * @throws TradeError "range" when an argument is not above 0
 * @source MH
 * @example
 * spindleSpeed(120, 10) //=> 3819.7186
 */
export function spindleSpeed(surfaceSpeed: number, diameter: number, maxRpm?: number): number {
  positive("surfaceSpeed", surfaceSpeed);
  positive("diameter", diameter);
  const n = (1000 * surfaceSpeed) / (Math.PI * diameter);
  return maxRpm === undefined ? n : Math.min(n, positive("maxRpm", maxRpm));
}

/**
 * Surface speed at a diameter.
 *
 *   vc = π·D·n/1000
 *
 * @param rpm - n [1/min], scalar, > 0
 * @param diameter - D [mm], scalar, > 0
 * @returns vc [m/min]
 * @throws TradeError "range" when an argument is not above 0
 * @source MH
 * @example
 * surfaceSpeed(3000, 10) //=> 94.24778
 */
export function surfaceSpeed(rpm: number, diameter: number): number {
  return (Math.PI * positive("diameter", diameter) * positive("rpm", rpm)) / 1000;
}

/**
 * Table feed.
 *
 *   vf = n·z·fz
 *
 * @param rpm - n [1/min], scalar, > 0
 * @param teeth - z [-], whole, ≥ 1
 * @param feedPerTooth - fz [mm], scalar, > 0 (any length unit: the answer is in it)
 * @param maxFeed - highest feed allowed [mm/min], > 0
 * @returns vf [mm/min]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MH
 * @example
 * tableFeed(3000, 4, 0.05) //=> 600
 */
export function tableFeed(rpm: number, teeth: number, feedPerTooth: number, maxFeed?: number): number {
  const vf = positive("rpm", rpm) * count("teeth", teeth) * positive("feedPerTooth", feedPerTooth);
  return maxFeed === undefined ? vf : Math.min(vf, positive("maxFeed", maxFeed));
}

/**
 * Feed per tooth of a table feed.
 *
 *   fz = vf/(n·z)
 *
 * @param tableFeed - vf [mm/min], scalar, > 0
 * @param rpm - n [1/min], scalar, > 0
 * @param teeth - z [-], whole, ≥ 1
 * @returns fz [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MH
 * @example
 * feedPerTooth(600, 3000, 4) //=> 0.05
 */
export function feedPerTooth(tableFeed: number, rpm: number, teeth: number): number {
  return positive("tableFeed", tableFeed) / (positive("rpm", rpm) * count("teeth", teeth));
}

/**
 * Metal removal rate of a milling cut.
 *
 *   Q = ae·ap·vf/1000
 *
 * @param radialDepth - ae [mm], scalar, > 0
 * @param axialDepth - ap [mm], scalar, > 0
 * @param tableFeed - vf [mm/min], scalar, > 0
 * @returns Q [cm³/min]
 * @throws TradeError "range" when an argument is not above 0
 * @source MH
 * @example
 * removalRate(2, 10, 600) //=> 12
 */
export function removalRate(radialDepth: number, axialDepth: number, tableFeed: number): number {
  return (
    (positive("radialDepth", radialDepth) * positive("axialDepth", axialDepth) * positive("tableFeed", tableFeed)) /
    1000
  );
}
