/** The whole table: blocks of cells in, a block of results out. */
import { Cache } from "../cache.ts";
import type { Plan } from "../operations/shared/types.ts";
import { RESULT_COLUMNS } from "../table/columns.ts";
import { type Cells, type Lists, type ReadRow, readLists, readRows } from "../table/read.ts";
import { fromCanonical, type Units } from "../units.ts";
import { full } from "../words/en/full.ts";
import { en } from "../words/en/index.ts";
import type { Words } from "../words/types.ts";
import { type RowPlan, type SaidResults, worded, wordedResults } from "../words/worded.ts";
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
  return { lines, header: HEADER, block: lines.map((line) => resultCells(line?.results, line?.units)) };
}

/** Works out rows that are read already. A machine's setup is shared by the rows planned on it. */
export function planRows(
  rows: readonly ReadRow[],
  lists: Lists,
  detail: boolean,
  words: Words = en,
): (RowPlan | undefined)[] {
  const sharing = sharedSetups(rows);
  const plans = new Map<number, Plan>();
  const handed = handedOn(rows, lists, (at) => plans.get(at));
  return rows.map((read, i) => {
    if (read.empty) return undefined;
    const plan = planRow(read, lists, sharing(read), detail, handed(i));
    plans.set(i, plan);
    return worded(plan, words);
  });
}

/** Lists that were read, once a row needs them, and result lines of rows that were worked out with them. */
interface Remembered {
  lists?: Lists;
  readonly lines: Cache<string, Line>;
}
/** What is remembered, under the lists and headings it belongs to. */
export type PlanMemory = Cache<string, Remembered>;
/** Tables of different lists that are remembered, and lines of each. */
const TABLES = 8;
const LINES = 20_000;

export const planMemory = (): PlanMemory => new Cache("planned tables", TABLES);

/**
 * The block of planTable with its heading row. A row whose cells, lists and share of the setup are as they were when
 * `memory` saw it is not worked out again: after an edit, one row is.
 */
export function planBlock(blocks: Blocks, memory: PlanMemory, words: Words = en): (number | string)[][] {
  const named = [blocks.materials, blocks.tools, blocks.machines, blocks.rows.slice(0, 1)];
  const known = memory.get(named.map((block) => block.map(rowText).join("\n")).join("\n\n"), () => ({
    lines: new Cache<string, Line>("rows of a table", LINES),
  }));
  const rows = readRows(blocks.rows);
  const sharing = sharedSetups(rows);
  const listsNow = () => (known.lists ??= readLists(blocks.materials, blocks.tools, blocks.machines));
  let handed: ReturnType<typeof handedOn> | undefined;
  // A row that finishes another's wall hangs on that row as well, and so on.
  const cells = (at: number): string => {
    const rough = roughedBy(rows, at);
    const own = rowText(blocks.rows[at + 1]!);
    return rough === undefined ? own : `${own} < ${cells(rough)}`;
  };
  const lines = rows.map((read, i) => {
    const share = sharing(read);
    const line = known.lines.get(`${share} ${cells(i)}`, () => {
      if (read.empty) return resultCells();
      handed ??= handedOn(rows, listsNow());
      const plan = planRow(read, listsNow(), share, false, handed(i));
      return resultCells(wordedResults(plan, words), plan.units);
    });
    return [...line];
  });
  return [[...HEADER], ...lines];
}

/** Cells as text that tells kinds apart: a blank is not 0, a number not its text, a NaN not a blank. */
const rowText = (cells: readonly unknown[]) =>
  cells
    .map((cell) =>
      typeof cell === "string" ? JSON.stringify(cell) : String((cell as { code?: unknown } | null)?.code ?? cell ?? ""),
    )
    .join(",");

/** A row's results as cells in its own units, in the order of RESULT_COLUMNS. */
function resultCells(results: SaidResults = {}, units?: Units): (number | string)[] {
  return RESULT_COLUMNS.map((column) => {
    const value = results[column.key];
    if (value === null || value === undefined) return "";
    if (typeof value !== "number") return value;
    if (!Number.isFinite(value)) return "";
    return column.dimension ? fromCanonical(value, column.dimension, units!) : value;
  });
}
