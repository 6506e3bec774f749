import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { parseThread } from "../../src/thread/designation.ts";
import { METRIC_SIZES } from "../../src/thread/metric-series.ts";
import { UNIFIED_SIZES } from "../../src/thread/unified-series.ts";
import { refusal, sentence } from "../refusal.ts";

/** What was typed, the normal form, kind, basic major diameter, threads per inch or pitch. */
const READ: [string, string, "internal" | "external", number, number][] = [
  ["1/2-13 UNC-2B", "1/2-13 UNC-2B", "internal", 0.5, 13],
  ["1/2-20", "1/2-20 UNF-2B", "internal", 0.5, 20],
  ["#10-32 UNF-2B", "#10-32 UNF-2B", "internal", 0.19, 32],
  ["10-24", "#10-24 UNC-2B", "internal", 0.19, 24],
  ["No. 10-24 UNC 3A", "#10-24 UNC-3A", "external", 0.19, 24],
  [".4375-14 UNC-2A", "7/16-14 UNC-2A", "external", 0.4375, 14],
  ["0.250-20", "1/4-20 UNC-2B", "internal", 0.25, 20],
  ["1-1/8-7 UNC", "1-1/8-7 UNC-2B", "internal", 1.125, 7],
  ["1 1/8-7", "1-1/8-7 UNC-2B", "internal", 1.125, 7],
  ["1/2-13unc2b", "1/2-13 UNC-2B", "internal", 0.5, 13],
  ["  1/2 - 13   unc - 2b ", "1/2-13 UNC-2B", "internal", 0.5, 13],
  ["1/2–13 UNC–2B", "1/2-13 UNC-2B", "internal", 0.5, 13],
  ['1/2"-13', "1/2-13 UNC-2B", "internal", 0.5, 13],
  ["6-32", "#6-32 UNC-2B", "internal", 0.138, 32],
  ["6-4", "6-4 UN-2B", "internal", 6, 4],
  ["5-4", "5-4 UN-2B", "internal", 5, 4],
  ["0-80", "#0-80 UNF-2B", "internal", 0.06, 80],
  ["# 10-32", "#10-32 UNF-2B", "internal", 0.19, 32],
  ["NO.10-24", "#10-24 UNC-2B", "internal", 0.19, 24],
  ["NO 10-24", "#10-24 UNC-2B", "internal", 0.19, 24],
  ["1/2 in-13", "1/2-13 UNC-2B", "internal", 0.5, 13],
  ["1/2 in. - 13", "1/2-13 UNC-2B", "internal", 0.5, 13],
  ["1/2″-13 UNC-2B", "1/2-13 UNC-2B", "internal", 0.5, 13],
  ["1 / 2-13", "1/2-13 UNC-2B", "internal", 0.5, 13],
  ["1 - 1/8-7", "1-1/8-7 UNC-2B", "internal", 1.125, 7],
  ["1.-8", "1-8 UNC-2B", "internal", 1, 8],
  ["2-4 1/2", "2-4.5 UNC-2B", "internal", 2, 4.5],
  ["2-4 - 1 / 2", "2-4.5 UNC-2B", "internal", 2, 4.5],
  ["1/2-13 2A", "1/2-13 UNC-2A", "external", 0.5, 13],
  ["1/2-13-2A", "1/2-13 UNC-2A", "external", 0.5, 13],
  ["1/2-13UNC2ALH", "1/2-13 UNC-2A-LH", "external", 0.5, 13],
  ["1/2-13 UNC - 2 A - LH", "1/2-13 UNC-2A-LH", "external", 0.5, 13],
  ["1/2-13 LH", "1/2-13 UNC-2B-LH", "internal", 0.5, 13],
  ["1/2-13 UNC-2B RH", "1/2-13 UNC-2B", "internal", 0.5, 13],
  // The ends of what special threads are known for: diameter, threads per inch, three threads in a diameter.
  [".06-64 UNS", "#0-64 UNS-2B", "internal", 0.06, 64],
  ["6-9 UNS", "6-9 UNS-2B", "internal", 6, 9],
  ["6-3 UNS", "6-3 UNS-2B", "internal", 6, 3],
  ["1/4-80 UNS", "1/4-80 UNS-2B", "internal", 0.25, 80],
  ["1/2-6 UNS", "1/2-6 UNS-2B", "internal", 0.5, 6],
  [".3-40 UNS", "0.3-40 UNS-2B", "internal", 0.3, 40],
  ["1-64", "#1-64 UNC-2B", "internal", 0.073, 64],
  ["1-8", "1-8 UNC-2B", "internal", 1, 8],
  ["2-4.5", "2-4.5 UNC-2B", "internal", 2, 4.5],
  ["2-4-1/2 UNC", "2-4.5 UNC-2B", "internal", 2, 4.5],
  ["1-1/16-12 UN-2B", "1-1/16-12 UN-2B", "internal", 1.0625, 12],
  ["1-14 UNS-2A", "1-14 UNS-2A", "external", 1, 14],
  ["1/4-20 UNRC-3A", "1/4-20 UNRC-3A", "external", 0.25, 20],
  ["1/4-28 UNJF-3A", "1/4-28 UNJF-3A", "external", 0.25, 28],
  ["1/4-28 UNJF", "1/4-28 UNJF-3B", "internal", 0.25, 28],
  ["1/2-13 UNC-2B-LH", "1/2-13 UNC-2B-LH", "internal", 0.5, 13],
  ["M6", "M6×1-6H", "internal", 6, 1],
  ["M6x1-6H", "M6×1-6H", "internal", 6, 1],
  ["m6X1-6h", "M6×1-6h", "external", 6, 1],
  ["M10×1.25 - 6g", "M10×1.25-6g", "external", 10, 1.25],
  ["M12x1.75-4g6g", "M12×1.75-4g6g", "external", 12, 1.75],
  ["M10 x 1.5 - 5H6H", "M10×1.5-5H6H", "internal", 10, 1.5],
  ["M8x1-6H-LH", "M8×1-6H-LH", "internal", 8, 1],
  ["M1.2", "M1.2×0.25-5H", "internal", 1.2, 0.25],
  ["M1.6", "M1.6×0.35-6H", "internal", 1.6, 0.35],
  ["M8-1.25", "M8×1.25-6H", "internal", 8, 1.25],
  ["M6x1.0 - 6g", "M6×1-6g", "external", 6, 1],
  ["½-13 UNC-2B", "1/2-13 UNC-2B", "internal", 0.5, 13],
  ["1½-6", "1-1/2-6 UNC-2B", "internal", 1.5, 6],
  ["G1/4-19 A", "G1/4A", "external", 13.157, 19],
  ["G1/4", "G1/4", "internal", 13.157, 19],
  ["G1/4A", "G1/4A", "external", 13.157, 19],
  ["G 1/2 B", "G1/2B", "external", 20.955, 14],
  ["g 1 1/4", "G1-1/4", "internal", 41.91, 11],
  ["G1 - 1/4", "G1-1/4", "internal", 41.91, 11],
  ["G1/ 4", "G1/4", "internal", 13.157, 19],
  ["G1 /4", "G1/4", "internal", 13.157, 19],
  ['G1/4"', "G1/4", "internal", 13.157, 19],
  ['G1/4 " - 19 - A', "G1/4A", "external", 13.157, 19],
  ["G1/4 -19A", "G1/4A", "external", 13.157, 19],
  ["G1/4 A LH", "G1/4A-LH", "external", 13.157, 19],
  ["G1/4-A - LH", "G1/4A-LH", "external", 13.157, 19],
  ["G1/4LH", "G1/4-LH", "internal", 13.157, 19],
  ["G1/4 - RH", "G1/4", "internal", 13.157, 19],
  ["G2", "G2", "internal", 59.614, 11],
  // ISO 965-1: medium class is 6H, 5H up to M1.4; nothing coarser than 4H has a tolerance at 0.2 mm
  ["M1.4", "M1.4×0.3-5H", "internal", 1.4, 0.3],
  ["M1.4x0.2", "M1.4×0.2-4H", "internal", 1.4, 0.2],
  ["M1.8x0.2", "M1.8×0.2-4H", "internal", 1.8, 0.2],
  ["M 6 x 1 - 6H - LH", "M6×1-6H-LH", "internal", 6, 1],
  ["M6*1", "M6×1-6H", "internal", 6, 1],
  ["M6x1 6h", "M6×1-6h", "external", 6, 1],
  ["M6x.75", "M6×0.75-6H", "internal", 6, 0.75],
  ["M6LH", "M6×1-6H-LH", "internal", 6, 1],
  ["M6 RH", "M6×1-6H", "internal", 6, 1],
  ["M6-5H 6H", "M6×1-5H6H", "internal", 6, 1],
  ["M2.5x0.35", "M2.5×0.35-6H", "internal", 2.5, 0.35],
];

