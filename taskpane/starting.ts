/** The sheets a workbook without lists, or without a planning table, can be given. */
import { MACHINES } from "../src/lists/machines.ts";
import { MATERIALS } from "../src/lists/materials.ts";
import { TOOLS } from "../src/lists/tools.ts";
import type { ListBlock } from "../src/lists/types.ts";
import { ROW_COLUMNS } from "../src/plan/columns.ts";
import type { NewSheet } from "./host/host.ts";

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

/** An empty planning table; words are chosen from lists where there are few of them. */
export const EMPTY_TABLE: NewSheet = {
  name: "Plan",
  headings: ROW_COLUMNS.map((column) => column.heading),
  rows: Array.from({ length: SPARE_ROWS }, (_, i) =>
    ROW_COLUMNS.map((column) => (column.key === "row" ? i + 1 : null)),
  ),
  choices: ROW_COLUMNS.map((column) =>
    column.kind === "word" ? column.words : column.kind === "flag" ? ["yes", "no"] : undefined,
  ),
};
