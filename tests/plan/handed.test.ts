import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import type { Plan } from "../../src/operations/shared/types.ts";
import { finishes, handedOn, LOOK_BACK, roughedBy } from "../../src/plan/handed.ts";
import { planRow } from "../../src/plan/row.ts";
import { planBlock, planMemory, planTable } from "../../src/plan/table.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import { blockOf, type RowCells } from "../findings/rule.ts";

const shop = readLists(MATERIALS, TOOLS, MACHINES);
const blocks = (rows: readonly RowCells[]) => ({
  rows: blockOf(rows),
  materials: MATERIALS,
  tools: TOOLS,
  machines: MACHINES,
});
function plans(rows: readonly RowCells[]): Plan[] {
  const read = readRows(blockOf(rows));
  const handed = handedOn(read, shop);
  return read.map((r, i) => planRow(r, shop, 1, false, handed(i)));
}

const COMMON = { Units: "mm", Material: "Steel C45 (AISI 1045)", Machine: "Centre V3", Operation: "bore" } as const;
const ROUGH = {
  ...COMMON,
  Row: 1,
  Tool: "EM-12-4",
  "Start diameter": 24,
  "Finish diameter": 29,
  Depth: 20,
  "Feed per tooth": 0.06,
  Passes: 1,
  "Spring passes": 0,
};
const FINISH = { ...ROUGH, Row: 2, "Start diameter": 29, "Finish diameter": 30, "Size tolerance": 0.05 };

describe("what roughing leaves is stock of the row that finishes its wall (independent: the row that says so itself)", () => {
  it("a rough bore that was measured is a start diameter of that size", () => {
    const [, finish] = plans([{ ...ROUGH, Measured: 28.86 }, FINISH]);
    const [alone] = plans([{ ...FINISH, "Start diameter": 28.86 }]);
    for (const key of ["radialDepth", "force", "power", "deflection", "stress", "size"] as const)
      expect(finish!.results[key], key).toBeCloseTo(alone!.results[key]!, 9);
  });
  it("a rough boss that came out thick is a start diameter of that size", () => {
    const boss = { Operation: "boss", "Start diameter": 36, "Finish diameter": 31 };
    const last = { Operation: "boss", "Start diameter": 31, "Finish diameter": 30 };
    const [, finish] = plans([
      { ...ROUGH, ...boss, Measured: 31.12 },
      { ...FINISH, ...last },
    ]);
    const [alone] = plans([{ ...FINISH, ...last, "Start diameter": 31.12 }]);
    for (const key of ["radialDepth", "force", "deflection", "size"] as const)
      expect(finish!.results[key], key).toBeCloseTo(alone!.results[key]!, 9);
  });
  it("of a side wall the finishing cut is thicker by what is left", () => {
    const side = { ...COMMON, Operation: "side", Feature: "Flank", Tool: "EM-12-4", Depth: 24, Length: 80 };
    const rough = { ...side, "Radial depth": 4, "Feed per tooth": 0.06 };
    const finish = { ...side, "Radial depth": 0.5, "Feed per tooth": 0.06, "Size tolerance": 0.05, "Spring passes": 0 };
    const [first, second] = plans([rough, finish]);
    const [, most] = first!.left!;
    expect(most).toBeGreaterThan(0.02);
    expect(second!.results.radialDepth).toBeCloseTo(0.5 + most, 12);
    expect(plans([finish])[0]!.results.radialDepth).toBe(0.5);
  });
  it("what is left is what the rough row's own size lacks", () => {
    const [rough] = plans([{ ...ROUGH, "Size tolerance": 0.5 }]);
    const [least, most] = rough!.left!;
    expect((least + most) / 2).toBeCloseTo((29 - rough!.results.size!) / 2, 9);
    expect(least).toBeLessThan(most);
  });
  it("goes on over more than two rows", () => {
    const half = { ...ROUGH, Row: 2, "Start diameter": 29, "Finish diameter": 29.6 };
    const last = { ...FINISH, Row: 3, "Start diameter": 29.6 };
    const all = plans([ROUGH, half, last]);
    expect(all[1]!.left![1]).toBeGreaterThan(plans([half])[0]!.left![1]);
    expect(all[2]!.results.radialDepth!).toBeGreaterThan(plans([half, last])[1]!.results.radialDepth!);
  });
});

