/** Rows that come in and blocks that are moved: cells, tables, and whatever ranges are held go along. */
import { parseA1Ref, stringifyA1Ref, stringifyTokens, tokenize } from "@borgar/fx";
import type { FakeExcel } from "./excel.ts";
import type { Area, FakeSheet } from "./types.ts";

const shifts = (area: Area, at: number, count: number): void => {
  if (area.row >= at) area.row += count;
  else if (area.row + area.rows > at) area.rows += count;
};

/** A formula after rows came in on `sheet`; `home` is where it stands. */
function moved(formula: string, home: string, sheet: string, at: number, count: number): string {
  return stringifyTokens(
    tokenize(formula, { mergeRefs: true }).map((token) => {
      if (token.type !== "range") return token;
      const ref = parseA1Ref(token.value);
      if (!ref || !("range" in ref)) return token;
      if (String(ref.context?.at(-1) ?? home).toLowerCase() !== sheet.toLowerCase()) return token;
      const { top, bottom } = ref.range;
      if (top == null || bottom == null) return token;
      const range = {
        ...ref.range,
        top: top >= at ? top + count : top,
        bottom: bottom >= at ? bottom + count : bottom,
      };
      return { ...token, value: stringifyA1Ref({ ...ref, range }) };
    }),
  );
}

export function insertRows(fake: FakeExcel, held: readonly Area[], sheet: FakeSheet, at: number, count: number): void {
  const cells = [...sheet.cells];
  sheet.cells.clear();
  for (const [key, cell] of cells) {
    const [row = 0, column = 0] = key.split(",").map(Number);
    sheet.cells.set(`${row >= at ? row + count : row},${column}`, cell);
  }
  for (const one of fake.sheets)
    for (const cell of one.cells.values())
      if (cell.formula !== undefined) cell.formula = moved(cell.formula, one.name, sheet.name, at, count);
  for (const table of fake.tables.filter((one) => one.sheet === sheet)) {
    if (table.top >= at) table.top += count;
    else if (table.top + table.rows >= at) table.rows += count;
  }
  for (const area of new Set([...held, ...sheet.merged])) if (area.sheet === sheet) shifts(area, at, count);
  sheet.hidden = new Set([...sheet.hidden].map((row) => (row >= at ? row + count : row)));
}

export function moveCells(held: readonly Area[], from: Area, down: number, right: number): void {
  const { sheet } = from;
  const inside = ({
    row,
    column,
    rows = 1,
    columns = 1,
  }: {
    row: number;
    column: number;
    rows?: number;
    columns?: number;
  }) =>
    row >= from.row &&
    row + rows <= from.row + from.rows &&
    column >= from.column &&
    column + columns <= from.column + from.columns;
  const moving = [...sheet.cells].flatMap(([key, cell]) => {
    const [row = 0, column = 0] = key.split(",").map(Number);
    return inside({ row, column }) ? [{ key, row, column, cell }] : [];
  });
  for (const { key } of moving) sheet.cells.delete(key);
  for (const { row, column, cell } of moving) sheet.cells.set(`${row + down},${column + right}`, cell);
  for (const area of new Set([...held, ...sheet.merged])) {
    if (area.sheet !== sheet || !inside(area)) continue;
    area.row += down;
    area.column += right;
  }
}
