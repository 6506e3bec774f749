import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayOf, serialOf } from "../../../taskpane/desk/model/dates.ts";
import { displayText } from "../../../taskpane/desk/model/display.ts";
import { localeOf } from "../../../taskpane/desk/model/locale.ts";
import { editText, readTyped } from "../../../taskpane/desk/model/typed.ts";
import type { Cell } from "../../../taskpane/desk/model/types.ts";
import { growth, LINEAR } from "../../quickest.ts";

const EN = localeOf("en-US");
const DE = localeOf("de-DE");
const read = (text: string, locale = EN, numberFormat?: string) =>
  readTyped(text, { locale, date1904: false, numberFormat });

describe("typed text becomes a value (independent: what a person means, written down by hand)", () => {
  it.each([
    ["0.785", 0.785],
    [".5", 0.5],
    ["300", 300],
    ["-0.02", -0.02],
    ["−0.02", -0.02],
    ["+12", 12],
    [" 12.70 ", 12.7],
    ["1e3", 1000],
    ["1,234.5", 1234.5],
    ["1,234,567", 1234567],
    ["12 500.5", 12500.5],
    ["12%", 0.12],
    ["12.5 %", 0.125],
    ["0.07%", 0.0007],
    ["TRUE", true],
    ["2026-11-25", 46351],
    ["25.11.2026", 46351],
    ["11/25/2026", 46351],
  ])("reads %s", (text, value) => expect(read(text).value).toBe(value));

  it.each([
    "3/8",
    "1-1/2",
    "1 1/2",
    '3/8"',
    "1/4-20",
    "10-24",
    "#10-24",
    "1/4-20 UNC-2B",
    "M8x1.25",
    "0012",
    "1/2",
    "3-4",
    "5 mm",
    "12:30",
    "3 mar",
    "1.2.3",
    "1/2/3",
    "31.2.2026",
    "12,5",
    "Infinity",
    "1e999",
    "0x10",
    "12345678901234567890",
  ])("leaves %s as text", (text) => expect(read(text).value).toBe(text));

  it("says why text stays text that looks like a number", () => {
    expect(read("12,5").doubt).toBe("comma");
    expect(read("1,234")).toEqual({ value: "1,234", doubt: "group" });
    expect(read("1.234", DE)).toEqual({ value: "1.234", doubt: "group" });
    expect(read("12345678901234567890").doubt).toBe("long");
    expect(read("1/4-20").doubt).toBeUndefined();
  });

  it("reads a decimal comma where the language has one, and a point that cannot part thousands", () => {
    expect(["0,785", ",5", "12,5%", "1.234,5", "0.785", "12.5", "1 234,5"].map((t) => read(t, DE).value)).toEqual([
      0.785, 0.5, 0.125, 1234.5, 0.785, 12.5, 1234.5,
    ]);
    expect(read("1,2,3", DE).value).toBe("1,2,3");
  });

  it("takes what follows an apostrophe, and everything in a text cell, as it is", () => {
    expect(read("'=A1").value).toBe("=A1");
    expect(read("'0.5").value).toBe("0.5");
    expect(read("0.5", EN, "@").value).toBe("0.5");
    expect(read("=A1", EN, "@")).toEqual({ value: "=A1" });
  });

  it("reads formulas, errors and blanks", () => {
    expect(read("= A1+1 ")).toEqual({ value: null, formula: "A1+1" });
    expect(read("=").value).toBe("=");
    expect(read("#n/a").value).toEqual({ error: "#N/A" });
    expect(read("")).toEqual({ value: null });
  });

  it("reads days and times in a cell that shows them, by the order of the language", () => {
    expect(read("3/4/26", EN, "m/d/yyyy").value).toBe(serialOf(2026, 3, 4, false));
    expect(read("3/4/26", localeOf("en-GB"), "dd/mm/yyyy").value).toBe(serialOf(2026, 4, 3, false));
    expect(read("12:30", EN, "hh:mm").value).toBeCloseTo(0.5208333, 6);
    expect(read("3/8", EN, "yyyy-mm-dd").value).toBe("3/8");
  });
});

describe("days (published: ECMA-376-1, 18.17.4.1: 1 January 1900 is 1, 1 January 1904 is 0 in the other count)", () => {
  it("counts them", () => {
    expect(serialOf(1900, 1, 1, false)).toBe(1);
    expect(serialOf(1900, 2, 28, false)).toBe(59);
    expect(serialOf(1900, 3, 1, false)).toBe(61);
    expect(serialOf(9999, 12, 31, false)).toBe(2958465);
    expect(serialOf(1904, 1, 1, true)).toBe(0);
    expect(serialOf(2026, 2, 30, false)).toBeUndefined();
  });
  it("goes back and forth (identity)", () => {
    fc.assert(
      fc.property(fc.integer({ min: 61, max: 2958465 }), (serial) => {
        const [y, m, d] = dayOf(serial, false);
        expect(serialOf(y, m, d, false)).toBe(serial);
      }),
    );
  });
});

describe("long text in a cell (identity)", () => {
  it("is read in proportion to its length", () => {
    for (const one of [" ", "\t", "1", "1 ", "1,", "1.", "%", " %", "(", "-", "/", "'", "a"])
      for (const [head, tail] of [
        ["1", "z"],
        ["M6", "!"],
      ]) {
        const text = (n: number) => `${head}${one.repeat(n)}${tail}`;
        expect(
          growth((n) => read(text(n)), 2000),
          JSON.stringify([head, one]),
        ).toBeLessThan(LINEAR);
      }
  });
});

