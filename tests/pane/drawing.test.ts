import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bentShape, roundBelow } from "../../taskpane/ui/bend.ts";
import { digits, percent, withUnit } from "../../taskpane/ui/numbers.ts";

describe("the bent tool in the drawing", () => {
  it("has the shape of a cantilever with an end load when the bar is plain (independent)", () => {
    // y(x)/y(0) = 1 − 3x/2L + x³/2L³, x from the loaded end: the closed solution of E·I·y″ = F·x.
    for (const [x, share] of bentShape([{ length: 30, diameter: 6 }], 40)) {
      expect(share).toBeCloseTo(1 - (3 * x) / 60 + x ** 3 / (2 * 30 ** 3), 12);
    }
  });

  it("gives a thin neck on a thick shank the share that superposition gives it (independent)", () => {
    // Neck a, inertia I1, on shank b, inertia I2, load at the tip. At the shoulder the shank alone bends by
    // F·b²(3a + 2b)/(6·E·I2); the tip has a³/(3·E·I1) more, and the shank's slope times the neck.
    const [a, b, d1, d2] = [18, 12, 4, 8];
    const [i1, i2] = [d1 ** 4, d2 ** 4];
    const shoulder = (b * b * (3 * a + 2 * b)) / (6 * i2);
    const slope = (b * (2 * a + b)) / (2 * i2);
    const tip = a ** 3 / (3 * i1) + slope * a + shoulder;
    const shape = bentShape([
      { length: a, diameter: d1 },
      { length: b, diameter: d2 },
    ]);
    expect(shape.find(([x]) => Math.abs(x - a) < 1e-9)![1]).toBeCloseTo(shoulder / tip, 12);
  });

  it("falls from the tip to nothing at the holder, whatever the tool", () => {
    const part = fc.record({
      length: fc.double({ min: 0.1, max: 80, noNaN: true }),
      diameter: fc.double({ min: 0.2, max: 40, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 5 }), (parts) => {
        const shares = bentShape(parts).map(([, share]) => share);
        expect(shares[0]).toBe(1);
        expect(shares.at(-1)).toBe(0);
        for (let i = 1; i < shares.length; i++) expect(shares[i]!).toBeLessThanOrEqual(shares[i - 1]!);
      }),
    );
    expect(bentShape([])).toEqual([]);
  });

  it("is exaggerated by a round number", () => {
    expect([1, 1.9, 2, 4.99, 5, 9.9, 10, 37, 0.04].map(roundBelow)).toEqual([1, 1, 2, 2, 5, 5, 10, 20, 0.02]);
  });
});

describe("numbers for a person", () => {
  it("are in the row's units", () => {
    expect(withUnit(25.4, "length", "in")).toBe("1 in");
    expect(withUnit(25.4, "length", "mm")).toBe("25.4 mm");
    expect(withUnit(120, "surface speed", "in")).toBe("394 ft/min");
    expect(withUnit(2546.479, undefined, "mm", "1/min")).toBe("2546 1/min");
    expect(withUnit(118, undefined, "mm", "°")).toBe("118°");
    expect(withUnit("0.54 · 0.77", "length", "mm")).toBe("0.54 · 0.77");
  });

  it("never vanish by rounding, and carry no needless zeros", () => {
    expect([
      digits(0.00042, 3),
      digits(-0.00042, 3),
      digits(1.5, 3),
      digits(1000, 0),
      digits(0, 3),
      digits(0.05, 3),
    ]).toEqual(["0.00042", "-0.00042", "1.5", "1000", "0", "0.05"]);
    expect(digits(Number.NaN, 2)).toBe("—");
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        fc.integer({ min: 0, max: 4 }),
        (value, decimals) => {
          const text = digits(value, decimals);
          expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(Math.max(0.5 * 10 ** -decimals, 1e-9));
          expect(Number(text)).not.toBe(0);
        },
      ),
    );
  });

  it("say loads as percent", () => {
    expect([percent(1.552), percent(0.0004), percent(0), percent(Number.POSITIVE_INFINITY)]).toEqual([
      "155 %",
      "0.04 %",
      "0 %",
      "—",
    ]);
  });
});
