/**
 * What the rows of a callout say for themselves: every assumption, every doubt, and nothing else. The remark is written from
 * the callout by ASME Y14.5, ISO 129 and common practice: what a machinist would ask or be told.
 */
import { describe, expect, it } from "vitest";
import { type CalloutOptions, readCallouts } from "../../src/callouts/callouts.ts";

/** Where the units come from. */
const ASSUMED = "mm assumed: the callout does not tell";
const STATED = "mm: the units stated for the drawing";
const INCHES = "in from the way its numbers are written (leading point, fraction or inch mark)";
const METRIC = "mm from the way its numbers are written (decimal comma or mm)";
const CLASS = "mm from its thread or tolerance class";
const SYSTEM = "in from its thread";

const THRU = "through: Depth is the thickness there, which is not in the callout";
const NO_DEPTH = "depth is not told";
const TAP_DRILL = "drill size: the thread's tap drill";
const DEEPER = (depth: number) => `hole assumed 2 pitches deeper than the thread: ${depth}`;
const FINE = "planned as a bore from solid: the tolerance is less than drilling holds (IT11)";
const LARGE = "planned as a bore from solid: larger than a drill of 40 mm";
const EXTERNAL = "external thread: the diameter before it is not in the callout";
const SMALL = '"m8-6h" is in small letters: read as an internal thread';
const OLD = "NC is the older name of UNC (American National series)";
const TAPPED = "the drawing says TAP or THREAD: planned as thread milling, change Operation to tap if it is tapped";
const lopsided = (limits: string) => `${limits}: not symmetrical about the drill's size, Size tolerance left blank`;
const HALF = "only one side of the tolerance is written: the other is taken as 0";
const TYP = "TYP: how many is not told";
const CONE = "depth of the cone from the face: (D − d)/(2·tan(angle/2))";
const CHORD = (d: number, n: number) => `spacing is the chord of the bolt circle, ${d}·sin(180°/${n})`;
const BRACKETS = "in brackets: for reference, not to be made from this";

type Say = readonly [text: string, ...rows: readonly (readonly string[])[]];

/** Two rows of which the same is said. */
const two = (notes: readonly string[]) => [notes, notes];
/** The drill and the thread mill of a thread. */
const both = (units: string, deeper: string) => [
  [TAP_DRILL, deeper, units],
  [deeper, units],
];
const PAIR = "two sizes one under the other: limits of one hole, or two holes?";

/** Row by row what is said, in its order. */
function says(options: CalloutOptions, cases: readonly Say[], understood: boolean): void {
  it.each(cases.map(([text, ...rows]) => [text.replace(/\n/g, " ⏎ "), text, rows] as const))("%s", (_, text, rows) => {
    const got = readCallouts(text, options).rows;
    expect(got.map((row) => row.note)).toEqual(rows.map((notes) => notes.join("; ")));
    for (const row of got) expect(row.understood).toBe(understood);
  });
}
const metric = { units: "mm" } as const;

