/** Text to words: what ISO 6983 has as an address and its number, what stands beside it, and what is no program. */
import { describe, expect, it } from "vitest";
import { BlockReader, countsIncrements, MOST_CHARACTERS, refusedText } from "../../src/program/blocks.ts";
import { ProgramCheck } from "../../src/program/check.ts";

/** Every block as its line, its words, what is strange in it, and a slash where it may be skipped. */
function blocks(text: string) {
  const reader = new BlockReader(text);
  const list: string[] = [];
  for (let b = reader.next(); b !== undefined; b = reader.next()) {
    const words = b.letters.slice(0, b.count).map((letter, n) => `${letter}${b.values[n]}`);
    list.push([`${b.line}${b.skippable ? "/" : ""}`, ...words, ...b.strange.map((s) => `?${s}`)].join(" "));
  }
  return { list, refusal: reader.refusal };
}
const one = (text: string) => blocks(text).list[0]!.slice(2);

describe("what can be a program (judgement: see the limits in the code)", () => {
  it("is text of at most 20 million characters", () => {
    expect(refusedText("G1 X1".padEnd(MOST_CHARACTERS))).toBeUndefined();
    expect(refusedText("G1 X1".padEnd(MOST_CHARACTERS + 1))).toEqual({
      why: "long-text",
      characters: 20_000_001,
      most: 20_000_000,
    });
  });
  it("has no NUL in its first 4096 characters", () => {
    const at = (n: number) => refusedText(`${"G".repeat(n)}\u0000`);
    expect(at(0)).toEqual({ why: "binary" });
    expect(at(4095)).toEqual({ why: "binary" });
    expect(at(4096)).toBeUndefined();
  });
  it("has at most one character in fifty that no text has", () => {
    const such = (c: string, n: number) => refusedText(c.repeat(n) + "X".repeat(100 - n));
    for (const c of [
      "\u0001",
      "\u0004",
      "\u0008",
      "\u000b",
      "\u000c",
      "\u000e",
      "\u0019",
      "\u001b",
      "\u001f",
      "\ufffd",
    ]) {
      expect(such(c, 2), JSON.stringify(c)).toBeUndefined();
      expect(such(c, 3), JSON.stringify(c)).toEqual({ why: "binary" });
    }
    // start and end of a tape, end of a file, tabs, breaks, spaces and all above them are text
    for (const c of ["\u0002", "\u0003", "\t", "\n", "\r", "\u001a", " ", "!", "\ufffc"])
      expect(such(c, 60), JSON.stringify(c)).toBeUndefined();
    // the share is that of what was looked at
    expect(refusedText("\u0001".repeat(81) + "X".repeat(9000))).toBeUndefined();
    expect(refusedText("\u0001".repeat(82) + "X".repeat(9000))).toEqual({ why: "binary" });
  });
  it("has something beside blanks", () => {
    for (const text of ["", " ", "\n\t\r\n"]) expect(refusedText(text), JSON.stringify(text)).toEqual({ why: "empty" });
    expect(refusedText("\n.")).toBeUndefined();
  });
});

describe("least increments (judgement: four figures, and no point anywhere)", () => {
  it.each([
    ...["X1000", "Y1000", "Z1000", "x1000", "X 1000", "X-1000", "X+1000", "X -1000", "X12345"],
    ...[
      "G1 X1000 F12.5",
      "X1000 (X5.)",
      "X1000 (X5.) (Y.5)",
      "X1000 ;X5.",
      "X1000\n;Y5.\nZ4000",
      "X1000 (open X5.\nY2000",
    ],
    "X1000 A5.",
  ])("%j counts", (text) => {
    expect(countsIncrements(text)).toBe(true);
  });
  it.each([
    ...["X999", "A1000", "F1000", "X1000.", "X1000.5", "X1000 Y5.", "X1000 Y.5", "X1000 Y 5.", "X1000 Y-5."],
    ...["X1000 Y+.5", "X1000 Y123.5", "X1000 Z5.", "X1000 I5.", "X1000 J5.", "X1000 K5.", "X1000 R5.", "X1000 x5."],
    ...["G0 X5 (WAS X1000)", "G0 X5 ;X1000", "G0 X5 (X1000 ", "X1000 (a\nX5.)", "X1000 ;a\rX5."],
  ])("%j does not", (text) => {
    expect(countsIncrements(text)).toBe(false);
  });
  it("is looked for in the program's words and not in its comments", () => {
    const told = (text: string) =>
      new ProgramCheck(text, []).findings().some((f) => f.code === "unreadable" && f.what === "increments");
    expect(told("G21\n(BLANK X1200)\nG0 X40\n")).toBe(false);
    expect(told("G21\n(BLANK X1200)\nG0 X4000\n")).toBe(true);
  });
});

