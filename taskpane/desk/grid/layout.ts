/** Sizes and places of a sheet's rows and columns on the screen, its frozen part, and its headings. */
import type { Model } from "../model/model.ts";
import type { SheetState } from "../model/state.ts";
import { LAST_COLUMN, LAST_ROW } from "../model/types.ts";
import { Axis } from "./axis.ts";
import type { Measure } from "./measure.ts";

/** Blank rows and columns to grow into. */
const SPARE_ROWS = 60;
const SPARE_COLUMNS = 6;
/** Width in characters of a column without one (ECMA-376-1, 18.3.1.81 leaves it to the program; 8.43 in practice). */
const DEFAULT_WIDTH = 8.43;
/** Left and right of the text in a cell. */
const PADDING = 12;
const WIDEST = 560;

export interface Layout {
  readonly rows: Axis;
  readonly columns: Axis;
  /** Width of the row numbers. */
  readonly side: number;
  /** Height of the column letters. */
  readonly letters: number;
  readonly frozenRows: number;
  readonly frozenColumns: number;
  /** Height and width that stay in place, with letters and row numbers. */
  readonly fixedHeight: number;
  readonly fixedWidth: number;
  /** Rows of headings: their text wraps to two lines. */
  readonly headings: ReadonlySet<number>;
}

export interface LayoutInput {
  readonly model: Model;
  readonly sheet: SheetState;
  readonly measure: Measure;
  readonly width: number;
  readonly height: number;
  /** Gloves and fingers: everything larger. */
  readonly coarse: boolean;
  /** Columns hidden by the switch. */
  readonly unused: ReadonlySet<number>;
  /** The grid reaches at least so far: where the cursor is. */
  readonly reach: { readonly row: number; readonly column: number };
}

export function layoutOf(input: LayoutInput): Layout {
  const { model, sheet, measure, coarse, unused, reach } = input;
  const used = sheet.used();
  const rowHeight = coarse ? 44 : 28;
  const letters = coarse ? 32 : 22;
  const rowCount = Math.min(LAST_ROW + 1, Math.max(used.rows, reach.row + 1) + SPARE_ROWS);
  const columnCount = Math.min(LAST_COLUMN + 1, Math.max(used.columns, reach.column + 1) + SPARE_COLUMNS);
  const side = Math.ceil(measure.digit * Math.max(3, String(rowCount).length)) + 14;

  const most = Math.max(120, Math.min(WIDEST, input.width - side - 16));
  const pixels = (characters: number) => Math.min(most, Math.round(characters * measure.digit) + PADDING);
  const usual = pixels(DEFAULT_WIDTH);
  const widths = new Map<number, number>();
  for (const [column, wide] of wholeNumbers(model, sheet, measure)) if (wide > usual) widths.set(column, wide);
  for (const [column, characters] of sheet.widths) widths.set(column, Math.max(pixels(characters), 24));
  for (const column of [...sheet.hiddenColumns, ...unused]) widths.set(column, 0);
  const columns = new Axis(columnCount, usual, widths);

  const headings = headingRows(sheet);
  const heights = new Map<number, number>();
  for (const row of headings) {
    const lines = linesOf(sheet, row, columns, measure);
    if (lines > 1) heights.set(row, rowHeight + 18 * (lines - 1));
  }
  for (const row of sheet.hiddenRows) heights.set(row, 0);
  for (const row of model.filters.hidden(sheet.name)) heights.set(row, 0);
  const rows = new Axis(rowCount, rowHeight, heights);

  // What stays in place never takes more than half.
  let frozenColumns = Math.min(sheet.frozen.columns, columnCount);
  while (frozenColumns > 0 && side + columns.offset(frozenColumns) > input.width / 2) frozenColumns--;
  let frozenRows = Math.min(sheet.frozen.rows, rowCount);
  while (frozenRows > 0 && letters + rows.offset(frozenRows) > input.height / 2) frozenRows--;
  return {
    rows,
    columns,
    side,
    letters,
    frozenRows,
    frozenColumns,
    fixedHeight: letters + rows.offset(frozenRows),
    fixedWidth: side + columns.offset(frozenColumns),
    headings,
  };
}

