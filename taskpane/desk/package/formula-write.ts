/** Formulas of a sheet when it is written: what moves, what is spelled out, what is refused. Pure. */

import { addressOf, areaText, inArea, readArea } from "../model/address.ts";
import { type Area, FileError, type Value } from "../model/types.ts";
import { fromFile, toFile } from "./function-names.ts";
import { concerns, type Move, movedFormula } from "./references.ts";
import type { NewCell, SheetPlan } from "./replay.ts";
import { movedArea, movedRow } from "./rows.ts";
import { type ArrayBlock, SheetFormulas } from "./sheet-formulas.ts";
import { type CellSpan, cellsOf, type Outline, type RowSpan } from "./sheet-outline.ts";
import type { StyleBook } from "./styles-write.ts";
import { escapeText } from "./text.ts";

export interface WriteContext {
  readonly styles: StyleBook;
  readonly moves: readonly Move[];
  /** Numbers of cell metadata that mark growing arrays. */
  readonly marks: ReadonlySet<number>;
  /** A number for a new growing array. */
  readonly dynamicMark: () => number;
  readonly known: () => ReadonlyMap<string, string>;
  /** The value that a cell of the file holds, to leave it alone when nothing changes. */
  readonly valueOf: (outline: Outline, span: RowSpan, cell: CellSpan) => Value | undefined;
  /** Told when a formula came, went or moved: the calculation chain is out of date then. */
  formulasChanged: boolean;
  /** Told when a value changed that formulas may use. */
  valuesChanged: boolean;
}

/** Cells of a row to be written, by column. */
export type Line = Map<number, NewCell>;

const refused = (message: string): FileError => new FileError("unsupported", message);

export class FormulaWriter {
  /** Formulas as they are in the file. */
  readonly sheet: SheetFormulas;
  readonly #outline: Outline;
  readonly #plan: SheetPlan;
  readonly #context: WriteContext;
  readonly #cells: Map<number, Line>;
  readonly #rowsByNumber: ReadonlyMap<number, RowSpan>;
  readonly #home: string;
  readonly #p: string;
  /** Shared formulas that have to be spelled out, by index. */
  readonly #expand = new Set<string>();

  /** @param cells - cells to be written; blanks are added where stored results of arrays are left over */
  constructor(
    outline: Outline,
    plan: SheetPlan,
    context: WriteContext,
    cells: Map<number, Line>,
    rows: ReadonlyMap<number, RowSpan>,
  ) {
    this.sheet = new SheetFormulas(outline, context.marks);
    this.#outline = outline;
    this.#plan = plan;
    this.#context = context;
    this.#cells = cells;
    this.#rowsByNumber = rows;
    this.#home = plan.entry?.name ?? plan.name;
    this.#p = outline.prefix;
  }

