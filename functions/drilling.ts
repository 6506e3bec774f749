/** Worksheet functions: the point of a drill. */
import { drillTravel, pointLength } from "../src/drill/point.ts";
import { lifted } from "./lift.ts";
import { between, notNegative, optional, positive } from "./params.ts";

const angle = optional(between("pointAngle", 0, 180, { low: true }), 118);

const point = lifted([positive("diameter", "plain length"), angle], (d, sigma) => pointLength(d, sigma));
/**
 * Length of a drill's point, in the length unit of diameter.
 * @customfunction
 * @param diameter Diameter of the drill [mm or in].
 * @param [pointAngle] Included angle of the point [degrees], default 118.
 * @returns Length of the point [mm or in].
 * @example
 * =CUT.DRILLPOINT(10) //=> 3.0043031
 */
export function DRILLPOINT(diameter: any[][], pointAngle?: any[][]): any[][] {
  return point(diameter, pointAngle);
}

const travel = lifted(
  [
    positive("depth", "plain length"),
    positive("diameter", "plain length"),
    angle,
    optional(notNegative("breakthrough", "plain length"), 0),
  ],
  (depth, d, sigma, out) => drillTravel(depth, d, sigma, out),
);
/**
 * Feed travel of a drill from the face to a full-diameter depth, in the length unit of the sizes.
 * @customfunction
 * @param depth Full-diameter depth [mm or in].
 * @param diameter Diameter of the drill [mm or in].
 * @param [pointAngle] Included angle of the point [degrees], default 118.
 * @param [breakthrough] Extra travel of a through hole [mm or in], default 0.
 * @returns Feed travel [mm or in].
 * @example
 * =CUT.DRILLTRAVEL(20, 10, 118, 1) //=> 24.004303
 */
export function DRILLTRAVEL(depth: any[][], diameter: any[][], pointAngle?: any[][], breakthrough?: any[][]): any[][] {
  return travel(depth, diameter, pointAngle, breakthrough);
}
