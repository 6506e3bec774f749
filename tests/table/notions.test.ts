/** Words of headings that are found quickly are the ones that are found by trying every word. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { matchHeadings, ROW_COLUMNS, TOOL_COLUMNS } from "../../src/table/columns.ts";
import { fold } from "../../src/table/fold.ts";
import { lexicons, type Senses, stem } from "../../src/table/lexicon.ts";
import { notionSets } from "../../src/table/notions.ts";

const [ENGLISH, GERMAN, JAPANESE] = [0, 1, 5];

/**
 * Every way to read English words that are written together, from the whole vocabulary: all of it is tried at all places,
 * and the fewest words count. Inside of others a word has three letters at the least; the last may be in the plural.
 */
function tried(text: string): string[] {
  const { exact, stems } = lexicons()[ENGLISH]!;
  const words = [...exact].filter(([word]) => word.length >= 3);
  const ways = (rest: string): Senses[][] => {
    if (rest === "") return [[]];
    const found = words.filter(([word]) => rest.startsWith(word));
    const plural = exact.has(rest) ? undefined : stems.get(stem(rest, ENGLISH));
    return [
      ...found.flatMap(([word, senses]) => ways(rest.slice(word.length)).map((more) => [senses, ...more])),
      ...(plural ? [[plural]] : []),
    ];
  };
  const all = ways(text);
  const fewest = all.filter(({ length }) => length === Math.min(...all.map((way) => way.length)));
  const sets = fewest.flatMap((way) =>
    way.reduce<string[][]>((before, senses) => before.flatMap((set) => senses.map((s) => [...set, ...s])), [[]]),
  );
  return [...new Set(sets.map((set) => [...new Set(set)].sort().join(" ")))].filter((set) => set !== "").sort();
}

describe("notions of a heading", () => {
  it("are those of every way to write it with words (independent: all words tried at all places)", () => {
    const words = [...lexicons()[ENGLISH]!.exact.keys()].filter((word) => /^[a-z]{4,}$/.test(word));
    const end = fc.constantFrom("", "", "s", "es", "x", "ing");
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...words), { minLength: 1, maxLength: 3 }), end, (some, ending) => {
        const text = some.join("") + ending;
        const expected = tried(text);
        // A number is read by what stands beside it, and so many ways are never told apart.
        fc.pre(expected.length < 48 && !expected.some((set) => set.split(" ").includes("nr")));
        expect([...(notionSets(text, false)[ENGLISH] ?? [])].sort()).toEqual(expected);
      }),
      { numRuns: 600 },
    );
  });

  it("of each word are found in its own language, whatever other words begin like it (identity)", () => {
    for (const { language, exact } of lexicons())
      for (const [word, senses] of exact) {
        const told = senses.map((sense) => [...new Set(sense)].sort().join(" ")).filter((set) => set !== "");
        // A number needs another word, and a single letter is a name.
        if (told.length === 0 || told.some((set) => set.split(" ").includes("nr"))) continue;
        const found = notionSets(word, false)[language] ?? [];
        for (const set of told) expect(found, `${word} of language ${language}`).toContain(set);
      }
  });

  it("are those of a text of 100 characters at the most", () => {
    expect(notionSets(`depth${" ".repeat(95)}`, false)[ENGLISH]).toContain("depth");
    expect(notionSets(`depth${" ".repeat(96)}`, false)).toEqual([]);
    expect(notionSets(" - ", false).flat()).toEqual([]);
  });

  it("are those of a compound, and of a word cut short where that is asked for", () => {
    expect(notionSets(fold("Bohrungsdurchmesser"), false)[GERMAN]).toContain("dia hole");
    expect(notionSets(fold("Bohrungsdurchmessern"), false)[GERMAN]).toEqual([]);
    expect(notionSets(fold("Bemerkg."), false).flat()).toEqual([]);
    expect(notionSets(fold("Bemerkg."), true)[GERMAN]).toContain("remark");
    expect(notionSets("備.", true)[JAPANESE]).toContain("remark");
    expect(notionSets("備.", false).flat()).toEqual([]);
    // Two letters, another end, an end of three letters, a word that is not the one cut short.
    for (const text of ["be.", "bemerkx.", "beg.", "bemerkg tiefe."])
      expect(notionSets(text, true)[GERMAN]!.join(" "), text).not.toContain("remark");
    expect(notionSets("tiefe bem.", true)[GERMAN]).toContain("depth remark");
  });
});

describe("what is no heading", () => {
  it("is a number, whatever its digits; a text of the same digits is asked (regression)", () => {
    expect(matchHeadings([1, 513, 30, 51.3, 0.5], ROW_COLUMNS)).toEqual([]);
    expect(matchHeadings([1, 513, 30, 51.3, 0.5], TOOL_COLUMNS)).toEqual([]);
    expect(matchHeadings(["Operation", 8, "Depth"], ROW_COLUMNS).map((m) => m.column.key)).toEqual([
      "operation",
      "depth",
    ]);
  });
});
