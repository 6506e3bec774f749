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
import { Decimal as Base } from "decimal.js";
import type { Limit, Thread, ThreadLimits } from "./types.ts";
import { UNIFIED_EXCEPTIONS } from "./unified-exceptions.ts";

const Decimal = Base.clone({ precision: 20, rounding: Base.ROUND_HALF_UP });
type Decimal = Base;

const H = new Decimal(3).sqrt().div(2);
/** 0.64951905·P from major to pitch diameter (3/4·H). */
const TO_PITCH = H.times("0.75");
/** 1.08253175·P from major to minor diameter (5/4·H). */
const TO_MINOR = H.times("1.25");
/** From the flat minor diameter down to the rounded root of a UNR thread, 1/8·H, with the digits the tables show. */
const TO_ROUNDED_ROOT = new Decimal("0.10825");

/** Pitch-diameter tolerance as a multiple of that of Class 2A. */
const PITCH_FACTOR: Readonly<Record<string, string>> = {
  "1A": "1.5",
  "2A": "1",
  "3A": "0.75",
  "1B": "1.95",
  "2B": "1.3",
  "3B": "0.975",
};

/** Diameters [in] for which tolerances with nine pitches of engagement were worked out; the nearest serves, ties down. */
const TOLERANCE_SIZES = [
  0.06, 0.073, 0.086, 0.099, 0.112, 0.125, 0.138, 0.164, 0.19, 0.25, 0.375, 0.5, 0.625, 0.75, 1, 1.25, 1.5, 1.75, 2,
  2.5, 3, 3.5, 4, 5, 6,
];

/** Rounds half up; sixteen places first, so that a tie that is exact on paper is a tie here. */
const places = (x: Decimal, n: number) => x.toDecimalPlaces(16).toDecimalPlaces(n, Base.ROUND_HALF_UP);
const four = (x: Decimal) => places(x, 4);

/** Remembers the slow roots: sizes and pitches are few. */
function remembered(root: (x: number) => Decimal): (x: number) => Decimal {
  const known = new Map<number, Decimal>();
  return (x) => {
    let answer = known.get(x);
    if (answer === undefined) {
      answer = root(x);
      if (known.size < 500) known.set(x, answer);
    }
    return answer;
  };
}
const pitchOf = remembered((tpi) => new Decimal(1).div(tpi));
/** P^⅔ of a number of threads per inch. */
const twoThirds = remembered((tpi) => pitchOf(tpi).times(pitchOf(tpi)).cbrt());
const cubeRoot = remembered((inches) => new Decimal(inches).cbrt());
const squareRoot = remembered((inches) => new Decimal(inches).sqrt());
/** √(9·P) of a number of threads per inch. */
const ninePitchRoot = remembered((tpi) => pitchOf(tpi).times(9).sqrt());

/** Threads whose tabulated tolerances assume an engagement of one diameter (1-14 UNS once was a fine thread). */
function diameterEngagement({ series, tpi, size }: Thread): boolean {
  if (series === "UNC" || series === "UNF") return true;
  return (series === "UN" && tpi! <= 8) || (series === "UNS" && tpi === 14 && size === "1");
}

/** Sizes of the standard's tables: numbered, or whole sixteenths of an inch. */
function isTableSize({ size, major }: Thread): boolean {
  return size.startsWith("#") || Number.isInteger(major * 16);
}

/** Td2(2A) = 0.0015·D^⅓ + 0.0015·√LE + 0.015·P^⅔ [in], to six places. */
function pitchTolerance2A(thread: Thread): Decimal {
  const { major, tpi } = thread;
  let size = major;
  if (!diameterEngagement(thread) && isTableSize(thread)) {
    const off = (s: number) => Math.abs(s - major);
    size = TOLERANCE_SIZES.reduce((best, s) => (off(s) < off(best) - 1e-9 ? s : best));
  }
  const root = diameterEngagement(thread) ? squareRoot(major) : ninePitchRoot(tpi!);
  return places(cubeRoot(size).plus(root).times("0.0015").plus(twoThirds(tpi!).times("0.015")), 6);
}

