/** Cells as Excel gives and takes them, and as the pane knows them. */
import { isBlank } from "../../../src/table/blank.ts";
import type { Block, CellValue, Change, Written } from "../host.ts";
import { reference, spokenAddress } from "../reference.ts";

/** "" is how Excel says blank. */
export const toCell = (value: unknown): CellValue =>
  value === "" || value === null || value === undefined
    ? null
    : typeof value === "string" || typeof value === "number" || typeof value === "boolean"
      ? value
      : String(value);
export const toCells = (values: unknown[][]): CellValue[][] => values.map((row) => row.map(toCell));

/**
 * What to hand to `formulas` so that the cell holds exactly `value`. Text that Excel would take for something else
 * (a formula, a date as in "1/2", a number, TRUE) gets the apostrophe that marks text; the apostrophe is not part of it.
 */
export function toFormula(value: Written): string | number | boolean {
  if (value === null) return "";
  if (typeof value === "object") return value.formula;
  if (typeof value !== "string" || value === "") return value;
  const harmless = /^[A-Za-z\u00c0-\u024f][^0-9]*$/.test(value) && !/^(?:true|false)$/i.test(value);
  return harmless ? value : `'${value}`;
}

/** Changes gathered into rectangles: runs down a column, then equal runs of neighbouring columns side by side. */
export function rectangles(
  changes: readonly Change[],
): { row: number; column: number; cells: Written[][]; formats: (string | undefined)[][] }[] {
  const byColumn = new Map<number, Map<number, Change>>();
  for (const change of changes) {
    const column = byColumn.get(change.column) ?? new Map<number, Change>();
    column.set(change.row, change);
    byColumn.set(change.column, column);
  }
  const made: { row: number; column: number; cells: Written[][]; formats: (string | undefined)[][] }[] = [];
  for (const column of [...byColumn.keys()].sort((a, b) => a - b)) {
    const rows = [...byColumn.get(column)!.values()].sort((a, b) => a.row - b.row);
    for (let from = 0; from < rows.length; ) {
      let to = from + 1;
      while (to < rows.length && rows[to]!.row === rows[to - 1]!.row + 1) to++;
      const run = rows.slice(from, to);
      const beside = made.find(
        (one) =>
          one.row === run[0]!.row && one.cells.length === run.length && one.column + one.cells[0]!.length === column,
      );
      if (beside) {
        run.forEach((change, i) => {
          beside.cells[i]!.push(change.value);
          beside.formats[i]!.push(change.format);
        });
      } else {
        made.push({
          row: run[0]!.row,
          column,
          cells: run.map((change) => [change.value]),
          formats: run.map((change) => [change.format]),
        });
      }
      from = to;
    }
  }
  return made;
}

export function blockOf(sheet: string, top: number, left: number, cells: CellValue[][]): Block {
  const [headings = [], ...rows] = cells;
  return {
    sheet,
    top,
    left,
    headings,
    rows,
    reference: reference(sheet, top, left, cells.length, headings.length),
    address: spokenAddress(sheet, top, left, cells.length, headings.length),
  };
}

/** The list on a sheet: from the first row with two headings, as far right as they go, down to the last row that holds something. */
export function listIn(sheet: string, top: number, left: number, cells: CellValue[][]): Block | null {
  const head = cells.findIndex((row) => row.filter((cell) => typeof cell === "string" && !isBlank(cell)).length >= 2);
  if (head < 0) return null;
  const from = cells[head]!.findIndex((cell) => !isBlank(cell));
  let to = from;
  while (to + 1 < cells[head]!.length && !isBlank(cells[head]![to + 1]!)) to++;
  let end = head;
  cells.forEach((row, r) => {
    if (r > head && row.slice(from, to + 1).some((cell) => !isBlank(cell))) end = r;
  });
  return blockOf(
    sheet,
    top + head,
    left + from,
    cells.slice(head, end + 1).map((row) => row.slice(from, to + 1)),
  );
}
