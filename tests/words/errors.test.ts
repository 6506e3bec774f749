/** Every code of what an argument may be: a call that is refused with it, and what its sentence must name. */
import { describe, expect, it } from "vitest";
import type { CellError } from "../../functions/cells.ts";
import { DRILLSIZE, TAPDRILL } from "../../functions/drill-size.ts";
import { CLASSSIZE } from "../../functions/holes.ts";
import { THREADPATH } from "../../functions/thread-path.ts";
import { THREADLEAD } from "../../functions/thread-size.ts";
import { TOOLFREQUENCY } from "../../functions/tool.ts";
import type { AllowedCode } from "../../src/allowed.ts";
import { breakEvenBatch, type Quote } from "../../src/cost.ts";
import { reamerDrill } from "../../src/drill/ream.ts";
import { drillNamed, nearestDrill } from "../../src/drill/sizes.ts";
import { TradeError } from "../../src/errors.ts";
import { classLimits, fitOf, standardTolerance } from "../../src/fits/limits.ts";
import { economicLife, toolLife } from "../../src/life.ts";
import { anySpeedDepth } from "../../src/mill/chatter.ts";
import { checkPass } from "../../src/mill/threadforce.ts";
import { root } from "../../src/numeric.ts";
import { compare } from "../../src/quote/compare.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import { parseThread } from "../../src/thread/designation.ts";
import { threadSize } from "../../src/thread/limits.ts";
import { crestRise } from "../../src/thread/path.ts";
import { basicPitchDiameter } from "../../src/thread/profile.ts";
import { flankAngleError } from "../../src/thread/swept-form.ts";
import { taperPipe } from "../../src/thread/taper-pipe.ts";
import { chamferThreads } from "../../src/thread/tapping.ts";
import { neckDeflection, toolLength } from "../../src/tool/beam.ts";
import { parseUnits } from "../../src/units.ts";
import { errors } from "../../src/words/en/errors.ts";
import { errorText } from "../../src/words/errors.ts";
import { refused, sentence } from "../refusal.ts";

const lists = readLists([["Material"], ["Steel"]], [], [["Machine"], ["one"], ["two"]]);
const problem = (headings: readonly unknown[], cells: readonly unknown[]): TradeError => {
  const [row] = readRows([headings as string[], cells as any[]]);
  return row!.problems.at(-1)!.error;
};
const depth = (cell: unknown, units: unknown = "mm") => problem(["Units", "Depth"], [units, cell]);
const limit = (designation: string, element: "major" | "pitch" | "minor", which: "min" | "max") =>
  refused(() => threadSize(parseThread(designation), element, which));
const thread = (designation: unknown) => refused(() => parseThread(designation as string));
const sheet = (block: any[][]): string => (block[0]![0] as CellError).message;
const mode = { frequency: 1000, stiffness: 10, damping: 0.03 };
const slot = { teeth: 4, radialDepth: 10, diameter: 10, slope: 800, radialRatio: 0.35, surfaceSpeed: 100 };
const machine: Quote = { cycleTime: 60, rate: 60, setupTime: 600, toolCostPerPart: 0 };
const arms = { cutterDiameter: 5, tipFlat: 0.1, profileAngle: 60, lead: 1 };
const pass = {
  cutterDiameter: 4.5,
  tipFlat: 0.1,
  profileAngle: 60,
  pitch: 1,
  lead: 1,
  holeDiameter: 5,
  internal: true,
};