describe("what is said of callouts that are understood, on a drawing in mm", () => {
  says(
    metric,
    [
      ["⌀6 ↧ 10", [ASSUMED]],
      ["⌀6", [NO_DEPTH, ASSUMED]],
      ["⌀6 THRU", [THRU, ASSUMED]],
      ["⌀6,5 ↧ 10", [STATED]],
      // Threads
      ["M8 ↧ 16", [TAP_DRILL, DEEPER(18.5), STATED], [DEEPER(18.5), STATED]],
      ["M8", [TAP_DRILL, NO_DEPTH, STATED], [NO_DEPTH, STATED]],
      ["M8 THRU", [TAP_DRILL, THRU, STATED], [THRU, STATED]],
      ["M8 ↧ 16 THRU", [TAP_DRILL, STATED], [STATED]],
      ["1/4-20 UNC-2B ↧ 12", [TAP_DRILL, DEEPER(14.54), STATED], [DEEPER(14.54), STATED]],
      ["M8 ↧ 16, ⌀6.8 ↧ 20", [STATED], [STATED]],
      ["M8 ↧ 16, HOLE DEPTH 20", [TAP_DRILL, STATED], [STATED]],
      ["M8 ↧ 16, ⌀6.8", [DEEPER(18.5), STATED], [DEEPER(18.5), STATED]],
      ["M8 ↧ 16, ⌀6.8 THRU", [THRU, STATED], [STATED]],
      ["M8, ⌀6.8 THRU", [THRU, STATED], [THRU, STATED]],
      ["M8, ⌀6.8 ↧ 20", [STATED], [NO_DEPTH, STATED]],
      ["⌀6.8 ±0.1 ↧ 20, M8 ↧ 16", ["limits 6.7 to 6.9", STATED], [STATED]],
      ["TAP M8 THRU", [TAP_DRILL, THRU, TAPPED, STATED], [THRU, TAPPED, STATED]],
      ["M8-6g ↧ 16", [EXTERNAL, STATED]],
      ["M8-6g", [EXTERNAL, NO_DEPTH, STATED]],
      ["M8-6g ↧ 16, ⌀6.8 ↧ 20", [STATED], [EXTERNAL, STATED]],
      ["M8 ↧ 16 THRU, ⌀6.8", [THRU, STATED], [STATED]],
      ["m8-6h ↧ 16", [TAP_DRILL, SMALL, DEEPER(18.5), STATED], [SMALL, DEEPER(18.5), STATED]],
      // A capital H is no shaft.
      ["m8-6H ↧ 16", [TAP_DRILL, DEEPER(18.5), STATED], [DEEPER(18.5), STATED]],
      ["1/4-20 NC-2A ↧ 12", [EXTERNAL, OLD, STATED]],
      ["BORE ⌀26.5 ↧ 40, M30 ↧ 30", [STATED], [STATED]],
      // Classes and limits
      ["⌀20.5 H7 THRU", [FINE, "limits 20.5 to 20.521 (H7, ISO 286): middle 20.5105 ± 0.0105", THRU, STATED]],
      ["⌀12 H12 ↧ 20", [lopsided("limits 12 to 12.18 (H12, ISO 286)"), STATED]],
      ["⌀12 +0.1/-0.05 THRU", [lopsided("limits 11.95 to 12.1"), THRU, ASSUMED]],
      ["⌀12 +0.1 ↧ 20", [FINE, HALF, "limits 12 to 12.1: middle 12.05 ± 0.05", ASSUMED]],
      ["⌀12 -0.1 ↧ 20", [FINE, HALF, "limits 11.9 to 12: middle 11.95 ± 0.05", ASSUMED]],
      ["⌀12 ±0.1 ↧ 20", ["limits 11.9 to 12.1: middle 12 ± 0.1", ASSUMED]],
      [
        "⌀20 h6",
        [
          "h6 is a shaft class: planned as a boss",
          "limits 19.987 to 20 (h6, ISO 286): middle 19.9935 ± 0.0065",
          NO_DEPTH,
          STATED,
        ],
      ],
      ["⌀41 THRU", [LARGE, THRU, ASSUMED]],
      ["⌀41 ±0.01 THRU", [FINE, "limits 40.99 to 41.01: middle 41 ± 0.01", THRU, ASSUMED]],
      ["⌀41 BORE THRU", [THRU, ASSUMED]],
      ["⌀6 ↧ 10 ±0.1", ["the tolerance of a depth is not planned", ASSUMED]],
      ["⌀6 ↧ 10.0-10.4", ["depth 10 to 10.4: the middle is taken", ASSUMED]],
      [
        "⌀12 H7 ↧ 20",
        ["H7: drilled, then reamed; a reamer holds that class in this size", STATED],
        [
          "limits 12 to 12.018 (H7, ISO 286): middle 12.009 ± 0.009",
          "H7: drilled, then reamed; a reamer holds that class in this size",
          STATED,
        ],
      ],
      [
        "DRILL ⌀5.8 REAM ⌀6 H7 ↧ 12",
        ["the hole under it taken as deep as the ream: not told", STATED],
        [
          "limits 6 to 6.012 (H7, ISO 286): middle 6.006 ± 0.006",
          "the hole under it taken as deep as the ream: not told",
          STATED,
        ],
      ],
      [
        "DRILL ⌀19 BORE ⌀20 ↧ 12",
        ["the hole under it taken as deep as the bore: not told", ASSUMED],
        ["the hole under it taken as deep as the bore: not told", ASSUMED],
      ],
      ["DRILL ⌀19 BORE ⌀20 THRU", [THRU, ASSUMED], [THRU, ASSUMED]],
      ["DRILL ⌀19 THRU BORE ⌀20", [THRU, ASSUMED], [THRU, ASSUMED]],
      ["DRILL ⌀19 THRU BORE ⌀20 ↧ 12", [THRU, ASSUMED], [ASSUMED]],
      ["DRILL ⌀19 ↧ 30 BORE ⌀20", [ASSUMED], [NO_DEPTH, ASSUMED]],
      ["DRILL ⌀19 ↧ 30 BORE ⌀20 ↧ 12", [ASSUMED], [ASSUMED]],
      // Seats
      ["⌀9 THRU ⌴ ⌀15 ↧ 9", [THRU, ASSUMED], [ASSUMED]],
      ["⌀9 THRU ⌴ ⌀15", [THRU, ASSUMED], [NO_DEPTH, ASSUMED]],
      ["⌀9 THRU SPOTFACE ⌀20", [THRU, ASSUMED], ["spotface: as deep as cleans up the face, not told", ASSUMED]],
      ["⌀9 THRU SPOTFACE ⌀20 ↧ 1", [THRU, ASSUMED], [ASSUMED]],
      ["⌀5 THRU ⌵ ⌀10 x 90°", [THRU, ASSUMED], ["countersink 90°", CONE, ASSUMED]],
      ["⌀5 THRU ⌵ ⌀10", [THRU, ASSUMED], ["angle is not told", NO_DEPTH, ASSUMED]],
      ["⌵ ⌀10 x 90°", ["countersink 90°", NO_DEPTH, ASSUMED]],
      ["⌵ ⌀10 x 90° ↧ 3", ["countersink 90°", ASSUMED]],
      ["⌀5 THRU, C'DRILL ⌀8 ↧ 6", [THRU, ASSUMED], ["counterdrill: opens the hole up to this depth", ASSUMED]],
      // How many
      ["2X 3X ⌀6 ↧ 10", ["quantity 2 × 3 = 6", ASSUMED]],
      ["4X ⌀6 ↧ 10 4 PLACES", ["quantity 4 is written twice: counted once", ASSUMED]],
      ["4X ⌀6 ↧ 10 2 PLACES", ["quantity 4 × 2 = 8", ASSUMED]],
      ["⌀6 ↧ 10 4 HOLES 4 PLACES", ["quantity 4 is written twice: counted once", ASSUMED]],
      ["⌀6 ↧ 10 2 HOLES 3 PLACES", ["quantity 2 × 3 = 6", ASSUMED]],
      ["⌀6 ↧ 10 BOTH SIDES", ["both sides: quantity × 2 = 2", ASSUMED]],
      ["3X ⌀6 ↧ 10 BOTH SIDES", ["both sides: quantity × 2 = 6", ASSUMED]],
      ["⌀6 ↧ 10 TYP", [TYP, ASSUMED]],
      ["4X ⌀6 ↧ 10 TYP", [ASSUMED]],
      ["⌀6 ↧ 10 TYP 4 PLACES", [ASSUMED]],
      ["4X ⌀6 ↧ 10 FAR SIDE", ["from the far side: another set-up", ASSUMED]],
      ["⌀6 ↧ 10 NEAR SIDE TYP", ["near side", TYP, ASSUMED]],
      ["⌀6 ↧ 10 MIN", ["MIN is written: a least value", ASSUMED]],
      ["⌀6 10 MAX DEEP", ["MAX is written: a largest value", ASSUMED]],
      ["⌀6 MAX ↧ 10 MAX", ["MAX is written: a largest value", ASSUMED]],
      ["⌀6 ↧ 1.5D", ["depth 1.5 × the diameter", ASSUMED]],
      // Patterns
      ["6X ⌀7 ↧ 9 EQ SP ON ⌀100 BC", [CHORD(100, 6), ASSUMED]],
      ["6X ⌀7 ↧ 9 ON ⌀100 BC", [`${CHORD(100, 6)}; taken as equally spaced`, ASSUMED]],
      ["2X 6X ⌀7 ↧ 9 EQ SP ON ⌀100 BC", ["quantity 2 × 6 = 12", CHORD(100, 6), ASSUMED]],
      ["⌀7 ↧ 9 6 HOLES EQ SP ON ⌀100 BC", [CHORD(100, 6), ASSUMED]],
      ["2X ⌀7 ↧ 9 EQ SP ON ⌀100 BC", [CHORD(100, 2), ASSUMED]],
      ["⌀7 ↧ 9 ON ⌀100 BC", ["bolt circle without a number of holes: no spacing", ASSUMED]],
      ["6X ⌀7 ↧ 9 EQ SP", ["equally spaced, but on what is not told", ASSUMED]],
      ["2X ⌀7 ↧ 9 SPACED 20", [ASSUMED]],
      ["6 THRU", [THRU, "6 stands without ⌀: read as a diameter", ASSUMED]],
      ["2X 3X ⌀6 ↧ 10 (6)", ["quantity 2 × 3 = 6", ASSUMED]],
      // Lines
      [
        "⌀6.8 ↧ 20\nM8 ↧ 16",
        [STATED, "lines 1 to 2 read as one callout"],
        [STATED, "lines 1 to 2 read as one callout"],
      ],
      ["⌀1O ↧ 2O", [ASSUMED, '"1O" read as 10', '"2O" read as 20']],
    ],
    true,
  );
});

