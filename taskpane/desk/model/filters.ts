/**
 * Filters of a table's columns. They hide rows from view; nothing of the file changes. Which rows are hidden is settled
 * when a filter is set and when rows are sorted; else the rows keep what they have, so that none goes while it is typed in.
 */
import { movedRows } from "./formulas.ts";
import type { Model } from "./model.ts";
import { type Region, regionAt } from "./tables.ts";

interface Filter {
  /** A cell of the heading row, by which the table is found again. */
  readonly top: number;
  readonly column: number;
  /** Texts that stay; "" is a blank cell. */
  readonly keep: ReadonlySet<string>;
}

const NONE: ReadonlySet<number> = new Set();

export class Filters {
  private readonly bySheet = new Map<string, Filter[]>();
  private readonly hiddenBySheet = new Map<string, ReadonlySet<number>>();
  private readonly model: () => Model;
  private readonly changed: () => void;

  constructor(model: () => Model, changed: () => void) {
    this.model = model;
    this.changed = changed;
  }

  /** Rows that filters hide on a sheet. */
  hidden(sheet: string): ReadonlySet<number> {
    return this.hiddenBySheet.get(sheet) ?? NONE;
  }

  any(sheet: string): boolean {
    return (this.bySheet.get(sheet)?.length ?? 0) > 0;
  }

  /** Texts that a column's filter keeps; undefined when it has none. */
  of(sheet: string, column: number): ReadonlySet<string> | undefined {
    return this.bySheet.get(sheet)?.find((one) => one.column === column)?.keep;
  }

  /** @param keep - texts to keep; undefined takes the column's filter away */
  set(sheet: string, region: Region, column: number, keep: ReadonlySet<string> | undefined): void {
    const others = (this.bySheet.get(sheet) ?? []).filter((one) => one.column !== column && one.top === region.top);
    this.bySheet.set(sheet, keep ? [...others, { top: region.top, column, keep }] : others);
    this.again();
    this.changed();
  }

  clear(sheet: string): void {
    this.bySheet.delete(sheet);
    this.hiddenBySheet.delete(sheet);
    this.changed();
  }

  /** Texts of a column and how often each stands there, for choosing among them. */
  texts(sheet: string, region: Region, column: number): Map<string, number> {
    const model = this.model();
    const found = new Map<string, number>();
    for (let row = region.top + 1; row <= region.bottom; row++) {
      const text = model.shown(sheet, row, column);
      found.set(text, (found.get(text) ?? 0) + 1);
    }
    return found;
  }

  /** Works out again which rows are hidden, after a filter was set or rows were sorted. */
  again(): void {
    const model = this.model();
    for (const [name, filters] of this.bySheet) {
      const hidden = new Set<number>();
      for (const { top, column, keep } of filters) {
        // By its data: a table without headings does not reach up to the row above it.
        const region = regionAt(model, name, top + 1, column);
        if (!region) continue;
        for (let row = region.top + 1; row <= region.bottom; row++) {
          if (!keep.has(model.shown(name, row, column))) hidden.add(row);
        }
      }
      this.hide(name, hidden);
    }
  }

  private hide(name: string, hidden: ReadonlySet<number>): void {
    if (hidden.size > 0) this.hiddenBySheet.set(name, hidden);
    else this.hiddenBySheet.delete(name);
  }

  /**
   * Rows were inserted before `row`, or deleted from it on (a negative count). New rows are in view.
   *
   * @returns what puts back how it was
   */
  moved(name: string, row: number, count: number): () => void {
    const filters = this.bySheet.get(name);
    if (filters === undefined) return () => this.again();
    const hidden = this.hidden(name);
    const at = (r: number) => movedRows(r, r, row, count)?.[0] ?? [];
    const next = filters.flatMap((one) => {
      const top = one.top < 0 ? one.top : movedRows(one.top, one.top, row, count)?.[0];
      return top === undefined ? [] : [{ ...one, top }];
    });
    if (next.length > 0) this.bySheet.set(name, next);
    else this.bySheet.delete(name);
    this.hide(name, next.length > 0 ? new Set([...hidden].flatMap(at)) : NONE);
    return () => {
      if (this.bySheet.get(name) !== (next.length > 0 ? next : undefined)) {
        // Another filter was set meanwhile.
        this.moved(name, row, -count);
        this.again();
        return;
      }
      this.bySheet.set(name, filters);
      this.hide(name, hidden);
    };
  }

  renamed(from: string, to: string): void {
    for (const map of [this.bySheet, this.hiddenBySheet] as Map<string, never>[]) {
      const own = map.get(from);
      if (own === undefined) continue;
      map.delete(from);
      map.set(to, own);
    }
  }
}
