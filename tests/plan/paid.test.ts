/** Time, life and cost of rows whose seconds are made up, added up by hand. */
import { describe, expect, it } from "vitest";
import type { Done, Job } from "../../src/operations/shared/job.ts";
import { Work } from "../../src/operations/shared/work.ts";
import { timeAndCost } from "../../src/plan/money.ts";
import type { Machine, Material, Tool } from "../../src/table/lists.ts";
import type { Row } from "../../src/table/rows.ts";

// 30 s of cutting, 8 s of moves, 2 s of waiting. 72 an hour is 2 cents a second. Top of the speeds: 200 m/min for 15 min, n of 0.25.
const TIME = { cutting: 30, moving: 8, waiting: 2, ideal: 29 };
const MACHINE: Machine = { machine: "M", rate: 72, toolChange: 5, setup: 30 };
const MATERIAL: Material = { material: "S", speedCarbideHigh: 200, referenceLife: 15, taylorN: 0.25 };
const TOOL: Tool = { tool: "T", substrate: "carbide", price: 60, edges: 2 };

interface Asked {
  readonly row?: Row;
  readonly machine?: Partial<Machine>;
  readonly material?: Partial<Material>;
  readonly tool?: Partial<Tool>;
  readonly done?: Partial<Done>;
  readonly sharing?: number;
}
function paid({ row = {}, machine, material, tool, done, sharing = 1 }: Asked = {}) {
  const work = new Work("mm");
  const job = { work, row, machine: { ...MACHINE, ...machine }, material: { ...MATERIAL, ...material } };
  const cut: Done = { time: TIME, tool: { ...TOOL, ...tool }, cutting: { seconds: 30, surfaceSpeed: 200 }, ...done };
  const more = timeAndCost(job as unknown as Job, cut, sharing);
  const { timeEach, time: total, cost } = work.results;
  return {
    ...more,
    timeEach,
    total,
    cost,
    steps: work.steps,
    findings: work.findings,
    found: work.findings.map((f) => f.code),
  };
}

describe("time (by hand)", () => {
  it("of a feature is 40 s; of a row as many features, and one change of the tool", () => {
    expect(paid()).toMatchObject({ timeEach: 40, time: { ...TIME, change: 5 } });
    expect(paid().total).toBe(45);
    expect(paid().steps.find((s) => s.key === "time")!.value).toBe(45);
    expect(paid({ row: { quantity: 3 } }).total).toBe(125);
    expect(paid({ machine: { toolChange: undefined } }).total).toBe(40);
    expect(paid({ machine: { toolChange: undefined } }).time!.change).toBe(0);
  });
  it("is none where the operation tells none", () => {
    expect(paid({ done: { time: undefined } })).toEqual({ found: [], findings: [], steps: [] });
  });
  it("that no number holds is said, and nothing else", () => {
    expect(paid({ row: { quantity: 1e308 } })).toMatchObject({ found: ["no-time"], steps: [] });
  });
  it("lost to acceleration is said from a fifth and half a second on, once for each feature", () => {
    const found = (cutting: number, ideal: number, quantity?: number) =>
      paid({ row: { quantity }, done: { time: { ...TIME, cutting, ideal } } }).findings;
    // a fifth of 10 s is 2 s
    expect(found(12.1, 10)).toMatchObject([{ code: "acceleration-time", facts: { value: 12.1, limit: 10 } }]);
    expect(found(11.9, 10)).toEqual([]);
    // no more than that is let pass: a fifth of 10 s, half a second of 2
    expect(found(12, 10)).toEqual([]);
    expect(found(2.5, 2)).toEqual([]);
    // a fifth of 2 s is less than half a second
    expect(found(2.51, 2)).toHaveLength(1);
    expect(found(2.49, 2)).toEqual([]);
    expect((found(13, 10, 4)[0]!.facts as { more: number }).more).toBeCloseTo(12, 9);
    expect((found(13, 10)[0]!.facts as { more: number }).more).toBeCloseTo(3, 9);
  });
});

