/** Sizes that are asked about: each limit with a row just inside and one just beyond (the limits are common practice). */
import { describe, expect, it } from "vitest";
import { doubtOf, PLAUSIBLE } from "../../src/callouts/plausible.ts";
import { ENGLISH } from "../../src/callouts/remarks/en.ts";
import { said } from "../../src/callouts/remarks/say.ts";
import type { CalloutCells } from "../../src/callouts/types.ts";
import { parseThread } from "../../src/thread/designation.ts";

const doubt = (cells: CalloutCells, units: "mm" | "in" | null = "mm", thread?: string) => {
  const known = thread === undefined ? undefined : parseThread(thread);
  const remark = doubtOf({ Quantity: 1, ...cells }, units, known, PLAUSIBLE);
  return remark && said(remark, ENGLISH);
};

describe("doubts about sizes", () => {
  const drill = (d: number, z?: number): CalloutCells => ({ Operation: "drill", "Finish diameter": d, Depth: z });
  const bore = (d: number, z?: number): CalloutCells => ({ Operation: "bore", "Finish diameter": d, Depth: z });
  const seat = (d: number, start: number | null, z?: number): CalloutCells => ({
    Operation: "counterbore",
    "Finish diameter": d,
    "Start diameter": start,
    Depth: z,
  });
  it.each<[CalloutCells, CalloutCells, string]>([
    [{ Quantity: 1000 }, { Quantity: 1001 }, "1001 of them: is that so?"],
    [drill(0.5), drill(0.49), "⌀0.49 mm: is that so? very small"],
    [bore(500), bore(500.1), "⌀500.1 mm: is that so? a decimal point may be lost"],
    [{ ...drill(6), Spacing: 1000 }, { ...drill(6), Spacing: 1001 }, "1001 mm apart: is that so?"],
    [drill(80), drill(80.1), "a drill of ⌀80.1 mm: is that so?"],
    [bore(81), drill(81), "a drill of ⌀81 mm: is that so?"],
    [seat(10.1, 10), seat(10, 10), "the counterbore is not larger than its hole (10 mm, 10 mm): is that so?"],
    [
      { ...seat(9, 8), Operation: "countersink" },
      { ...seat(8, 9), Operation: "countersink" },
      "the countersink is not larger than its hole (8 mm, 9 mm): is that so?",
    ],
    [
      { ...seat(8, 9), Operation: "bore" },
      seat(8, 9),
      "the counterbore is not larger than its hole (8 mm, 9 mm): is that so?",
    ],
    [seat(20, null, 40), seat(20, null, 40.1), "40.1 mm deep: is that so? a seat of more than 2 diameters"],
    [drill(10, 200), drill(10, 200.1), "200.1 mm deep: is that so? more than 20 diameters"],
    [bore(10, 100), bore(10, 100.1), "100.1 mm deep: is that so? more than 10 diameters"],
    [{ ...bore(10, 240), Operation: "boss" }, bore(10, 240), "240 mm deep: is that so? more than 10 diameters"],
    [bore(100, 250), bore(100, 250.1), "250.1 mm deep: is that so? deeper than common work"],
    [
      { ...bore(10, 250), Operation: "boss" },
      { ...bore(10, 251), Operation: "boss" },
      "251 mm deep: is that so? deeper than common work",
    ],
    [
      { Operation: "drill", Depth: 250 },
      { Operation: "drill", Depth: 251 },
      "251 mm deep: is that so? deeper than common work",
    ],
  ])("%o is taken, %o is asked about", (inside, beyond, words) => {
    expect(doubt(inside)).toBeUndefined();
    expect(doubt(beyond)).toBe(words);
  });
  it("are the same sizes on a drawing in inches, said in inches", () => {
    expect(doubt(drill(0.02), "in")).toBeUndefined(); // 0.508 mm
    expect(doubt(drill(0.019), "in")).toBe("⌀0.019 in: is that so? very small");
    expect(doubt(drill(0.6, 9.84), "in")).toBeUndefined(); // 249.9 mm
    expect(doubt(drill(0.6, 9.85), "in")).toBe("9.85 in deep: is that so? deeper than common work");
  });
  it("are said without a unit where none is known", () => {
    expect(doubt(drill(0.4), null)).toBe("⌀0.4: is that so? very small");
  });
});

describe("doubts about threads", () => {
  const mill = (start: number | null, z?: number): CalloutCells => ({
    Operation: "thread mill",
    "Start diameter": start,
    Depth: z,
  });
  // M10: 1.5·(√3/2)·P = 1.9486 mm; 30 % and 110 % of it below 10 mm are 9.4154 and 7.8566. 1/2-13: 2.5380 mm, 11.9386 and 9.9082.
  it.each([
    ["M10", "mm", 9.41, 9.42, "⌀9.42 mm for this thread: is that so? too large for a tap drill"],
    ["M10", "mm", 7.86, 7.85, "⌀7.85 mm for this thread: is that so? too small for a tap drill"],
    ["1/2-13", "mm", 11.93, 11.95, "⌀11.95 mm for this thread: is that so? too large for a tap drill"],
    ["1/2-13", "mm", 9.91, 9.9, "⌀9.9 mm for this thread: is that so? too small for a tap drill"],
    ["1/2-13", "in", 0.47, 0.471, "⌀0.471 in for this thread: is that so? too large for a tap drill"],
    ["M10", "in", 0.37, 0.371, "⌀0.371 in for this thread: is that so? too large for a tap drill"],
  ] as const)("hole of %s in %s: %d is taken, %d is asked about", (thread, units, inside, beyond, words) => {
    expect(doubt(mill(inside), units, thread)).toBeUndefined();
    expect(doubt(mill(beyond), units, thread)).toBe(words);
    // of an external thread the diameter before it says nothing, nor does it of another operation
    expect(doubt({ ...mill(beyond), Operation: "bore" }, units, thread)).toBeUndefined();
  });
  it.each([
    ["M10", "mm", 1.5, 1.49, "1.49 mm deep: is that so? less than one pitch"],
    ["M10", "mm", 60, 60.1, "60.1 mm deep: is that so? more than 6 diameters of thread"],
    ["1/2-13", "mm", 1.96, 1.95, "1.95 mm deep: is that so? less than one pitch"],
    ["1/2-13", "mm", 76.1, 76.3, "76.3 mm deep: is that so? more than 6 diameters of thread"],
    ["1/2-13", "in", 2.99, 3.01, "3.01 in deep: is that so? more than 6 diameters of thread"],
    ["M64-6g", "mm", 250, 251, "251 mm deep: is that so? deeper than common work"],
  ] as const)("depth of %s in %s: %d is taken, %d is asked about", (thread, units, inside, beyond, words) => {
    expect(doubt(mill(null, inside), units, thread)).toBeUndefined();
    expect(doubt(mill(null, beyond), units, thread)).toBe(words);
  });
  it("ask nothing of the blank before an external thread", () => {
    expect(doubt(mill(9.9), "mm", "M10-6g")).toBeUndefined();
    expect(doubt(mill(9.9), "mm", "M10")).toBeDefined();
  });
});
