/** Finding by designation and by likeness: counted by hand. */
import { describe, expect, it } from "vitest";
import { byDesignation, likeness, likest, nearestMaterials } from "../../src/table/found.ts";

describe("likeness (by hand: twice the shared pairs of letters over all, blanks at both ends)", () => {
  it.each([
    ["ab", "ab", 1],
    ["AB", "ab", 1],
    // " a" "ab" "b " and " a" "ab" "bc" "c ": two shared of seven
    ["ab", "abc", 4 / 7],
    // " n" "ni" "ig" "gh" "ht" "t " and " n" "na" "ac" "ch" "ht" "t ": three of twelve
    ["night", "nacht", 6 / 12],
    // a pair counts once: " a" "aa" "a " of both
    ["aa", "aaaa", 1],
    ["ab", "cd", 0],
  ])("of %s and %s", (one, other, wanted) => {
    expect(likeness(one, other)).toBeCloseTo(wanted, 12);
    expect(likeness(other, one)).toBeCloseTo(wanted, 12);
  });
});

describe("what is alike", () => {
  it("is offered from a likeness of 0.3 on, the likest first, three at the most", () => {
    // "abcd" has five pairs. Shared with "abxyz" (six) two: 4/11; with "axyz" (five) one: 0.2.
    expect(likest("abcd", ["axyz", "abxyz", "abcx", "abcd", "abc"])).toEqual(["abcd", "abc", "abcx"]);
    expect(likest("abcd", ["axyz"])).toEqual([]);
    expect(likest("abcd", ["abxyz"])).toEqual(["abxyz"]);
    // Exactly at the limit: " a" "a " and " a" "ab" "b ": two of five.
    expect(likest("a", ["ab"], 0.4)).toEqual(["ab"]);
    expect(likest("a", ["ab"], 0.41)).toEqual([]);
  });
  it("is looked for in texts of 80 characters, and in no longer ones", () => {
    const name = "x".repeat(80);
    expect(likest(name, [name])).toEqual([name]);
    expect(likest(`${name}x`, [name])).toEqual([]);
  });
});

describe("entries by a designation", () => {
  const find = byDesignation([
    { name: "A", designations: "1.4301; AISI 304;304" },
    { name: "B", designations: "304L;;6061-T6" },
    { name: "C", designations: "304L" },
    { name: "D" },
  ]);
  it("are found whatever stands before it, however often it is said", () => {
    for (const text of ["304", "AISI 304", "aisi-304", "1.4301", "W.Nr. 1.4301"])
      expect(find(text), text).toEqual(["A"]);
    expect(find("304L")).toEqual(["B", "C"]);
  });
  it("are not those that have none, for a text that says nothing", () => {
    for (const text of ["", " ", "D"]) expect(find(text), text).toEqual([]);
  });
  it("are the same metal where only its bars were straightened after the T6", () => {
    for (const text of ["6061-T6", "6061-T651", "6061-T6511", "6061 T6510"]) expect(find(text), text).toEqual(["B"]);
    for (const text of ["6061-T651x", "6061-T652", "6061-T4"]) expect(find(text), text).toEqual([]);
  });
  it("have names of 80 characters at the most", () => {
    const long = (letters: number) => byDesignation([{ name: "A", designations: "y".repeat(letters) }]);
    expect(long(80)("y".repeat(80))).toEqual(["A"]);
    expect(long(81)("y".repeat(81))).toEqual([]);
  });
});

describe("materials that may stand in", () => {
  it("are of the kind, else of the class; an entry that says nothing of its kind is none of them", () => {
    const entries = [{ name: "Mystery" }, { name: "Bar 1045" }, { name: "Rod", designations: "qqq;42CrMo4" }];
    expect(nearestMaterials("1018", entries)).toEqual(["Bar 1045"]);
    expect(nearestMaterials("4140", entries)).toEqual(["Rod"]);
    expect(nearestMaterials("H13", entries).sort()).toEqual(["Bar 1045", "Rod"]);
    expect(nearestMaterials("Mysterie", entries)).toEqual(["Mystery"]);
  });
  it("are three at the most, the likest by any of their designations first", () => {
    const entries = [
      { name: "a", designations: "1010" },
      { name: "b", designations: "1020" },
      { name: "c", designations: "1030;1045" },
      { name: "d", designations: "1018" },
    ];
    // " 1" "10" "04" of five pairs are those of 1045, " 1" "10" those of the others.
    expect(nearestMaterials("1046", entries)[0]).toBe("c");
    expect(nearestMaterials("1046", entries)).toHaveLength(3);
  });
  it("are of a class that only a word tells, where no designation does", () => {
    expect(nearestMaterials("steel", [{ name: "Stahlguss" }, { name: "Messing" }])).toEqual(["Stahlguss"]);
  });
});
