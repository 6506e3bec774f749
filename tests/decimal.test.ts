import Big from "decimal.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Decimal } from "../src/decimal.ts";

// Judge: decimal.js 10 (M. McLaughlin), a general-purpose decimal library, at 60 digits.
const Judge = Big.clone({ precision: 60, rounding: Big.ROUND_HALF_UP });
const number = fc.double({ min: 1e-4, max: 1e3, noNaN: true });

describe("fixed-point decimals (independent)", () => {
  it("add, subtract, multiply and divide as the library does, to the last binary digit", () => {
    fc.assert(
      fc.property(number, number, (a, b) => {
        const [x, y, p, q] = [Decimal.of(a), Decimal.of(b), new Judge(a), new Judge(b)];
        for (const [mine, theirs] of [
          [x.plus(y), p.plus(q)],
          [x.minus(y), p.minus(q)],
          [x.times(y), p.times(q)],
          [x.div(y), p.div(q)],
        ] as const) {
          expect(Math.abs(mine.toNumber() - theirs.toNumber())).toBeLessThanOrEqual(
            1e-24 + 2e-16 * Math.abs(theirs.toNumber()),
          );
        }
      }),
    );
  });
  it("take square and cube roots to twenty places and more", () => {
    fc.assert(
      fc.property(number, fc.integer({ min: 4, max: 12 }), (a, n) => {
        const scale = new Judge(10).pow(n);
        const whole = (x: Big) => x.toDecimalPlaces(20).times(scale).toDecimalPlaces(0).toNumber();
        expect(Decimal.of(a).sqrt().inPlaces(n)).toBe(whole(new Judge(a).sqrt()));
        expect(Decimal.of(a).cbrt().inPlaces(n)).toBe(whole(new Judge(a).cbrt()));
      }),
    );
  });
  it("round a tie on paper up, however binary holds it", () => {
    for (const text of ["0.00005", "0.12345", "1.00015", "2.67845", "8.5e-5"]) {
      expect(Decimal.of(text).inPlaces(4), text).toBe(new Judge(text).times(10000).toDecimalPlaces(0).toNumber());
    }
  });
  it("read numbers as they print, exponents included", () => {
    for (const value of [0.1, 1e-7, 12.5, 3e2, 1.5e-9]) expect(Decimal.of(value).toNumber()).toBe(value);
    expect(Decimal.of("-2.5").toNumber()).toBe(-2.5);
  });
});
