import { describe, expect, it } from "vitest";
import { planOf, type RowCells, STEEL } from "../findings/rule.ts";

const side = { ...STEEL, Operation: "side", Depth: 20, Length: 100, "Spring passes": 0 };
const bore = { ...STEEL, Operation: "bore", Depth: 14, Passes: 1, "Spring passes": 0 };
/** Finishing cuts that bend a good part of their tolerance, and the size that each is to have. */
const ROWS: readonly (readonly [RowCells, number])[] = [
  [{ ...side, Tool: "EM-10-4", "Radial depth": 0.6, "Size tolerance": 0.03 }, 0],
  [{ ...side, Tool: "EM-12-4", "Radial depth": 1, "Size tolerance": 0.05 }, 0],
  [
    { ...bore, Tool: "EM-10-4", "Stick-out": 45, "Start diameter": 47, "Finish diameter": 48, "Size tolerance": 0.12 },
    48,
  ],
  [
    {
      ...bore,
      Operation: "boss",
      Tool: "EM-10-4",
      "Stick-out": 45,
      "Start diameter": 31,
      "Finish diameter": 30,
      "Size tolerance": 0.08,
    },
    30,
  ],
];

describe("wear value to start a wall with (identity)", () => {
  for (const [row, wanted] of ROWS) {
    it(`brings the end that bends least to size: ${row.Operation} ${row.Tool} ${row.Way ?? ""}`, () => {
      const plan = planOf({ row });
      const start = plan.results.startWearValue;
      expect(typeof start, "a wear value is proposed").toBe("number");
      const typed = planOf({ row: { ...row, "Wear value": start as number } });
      const step = typed.steps.find((s) => s.key === "size")!;
      const { least, most } = step.facts as { least: number; most: number };
      // what is left of the band lies on the side where metal can still be taken off
      const safe = row.Operation === "bore" ? most : least;
      expect(safe).toBeCloseTo(wanted, 5);
      // and the row is no worse than a note to gauge it
      const codes = typed.findings.filter((f) => f.severity !== "ok").map((f) => f.code);
      for (const code of ["size-out", "size-may-be-out"]) expect(codes).not.toContain(code);
    });
  }
  it("a measured size outside its limits is never ok, one inside is not judged by the prediction", () => {
    const [row] = ROWS[2]!;
    expect(planOf({ row: { ...row, Measured: 48.13 } }).verdict).toBe("stop");
    expect(planOf({ row: { ...row, Measured: 47.87 } }).findings.map((f) => f.code)).toContain("measured-out");
    expect(planOf({ row: { ...row, Measured: 48.02 } }).findings.map((f) => f.code)).not.toContain("measured-out");
  });
});

describe("size of a wall at a typed feed (identity)", () => {
  it("never gets worse with one more spring pass or pass, over sixty rows", () => {
    let s = 7;
    const next = () => {
      s = (s * 48271) % 2147483647;
      return s / 2147483647;
    };
    for (let i = 0; i < 60; i++) {
      const inside = next() < 0.5;
      const stock = 0.1 + 1.5 * next();
      const row: RowCells = {
        ...bore,
        Operation: inside ? "bore" : "boss",
        Tool: next() < 0.5 ? "EM-10-4L" : "EM-12-4",
        "Finish diameter": 40,
        "Start diameter": inside ? 40 - 2 * stock : 40 + 2 * stock,
        "Size tolerance": 0.2,
        "Feed per tooth": 0.02 + 0.06 * next(),
      };
      const error = (cells: RowCells) => {
        const step = planOf({ row: { ...row, ...cells } }).steps.find((p) => p.key === "size")!;
        const { least, most } = step.facts as { least: number; most: number };
        return Math.max(Math.abs(least - 40), Math.abs(most - 40));
      };
      const now = error({});
      expect(error({ "Spring passes": 1 }), JSON.stringify(row)).toBeLessThanOrEqual(now + 1e-7);
      expect(error({ Passes: 2 }), JSON.stringify(row)).toBeLessThanOrEqual(now * 1.001 + 1e-6);
    }
  });
});
