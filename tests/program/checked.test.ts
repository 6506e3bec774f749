/** What is told of a whole program: reading in slices, the same difference in several features, what is missing, what is left over. */
import { describe, expect, it } from "vitest";
import { ProgramCheck } from "../../src/program/check.ts";
import type { Finding } from "../../src/program/findings.ts";
import type { Made } from "../../src/program/made.ts";
import type { RowFacts } from "../../src/program/types.ts";
import { ARC, DRILL, ROUND, rowOf, SIDE, SLOT, THREAD } from "./by-hand.ts";

const START = "G21 G90 G94\nT1 M6\nS1000 M3\n";
/** A hole at X by a cycle, to a bottom. */
const hole = (x: number, z = -12, f = 200) => `G0 X${x} Y0 Z5\nG81 X${x} Z${z.toFixed(3)} R2. F${f}\nG80\n`;
/** A full circle about (x, 0) at Z-8 on a radius. */
const circle = (
  x: number,
  { r = 10, z = -8, z1 = z, g = 3, f = 200 }: Partial<Record<"r" | "z" | "z1" | "g" | "f", number>> = {},
) =>
  `G0 X${x} Y0 Z5\nG1 Z${z.toFixed(3)} F${f}\nG1 X${(x + r).toFixed(3)}\nG${g} I${(-r).toFixed(3)} J0 Z${z1.toFixed(3)}\nG1 X${x}\nG0 Z5\n`;
const drill = (more: Partial<RowFacts> = {}) => rowOf(DRILL, { name: "drill", ...more });
const bore = (more: Partial<RowFacts> = {}) => rowOf(ROUND, { name: "bore", ...more });

const find = (text: string, ...rows: RowFacts[]) => new ProgramCheck(text, rows).findings();
const brief = (list: readonly Finding[]) =>
  list.map((f) => [f.row?.name ?? "-", f.code, ...("what" in f ? [f.what] : []), f.severity].join(" "));
const told = (text: string, ...rows: RowFacts[]) => brief(find(text, ...rows));

