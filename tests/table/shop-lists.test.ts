import { describe, expect, it } from "vitest";
import { MEANINGS } from "../../src/table/spellings/meanings.ts";
import { match } from "../../taskpane/work/planning.ts";
import { LANGUAGES, score } from "./shop-lists.ts";

describe("a second list of headings and words (independent: written from memory before the words were looked at)", () => {
  it.each(LANGUAGES)(
    "understands nineteen of twenty headings in %s, and takes none for another or for what it may not be",
    (language) => {
      const { of, missed, wrong } = score(language).headings;
      expect(wrong).toEqual([]);
      expect(of).toBeGreaterThanOrEqual(290);
      expect(missed.length / of, missed.join(" ; ")).toBeLessThanOrEqual(0.05);
    },
  );
  it.each(LANGUAGES)("understands nineteen of twenty words of cells in %s", (language) => {
    const { of, missed, wrong } = score(language).cells;
    expect(of).toBeGreaterThanOrEqual(40);
    expect(missed.length / of, missed.join(" ; ")).toBeLessThanOrEqual(0.05);
    // What the list calls nobody's and a cell is taken for all the same: each with what speaks for it.
    const taken = [
      // Nothing else in that column begins so.
      "str. = nobody's, not straight",
      // Both are blown with air.
      "mist = nobody's, not air",
      "MQL = nobody's, not air",
      "GF = nobody's, not thread mill",
      // Boring is said so; reaming is said with the reamer's name.
      "Alésage = nobody's, not bore",
      "Chanfreinage = nobody's, not countersink",
      // The brackets tell what the first word leaves open.
      "ねじ切り（フライス） = nobody's, not thread mill",
    ];
    expect(wrong.filter((line) => !taken.includes(line))).toEqual([]);
  });
});

describe("headings taken apart (independent: what the trade calls them)", () => {
  const key = (...headings: string[]) => {
    const { inputs, outputs } = match(headings);
    const last = headings.length - 1;
    return inputs.find((m) => m.at === last)?.column.key ?? outputs.find((m) => m.at === last)?.column.key;
  };
  it("reads compounds, other orders and cut words that no list names", () => {
    expect(key("Gesamttiefe der Bohrung")).toBe("holeDepth");
    expect(key("Vorbohrdurchm.")).toBe("startDiameter");
    expect(key("hole, depth of")).toBe("holeDepth");
    expect(key("Prof. du trou borg.")).toBe("holeDepth");
    expect(key("下穴の直径")).toBe("startDiameter");
  });
  it("mends no slip of the finger", () => {
    for (const slip of ["Tife", "Deptth", "Materail", "Profondeure", "Matiérre", "Profundiad", "Matriale", "深ざ"])
      expect(key(slip), slip).toBeUndefined();
  });
  it("lets brackets with words make another thing of a heading, and brackets with a unit not", () => {
    expect(key("Ø")).toBe("finishDiameter");
    expect(key("Ø (mm)")).toBe("finishDiameter");
    expect(key("Ø (tool)")).toBeUndefined();
    expect(key("Durchmesser [Werkzeug]")).toBeUndefined();
    // Words that nobody knows say nothing.
    expect(key("Ø (xyz)")).toBe("finishDiameter");
  });
  it("takes a number of something for no row", () => {
    expect(key("Op", "N. fori")).toBe("quantity");
    expect(key("N [giri/min]")).toBe("spindleSpeed");
    expect(key("N")).toBe("spindleSpeed");
  });
});

describe("doubtful headings", () => {
  const doubts = (...headings: string[]) => match(headings).doubts.map(({ at, options }) => [headings[at], options]);
  it("are neither read nor written, and say what they may mean", () => {
    for (const heading of ["Feed", "Vorschub", "Avance", "Avanzamento", "送り"]) {
      const { inputs, outputs } = match(["Operation", heading]);
      expect(
        [...inputs, ...outputs].map((m) => m.at),
        heading,
      ).toEqual([0]);
      expect(doubts("Operation", heading)).toEqual([[heading, ["in:feedPerTooth", "out:tableFeed"]]]);
    }
    expect(doubts("Speed")).toEqual([["Speed", ["in:surfaceSpeed", "out:spindleSpeed"]]]);
    expect(doubts("Zustellung")).toEqual([["Zustellung", ["in:radialDepth", "in:axialDepth"]]]);
  });
  it("are none once the other meaning has a heading of its own, or the unit tells", () => {
    expect(doubts("fz", "Feed")).toEqual([]);
    expect(match(["fz", "Feed"]).outputs.map((m) => m.column.key)).toEqual(["tableFeed"]);
    expect(doubts("Feed (mm/tooth)")).toEqual([]);
    expect(doubts("Feed (mm/min)")).toEqual([]);
    expect(match(["ae", "Zustellung"]).inputs.map((m) => m.column.key)).toEqual(["radialDepth", "axialDepth"]);
  });
  it("are none once a person has said it", () => {
    expect(match(["Feed"], { feed: "in:feedPerTooth" }).doubts).toEqual([]);
    expect(match(["Feed"], { feed: "in:feedPerTooth" }).inputs.map((m) => m.column.key)).toEqual(["feedPerTooth"]);
    expect(match(["Feed"], { feed: "" }).doubts).toEqual([]);
    // What another heading was said to be is no choice any more.
    expect(match(["Speed", "How fast"], { "how fast": "in:surfaceSpeed" }).doubts).toEqual([
      { at: 0, options: ["out:spindleSpeed"] },
    ]);
  });
  it("are never a heading of our own", () => {
    expect(match(["Operation", "Direction", "Size"]).doubts).toEqual([]);
    expect(match(["Operation", "Direction", "Size"]).outputs.map((m) => m.column.key)).toEqual(["direction", "size"]);
  });
});

describe("ways to say a column (identity)", () => {
  it("are each made of notions that some language has a word for", async () => {
    const { LANGUAGES: all } = await import("../../src/table/spellings/index.ts");
    const { common } = await import("../../src/table/spellings/common.ts");
    const known = new Set(
      [common, ...all.map((language) => language.notions)].flatMap((words) =>
        Object.keys(words).flatMap((names) => names.split(" ")),
      ),
    );
    // "N" beside another word becomes a number of something.
    const used = new Set(
      Object.values(MEANINGS).flatMap((table) =>
        Object.values(table).flatMap((ways: string) => ways.split(/[| /]/).map((word) => word.replace(/\?/g, ""))),
      ),
    );
    expect([...used].filter((notion) => !known.has(notion))).toEqual([]);
    expect([...known].filter((notion) => !used.has(notion) && notion !== "stop" && notion !== "nr")).toEqual([]);
  });
});
