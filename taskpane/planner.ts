/** The trade's planning as the pane asks for it: the whole table, or one row of it at the price of one. */
import { planRow, planRows } from "../src/plan/evaluate.ts";
import { readLists, readRows } from "../src/plan/read.ts";
import type { Planner } from "./session.ts";

export const planner: Planner = (blocks, only) => {
  const lists = readLists(blocks.materials, blocks.tools, blocks.machines);
  const rows = readRows(blocks.rows);
  if (only === undefined) return planRows(rows, lists);
  const read = rows[only];
  if (read === undefined || read.empty) return [];
  // A machine's setup is shared by the rows planned on it, here as in the whole table.
  const machine = read.row.machine?.toLowerCase();
  const sharing = rows.filter((row) => !row.empty && row.row.machine?.toLowerCase() === machine).length;
  const lines: ReturnType<Planner>[number][] = [];
  lines[only] = planRow(read, lists, machine === undefined ? 1 : sharing);
  return lines;
};
