import { describe, expect, it } from "vitest";
import { PLAN } from "../../functions/plan.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { readLists } from "../../src/table/read.ts";

const HEAD = ["Row", "Operation", "Units", "Material", "Machine", "Tool", "Finish diameter", "Depth"];
const MATERIAL = "Steel C45 (AISI 1045)";

type Cells = (string | number | null)[][];
const withCell = (list: readonly (readonly unknown[])[], name: string, heading: string, cell: unknown): Cells => {
  const at = list[0]!.indexOf(heading);
  expect(at).toBeGreaterThan(0);
  return list.map((line) => line.map((own, i) => (line[0] === name && i === at ? cell : own))) as Cells;
};

/** 38.1 and 1.5 · 25.4 are not the same to the last bit. */
const rounded = (value: unknown): unknown => (typeof value === "number" ? Number(value.toPrecision(12)) : value);

/** The line of a drilled hole with one cell changed: in the row, or in one of the lists. */
function line(change: {
  row?: unknown;
  material?: unknown;
  tool?: unknown;
  machine?: unknown;
}): Record<string, unknown> {
  const rows = [HEAD, [1, "drill", "mm", MATERIAL, "Centre V3", "D-8.5", 8.5, change.row ?? 12.5]];
  const block = PLAN(
    rows as any[][],
    (change.material === undefined
      ? MATERIALS
      : withCell(MATERIALS, MATERIAL, "kc1.1 [MPa]", change.material)) as any[][],
    (change.tool === undefined ? TOOLS : withCell(TOOLS, "D-8.5", "Stick-out", change.tool)) as any[][],
    (change.machine === undefined
      ? MACHINES
      : withCell(MACHINES, "Centre V3", "Power [kW]", change.machine)) as any[][],
  ) as unknown[][];
  return Object.fromEntries(block[0]!.map((heading, i) => [heading, rounded(block[1]![i])]));
}

const READ: readonly (readonly [text: string, mm: number])[] = [
  ["12,5", 12.5],
  ["12.5 mm", 12.5],
  ["12,5mm", 12.5],
  ["Ø12", 12],
  ["½", 12.7],
  ["1/2", 12.7],
  ["１２，５", 12.5],
];

describe("numbers as people type them, in PLAN (identity: the same plan as with the number)", () => {
  it.each([...READ, ["1 1/2", 38.1] as const])("reads %s in a row as %d mm", (text, mm) => {
    expect(line({ row: text })).toEqual(line({ row: mm }));
  });
  it.each([
    ["83,5", 83.5],
    ["83.5 mm", 83.5],
    ["3 1/4", 82.55],
    ["3¼", 82.55],
    ["Ø 83", 83],
    ['3.25"', 82.55],
  ] as const)("reads %s in the list of tools as %d mm", (text, mm) => {
    expect(line({ tool: text })).toEqual(line({ tool: mm }));
  });
  it("reads them in the lists of materials and machines", () => {
    expect(line({ material: "2220,5" })).toEqual(line({ material: 2220.5 }));
    expect(line({ material: "2220 N/mm²" })).toEqual(line({ material: 2220 }));
    expect(line({ machine: "12,5 kW" })).toEqual(line({ machine: 12.5 }));
  });
  it("refuses a comma that may mark decimals or thousands, and names it, in rows and in every list", () => {
    const why = /comma may mark decimals or thousands: write 1\.234 or 1234/;
    expect(line({ row: "1,234" })).toMatchObject({ Verdict: "stop", Reasons: expect.stringMatching(why) });
    for (const list of ["material", "tool", "machine"] as const)
      expect(line({ [list]: "1,234" }).Reasons, list).toMatch(why);
    // One digit more or less leaves no doubt.
    expect(line({ row: "1,23" })).toEqual(line({ row: 1.23 }));
    expect(line({ row: "1,2345" })).toEqual(line({ row: 1.2345 }));
  });
  it("refuses two numbers in one cell, and says that one is allowed", () => {
    for (const text of ["12 x 24", "12x24", "12 × 24 mm", "12*24"]) {
      expect(line({ row: text })).toMatchObject({
        Verdict: "stop",
        Reasons: expect.stringMatching(/one number is allowed, alone or with mm or in/),
      });
      expect(line({ tool: text }).Reasons, text).toMatch(/one number is allowed/);
    }
    expect(line({ material: "12 x 24" }).Reasons).toMatch(/one number is allowed, alone or with MPa/);
  });
  it("keeps a cell that could not be read out of the list, whatever it is", () => {
    const read = (cell: unknown) =>
      readLists(
        [["Material"]],
        [
          ["Tool", "Units", "Diameter"],
          ["x", "mm", cell],
        ],
        [["Machine"]],
      ).tools.items[0]!.diameter;
    for (const cell of ["1,234", "12 x 24", "12-14", "~12", "12.5.3", "abc", "12 kg", "1/0", true])
      expect(read(cell)).toBeUndefined();
    expect(read("1 1/2")).toBeCloseTo(38.1, 9);
  });
});
