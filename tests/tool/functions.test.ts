import { describe, expect, it } from "vitest";
import type { CellError } from "../../functions/cells.ts";
import {
  FORCELIMIT,
  NECKDEFLECTION,
  STABLEDEPTH,
  STICKOUTLIMIT,
  TOOLDEFLECTION,
  TOOLFREQUENCY,
  TOOLSTRESS,
} from "../../functions/tool.ts";
import { near } from "./bars.ts";

const one = (block: any[][]): number => {
  expect(block).toHaveLength(1);
  expect(block[0]).toHaveLength(1);
  expect(block[0]![0]).toBeTypeOf("number");
  return block[0]![0];
};
const message = (block: any[][]): string => (block[0]![0] as CellError).message;
const code = (block: any[][]): string => (block[0]![0] as CellError).code;
const mm = [["mm"]];
const inch = [["in"]];
const POUND = 4.4482216152605;
const MSI = (1000 * POUND) / 25.4 ** 2; // GPa in 10⁶ lbf/in²
const thread = [
  [3.84, 2],
  [3.4, 14],
  [6, 15],
];

describe("segments argument (identity)", () => {
  it("reads two columns as cylinders and three as cones", () => {
    const three = thread.map(([d, l]) => [d, d, l]);
    expect(one(TOOLDEFLECTION([[20]], three, mm))).toBe(one(TOOLDEFLECTION([[20]], thread, mm)));
    expect(one(TOOLDEFLECTION([[20]], [[4, 8, 20]], mm))).toBeLessThan(one(TOOLDEFLECTION([[20]], [[4, 20]], mm)));
  });
  it("passes over rows and columns that are blank all over", () => {
    const gaps = [
      ["", null],
      [3.84, 2],
      [null, ""],
      [3.4, 14],
      ["6", "15"],
      [null, null],
    ];
    expect(one(TOOLDEFLECTION([[20]], gaps, mm))).toBe(one(TOOLDEFLECTION([[20]], thread, mm)));
    const wide = thread.map((row) => [...row, null, ""]);
    expect(one(TOOLFREQUENCY(wide, mm))).toBe(one(TOOLFREQUENCY(thread, mm)));
  });
  it("reads fractions of an inch", () =>
    expect(one(TOOLFREQUENCY([["1/4", "1-1/2"]], inch))).toBe(one(TOOLFREQUENCY([[0.25, 1.5]], inch))));
  it("names the row and what stands there", () => {
    expect(
      message(
        TOOLFREQUENCY(
          [
            ["Diameter", "Length"],
            [6, 30],
          ],
          mm,
        ),
      ),
    ).toMatch(/^segments, row 1, is "Diameter"/);
    expect(
      message(
        TOOLFREQUENCY(
          [
            [6, 30],
            [8, 0],
          ],
          mm,
        ),
      ),
    ).toMatch(/^segments, row 2, is 0; rows of diameter and length/);
    expect(
      message(
        TOOLFREQUENCY(
          [
            [6, 30],
            [8, null],
          ],
          mm,
        ),
      ),
    ).toMatch(/^segments, row 2, is blank/);
    expect(message(TOOLFREQUENCY([[6, -3]], mm))).toMatch(/^segments, row 1, is -3/);
    expect(code(TOOLFREQUENCY([[6, -3]], mm))).toBe("#VALUE!");
  });
  it("hands an error cell through", () => expect(code(TOOLFREQUENCY([[6, "#DIV/0!"]], mm))).toBe("#DIV/0!"));
  it("rejects one column, four columns and nothing at all", () => {
    expect(message(TOOLFREQUENCY([[6], [30]], mm))).toMatch(/^segments is "1 column"/);
    expect(message(TOOLFREQUENCY([[6, 7, 8, 9]], mm))).toMatch(/^segments is "4 columns"/);
    for (const nothing of [undefined, null, "", [], [[]], [[null, null]]]) {
      expect(message(TOOLFREQUENCY(nothing as any, mm))).toMatch(/^segments is blank/);
    }
  });
  it("does not lift over the list: forces in a column, one tool", () => {
    const block = TOOLDEFLECTION([[10], [20], ["x"]], thread, mm);
    expect(block).toHaveLength(3);
    expect(near(block[1]![0], 2 * block[0]![0])).toBeLessThan(1e-14);
    expect(code([block[2]!])).toBe("#VALUE!");
  });
});