const BESIDE = "the hole beside the thread is not its tap drill: is it the same place?";
/** A hole of class H7 is no tap drill: 6.8 H7 is 15 µm wide (ISO 286-2, over 6 to 10). */
const BESIDE_FINE = [
  [BESIDE, TAP_DRILL, DEEPER(18.5), STATED],
  [BESIDE, FINE, "limits 6.8 to 6.815 (H7, ISO 286): middle 6.8075 ± 0.0075", STATED],
  [BESIDE, DEEPER(18.5), STATED],
];
const unknown = (text: string) => `"${text}" is not understood and may change what the rest means`;
const partOf = (text: string) => [`not understood: this part of "${text}"`];

describe("what is asked of callouts that are not, on a drawing in mm", () => {
  says(
    metric,
    [
      ["⌀6 (6.03) THRU", [unknown("6.03"), THRU, ASSUMED], partOf("⌀6 (6.03) THRU")],
      ["⌀6 THRU X 6", [unknown("6"), THRU, ASSUMED], partOf("⌀6 THRU X 6")],
      ["⌀6 blue red THRU", [unknown("blue red"), THRU, ASSUMED], partOf("⌀6 blue red THRU")],
      ["⌀6 blue, red THRU", [unknown("blue, red"), THRU, ASSUMED], partOf("⌀6 blue, red THRU")],
      ["⌀6 blue of red THRU", [unknown("blue of red"), THRU, ASSUMED], partOf("⌀6 blue of red THRU")],
      ["⌀6 blue THRU red", [unknown("blue … red"), THRU, ASSUMED], partOf("⌀6 blue THRU red")],
      ["⌀6 blue THRU of red", [unknown("blue … red"), THRU, ASSUMED], partOf("⌀6 blue THRU of red")],
      ["⌀6 blue of THRU red", [unknown("blue … red"), THRU, ASSUMED], partOf("⌀6 blue of THRU red")],
      [
        "⌀6 ↧ 10 blue\n4 HOLES red",
        [unknown("blue … red"), ASSUMED, "lines 1 to 2 read as one callout"],
        partOf("⌀6 ↧ 10 blue · 4 HOLES red"),
      ],
      ["M8 THRU ⌀9 THRU", [BESIDE, TAP_DRILL, THRU, STATED], [BESIDE, THRU, STATED], [BESIDE, THRU, STATED]],
      ["M8 ↧ 16, ⌀6.8 H7 ↧ 20", ...BESIDE_FINE],
      ["M8 ↧ 16, ⌀6.8 ↧ 20, ⌀5 ↧ 30", ...two([BESIDE, STATED]), [BESIDE, STATED]],
      ["⌀5 ↧ 30, ⌀6.8 ↧ 20, M8 ↧ 16", ...two([BESIDE, STATED]), [BESIDE, STATED]],
      ["⌀8.1 ↧ 10, ⌀2 ↧ 20", ...two(["⌀8.1 and ⌀2 in one callout: is that so?", ASSUMED])],
      [
        "⌀6 THRU ⌀10 ↧ 5",
        ["the sign of a counterbore may be lost", THRU, ASSUMED],
        ["the sign of a counterbore may be lost", ASSUMED],
      ],
      [
        "⌀20 h6 THRU",
        [
          "h6 is a shaft class: planned as a boss",
          "a shaft class on what is written like a hole: h6",
          "limits 19.987 to 20 (h6, ISO 286): middle 19.9935 ± 0.0065",
          THRU,
          STATED,
        ],
      ],
      ["BOSS ⌀20 ↧ 10", ["a boss written like a hole: how high is it?", ASSUMED]],
      ["BOSS ⌀20 THRU", ["a boss written like a hole: how high is it?", THRU, ASSUMED]],
      ["⌀20 T7 THRU", ["tolerance class T7 is not in the table: no limits", THRU, STATED]],
      ["⌀10 ±0 ↧ 20", ["tolerance not understood", ASSUMED]],
      ["⌀10 ±2.1 ↧ 20", ["limits 7.9 to 12.1: middle 10 ± 2.1", "a tolerance so wide: is that so?", ASSUMED]],
      ["⌀10 +2.1/-1 ↧ 20", [lopsided("limits 9 to 12.1"), "a tolerance so wide: is that so?", ASSUMED]],
      ["⌀10 +1/-2.1 ↧ 20", [lopsided("limits 7.9 to 11"), "a tolerance so wide: is that so?", ASSUMED]],
      [
        "⌀5 THRU ⌵ ⌀10 ↧ 2.5",
        [THRU, ASSUMED],
        ["a depth or an angle? the degree sign may be lost", "angle is not told", ASSUMED],
      ],
      [
        "⌀5 THRU ⌵ ⌀10 x 180°",
        [THRU, ASSUMED],
        ["an angle of 180°: is that so?", "countersink 180°", NO_DEPTH, ASSUMED],
      ],
      [
        "⌀5 THRU ⌵ ⌀5 x 90°",
        [THRU, ASSUMED],
        ["the countersink is not larger than its hole: is that so?", "countersink 90°", NO_DEPTH, ASSUMED],
      ],
      ["⌀9 THRU ⌴ ↧ 5", [THRU, ASSUMED], ["diameter is not told", ASSUMED]],
      ["9999X 11X ⌀6 ↧ 10", ["quantity not understood", "quantity 9999 × 11 = 109989", ASSUMED]],
      ["5000X 20X ⌀6 ↧ 10", ["100000 of them: is that so?", "quantity 5000 × 20 = 100000", ASSUMED]],
      ["4X ⌀6 ↧ 10 (3)", ["4 in front and 3 behind: how many?", "quantity 4 × 3 = 12", ASSUMED]],
      ["(⌀6 ↧ 10)", [BRACKETS, ASSUMED]],
      ["⌀6 ↧ 10 (", ["a bracket is not closed", ASSUMED]],
      ["⌀6 ↧ 10 )", ["a bracket is not opened", ASSUMED]],
      ["⌀8 ↧ 10 ⌀8 ↧ 10", ...two(["the same hole is written twice: once, or two of them?", ASSUMED])],
      ["⌀10.00\n⌀10.05", ...two([PAIR, NO_DEPTH, ASSUMED])],
      ["↧ 10", ["not understood: no hole, thread or seat with a size was found"]],
      [
        "M8 ↧ 16 INSERT",
        [
          // 8 + 1.29904·1.25 and, H being √3/2·1.25, 5/4·H less
          "M8×1.25-6H for a wire insert: its hole has a larger thread (major ⌀ at least 9.624 mm, minor ⌀ at least 8.271 mm; ASME B18.29.1 and DIN 8140, from memory: check), not planned",
          STATED,
        ],
      ],
    ],
    false,
  );
});