describe("what the input shows reads back as the same (identity)", () => {
  const formats = ["General", "0.00", "0%", "0.0##", "yyyy-mm-dd", "m/d/yyyy hh:mm", "#,##0", "[h]:mm", '0.0" mm"'];
  const rules = (locale: typeof EN, numberFormat: string) => ({ locale, date1904: false, numberFormat });
  it("for numbers of any size, format and language", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.double({ noNaN: true, noDefaultInfinity: true }),
          fc.integer(),
          fc.double({ min: 0, max: 60000, noNaN: true }),
        ),
        fc.constantFrom(...formats),
        fc.constantFrom(EN, DE),
        (value, numberFormat, locale) => {
          const cell: Cell = { value: value === 0 ? 0 : value };
          const text = editText(cell, rules(locale, numberFormat));
          expect(readTyped(text, rules(locale, numberFormat)).value, text).toBe(cell.value);
        },
      ),
      { numRuns: 3000 },
    );
  });
  it("for texts that look like numbers, formulas or errors", () => {
    const tricky = fc.oneof(
      fc.string(),
      fc.constantFrom("12", "=A1", "'x", "#N/A", "TRUE", "2026-11-25", "1,234", "5%", "3/8", "", " 7", "1e5", "\n5"),
    );
    fc.assert(
      fc.property(tricky, fc.constantFrom(EN, DE), (value, locale) => {
        if (value === "") return;
        const text = editText({ value }, rules(locale, "General"));
        expect(readTyped(text, rules(locale, "General"))).toMatchObject({ value });
      }),
      { numRuns: 3000 },
    );
  });
});

describe("number formats (published: ECMA-376-1, 18.8.30 and 18.8.31 and their examples; common practice of spreadsheets)", () => {
  it.each([
    [12.5, "General", "12.5"],
    [0.1 + 0.2, "General", "0.3"],
    [12.5, "0", "13"],
    [12.5, "0.00", "12.50"],
    [12.5, "0.00##", "12.50"],
    [12.3456, "0.00##", "12.3456"],
    [1234.5, "#,##0.00", "1,234.50"],
    [0.125, "0.0%", "12.5%"],
    [-3, "0.0;(0.0)", "(3.0)"],
    [0, '0;-0;"none"', "none"],
    [12345, "0.00E+00", "1.23E+04"],
    [0.375, "# ?/?", " 3/8"],
    [46351, "yyyy-mm-dd", "2026-11-25"],
    [46351, "d.m.yy", "25.11.26"],
    [46351.75, "yyyy-mm-dd hh:mm", "2026-11-25 18:00"],
    [46351, "dddd", "Wednesday"],
    [1.5, "[h]:mm", "36:00"],
    [0.5, "h:mm AM/PM", "12:00 PM"],
    [8, '0" mm"', "8 mm"],
    [5, "[Red]0", "5"],
    [7, "@", "7"],
  ])("shows %s under %s as %s", (value, format, text) => expect(displayText(value, format, EN)).toBe(text));

  it("shows text, errors and truth as they are, and a comma where the language has one", () => {
    expect(displayText("1/4-20", "0.00", EN)).toBe("1/4-20");
    expect(displayText({ error: "#N/A" }, "0.00", EN)).toBe("#N/A");
    expect(displayText(true, undefined, EN)).toBe("TRUE");
    expect(displayText(1234.5, "#,##0.00", DE)).toBe("1.234,50");
    expect(displayText(0.785, undefined, DE)).toBe("0,785");
  });
  it("counts days from 1904 where the file does, and never hides a value behind a format it cannot read", () => {
    expect(displayText(0, "yyyy-mm-dd", EN, true)).toBe("1904-01-01");
    expect(displayText(12.5, '0"', EN)).toMatch(/12\.5|13/);
  });
});

describe("typed formulas", () => {
  const at = (tag: string) => (text: string) => readTyped(text, { locale: localeOf(tag), date1904: false });
  it("are taken when the grammar of formulas has them (ECMA-376-1, 18.17.2)", () => {
    for (const text of [
      "=1+2",
      "=SUM(A1:A3,2)",
      '=CUT.RPM(A1,10,"mm")',
      "=[@Depth]*2",
      "='Shop list'!B2%",
      "=-A1^2",
      "=Plan!#REF!+1",
    ])
      expect(at("en-US")(text), text).toEqual({ value: null, formula: text.slice(1) });
  });
  it("are no formulas when a bracket, a quote or a sign is missing: a file with one counts as damaged", () => {
    for (const text of ["=SUM(F2:F10", "=1+", '="abc', "=1 2", "=SUM(1,2))", "=> see the drawing", "=1.5.2"])
      expect(at("en-US")(text), text).toEqual({ value: text, unreadable: true });
  });
  it("may be written with semicolons and decimal commas where that can be nothing else", () => {
    const german = at("de-DE");
    expect(german("=1,5*2")).toEqual({ value: null, formula: "1.5*2" });
    expect(german("=SUM(1,5;2)")).toEqual({ value: null, formula: "SUM(1.5,2)" });
    expect(german('=IF(A1>0,5;"a;b, c";,25)')).toEqual({ value: null, formula: 'IF(A1>0.5,"a;b, c",.25)' });
    expect(at("en-US")("=SUM(1;2)")).toEqual({ value: null, formula: "SUM(1,2)" });
    // Two arguments, or one and a half: taken as it stands, and said.
    expect(german("=SUM(1,5)")).toEqual({ value: null, formula: "SUM(1,5)", doubt: "arguments" });
    expect(german("=SUM(A1,5)")).toEqual({ value: null, formula: "SUM(A1,5)" });
    expect(at("en-US")("=SUM(1,5)")).toEqual({ value: null, formula: "SUM(1,5)" });
  });
});
