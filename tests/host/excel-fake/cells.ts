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

/** Cells of a protected sheet may be written where they are unlocked. */
export const writable = (area: Area): void => {
  if (!area.sheet.protected) return;
  if (grid(area, (cell) => cell?.locked === false).some((row) => row.includes(false)))
    throw new FakeError("AccessDenied", "the sheet is protected");
};

/** Rows that a filter hides cannot be written as if they were not (code: Excel.ErrorCodes; when it comes: from memory). */
export const unfiltered = (area: Area, fake: FakeExcel): void => {
  const on = area.sheet.filtered || fake.tables.some((t) => t.filtered && overlap(tableArea(t), area));
  const rows = Array.from({ length: area.rows }, (_, r) => area.row + r);
  if (on && rows.some((row) => area.sheet.hidden.has(row)))
    throw new FakeError("FilteredRangeConflict", "a filter hides some of these rows");
};

/** As typing it would: the apostrophe marks text, and much that looks like something becomes it. */
export function take(input: unknown, format?: string): Cell | undefined {
  // A cell formatted as text keeps whatever is put into it as text, formulas as well.
  if (format === "@" && input !== "" && ["string", "number", "boolean"].includes(typeof input))
    return { value: String(input).replace(/^'/, "") };
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
  const { sheet } = area;
  const written = block.flatMap((row, r) => row.flatMap((input, c) => (input === null ? [] : [{ input, r, c }])));
  if (written.length === 0) return; // null leaves a cell as it is
  writable(area);
  unfiltered(area, fake);
  wholeArrays(sheet, new Set(written.map(({ r, c }) => at(area, r, c))));
  const before = calculatedBefore(area, fake);
  for (const { input, r, c } of written) {
    const key = at(area, r, c);
    // Of merged cells only the first holds anything; what is written to the others is gone without a word (from memory).
    if (sheet.merged.some((m) => inside(m, area.row + r, area.column + c) && key !== at(m, 0, 0))) continue;
    const old = sheet.cells.get(key);
    const taken = take(input, old?.format);
    const kept = {
      ...(old?.format ? { format: old.format } : {}),
      ...(old?.locked === false ? { locked: old.locked } : {}),
    };
    if (taken === undefined && Object.keys(kept).length === 0) sheet.cells.delete(key);
    else sheet.cells.set(key, { ...kept, ...(taken ?? { value: null }) });
  }
  if (fake.autoFill) fillDown(area, block, before);
  recalculate(sheet, fake);
  fake.changed("add-in");
}

/** "You can't change part of an array": the code is from memory. */
function wholeArrays(sheet: FakeSheet, keys: ReadonlySet<string>): void {
  const touched = new Set([...keys].flatMap((key) => sheet.cells.get(key)?.array ?? []));
  for (const [key, cell] of sheet.cells)
    if (cell.array !== undefined && touched.has(cell.array) && !keys.has(key))
      throw new FakeError("InvalidOperation", "part of an array cannot be changed");
}

/** Columns of tables that are blank, or calculated already, before a write. */
function calculatedBefore(area: Area, fake: FakeExcel): { table: FakeTable; column: number }[] {
  return fake.tables.flatMap((table) => {
    if (table.sheet !== area.sheet || !overlap(tableArea(table), area)) return [];
    return Array.from({ length: table.columns }, (_, c) => table.left + c).flatMap((column) => {
      const cells = dataKeys(table, column).map((key) => area.sheet.cells.get(key));
      return cells.every((cell) => cell?.formula === undefined && (cell?.value ?? null) === null)
        ? [{ table, column }]
        : [];
    });
  });
}

const dataKeys = (table: FakeTable, column: number): string[] =>
  Array.from({ length: table.rows }, (_, r) => `${table.top + 1 + r},${column}`);

/**
 * A formula in a column that was blank makes it a calculated one, also by the API: every row gets the last formula
 * written (office-js issues 2093, 5909, 6745: by design).
 */
function fillDown(
  area: Area,
  block: readonly (readonly unknown[])[],
  columns: readonly { table: FakeTable; column: number }[],
): void {
  for (const { table, column } of columns) {
    const c = column - area.column;
    if (c < 0 || c >= area.columns) continue;
    const rows = block.flatMap((row, r) => (typeof row[c] === "string" && row[c].startsWith("=") ? [r] : []));
    const last = rows.at(-1);
    if (last === undefined) continue;
    const from = area.row + last;
    const first = table.top + 1;
    if (from < first || from >= first + table.rows) continue;
    for (let row = first; row < first + table.rows; row++) {
      const key = `${row},${column}`;
      const old = area.sheet.cells.get(key);
      area.sheet.cells.set(key, { ...old, value: 0, formula: shifted(block[last]![c] as string, row - from) });
    }
  }
}

/** A formula as it reads when it is filled some rows down, or up. */
export const shifted = (formula: string, rows: number): string =>
  formula.replace(/"[^"]*"|(?<![A-Za-z0-9_.$])(\$?[A-Z]{1,3})(\d+)(?![A-Za-z0-9_.(])/g, (whole, column, row) =>
    column === undefined ? whole : `${column}${Number(row) + rows}`,
  );

/** Works the sheet's formulas out where the test says what they answer; what does not fit says #SPILL!. */
export function recalculate(sheet: FakeSheet, fake: FakeExcel): void {
  const { calculate } = fake;
  for (const [key, cell] of sheet.cells) if (cell.spill !== undefined) sheet.cells.delete(key);
  if (calculate === undefined) return;
  for (const [key, cell] of [...sheet.cells]) {
    if (cell.formula === undefined || cell.array !== undefined) continue;
    const [row = 0, column = 0] = key.split(",").map(Number);
    const answer = calculate(cell.formula, { sheet: sheet.name, row, column });
    if (answer === undefined) continue;
    if (!Array.isArray(answer)) {
      cell.value = answer;
      continue;
    }
    const area = { sheet, row, column, rows: answer.length, columns: answer[0]!.length };
    const free = answer.every((line, r) =>
      line.every((_, c) => (r === 0 && c === 0) || isFree(sheet.cells.get(at(area, r, c)))),
    );
    // A formula that spills cannot stand in a table, and does not spill over merged cells.
    const room =
      free && !sheet.merged.some((m) => overlap(m, area)) && !fake.tables.some((t) => overlap(tableArea(t), area));
    cell.value = room ? answer[0]![0]! : "#SPILL!";
    if (!room) continue;
    answer.forEach((line, r) => {
      line.forEach((value, c) => {
        if (r > 0 || c > 0) sheet.cells.set(at(area, r, c), { ...sheet.cells.get(at(area, r, c)), value, spill: key });
      });
    });
  }
}
const isFree = (cell: Cell | undefined) => cell === undefined || (cell.value === null && cell.formula === undefined);

export const overlap = (a: Area, b: Area): boolean =>
  a.sheet === b.sheet &&
  a.row < b.row + b.rows &&
  b.row < a.row + a.rows &&
  a.column < b.column + b.columns &&
  b.column < a.column + a.columns;
const inside = (area: Area, row: number, column: number) =>
  row >= area.row && row < area.row + area.rows && column >= area.column && column < area.column + area.columns;
export const isArea = (target: unknown): target is Area =>
  typeof target === "object" && target !== null && "rows" in target && "columns" in target && "row" in target;

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
  rows: table.rows + 1 + (table.totals ? 1 : 0),
  columns: table.columns,
});

