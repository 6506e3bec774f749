/** Worksheet functions: percent of thread, path, sweep, passes and neck of a single-profile thread mill. */
import { within } from "../src/check.ts";
import { threadPercent } from "../src/drill/tapdrill.ts";
import { TradeError } from "../src/errors.ts";
import { neckClearance } from "../src/thread/fit.ts";
import { threadSize } from "../src/thread/limits.ts";
import { fullDepth, passDepths } from "../src/thread/passes.ts";
import { plainPathRadius, tipDiameter, tipRadius } from "../src/thread/path.ts";
import { pitchDiameterSweep, sweptPathRadius, widestTipFlat } from "../src/thread/sweep.ts";
import type { Thread } from "../src/thread/types.ts";
import { lifted, liftedList } from "./lift.ts";
import { count, flag, notNegative, optional, positive, units } from "./params.ts";
import { basics, middlePitchDiameter, thread } from "./thread-param.ts";

/** Diameters closer than this share are one. */
const SAME_SIZE = 1e-7;

/** Most passes that one call lists. */
const MOST_PASSES = 1000;

function path(t: Thread, cutterDiameter: number, tipFlat: number, pitchDiameter?: number, sweep = true): number {
  const { kind, pitch, lead, profileAngle } = basics(t);
  const D2 = pitchDiameter ?? middlePitchDiameter(t);
  if (!sweep) return plainPathRadius(D2, pitch, cutterDiameter, tipFlat, profileAngle, kind);
  return sweptPathRadius({ cutterDiameter, tipFlat, profileAngle, lead }, pitch, D2, kind);
}

/** The tip has to reach the basic major diameter inside, the basic minor outside; else the GO gauge does not go. */
function reachesRoot(t: Thread, e: number, cutterDiameter: number, tipFlat: number): void {
  const { kind, pitch, lead, profileAngle, major } = basics(t);
  const internal = kind === "internal";
  const root = internal ? major : threadSize(t, "minor", "basic") * (t.native === "in" ? 25.4 : 1);
  const tip = tipDiameter(e, cutterDiameter, kind);
  if (internal ? tip >= root * (1 - SAME_SIZE) : tip <= root * (1 + SAME_SIZE)) return;
  const widest = widestTipFlat({ cutterDiameter, profileAngle, lead }, pitch, middlePitchDiameter(t), root, kind) ?? 0;
  throw new TradeError("unsolvable", "tipFlat", tipFlat, { is: "flat-too-wide", kind, tip, root, widest });
}

/** Inside, the cutter has to pass through the hole. */
function enters(t: Thread, cutterDiameter: number, holeDiameter: number): void {
  if (t.kind === "internal") within("cutterDiameter", cutterDiameter, 0, holeDiameter, "length", "low");
}

const percent = lifted([thread, positive("holeDiameter", "length"), units], (t, d) => {
  const { major, pitch, profileAngle } = basics(t);
  return threadPercent(major, pitch, d, profileAngle);
});
/**
 * Percent of full thread height that a hole leaves; over 83.3 the hole is under the basic minor diameter.
 * @customfunction
 * @param thread Designation, such as "1/2-13 UNC-2B" or "M6".
 * @param holeDiameter Diameter of the hole [mm or in].
 * @param units "mm" or "in".
 * @returns Percent of full height; 100 is 0.6495·P per side (G threads: 0.6403·P).
 * @example
 * =CUT.THREADPERCENT("M6", 5, "mm") //=> 76.98004
 * =CUT.THREADPERCENT("1/4-20", 0.201, "in") //=> 75.4404
 */
export function THREADPERCENT(thread: any[][], holeDiameter: any[][], units: any[][]): any[][] {
  return percent(thread, holeDiameter, units);
}

const clearance = lifted(
  [
    thread,
    positive("holeDiameter", "length"),
    positive("cutterDiameter", "length"),
    positive("neckDiameter", "length"),
    notNegative("tipFlat", "length"),
    units,
  ],
  (t, hole, cutterDiameter, neck, tipFlat) => {
    enters(t, cutterDiameter, hole);
    return neckClearance(hole, path(t, cutterDiameter, tipFlat), neck, t.kind);
  },
  "length",
);
/**
 * Gap per side between the neck of a thread mill and the wall of the hole, on the path of THREADPATH; below 0 the neck rubs.
 * @customfunction
 * @param thread Designation, such as "1/2-13 UNC-2B" or "M6".
 * @param holeDiameter Diameter of the hole, of the blank for an external thread [mm or in].
 * @param cutterDiameter Diameter of the cutter over its tips [mm or in].
 * @param neckDiameter Diameter of the neck [mm or in].
 * @param tipFlat Flat at the tip of the profile [mm or in].
 * @param units "mm" or "in".
 * @returns Gap per side [mm or in].
 * @example
 * =CUT.NECKCLEARANCE("M6", 5, 4.6, 3, 0.08, "mm") //=> 0.261848
 */
export function NECKCLEARANCE(
  thread: any[][],
  holeDiameter: any[][],
  cutterDiameter: any[][],
  neckDiameter: any[][],
  tipFlat: any[][],
  units: any[][],
): any[][] {
  return clearance(thread, holeDiameter, cutterDiameter, neckDiameter, tipFlat, units);
}

