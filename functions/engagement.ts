/** Worksheet functions: engagement, chip thickness, cusps and circular walls. */
import { arcDepth, arcFeed } from "../src/mill/arc.ts";
import { ballDiameter, scallop, stepover } from "../src/mill/ball.ts";
import { largestChip, meanChip, thinnedFeed } from "../src/mill/chip.ts";
import { engagementAngle } from "../src/mill/engagement.ts";
import { lifted } from "./lift.ts";
import { between, notNegative, optional, positive, word } from "./params.ts";

const length = (name: string) => positive(name, "plain length");
const edgeAngle = optional(between("edgeAngle", 0, 90, { low: true }), 90);
const side = word("side", ["inside", "outside"]);

const angle = lifted([length("radialDepth"), length("diameter")], engagementAngle);
/**
 * Angle of engagement of a cutter on a straight wall [degrees].
 * @customfunction
 * @param radialDepth Radial depth of cut [mm or in].
 * @param diameter Diameter of the cutter, in the same unit.
 * @returns Angle of engagement [degrees].
 * @example
 * =CUT.ENGAGEANGLE(2, 10) //=> 53.130102
 */
export function ENGAGEANGLE(radialDepth: any[][], diameter: any[][]): any[][] {
  return angle(radialDepth, diameter);
}

const chip = lifted(
  [
    length("feedPerTooth"),
    length("radialDepth"),
    length("diameter"),
    optional(word("which", ["max", "mean"]), "max"),
    edgeAngle,
  ],
  (fz, ae, D, which, kappa) => (which === "max" ? largestChip : meanChip)(fz, ae, D, kappa),
);
/**
 * Chip thickness of a milling cut, the largest or the mean over the angle of engagement, in the unit of the lengths.
 * @customfunction
 * @param feedPerTooth Feed per tooth [mm or in].
 * @param radialDepth Radial depth of cut, in the same unit.
 * @param diameter Diameter of the cutter, in the same unit.
 * @param [which] "max" (default) or "mean".
 * @param [edgeAngle] Tool cutting edge angle [degrees], 90 minus the lead angle; default 90.
 * @returns Chip thickness [mm or in].
 * @example
 * =CUT.CHIPTHICKNESS(0.1, 1, 10) //=> 0.0600
 * =CUT.CHIPTHICKNESS(0.1, 10, 10, "mean") //=> 0.063662
 */
export function CHIPTHICKNESS(
  feedPerTooth: any[][],
  radialDepth: any[][],
  diameter: any[][],
  which?: any[][],
  edgeAngle?: any[][],
): any[][] {
  return chip(feedPerTooth, radialDepth, diameter, which, edgeAngle);
}

const thinned = lifted([length("chipThickness"), length("radialDepth"), length("diameter"), edgeAngle], thinnedFeed);
/**
 * Feed per tooth that makes a wanted largest chip thickness, in the unit of the lengths.
 * @customfunction
 * @param chipThickness Wanted largest chip thickness [mm or in].
 * @param radialDepth Radial depth of cut, in the same unit.
 * @param diameter Diameter of the cutter, in the same unit.
 * @param [edgeAngle] Tool cutting edge angle [degrees], 90 minus the lead angle; default 90.
 * @returns Feed per tooth [mm or in].
 * @example
 * =CUT.THINNEDFEED(0.06, 1, 10) //=> 0.1000
 */
export function THINNEDFEED(
  chipThickness: any[][],
  radialDepth: any[][],
  diameter: any[][],
  edgeAngle?: any[][],
): any[][] {
  return thinned(chipThickness, radialDepth, diameter, edgeAngle);
}

const ball = lifted(
  [length("diameter"), length("axialDepth"), optional(notNegative("cornerRadius", "plain length"))],
  (D, ap, r) => ballDiameter(D, ap, r ?? D / 2),
);
/**
 * Effective cutting diameter of a ball or bull nose at a depth, in the unit of the lengths.
 * @customfunction
 * @param diameter Diameter of the cutter [mm or in].
 * @param axialDepth Axial depth of cut, in the same unit.
 * @param [cornerRadius] Corner radius, in the same unit; without it a ball.
 * @returns Effective diameter [mm or in].
 * @example
 * =CUT.BALLDIAMETER(10, 1) //=> 6.0000
 * =CUT.BALLDIAMETER(12, 0.5, 2) //=> 10.645751
 */
export function BALLDIAMETER(diameter: any[][], axialDepth: any[][], cornerRadius?: any[][]): any[][] {
  return ball(diameter, axialDepth, cornerRadius);
}

const cusp = lifted([length("cornerRadius"), length("stepover")], scallop);
/**
 * Height of the cusp that parallel passes of a ball or corner leave, in the unit of the lengths.
 * @customfunction
 * @param cornerRadius Radius of the ball or corner [mm or in].
 * @param stepover Distance of the passes, in the same unit.
 * @returns Cusp height [mm or in].
 * @example
 * =CUT.SCALLOP(5, 6) //=> 1
 */
export function SCALLOP(cornerRadius: any[][], stepover: any[][]): any[][] {
  return cusp(cornerRadius, stepover);
}

const passDistance = lifted([length("cornerRadius"), length("scallop")], stepover);
/**
 * Distance of parallel passes that leave a given cusp, in the unit of the lengths.
 * @customfunction
 * @param cornerRadius Radius of the ball or corner [mm or in].
 * @param scallop Cusp height, in the same unit.
 * @returns Distance of the passes [mm or in].
 * @example
 * =CUT.STEPOVER(5, 1) //=> 6
 */
export function STEPOVER(cornerRadius: any[][], scallop: any[][]): any[][] {
  return passDistance(cornerRadius, scallop);
}

const centreFeed = lifted([positive("edgeFeed"), length("arcDiameter"), length("cutterDiameter"), side], arcFeed);
/**
 * Feed of the cutter's centre on an arc so that the edge on the finished wall moves at the wanted feed, in the unit of that feed.
 * @customfunction
 * @param edgeFeed Feed at the finished wall, per minute or per tooth.
 * @param arcDiameter Diameter of the finished wall [mm or in].
 * @param cutterDiameter Diameter of the cutter, in the same unit.
 * @param side "inside" or "outside".
 * @returns Feed of the centre.
 * @example
 * =CUT.ARCFEED(300, 20, 12, "inside") //=> 120
 */
export function ARCFEED(edgeFeed: any[][], arcDiameter: any[][], cutterDiameter: any[][], side: any[][]): any[][] {
  return centreFeed(edgeFeed, arcDiameter, cutterDiameter, side);
}

const compensated = lifted(
  [notNegative("startDiameter", "plain length"), length("finishDiameter"), length("cutterDiameter"), side],
  arcDepth,
);
/**
 * Radial-depth compensation: the straight-wall radial depth with the same engagement as a cut on an arc, in the unit of the lengths.
 * @customfunction
 * @param startDiameter Diameter of the stock before the cut [mm or in]; inside, 0 is solid.
 * @param finishDiameter Diameter of the finished wall, in the same unit.
 * @param cutterDiameter Diameter of the cutter, in the same unit.
 * @param side "inside" or "outside".
 * @returns Radial depth [mm or in].
 * @example
 * =CUT.ARCDEPTH(17, 20, 12, "inside") //=> 3.46875
 * =CUT.ARCDEPTH(0, 20, 12, "inside") //=> 12
 */
export function ARCDEPTH(
  startDiameter: any[][],
  finishDiameter: any[][],
  cutterDiameter: any[][],
  side: any[][],
): any[][] {
  return compensated(startDiameter, finishDiameter, cutterDiameter, side);
}
