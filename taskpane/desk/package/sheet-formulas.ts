/** Formulas of a sheet that hang together: shared ones and arrays. Pure. */

import { inArea, readArea } from "../model/address.ts";
import type { Area } from "../model/types.ts";
import { offsetFormula } from "./references.ts";
import { type CellSpan, cellsOf, type FormulaSpan, type Outline, type RowSpan } from "./sheet-outline.ts";
import { plainText } from "./strings.ts";

export interface ArrayBlock {
  readonly row: number;
  readonly column: number;
  readonly area: Area;
  readonly dynamic: boolean;
}

export class SheetFormulas {
  readonly #outline: Outline;
  readonly #marks: ReadonlySet<number>;
  #shared?: Map<string, { formula: string; row: number; column: number }>;
  #arrays?: ArrayBlock[];
  #any?: boolean;

  constructor(outline: Outline, marks: ReadonlySet<number>) {
    this.#outline = outline;
    this.#marks = marks;
  }

  rowText(span: RowSpan): string {
    return this.#outline.text.slice(span.start, span.end);
  }

  #rowsWith(...words: string[]): RowSpan[] {
    const { text, rows, data, prefix } = this.#outline;
    this.#any ??= text.indexOf(`<${prefix}f`, data.openEnd) >= 0;
    if (!this.#any) return [];
    const body = text.slice(data.openEnd, data.closeStart);
    if (!words.some((word) => body.includes(word))) return [];
    return rows.filter((span) => {
      const row = this.rowText(span);
      return words.some((word) => row.includes(word));
    });
  }

  /** Masters of shared formulas by index. */
  get shared(): ReadonlyMap<string, { readonly formula: string; readonly row: number; readonly column: number }> {
    if (!this.#shared) {
      this.#shared = new Map();
      for (const span of this.#rowsWith("shared"))
        for (const { formula, column } of cellsOf(this.#outline, span))
          if (formula?.kind === "shared" && formula.index !== undefined && formula.text.trim() !== "")
            this.#shared.set(formula.index, { formula: plainText(formula.text).trim(), row: span.row, column });
    }
    return this.#shared;
  }

  get sharedRows(): RowSpan[] {
    return this.#rowsWith("shared");
  }

  get arrays(): readonly ArrayBlock[] {
    if (!this.#arrays) {
      this.#arrays = [];
      for (const span of this.#rowsWith('"array"', "'array'", "dataTable"))
        for (const { formula, column, cm } of cellsOf(this.#outline, span)) {
          const area =
            formula && (formula.kind === "array" || formula.kind === "dataTable")
              ? readArea(formula.ref ?? "")
              : undefined;
          if (!formula || !area) continue;
          const dynamic = formula.kind === "array" && cm !== undefined && this.#marks.has(Number(cm));
          this.#arrays.push({ row: span.row, column, area, dynamic });
        }
    }
    return this.#arrays;
  }

  /** The array over a cell, by its place in the file. */
  arrayAt(row: number, column: number): ArrayBlock | undefined {
    return this.arrays.find(({ area }) => inArea(area, row, column));
  }

  /** A cell's own formula as the file spells it, with shared ones spelled out. */
  textOf(cell: CellSpan, row: number): string | undefined {
    const { formula } = cell;
    if (!formula) return undefined;
    return this.spelled(formula, row, cell.column);
  }

  spelled(formula: FormulaSpan, row: number, column: number): string | undefined {
    if (formula.kind !== "shared" || formula.text.trim() !== "") return plainText(formula.text).trim();
    const master = formula.index === undefined ? undefined : this.shared.get(formula.index);
    return master && offsetFormula(master.formula, row - master.row, column - master.column);
  }
}
