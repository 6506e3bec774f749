import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { powers } from "../src/numeric.ts";

describe("powers by a table (independent: the language's own)", () => {
  it("are x^p from an edge that has just entered to a full one", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2, noNaN: true }),
        fc.double({ min: -40, max: 0, noNaN: true }),
        (p, logarithm) => {
          const x = Math.exp(logarithm);
          expect(Math.abs(powers(p)(x) / x ** p - 1)).toBeLessThan(1e-13);
        },
      ),
      { numRuns: 2000 },
    );
  });
  it("are exact at the ends, and where one table meets the next", () => {
    const power = powers(0.75);
    expect(power(0)).toBe(0);
    expect(power(1)).toBe(1);
    for (const x of [0.5, 0.25, 2 ** -30, 2 ** -31])
      for (const near of [x * (1 - 1e-15), x, x * (1 + 1e-15)])
        expect(Math.abs(power(near) / near ** 0.75 - 1)).toBeLessThan(1e-14);
    expect(power(3)).toBe(3 ** 0.75); // beyond the table
  });
  it("keep to their exponent when many of them were asked for", () => {
    const first = powers(0.5);
    for (let i = 0; i < 100; i++) powers(i / 100);
    expect(first(0.25)).toBeCloseTo(0.5, 14);
    expect(powers(0.5)(0.25)).toBeCloseTo(0.5, 14);
  });
});
