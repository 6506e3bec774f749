import { describe, expect, it } from "vitest";
import { parseThread } from "../../src/thread/designation.ts";
import { threadSize } from "../../src/thread/limits.ts";
import { METRIC_SIZES } from "../../src/thread/metric-series.ts";
import { DEVIATIONS, PITCH_DIAMETER, TD_MAJOR, TD1 } from "../../src/thread/metric-tables.ts";
import type { ThreadElement, ThreadLimit } from "../../src/thread/types.ts";
import { refusal } from "../refusal.ts";

const size = (text: string, element: ThreadElement, limit: ThreadLimit) =>
  threadSize(parseThread(text), element, limit);

/** R40 preferred numbers (ISO 3) from 20 to 1250, in whole micrometres as the standard writes them. */
const R40 = [
  20, 21, 22, 24, 25, 26, 28, 30, 32, 34, 36, 38, 40, 42, 45, 48, 50, 53, 56, 60, 63, 67, 71, 75, 80, 85, 90, 95, 100,
  106, 112, 118, 125, 132, 140, 150, 160, 170, 180, 190, 200, 212, 224, 236, 250, 265, 280, 300, 315, 335, 355, 375,
  400, 425, 450, 475, 500, 530, 560, 600, 630, 670, 710, 750, 800, 850, 900, 950, 1000, 1060, 1120, 1180, 1250,
];
/** Steps of R40 between neighbours of a list; a grade is a quarter wider than the one before: four steps. */
const steps = (list: readonly number[]) => list.slice(1).map((t, k) => R40.indexOf(t) - R40.indexOf(list[k]!));
/** Grade over grade 6 (ISO 965-1 clause 13). */
const GRADE: Record<number, number> = { 3: 0.5, 4: 0.63, 5: 0.8, 6: 1, 7: 1.25, 8: 1.6, 9: 2 };
/** How far the worst of a list is from the formula; rounding to R40 alone moves a value by up to 3 %. */
const worst = (list: readonly number[], formula: (k: number) => number) =>
  Math.max(...list.map((t, k) => Math.abs(t / formula(k) - 1)));

describe("ISO 965-1 tables (independent: the formulas of clause 13, from memory)", () => {
  it.each(PITCH_DIAMETER)(
    "have Td2 near 90·P^0.4·d^0.1 and TD2 near 1.32 times that over $over to $upTo, P $P",
    (row) => {
      const six = 90 * row.P ** 0.4 * Math.sqrt(row.over * row.upTo) ** 0.1;
      expect(worst(row.Td2, (k) => six * GRADE[k + 3]!)).toBeLessThan(0.05);
      expect(worst(row.TD2, (k) => 1.32 * six * GRADE[k + 4]!)).toBeLessThan(0.06);
    },
  );

  it.each([...TD1])("have TD1 near 433·P − 190·P^1.22, above 0.8 mm 230·P^0.7, for P %d", (P, grades) => {
    const six = P < 1 ? 433 * P - 190 * P ** 1.22 : 230 * P ** 0.7;
    // 0.5 mm is the farthest: 140 for 135, and M3-6H is printed 2.459 to 2.599.
    expect(worst(grades, (k) => six * GRADE[k + 4]!)).toBeLessThan(0.07);
  });

  it.each([...TD_MAJOR])("have Td near 180·P^⅔ − 3.15/√P for P %d", (P, grades) => {
    const six = 180 * P ** (2 / 3) - 3.15 / Math.sqrt(P);
    expect(worst(grades, (k) => six * GRADE[2 * k + 4]!)).toBeLessThan(0.06);
  });

  it.each([...DEVIATIONS])(
    "have deviations near 15 + 11·P (g, G), 30 + 11·P (f) and 50 + 11·P (e) for P %d",
    (P, d) => {
      // 0.75 mm is the farthest: 22 for 23.25, and M6×0.75-6g is printed 5.978.
      expect(worst([d.g], () => 15 + 11 * P)).toBeLessThan(0.06);
      if (d.f > 0) expect(worst([d.f], () => 30 + 11 * P)).toBeLessThan(0.05);
      // The standard's e runs below its formula at the fine end: 50 for 55.5 at 0.5 mm.
      if (d.e > 0) expect(worst([d.e], () => 50 + 11 * P)).toBeLessThan(P < 0.7 ? 0.1 : 0.05);
    },
  );

  it("go up by four R40 steps from grade to grade, without a gap", () => {
    const odd: string[] = [];
    const look = (name: string, list: readonly number[], step: number) => {
      if (steps(list).some((s) => s !== step)) odd.push(`${name}: ${list.join(" ")}`);
    };
    for (const { over, P, Td2, TD2 } of PITCH_DIAMETER) {
      look(`Td2 over ${over} P ${P}`, Td2, 4);
      look(`TD2 over ${over} P ${P}`, TD2, 4);
    }
    for (const [P, list] of TD1) look(`TD1 P ${P}`, list, 4);
    for (const [P, list] of TD_MAJOR) look(`Td P ${P}`, list, 8);
    expect(odd).toEqual([]);
  });

  it("give every selected diameter and pitch the limits of a medium class", () => {
    for (const [d, coarse, fine, more = []] of METRIC_SIZES) {
      for (const P of [...(coarse ? [coarse] : []), ...fine, ...more]) {
        const grade = P < 0.3 ? (P < 0.25 ? 4 : 5) : 6;
        const nut = `M${d}x${P}-${grade}H`;
        const bolt = `M${d}x${P}-6g`;
        expect(size(nut, "pitch", "max"), nut).toBeGreaterThan(size(nut, "pitch", "basic"));
        expect(size(nut, "minor", "max"), nut).toBeGreaterThan(size(nut, "minor", "basic"));
        expect(size(bolt, "pitch", "min"), bolt).toBeLessThan(size(bolt, "pitch", "max"));
        expect(size(bolt, "major", "min"), bolt).toBeLessThan(size(bolt, "major", "max"));
      }
    }
  });
});

