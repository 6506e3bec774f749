/** Worksheet functions: threads over wires and between balls, and the wear value that follows. */
import { bestWire, betweenBalls, overWires, wearChange } from "../src/thread/gauging.ts";
import { lifted } from "./lift.ts";
import { optional, positive, units } from "./params.ts";
import { basics, gaugePitchDiameter, thread } from "./thread-param.ts";

const wires = lifted(
  [thread, positive("wireDiameter", "length"), units, optional(positive("pitchDiameter", "length"))],
  (t, wireDiameter, _u, given) =>
    overWires({ ...basics(t), wireDiameter, pitchDiameter: gaugePitchDiameter(t, "external", given) }),
  "length",
);
/**
 * Measurement over three wires on an external thread.
 * @customfunction
 * @param thread Designation, such as "1/2-13 UNC-2A" or "M6-6g".
 * @param wireDiameter Diameter of the wires [mm or in].
 * @param units "mm" or "in".
 * @param [pitchDiameter] Pitch diameter; without it the middle of its limits, or the basic size when the designation names no external class [mm or in].
 * @returns Measurement over the wires [mm or in].
 * @example
 * =CUT.OVERWIRES("M10-6g", 0.866, "mm", 9.026) //=> 10.32678
 */
export function OVERWIRES(thread: any[][], wireDiameter: any[][], units: any[][], pitchDiameter?: any[][]): any[][] {
  return wires(thread, wireDiameter, units, pitchDiameter);
}

const best = lifted(
  [thread, units],
  (t) => {
    const { pitch, profileAngle } = basics(t);
    return bestWire(pitch, profileAngle);
  },
  "length",
);
/**
 * Wire or ball that touches the flanks of a thread at the pitch line.
 * @customfunction
 * @param thread Designation, such as "1/2-13 UNC-2A" or "M6-6g".
 * @param units "mm" or "in".
 * @returns Diameter of the best wire [mm or in].
 * @example
 * =CUT.BESTWIRE("M6-6g", "mm") //=> 0.57735
 */
export function BESTWIRE(thread: any[][], units: any[][]): any[][] {
  return best(thread, units);
}

const balls = lifted(
  [thread, positive("ballDiameter", "length"), units, optional(positive("pitchDiameter", "length"))],
  (t, wireDiameter, _u, given) =>
    betweenBalls({ ...basics(t), wireDiameter, pitchDiameter: gaugePitchDiameter(t, "internal", given) }),
  "length",
);
/**
 * Measurement between the inner faces of two balls in an internal thread; over the balls it is twice the ball more.
 * @customfunction
 * @param thread Designation, such as "1/2-13 UNC-2B" or "M6".
 * @param ballDiameter Diameter of the balls [mm or in].
 * @param units "mm" or "in".
 * @param [pitchDiameter] Pitch diameter; without it the middle of its limits, or the basic size for an external designation [mm or in].
 * @returns Measurement between the balls [mm or in].
 * @example
 * =CUT.BETWEENBALLS("M30", 2, "mm", 27.7267) //=> 24.75537
 */
export function BETWEENBALLS(thread: any[][], ballDiameter: any[][], units: any[][], pitchDiameter?: any[][]): any[][] {
  return balls(thread, ballDiameter, units, pitchDiameter);
}

const wear = lifted(
  [
    positive("measuredPitchDiameter", "plain length"),
    positive("wantedPitchDiameter", "plain length"),
    optional(positive("gain"), 1),
  ],
  (measured, wanted, gain) => wearChange(measured, wanted, gain),
);
/**
 * Amount to add to the radius wear value under cutter compensation: internal thread gain·(measured − wanted)/2 (a positive wear value moves the path away from the wall); an external thread takes the opposite sign, a control that holds diameters twice the amount.
 * @customfunction
 * @param measuredPitchDiameter Pitch diameter as measured [mm or in].
 * @param wantedPitchDiameter Pitch diameter as wanted, in the same unit.
 * @param [gain] Share of the error to correct at once; without it 1.
 * @returns Amount to add to the radius wear value, in the same unit.
 * @example
 * =CUT.WEARCHANGE(5.38, 5.42) //=> -0.02
 */
export function WEARCHANGE(measuredPitchDiameter: any[][], wantedPitchDiameter: any[][], gain?: any[][]): any[][] {
  return wear(measuredPitchDiameter, wantedPitchDiameter, gain);
}
