/** What is done to a block of cells: entered, cleared, filled, copied, pasted. Each answers edits for one step of undo. */

import type { HtmlCell } from "./clip.ts";
import { displayText } from "./display.ts";
import { copied } from "./formulas.ts";
import type { Model } from "./model.ts";
import { Refused } from "./refused.ts";
import { holds } from "./state.ts";
import { type CellEdit, withGrowth } from "./tables.ts";
import { readTyped, type Typed } from "./typed.ts";
import { type Area, type Cell, type Edit, LAST_COLUMN, LAST_ROW } from "./types.ts";

/** Rows of an area that are to be seen; a filter protects the others. As far as the sheet is used. */
export function rowsIn(model: Model, sheet: string, area: Area): number[] {
  const hidden = model.filters.hidden(sheet);
  const state = model.sheet(sheet)!;
  const last = area.bottom >= LAST_ROW ? Math.max(area.top, state.used().rows - 1) : area.bottom;
  const rows: number[] = [];
  for (let row = area.top; row <= last; row++) if (!hidden.has(row) && !state.hiddenRows.has(row)) rows.push(row);
  return rows;
}

const write = (sheet: string, row: number, column: number, typed: Typed): CellEdit => ({
  kind: "cell",
  sheet,
  row,
  column,
  value: typed.value,
  ...(typed.formula === undefined ? {} : { formula: typed.formula }),
});

/** A format that the typing brings goes to a cell that has none. */
function formatted(model: Model, edit: CellEdit, typed: Typed): CellEdit {
  if (typed.numberFormat === undefined) return edit;
  const own = model.style(model.typed(edit.sheet, edit.row, edit.column))?.numberFormat;
  return own === undefined || /^general$/i.test(own) ? { ...edit, numberFormat: typed.numberFormat } : edit;
}

/** What was typed into one cell. */
export function enterEdits(model: Model, sheet: string, row: number, column: number, text: string) {
  const typed = model.read(text, sheet, row, column);
  if (typed.unreadable) throw new Refused("formula", {});
  return { typed, edits: withGrowth(model, sheet, [formatted(model, write(sheet, row, column, typed), typed)]) };
}

/** What was typed into one cell, into every cell of a block that is to be seen; references move along as in a copy. */
export function enterAllEdits(
  model: Model,
  sheet: string,
  area: Area,
  at: { readonly row: number; readonly column: number },
  text: string,
): Edit[] {
  const edits: CellEdit[] = [];
  const right = area.right >= LAST_COLUMN ? Math.max(area.left, model.used(sheet).columns - 1) : area.right;
  for (const row of rowsIn(model, sheet, area)) {
    for (let column = area.left; column <= right; column++) {
      const typed = model.read(text, sheet, row, column);
      if (typed.unreadable) throw new Refused("formula", {});
      const formula = typed.formula === undefined ? undefined : copied(typed.formula, row - at.row, column - at.column);
      edits.push(formatted(model, write(sheet, row, column, { ...typed, formula }), typed));
    }
  }
  return withGrowth(model, sheet, edits);
}

export function clearEdits(model: Model, sheet: string, area: Area): Edit[] {
  const state = model.sheet(sheet)!;
  const edits: CellEdit[] = [];
  for (const row of rowsIn(model, sheet, area)) {
    for (const [column, cell] of state.cells.get(row) ?? []) {
      if (column >= area.left && column <= area.right && holds(cell))
        edits.push({ kind: "cell", sheet, row, column, value: null });
    }
  }
  return withGrowth(model, sheet, edits);
}

/** First row of the area into the others; one row alone takes the one above. */
export function fillEdits(model: Model, sheet: string, area: Area): Edit[] {
  const state = model.sheet(sheet)!;
  const rows = rowsIn(model, sheet, area);
  const hidden = model.filters.hidden(sheet);
  let from = rows.shift();
  if (rows.length === 0 && from !== undefined) {
    rows.push(from);
    do from -= 1;
    while (from >= 0 && (hidden.has(from) || state.hiddenRows.has(from)));
  }
  if (from === undefined || from < 0) return [];
  const edits: CellEdit[] = [];
  const last = Math.min(area.right, Math.max(area.left, state.used().columns - 1));
  for (let column = area.left; column <= last; column++) {
    const cell = state.typed(from, column);
    for (const row of rows) edits.push(copyOf(model, cell, { sheet, row, column }, row - from, 0));
  }
  return withGrowth(model, sheet, edits);
}

function copyOf(
  model: Model,
  cell: Cell | undefined,
  to: { sheet: string; row: number; column: number },
  rows: number,
  columns: number,
  format = model.style(cell)?.numberFormat,
): CellEdit {
  const own = model.style(model.typed(to.sheet, to.row, to.column))?.numberFormat;
  // A format of the target's own stays: it belongs to the column.
  const keeps = format === undefined || (own !== undefined && !/^general$/i.test(own));
  return {
    kind: "cell",
    ...to,
    value: cell?.formula === undefined ? (cell?.value ?? null) : null,
    ...(cell?.formula === undefined ? {} : { formula: copied(cell.formula, rows, columns) }),
    ...(keeps || /^general$/i.test(format) ? {} : { numberFormat: format }),
  };
}

