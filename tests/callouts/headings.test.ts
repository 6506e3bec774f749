/** Headings in brackets: what is taken off, and how long that takes. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { matchHeadings, normalHeading, ROW_COLUMNS } from "../../src/table/columns.ts";
import { growth, LINEAR } from "../quickest.ts";

/** The same in one regular expression: right, but slow on brackets that never close; what such a bracket holds is in it to the end. */
const plain = (heading: string) =>
  heading
    .toLowerCase()
    .replace(/[([{][^)\]}]*(?:[)\]}]|$)/g, " ")
    .replace(/[._:;,/\\\-–—#]+/g, " ")
    .replace(/\s+/g, " ")
    .trim();

describe("headings with brackets (independent)", () => {
  it("are the same as by one regular expression", () => {
    const text = fc
      .array(fc.constantFrom("(", ")", "[", "]", "{", "}", "Depth", "mm", " ", ".", "#", "x"))
      .map((p) => p.join(""));
    fc.assert(
      fc.property(text, (heading) => {
        expect(normalHeading(heading)).toBe(plain(heading));
      }),
      { numRuns: 2000 },
    );
  });
  it("take no longer than their length", () => {
    for (const one of ["(", "([{", "( "])
      expect(
        growth((n) => matchHeadings([one.repeat(n)], ROW_COLUMNS), 50_000, 3),
        one,
      ).toBeLessThan(LINEAR);
  });
  it("keep the unit in their brackets", () => {
    expect(matchHeadings(["Depth (mm)", "Dia [in]"], ROW_COLUMNS).map((m) => [m.column.key, m.units])).toEqual([
      ["depth", "mm"],
      ["finishDiameter", "in"],
    ]);
  });
});