  /** A formula of the file after all moves. */
  moved(text: string): string {
    return movedFormula(text, this.#home, this.#context.moves);
  }

  /** Arrays that edits would tear apart are refused; values left over from arrays that went are taken out. */
  checkArrays(): void {
    const { moves } = this.#plan;
    if (moves.length === 0 && this.#cells.size === 0) return;
    for (const block of this.sheet.arrays) {
      const { area, dynamic } = block;
      const where = `the array formula in ${areaText(area)} on the sheet "${this.#plan.name}"`;
      let now: Area | undefined = area;
      for (const move of moves) {
        const before: Area | undefined = now;
        if (!before) break;
        now = movedArea(before, [move]);
        const height = (a: Area | undefined) => (a ? a.bottom - a.top : -1);
        if (!dynamic && now && height(now) !== height(before))
          throw refused(
            `Rows cannot be inserted or deleted inside of ${where}. Change or delete the whole formula first.`,
          );
      }
      const anchorRow = movedRow(block.row, moves);
      const anchor = anchorRow === undefined ? undefined : this.#cells.get(anchorRow)?.get(block.column);
      const single = area.top === area.bottom && area.left === area.right;
      if (!dynamic && !single && now) {
        for (const [row, line] of this.#cells) {
          if (row < now.top || row > now.bottom) continue;
          for (const column of line.keys()) {
            if (column < area.left || column > area.right) continue;
            if (row === anchorRow && column === block.column && this.#sameFormula(block, line.get(column)!)) continue;
            throw refused(`Cell ${addressOf(row, column)} is part of ${where}, which can only be changed as a whole.`);
          }
        }
      }
      if (!dynamic || single) continue;
      const still = anchor
        ? this.#sameFormula(block, anchor)
          ? (anchor.array?.area ?? now)
          : anchor.array?.area
        : now;
      const kept = anchorRow === undefined ? undefined : still;
      this.#clearSpill(block, kept);
    }
  }

  #sameFormula(block: ArrayBlock, cell: NewCell): boolean {
    if (cell.formula === undefined) return false;
    const span = this.#rowsByNumber.get(block.row);
    const found = span && cellsOf(this.#outline, span).find((c) => c.column === block.column);
    const own = found && this.sheet.textOf(found, block.row);
    return own !== undefined && this.same(this.moved(own), cell);
  }

  /** Whether a file's formula is the one of an edit. */
  same(fileText: string, cell: NewCell): boolean {
    if (cell.formula === undefined) return false;
    return fromFile(fileText) === cell.formula || fileText === this.stored(cell);
  }

  /** The formula of an edit as files keep it. */
  stored(cell: NewCell): string {
    return toFile(cell.formula!, cell.array?.dynamic ?? false, this.#context.known());
  }

  /** Stored results of an array that its area no longer covers. */
  #clearSpill(block: ArrayBlock, kept: Area | undefined): void {
    for (let row = block.area.top; row <= block.area.bottom; row++) {
      const at = movedRow(row, this.#plan.moves);
      const span = at === undefined ? undefined : this.#rowsByNumber.get(row);
      if (at === undefined || !span) continue;
      for (const { column, formula } of cellsOf(this.#outline, span)) {
        if (formula || !inArea(block.area, row, column) || (kept && inArea(kept, at, column))) continue;
        const line = this.#cells.get(at) ?? new Map<number, NewCell>();
        if (!line.has(column)) line.set(column, { value: null });
        this.#cells.set(at, line);
      }
    }
  }

  /** Finds the shared formulas that have to be spelled out. */
  findExpanded(touched: boolean): void {
    if (touched) this.#moved();
    if (this.#cells.size > 0) this.#overwritten();
  }

  /** Shared formulas that moves concern are spelled out in all their cells. */
  #moved(): void {
    for (const [index, { formula }] of this.sheet.shared)
      if (this.#context.moves.some((move) => concerns(formula, this.#home, move))) this.#expand.add(index);
  }

  /** Shared formulas whose first cell is overwritten have to be spelled out in the others. */
  #overwritten(): void {
    const { shared } = this.sheet;
    for (const [index, { formula, row, column }] of shared) {
      const edit = this.#cells.get(movedRow(row, this.#plan.moves) ?? -1)?.get(column);
      if (edit && !this.same(this.moved(formula), edit)) this.#expand.add(index);
    }
  }

  /** Whether a row has cells of a shared formula that is spelled out. */
  needsExpanding(row: string): boolean {
    if (this.#expand.size === 0) return false;
    return [...this.#expand].some((index) => row.includes(`si="${index}"`) || row.includes(`si='${index}'`));
  }

  /** The formula's element after moves, `undefined` when it stays. */
  element(cell: CellSpan, fileRow: number, area?: Area): string | undefined {
    const { formula } = cell;
    if (!formula) return undefined;
    const { text: whole } = this.#outline;
    const own = this.sheet.spelled(formula, fileRow, cell.column);
    if (own === undefined) return undefined;
    const moved = this.moved(own);
    if (formula.kind === "shared") {
      const expand = this.#expand.has(formula.index ?? "") || moved !== own;
      if (!expand) return undefined;
      this.#context.formulasChanged = true;
      return `<${this.#p}f>${escapeText(moved)}</${this.#p}f>`;
    }
    let tag = whole.slice(formula.start, formula.openEnd);
    const ref = formula.ref === undefined ? undefined : readArea(formula.ref);
    const nowArea = area ?? (ref && movedArea(ref, this.#plan.moves));
    if (ref && nowArea && areaText(nowArea) !== areaText(ref))
      tag = tag.replace(/(\sref\s*=\s*["'])[^"']*/, `$1${areaText(nowArea)}`);
    if (formula.kind === "dataTable")
      tag = tag.replace(/(\sr[12]\s*=\s*["'])([^"']*)/g, (_, head: string, at: string) => head + this.moved(at));
    const before = whole.slice(formula.start, formula.end);
    const after =
      moved === own ? tag + before.slice(formula.openEnd - formula.start) : `${tag}${escapeText(moved)}</${this.#p}f>`;
    if (after === before) return undefined;
    this.#context.formulasChanged = true;
    return after;
  }
}
