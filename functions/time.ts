/** Worksheet functions: motion times under an acceleration limit. */
import { arcFeedLimit, arcTime, moveTime } from "../src/time.ts";
import { lifted } from "./lift.ts";
import { anyNumber, notNegative, optional, positive, units } from "./params.ts";

const acceleration = positive("acceleration", "acceleration");

const move = lifted([notNegative("distance", "length"), positive("feed", "feed"), acceleration, units], (l, v, a) =>
  moveTime(l, v, a),
);
/**
 * Time of a straight move from rest to rest [s].
 * @customfunction
 * @param distance Distance [mm or in].
 * @param feed Feed [mm/min or in/min].
 * @param acceleration Acceleration of the machine [m/s² or g].
 * @param units "mm" or "in".
 * @returns Time [s].
 * @example
 * =CUT.MOVETIME(25.4, 600, 0.25, "mm") //=> 2.58
 */
export function MOVETIME(distance: any[][], feed: any[][], acceleration: any[][], units: any[][]): any[][] {
  return move(distance, feed, acceleration, units);
}

const arc = lifted(
  [
    positive("radius", "length"),
    notNegative("turns"),
    positive("feed", "feed"),
    acceleration,
    units,
    optional(anyNumber("risePerTurn", "length"), 0),
  ],
  (r, n, v, a, _u, p) => arcTime(r, n, v, a, p),
);
/**
 * Time of an arc or helix from rest to rest; the acceleration limits the feed on small radii [s].
 * @customfunction
 * @param radius Radius of the cutter's centre path [mm or in].
 * @param turns Number of turns, parts of a turn count.
 * @param feed Programmed feed along the path [mm/min or in/min].
 * @param acceleration Acceleration of the machine [m/s² or g].
 * @param units "mm" or "in".
 * @param [risePerTurn] Rise of a helix per turn [mm or in], default 0.
 * @returns Time [s].
 * @example
 * =CUT.ARCTIME(10, 1, 1000, 1, "mm") //=> 3.78657785
 */
export function ARCTIME(
  radius: any[][],
  turns: any[][],
  feed: any[][],
  acceleration: any[][],
  units: any[][],
  risePerTurn?: any[][],
): any[][] {
  return arc(radius, turns, feed, acceleration, units, risePerTurn);
}

const limit = lifted([positive("radius", "length"), acceleration, units], (r, a) => arcFeedLimit(r, a, 0), "feed");
/**
 * Highest feed that the acceleration allows on a radius [mm/min or in/min].
 * @customfunction
 * @param radius Radius of the cutter's centre path [mm or in].
 * @param acceleration Acceleration of the machine [m/s² or g].
 * @param units "mm" or "in".
 * @returns Feed [mm/min or in/min].
 * @example
 * =CUT.ARCFEEDLIMIT(0.825, 0.5, "mm") //=> 1218.60576
 */
export function ARCFEEDLIMIT(radius: any[][], acceleration: any[][], units: any[][]): any[][] {
  return limit(radius, acceleration, units);
}
