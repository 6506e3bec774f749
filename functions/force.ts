/** Worksheet functions: cutting forces, power and torque. */
import { drillThrust, drillTorque } from "../src/drill/force.ts";
import { wholeDrillThrust, wholeDrillTorque } from "../src/drill/whole.ts";
import { type CutForces, millForces } from "../src/mill/force.ts";
import { specificForce, spindlePower, spindleTorque } from "../src/mill/power.ts";
import { threadMillForces } from "../src/mill/threadforce.ts";
import { MOST_TEETH } from "../src/mill/turn.ts";
import { fullDepth } from "../src/thread/passes.ts";
import { tipRadius } from "../src/thread/path.ts";
import type { DimensionName } from "../src/units.ts";
import { lifted } from "./lift.ts";
import { between, count, notNegative, optional, positive, units, word } from "./params.ts";
import { basics, thread } from "./thread-param.ts";

const length = (name: string) => positive(name, "length");
const kc11 = positive("kc11", "stress");
const exponent = between("exponent", 0, 1, { high: true });
const pointAngle = optional(between("pointAngle", 0, 180, { low: true }), 118);
const chiselRatio = optional(between("chiselRatio", 0, 0.4));
const radialRatio = optional(notNegative("radialRatio"), 0.35);

const WHICH = ["peak", "mean", "peak tangential", "mean torque"] as const;
type Which = (typeof WHICH)[number];
const which = optional(word("which", WHICH), "peak");
const FIGURE = {
  peak: "peak",
  mean: "mean",
  "peak tangential": "peakTangential",
  "mean torque": "meanTorque",
} as const satisfies Record<Which, keyof CutForces>;
const dimensionOf = (w: Which): DimensionName => (w === "mean torque" ? "torque" : "force");

const specific = lifted(
  [kc11, exponent, length("chipThickness"), units, optional(between("rakeAngle", -60, 60), 0)],
  (k, m, h, _u, rake) => specificForce(k, m, h, rake),
  "stress",
);
/**
 * Specific cutting force at a chip thickness, 1.5 % less per degree of rake [MPa or ksi].
 * @customfunction
 * @param kc11 Specific force of a chip of 1 mm × 1 mm [MPa or ksi].
 * @param exponent Kienzle exponent.
 * @param chipThickness Chip thickness [mm or in].
 * @param units "mm" or "in".
 * @param [rakeAngle] Rake angle against the one of kc11 [degrees], default 0.
 * @returns Specific cutting force [MPa or ksi].
 * @example
 * =CUT.SPECIFICFORCE(1800, 0.25, 0.1, "mm") //=> 3200.903
 */
export function SPECIFICFORCE(
  kc11: any[][],
  exponent: any[][],
  chipThickness: any[][],
  units: any[][],
  rakeAngle?: any[][],
): any[][] {
  return specific(kc11, exponent, chipThickness, units, rakeAngle);
}

const power = lifted(
  [
    positive("removalRate", "removal rate"),
    positive("specificForce", "stress"),
    units,
    optional(between("efficiency", 0, 1, { low: true }), 0.85),
  ],
  (Q, kc, _u, efficiency) => spindlePower(Q, kc, efficiency),
  "power",
);
/**
 * Power that the spindle motor draws for a removal rate [kW or hp].
 * @customfunction
 * @param removalRate Metal removal rate [cm³/min or in³/min].
 * @param specificForce Specific cutting force [MPa or ksi].
 * @param units "mm" or "in".
 * @param [efficiency] From motor to tool, default 0.85.
 * @returns Power [kW or hp].
 * @example
 * =CUT.SPINDLEPOWER(60, 2500, "mm", 1) //=> 2.5
 */
export function SPINDLEPOWER(
  removalRate: any[][],
  specificForce: any[][],
  units: any[][],
  efficiency?: any[][],
): any[][] {
  return power(removalRate, specificForce, units, efficiency);
}

const torque = lifted([positive("power", "power"), positive("rpm"), units], (P, n) => spindleTorque(P, n), "torque");
/**
 * Spindle torque of a cutting power (power at the tool, not at the motor) [N·m or lbf·in].
 * @customfunction
 * @param power Cutting power [kW or hp].
 * @param rpm Spindle speed [1/min].
 * @param units "mm" or "in".
 * @returns Torque [N·m or lbf·in].
 * @example
 * =CUT.SPINDLETORQUE(5, 3000, "mm") //=> 15.915494
 */
export function SPINDLETORQUE(power: any[][], rpm: any[][], units: any[][]): any[][] {
  return torque(power, rpm, units);
}

