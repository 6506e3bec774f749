/**
 * The one mechanism behind every worksheet function: ranges lift, blanks and errors are told apart, units are
 * converted at the edge, a bad element spoils its own cell only, and nothing but numbers, text and errors comes out.
 */
import { TradeError } from "../src/errors.ts";
import { isBlank } from "../src/table/blank.ts";
import { type DimensionName, fromCanonical, symbol, type Units } from "../src/units.ts";
import type { Show } from "../src/words/errors.ts";
import { type Argument, type Cell, CellError, content, toBlock, toCellError, typed } from "./cells.ts";
import type { Param } from "./params.ts";

type Values<P extends readonly Param<any>[]> = { [K in keyof P]: P[K] extends Param<infer T> ? T : never };
type Answer = number | string | boolean;
export type Lifted = (...args: Argument[]) => any[][];

/**
 * Lifts a calculation over ranges.
 *
 * @param params - one reader per argument, in the order of the worksheet function
 * @param calc - from canonical values to a number (canonical unit of `result`) or text
 * @param result - dimension of the answer, when it follows the units argument; a function of the values when it depends on them
 */
export function lifted<const P extends readonly Param<any>[]>(
  params: P,
  calc: (...values: Values<P>) => Answer,
  result?: DimensionName | ((...values: Values<P>) => DimensionName),
): Lifted {
  const run = calc as (...values: unknown[]) => Answer;
  const dimension = result as DimensionName | ((...values: unknown[]) => DimensionName) | undefined;
  return (...args) =>
    overCells(params, args, (values, u) => {
      const answer = run(...values);
      if (typeof answer !== "number") return answer;
      if (!Number.isFinite(answer)) return new CellError("#NUM!", "the answer is not a finite number");
      if (u !== "in" || dimension === undefined) return answer;
      return fromCanonical(answer, typeof dimension === "function" ? dimension(...values) : dimension, u);
    }).block;
}

/**
 * Lifts a calculation that answers a list. From one cell or a row of arguments each list runs down; from a
 * column of arguments each list runs to the right. Short lists are filled up with "".
 */
export function liftedList<const P extends readonly Param<any>[]>(
  params: P,
  calc: (...values: Values<P>) => readonly Answer[],
  result?: DimensionName,
): Lifted {
  const run = calc as (...values: unknown[]) => readonly Answer[];
  return (...args) => {
    const { block, rows, columns } = overCells<readonly any[] | CellError>(params, args, (values, u) =>
      run(...values).map((answer) => {
        if (typeof answer !== "number") return answer;
        if (!Number.isFinite(answer)) return new CellError("#NUM!", "the answer is not a finite number");
        return u === "in" && result !== undefined ? fromCanonical(answer, result, u) : answer;
      }),
    );
    if (rows > 1 && columns > 1) {
      return block.map((row) =>
        row.map((entry) =>
          entry instanceof CellError
            ? entry
            : new CellError("#VALUE!", "a function that answers a list takes one row or one column, not a block"),
        ),
      );
    }
    const lists = (rows > 1 ? block.map((row) => row[0]!) : block[0]!).map((entry) =>
      entry instanceof CellError ? [entry] : entry,
    );
    const longest = Math.max(1, ...lists.map((l) => l.length));
    if (rows > 1) return lists.map((l) => Array.from({ length: longest }, (_, i) => (i < l.length ? l[i] : "")));
    return Array.from({ length: longest }, (_, i) => lists.map((l) => (i < l.length ? l[i] : "")));
  };
}

function overCells<T>(
  params: readonly Param<any>[],
  args: readonly Argument[],
  calc: (values: unknown[], u: Units | undefined) => T | CellError,
): { block: (T | CellError)[][]; rows: number; columns: number } {
  const n = params.length;
  const blocks: Cell[][][] = params.map((_, k) => toBlock(args[k]));
  let rows = 1;
  let columns = 1;
  for (let k = 0; k < n; k++) {
    if (params[k]!.isList) continue;
    rows = Math.max(rows, blocks[k]!.length);
    columns = Math.max(columns, blocks[k]![0]!.length);
  }
  const unitsAt = params.findIndex((p) => p.isUnits);
  const single = blocks.map((b, k) => !params[k]!.isList && b.length === 1 && b[0]!.length === 1);
  const unitsSingle = unitsAt < 0 || single[unitsAt]!;
  const one = rows === 1 && columns === 1;

  // What does not change from cell to cell is read once.
  const values: unknown[] = new Array(n);
  const fixed: boolean[] = new Array(n).fill(false);
  let commonUnits: Units | undefined;
  if (unitsSingle && unitsAt >= 0)
    commonUnits = tryRead(() => params[unitsAt]!.read(blocks[unitsAt]![0]![0], undefined));
  if (!one && (unitsAt < 0 || commonUnits !== undefined)) {
    for (let k = 0; k < n; k++) {
      if (!unitsSingle || !(single[k] || params[k]!.isList)) continue;
      const cell = params[k]!.isList ? blocks[k] : blocks[k]![0]![0];
      try {
        values[k] = params[k]!.read(cell, commonUnits);
        fixed[k] = true;
      } catch {
        // read again with the cells, where it can say so
      }
    }
  }

  const cellAt = (k: number, r: number, c: number): Cell => {
    const block = blocks[k]!;
    if (params[k]!.isList) return block;
    const row = block.length === 1 ? block[0] : block[r];
    if (row !== undefined) {
      if (row.length === 1) return row[0];
      if (c < row.length) return row[c];
    }
    throw new CellError(
      "#VALUE!",
      `${params[k]!.name} has ${block.length} × ${block[0]!.length} cells where another argument has ${rows} × ${columns}; one cell, or the same number of rows or columns, is allowed`,
    );
  };

  const block: (T | CellError)[][] = new Array(rows);
  for (let r = 0; r < rows; r++) {
    const line: (T | CellError)[] = new Array(columns);
    block[r] = line;
    for (let c = 0; c < columns; c++) {
      let u = commonUnits;
      try {
        if (unitsAt >= 0 && commonUnits === undefined)
          u = params[unitsAt]!.read(cellAt(unitsAt, r, c), undefined) as Units;
        for (let k = 0; k < n; k++) {
          if (fixed[k]) continue;
          values[k] = k === unitsAt ? u : params[k]!.read(cellAt(k, r, c), u);
        }
        line[c] = calc(values, u);
      } catch (thrown) {
        line[c] = explain(thrown, params, (k) => cellAt(k, r, c), u);
      }
    }
  }
  return { block, rows, columns };
}

/** Turns what was thrown into a cell error that speaks the user's units and quotes what was typed. */
function explain(
  thrown: unknown,
  params: readonly Param<any>[],
  cell: (k: number) => Cell,
  u: Units | undefined,
): CellError {
  if (!(thrown instanceof TradeError)) return toCellError(thrown);
  const show: Show = (value, dimension) => {
    if (u === undefined || dimension === undefined) return String(Number(value.toPrecision(6)));
    return `${Number(fromCanonical(value, dimension, u).toPrecision(6))} ${symbol(dimension, u)}`;
  };
  const k = params.findIndex((p) => p.name === thrown.parameter);
  let shown: string | undefined;
  if (k >= 0 && !params[k]!.isList) {
    const raw = tryRead(() => cell(k));
    if (raw !== undefined && !isBlank(content(raw))) shown = typed(raw);
  }
  return toCellError(thrown, show, shown);
}

function tryRead<T>(f: () => T): T | undefined {
  try {
    return f();
  } catch {
    return undefined;
  }
}
