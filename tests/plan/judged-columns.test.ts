import { describe, expect, it } from "vitest";
import type { FindingCode, Verdict } from "../../src/findings.ts";
import { type Case, planOf, type RowCells, STEEL } from "../findings/rule.ts";

/** A judgement that stands in a column of the lists: with its usual number, blank, and with another. */
interface Judged {
  readonly list: "material" | "tool" | "machine";
  readonly column: string;
  readonly usual: number;
  readonly other: number;
  readonly row: RowCells;
  readonly code: FindingCode;
  /** How grave the finding is with the usual number and with the other; null where there is none. */
  readonly found: readonly [Verdict | null, Verdict | null];
}

const QT = { ...STEEL, Material: "Steel 34CrNiMo6 QT (AISI 4340)" };
const slot = { ...STEEL, Operation: "slot", Tool: "EM-12-4", Depth: 4, Length: 60 };
const side = { ...STEEL, Operation: "side", Tool: "EM-12-4", Depth: 10, Length: 60, "Radial depth": 6 };
const bore = {
  ...STEEL,
  Operation: "bore",
  Tool: "EM-12-3",
  "Start diameter": 39.4,
  "Finish diameter": 40,
  Depth: 20,
  "Size tolerance": 0.03,
};
const aluminium = { ...bore, Material: "Aluminium EN AW-6082 T6 (AA 6061)" };

// 0.07 mm is the listed chip of a 12 mm cutter in C45, and at half engagement the typed feed is the chip.
const CASES: readonly Judged[] = [
  {
    ...{ list: "material", column: "Thick chip [of feed]", usual: 1.1, other: 1.5 },
    ...{ row: { ...side, "Feed per tooth": 0.09 }, code: "chip-too-thick", found: ["check", null] },
  },
  {
    ...{ list: "material", column: "Breaking chip [of feed]", usual: 2, other: 2.5 },
    ...{ row: { ...side, "Feed per tooth": 0.15 }, code: "chip-too-thick", found: ["stop", "check"] },
  },
  {
    // a thread mill goes by the same column: 1.3 listed chips
    ...{ list: "material", column: "Thick chip [of feed]", usual: 1.1, other: 1.5 },
    row: { ...STEEL, Operation: "thread mill", Tool: "TM-M6-S", Thread: "M6", Depth: 9, "Feed per tooth": 0.085 },
    ...{ code: "chip-too-thick", found: ["check", null] },
  },
  {
    ...{ list: "material", column: "Slot step [of diameter]", usual: 1, other: 0.3 },
    ...{ row: { ...slot, "Axial depth": 4 }, code: "slot-too-deep", found: [null, "check"] },
  },
  {
    ...{ list: "tool", column: "Safety factor", usual: 3, other: 8 },
    ...{ row: side, code: "tool-stress", found: [null, "check"] },
  },
  {
    ...{ list: "tool", column: "Stick-out limit [of diameter]", usual: 4, other: 3 },
    ...{ row: side, code: "stick-out", found: [null, "check"] },
  },
  {
    ...{ list: "machine", column: "Bending share [%]", usual: 50, other: 10 },
    ...{ row: { ...bore, "Size tolerance": 0.1 }, code: "gauge-first", found: [null, "ok"] },
  },
  {
    ...{ list: "machine", column: "Size scatter [%]", usual: 15, other: 100 },
    row: { ...QT, Operation: "thread mill", Tool: "TM-M6-S", Thread: "M6", Depth: 12 },
    ...{ code: "size-scatter", found: [null, "check"] },
  },
  {
    ...{ list: "machine", column: "Seat repeats [mm]", usual: 0.0015, other: 0.01 },
    ...{ row: bore, code: "size-scatter", found: [null, "check"] },
  },
  {
    // 23 µm/(m·K) × 40 mm × 20 K = 0.018 mm, over half of 0.03
    ...{ list: "machine", column: "Part warmth [K]", usual: 3, other: 20 },
    ...{ row: aluminium, code: "size-scatter", found: [null, "check"] },
  },
  {
    ...{ list: "machine", column: "Chatter ratio", usual: 100, other: 60 },
    ...{ row: { ...slot, "Axial depth": 4 }, code: "chatter", found: [null, "check"] },
  },
];

const plan = ({ list, column, row }: Judged, value: number | null) =>
  planOf({ row, [list]: { [column]: value } } satisfies Case as Case);

describe("what changes a size beside bending (independent: worked by hand)", () => {
  const scatterOf = (row: RowCells, change: Omit<Case, "row"> = {}) =>
    planOf({ row, ...change, machine: { "Size scatter [%]": 0, ...change.machine } }).steps.find(
      (s) => s.key === "scatter",
    )!.value;
  it("is runout and seat on each wall, and warmth of the size, as the root of their squares", () => {
    // a quarter of 0.01 mm runout and 0.0015 mm of the seat on both walls; 40 mm of steel (11.5 µm/(m·K)) 3 K warmer
    expect(scatterOf(bore)).toBeCloseTo(Math.hypot(2 * Math.hypot(0.0025, 0.0015), 11.5e-6 * 3 * 40), 12);
    // of aluminium twice as much warmth
    expect(scatterOf(aluminium)).toBeCloseTo(Math.hypot(2 * Math.hypot(0.0025, 0.0015), 23e-6 * 3 * 40), 12);
  });
  it("is of one wall only where a wall is judged, and warmth does not count there", () => {
    expect(scatterOf({ ...side, "Size tolerance": 0.1 })).toBeCloseTo(Math.hypot(0.0025, 0.0015), 12);
  });
  it("is nothing with a true tool, a perfect seat and an even climate", () => {
    const change = { tool: { Runout: 0 }, machine: { "Seat repeats [mm]": 0, "Part warmth [K]": 0 } };
    expect(scatterOf(bore, change)).toBe(0);
  });
  it("fires on its own where a tolerance is tight: 0.0060 mm is over half of 0.0119 and under half of 0.0121", () => {
    const found = (tolerance: number) =>
      planOf({ row: { ...bore, "Size tolerance": tolerance }, machine: { "Size scatter [%]": 0 } }).findings.some(
        (f) => f.code === "size-scatter",
      );
    expect(found(0.0119)).toBe(true);
    expect(found(0.0121)).toBe(false);
  });
});

describe("judgements in columns of the lists (identity: blank is the usual number, another one changes the verdict)", () => {
  it.each(CASES.map((c) => [`${c.column} ${c.row.Operation}`, c] as const))("%s", (_, one) => {
    const usual = plan(one, one.usual);
    expect(plan(one, null).findings).toEqual(usual.findings);
    expect(plan(one, null).results).toEqual(usual.results);
    const grave = [usual, plan(one, one.other)].map(
      (p) => p.findings.find((f) => f.code === one.code)?.severity ?? null,
    );
    expect(grave).toEqual(one.found);
  });
});