describe("rows and what is made of them", () => {
  it("as planned, with how many and the first line", () => {
    expect(find(START + hole(0) + hole(20), drill({ quantity: 2 }))).toMatchObject([
      { code: "same", severity: "ok", line: 5, number: 2, wanted: 2, row: { name: "drill" } },
    ]);
    expect(find(`${START}${circle(0)}`, bore())).toMatchObject([{ code: "same", number: 1, wanted: 1 }]);
    // straight cuts are not counted
    const slot = [-2, -4, -6].map((z) => `G0 X-4 Y0 Z5\nG0 Z${z}.0\nG1 X40 F200\nG0 Z5\n`).join("");
    expect(find(START + slot, rowOf(SLOT, { quantity: 3 }))).toMatchObject([{ code: "same", number: 1, wanted: 1 }]);
  });
  it("not made at all: wanted as many as the row has, or one run of cuts", () => {
    expect(find(`${START}G0 X1.\n`, drill({ quantity: 3 }))).toEqual([
      { code: "not-in-program", what: "row", severity: "check", row: expect.anything(), found: 0, wanted: 3 },
    ]);
    for (const [shape, wanted] of [
      [THREAD, 3],
      [ROUND, 3],
      [SLOT, 1],
      [SIDE, 1],
    ] as const)
      expect(find(`${START}G0 X1.\n`, rowOf(shape, { quantity: 3 }))).toMatchObject([
        { code: "not-in-program", wanted },
      ]);
  });
  it("a plan that is not whole is said, not compared", () => {
    expect(told(START + hole(0), rowOf(undefined, { name: "x" }), drill())).toEqual([
      "x unreadable plan check",
      "drill same ok",
    ]);
  });
  it("fewer than planned, unless all rows are made at one place", () => {
    expect(told(START + hole(0) + hole(20), drill({ quantity: 3 }))).toEqual(["drill not-in-program some check"]);
    expect(find(START + hole(0) + hole(20), drill({ quantity: 3 }))).toMatchObject([{ line: 5, found: 2, wanted: 3 }]);
    expect(find(START + hole(0), drill({ quantity: 3 }))).toMatchObject([{ code: "same", number: 1, wanted: 3 }]);
    // one row has two of three: so the program is for all places, and the other lacks two
    expect(told(START + hole(0) + hole(20) + circle(0), drill({ quantity: 3 }), bore({ quantity: 3 }))).toEqual([
      "drill not-in-program some check",
      "bore not-in-program some check",
    ]);
    expect(told(START + hole(0) + circle(0), drill({ quantity: 3 }), bore())).toEqual([
      "drill same ok",
      "bore same ok",
    ]);
    // a row that is not made says nothing of that
    expect(told(START + hole(0), drill({ quantity: 3 }), bore({ quantity: 2 }))).toEqual([
      "drill same ok",
      "bore not-in-program row check",
    ]);
  });
  it("a difference is told once, with how many features it is in", () => {
    const two = find(START + hole(0) + hole(20, -12, 250) + hole(40, -12, 240), drill({ quantity: 3 }));
    expect(two).toMatchObject(
      [{ code: "feed", what: "value", line: 8, count: [2, 3], found: 240 }].map(
        ({ found: _, line: __, ...rest }) => rest,
      ),
    );
    const more = find(START + hole(0, -13) + hole(20, -13, 250), drill({ quantity: 2 }));
    expect(more.map((f) => [f.code, f.count])).toEqual([
      ["depth", [2, 2]],
      ["feed", [1, 2]],
    ]);
    // two kinds of one code are two
    expect(told(START + hole(0, -13) + hole(20, -11), drill({ quantity: 2 })).sort()).toEqual([
      "drill depth deep check",
      "drill depth shallow check",
    ]);
  });
  it("of every kind are compared by their own rules", () => {
    const lines = (z: number) => `G0 X-4 Y4 Z5\nG0 Z${z.toFixed(3)}\nG1 X40 F200\nG0 Z5\n`;
    const side = rowOf({ ...SIDE, offsets: [4], springs: 0 });
    expect([told(START + lines(-6), side), told(START + lines(-6.1), side)]).toEqual([
      ["1 same ok"],
      ["1 depth deep check"],
    ]);
    const arc = (z: number) => `G0 X10. Y0 Z5\nG0 Z${z.toFixed(3)}\nG2 X0 Y-10. I-10. J0 F200\nG0 Z5\n`;
    expect([told(START + arc(-6), rowOf(ARC)), told(START + arc(-6.1), rowOf(ARC))]).toEqual([
      ["1 same ok"],
      ["1 depth deep check"],
    ]);
    const helix = (z: number) =>
      `${START}G0 X0 Y0 Z5\nG1 Z${z.toFixed(3)} F200\nG1 X3.\nG3 I-3. J0 Z${(z + 1).toFixed(3)}\nG3 I-3. J0 Z${(z + 2).toFixed(3)}\nG3 X0 Y3. I-3. J0 Z${(z + 2.25).toFixed(3)}\nG1 X0 Y0\nG0 Z5\n`;
    const thread = rowOf({ ...THREAD, radii: [3] });
    expect([told(helix(-2.75), thread), told(helix(-3.25), thread)]).toEqual([
      ["1 same ok"],
      ["1 depth deep check", "1 depth top check"],
    ]);
  });
  it("is as planned also where something harmless is told", () => {
    const twice = START + circle(0).replace("G1 X0\n", "G1 X9\nG1 X10\nG3 I-10 J0\nG1 X0\n");
    expect(told(twice, bore())).toEqual(["bore same ok", "bore passes more ok"]);
  });
  it("the first thing that is made of a row is known after the comparison", () => {
    const row = drill({ quantity: 2 });
    const check = new ProgramCheck(START + hole(0, -12.1) + hole(20), [row, bore()]);
    expect(check.madeOf(row)).toBeUndefined();
    check.findings();
    expect((check.madeOf(row) as Made & { x: number }).x).toBe(20);
    expect(check.madeOf(bore())).toBeUndefined();
  });
  it("the hole under a reamer is looked for, and under each of them", () => {
    const ream = rowOf(
      { ...DRILL, what: "ream", diameter: 8, bottoms: [-10], point: 0 },
      { name: "ream", quantity: 2, rpm: 300, feed: 60 },
    );
    const reamed = "T2 M6\nS300 M3\nG0 X0 Y0 Z5\nG85 X0 Z-10.000 R2. F60\nX20\nG80\n";
    expect(told(START + hole(0) + hole(20) + reamed, drill({ quantity: 2 }), ream)).toEqual([
      "drill same ok",
      "ream same ok",
    ]);
    const beside = find(START + hole(0) + hole(30) + reamed, drill({ quantity: 2 }), ream);
    expect(brief(beside)).toEqual(["drill same ok", "ream hole none check"]);
    expect(beside[1]).toMatchObject({ x: 20, count: [1, 2] });
    expect(find(START + hole(10) + hole(30) + reamed, drill({ quantity: 2 }), ream)[1]).toMatchObject({
      count: [2, 2],
    });
  });
});

