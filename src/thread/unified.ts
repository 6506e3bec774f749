/**
 * Limits of size of Unified screw threads (ASME B1.1), to the last digit of the standard's tables.
 *
 * The tables come out only with decimal arithmetic and the standard's own rounding: the Class 2A pitch-diameter
 * tolerance to six places, then every tolerance, allowance and basic size to four places, then sums; internal
 * minor limits of sizes 0.138 in and larger once more to three places (half to even), except the Class 3B maximum.
 *
 * One more thing the text of the standard does not say but its tables show: where the length of engagement is nine
 * pitches, the tolerance was worked out for a few diameters only and used for the neighbours (13/16-20 and 7/8-20
 * have that of 3/4-20, 15/16-12 and 15/16-16 that of 1 in, 2-3/8-20 that of 2-1/2 in).
 */
import { Cache } from "../cache.ts";
import { Decimal } from "../decimal.ts";
import type { Limit, Thread, ThreadLimits } from "./types.ts";
import { UNIFIED_EXCEPTIONS } from "./unified-exceptions.ts";

const H = Decimal.of(3).sqrt().div(2);
/** 0.64951905·P from major to pitch diameter (3/4·H). */
const TO_PITCH = H.times("0.75");
/** 0.97427858·P from major to minor diameter of the J form (9/8·H, ASME B1.15). */
const TO_MINOR_J = H.times("1.125");
/** 1.08253175·P from major to minor diameter (5/4·H). */
const TO_MINOR = H.times("1.25");
/** From the flat minor diameter down to the rounded root of a UNR thread: 0.10825·P [0.0001 in], 1/8·H with the digits the tables show. */
const ROUNDED_ROOT = 1082.5;

/** Pitch-diameter tolerance over that of Class 2A, in fortieths, so that whole numbers carry it: 1.5, 1, 0.75, 1.95, 1.3, 0.975. */
const FORTIETHS: Readonly<Record<string, number>> = { "1A": 60, "2A": 40, "3A": 30, "1B": 78, "2B": 52, "3B": 39 };
/** Allowance of 1A and 2A over the Class 2A tolerance, in fortieths: 0.3. */
const ALLOWANCE_FORTIETHS = 12;

/** Diameters [in] for which tolerances with nine pitches of engagement were worked out; the nearest serves, ties down. */
const TOLERANCE_SIZES = [
  0.06, 0.073, 0.086, 0.099, 0.112, 0.125, 0.138, 0.164, 0.19, 0.25, 0.375, 0.5, 0.625, 0.75, 1, 1.25, 1.5, 1.75, 2,
  2.5, 3, 3.5, 4, 5, 6,
];

/** Remembers what is slow: sizes and pitches are few. */
function remembered<T>(name: string, make: (key: number) => T): (key: number) => T {
  const known = new Cache<number, T>(name, 500);
  return (key) => known.get(key, () => make(key));
}

const pitchOf = remembered("pitches", (tpi) => Decimal.of(1).div(tpi));
/** P^⅔ of a number of threads per inch. */
const twoThirds = remembered("two thirds powers of pitches", (tpi) => pitchOf(tpi).times(pitchOf(tpi)).cbrt());
const cubeRoot = remembered("cube roots of sizes", (inches) => Decimal.of(inches).cbrt());
const squareRoot = remembered("square roots of sizes", (inches) => Decimal.of(inches).sqrt());
/** √(9·P) of a number of threads per inch. */
const ninePitchRoot = remembered("roots of nine pitches", (tpi) => pitchOf(tpi).times(9).sqrt());

/** Tolerance on the major diameter [0.0001 in]: 0.060·P^⅔, Class 1A 0.090·P^⅔. */
const majorTolerance = remembered("major tolerances", (tpi) => twoThirds(tpi).times("0.06").inPlaces(4));
const majorTolerance1A = remembered("major tolerances of 1A", (tpi) => twoThirds(tpi).times("0.09").inPlaces(4));

/** Threads whose tabulated tolerances assume an engagement of one diameter (1-14 UNS once was a fine thread). */
function diameterEngagement({ series, tpi, size }: Thread): boolean {
  if (series === "UNC" || series === "UNF") return true;
  return (series === "UN" && tpi! <= 8) || (series === "UNS" && tpi === 14 && size === "1");
}

/** Sizes of the standard's tables: numbered, or whole sixteenths of an inch. */
function isTableSize({ size, major }: Thread): boolean {
  return size.startsWith("#") || Number.isInteger(major * 16);
}

/** Td2(2A) = 0.0015·D^⅓ + 0.0015·√LE + 0.015·P^⅔ [0.000001 in]. */
function pitchTolerance2A(thread: Thread): number {
  const { major, tpi } = thread;
  const wide = diameterEngagement(thread);
  let size = major;
  if (!wide && isTableSize(thread)) {
    const off = (s: number) => Math.abs(s - major);
    size = TOLERANCE_SIZES.reduce((best, s) => (off(s) < off(best) - 1e-9 ? s : best));
  }
  const roots = cubeRoot(size).plus(wide ? squareRoot(major) : ninePitchRoot(tpi!));
  return roots.times("0.0015").plus(twoThirds(tpi!).times("0.015")).inPlaces(6);
}

