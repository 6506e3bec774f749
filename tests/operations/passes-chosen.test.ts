/** Passes that a row chooses by itself, against every number of passes and spring passes typed. */
import { describe, expect, it } from "vitest";
import { planRow } from "../../src/plan/row.ts";
import { type Case, caseLists, caseRow, type RowCells, STEEL } from "../findings/rule.ts";

/** A machine that is not held to chatter. */
const machine = { "Chatter ratio": 100_000 };
function planner(change: Omit<Case, "row">, base: RowCells) {
  const lists = caseLists({ row: { ...STEEL, ...base }, ...change });
  return (cells: RowCells) => planRow(caseRow({ row: { ...STEEL, ...base, ...cells } }), lists);
}
type Plan = ReturnType<ReturnType<typeof planner>>;
const bad = (plan: Plan, key: string) => {
  const limit = plan.limits.find((l) => l.key === key);
  return limit ? (limit.band?.[1] ?? limit.load) : 0;
};

describe("passes of a thread (independent: all of them tried)", () => {
  const M6 = { Operation: "thread mill", Thread: "M6", Tool: "TM-M6-S", "Start diameter": 5, Depth: 9 };
  const QT = "Steel 42CrMo4 QT (AISI 4140)";
  const M10 = { Operation: "thread mill", Thread: "M10", Tool: "TM-M10x1.5-F", Depth: 15, "Start diameter": 8.5 };
  const ROWS: readonly (readonly [string, RowCells])[] = [
    ["M6", M6],
    ["M6, 30 mm out", { ...M6, "Stick-out": 30 }],
    ["M6 in tough steel, 26 mm out", { ...M6, Material: QT, "Stick-out": 26 }],
    ["M6 with a long neck", { ...M6, Tool: "TM-M6-SL", Depth: 20 }],
    ["M6 with a long neck in tough steel", { ...M6, Tool: "TM-M6-SL", Depth: 20, Material: QT }],
    ["M10, full profile", M10],
    ["M10, full profile in tough steel", { ...M10, Material: QT }],
  ];
  it.each(ROWS)("%s: the quickest that holds stress and size, if any does", (_, row) => {
    const plan = planner({ machine }, row);
    const chosen = plan({}).results;
    const holds = (p: Plan) => bad(p, "stress") <= 1 + 1e-9 && bad(p, "deflection") <= 0.5 + 1e-9;
    const cost = ({ passes, springPasses, tableFeed }: Plan["results"]) => (passes! + springPasses!) / tableFeed!;
    const all = [1, 2, 3, 4, 5].flatMap((passes) =>
      [0, 1, 2, 3].map((springs) => plan({ Passes: passes, "Spring passes": springs })),
    );
    const able = all.filter(holds);
    const typed = plan({ Passes: chosen.passes!, "Spring passes": chosen.springPasses! });
    expect(typed.results.tableFeed).toBeCloseTo(chosen.tableFeed!, 9);
    if (able.length > 0) {
      expect(holds(typed)).toBe(true);
      expect(cost(chosen)).toBeCloseTo(Math.min(...able.map((p) => cost(p.results))), 9);
    } else {
      // none: a tool that holds first, and then no way that is as quick comes nearer by a tenth
      const stress = Math.min(...all.map((p) => bad(p, "stress")));
      if (stress <= 1) expect(bad(typed, "stress")).toBeLessThanOrEqual(1 + 1e-9);
      for (const p of all)
        if (cost(p.results) <= cost(chosen) * (1 + 1e-9) && bad(p, "stress") <= Math.max(1, bad(typed, "stress")))
          expect(bad(p, "deflection")).toBeGreaterThanOrEqual(0.9 * bad(typed, "deflection") - 1e-9);
    }
  });
  it("a typed number of passes is kept, its spring passes chosen; and the other way round", () => {
    const plan = planner({ machine }, { ...M6, "Stick-out": 30 });
    expect(plan({ Passes: 4 }).results.passes).toBe(4);
    expect(plan({ "Spring passes": 3 }).results.springPasses).toBe(3);
    expect(plan({ Passes: 2, "Spring passes": 0 }).results).toMatchObject({ passes: 2, springPasses: 0 });
  });
  it("a full profile that would chatter in its quickest passes takes as many as are quiet", () => {
    const free = planner({ machine }, { ...M10, Depth: 16.5 });
    const held = planner({}, { ...M10, Depth: 16.5 });
    const chatters = (p: Plan) => p.findings.some((f) => f.code === "chatter");
    const quickest = free({}).results.passes!;
    const chosen = held({});
    expect(chatters(held({ Passes: quickest }))).toBe(true);
    expect(chatters(chosen)).toBe(false);
    expect(chosen.results.passes!).toBeGreaterThan(quickest);
    for (let passes = quickest; passes < chosen.results.passes!; passes++)
      expect(chatters(held({ Passes: passes }))).toBe(true);
    // stress and size hold as they did
    expect(bad(chosen, "stress")).toBeLessThanOrEqual(Math.max(1, bad(free({}), "stress")) + 1e-9);
    expect(bad(chosen, "deflection")).toBeLessThanOrEqual(Math.max(0.5, bad(free({}), "deflection")) + 1e-9);
  });
});