describe("what is said of units where the drawing does not tell", () => {
  says(
    {},
    [
      ["⌀.201 ↧ .5", [INCHES]],
      ["#7 DRILL ↧ .5", ["drill #7", INCHES]],
      ["#7 DRILL ↧ .6, 1/4-20 ↧ .5", ["drill #7", INCHES], [INCHES]],
      ["⌀0.25 in ↧ 1/2", [INCHES]],
      ["⌀6,6 ↧ 10", [METRIC]],
      ["⌀6 mm ↧ 10", [METRIC]],
      ["M8 ↧ 16", [TAP_DRILL, DEEPER(18.5), CLASS], [DEEPER(18.5), CLASS]],
      ["⌀12 H12 ↧ 20", [lopsided("limits 12 to 12.18 (H12, ISO 286)"), CLASS]],
      ["1/4-20 UNC-2B THRU", [TAP_DRILL, THRU, SYSTEM], [THRU, SYSTEM]],
      ["1/4-20 UNC-2B ↧ .5", [TAP_DRILL, DEEPER(0.6), INCHES], [DEEPER(0.6), INCHES]],
      ["M8 ↧ .75", ...both(`${INCHES}; its thread or class is mm`, DEEPER(0.84842519685))],
      ["1/4-20 UNC-2B ↧ 12,5", ...both(`${METRIC}; its thread or class is in`, DEEPER(15.04))],
      ["⌀6 mm ↧ 1/2", ["inch and mm sizes in one callout: converted"]],
      ["⌀1/2 ↧ 12 mm", ["inch and mm sizes in one callout: converted"]],
    ],
    true,
  );
  const MIXED = "units not understood: some numbers look like inches, others like mm";
  says(
    {},
    [
      ["⌀6 mm ↧ .5", [MIXED]],
      ["⌀6,5 ↧ .5", [MIXED]],
      ["⌀6 mm ↧ 1/2, 2X ⌀5 ↧ 3", [MIXED], [MIXED]],
      ["M6 ↧ 6,5, ⌀5 ↧ .5", [MIXED], [MIXED]],
      ["⌀6 ↧ 10", ["units not told: nothing in the callout says mm or in"]],
      ["⌀12 ±0 ↧ 10", ["tolerance not understood", "units not told: nothing in the callout says mm or in"]],
      ["G1/4 THRU", ...[[TAP_DRILL], []].map((first) => [...first, THRU, "units not told; say mm or in"])],
    ],
    false,
  );
  it("holds the sizes of the system that is said", () => {
    const sizes = (text: string, units?: "mm" | "in") => {
      const { cells } = readCallouts(text, { units }).rows[0]!;
      return [cells.Units, cells["Finish diameter"], cells.Depth];
    };
    expect(sizes("⌀6 mm ↧ 1/2")).toEqual(["mm", 6, 12.7]);
    expect(sizes("⌀1/2 ↧ 12.7 mm")).toEqual(["in", 0.5, 0.5]);
    expect(sizes("⌀25.4 mm ↧ 1", "in")).toEqual(["in", 1, 1]);
    expect(sizes("⌀1/2 ↧ 10", "mm")).toEqual(["mm", 12.7, 10]);
  });
});