describe("numbers (ISO 6983: an address, a sign, figures with or without a point)", () => {
  it.each([
    ["X5", "X5"],
    ["X-5", "X-5"],
    ["X+5", "X5"],
    ["X5.", "X5"],
    ["X.5", "X0.5"],
    ["X-.5", "X-0.5"],
    ["X0005.2500", "X5.25"],
    ["X109.89", "X109.89"],
    ["X 5", "X5"],
    ["X\t5", "X5"],
    ["X \t-  5", "X-5"],
    ["x5y6Z7", "X5 Y6 Z7"],
    ["a1z9", "A1 Z9"],
    ["G1X1.5Y-2Z.25F100", "G1 X1.5 Y-2 Z0.25 F100"],
    ["X12.345678", "X12.345678"],
    ["X0.00000000000000001", "X1e-17"],
    ["X1E+2", "X100"],
    ["X1e-2", "X0.01"],
    ["X2.5E+03Y1", "X2500 Y1"],
    // without a sign E is an address, and so it is before anything but a figure
    ["X1E2", "X1 E2"],
    ["X1E+Y2", "X1 Y2 ?E ?+"],
    ["X1.Y2", "X1 Y2"],
  ])("%j is %s", (text, words) => {
    expect(one(text)).toBe(words);
  });
  it("refuses a decimal comma, and passes over a comma that parts words", () => {
    expect(blocks("G0\nX40,5 Y1").refusal).toEqual({ why: "decimal-comma", line: 2, word: "X40,5 Y" });
    expect(blocks("X40,5").refusal).toEqual({ why: "decimal-comma", line: 1, word: "X40,5" });
    expect(blocks("X4.0,0").refusal).toMatchObject({ why: "decimal-comma" });
    expect(one("X40, Y5")).toBe("X40 Y5 ?,");
    expect(one("X40,/Y5")).toBe("X40 Y5 ?,/");
    expect(blocks("X40,\n5").list).toEqual(["1 X40 ?,", "2"]);
  });
  it("N and O count blocks and programs and are no words; nor is a number at the head, or behind a colon", () => {
    for (const text of ["N10 X5", "O1234 X5", "n10x5", "10 X5", ":1234 X5", ":X5"]) expect(one(text), text).toBe("X5");
    expect(one("X5 12")).toBe("X5 ?12");
    expect(one("12 13 X5")).toBe("X5");
  });
});

describe("beside the words", () => {
  it.each([
    ["X1 (X2) Y3", "X1 Y3"],
    ["X1 (X2", "X1"],
    ["X1 (X2 (X3) Y4", "X1 Y4"],
    ["(X1)", ""],
    ["()X1", "X1"],
    ["X1 ; X2", "X1"],
    ["X1 % X2", "X1"],
    ["\u0002X1\u0003\u001aY2", "X1 Y2"],
    ['X1 " Y2', 'X1 Y2 ?"'],
    ["!?X1", "X1 ?!?"],
    ["X1 ?? Y2", "X1 Y2 ???"],
    ["?2345678901234567 X1", "X1 ??23456789012"],
    ["MSG X1", "X1 ?MSG"],
    ["MSG(X2) X1", "X1 ?MSG"],
    ["MSG (X2) X1", "X1 ?MSG"],
    ["MSG(X2 X1", "?MSG"],
    ["MSG- X1", "X1 ?MSG ?-"],
    ["AB_C1 X1", "X1 ?AB_C1"],
    ["ABCDEFGHIJKL", "?ABCDEFGHIJKL"],
    ["ABCDEFGHIJKLM", "?ABCDEFGHIJK…"],
    ["abc", "?ABC"],
    ["X", "?X"],
    ["T X1", "X1 ?T"],
    ["X.", "?X ?."],
  ])("%j is %j", (text, words) => {
    expect(one(`${text}\nX9`)).toBe(words);
  });
  it("a comment without an end ends with its line", () => {
    expect(blocks("X1 (open\nX2 ) X3\nMSG(open\nX4)").list).toEqual(["1 X1", "2 X2 X3 ?)", "3 ?MSG", "4 X4 ?)"]);
  });
  it("a slash marks a block that may be skipped, with the number of its switch", () => {
    expect(blocks("/X1\n/2 X1\n/29X1\nX1\nN1 / X1").list).toEqual(["1/ X1", "2/ X1", "3/ X1", "4 X1", "5/ X1"]);
  });
  it("lines end with each of the three breaks; the reader tells how far it is", () => {
    expect(blocks("X1\nX2\rX3\r\nX4\n\rX5").list).toEqual(["1 X1", "2 X2", "3 X3", "4 X4", "5", "6 X5"]);
    const reader = new BlockReader("X1\nX2\r\nX3");
    expect(reader.progress).toBe(0);
    const seen: number[] = [];
    while (reader.next() !== undefined) seen.push(reader.progress);
    expect(seen).toEqual([3 / 9, 7 / 9, 1]);
    expect(new BlockReader("").progress).toBe(1);
    expect(new BlockReader("").next()).toBeUndefined();
  });
  it("a byte order mark is no character of the first block", () => {
    expect(blocks("\ufeffX1\n\ufeffX2").list).toEqual(["1 X1", "2 X2 ?\ufeff"]);
  });
  it("a line of 2000 characters is read, one more is refused, wherever it stands", () => {
    const line = (n: number) => "X1".padEnd(n);
    expect(blocks(`X5\n${line(2000)}\nX2`)).toEqual({ list: ["1 X5", "2 X1", "3 X2"], refusal: undefined });
    expect(blocks(line(2000)).list).toEqual(["1 X1"]);
    for (const text of [`X5\n${line(2001)}\nX2`, `X5\n${line(2001)}`])
      expect(blocks(text)).toEqual({ list: ["1 X5"], refusal: { why: "long-block", line: 2, most: 2000 } });
  });
});

