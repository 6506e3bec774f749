/** Times of holes: the moves of each operation, one after the other, by the formula of a move. */
import { describe, expect, it } from "vitest";
import { moveTime } from "../../src/time.ts";
import { planOf, type RowCells, STEEL } from "../findings/rule.ts";

/** Centre V3: rapid 24 m/min, 3 m/s²; without a ramp, so that a long move takes s/v + v/a. */
const machine = { "Ramp time [s]": 0 };
const at = (row: RowCells, more: RowCells = {}) =>
  planOf({ row: { ...STEEL, ...row }, machine: { ...machine, ...more } });
const rapid = (distance: number) => moveTime(distance, 24_000, 3);
/** To the next hole, and from 20 mm above down to the clearance of 2 mm. */
const arrive = (spacing = 25) => rapid(spacing) + rapid(20);

describe("times of holes (independent: the moves a machinist would write)", () => {
  it("a move of 100 mm at 24 m/min and 3 m/s² takes distance over speed and one acceleration", () =>
    expect(rapid(100)).toBeCloseTo(100 / 400 + 400 / 3000, 9));

  const ream = { Operation: "ream", Tool: "R-10", "Finish diameter": 10, "Start diameter": 9.8, Depth: 20 };
  it("a reamer feeds in and leaves in rapid; through the work it goes 1 mm and its lead of a tenth further", () => {
    for (const [through, travel] of [
      ["no", 20],
      ["yes", 22],
    ] as const) {
      const { time, results } = at({ ...ream, Through: through, "Hole depth": 40 });
      expect(time!.cutting).toBeCloseTo(moveTime(travel + 2, results.tableFeed!, 3), 9);
      expect(time!.moving).toBeCloseTo(arrive() + rapid(travel + 2), 9);
      expect(time!.waiting).toBe(0);
    }
  });
  it("a farther hole takes as much longer as its rapid", () => {
    const far = at({ ...ream, Through: "yes", Spacing: 200 }).time!.moving;
    expect(far - at({ ...ream, Through: "yes" }).time!.moving).toBeCloseTo(rapid(200) - rapid(25), 9);
  });
  it("the reamer's feed is its feed per turn times its speed", () => {
    const { results } = at({ ...ream, Through: "yes", "Feed per tooth": 0.3 });
    expect(results.tableFeed! / results.spindleSpeed!).toBeCloseTo(0.3, 9);
  });

  const tap = { Operation: "tap", Tool: "T-M6", Thread: "M6", "Start diameter": 5, Depth: 10 };
  it("a tap goes in and out at its pitch; through the work it goes 1 mm and its chamfer further", () => {
    for (const [through, travel] of [
      ["no", 10],
      // T-M6 has a chamfer of 4 pitches of 1 mm
      ["yes", 15],
    ] as const) {
      const { time, results } = at({ ...tap, Through: through, "Hole depth": 30 });
      expect(results.tableFeed! / results.spindleSpeed!).toBeCloseTo(1, 9);
      expect(time!.cutting).toBeCloseTo(2 * moveTime(travel + 2, results.tableFeed!, 3), 9);
      expect(time!.moving).toBeCloseTo(arrive(), 9);
    }
  });

  it("a countersink on a hole goes as deep as its cone: 3 mm for 3 mm of radius at 90°", () => {
    const sink = { Operation: "countersink", Tool: "CS-12.5", "Finish diameter": 12, "Start diameter": 6 };
    const { time, results } = at(sink);
    expect(time!.cutting).toBeCloseTo(moveTime(3 + 2, results.tableFeed!, 3), 9);
    expect(time!.moving).toBeCloseTo(arrive() + rapid(5), 9);
    // two turns of the spindle at the bottom
    expect((time!.waiting * results.spindleSpeed!) / 60).toBeCloseTo(2, 9);
    // without a hole the point goes the whole way
    const solid = at({ ...sink, "Start diameter": null });
    expect(solid.time!.cutting).toBeCloseTo(moveTime(6 + 2, solid.results.tableFeed!, 3), 9);
  });

  it("a drill through the work goes its point and 1 mm further than the hole is deep", () => {
    const drill = { Operation: "drill", Tool: "D-10.2", "Finish diameter": 10.2, Depth: 15 };
    // half the diameter over tan 59°
    const point = 5.1 / Math.tan((59 * Math.PI) / 180);
    for (const [through, travel] of [
      ["no", 15 + point],
      ["yes", 15 + point + 1],
    ] as const) {
      const { time, results } = at({ ...drill, Through: through, "Hole depth": 40 });
      expect(time!.cutting).toBeCloseTo(moveTime(travel + 2, results.tableFeed!, 3), 9);
      expect(time!.moving).toBeCloseTo(arrive() + rapid(travel + 2), 9);
    }
  });

  it("a measured cycle lengthens moves and cuts alike", () => {
    const [plain, measured] = [at(ream, {}), at(ream, { "Cycle factor": 1.25 })];
    expect(measured.time!.cutting / plain.time!.cutting).toBeCloseTo(1.25, 9);
    expect(measured.time!.moving / plain.time!.moving).toBeCloseTo(1.25, 9);
  });
});
