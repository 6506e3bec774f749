/** Advice for rows with something wrong: the part stays what it was, and two things wrong are put right together. */
import { describe, expect, it } from "vitest";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { advise } from "../../src/plan/advise.ts";
import { planRow } from "../../src/plan/row.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import { blockOf, type RowCells } from "../findings/rule.ts";

const lists = readLists(MATERIALS, TOOLS, MACHINES);
const rows = readRows(DEMO);
const row = (name: number) => rows.find((r) => r.name === name)!;

describe("advice makes the same part (independent: what the drawing asks for stays)", () => {
  const STEEL = { Units: "mm", Material: "Steel C45 (AISI 1045)", Machine: "Centre V3" };
  const helpOf = (cells: RowCells) => {
    const read = readRows(blockOf([cells]))[0]!;
    const { advice } = advise(read, lists);
    return advice.map((a) => ({
      ...a,
      to: Object.fromEntries(a.changes.map((c) => [c.key, c.to])) as Partial<Record<string, number | string | null>>,
      plan: planRow(
        { ...read, row: { ...read.row, ...Object.fromEntries(a.changes.map((c) => [c.key, c.to ?? undefined])) } },
        lists,
      ),
    }));
  };
  const diameterOf = (name: unknown) => lists.tools.find(String(name))!.diameter;

  it("a slot whose cutter gives it its width keeps that width, and is offered less depth a step", () => {
    const deep = { ...STEEL, Operation: "slot", Tool: "EM-12-4", Depth: 20, "Axial depth": 20, Length: 60 };
    const help = helpOf(deep);
    expect(help.length).toBeGreaterThan(0);
    for (const { plan } of help) expect(diameterOf(plan.results.tool)).toBe(12);
    expect(help.some(({ to }) => "axialDepth" in to)).toBe(true);
    // row 290 of the demo: a 6 mm slot
    for (const { changes } of advise(row(290), lists).advice)
      for (const { key, to } of changes) if (key === "tool") expect(diameterOf(to)).toBe(6);
  });
  it("a face that is taken in more levels is as deep as before", () => {
    const help = helpOf({
      ...STEEL,
      ...{ Operation: "face", Machine: "Knee mill K1", Tool: "FM-50-5", Length: 120, "Radial depth": 40 },
      "Axial depth": 4,
    });
    const shallower = help.filter(({ to }) => to.axialDepth !== undefined);
    expect(shallower.length).toBeGreaterThan(0);
    for (const { to, plan } of shallower) {
      expect(to.depth).toBe(4);
      const { wall } = plan.path as Extract<typeof plan.path, { kind: "wall" }>;
      expect(wall.depth).toBe(4);
      expect(wall.axial * wall.levels).toBeCloseTo(4, 9);
    }
  });
  it("a side wall that is taken in thinner passes loses as much in all", () => {
    // 9 mm radial and 24 mm deep in 4140: far more than the knee mill drives
    const help = helpOf({
      ...STEEL,
      ...{ Material: "Steel 42CrMo4 QT (AISI 4140)", Operation: "side", Machine: "Small centre S5", Tool: "EM-16-4" },
      ...{ Depth: 24, "Axial depth": 24, Length: 100, "Radial depth": 9 },
    });
    expect(help.length).toBeGreaterThan(0);
    for (const { to, plan } of help) {
      if (to.radialDepth === undefined) continue;
      expect(Number(to.radialDepth) * Number(to.passes)).toBeCloseTo(9, 9);
      expect((plan.path as Extract<typeof plan.path, { kind: "wall" }>).wall.stock).toBeCloseTo(9, 9);
    }
  });
  it("a wall that comes out thick is offered the wear value that the row itself proposes", () => {
    const thick = {
      ...STEEL,
      ...{ Operation: "side", Tool: "EM-12-4", Depth: 24, Length: 80, "Radial depth": 1 },
      ...{ "Size tolerance": 0.045, "Spring passes": 0, "Feed per tooth": 0.08 },
    };
    const plan = planRow(readRows(blockOf([thick]))[0]!, lists);
    expect(plan.findings.map((f) => f.code)).toContain("size-may-be-out");
    const worn = helpOf(thick).find(({ to }) => to.wearValue !== undefined)!;
    expect(worn.to.wearValue).toBeCloseTo(plan.results.startWearValue!, 9);
    expect(worn.after.verdict).toBe("ok");
  });
  it("what is cheapest is offered once, and where it saves something", () => {
    for (const read of rows) {
      const { advice } = advise(read, lists);
      const cheap = advice.find((a) => a.kind === "cheapest");
      if (!cheap || cheap.after.cost === null) continue;
      for (const other of advice)
        if (other !== cheap && other.after.verdict === "ok")
          expect(cheap.after.cost, String(read.name)).toBeLessThanOrEqual(0.97 * other.after.cost! + 1e-9);
    }
  });
});

describe("a row with two things wrong (independent: both planted by hand)", () => {
  // M6 wants a hole of 4.917 at least: 4.9 is one fault, the second stands in the cells beside it.
  const M6 = {
    ...{ Units: "mm", Material: "Steel C45 (AISI 1045)", Machine: "Centre V3", Operation: "thread mill", Thread: "M6" },
    ...{ Tool: "TM-M6-S", "Start diameter": 4.9, Depth: 9 },
  };
  it.each([
    ["a feed that no edge stands", { "Feed per tooth": 0.15 }, "feedPerTooth"],
    ["a feed that only rubs", { "Feed per tooth": 0.005 }, "feedPerTooth"],
    ["a hole too shallow", { "Hole depth": 9.4 }, "holeDepth"],
    ["a wear value that mills the thread away", { "Wear value": 0.255 }, "wearValue"],
    ["a drill for a cutter", { Tool: "D-5.0" }, "tool"],
  ] as const)("%s: is offered both changes, and neither alone would do", (_, cells, key) => {
    const read = readRows(blockOf([{ ...M6, ...cells }]))[0]!;
    const at = (changes: readonly { key: string; to: number | string | null }[]) =>
      planRow(
        { ...read, row: { ...read.row, ...Object.fromEntries(changes.map((c) => [c.key, c.to ?? undefined])) } },
        lists,
      ).verdict;
    expect(at([])).toBe("stop");
    const { advice, open } = advise(read, lists);
    expect(open).toEqual([]);
    const { kind, changes, after } = advice[0]!;
    expect(kind).toBe("smallest change");
    expect(new Set(changes.map((c) => c.key))).toEqual(new Set(["startDiameter", key]));
    expect(after.verdict).toBe("ok");
    expect(at(changes)).toBe("ok");
    for (const one of changes) expect(at([one])).not.toBe("ok");
  });
});
