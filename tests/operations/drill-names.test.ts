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
  });
});
