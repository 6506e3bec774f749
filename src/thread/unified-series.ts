/**
 * Standard series of Unified screw threads: which pitches exist for which size.
 * ASME B1.1 Table 2 (standard series combinations): UNC, UNF, UNEF and the constant-pitch series 4-UN to 32-UN.
 * A combination that belongs to UNC, UNF or UNEF goes by that name, not by its constant-pitch series.
 */

/** Basic major diameter [in] of the numbered sizes: 0.060 + 0.013·N. */
export const NUMBER_SIZES: ReadonlyMap<number, number> = new Map([
  [0, 0.06],
  [1, 0.073],
  [2, 0.086],
  [3, 0.099],
  [4, 0.112],
  [5, 0.125],
  [6, 0.138],
  [8, 0.164],
  [10, 0.19],
  [12, 0.216],
]);

/** Size name, then threads per inch of UNC, UNF, UNEF (0: none). */
const NAMED: readonly (readonly [string, number, number, number])[] = [
  ["#0", 0, 80, 0],
  ["#1", 64, 72, 0],
  ["#2", 56, 64, 0],
  ["#3", 48, 56, 0],
  ["#4", 40, 48, 0],
  ["#5", 40, 44, 0],
  ["#6", 32, 40, 0],
  ["#8", 32, 36, 0],
  ["#10", 24, 32, 0],
  ["#12", 24, 28, 32],
  ["1/4", 20, 28, 32],
  ["5/16", 18, 24, 32],
  ["3/8", 16, 24, 32],
  ["7/16", 14, 20, 28],
  ["1/2", 13, 20, 28],
  ["9/16", 12, 18, 24],
  ["5/8", 11, 18, 24],
  ["11/16", 0, 0, 24],
  ["3/4", 10, 16, 20],
  ["13/16", 0, 0, 20],
  ["7/8", 9, 14, 20],
  ["15/16", 0, 0, 20],
  ["1", 8, 12, 20],
  ["1-1/16", 0, 0, 18],
  ["1-1/8", 7, 12, 18],
  ["1-3/16", 0, 0, 18],
  ["1-1/4", 7, 12, 18],
  ["1-5/16", 0, 0, 18],
  ["1-3/8", 6, 12, 18],
  ["1-7/16", 0, 0, 18],
  ["1-1/2", 6, 12, 18],
  ["1-9/16", 0, 0, 18],
  ["1-5/8", 0, 0, 18],
  ["1-11/16", 0, 0, 18],
  ["1-3/4", 5, 0, 0],
  ["2", 4.5, 0, 0],
  ["2-1/4", 4.5, 0, 0],
  ["2-1/2", 4, 0, 0],
  ["2-3/4", 4, 0, 0],
  ["3", 4, 0, 0],
  ["3-1/4", 4, 0, 0],
  ["3-1/2", 4, 0, 0],
  ["3-3/4", 4, 0, 0],
  ["4", 4, 0, 0],
];

/** Constant-pitch series: threads per inch, smallest and largest size [in]. */
const CONSTANT: readonly (readonly [number, number, number])[] = [
  [4, 2.5, 6],
  [6, 1.375, 6],
  [8, 1, 6],
  [12, 0.5625, 6],
  [16, 0.375, 6],
  [20, 0.25, 3],
  [28, 0.25, 1.5],
  [32, 0.25, 1],
];

export type UnifiedSeries = "UNC" | "UNF" | "UNEF" | "UN" | "UNS";

export interface SeriesEntry {
  readonly tpi: number;
  readonly series: Exclude<UnifiedSeries, "UNS">;
}

export interface SizeEntry {
  /** Name on drawings: "#10", "1/2", "1-1/16". */
  readonly name: string;
  /** Basic major diameter [in]. */
  readonly major: number;
  /** Standard pitches, coarse first. */
  readonly pitches: readonly SeriesEntry[];
}

/** Name of an inch size in sixteenths of an inch. */
function fractionName(sixteenths: number): string {
  const whole = Math.floor(sixteenths / 16);
  let top = sixteenths - whole * 16;
  if (top === 0) return String(whole);
  let bottom = 16;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return `${whole > 0 ? `${whole}-` : ""}${top}/${bottom}`;
}

function build(): SizeEntry[] {
  const named = new Map(NAMED.map((row) => [row[0], row]));
  const entry = (name: string, major: number): SizeEntry => {
    const pitches: SeriesEntry[] = [];
    const row = named.get(name);
    const [, unc, unf, unef] = row ?? [];
    const listed = { UNC: unc, UNF: unf, UNEF: unef };
    (["UNC", "UNF", "UNEF"] as const).forEach((series) => {
      const tpi = listed[series];
      if (tpi) pitches.push({ tpi, series });
    });
    for (const [tpi, low, high] of CONSTANT) {
      if (name.startsWith("#") || major < low || major > high) continue;
      if (!pitches.some((p) => p.tpi === tpi)) pitches.push({ tpi, series: "UN" });
    }
    return { name, major, pitches };
  };
  const sizes = [...NUMBER_SIZES].map(([n, major]) => entry(`#${n}`, major));
  // Sixteenths from 1/4 to 2, eighths from there to 6.
  for (let s = 4; s <= 96; s += s < 32 ? 1 : 2) sizes.push(entry(fractionName(s), s / 16));
  return sizes;
}

/** Every standard size, by rising diameter. */
export const UNIFIED_SIZES: readonly SizeEntry[] = build();

/**
 * Special threads that the standard's tables list as UNS: size, threads per inch (ASME B1.1 Table 2, from memory). Any
 * other pitch may be made as UNS too; these have printed limits.
 */
const LISTED_SPECIAL: readonly (readonly [string, readonly number[]])[] = [
  ["#10", [28, 36, 40, 48, 56]],
  ["#12", [36, 40, 48, 56]],
  ["1/4", [24, 27, 36, 40, 48, 56]],
  ["5/16", [27, 36, 40, 48]],
  ["3/8", [18, 27, 36, 40]],
  ["7/16", [18, 24, 27]],
  ["1/2", [12, 14, 18, 24, 27]],
  ["9/16", [14, 27]],
  ["5/8", [14, 27]],
  ["3/4", [14, 18, 24, 27]],
  ["7/8", [10, 18, 24, 27]],
  ["1", [10, 14, 18, 24, 27]],
  ["1-1/8", [10, 14, 24]],
  ["1-1/4", [10, 14, 24]],
  ["1-3/8", [10, 14, 24]],
  ["1-1/2", [10, 14, 24]],
  ["1-5/8", [10, 14, 24]],
  ["1-3/4", [10, 14, 18]],
  ["1-7/8", [10, 14, 18]],
  ["2", [10, 14, 18]],
  ["2-1/4", [10, 14, 18]],
  ["2-1/2", [10, 14, 18]],
  ["2-3/4", [10, 14, 18]],
  ["3", [10, 14, 18]],
];

/**
 * Special threads that the standard lists for a size.
 *
 *   table
 *
 * @param size - name of the size, such as "1" or "#10" [-]
 * @returns threads per inch, coarse first; empty when none is listed [-]
 * @throws nothing
 * @source ASMEB11
 * @example
 * listedSpecials("1")[1] //=> 14
 */
export function listedSpecials(size: string): readonly number[] {
  return LISTED_SPECIAL.find(([name]) => name === size)?.[1] ?? [];
}
