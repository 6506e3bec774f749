/**
 * Limits of size of ISO general-purpose metric threads: basic sizes of ISO 724, deviations and tolerances of
 * ISO 965-1. Sums are made in whole micrometres, so the last printed digit is exact.
 */
import { DEVIATIONS, PITCH_DIAMETER, TD_MAJOR, TD1 } from "./metric-tables.ts";
import type { Limit, Thread, ThreadElement, ThreadLimits } from "./types.ts";

/** √3/2, height of the fundamental triangle over the pitch. */
const H = Math.sqrt(3) / 2;

const OPEN_MAJOR: Limit = { is: "limit-open", standard: "ISO 965-1", of: "internal major" };
const OPEN_MINOR: Limit = { is: "limit-open", standard: "ISO 965-1", of: "external minor least" };

/** Basic pitch and minor diameter in whole micrometres, as ISO 724 prints them. */
const basicPitch = (D: number, P: number) => Math.round((D - 0.75 * H * P) * 1000);
const basicMinor = (D: number, P: number) => Math.round((D - 1.25 * H * P) * 1000);

/** Grades and position of a class: "6H" → [6, 6, "H"], "4g6g" → [4, 6, "g"] (pitch first). */
function parts(threadClass: string): readonly [number, number, string] {
  const first = Number(threadClass.charAt(0));
  return [first, threadClass.length === 4 ? Number(threadClass.charAt(2)) : first, threadClass.slice(-1)];
}

const missing = (diameter: ThreadElement, grade: number, pitch: number): Limit => ({
  is: "no-tolerance",
  diameter,
  grade,
  pitch,
});

/** A sum in micrometres as millimetres; a limit that is open goes through. */
const limit = (um: number, tolerance: Limit): Limit =>
  typeof tolerance === "number" ? (um + tolerance) / 1000 : tolerance;
const negative = (x: Limit): Limit => (typeof x === "number" ? -x : x);

/**
 * Limits of size of a metric thread.
 *
 *   internal: D2 + EI … + EI + TD2, D1 + EI … + EI + TD1, D + EI …
 *   external: d + es … + es − Td, d2 + es … + es − Td2, … d1 + es
 *
 * The largest minor diameter of an external thread is d1 + es, the flat root that a GO gauge allows (ISO 965-1: the
 * root stays inside the basic profile moved by es). The rounded root that gives strength lies deeper: d − 1.22687·P.
 *
 * @param thread - a metric thread, as parseThread gives it [-]
 * @returns limits [mm]; in place of a limit that is open or not tabulated the code that says so
 * @throws nothing: parseThread has checked the thread
 * @source ISO965 ISO724
 * @example
 * metricLimits({ major: 6, pitch: 1, threadClass: "6H", kind: "internal" }).minor.max //=> 5.153
 */
export function metricLimits(thread: Thread): ThreadLimits {
  const { major, pitch: P, threadClass } = thread;
  const [pitchGrade, crestGrade, position] = parts(threadClass);
  const D = Math.round(major * 1000);
  const D2 = basicPitch(major, P);
  const D1 = basicMinor(major, P);
  const basic = { major: D / 1000, pitch: D2 / 1000, minor: D1 / 1000 };
  const row = PITCH_DIAMETER.find((r) => r.P === P && major > r.over && major <= r.upTo);
  const deviations = DEVIATIONS.get(P);

  if (thread.kind === "internal") {
    const EI = position === "G" ? deviations!.g : 0;
    const TD2 = row?.TD2[pitchGrade - 4] ?? missing("pitch", pitchGrade, P);
    const minor = TD1.get(P)?.[crestGrade - 4] ?? missing("minor", crestGrade, P);
    return {
      major: { basic: basic.major, min: limit(D, EI), max: OPEN_MAJOR },
      pitch: { basic: basic.pitch, min: limit(D2, EI), max: limit(D2 + EI, TD2) },
      minor: { basic: basic.minor, min: limit(D1, EI), max: limit(D1 + EI, minor) },
    };
  }
  const offset = position === "h" ? 0 : deviations![position as "e" | "f" | "g"];
  const es: Limit = offset > 0 || position === "h" ? -offset : { is: "no-position", position, pitch: P };
  const Td2 = row?.Td2[pitchGrade - 3] ?? missing("pitch", pitchGrade, P);
  const Td = TD_MAJOR.get(P)?.[crestGrade / 2 - 2] ?? missing("major", crestGrade, P);
  if (typeof es !== "number") {
    const none = (value: number) => ({ basic: value, min: es, max: es });
    return { major: none(basic.major), pitch: none(basic.pitch), minor: none(basic.minor) };
  }
  return {
    major: { basic: basic.major, min: limit(D + es, negative(Td)), max: limit(D, es) },
    pitch: { basic: basic.pitch, min: limit(D2 + es, negative(Td2)), max: limit(D2, es) },
    minor: { basic: basic.minor, min: OPEN_MINOR, max: limit(D1, es) },
  };
}
