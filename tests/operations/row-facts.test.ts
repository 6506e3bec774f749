/** What a row says with its findings and results, each worked out by hand. */
import { describe, expect, it } from "vitest";
import { turnsOf } from "../../src/operations/shared/thread/geometry.ts";
import { engagedEdge, levelDepth, type SizedTool } from "../../src/operations/shared/wall/wall.ts";
import { planRow } from "../../src/plan/row.ts";
import type { Tool } from "../../src/table/lists.ts";
import { caseLists, caseRow, planOf, type RowCells, STEEL } from "../findings/rule.ts";

const tap: RowCells = { ...STEEL, Operation: "tap", Thread: "M6", "Start diameter": 5, Depth: 10, "Hole depth": 40 };
const facts = (plan: ReturnType<typeof planOf>, code: string) =>
  plan.findings.find((f) => f.code === code)?.facts as Record<string, unknown> | undefined;
const step = (plan: ReturnType<typeof planOf>, key: string) =>
  plan.steps.find((s) => s.key === key)?.facts as Record<string, unknown> | undefined;

describe("what a tapped row says (by hand)", () => {
  it("deeper than three diameters: M6 to 18.1 against 18", () => {
    expect(facts(planOf({ row: { ...tap, Depth: 18.1 } }), "tap-deep")).toEqual({
      value: 18.1,
      limit: 18,
      most: 3,
    });
    expect(facts(planOf({ row: { ...tap, Depth: 18 } }), "tap-deep")).toBeUndefined();
  });
  it("no specific force: no torque, and nothing of bending", () => {
    const material = { "kc1.1 [MPa]": null };
    const plan = planOf({ row: tap, material });
    expect(facts(plan, "no-kc")).toEqual({ bending: false });
    expect(plan.steps.map((s) => s.key)).not.toContain("tapTorque");
    expect(facts(planOf({ row: tap }), "no-kc")).toBeUndefined();
    // a mill would have been judged by its bending
    const slot = { ...STEEL, Operation: "slot", Tool: "EM-10-4", Depth: 5, Length: 60 };
    expect(facts(planOf({ row: slot, material }), "no-kc")).toEqual({ bending: true });
  });
  it("a hole outside ISO 965-1, with its percent of thread: 100·(6 − d)/1.299", () => {
    const small = facts(planOf({ row: { ...tap, "Start diameter": 4.91 } }), "hole-under-minor");
    expect(small).toMatchObject({ value: 4.91, limit: expect.closeTo(4.917, 3), beyond: true });
    expect(small!.percent).toBeCloseTo(109 / (0.75 * Math.sqrt(3)), 6);
    const large = facts(planOf({ row: { ...tap, "Start diameter": 5.16 } }), "hole-over-minor");
    expect(large).toMatchObject({ value: 5.16, limit: expect.closeTo(5.153, 3) });
    expect(large!.percent).toBeCloseTo(84 / (0.75 * Math.sqrt(3)), 6);
  });
});

describe("what a list lacks is said with what stands in for it", () => {
  it("an insert's feed: twice the solid cutter's (usual)", () => {
    const row = { ...STEEL, Operation: "face", Tool: "FM-40-4", "Axial depth": 1, Length: 100 };
    expect(facts(planOf({ row, material: { "Feed insert [mm per tooth]": null } }), "list-insert-blank")).toEqual({
      material: STEEL.Material,
      factor: 2,
    });
  });
  it("a thread mill's speed is not missed where the row has one of its own", () => {
    const row = { ...STEEL, Operation: "thread mill", Thread: "M6", Tool: "TM-M6-S", "Start diameter": 4.9, Depth: 9 };
    const material = { "Speed thread mill high [m/min]": null };
    expect(facts(planOf({ row, material }), "list-thread-speed-blank")).toEqual({
      material: STEEL.Material,
      factor: 0.75,
    });
    const typed = { ...row, "Surface speed": 60 };
    expect(facts(planOf({ row: typed, material }), "list-thread-speed-blank")).toBeUndefined();
    const unknown = { ...row, Material: null };
    expect(facts(planOf({ row: unknown }), "list-thread-speed-blank")).toBeUndefined();
  });
});

