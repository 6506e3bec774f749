/** Worksheet functions: tolerance classes on diameters, torque of taps. */
import { classLimits } from "../src/fits/limits.ts";
import { tapTorque } from "../src/thread/tapping.ts";
import { lifted } from "./lift.ts";
import { between, count, optional, positive, text, units, word } from "./params.ts";
import { basics, thread } from "./thread-param.ts";

const classSize = lifted(
  [positive("diameter", "length"), text("toleranceClass", { is: "class-name" }), word("limit", ["min", "max"]), units],
  (d, name, limit) => classLimits(d, name, "toleranceClass")[limit],
  "length",
);
/**
 * Limit of size of an ISO 286 class on a diameter up to 500 mm. Capitals are holes, small letters shafts.
 * @customfunction
 * @param diameter Nominal diameter [mm or in].
 * @param toleranceClass Class such as "H7", "g6" or "js6".
 * @param limit "min" or "max".
 * @param units "mm" or "in".
 * @returns Limit of size [mm or in].
 * @example
 * =CUT.CLASSSIZE(20, "H7", "max", "mm") //=> 20.021
 * =CUT.CLASSSIZE(20, "g6", "min", "mm") //=> 19.98
 */
export function CLASSSIZE(diameter: any[][], toleranceClass: any[][], limit: any[][], units: any[][]): any[][] {
  return classSize(diameter, toleranceClass, limit, units);
}

const tapping = lifted(
  [
    thread,
    positive("holeDiameter", "length"),
    positive("kc11", "stress"),
    between("exponent", 0, 1, { high: true }),
    units,
    optional(between("chamferThreads", 0, 15, { low: true }), 4),
    optional(count("flutes", 1, 12), 3),
  ],
  (t, holeDiameter, kc11, exponent, _u, chamferThreads, flutes) => {
    const { major, pitch, profileAngle } = basics(t);
    return tapTorque({ major, pitch, profileAngle, holeDiameter, kc11, exponent, chamferThreads, flutes });
  },
  "torque",
);
/**
 * Torque of a cutting tap with all its chamfer in the cut, an estimate for a sharp, oiled tap [N·m or lbf·in].
 * @customfunction
 * @param thread Designation, such as "M10" or "1/4-20 UNC".
 * @param holeDiameter Hole that is tapped [mm or in].
 * @param kc11 Specific force of a chip of 1 mm × 1 mm [MPa or ksi].
 * @param exponent Kienzle exponent.
 * @param units "mm" or "in".
 * @param [chamferThreads] Chamfer of the tap in pitches: bottoming 2, plug 4, taper 8; default 4.
 * @param [flutes] Flutes of the tap, default 3.
 * @returns Torque [N·m or lbf·in].
 * @example
 * =CUT.TAPTORQUE("M10", 8.5, 2220, 0.14, "mm") //=> 10.36754
 */
export function TAPTORQUE(
  thread: any[][],
  holeDiameter: any[][],
  kc11: any[][],
  exponent: any[][],
  units: any[][],
  chamferThreads?: any[][],
  flutes?: any[][],
): any[][] {
  return tapping(thread, holeDiameter, kc11, exponent, units, chamferThreads, flutes);
}
