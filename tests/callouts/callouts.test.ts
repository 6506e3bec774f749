import fs from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { calloutBlock, readCallouts } from "../../src/callouts/callouts.ts";

interface Case {
  readonly text: string;
  readonly units?: "mm" | "in";
  readonly rows: readonly Readonly<Record<string, string | number | boolean | null>>[];
  readonly why: string;
}
const corpus = JSON.parse(fs.readFileSync(new URL("./corpus.json", import.meta.url), "utf8")) as {
  cases: Case[];
};

/** Sizes are decimal text or short sums of it; chords and cones are written to six digits. */
const CLOSE = 1e-6;

describe("callouts written from drafting conventions (independent)", () => {
  it.each(corpus.cases.map((c) => [c.text.replace(/\n/g, " ⏎ ").replace(/\r/g, ""), c] as const))(
    "reads %s",
    (_, c) => {
      const { rows } = readCallouts(c.text, { units: c.units });
      expect(
        rows.map((r) => r.cells.Operation ?? null),
        `${c.why}: ${JSON.stringify(rows)}`,
      ).toEqual(c.rows.map((r) => r.Operation));
      c.rows.forEach((wanted, i) => {
        const row = rows[i]!;
        const cells = row.cells as Record<string, unknown>;
        for (const [heading, value] of Object.entries(wanted)) {
          if (heading === "understood") continue;
          const at = `${heading} of row ${i + 1} (${c.why}): ${row.note}`;
          if (typeof value === "number") {
            expect(cells[heading], at).toBeTypeOf("number");
            expect(Math.abs((cells[heading] as number) - value), at).toBeLessThan(CLOSE);
          } else expect(cells[heading] ?? null, at).toBe(value);
        }
        expect(row.understood, row.note).toBe(wanted.understood ?? true);
      });
    },
  );
  it("covers at least 120 callouts", () => expect(corpus.cases.length).toBeGreaterThanOrEqual(120));
});

const blank = (text: string) => text.replace(/[\s\u200b]/g, "");
/** What holds for any text at all. */
function sound(text: string, units?: "mm" | "in"): void {
  const { rows, others } = readCallouts(text, { units });
  const seen = new Set<object>();
  const pasted: { line: number; text: string }[] = [];
  let line = 0;
  for (const row of rows) {
    expect(row.source.line).toBeGreaterThanOrEqual(line);
    line = row.source.line;
    if (!seen.has(row.source)) pasted.push(row.source);
    seen.add(row.source);
    for (const [heading, value] of Object.entries(row.cells)) {
      if (typeof value !== "number") continue;
      expect(Number.isFinite(value), `${heading} of ${JSON.stringify(text)}`).toBe(true);
      if (heading !== "Start diameter") expect(value, `${heading} of ${JSON.stringify(text)}`).toBeGreaterThan(0);
    }
    if (!row.understood) expect(row.note).not.toBe("");
    if (!row.cells.Operation) expect(row.understood).toBe(false);
    expect(blank(String(row.cells.Feature)).length).toBeGreaterThan(0);
  }
  // Every line is in a row's source or among the other lines; the end of a line may be in both.
  const lines = text.split(/\r\n|[\n\r\v\f\u0085\u2028\u2029]/).map((l) => l.trim());
  const filled = lines.filter((l) => l !== "");
  const whole = others.filter((o) => o.text === lines[o.line - 1]);
  const inRows = pasted.flatMap((p) => p.text.split("\n"));
  expect(inRows.length + whole.length, text).toBe(filled.length);
  const kept = new Set([...inRows, ...whole.map((o) => o.text)].map(blank));
  for (const l of filled) expect(kept.has(blank(l)), l).toBe(true);
}

