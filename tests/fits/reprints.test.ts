/** Limits of size against printed rows, and against tables that were typed apart from those of the code. */
import { describe, expect, it } from "vitest";
import { classLimits, standardTolerance } from "../../src/fits/limits.ts";

describe("ISO tolerance classes (published)", () => {
  /**
   * Limit deviations in µm for sizes over / up to, as printed in public reprints of the ISO 286-2 tables for holes
   * and shafts (limits of H7, H8, H9, H11; K7, M7, N7; E7, F6; h6, h9). Printed to the whole µm, compared exactly.
   */
  const printed: readonly (readonly [string, number, number, number])[] = [
    ["H7", 2, 0, 10],
    ["H7", 5, 0, 12],
    ["H7", 10, 0, 15],
    ["H7", 12, 0, 18],
    ["H7", 25, 0, 21],
    ["H7", 50, 0, 25],
    ["H7", 60, 0, 30],
    ["H8", 4, 0, 18],
    ["H8", 8, 0, 22],
    ["H8", 12, 0, 27],
    ["H8", 30, 0, 33],
    ["H9", 16, 0, 43],
    ["H11", 20, 0, 130],
    ["H11", 6, 0, 75],
    ["H12", 45, 0, 250],
    ["H13", 45, 0, 390],
    ["K7", 5, -9, 3],
    ["K7", 16, -12, 6],
    ["K7", 40, -18, 7],
    ["M7", 25, -21, 0],
    ["M7", 100, -35, 0],
    ["N7", 8, -19, -4],
    ["N7", 25, -28, -7],
    ["N7", 150, -52, -12],
    ["E7", 5, 20, 32],
    ["E7", 25, 40, 61],
    ["F6", 16, 16, 27],
    ["F6", 70, 30, 49],
    ["JS7", 25, -10.5, 10.5],
    ["JS9", 12, -21.5, 21.5],
    ["h6", 5, -8, 0],
    ["h6", 100, -22, 0],
    ["h9", 16, -43, 0],
  ];
  it("are those of the tables", () => {
    for (const [text, size, lower, upper] of printed) {
      const got = classLimits(size, text);
      expect([got.lower, got.upper], `${text} at ${size}`).toEqual([lower / 1000, upper / 1000]);
    }
  });
  it("belong to the range that ends at a size", () => {
    expect(standardTolerance(10, "7")).toBe(0.015);
    expect(standardTolerance(10.001, "7")).toBe(0.018);
  });
});

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

/** Just above the lower end of each range, and its upper end. */
const SIZES = RANGES.map((end, range) => [range === 0 ? 0.5 : RANGES[range - 1]! + 0.01, end] as const);

describe("tolerance classes (independent: a second table of ISO 286)", () => {
  it.each([...Object.keys(LOWER), "JS"])("%s and its shaft in each grade and range", (letter) => {
    for (const [grade, widths] of Object.entries(GRADES))
      for (const [range, sizes] of SIZES.entries())
        for (const size of sizes) {
          const width = widths[range]!;
          const lower = letter === "JS" ? -width / 2 : LOWER[letter]![range]!;
          const name = `${letter}${grade}`;
          const hole = classLimits(size, name);
          expect(hole.lower, `${name} at ${size}`).toBeCloseTo(lower / 1000, 9);
          expect(hole.upper, `${name} at ${size}`).toBeCloseTo((lower + width) / 1000, 9);
          const shaft = classLimits(size, name.toLowerCase());
          expect(shaft.upper, `${name.toLowerCase()} at ${size}`).toBeCloseTo(-hole.lower, 9);
          expect(shaft.lower, `${name.toLowerCase()} at ${size}`).toBeCloseTo(-hole.upper, 9);
          expect(standardTolerance(size, grade)).toBe(width / 1000);
        }
  });
  it.each(Object.keys(UPPER_7))("%s7 in each range", (letter) => {
    for (const [range, sizes] of SIZES.entries())
      for (const size of sizes) {
        const { lower, upper } = classLimits(size, `${letter}7`);
        expect(upper, `${letter}7 at ${size}`).toBeCloseTo(UPPER_7[letter]![range]! / 1000, 9);
        expect(upper - lower, `${letter}7 at ${size}`).toBeCloseTo(GRADES[7]![range]! / 1000, 9);
      }
  });
});
