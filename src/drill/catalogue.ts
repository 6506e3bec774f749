/**
 * Standard twist drills and their names: "#7", "F", "13/64", "1-1/16", "5.1 mm". Diameters in mm.
 *
 * Number and letter drills hold the four-place inch sizes of the wire and letter gauges; they follow no formula.
 * Fractions: 1/64 in by 64ths to 1-3/4 in, by 32nds to 2-1/4 in, by 16ths to 3-1/2 in (from memory).
 * Metric: 0.2 mm by 0.05 to 3 mm, by 0.1 to 14, by 0.25 to 32, by 0.5 to 100.
 */

export type DrillSet = "number" | "letter" | "fraction" | "metric";
export const DRILL_SETS: readonly DrillSet[] = ["number", "letter", "fraction", "metric"];

export interface Drill {
  /** Diameter [mm]. */
  readonly diameter: number;
  /** Diameter in the system the drill is named in, free of conversion: 0.201 for "#7". */
  readonly size: number;
  readonly native: "mm" | "in";
  readonly name: string;
  readonly set: DrillSet;
}

const INCH = 25.4;

/** #1 … #80 [0.0001 in]. */
const NUMBERS = [
  2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, 1910, 1890, 1850, 1820, 1800, 1770, 1730, 1695, 1660,
  1610, 1590, 1570, 1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285, 1200, 1160, 1130, 1110, 1100, 1065, 1040, 1015, 995,
  980, 960, 935, 890, 860, 820, 810, 785, 760, 730, 700, 670, 635, 595, 550, 520, 465, 430, 420, 410, 400, 390, 380,
  370, 360, 350, 330, 320, 310, 292, 280, 260, 250, 240, 225, 210, 200, 180, 160, 145, 135,
] as const;

/** A … Z [0.001 in]. */
const LETTERS = [
  234, 238, 242, 246, 250, 257, 261, 266, 272, 277, 281, 290, 295, 302, 316, 323, 332, 339, 348, 358, 368, 377, 386,
  397, 404, 413,
] as const;

const catalogue: Readonly<Record<DrillSet, readonly Drill[]>> = {
  number: NUMBERS.map((size, i) => ({
    ...inches(size / 10000),
    name: `#${i + 1}`,
    set: "number" as const,
  })).reverse(),
  letter: LETTERS.map((size, i) => ({
    ...inches(size / 1000),
    name: String.fromCharCode(65 + i),
    set: "letter" as const,
  })),
  fraction: sixtyFourths().map((n) => ({
    ...inches(n / 64),
    name: fractionName(n),
    set: "fraction" as const,
  })),
  metric: hundredths().map((n) => ({
    diameter: n / 100,
    size: n / 100,
    native: "mm" as const,
    name: `${n / 100} mm`,
    set: "metric" as const,
  })),
};

function inches(size: number) {
  return { diameter: size * INCH, size, native: "in" as const };
}

function sixtyFourths(): number[] {
  const all: number[] = [];
  for (let n = 1; n <= 224; n += n < 112 ? 1 : n < 144 ? 2 : 4) all.push(n);
  return all;
}

function hundredths(): number[] {
  const all: number[] = [];
  for (let n = 20; n <= 10000; n += n < 300 ? 5 : n < 1400 ? 10 : n < 3200 ? 25 : 50) all.push(n);
  return all;
}

function fractionName(n: number): string {
  const whole = Math.floor(n / 64);
  let top = n % 64;
  if (top === 0) return `${whole} in`;
  let bottom = 64;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return `${whole > 0 ? `${whole}-` : ""}${top}/${bottom}`;
}

/**
 * All drills of one set, smallest first.
 *
 *   sizes as listed at the head of the file
 *
 * @param set - number, letter, fraction or metric
 * @returns drills; diameter [mm]
 * @throws TradeError never
 * @source CIRCUITOUS B9411 ISO235
 * @example
 * drillsOf("letter").length //=> 26
 * drillsOf("number").length //=> 80
 */
export function drillsOf(set: DrillSet): readonly Drill[] {
  return catalogue[set];
}
