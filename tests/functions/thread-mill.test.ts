import { describe, expect, it } from "vitest";
import type { CellError } from "../../functions/cells.ts";
import { DRILLNAME, DRILLSIZE, TAPDRILL } from "../../functions/drill-size.ts";
import { BESTWIRE, BETWEENBALLS, OVERWIRES, WEARCHANGE } from "../../functions/gauging.ts";
import { NECKCLEARANCE, THREADPASSES, THREADPATH, THREADPERCENT, THREADSWEEP } from "../../functions/thread-path.ts";

const mm = [["mm"]];
const inch = [["in"]];
const one = (v: unknown) => [[v]];
const value = (block: any[][]) => block[0]![0] as number;
const code = (block: any[][]) => (block[0]![0] as CellError).code;
const message = (block: any[][]) => (block[0]![0] as CellError).message;

describe("thread mill functions (independent)", () => {
  it("sweep: M8 with a 6 mm cutter gains 0.08729, M30×3.5 outside loses 0.02695 (table of another program)", () => {
    const got = THREADSWEEP([["M8"], ["M30-6g"]], [[6], [20]], [[0.15625], [0.875]], mm);
    expect(got[0]![0]).toBeCloseTo(0.08728998131696475, 10);
    expect(got[1]![0]).toBeCloseTo(-0.02694567333389486, 10);
  });
  it("sweep: 10-32 with a 0.140 in cutter gains 0.0021344 in, in both systems", () => {
    const inInches = value(THREADSWEEP(one("#10-32 UNF-2B"), one(0.14), one(0.00390625), inch));
    expect(inInches).toBeCloseTo(0.002134421023191002, 12);
    const inMm = value(THREADSWEEP(one("#10-32 UNF-2B"), one(0.14 * 25.4), one(0.00390625 * 25.4), mm));
    expect(inMm / 25.4 / inInches).toBeCloseTo(1, 10);
  });
  it("path: middle of the limits by default, M6-6H 5.350 to 5.500 (ISO 965-2)", () => {
    const given = value(THREADPATH(one("M6"), one(4.8), one(0.125), mm, one(5.425)));
    expect(2 * given + 4.8).toBeCloseTo(5.97, 3);
    const narrow = value(THREADPATH(one("M6"), one(4.8), one(0.08), mm, one(5.425)));
    expect(value(THREADPATH(one("M6"), one(4.8), one(0.08), mm))).toBe(narrow);
    // Without the sweep the tip stands where the triangle says.
    const plain = value(THREADPATH(one("M6"), one(4.8), one(0.125), mm, one(5.425), one(false)));
    expect(plain).toBeCloseTo(5.425 / 2 + (0.25 - 0.0625) * Math.sqrt(3) - 2.4, 12);
  });
  it("path: a flat a little over P/8 is computed, one of P/2 is not", () => {
    expect(value(THREADPATH(one("M6"), one(4), one(0.13), mm))).toBeGreaterThan(0);
    expect(code(THREADPATH(one("M6"), one(4), one(0.5), mm))).toBe("#VALUE!");
  });
  it("path: a flat that leaves the major diameter under 6 is #NUM! and names the widest one that does not", () => {
    const wide = THREADPATH(one("M6"), one(4.8), one(0.125), mm);
    expect(code(wide)).toBe("#NUM!");
    expect(message(wide)).toMatch(
      /^no answer for tipFlat 0\.125: the major diameter would be 5\.97\d* mm, under the basic 6 mm; a flat of at most /,
    );
    const widest = Number(/at most ([\d.]+)/.exec(message(wide))![1]);
    expect(2 * value(THREADPATH(one("M6"), one(4.8), one(widest - 1e-4), mm)) + 4.8).toBeGreaterThanOrEqual(6);
    expect(code(THREADPATH(one("M6"), one(4.8), one(widest + 1e-3), mm))).toBe("#NUM!");
    // outside the tip has to come down to the basic minor diameter, 4.917
    expect(message(THREADPATH(one("M6-6g"), one(20), one(0.3), mm))).toMatch(
      /the minor diameter would be .*over the basic 4\.917/,
    );
    expect(value(THREADPATH(one("M6-6g"), one(20), one(0.125), mm))).toBeGreaterThan(0);
  });
  it("passes: equal areas from the hole to the tip of the path, spring passes repeated", () => {
    const list = THREADPASSES(one("M6"), one(5), one(0.125), one(3), mm, one(1), one(4.6)).map((r) => r[0] as number);
    const tip = value(THREADPATH(one("M6"), one(4.6), one(0.125), mm, one(5.425))) + 2.3;
    expect(list).toHaveLength(4);
    expect(list[2]).toBeCloseTo(tip - 2.5, 12);
    expect(list[3]).toBe(list[2]);
    const area = (t: number) => t * (0.125 + t * Math.tan(Math.PI / 6));
    expect(area(list[0]!)).toBeCloseTo(area(list[2]!) / 3, 12);
    const uncorrected = THREADPASSES(one("M6"), one(5), one(0.125), one(1), mm);
    expect(value(uncorrected)).toBeCloseTo(5.425 / 2 + 0.1875 * Math.sqrt(3) - 2.5, 12);
  });
  it("passes: an external thread is cut from the blank inwards", () => {
    const list = THREADPASSES(one("M30-6g"), one(29.9), one(0.875), one(2), mm, one(0), one(20), one(27.5));
    const tip = value(THREADPATH(one("M30-6g"), one(20), one(0.875), mm, one(27.5))) - 10;
    expect(list[1]![0]).toBeCloseTo(29.9 / 2 - tip, 12);
  });
  it("neck: hole radius less path radius less neck radius", () => {
    const path = value(THREADPATH(one("M6"), one(4.6), one(0.1), mm));
    expect(value(NECKCLEARANCE(one("M6"), one(5), one(4.6), one(3), one(0.1), mm))).toBeCloseTo(2.5 - path - 1.5, 12);
  });
  it("percent: #7 in 1/4-20 leaves 75 (charts), the (5/8)·H reading would say 91", () =>
    expect(value(THREADPERCENT(one("1/4-20"), one(0.201), inch))).toBeCloseTo(75.44, 2));
  it("wires: basic size without a class, middle of the limits with one", () => {
    const W = 0.045;
    const over = (d2: number) => {
      const lead = 1 / 13 / (Math.PI * d2);
      return d2 + 3 * W - Math.sqrt(3) / 26 + (W / 2) * lead ** 2 * 1.5;
    };
    expect(value(OVERWIRES(one("1/2-13"), one(W), inch))).toBeCloseTo(over(0.5 - (0.75 * Math.sqrt(3)) / 26), 10);
    // ASME B1.1: 1/2-13 UNC-2A pitch diameter 0.4435 to 0.4485.
    expect(value(OVERWIRES(one("1/2-13 UNC-2A"), one(W), inch))).toBeCloseTo(over(0.446), 10);
    expect(value(OVERWIRES(one("1/2-13 UNC-2A"), one(W), inch, one(0.445)))).toBeCloseTo(over(0.445), 10);
  });
  it("balls: M30×3.5-6H at 27.867, ball 2 mm, by the formula written out", () => {
    const D2 = 27.8669;
    const tan = 3.5 / (Math.PI * D2);
    const M = D2 - 2 * 3 + 1.75 * Math.sqrt(3) - tan ** 2 * 1.5;
    expect(value(BETWEENBALLS(one("M30"), one(2), mm, one(D2)))).toBeCloseTo(M, 12);
  });
  it("best wire: 0.57735·P, 0.5637·P for G", () => {
    expect(value(BESTWIRE(one("M6-6g"), mm))).toBeCloseTo(0.57735, 5);
    expect(value(BESTWIRE(one("G1/4"), mm)) / (25.4 / 19)).toBeCloseTo(0.56369, 5);
  });
  it("wear: half the error, signed for an internal thread", () => {
    expect(value(WEARCHANGE(one(5.46), one(5.42)))).toBeCloseTo(0.02, 12);
    expect(value(WEARCHANGE(one(5.46), one(5.42), one(0.5)))).toBeCloseTo(0.01, 12);
  });
  it("drills: a column of threads in either system", () => {
    const inches = TAPDRILL([["1/4-20"], ["5/16-18"], ["1/2-13 UNC-2B"]], inch).map((r) => r[0]);
    expect(inches).toEqual([0.201, 0.257, 27 / 64]);
    expect(value(TAPDRILL(one("M6"), inch))).toBeCloseTo(5 / 25.4, 14);
    expect(value(TAPDRILL(one("M12"), mm))).toBe(10.2);
    expect(value(TAPDRILL(one("M6"), mm, one(null), one("Number, LETTER")))).toBeCloseTo(0.196 * 25.4, 12);
    expect(DRILLNAME([[0.201], [0.257], ["13/64"]], inch).map((r) => r[0])).toEqual(["#7", "F", "13/64"]);
    expect(DRILLSIZE([["#7"], ["F"], ["13/64"], ["1-1/2"], ["5.1 mm"]], inch).map((r) => r[0])).toEqual([
      0.201,
      0.257,
      13 / 64,
      1.5,
      5.1 / 25.4,
    ]);
  });
});

