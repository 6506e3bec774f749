/** The project's own corpus of callouts, and what holds for any of them. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readCallouts } from "../../src/callouts/callouts.ts";
import { insertThread } from "../../src/callouts/insert.ts";
import { parseThread } from "../../src/thread/designation.ts";
import { good, type Outcome, type OwnCase, outcomeOf, ownCases } from "./corpus.ts";

const FILES = ["clean", "noise", "languages", "other", "later", "third", "edges"] as const;
const ALL = FILES.flatMap(ownCases);
const read = (c: OwnCase) => readCallouts(c.text, { units: c.units });

describe("the project's own corpus of callouts, written from drafting conventions (independent)", () => {
  it("holds at least 400 callouts, half of them noisy, and 80 lines that give no row", () => {
    const clean = ALL.filter((c) => c.file !== "noise" && c.what === undefined);
    expect(ALL.length).toBeGreaterThanOrEqual(400);
    expect(ownCases("noise").length).toBeGreaterThanOrEqual(200);
    expect(clean.length).toBeGreaterThanOrEqual(200);
    expect(ALL.filter((c) => c.what !== undefined).length).toBeGreaterThanOrEqual(80);
    expect(ALL.every((c) => c.why.length > 0)).toBe(true);
  });
  it.each(ALL.map((c) => [`${c.file}: ${c.text.replace(/\n/g, " ⏎ ")}${c.units ? ` [${c.units}]` : ""}`, c] as const))(
    "reads %s",
    (_, c) => {
      const got = read(c);
      expect(good(c, outcomeOf(c, got)), `${c.why}: ${JSON.stringify(got)}`).toBe(true);
    },
  );
  it("is nowhere wrong without a word", () => {
    const counts: Record<Outcome, number> = { right: 0, refused: 0, told: 0, silent: 0 };
    for (const c of ALL) counts[outcomeOf(c, read(c))]++;
    expect(counts.silent).toBe(0);
    expect(counts.told).toBe(0);
    // What can be read is read: rows are refused only where the corpus allows it.
    expect(counts.right).toBeGreaterThanOrEqual(ALL.filter((c) => good(c, "right") && !good(c, "refused")).length);
  });
});

/** Callouts of the corpus that give rows. */
const READ = ALL.filter((c) => c.rows.length > 0 && !c.either);
const cellsOf = (text: string, units?: "mm" | "in") => readCallouts(text, { units }).rows.map((r) => r.cells);

describe("callouts of the corpus together (identity)", () => {
  const metric = READ.filter((c) => c.units === "mm");
  it("permutes its rows as the callouts are permuted", () => {
    const some = fc.uniqueArray(fc.nat(metric.length - 1), { minLength: 2, maxLength: 8 });
    const shuffled = some.chain((order) =>
      fc.shuffledSubarray(order, { minLength: order.length }).map((other) => [order, other] as const),
    );
    fc.assert(
      fc.property(shuffled, ([one, two]) => {
        const rows = (order: readonly number[]) => cellsOf(order.map((i) => metric[i]!.text).join("\n\n"), "mm");
        const alone = (order: readonly number[]) => order.flatMap((i) => cellsOf(metric[i]!.text, "mm"));
        expect(rows(one)).toEqual(alone(one));
        expect(rows(two)).toEqual(alone(two));
      }),
      { numRuns: 60 },
    );
  });
  it("gives the same rows when lines that are no callouts stand around", () => {
    const others = ownCases("other").filter((c) => c.what !== "units");
    fc.assert(
      fc.property(fc.constantFrom(...metric), fc.constantFrom(...others), fc.constantFrom(...others), (c, a, b) => {
        const text = `${a.text}\n\n${c.text}\n\n${b.text}`;
        expect(cellsOf(text, "mm"), text).toEqual(cellsOf(c.text, "mm"));
      }),
      { numRuns: 150 },
    );
  });
});

const INCH = 25.4;
const LENGTHS = ["Start diameter", "Finish diameter", "Depth", "Hole depth", "Spacing", "Size tolerance"] as const;

