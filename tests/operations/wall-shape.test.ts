/** Where the passes of a wall lie, which way they run, and what a measured size asks for: by hand. */
import { describe, expect, it } from "vitest";
import { planOf, type RowCells, STEEL } from "../findings/rule.ts";

const at = (row: RowCells) => planOf({ row: { ...STEEL, ...row } });
const depths = (row: RowCells) => at(row).results.depths as number[];
const close = (got: readonly number[], wanted: readonly number[]) => {
  expect(got).toHaveLength(wanted.length);
  for (const [i, w] of wanted.entries()) expect(got[i]!).toBeCloseTo(w, 9);
};

const bore = { Operation: "bore", Tool: "EM-12-4", Depth: 10, "Spring passes": 0 };
const boss = { Operation: "boss", Tool: "EM-12-4", Depth: 10, "Start diameter": 34, "Finish diameter": 30 };
const side = { Operation: "side", Tool: "EM-12-4", Depth: 20, Length: 100, "Spring passes": 0, "Radial depth": 0.5 };

describe("passes of a wall (a machinist's rules)", () => {
  it("share the stock on the radius equally, and spring passes go where the last one went", () => {
    const opened = { ...bore, "Start diameter": 30, "Finish diameter": 33 };
    close(depths({ ...opened, Passes: 1 }), [1.5]);
    close(depths({ ...opened, Passes: 3 }), [0.5, 1, 1.5]);
    close(depths({ ...opened, Passes: 2, "Spring passes": 2 }), [0.75, 1.5, 1.5, 1.5]);
    close(depths({ ...boss, Passes: 2, "Spring passes": 1 }), [1, 2, 2]);
  });
  it("from solid a first circle of 1.9 cutters, which leaves no core, then equal passes to the size", () => {
    const solid = { ...bore, "Start diameter": 0, "Finish diameter": 60 };
    close(depths({ ...solid, Passes: 4 }), [11.4, 17.6, 23.8, 30]);
    // a bore that is not much larger than the cutter is made in one circle
    close(depths({ ...solid, "Finish diameter": 20, Passes: 1 }), [10]);
    // of two passes the first stays a hundredth under the size
    close(depths({ ...solid, "Finish diameter": 20, Passes: 2 }), [9.8, 10]);
  });
  it("of a side take the radial depth each", () => {
    close(depths({ ...side, Passes: 3 }), [0.5, 1, 1.5]);
    close(depths(side), [0.5]);
    const arc = { ...side, Side: "inside", "Finish diameter": 60, Length: null };
    close(depths({ ...arc, Passes: 2 }), [0.5, 1]);
    close(depths({ ...arc, Side: "outside" }), [0.5]);
  });
  it("go down in equal levels, none deeper than the row says", () => {
    const axial = (row: RowCells) => at(row).steps.find((s) => s.key === "axialDepth")!;
    expect(axial({ ...side, "Axial depth": 6 }).value).toBeCloseTo(5, 9);
    expect(axial({ ...side, "Axial depth": 6 }).facts).toMatchObject({ levels: 4 });
    expect(axial({ ...side, "Axial depth": 5 }).facts).toMatchObject({ levels: 4 });
    expect(axial({ ...side, "Axial depth": 20 }).facts).toMatchObject({ levels: 1 });
    const slot = { Operation: "slot", Tool: "EM-10-4", Depth: 10, Length: 60, "Spring passes": 0 };
    expect(at({ ...slot, "Axial depth": 2.5 }).results.passes).toBe(4);
    expect(at({ ...slot, "Axial depth": 2.4 }).results.passes).toBe(5);
    expect(at({ ...slot, "Axial depth": 10 }).results.passes).toBe(1);
  });
  it("a thin cut takes the whole edge, one wider than a quarter of the cutter its diameter (common practice)", () => {
    const axial = (radial: number) =>
      at({ ...side, Depth: 26, "Radial depth": radial }).steps.find((s) => s.key === "axialDepth")!.value;
    expect(axial(3)).toBeCloseTo(26, 9);
    // three levels of at most 12 mm
    expect(axial(3.1)).toBeCloseTo(26 / 3, 9);
  });
});

