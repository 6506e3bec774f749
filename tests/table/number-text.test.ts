/** Numbers and units as people type them; factors by the definitions of the units. */
import { describe, expect, it } from "vitest";
import { numberText } from "../../src/table/number-text.ts";
import { factorFor, systemOf, unitOf } from "../../src/table/unit-text.ts";

describe("numbers in a text", () => {
  it.each<[text: string, value: number, fraction?: boolean]>([
    ["12", 12],
    ["-12.5", -12.5],
    ["12.", 12],
    [" 12 ", 12],
    [" Ø 12", 12],
    ["1e3", 1000],
    ["1.5E-2 mm", 0.015],
    [",5", 0.5],
    ["0,125", 0.125],
    ["-0,5", -0.5],
    ["1234,567", 1234.567],
    ["12,34", 12.34],
    ["1,2345", 1.2345],
    ["1/2", 0.5, true],
    ["3/64", 3 / 64, true],
    ["11/16", 11 / 16, true],
    ["1 1/2", 1.5, true],
    ["1   1/2", 1.5, true],
    ["12-3/4", 12.75, true],
    ["100000/200000", 0.5, true],
    ["1 234", 1234],
    ["1 234 567,5", 1234567.5],
    ["1'234.25", 1234.25],
    ["-12 345", -12345],
    ["1,234,567", 1234567],
    ["1,234,567.5", 1234567.5],
    ["1.234.567", 1234567],
    ["1.234.567,25", 1234567.25],
    ["1,234.5", 1234.5],
    ["1.234,5", 1234.5],
    ["-1.234,5", -1234.5],
    ["Ø 8", 8],
    ["⌀8", 8],
    ["½", 0.5, true],
    ["２．５", 2.5],
  ])("%s is %d", (text, value, fraction = false) => {
    const read = numberText(text);
    expect(read).toMatchObject({ value, fraction });
  });
  it.each([
    ["12 mm", 12, "length", 1],
    ["12mm", 12, "length", 1],
    ["1.5E2 mm", 150, "length", 1],
    ["1.5e-2mm", 0.015, "length", 1],
    ['1 1/2"', 1.5, "length", 25.4],
    ["3000 1/min", 3000, "turns", 1],
    ["3000 /min", 3000, "turns", 1],
    ["3000 rpm", 3000, "turns", 1],
    ["2200 N/mm2", 2200, "stress", 1],
    ["2200N/mm2", 2200, "stress", 1],
    [" 12 mm ", 12, "length", 1],
    ["12.5 kW", 12.5, "power", 1],
    ["1,5 m/s2", 1.5, "acceleration", 1],
  ] as const)("%s is a number with a unit", (text, value, measure, factor) => {
    expect(numberText(text)).toMatchObject({ value, unit: { measure, factor } });
  });
  it.each([
    ["1,234", "1.234", "1234"],
    ["-12,345", "-12.345", "-12345"],
    ["123,456", "123.456", "123456"],
  ])("%s may be %s or %s", (text, decimal, whole) => {
    expect(numberText(text)).toEqual({ readings: [decimal, whole] });
  });
  it.each([
    "",
    "mm",
    "abc",
    "1/0",
    "12 34",
    "1 23",
    "1,23,456",
    "1.23.456",
    "x12",
    "--1",
    "1//2",
    "1-2-3/4",
    "1 234 56",
    "e5",
    "Ø",
    "9".repeat(65),
  ])("%s is no number", (text) => expect(numberText(text)).toBeUndefined());
  it("may be as long as 64 characters", () => {
    expect(numberText(`0.${"1".repeat(62)}`)).toMatchObject({ value: 1 / 9 });
  });
  it("keeps the text of a unit that it does not know", () => {
    expect(numberText("12'")).toEqual({ value: 12, fraction: false, unit: undefined, unitText: "'" });
    expect(numberText("12 - mm")).toEqual({ value: 12, fraction: false, unit: undefined, unitText: "- mm" });
    expect(numberText("12 ea")).toEqual({ value: 12, fraction: false, unit: undefined, unitText: "ea" });
    expect(numberText("12 furlongs")).toEqual({ value: 12, fraction: false, unit: undefined, unitText: "furlongs" });
  });
});

