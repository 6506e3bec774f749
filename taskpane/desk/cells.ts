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

/** All that a sheet holds, from A1, rows of equal length. */
export function gridOf(sheet: SheetState): CellValue[][] {
  const { rows, columns } = sheet.used();
  return Array.from({ length: rows }, (_, r) => rowOf(sheet, r, 0, columns));
}