describe("what is said where the numbers speak against the drawing", () => {
  says(
    metric,
    [
      ["⌀1/4 ↧ 1/2", [INCHES]],
      ["⌀.25 ↧ .5", ["in: written as in on a drawing in mm"]],
      ["⌀.75 ↧ .5", ["in: written as in on a drawing in mm"]],
    ],
    true,
  );
  says(
    { units: "in" },
    [
      ["⌀6 mm THRU", [THRU, METRIC]],
      ["⌀6 mm ↧ 1", ["in assumed: the callout does not tell"]],
      // A depth of 20 in is no common work.
      ["⌀6,5 ↧ 20", ["mm: written as mm on a drawing in in"]],
    ],
    true,
  );
  const which = (units: string, rival: string) => `written as ${rival} on a drawing in ${units}: which is it?`;
  says({ units: "in" }, [["⌀0,5 THRU", [which("in", "mm"), THRU, "in: the units stated for the drawing"]]], false);
  says(metric, [["⌀.75 ↧ 5", [which("mm", "in"), STATED]]], false);
  it("asks where the drawing itself says so", () => {
    const { rows } = readCallouts("DIMENSIONS IN MM\n\n⌀.75 ↧ .5");
    expect(rows.map(({ note, understood }) => [note, understood])).toEqual([
      [`${which("mm", "in")}; ${STATED}`, false],
    ]);
  });
  it("asks where the drawing says one and the other", () => {
    const { rows } = readCallouts("DIMENSIONS IN MM\n\nDIMENSIONS IN INCHES\n\n⌀6 ↧ 5");
    expect(rows.map(({ note }) => note)).toEqual(["units not told: nothing in the callout says mm or in"]);
  });
});

