/** Cells of the model as the pane's side of the house reads them: plain values, error values as their code. */
import type { CellValue } from "../host/host.ts";
import type { SheetState } from "./model/state.ts";
import type { Value } from "./model/types.ts";

export const plain = (value: Value | undefined): CellValue =>
  value === undefined || value === "" ? null : typeof value === "object" && value !== null ? value.error : value;

/** Values of one row from column `left`, spilled ones included. */
export function rowOf(sheet: SheetState, row: number, left: number, width: number): CellValue[] {
  const made: CellValue[] = new Array(width).fill(null);
  const cells = sheet.cells.get(row);
  const spills = sheet.spills.get(row);
  if (cells) {
    if (cells.size < width) {
      for (const [column, cell] of cells)
        if (column >= left && column < left + width) made[column - left] = plain(cell.value);
    } else for (let c = 0; c < width; c++) made[c] = plain(cells.get(left + c)?.value);
  }
  if (spills)
    for (const [column, { value }] of spills)
      if (column >= left && column < left + width && made[column - left] === null) made[column - left] = plain(value);
  return made;
}

/** Value of one cell, a spilled one included. */
export const cellValueAt = (sheet: SheetState, row: number, column: number): CellValue =>
  plain(sheet.cells.get(row)?.get(column)?.value) ?? plain(sheet.spills.get(row)?.get(column)?.value);

interface Grid {
  readonly changes: number;
  readonly columns: number;
  readonly rows: CellValue[][];
}
const grids = new WeakMap<SheetState, Grid>();

/**
 * All that a sheet holds, from A1, rows of equal length. Rows that did not change since they were read last are the same
 * arrays, and a sheet that did not change is the same grid: whoever looks at all of it again can tell.
 */
export function gridOf(sheet: SheetState): readonly (readonly CellValue[])[] {
  const { rows, columns } = sheet.used();
  const known = grids.get(sheet);
  const changes = sheet.changes();
  const same = known?.columns === columns ? known : undefined;
  if (same?.changes === changes && same.rows.length === rows) return same.rows;
  const made: Grid = {
    changes,
    columns,
    rows: Array.from({ length: rows }, (_, r) => {
      const there = same?.rows[r];
      return there && sheet.changesOf(r) <= same!.changes ? there : rowOf(sheet, r, 0, columns);
    }),
  };
  grids.set(sheet, made);
  return made.rows;
}
