import { describe, expect, it } from "vitest";
import { CellError } from "../../functions/cells.ts";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { planTable } from "../../src/plan/table.ts";
import type { ResultKey } from "../../src/table/results.ts";
import { fromCanonical } from "../../src/units.ts";
import type { RowPlan, Step } from "../../src/words/worded.ts";
import { runFormula } from "../house/formula-text.ts";

/** Rows that the demo does not have: floor's measurements, blank holes and tools, other operations, capped feeds. */
const MORE: (string | number | null)[][] = [
  // biome-ignore format: one row a line
  ["Row", "Operation", "Units", "Material", "Machine", "Tool", "Thread", "Start diameter", "Finish diameter", "Depth", "Length", "Radial depth", "Size tolerance", "Measured", "Wear value", "Way", "Wear factor", "Surface speed", "Side"],
  // biome-ignore format: one row a line
  ["measured", "thread mill", "mm", "Steel C45 (AISI 1045)", "Centre V3", "TM-M6-S", "M6", 5, null, 12, null, null, null, 5.38, 0.02, "conventional", 1.4, null, null],
  // biome-ignore format: one row a line
  ["blank hole", "thread mill", "in", "Steel C45 (AISI 1045)", "Centre V3", null, "1/4-20 UNC-2B", null, null, 0.4, null, null, null, null, null, null, null, null, null],
  // biome-ignore format: one row a line
  ["outside", "thread mill", "in", "Aluminium EN AW-6082 T6 (AA 6061)", "Centre V4", "TM-M16-S", "3/4-16 UNF-2A", 0.745, null, 0.5, null, null, null, 0.71, null, null, null, null, null],
  // biome-ignore format: one row a line
  ["boss", "boss", "in", "Steel C45 (AISI 1045)", "Centre V3", "EM-16-4", null, 1.25, 1.2, 0.4, null, null, 0.004, 1.201, null, null, null, null, null],
  // biome-ignore format: one row a line
  ["solid", "bore", "mm", "Aluminium EN AW-6082 T6 (AA 6061)", "Centre V4", "EM-12-3", null, 0, 60, 18, null, null, 0.3, 60.02, 0.01, null, null, null, null],
  // biome-ignore format: one row a line
  ["hss", "side", "mm", "Steel C45 (AISI 1045)", "Knee mill K1", "EM-1/2-4H", null, null, null, 10, 80, 0.5, 0.1, null, null, null, null, null, null],
  // biome-ignore format: one row a line
  ["fast", "side", "in", "Aluminium EN AW-6082 T6 (AA 6061)", "Retrofit mill R2", "EM-12-3", null, null, 2, 0.3, 1, 0.02, 0.01, null, null, null, null, 3000, "outside"],
  // biome-ignore format: one row a line
  ["tap", "tap", "in", "Steel C45 (AISI 1045)", "Centre V3", null, "3/8-16 UNC-2B", 0.3125, null, 0.6, null, null, null, null, null, null, null, null, null],
  // biome-ignore format: one row a line
  ["ream", "ream", "mm", "Steel C45 (AISI 1045)", "Centre V3", null, null, 9.8, 10, 20, null, null, null, null, null, null, null, null, null],
  // biome-ignore format: one row a line
  ["drill", "drill", "in", "Steel C45 (AISI 1045)", "Centre V3", null, "M8x1", null, null, 0.9, null, null, null, null, null, null, null, null, null],
  // biome-ignore format: one row a line
  ["pipe", "drill", "mm", "Steel C45 (AISI 1045)", "Centre V3", null, "G1/4", null, null, 12, null, null, null, null, null, null, null, null, null],
];

const lists = { materials: MATERIALS, tools: TOOLS, machines: MACHINES };
const lines = [DEMO, MORE].flatMap((rows) => planTable({ rows, ...lists }).lines) as RowPlan[];

function shown(line: RowPlan, step: Step): number {
  const value = step.value as number;
  return step.dimension ? fromCanonical(value, step.dimension, line.units) : value;
}

