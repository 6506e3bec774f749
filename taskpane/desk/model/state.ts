/** A sheet while it is edited. Rows of cells are shared with the file's until they are written. */
import { inArea } from "./address.ts";
import type { Area, Cell, Choices, Sheet, TableRange, Value } from "./types.ts";

export type Row = Map<number, Cell>;

export interface Spilled {
  readonly value: Value;
  readonly row: number;
  readonly column: number;
}

export class SheetState implements Sheet {
  name: string;
  state: Sheet["state"];
  cells: Map<number, Row>;
  widths: ReadonlyMap<number, number>;
  hiddenColumns: ReadonlySet<number>;
  hiddenRows: ReadonlySet<number>;
  frozen: Sheet["frozen"];
  merges: readonly Area[];
  choices: readonly Choices[];
  tables: readonly TableRange[];
  readonly protected: boolean;
  readonly kept: readonly string[];
  readonly fixed: Sheet["fixed"];
  /** What formulas spill beside their own cell: row → column. No part of the edits. */
  readonly spills = new Map<number, Map<number, Spilled>>();
  /** Rows that are this sheet's own to write; others are copied first. */
  private owned = new WeakSet<Row>();
  private arrays: readonly (Area & { readonly row: number; readonly column: number })[] | undefined;
  private extent: { rows: number; columns: number } | undefined;
  private count = 0;
  private countOfAll = 0;
  private readonly counts = new Map<number, number>();

  constructor(sheet: Sheet) {
    this.name = sheet.name;
    this.state = sheet.state;
    this.cells = new Map(sheet.cells as ReadonlyMap<number, Row>);
    this.widths = sheet.widths;
    this.hiddenColumns = sheet.hiddenColumns;
    this.hiddenRows = sheet.hiddenRows;
    this.frozen = sheet.frozen;
    this.merges = sheet.merges;
    this.choices = sheet.choices;
    this.tables = sheet.tables;
    this.protected = sheet.protected;
    this.kept = sheet.kept;
    this.fixed = sheet.fixed;
    this.takeSpills();
  }

  /** What the file remembers of an array formula beside its first cell is an answer, nothing typed. */
  private takeSpills(): void {
    for (const [row, cells] of [...this.cells]) {
      for (const [column, cell] of cells) {
        if (!cell.array) continue;
        const { top, left, bottom, right } = cell.array.area;
        for (let r = top; r <= bottom; r++) {
          const there = this.cells.get(r);
          if (!there) continue;
          for (let c = left; c <= right; c++) {
            const member = there.get(c);
            if (!member || (r === row && c === column) || member.formula !== undefined) continue;
            if (!this.spills.has(r)) this.spills.set(r, new Map());
            this.spills.get(r)!.set(c, { value: member.value, row, column });
            this.put(r, c, member.style === undefined ? undefined : { value: null, style: member.style });
          }
        }
      }
    }
  }

  typed(row: number, column: number): Cell | undefined {
    return this.cells.get(row)?.get(column);
  }

  put(row: number, column: number, cell: Cell | undefined): void {
    const before = this.cells.get(row);
    if (!before && !cell) return;
    let mine = before;
    if (!mine || !this.owned.has(mine)) {
      mine = new Map(before);
      this.owned.add(mine);
      this.cells.set(row, mine);
    }
    if (mine.get(column)?.array || cell?.array) this.arrays = undefined;
    if (cell) mine.set(column, cell);
    else mine.delete(column);
    if (mine.size === 0) this.cells.delete(row);
    if (!cell || (this.extent && (row >= this.extent.rows || column >= this.extent.columns))) this.extent = undefined;
  }

  /** A row holds other values now; without a row all of them may. Told when a step is done. */
  changed(row?: number): void {
    this.count += 1;
    if (row !== undefined) this.counts.set(row, this.count);
    else {
      this.countOfAll = this.count;
      this.counts.clear();
    }
  }

  /** Grows with each change of a value. */
  changes(): number {
    return this.count;
  }

  /** The count of `changes` when a row's values changed last. */
  changesOf(row: number): number {
    return this.counts.get(row) ?? this.countOfAll;
  }

  /** Other rows in other places, after rows were inserted, deleted or that was undone. */
  replaceRows(rows: Map<number, Row>): void {
    this.cells = rows;
    // Whoever may put them back the other way holds the same rows: from now on they are copied before they are written.
    this.owned = new WeakSet();
    this.arrays = undefined;
    this.extent = undefined;
  }

  /** The array formula that a cell belongs to, by its first cell. */
  arrayAt(row: number, column: number): { readonly row: number; readonly column: number } | undefined {
    this.arrays ??= [...this.cells].flatMap(([r, cells]) =>
      [...cells].flatMap(([c, cell]) => (cell.array ? [{ ...cell.array.area, row: r, column: c }] : [])),
    );
    return this.arrays.find((area) => inArea(area, row, column));
  }

  mergeAt(row: number, column: number): Area | undefined {
    return this.merges.find((area) => inArea(area, row, column));
  }

  tableAt(row: number, column: number): TableRange | undefined {
    return this.tables.find((table) => inArea(table.area, row, column));
  }

  /** One more than the last row and column that hold something; a cell that has only a look does not count. */
  used(): { rows: number; columns: number } {
    if (!this.extent) {
      let [rows, columns] = [0, 0];
      for (const [r, cells] of this.cells) {
        for (const [c, cell] of cells) {
          if (cell.value === null && cell.formula === undefined) continue;
          if (r >= rows) rows = r + 1;
          if (c >= columns) columns = c + 1;
        }
      }
      this.extent = { rows, columns };
    }
    let { rows, columns } = this.extent;
    for (const [r, cells] of this.spills) {
      if (r >= rows) rows = r + 1;
      for (const c of cells.keys()) if (c >= columns) columns = c + 1;
    }
    return { rows, columns };
  }
}

export const holds = (cell: Cell | undefined): cell is Cell =>
  cell !== undefined && (cell.value !== null || cell.formula !== undefined);