describe("what the cells say (identity)", () => {
  it("unknown threads and drills are #N/A with what exists", () => {
    expect(code(THREADPATH(one("M6x9"), one(4), one(0.1), mm))).toBe("#N/A");
    expect(message(THREADPATH(one("M6x9"), one(4), one(0.1), mm))).toMatch(/M6×1/);
    expect(code(DRILLSIZE(one("#99"), inch))).toBe("#N/A");
    expect(code(DRILLSIZE(one(7), inch))).toBe("#N/A");
    expect(code(DRILLNAME(one(500), mm))).toBe("#N/A");
  });
  it("blanks and wrong numbers are #VALUE! and name the argument", () => {
    for (const [block, name] of [
      [THREADPATH(one(""), one(4), one(0.1), mm), "thread is blank"],
      [THREADPATH(one("M6"), one(null), one(0.1), mm), "cutterDiameter is blank"],
      [THREADPATH(one("M6"), one(4), one(""), mm), "tipFlat is blank"],
      [THREADPATH(one("M6"), one(4), one(-0.1), mm), "tipFlat is -0.1"],
      [THREADPATH(one("M6"), one(4), one(0.1), one("cm")), 'units is "cm"'],
      [THREADPATH(one("M6"), one(6.2), one(0.1), mm), "cutterDiameter is 6.2; more than 0 mm and less than"],
      [NECKCLEARANCE(one("M6"), one(4.5), one(4.8), one(3), one(0.1), mm), "cutterDiameter is 4.8"],
      [THREADPASSES(one("M6"), one(7), one(0.1), one(2), mm), "holeDiameter is 7"],
      [THREADPASSES(one("M6"), one(5), one(0.1), one(1.5), mm), "passes is 1.5"],
      [THREADPASSES(one("M6"), one(5), one(0.1), one(1e9), mm), "passes is 1000000000"],
      [THREADPERCENT(one("M6"), one(6.5), mm), "holeDiameter is 6.5"],
      [OVERWIRES(one("1/2-13 UNC-2A"), one(0.2), inch), "wireDiameter is 0.2"],
      [BETWEENBALLS(one("M6"), one(3), mm), "ballDiameter is 3"],
      [TAPDRILL(one("M6"), mm, one(120)), "percent is 120"],
      [TAPDRILL(one("M6"), mm, one(null), one("wire")), 'sets is "wire"'],
      [WEARCHANGE(one(5), one(5), one(-0.5)), "gain is -0.5"],
    ] as const) {
      expect(code(block), name).toBe("#VALUE!");
      expect(message(block).startsWith(name), `${message(block)} / ${name}`).toBe(true);
    }
  });
  it("a bad row spoils its own cell only", () => {
    const got = THREADSWEEP([["M8"], ["M8x7"], ["M8"]], one(6), one(0.15625), mm);
    expect(got[0]![0]).toBe(got[2]![0]);
    expect((got[1]![0] as CellError).code).toBe("#N/A");
  });
  it("ten thousand rows of sweep and path take about a second at most", () => {
    const rows = 10_000;
    const cutters = Array.from({ length: rows }, (_, i) => [4 + i * 8e-5]);
    const start = process.cpuUsage();
    const sweep = THREADSWEEP(one("M6"), cutters, one(0.125), mm);
    const path = THREADPATH(one("M6"), cutters, one(0.08), mm);
    const seconds = process.cpuUsage(start).user / 1e6;
    expect(sweep).toHaveLength(rows);
    expect(path.every((r) => typeof r[0] === "number")).toBe(true);
    // 0.1 s of the processor on an idle machine; the bound leaves room for a busy one.
    expect(seconds).toBeLessThan(3);
  });
});
