import Decimal from "decimal.js";
import { describe, expect, it } from "vitest";
import { parseThread } from "../../src/thread/designation.ts";
import { threadSize } from "../../src/thread/limits.ts";
import type { ThreadElement, ThreadLimit } from "../../src/thread/types.ts";
import { UNIFIED_EXCEPTIONS } from "../../src/thread/unified-exceptions.ts";
import { UNIFIED_SIZES } from "../../src/thread/unified-series.ts";

const size = (text: string, element: ThreadElement, limit: ThreadLimit) =>
  threadSize(parseThread(text), element, limit);
/** Diameters behind the tolerances of threads with nine pitches of engagement, read off the printed tables. */
const NINE_PITCH = [0.19, 0.25, 0.375, 0.5, 0.625, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4, 5, 6];
const CLASSES = ["1A", "2A", "3A", "1B", "2B", "3B"];

describe("Unified limits (identity)", () => {
  it("are in order for every standard thread and class", () => {
    for (const { name, pitches } of UNIFIED_SIZES) {
      for (const { tpi, series } of pitches) {
        for (const cls of CLASSES) {
          const t = `${name}-${tpi} ${series}-${cls}`;
          expect(size(t, "pitch", "min"), t).toBeLessThan(size(t, "pitch", "max"));
          if (cls.endsWith("B")) {
            expect(size(t, "minor", "min"), t).toBeLessThan(size(t, "minor", "max"));
            expect(size(t, "minor", "max"), t).toBeLessThan(size(t, "pitch", "min"));
            expect(size(t, "pitch", "max"), t).toBeLessThan(size(t, "major", "min"));
          } else {
            expect(size(t, "minor", "max"), t).toBeLessThan(size(t, "pitch", "min"));
            expect(size(t, "pitch", "max"), t).toBeLessThan(size(t, "major", "min"));
            expect(size(t, "major", "max"), t).toBeLessThanOrEqual(size(t, "major", "basic"));
          }
        }
      }
    }
  });

  it("let the external thread of a class enter the internal one", () => {
    for (const { name, pitches } of UNIFIED_SIZES) {
      for (const { tpi, series } of pitches) {
        for (const d of ["1", "2", "3"]) {
          const bolt = `${name}-${tpi} ${series}-${d}A`;
          const nut = `${name}-${tpi} ${series}-${d}B`;
          expect(size(bolt, "pitch", "max"), bolt).toBeLessThanOrEqual(size(nut, "pitch", "min"));
        }
      }
    }
  });

  it("have no more than four decimals", () => {
    for (const { name, pitches } of UNIFIED_SIZES) {
      for (const { tpi, series } of pitches) {
        for (const limit of ["basic", "min", "max"] as const) {
          const value = size(`${name}-${tpi} ${series}-2B`, "pitch", limit);
          expect(new Decimal(value).decimalPlaces()).toBeLessThanOrEqual(4);
        }
      }
    }
  });
});

