/** Size of a milled thread: the wear value to start with, one that is typed, one that is measured; by hand and by identity. */
import { describe, expect, it } from "vitest";
import { about, type Case, planOf, type RowCells, STEEL } from "../findings/rule.ts";

type More = Omit<Case, "row">;
const at = (row: RowCells, more: More = {}) => planOf({ row: { ...STEEL, ...row }, ...more });
type Plan = ReturnType<typeof at>;
const codes = (plan: Plan) => plan.findings.map((f) => f.code);
const facts = (plan: Plan, key: string) => plan.steps.find((s) => s.key === key)?.facts as Record<string, unknown>;

/** ISO 965-1: pitch diameter of M6-6H 5.350 to 5.500, of M20×1.5-6g 18.854 to 18.994. */
const M6 = { Operation: "thread mill", Thread: "M6", Tool: "TM-M6-S", "Start diameter": 5, Depth: 9, "Stick-out": 34 };
const STEM = {
  Operation: "thread mill",
  Thread: "M20x1.5-6g",
  Tool: "TM-M16-S",
  "Start diameter": 19.9,
  Depth: 15,
  "Stick-out": 95,
};
const passes = { Passes: 1, "Spring passes": 0 };

describe("wear value to start a thread with (identity)", () => {
  const ROWS: readonly (readonly [string, RowCells])[] = [
    ["inside", { ...M6, ...passes }],
    ["inside, against the feed", { ...M6, ...passes, Way: "conventional" }],
    ["inside, two passes and a spring pass", { ...M6, Passes: 2, "Spring passes": 1 }],
    ["outside", { ...STEM, ...passes }],
    ["outside, against the feed", { ...STEM, ...passes, Way: "conventional" }],
  ];
  it.each(ROWS)("%s: the end that bends least comes to the middle, and the same is proposed again", (_, row) => {
    const start = at(row).results.startWearValue!;
    expect(start).toBeLessThan(0);
    const typed = at({ ...row, "Wear value": start });
    const { least, most } = facts(typed, "size") as { least: number; most: number };
    // what is left of the band can still be cut: a small thread inside, a large one outside
    const [safe, middle] = row.Thread === "M6" ? [most, 5.425] : [least, (18.854 + 18.994) / 2];
    expect(safe).toBeCloseTo(middle, 5);
    expect(typed.results.startWearValue!).toBeCloseTo(start, 5);
    expect(facts(typed, "size").programmed).toBeCloseTo(middle + (row.Thread === "M6" ? -2 : 2) * start, 3);
  });
});

describe("a thread that bending leaves too shallow (by hand)", () => {
  it("is none where its pitch diameter comes out under the hole, outside over the blank; a measured one is what it is", () => {
    const far = { ...M6, ...passes, "Start diameter": 5.1, "Stick-out": 150 };
    const plan = at(far);
    expect(codes(plan)).toContain("no-thread");
    expect(plan.results).toMatchObject({ sizeMin: about(5.35, 3), sizeMax: about(5.5, 3) });
    expect(plan.results.size).toBeUndefined();
    const found = plan.findings.find((f) => f.code === "no-thread")!.facts as { value: number; limit: number };
    expect(found.limit).toBe(5.1);
    expect(found.value).toBeLessThan(5.1);
    const measured = at({ ...far, Measured: 5.4 });
    expect(codes(measured)).not.toContain("no-thread");
    expect(measured.results.size).toBe(5.4);
    const stem = at({ ...STEM, ...passes, "Stick-out": 500 });
    const none = stem.findings.find((f) => f.code === "no-thread")!.facts as { value: number; limit: number };
    expect(none.limit).toBe(19.9);
    expect(none.value).toBeGreaterThan(19.9);
  });
});

describe("a full profile (by hand)", () => {
  const row = { Operation: "thread mill", Thread: "M6", Tool: "TM-M6x1-F", "Start diameter": 5, ...passes };
  const tool = {
    "Cutting length": 16,
    "Neck diameter": null,
    "Neck length": null,
    "Stick-out": 30,
    "Shank diameter": 6,
  };
  const first = (cells: RowCells, more: RowCells = {}) =>
    (facts(at({ ...row, ...cells }, { tool: { ...tool, ...more } }), "deflection").segments as { length: number }[])[0]!
      .length;
  it("is loaded at the middle of the profiles that cut: half of the depth, or half of the edge", () => {
    expect(first({ Depth: 10 })).toBeCloseTo(16 - 5, 9);
    expect(first({ Depth: 16 })).toBeCloseTo(16 - 8, 9);
    expect(first({ Depth: 20 })).toBeCloseTo(16 - 8, 9);
  });
  it("cuts with as many profiles at once as the depth has pitches, no more than the edge has", () => {
    const power = (depth: number) =>
      at({ ...row, Depth: depth, "Feed per tooth": 0.01 }, { tool: { ...tool, Helix: 0 } }).results.power!;
    expect(power(8) / power(4)).toBeCloseTo(2, 6);
    expect(power(20) / power(4)).toBeCloseTo(4, 6);
    // and a single profile with one
    const single = (depth: number) => at({ ...M6, ...passes, Depth: depth }).results.power!;
    expect(single(12)).toBeCloseTo(single(6), 9);
  });
  it("without a depth it is worked out as if it cut one pitch", () => {
    const open = at({ ...row, Depth: null, "Feed per tooth": 0.01 }, { tool: { ...tool, Helix: 0 } });
    const one = at({ ...row, Depth: 1, "Feed per tooth": 0.01 }, { tool: { ...tool, Helix: 0 } });
    expect(open.results.power).toBeCloseTo(one.results.power!, 9);
    expect(open.time).toBeUndefined();
    expect(codes(open)).not.toContain("fault");
  });
});
