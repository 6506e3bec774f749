/** Rows with a blank Tool: which of a few listed ones a machinist would take, written down before; and how it is planned with it. */
import { describe, expect, it } from "vitest";
import { planRow } from "../../src/plan/row.ts";
import type { Lists } from "../../src/table/read.ts";
import { caseLists, caseRow, planOf, type RowCells, STEEL } from "../findings/rule.ts";

const mill = (Tool: string, Diameter: number, more: RowCells = {}): RowCells => ({
  ...{ Tool, Kind: "end mill", Units: "mm", Substrate: "carbide", Diameter, Teeth: 4, "Shank diameter": Diameter },
  ...{ "Cutting length": 30, "Stick-out": 40, "Rupture strength [MPa]": 3500, Runout: 0.01, Price: 50, ...more },
});
const drill = (Tool: string, Diameter: number, more: RowCells = {}): RowCells => ({
  ...{ Tool, Kind: "drill", Units: "mm", Substrate: "hss", Diameter, Teeth: 2, "Shank diameter": Diameter },
  ...{ "Cutting length": 90, "Stick-out": 100, "Rupture strength [MPa]": 3500, "Point angle": 118, ...more },
});
const tap = (Tool: string, Diameter: number, Pitch: number): RowCells => ({
  ...drill(Tool, Diameter, { Kind: "tap", Teeth: 3, "Point angle": null }),
  ...{ "Cutting length": 20, "Neck length": 40, "Neck diameter": Diameter * 0.75, Pitch },
});
const taken = (row: RowCells, ...tools: readonly RowCells[]) =>
  planOf({ row: { ...STEEL, ...row }, tools }).results.tool;

const SLOT = { Operation: "slot", Depth: 6, Length: 80, "Total width": 12 };
const SIDE = { Operation: "side", Depth: 20, Length: 80, "Radial depth": 0.5 };

describe("the tool of a row that names none (a machinist's choice)", () => {
  it("for a slot of 12 mm is one that goes in, and not one half as wide that goes along twice", () => {
    expect(taken(SLOT, mill("6", 6), mill("12", 12), mill("16", 16))).toBe("12");
    expect(taken(SLOT, mill("16", 16), mill("20", 20)) ?? null).toBeNull();
  });
  it("for a wall of 20 mm has flutes as long as it", () => {
    expect(taken(SIDE, mill("short", 12, { "Cutting length": 15 }), mill("long", 12))).toBe("long");
  });
  it("of two alike is the one that hangs out less, in whatever order they stand", () => {
    const [near, far] = [mill("near", 8), mill("far", 8, { "Stick-out": 90 })];
    expect(taken(SIDE, near, far)).toBe("near");
    expect(taken(SIDE, far, near)).toBe("near");
  });
  it("of two alike is the cheaper one", () => {
    const long = { ...SIDE, Length: 2000, Quantity: 20 };
    expect(taken(long, mill("dear", 12, { Price: 900 }), mill("cheap", 12, { Price: 30 }))).toBe("cheap");
  });
  it("for a bore leaves room: of 20 mm, one of 12 and not of 18", () => {
    const bore = { Operation: "bore", "Start diameter": 18, "Finish diameter": 20, Depth: 15 };
    expect(taken(bore, mill("18", 18), mill("12", 12))).toBe("12");
  });
  it("for a hole of 10 mm is the drill of 10 mm that reaches", () => {
    const hole = { Operation: "drill", "Finish diameter": 10, Depth: 50 };
    expect(
      taken(
        hole,
        drill("9.8", 9.8),
        drill("short", 10, { "Cutting length": 40 }),
        drill("10", 10),
        drill("10.2", 10.2),
      ),
    ).toBe("10");
  });
  it("for a thread is the tap of it, coarse or fine", () => {
    const all = [tap("M6", 6, 1), tap("M8x1", 8, 1), tap("M8", 8, 1.25), tap("M10", 10, 1.5)];
    expect(taken({ Operation: "tap", Thread: "M8", Depth: 12 }, ...all)).toBe("M8");
    expect(taken({ Operation: "tap", Thread: "M8x1", Depth: 12 }, ...all)).toBe("M8x1");
    expect(taken({ Operation: "tap", Thread: "M12", Depth: 12 }, ...all) ?? null).toBeNull();
  });
  it("for a face is no matter of one row", () => {
    const face = { Operation: "face", "Axial depth": 1, Length: 80, "Radial depth": 8 };
    const { results, findings } = planOf({ row: { ...STEEL, ...face }, tools: [mill("12", 12)] });
    expect(results.tool ?? null).toBeNull();
    expect(findings.map((f) => f.code)).not.toContain("fault");
  });
  it("is none in a row without units or operation, and the row's own where it names one", () => {
    const tools = [mill("12", 12), mill("10", 10)];
    const said = (row: RowCells) => planOf({ row: { ...STEEL, ...SLOT, ...row }, tools });
    const bare: readonly RowCells[] = [
      { Units: null, Depth: null, Length: null, "Total width": null },
      { Operation: null },
    ];
    for (const row of bare) {
      const { results, findings } = said(row);
      expect(results.tool ?? null).toBeNull();
      expect(findings.map((f) => f.code)).not.toContain("tool-proposed");
      expect(findings.map((f) => f.code)).not.toContain("fault");
    }
    const own = said({ Tool: "10" });
    expect(own.results.tool).toBe("10");
    expect(own.findings.map((f) => f.code)).not.toContain("tool-proposed");
  });
});

