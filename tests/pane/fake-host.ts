/** A workbook in memory, for tests of the pane: sheets of raw cells, every write kept, refusals on demand. */
import { allowed, checkSame, isOver } from "../../taskpane/host/care.ts";
import {
  type Block,
  type CellValue,
  type DataChange,
  formatAt,
  type Host,
  HostError,
  type Place,
  type Written,
} from "../../taskpane/host/host.ts";
import { reference, spokenAddress } from "../../taskpane/host/reference.ts";
import { findTable, growths, readAtHand } from "../../taskpane/host/region.ts";

export interface FakeHost extends Host {
  readonly sheets: Map<string, CellValue[][]>;
  readonly log: string[];
  active: string;
  cursor: { row: number; column: number };
  protectedSheets: Set<string>;
  /** Formats and formulas that were written, by "Sheet!row,column". */
  readonly formulas: Map<string, string>;
  readonly formats: Map<string, string>;
  /** What is kept in the workbook beside its cells. */
  readonly kept: Map<string, string>;
  moveTo(row: number, column: number): void;
  /** Shows the pane, or hides it. */
  show(shown: boolean): void;
  userEdits(row: number, column: number, value: CellValue): void;
}

export function fakeHost(sheets: Record<string, CellValue[][]>): FakeHost {
  const selectionListeners = new Set<(otherSheet: boolean) => void>();
  const dataListeners = new Set<(change: DataChange) => void>();
  const shownListeners = new Set<(shown: boolean) => void>();
  let shown = true;
  let seen = Object.keys(sheets)[0] ?? "";
  const grids = new Map(Object.entries(sheets).map(([name, grid]) => [name, grid.map((row) => [...row])]));
  const square = (grid: CellValue[][]): CellValue[][] => {
    const width = Math.max(0, ...grid.map((row) => row.length));
    return grid.map((row) => Array.from({ length: width }, (_, c) => row[c] ?? null));
  };
  const gridOf = (name: string): CellValue[][] => {
    const grid = grids.get(name);
    if (grid === undefined) throw new HostError("gone", `There is no sheet "${name}".`);
    return grid;
  };
  const put = (sheet: string, row: number, column: number, value: Written, format?: string): void => {
    const grid = gridOf(sheet);
    while (grid.length <= row) grid.push([]);
    const line = grid[row]!;
    while (line.length <= column) line.push(null);
    const key = `${sheet}!${row},${column}`;
    host.formulas.delete(key);
    if (typeof value === "object" && value !== null) {
      host.formulas.set(key, value.formula);
      line[column] = "";
    } else line[column] = value;
    if (format !== undefined) host.formats.set(key, format);
  };
  const guard = (sheet: string): void => {
    gridOf(sheet);
    if (host.protectedSheets.has(sheet))
      throw new HostError(
        "protected",
        `The sheet "${sheet}" is protected; nothing was written. Unprotect it and try again.`,
      );
  };
  const unmoved = ({ sheet, top, left, headings, address }: Block): void => {
    if (headings.some((heading, c) => (gridOf(sheet)[top]?.[left + c] ?? null) !== heading))
      throw new HostError("gone", `The headings at ${address} are no longer there; nothing was written.`);
  };
  const valueIn = (block: Block) => (row: number, column: number) =>
    gridOf(block.sheet)[block.top + 1 + row]?.[block.left + column] ?? null;
  const free = ({ sheet, row, column }: Place, rows: number, columns: number): void => {
    for (let r = row; r < row + rows; r++)
      for (let c = column; c < column + columns; c++)
        if ((gridOf(sheet)[r]?.[c] ?? null) !== null)
          throw new HostError(
            "occupied",
            `Cell ${spokenAddress(sheet, r, c, 1, 1)} is in the way; nothing was written.`,
          );
  };
  const blockOf = (sheet: string, grid: CellValue[][]): Block => ({
    sheet,
    top: 0,
    left: 0,
    headings: grid[0]!,
    rows: grid.slice(1),
    reference: reference(sheet, 0, 0, grid.length, grid[0]!.length),
    address: spokenAddress(sheet, 0, 0, grid.length, grid[0]!.length),
  });

  const host: FakeHost = {
    kind: "sheet",
    sheets: grids,
    log: [],
    active: Object.keys(sheets)[0] ?? "",
    cursor: { row: 0, column: 0 },
    protectedSheets: new Set(),
    formulas: new Map(),
    formats: new Map(),
    kept: new Map(),
    moveTo(row, column) {
      host.cursor = { row, column };
      const other = host.active !== seen;
      seen = host.active;
      for (const listener of selectionListeners) listener(other);
    },
    show(now) {
      shown = now;
      for (const listener of shownListeners) listener(now);
    },
    userEdits(row, column, value) {
      put(host.active, row, column, value);
      for (const listener of dataListeners) listener({ sheet: host.active });
    },
    read(wanted) {
      host.log.push(`read${wanted.table ? " table" : ""}${wanted.lists ? " lists" : ""}`);
      return readAtHand(
        {
          ...host,
          settings: () => Object.fromEntries(host.kept),
          line: () => gridOf(host.active)[host.cursor.row] ?? [],
        },
        wanted,
        host.active,
        (sheet, row, column) => host.formulas.get(`${sheet}!${row},${column}`) ?? "",
      );
    },
    async keep(name, text) {
      host.log.push(`keep ${name}`);
      if (text === null) host.kept.delete(name);
      else host.kept.set(name, text);
    },
    async readRows(table, changed) {
      const at = host.cursor.row - table.top - 1;
      const width = table.headings.length;
      const line = (row: number) =>
        Array.from({ length: width }, (_, c) => gridOf(table.sheet)[row]?.[table.left + c] ?? null);
      const inside = host.cursor.column >= table.left && host.cursor.column < table.left + width;
      if (host.active !== table.sheet || !inside || at < -1 || at >= table.rows.length) return null;
      if (line(table.top).some((cell, c) => cell !== table.headings[c])) return null;
      const wanted = [...changed, ...(at < 0 ? [] : [at])];
      return { selected: at < 0 ? null : at, rows: new Map(wanted.map((r) => [r, line(table.top + 1 + r)])) };
    },
    async readTable(score) {
      host.log.push("readTable");
      return findTable(host.active, square(gridOf(host.active)), host.cursor, score);
    },
    async readList(name) {
      const [found, grid] = [...grids].find(([key]) => key.toLowerCase() === name.toLowerCase()) ?? [];
      return found === undefined || grid === undefined ? null : blockOf(found, square(grid));
    },
    async addSheet(sheet, activate) {
      host.log.push(`addSheet ${sheet.name}`);
      if ([...grids.keys()].some((key) => key.toLowerCase() === sheet.name.toLowerCase()))
        throw new HostError("occupied", `There is a sheet "${sheet.name}" already.`);
      grids.set(sheet.name, []);
      [sheet.headings, ...sheet.rows].forEach((row, r) => {
        row.forEach((value, c) => {
          put(sheet.name, r, c, value, r === 0 ? undefined : formatAt(sheet, r - 1, c, value));
        });
      });
      if (activate) {
        host.active = sheet.name;
        host.moveTo(1, 0);
      }
      return blockOf(sheet.name, square(gridOf(sheet.name)));
    },
    async appendRows(block, rows, spare = 0, same) {
      guard(block.sheet);
      unmoved(block);
      if (same) checkSame(same, valueIn(same.block));
      const row = block.top + 1 + block.rows.length - spare;
      rows.forEach((line, r) => {
        if (r >= spare) free({ sheet: block.sheet, row: row + r, column: block.left }, 1, block.headings.length);
        else
          line.forEach((value, c) => {
            if (value !== null) free({ sheet: block.sheet, row: row + r, column: block.left + c }, 1, 1);
          });
      });
      const oldEnd = row + spare - 1;
      const newEnd = row + rows.length - 1;
      const head = Array.from({ length: 100 }, (_, column) => ({
        formula: host.formulas.get(`${block.sheet}!${block.top},${column}`) ?? "",
        value: gridOf(block.sheet)[block.top]?.[column] ?? null,
      }));
      const grown = newEnd > oldEnd ? growths(head, block, oldEnd, newEnd) : [];
      for (const { column, from, rows: more, columns } of grown)
        free({ sheet: block.sheet, row: from, column }, more, columns);
      host.log.push(`appendRows ${rows.length}${spare > 0 ? ` spare ${spare}` : ""}`);
      for (const { column, formula } of grown) put(block.sheet, block.top, column, { formula });
      rows.forEach((line, r) => {
        line.forEach((value, c) => {
          if (value !== null) put(block.sheet, row + r, block.left + c, value);
        });
      });
      return {};
    },
    async writeCells(block, changes, care = {}) {
      guard(block.sheet);
      unmoved(block);
      if (care.same) checkSame(care.same, valueIn(care.same.block));
      for (const { row, column } of changes)
        if ((column >= block.headings.length || row >= block.rows.length) && !isOver(block, care, row, column))
          free({ sheet: block.sheet, row: block.top + 1 + row, column: block.left + column }, 1, 1);
      const carried = allowed(block, changes, care, ({ row, column }) => ({
        formula: host.formulas.get(`${block.sheet}!${block.top + 1 + row},${block.left + column}`) ?? "",
        value: valueIn(block)(row, column),
      }));
      host.log.push(`writeCells ${carried.length}`);
      for (const { row, column, value, format } of carried)
        put(block.sheet, block.top + 1 + row, block.left + column, value, format);
      return {};
    },
    async insertFormula(place, formula, [rows, columns], formats = []) {
      guard(place.sheet);
      free(place, rows, columns);
      host.log.push(`insertFormula ${formula}`);
      put(place.sheet, place.row, place.column, { formula });
      formats.forEach((format, c) => {
        for (let r = 1; r < rows && format !== undefined; r++)
          host.formats.set(`${place.sheet}!${place.row + r},${place.column + c}`, format);
      });
      return {};
    },
    async insertCells(place, cells, formats) {
      guard(place.sheet);
      free(place, cells.length, cells[0]?.length ?? 0);
      host.log.push(`insertCells ${cells.length}`);
      cells.forEach((line, r) => {
        line.forEach((value, c) => {
          put(place.sheet, place.row + r, place.column + c, value, formats?.[c]);
        });
      });
      return {};
    },
    async select(place) {
      host.active = place.sheet;
      host.moveTo(place.row, place.column);
    },
    onSelectionChange(listener) {
      selectionListeners.add(listener);
      return () => selectionListeners.delete(listener);
    },
    onDataChange(listener) {
      dataListeners.add(listener);
      return () => dataListeners.delete(listener);
    },
    onShown(listener) {
      shownListeners.add(listener);
      listener(shown);
      return () => shownListeners.delete(listener);
    },
  };
  return host;
}
