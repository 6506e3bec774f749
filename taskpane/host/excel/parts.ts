/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/**
 * What a write changes, part by part: what stood there, what is to stand there, how to see which of the two it is and
 * how to take it back. A batch that fails is not rolled back by Excel.
 */
import type { Standing } from "../care.ts";
import type { CellValue, Change, Written } from "../host.ts";
import { rectangles, toCell, toFormula } from "./cells.ts";
import { fill, isDown } from "./put.ts";
import { supports, TABLE_RESIZE } from "./versions.ts";

/** "same" is what neither the write nor its undoing would alter. */
export type State = "before" | "after" | "same" | "between";

export interface Part {
  /** How much of a request or an answer it takes. */
  readonly cells: number;
  load(): void;
  state(): State;
  undo(): void;
}

/** A rectangle of cells. The range is held on to from the read to the write, so that it moves with its rows. */
export interface Piece extends Part {
  readonly range: Excel.Range;
  readonly row: number;
  readonly column: number;
  /** What is to stand there; undefined leaves a cell as it is. */
  readonly cells2d: (Written | undefined)[][];
  readonly bytes: number;
  /** Its request was answered. */
  written: boolean;
  /** What stood there when it was read. */
  standing(row: number, column: number): Standing;
  write(): void;
  /** Leaves a cell as it is. */
  leave(row: number, column: number): void;
  /** Takes the values just read for what stands there. */
  keepRead(): void;
  /** Formats stay as they are: protection forbids to change them. */
  plain(): void;
}

/** Cells and bytes of one request: the web version refuses more than 5 MB, of answers as well. */
const CELLS_AT_ONCE = 40_000;
const BYTES_AT_ONCE = 1_500_000;

const LOADED = "formulas,values,numberFormat,rowHidden";

/** Changes as pieces of a sheet, none of them too big for one request. Row and column of a change count from `top`, `left`. */
export function piecesOf(sheet: Excel.Worksheet, top: number, left: number, changes: readonly Change[]): Piece[] {
  return rectangles(changes).flatMap(({ row, column, cells, formats }) => {
    const width = cells[0]!.length;
    const made: Piece[] = [];
    let from = 0;
    let bytes = 0;
    for (let r = 0; r <= cells.length; r++) {
      const more = r < cells.length ? bytesOf(cells[r]!, r === from) : 0;
      const full = (r - from + 1) * width > CELLS_AT_ONCE || bytes + more > BYTES_AT_ONCE;
      if (r === cells.length || (full && r > from)) {
        made.push(piece(sheet, top + row + from, left + column, cells.slice(from, r), formats.slice(from, r), bytes));
        from = r;
        bytes = 0;
      }
      bytes += more;
    }
    return made;
  });
}

/** Bytes of a row in a request; a formula that runs down its column is sent with the first row alone. */
const bytesOf = (row: readonly Written[], first: boolean): number =>
  JSON.stringify(first ? row : row.map((cell) => (isDown(cell) ? null : cell))).length;

/** Pieces that fit one request together. */
export function batches<T extends { readonly cells: number; readonly bytes?: number }>(parts: readonly T[]): T[][] {
  const made: T[][] = [];
  let [cells, bytes] = [0, 0];
  for (const part of parts) {
    const last = made.at(-1);
    const size = part.bytes ?? 0;
    if (last === undefined || cells + part.cells > CELLS_AT_ONCE || bytes + size > BYTES_AT_ONCE) {
      made.push([part]);
      [cells, bytes] = [0, 0];
    } else last.push(part);
    cells += part.cells;
    bytes += size;
  }
  return made;
}

interface Read {
  readonly standing: readonly (readonly Standing[])[];
  readonly formats: readonly (readonly string[])[];
}

/**
 * @param whole - undoing puts back every cell of it, also those that were left alone: a table may have filled them
 */
