/** Carries one edit out on the workbook in memory and says how to take it back. */
import { addressOf, overlap } from "./address.ts";
import { Refused } from "./refused.ts";
import { changeRows } from "./rows.ts";
import { addSheet, renameSheetTo } from "./sheets.ts";
import { holds, type SheetState } from "./state.ts";
import { sameAs } from "./typed.ts";
import { type Book, type Cell, type Edit, LAST_COLUMN, LAST_ROW, type Style, type TableRange } from "./types.ts";

export type Undo = () => void;

/** What carrying out an edit needs of the workbook. */
export interface Workbook {
  readonly sheetStates: SheetState[];
  sheetOf(name: string): SheetState;
  /** Grows when a cell gets a look that none had before. */
  readonly styles: Style[];
  names(): Book["names"];
  setNames(names: Book["names"]): void;
  settings(): NonNullable<Book["settings"]>;
  setSettings(settings: NonNullable<Book["settings"]>): void;
  /** This cell is to be drawn and calculated anew. */
  touch(sheet: string, row: number, column: number): void;
  /** Everything is to be read anew. */
  restructure(): void;
  renamed(from: string, to: string): void;
  /** Rows have moved; answers what is to be done when they move back. */
  rowsMoved(sheet: string, row: number, count: number): () => void;
}

type CellEdit = Extract<Edit, { kind: "cell" }>;

/** @returns how to take it back; undefined when it changes nothing. Throws Refused. */
export function carryOut(book: Workbook, edit: Edit): Undo | undefined {
  const sheet = edit.kind === "add-sheet" || edit.kind === "setting" ? undefined : book.sheetOf(edit.sheet);
  switch (edit.kind) {
    case "cell":
      return writeCell(book, sheet!, edit);
    case "insert-rows":
      return changeRows(book, sheet!, edit.row, edit.count);
    case "delete-rows":
      return changeRows(book, sheet!, edit.row, -edit.count);
    case "table-area":
      return moveTable(book, sheet!, edit);
    case "width": {
      const before = sheet!.widths;
      if (before.get(edit.column) === edit.width) return undefined;
      return set(book, sheet!, "widths", new Map([...before, [edit.column, edit.width]]));
    }
    case "hide-columns": {
      const hidden = new Set(sheet!.hiddenColumns);
      for (const column of edit.columns) {
        if (edit.hidden) hidden.add(column);
        else hidden.delete(column);
      }
      if (hidden.size === sheet!.hiddenColumns.size && [...hidden].every((c) => sheet!.hiddenColumns.has(c)))
        return undefined;
      return set(book, sheet!, "hiddenColumns", hidden);
    }
    case "choices": {
      const others = sheet!.choices.filter((one) => JSON.stringify(one.areas) !== JSON.stringify(edit.choices.areas));
      return set(book, sheet!, "choices", [...others, edit.choices]);
    }
    case "add-sheet":
      return addSheet(book, edit);
    case "setting":
      return keep(book, edit.name, edit.value);
    case "rename-sheet":
      return renameSheetTo(book, sheet!, edit.to);
  }
}

function keep(book: Workbook, name: string, value: string | null): Undo | undefined {
  const before = book.settings();
  if ((before[name] ?? null) === value) return undefined;
  const { [name]: _, ...others } = before;
  book.setSettings(value === null ? others : { ...others, [name]: value });
  return () => book.setSettings(before);
}

/** Puts another value into a part of a sheet. */
function set<K extends "widths" | "hiddenColumns" | "choices" | "tables">(
  book: Workbook,
  sheet: SheetState,
  part: K,
  value: SheetState[K],
): Undo {
  const before = sheet[part];
  const write = (next: SheetState[K]) => {
    sheet[part] = next;
    book.restructure();
  };
  write(value);
  return () => write(before);
}

/** Why a cell may not be written; undefined when it may. */
export function refusal(book: Workbook, sheet: SheetState, row: number, column: number): Refused | undefined {
  const at = addressOf(row, column);
  if (!(row >= 0 && row <= LAST_ROW && column >= 0 && column <= LAST_COLUMN)) return new Refused("outside", { at });
  const array = sheet.arrayAt(row, column) ?? sheet.spills.get(row)?.get(column);
  if (array && (array.row !== row || array.column !== column))
    return new Refused("array", { at, other: addressOf(array.row, array.column) });
  if (sheet.protected) {
    const style = sheet.typed(row, column)?.style;
    if (style === undefined || book.styles[style]?.locked !== false)
      return new Refused("locked", { at, text: sheet.name });
  }
  const merge = sheet.mergeAt(row, column);
  if (merge && (merge.top !== row || merge.left !== column))
    return new Refused("merged", { at, other: addressOf(merge.top, merge.left) });
  return undefined;
}