describe("the worked formulas of a row (identity)", () => {
  const formulas = new Set<string>();
  for (const line of lines) {
    it(`gives the numbers of row ${line.row} by the single functions`, () => {
      for (const step of line.steps) {
        if (step.cell === undefined) continue;
        const name = `${step.key} ${step.cell}`;
        formulas.add(/CUT\.([A-Z]+)/.exec(step.cell)![1]!);
        const answer = runFormula(step.cell);
        for (const cell of answer.flat()) expect(cell, name).not.toBeInstanceOf(CellError);
        if (typeof step.value === "string") {
          // depths: text with 3 places (mm) or 4 (in) against the spilled list
          const written = step.value.split(" · ").map(Number);
          expect(answer.length, name).toBe(written.length);
          const half = line.units === "in" ? 0.0000501 : 0.000501;
          for (const [i, w] of written.entries())
            expect(Math.abs((answer[i]![0] as number) - w), name).toBeLessThan(half);
          continue;
        }
        const wanted = shown(line, step);
        expect(answer.flat(), name).toHaveLength(1);
        // what stands in a formula has 15 digits; a difference of two near lengths (neck gap) loses some of them
        const slack = step.key === "neckGap" ? 1e-12 : 0;
        const miss = Math.abs((answer[0]![0] as number) - wanted);
        expect(miss, `${name} gives ${answer[0]![0]}, the step ${wanted}`).toBeLessThanOrEqual(
          1e-9 * Math.abs(wanted) + slack,
        );
      }
    });
  }
  it("covers the functions that a chain is made of", () => {
    for (const name of [
      ...["RPM", "SURFACESPEED", "TABLEFEED", "CHIPTHICKNESS", "ARCFEED", "ARCDEPTH", "THREADLEAD", "THREADSIZE"],
      ...["THREADPERCENT", "TAPTORQUE", "THREADPATH", "THREADPASSES", "NECKCLEARANCE", "TOOLDEFLECTION", "WEARCHANGE"],
      ...["DRILLTORQUE", "DRILLTHRUST", "DRILLTRAVEL", "TOOLLIFE", "PARTCOST"],
    ])
      expect(formulas, name).toContain(name);
  });
});

describe("what the steps say (identity)", () => {
  it("shows results that stand in the row's own cells", () => {
    // key of the step → key of the result
    const pairs: Record<string, string> = {
      ...{ spindleSpeed: "spindleSpeed", surfaceSpeed: "surfaceSpeed", pathRadius: "pathRadius", neckGap: "neckGap" },
      ...{
        force: "force",
        power: "power",
        deflection: "deflection",
        timeEach: "timeEach",
        cost: "cost",
        chip: "chipThickness",
      },
      ...{ radialDepth: "radialDepth", size: "size", majorDiameter: "majorDiameter", edgeFeed: "feedPerTooth" },
    };
    for (const line of lines)
      for (const step of line.steps) {
        const result = pairs[step.key] && line.results[pairs[step.key]! as ResultKey];
        if (typeof result === "number") expect(step.value, `row ${line.row}, ${step.key}`).toBe(result);
      }
  });
  it("has a label, a formula, a source and a finite value in every step, each key once a row", () => {
    for (const line of lines) {
      for (const step of line.steps) {
        const name = `row ${line.row}, ${step.key}`;
        expect(step.label.length, name).toBeGreaterThan(2);
        expect(step.formula.length, name).toBeGreaterThan(2);
        expect(step.source.length, name).toBeGreaterThan(1);
        if (typeof step.value === "number") expect(Number.isFinite(step.value), name).toBe(true);
        else expect(step.value, name).not.toMatch(/NaN|Infinity|undefined|null/);
      }
      const keys = line.steps.map((s) => s.key);
      expect(new Set(keys).size, `row ${line.row}: ${keys}`).toBe(keys.length);
    }
  });
  it("works out the same block without the steps", () => {
    for (const rows of [DEMO, MORE]) {
      expect(planTable({ rows, ...lists }, false).block).toEqual(planTable({ rows, ...lists }, true).block);
      for (const line of planTable({ rows, ...lists }, false).lines) expect(line?.steps).toEqual([]);
    }
  });
});