describe("a size beyond all bounds (identity)", () => {
  it("asks for a number of passes, not for an endless one", () => {
    const { findings } = at({
      ...bore,
      Units: "in",
      Tool: "EM-3/8-3",
      "Start diameter": 0.72,
      "Finish diameter": 1e306,
      Depth: 0.5,
    });
    const { value } = findings.find((f) => f.code === "too-many-passes")!.facts as { value: number };
    expect(value).toBeGreaterThan(200);
    expect(Number.isFinite(value)).toBe(true);
  });
  it("tries no more levels of a slot than it may take passes, however deep it is typed", () => {
    const { findings } = at({ ...STEEL, Operation: "slot", Tool: "EM-12-4", Depth: 1e12, Length: 60 });
    expect(findings.map((f) => f.code)).toContain("cutter-short");
  });
  it.each(["slot", "face"])("makes no list of as many passes as a %s of that width wants", (Operation) => {
    const wide = { ...STEEL, Operation, Tool: "EM-6-4L", Depth: 2, Length: 60 };
    for (const width of [1e9, 1e308]) {
      const { findings } = at({ ...wide, "Total width": width });
      const { value, limit } = findings.find((f) => f.code === "too-many-passes")!.facts as {
        value: number;
        limit: number;
      };
      expect(limit).toBe(200);
      expect(value).toBeGreaterThan(1e7);
      expect(Number.isFinite(value)).toBe(true);
    }
  });
});

describe("centre of the cutter (identity)", () => {
  it("runs half a cutter inside a bore and outside a boss", () => {
    const opened = at({ ...bore, "Start diameter": 30, "Finish diameter": 33 }).results;
    expect(opened.pathRadius).toBeCloseTo((33 - 12) / 2, 9);
    expect(opened.startDiameter).toBe(30);
    expect(at(boss).results.pathRadius).toBeCloseTo((30 + 12) / 2, 9);
  });
  it("and a neck stays clear of the wall by half the difference of the diameters inside", () => {
    // EM-10-4L has a neck of 9.4
    const opened = at({ ...bore, Tool: "EM-10-4L", "Start diameter": 30, "Finish diameter": 33, Depth: 20 }).results;
    expect(opened.neckGap).toBeCloseTo((10 - 9.4) / 2, 9);
  });
});

describe("which way a wall is milled with a clockwise spindle (a machinist's rule: climb leaves the wall to the right)", () => {
  const opened = { ...bore, "Start diameter": 30, "Finish diameter": 33 };
  it.each([
    ["bore, climb", { ...opened, Way: "climb" }, { path: "circle", turn: "counter-clockwise" }],
    ["bore, conventional", { ...opened, Way: "conventional" }, { path: "circle", turn: "clockwise" }],
    [
      "bore from solid",
      { ...opened, "Start diameter": 0 },
      { path: "circle", axis: "down", turn: "counter-clockwise" },
    ],
    ["boss, climb", { ...boss, Way: "climb" }, { path: "circle", turn: "clockwise" }],
    ["boss, conventional", { ...boss, Way: "conventional" }, { path: "circle", turn: "counter-clockwise" }],
    ["side, climb", { ...side, Way: "climb" }, { path: "wall", wall: "right" }],
    ["side, blank", side, { path: "wall", wall: "right" }],
    ["side, conventional", { ...side, Way: "conventional" }, { path: "wall", wall: "left" }],
    ["slot", { Operation: "slot", Tool: "EM-10-4", Depth: 5, Length: 60 }, { path: "full width" }],
  ] as const)("%s", (_, row, wanted) => expect(at(row).results.direction).toEqual(wanted));
});

