/** Answers put in their place: what fills several cells, what is in its way, what it leaves. */
import type { Area, Value } from "../model/types.ts";
import { COLUMNS, cellName, type Formula, type Holding, idOf } from "./holding.ts";
import { type Block, error, isBlock, SPILL, VALUE } from "./values.ts";

/** Cells that one answer may fill. */
export const LARGEST = 2_000_000;

/** A cell: sheet, row, column. */
export type Spotted = readonly [sheet: number, row: number, column: number];

export interface Spills {
  /** Takes a formula's answer in, and fills the cells beside it. */
  settle(formula: Formula, answer: Value | Block, stale: boolean): void;
  /** Empties the cells that a formula fills. */
  release(formula: Formula): void;
  /** Cells that spills have filled or left since this was asked last. */
  moved(): Spotted[];
}

export function createSpills(held: Holding): Spills {
  let moved: Spotted[] = [];

  function release(formula: Formula): void {
    if (formula.area === undefined) return;
    const own = held.spilled[formula.group.sheet]!;
    const { top, left, bottom, right } = formula.area;
    for (let r = top; r <= bottom; r++)
      for (let c = left; c <= right; c++) {
        if (own.get(idOf(r, c)) === formula) own.delete(idOf(r, c));
        if (r !== formula.row || c !== formula.column) moved.push([formula.group.sheet, r, c]);
      }
    formula.area = undefined;
    formula.block = undefined;
  }

  function settle(formula: Formula, answer: Value | Block, stale: boolean): void {
    const { group, row, column } = formula;
    const { sheet } = group;
    formula.state = "done";
    formula.stale = stale;
    const cell = held.cellAt(sheet, row, column);
    let block: Block | undefined = isBlock(answer) ? answer : undefined;
    if (block !== undefined && (block.length === 0 || block[0]!.length === 0)) block = [[VALUE]];
    if (stale && cell?.array !== undefined) {
      formula.value = block ? (block[0]![0] ?? null) : (answer as Value);
      return;
    }
    release(formula);
    // A block that came with the file in a fixed frame stays in it; a value fills all of it.
    const frame = cell?.array !== undefined && !cell.array.dynamic ? cell.array.area : undefined;
    if (frame) block = framed(block ?? [[answer as Value]], frame);
    if (block === undefined || (block.length === 1 && block[0]!.length === 1) || (group.single && !frame)) {
      formula.value = normal(block ? block[0]![0] : (answer as Value));
      return;
    }
    const area = { top: row, left: column, bottom: row + block.length - 1, right: column + block[0]!.length - 1 };
    const blocked =
      block.length * block[0]!.length > LARGEST ? [row, column] : frame ? undefined : obstacle(formula, area);
    if (blocked) {
      formula.value = SPILL(cellName(blocked[0]!, blocked[1]!));
      return;
    }
    formula.value = normal(block[0]![0]);
    formula.area = area;
    formula.block = block.map((line) => line.map((value) => normal(value)));
    for (let r = area.top; r <= area.bottom; r++)
      for (let c = area.left; c <= area.right; c++) {
        if (r === row && c === column) continue;
        held.spilled[sheet]!.set(idOf(r, c), formula);
        moved.push([sheet, r, c]);
      }
    held.grown(sheet);
  }

  const normal = (value: Value | undefined): Value => value ?? 0;

  function framed(block: Block, area: Area): Block {
    const [rows, columns] = [area.bottom - area.top + 1, area.right - area.left + 1];
    return Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (_, c): Value => {
        const line = block[block.length === 1 ? 0 : r];
        return line?.[line.length === 1 ? 0 : c] ?? error("#N/A");
      }),
    );
  }

  function obstacle(formula: Formula, { top, left, bottom, right }: Area): [number, number] | undefined {
    const { sheet } = formula.group;
    if (bottom >= 1_048_576 || right >= COLUMNS) return [formula.row, formula.column];
    const inTable = held.sheets[sheet]!.tables.find(
      ({ area }) => top >= area.top && top <= area.bottom && left >= area.left && left <= area.right,
    );
    if (inTable) return [formula.row, formula.column];
    for (let r = top; r <= bottom; r++)
      for (let c = left; c <= right; c++) {
        if (r === formula.row && c === formula.column) continue;
        const other = held.spilled[sheet]!.get(idOf(r, c));
        if ((other && other !== formula) || held.formulas[sheet]!.has(idOf(r, c))) return [r, c];
        const cell = held.cellAt(sheet, r, c);
        // What an earlier answer of this formula left behind is its own.
        if (cell && (cell.value !== null || cell.formula !== undefined) && !ownSpill(formula, r, c)) return [r, c];
      }
    return undefined;
  }
  /** True for a value that the file holds as part of this formula's answer. */
  const ownSpill = (formula: Formula, r: number, c: number): boolean => {
    const area = held.cellAt(formula.group.sheet, formula.row, formula.column)?.array?.area;
    return area !== undefined && r >= area.top && r <= area.bottom && c >= area.left && c <= area.right;
  };

  return {
    settle,
    release,
    moved() {
      const now = moved;
      moved = [];
      return now;
    },
  };
}