describe("units in a text (definitions: NIST SP 811)", () => {
  it.each([
    ["mm", "length", 1],
    ["cm", "length", 10],
    ["µm", "length", 0.001],
    ["in.", "length", 25.4],
    ["Zoll", "length", 25.4],
    ["thou", "length", 0.0254],
    ["mm/z", "tooth", 1],
    ["in/tooth", "tooth", 25.4],
    ["mm/rev", "turn", 1],
    ["ipr", "turn", 25.4],
    ["m/min", "surface speed", 1],
    ["sfm", "surface speed", 0.3048],
    ["mm/min", "feed", 1],
    ["ipm", "feed", 25.4],
    ["U/min.", "turns", 1],
    ["µin", "roughness", 0.0254],
    ["kW", "power", 1],
    ["W", "power", 0.001],
    ["hp", "power", 0.745699872],
    ["PS", "power", 0.73549875],
    ["N·m", "torque", 1],
    ["ft-lb", "torque", 1.355817948],
    ["in-lb", "torque", 0.112984829],
    ["MPa", "stress", 1],
    ["N/mm²", "stress", 1],
    ["GPa", "stress", 1000],
    ["s", "time", 1],
    ["min", "time", 60],
    ["h", "time", 3600],
    ["°", "angle", 1],
    ["N", "force", 1],
    ["lbf", "force", 4.448221615],
    ["m/s²", "acceleration", 1],
    ["g", "acceleration", 9.80665],
  ])("%s", (text, measure, factor) => {
    const unit = unitOf(text.normalize("NFKC").toLowerCase())!;
    expect(unit.measure).toBe(measure);
    expect(unit.factor).toBeCloseTo(factor, 8);
  });
  it("are none that nobody knows", () => {
    expect(unitOf("furlong")).toBeUndefined();
    expect(unitOf("")).toBeUndefined();
    expect(unitOf(" m m ")?.measure).toBe("length");
  });
});

describe("what a unit makes of a column's values", () => {
  const of = (text: string) => unitOf(text)!;
  it.each([
    [{ dimension: "length" }, "cm", 10],
    [{ dimension: "length" }, "kw", undefined],
    [{ dimension: "length" }, "mm/z", undefined],
    [{ dimension: "length", key: "feedPerTooth" }, "mm/z", 1],
    [{ dimension: "length", key: "feedPerTooth" }, "ipt", 25.4],
    [{ dimension: "roughness" }, "um", 1],
    [{ dimension: "roughness" }, "mm", undefined],
    [{ dimension: "roughness" }, "uin", 0.0254],
    [{ dimension: "roughness" }, "kw", undefined],
    [{ dimension: "surface speed" }, "sfm", 0.3048],
    [{ dimension: "surface speed" }, "ipm", undefined],
    [{ dimension: "feed" }, "ipm", 25.4],
    [{ dimension: "feed" }, "m/min", 1000],
    [{ dimension: "feed" }, "mm", undefined],
    [{ dimension: "force" }, "n", 1],
    [{ dimension: "force" }, "mm", undefined],
    [{ dimension: "power" }, "w", 0.001],
    [{ dimension: "power" }, "n", undefined],
    [{ unit: "m/min" }, "m/min", 1],
    [{ unit: "m/min" }, "mm/min", 0.001],
    [{ unit: "m/min" }, "sfm", 0.3048],
    [{ unit: "m/min" }, "mm", undefined],
    [{ unit: "MPa" }, "gpa", 1000],
    [{ unit: "GPa" }, "mpa", 0.001],
    [{ unit: "GPa" }, "mm", undefined],
    [{ unit: "min" }, "s", 1 / 60],
    [{ unit: "min" }, "h", 60],
    [{ unit: "s" }, "min", 60],
    [{ unit: "mm" }, "in", 25.4],
    [{ unit: "mm" }, "mm/z", 1],
    [{ unit: "mm" }, "ipr", 25.4],
    [{ unit: "kW" }, "mm/z", undefined],
    [{ unit: "nobody's" }, "mm", undefined],
    [{ key: "maxRpm" }, "rpm", 1],
    [{ key: "teeth" }, "rpm", undefined],
    [{ key: "maxRpm" }, "mm", undefined],
  ] as const)("%o in %s: %s", (column, text, factor) => {
    const got = factorFor(column as Parameters<typeof factorFor>[0], of(text));
    if (factor === undefined) expect(got).toBeUndefined();
    else expect(got).toBeCloseTo(factor, 10);
  });
  it("tells the system that a factor belongs to", () => {
    expect(systemOf("length", 1)).toBe("mm");
    expect(systemOf("length", 25.4)).toBe("in");
    expect(systemOf("length", 10)).toBeUndefined();
    expect(systemOf("surface speed", 0.3048)).toBe("in");
  });
});
