import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { classLimits, fitOf, readToleranceClass, standardTolerance } from "../../src/fits/limits.ts";
import { GRADES, MAIN_RANGES } from "../../src/fits/tables.ts";
import { sentence } from "../refusal.ts";

/** Printed limits [µm] lower/upper (ISO 286-2 tables and shop charts; from memory). */
const HOLES: readonly [number, string, number, number][] = [
  [3, "H7", 0, 10],
  [6, "H7", 0, 12],
  [8, "H7", 0, 15],
  [10, "H6", 0, 9],
  [10, "H7", 0, 15],
  [10, "H8", 0, 22],
  [12, "H7", 0, 18],
  [16, "H9", 0, 43],
  [20, "H7", 0, 21],
  [20, "H8", 0, 33],
  [20, "H11", 0, 130],
  [25, "H7", 0, 21],
  [40, "H7", 0, 25],
  [50, "H10", 0, 100],
  [60, "H7", 0, 30],
  [100, "H7", 0, 35],
  [150, "H7", 0, 40],
  [200, "H7", 0, 46],
  [300, "H7", 0, 52],
  [400, "H7", 0, 57],
  [500, "H7", 0, 63],
  [20, "G7", 7, 28],
  [20, "F7", 20, 41],
  [20, "F8", 20, 53],
  [20, "E9", 40, 92],
  [20, "D9", 65, 117],
  [20, "D10", 65, 149],
  [20, "C11", 110, 240],
  [40, "C11", 120, 280],
  [20, "JS7", -10.5, 10.5],
  [20, "J7", -9, 12],
  [20, "K7", -15, 6],
  [20, "K6", -11, 2],
  [40, "K7", -18, 7],
  [20, "M7", -21, 0],
  [20, "N7", -28, -7],
  [40, "N7", -33, -8],
  [20, "N9", -52, 0],
  [20, "P7", -35, -14],
  [40, "P7", -42, -17],
  [20, "P9", -74, -22],
  [60, "P9", -106, -32],
  [20, "R7", -41, -20],
  [20, "S7", -48, -27],
  [2, "N7", -14, -4],
  [2, "P7", -16, -6],
  [2, "K7", -10, 0],
  [300, "M6", -41, -9],
];
const SHAFTS: readonly [number, string, number, number][] = [
  [20, "h6", -13, 0],
  [20, "h7", -21, 0],
  [20, "h9", -52, 0],
  [20, "h11", -130, 0],
  [20, "g6", -20, -7],
  [10, "g6", -14, -5],
  [40, "g6", -25, -9],
  [20, "f7", -41, -20],
  [25, "f7", -41, -20],
  [40, "f7", -50, -25],
  [50, "e8", -89, -50],
  [20, "d9", -117, -65],
  [40, "c11", -280, -120],
  [50, "c11", -290, -130],
  [20, "js6", -6.5, 6.5],
  [20, "j6", -4, 9],
  [20, "k6", 2, 15],
  [50, "k6", 2, 18],
  [20, "m6", 8, 21],
  [20, "n6", 15, 28],
  [20, "p6", 22, 35],
  [20, "r6", 28, 41],
  [20, "s6", 35, 48],
  [50, "s6", 43, 59],
  [60, "s6", 53, 72],
  [80, "s6", 59, 78],
  [100, "s6", 71, 93],
  [50, "t6", 54, 70],
  [30, "u6", 48, 61],
  [100, "u6", 124, 146],
  [120, "p6", 37, 59],
  [180, "h8", -63, 0],
  [10, "m6", 6, 15],
  [6, "p6", 12, 20],
  [3, "p6", 6, 12],
  [30, "a11", -430, -300],
  [30, "b11", -290, -160],
];

describe("ISO 286 limits (published, from memory)", () => {
  it.each([...HOLES, ...SHAFTS])("%s %s is %s to %s µm", (d, name, lower, upper) => {
    const limits = classLimits(d, name);
    expect([limits.lower * 1000, limits.upper * 1000].map((x) => Number(x.toFixed(3)))).toEqual([lower, upper]);
    expect(limits.min).toBe(Number((d + lower / 1000).toFixed(7)));
    expect(limits.max).toBe(Number((d + upper / 1000).toFixed(7)));
  });
  it.each([
    [20, "H7/g6", 7, 41, "clearance"],
    [20, "H7/h6", 0, 34, "clearance"],
    [20, "H7/k6", -15, 19, "transition"],
    [20, "H7/p6", -35, -1, "interference"],
    [40, "H8/f7", 25, 89, "clearance"],
    [40, "H7/s6", -59, -18, "interference"],
  ] as const)("%s %s", (d, name, least, most, kind) => {
    const fit = fitOf(d, name);
    expect(fit.kind).toBe(kind);
    expect([fit.least * 1000, fit.most * 1000].map((x) => Number(x.toFixed(3)))).toEqual([least, most]);
  });
});