const threadPath = lifted(
  [
    thread,
    positive("cutterDiameter", "length"),
    notNegative("tipFlat", "length"),
    units,
    optional(positive("pitchDiameter", "length")),
    optional(flag("sweep"), true),
  ],
  (t, cutterDiameter, tipFlat, _u, pitchDiameter, sweep) => {
    const e = path(t, cutterDiameter, tipFlat, pitchDiameter, sweep);
    if (pitchDiameter === undefined) reachesRoot(t, e, cutterDiameter, tipFlat);
    return e;
  },
  "length",
);
/**
 * Radius of the cutter-centre circle on which a single-profile thread mill makes the pitch diameter. #NUM! when the tip flat is so wide that the major diameter would stay under its basic size (unless pitchDiameter is given).
 * @customfunction
 * @param thread Designation, such as "1/2-13 UNC-2B" or "M6".
 * @param cutterDiameter Diameter of the cutter over its tips [mm or in].
 * @param tipFlat Flat at the tip of the profile [mm or in].
 * @param units "mm" or "in".
 * @param [pitchDiameter] Pitch diameter to make, whatever major diameter that leaves; without it the middle of its limits [mm or in].
 * @param [sweep] FALSE leaves out the correction for the helical sweep.
 * @returns Path radius [mm or in].
 * @example
 * =CUT.THREADPATH("M8", 6, 0.15625, "mm", 7.1881011839521) //=> 0.95356661
 * =CUT.THREADPATH("M8", 6, 0.15625, "mm", 7.1881011839521, FALSE) //=> 1.00000
 */
export function THREADPATH(
  thread: any[][],
  cutterDiameter: any[][],
  tipFlat: any[][],
  units: any[][],
  pitchDiameter?: any[][],
  sweep?: any[][],
): any[][] {
  return threadPath(thread, cutterDiameter, tipFlat, units, pitchDiameter, sweep);
}

const threadPasses = liftedList(
  [
    thread,
    positive("holeDiameter", "length"),
    notNegative("tipFlat", "length"),
    count("passes", 1, MOST_PASSES),
    units,
    optional(count("springPasses", 0, MOST_PASSES), 0),
    optional(positive("cutterDiameter", "length")),
    optional(positive("pitchDiameter", "length")),
  ],
  (t, hole, tipFlat, passes, _u, springPasses, cutterDiameter, pitchDiameter) => {
    const { kind, pitch, profileAngle } = basics(t);
    let tip: number;
    if (cutterDiameter === undefined) {
      tip = tipRadius(pitchDiameter ?? middlePitchDiameter(t), pitch, tipFlat, profileAngle, kind);
    } else {
      enters(t, cutterDiameter, hole);
      tip = tipDiameter(path(t, cutterDiameter, tipFlat, pitchDiameter), cutterDiameter, kind) / 2;
    }
    return passDepths(fullDepth(tip, hole, kind), tipFlat, profileAngle, passes, springPasses);
  },
  "length",
);
/**
 * Radial depth from the wall after each pass of a single-profile thread mill: equal cut area each, then spring passes.
 * @customfunction
 * @param thread Designation, such as "1/2-13 UNC-2B" or "M6".
 * @param holeDiameter Diameter of the hole, of the blank for an external thread [mm or in].
 * @param tipFlat Flat at the tip of the profile [mm or in].
 * @param passes Number of cutting passes.
 * @param units "mm" or "in".
 * @param [springPasses] Passes repeated at full depth; without it none.
 * @param [cutterDiameter] Diameter of the cutter; with it the depth is corrected for the helical sweep [mm or in].
 * @param [pitchDiameter] Pitch diameter to make; without it the middle of its limits [mm or in].
 * @returns List of depths [mm or in].
 * @example
 * =CUT.THREADPASSES("M6", 5, 0.125, 2, "mm", 1, , 5.350480947) //=> {0.328605, 0.5, 0.5}
 */
export function THREADPASSES(
  thread: any[][],
  holeDiameter: any[][],
  tipFlat: any[][],
  passes: any[][],
  units: any[][],
  springPasses?: any[][],
  cutterDiameter?: any[][],
  pitchDiameter?: any[][],
): any[][] {
  return threadPasses(thread, holeDiameter, tipFlat, passes, units, springPasses, cutterDiameter, pitchDiameter);
}

const threadSweep = lifted(
  [thread, positive("cutterDiameter", "length"), notNegative("tipFlat", "length"), units],
  (t, cutterDiameter, tipFlat) => {
    const { kind, pitch, lead, profileAngle, D2 } = basics(t);
    return pitchDiameterSweep({ cutterDiameter, tipFlat, profileAngle, lead }, pitch, D2, kind);
  },
  "length",
);
/**
 * Change of the pitch diameter caused by the helical sweep of a cutter on the uncorrected path: oversize inside, undersize outside.
 * @customfunction
 * @param thread Designation, such as "1/2-13 UNC-2B" or "M6".
 * @param cutterDiameter Diameter of the cutter over its tips [mm or in].
 * @param tipFlat Flat at the tip of the profile [mm or in].
 * @param units "mm" or "in".
 * @returns Change of pitch diameter [mm or in].
 * @example
 * =CUT.THREADSWEEP("M8", 6, 0.15625, "mm") //=> 0.08728998
 */
export function THREADSWEEP(thread: any[][], cutterDiameter: any[][], tipFlat: any[][], units: any[][]): any[][] {
  return threadSweep(thread, cutterDiameter, tipFlat, units);
}
