/** The block of a worksheet: what is remembered of it, and that it is the same as without a memory. */
import { describe, expect, it } from "vitest";
import { CellError } from "../../functions/cells.ts";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { type Blocks, planBlock, planMemory, planTable } from "../../src/plan/table.ts";
import { RESULT_COLUMNS } from "../../src/table/columns.ts";
import { blockOf, type RowCells } from "../findings/rule.ts";

const LISTS = { materials: MATERIALS, tools: TOOLS, machines: MACHINES };
const DRILL = {
  ...{ Row: 1, Units: "mm", Operation: "drill", Material: "Steel C45 (AISI 1045)", Machine: "Centre V3" },
  ...{ Tool: "D-10.2", "Finish diameter": 10.2, Depth: 20, Batch: 10 },
};
const blocks = (rows: readonly RowCells[]): Blocks => ({ ...LISTS, rows: blockOf(rows) });
const column = (heading: string) => RESULT_COLUMNS.findIndex((c) => c.heading === heading);

describe("a block that is planned with a memory (identity)", () => {
  it("is the demo's as without one, empty rows and all, the first time and the second", () => {
    const rows = [...DEMO.slice(0, 12), DEMO[0]!.map(() => null), ...DEMO.slice(12, 20)];
    const memory = planMemory();
    const { block, header } = planTable({ ...LISTS, rows }, false);
    for (let time = 0; time < 2; time++) expect(planBlock({ ...LISTS, rows }, memory)).toEqual([header, ...block]);
    expect(block[11]).toEqual(RESULT_COLUMNS.map(() => ""));
  });
  it("is one memory for one set of lists and headings, whatever the rows; another for others", () => {
    const memory = planMemory();
    const sizes = [
      blocks([DRILL]),
      blocks([{ ...DRILL, Depth: 21 }]),
      blocks([DRILL, DRILL]),
      { ...blocks([DRILL]), tools: TOOLS.slice(0, -1) },
      { ...blocks([DRILL]), machines: MACHINES.slice(0, -1) },
      { ...blocks([DRILL]), materials: MATERIALS.slice(0, -1) },
      blocks([{ ...DRILL, Feature: "A" }]),
      { ...LISTS, rows: [] },
    ].map((table) => {
      planBlock(table, memory);
      return memory.size;
    });
    expect(sizes).toEqual([1, 1, 1, 2, 3, 4, 5, 6]);
  });
  it("reads the lists once, and not at all where every row is known", () => {
    const memory = planMemory();
    let read = 0;
    const tools = new Proxy(TOOLS as unknown[][], {
      get(list, key) {
        if (key === "slice") read++;
        return Reflect.get(list, key);
      },
    });
    for (const Depth of [20, 21, 20, 21]) planBlock({ ...blocks([{ ...DRILL, Depth }]), tools }, memory);
    expect(read).toBe(1);
  });
  it("tells cells of different kinds apart: a blank and 0, a number and its text, faults by their code", () => {
    const memory = planMemory();
    const cells: unknown[] = [
      10.2,
      "10.2",
      "10,2",
      null,
      undefined,
      "",
      0,
      true,
      new CellError("#N/A", ""),
      new CellError("#REF!", ""),
    ];
    for (const cell of cells) {
      const rows = [Object.keys(DRILL), Object.values({ ...DRILL, "Finish diameter": cell })];
      const fresh = planTable({ ...LISTS, rows }, false).block[0];
      expect(planBlock({ ...LISTS, rows }, memory)[1], String(cell)).toEqual(fresh);
    }
    // of two texts the quotes do not make one
    const names = [
      ['a","b', "c"],
      ["a", 'b","c'],
    ] as const;
    const said = names.map(
      ([Feature, Tool]) => planBlock(blocks([{ Feature, Operation: "drill", Units: "mm", Tool }]), memory)[1],
    );
    expect(said[0]).not.toEqual(said[1]);
  });
  it("follows the number of rows that share a setup, and the row that roughs", () => {
    const memory = planMemory();
    const cost = (rows: readonly RowCells[]) => planBlock(blocks(rows), memory)[1]![column("Cost")] as number;
    const [alone, two] = [cost([DRILL]), cost([DRILL, { ...DRILL, Depth: 25 }])];
    // 35 min at 74 an hour, over ten parts: half of it is gone
    expect(alone - two).toBeCloseTo((74 * 35) / 60 / 10 / 2, 9);
    expect(cost([DRILL])).toBe(alone);
  });
  it("can be written over by who asked for it", () => {
    const memory = planMemory();
    const first = planBlock(blocks([DRILL]), memory);
    const kept = first.map((line) => [...line]);
    for (const line of first) line.fill("written over");
    expect(planBlock(blocks([DRILL]), memory)).toEqual(kept);
  });
});

describe("a table (identity)", () => {
  it("has a line of cells for each row in the row's units, and none for a row without content", () => {
    const inch = { ...DRILL, Units: "in", "Finish diameter": 10.2 / 25.4, Depth: 20 / 25.4 };
    const rows = [Object.keys(DRILL), Object.values(DRILL), Object.values(inch), Object.keys(DRILL).map(() => null)];
    const { lines, block, header } = planTable({ ...LISTS, rows });
    expect(header).toEqual(RESULT_COLUMNS.map((c) => c.heading));
    expect(lines.map((line) => line === undefined)).toEqual([false, false, true]);
    const feed = column("Feed per tooth");
    expect((block[0]![feed] as number) / (block[1]![feed] as number)).toBeCloseTo(25.4, 6);
    expect(block[0]![column("Spindle speed")]).toBeCloseTo(block[1]![column("Spindle speed")] as number, 6);
    expect(block[0]![column("Verdict")]).toBe("ok");
    expect(block[2]).toEqual(header.map(() => ""));
  });
  it("has steps where they are asked for", () => {
    expect(planTable(blocks([DRILL])).lines[0]!.steps.length).toBeGreaterThan(5);
    expect(planTable(blocks([DRILL]), false).lines[0]!.steps).toEqual([]);
  });
});