describe("standard tolerances (published: the formulas of ISO 286-1, from memory)", () => {
  const ranges = MAIN_RANGES.map((upTo, i) => [i === 0 ? 1 : MAIN_RANGES[i - 1]!, upTo] as const);
  const FACTOR = { 5: 7, 6: 10, 7: 16, 8: 25, 9: 40, 10: 64, 11: 100, 12: 160, 13: 250, 14: 400, 15: 640, 16: 1000 };
  it.each(Object.entries(FACTOR))(
    "IT%s is that many tolerance units i = 0.45·∛D + 0.001·D, rounded",
    (grade, factor) => {
      ranges.forEach(([low, high], k) => {
        const D = Math.sqrt((k === 0 ? 1 : low) * high);
        const exact = factor * (0.45 * Math.cbrt(k === 0 ? Math.sqrt(3) : D) + 0.001 * D);
        // The standard rounds its table by eye: up to 15 % up in the first range, within 9.5 % below 20 µm, 4.5 % elsewhere.
        expect(Math.abs(GRADES[grade]![k]! / exact - 1), `${low} to ${high}`).toBeLessThan(
          k === 0 ? 0.155 : exact < 20 ? 0.095 : 0.045,
        );
      });
    },
  );
  it("rise with the grade and with the size (identity)", () => {
    const order = ["01", "0", ...Array.from({ length: 18 }, (_, i) => String(i + 1))];
    for (let k = 0; k < 13; k++)
      for (let g = 1; g < order.length; g++) expect(GRADES[order[g]!]![k]).toBeGreaterThan(GRADES[order[g - 1]!]![k]!);
    for (const values of Object.values(GRADES))
      for (let k = 1; k < 13; k++) expect(values[k]).toBeGreaterThanOrEqual(values[k - 1]!);
  });
  it("from IT6 on are ten times that of five grades before (published rule, from memory; rounded)", () => {
    for (let g = 6; g <= 13; g++)
      for (let k = 0; k < 13; k++)
        expect(Math.abs(GRADES[String(g + 5)]![k]! / (10 * GRADES[String(g)]![k]!) - 1)).toBeLessThan(0.065);
  });
});

describe("ISO 286 (identity)", () => {
  const sizes = [
    1.5, 3, 3.1, 6, 9, 12, 16, 20, 28, 35, 45, 60, 75, 90, 115, 130, 170, 190, 240, 260, 310, 350, 390, 440, 500,
  ];
  it("gives every class the standard tolerance", () => {
    for (const d of sizes)
      for (const name of [
        "H7",
        "G6",
        "D10",
        "JS9",
        "K6",
        "K7",
        "K8",
        "M6",
        "M7",
        "M8",
        "N7",
        "N9",
        "P6",
        "P7",
        "P9",
        "R7",
        "h6",
        "f7",
        "js6",
        "k6",
        "m6",
        "n6",
        "p6",
        "s6",
        "u6",
      ]) {
        const { lower, upper, grade } = classLimits(d, name);
        expect(upper - lower).toBeCloseTo(standardTolerance(d, grade), 9);
      }
  });
  it("mirrors holes and shafts: H8/f7 and F8/h7 have the same clearances, as have H7/p6 and P7/h6", () => {
    for (const d of sizes) {
      expect(fitOf(d, "F8/h7").least).toBeCloseTo(fitOf(d, "H8/f7").least, 9);
      expect(fitOf(d, "F8/h7").most).toBeCloseTo(fitOf(d, "H8/f7").most, 9);
      if (d > 3) {
        for (const [shaftBasis, holeBasis] of [
          ["P7/h6", "H7/p6"],
          ["S7/h6", "H7/s6"],
          ["N7/h6", "H7/n6"],
          ["M7/h6", "H7/m6"],
          ["K7/h6", "H7/k6"],
        ] as const) {
          expect(fitOf(d, shaftBasis).least, `${d} ${shaftBasis}`).toBeCloseTo(fitOf(d, holeBasis).least, 9);
          expect(fitOf(d, shaftBasis).most, `${d} ${shaftBasis}`).toBeCloseTo(fitOf(d, holeBasis).most, 9);
        }
      }
    }
  });
  it("moves monotonically from a to z", () => {
    const order = ["a", "b", "c", "d", "e", "f", "g", "h", "js", "k", "m", "n", "p", "r", "s", "u", "x", "z"];
    for (const d of sizes)
      for (let i = 1; i < order.length; i++)
        expect(classLimits(d, `${order[i]}6`).upper, `${d} ${order[i]}6`).toBeGreaterThanOrEqual(
          classLimits(d, `${order[i - 1]}6`).upper,
        );
  });
});

describe("ISO 286 bad input", () => {
  it("reads classes by their case, and nothing else", () => {
    expect(readToleranceClass("H7")).toEqual({ name: "H7", kind: "hole", letter: "H", grade: "7" });
    expect(readToleranceClass(" js 6 ")?.name).toBe("js6");
    for (const text of ["", "7H", "H", "H19", "Hx7", "M6x1", "H7/g6", "0.02", "JSs7"])
      expect(readToleranceClass(text), text).toBeUndefined();
  });
  it.each([
    [() => classLimits(20, "7H"), "class", /such as "H7"/],
    [() => classLimits(20, "I7"), "class", /letters covered are A, B/],
    [() => classLimits(20, "q6"), "class", /letters covered are a, b/],
    [() => classLimits(501, "H7"), "diameter", /at most 500/],
    [() => classLimits(0, "H7"), "diameter", /more than 0/],
    [() => classLimits(20, "j8"), "class", /grades 5, 6 and 7/],
    [() => classLimits(20, "J9"), "class", /grades 6, 7 and 8/],
    [() => classLimits(20, "K9"), "class", /up to grade 8/],
    [() => classLimits(20, "t6"), "class", /begins over 24 mm/],
    [() => classLimits(1, "A11"), "class", /not used up to 1 mm/],
    [() => fitOf(20, "g6/H7"), "fit", /hole first/],
    [() => fitOf(20, "H7"), "fit", /such as "H7"/],
    [() => standardTolerance(20, "19"), "grade", /IT1 to IT18/],
  ] as const)("%s names %s", (f, parameter, allowed) => {
    try {
      f();
      expect.unreachable();
    } catch (e) {
      expect(e).toBeInstanceOf(TradeError);
      expect((e as TradeError).parameter).toBe(parameter);
      expect(sentence(e as TradeError)).toMatch(allowed);
    }
  });
});
