import { describe, expect, it } from "vitest";
import type { CellError } from "../../functions/cells.ts";
import { RPM, TABLEFEED } from "../../functions/speed.ts";

const code = (cell: unknown) => (cell as CellError).code;
const message = (cell: unknown) => (cell as CellError).message;

describe("lifting (identity)", () => {
  it("keeps one cell one cell", () => expect(RPM([[120]], [[10]], [["mm"]])).toHaveLength(1));
  it("broadcasts a column against a row", () => {
    const block = RPM([[100], [200]], [[5, 10, 20]], [["mm"]]);
    expect(block.map((r) => r.length)).toEqual([3, 3]);
    expect(block[1]![2]).toBeCloseTo((1000 * 200) / (Math.PI * 20), 9);
  });
  it("spoils only the bad cell", () => {
    const block = RPM([[100], ["fast"], [300]], [[10]], [["mm"]]);
    expect(block[0]![0]).toBeCloseTo(3183.0989, 4);
    expect(code(block[1]![0])).toBe("#VALUE!");
    expect(message(block[1]![0])).toBe('surfaceSpeed is "fast"; a number more than 0 is allowed');
    expect(block[2]![0]).toBeCloseTo(9549.2966, 4);
  });
  it("takes units from a range, cell by cell", () => {
    const block = RPM([[100], [100]], [[10], [10]], [["mm"], ["IN "]]);
    expect(block[1]![0]).toBeCloseTo((100 * 12) / (Math.PI * 10), 9);
  });
  it("says which cells are missing when sizes differ", () => {
    const block = RPM([[100], [100], [100]], [[10], [20]], [["mm"]]);
    expect(block[1]![0]).toBeTypeOf("number");
    expect(message(block[2]![0])).toMatch(/^diameter has 2 × 1 cells/);
  });
});

describe("blanks, errors and units (identity)", () => {
  for (const blank of [undefined, null, "", "  ", [], [[]], [[null]], [[""]]]) {
    it(`takes ${JSON.stringify(blank) ?? "undefined"} as blank, never as zero`, () => {
      expect(message(RPM([[120]], blank as any, [["mm"]])[0]![0])).toMatch(/^diameter is blank/);
      expect(RPM([[120]], [[10]], [["mm"]], blank as any)[0]![0]).toBeCloseTo(3819.7186, 4);
    });
  }
  it("names the units that are allowed", () =>
    expect(message(RPM([[120]], [[10]], [["inch"]])[0]![0])).toBe('units is "inch"; "mm" or "in" is allowed'));
  it("hands an error cell through", () => {
    expect(code(RPM([["#DIV/0!"]], [[10]], [["mm"]])[0]![0])).toBe("#DIV/0!");
    expect(code(RPM([[{ type: "Error", basicValue: "#N/A" }]], [[10]], [["mm"]])[0]![0])).toBe("#N/A");
  });
  it("reads data-type objects by their basic value", () =>
    expect(RPM([[{ type: "Double", basicValue: 120 }]], [[10]], [["mm"]])[0]![0]).toBeCloseTo(3819.7186, 4));
  it("reads numbers and fractions typed as text", () => {
    expect(RPM([["120"]], [["10.0"]], [["mm"]])[0]![0]).toBeCloseTo(3819.7186, 4);
    expect(RPM([[400]], [["3/8"]], [["in"]])[0]![0]).toBe(RPM([[400]], [[0.375]], [["in"]])[0]![0]);
    expect(RPM([[400]], [['1-1/2"']], [["in"]])[0]![0]).toBe(RPM([[400]], [[1.5]], [["in"]])[0]![0]);
    expect(code(RPM([[400]], [["3/0"]], [["in"]])[0]![0])).toBe("#VALUE!");
    expect(code(RPM([["3/8"]], [[1]], [["in"]])[0]![0])).toBe("#VALUE!");
  });
  for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY, true, "1,5", "0x10"]) {
    it(`rejects ${String(bad)} as a diameter`, () =>
      expect(code(RPM([[120]], [[bad]], [["mm"]])[0]![0])).toBe("#VALUE!"));
  }
  it("rejects half a tooth", () =>
    expect(message(TABLEFEED([[1000]], [[2.5]], [[0.1]])[0]![0])).toMatch(/^teeth is 2.5; a whole/));
});