describe("a measured size (a machinist's rule: the radius wear moves by half the error of the diameter)", () => {
  const row = { ...bore, "Start diameter": 47, "Finish diameter": 48, "Size tolerance": 0.05, Passes: 1 };
  const outside = { ...boss, "Start diameter": 31, "Finish diameter": 30, "Size tolerance": 0.05, Passes: 1 };
  const change = (cells: RowCells) => at(cells).findings.find((f) => f.code === "wear-change")!.facts;
  const out = (cells: RowCells) => at(cells).findings.find((f) => f.code === "measured-out");
  it("a bore 0.03 too large wants the path 0.015 farther from the wall, a boss 0.03 too large nearer to it", () => {
    expect(change({ ...row, Measured: 48.03 })).toMatchObject({ change: expect.closeTo(0.015, 9), wanted: 48 });
    expect(change({ ...row, Measured: 47.96 })).toMatchObject({ change: expect.closeTo(-0.02, 9) });
    expect(change({ ...outside, Measured: 30.03 })).toMatchObject({ change: expect.closeTo(-0.015, 9), wanted: 30 });
    expect(change({ ...outside, Measured: 29.98 })).toMatchObject({ change: expect.closeTo(0.01, 9) });
  });
  it("what stands in the control is changed by that", () => {
    expect(change({ ...row, Measured: 48.03, "Wear value": 0.1 })).toMatchObject({ becomes: expect.closeTo(0.115, 9) });
    expect((change({ ...row, Measured: 48.03 }) as { becomes?: number }).becomes).toBeUndefined();
  });
  it("is the size of the row, and its share of half the tolerance is its load", () => {
    const plan = at({ ...row, Measured: 48.03 });
    expect(plan.results.size).toBe(48.03);
    expect(plan.limits.find((l) => l.key === "deflection")!.load).toBeCloseTo(0.6, 6);
    expect([plan.results.sizeMin, plan.results.sizeMax]).toEqual([expect.closeTo(47.95, 9), expect.closeTo(48.05, 9)]);
  });
  it("outside the limits: a bore that is too large is scrap, one that is too small is cut again; a boss the other way round", () => {
    expect(out({ ...row, Measured: 48.0499 })).toBeUndefined();
    expect(out({ ...row, Measured: 47.9501 })).toBeUndefined();
    expect(out({ ...row, Measured: 48.051 })).toMatchObject({
      severity: "stop",
      facts: { scrap: true, limit: expect.closeTo(48.05, 9) },
    });
    expect(out({ ...row, Measured: 47.949 })).toMatchObject({
      severity: "check",
      facts: { scrap: false, limit: expect.closeTo(47.95, 9) },
    });
    expect(out({ ...outside, Measured: 30.051 })).toMatchObject({ severity: "check", facts: { scrap: false } });
    expect(out({ ...outside, Measured: 29.949 })).toMatchObject({ severity: "stop", facts: { scrap: true } });
  });
});

describe("cutter of a wall (common practice)", () => {
  const tool = (row: RowCells, tools: readonly RowCells[]) => planOf({ row: { ...STEEL, ...row }, tools }).results.tool;
  const MILL = { Kind: "end mill", Units: "mm", Teeth: 4, Substrate: "carbide", Helix: 38, "Edge radius": 0.008 };
  const mills = (...list: readonly (readonly [d: number, flutes: number, out: number])[]) =>
    list.map(([d, flutes, out], i) => ({
      ...{ ...MILL, Tool: `${i}: ${d}`, Diameter: d, "Cutting length": flutes, "Shank diameter": d, "Stick-out": out },
    }));
  it("fills at most eight tenths of a bore", () => {
    const row = { ...bore, Tool: null, "Start diameter": 12, "Finish diameter": 20 };
    expect(tool(row, mills([16.1, 30, 50])) ?? null).toBeNull();
    expect(tool(row, mills([16, 30, 50]))).toBe("0: 16");
  });
  it("is at most four times as thick as an open wall is high", () => {
    const row = { ...side, Tool: null, Depth: 3 };
    expect(tool(row, mills([12.1, 30, 40])) ?? null).toBeNull();
    expect(tool(row, mills([12, 30, 40]))).toBe("0: 12");
  });
  it("reaches the depth with its flutes or its neck", () => {
    const row = { ...side, Tool: null };
    expect(tool(row, mills([12, 19.9, 40])) ?? null).toBeNull();
    expect(tool(row, mills([12, 20, 40]))).toBe("0: 12");
    const necked = { ...mills([12, 15, 40])[0]!, "Neck diameter": 11, "Neck length": 20 };
    expect(tool(row, [necked])).toBe("0: 12");
  });
  it("is no wider than the slot", () => {
    const slot = { Operation: "slot", Depth: 5, Length: 60, "Finish diameter": 10 };
    expect(tool(slot, mills([10.1, 20, 40])) ?? null).toBeNull();
    expect(tool(slot, mills([10, 20, 40]))).toBe("0: 10");
  });
});