describe("what is left over", () => {
  it("a whole multiple of a row is another part, any other number is one too many", () => {
    const made = (n: number) =>
      find(START + Array.from({ length: n }, (_, k) => hole(20 * k)).join(""), drill({ quantity: 2 })).at(-1);
    expect(made(2)).toMatchObject({ code: "same" });
    expect(made(3)).toMatchObject({
      code: "not-in-plan",
      what: "more",
      severity: "check",
      number: 1,
      size: 2,
      pitch: 0,
      line: 11,
    });
    expect(made(4)).toMatchObject({ code: "not-in-plan", what: "more", severity: "ok", number: 2, line: 11 });
  });
  it("a hole, deeper than 3 mm or a spot", () => {
    // of another kind than the row: far from its depth, speed and feed
    const other = (z: number) =>
      find(`${START}${circle(0)}T3 M6\nS9000\n${hole(90, z, 3000)}${hole(99, z, 3000)}`, bore());
    expect(other(-60)).toMatchObject([
      { code: "same" },
      { what: "hole", severity: "check", number: 2, size: -60, pitch: 0, line: 13 },
    ]);
    expect([-3, -2.99].map((z) => other(z)[1]!.severity)).toEqual(["check", "ok"]);
  });
  it("turns that rise, or all of which fall, are a thread; others are circles", () => {
    const kind = (...texts: string[]) => find(`${START}${texts.join("")}`)[0]!;
    expect(kind(circle(0, { z: -8, z1: -6.5 }))).toMatchObject({
      what: "thread",
      size: 10,
      pitch: 1.5,
      number: 1,
      line: 7,
    });
    expect(kind(circle(0, { z: -6.5, z1: -8 }))).toMatchObject({ what: "thread", pitch: 1.5 });
    expect(kind(circle(0))).toMatchObject({ what: "circle", size: 10, pitch: 0 });
    const solid = "G0 X0 Y0 Z5\nG1 Z0 F200\nG1 X10.\nG3 I-10. J0 Z-8.\nG3 I-10. J0\nG1 X0\nG0 Z5\n";
    expect(kind(solid)).toMatchObject({ what: "circle", pitch: 8 });
    expect(kind(circle(0, { r: 9 }), circle(0))).toMatchObject({ size: 10 });
  });
  it("stands behind the rows, in the order of the program", () => {
    const text = `${START}${hole(300, -60, 3000)}${circle(0)}${hole(400, -70, 3000)}`;
    const list = find(text, rowOf(SLOT, { name: "slot" }));
    expect(brief(list)).toEqual([
      "slot not-in-program row check",
      "- not-in-plan hole check",
      "- not-in-plan circle check",
      "- not-in-plan hole check",
    ]);
    expect(list.slice(1).map((f) => f.line)).toEqual([5, 10, 14]);
  });
});

