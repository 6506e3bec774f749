/** Rows inserted and deleted: cells move, and with them everything that points at them. */
import { addressOf, overlap } from "./address.ts";
import type { Undo, Workbook } from "./edits.ts";
import { movedRows, moveRows } from "./formulas.ts";
import { Refused } from "./refused.ts";
import type { Row, SheetState } from "./state.ts";
import { type Area, type Cell, type Choices, LAST_COLUMN, LAST_ROW, type TableRange } from "./types.ts";

/** @param count - rows to insert before `row`; negative: to delete from `row` on */
export function changeRows(book: Workbook, sheet: SheetState, row: number, count: number): Undo | undefined {
  if (count === 0) return undefined;
  mayChange(sheet, row, count);
  const own = sheet.name;
  const before = {
    cells: sheet.cells,
    tables: sheet.tables,
    merges: sheet.merges,
    choices: sheet.choices,
    hiddenRows: sheet.hiddenRows,
    spills: new Map(sheet.spills),
    names: book.names(),
    choicesElsewhere: book.sheetStates.map((one) => one.choices),
  };
  const formulas: { sheet: SheetState; row: number; column: number; cell: Cell }[] = [];

  // Formulas first, at the places where they still are.
  for (const other of book.sheetStates) {
    for (const [r, cells] of other.cells) {
      if (other === sheet && count < 0 && r >= row && r < row - count) continue;
      for (const [c, cell] of cells) {
        const moved = movedCell(cell, other, sheet, row, count);
        if (moved !== cell) formulas.push({ sheet: other, row: r, column: c, cell: moved });
      }
    }
  }
  const old = formulas.map(({ sheet: s, row: r, column: c }) => ({ sheet: s, row: r, column: c, cell: s.typed(r, c) }));
  for (const { sheet: s, row: r, column: c, cell } of formulas) s.put(r, c, cell);

  const standing = sheet.cells;
  sheet.replaceRows(shiftedRows(sheet, row, count));
  const spills = new Map(sheet.spills);
  sheet.spills.clear();
  for (const [r, cells] of spills) {
    const at = movedRows(r, r, row, count);
    if (at)
      sheet.spills.set(
        at[0],
        new Map([...cells].map(([c, one]) => [c, { ...one, row: movedRows(one.row, one.row, row, count)?.[0] ?? -1 }])),
      );
  }
  sheet.tables = sheet.tables.flatMap((table) => kept(table, movedArea(table.area, row, count)));
  sheet.merges = sheet.merges.flatMap((area) => movedArea(area, row, count) ?? []);
  sheet.hiddenRows = new Set([...sheet.hiddenRows].flatMap((r) => movedRows(r, r, row, count)?.[0] ?? []));
  for (const other of book.sheetStates) other.choices = movedChoices(other, sheet, row, count);
  book.setNames(
    before.names.map((name) => ({ ...name, formula: moveRows(name.formula, name.sheet ?? own, own, row, count) })),
  );
  const moveBack = book.rowsMoved(own, row, count);
  book.touch(own, row, 0);
  for (const one of formulas) book.touch(one.sheet.name, one.row, one.column);
  book.restructure();

  return () => {
    sheet.replaceRows(standing);
    for (const one of old) one.sheet.put(one.row, one.column, one.cell);
    sheet.tables = before.tables;
    sheet.merges = before.merges;
    sheet.hiddenRows = before.hiddenRows;
    sheet.spills.clear();
    for (const [r, cells] of before.spills) sheet.spills.set(r, cells);
    book.sheetStates.forEach((one, i) => {
      one.choices = before.choicesElsewhere[i] ?? one.choices;
    });
    book.setNames(before.names);
    moveBack();
    for (const one of old) book.touch(one.sheet.name, one.row, one.column);
    book.touch(own, row, 0);
    book.restructure();
  };
}

function mayChange(sheet: SheetState, row: number, count: number): void {
  const at = addressOf(row, 0);
  if (sheet.protected) throw new Refused("locked", { at: String(row + 1), text: sheet.name });
  if (row < 0 || row > LAST_ROW || (count > 0 && sheet.used().rows + count > LAST_ROW + 1))
    throw new Refused("outside", { at });
  const gone: Area | undefined =
    count < 0 ? { top: row, bottom: row - count - 1, left: 0, right: LAST_COLUMN } : undefined;
  for (const [r, cells] of sheet.cells) {
    for (const [c, cell] of cells) {
      const area = cell.array?.area;
      if (!area || area.top === area.bottom) continue;
      const cut = gone
        ? overlap(area, gone) && !(gone.top <= area.top && gone.bottom >= area.bottom)
        : row > area.top && row <= area.bottom;
      if (cut) throw new Refused("array", { at: String(row + 1), other: addressOf(r, c) });
    }
  }
  if (!gone) return;
  for (const table of sheet.tables) {
    const { top, bottom } = table.area;
    if (gone.top <= top && gone.bottom >= bottom) continue;
    const first = table.headings === false ? top : top + 1;
    const heading = first > top && gone.top <= top && gone.bottom >= top;
    const last = bottom - (table.totals ? 1 : 0);
    const left = last - first + 1 - Math.max(0, Math.min(gone.bottom, last) - Math.max(gone.top, first) + 1);
    if (heading || left < 1) throw new Refused("table", { text: table.name });
  }
}

function movedCell(cell: Cell, on: SheetState, sheet: SheetState, row: number, count: number): Cell {
  if (cell.formula === undefined) return cell;
  const formula = moveRows(cell.formula, on.name, sheet.name, row, count);
  const area = cell.array && on === sheet ? movedArea(cell.array.area, row, count) : undefined;
  const array = area && area.top !== cell.array!.area.top ? { ...cell.array!, area } : cell.array;
  return formula === cell.formula && array === cell.array ? cell : { ...cell, formula, ...(array ? { array } : {}) };
}

function shiftedRows(sheet: SheetState, row: number, count: number): Map<number, Row> {
  const rows = new Map<number, Row>();
  for (const [r, cells] of sheet.cells) {
    const at = movedRows(r, r, row, count);
    if (at) rows.set(at[0], cells);
  }
  // New rows look like the one above them; at the top of a table, like the one below.
  if (count > 0) {
    const heading = sheet.tables.some((table) => table.headings !== false && table.area.top === row - 1);
    const model = sheet.cells.get(heading || row === 0 ? row : row - 1);
    const looks = [...(model ?? [])].flatMap(([c, cell]) =>
      cell.style === undefined ? [] : [[c, cell.style] as const],
    );
    if (looks.length > 0) {
      for (let i = 0; i < count; i++)
        rows.set(row + i, new Map(looks.map(([c, style]) => [c, { value: null, style }])));
    }
  }
  return rows;
}

export function movedArea(area: Area, row: number, count: number): Area | undefined {
  const moved = movedRows(area.top, area.bottom, row, count);
  return moved && { ...area, top: moved[0], bottom: moved[1] };
}

const kept = (table: TableRange, area: Area | undefined): TableRange[] => (area ? [{ ...table, area }] : []);

function movedChoices(on: SheetState, sheet: SheetState, row: number, count: number): readonly Choices[] {
  if (on.choices.length === 0) return on.choices;
  return on.choices.flatMap((one) => {
    const areas = on === sheet ? one.areas.flatMap((area) => movedArea(area, row, count) ?? []) : one.areas;
    if (areas.length === 0) return [];
    const source = one.source === undefined ? undefined : moveRows(one.source, on.name, sheet.name, row, count);
    return [{ ...one, areas, ...(source === undefined ? {} : { source }) }];
  });
}
