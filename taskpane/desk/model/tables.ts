/** The table around a cell: sorting it, and what grows with it. */
import { addressOf, overlap } from "./address.ts";
import { copied, sorted } from "./formulas.ts";
import type { Model } from "./model.ts";
import { Refused } from "./refused.ts";
import { holds, type SheetState } from "./state.ts";
import type { Area, Cell, Edit, TableRange, Value } from "./types.ts";

export type CellEdit = Extract<Edit, { kind: "cell" }>;

/** A heading row with rows under it: a table of the file, or a block of cells that stands by itself. */
export interface Region {
  /** Row of the headings; the one above the data where a table has none. */
  readonly top: number;
  readonly left: number;
  readonly right: number;
  /** Last row with data; a totals row is not among them. */
  readonly bottom: number;
  readonly table?: TableRange;
}

/** First row of a table's data: below its headings, where it has any. */
export const firstRow = (table: TableRange): number => table.area.top + (table.headings === false ? 0 : 1);

/** The region that a cell belongs to; undefined when it stands alone. */
export function regionAt(model: Model, sheet: string, row: number, column: number): Region | undefined {
  const state = model.sheet(sheet);
  if (!state) return undefined;
  const table = state.tableAt(row, column);
  if (table) {
    const { area } = table;
    return { ...area, top: firstRow(table) - 1, bottom: area.bottom - (table.totals ? 1 : 0), table };
  }
  const filled = (r: number, c: number) => {
    const cell = model.cell(sheet, r, c);
    return holds(cell) && !state.tableAt(r, c);
  };
  const { rows, columns } = state.used();
  if (row >= rows || column >= columns) return undefined;
  let area: Area = { top: row, bottom: row, left: column, right: column };
  // Grows while there is something beside it, corners included.
  for (let grown = true; grown; ) {
    grown = false;
    const { top, bottom, left, right } = area;
    const line = (from: number, to: number, at: (i: number) => boolean) => {
      for (let i = from; i <= to; i++) if (i >= 0 && at(i)) return true;
      return false;
    };
    if (top > 0 && line(left - 1, right + 1, (c) => filled(top - 1, c))) area = { ...area, top: top - 1 };
    if (bottom < rows - 1 && line(left - 1, right + 1, (c) => filled(bottom + 1, c)))
      area = { ...area, bottom: bottom + 1 };
    if (left > 0 && line(area.top - 1, area.bottom + 1, (r) => filled(r, left - 1))) area = { ...area, left: left - 1 };
    if (right < columns - 1 && line(area.top - 1, area.bottom + 1, (r) => filled(r, right + 1)))
      area = { ...area, right: right + 1 };
    grown = area.top !== top || area.bottom !== bottom || area.left !== left || area.right !== right;
  }
  return area.bottom === area.top ? undefined : area;
}

/** Sorts numbers before text before errors, blanks last whichever way; "M6" before "M10". */
const collator = new Intl.Collator("en", { numeric: true, sensitivity: "base" });
const rank = (value: Value) =>
  typeof value === "number" ? 0 : typeof value === "string" ? 1 : typeof value === "boolean" ? 2 : 3;

export function compareValues(a: Value, b: Value, descending: boolean): number {
  if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1;
  const sign = descending ? -1 : 1;
  if (rank(a) !== rank(b)) return sign * (rank(a) - rank(b));
  if (typeof a === "number") return sign * (a - (b as number));
  if (typeof a === "string") return sign * collator.compare(a, b as string);
  if (typeof a === "boolean") return sign * (Number(a) - Number(b));
  return 0;
}

/** Edits that sort a region's rows by a column. Rows that are equal keep their order. */
export function sortEdits(model: Model, sheet: string, region: Region, column: number, descending: boolean): Edit[] {
  const state = model.sheet(sheet)!;
  const rows = Array.from({ length: region.bottom - region.top }, (_, i) => region.top + 1 + i);
  const data = { top: region.top + 1, bottom: region.bottom, left: region.left, right: region.right };
  if (state.merges.some((area) => overlap(area, data))) throw new Refused("table", { other: "merged" });
  for (const row of rows) {
    for (let c = region.left; c <= region.right; c++) {
      if (state.typed(row, c)?.array || state.spills.get(row)?.has(c))
        throw new Refused("table", { other: "array", at: addressOf(row, c) });
    }
  }
  const order = rows
    .map((row) => ({ row, value: model.cell(sheet, row, column)?.value ?? null }))
    .sort((a, b) => compareValues(a.value, b.value, descending) || a.row - b.row);
  return order.flatMap(({ row: from }, i) => {
    const to = rows[i]!;
    if (from === to) return [];
    return Array.from({ length: region.right - region.left + 1 }, (_, c) =>
      moved(model, state, from, to, region.left + c),
    );
  });
}