/** Tolerance on the minor diameter of internal threads [0.0001 in]. */
function minorTolerance(digit: string, major: number, tpi: number): number {
  const P = pitchOf(tpi);
  const common = twoThirds(tpi).times("0.05").plus(P.times("0.03").div(major)).minus(Decimal.of("0.002"));
  const most = P.times("0.394");
  const plain = P.times("0.25").minus(P.times(P).times("0.4"));
  if (digit === "3") {
    const least = tpi >= 13 ? P.times("0.23").minus(P.times(P).times("1.5")) : P.times("0.12");
    return common.greater(least).lesser(most).inPlaces(4);
  }
  if (major >= 0.25) return (tpi >= 4 ? plain : P.times("0.15")).inPlaces(4);
  return common.greater(plain).lesser(most).inPlaces(4);
}

interface Base4 {
  /** Basic diameters [0.0001 in]. */
  readonly d: number;
  readonly d2: number;
  readonly d1: number;
  /** Class 2A tolerance [0.000001 in]. */
  readonly Td2: number;
}
const bases = new Cache<string, Base4>("basic sizes of unified threads", 2000);

/** What the classes of one thread have in common. */
function base(thread: Thread): Base4 {
  const { major, tpi, series, form } = thread;
  const key = `${thread.size}-${tpi} ${series} ${form}`;
  return bases.get(key, () => {
    const D = Decimal.of(major);
    const P = pitchOf(tpi!);
    return {
      d: D.inPlaces(4),
      d2: D.minus(TO_PITCH.times(P)).inPlaces(4),
      d1: D.minus((form === "UNJ" ? TO_MINOR_J : TO_MINOR).times(P)).inPlaces(4),
      Td2: pitchTolerance2A(thread),
    };
  });
}

/** A number of fortieths of a tolerance in millionths, in whole ten-thousandths, half up: exact in whole numbers. */
const share = (millionths: number, fortieths: number) => Math.floor((millionths * fortieths + 2000) / 4000);
/** Ten-thousandths to whole thousandths, half to even, still counted in ten-thousandths. */
function thousandths(x: number): number {
  const low = Math.floor(x / 10);
  const rest = x - 10 * low;
  return 10 * (rest > 5 || (rest === 5 && low % 2 === 1) ? low + 1 : low);
}
const inches = (x: Limit): Limit => (typeof x === "number" ? x / 10_000 : x);
const element = (basic: number, min: Limit, max: Limit) => ({
  basic: basic / 10_000,
  min: inches(min),
  max: inches(max),
});

const OPEN_MAJOR: Limit = { is: "limit-open", standard: "ASME B1.1", of: "internal major" };
const OPEN_MINOR: Limit = { is: "limit-open", standard: "ASME B1.1", of: "external minor least" };
const OPEN_J: Limit = { is: "unj-root-open" };

/**
 * Limits of size of a Unified thread.
 *
 *   Td2(2A) = 0.0015·D^⅓ + 0.0015·√LE + 0.015·P^⅔; 1A ×1.5, 3A ×0.75, 1B ×1.95, 2B ×1.3, 3B ×0.975
 *   LE = D (UNC, UNF, 4-, 6-, 8-UN) or 9·P; allowance 0.3·Td2(2A) for 1A, 2A; Td = 0.060·P^⅔ (1A 0.090·P^⅔)
 *   largest external minor: basic less allowance (UN); the same less 0.10825·P for the rounded root (UNR)
 *   UNJ: limits of class 3A/3B, basic minor diameter D − 0.97428·P, inside with the tolerance of 3B on it, four places
 *   (ASME B1.15, from memory); the root of external UNJ threads is left open
 *
 * @param thread - a Unified thread, as parseThread gives it [-]
 * @returns limits [in]; in place of a limit that is open the code that says so
 * @throws nothing: parseThread has checked the thread
 * @source ASMEB11 ASMEB115 MH
 * @example
 * unifiedLimits({ size: "1/2", major: 0.5, tpi: 13, series: "UNC", threadClass: "2B", kind: "internal" }).pitch.max //=> 0.4565
 */
export function unifiedLimits(thread: Thread): ThreadLimits {
  const { threadClass, form, major } = thread;
  const tpi = thread.tpi!;
  const { d, d2, d1, Td2 } = base(thread);
  const digit = threadClass.charAt(0);
  const printed = UNIFIED_EXCEPTIONS[`${thread.size}-${tpi} ${thread.series}`]?.[threadClass];
  const tolerance = printed?.pitchTolerance ?? share(Td2, FORTIETHS[threadClass]!);

  if (thread.kind === "internal") {
    const short = (x: number) => (major < 0.138 ? x : thousandths(x));
    const pitch = element(d2, d2, d2 + tolerance);
    const top = d1 + minorTolerance(digit, major, tpi);
    if (form === "UNJ") return { major: element(d, d, OPEN_MAJOR), pitch, minor: element(d1, d1, top) };
    const minor = element(d1, short(d1), digit === "3" ? top : short(top));
    return { major: element(d, d, OPEN_MAJOR), pitch, minor };
  }
  const allowance = printed?.allowance ?? (digit === "3" ? 0 : share(Td2, ALLOWANCE_FORTIETHS));
  const dMax = d - allowance;
  const d2Max = d2 - allowance;
  let root: Limit = d1 - allowance;
  if (form === "UNJ") root = OPEN_J;
  else if (form === "UNR") root = printed?.roundedRootMax ?? Math.floor(root - ROUNDED_ROOT / tpi + 0.5);
  return {
    major: element(d, dMax - (digit === "1" ? majorTolerance1A : majorTolerance)(tpi), dMax),
    pitch: element(d2, d2Max - tolerance, d2Max),
    minor: element(d1, OPEN_MINOR, root),
  };
}
