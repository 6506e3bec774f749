import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Axis } from "../../../taskpane/desk/grid/axis.ts";
import { contrast, readableOn } from "../../../taskpane/desk/grid/colour.ts";
import { ENGLISH } from "../../../taskpane/desk/grid/words.ts";
import { Refused } from "../../../taskpane/desk/model/refused.ts";

describe("where rows and columns lie (independent: added up one by one)", () => {
  const axis = fc.record({
    count: fc.integer({ min: 1, max: 60 }),
    size: fc.integer({ min: 1, max: 40 }),
    special: fc.array(fc.tuple(fc.nat(70), fc.constantFrom(0, 0, 7, 90)), { maxLength: 12 }),
  });
  it("gives the place of each, and the one at a place", () => {
    fc.assert(
      fc.property(axis, ({ count, size, special }) => {
        const sizes = new Map(special);
        const made = new Axis(count, size, sizes);
        const each = Array.from({ length: count }, (_, i) => sizes.get(i) ?? size);
        let sum = 0;
        each.forEach((one, i) => {
          expect(made.offset(i)).toBe(sum);
          expect(made.sizeOf(i)).toBe(one);
          if (one > 0) {
            expect(made.indexAt(sum)).toBe(i);
            expect(made.indexAt(sum + one - 1)).toBe(i);
          }
          sum += one;
        });
        expect(made.length).toBe(sum);
      }),
      { numRuns: 500 },
    );
  });
  it("steps over what is hidden and stays where nothing follows", () => {
    const made = new Axis(
      6,
      10,
      new Map([
        [2, 0],
        [3, 0],
        [5, 0],
      ]),
    );
    expect([made.step(1, 1), made.step(4, -1), made.step(4, 1), made.step(0, -1)]).toEqual([4, 1, 4, 0]);
  });
  it("holds a million rows without counting them", () => {
    const made = new Axis(1_048_576, 28, new Map([[0, 46]]));
    expect(made.indexAt(made.offset(1_000_000))).toBe(1_000_000);
  });
});

describe("contrast (published: WCAG 2.2, definition of contrast ratio; black on white is 21, #767676 on white 4.54)", () => {
  it("is what the standard says", () => {
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 6);
    expect(contrast("#767676", "#ffffff")).toBeCloseTo(4.54, 2);
    expect(readableOn("#003366")).toBe("#ffffff");
    expect(readableOn("#ffee88")).toBe("#000000");
  });
});

describe("what is refused", () => {
  it("has a sentence with a way out or a reason for every code", () => {
    const codes = [
      "array",
      "locked",
      "merged",
      "sheet",
      "name",
      "outside",
      "table",
      "occupied",
      "file",
      "formula",
      "ambiguous",
      "long",
    ] as const;
    for (const code of codes) {
      const sentence = ENGLISH.refused(new Refused(code, { at: "B2", text: "This one", other: "C3" }));
      expect(sentence, code).toMatch(/^.{5,}$/);
      expect(sentence).not.toContain("undefined");
    }
  });
});
