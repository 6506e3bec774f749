import { describe, expect, it } from "vitest";
import { CellError } from "../../functions/cells.ts";
import { THREADLEAD, THREADSIZE } from "../../functions/thread-size.ts";

const size = (...a: unknown[]) => (THREADSIZE as (...x: any[]) => any[][])(...a.map((v) => [[v]]))[0]![0];
const lead = (...a: unknown[]) => (THREADLEAD as (...x: any[]) => any[][])(...a.map((v) => [[v]]))[0]![0];

describe("THREADSIZE (published)", () => {
  it("gives the printed limits of 1/2-13 UNC-2B and M6-6H without any loss", () => {
    expect(size("1/2-13 UNC-2B", "pitch", "max", "in")).toBe(0.4565);
    expect(size("1/2-20 UNF-2B", "Minor", " MAX ", "in")).toBe(0.457);
    expect(size("M6x1-6H", "minor", "max", "mm")).toBe(5.153);
  });
});

describe("THREADSIZE and THREADLEAD in the other system (identity)", () => {
  it("convert exactly", () => {
    expect(size("M6x1-6H", "minor", "max", "in")).toBeCloseTo(5.153 / 25.4, 12);
    expect(size("1/2-13", "pitch", "max", "mm")).toBeCloseTo(0.4565 * 25.4, 12);
    expect(lead("1/2-20", "in")).toBe(0.05);
    expect(lead("1/2-20", "mm")).toBeCloseTo(1.27, 12);
    expect(lead("G1/4", "mm")).toBeCloseTo(25.4 / 19, 12);
  });
});

describe("THREADSIZE, bad input", () => {
  const cases: [string, unknown[], string, RegExp][] = [
    ["a limit that is open", ["M6-6g", "minor", "min", "mm"], "#N/A", /smallest minor diameter/],
    ["an unknown thread", ["1/2-14", "pitch", "max", "in"], "#N/A", /1\/2-13 UNC/],
    ["a blank thread", [null, "pitch", "max", "in"], "#VALUE!", /thread is blank/],
    ["an unknown element", ["M6", "root", "max", "mm"], "#VALUE!", /element.*major.*pitch.*minor/],
    ["an unknown limit", ["M6", "pitch", "mid", "mm"], "#VALUE!", /limit.*basic.*min.*max/],
    ["missing units", ["M6", "pitch", "max", ""], "#VALUE!", /units/],
    ["a number", [45, "pitch", "max", "mm"], "#N/A", /designations such as/],
  ];
  it.each(cases)("answers %s with the right error", (_, args, code, words) => {
    const answer = size(...args);
    expect(answer).toBeInstanceOf(CellError);
    expect(answer.code).toBe(code);
    expect(answer.message).toMatch(words);
  });

  it("spoils only the cell of a bad thread in a column", () => {
    const column = THREADSIZE([["M6"], ["nonsense"], ["M8"]], [["pitch"]], [["min"]], [["mm"]]);
    expect(column[0]![0]).toBe(5.35);
    expect(column[1]![0]).toBeInstanceOf(CellError);
    expect(column[2]![0]).toBe(7.188);
  });
});