describe("callouts in the other system (identity)", () => {
  it("are the same physical rows when units are switched and numbers converted", () => {
    const number = (value: number) => String(Number(value.toPrecision(12)));
    const shapes: readonly ((f: (mm: number) => string) => string)[] = [
      (f) => `4X ⌀${f(8)} ↧ ${f(20)}`,
      (f) => `⌀${f(9)} THRU ⌴ ⌀${f(15)} ↧ ${f(9)}`,
      (f) => `6X ⌀${f(7)} THRU EQ SP ON ⌀${f(100)} BC`,
      (f) => `M8 ↧ ${f(16)}`,
      (f) => `⌀${f(6.8)} ↧ ${f(20)}, M8 ↧ ${f(16)}`,
      (f) => `1/4-20 UNC-2B ↧ ${f(12.7)}`,
      (f) => `⌀${f(6)} THRU ⌵ ⌀${f(12)} X 90°`,
      (f) => `DRILL ${f(11.8)} REAM ${f(12)} X ${f(20)} DEEP`,
      (f) => `⌀${f(12)} ±${f(0.05)} ↧ ${f(20)}`,
      (f) => `⌀${f(20)} +${f(0.02)}/-${f(0)} THRU`,
    ];
    fc.assert(
      fc.property(fc.constantFrom(...shapes), fc.integer({ min: 80, max: 120 }), (shape, percent) => {
        const scale = shape(number).includes("M8") || shape(number).includes("UNC") ? 1 : percent / 100;
        // A zero before the point, so that nothing but the drawing tells the units.
        const mm = readCallouts(
          shape((v) => number(v * scale)),
          { units: "mm" },
        ).rows;
        const inch = readCallouts(
          shape((v) => number((v * scale) / INCH)),
          { units: "in" },
        ).rows;
        expect(inch.map((r) => [r.cells.Operation, r.cells.Quantity, r.cells.Thread, r.understood])).toEqual(
          mm.map((r) => [r.cells.Operation, r.cells.Quantity, r.cells.Thread, r.understood]),
        );
        mm.forEach((row, i) => {
          expect(row.understood, row.note).toBe(true);
          for (const heading of LENGTHS) {
            const [a, b] = [row.cells[heading] ?? null, inch[i]!.cells[heading] ?? null];
            if (a === null || b === null) expect(b).toBe(a);
            else expect(Number(b) * INCH).toBeCloseTo(Number(a), 6);
          }
        });
      }),
      { numRuns: 200 },
    );
  });
  it("lets a statement on the drawing speak for all of it, wherever it stands", () => {
    for (const [said, units] of [
      ["ALL DIMENSIONS ARE IN INCHES", "in"],
      ["DIMENSIONS IN MM", "mm"],
      ["UNITS: INCH", "in"],
    ] as const)
      for (const text of [`${said}\n\nM10 ↧ 2.00\n\n⌀6 ↧ 5`, `M10 ↧ 2.00\n\n⌀6 ↧ 5\n\n${said}`])
        expect(readCallouts(text, { units: units === "in" ? "mm" : "in" }).rows.map((r) => r.cells.Units)).toEqual([
          units,
          units,
          units,
        ]);
  });
});