type Case = readonly [refusal: () => TradeError | string, says: RegExp];
const CASES: { readonly [C in AllowedCode]: Case } = {
  number: [() => refused(() => toolLength([{ tipDiameter: Number.NaN, holderDiameter: 1, length: 1 }])), /NaN.*number/],
  "above-zero": [
    () => refused(() => toolLength([{ tipDiameter: -2, holderDiameter: 1, length: 1 }])),
    /-2.*more than 0/,
  ],
  "from-zero": [() => refused(() => economicLife(0.25, -1, 0, 60)), /toolChangeTime is -1; 0 or more/],
  whole: [
    () =>
      refused(() => anySpeedDepth({ ...slot, way: "climb", processDamping: 0, teeth: 1001 }, { x: [mode], y: [mode] })),
    /teeth is 1001; .*at least 1 and at most 1000/,
  ],
  between: [() => refused(() => toolLife(100, 100, 60, 1)), /exponent is 1; more than 0 and less than 1/],
  below: [() => refused(() => basicPitchDiameter(1, 2)), /pitch is 2; less than 0\.92376/],
  "covered-to": [() => refused(() => standardTolerance(501, "7")), /diameter is 501; at most 500/],
  "above-argument": [
    () => refused(() => checkPass({ ...pass, startDepth: 0.3, endDepth: 0.2 })),
    /endDepth is 0\.2; more than startDepth, 0\.3/,
  ],
  "other-than-argument": [
    () => refused(() => flankAngleError(arms, 2, 5, 5)),
    /diameter2 is 5; .*other than diameter1/,
  ],
  "beyond-numbers": [() => refused(() => toolLife(1e-300, 1e300, 60, 0.1)), /beyond any number/],
  "no-change-of-sign": [() => refused(() => root((x) => x + 1, 0, 7)), /root 0: no change of sign up to 7/],

  "one-of": [() => problem(["Way"], ["sideways"]), /Way is "sideways"; climb or conventional is allowed/],
  "one-of-texts": [() => refused(() => parseUnits("units", "furlong")), /units is "furlong"; "mm" or "in" is allowed/],
  "one-of-angles": [() => refused(() => crestRise(1, 50)), /profileAngle is 50; 60 or 55 degrees/],
  chamfers: [() => refused(() => chamferThreads("16")), /chamfer is "16"; .*plug.*up to 15/],
  "in-list": [
    () => refused(() => compare([], lists, { machine: ["on", "two"] })),
    /machine "on" is not known; nearest in the list: one/,
  ],

  "no-error-value": [() => depth({ code: "#REF!" }), /Depth is "#REF!"; a value is wanted/],
  "one-meaning": [() => problem(["Operation"], ["Gewinde"]), /"Gewinde"; it may mean \w[\w ]* or \w[\w ]*: write one/],
  "decimal-mark": [() => depth("1,234"), /"1,234"; .*comma.*write 1\.234 or 1234/],
  "one-number": [() => depth("12 x 24"), /"12 x 24"; one number is allowed, alone or with mm or in/],
  "number-limits": [() => depth("12 kg"), /"12 kg"; a number more than 0 is allowed, alone or with mm or in/],
  "true-or-false": [
    () => sheet(THREADPATH([["M6"]], [[4]], [[0.1]], [["mm"]], [[""]], [["perhaps"]])),
    /is "perhaps"; TRUE or FALSE/,
  ],
  "row-units-first": [() => depth(5, "furlongs"), /Units must say mm or in/],
  // 4 January 2026, by the count of days from the end of 1899
  "taken-for-date": [() => depth(46_026), /46026; the cell holds the date 4 Jan 2026.*such as 1\/4/],

  "drill-name": [() => sheet(DRILLSIZE([[""]], [["mm"]])), /name is blank; .*"13\/64"/],
  "drill-names": [() => refused(() => drillNamed("AA")), /name "AA" is not known; .*"13\/64"/],
  "drill-numbers": [() => refused(() => drillNamed("#81")), /#81.*#1 to #80/],
  "drill-set": [() => refused(() => nearestDrill(5, [])), /no drill set/],
  "drill-sets": [
    () => sheet(TAPDRILL([["M6"]], [["mm"]], [[""]], [["wire"]])),
    /sets is "wire"; .*number letter fraction metric/,
  ],
  "nearest-drill": [() => refused(() => nearestDrill(900)), /diameter 900 is not known; the nearest standard drill is/],
  "nearest-drills": [() => refused(() => drillNamed("5.15 mm")), /nearest that exist: 5\.1 mm and 5\.2 mm/],
  "nearest-drill-stock": [() => refused(() => reamerDrill(10, 0.04, ["fraction"])), /too much or too little stock/],

  "class-name": [() => sheet(CLASSSIZE([[20]], [[""]], [["max"]], [["mm"]])), /is blank; .*"H7"/],
  "class-names": [() => refused(() => classLimits(20, "7H")), /"7H" is not known; .*"H7"/],
  "class-kind": [() => refused(() => classLimits(20, "g6", "class", "hole")), /hole's class \(capitals\)/],
  "class-letters": [() => refused(() => classLimits(20, "q6")), /letters covered are a, b/],
  "class-grades": [() => refused(() => classLimits(20, "J9")), /J exists in the grades 6, 7 and 8/],
  "class-to-grade": [() => refused(() => classLimits(20, "K9")), /K exists up to grade 8/],
  "class-from-size": [() => refused(() => classLimits(20, "t6")), /t begins over 24 mm/],
  "class-not-to-size": [() => refused(() => classLimits(1, "A11")), /A is not used up to 1 mm/],
  "fit-names": [() => refused(() => fitOf(20, "g6/H7")), /hole first/],
  grades: [() => refused(() => standardTolerance(20, "19")), /"19" is not known; .*IT18/],

  "thread-name": [() => sheet(THREADLEAD([[""]], [["mm"]])), /thread is blank; .*"M6"/],
  "thread-names": [() => thread("hello"), /"hello" is not known; .*"M6"/],
  "taper-pipe-names": [() => refused(() => taperPipe("M6")), /"1\/4-18 NPT"/],
  "thread-not-covered": [() => thread("Tr 20x4"), /trapezoidal threads \(Tr\) are not covered/],
  "pipe-thread-name": [() => thread("1/4 BSP"), /as G and its size/],
  "one-thread": [() => thread("M6-6H/6g"), /names two threads/],
  "thread-class": [() => thread("1/2-13 UNC-4B"), /class 4B does not exist; 1A, 2A, 3A/],
  "metric-class": [() => thread("M6-9H"), /class 9H does not exist; 4H to 8H/],
  "metric-class-letters": [() => thread("M6-5H6G"), /5H6G has two positions/],
  "metric-size": [() => thread("M6.5"), /no metric size M6\.5 .* M6, M7/],
  "metric-pitches": [() => thread("M6x2"), /for this size there are M6×1, M6×0\.75/],
  "metric-no-coarse": [() => thread("M25"), /M25 has no coarse pitch: write M25×2/],
  "pipe-size": [() => thread("G9"), /no size G9; the sizes are G1\/16/],
  "pipe-pitch": [() => thread("G1/4-18"), /G1\/4 has 19 threads per inch/],
  "taper-pipe-sizes": [() => refused(() => taperPipe("7/8-14 NPT")), /the sizes are .*1\/8, 1\/4/],
  "taper-pipe-pitch": [() => refused(() => taperPipe("1/4-14 NPT")), /has 18 threads per inch/],
  "unified-series": [() => thread("1/2-13 UNX"), /series "UNX" is not one of UNC/],
  "unified-size": [() => thread("#7-32 UNC"), /no standard Unified size #7; .*#6, #8/],
  "unified-not-special": [() => thread("1/4-20 UNS"), /1\/4-20 is UNC, not a special/],
  "unified-specials": [() => thread("9-1 UNS"), /special threads from .* in and .* threads per inch/],
  "unified-pitches": [
    () => thread("1/4-24 UNC"),
    /there are 1\/4-20 UNC, 1\/4-28 UNF.*write 1\/4-24 UNS \(ASME B1\.1 lists it\)/,
  ],
  "unr-external": [() => thread("1/2-13 UNRC-2B"), /UNR is a root form of external/],
  "unj-classes": [() => thread("1/2-13 UNJC-2B"), /classes 3A and 3B/],
  "limit-open": [() => limit("M6-6H", "major", "max"), /ISO 965-1 sets no largest major diameter for an internal/],
  "unj-root-open": [() => limit("1/2-13 UNJC-3A", "minor", "max"), /external UNJ thread is a radius/],
  "flat-too-wide": [
    () => sheet(THREADPATH([["M6"]], [[4]], [[0.3]], [["mm"]])),
    /tipFlat 0\.3.*major diameter would be 5\.\d+ mm, under the basic 6\.?\d* mm/,
  ],
  "no-tolerance": [
    () => limit("M1-8H", "minor", "max"),
    /no minor-diameter tolerance of grade 8 for a pitch of 0\.25 mm/,
  ],
  "no-position": [() => limit("M1-6e", "pitch", "max"), /no position e for a pitch of 0\.25 mm/],

  segments: [() => refused(() => toolLength([])), /segments is blank; at least one/],
  "segment-rows": [() => sheet(TOOLFREQUENCY([[5]], [["mm"]])), /segments is .*1 column.*rows of diameter and length/],
  "shank-sizes": [() => refused(() => neckDeflection(1, 3, 10, 600, 6)), /shankLength is blank; .*both/],
  modes: [
    () => refused(() => anySpeedDepth({ ...slot, way: "climb", processDamping: 0 }, { x: [mode], y: [] })),
    /modes is blank; at least one mode/,
  ],
  "free-change": [() => refused(() => economicLife(0.25, 0, 0, 60)), /toolChangeTime 0: .*faster is always cheaper/],
  "no-break-even": [() => refused(() => breakEvenBatch(machine, machine)), /both the same, at every batch/],
  "pair-of-names": [() => refused(() => compare([], lists, {})), /a pair of machines or of materials/],
};

describe("what an argument may be (the call is refused, and its values are named)", () => {
  it.each(Object.entries(CASES) as [AllowedCode, Case][])("%s", (code, [refusal, says]) => {
    const answer = refusal();
    if (answer instanceof TradeError) expect(answer.allowed.is).toBe(code);
    expect(typeof answer === "string" ? answer : sentence(answer)).toMatch(says);
  });
  it("has no sentence for a code that nothing fires", () =>
    expect(Object.keys(errors.allowed).sort()).toEqual(Object.keys(CASES).sort()));
});

describe("the sentence of an error", () => {
  const tooDeep = new TradeError(
    "range",
    "depth",
    30,
    { is: "between", low: 2, high: 20, open: "high", dimension: "length" },
    "length",
  );
  it("writes numbers, the value and the name as the reader knows them", () => {
    expect(errorText(tooDeep, errors)).toBe("depth is 30; at least 2 and less than 20 is allowed");
    const show = (value: number, dimension?: string) => `${value / 25.4} in of ${dimension}`;
    expect(
      errorText(
        new TradeError("range", "depth", 25.4, { is: "below", high: 12.7, dimension: "length" }, "length"),
        errors,
        { show },
      ),
    ).toBe("depth is 1 in of length; less than 0.5 in of length is allowed");
    expect(errorText(tooDeep, errors, { shown: '"1-3/16"', name: "Depth" })).toMatch(/^Depth is "1-3\/16"; /);
  });
  it.each([
    ["blank", "depth is blank; a number is wanted"],
    ["value", "depth is 30; a number is wanted"],
    ["range", "depth is 30; a number is wanted"],
    ["unknown", "depth 30 is not known; a number is wanted"],
    ["unsolvable", "no answer for depth 30: a number is wanted"],
  ] as const)("of the kind %s", (kind, text) =>
    expect(errorText(new TradeError(kind, "depth", 30, { is: "number" }), errors)).toBe(text),
  );
  it.each([
    [undefined, "blank"],
    [null, "blank"],
    ["a".repeat(40), `"${"a".repeat(40)}"`],
    ["a".repeat(41), `"${"a".repeat(39)}…"`],
    [true, "TRUE"],
    [Number.POSITIVE_INFINITY, "Infinity"],
    [1 / 3, "0.333333"],
    [{}, "Object"],
    [[], "Array"],
  ])("quotes %j as %s", (value, quoted) =>
    expect(errorText(new TradeError("value", "x", value, { is: "number" }), errors)).toBe(
      `x is ${quoted}; a number is wanted`,
    ),
  );
  it("says a number that is none as it is, not in units", () =>
    expect(
      errorText(new TradeError("value", "x", Number.NaN, { is: "number" }, "length"), errors, { show: () => "wrong" }),
    ).toBe("x is NaN; a number is wanted"));
});
