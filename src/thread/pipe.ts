/** Pipe threads where pressure-tight joints are not made on the threads, ISO 228-1 (G): sizes and limits. */
import type { Allowed } from "../allowed.ts";
import { TradeError } from "../errors.ts";
import type { Limit, Thread, ThreadLimits } from "./types.ts";

/** Size, threads per inch, basic major, pitch and minor diameter [mm] (ISO 228-1 Table 1). */
const SIZES: readonly (readonly [string, number, number, number, number])[] = [
  ["1/16", 28, 7.723, 7.142, 6.561],
  ["1/8", 28, 9.728, 9.147, 8.566],
  ["1/4", 19, 13.157, 12.301, 11.445],
  ["3/8", 19, 16.662, 15.806, 14.95],
  ["1/2", 14, 20.955, 19.793, 18.631],
  ["5/8", 14, 22.911, 21.749, 20.587],
  ["3/4", 14, 26.441, 25.279, 24.117],
  ["7/8", 14, 30.201, 29.039, 27.877],
  ["1", 11, 33.249, 31.77, 30.291],
  ["1-1/8", 11, 37.897, 36.418, 34.939],
  ["1-1/4", 11, 41.91, 40.431, 38.952],
  ["1-1/2", 11, 47.803, 46.324, 44.845],
  ["1-3/4", 11, 53.746, 52.267, 50.788],
  ["2", 11, 59.614, 58.135, 56.656],
  ["2-1/4", 11, 65.71, 64.231, 62.752],
  ["2-1/2", 11, 75.184, 73.705, 72.226],
  ["2-3/4", 11, 81.534, 80.055, 78.576],
  ["3", 11, 87.884, 86.405, 84.926],
  ["3-1/2", 11, 100.33, 98.851, 97.372],
  ["4", 11, 113.03, 111.551, 110.072],
  ["4-1/2", 11, 125.73, 124.251, 122.772],
  ["5", 11, 138.43, 136.951, 135.472],
  ["5-1/2", 11, 151.13, 149.651, 148.172],
  ["6", 11, 163.83, 162.351, 160.872],
];

const DESIGNATION =
  /^G\s*((?:\d+(?:\s*-\s*|\s+))?\d+\s*\/\s*\d+|\d+)\s*"?\s*(?:-\s*(\d\d))?\s*(?:-?\s*([A-Z]))?\s*(?:-?\s*([LR]H))?$/;

/**
 * G thread of a designation; undefined when the text does not have the shape of one.
 *
 *   G size [A or B] [- LH]
 *
 * @param text - designation, upper case, single spaces [-]
 * @param parameter - name of the argument for errors [-]
 * @param original - what was typed, for errors [-]
 * @returns the thread, or undefined [-]
 * @throws TradeError "unknown" when the shape is right and there is no such thread, with what exists
 * @source ISO228
 * @example
 * readPipe("G1/4A", "thread", "G1/4A")?.major //=> 13.157
 */
export function readPipe(text: string, parameter: string, original: string): Thread | undefined {
  const match = DESIGNATION.exec(text);
  if (!match) return undefined;
  const name = match[1]!.replace(/\s*\/\s*/, "/").replace(/(\d)(?:\s*-\s*|\s+)(?=\d)/, "$1-");
  const row = SIZES.find((r) => r[0] === name);
  const unknown = (allowed: Allowed) => new TradeError("unknown", parameter, original, allowed);
  if (!row) throw unknown({ is: "pipe-size", size: name, sizes: SIZES.map((r) => r[0]) });
  const letter = match[3] ?? "";
  if (match[2] !== undefined && Number(match[2]) !== row[1]) {
    throw unknown({ is: "pipe-pitch", size: name, tpi: row[1] });
  }
  if (letter !== "" && letter !== "A" && letter !== "B") {
    throw unknown({ is: "thread-class", standard: "pipe", threadClass: letter });
  }
  const pitch = 25.4 / row[1];
  const left = match[4] === "LH";
  return {
    standard: "pipe",
    designation: `G${name}${letter}${left ? "-LH" : ""}`,
    kind: letter === "" ? "internal" : "external",
    native: "mm",
    major: row[2],
    pitch,
    tpi: row[1],
    lead: pitch,
    series: "G",
    size: `G${name}`,
    threadClass: letter,
    hand: left ? "left" : "right",
    profileAngle: 55,
  };
}

const OPEN_MAJOR: Limit = { is: "limit-open", standard: "ISO 228-1", of: "internal major" };
const OPEN_MINOR: Limit = { is: "limit-open", standard: "ISO 228-1", of: "external minor" };

/** Tolerances [µm] by threads per inch: pitch diameter (class A and internal), internal minor, external major. */
const TOLERANCES: Readonly<Record<number, readonly [number, number, number]>> = {
  28: [107, 282, 214],
  19: [125, 445, 250],
  14: [142, 541, 284],
  11: [180, 640, 360],
};
/** Sizes above G2 have wider ones on pitch and major diameter. */
const LARGE: readonly [number, number, number] = [217, 640, 434];

const less = (mm: number, um: number) => (Math.round(mm * 1000) - um) / 1000;

/**
 * Limits of size of a G thread.
 *
 *   internal: D2 … D2 + T, D1 … D1 + TD1; external: d − Td … d, d2 − T … d2 (class A), d2 − 2·T … d2 (class B)
 *
 * @param thread - a G thread, as parseThread gives it [-]
 * @returns limits [mm]; in place of a limit that is open the code that says so
 * @throws nothing: parseThread has checked the thread
 * @source ISO228
 * @example
 * pipeLimits({ size: "G1/4", kind: "internal" }).minor.max //=> 11.89
 */
export function pipeLimits(thread: Thread): ThreadLimits {
  const [, tpi, major, pitch, minor] = SIZES.find(([name]) => `G${name}` === thread.size)!;
  const [T, TD1, Td] = major > 60 ? LARGE : TOLERANCES[tpi]!;
  if (thread.kind === "internal") {
    return {
      major: { basic: major, min: major, max: OPEN_MAJOR },
      pitch: { basic: pitch, min: pitch, max: less(pitch, -T) },
      minor: { basic: minor, min: minor, max: less(minor, -TD1) },
    };
  }
  return {
    major: { basic: major, min: less(major, Td), max: major },
    pitch: { basic: pitch, min: less(pitch, thread.threadClass === "B" ? 2 * T : T), max: pitch },
    minor: { basic: minor, min: OPEN_MINOR, max: minor },
  };
}