describe("metric limits (identity)", () => {
  it("take the pitch tolerance from the first part of a class and the crest tolerance from the second", () => {
    expect(size("M12-4g6g", "pitch", "min")).toBe(size("M12-4g", "pitch", "min"));
    expect(size("M12-4g6g", "major", "min")).toBe(size("M12-6g", "major", "min"));
    expect(size("M12-5H6H", "pitch", "max")).toBe(size("M12-5H", "pitch", "max"));
    expect(size("M12-5H6H", "minor", "max")).toBe(size("M12-6H", "minor", "max"));
  });

  it("move G as a whole against H and g against h", () => {
    expect(size("M10-6G", "pitch", "min")).toBeCloseTo(size("M10-6H", "pitch", "min") + 0.032, 9);
    expect(size("M10-6G", "minor", "max")).toBeCloseTo(size("M10-6H", "minor", "max") + 0.032, 9);
    expect(size("M10-6G", "major", "min")).toBe(10.032);
    expect(size("M10-6g", "major", "max")).toBe(9.968);
    expect(size("M10-6h", "major", "max")).toBe(10);
  });

  it("have the nominal diameter as basic major diameter", () => {
    for (const name of ["M1-5H", "M6-6H", "M10x1.25-6g"])
      expect(size(name, "major", "basic")).toBe(Number(/\d+/.exec(name)![0]));
  });

  it("say which tolerance the standard does not have", () => {
    expect(refusal(() => size("M1-6H", "pitch", "max"))).toMatch(
      /no pitch-diameter tolerance of grade 6 for a pitch of 0.25/,
    );
    expect(refusal(() => size("M2-6e", "pitch", "max"))).toMatch(/no position e for a pitch of 0.4/);
    expect(refusal(() => size("M3-6g8g", "major", "min"))).toMatch(/no major-diameter tolerance of grade 8/);
  });
});

describe("metric sizes and pitches (published, ISO 261 arranged by pitch, from memory)", () => {
  const LARGE = [42, 45, 48, 52, 55, 56, 58, 60, 62, 64];
  const BY_PITCH: Readonly<Record<string, readonly number[]>> = {
    0.2: [1, 1.1, 1.2, 1.4, 1.6, 1.8],
    0.25: [2, 2.2],
    0.35: [2.5, 3, 3.5],
    0.5: [4, 4.5, 5, 5.5],
    0.75: [6, 7, 8, 9, 10, 11],
    1: [8, 9, 10, 11, 12, 14, 15, 16, 17, 18, 20, 22, 24, 25, 27, 28, 30],
    1.25: [10, 12, 14],
    1.5: [12, 14, 15, 16, 17, 18, 20, 22, 24, 25, 26, 27, 28, 30, 32, 33, 35, 36, 38, 39, 40, 50, ...LARGE],
    2: [18, 20, 22, 24, 25, 27, 28, 30, 32, 33, 36, 39, 40, 50, ...LARGE],
    3: [30, 33, 36, 39, 40, 50, ...LARGE],
    4: LARGE,
  };
  const COARSE: Readonly<Record<string, readonly number[]>> = {
    ...{ 0.25: [1, 1.1, 1.2], 0.3: [1.4], 0.35: [1.6, 1.8], 0.4: [2], 0.45: [2.2, 2.5], 0.5: [3], 0.6: [3.5] },
    ...{ 0.7: [4], 0.75: [4.5], 0.8: [5], 1: [6, 7], 1.25: [8, 9], 1.5: [10, 11], 1.75: [12], 2: [14, 16] },
    ...{
      2.5: [18, 20, 22],
      3: [24, 27],
      3.5: [30, 33],
      4: [36, 39],
      4.5: [42, 45],
      5: [48, 52],
      5.5: [56, 60],
      6: [64],
    },
  };
  /** Constant-pitch series that ISO 261 does not select (DIN 13 parts 2 to 4, from memory). */
  const FURTHER: Readonly<Record<string, readonly number[]>> = {
    0.35: [4],
    0.5: [6, 7, 8, 9, 10, 11, 12, 14, 16, 18, 20, 22],
    0.75: [5, 12, 14, 15, 16, 18, 20, 22, 24, 27, 30, 33],
    1: [26, 33, 36, 39, 42, 45],
  };
  const turned = (of: (row: (typeof METRIC_SIZES)[number]) => readonly number[]) => {
    const found: Record<string, number[]> = {};
    for (const row of METRIC_SIZES) for (const pitch of of(row)) found[pitch] = [...(found[pitch] ?? []), row[0]];
    return found;
  };
  const sorted = (table: Readonly<Record<string, readonly number[]>>) =>
    Object.fromEntries(Object.entries(table).map(([pitch, sizes]) => [pitch, [...sizes].sort((a, b) => a - b)]));
  it("have these fine pitches", () => expect(turned(([, , fine]) => fine)).toEqual(sorted(BY_PITCH)));
  it("have these pitches of constant-pitch series", () =>
    expect(turned(([, , , further = []]) => further)).toEqual(FURTHER));
  it("have these coarse pitches", () =>
    expect(turned(([, coarse]) => (coarse > 0 ? [coarse] : []))).toEqual(sorted(COARSE)));
});