const PARTS = [
  ...[
    "4X",
    "2X ",
    "(4)",
    "6-",
    "2 PLACES",
    "3 HOLES",
    "TYP",
    "⌀",
    "Ø",
    " DIA",
    "↧",
    " DEEP",
    " DP",
    "THRU",
    "THRU ALL",
  ],
  ...[
    "⌴",
    "⌵",
    "CBORE",
    "CSK",
    "C'SINK",
    "SPOTFACE",
    "DRILL",
    "REAM",
    "BORE",
    "TAP",
    "EQ SP ON",
    " BC",
    "90°",
    "82 DEG",
  ],
  ...[
    "M8",
    "M8×1.25-6H",
    "3/8-16 UNC-2B",
    "#10-32",
    "G1/4",
    "1/4 NPT",
    "X",
    "×",
    "/",
    ",",
    ";",
    "-",
    "(",
    ")",
    "\n",
    "\r\n",
  ],
  ...[
    "±.005",
    "+.001/-.000",
    " H7",
    "g6",
    ".201",
    "6.8",
    "6,8",
    "12",
    "1/2",
    "1-1/2",
    "½",
    ".500/.502",
    "0",
    "999999999",
    '"',
  ],
  ...[" mm", " in", " ", " ", "LH", "FAR SIDE", "BOTH SIDES", "MIN", "note", "1. ", "• ", "\t", "#7", "-.0005"],
];

describe("callouts of any text (identity)", () => {
  it("never throws, drops nothing, and gives finite positive numbers in the order of the text", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 60 }), fc.constantFrom(undefined, "mm", "in"), (text, units) =>
        sound(text, units as "mm" | "in" | undefined),
      ),
      { numRuns: 500 },
    );
  });
  it("holds for any jumble of drawing signs as well", () => {
    const jumble = fc.array(fc.constantFrom(...PARTS), { maxLength: 14 }).map((parts) => parts.join(""));
    fc.assert(
      fc.property(jumble, fc.constantFrom(undefined, "mm", "in"), (text, units) =>
        sound(text, units as "mm" | "in" | undefined),
      ),
      { numRuns: 3000 },
    );
  });
  it("gives back every word that it does not know, in a row without an operation", () => {
    const word = fc.stringMatching(/^[a-z]{3,8}$/).map((w) => `q${w}q`);
    const good = corpus.cases.filter((c) => c.rows.length > 0 && c.rows.every((r) => r.Operation !== null));
    fc.assert(
      fc.property(fc.constantFrom(...good), word, fc.boolean(), ({ text, units }, strange, before) => {
        const put = before ? `${strange} ${text}` : `${text.trimEnd()} ${strange}`;
        const { rows } = readCallouts(put, { units });
        const left = rows.filter((r) => !r.cells.Operation).map((r) => String(r.cells.Feature));
        expect(
          left.some((f) => f.includes(strange)),
          put,
        ).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
  it("reads a callout the same among others as alone", () => {
    const alone = (c: Case) => readCallouts(c.text, { units: c.units }).rows.map((r) => r.cells);
    const metric = corpus.cases.filter((c) => c.units === "mm");
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...metric), { maxLength: 6 }), (some) => {
        const together = readCallouts(some.map((c) => c.text).join("\n\n"), { units: "mm" });
        expect(together.rows.map((r) => r.cells)).toEqual(some.flatMap(alone));
      }),
      { numRuns: 100 },
    );
  });
  it("reads symbols and the words for them the same", () => {
    const same = [
      ["4X ⌀.266 THRU ⌴ ⌀.438 ↧ .25", "4x .266 dia thru cbore .438 dia .25 deep"],
      ["⌀.266 THRU ⌵ ⌀.507 X 82°", "Ø.266 thru csk Ø.507 x 82 deg"],
      ["⌀12 H7 ↧ 20 mm", "Ø12H7 20 mm DEEP"],
    ];
    const bare = (text: string) => readCallouts(text).rows.map((r) => ({ ...r.cells, Feature: "" }));
    for (const [signs, words] of same) expect(bare(words!)).toEqual(bare(signs!));
  });
  it("doubles depths and diameters when every number of a callout doubles", () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 190 }), fc.integer({ min: 1, max: 99 }), (d, z) => {
        const [one] = readCallouts(`⌀${d / 10} ↧ ${z}`, { units: "mm" }).rows;
        const [two] = readCallouts(`⌀${d / 5} ↧ ${2 * z}`, { units: "mm" }).rows;
        expect(two!.cells["Finish diameter"]).toBeCloseTo(2 * Number(one!.cells["Finish diameter"]), 9);
        expect(two!.cells.Depth).toBe(2 * Number(one!.cells.Depth));
      }),
    );
  });
});

