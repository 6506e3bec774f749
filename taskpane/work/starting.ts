/** The sheets a workbook without lists, or without a planning table, can be given. */
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import type { ListBlock } from "../../src/lists/types.ts";
import { ROW_COLUMNS } from "../../src/table/columns.ts";
import type { Block, NewSheet } from "../host/host.ts";
import { reference } from "../host/reference.ts";

const sheet = (name: string, [headings = [], ...rows]: ListBlock): NewSheet => ({
  name,
  headings: headings.map(String),
  rows,
});

export const STARTING_LISTS: readonly NewSheet[] = [
  sheet("Materials", MATERIALS),
  sheet("Tools", TOOLS),
  sheet("Machines", MACHINES),
];

const SPARE_ROWS = 20;

/** Columns whose words are the names of a list: key of the column → place of the list. */
const NAMED_BY: Readonly<Record<string, number>> = { material: 0, tool: 1, machine: 2 };

/** An empty planning table; words are chosen from what the column allows, names from the lists of the workbook. */
export function emptyTable(lists: readonly (Block | null)[]): NewSheet {
  return {
    name: "Plan",
    headings: ROW_COLUMNS.map((column) => column.heading),
    rows: Array.from({ length: SPARE_ROWS }, (_, i) =>
      ROW_COLUMNS.map((column) => (column.key === "row" ? i + 1 : null)),
    ),
    choices: ROW_COLUMNS.map((column) => {
      const list = lists[NAMED_BY[column.key] ?? -1];
      if (list && list.rows.length > 0) return reference(list.sheet, list.top + 1, list.left, list.rows.length, 1);
      return column.kind === "word" ? column.words : column.kind === "flag" ? ["yes", "no"] : undefined;
    }),
  };
}
