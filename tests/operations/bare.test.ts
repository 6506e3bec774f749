/** Rows that name no material or no machine, with speed and feed of their own: planned as far as they go. */
import { describe, expect, it } from "vitest";
import { about, planOf, type RowCells, STEEL } from "../findings/rule.ts";

const rpmOf = (speed: number, diameter: number) => (1000 * speed) / (Math.PI * diameter);
/** Each operation with its tool; diameter that the speed is of, teeth, and the feed of the centre over that of the edge. */
interface Bare {
  readonly cells: RowCells;
  readonly diameter: number;
  readonly teeth: number;
  readonly share?: number;
}
const bore = { Operation: "bore", Tool: "EM-10-4", "Finish diameter": 30, Depth: 10 };
const ROWS: Readonly<Record<string, Bare>> = {
  drill: {
    cells: { Operation: "drill", Tool: "D-10.2", "Finish diameter": 10.2, Depth: 20 },
    diameter: 10.2,
    teeth: 2,
  },
  ream: {
    cells: { Operation: "ream", Tool: "R-10", "Finish diameter": 10, "Start diameter": 9.8, Depth: 20 },
    ...{ diameter: 10, teeth: 1 },
  },
  countersink: {
    cells: { Operation: "countersink", Tool: "CS-12.5", "Finish diameter": 10, "Start diameter": 6 },
    ...{ diameter: 10, teeth: 1 },
  },
  "opened bore": { cells: { ...bore, "Start diameter": 28, Passes: 1 }, diameter: 10, teeth: 4, share: 2 / 3 },
  "bore from solid": { cells: { ...bore, "Start diameter": 0 }, diameter: 10, teeth: 4, share: 2 / 3 },
  boss: {
    cells: { ...bore, Operation: "boss", "Start diameter": 32, Passes: 1 },
    ...{ diameter: 10, teeth: 4, share: 4 / 3 },
  },
  side: {
    cells: { Operation: "side", Tool: "EM-10-4", Depth: 10, Length: 60, "Radial depth": 1, "Size tolerance": 0.1 },
    ...{ diameter: 10, teeth: 4 },
  },
  slot: { cells: { Operation: "slot", Tool: "EM-10-4", Depth: 5, Length: 60 }, diameter: 10, teeth: 4 },
  face: { cells: { Operation: "face", Tool: "FM-40-4", Depth: 2, Length: 60 }, diameter: 40, teeth: 4 },
};

describe("rows with a speed of 20 m/min and a feed of 0.02 of their own (by hand)", () => {
  for (const lacking of [["Material"], ["Machine"], ["Material", "Machine"]])
    it.each(Object.entries(ROWS))(`%s without ${lacking.join(" and ")}`, (_, { cells, diameter, teeth, share = 1 }) => {
      const none = Object.fromEntries(lacking.map((heading) => [heading, null]));
      const plan = planOf({ row: { ...STEEL, ...cells, "Surface speed": 20, "Feed per tooth": 0.02, ...none } });
      const codes = plan.findings.map((f) => f.code);
      expect(codes).not.toContain("fault");
      expect(codes).not.toContain("cannot-be-computed");
      expect(plan.results.spindleSpeed).toBeCloseTo(rpmOf(20, diameter), 6);
      expect(plan.results.tableFeed).toBeCloseTo(rpmOf(20, diameter) * teeth * 0.02 * share, 6);
      const force = plan.limits.map((l) => l.key).filter((key) => ["stress", "torsion", "power"].includes(key));
      if (lacking.includes("Material")) {
        expect(force).toEqual([]);
        if (cells.Operation !== "ream") expect(codes).toContain("no-kc");
        expect(codes).not.toContain("no-speed");
        expect(codes).not.toContain("no-feed");
      }
      // No machine: nothing holds speed or feed, and how it moves is not known.
      if (lacking.includes("Machine")) {
        expect(plan.time).toBeUndefined();
        for (const key of ["power", "torque", "feed", "arcFeed"] as const)
          expect(plan.limits.map((l) => l.key)).not.toContain(key);
      } else expect(plan.time!.cutting).toBeGreaterThan(0);
    });
  it("a thread and a tap too", () => {
    for (const [cells, rpm, feed] of [
      [{ Operation: "tap", Tool: "T-M6", Thread: "M6", "Start diameter": 5, Depth: 10 }, rpmOf(20, 6), rpmOf(20, 6)],
      [
        { Operation: "thread mill", Tool: "TM-M6-S", Thread: "M6", "Start diameter": 5, Depth: 9 },
        rpmOf(20, 4.2),
        undefined,
      ],
    ] as const)
      for (const none of [{ Material: null }, { Machine: null }, { Material: null, Machine: null }] as RowCells[]) {
        const plan = planOf({ row: { ...STEEL, ...cells, "Surface speed": 20, "Feed per tooth": 0.02, ...none } });
        expect(plan.findings.map((f) => f.code)).not.toContain("fault");
        expect(plan.results.spindleSpeed).toEqual(about(rpm, 6));
        if (feed !== undefined) expect(plan.results.tableFeed).toEqual(about(feed, 6));
        else expect(plan.results.tableFeed).toBeGreaterThan(0);
        if ("Machine" in none) expect(plan.time).toBeUndefined();
      }
  });
  it("a thread of an unknown material takes the passes and the spring passes that the row names, one and none where it does not", () => {
    const row = { ...STEEL, Operation: "thread mill", Tool: "TM-M6-S", Thread: "M6", "Start diameter": 5, Depth: 9 };
    const bare = { ...row, Material: null, "Surface speed": 20, "Feed per tooth": 0.02 };
    expect(planOf({ row: bare }).results).toMatchObject({ passes: 1, springPasses: 0 });
    const named = planOf({ row: { ...bare, Passes: 2, "Spring passes": 1 } }).results;
    expect(named).toMatchObject({ passes: 2, springPasses: 1 });
    expect(named.depths).toHaveLength(3);
  });
  it("without a material's speed nothing is planned, and only a material that is named is said to lack it", () => {
    const row = { ...STEEL, Operation: "slot", Tool: "EM-10-4", Depth: 5, Length: 60, "Feed per tooth": 0.02 };
    const bare = planOf({ row: { ...row, Material: null } });
    expect(bare.findings.map((f) => f.code)).toEqual(["material-blank"]);
    expect(bare.results.tableFeed).toBeUndefined();
    const speed = { "Speed carbide low [m/min]": null };
    expect(planOf({ row, material: speed }).findings.map((f) => [f.code, f.facts])).toEqual([
      ["no-speed", { material: STEEL.Material, hss: false }],
    ]);
  });
});
