/** Rows that were worked out are remembered by their cells: no two rows of different cells are taken for one. */
import { expect, it } from "vitest";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { rememberedFor } from "../../src/operations/shared/remembered.ts";
import { planBlock, planMemory, planTable } from "../../src/plan/table.ts";
import { type Lists, readLists } from "../../src/table/read.ts";
import { en } from "../../src/words/en/index.ts";
import type { Words } from "../../src/words/types.ts";
import { blockOf } from "../findings/rule.ts";

it("a comma within a text does not end its cell (identity: planned without a memory)", () => {
  const slot = { Units: "mm", Operation: "slot", Material: "Steel C45 (AISI 1045)", Machine: "Centre V3" };
  const lists = { materials: MATERIALS, tools: TOOLS, machines: MACHINES };
  const rows = [
    { ...slot, Depth: 6, Length: 50, Tool: "EM-12-4", Feature: "x,y" },
    { ...slot, Depth: 6, Length: 50, Tool: "EM-12-4,x", Feature: "y" },
  ];
  const fresh = rows.map((row) => planTable({ ...lists, rows: blockOf([row]) }, false).block[0]);
  expect(fresh[0]).not.toEqual(fresh[1]);
  const memory = planMemory();
  const kept = rows.map((row) => planBlock({ ...lists, rows: blockOf([row]) }, memory)[1]);
  expect(kept).toEqual(fresh);
});

/** Words that count how many rows are put into them: a row that is remembered is not. */
function counting(): { words: Words; count(): number } {
  let rows = 0;
  const words: Words = {
    ...en,
    get verdicts() {
      rows++;
      return en.verdicts;
    },
  };
  const count = () => {
    const seen = rows;
    rows = 0;
    return seen;
  };
  return { words, count };
}

it("two tables of different lists leave each other's rows alone (identity: asked for in turn, each is worked out once)", () => {
  const slot = { Units: "mm", Operation: "slot", Material: "Steel C45 (AISI 1045)", Machine: "Centre V3", Length: 50 };
  const rows = blockOf([3, 4, 5].map((Depth) => ({ ...slot, Depth, Tool: "EM-12-4" })));
  const dear = MACHINES.map((line, i) => (i === 0 ? line : line.map((cell) => (cell === 60 ? 61 : cell))));
  const dull = MATERIALS.map((line, i) => (i === 0 ? line : line.map((cell) => (cell === 0.25 ? 0.26 : cell))));
  const tables = [
    { materials: MATERIALS, tools: TOOLS, machines: MACHINES, rows },
    { materials: dull, tools: TOOLS, machines: MACHINES, rows },
    { materials: MATERIALS, tools: TOOLS, machines: dear, rows },
  ];
  expect(new Set(tables.map((table) => JSON.stringify(table))).size).toBe(3);
  const memory = planMemory();
  const { words, count } = counting();
  const first = tables.map((table) => planBlock(table, memory, words));
  expect(count()).toBe(9);
  for (let turn = 0; turn < 3; turn++) expect(tables.map((table) => planBlock(table, memory, words))).toEqual(first);
  expect(count()).toBe(0);
  // One row of one table is another: it alone is worked out again.
  const edited = { ...tables[1]!, rows: blockOf([3, 4, 6].map((Depth) => ({ ...slot, Depth, Tool: "EM-12-4" }))) };
  planBlock(edited, memory, words);
  expect(count()).toBe(1);
  planBlock(tables[0]!, memory, words);
  expect(count()).toBe(0);
});

it("ways of cutting that were worked out are those of one set of lists (identity)", () => {
  const memories = rememberedFor<number>("test", 4);
  const [one, other] = [0, 1].map(() => readLists(MATERIALS, TOOLS, MACHINES)) as [Lists, Lists];
  memories(one).get("cut", () => 1);
  for (let i = 0; i < 20; i++) memories(other).get(`cut ${i}`, () => 2);
  expect(memories(one).get("cut", () => 3)).toBe(1);
});
