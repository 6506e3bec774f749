/** Words of cells: whole, in other languages, cut short by a full stop (independent: what a person would read). */
import { describe, expect, it } from "vitest";
import { MATERIAL_COLUMNS, ROW_COLUMNS, TOOL_COLUMNS } from "../../src/table/columns.ts";
import { meantBy } from "../../src/table/words.ts";

const columnOf = (key: string) => [...ROW_COLUMNS, ...TOOL_COLUMNS, ...MATERIAL_COLUMNS].find((c) => c.key === key)!;
const meant = (text: string, key = "operation") => [...meantBy(text, columnOf(key))].sort();

describe("a word of a cell", () => {
  it.each([
    ["slot", ["slot"]],
    ["SLOT", ["slot"]],
    ["Thread-Mill", ["thread mill"]],
    ["countersink 90°", ["countersink"]],
    ["countersink 120 °", ["countersink"]],
    ["countersink90°", ["countersink"]],
    ["90° countersink", ["countersink"]],
    ["countersink 9°", []],
    ["countersink 1200°", []],
    ["yes", []],
    ["Bohren", ["drill"]],
    ["perçage", ["drill"]],
    ["threading", ["tap", "thread mill"]],
    ["nonsense", []],
    ["", []],
  ])("%s: %j", (text, wanted) => expect(meant(text)).toEqual(wanted));
  it("is one of 80 characters at the most", () => {
    expect(meant(`slot${" ".repeat(76)}`)).toEqual(["slot"]);
    expect(meant(`slot${" ".repeat(77)}`)).toEqual([]);
  });
  it("says yes or no in every column of them, and in its own words only in its own", () => {
    for (const key of ["through", "coolantThrough"]) {
      expect(meant("ja", key), key).toEqual(["yes"]);
      expect(meant("false", key), key).toEqual(["no"]);
    }
    expect(meant("blind", "through")).toEqual(["no"]);
    expect(meant("blind", "coolantThrough")).toEqual([]);
  });
});

describe("a word cut short", () => {
  it.each([
    ["countersi.", ["countersink"]],
    ["cou.", ["counterbore", "countersink"]],
    ["counterb.", ["counterbore"]],
    ["thr.mill", ["thread mill"]],
    ["thr. mill.", ["thread mill"]],
    ["thr.ea.ill", ["thread mill"]],
    // Too short a beginning, another end, another middle, too many parts, no full stop.
    ["co.", []],
    ["thr.xill", []],
    ["thr.xx.mill", []],
    ["t.h.r.mill", []],
    ["countersi", []],
    ["thr.ea.x.mill", []],
    ["thread.mill.mill", []],
    // The parts stand one behind the other: none of them is read twice.
    ["thread.ad.mill", []],
    ["thr.re.ill", []],
  ])("%s: %j", (text, wanted) => expect(meant(text)).toEqual(wanted));
  it("is one with a full stop, whatever it repeats", () => {
    const column = { key: "own", heading: "Own", kind: "word", words: ["tartar"] } as const;
    expect(meantBy("tartar", column)).toEqual(["tartar"]);
    expect(meantBy("tar.", column)).toEqual(["tartar"]);
    expect(meantBy("tar", column)).toEqual([]);
  });
});
