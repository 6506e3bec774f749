/** What the calculator holds of the workbook: its sheets, the formulas by their place, and where their answers spill. */
import type { Area, Cell, Sheet, Value } from "../model/types.ts";
import type { Group } from "./dependents.ts";
import type { CalculatedSheet } from "./shapes.ts";
import type { Block } from "./values.ts";

export interface Formula {
  readonly group: Group;
  readonly row: number;
  readonly column: number;
  readonly id: number;
  state: "done" | "dirty" | "running";
  value: Value;
  stale: boolean;
  area?: Area;
  block?: Block;
  circle?: string;
}

/** Columns of a sheet: a cell's number on it is row × COLUMNS + column. */
export const COLUMNS = 16_384;
export const idOf = (row: number, column: number) => row * COLUMNS + column;

/** "B3" */
export function cellName(row: number, column: number): string {
  const letters = (n: number): string =>
    (n < 26 ? "" : letters(Math.floor(n / 26) - 1)) + String.fromCharCode(65 + (n % 26));
  return `${letters(column)}${row + 1}`;
}
export const nameOf = ({ row, column }: Formula): string => cellName(row, column);

export class Holding {
  sheets: readonly CalculatedSheet[] = [];
  /** By sheet, then by the cell's number. */
  formulas: Map<number, Formula>[] = [];
  spilled: Map<number, Formula>[] = [];
  private extents: ({ rows: number; columns: number } | undefined)[] = [];

  /** Begins anew with these sheets, none of their formulas taken in. */
  begin(sheets: readonly CalculatedSheet[]): void {
    this.sheets = sheets;
    this.formulas = sheets.map(() => new Map());
    this.spilled = sheets.map(() => new Map());
    this.extents = [];
  }

  cellAt(sheet: number, row: number, column: number): Cell | undefined {
    return this.sheets[sheet]!.cells.get(row)?.get(column);
  }

  sheetIndex(name: string): number {
    return this.sheets.findIndex((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  }

  tableWhere(test: (range: Sheet["tables"][number], sheet: number) => boolean) {
    for (const [sheet, { tables }] of this.sheets.entries())
      for (const range of tables) if (test(range, sheet)) return { sheet, range };
    return undefined;
  }

  tableAt(sheet: number, row: number, column: number) {
    return this.tableWhere(
      ({ area }, on) =>
        on === sheet && row >= area.top && row <= area.bottom && column >= area.left && column <= area.right,
    );
  }

  /** One more than the last row and column that hold something, spills included. */
  used(sheet: number): { rows: number; columns: number } {
    const known = this.extents[sheet];
    if (known) return known;
    let [rows, columns] = [0, 0];
    for (const [row, line] of this.sheets[sheet]!.cells) {
      if (line.size === 0) continue;
      if (row >= rows) rows = row + 1;
      for (const column of line.keys()) if (column >= columns) columns = column + 1;
    }
    for (const { area } of this.spilled[sheet]!.values()) {
      if (area === undefined) continue;
      rows = Math.max(rows, area.bottom + 1);
      columns = Math.max(columns, area.right + 1);
    }
    const made = { rows, columns };
    this.extents[sheet] = made;
    return made;
  }

  /** Something was written or spilled on a sheet. */
  grown(sheet: number): void {
    this.extents[sheet] = undefined;
  }
}
