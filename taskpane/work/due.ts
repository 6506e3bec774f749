/** What of the workbook has to be read again after something happened in it. Pure. */
import type { Block, DataChange } from "../host/host.ts";

export interface Due {
  /** The planning table, with its headings and what stands beside it. */
  readonly table: boolean;
  readonly lists: boolean;
  /** The row that is selected. */
  readonly selection: boolean;
  /** Rows of the table, counted from under its headings. */
  readonly rows: ReadonlySet<number>;
}

export const nothing: Due = { table: false, lists: false, selection: false, rows: new Set() };
export const everything: Due = { table: true, lists: true, selection: true, rows: new Set() };

export const isNothing = ({ table, lists, selection, rows }: Due): boolean =>
  !table && !lists && !selection && rows.size === 0;

export const merge = (a: Due, b: Due): Due => ({
  table: a.table || b.table,
  lists: a.lists || b.lists,
  selection: a.selection || b.selection,
  rows: new Set([...a.rows, ...b.rows]),
});

/** What is known of the workbook: the sheet that was read last, its table, the lists. */
export interface Known {
  readonly sheet: string | undefined;
  readonly table: Block | null;
  readonly lists: readonly (Block | null)[];
}

/** A block with the cells around it that could make it longer or wider. */
function touches({ top, left, rows, headings }: Block, cells: NonNullable<DataChange["cells"]>): boolean {
  const bottom = top + rows.length + 2;
  const right = left + headings.length;
  return cells.top <= bottom && cells.bottom >= top - 1 && cells.left <= right && cells.right >= left - 1;
}

export function dueAfter({ sheet, cells, calculated }: DataChange, known: Known): Due {
  if (sheet === undefined) return everything;
  const { table } = known;
  const lists = known.lists.some((list) => list?.sheet === sheet && (cells === undefined || touches(list, cells)));
  if (sheet !== known.sheet) return { ...nothing, lists };
  if (table === null) return { ...nothing, lists, table: calculated !== true };
  // Formulas among the inputs have other values; where the table is, and how long, stays.
  if (calculated) return { ...nothing, lists, selection: true };
  const inRows =
    cells !== undefined &&
    cells.top > table.top &&
    cells.bottom <= table.top + table.rows.length &&
    cells.left >= table.left &&
    cells.right < table.left + table.headings.length;
  if (!inRows) return { ...nothing, lists, table: true };
  const rows = Array.from({ length: cells.bottom - cells.top + 1 }, (_, r) => cells.top - table.top - 1 + r);
  return { ...nothing, lists, rows: new Set(rows) };
}
