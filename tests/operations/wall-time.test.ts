import { describe, expect, it } from "vitest";
import { moveTime } from "../../src/time.ts";
import { planOf, type RowCells, STEEL } from "../findings/rule.ts";

const slot = { ...STEEL, Operation: "slot", Tool: "EM-10-4", Depth: 8, Length: 60, "Axial depth": 8 };
const at = (row: RowCells, machine?: RowCells) => planOf({ row, machine });
const cutting = (row: RowCells, machine?: RowCells) => at(row, machine).time!.cutting;

describe("times of walls (identity)", () => {
  it("a slot at full width in four levels cuts four times as long as in one", () =>
    expect(cutting({ ...slot, "Axial depth": 2 }) / cutting(slot)).toBeCloseTo(4, 9));
  it("so does a face, and a spring pass costs as much as a pass", () => {
    const face = { ...STEEL, Operation: "face", Tool: "EM-20-4", Depth: 4, Length: 100, "Radial depth": 20 };
    expect(cutting({ ...face, "Axial depth": 1 }) / cutting({ ...face, "Axial depth": 4 })).toBeCloseTo(4, 9);
    expect(cutting({ ...slot, "Spring passes": 1 }) / cutting(slot)).toBeCloseTo(2, 9);
  });
  it("a helix goes down once, whatever the levels of the passes that widen it", () => {
    const bore = { ...STEEL, Operation: "bore", Tool: "EM-10-4", "Finish diameter": 14, Depth: 12 };
    expect(at(bore).results.passes).toBe(1);
    // one turn for each rise, one on the floor, two half circles of half the radius
    const plan = planOf({ row: bore, machine: { "Acceleration [m/s²]": 1e6, "Ramp time [s]": 0 } });
    const rise = 2 * Math.PI * 2 * Math.tan((3 * Math.PI) / 180);
    const way = (12 / rise + 1) * Math.hypot(4 * Math.PI, rise) + 2 * Math.PI;
    expect(plan.time!.cutting / ((60 * way) / (plan.results.tableFeed as number))).toBeCloseTo(1, 3);
  });
});

describe("times by the machine's row (independent)", () => {
  it("each move from rest to rest with the machine's ramp", () => {
    const { results, time } = at(slot, { "Ramp time [s]": 0.1 });
    // the length and half the cutter at the table feed; Centre V3 accelerates at 3 m/s²
    expect(time!.cutting).toBeCloseTo(moveTime(65, results.tableFeed as number, 3, 0.1), 9);
    expect(time!.cutting).toBeGreaterThan(cutting(slot, { "Ramp time [s]": 0 }));
  });
  it("a measured cycle calibrates all moves", () => {
    const [plain, slower] = [at(slot), at(slot, { "Cycle factor": 1.2 })];
    expect(slower.results.timeEach! / plain.results.timeEach!).toBeCloseTo(1.2, 9);
  });
});