describe("what steers or computes", () => {
  it.each([
    ["#1=5", "#1=5"],
    ["X[3+4]", "X[3+4]"],
    ["[1]", "[1]"],
    ["=5", "=5"],
    ["&1", "&1"],
    ["@1", "@1"],
    ["X1 #123456789012345", "#12345678901"],
    ["R1=5 X2", "R1=5"],
    ["Q12=1234567890123", "Q12=12345678"],
    ["X=5", "X=5"],
    ["X #5", "X #5"],
    ["X -[5]", "X -[5]"],
    ["MAX[1]", "MAX[1]"],
    ["goto", "goto"],
    ["GOTO5", "GOTO5"],
    ["WHILE X1 Y2 Z3", "WHILE X1 Y2 "],
    ["S2=1500.5", "S2=1500.5"],
    ["S2=A", "S2=A"],
    ["M1=", "M1="],
    ["X2=1500", "X2=1500"],
  ])("%j is refused at %j, and what follows is not read", (text, word) => {
    expect(blocks(`X5\n${text}\nX6`)).toEqual({ list: ["1 X5"], refusal: { why: "variable", line: 2, word } });
    const reader = new BlockReader(`${text}\nX6`);
    expect([reader.next(), reader.next()]).toEqual([undefined, undefined]);
  });
  it.each(
    [
      "IF",
      "ELSE",
      "ELSIF",
      "ENDIF",
      "WHILE",
      "ENDWHILE",
      "FOR",
      "ENDFOR",
      "TO",
      "DO1",
      "END1",
      "LOOP",
      "ENDLOOP",
    ].concat(["REPEAT", "UNTIL", "GOTO", "GOTOF", "GOTOB", "DEF", "PROC", "CALL", "MCALL", "CASE"]),
  )("%s steers, longer names do not", (name) => {
    expect(blocks(name).refusal).toMatchObject({ why: "variable", word: name });
    expect(blocks(`${name}X`).list).toEqual([`1 ?${name}X`]);
    expect(blocks(`X${name}`).list).toEqual([`1 ?X${name}`]);
  });
  it("words to a second spindle and a tool's name are no variables", () => {
    expect(one("S2=1500 M2=3 h1=2 X1")).toBe("X1 ?S2=1500 ?M2=3 ?h1=2");
    expect(one("S2=12345678901234")).toBe("?S2=123456789");
    expect(blocks('X1\nT="DRILL X6.8" M6').list).toEqual(["1 X1", "2 T2 M6"]);
    expect(blocks('T = "A B" M6\nT=  "" M6\nT=DRILL M6\nT="AB\nt="AB"X1').list).toEqual([
      "1 T1 M6",
      "2 T2 M6",
      "3 T3 M6",
      "4 T4",
      "5 T5 X1",
    ]);
    expect(blocks('TX="A"').refusal).toMatchObject({ why: "variable" });
  });
});