describe("life of an edge (Taylor: V·Tⁿ is the same for all speeds)", () => {
  it("at the top of the range is the reference life, at twice the speed a sixteenth, for n of a quarter", () => {
    expect(paid().life).toBeCloseTo(15, 12);
    const at = (surfaceSpeed: number) => paid({ done: { cutting: { seconds: 30, surfaceSpeed } } }).life!;
    expect(at(400)).toBeCloseTo(15 / 16, 12);
    for (const V of [50, 120, 333]) expect(V * at(V) ** 0.25).toBeCloseTo(200 * 15 ** 0.25, 9);
    const step = paid().steps.find((s) => s.key === "life")!;
    expect(step).toMatchObject({ facts: { speed: 200, reference: 200, life: 15, exponent: 0.25 } });
  });
  it("is not known without one of its figures, of high-speed steel, of no tool, or where nothing is cut", () => {
    const none: Asked[] = [
      { material: { taylorN: undefined } },
      { material: { referenceLife: undefined } },
      { material: { speedCarbideHigh: undefined } },
      { tool: { substrate: "hss" } },
      { done: { tool: undefined } },
      { done: { cutting: undefined } },
    ];
    for (const asked of none) {
      const { life, money, cost, found, steps } = paid(asked);
      expect([life, money!.tool, found]).toEqual([undefined, 0, []]);
      expect(cost).toBeCloseTo(45 * 0.02, 12);
      expect(steps.map((s) => s.key)).not.toContain("life");
    }
    const work = new Work("mm");
    const nothing = { work, row: {}, machine: MACHINE } as unknown as Job;
    expect(
      timeAndCost(nothing, { time: TIME, tool: TOOL, cutting: { seconds: 1, surfaceSpeed: 9 } }, 1).life,
    ).toBeUndefined();
  });
  it("that no number holds is a finding, and the row costs its time", () => {
    const { found, life, cost } = paid({
      material: { referenceLife: 1e300, taylorN: 0.01 },
      done: { cutting: { seconds: 30, surfaceSpeed: 1 } },
    });
    expect([found, life]).toEqual([["no-life"], undefined]);
    expect(cost).toBeCloseTo(45 * 0.02, 12);
  });
});

describe("cost of a part (by hand)", () => {
  // 45 s are 0.90; half a minute of a life of 15 is a thirtieth of an edge of 30
  it("is the machine's time and the share of an edge", () => {
    const { cost, money } = paid();
    expect(money).toEqual({ machine: expect.closeTo(0.9, 12), setup: 0, tool: expect.closeTo(1, 12) });
    expect(cost).toBeCloseTo(1.9, 12);
  });
  it("of three features three times the edge, not of the change", () => {
    const { cost, money } = paid({ row: { quantity: 3 } });
    expect(money).toEqual({ machine: expect.closeTo(2.5, 12), setup: 0, tool: expect.closeTo(3, 12) });
    expect(cost).toBeCloseTo(5.5, 12);
  });
  it("of a tool without Edges has one, of a tool without a price none, of a free one nothing", () => {
    expect(paid({ tool: { edges: undefined } }).money!.tool).toBeCloseTo(2, 12);
    expect(paid({ tool: { price: undefined } }).money!.tool).toBe(0);
    expect(paid({ tool: { price: undefined } }).steps.map((s) => s.key)).not.toContain("toolCost");
    expect(paid({ tool: { price: 0 } }).money!.tool).toBe(0);
    expect(paid({ tool: { price: 0 } }).cost).toBeCloseTo(0.9, 12);
    expect(paid().steps.find((s) => s.key === "toolCost")!.value).toBeCloseTo(1, 12);
  });
  it("in a batch bears its share of the setup: 30 min are 36, of ten parts 3.60, shared by two rows 1.80", () => {
    const setup = (batch: number | undefined, sharing = 1) => paid({ row: { batch }, sharing }).money!.setup;
    expect(setup(10)).toBeCloseTo(3.6, 12);
    expect(setup(10, 2)).toBeCloseTo(1.8, 12);
    expect(setup(1)).toBeCloseTo(36, 12);
    expect(setup(undefined)).toBe(0);
    expect(paid({ row: { batch: 10 }, sharing: 2 }).cost).toBeCloseTo(1.9 + 1.8, 12);
    expect(paid({ row: { batch: 1 } }).cost).toBeCloseTo(1.9 + 36, 12);
    expect(paid({ row: { batch: 10 }, machine: { setup: undefined } }).money!.setup).toBe(0);
  });
  it("is written down with what it was made of", () => {
    const step = paid({ row: { batch: 10 }, sharing: 2 }).steps.find((s) => s.key === "cost")!;
    expect(step.facts).toEqual({
      time: 45,
      rate: 72,
      batch: 10,
      setup: 900,
      toolCost: expect.closeTo(1, 12),
      sharing: 2,
    });
    expect(step.value).toBeCloseTo(3.7, 12);
  });
  it("is nothing for a machine that costs nothing but the tool, and none for one without a rate", () => {
    expect(paid({ machine: { rate: 0 } }).cost).toBeCloseTo(1, 12);
    const free = paid({ machine: { rate: undefined } });
    expect([free.cost, free.money, free.life, free.time!.cutting]).toEqual([
      undefined,
      undefined,
      expect.closeTo(15, 12),
      30,
    ]);
  });
  it("that no number holds is a finding; the time stays", () => {
    const dear = paid({ machine: { rate: 1e308 } });
    expect([dear.found, dear.cost, dear.money, dear.time!.cutting]).toEqual([["no-cost"], undefined, undefined, 30]);
    expect(dear.life).toBeCloseTo(15, 12);
    // of the setup or the tool alone as well
    expect(paid({ row: { batch: 1 }, machine: { setup: 1e308 } }).found).toEqual(["no-cost"]);
    expect(paid({ tool: { price: 1e308 }, row: { quantity: 1e9 } }).found).toEqual(["no-cost"]);
  });
});