describe("what is said of a part whose thickness is known", () => {
  const given = (thickness: CalloutOptions["thickness"]) => ({ ...metric, thickness });
  says(given({ value: 12, units: "mm" }), [["⌀6 THRU", ["through: Depth is the thickness given, 12", ASSUMED]]], true);
  says(
    given({ value: 0.5, units: "in" }),
    [
      ["⌀6 THRU", ["through: Depth is the thickness given, 12.7", ASSUMED]],
      [
        "M8 THRU",
        [TAP_DRILL, "through: Depth is the thickness given, 12.7", STATED],
        ["through: Depth is the thickness given, 12.7", STATED],
      ],
    ],
    true,
  );
});

describe("lists of callouts and long ones", () => {
  const rows = (text: string) => readCallouts(text, metric).rows;
  it.each(["12. ", "12) ", "100. ", "3.", "a) ", "b. ", "7\t", "100\t", "- ", "• ", "> ", "> - ", ">> 12. "])(
    "takes %j before a callout for its place in a list",
    (bullet) => {
      expect(
        rows(`${bullet}⌀6 ↧ 10`).map(({ cells }) => [cells.Operation, cells["Finish diameter"], cells.Depth]),
      ).toEqual([["drill", 6, 10]]);
      expect(rows(`${bullet}⌀6 ↧ 10`)[0]!.understood).toBe(true);
    },
  );
  it.each(["12. ", "100) ", "a) ", "7\t", "• "])("keeps what stands behind %j from the callout above", (bullet) => {
    expect(rows("⌀9 THRU\n⌴ ⌀15 ↧ 9")[1]!.cells["Start diameter"]).toBe(9);
    expect(rows(`⌀9 THRU\n${bullet}⌴ ⌀15 ↧ 9`)[1]!.cells["Start diameter"]).toBeNull();
  });
  it("does not let the quote marks of a letter do so", () =>
    expect(rows("> ⌀9 THRU\n> ⌴ ⌀15 ↧ 9")[1]!.cells["Start diameter"]).toBe(9));
  it.each(["1000. ", "ab) ", "(4) "])("does not take %j for one", (text) => {
    const [row] = rows(`${text}⌀6 ↧ 10`);
    if (text === "(4) ") expect(row!.cells.Quantity).toBe(4);
    else expect(row!.understood).toBe(false);
  });
  it("reads a line of 500 characters, blanks counted once, and no longer one", () => {
    const line = (n: number) => `⌀6 ${",".repeat(n - 8)} THRU`;
    expect(line(500)).toHaveLength(500);
    expect(rows(line(500))[0]!.cells.Operation).toBe("drill");
    expect(rows(`  ${line(500)}  `)[0]!.cells.Operation).toBe("drill");
    expect(rows(`⌀6 ${" ".repeat(600)} THRU`)[0]!.cells.Operation).toBe("drill");
    const [long, ...more] = rows(line(501));
    expect(more).toEqual([]);
    expect([long!.cells.Operation, long!.note]).toEqual([null, "not understood: too long for a callout"]);
  });
  it("stacks twelve lines and no more", () => {
    const stack = (lines: number) => ["⌀6 ↧ 10", ...Array.from({ length: lines - 1 }, () => "TYP")].join("\n");
    expect(rows(stack(12)).map(({ note }) => note)).toEqual([`${TYP}; ${ASSUMED}; lines 1 to 12 read as one callout`]);
    expect(rows(stack(13)).map(({ source }) => source.line)).toEqual([1, 13]);
  });
  it("joins a quantity on a line of its own to the hole below that has none", () => {
    const quantities = (text: string) => rows(text).map(({ cells }) => cells.Quantity);
    expect(quantities("4X\n⌀6 ↧ 10")).toEqual([4]);
    // The first line stands alone, and is not understood.
    for (const text of ["4X\n2X ⌀6 ↧ 10", "4X\n⌀6 ↧ 10 2 HOLES"]) expect(quantities(text)).toEqual([undefined, 2]);
  });
  it("speaks of its lines where they stand, and of their number in the remark", () => {
    const [row] = rows("⌀8 ↧ 5\n\n⌀6 ↧ 10\nTYP").slice(1);
    expect(row!.source).toEqual({ line: 3, text: "⌀6 ↧ 10\nTYP" });
    expect(row!.note).toContain("lines 3 to 4 read as one callout");
    expect(row!.cells.Remark).toBe(`${TYP}; ${ASSUMED}; 2 lines read as one callout`);
    expect(row!.cells.Feature).toBe("⌀6 ↧ 10 · TYP");
  });
});