describe("size of a row at its wear value (by hand)", () => {
  // ISO 965-1: pitch diameter of M10-6H 9.026 to 9.206, of M10-6g 8.862 to 8.994
  const inside = { ...STEEL, Operation: "thread mill", Thread: "M6", Tool: "TM-M6-S", "Start diameter": 4.9, Depth: 9 };
  it("a wear value of 0.02 takes 0.04 from a thread inside: M6-6H, 5.350 to 5.500", () => {
    const size = (cells: RowCells) => step(planOf({ row: { ...inside, ...cells } }), "size")!.programmed as number;
    expect(size({})).toBeCloseTo(5.425, 3);
    expect(size({}) - size({ "Wear value": 0.02 })).toBeCloseTo(0.04, 9);
  });
  it("and adds it to one outside", () => {
    const out = { ...STEEL, Operation: "thread mill", Thread: "M20x1.5-6g", Tool: "TM-M16-S", Depth: 15 };
    const size = (cells: RowCells) =>
      step(planOf({ row: { ...out, "Start diameter": 19.9, ...cells } }), "size")!.programmed as number;
    expect(size({ "Wear value": 0.02 }) - size({})).toBeCloseTo(0.04, 9);
  });
  it("a bore without a tolerance still shows its size, a straight wall has none", () => {
    const bore = {
      ...STEEL,
      Operation: "bore",
      Tool: "EM-10-4",
      "Start diameter": 38,
      "Finish diameter": 40,
      Depth: 12,
    };
    const plan = planOf({ row: bore });
    expect(facts(plan, "no-size-tolerance")).toBeDefined();
    expect(Math.abs((plan.results.size as number) - 40)).toBeLessThan(0.2);
    const side = { ...STEEL, Operation: "side", Tool: "EM-10-4", Depth: 12, Length: 100, "Radial depth": 1 };
    expect(planOf({ row: side }).results.size ?? null).toBeNull();
  });
});

describe("levels of a row (by hand)", () => {
  const full = (cuttingLength: number): Tool => ({ tool: "F", kind: "thread mill full", cuttingLength }) as Tool;
  it("a full profile as long as the thread makes it in one level, a little shorter in two", () => {
    expect(turnsOf(full(18), 1.5, 18)).toEqual({ turns: 1, levels: 1, profiles: 12 });
    expect(turnsOf(full(6), 1.5, 18)).toEqual({ turns: 1, levels: 3, profiles: 4 });
    // 3.3 is three times 1.1 but for the last binary digit
    expect(turnsOf(full(1.1), 0.55, 1.1 + 1.1 + 1.1).levels).toBe(3);
    expect(turnsOf(full(17.9), 1.5, 18).levels).toBe(2);
    expect(turnsOf(full(40), 1.5, 18).levels).toBe(1);
  });
  it("a single profile goes round once a pitch and once more", () =>
    expect(turnsOf({ tool: "S", kind: "thread mill single" } as Tool, 1.5, 18)).toEqual({
      turns: 13,
      levels: 1,
      profiles: 1,
    }));
  it("a ball that cuts 1 mm deep is 6 mm wide there, its edge at 36.87° (3, 4, 5)", () => {
    const ball = { tool: "B", kind: "ball end mill", diameter: 10, teeth: 2 } as SizedTool;
    const { diameter, angle } = engagedEdge(ball, 1);
    expect(diameter).toBeCloseTo(6, 9);
    expect(angle).toBeCloseTo(36.8699, 4);
    expect(engagedEdge(ball, 5)).toEqual({ diameter: 10, angle: 90 });
    expect(engagedEdge({ ...ball, kind: "end mill" }, 1)).toEqual({ diameter: 10, angle: 90 });
  });
  it("a cut wider than a quarter of the cutter is no deeper than its diameter", () => {
    const mill = { tool: "E", kind: "end mill", diameter: 10, teeth: 4, cuttingLength: 22 } as SizedTool;
    expect(levelDepth(mill, 30, 2.6)).toBe(10);
    expect(levelDepth(mill, 30, 2.5)).toBe(22);
    expect(levelDepth(mill, 12, 2.5)).toBe(12);
    expect(levelDepth({ ...mill, cuttingLength: 8 }, 30, 2.6)).toBe(8);
  });
});

describe("what is remembered of a row does not change its neighbours (identity)", () => {
  const rows: readonly RowCells[] = [
    { Operation: "side", Tool: "EM-10-4", Depth: 20, Length: 100, "Radial depth": 0.6, "Size tolerance": 0.03 },
    {
      Operation: "bore",
      Tool: "EM-10-4",
      Depth: 14,
      "Start diameter": 47,
      "Finish diameter": 48,
      "Size tolerance": 0.1,
    },
    { Operation: "thread mill", Thread: "M6", Tool: "TM-M6-S", "Start diameter": 4.9, Depth: 9 },
  ];
  // the same cut on another holder, and held further out
  const others: readonly RowCells[] = [{ Machine: "Knee mill K1" }, { "Stick-out": 48 }];
  for (const cells of rows)
    for (const other of others)
      it(`${cells.Operation} with ${JSON.stringify(other)} after the same without`, () => {
        const before = { ...STEEL, ...cells };
        const row = { ...before, ...other };
        const lists = caseLists({ row });
        const first = planRow(caseRow({ row: before }), lists);
        const second = planRow(caseRow({ row }), lists);
        expect(second.results).toEqual(planOf({ row }).results);
        expect(second.results.deflection).not.toBeCloseTo(first.results.deflection as number, 9);
      });
});

