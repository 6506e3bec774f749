import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readCallouts } from "../src/callouts/callouts.ts";
import { drillNamed } from "../src/drill/sizes.ts";
import { decimalText, inchText } from "../src/reading.ts";
import { parseThread } from "../src/thread/designation.ts";
import { taperPipe } from "../src/thread/taper-pipe.ts";
import { growth, LINEAR, quickest } from "./quickest.ts";

const READERS: Readonly<Record<string, (text: string) => unknown>> = {
  decimalText,
  inchText,
  drillNamed,
  parseThread,
  taperPipe,
};

/** Milliseconds of the processor in the quickest of three readings; refusals count as readings. */
const reading = (read: (text: string) => unknown, text: string): number =>
  quickest(
    () => {
      try {
        read(text);
      } catch {
        // long junk is refused; how long that takes is the question
      }
    },
    3,
    30,
  );

describe("numbers as people type them (identity)", () => {
  it("reads decimals, and nothing that might be meant otherwise", () => {
    const read = ["12.7", ".5", "5.", " 007 ", "+3", "-3", "1e3", "1.5E-2"].map(decimalText);
    expect(read).toEqual([12.7, 0.5, 5, 7, 3, -3, 1000, 0.015]);
    for (const text of ["", ".", "1,5", "1 000", "0x10", "1e", "1e1000", "--1", "1.2.3", "Infinity", "NaN", "½"])
      expect(decimalText(text), text).toBeUndefined();
  });
  it("reads fractions of an inch and inch marks", () => {
    const read = ["3/8", "1-1/2", "1 1/2", "1 - 1 / 2", '3/8"', '.375"', ".375 ″", "1''", "2”"].map(inchText);
    expect(read).toEqual([0.375, 1.5, 1.5, 1.5, 0.375, 0.375, 0.375, 1, 2]);
    for (const text of ["", '"', "3/0", "0.375", "1/2/3", "-1/2", "1.5/2", '1"2', '1""', "3/8 in"])
      expect(inchText(text), text).toBeUndefined();
  });
  it("reads back what it prints, whatever the number (identity)", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(decimalText(String(value))).toBe(value === 0 ? Number(String(value)) : value);
      }),
    );
    fc.assert(
      fc.property(fc.nat(99), fc.integer({ min: 1, max: 63 }), (whole, top) => {
        expect(inchText(`${whole}-${top}/64`)).toBe(whole + top / 64);
      }),
    );
  });
});

describe("long text in a cell (identity)", () => {
  /** What a reader may begin with, what is then repeated, and what spoils it at the end. */
  const HEADS = [
    "",
    "1",
    "1.",
    "1-",
    "1 ",
    "+",
    "#",
    "NO",
    "NUMBER",
    "LTR",
    "M",
    "M6x",
    "1/2-13",
    "1/2-13UNC",
    "G1/",
    "1/2",
  ];
  const UNITS = [
    "1",
    "0",
    " ",
    ".",
    '"',
    "'",
    "-",
    "/",
    "#",
    "A",
    "H",
    "x",
    "1 ",
    " 1",
    "1-",
    "1/",
    "1.",
    "6H",
    "½",
    "é",
  ];
  const TAILS = ["!", "1"];
  /** A pattern that reads a text in two ways takes three seconds or more for this length, a plain one a few milliseconds. */
  const LENGTH = 64_000;
  const ALLOWED = 600;

  for (const [name, read] of Object.entries(READERS)) {
    it(`is read by ${name} in a time that grows with its length`, () => {
      for (const head of HEADS)
        for (const unit of UNITS)
          for (const tail of TAILS) {
            const text = head + unit.repeat(LENGTH / unit.length) + tail;
            expect(reading(read, text), JSON.stringify([head, unit, tail])).toBeLessThan(ALLOWED);
          }
    });
    it(`is read by ${name} at once whatever is repeated`, () => {
      const bits = fc.constantFrom(...HEADS, ...UNITS, ...TAILS);
      const some = (maxLength: number) => fc.array(bits, { maxLength }).map((all) => all.join(""));
      fc.assert(
        fc.property(some(3), some(3), some(2), (head, unit, tail) => {
          const text = head + unit.repeat(LENGTH / (unit.length || LENGTH)) + tail;
          expect(reading(read, text)).toBeLessThan(ALLOWED);
        }),
        { numRuns: 300, seed: 11 },
      );
    });
  }
});

describe("long text of a drawing (identity)", () => {
  it("is read in proportion to its length", () => {
    for (const one of [" ", "\t", "4 ", "(", "((", "x ", "⌀ ", "- ", "1,", "O", "|", "M8 ↧ 16\n"]) {
      const text = (n: number) => `4X ⌀.5${one.repeat(n)}THRU`;
      expect(
        growth((n) => readCallouts(text(n)), 2000),
        JSON.stringify(one),
      ).toBeLessThan(LINEAR);
    }
  });
});