describe("reamers that are kept (common practice)", () => {
  const operations = (text: string, units: "mm" | "in" = "mm") =>
    readCallouts(text, { units }).rows.map(({ cells }) => cells.Operation);
  it.each(["⌀2 H7 ↧ 5", "⌀14 H7 ↧ 20", "⌀18 H7 ↧ 20", "⌀12 H8 ↧ 20", "⌀12 H9 ↧ 20"])(
    "%s is drilled and reamed",
    (text) => expect(operations(text)).toEqual(["drill", "ream"]),
  );
  it.each([
    "⌀1 H7 ↧ 3",
    "⌀21 H7 ↧ 20",
    "⌀25 H7 ↧ 20",
    "⌀12.5 H7 ↧ 20",
    "⌀12 H6 ↧ 20",
    "⌀12 H10 ↧ 20",
    "⌀12 F7 ↧ 20",
    "BORE ⌀12 H7 ↧ 20",
  ])("%s is bored", (text) => expect(operations(text)).toEqual(["bore"]));
  it("has none for whole inches", () => expect(operations("⌀2 H7 ↧ 2", "in")).toEqual(["bore"]));
  it("drills deeper by the lead, a fifth of the diameter, but not where it goes through", () => {
    const depths = (text: string) => readCallouts(text, metric).rows.map(({ cells }) => cells.Depth);
    expect(depths("⌀12 H7 ↧ 20")).toEqual([22.4, 20]);
    expect(depths("⌀12 H7 THRU")).toEqual([null, null]);
  });
  it("drills on both sides what is reamed on both", () => {
    const { rows } = readCallouts("3X ⌀12 H7 ↧ 20 BOTH SIDES", metric);
    expect(rows.map(({ cells }) => cells.Quantity)).toEqual([6, 6]);
  });
});