describe("thickness, remarks and doubts (identity)", () => {
  const thickness = { value: 12.7, units: "mm" } as const;
  it("takes the thickness as the depth of what goes through, in the row's units, and says so", () => {
    const [hole] = readCallouts("⌀.250 THRU", { thickness }).rows;
    expect(hole!.cells.Depth).toBe(0.5);
    expect(hole!.cells.Remark).toContain("thickness given");
    const [drill, mill] = readCallouts("M8 THRU", { thickness }).rows;
    expect([drill!.cells.Depth, mill!.cells.Depth, mill!.cells["Hole depth"]]).toEqual([12.7, 12.7, null]);
    expect(readCallouts("⌀8 ↧ 5", { units: "mm", thickness }).rows[0]!.cells.Depth).toBe(5);
    const seat = readCallouts("⌀9 THRU ⌴ ⌀15", { units: "mm", thickness }).rows[1]!;
    expect(seat.cells.Depth).toBe(null);
  });
  it("keeps what was assumed with the row", () => {
    for (const c of READ)
      for (const row of read(c).rows) {
        const { Remark } = row.cells;
        expect(Remark ?? "", row.note).toBe(
          row.note.replace(/lines (\d+) to (\d+) read/, (_, a, b) => `${b - a + 1} lines read`),
        );
      }
    expect(readCallouts("M8 ↧ 16").rows[1]!.cells.Remark).toContain("2 pitches deeper");
    expect(readCallouts("4X Ø.25O THRU").rows[0]!.cells.Remark).toContain("read as");
  });
  it("asks beyond each limit and not just inside it", () => {
    const ok = (text: string, units: "mm" | "in") => readCallouts(text, { units }).rows.every((r) => r.understood);
    for (const [inside, beyond] of [
      ["⌀0.5 THRU", "⌀0.49 THRU"],
      ["⌀500 ↧ 20", "⌀501 ↧ 20"],
      ["⌀10 ↧ 200", "⌀10 ↧ 201"],
      ["⌀60 ↧ 250", "⌀60 ↧ 251"],
      ["⌀20 H7 ↧ 200", "⌀20 H7 ↧ 201"],
      ["M10 ↧ 60", "M10 ↧ 61"],
      ["M10 ↧ 1.5", "M10 ↧ 1.4"],
      ["⌀9 THRU ⌴ ⌀15 ↧ 30", "⌀9 THRU ⌴ ⌀15 ↧ 31"],
      ["⌀9 THRU ⌴ ⌀9.1 ↧ 3", "⌀9 THRU ⌴ ⌀9 ↧ 3"],
      ["⌀6.6 ↧ 20, M8 ↧ 16", "⌀6.1 ↧ 20, M8 ↧ 16"],
      ["⌀7.5 ↧ 20, M8 ↧ 16", "⌀7.6 ↧ 20, M8 ↧ 16"],
      ["DRILL 80 ↧ 20", "DRILL 80.5 ↧ 20"],
      ["⌀5 THRU ⌴ ⌀20 ↧ 5", "⌀5 THRU ⌴ ⌀20.1 ↧ 5"],
      ["6X ⌀7 THRU EQ SP ON ⌀2000 BC", "6X ⌀7 THRU EQ SP ON ⌀2001 BC"],
      ["6X ⌀7 THRU (6)", "6X ⌀7 THRU (5)"],
      ["⌀7 THRU ⌴ ⌀9 ↧ 5", "⌀7 THRU ⌀9 ↧ 5"],
      ["⌀7 ±0.1 ↧ 5", "⌀7 ±01 ↧ 5"],
      ["1000X ⌀5 ↧ 5", "1001X ⌀5 ↧ 5"],
      ["⌀10 ±2 ↧ 20", "⌀10 ±2.1 ↧ 20"],
    ] as const) {
      expect(ok(inside, "mm"), inside).toBe(true);
      expect(ok(beyond, "mm"), beyond).toBe(false);
    }
    expect(readCallouts("⌀10 ↧ 250", { units: "mm", limits: { drillDepths: 30 } }).rows[0]!.understood).toBe(true);
  });
  it("names the words that may change the meaning", () => {
    for (const [text, words] of [
      ["4X ⌀6 THRU AFTER PLATING", "AFTER PLATING"],
      ["⌀6 THRU IN ASSEMBLY", "IN ASSEMBLY"],
      ["⌀6 NOT THRU", "NOT"],
    ] as const)
      for (const row of readCallouts(text, { units: "mm" }).rows.filter((r) => r.cells.Operation)) {
        expect(row.understood).toBe(false);
        expect(row.note).toContain(`"${words}"`);
      }
  });
});

describe("threads for wire inserts (published)", () => {
  /** STI tap limits as common tables print them (ASME B18.29.1; from memory): least major and minor diameter. */
  it.each([
    ["1/4-20", 0.315, 0.2608],
    ["M8", 9.624, 8.271],
  ])("of %s", (designation, major, minor) => {
    const got = insertThread(parseThread(designation));
    const digits = designation === "M8" ? 3 : 4;
    expect(got.major).toBeCloseTo(major, digits - 1);
    expect(got.minor).toBeCloseTo(minor, digits - 1);
  });
});

describe("bad text (identity)", () => {
  it("answers a sentence for what is no text of a drawing", () => {
    const endless = readCallouts("4X ⌀5 THRU ".repeat(5000));
    expect(endless.rows).toHaveLength(1);
    expect(endless.rows[0]!.note).toContain("too long");
    const large = readCallouts("⌀5 THRU\n".repeat(400_000));
    expect(large.rows).toHaveLength(1);
    expect(large.rows[0]!.note).toContain("more than a drawing has");
  });
});