describe("reading", () => {
  it("goes on in slices and says how far it is", () => {
    const check = new ProgramCheck("G21\nG0 X1.\nG0 X2.", []);
    expect([check.progress, check.done]).toEqual([0, false]);
    expect(check.advance(1)).toBe(true);
    expect(check.progress).toBe(4 / 17);
    expect([check.advance(1), check.advance(1), check.done, check.progress]).toEqual([true, true, false, 1]);
    expect([check.advance(1), check.done, check.progress]).toEqual([false, true, 1]);
    expect(check.advance()).toBe(false);
    const none = new ProgramCheck("\u0000", []);
    expect([none.done, none.progress, none.advance(1)]).toEqual([true, 1, false]);
  });
  it("ends with M30 and with what is refused; what stands behind is not read", () => {
    expect(told(`${START}${hole(0)}M30\n${hole(20)}R1=5\n`, drill())).toEqual(["drill same ok"]);
    for (const [text, line, why] of [
      [`${START}R1=5\n`, 4, "variable"],
      [`${START}G68 X0 Y0 R5\nG0 X1.\n`, 4, "turned"],
      ["G65 P1\n", 1, "macro"],
      // of two the first
      [`${START}G68 X0 Y0 R5\nG69\nG68 X0 Y0 R9\n`, 4, "turned"],
    ] as const)
      expect(find(text, drill())).toEqual([
        { code: "unreadable", what: "refused", severity: "stop", line, refusal: expect.objectContaining({ why }) },
      ]);
    expect(find("", drill())).toEqual([
      { code: "unreadable", what: "refused", severity: "stop", line: undefined, refusal: { why: "empty" } },
    ]);
    expect(find("(nothing)\n%\n", drill())).toEqual([
      { code: "unreadable", what: "refused", severity: "stop", refusal: { why: "no-words" } },
    ]);
  });
  it("a heading in the first line is no word; a name in the second is, and so is one beside words", () => {
    const named = (text: string) =>
      find(text).flatMap((f) => (f.code === "unreadable" && f.what === "words" ? f.words.map((w) => w.word) : []));
    expect([
      named("BLOCK\nG21\nG0 X1."),
      named("G21\nBLOCK\nG0 X1."),
      named("G21 BLOCK\nG0 X1."),
      named("\nBLOCK\nG21\nG0 X1."),
    ]).toEqual([...[[], ["BLOCK"], ["BLOCK"], ["BLOCK"]]]);
  });
  it("names eight words and counts the rest; builders' own M codes are harmless", () => {
    const words = (n: number, letter = "G") =>
      find(`G21\nG0 X1.\n${Array.from({ length: n }, (_, k) => `${letter}${200 + k}\n`).join("")}`);
    expect(words(8)).toMatchObject([{ what: "words", severity: "check", line: 3, more: 0, words: Array(8).fill({}) }]);
    expect(words(10)).toMatchObject([{ more: 2, words: Array(8).fill({ count: 1 }) }]);
    expect(words(2, "M")).toMatchObject([{ severity: "ok", line: 3 }]);
    expect(told("G21\nG0 X1.\nM200\nG200\n")).toEqual(["- unreadable words check", "- unreadable words ok"]);
  });
  it("tells each kind of trouble once, with the first line and how often", () => {
    const text = "G21\nG0 X10.\nG3 X5. Y5.\nM98 P1\nG3 X1. Y1.\nG3 X90. R1.\n";
    expect(find(text)).toMatchObject([
      { what: "trouble", severity: "stop", line: 3, number: 2, trouble: { what: "arc-centre" } },
      { what: "trouble", severity: "check", line: 4, number: 1, trouble: { what: "subprogram" } },
      { what: "trouble", severity: "stop", line: 6, number: 1, trouble: { what: "arc-radius" } },
    ]);
    expect(find("G21\nG0 X10.\nG3 X0 Y6. I-5.\n")).toMatchObject([{ severity: "stop", trouble: { what: "arc" } }]);
  });
  it("takes the units of the table where the program says none: of the first row that has a shape", () => {
    const units = (...rows: RowFacts[]) =>
      find("G0 X1.\n", ...rows).flatMap((f) => (f.code === "unreadable" && f.what === "units" ? [f.units] : []));
    const inch = { units: "in" as const };
    expect([
      units(),
      units(drill()),
      units(drill(inch)),
      units(rowOf(undefined), drill(inch)),
      units(rowOf(undefined, inch), drill()),
    ]).toEqual([...[["mm"], ["mm"], ["in"], ["in"], ["mm"]]]);
    expect(units(rowOf(undefined, inch))).toEqual(["in"]);
    expect(told("G21\nG0 X1.\n")).toEqual([]);
    // nothing moves: that alone is said
    expect(told("M3 S5\n")).toEqual(["- unreadable no-moves stop"]);
  });
  it("says in which units increments count, and what else it assumed", () => {
    const increments = (text: string, ...rows: RowFacts[]) =>
      find(text, ...rows).flatMap((f) => (f.code === "unreadable" && f.what === "increments" ? [f.units] : []));
    expect([
      increments("G0 X10000\n"),
      increments("G20\nG0 X10000\n"),
      increments("G0 X10000\n", drill({ units: "in" })),
      increments("G0 X10.\n"),
    ]).toEqual([...[["mm"], ["in"], ["in"], []]]);
    expect(told("G20\nG0 X1.\nG21\nG0 X2.\n/G0 X3.\n")).toEqual([
      "- unreadable both-units ok",
      "- unreadable skippable ok",
    ]);
    expect(told("G21\nG0 X15. Y0 Z5.\nG3 X10. Y5. I10. J0\n")).toEqual(["- unreadable absolute-centres ok"]);
  });
});
