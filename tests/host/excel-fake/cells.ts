/** Cells of the stand-in: reading, taking what is typed, addresses. */
import type { FakeExcel } from "./excel.ts";
import { type Area, bad, type Cell, FakeError, type FakeSheet, type FakeTable } from "./types.ts";

export const at = (area: Area, r: number, c: number) => `${area.row + r},${area.column + c}`;

export function grid<T>(area: Area, read: (cell: Cell | undefined) => T): T[][] {
  return Array.from({ length: area.rows }, (_, r) =>
    Array.from({ length: area.columns }, (_, c) => read(area.sheet.cells.get(at(area, r, c)))),
  );
}

export function checkShape(area: Area, block: unknown): asserts block is unknown[][] {
  if (
    !Array.isArray(block) ||
    block.length !== area.rows ||
    block.some((row) => !Array.isArray(row) || row.length !== area.columns)
  )
    throw bad(`the block is not ${area.rows} × ${area.columns}`);
}

export const writable = (sheet: FakeSheet): void => {
  if (sheet.protected) throw new FakeError("AccessDenied", "the sheet is protected");
};

/** As typing it would: the apostrophe marks text, and much that looks like something becomes it. */
export function take(input: unknown): Cell | undefined {
  if (typeof input === "number" || typeof input === "boolean") {
    if (typeof input === "number" && !Number.isFinite(input)) throw bad("not a finite number");
    return { value: input };
  }
  if (typeof input !== "string") throw bad(`a cell cannot hold ${typeof input}`);
  if (input === "") return undefined;
  if (input.startsWith("'")) return { value: input.slice(1) };
  if (/^[=+-]/.test(input) && Number.isNaN(Number(input))) return { value: 0, formula: `=${input.replace(/^=/, "")}` };
  if (/^\d{1,4}[/-]\d{1,2}$/.test(input)) return { value: 45_000, format: "d-mmm" };
  if (input.trim() !== "" && !Number.isNaN(Number(input))) return { value: Number(input) };
  if (/^(?:true|false)$/i.test(input)) return { value: input.toLowerCase() === "true" };
  return { value: input };
}

export function write(area: Area, block: unknown, fake: FakeExcel): void {
  checkShape(area, block);
  writable(area.sheet);
  block.forEach((row, r) => {
    row.forEach((input, c) => {
      if (input === null) return; // null leaves a cell as it is
      const taken = take(input);
      const old = area.sheet.cells.get(at(area, r, c));
      if (taken === undefined) area.sheet.cells.delete(at(area, r, c));
      else area.sheet.cells.set(at(area, r, c), { format: old?.format, ...taken });
    });
  });
  fake.changed("add-in");
}

export const isIndex = (value: unknown) => typeof value === "number" && Number.isInteger(value) && value >= 0;

export function parseAddress(address: string): Omit<Area, "sheet"> {
  const found = /^\$?([A-Z]+)\$?(\d+)(?::\$?([A-Z]+)\$?(\d+))?$/.exec(address);
  if (!found) throw bad(`address ${address}`);
  const column = (name: string) => [...name].reduce((n, ch) => n * 26 + ch.charCodeAt(0) - 64, 0) - 1;
  const [, a, b, c = a, d = b] = found;
  const left = column(a!);
  return { row: Number(b) - 1, column: left, rows: Number(d) - Number(b) + 1, columns: column(c!) - left + 1 };
}

export const tableArea = (table: FakeTable): Area => ({
  sheet: table.sheet,
  row: table.top,
  column: table.left,
  rows: table.rows + 1,
  columns: table.columns,
});

export function used(sheet: FakeSheet): Area | null {
  const keys = [...sheet.cells].filter(([, cell]) => cell.value !== null).map(([key]) => key.split(",").map(Number));
  if (keys.length === 0) return null;
  const rows = keys.map(([r]) => r!);
  const columns = keys.map(([, c]) => c!);
  const row = Math.min(...rows);
  const column = Math.min(...columns);
  return { sheet, row, column, rows: Math.max(...rows) - row + 1, columns: Math.max(...columns) - column + 1 };
}
