/** Faults of reading by eye, camera or keyboard: what is put right, what is said of it, and what may mean two things and stays. */
import { describe, expect, it } from "vitest";
import { mend } from "../../src/callouts/misread.ts";
import { ENGLISH } from "../../src/callouts/remarks/en.ts";
import { said } from "../../src/callouts/remarks/say.ts";

const mended = (text: string) => {
  const { line, notes } = mend(text);
  return [line.text, ...notes.map((note) => said(note, ENGLISH))];
};

describe("signs that mean the same", () => {
  it.each([
    ["Øø Φφϕ∅", "⌀⌀ ⌀⌀⌀⌀"],
    ["a‐b‑c‒d–e—f−g", "a-b-c-d-e-f-g"],
    ["a×b✕c⨯d", "axbxcxd"],
    ["aχb Хc х", "axb xc x"],
    ['1" 2” 3″ 4“', '1" 2" 3" 4"'],
    ["1' 2’ 3′ 4‘ 5`", "1' 2' 3' 4' 5'"],
    ["1⁄2 3∕4 5\\6", "1/2 3/4 5/6"],
    ["90º 82˚ 60°", "90° 82° 60°"],
    ["⤓5 ↓6 ↧7", "↧5 ↧6 ↧7"],
    ["⊔ ⌴", "⌴ ⌴"],
    ["（4）", "(4)"],
    ["a\u00a0b\u2003c\u200bd\u202fe\u3000f\ufeffg\th", "a b c d e f g h"],
    ["  a  b \t ", "a b"],
  ])("%j is %j", (text, same) => expect(mended(text)).toEqual([same]));
});

describe("the diameter sign misread", () => {
  it.each([
    ["%%c6", "⌀6", '"%%c" read as ⌀'],
    ["%%C6", "⌀6", '"%%C" read as ⌀'],
    ["Ã˜6", "⌀6", '"Ã˜" read as ⌀'],
    ["θ6", "⌀6", '"θ" read as ⌀'],
    ["θ .5", "⌀ .5", '"θ" read as ⌀'],
    ["phi6", "⌀6", '"phi" read as ⌀'],
    ["PHI ,5", "⌀ ,5", '"PHI" read as ⌀'],
    ["O6 THRU", "⌀6 THRU", '"O" read as ⌀'],
    ["4 O6", "4 ⌀6", '"O" read as ⌀'],
    ["4xO6", "4x⌀6", '"O" read as ⌀'],
    ["4-O6", "4-⌀6", '"O" read as ⌀'],
  ])("%s", (text, ...right) => expect(mended(text)).toEqual(right));
  it.each(["θ = a", "θ", "DELPHI 6", "phi = a", "NO6", "O ring"])("not in %j", (text) =>
    expect(mended(text)).toEqual([text]),
  );
});

describe("letters for figures", () => {
  it.each([
    ["1O", "10"],
    ["l0", "10"],
    ["I5", "15"],
    ["2o.5", "20.5"],
    ["12.5O", "12.50"],
    ["M1O", "M10"],
    ["MlO", "M10"],
    ["⌀lO", "⌀10"],
    ["#lO", "#10"],
    ["±l", "±1"],
    ["↧lO", "↧10"],
    [".OO5", ".005"],
    ["(.O5)", "(.05)"],
    ["+.OO1", "+.001"],
    ["l/4", "1/4"],
    ["I/2", "1/2"],
  ])("%s is %s", (text, right) => {
    const was = /[\dOoIl]*[OoIl][\dOoIl]*/.exec(text)![0];
    const [line, note, ...more] = mended(text);
    expect(line).toBe(right);
    expect(note).toMatch(/^"[\d.OoIl]+" read as [\d.]+$/);
    expect(note).toContain(was);
    expect(more).toEqual([]);
  });
  it.each([
    ["lO-24 UNC", "10-24 UNC"],
    ["lO - 24 NF", "10 - 24 NF"],
    ["lOX ⌀6", "10X ⌀6"],
    ["lO x ⌀6", "10 x ⌀6"],
    ["M6 x l.5", "M6 x 1.5"],
    ["M6xl.5", "M6x1.5"],
  ])("%s is %s", (text, right) => expect(mended(text)[0]).toBe(right));
  it.each(["lO", "OIL", "lO-24 X", "lO x 6", "5OFF", "al/4", "l/a", "COl0R", "oil l.5", "A1Ol", "ll"])(
    "%j may mean something else",
    (text) => expect(mended(text)).toEqual([text]),
  );
});

describe("blanks inside a number or a word", () => {
  it.each([
    ["⌀1. 5", "⌀1.5", '"1. " read as 1.'],
    ["⌀ 12 , 5", "⌀ 12,5", '"12 , " read as 12,'],
    ["⌀. 5", "⌀.5", '". " read as .'],
    ["⌀6 T H R U", "⌀6 THRU"],
    ["⌀6 THR U", "⌀6 THRU"],
    ["⌀6 t hru", "⌀6 thru"],
  ])("%s", (text, ...right) => expect(mended(text)).toEqual(right));
  it.each(["1. 5", "⌀1. x", "⌀6 BOTH RU", "⌀6 TH RUN"])("not in %j", (text) => expect(mended(text)).toEqual([text]));
});

describe("where it stood in the pasted line", () => {
  it.each<[string, string, number, number]>([
    // pasted, what is looked for in the mended text, from and to in the pasted one
    ["  Ø  6 x", "6", 5, 6],
    ["%%c6 THRU", "6", 3, 4],
    ["%%c6 THRU", "THRU", 5, 9],
    ["T H R U 6", "6", 8, 9],
    ["T H R U 6", " ", 7, 8],
    ["⌀1. 5 x", "x", 6, 7],
    ["⌀1. 5 x", "5", 4, 5],
    ["4x %%c6 a %%c7 b", "7", 13, 14],
    ["4x %%c6 a %%c7 b", "a", 8, 9],
  ])("%j: %j", (text, part, at, end) => {
    const { line } = mend(text);
    const found = line.text.indexOf(part);
    expect(line.stretch(found, found + part.length)).toEqual({ at, end });
  });
});