function writeCell(book: Workbook, sheet: SheetState, edit: CellEdit): Undo | undefined {
  const { row, column } = edit;
  const before = sheet.typed(row, column);
  const style = styleFor(book, before?.style, edit);
  const value = edit.value === "" ? null : edit.value;
  if (
    sameAs(before?.value ?? null, value) &&
    before?.formula === edit.formula &&
    before?.style === style &&
    JSON.stringify(before?.array) === JSON.stringify(edit.array)
  )
    return undefined;
  const refused = refusal(book, sheet, row, column);
  if (refused) {
    // Clearing what a merged cell covers is no loss and no change.
    if (refused.code === "merged" && value === null && edit.formula === undefined) return undefined;
    throw refused;
  }
  const after: Cell | undefined =
    value === null && edit.formula === undefined && style === undefined
      ? undefined
      : {
          value,
          ...(edit.formula === undefined ? {} : { formula: edit.formula }),
          ...(edit.array ? { array: edit.array } : {}),
          ...(style === undefined ? {} : { style }),
        };
  // The answers of an array formula go with it.
  const answers =
    before?.formula === edit.formula
      ? []
      : [...sheet.spills].flatMap(([r, cells]) =>
          [...cells].flatMap(([c, one]) => (one.row === row && one.column === column ? [{ r, c, one }] : [])),
        );
  const write = (cell: Cell | undefined, spilled: boolean) => {
    sheet.put(row, column, cell);
    book.touch(sheet.name, row, column);
    for (const { r, c, one } of answers) {
      if (spilled) {
        if (!sheet.spills.has(r)) sheet.spills.set(r, new Map());
        sheet.spills.get(r)!.set(c, one);
      } else sheet.spills.get(r)?.delete(c);
      book.touch(sheet.name, r, c);
    }
  };
  write(after, false);
  return () => write(before, true);
}

const LOOKS: Readonly<Record<NonNullable<CellEdit["look"]>, Partial<Style>>> = {
  heading: { bold: true, wrap: true, color: "#1d2733", fill: "#e4e9ee" },
  ok: { bold: true, color: "#14532a", fill: "#dcefe0" },
  check: { bold: true, color: "#6a4a00", fill: "#fbeac2" },
  stop: { bold: true, color: "#8a1410", fill: "#f8d7d4" },
  page: { wrap: true },
};

/** Index of the style that a cell has after an edit. */
function styleFor(book: Workbook, before: number | undefined, edit: CellEdit): number | undefined {
  if (edit.numberFormat === undefined && edit.look === undefined) return before;
  const base: Style = (before === undefined ? undefined : book.styles[before]) ?? { numberFormat: "General" };
  const wanted: Style = {
    ...base,
    ...(edit.look ? LOOKS[edit.look] : {}),
    ...(edit.numberFormat === undefined ? {} : { numberFormat: edit.numberFormat }),
  };
  if (sameStyle(base, wanted) && (before !== undefined || edit.numberFormat === "General")) return before;
  const found = book.styles.findIndex((style) => sameStyle(style, wanted));
  return found >= 0 ? found : book.styles.push(wanted) - 1;
}

const PARTS = ["numberFormat", "bold", "italic", "color", "fill", "align", "wrap", "locked"] as const;
const sameStyle = (a: Style, b: Style): boolean => PARTS.every((part) => a[part] === b[part]);

function moveTable(book: Workbook, sheet: SheetState, edit: Extract<Edit, { kind: "table-area" }>): Undo | undefined {
  const table = sheet.tables.find((one) => one.name.toLowerCase() === edit.table.toLowerCase());
  if (!table) throw new Refused("table", { text: edit.table });
  const { area } = edit;
  const other = sheet.tables.find((one) => one !== table && overlap(one.area, area));
  if (other) throw new Refused("occupied", { text: other.name });
  const columns = Array.from({ length: area.right - area.left + 1 }, (_, i) => {
    const cell = table.headings === false ? undefined : sheet.typed(area.top, area.left + i);
    const heading = holds(cell) && cell.value !== null ? String(cell.value) : undefined;
    return heading ?? table.columns[area.left + i - table.area.left] ?? "";
  });
  const next: TableRange = { ...table, area, columns };
  if (JSON.stringify(next) === JSON.stringify(table)) return undefined;
  return set(
    book,
    sheet,
    "tables",
    sheet.tables.map((one) => (one === table ? next : one)),
  );
}

/** The same edits with each cell written once between two that move cells. */
export function compact(edits: readonly Edit[]): Edit[] {
  const all: Edit[] = [];
  let cells = new Map<string, CellEdit>();
  const flush = () => {
    all.push(...cells.values());
    cells = new Map();
  };
  for (const edit of edits) {
    if (edit.kind === "cell") {
      const key = `${edit.row} ${edit.column} ${edit.sheet.toLowerCase()}`;
      const before = cells.get(key);
      cells.delete(key);
      const numberFormat = edit.numberFormat ?? before?.numberFormat;
      const look = edit.look ?? before?.look;
      cells.set(key, {
        ...edit,
        ...(numberFormat === undefined ? {} : { numberFormat }),
        ...(look === undefined ? {} : { look }),
      });
    } else {
      if (edit.kind !== "width" && edit.kind !== "hide-columns" && edit.kind !== "setting") flush();
      all.push(edit);
    }
  }
  flush();
  return all;
}