export const used = (sheet: FakeSheet): Area | null =>
  usedIn({ sheet, row: 0, column: 0, rows: 1_048_576, columns: 16_384 });

/** What is filled of an area; null when nothing is. */
export function usedIn(area: Area): Area | null {
  let [top, left, bottom, right] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, -1, -1];
  for (const [key, cell] of area.sheet.cells) {
    if (cell.value === null) continue;
    const [row = 0, column = 0] = key.split(",").map(Number);
    if (!inside(area, row, column)) continue;
    top = Math.min(top, row);
    left = Math.min(left, column);
    bottom = Math.max(bottom, row);
    right = Math.max(right, column);
  }
  if (bottom < 0) return null;
  return { sheet: area.sheet, row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}

/** What is around a cell up to the next blank row and the next blank column. */
export function surrounding(area: Area): Area {
  const filled = (row: number, column: number) => (area.sheet.cells.get(`${row},${column}`)?.value ?? null) !== null;
  let [top, left, bottom, right] = [area.row, area.column, area.row, area.column];
  const some = (fromRow: number, fromColumn: number, toRow: number, toColumn: number) => {
    for (let r = Math.max(0, fromRow); r <= toRow; r++)
      for (let c = Math.max(0, fromColumn); c <= toColumn; c++) if (filled(r, c)) return true;
    return false;
  };
  for (let before = -1; before !== bottom - top + right - left; ) {
    before = bottom - top + right - left;
    while (some(bottom + 1, left - 1, bottom + 1, right + 1)) bottom++;
    while (top > 0 && some(top - 1, left - 1, top - 1, right + 1)) top--;
    while (left > 0 && some(top - 1, left - 1, bottom + 1, left - 1)) left--;
    while (some(top - 1, right + 1, bottom + 1, right + 1)) right++;
  }
  return { sheet: area.sheet, row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}