describe("which rows cut one wall (identity)", () => {
  const read = (a: RowCells, b: RowCells) => {
    const [rough, row] = readRows(blockOf([a, b]));
    return finishes(rough!.row, row!.row);
  };
  it("the same operation and material, no deeper, from one size to the next", () => {
    expect(read(ROUGH, FINISH)).toBe(true);
    expect(read(ROUGH, { ...FINISH, "Start diameter": 28.9 })).toBe(false);
    expect(read(ROUGH, { ...FINISH, Material: "Grey iron EN-GJL-250" })).toBe(false);
    expect(read(ROUGH, { ...FINISH, Depth: 21 })).toBe(false);
    expect(read({ ...ROUGH, Operation: "boss" }, FINISH)).toBe(false);
    expect(read(FINISH, ROUGH)).toBe(false);
    for (const cells of [{ "Start diameter": null }, { Material: null }, { Depth: null }])
      expect(read(ROUGH, { ...FINISH, ...cells }), Object.keys(cells)[0]).toBe(false);
    expect(read({ ...ROUGH, "Finish diameter": null }, FINISH)).toBe(false);
    expect(read({ ...ROUGH, "Finish diameter": null }, { ...FINISH, "Start diameter": null })).toBe(false);
    const side = { ...COMMON, Operation: "side", Feature: "Flank", Depth: 10, "Radial depth": 3 };
    expect(read(side, { ...side, "Radial depth": 0.3 })).toBe(true);
    expect(read(side, side)).toBe(false);
    expect(read(side, { ...side, Feature: "Other flank", "Radial depth": 0.3 })).toBe(false);
    expect(read({ ...side, Feature: null }, { ...side, Feature: null, "Radial depth": 0.3 })).toBe(false);
    // a face or a slot leaves no wall to the next, whatever its width
    for (const Operation of ["face", "slot"])
      expect(read({ ...side, Operation }, { ...side, Operation, "Radial depth": 0.3 }), Operation).toBe(false);
  });
  it("the nearest row above counts, and none from further than the lines that are looked back over", () => {
    const filler = { ...COMMON, Operation: "drill", "Finish diameter": 5, Depth: 5 };
    const rows = (n: number) => readRows(blockOf([ROUGH, ...Array.from({ length: n }, () => filler), FINISH]));
    expect(roughedBy(rows(0), 1)).toBe(0);
    expect(roughedBy(rows(LOOK_BACK - 1), LOOK_BACK)).toBe(0);
    expect(roughedBy(rows(LOOK_BACK), LOOK_BACK + 1)).toBeUndefined();
    const twice = readRows(blockOf([ROUGH, ROUGH, FINISH]));
    expect(roughedBy(twice, 2)).toBe(1);
  });
  it("the block of a worksheet follows the row above, with a memory and without", () => {
    const memory = planMemory();
    const tried = [ROUGH, { ...ROUGH, "Feed per tooth": 0.12 }, { ...ROUGH, "Wear factor": 1.5 }, ROUGH];
    for (const rough of tried) {
      const table = blocks([rough, FINISH]);
      expect(planBlock(table, memory).slice(1)).toEqual(planTable(table, false).block);
    }
  });
});

