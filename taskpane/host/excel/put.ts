/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/** Putting cells into a sheet: as few bytes as it takes. */
import type { Written } from "../host.ts";
import { toFormula } from "./cells.ts";

/** Holds calculation and screen until the sync that ends the fill. */
export function hold(context: Excel.RequestContext): void {
  context.application.suspendApiCalculationUntilNextSync();
  context.application.suspendScreenUpdatingUntilNextSync();
}

/** A sheet about to be written, with its protection to be loaded. */
export function target(context: Excel.RequestContext, name: string): Excel.Worksheet {
  const sheet = context.workbook.worksheets.getItem(name);
  sheet.load("name");
  sheet.protection.load("protected");
  return sheet;
}

interface Run {
  readonly from: number;
  readonly count: number;
}

/** Runs of one kind down a column; undefined is what belongs to none. */
function runs<T>(count: number, kindOf: (row: number) => T | undefined): (Run & { readonly kind: T })[] {
  const made: (Run & { kind: T })[] = [];
  for (let from = 0; from < count; ) {
    const kind = kindOf(from);
    let to = from + 1;
    while (to < count && kindOf(to) === kind) to++;
    if (kind !== undefined) made.push({ from, count: to - from, kind });
    from = to;
  }
  return made;
}

/** A column whose format changes more often is written cell by cell. */
const MOST_RUNS = 8;

export function put(
  sheet: Excel.Worksheet,
  top: number,
  left: number,
  cells: readonly (readonly Written[])[],
  formats?: readonly (readonly (string | undefined)[])[],
): void {
  const width = cells[0]!.length;
  const column = (c: number, { from, count }: Run) => sheet.getRangeByIndexes(top + from, left + c, count, 1);
  // The format first: a cell formatted as text would keep a formula as text.
  for (let c = 0; formats && c < width; c++) {
    const same = runs(cells.length, (r) => formats[r]![c]);
    // One format stands for all cells of a range.
    if (same.length <= MOST_RUNS) for (const run of same) column(c, run).numberFormat = [[run.kind]];
    else column(c, { from: 0, count: cells.length }).numberFormat = formats.map((row) => [row[c] ?? (null as never)]);
  }
  const lines: (string | number | boolean | null)[][] = cells.map((row) => row.map(toFormula));
  // A formula that runs down its column is written once and copied.
  const downs = Array.from({ length: width }, (_, c) =>
    runs(cells.length, (r) => isDown(cells[r]![c]!) || undefined)
      .filter(({ count }) => count > 1)
      .map((run) => ({ c, run })),
  ).flat();
  for (const { c, run } of downs) for (let r = run.from + 1; r < run.from + run.count; r++) lines[r]![c] = null;
  sheet.getRangeByIndexes(top, left, cells.length, width).formulas = lines;
  for (const { c, run } of downs)
    column(c, { from: run.from + 1, count: run.count - 1 }).copyFrom(
      column(c, { from: run.from, count: 1 }),
      "Formulas",
    );
}

const isDown = (cell: Written): boolean => typeof cell === "object" && cell !== null && cell.down === true;