describe("how far a wear value reaches (rule: 0.15 of the pitch in the radius)", () => {
  // M16 has a pitch of 2, M20 one of 2.5; the longer the neck, the more is left
  for (const [thread, start, diameter, pitch] of [
    ["M16", 14, 9, 2],
    ["M20", 17.5, 10, 2.5],
  ] as const)
    it(`${thread}: proposed up to ${0.15 * pitch}, none beyond`, () => {
      const told = [20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80].map((neck) => {
        const cutter = {
          ...{
            Tool: "A",
            Kind: "thread mill single",
            Units: "mm",
            Teeth: 4,
            Substrate: "carbide",
            "Profile angle": 60,
          },
          ...{ Diameter: diameter, "Tip flat": 0.1, "Neck diameter": 0.5 * diameter, "Neck length": neck },
          ...{ "Shank diameter": 10, "Stick-out": neck + 10 },
        };
        const row = {
          ...STEEL,
          Operation: "thread mill",
          Thread: thread,
          Tool: "A",
          "Start diameter": start,
          Depth: 12,
        };
        const plan = planOf({ row: { ...row, Through: "yes", "Spring passes": 0, Passes: 1 }, tools: [cutter] });
        const { programmed, least } = step(plan, "size") as { programmed: number; least: number };
        const reaches = (programmed - least) / 2 <= 0.15 * pitch;
        expect(typeof plan.results.startWearValue === "number", `neck ${neck}`).toBe(reaches);
        return reaches;
      });
      expect(new Set(told).size, "some within, some beyond").toBe(2);
    });
});

describe("what belongs to one kind of wall alone (a machinist's rules)", () => {
  it("a side on an arc is no full circle: no path radius, no hole to start from", () => {
    const arc = { ...STEEL, Operation: "side", Tool: "EM-10-4", Depth: 10, Length: 60, "Radial depth": 1 };
    const plan = planOf({ row: { ...arc, Side: "inside", "Finish diameter": 40 } });
    expect(plan.results.pathRadius).toBeUndefined();
    expect(plan.results.startDiameter).toBeUndefined();
    const bore = {
      ...STEEL,
      Operation: "bore",
      Tool: "EM-10-4",
      Depth: 10,
      "Start diameter": 38,
      "Finish diameter": 40,
    };
    // (40 − 10)/2
    expect(planOf({ row: bore }).results).toMatchObject({ pathRadius: 15, startDiameter: 38 });
  });
  it("a bore from solid that is likely to chatter keeps its levels of one diameter, a slot takes more", () => {
    const cells = { ...STEEL, Tool: "EM-10-4L", Depth: 20 };
    const bore = planOf({ row: { ...cells, Operation: "bore", "Start diameter": 0, "Finish diameter": 19 } });
    expect(facts(bore, "chatter")).toBeDefined();
    expect(step(bore, "axialDepth")!.levels).toBe(2);
  });
});

describe("a wall that no listed cutter makes (rule)", () => {
  it("says so, and what the row lacks beside", () => {
    const tools = [{ Tool: "D", Kind: "drill", Units: "mm", Diameter: 5, Substrate: "carbide" }];
    const codes = (row: RowCells) => planOf({ row: { ...STEEL, ...row }, tools }).findings.map((f) => f.code);
    const whole = codes({ Operation: "side", Depth: 10, Length: 60, "Radial depth": 1 });
    expect(whole).toContain("no-tool-fits");
    expect(whole).not.toContain("fault");
    expect(whole).not.toContain("row-incomplete");
    expect(codes({ Operation: "side", Length: 60, "Radial depth": 1 })).toContain("row-incomplete");
    const named = codes({ Operation: "side", Tool: "none such", Depth: 10, Length: 60, "Radial depth": 1 });
    expect(named).not.toContain("fault");
    expect(named).not.toContain("no-tool-fits");
  });
});

describe("the drill of a thread (rule: drill and hole inside the minor limits)", () => {
  // ISO 965-1: minor diameter of M6-6H 4.917 to 5.153
  const tapped = (diameter: number, oversize: number) => {
    const drill = { Tool: "D", Kind: "drill", Units: "mm", Diameter: diameter, Substrate: "carbide" };
    const row = {
      ...STEEL,
      Operation: "tap",
      Thread: "M6",
      Depth: 10,
      "Hole depth": 20,
      "Drilling oversize": oversize,
    };
    return planOf({ row, tools: [drill] }).results.startDiameter as number;
  };
  it("one of the shop's is taken from limit to limit", () => {
    expect(tapped(4.93, 0.05)).toBe(4.93);
    expect(tapped(4.91, 0.05)).not.toBe(4.91);
    expect(tapped(5.06, 0.09)).toBe(5.06);
    expect(tapped(5.06, 0.1)).not.toBe(5.06);
    expect(tapped(5.153, 0)).toBe(5.153);
    expect(tapped(5.16, 0)).not.toBe(5.16);
  });
});