describe("what is handed on, over random rows at a typed feed (identity)", () => {
  const CUTTERS = ["EM-6-4", "EM-8-4", "EM-10-4", "EM-12-4", "EM-16-4"];
  const NAMES = ["Steel C45 (AISI 1045)", "Stainless X5CrNi18-10 (AISI 304)", "Aluminium EN AW-6082 T6 (AA 6061)"];
  const cases = fc.record({
    cutter: fc.constantFrom(...CUTTERS),
    material: fc.constantFrom(...NAMES),
    inside: fc.boolean(),
    wide: fc.double({ min: 1.4, max: 3, noNaN: true }),
    rough: fc.double({ min: 0.05, max: 0.3, noNaN: true }),
    stock: fc.double({ min: 0.01, max: 0.08, noNaN: true }),
    feed: fc.double({ min: 0.003, max: 0.009, noNaN: true }),
    deep: fc.double({ min: 0.3, max: 1.2, noNaN: true }),
  });
  type Case = { [K in "cutter" | "material"]: string } & { inside: boolean } & {
    [K in "wide" | "rough" | "stock" | "feed" | "deep"]: number;
  };
  const rows = (c: Case, first: RowCells = {}, second: RowCells = {}): [RowCells, RowCells] => {
    const D = Number(c.cutter.split("-")[1]);
    const sign = c.inside ? 1 : -1;
    const size = c.wide * D;
    const common = {
      Units: "mm",
      Operation: c.inside ? "bore" : "boss",
      Material: c.material,
      Machine: "Centre V4",
      Tool: c.cutter,
      Depth: c.deep * D,
      "Feed per tooth": c.feed * D,
      Passes: 1,
      "Spring passes": 0,
    };
    const middle = size - sign * 2 * c.stock * D;
    const start = middle - sign * 2 * c.rough * D;
    return [
      { ...common, "Start diameter": start, "Finish diameter": middle, ...first },
      { ...common, "Start diameter": middle, "Finish diameter": size, "Size tolerance": 0.05, ...second },
    ];
  };
  const solid = (c: Case) => {
    const D = Number(c.cutter.split("-")[1]);
    return c.inside && Number(rows(c)[0]["Start diameter"]) <= D;
  };
  const error = (p: Plan, size: number) => Math.abs(p.results.size! - size);

  it("bending in roughing never makes the finished size better, and never puts it beyond the wall that stood there", () => {
    fc.assert(
      fc.property(cases, (c) => {
        fc.pre(!solid(c));
        const [rough, finish] = rows(c);
        const [first, second] = plans([rough, finish]);
        const [alone] = plans([finish]);
        const size = Number(finish["Finish diameter"]);
        const [, most] = first!.left!;
        const stood = Number(finish["Start diameter"]) - (c.inside ? 2 : -2) * Math.max(0, most);
        if (most > 0) expect(error(second!, size)).toBeGreaterThanOrEqual(error(alone!, size) - 1e-9);
        if (c.inside) expect(second!.results.size!).toBeGreaterThan(stood - 1e-9);
        else expect(second!.results.size!).toBeLessThan(stood + 1e-9);
      }),
      { numRuns: 150 },
    );
  });
  it("one more pass or spring pass, in roughing or in finishing, never makes it worse", () => {
    fc.assert(
      fc.property(cases, (c) => {
        fc.pre(!solid(c));
        const size = Number(rows(c)[1]["Finish diameter"]);
        const at = (first: RowCells, second: RowCells) => error(plans(rows(c, first, second))[1]!, size);
        const base = at({}, {});
        const slack = 1e-7 * size;
        expect(at({ "Spring passes": 1 }, {})).toBeLessThanOrEqual(base + slack);
        expect(at({}, { "Spring passes": 1 })).toBeLessThanOrEqual(base + slack);
        expect(at({ Passes: 2 }, {})).toBeLessThanOrEqual(base + slack);
        expect(at({}, { Passes: 2 })).toBeLessThanOrEqual(base + slack);
      }),
      { numRuns: 100 },
    );
  });
  it("follows feed, depth and stock of the roughing row without a jump", () => {
    fc.assert(
      fc.property(cases, fc.constantFrom("feed", "deep", "rough"), (c, key) => {
        fc.pre(!solid(c));
        const near = { ...c, [key]: c[key as "feed"] * (1 + 1e-6) };
        // the finishing row stays as it is: only what stands before it moves
        const [, finish] = rows(c);
        const [moved] = rows(near);
        const roughed = { ...moved, "Finish diameter": finish["Start diameter"]!, Depth: finish.Depth! };
        const one = plans([rows(c)[0], finish])[1]!.results.size!;
        const other = plans([
          key === "deep" ? { ...roughed, Depth: near.deep * Number(c.cutter.split("-")[1]) } : roughed,
          finish,
        ])[1]!;
        expect(Math.abs(other.results.size! - one)).toBeLessThan(1e-5);
      }),
      { numRuns: 100 },
    );
  });
});
