/** Limits of size of ISO 286 classes on a diameter: "H7", "g6", "js6", "P9"; and fits such as "H7/g6". Up to 500 mm. */
import type { Allowed } from "../allowed.ts";
import { positive } from "../check.ts";
import { TradeError } from "../errors.ts";
import {
  CLEARANCE_SIDE,
  FINE_RANGES,
  GRADES,
  INTERFERENCE_SIDE,
  J_HOLE,
  J_SHAFT,
  K_SHAFT,
  MAIN_RANGES,
} from "./tables.ts";

/** Largest nominal size covered [mm]. */
const LARGEST = 500;
/** Letters covered, as shafts; holes are their capitals. */
const LETTERS = ["a", "b", "c", "d", "e", "f", "g", "h", "j", "js", "k", "m", "n", "p", "r", "s", "t", "u", "x", "z"];

/** A class as read: what it is of, its letter as written, its grade. */
export interface ToleranceClass {
  /** "H7" */
  readonly name: string;
  readonly kind: "hole" | "shaft";
  /** "H", "js" */
  readonly letter: string;
  /** "7", "01" */
  readonly grade: string;
}

/** Limits of a class on a diameter. */
export interface SizeLimits extends ToleranceClass {
  /** Nominal size [mm]. */
  readonly nominal: number;
  /** Lower and upper limit deviation [mm], exact to the micrometre or half of one. */
  readonly lower: number;
  readonly upper: number;
  /** Limits of size [mm]. */
  readonly min: number;
  readonly max: number;
}

/**
 * Reads a tolerance class; undefined when the text does not look like one. Holes are capitals, shafts small letters.
 *
 *   letter(s) and grade: H7, js6, P9
 *
 * @param text - class [-]
 * @returns the class, or undefined [-]
 * @throws nothing
 * @source ISO286
 * @example
 * readToleranceClass("js6")?.grade //=> "6"
 */
export function readToleranceClass(text: string): ToleranceClass | undefined {
  const match = /^([A-Z]{1,2}|[a-z]{1,2})\s*(01|0|1[0-8]|[1-9])$/.exec(text.trim());
  if (!match) return undefined;
  const letter = match[1]!;
  const kind = letter === letter.toUpperCase() ? "hole" : "shaft";
  return { name: letter + match[2]!, kind, letter, grade: match[2]! };
}

/**
 * Standard tolerance of a grade.
 *
 *   table by range of size
 *
 * @param diameter - nominal size [mm], scalar, > 0, ≤ 500
 * @param grade - "01", "0", "1" to "18" [-]
 * @returns IT [mm]
 * @throws TradeError "range" when the size is outside the tables; "unknown" when there is no such grade
 * @source ISO286
 * @example
 * standardTolerance(20, "7") //=> 0.021
 */
export function standardTolerance(diameter: number, grade: string): number {
  return microns(diameter, grade) / 1000;
}

/**
 * Limits of size of a class on a diameter.
 *
 *   a to h: upper −deviation; j to z: lower +deviation; holes mirror them, K, M, N up to IT8 and P to Z up to IT7 with
 *   Δ = ITn − ITn−1 added (sizes over 3 mm); js, JS: ±IT/2
 *
 * @param diameter - nominal size [mm], scalar, > 0, ≤ 500
 * @param text - class such as "H7" or "g6" [-]
 * @param parameter - name of the class for errors [-]
 * @param wanted - "hole" or "shaft" where only one of them will do [-]
 * @returns deviations and limits of size [mm]
 * @throws TradeError "range" when the size is outside the tables; "unknown" when there is no such class, with what exists
 * @source ISO286
 * @example
 * classLimits(20, "H7").max //=> 20.021
 * classLimits(20, "g6").min //=> 19.98
 * classLimits(20, "K7").lower //=> -0.015
 */
export function classLimits(
  diameter: number,
  text: string,
  parameter = "class",
  wanted?: ToleranceClass["kind"],
): SizeLimits {
  const read = readToleranceClass(text);
  const unknown = (allowed: Allowed) => new TradeError("unknown", parameter, text, allowed);
  if (!read) throw unknown({ is: "class-names" });
  if (wanted !== undefined && read.kind !== wanted) throw unknown({ is: "class-kind", kind: wanted });
  const letter = read.letter.toLowerCase();
  if (!LETTERS.includes(letter)) {
    const letters = read.kind === "hole" ? LETTERS.map((l) => l.toUpperCase()) : LETTERS;
    throw unknown({ is: "class-letters", letters });
  }
  const IT = microns(diameter, read.grade);
  const deviations =
    read.kind === "hole" ? hole(diameter, letter, read.grade, IT) : shaft(diameter, letter, read.grade, IT);
  if ("is" in deviations) throw unknown(deviations);
  const [lower, upper] = deviations;
  const base = { ...read, nominal: diameter, lower: lower / 1000, upper: upper / 1000 };
  return { ...base, min: sum(diameter, lower), max: sum(diameter, upper) };
}

/** A fit: limits of hole and shaft, least and largest clearance [mm] (negative: interference). */
export interface Fit {
  readonly hole: SizeLimits;
  readonly shaft: SizeLimits;
  readonly least: number;
  readonly most: number;
  readonly kind: "clearance" | "transition" | "interference";
}