describe("hands of threads", () => {
  const hands = (text: string) =>
    readCallouts(text, metric).rows.map(({ cells }) => [cells.Operation, cells.Hand ?? null]);
  it.each<[string, string | null]>([
    ["M6 ↧ 12", null],
    ["M6 ↧ 12 LH", "left"],
    ["M6 ↧ 12 LEFT HAND", "left"],
    ["M6 ↧ 12 RIGHT HAND", "right"],
  ])("%s", (text, hand) =>
    expect(hands(text)).toEqual([
      ["drill", null],
      ["thread mill", hand],
    ]),
  );
});

describe("what is there before a cut", () => {
  const starts = (text: string) =>
    readCallouts(text, metric).rows.map(({ cells }) => [
      cells.Operation,
      cells["Finish diameter"],
      cells["Start diameter"],
    ]);
  it("is the hole under a seat, a reamer or a bore", () => {
    expect(starts("⌀9 THRU ⌴ ⌀15 ↧ 9")[1]).toEqual(["counterbore", 15, 9]);
    expect(starts("⌀5 THRU, ⌀8 THRU, ⌴ ⌀15 ↧ 9")[2]).toEqual(["counterbore", 15, 8]);
    expect(starts("⌀16 THRU, ⌴ ⌀15 ↧ 9")[1]![2]).toBeNull();
  });
  it("is nothing for a drill, nor for a boss round a hole", () => {
    expect(starts("⌀8.5 ↧ 10, ⌀5 ↧ 20")).toEqual([
      ["drill", 8.5, null],
      ["drill", 5, null],
    ]);
    expect(starts("BOSS ⌀20, ⌀6 THRU")).toEqual([
      ["boss", 20, null],
      ["drill", 6, null],
    ]);
  });
});
