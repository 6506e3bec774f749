import { describe, expect, it } from "vitest";
import {
  MACHINE_COLUMNS,
  MATERIAL_COLUMNS,
  matchHeadings,
  RESULT_COLUMNS,
  ROW_COLUMNS,
  TOOL_COLUMNS,
} from "../../src/table/columns.ts";
import { cellValue, LANGUAGES, score, written } from "./understood.ts";

const row = (...headings: string[]) => matchHeadings(headings, ROW_COLUMNS).map((m) => [m.at, m.column.key, m.units]);
const result = (heading: string) => matchHeadings([heading], RESULT_COLUMNS)[0];

describe("headings and words as shops write them (independent: written from memory before the vocabulary)", () => {
  it.each(LANGUAGES)(
    "understands 95 % of the headings and of the words in %s, and takes none for another",
    (language) => {
      const { headings, cells } = score(language);
      for (const { of, missed, wrong } of [headings, cells]) {
        expect(wrong).toEqual([]);
        expect(of).toBeGreaterThanOrEqual(100);
        expect(missed.length / of, missed.join(" ; ")).toBeLessThanOrEqual(0.05);
      }
    },
  );
});

describe("words of cells, value by value (independent: the same list)", () => {
  it.each(LANGUAGES)("most words of each value are understood in %s", (language) => {
    for (const [column, values] of Object.entries(written(language).cells))
      for (const [value, words] of Object.entries(values)) {
        const wanted = value === "yes" ? true : value === "no" ? false : value;
        const known = words.filter((word) => cellValue(column, word) === wanted);
        expect(known.length / words.length, `${column} ${value}: ${words}`).toBeGreaterThan(0.6);
      }
  });
  it.each([
    ["en", "yes", "no"],
    ["de", "ja", "nein"],
    ["fr", "oui", "non"],
    ["es", "sí", "no"],
    ["it", "sì", "no"],
    ["ja", "はい", "いいえ"],
  ])("yes and no are %s: %s and %s", (_, yes, no) => {
    expect(cellValue("through", yes)).toBe(true);
    expect(cellValue("through", no)).toBe(false);
  });
});

