/** Which columns an operation reads: each one that it names changes what is planned of some row, and no other does. */
import { describe, expect, it } from "vitest";
import { OPERATIONS, usesCell } from "../../src/operations/index.ts";
import { planRow } from "../../src/plan/row.ts";
import { rowFacts } from "../../src/program/facts.ts";
import { OPERATION_NAMES, type OperationName, ROW, type RowKey } from "../../src/table/rows.ts";
import { en } from "../../src/words/en/index.ts";
import { worded } from "../../src/words/worded.ts";
import { caseLists, caseRow, planOf, type RowCells, STEEL } from "../findings/rule.ts";

const DRILLED = { "Finish diameter": 10.2, Depth: 20, Tool: "D-10.2" };
const BORED = { "Start diameter": 28, "Finish diameter": 30, Depth: 12, Tool: "EM-12-4", "Size tolerance": 0.05 };
const STRAIGHT = { Depth: 10, Length: 60, "Radial depth": 1, Tool: "EM-10-4", "Size tolerance": 0.03 };

/** Whole rows of each operation. */
const ROWS: Readonly<Record<OperationName, readonly RowCells[]>> = {
  drill: [
    { ...DRILLED, "Size tolerance": 0.2 },
    { Thread: "M10", Depth: 20 },
  ],
  "thread mill": [
    { Thread: "M6", Depth: 9, "Start diameter": 4.9, Tool: "TM-M6-S" },
    { Thread: "M6", Depth: 9 },
  ],
  bore: [BORED, { ...BORED, "Size tolerance": null }],
  boss: [
    { ...BORED, "Start diameter": 32 },
    { ...BORED, "Start diameter": 32, "Size tolerance": null },
  ],
  counterbore: [
    { ...BORED, "Start diameter": 20 },
    { ...BORED, "Size tolerance": null },
  ],
  slot: [
    { Depth: 12, Length: 60, Tool: "EM-10-4" },
    { Depth: 12, Length: 60, Tool: "EM-10-4", "Radial depth": 4, "Size tolerance": 0.05 },
  ],
  side: [STRAIGHT, { ...STRAIGHT, Side: "inside", "Finish diameter": 60 }],
  face: [
    { Depth: 2, Length: 60, Tool: "FM-40-4" },
    { "Axial depth": 2, Length: 60, Tool: "FM-40-4" },
  ],
  tap: [
    { Thread: "M6", Depth: 10, "Start diameter": 5, Tool: "T-M6" },
    { Thread: "M6", Depth: 10, Tool: "T-M6" },
  ],
  ream: [
    { "Finish diameter": 10, "Start diameter": 9.8, Depth: 20, Tool: "R-10" },
    { "Finish diameter": 10, Depth: 20, Tool: "R-10" },
  ],
  countersink: [
    { "Finish diameter": 12, "Start diameter": 6, Tool: "CS-12.5" },
    { "Finish diameter": 12, Tool: "CS-12.5", "Hole depth": 5 },
  ],
};

/** Other cells for each column. */
const OTHER: Partial<Record<RowKey, readonly RowCells[string][]>> = {
  ...{ material: ["Aluminium EN AW-6082 T6 (AA 6061)"], machine: ["Knee mill K1"], quantity: [1000], batch: [7] },
  ...{ spacing: [200], surfaceSpeed: [11], maxRpm: [100], tool: [null, "EM-16-4"], thread: ["M8", "M6-6g"] },
  ...{ startDiameter: [null, 0, 8, 29], finishDiameter: [null, 14, 29.5, 40], depth: [null, 5, 22], through: ["yes"] },
  ...{ hand: ["left"], way: ["conventional"], length: [null, 20], side: ["outside", "straight"] },
  ...{ radialDepth: [null, 0.5, 3], axialDepth: [null, 0.7, 3], passes: [4], springPasses: [3], stickOut: [150, 8] },
  ...{ feedPerTooth: [0.0123], holeDepth: [3, 60], drillOversize: [0.3], wearFactor: [2.9], measured: [5.4, 29.9] },
  ...{ wearValue: [0.03], sizeTolerance: [null, 0.001], roughness: [0.01], coolant: ["dry"], insideCorner: [5.5] },
  ...{ sizeClass: ["H6", "h6"], totalWidth: [22, 90], remark: ["so"], feature: ["hole"] },
};

const lists = caseLists({ row: STEEL });
const shown = (row: RowCells) => JSON.stringify(planRow(caseRow({ row }), lists, 1, false));

describe("columns that an operation reads (independent: each cell changed in whole rows)", () => {
  it("are tried with other cells in all columns but those that name the row", () =>
    expect(Object.keys(ROW).filter((key) => !(key in OTHER))).toEqual(["row", "operation", "units"]));
  for (const operation of OPERATION_NAMES)
    for (const [key, cells] of Object.entries(OTHER) as [RowKey, RowCells[string][]][]) {
      const { heading } = ROW[key];
      const name = `${operation} ${usesCell(operation, key) ? "looks at" : "does not look at"} ${heading}`;
      // Told of every row, for who reads it: these are not part of what is worked out.
      if (key === "feature" || key === "remark") continue;
      // The hand of a tap changes its program, not its plan.
      if (operation === "tap" && key === "hand") continue;
      it(name, () => {
        const changes = ROWS[operation].some((own) => {
          const row = { ...STEEL, Quantity: 3, Operation: operation, ...own };
          const before = shown(row);
          return cells.some((cell) => shown({ ...row, [heading]: cell }) !== before);
        });
        expect(changes).toBe(usesCell(operation, key));
      });
    }
  it("tap looks at Hand where its program is written", () => {
    const handOf = (cells: RowCells) => {
      const row = { ...STEEL, Operation: "tap", ...ROWS.tap[0], ...cells };
      return rowFacts(caseRow({ row }), worded(planOf({ row }), en), lists, 0).shape;
    };
    expect(handOf({})).toMatchObject({ hand: "right" });
    expect(handOf({ Hand: "left" })).toMatchObject({ hand: "left" });
    expect(usesCell("tap", "hand")).toBe(true);
  });
  it("a row without an operation shows all of them", () => {
    for (const key of Object.keys(ROW) as RowKey[]) expect(usesCell(undefined, key)).toBe(true);
  });
  it("what a row needs it looks at: a drill of a thread needs no diameter, a face either depth", () => {
    for (const operation of OPERATION_NAMES)
      for (const row of [{}, { thread: "M6" }, { depth: 2 }, { side: "inside" }] as const)
        for (const key of OPERATIONS[operation].needs(row)) expect(usesCell(operation, key, row)).toBe(true);
  });
});