/** A cell of a copied block. */
export interface Copied {
  /** As other programs get it: a number with all its digits. */
  readonly text: string;
  readonly cell: Cell | undefined;
  readonly format?: string;
  /** Where it stood. */
  readonly row: number;
  readonly column: number;
}

export function copyBlock(model: Model, sheet: string, area: Area, columnsHidden: ReadonlySet<number>): Copied[][] {
  const { columns } = model.used(sheet);
  const right = Math.min(area.right, Math.max(area.left, columns - 1));
  return rowsIn(model, sheet, area).map((row) => {
    const line: Copied[] = [];
    for (let column = area.left; column <= right; column++) {
      if (columnsHidden.has(column)) continue;
      const cell = model.cell(sheet, row, column);
      const plain = cell && { ...cell, formula: undefined };
      line.push({ text: clipText(model, plain), cell, format: model.style(cell)?.numberFormat, row, column });
    }
    return line;
  });
}

/** A value as text without loss: all digits of a number, a date as its format shows it. */
function clipText(model: Model, cell: Cell | undefined): string {
  if (!cell || cell.value === null) return "";
  if (typeof cell.value === "string") return cell.value;
  const format = model.style(cell)?.numberFormat;
  const shown = displayText(cell.value, format, model.locale, model.date1904);
  if (typeof cell.value !== "number") return shown;
  const back = readTyped(shown, { locale: model.locale, date1904: model.date1904, numberFormat: format });
  return back.value === cell.value ? shown : String(cell.value).replace(".", model.locale.decimal);
}

export const htmlCells = (block: readonly (readonly Copied[])[], model: Model): HtmlCell[][] =>
  block.map((row) =>
    row.map(({ text, cell }) => {
      const value = cell?.value ?? null;
      const literal =
        typeof value === "string" && (/\d/.test(value) || readTyped(value, model).value !== value) ? true : undefined;
      return { text, ...(typeof value === "number" ? { number: value } : {}), ...(literal ? { literal } : {}) };
    }),
  );

/** A cell to paste: text of another program, with its exact number when that is known, or a copy of ours. */
export interface Pasted {
  readonly text: string;
  readonly number?: number;
  readonly literal?: boolean;
  readonly own?: Copied;
}

export interface PasteResult {
  readonly edits: Edit[];
  /** Where it went. */
  readonly area: Area;
  /** Cells that stay text although they look like numbers. */
  readonly doubts: readonly { readonly row: number; readonly column: number; readonly text: string }[];
}

/** A block into the cells from the area's corner on; it repeats when the area is a multiple of it. */
export function pasteEdits(
  model: Model,
  sheet: string,
  area: Area,
  block: readonly (readonly Pasted[])[],
): PasteResult {
  const high = block.length;
  const wide = Math.max(0, ...block.map((row) => row.length));
  const times = (size: number, by: number) => (by > 0 && size > by && size % by === 0 ? size / by : 1);
  const chosen = area.bottom >= LAST_ROW ? 1 : rowsIn(model, sheet, area).length;
  const rows = visibleFrom(model, sheet, area.top, high * times(chosen, high));
  const columns = wide * times(area.right - area.left + 1 > 1000 ? 1 : area.right - area.left + 1, wide);
  const edits: CellEdit[] = [];
  const doubts: { row: number; column: number; text: string }[] = [];
  rows.forEach((row, r) => {
    const line = block[r % high]!;
    for (let c = 0; c < columns; c++) {
      const pasted = line[c % wide];
      const column = area.left + c;
      if (!pasted) continue;
      const { own } = pasted;
      if (own) {
        const { cell, format } = own;
        edits.push(copyOf(model, cell, { sheet, row, column }, row - own.row, column - own.column, format));
        continue;
      }
      const typed: Typed =
        pasted.number !== undefined
          ? { value: pasted.number, numberFormat: model.read(pasted.text, sheet, row, column).numberFormat }
          : pasted.literal
            ? { value: pasted.text }
            : model.read(pasted.text, sheet, row, column);
      if (typed.doubt || typed.unreadable) doubts.push({ row, column, text: pasted.text });
      edits.push(formatted(model, write(sheet, row, column, typed), typed));
    }
  });
  return {
    edits: withGrowth(model, sheet, edits),
    area: {
      top: area.top,
      left: area.left,
      bottom: rows.at(-1) ?? area.top,
      right: area.left + Math.max(1, columns) - 1,
    },
    doubts,
  };
}

function visibleFrom(model: Model, sheet: string, row: number, count: number): number[] {
  const hidden = model.filters.hidden(sheet);
  const { hiddenRows } = model.sheet(sheet)!;
  const rows: number[] = [];
  for (let r = row; rows.length < count && r <= LAST_ROW; r++) if (!hidden.has(r) && !hiddenRows.has(r)) rows.push(r);
  return rows;
}