/** Rows that are looked at for the width of a column without one, and the most that it gets [px]. */
const [LOOKED_AT, WIDEST_NUMBER] = [200, 180];
const wanted = new WeakMap<SheetState, { readonly changes: number; readonly widths: ReadonlyMap<number, number> }>();

/** Pixels in which numbers of a format are whole, in columns that the file gives no width: a date must be read. */
function wholeNumbers(model: Model, sheet: SheetState, measure: Measure): ReadonlyMap<number, number> {
  const known = wanted.get(sheet);
  if (known?.changes === sheet.changes()) return known.widths;
  const widths = new Map<number, number>();
  let looked = 0;
  for (const row of sheet.cells.keys()) {
    if (++looked > LOOKED_AT) break;
    for (const [column, cell] of sheet.cells.get(row)!) {
      // A number without a format is made shorter where it has to be.
      if (typeof cell.value !== "number" || cell.style === undefined || sheet.widths.has(column)) continue;
      const style = model.style(cell);
      if (!style || /^general$/i.test(style.numberFormat)) continue;
      const width = Math.ceil(measure.widthOf(model.shown(sheet.name, row, column), style.bold)) + PADDING + 2;
      if (width > (widths.get(column) ?? 0)) widths.set(column, Math.min(width, WIDEST_NUMBER));
    }
  }
  wanted.set(sheet, { changes: sheet.changes(), widths });
  return widths;
}

function headingRows(sheet: SheetState): Set<number> {
  const rows = new Set(sheet.tables.filter((table) => table.headings !== false).map((table) => table.area.top));
  for (let row = 0; row < Math.min(sheet.frozen.rows, 3); row++) rows.add(row);
  return rows;
}

/** Lines that the longest heading of a row needs, three at most. */
function linesOf(sheet: SheetState, row: number, columns: Axis, measure: Measure): number {
  let most = 1;
  for (const [column, cell] of sheet.cells.get(row) ?? []) {
    if (typeof cell.value !== "string" || column >= columns.count) continue;
    const merge = sheet.merges.length > 0 ? sheet.mergeAt(row, column) : undefined;
    const end = Math.min((merge?.right ?? column) + 1, columns.count);
    const room = columns.offset(end) - columns.offset(column) - PADDING;
    if (room <= 0 || measure.widthOf(cell.value, true) <= room) continue;
    let lines = 1;
    let used = 0;
    for (const word of cell.value.split(/\s+/)) {
      const width = measure.widthOf(`${word} `, true);
      if (used > 0 && used + width > room + 4) {
        lines += 1;
        used = 0;
      }
      // A word that is too long by itself is broken.
      lines += Math.floor(Math.max(0, width - 5) / room);
      used += width % room;
    }
    most = Math.max(most, lines);
  }
  return Math.min(3, most);
}

/** Width in characters in which all texts of a column are to be seen. */
export function fittingWidth(model: Model, sheet: SheetState, column: number, measure: Measure): number {
  let widest = 0;
  let seen = 0;
  const headings = headingRows(sheet);
  for (const row of [...sheet.cells.keys(), ...sheet.spills.keys()]) {
    const text = model.shown(sheet.name, row, column);
    if (text === "" || seen++ > 3000) continue;
    const longest = headings.has(row)
      ? Math.max(...text.split(/\s+/).map((word) => measure.widthOf(word, true)), measure.widthOf(text, true) / 2 + 10)
      : measure.widthOf(text);
    widest = Math.max(widest, longest);
  }
  return Math.round(Math.min(80, Math.max(4, (widest + 6) / measure.digit)) * 100) / 100;
}