export function piece(
  sheet: Excel.Worksheet,
  row: number,
  column: number,
  cells2d: (Written | undefined)[][],
  formats: readonly (readonly (string | undefined)[])[] | undefined,
  bytes: number,
  whole = false,
): Piece {
  const range = sheet.getRangeByIndexes(row, column, cells2d.length, cells2d[0]!.length);
  const wanted = formats?.map((line) => [...line]);
  let before: Read | undefined;
  let formatted = true;
  const read = (): Read => ({
    standing: range.values.map((line: unknown[], r: number) =>
      line.map((value, c) => standingOf(range.formulas[r]![c], toCell(value))),
    ),
    formats: range.numberFormat as string[][],
  });
  /** The format that a cell is to have; one that is formatted as text would keep numbers and formulas as text. */
  const formatFor = (r: number, c: number): string | undefined => {
    const value = cells2d[r]![c];
    if (value === undefined || !formatted) return undefined;
    const there = before?.formats[r]?.[c];
    const asText = there === "@" && value !== null && typeof value !== "string";
    const next = wanted?.[r]?.[c] ?? (asText ? "General" : undefined);
    return next === there ? undefined : next;
  };
  const put = (
    value: (r: number, c: number) => Written | undefined,
    format: (r: number, c: number) => string | undefined,
  ) => {
    fill(
      range,
      cells2d.map((line, r) => line.map((_, c) => value(r, c))),
      cells2d.map((line, r) => line.map((_, c) => format(r, c))),
    );
  };
  /** What a cell is now. */
  const stateAt = (now: Read, r: number, c: number): State | "other" => {
    const there = now.standing[r]?.[c];
    const was = before?.standing[r]?.[c];
    if (there === undefined || was === undefined) return "other";
    const value = cells2d[r]![c];
    const format = now.formats[r]![c]!;
    const isBefore = alike(there, was) && format === before!.formats[r]![c];
    if (value === undefined) return isBefore || !whole ? "same" : "after";
    const isAfter = alike(there, standingOfWritten(value)) && format === (formatFor(r, c) ?? before!.formats[r]![c]);
    if (isBefore && isAfter) return "same";
    if (isBefore || isAfter) return isAfter ? "after" : "before";
    // Content of the one and format of the other: stopped in between.
    return alike(there, was) || alike(there, standingOfWritten(value)) ? "between" : "other";
  };
  const each = (now: Read): (State | "other")[][] => cells2d.map((line, r) => line.map((_, c) => stateAt(now, r, c)));

  const made: Piece = {
    range,
    row,
    column,
    cells2d,
    bytes,
    written: false,
    cells: cells2d.length * cells2d[0]!.length,
    load: () => range.load(LOADED),
    keepRead() {
      before = read();
    },
    standing: (r, c) => before!.standing[r]![c]!,
    leave(r, c) {
      cells2d[r]![c] = undefined;
    },
    plain() {
      formatted = false;
    },
    write: () => put((r, c) => cells2d[r]![c], formatFor),
    state() {
      // Rows have come in or gone: a write of another shape is refused, unless it was before.
      if (range.values.length !== cells2d.length) return made.written ? "between" : "before";
      const all = each(read()).flat();
      const found = new Set(all.filter((one) => one !== "same" && one !== "other"));
      if (found.size === 0) return "same";
      return found.size === 1 ? ([...found][0] as State) : "between";
    },
    undo() {
      const states = each(read());
      const back = (r: number, c: number) => states[r]![c] === "after" || states[r]![c] === "between";
      put(
        (r, c) => (back(r, c) ? writtenOf(before!.standing[r]![c]!) : undefined),
        (r, c) => (back(r, c) ? before!.formats[r]![c] : undefined),
      );
    },
  };
  return made;
}

/** True when a range holds what was to be written there; blank cells may be left for later when `partly`. */
export function holds(range: Excel.Range, cells: readonly (readonly Written[])[], partly: boolean): boolean {
  return cells.every((line, r) =>
    line.every((value, c) => {
      const there = standingOf(range.formulas[r]![c], toCell(range.values[r]![c]));
      return alike(there, standingOfWritten(value)) || (partly && there.formula === "" && there.value === null);
    }),
  );
}

/** Text that begins with "=" is no formula: its value reads the same. */
function standingOf(formula: unknown, value: CellValue): Standing {
  const isFormula = typeof formula === "string" && formula.startsWith("=") && formula !== value;
  return { formula: isFormula ? formula : "", value };
}
const standingOfWritten = (value: Written): Standing =>
  typeof value === "object" && value !== null
    ? { formula: value.formula, value: null }
    : { formula: "", value: value === "" ? null : value };
const writtenOf = ({ formula, value }: Standing): Written => (formula === "" ? value : { formula });

/** Formulas are compared as Excel may give them back: without regard to case and blanks. */
const plainFormula = (formula: string) => formula.replace(/\s+/g, "").toUpperCase();
function alike(a: Standing, b: Standing): boolean {
  if (a.formula !== "" || b.formula !== "") return plainFormula(a.formula) === plainFormula(b.formula);
  if (typeof a.value === "number" && typeof b.value === "number")
    return Math.abs(a.value - b.value) <= 1e-14 * Math.abs(b.value);
  return a.value === b.value;
}

/** Rows that a table grows by: by its size where the host can, else by adding rows with their cells. */
export function growth(
  sheet: Excel.Worksheet,
  table: Excel.Table,
  place: { readonly top: number; readonly left: number; readonly width: number },
  count: number,
  rows: readonly (readonly Written[])[],
): Part & { readonly byRows: boolean; write(): void } {
  const byRows = !supports(TABLE_RESIZE) || table.showTotals;
  const more = rows.length;
  const size = (data: number) => sheet.getRangeByIndexes(place.top, place.left, 1 + data, place.width);
  return {
    cells: 1,
    byRows,
    write() {
      if (byRows)
        table.rows.add(
          undefined,
          rows.map((row) => row.map(toFormula)),
        );
      else table.resize(size(count + more));
    },
    load: () => table.rows.load("count"),
    state: () => (table.rows.count === count ? "before" : "after"),
    undo() {
      if (!byRows) table.resize(size(count));
      else for (let last = table.rows.count - 1; last >= count; last--) table.rows.getItemAt(last).delete();
    },
  };
}