describe("tool functions (identity)", () => {
  const tool = thread;
  const small = tool.map((row) => row.map((x) => x / 25.4));
  const F = 20 / POUND;
  it("are the same in inches", () => {
    const pairs: [string, any[][], any[][], number][] = [
      [
        "TOOLDEFLECTION",
        TOOLDEFLECTION([[20]], tool, mm, [[580]], [[25]]),
        TOOLDEFLECTION([[F]], small, inch, [[580 / MSI]], [[(25 * 25.4) / POUND]]),
        25.4,
      ],
      [
        "TOOLSTRESS",
        TOOLSTRESS([[20]], tool, mm, [[0.3]], [[1.4]]),
        TOOLSTRESS([[F]], small, inch, [[(0.3 * 1000) / POUND / 25.4]], [[1.4]]),
        MSI,
      ],
      [
        "TOOLFREQUENCY",
        TOOLFREQUENCY(tool, mm, [[580]], [[14.3]]),
        TOOLFREQUENCY(small, inch, [[580 / MSI]], [[(14.3 * 2.54 ** 3) / 453.59237]]),
        1,
      ],
      [
        "STICKOUTLIMIT",
        STICKOUTLIMIT([[20]], [[0.01]], [[6]], mm),
        STICKOUTLIMIT([[F]], [[0.01 / 25.4]], [[6 / 25.4]], inch),
        25.4,
      ],
      ["FORCELIMIT", FORCELIMIT([[0.01]], tool, mm), FORCELIMIT([[0.01 / 25.4]], small, inch), POUND],
      [
        "NECKDEFLECTION",
        NECKDEFLECTION([[20]], [[3.4]], [[15]], mm, [[]], [[6]], [[15]]),
        NECKDEFLECTION([[F]], [[3.4 / 25.4]], [[15 / 25.4]], inch, [[]], [[6 / 25.4]], [[15 / 25.4]]),
        25.4,
      ],
      [
        "STABLEDEPTH",
        STABLEDEPTH([[8000]], [[4]], [[2]], [[4.8]], [[2400]], tool, mm),
        STABLEDEPTH([[8000]], [[4]], [[2 / 25.4]], [[4.8 / 25.4]], [[2400 / MSI]], small, inch),
        25.4,
      ],
    ];
    for (const [name, metric, inches, factor] of pairs) {
      expect(near(one(inches) * factor, one(metric)), name).toBeLessThan(1e-9);
    }
  });
  it("answer for each other", () => {
    expect(near(one(TOOLDEFLECTION(FORCELIMIT([[0.01]], tool, mm), tool, mm)), 0.01)).toBeLessThan(1e-12);
    expect(near(one(NECKDEFLECTION([[75]], [[8]], STICKOUTLIMIT([[75]], [[0.02]], [[8]], mm), mm)), 0.02)).toBeLessThan(
      1e-12,
    );
    const neck = NECKDEFLECTION([[20]], [[3.4]], [[15]], mm, [[600]], [[6]], [[15]]);
    const stepped = TOOLDEFLECTION(
      [[20]],
      [
        [3.4, 15],
        [6, 15],
      ],
      mm,
      null as any,
      null as any,
      [[false]],
      [["no"]],
    );
    expect(near(one(neck), one(stepped))).toBeLessThan(1e-14);
  });
  it("takes a springy holder as F/k more", () =>
    expect(
      one(TOOLDEFLECTION([[20]], tool, mm, undefined, [[25]])) - one(TOOLDEFLECTION([[20]], tool, mm)),
    ).toBeCloseTo(20 / 25000, 14));
  it("counts a torque by its size alone", () =>
    expect(one(TOOLSTRESS([[20]], tool, mm, [[-0.5]]))).toBe(one(TOOLSTRESS([[20]], tool, mm, [[0.5]]))));
  it("wants the shank whole or not at all", () =>
    expect(message(NECKDEFLECTION([[20]], [[3.4]], [[15]], mm, [[600]], [[6]]))).toMatch(/^shankLength is blank/));
  it("names what is missing or out of range", () => {
    expect(message(TOOLDEFLECTION([[]], tool, mm))).toMatch(/^force is blank/);
    expect(message(TOOLDEFLECTION([[0]], tool, mm))).toMatch(/^force is 0/);
    expect(message(TOOLSTRESS([[5]], tool, mm, [[0]], [[0.5]]))).toMatch(/^notchFactor is 0.5/);
    expect(message(TOOLFREQUENCY(tool, [["cm"]]))).toMatch(/^units is "cm"/);
    expect(message(STABLEDEPTH([[8000]], [[4]], [[6]], [[4.8]], [[2400]], tool, mm))).toMatch(/^radialDepth is 6/);
    expect(message(STABLEDEPTH([[8000]], [[4]], [[2]], [[4.8]], [[2400]], tool, mm, [[1]]))).toMatch(/^damping is 1/);
  });
});

describe("stable depth of a listed tool (independent)", () => {
  it("over all speeds comes down to the critical depth of a slot, worked out from the frequency response", () => {
    // zero-order solution for a slot (φ = π, equal modes): eigenvalues from a₀Λ² + a₁Λ + 1 = 0 with the averaged
    // coefficients of a full slot, a direct scan over chatter frequencies, none of the closed forms of the code
    const [z, Kt, Kr, zeta] = [4, 2000, 0.35, 0.03];
    const k =
      1000 /
      one(
        TOOLDEFLECTION(
          [[1000]],
          [
            [8, 25],
            [10, 15],
          ],
          mm,
        ),
      ); // N/mm
    // slot: αxx = −Kr·π... with φ from 0 to π: αxx = αyy = −π·Kr, αxy = −π, αyx = π
    let critical = Number.POSITIVE_INFINITY;
    for (let r = 1.00001; r < 1.6; r += 0.00001) {
      const d = (1 - r * r) ** 2 + (2 * zeta * r) ** 2;
      const G = [(1 - r * r) / d / k, (-2 * zeta * r) / d / k] as const;
      // A = π·[[−Kr, −1], [1, −Kr]]·G has eigenvalues π·(−Kr ± i)·G; Λ = −1/eigenvalue
      for (const sign of [1, -1]) {
        const re = Math.PI * (-Kr * G[0] - sign * G[1]);
        const im = Math.PI * (sign * G[0] - Kr * G[1]);
        const size = re * re + im * im;
        const [LR, LI] = [-re / size, im / size];
        const b = ((-2 * Math.PI * LR) / (z * Kt)) * (1 + (LI / LR) ** 2);
        if (b > 0 && b < critical) critical = b;
      }
    }
    let least = Number.POSITIVE_INFINITY;
    const speeds = Array.from({ length: 4000 }, (_, i) => [3000 * 1.0006 ** i]);
    for (const [b] of STABLEDEPTH(
      speeds,
      [[z]],
      [[10]],
      [[10]],
      [[Kt]],
      [
        [8, 25],
        [10, 15],
      ],
      mm,
      [[zeta]],
      [[Kr]],
    )) {
      least = Math.min(least, b);
    }
    expect(near(least, critical)).toBeLessThan(1e-3);
  });
});