function moved(model: Model, state: SheetState, from: number, to: number, column: number): CellEdit {
  const cell = state.typed(from, column);
  const format = (one: Cell | undefined) => model.style(one)?.numberFormat ?? "General";
  const numberFormat = format(cell);
  return {
    kind: "cell",
    sheet: state.name,
    row: to,
    column,
    value: cell?.value ?? null,
    ...(cell?.formula === undefined ? {} : { formula: sorted(cell.formula, state.name, from, to) }),
    ...(numberFormat === format(state.typed(to, column)) ? {} : { numberFormat }),
  };
}

/**
 * What follows from writing cells: a table whose next row is written grows by it, with the number formats and formulas
 * of the row above; one whose heading is written gets the heading's name.
 */
export function withGrowth(model: Model, sheet: string, edits: readonly CellEdit[]): Edit[] {
  const state = model.sheet(sheet);
  if (!state || state.tables.length === 0) return [...edits];
  const written = new Map<number, Map<number, CellEdit>>();
  for (const edit of edits) {
    if (!written.has(edit.row)) written.set(edit.row, new Map());
    written.get(edit.row)!.set(edit.column, edit);
  }
  const more: Edit[] = [];
  const formats = new Map<CellEdit, string>();
  for (const table of state.tables) {
    const { area } = table;
    let bottom = area.bottom;
    while (!table.totals && rowJoins(state, table, bottom + 1, written)) {
      bottom += 1;
      const row = written.get(bottom)!;
      for (let c = area.left; c <= area.right; c++) {
        const edit = row.get(c);
        const above = state.typed(area.bottom, c);
        const format = model.style(above)?.numberFormat;
        if (edit && format && state.typed(bottom, c)?.style === undefined) formats.set(edit, format);
        if (!edit && isCalculated(state, table, c))
          more.push({
            kind: "cell",
            sheet: state.name,
            row: bottom,
            column: c,
            value: null,
            formula: copied(above!.formula!, bottom - area.bottom, 0),
            ...(format ? { numberFormat: format } : {}),
          });
      }
    }
    const renamed =
      table.headings !== false &&
      [...(written.get(area.top)?.keys() ?? [])].some((c) => c >= area.left && c <= area.right);
    if (bottom > area.bottom || renamed)
      more.push({ kind: "table-area", sheet: state.name, table: table.name, area: { ...area, bottom } });
  }
  return [
    ...edits.map((edit) => {
      const format = formats.get(edit);
      return format === undefined || edit.numberFormat !== undefined ? edit : { ...edit, numberFormat: format };
    }),
    ...more,
  ];
}

/** True when a row under a table is written and holds nothing else. */
function rowJoins(
  state: SheetState,
  table: TableRange,
  row: number,
  written: ReadonlyMap<number, ReadonlyMap<number, CellEdit>>,
): boolean {
  const edits = written.get(row);
  if (!edits) return false;
  const { left, right } = table.area;
  const line = { top: row, bottom: row, left, right };
  if (state.tables.some((other) => other !== table && overlap(other.area, line))) return false;
  if (state.merges.some((area) => overlap(area, line))) return false;
  let filled = false;
  for (let c = left; c <= right; c++) {
    const edit = edits.get(c);
    if (edit && (edit.value !== null || edit.formula !== undefined)) filled = true;
    // What stands there already belongs to somebody else.
    if (holds(state.typed(row, c)) || state.spills.get(row)?.has(c)) return false;
  }
  return filled;
}

/** True when the last rows of a column hold the same formula, as a calculated column does. */
function isCalculated(state: SheetState, table: TableRange, column: number): boolean {
  const { bottom } = table.area;
  const first = firstRow(table);
  const last = state.typed(bottom, column);
  if (last?.formula === undefined || last.array || bottom < first) return false;
  if (bottom === first) return true;
  const before = state.typed(bottom - 1, column);
  return before?.formula !== undefined && copied(before.formula, 1, 0) === last.formula;
}
