import { describe, expect, it } from "vitest";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { OPERATIONS, usesCell } from "../../src/operations/index.ts";
import { planRow } from "../../src/plan/row.ts";
import { rowFacts } from "../../src/program/facts.ts";
import { MACHINE, MATERIAL, TOOL } from "../../src/table/lists.ts";
import { type List, type Lists, type ReadRow, readLists, readRows } from "../../src/table/read.ts";
import { RESULT } from "../../src/table/results.ts";
import { OPERATION_NAMES, ROW, type RowKey } from "../../src/table/rows.ts";
import { STEP } from "../../src/table/steps.ts";
import { en } from "../../src/words/en/index.ts";
import { worded } from "../../src/words/worded.ts";
import { rules } from "../findings/all.ts";
import { caseLists, caseRow, planOf, STEEL } from "../findings/rule.ts";

/** An object that writes down which of its keys are read. */
function watched<T extends object>(object: T, seen: Set<string>): T {
  return new Proxy(object, {
    get(target, key) {
      if (typeof key === "string") seen.add(key);
      return Reflect.get(target, key);
    },
    has(target, key) {
      if (typeof key === "string") seen.add(key);
      return Reflect.has(target, key);
    },
    // A copy reads nothing by itself: what is read from it is seen there.
    ownKeys: (target) => Reflect.ownKeys(target),
  });
}

const watchedList = <T extends object>(list: List<T>, seen: Set<string>): List<T> => ({
  ...list,
  items: list.items.map((item) => watched(item, seen)),
  find: (name) => {
    const found = list.find(name);
    return found && watched(found, seen);
  },
});

const seen = {
  row: new Map<string, Set<string>>(),
  material: new Set<string>(),
  tool: new Set<string>(),
  machine: new Set<string>(),
};

/** Results and numbers of the chain that some row has. */
const answered = new Set<string>();
const stepped = new Set<string>();

function plan(read: ReadRow, lists: Lists): void {
  // A row with a tool to be found, or a size class, is copied on its way: a copy reads every cell and tells nothing.
  if (read.row.tool === undefined || read.row.sizeClass !== undefined) return;
  const own = seen.row.get(read.row.operation ?? "") ?? new Set<string>();
  seen.row.set(read.row.operation ?? "", own);
  const row = { ...read, row: watched(read.row, own) };
  const planned = planRow(row, {
    materials: watchedList(lists.materials, seen.material),
    tools: watchedList(lists.tools, seen.tool),
    machines: watchedList(lists.machines, seen.machine),
  });
  // The words of its program are made of the row as well.
  const told = worded(planned, en);
  rowFacts(row, told, lists, 0);
  for (const [key, value] of Object.entries(told.results))
    if (value !== null && value !== undefined && value !== "") answered.add(key);
  for (const step of planned.steps) stepped.add(step.key);
}

const shop = readLists(MATERIALS, TOOLS, MACHINES);
for (const read of readRows(DEMO)) if (!read.empty) plan(read, shop);
for (const one of rules().flatMap((rule) => [rule.fires, rule.inside])) {
  plan(caseRow(one), caseLists(one));
  // What hangs on the row above is worked out with it.
  if (one.above) for (const step of planOf(one).steps) stepped.add(step.key);
}

// Threads in holes that the plan chooses, with the tool named.
const tapM6 = shop.tools.items.find((t) => t.kind === "tap" && t.diameter === 6)!.tool;
for (const [Operation, Tool] of [
  ["thread mill", "TM-M6-S"],
  ["tap", tapM6],
] as const) {
  const row = { ...STEEL, Operation, Tool, Thread: "M6", Depth: 10 };
  plan(caseRow({ row }), caseLists({ row }));
}

// A blind hole that is reamed.
const reamer = shop.tools.items.find((t) => t.kind === "reamer" && t.diameter === 10)!.tool;
const blind = { ...STEEL, Operation: "ream", Tool: reamer, "Finish diameter": 10, Depth: 20, "Hole depth": 26 };
for (const start of [9.8, null])
  plan(caseRow({ row: { ...blind, "Start diameter": start } }), caseLists({ row: blind }));

// A seat milled to a size.
const seat = { ...STEEL, Operation: "counterbore", Tool: "EM-10-4", "Finish diameter": 20, Depth: 8 };
const judged = { ...seat, "Start diameter": 11, "Size tolerance": 0.1, Roughness: 3.2 };
for (const row of [seat, judged]) plan(caseRow({ row }), caseLists({ row }));

/** Columns that tell a person something and are shown, not reckoned with. */
const SHOWN: ReadonlySet<string> = new Set([
  "row",
  "feature",
  "remark",
  "source",
  "designations",
  "material",
  "machine",
  "tool",
  "operation",
  "units",
  // of a material: tells people one grade from another
  "hardness",
]);

describe("columns (house)", () => {
  it("has no column of a row that no operation reads", () => {
    const read = new Set([...seen.row.values()].flatMap((keys) => [...keys]));
    for (const key of Object.keys(ROW)) if (!SHOWN.has(key)) expect([...read], key).toContain(key);
  });
  it("says of every operation which cells it reads, and no others", () => {
    for (const name of OPERATION_NAMES) {
      for (const key of seen.row.get(name) ?? [])
        if (key in ROW) expect(usesCell(name, key as RowKey), `${name} reads ${key} and does not say so`).toBe(true);
      const { uses } = OPERATIONS[name];
      for (const key of uses) expect([...(seen.row.get(name) ?? [])], `${name} says it reads ${key}`).toContain(key);
    }
  });
  it.each([
    ["material", MATERIAL],
    ["tool", TOOL],
    ["machine", MACHINE],
  ] as const)("has no column in the list of %ss that no plan reads", (list, columns) => {
    for (const key of Object.keys(columns)) if (!SHOWN.has(key)) expect([...seen[list]], key).toContain(key);
  });
  it("has no result, and no number of a chain, that no row comes to", () => {
    expect(Object.keys(RESULT).filter((key) => !answered.has(key))).toEqual([]);
    expect(Object.keys(STEP).filter((key) => !stepped.has(key))).toEqual([]);
  });
});
