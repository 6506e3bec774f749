import { describe, expect, it } from "vitest";
import { advise } from "../../src/plan/advise.ts";
import { planRow } from "../../src/plan/row.ts";
import { rowFacts } from "../../src/program/facts.ts";
import { en } from "../../src/words/en/index.ts";
import { worded } from "../../src/words/worded.ts";
import { caseLists, caseRow, planOf, type RowCells, STEEL } from "../findings/rule.ts";

const slot = { ...STEEL, Operation: "slot", Depth: 5, Length: 100, Tool: "EM-10-4", "Axial depth": 5 };
const face = { ...STEEL, Operation: "face", "Axial depth": 1, Length: 100, Tool: "FM-50-5" };
const depths = (row: Parameters<typeof planOf>[0]["row"]) => planOf({ row }).results.depths;
const cutting = (row: Parameters<typeof planOf>[0]["row"]) => planOf({ row }).time!.cutting;

describe("slots and faces wider than a pass (common practice)", () => {
  it("goes down the middle of a slot and then along both walls", () => {
    // 16 wide by a 10 mm cutter: 3 mm on each wall
    expect(depths({ ...slot, "Total width": 16 })).toEqual([10, 13, 16]);
    // 30 wide: 20 more, no more than half the cutter at a time
    expect(depths({ ...slot, "Total width": 30 })).toEqual([10, 15, 20, 25, 30]);
    expect(depths({ ...slot, "Total width": 16, "Radial depth": 1.5 })).toEqual([10, 11.5, 13, 14.5, 16]);
  });
  it("leaves a slot of the cutter's width, and one without a width, as they were (identity)", () => {
    expect(depths(slot)).toEqual([10]);
    expect(depths({ ...slot, "Total width": 10 })).toEqual([10]);
    expect(cutting({ ...slot, "Total width": 10 })).toBe(cutting(slot));
  });
  it("takes the finish diameter of a slot for its width", () => {
    expect(depths({ ...slot, "Finish diameter": 16 })).toEqual([10, 13, 16]);
  });
  it("costs every pass its time, on every level (identity)", () => {
    const once = cutting(slot);
    expect(cutting({ ...slot, "Total width": 16 })).toBeCloseTo(3 * once, 9);
    const levels = { ...slot, "Axial depth": 2.5 };
    expect(cutting({ ...levels, "Total width": 16 })).toBeCloseTo(3 * cutting(levels), 9);
    expect(planOf({ row: { ...levels, "Total width": 16 } }).results.passes).toBe(6);
  });
  it("mills a face in one pass where the cutter covers it, else in even strips", () => {
    expect(depths({ ...face, "Total width": 42 })).toEqual([42]);
    expect(depths({ ...face, "Total width": 43 })).toEqual([21.5, 43]);
    const wide = depths({ ...face, "Total width": 100 }) as number[];
    expect(wide).toHaveLength(3); // no strip wider than 0.7 of the cutter
    wide.forEach((depth, i) => {
      expect(depth).toBeCloseTo((100 * (i + 1)) / 3, 9);
    });
    expect(depths({ ...face, "Total width": 100, "Radial depth": 40 })).toEqual([100 / 3, 200 / 3, 100]);
    expect(depths({ ...face, "Total width": 20, "Radial depth": 40 })).toEqual([20]);
  });
});

describe("where the passes run (independent: cutter by cutter, the width that is cleared)", () => {
  const cleared = (row: RowCells): readonly [number, number] => {
    const [read, lists] = [caseRow({ row }), caseLists({ row })];
    const { shape } = rowFacts(read, worded(planRow(read, lists), en), lists, 0);
    if (shape?.kind !== "line") throw new Error("not a line");
    return [Math.min(...shape.offsets), Math.max(...shape.offsets)];
  };
  it("clears a slot from wall to wall, the middle in the middle", () => {
    for (const width of [10.2, 16, 21, 25.5, 30, 41]) {
      const [least, most] = cleared({ ...slot, "Total width": width });
      expect(most + 5 - (least - 5), String(width)).toBeCloseTo(width, 9);
      expect(most).toBeCloseTo(-least, 9);
    }
  });
  it("goes over a face in steps of the strip", () => {
    const [least, most] = cleared({ ...face, "Total width": 99 });
    expect([least, most]).toEqual([0, 66]);
  });
});

describe("advice for a slot (identity: the slot stays as wide as it is)", () => {
  const heavy = { ...slot, Depth: 10, "Axial depth": 10, Tool: "EM-20-4", Machine: "Knee mill K1" };
  const changes = (row: typeof heavy & { "Total width"?: number }) =>
    advise(caseRow({ row }), caseLists({ row })).advice.flatMap((a) => a.changes);
  const diameter = (tool: string) => Number(/^EM-(\d+)/.exec(tool)![1]);

  it("offers a lower step, and never another diameter where the cutter makes the slot", () => {
    const found = changes(heavy);
    expect(found.length).toBeGreaterThan(0);
    for (const { key, to } of found) if (key === "tool") expect(diameter(String(to))).toBe(20);
    expect(found.some(({ key }) => key === "axialDepth")).toBe(true);
  });
  it("offers none that is wider than the slot says", () => {
    for (const { key, to, takes } of changes({ ...heavy, Tool: "EM-16-4", "Total width": 16 }))
      if (key === "tool") expect(diameter(String(to ?? takes))).toBeLessThanOrEqual(16);
  });
});