/** Minor-diameter tolerance of internal threads [in], unrounded. */
function minorTolerance(digit: string, D: Decimal, P: Decimal, tpi: number): Decimal {
  const common = twoThirds(tpi).times("0.05").plus(P.times("0.03").div(D)).minus("0.002");
  const most = P.times("0.394");
  if (digit === "3") {
    const least = tpi >= 13 ? P.times("0.23").minus(P.times(P).times("1.5")) : P.times("0.12");
    return Decimal.min(Decimal.max(common, least), most);
  }
  const plain = P.times("0.25").minus(P.times(P).times("0.4"));
  if (D.greaterThanOrEqualTo("0.25")) return tpi >= 4 ? plain : P.times("0.15");
  return Decimal.min(Decimal.max(common, plain), most);
}

const OPEN_MAJOR = "ASME B1.1 sets no largest major diameter for an internal thread";
const OPEN_MINOR = "ASME B1.1 sets no smallest minor diameter for an external thread";
const OPEN_J = "limits of the minor diameter of UNJ threads are not covered yet";

const limit = (x: Decimal | string): Limit => (typeof x === "string" ? x : x.toNumber());
const element = (basic: Decimal, min: Decimal | string, max: Decimal | string) => ({
  basic: basic.toNumber(),
  min: limit(min),
  max: limit(max),
});

/**
 * Limits of size of a Unified thread.
 *
 *   Td2(2A) = 0.0015·D^⅓ + 0.0015·√LE + 0.015·P^⅔; 1A ×1.5, 3A ×0.75, 1B ×1.95, 2B ×1.3, 3B ×0.975
 *   LE = D (UNC, UNF, 4-, 6-, 8-UN) or 9·P; allowance 0.3·Td2(2A) for 1A, 2A; Td = 0.060·P^⅔ (1A 0.090·P^⅔)
 *   largest external minor: basic less allowance (UN); the same less H/8 for the rounded root (UNR)
 *
 * @param thread - a Unified thread, as parseThread gives it [-]
 * @returns limits [in]; a sentence in place of a limit that is open
 * @throws nothing: parseThread has checked the thread
 * @source ASMEB11 MH
 * @example
 * unifiedLimits(parseThread("1/2-13 UNC-2B")).pitch.max //=> 0.4565
 */
export function unifiedLimits(thread: Thread): ThreadLimits {
  const { threadClass, form } = thread;
  const tpi = thread.tpi!;
  const D = new Decimal(thread.major);
  const P = pitchOf(tpi);
  const digit = threadClass.charAt(0);
  const printed = UNIFIED_EXCEPTIONS[`${thread.size}-${tpi} ${thread.series}`]?.[threadClass];

  const d = four(D);
  const d2 = four(D.minus(TO_PITCH.times(P)));
  const d1 = four(D.minus(TO_MINOR.times(P)));
  const tolerance2A = pitchTolerance2A(thread);
  const Td2 = new Decimal(printed?.pitchTolerance ?? four(tolerance2A.times(PITCH_FACTOR[threadClass]!)));

  if (thread.kind === "internal") {
    const short = (x: Decimal) => (D.lessThan("0.138") ? x : x.toDecimalPlaces(3, Base.ROUND_HALF_EVEN));
    const top = d1.plus(four(minorTolerance(digit, D, P, tpi)));
    return {
      major: element(d, d, OPEN_MAJOR),
      pitch: element(d2, d2, d2.plus(Td2)),
      minor: form === "UNJ" ? element(d1, OPEN_J, OPEN_J) : element(d1, short(d1), digit === "3" ? top : short(top)),
    };
  }
  const allowance = new Decimal(printed?.allowance ?? (digit === "3" ? 0 : four(tolerance2A.times("0.3"))));
  const Td = four(twoThirds(tpi).times(digit === "1" ? "0.09" : "0.06"));
  const dMax = d.minus(allowance);
  const d2Max = d2.minus(allowance);
  const flatRoot = d1.minus(allowance);
  const roundedRoot = printed?.roundedRootMax ?? four(flatRoot.minus(TO_ROUNDED_ROOT.times(P)));
  return {
    major: element(d, dMax.minus(Td), dMax),
    pitch: element(d2, d2Max.minus(Td2), d2Max),
    minor: element(d1, OPEN_MINOR, form === "UNJ" ? OPEN_J : form === "UNR" ? new Decimal(roundedRoot) : flatRoot),
  };
}