const mill = lifted(
  [
    kc11,
    exponent,
    length("feedPerTooth"),
    length("radialDepth"),
    length("axialDepth"),
    length("diameter"),
    count("teeth", 1, MOST_TEETH),
    between("helixAngle", 0, 90, { high: true }),
    units,
    which,
    radialRatio,
  ],
  (k, m, feedPerTooth, radialDepth, axialDepth, diameter, teeth, helixAngle, _u, w, ratio) =>
    millForces({
      kc11: k,
      exponent: m,
      feedPerTooth,
      radialDepth,
      axialDepth,
      diameter,
      teeth,
      helixAngle,
      radialRatio: ratio,
    })[FIGURE[w]],
  (...values) => dimensionOf(values[9]),
);
/**
 * Force of an end mill in the radial plane, or its torque, summed over teeth, helix and one turn [N or lbf, N·m or lbf·in].
 * @customfunction
 * @param kc11 Specific force of a chip of 1 mm × 1 mm [MPa or ksi].
 * @param exponent Kienzle exponent.
 * @param feedPerTooth Feed per tooth of the cutter's centre [mm or in].
 * @param radialDepth Radial depth of cut [mm or in].
 * @param axialDepth Axial depth of cut [mm or in].
 * @param diameter Diameter of the cutter [mm or in].
 * @param teeth Number of teeth.
 * @param helixAngle Helix angle [degrees]; 0 is straight flutes.
 * @param units "mm" or "in".
 * @param [which] "peak" (default) or "mean" resultant, "peak tangential", "mean torque".
 * @param [radialRatio] Radial over tangential force, default 0.35.
 * @returns Force [N or lbf] or torque [N·m or lbf·in].
 * @example
 * =CUT.MILLFORCE(1800, 0.25, 0.05, 10, 5, 10, 4, 30, "mm") //=> 1092.9909
 * =CUT.MILLFORCE(1800, 0.25, 0.05, 10, 5, 10, 4, 30, "mm", "mean torque") //=> 6.581479
 */
export function MILLFORCE(
  kc11: any[][],
  exponent: any[][],
  feedPerTooth: any[][],
  radialDepth: any[][],
  axialDepth: any[][],
  diameter: any[][],
  teeth: any[][],
  helixAngle: any[][],
  units: any[][],
  which?: any[][],
  radialRatio?: any[][],
): any[][] {
  return mill(
    kc11,
    exponent,
    feedPerTooth,
    radialDepth,
    axialDepth,
    diameter,
    teeth,
    helixAngle,
    units,
    which,
    radialRatio,
  );
}

const threadMill = lifted(
  [
    thread,
    length("holeDiameter"),
    length("cutterDiameter"),
    notNegative("tipFlat", "length"),
    length("feedPerTooth"),
    count("teeth", 1, MOST_TEETH),
    kc11,
    exponent,
    units,
    optional(notNegative("startDepth", "length"), 0),
    optional(length("endDepth")),
    which,
    radialRatio,
  ],
  (t, holeDiameter, cutterDiameter, tipFlat, feedPerTooth, teeth, k, m, _u, startDepth, endDepth, w, ratio) => {
    const { kind, profileAngle, pitch, D2 } = basics(t);
    const tip = tipRadius(D2, pitch, tipFlat, profileAngle, kind);
    return threadMillForces({
      holeDiameter,
      cutterDiameter,
      tipFlat,
      profileAngle,
      feedPerTooth,
      teeth,
      kc11: k,
      exponent: m,
      startDepth,
      endDepth: endDepth ?? fullDepth(tip, holeDiameter, kind),
      radialRatio: ratio,
      internal: kind === "internal",
    })[FIGURE[w]];
  },
  (...values) => dimensionOf(values[11]),
);
/**
 * Force of a single-profile thread mill on one pass, or its torque, summed over profile, teeth and one turn [N or lbf, N·m or lbf·in].
 * @customfunction
 * @param thread Designation, such as "1/2-13 UNC-2B" or "M6".
 * @param holeDiameter Diameter of the hole, of the blank for an external thread [mm or in].
 * @param cutterDiameter Diameter of the cutter over its tips [mm or in].
 * @param tipFlat Flat at the tip of the profile [mm or in].
 * @param feedPerTooth Feed per tooth of the cutter's centre [mm or in].
 * @param teeth Number of teeth.
 * @param kc11 Specific force of a chip of 1 mm × 1 mm [MPa or ksi].
 * @param exponent Kienzle exponent.
 * @param units "mm" or "in".
 * @param [startDepth] Depth of the tip from the wall before the pass [mm or in], default 0.
 * @param [endDepth] Depth of the tip from the wall after the pass [mm or in]; without it full, for the basic pitch diameter.
 * @param [which] "peak" (default) or "mean" resultant, "peak tangential", "mean torque".
 * @param [radialRatio] Radial over tangential force, default 0.35.
 * @returns Force [N or lbf] or torque [N·m or lbf·in].
 * @example
 * =CUT.THREADMILLFORCE("M3", 2.459, 2.35, 0.0625, 0.01, 3, 800, 0.25, "mm", 0, 0.2706, "mean torque") //=> 0.0037427
 */