describe("spellings (identity)", () => {
  it("ignores accents, case, punctuation and the width of characters", () => {
    for (const heading of [
      "Länge",
      "LAENGE",
      "lange",
      "Ｌänge",
      "Länge [mm]",
      "Länge ［ｍｍ］",
      "Länge/mm",
      "Länge, mm",
    ])
      expect(row(heading)[0]?.[1], heading).toBe("length");
    // A mark of voiced sound is a letter of its own: "が" is not "か".
    expect(row("ねし")).toEqual([]);
    expect(row("ねじ")).toEqual([[0, "thread", undefined]]);
    // Half-width kana.
    expect(row("ﾈｼﾞ")).toEqual([[0, "thread", undefined]]);
  });
  it("reads the unit in any bracket, behind a comma or a slash, or as the last word", () => {
    for (const heading of [
      "深さ（mm）",
      "深さ［mm］",
      "深さ【mm】",
      "Depth, mm",
      "Depth/mm",
      "Tiefe in mm",
      "Depth ㎜",
      "Prof. en mm",
    ])
      expect(row(heading), heading).toEqual([[0, "depth", "mm"]]);
    for (const heading of ["Depth (in)", 'Depth (")', "Tiefe [Zoll]", "Profondeur (po)", "Depth, inch"])
      expect(row(heading), heading).toEqual([[0, "depth", "in"]]);
    expect(row("SFM")).toEqual([[0, "surfaceSpeed", "in"]]);
    expect(row("IPT")).toEqual([[0, "feedPerTooth", "in"]]);
  });
  it("lets a unit that measures something else tell columns apart", () => {
    expect(row("Speed (rpm)")).toEqual([]);
    expect(result("Speed (rpm)")?.column.key).toBe("spindleSpeed");
    expect(row("Avance (mm/min)")).toEqual([]);
    expect(result("Avance (mm/min)")?.column.key).toBe("tableFeed");
    expect(row("Avance (mm/dent)")).toEqual([[0, "feedPerTooth", "mm"]]);
    expect(row("送り（mm/刃）")).toEqual([[0, "feedPerTooth", "mm"]]);
    // A feed for each turn is neither, and Ra is not Rz.
    expect(row("Vorschub (mm/U)")).toEqual([]);
    expect(result("Vorschub (mm/U)")).toBeUndefined();
    expect(row("Surface finish (Ra)")).toEqual([]);
    // Centimetres are no unit of a size here: not taken for millimetres.
    expect(row("Depth (cm)")).toEqual([]);
  });
  it("converts fixed units of a list, and refuses others", () => {
    const machine = (heading: string) => matchHeadings([heading], MACHINE_COLUMNS)[0];
    // 1 hp = 550 ft·lbf/s = 0.7457 kW (NIST SP 811, B.8).
    expect(machine("Power (hp)")?.factor).toBeCloseTo(0.7456999, 6);
    // 1 ft·lbf = 1.355818 N·m (NIST SP 811, B.8).
    expect(machine("Torque (ft·lb)")?.factor).toBeCloseTo(1.355818, 6);
    expect(machine("Rapid (mm/min)")?.factor).toBe(0.001);
    expect(machine("Power (kW)")?.factor).toBeUndefined();
    expect(machine("Power (Nm)")).toBeUndefined();
    // A result would be written in the wrong unit: it is not matched.
    expect(result("Time (min)")).toBeUndefined();
    expect(result("Time (s)")?.column.key).toBe("time");
  });
  it("prefers the canonical heading", () => {
    expect(row("Tiefe", "Depth")).toEqual([[1, "depth", undefined]]);
    expect(row("Depth", "Tiefe")).toEqual([[0, "depth", undefined]]);
  });
  it("takes a spelling of two columns in the language of the table, and guesses none of one language", () => {
    const op = (...headings: string[]) => row(...headings).find(([at]) => at === headings.indexOf("Op"))?.[1];
    expect(op("Op", "Material")).toBeUndefined();
    // One of its two meanings has a heading of its own: the other is left.
    expect(op("No.", "Op", "Material")).toBe("operation");
    expect(op("Process", "Op", "Material")).toBe("row");
    // In French "op" is nothing but the operation; with more French than English beside it, it is that.
    expect(op("Op", "Matière", "Outil", "Profondeur")).toBe("operation");
    // Speed is one of the cut or one of the spindle: only its unit tells.
    expect(row("Speed")).toEqual([]);
    expect(row("Speed (SFM)")).toEqual([[0, "surfaceSpeed", "in"]]);
    expect(row("Speed (m/min)")).toEqual([[0, "surfaceSpeed", "mm"]]);
  });
  it("takes no result of its own for an input, and finds every canonical heading", () => {
    const inputs = new Set(ROW_COLUMNS.map((c) => c.heading));
    for (const { heading, key } of RESULT_COLUMNS) {
      if (!inputs.has(heading)) expect(row(heading), heading).toEqual([]);
      expect(result(heading)?.column.key).toBe(key);
    }
    for (const heading of ["Basis", "Changed", "Colour", "Kind", "Teeth", ""]) expect(row(heading)).toEqual([]);
    for (const columns of [ROW_COLUMNS, MATERIAL_COLUMNS, TOOL_COLUMNS, MACHINE_COLUMNS]) {
      const found = matchHeadings(
        columns.map((c) => c.heading),
        columns,
      );
      expect(found.map((m) => m.column.key)).toEqual(columns.map((c) => c.key));
      for (const match of found) expect(match.factor, match.heading).toBeUndefined();
    }
  });
  it("costs its length and no more, whatever the heading", () => {
    for (const junk of ["(", "[mm", "/mm", " mm", "½", "が", "n°", ") ("]) {
      const start = process.cpuUsage();
      matchHeadings([junk.repeat(100_000)], ROW_COLUMNS);
      expect(process.cpuUsage(start).user / 1000, junk).toBeLessThan(200);
    }
  });
});