describe("Unified limits (independent)", () => {
  it("are within 0.00016 in of the plain formula in binary arithmetic, where size and engagement are the thread's own", () => {
    // UNC and UNF: D and LE are the diameter; the printed exceptions stay within one unit of the last place.
    for (const { name, major: D, pitches } of UNIFIED_SIZES) {
      for (const { tpi, series } of pitches) {
        if (series !== "UNC" && series !== "UNF") continue;
        const P = 1 / tpi;
        const T = 0.0015 * Math.cbrt(D) + 0.0015 * Math.sqrt(D) + 0.015 * P ** (2 / 3);
        const d2 = D - 0.64951905 * P;
        const t = `${name}-${tpi} ${series}`;
        expect(Math.abs(size(`${t}-2B`, "pitch", "max") - (d2 + 1.3 * T)), t).toBeLessThan(0.00016);
        expect(Math.abs(size(`${t}-3A`, "pitch", "min") - (d2 - 0.75 * T)), t).toBeLessThan(0.00016);
        expect(Math.abs(size(`${t}-2A`, "pitch", "max") - (d2 - 0.3 * T)), t).toBeLessThan(0.00016);
        expect(Math.abs(size(`${t}-2A`, "major", "min") - (D - 0.3 * T - 0.06 * P ** (2 / 3))), t).toBeLessThan(
          0.00021,
        );
      }
    }
  });

  it("agree with the formulas and roundings carried out in binary with a guard, for every standard thread and class", () => {
    // Half up at the nth place; the guard of 1e-7 units makes a tie on paper a tie here.
    const up = (x: number, n: number) => Math.floor(x * 10 ** n + 0.5 + 1e-7) / 10 ** n;
    const wrong: string[] = [];
    const same = (a: number, b: number) => Math.abs(a - b) < 1e-9;
    for (const { name, major: D, pitches } of UNIFIED_SIZES) {
      for (const { tpi, series } of pitches) {
        const P = 1 / tpi;
        const wide = series === "UNC" || series === "UNF" || (series === "UN" && tpi <= 8);
        const places = [...NINE_PITCH].sort((a, b) => Math.abs(a - D) - Math.abs(b - D) || a - b);
        const T = up(
          0.0015 * Math.cbrt(wide ? D : places[0]!) + 0.0015 * Math.sqrt(wide ? D : 9 * P) + 0.015 * P ** (2 / 3),
          6,
        );
        const d2 = up(D - 0.649519052838 * P, 4);
        for (const [cls, factor] of Object.entries({
          "1A": 1.5,
          "2A": 1,
          "3A": 0.75,
          "1B": 1.95,
          "2B": 1.3,
          "3B": 0.975,
        })) {
          if (UNIFIED_EXCEPTIONS[`${name}-${tpi} ${series}`]?.[cls]) continue;
          const t = `${name}-${tpi} ${series}-${cls}`;
          const tolerance = up(T * factor, 4);
          if (cls.endsWith("B")) {
            if (!same(size(t, "pitch", "max"), d2 + tolerance)) wrong.push(t);
          } else {
            const allowance = cls === "3A" ? 0 : up(0.3 * T, 4);
            const Td = up((cls === "1A" ? 0.09 : 0.06) * P ** (2 / 3), 4);
            if (!same(size(t, "pitch", "min"), d2 - allowance - tolerance)) wrong.push(t);
            if (!same(size(t, "major", "min"), up(D, 4) - allowance - Td)) wrong.push(t);
          }
        }
      }
    }
    expect(wrong).toEqual([]);
  });

  it("use the plain formula with nine pitches for a special diameter", () => {
    const [D, P] = [0.3, 1 / 32];
    const T = 0.0015 * Math.cbrt(D) + 0.0015 * Math.sqrt(9 * P) + 0.015 * P ** (2 / 3);
    expect(Math.abs(size("0.3-32 UNS-2B", "pitch", "max") - (D - 0.64951905 * P + 1.3 * T))).toBeLessThan(0.00011);
  });
});

describe("printed exceptions (regression)", () => {
  it("each belong to a thread that exists and change a number by one unit of the last place", () => {
    let entries = 0;
    for (const [name, classes] of Object.entries(UNIFIED_EXCEPTIONS)) {
      for (const [cls, entry] of Object.entries(classes)) {
        expect(() => parseThread(`${name}-${cls}`)).not.toThrow();
        expect(entry.reason.length).toBeGreaterThan(20);
        entries++;
      }
    }
    expect(entries).toBe(7);
  });

  it("take the flat root from the basic minor diameter and the allowance, the rounded root deeper", () => {
    expect(size("1/2-13 UNC-2A", "minor", "max")).toBe(0.4152); // 0.4167 − 0.0015
    expect(size("1/2-13 UNC-3A", "minor", "max")).toBe(0.4167);
    expect(size("1/2-13 UNRC-3A", "minor", "max")).toBe(0.4084); // Machinery's Handbook, from memory
  });
});

describe("internal UNJ threads (published: ASME B1.15, from memory)", () => {
  it.each([
    ["#10-32 UNJF-3B", 0.1596, 0.1675],
    ["1/4-28 UNJF-3B", 0.2152, 0.2229],
    ["5/16-24 UNJF-3B", 0.2719, 0.2799],
    ["3/8-24 UNJF-3B", 0.3344, 0.3417],
    ["1/2-20 UNJF-3B", 0.4513, 0.4591],
  ])("%s has a minor diameter of %s to %s in", (text, min, max) => {
    expect(size(text, "minor", "min")).toBe(min);
    expect(size(text, "minor", "max")).toBe(max);
  });
  it("keep the pitch diameter of class 3B and a larger minor diameter (identity)", () => {
    for (const t of ["1/4-28", "3/8-24", "1/2-20"]) {
      for (const limit of ["min", "max"] as const) {
        expect(size(`${t} UNJF-3B`, "pitch", limit)).toBe(size(`${t} UNF-3B`, "pitch", limit));
        expect(size(`${t} UNJF-3B`, "minor", limit)).toBeGreaterThan(size(`${t} UNF-3B`, "minor", limit));
      }
    }
  });
});
