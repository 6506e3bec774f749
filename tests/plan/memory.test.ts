/** Rows that were worked out are remembered by their cells: no two rows of different cells are taken for one. */
import { expect, it } from "vitest";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { planBlock, planMemory, planTable } from "../../src/plan/table.ts";
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