describe("the plan with a tool that is proposed (identity: the same row with the tool typed)", () => {
  const one = { row: { ...STEEL, ...SLOT }, tools: [mill("12", 12), mill("6", 6)] };
  const [read, lists] = [caseRow(one), caseLists(one)];
  const typed = { ...read, row: { ...read.row, tool: "12" } };
  it("is the typed one's, and says that it was proposed and what for", () => {
    for (const detail of [true, false]) {
      const [blank, named] = [planRow(read, lists, 1, detail), planRow(typed, lists, 1, detail)];
      expect(blank.results).toEqual(named.results);
      expect(blank.steps).toEqual(named.steps);
      expect(blank.steps.length > 0).toBe(detail);
      expect(blank.time).toEqual(named.time);
      expect(blank.operation).toBe("slot");
      const proposed = blank.findings.filter((f) => f.code === "tool-proposed");
      expect(proposed).toEqual([
        { code: "tool-proposed", severity: "ok", facts: { tool: "12", for: "wall", thread: undefined } },
      ]);
      expect(blank.findings.filter((f) => f.code !== "tool-proposed")).toEqual(named.findings);
    }
    expect(planRow(read, lists).steps.length).toBeGreaterThan(0);
  });
  it("says of a thread which", () => {
    const tools = [tap("M8", 8, 1.25), tap("M10", 10, 1.5)];
    const { findings } = planOf({ row: { ...STEEL, Operation: "tap", Thread: "M8", Depth: 12 }, tools });
    expect(findings.find((f) => f.code === "tool-proposed")!.facts).toMatchObject({ tool: "M8", for: "tap" });
  });
  it("leaves what is wrong in the tool's list to rows that name it, with steps or without", () => {
    const bad = { ...one, tools: [mill("Aa12", 12, { Runout: "much" }), mill("6", 6)] };
    const [row, list] = [caseRow(bad), caseLists(bad)];
    const codes = (plan: ReturnType<typeof planRow>) => plan.findings.map((f) => f.code);
    expect(codes(planRow({ ...row, row: { ...row.row, tool: "Aa12" } }, list))).toContain("list-tool");
    for (const detail of [true, false]) {
      const plan = planRow(row, list, 1, detail);
      expect(plan.results.tool).toBe("Aa12");
      expect(codes(plan)).not.toContain("list-tool");
    }
  });
  it("bears its share of the setup", () => {
    const batch = { ...read, row: { ...read.row, batch: 10 } };
    for (const detail of [true, false])
      expect(planRow(batch, lists, 5, detail).money!.setup).toBeCloseTo((74 * 35) / 60 / 10 / 5, 9);
  });
});

describe("what ends the working out of a row (made-up faults)", () => {
  const read = caseRow({ row: { ...STEEL, ...SLOT, Tool: "12" } });
  it("of the program's own is a finding of that row, with what it was", () => {
    const shop = caseLists({ row: STEEL, tools: [mill("12", 12)] });
    const broken = {
      get diameter(): number {
        throw new Error("planted");
      },
    };
    const lists = { ...shop, tools: { ...shop.tools, find: () => broken, nameOf: () => "12" } } as unknown as Lists;
    const plan = planRow(read, lists);
    expect(plan.findings.find((f) => f.code === "fault")).toMatchObject({
      severity: "stop",
      facts: { what: "Error: planted" },
    });
    expect(plan.findings.map((f) => f.code)).not.toContain("cannot-be-computed");
    expect([plan.verdict, plan.operation]).toEqual(["stop", "slot"]);
  });
});
