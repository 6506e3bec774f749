/** Worksheet functions: motion times under limits of acceleration and jerk. */
import { arcFeedLimit, arcTime, moveTime } from "../src/time.ts";
import { lifted } from "./lift.ts";
import { anyNumber, notNegative, optional, positive, units } from "./params.ts";

const acceleration = positive("acceleration", "acceleration");

const rampTime = optional(notNegative("rampTime"), 0);

const move = lifted(
  [notNegative("distance", "length"), positive("feed", "feed"), acceleration, units, rampTime],
  (l, v, a, _u, ramp) => moveTime(l, v, a, ramp),
);
/**
 * Time of a straight move from rest to rest [s].
 * @customfunction
 * @param distance Distance [mm or in].
 * @param feed Feed [mm/min or in/min].
 * @param acceleration Acceleration of the machine [m/s² or g].
 * @param units "mm" or "in".
 * @param [rampTime] Time in which the acceleration builds up, acceleration over jerk [s], default 0; controls have 0.01 to 0.1 s.
 * @returns Time [s].
 * @example
 * =CUT.MOVETIME(25.4, 600, 0.25, "mm") //=> 2.58
 * =CUT.MOVETIME(1, 3000, 0.5, "mm", 0.1) //=> 0.1856636
 */
export function MOVETIME(
  distance: any[][],
  feed: any[][],
  acceleration: any[][],
  units: any[][],
  rampTime?: any[][],
): any[][] {
  return move(distance, feed, acceleration, units, rampTime);
}

const arc = lifted(
  [
    positive("radius", "length"),
    notNegative("turns"),
    positive("feed", "feed"),
    acceleration,
    units,
    optional(anyNumber("risePerTurn", "length"), 0),
    rampTime,
  ],
  (r, n, v, a, _u, p, ramp) => arcTime(r, n, v, a, p, ramp),
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
 * @param [rampTime] Time in which the acceleration builds up, acceleration over jerk [s], default 0; controls have 0.01 to 0.1 s.
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
  rampTime?: any[][],
): any[][] {
  return arc(radius, turns, feed, acceleration, units, risePerTurn, rampTime);
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
