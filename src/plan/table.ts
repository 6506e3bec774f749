/** The whole table: blocks of cells in, a block of results out. */
import { Cache } from "../cache.ts";
import type { Plan } from "../operations/shared/types.ts";
import { RESULT_COLUMNS } from "../table/columns.ts";
import { type Cells, type Lists, type ReadRow, readLists, readRows } from "../table/read.ts";
import { type DimensionName, fromCanonical } from "../units.ts";
import { full } from "../words/en/full.ts";
import { en } from "../words/en/index.ts";
import type { Words } from "../words/types.ts";
import { type RowPlan, worded } from "../words/worded.ts";
import { handedOn, roughedBy } from "./handed.ts";
import { planRow } from "./row.ts";
import { sharedSetups } from "./setups.ts";

export interface Blocks {
  readonly rows: Cells;
  readonly materials: Cells;
  readonly tools: Cells;
  readonly machines: Cells;
}

type Line = readonly (number | string)[];

export interface TablePlan {
  /** One per input row; undefined for a row without content. */
  readonly lines: readonly (RowPlan | undefined)[];
  readonly header: readonly string[];
  /** One line per input row under `header`; lengths etc. in the row's units, "" where there is nothing. */
  readonly block: readonly Line[];
}

const HEADER = RESULT_COLUMNS.map((c) => c.heading);

/** Works out a table given as blocks of cells, each with its heading row. Without `detail` the steps are left out. */
export function planTable(blocks: Blocks, detail = true, words: Words = full): TablePlan {
  const lists = readLists(blocks.materials, blocks.tools, blocks.machines);
  const lines = planRows(readRows(blocks.rows), lists, detail, words);
  return { lines, header: HEADER, block: lines.map((line) => resultCells(line)) };
}

/** Works out rows that are read already. A machine's setup is shared by the rows planned on it. */
export function planRows(
  rows: readonly ReadRow[],
  lists: Lists,
  detail = true,
  words: Words = en,
): (RowPlan | undefined)[] {
  const sharing = sharedSetups(rows);
  const plans: Plan[] = [];
  const handed = handedOn(rows, lists, (at) => plans[at]);
  return rows.map((read, i) => {
    if (read.empty) return undefined;
    plans[i] = planRow(read, lists, sharing(read), detail, handed(i));
    return worded(plans[i], words);
  });
}

/** Result lines of rows that were worked out before, under the lists and headings they belong to. */
export type PlanMemory = Cache<string, Cache<string, Line>>;
/** Tables of different lists that are remembered, and lines of each. */
const TABLES = 8;
const LINES = 20_000;

export const planMemory = (): PlanMemory => new Cache("tables that were planned", TABLES);

/**
 * The block of planTable with its heading row. A row whose cells, lists and share of the setup are as they were when
 * `memory` saw it is not worked out again: after an edit, one row is.
 */
export function planBlock(blocks: Blocks, memory: PlanMemory, words: Words = en): (number | string)[][] {
  const named = [...blocks.materials, [], ...blocks.tools, [], ...blocks.machines, blocks.rows[0] ?? []];
  const known = memory.get(named.map(rowText).join("\n"), () => new Cache<string, Line>("rows of a table", LINES));
  let lists: Lists | undefined;
  const rows = readRows(blocks.rows);
  const sharing = sharedSetups(rows);
  const listsNow = () => (lists ??= readLists(blocks.materials, blocks.tools, blocks.machines));
  let handed: ReturnType<typeof handedOn> | undefined;
  // A row that finishes another's wall hangs on that row as well, and so on.
  const cells = (at: number): string => {
    const rough = roughedBy(rows, at);
    return rowText(blocks.rows[at + 1]!) + (rough === undefined ? "" : ` < ${cells(rough)}`);
  };
  const lines = rows.map((read, i) => {
    const share = sharing(read);
    const line = known.get(`${share} ${cells(i)}`, () => {
      handed ??= handedOn(rows, listsNow());
      return resultCells(read.empty ? undefined : worded(planRow(read, listsNow(), share, false, handed(i)), words));
    });
    return [...line];
  });
  return [[...HEADER], ...lines];
}

/** Cells as text that tells kinds apart: a blank is not 0, a number not its text, a NaN not a blank. */
const rowText = (cells: readonly unknown[]) =>
  cells
    .map((cell) => {
      if (cell === null || cell === undefined) return "";
      if (typeof cell === "string") return JSON.stringify(cell);
      if (typeof cell !== "object") return String(cell);
      return `#${String((cell as { code?: unknown }).code)}`;
    })
    .join(",");

/** A row's results as cells in its own units, in the order of RESULT_COLUMNS. */
function resultCells(line: RowPlan | undefined): (number | string)[] {
  return RESULT_COLUMNS.map((column) => {
    const value = line?.results[column.key as keyof RowPlan["results"]];
    if (value === null || value === undefined) return "";
    if (typeof value !== "number") return value;
    if (!Number.isFinite(value)) return "";
    return column.dimension ? fromCanonical(value, column.dimension as DimensionName, line!.units) : value;
  });
}