/**
 * Fit of a hole class and a shaft class on one diameter.
 *
 *   least clearance = EI − es, largest = ES − ei
 *
 * @param diameter - nominal size [mm], scalar, > 0, ≤ 500
 * @param text - fit such as "H7/g6" [-]
 * @param parameter - name of the fit for errors [-]
 * @returns limits and clearances [mm]
 * @throws TradeError "range" when the size is outside the tables; "unknown" when there is no such fit
 * @source ISO286
 * @example
 * fitOf(20, "H7/g6").least //=> 0.007
 * fitOf(20, "H7/p6").kind //=> "interference"
 */
export function fitOf(diameter: number, text: string, parameter = "fit"): Fit {
  const [first = "", second = "", more] = text.split("/");
  const hole = classLimits(diameter, first, parameter);
  const shaft = classLimits(diameter, second, parameter);
  if (more !== undefined || hole.kind !== "hole" || shaft.kind !== "shaft")
    throw new TradeError("unknown", parameter, text, { is: "fit-names" });
  const least = Math.round(1e4 * (hole.lower - shaft.upper)) / 1e4;
  const most = Math.round(1e4 * (hole.upper - shaft.lower)) / 1e4;
  return { hole, shaft, least, most, kind: least >= 0 ? "clearance" : most <= 0 ? "interference" : "transition" };
}

/** Nominal size and a deviation in micrometres, without binary dust: 20 + 21 µm is 20.021. */
const sum = (nominal: number, um: number) => Number((nominal + um / 1000).toFixed(7));

function rangeOf(ranges: readonly number[], diameter: number): number {
  positive("diameter", diameter);
  const index = ranges.findIndex((upTo) => diameter <= upTo);
  if (index < 0) {
    throw new TradeError("range", "diameter", diameter, { is: "covered-to", high: LARGEST, dimension: "length" });
  }
  return index;
}

function microns(diameter: number, grade: string): number {
  const row = rangeOf(MAIN_RANGES, diameter);
  const values = GRADES[grade];
  if (!values) throw new TradeError("unknown", "grade", grade, { is: "grades" });
  return values[row]!;
}

type Deviations = readonly [lower: number, upper: number] | Allowed;

function shaft(diameter: number, letter: string, grade: string, IT: number): Deviations {
  const main = rangeOf(MAIN_RANGES, diameter);
  const fine = rangeOf(FINE_RANGES, diameter);
  const n = Number(grade);
  const clearance = CLEARANCE_SIDE[letter];
  if (clearance) {
    if ((letter === "a" || letter === "b") && diameter <= 1) return small(letter);
    return [-clearance[fine]! - IT, -clearance[fine]! || 0];
  }
  if (letter === "js") return [-IT / 2, IT / 2];
  if (letter === "j") {
    const ei = J_SHAFT[grade]?.[main];
    return ei === undefined ? { is: "class-grades", letter: "j", grades: [5, 6, 7] } : [ei, ei + IT];
  }
  if (letter === "k") {
    const ei = n >= 4 && n <= 7 && grade !== "01" ? K_SHAFT[main]! : 0;
    return [ei, ei + IT];
  }
  const ei = INTERFERENCE_SIDE[letter]?.[fine];
  return ei === null || ei === undefined ? tooSmall(letter) : [ei, ei + IT];
}

function hole(diameter: number, letter: string, grade: string, IT: number): Deviations {
  const main = rangeOf(MAIN_RANGES, diameter);
  const fine = rangeOf(FINE_RANGES, diameter);
  const n = Number(grade);
  const clearance = CLEARANCE_SIDE[letter];
  if (clearance) {
    if ((letter === "a" || letter === "b") && diameter <= 1) return small(letter.toUpperCase());
    return [clearance[fine]!, clearance[fine]! + IT];
  }
  if (letter === "js") return [-IT / 2, IT / 2];
  if (letter === "j") {
    const ES = J_HOLE[grade]?.[main];
    return ES === undefined ? { is: "class-grades", letter: "J", grades: [6, 7, 8] } : [ES - IT, ES];
  }
  const numbered = grade !== "0" && grade !== "01";
  // Sizes up to 3 mm have no Δ; it is the step from the finer grade, so that hole-basis and shaft-basis fits agree.
  const delta = diameter > 3 && numbered && n >= 3 ? IT - GRADES[String(n - 1)]![main]! : 0;
  if (letter === "k") {
    if (n > 8 && numbered && diameter > 3) return { is: "class-to-grade", letter: "K", grade: 8 };
    const ES = diameter > 3 ? -K_SHAFT[main]! + delta : 0;
    return [ES - IT, ES];
  }
  const base = INTERFERENCE_SIDE[letter]?.[fine];
  if (base === null || base === undefined) return tooSmall(letter.toUpperCase());
  if (letter === "n" && n > 8 && numbered) {
    const ES = diameter > 3 ? 0 : -base;
    return [ES - IT, ES];
  }
  const coarsest = letter === "m" || letter === "n" ? 8 : 7;
  let ES = -base + (n <= coarsest ? delta : 0);
  // The standard's own exception: M6 over 250 to 315 mm is −9, not −11.
  if (letter === "m" && grade === "6" && main === 10) ES = -9;
  return [ES - IT, ES || 0];
}

const small = (letter: string): Allowed => ({ is: "class-not-to-size", letter, size: 1 });
const tooSmall = (letter: string): Allowed => ({ is: "class-from-size", letter, size: 24 });