describe("passes of a bore (independent: all of them tried)", () => {
  const bore = { Operation: "bore", Tool: "EM-10-4L", "Start diameter": 26, "Finish diameter": 30, Depth: 14 };
  it.each([0.4, 0.25, 0.15, 0.1, 0.05, 0.02])(
    "± %d: the fewest that hold, with the spring passes that they need",
    (tolerance) => {
      const plan = planner({ machine }, { ...bore, "Size tolerance": tolerance });
      const chosen = plan({});
      const loadOf = (p: Plan) => Math.max(bad(p, "deflection") / 0.5, bad(p, "leastChip"));
      // a pass takes half of the cutter: one is enough for 2 mm
      const each = [1, 2, 3, 4, 5].map((passes) => plan({ Passes: passes }));
      const first = each.findIndex((p) => loadOf(p) <= 1 + 1e-9);
      if (first >= 0) expect(chosen.results.passes).toBe(first + 1);
      else {
        // each pass more must bring the load down by a fiftieth
        let best = each[0]!;
        for (const p of each.slice(1)) if (loadOf(p) < 0.98 * loadOf(best)) best = p;
        expect(chosen.results.passes).toBe(best.results.passes);
      }
      expect(chosen.results.springPasses).toBe(each[chosen.results.passes! - 1]!.results.springPasses);
    },
  );
  it("no fewer than the radial depth allows: half of the cutter, or what the row says", () => {
    const least = (cells: RowCells) => planner({ machine }, { ...bore, ...cells })({}).results.passes;
    // 10 mm of stock on the radius
    const open = { "Start diameter": 20, "Finish diameter": 40 };
    expect(least(open)).toBe(2);
    expect(least({ ...open, "Finish diameter": 40.01 })).toBe(3);
    expect(least({ ...open, "Radial depth": 2.5 })).toBe(4);
    expect(least({ ...open, "Radial depth": 2.499 })).toBe(5);
    // from solid a first circle of 19 mm, then 5 mm at a time
    const solid = { "Start diameter": 0, Tool: "EM-10-4", Depth: 8 };
    expect(least({ ...solid, "Finish diameter": 19 })).toBe(1);
    expect(least({ ...solid, "Finish diameter": 20 })).toBe(2);
    expect(least({ ...solid, "Finish diameter": 29 })).toBe(2);
    expect(least({ ...solid, "Finish diameter": 29.1 })).toBe(3);
    expect(least({ ...solid, "Finish diameter": 29, "Radial depth": 2 })).toBe(4);
  });
});
