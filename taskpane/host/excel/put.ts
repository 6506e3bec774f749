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

/** Puts cells into a sheet, with the formats that they are to have. */
export function put(
  sheet: Excel.Worksheet,
  top: number,
  left: number,
  cells: readonly (readonly Written[])[],
  formats?: readonly (readonly (string | undefined)[])[],
): void {
  fill(sheet.getRangeByIndexes(top, left, cells.length, cells[0]!.length), cells, formats);
}

/** Puts cells into a range of their size; undefined leaves a cell, or its format, as it is. */
export function fill(
  range: Excel.Range,
  cells: readonly (readonly (Written | undefined)[])[],
  formats?: readonly (readonly (string | undefined)[])[],
): void {
  const width = cells[0]!.length;
  const part = (c: number, { from, count }: Run) => range.getCell(from, c).getResizedRange(count - 1, 0);
  // The format first: a cell formatted as text would keep a formula as text.
  if (formats?.some((row) => row.some((format) => format !== undefined))) {
    // Cell by cell in the first column: a range that has another size by now is refused before anything is written.
    range.getColumn(0).numberFormat = formats.map((row) => [row[0] ?? KEEP]);
    for (let c = 1; c < width; c++) {
      const same = runs(cells.length, (r) => formats[r]![c]);
      // One format stands for all cells of a range.
      if (same.length <= MOST_RUNS) for (const run of same) part(c, run).numberFormat = [[run.kind]];
      else range.getColumn(c).numberFormat = formats.map((row) => [row[c] ?? KEEP]);
    }
  }
  const lines = cells.map((row) => row.map((cell) => (cell === undefined ? null : toFormula(cell))));
  // A formula that runs down its column is written once and copied.
  const downs = Array.from({ length: width }, (_, c) =>
    runs(cells.length, (r) => isDown(cells[r]![c]) || undefined)
      .filter(({ count }) => count > 1)
      .map((run) => ({ c, run })),
  ).flat();
  for (const { c, run } of downs) for (let r = run.from + 1; r < run.from + run.count; r++) lines[r]![c] = null;
  range.formulas = lines;
  for (const { c, run } of downs)
    part(c, { from: run.from + 1, count: run.count - 1 }).copyFrom(range.getCell(run.from, c), "Formulas");
}

/** In a block of formats this leaves one as it is (documentation of null in two-dimensional arrays). */
const KEEP = null as unknown as string;

/** True for a formula that is written with the one above it. */
export const isDown = (cell: Written | undefined): boolean =>
  typeof cell === "object" && cell !== null && cell.down === true;
