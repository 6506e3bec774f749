/** What a drill is called: by the trade's own names for its size. */
import { describe, expect, it } from "vitest";
import { planOf, type RowCells, STEEL } from "../findings/rule.ts";

const name = (row: RowCells) => planOf({ row: { ...STEEL, ...row } }).results.drill;

/** #7 is 0.2010 in = 5.105 mm and so within a hundredth of 5.1 mm (published, ASME B94.11M number drills). */
describe("name of a drill (published: the sizes of the sets)", () => {
  const ream = { Operation: "ream", "Finish diameter": 5.3, Depth: 10, Through: "yes" };
  it("is metric in a metric row, a number, letter or fraction in an inch row", () => {
    expect(name({ ...ream, "Start diameter": 5.1 })).toBe("5.1 mm");
    expect(name({ ...ream, Units: "in", "Finish diameter": 0.2087, "Start diameter": 0.201, Depth: 0.4 })).toMatch(
      /^#?7$/,
    );
  });
  it("follows the thread, whatever the row's units", () => {
    const tap = { Operation: "tap", Depth: 8, Through: "yes" };
    expect(name({ ...tap, Thread: "1/4-20 UNC-2B", "Start diameter": 5.1 })).toMatch(/^#?7$/);
    expect(name({ ...tap, Units: "in", Depth: 0.3, Thread: "M6", "Start diameter": 0.2008 })).toBe("5.1 mm");
    expect(name({ ...tap, Units: "in", Depth: 0.3, Thread: " m6 ", "Start diameter": 0.2008 })).toBe("5.1 mm");
    expect(name({ ...tap, Thread: "#12-24 UNC-2B", "Start diameter": 4.496 })).toMatch(/^#?16$/);
  });
  it("is that of the other sets where the row's own have none, and none where nothing is near", () => {
    // 1/4 in is 6.35 mm: between the metric drills of 6.3 and 6.4
    expect(name({ ...ream, "Finish diameter": 6.5, "Start diameter": 6.35 })).toMatch(/^1\/4/);
    expect(name({ ...ream, "Finish diameter": 6.6, "Start diameter": 6.325 })).toBeNull();
    // no standard drill is as large as 150 mm, nor as small as 0.1: the row goes on without a name
    for (const size of [150, 0.1]) {
      const plan = planOf({ row: { ...STEEL, Operation: "drill", "Finish diameter": size, Depth: size } });
      expect(plan.results.drill, String(size)).toBeNull();
      expect(plan.findings.map((f) => f.code)).not.toContain("cannot-be-computed");
    }
  });
});

describe("drill of a thread's hole (independent: the list looked through)", () => {
  // ISO 965-1: the minor diameter of M10-6H lies between 8.376 and 8.676, its middle is 8.526
  const row = { Operation: "drill", Thread: "M10", Depth: 15, "Drilling oversize": 0 };
  const DRILL = { Kind: "drill", Units: "mm", Teeth: 2, "Point angle": 118, Substrate: "HSS", "Cutting length": 90 };
  const start = (cells: RowCells, ...sizes: readonly number[]) =>
    planOf({
      row: { ...STEEL, ...row, ...cells },
      tools: sizes.map((d) => ({ ...DRILL, Tool: `D ${d}`, Diameter: d, "Stick-out": 100, "Shank diameter": d })),
    }).results.tool;
  it("is the listed one nearest to the middle, in whatever order the list has them", () => {
    for (const sizes of [
      [8.42, 8.52, 8.62],
      [8.62, 8.52, 8.42],
      [8.52, 8.42, 8.62],
      [8.42, 8.62, 8.52],
    ])
      expect(start({}, ...sizes), sizes.join()).toBe("D 8.52");
  });
  it("goes by the hole that it makes, and its own size stays within the limits too", () => {
    // 0.1 over: 8.42 makes 8.52, 8.52 makes 8.62, 8.58 makes 8.68
    expect(start({ "Drilling oversize": 0.1 }, 8.52, 8.42, 8.58)).toBe("D 8.42");
    expect(start({ "Drilling oversize": 0.1 }, 8.58, 8.36, 8.52)).toBe("D 8.52");
  });
});
