/** What is said of each finding: its numbers in the row's units, one and many, and what an odd number hints at. */
import { describe, expect, it } from "vitest";
import type { Finding } from "../../src/program/findings.ts";
import { report } from "../../src/program/report.ts";
import { ROUND, rowOf } from "./by-hand.ts";

const say = (finding: object, units: "mm" | "in" = "mm") =>
  report([{ severity: "check", ...finding } as Finding], units)[0]!.text;

describe("lines", () => {
  it("have block, row, severity, code and sentence; what is the same has no code", () => {
    const row = rowOf(ROUND, { name: "7" });
    expect(report([{ code: "direction", what: "spindle", severity: "stop", line: 4, row } as Finding], "mm")).toEqual([
      { block: 4, row: "7", severity: "stop", code: "direction", text: expect.stringContaining("M4") },
    ]);
    expect(report([{ code: "same", severity: "ok", number: 1, wanted: 1 } as Finding], "mm")).toEqual([
      { block: undefined, row: "", severity: "ok", code: "", text: "as planned" },
    ]);
  });
  it("say in how many features it is, where not in all", () => {
    const of = (count?: [number, number]) => say({ code: "direction", what: "spindle", count });
    expect(of([1, 3])).toBe(`${of()} (in 1 of 3)`);
    expect(of([3, 3])).toBe(of());
  });
  it("write lengths, changes and feeds in the row's units, else in those asked for", () => {
    const pitch = { code: "pitch", what: "turn", found: 1.27, wanted: 2.54 };
    expect(say(pitch)).toMatch(/1\.27 mm .* 2\.54 mm$/);
    expect(say(pitch, "in")).toMatch(/0\.05 in .* 0\.1 in$/);
    expect(say({ ...pitch, row: rowOf(ROUND, { units: "in" }) })).toMatch(/0\.05 in/);
    // three places of a millimetre, four of an inch; feeds whole, or to a tenth of an inch
    expect(say({ ...pitch, found: 1.23456 })).toMatch(/ 1\.235 mm/);
    expect(say({ ...pitch, found: 1.23456 }, "in")).toMatch(/ 0\.0486 in/);
    const feed = { code: "feed", what: "value", found: 123.45, wanted: 246.9 };
    expect(say(feed)).toMatch(/F 123 mm\/min.* 247 mm\/min \(50 %\)/);
    expect(say(feed, "in")).toMatch(/F 4\.9 in\/min/);
    expect(say({ code: "speed", what: "value", found: 999.6, wanted: 2000 })).toMatch(/S 1000 rpm.* 2000 rpm \(50 %\)/);
    expect(say({ code: "depth", what: "deep", found: Number.NaN, wanted: -1 })).toContain("Z ?");
  });
});

describe("radius", () => {
  const radius = (found: number, more: object = {}) =>
    say({
      code: "radius",
      found,
      wanted: 10,
      change: 2 * (found - 10),
      thread: false,
      contour: false,
      within: undefined,
      ...more,
    });
  it("that is twice or half of the plan's hints at a diameter", () => {
    expect(
      [radius(20), radius(20.09), radius(19.91)].every((t) =>
        t.includes("the diameter stands where the radius belongs"),
      ),
    ).toBe(true);
    expect([radius(20.11), radius(19.89)].some((t) => t.includes("the diameter stands"))).toBe(false);
    expect([radius(5), radius(5.04), radius(4.96)].every((t) => t.includes(": half of it"))).toBe(true);
    expect([radius(5.06), radius(4.94), radius(20)].some((t) => t.includes("half of it"))).toBe(false);
  });
  it("says what it changes, with its sign, and whether that is inside the limits", () => {
    expect(radius(10.25)).toBe("path radius 10.25 mm; the plan's is 10 mm. The diameter changes by +0.5 mm");
    expect(radius(9.75, { thread: true, within: true })).toBe(
      "path radius 9.75 mm; the plan's is 10 mm. The pitch diameter changes by -0.5 mm, within its limits",
    );
    expect(radius(9.75, { contour: true, within: false })).toMatch(/^contour radius .*, outside its limits$/);
  });
});

