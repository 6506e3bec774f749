/** One cell by its column: what is read, and what is refused in which words. */
import { describe, expect, it } from "vitest";
import { readCell } from "../../src/table/cell.ts";
import type { Column } from "../../src/table/quantity.ts";
import { refusal } from "../refusal.ts";

type Given = Partial<Column> & { readonly own?: "mm" | "in"; readonly factor?: number };
function read(cell: unknown, { own, factor, ...column }: Given, units?: "mm" | "in"): unknown {
  const whole = {
    key: "x",
    heading: "Some size [mm]",
    kind: "number",
    format: ["0", "0"],
    ...column,
  } as unknown as Column;
  return readCell(cell, { at: 0, column: whole, units: own, factor } as Parameters<typeof readCell>[1], units);
}
const length = { dimension: "length" } as const;

describe("numbers of cells", () => {
  it.each<[unknown, Given, "mm" | "in" | undefined, number]>([
    [12.5, {}, undefined, 12.5],
    ["12,5", {}, undefined, 12.5],
    [2, length, "mm", 2],
    [2, length, "in", 50.8],
    ["2", length, "in", 50.8],
    // the unit of the heading comes before that of the row, that of the cell before both
    [2, { ...length, own: "in" }, "mm", 50.8],
    [2, { ...length, own: "mm" }, undefined, 2],
    ["2 mm", { ...length, own: "in" }, "in", 2],
    ['2"', length, "mm", 50.8],
    ["1/2", length, "mm", 12.7],
    ["½", length, undefined, 12.7],
    [3, { factor: 60 }, undefined, 180],
    ["2 kW", { unit: "kW" }, undefined, 2],
    ["500 W", { unit: "kW" }, undefined, 0.5],
    // 43831 is 1 January 2020, the first day of those that are taken for a day; as a speed it is a number
    [43830, length, "mm", 43830],
    [43831, {}, undefined, 43831],
    ["43831", length, "mm", 43831],
    [0, { low: 0 }, undefined, 0],
    [10, { high: 10 }, undefined, 10],
    [3, { kind: "whole" } as Given, undefined, 3],
  ])("%o by %o with %s is %d", (cell, column, units, value) => {
    expect(read(cell, column, units)).toBeCloseTo(value, 9);
  });
  it.each<[unknown, Given, "mm" | "in" | undefined, string, RegExp]>([
    ["abc", {}, undefined, "value", /a number is allowed/],
    [true, {}, undefined, "value", /a number is allowed/],
    [{ code: "#N/A" }, {}, undefined, "value", /Some size is "?#N\/A"?; a value is wanted, not an error/],
    [{}, {}, undefined, "value", /a value is wanted, not an error/],
    [5, length, undefined, "value", /Units must say mm or in/],
    ["1,234", {}, undefined, "value", /its comma may mark decimals or thousands: write 1\.234 or 1234/],
    ["12 x 24", length, "mm", "value", /one number is allowed, alone or with mm or in/],
    ["12*24", { dimension: "surface speed" }, "mm", "value", /one number is allowed, alone or with m\/min or ft\/min/],
    ["12 × 24", { dimension: "roughness" }, "mm", "value", /one number is allowed, alone or with µm or µin/],
    ["12x24", { unit: "kW" }, undefined, "value", /one number is allowed, alone or with kW/],
    ["12x24", { unit: "money/h" }, undefined, "value", /one number is allowed, without a unit/],
    ["12x24", { key: "maxRpm" }, undefined, "value", /one number is allowed, alone or with 1\/min/],
    ["12x24", {}, undefined, "value", /one number is allowed, without a unit/],
    ["12 kg", length, "mm", "value", /a number is allowed, alone or with mm or in/],
    ["12 furlongs", length, "mm", "value", /a number is allowed, alone or with mm or in/],
    ["1/2", {}, undefined, "value", /a number is allowed/],
    [43831, length, "mm", "value", /Jan 2020/],
    [-1, { low: 0 }, undefined, "range", /a number of at least 0 is allowed/],
    [0, { low: 0, above: true }, undefined, "range", /a number more than 0 is allowed/],
    [11, { low: 1, high: 10 }, undefined, "range", /a number of at least 1 and at most 10 is allowed/],
    [11, { high: 10 }, undefined, "range", /a number at most 10 is allowed/],
    [2.5, { kind: "whole", low: 1 } as Given, undefined, "range", /a whole number of at least 1 is allowed/],
    [Number.POSITIVE_INFINITY, {}, undefined, "range", /a number is allowed/],
    [Number.NaN, {}, undefined, "range", /a number is allowed/],
    // A number still, and in millimetres none any more.
    [1e308, length, "in", "range", /a number is allowed/],
    [-1e308, length, "in", "range", /a number is allowed/],
    ["-1 mm", { ...length, low: 0 }, "mm", "range", /a number of at least 0 is allowed/],
    ["1/2", { ...length, high: 12 }, "mm", "range", /a number at most 12 is allowed/],
    ["0.5 kW", { unit: "kW", low: 1 }, undefined, "range", /a number of at least 1 is allowed/],
  ])("%o by %o with %s is refused", (cell, column, units, code, words) => {
    expect(() => read(cell, column, units)).toThrow(expect.objectContaining({ code, parameter: "Some size" }));
    expect(refusal(() => read(cell, column, units))).toMatch(words);
  });
});

describe("words of cells", () => {
  const flag = { kind: "flag", words: ["yes", "no"] } as unknown as Given;
  it("are texts without the blanks around them, and flags", () => {
    expect(read("  M6 ", { kind: "text" } as Given)).toBe("M6");
    expect(read(6, { kind: "text" } as Given)).toBe("6");
    expect(read(true, flag)).toBe(true);
    expect(read(false, flag)).toBe(false);
    expect(read("yes", flag)).toBe(true);
    expect(read(" no ", flag)).toBe(false);
  });
  it("are refused with what is allowed", () => {
    expect(refusal(() => read("qqq", flag))).toMatch(/yes or no is allowed/);
    const word = { kind: "word", words: ["red", "green", "blue"] } as unknown as Given;
    expect(read(" green ", word)).toBe("green");
    expect(refusal(() => read("qqq", word))).toMatch(/red, green or blue is allowed/);
  });
});
