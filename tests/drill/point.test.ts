import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CellError } from "../../functions/cells.ts";
import { DRILLPOINT, DRILLTRAVEL } from "../../functions/drilling.ts";
import { drillTravel, pointLength } from "../../src/drill/point.ts";

describe("drill point (published)", () => {
  // Shop tables of the point length as a part of the diameter (common practice, from memory)
  for (const [angle, part, digits] of [
    [60, 0.866, 3],
    [82, 0.575, 3],
    [90, 0.5, 3],
    [118, 0.3, 2],
    [120, 0.289, 3],
    [135, 0.207, 3],
    [140, 0.182, 3],
  ] as const) {
    it(`a point of ${angle}° is ${part} of the diameter long`, () =>
      expect(Math.abs(pointLength(1, angle) - part)).toBeLessThanOrEqual(0.51 * 10 ** -digits));
  }
});

describe("drill point (identity)", () => {
  it("a flat drill has no point", () => expect(pointLength(10, 180)).toBe(0));
  it("grows with the diameter and shrinks with the angle, never NaN", () => {
    const angle = fc.double({ min: 1, max: 179, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), angle, (d, a) => {
        const l = pointLength(d, a);
        expect(l).toBeGreaterThan(0);
        expect(pointLength(d, a + 0.5)).toBeLessThan(l);
        expect(pointLength(2 * d, a)).toBeCloseTo(2 * l, 9);
        expect(drillTravel(20, d, a, 3)).toBeCloseTo(23 + l, 9);
      }),
    );
  });
  it("the worksheet functions use 118° and no breakthrough unless told, and take fractions of an inch", () => {
    expect(DRILLPOINT([[10]])[0]![0]).toBe(pointLength(10, 118));
    expect(DRILLTRAVEL([["1/2"]], [["3/8"]])[0]![0]).toBe(drillTravel(0.5, 0.375, 118, 0));
    expect(DRILLTRAVEL([[20]], [[10]], [[]], [[1.5]])[0]![0]).toBe(drillTravel(20, 10, 118, 1.5));
  });
  it("rejects an angle over 180°, a negative breakthrough, a depth of zero, each by its name", () => {
    expect((DRILLPOINT([[10]], [[181]])[0]![0] as CellError).message).toMatch(/^pointAngle is 181/);
    expect((DRILLTRAVEL([[20]], [[10]], [[118]], [[-1]])[0]![0] as CellError).message).toMatch(/^breakthrough is -1/);
    expect((DRILLTRAVEL([[0]], [[10]])[0]![0] as CellError).message).toMatch(/^depth is 0/);
  });
});
