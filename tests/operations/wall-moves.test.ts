/** Times of walls and threads: the moves of each pass one after the other, by the formulas of a move and of an arc. */
import { describe, expect, it } from "vitest";
import { arcTime, moveTime } from "../../src/time.ts";
import { planOf, type RowCells, STEEL } from "../findings/rule.ts";

/** Centre V3: rapid 24 m/min, 3 m/s²; without a ramp. */
const at = (row: RowCells, more: RowCells = {}, tool: RowCells = {}) =>
  planOf({ row: { ...STEEL, ...row }, machine: { "Ramp time [s]": 0, ...more }, tool });
const rapid = (distance: number) => moveTime(distance, 24_000, 3);
const arrive = rapid(25) + rapid(20);
/** Half a turn in, so many on the path, half a turn out. */
const circle = (radius: number, turns: number, feed: number, rise: number) =>
  2 * arcTime(radius / 2, 0.5, feed, 3, 0) + arcTime(radius, turns, feed, 3, rise);
const ideal = (radius: number, turns: number, feed: number, rise: number) =>
  (60 * (2 * 0.5 * Math.PI * radius + turns * Math.hypot(2 * Math.PI * radius, rise))) / feed;

describe("times of round walls (independent: the moves a machinist would write)", () => {
  const bore = {
    Operation: "bore",
    Tool: "EM-10-4",
    "Start diameter": 26,
    "Finish diameter": 30,
    Depth: 10,
    "Spring passes": 0,
  };
  it("a bore: down, round once on each pass and level, up", () => {
    for (const levels of [1, 2]) {
      const { time, results, steps } = at({ ...bore, Passes: 2, "Axial depth": 10 / levels });
      const feed = results.tableFeed!;
      expect(time!.cutting).toBeCloseTo(levels * (circle(9, 1, feed, 0) + circle(10, 1, feed, 0)), 9);
      expect(time!.moving).toBeCloseTo(arrive + 4 * levels * rapid(12), 9);
      expect(time!.ideal).toBeCloseTo(levels * (ideal(9, 1, feed, 0) + ideal(10, 1, feed, 0)), 9);
      expect(time!.waiting).toBe(0);
      expect(steps.find((s) => s.key === "timeEach")!.value).toBeCloseTo(time!.cutting + time!.moving, 9);
      expect(results.timeEach).toBeCloseTo(time!.cutting + time!.moving, 9);
    }
  });
  it("a boss: outside, by the radius of the wall and of the cutter", () => {
    const { time, results } = at({ ...bore, Operation: "boss", "Start diameter": 34, Passes: 2 });
    const feed = results.tableFeed!;
    expect(time!.cutting).toBeCloseTo(circle(21, 1, feed, 0) + circle(20, 1, feed, 0), 9);
  });
  it("from solid: a helix down to the floor and once round on it, then each wider circle on every level", () => {
    const { time, results, steps } = at({ ...bore, "Start diameter": 0, "Finish diameter": 40, "Axial depth": 5 });
    const feed = results.tableFeed!;
    // rises of 5 mm a turn: two turns and one more on the first circle of 19; the others on two levels
    const wide = [26, 33, 40].map((d) => circle((d - 10) / 2, 1, feed, 0));
    expect(results.depths).toHaveLength(4);
    expect(time!.cutting).toBeCloseTo(circle(4.5, 3, feed, 5) + 2 * wide.reduce((a, b) => a + b), 9);
    expect(time!.moving).toBeCloseTo(arrive + (2 + 3 * 4) * rapid(12), 9);
    expect(steps.find((s) => s.key === "axialDepth")!.facts).toMatchObject({ levels: 2, helix: true });
  });
  it("a side round an arc: its length of it, half a turn in, back in rapid", () => {
    const side = {
      Operation: "side",
      Tool: "EM-10-4",
      Depth: 10,
      "Finish diameter": 60,
      "Radial depth": 1,
      Length: 94.2,
    };
    for (const [where, radius] of [
      ["outside", 35],
      ["inside", 25],
    ] as const) {
      const { time, results } = at({ ...side, Side: where });
      const feed = results.tableFeed!;
      expect(time!.cutting).toBeCloseTo(
        arcTime(radius, 94.2 / (60 * Math.PI), feed, 3, 0) + arcTime(radius / 2, 0.5, feed, 3, 0),
        9,
      );
      expect(time!.moving).toBeCloseTo(arrive + 2 * rapid(12) + rapid(94.2 + 5), 9);
    }
    // all the way round where the row names no length
    const whole = at({ ...side, Side: "outside", Length: null });
    expect(whole.time!.moving).toBeCloseTo(arrive + 2 * rapid(12) + rapid(60 * Math.PI + 5), 9);
  });
});