describe("one and many", () => {
  it.each([
    [{ code: "passes", what: "missing", found: 1, wanted: 3 }, /^1 pass; the plan takes 3/],
    [{ code: "passes", what: "missing", found: 2, wanted: 3 }, /^2 passes; the plan takes 3/],
    [{ code: "passes", what: "springs", found: 0, wanted: 2 }, /^no spring pass; the plan takes 2$/],
    [{ code: "passes", what: "springs", found: 1, wanted: 2 }, /^1 spring pass; /],
    [{ code: "passes", what: "springs", found: 2, wanted: 3 }, /^2 spring passes; /],
    [{ code: "passes", what: "more", found: 4, wanted: 3 }, /^4 passes; the plan has 3$/],
    [{ code: "passes", what: "pecks", found: 1, wanted: 1 }, /takes 1 peck$/],
    [{ code: "passes", what: "pecks", found: 1, wanted: 4 }, /takes 4 pecks$/],
    [{ code: "passes", what: "cuts", found: 1, wanted: 4 }, /^1 cut; the plan takes 4$/],
    [
      { code: "passes", what: "step", found: 0.5, wanted: 0.3 },
      /0\.5 mm further in; the plan's largest step is 0\.3 mm/,
    ],
    [{ code: "depth", what: "levels", found: 1, wanted: 2 }, /^1 level of .* takes 2$/],
    [{ code: "depth", what: "levels", found: 2, wanted: 3 }, /^2 levels of .* takes 3$/],
    [{ code: "not-in-plan", what: "hole", number: 1, size: -9, pitch: 0 }, /^hole to Z -9 mm: no row/],
    [{ code: "not-in-plan", what: "hole", number: 3, size: -9, pitch: 0 }, /^3 × hole to Z -9 mm: no row/],
    [
      { code: "not-in-plan", what: "thread", number: 2, size: 3, pitch: 1.5 },
      /^2 × helix on radius 3 mm with 1\.5 mm per turn: no row/,
    ],
    [{ code: "not-in-plan", what: "circle", number: 1, size: 3, pitch: 0 }, /^circle on radius 3 mm: no row/],
    [{ code: "not-in-plan", what: "more", number: 2, size: 3, pitch: 0 }, /^2 more than the row's 3$/],
    [{ code: "not-in-program", what: "some", found: 2, wanted: 3 }, /^2 of 3 are in the program$/],
    [{ code: "not-in-program", what: "row", found: 0, wanted: 3 }, /^nothing in the program is like this row/],
    [{ code: "same", number: 1, wanted: 1 }, /^as planned$/],
    [{ code: "same", number: 2, wanted: 2 }, /^as planned, 2 times$/],
    [{ code: "same", number: 1, wanted: 3 }, /^as planned; one of 3 is in the program/],
    [{ code: "same", number: 2, wanted: 3 }, /^as planned; 2 of 3 are in the program/],
    [
      { code: "unreadable", what: "skippable", number: 1 },
      /^1 block with a slash is read as if the machine did not skip it$/,
    ],
    [
      { code: "unreadable", what: "skippable", number: 2 },
      /^2 blocks with a slash are read as if the machine did not skip them$/,
    ],
    [
      { code: "unreadable", what: "trouble", number: 1, trouble: { what: "inverse-time", line: 1 } },
      /^feeds in inverse time \(G93\) are not compared$/,
    ],
    [
      { code: "unreadable", what: "trouble", number: 3, trouble: { what: "arc-centre", line: 1 } },
      /that tells it \(and 2 more\)$/,
    ],
  ] as const)("%j", (finding, wanted) => {
    expect(say(finding)).toMatch(wanted);
  });
  it("words that are passed over, with how often, and how many others", () => {
    const words = [
      { word: "A", line: 1, count: 1 },
      { word: "B", line: 1, count: 2 },
    ];
    const of = (more: number) => say({ code: "unreadable", what: "words", words, more });
    expect(of(0)).toMatch(/: A, B \(2 times\)$/);
    expect(of(4)).toMatch(/: A, B \(2 times\) and 4 others$/);
  });
});

describe("what is told of each", () => {
  it.each([
    [{ code: "hand", found: "left", wanted: "right" }, /^makes a left-hand thread; the plan wants right hand$/],
    [
      { code: "direction", what: "way", found: "climb", clockwise: true },
      /clockwise \(G2\).* climb milling here; the plan wants conventional$/,
    ],
    [
      { code: "direction", what: "way", found: "conventional", clockwise: false },
      /counter-clockwise \(G3\).* conventional milling here; the plan wants climb$/,
    ],
    [{ code: "pitch", what: "uneven", off: 0.1, wanted: 1 }, /not even.* 0\.1 mm \(pitch 1 mm\)/],
    [{ code: "pitch", what: "fall", found: 2, wanted: 1 }, /^falls 2 mm per turn into solid; the plan takes 1 mm/],
    [{ code: "pitch", what: "tap", found: 2, wanted: 1 }, /^feed and speed make a pitch of 2 mm/],
    [{ code: "pitch", what: "turn", found: 2, wanted: 1 }, /^Z moves 2 mm per turn/],
    [
      { code: "edge-feed", what: "edge", found: 400, wanted: 200, edge: 400 },
      /F 400 mm\/min is the feed of the edge; .* 200 mm\/min; at the cutter's centre that is 200 % of the feed$/,
    ],
    [{ code: "edge-feed", what: "contour", found: 400, wanted: 200, edge: 400 }, /right only where the control/],
    [
      { code: "edge-feed", what: "twice", found: 100, wanted: 200, edge: 400 },
      /twice: the edge wants 400 mm\/min, the cutter's centre 200 mm\/min/,
    ],
    [{ code: "feed", what: "none", wanted: 200 }, /does not tell a feed per minute here; the plan's is 200 mm/],
    [{ code: "speed", what: "stopped", wanted: 900 }, /does not turn here; the plan wants 900 rpm/],
    [
      { code: "speed", what: "over", found: 9000, wanted: 900, most: 8000, of: "machine" },
      /over the machine's limit of 8000 rpm/,
    ],
    [{ code: "depth", what: "shallow", found: -1, wanted: -2 }, /^ends at Z -1 mm; the plan goes to Z -2 mm$/],
    [{ code: "depth", what: "shallow", found: -1, wanted: -2, otherZero: true }, /distance from tip to profile/],
    [
      { code: "depth", what: "deep", found: -3, wanted: -2, otherZero: false },
      /^goes to Z -3 mm; the plan ends at Z -2 mm$/,
    ],
    [{ code: "depth", what: "top", found: -3, wanted: 1 }, /only reaches Z -3 mm at the face, the plan Z 1 mm/],
    [
      { code: "depth", what: "bottom", found: -3, wanted: -2 },
      /tip goes to Z -3 mm, below the bottom of the hole at Z -2 mm/,
    ],
    [{ code: "depth", what: "no-point", found: -3, wanted: -5 }, /without the drill's point; the plan goes to Z -5 mm/],
    [{ code: "depth", what: "not-through", found: -3, wanted: -5 }, /full diameter is through at Z -5 mm/],
    [{ code: "depth", what: "turn", found: 270.4, wanted: 360 }, /turns 270 degrees/],
    [{ code: "compensation", what: "side", found: 42, wanted: 41 }, /^G42 .* wants G41$/],
    [
      { code: "compensation", what: "contour-off", found: 15, wanted: 10 },
      /radius 15 mm\) and compensation is off.* radius 10 mm$/,
    ],
    [{ code: "compensation", what: "switched" }, /changes in the middle/],
    [{ code: "compensation", what: "wear-unused", wear: 0.02 }, /wear value of \+0\.02 mm/],
    [{ code: "compensation", what: "wear-unused", wear: -0.02 }, /wear value of -0\.02 mm/],
    [{ code: "hole", what: "none", x: 1, y: 2 }, /X 1 mm Y 2 mm/],
    [{ code: "hole", what: "later", drilled: 77 }, /only later, in block 77/],
    [{ code: "hole", what: "shallow", bottom: -3, tip: -4 }, /drilled to Z -3 mm; the tip goes to Z -4 mm/],
    [{ code: "unreadable", what: "units", units: "in" }, /taken as inches/],
    [{ code: "unreadable", what: "units", units: "mm" }, /taken as millimetres/],
    [{ code: "unreadable", what: "increments", units: "in" }, /0\.0001 in/],
    [{ code: "unreadable", what: "increments", units: "mm" }, /0\.001 mm/],
    [{ code: "unreadable", what: "both-units" }, /inches and blocks in millimetres/],
    [{ code: "unreadable", what: "absolute-centres" }, /centre's own position/],
    [{ code: "unreadable", what: "no-moves" }, /nothing moves/],
    [{ code: "unreadable", what: "plan" }, /complete the row first/],
    ...(
      [
        [{ why: "binary" }, /not text/],
        [{ why: "empty" }, /no block/],
        [{ why: "no-words" }, /ISO 6983/],
        [{ why: "long-text", characters: 31_000_000, most: 20_000_000 }, /31 million characters; at most 20 million/],
        [{ why: "long-block", line: 1, most: 2000 }, /2000 characters/],
        [{ why: "variable", line: 1, word: "R1=5" }, /"R1=5" computes/],
        [{ why: "decimal-comma", line: 1, word: "X1,5" }, /"X1,5" has a decimal comma/],
        [{ why: "turned", line: 1, word: "G68" }, /G68 turns/],
        [{ why: "macro", line: 1, word: "G65" }, /G65 runs a macro/],
      ] as const
    ).map(([refusal, wanted]) => [{ code: "unreadable", what: "refused", refusal }, wanted] as const),
    ...(
      [
        [{ what: "arc", startRadius: 3, endRadius: 4 }, /radius 3 mm where it starts, 4 mm where it ends/],
        [{ what: "arc-radius", radius: 2, chord: 10 }, /radius 2 mm joins points that are 10 mm apart/],
        [{ what: "subprogram", word: "M98" }, /M98 calls a subprogram/],
        [{ what: "plane", word: "G18" }, /plane G18/],
        [{ what: "shift", word: "G52" }, /G52 shifts/],
      ] as const
    ).map(([trouble, wanted]) => [{ code: "unreadable", what: "trouble", number: 1, trouble }, wanted] as const),
  ] as const)("%j", (finding, wanted) => {
    expect(say(finding)).toMatch(wanted);
  });
});
