/** The sheets a workbook without lists, or without a planning table, can be given. */
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import type { ListBlock } from "../../src/lists/types.ts";
import {
  type Column,
  MACHINE_COLUMNS,
  MATERIAL_COLUMNS,
  normalHeading,
  ROW_COLUMNS,
  TOOL_COLUMNS,
} from "../../src/table/columns.ts";
import type { Block, NewSheet } from "../host/host.ts";
import { reference } from "../host/reference.ts";

/** Names and designations stay as they are typed; other columns keep the program's own format. */
export const textFormat = (column: Column | undefined): string | undefined =>
  column?.kind === "text" ? column.format?.[0] : undefined;

/** The same for the columns of a list, by their headings. */
export function textFormats(headings: readonly unknown[], columns: readonly Column[]): (string | undefined)[] {
  const own = new Map(columns.map((column) => [normalHeading(column.heading), column]));
  return headings.map((heading) => textFormat(own.get(normalHeading(heading))));
}

const sheet = (name: string, [headings = [], ...rows]: ListBlock, columns: readonly Column[]): NewSheet => ({
  name,
  headings: headings.map(String),
  rows,
  formats: textFormats(headings, columns),
});

export const STARTING_LISTS: readonly NewSheet[] = [
  sheet("Materials", MATERIALS, MATERIAL_COLUMNS),
  sheet("Tools", TOOLS, TOOL_COLUMNS),
  sheet("Machines", MACHINES, MACHINE_COLUMNS),
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
    formats: ROW_COLUMNS.map(textFormat),
    choices: ROW_COLUMNS.map((column) => {
      const list = lists[NAMED_BY[column.key] ?? -1];
      if (list && list.rows.length > 0) return reference(list.sheet, list.top + 1, list.left, list.rows.length, 1);
      return column.kind === "word" ? column.words : column.kind === "flag" ? ["yes", "no"] : undefined;
    }),
  };
}
