/**
 * American taper pipe threads (ASME B1.20.1 NPT; NPTF has the same basic pitch diameters) as far as a hole for a tap goes:
 * pitch diameters at the planes, the plane of the L1 gauge, and the straight hole that a tap follows. Limits of size like
 * those of a parallel thread do not exist for them: the gauge's plane is the limit.
 */
import type { Allowed } from "../allowed.ts";
import { positive } from "../check.ts";
import { TradeError } from "../errors.ts";

/** Nominal size, outside diameter of the pipe [in], threads per inch, hand-tight engagement L1 [in]. */
const SIZES: readonly (readonly [string, number, number, number])[] = [
  ["1/16", 0.3125, 27, 0.16],
  ["1/8", 0.405, 27, 0.1615],
  ["1/4", 0.54, 18, 0.2278],
  ["3/8", 0.675, 18, 0.24],
  ["1/2", 0.84, 14, 0.32],
  ["3/4", 1.05, 14, 0.339],
  ["1", 1.315, 11.5, 0.4],
  ["1-1/4", 1.66, 11.5, 0.42],
  ["1-1/2", 1.9, 11.5, 0.42],
  ["2", 2.375, 11.5, 0.436],
  ["2-1/2", 2.875, 8, 0.682],
  ["3", 3.5, 8, 0.766],
  ["3-1/2", 4, 8, 0.821],
  ["4", 4.5, 8, 0.844],
  ["5", 5.563, 8, 0.937],
  ["6", 6.625, 8, 0.958],
];
/** Taper on the diameter. */
const TAPER = 1 / 16;
/** Height of the thread over the pitch. */
const HEIGHT = 0.8;
const DESIGNATION =
  /^((?:\d+(?:\s*-\s*|\s+))?\d+\s*\/\s*\d+|\d+)\s*"?\s*-\s*(\d+(?:\.5|\s*-?\s*1\s*\/\s*2)?)\s*(NPTF?)$/i;

/** A taper pipe thread; all sizes in inches. */
export interface TaperPipe {
  /** "1/4-18 NPT" */
  readonly designation: string;
  readonly size: string;
  readonly series: "NPT" | "NPTF";
  readonly tpi: number;
  /** Outside diameter of the pipe, D. */
  readonly pipe: number;
  /** Pitch diameter at the small end of the external thread, E0. */
  readonly smallEnd: number;
  /** Pitch diameter at the mouth of the internal thread, the gauging notch, E1. */
  readonly mouth: number;
  /** Hand-tight engagement, L1: the L1 plug gauge stands flush at the mouth, ± one turn. */
  readonly handTight: number;
  /** Length of effective external thread, L2. */
  readonly effective: number;
  /** Minor diameter at the small end of the engagement and at the mouth: a straight hole lies between them. */
  readonly minorInside: number;
  readonly minorMouth: number;
}

/**
 * NPT or NPTF thread of a designation.
 *
 *   E0 = D − (0.05·D + 1.1)·P,   E1 = E0 + L1/16,   L2 = (0.8·D + 6.8)·P,   minor = pitch diameter − 0.8·P
 *
 * @param text - designation such as "1/4-18 NPT" [-]
 * @param parameter - name of the argument for errors [-]
 * @returns the thread; sizes [in]
 * @throws TradeError "unknown" when there is no such thread, with what exists
 * @source ASMEB1201
 * @example
 * taperPipe("1/2-14 NPT").mouth //=> 0.77843
 */
export function taperPipe(text: string, parameter = "thread"): TaperPipe {
  // Blanks in a row are one: a long run of them is then read in one look.
  const match = DESIGNATION.exec(text.trim().replace(/\s+/g, " "));
  const unknown = (allowed: Allowed) => new TradeError("unknown", parameter, text, allowed);
  if (!match) throw unknown({ is: "taper-pipe-names" });
  const size = match[1]!.replace(/\s*\/\s*/, "/").replace(/(\d)(?:\s*-\s*|\s+)(?=\d)/, "$1-");
  const row = SIZES.find(([name]) => name === size);
  if (!row) throw unknown({ is: "taper-pipe-sizes", sizes: SIZES.map(([name]) => name) });
  const [, pipe, tpi, handTight] = row;
  const asked = match[2]!.replace(/\s*-?\s*1\s*\/\s*2$/, ".5");
  if (Number(asked) !== tpi) throw unknown({ is: "taper-pipe-pitch", tpi });
  const series = /f$/i.test(match[3]!) ? "NPTF" : "NPT";
  const P = 1 / tpi;
  const smallEnd = pipe - (0.05 * pipe + 1.1) * P;
  const mouth = smallEnd + handTight * TAPER;
  return {
    designation: `${size}-${tpi} ${series}`,
    size,
    series,
    tpi,
    pipe,
    smallEnd,
    mouth,
    handTight,
    effective: (0.8 * pipe + 6.8) * P,
    minorInside: smallEnd - HEIGHT * P,
    minorMouth: mouth - HEIGHT * P,
  };
}

/**
 * Change of the gauge's standing for a change of size: a tap that goes deeper by one turn moves the gauge by a pitch and
 * the pitch diameter at the mouth by a sixteenth of it.
 *
 *   ΔE = turns·P/16
 *
 * @param thread - as taperPipe gives it [in]
 * @param turns - turns that the gauge stands in (positive) or out [-], scalar
 * @returns change of the pitch diameter at the mouth [in]
 * @throws TradeError "range" when the thread has no pitch
 * @source ASMEB1201
 * @example
 * gaugeChange(taperPipe("1/4-18 NPT"), 1) //=> 0.0034722
 */
export function gaugeChange(thread: TaperPipe, turns: number): number {
  return (turns * TAPER) / positive("tpi", thread.tpi);
}