export function THREADMILLFORCE(
  thread: any[][],
  holeDiameter: any[][],
  cutterDiameter: any[][],
  tipFlat: any[][],
  feedPerTooth: any[][],
  teeth: any[][],
  kc11: any[][],
  exponent: any[][],
  units: any[][],
  startDepth?: any[][],
  endDepth?: any[][],
  which?: any[][],
  radialRatio?: any[][],
): any[][] {
  return threadMill(
    thread,
    holeDiameter,
    cutterDiameter,
    tipFlat,
    feedPerTooth,
    teeth,
    kc11,
    exponent,
    units,
    startDepth,
    endDepth,
    which,
    radialRatio,
  );
}

const thrust = lifted(
  [
    length("diameter"),
    length("feedPerRev"),
    kc11,
    exponent,
    units,
    pointAngle,
    optional(positive("chiselFactor"), 1.5),
    chiselRatio,
  ],
  (D, f, k, m, _u, point, chisel, ratio) =>
    ratio === undefined ? drillThrust(D, f, k, m, point, chisel) : wholeDrillThrust(D, f, k, m, point, ratio),
  "force",
);
/**
 * Thrust of a twist drill in solid; the share of the chisel edge is a judgement [N or lbf].
 * @customfunction
 * @param diameter Diameter of the drill [mm or in].
 * @param feedPerRev Feed per turn [mm or in].
 * @param kc11 Specific force of a chip of 1 mm × 1 mm [MPa or ksi].
 * @param exponent Kienzle exponent.
 * @param units "mm" or "in".
 * @param [pointAngle] Point angle [degrees], default 118.
 * @param [chiselFactor] Thrust over the thrust of the lips alone, a judgement, default 1.5.
 * @param [chiselRatio] Chisel edge over diameter, 0 to 0.4 (standard 0.18, split 0.03): the whole drill as rows count it, chiselFactor left aside.
 * @returns Thrust [N or lbf].
 * @example
 * =CUT.DRILLTHRUST(10, 0.2, 1800, 0.25, "mm") //=> 2138.617
 * =CUT.DRILLTHRUST(10, 0.2, 1800, 0.25, "mm", 118, , 0.18) //=> 3340.00
 */
export function DRILLTHRUST(
  diameter: any[][],
  feedPerRev: any[][],
  kc11: any[][],
  exponent: any[][],
  units: any[][],
  pointAngle?: any[][],
  chiselFactor?: any[][],
  chiselRatio?: any[][],
): any[][] {
  return thrust(diameter, feedPerRev, kc11, exponent, units, pointAngle, chiselFactor, chiselRatio);
}

const drilling = lifted(
  [length("diameter"), length("feedPerRev"), kc11, exponent, units, pointAngle, chiselRatio],
  (D, f, k, m, _u, point, ratio) =>
    ratio === undefined ? drillTorque(D, f, k, m, point) : wholeDrillTorque(D, f, k, m, point, ratio),
  "torque",
);
/**
 * Torque of a twist drill in solid [N·m or lbf·in].
 * @customfunction
 * @param diameter Diameter of the drill [mm or in].
 * @param feedPerRev Feed per turn [mm or in].
 * @param kc11 Specific force of a chip of 1 mm × 1 mm [MPa or ksi].
 * @param exponent Kienzle exponent.
 * @param units "mm" or "in".
 * @param [pointAngle] Point angle [degrees], default 118.
 * @param [chiselRatio] Chisel edge over diameter, 0 to 0.4 (standard 0.18, split 0.03): the whole drill as rows count it; without it the lips alone.
 * @returns Torque [N·m or lbf·in].
 * @example
 * =CUT.DRILLTORQUE(10, 0.2, 1800, 0.25, "mm") //=> 8.316606
 * =CUT.DRILLTORQUE(10, 0.2, 1800, 0.25, "mm", 118, 0.18) //=> 11.2501
 */
export function DRILLTORQUE(
  diameter: any[][],
  feedPerRev: any[][],
  kc11: any[][],
  exponent: any[][],
  units: any[][],
  pointAngle?: any[][],
  chiselRatio?: any[][],
): any[][] {
  return drilling(diameter, feedPerRev, kc11, exponent, units, pointAngle, chiselRatio);
}