describe("times of straight walls (independent)", () => {
  it("a side goes half a cutter beyond its length, a face a whole one; back in rapid", () => {
    const side = at({ Operation: "side", Tool: "EM-10-4", Depth: 10, Length: 60, "Radial depth": 1 });
    expect(side.time!.cutting).toBeCloseTo(moveTime(65, side.results.tableFeed!, 3), 9);
    expect(side.time!.moving).toBeCloseTo(arrive + 2 * rapid(12) + rapid(65), 9);
    expect(side.time!.ideal).toBeCloseTo((60 * 65) / side.results.tableFeed!, 9);
    const face = at({ Operation: "face", Tool: "FM-40-4", Depth: 2, Length: 60, "Total width": 50 });
    expect(face.results.depths).toEqual([25, 50]);
    expect(face.time!.cutting).toBeCloseTo(2 * moveTime(100, face.results.tableFeed!, 3), 9);
    expect(face.time!.moving).toBeCloseTo(arrive + 4 * rapid(4) + 2 * rapid(100), 9);
  });
  it("a hole beside the last one is no way to go", () => {
    const beside = at({ Operation: "side", Tool: "EM-10-4", Depth: 10, Length: 60, "Radial depth": 1, Spacing: 0 });
    expect(beside.time!.moving).toBeCloseTo(rapid(20) + 2 * rapid(12) + rapid(65), 9);
  });
  it("a machine that does not tell how it moves has no time", () => {
    for (const blank of ["Rapid [m/min]", "Acceleration [m/s²]"]) {
      const plan = at(
        { Operation: "side", Tool: "EM-10-4", Depth: 10, Length: 60, "Radial depth": 1 },
        { [blank]: null },
      );
      expect(plan.time).toBeUndefined();
      expect(plan.steps.map((s) => s.key)).not.toContain("timeEach");
      expect(plan.results.tableFeed).toBeGreaterThan(0);
    }
  });
});

describe("times of threads (independent)", () => {
  const row = {
    Operation: "thread mill",
    Thread: "M6",
    Tool: "TM-M6-S",
    "Start diameter": 5,
    Depth: 9,
    Passes: 2,
    "Spring passes": 1,
  };
  it("a turn for each pitch and one more on each pass, each on its own radius", () => {
    const { time, results, steps } = at(row);
    const feed = results.tableFeed!;
    const [path, tip] = [results.pathRadius!, results.majorDiameter as number];
    const deep = (tip - 5) / 2;
    const radii = (results.depths as number[]).map((d) => path - (deep - d));
    expect(radii).toHaveLength(3);
    expect(radii[2]).toBeCloseTo(path, 9);
    expect(time!.cutting).toBeCloseTo(
      radii.reduce((sum, r) => sum + circle(r, 10, feed, 1), 0),
      9,
    );
    expect(time!.moving).toBeCloseTo(arrive + 6 * rapid(11), 9);
    expect(steps.find((s) => s.key === "timeEach")!.facts).toEqual({ passes: 3, turns: 10 });
  });
  it("a full profile goes round once, on each level", () => {
    const full = { ...row, Tool: "TM-M6x1-F", Passes: 1, "Spring passes": 0 };
    const one = at(full);
    const { pathRadius, tableFeed } = one.results;
    expect(one.time!.cutting).toBeCloseTo(circle(pathRadius!, 1, tableFeed!, 1), 9);
    const two = at(full, {}, { "Cutting length": 5, "Neck length": 20, "Neck diameter": 3 });
    expect(two.time!.cutting).toBeCloseTo(2 * circle(two.results.pathRadius!, 1, two.results.tableFeed!, 1), 9);
    expect(two.time!.moving).toBeCloseTo(arrive + 4 * rapid(11), 9);
  });
  it("outside the shallower passes run farther out", () => {
    const out = at({
      ...row,
      Thread: "M20x1.5-6g",
      Tool: "TM-M16-S",
      "Start diameter": 19.9,
      Depth: 15,
      "Spring passes": 0,
    });
    const path = out.results.pathRadius!;
    const deep = (19.9 - (2 * path - 11.6)) / 2;
    const feed = out.results.tableFeed!;
    const radii = (out.results.depths as number[]).map((d) => path + (deep - d));
    expect(out.time!.cutting).toBeCloseTo(
      radii.reduce((sum, r) => sum + circle(r, 11, feed, 1.5), 0),
      9,
    );
  });
});
