/**
 * Tolerance classes of the ISO code system for holes and shafts, such as H7 and g6, as limit deviations in mm,
 * for sizes to 500 mm.
 *
 * Grades IT5 to IT13 (ISO 286-1 Table 1) and deviations D to H and JS in every grade; K, M, N and P in grade 7 only.
 * Shafts d to h and js mirror the holes (es = −EI). Other classes answer undefined.
 * @source ISO286
 */
import type { Units } from "../units.ts";
import type { Feature } from "./types.ts";
import { clean, inUnits } from "./units.ts";

const INCH = 25.4;

/** Upper end of each range of sizes [mm]; the lower end is not in the range. */
const RANGES = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500] as const;

/** Standard tolerances [µm] by grade, one value a range. */
const GRADES: Readonly<Record<number, readonly number[]>> = {
  5: [4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27],
  6: [6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40],
  7: [10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63],
  8: [14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97],
  9: [25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155],
  10: [40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250],
  11: [60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400],
  12: [100, 120, 150, 180, 210, 250, 300, 350, 400, 460, 520, 570, 630],
  13: [140, 180, 220, 270, 330, 390, 460, 540, 630, 720, 810, 890, 970],
};

/** Lower deviation EI [µm] of holes D to H, one value a range. */
const LOWER: Readonly<Record<string, readonly number[]>> = {
  D: [20, 30, 40, 50, 65, 80, 100, 120, 145, 170, 190, 210, 230],
  E: [14, 20, 25, 32, 40, 50, 60, 72, 85, 100, 110, 125, 135],
  F: [6, 10, 13, 16, 20, 25, 30, 36, 43, 50, 56, 62, 68],
  G: [2, 4, 5, 6, 7, 9, 10, 12, 14, 15, 17, 18, 20],
  H: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
};

/** Upper deviation ES [µm] of holes in grade 7, one value a range. */
const UPPER_7: Readonly<Record<string, readonly number[]>> = {
  K: [0, 3, 5, 6, 6, 7, 9, 10, 12, 13, 16, 17, 18],
  M: [-2, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  N: [-4, -4, -4, -5, -7, -8, -9, -10, -12, -14, -14, -16, -17],
  P: [-6, -8, -9, -11, -14, -17, -21, -24, -28, -33, -36, -41, -45],
};

/** Limits of size in the units of a row. */
export interface Limits {
  readonly low: number;
  readonly high: number;
  readonly shaft?: boolean;
}

export interface Deviations {
  readonly lower: number;
  readonly upper: number;
  /** Lower-case classes belong to shafts. */
  readonly shaft: boolean;
}

const rangeOf = (size: number): number => (size > 0 ? RANGES.findIndex((end) => size <= end) : -1);

/** Standard tolerance [mm] of a grade at a size [mm], or undefined outside the table. */
export function standardTolerance(size: number, grade: number): number | undefined {
  const value = GRADES[grade]?.[rangeOf(size)];
  return value === undefined ? undefined : value / 1000;
}

/** Limit deviations [mm] of a tolerance class ("H7", "g6") at a size [mm], or undefined where this table has none. */
export function fitDeviations(size: number, text: string): Deviations | undefined {
  const match = /^([A-Z]{1,2}|[a-z]{1,2})(\d{1,2})$/.exec(text);
  const range = rangeOf(size);
  if (!match || range < 0) return undefined;
  const letters = match[1]!;
  const name = letters.toUpperCase();
  const shaft = letters !== name;
  const width = GRADES[Number(match[2])]?.[range];
  if (width === undefined) return undefined;
  let lower: number | undefined;
  if (name === "JS") lower = -width / 2;
  else if (LOWER[name]) lower = LOWER[name][range];
  else if (match[2] === "7" && UPPER_7[name] && !shaft) lower = UPPER_7[name][range]! - width;
  if (lower === undefined) return undefined;
  return shaft && name !== "JS"
    ? { lower: -(lower + width) / 1000, upper: -lower / 1000 + 0, shaft }
    : { lower: lower / 1000, upper: (lower + width) / 1000, shaft };
}

/** Limits of size in the row's units, from limits, deviations or a tolerance class; undefined where they make no sense. */
export function limitsOf(f: Feature, units: Units | null): Limits | undefined {
  const limits = written(f, units);
  return limits && limits.low > 0 && limits.high > limits.low ? limits : undefined;
}

function written(f: Feature, units: Units | null): Limits | undefined {
  const nominal = inUnits(f.diameter, units);
  if (nominal === null) return undefined;
  if (f.tolerance) {
    // A side that is not written counts as 0 (see the note).
    const [lower, upper] = [inUnits(f.tolerance.lower, units)!, inUnits(f.tolerance.upper, units)!];
    return { low: clean(nominal + lower), high: clean(nominal + upper), shaft: f.fit ? /^[a-z]/.test(f.fit) : false };
  }
  if (f.diameter?.limits) {
    const [low, high] = f.diameter.limits.map((value) => inUnits({ ...f.diameter!, value }, units)!) as [
      number,
      number,
    ];
    return { low, high };
  }
  if (!f.fit || units === null) return undefined;
  const scale = units === "in" ? INCH : 1;
  const deviations = fitDeviations(nominal * scale, f.fit);
  if (!deviations) return undefined;
  return {
    low: clean(nominal + deviations.lower / scale),
    high: clean(nominal + deviations.upper / scale),
    shaft: deviations.shaft,
  };
}
