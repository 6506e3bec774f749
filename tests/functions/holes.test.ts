import { describe, expect, it } from "vitest";
import { CellError } from "../../functions/cells.ts";
import { CLASSSIZE, TAPTORQUE } from "../../functions/holes.ts";

const one = (...a: unknown[]) => a.map((v) => [[v]]) as [any[][], any[][], any[][], any[][]];
const message = (block: any[][]) =>
  block[0]![0] instanceof CellError ? `${block[0]![0].code} ${block[0]![0].message}` : block[0]![0];

describe("CLASSSIZE (published: ISO 286-2, from memory)", () => {
  it("gives 20 H7 and 20 g6, in inches too, and fills a column", () => {
    expect(CLASSSIZE(...one(20, "H7", "max", "mm"))[0]![0]).toBe(20.021);
    expect(CLASSSIZE(...one(20, "g6", "max", "mm"))[0]![0]).toBe(19.993);
    expect(CLASSSIZE(...one(0.5, "H7", "max", "in"))[0]![0]).toBeCloseTo((12.7 + 0.018) / 25.4, 12);
    expect(
      CLASSSIZE([[10], [20], [600]], [["H7"]], [["max"]], [["mm"]]).map((r) =>
        typeof r[0] === "number" ? r[0] : r[0].code,
      ),
    ).toEqual([10.015, 20.021, "#VALUE!"]);
  });
  it("says what is wrong", () => {
    expect(message(CLASSSIZE(...one(20, "H77", "max", "mm")))).toMatch(/^#N\/A.*such as "H7"/);
    expect(message(CLASSSIZE(...one(20, "", "max", "mm")))).toMatch(/^#VALUE! toleranceClass is blank/);
    expect(message(CLASSSIZE(...one(20, "H7", "mean", "mm")))).toMatch(/limit/);
  });
});

describe("TAPTORQUE", () => {
  const torque = (...a: unknown[]) => (TAPTORQUE as (...x: any[]) => any[][])(...a.map((v) => [[v]]))[0]![0];
  it("is more with a smaller hole and the same in both systems (identity)", () => {
    expect(torque("M10", 8.4, 2220, 0.14, "mm")).toBeGreaterThan(torque("M10", 8.5, 2220, 0.14, "mm"));
    const KSI = (1000 * 0.45359237 * 9.80665) / 25.4 ** 2;
    const inch = torque("M10", 8.5 / 25.4, 2220 / KSI, 0.14, "in");
    expect((inch * (0.45359237 * 9.80665 * 25.4)) / 1000).toBeCloseTo(torque("M10", 8.5, 2220, 0.14, "mm"), 9);
  });
  it("names a hole that the thread does not leave", () =>
    expect(torque("M10", 10, 2220, 0.14, "mm")).toMatchObject({
      code: "#VALUE!",
      message: expect.stringMatching(/holeDiameter/),
    }));
});