describe("notes and options of callouts (identity)", () => {
  const note = (text: string, units?: "mm" | "in") =>
    readCallouts(text, { units })
      .rows.map((r) => r.note)
      .join(" | ");
  it("states what was assumed", () => {
    expect(note("2X ⌀6.6 THRU", "mm")).toContain("mm assumed");
    expect(note("2X ⌀6.6 THRU")).toContain("units not told");
    expect(note("⌀.201 THRU")).toContain("leading point");
    expect(note("M8 ↧16")).toContain("2 pitches deeper");
    expect(note("4X ⌀.201 THRU, 2 PLACES")).toContain("4 × 2 = 8");
    expect(note("⌀5 TYP", "mm")).toContain("how many is not told");
    expect(note("TAP M8 THRU")).toContain("planned as thread milling");
    expect(note("⌀9 THRU ⌴ ⌀15 ↧8 FAR SIDE", "mm")).toContain("far side");
    expect(note("1/4-18 NPT", "in")).toContain("not covered");
    expect(note("M6 ↧ 10 MIN")).toContain("a least value");
    expect(note("M6 X 10 MIN DEEP")).toContain("a least value");
    expect(note("⌀12 +0.1", "mm")).toContain("the other is taken as 0");
    expect(note("⌀6.8 ↧20\nM8 ↧16")).toContain("lines 1 to 2 read as one callout");
  });
  it("puts material and machine into every row", () => {
    const { rows } = readCallouts("M8 ↧16\nnonsense", { material: "Steel A", machine: "Mill 2" });
    expect(rows).toHaveLength(3);
    for (const { cells } of rows) expect([cells.Material, cells.Machine]).toEqual(["Steel A", "Mill 2"]);
  });
  it("a hole that goes through under a thread that does not", () => {
    const cells = readCallouts("⌀6.8 THRU\nM8 ↧ 16", { units: "mm" }).rows.map((row) => row.cells);
    expect(cells.map((c) => [c.Operation, c.Through])).toEqual([
      ["drill", "yes"],
      ["thread mill", null],
    ]);
  });
  it("a sign below half a tolerance is the other half, anywhere else the bullet of a list", () => {
    const cells = (text: string) => readCallouts(text, { units: "mm" }).rows.map((row) => row.cells);
    expect(cells("⌀10 +0.02\n- 0.01")).toMatchObject([{ "Finish diameter": 10.005, "Size tolerance": 0.015 }]);
    expect(cells("⌀10 ↧ 5\n- ⌀6 ↧ 5").map((c) => c["Finish diameter"])).toEqual([10, 6]);
  });
  it("answers nothing for blank text", () => {
    expect(readCallouts("").rows).toEqual([]);
    expect(readCallouts(" \r\n\t\n").rows).toEqual([]);
  });
  it("lays rows out under headings, also the shop's own, and converts where a heading carries its unit", () => {
    const { rows } = readCallouts("4X ⌀.250 ↧ .50");
    expect(calloutBlock(rows, ["Qty", "Dia (mm)", "Depth", "Units", "Colour", "Description"])).toEqual([
      [4, 6.35, 0.5, "in", null, "4X ⌀.250 ↧ .50"],
    ]);
    expect(calloutBlock(rows, [])).toEqual([[]]);
    // what a callout does not tell stays blank, whatever the unit of its heading
    expect(calloutBlock(rows, ["Start diameter (mm)", "Start diameter (in)"])).toEqual(rows.map(() => [null, null]));
  });
});