describe("parseThread", () => {
  it.each(READ)("reads %s as %s", (text, designation, kind, major, pitch) => {
    const thread = parseThread(text);
    expect(thread.designation).toBe(designation);
    expect(thread.kind).toBe(kind);
    expect(thread.major).toBe(major);
    expect(thread.tpi ?? thread.pitch).toBe(pitch);
    expect(thread.hand).toBe(text.includes("LH") ? "left" : "right");
    expect(thread.lead).toBe(thread.pitch);
  });

  it("knows the profile, unit and series of each system", () => {
    expect(parseThread("1/2-13")).toMatchObject({ standard: "unified", native: "in", series: "UNC", profileAngle: 60 });
    expect(parseThread("M8x1")).toMatchObject({ standard: "metric", native: "mm", series: "fine", profileAngle: 60 });
    expect(parseThread("G1")).toMatchObject({ standard: "pipe", native: "mm", series: "G", profileAngle: 55 });
    expect(parseThread("G1").pitch).toBeCloseTo(2.309, 3); // ISO 228-1
  });

  it("takes a number of five digits for the day that a spreadsheet makes of 1/2-13", () => {
    // 2 January 2013 is day 41276 (ECMA-376-1, 18.17.4.1)
    expect(refusal(() => parseThread("41276"))).toMatch(/day|date/i);
    for (const text of ["141276", "4127", "41276x"])
      expect(refusal(() => parseThread(text))).toMatch(/designations such as/);
  });

  it("hands out the same thread for the same text", () => {
    expect(parseThread("5/16-18 UNC-3B")).toBe(parseThread("5/16-18 UNC-3B"));
  });

  /** What was typed, and words of the answer. */
  const REFUSED: [string, RegExp][] = [
    ["1/2-14", /1\/2-13 UNC, 1\/2-20 UNF, 1\/2-28 UNEF/],
    ["1-14", /1-8 UNC, 1-12 UNF.* write 1-14 UNS/],
    ["1/4-2", /special and carry UNS/],
    ["1/2-13 UNF", /1\/2-20 UNF/],
    ["1/2-20 UN", /1\/2-20 UNF/],
    ["1/2-20 UNS", /1\/2-20 is UNF/],
    ["1-14", /there are 1-8 UNC, 1-12 UNF.*write 1-14 UNS \(ASME B1.1 lists it\)/],
    ["#10-28", /write #10-28 UNS \(ASME/],
    ["1/2-14 UNF", /for this size there are 1\/2-13 UNC/],
    ["1/2-15", /write 1\/2-15 UNS$/],
    ["M6-H", /class H does not exist; internal classes are such as 6H/],
    ["M10x1.25-H7", /class H7 does not exist/],
    ["M6 2", /class 2 does not exist/],
    ["G1/4-AA", /class AA does not exist; external threads are A or B/],
    ["1/2-13 UNC-B", /1A, 2A, 3A/],
    ["1/2-13 UNC-2C", /1A, 2A, 3A/],
    ["7/32-20", /nearest are #10, #12, 1\/4/],
    ["#7-32", /nearest are #5, #6, #8/],
    ["1/2-13 UNC-4B", /1A, 2A, 3A \(external\) and 1B, 2B, 3B \(internal\)/],
    ["1/2-13 NC-2", /designations such as|series/],
    ["1/4-20 UNRC-2B", /external/],
    ["1/4-28 UNJF-2A", /3A and 3B/],
    ["M6.5", /nearest are M5.5, M6, M7/],
    ["M6x0.9", /M6×1, M6×0.75/],
    ["M15", /no coarse pitch/],
    ["M6-3H", /does not exist/],
    ["M6-6K", /does not exist/],
    ["M6-6H6G", /same letter/],
    ["M12-4g7g", /grade 4, 6 or 8/],
    ["M6-6H/6g", /two threads/],
    ["M6-6H / 6g", /two threads/],
    ["M6-6G/6h", /two threads/],
    ["1/4-20 UNC-2A/2B", /two threads/],
    ["1/4-20 UNC-2A / 2B", /two threads/],
    ["1/4-20 UNC-2B/2A", /two threads/],
    ["1/4-20 UNC-2B / 2A", /two threads/],
    [".059-80 UNS", /special threads from 0.06 to 6 in and 3 to 80 threads per inch/],
    ["6.01-4 UNS", /special threads from 0.06 to 6 in/],
    ["2-2.9 UNS", /special threads from 0.06 to 6 in/],
    ["1/4-81 UNS", /special threads from 0.06 to 6 in/],
    ["1/2-5 UNS", /special threads from 0.06 to 6 in/],
    ["0-72", /there are #0-80 UNF; .* write #0-72 UNS$/],
    ["8-20", /there are #8-32 UNC, #8-36 UNF/],
    ["6-36", /there are #6-32 UNC, #6-40 UNF/],
    ["5-32", /there are 5-4 UN, /],
    ["7/8-10", /write 7\/8-10 UNS \(ASME/],
    ["11/12-20", /nearest are 7\/8, 15\/16, 1$/],
    ["G9", /G1\/16, G1\/8/],
    ["G1/4C", /A or B/],
    ["G1/4-14", /19 threads per inch/],
    ["1/4-18 NPT", /not covered yet/],
    ["1/4-18 NPTF", /not covered yet/],
    ["1/4-18 NPSM", /American pipe threads/],
    ["1/4-18 dryseal", /American pipe threads/],
    ["Tr20x4", /trapezoidal/],
    ["Tr 20x4", /trapezoidal/],
    ["S20x2", /buttress/],
    ["S 20 x 2", /buttress/],
    ["1/2-10 BUTT", /buttress/],
    ["1/2-10 stub", /ACME/],
    ["R 1", /sealed on the thread/],
    ["R1", /sealed on the thread/],
    ["R 1 1/2", /sealed on the thread/],
    ["Rp1/2", /sealed on the thread/],
    ["Rc 1", /sealed on the thread/],
    ["1/4 BSPT", /sealed on the thread/],
    ["BSP 1/4", /write this pipe thread as G/],
    ["1/4-26 BSF", /Whitworth and BA/],
    ["1/4 Whit.", /Whitworth and BA/],
    ["W1/4", /Whitworth and BA/],
    ["W 1/4", /Whitworth and BA/],
    ["2 BA", /Whitworth and BA/],
    ["Rd20x1/8", /round threads/],
    ["Rd 20x1/8", /round threads/],
    ["Pg9", /conduit/],
    ["PG 11", /conduit/],
    ["MJ 6x1", /MJ/],
    ["1.2 UNM", /miniature/],
    ["1/2-13 UNC 2 START", /several starts/],
    ["M16xPh3", /several starts/],
    ["M16xPh 3", /several starts/],
    ["M16xP3", /several starts/],
    ["M16xP 3", /several starts/],
    // Letters of another system inside a word name no system.
    ["M6W1", /designations such as/],
    ["AR1/4", /designations such as/],
    ["R10", /designations such as/],
    ["XTR20", /designations such as/],
    ["XRD20", /designations such as/],
    ["XPG9", /designations such as/],
    ["XMJ6", /designations such as/],
    ["AS20X2", /designations such as/],
    ["BAR", /designations such as/],
    ["M6 - H", /class H does not exist/],
    ["M6--H", /designations such as/],
    ["M6-66HHH", /designations such as/],
    ["M6-6A123", /designations such as/],
    ["G1/4-12", /G1\/4 has 19 threads per inch/],
    ["G11", /there is no size G11; the sizes are G1\/16, /],
    ["XG1/4", /designations such as/],
    ["G1/4AX", /designations such as|class AX does not exist/],
    ["G1/4-191", /designations such as/],
    ["XM6", /designations such as/],
    ["M6HX", /designations such as/],
    ["X1/2-13", /designations such as/],
    ["M6-A123", /designations such as/],
    ["M6-ABC", /designations such as/],
    ["M6-AB12", /class AB12 does not exist/],
    ["G1/4-12AB", /class 12AB does not exist/],
    ["1/2-10 ACME-2G", /ACME threads are not covered/],
    ["R1/4", /not covered yet/],
    ["Rc 1/8", /not covered yet/],
    ["1/4-20 BSW", /Whitworth/],
    ["1/4 BSPP", /write this pipe thread as G/],
    ["M16xPh3P1.5", /several starts/],
    ["MJ6x1", /MJ/],
    ["1/2", /designations such as/],
    ["banana", /designations such as/],
    ["M10x1,25", /designations such as/],
    ["0", /designations such as/],
    ["1/0-20", /nearest|designations/],
  ];
  it.each(REFUSED)("refuses %s and says what there is", (text, words) => {
    try {
      parseThread(text, "thread");
      expect.unreachable();
    } catch (e) {
      expect(e).toBeInstanceOf(TradeError);
      expect((e as TradeError).code).toBe("unknown");
      expect((e as TradeError).parameter).toBe("thread");
      expect(sentence(e as TradeError)).toMatch(words);
    }
  });

  it("says that a blank designation is blank", () => {
    for (const text of ["", "   "]) {
      expect(() => parseThread(text)).toThrow(expect.objectContaining({ code: "blank" }));
    }
  });

  it("reads back every designation it writes (identity)", () => {
    for (const { name, pitches } of UNIFIED_SIZES) {
      for (const { tpi, series } of pitches) {
        const thread = parseThread(`${name}-${tpi} ${series}`);
        expect(thread.series).toBe(series);
        expect(parseThread(thread.designation)).toEqual(thread);
        expect(parseThread(`${thread.major}-${tpi}`)).toEqual(thread);
      }
    }
    for (const [d, coarse, fine] of METRIC_SIZES) {
      for (const P of coarse ? [coarse, ...fine] : fine) {
        const thread = parseThread(`M${d}x${P}`);
        expect(parseThread(thread.designation)).toEqual(thread);
      }
    }
  });

  it("answers any text with a thread or an error of the trade (identity)", () => {
    const bits = fc.constantFrom(
      "1/2",
      "-",
      "13",
      " ",
      "UNC",
      "2B",
      "M",
      "6",
      "x",
      "1",
      "H",
      "#",
      "10",
      "G",
      ".",
      "/",
      "g",
      "LH",
      "é",
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(bits, { maxLength: 9 }).map((a) => a.join("")),
        ),
        (text) => {
          try {
            const thread = parseThread(text);
            return thread.major > 0 && thread.pitch > 0 && thread.pitch < thread.major;
          } catch (e) {
            return e instanceof TradeError && sentence(e).length > 0;
          }
        },
      ),
      { numRuns: 1000, seed: 7 },
    );
  });
});

describe("tolerance classes that do not exist (published: ISO 965-1 and ASME B1.1)", () => {
  it.each([
    // grades 3 to 9 outside, 4, 6 or 8 on the major diameter; 4 to 8 inside
    ["M10-3g", "M10-2g"],
    ["M10-9g", "M10-10g"],
    ["M10-5g6g", "M10-5g7g"],
    ["M10-4h", "M10-1h"],
    ["M10-4H", "M10-3H"],
    ["M10-8H", "M10-9H"],
    ["M10-6H", "M10-6K"],
    ["1/4-20 UNC-2A", "1/4-20 UNC-12A"],
    ["1/4-20 UNC-3B", "1/4-20 UNC-4B"],
    ["1/4-20 UNC-1B", "1/4-20 UNC-0B"],
  ])("%s does, %s does not", (fine, wrong) => {
    expect(parseThread(fine).designation).toBeTruthy();
    expect(() => parseThread(wrong)).toThrow();
  });
});
