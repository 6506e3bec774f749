/** Sheets added and renamed. */
import type { Undo, Workbook } from "./edits.ts";
import { renameSheet } from "./formulas.ts";
import { Refused } from "./refused.ts";
import { SheetState } from "./state.ts";
import type { Edit } from "./types.ts";

/** What workbooks allow: 1 to 31 characters, none of []:*?/\, no apostrophe at the ends. */
function mayBeNamed(book: Workbook, name: string, but?: SheetState): void {
  const taken = book.sheetStates.some((one) => one !== but && one.name.toLowerCase() === name.toLowerCase());
  if (taken || name.trim() === "" || name.length > 31 || /[[\]:*?/\\]/.test(name) || /^'|'$/.test(name))
    throw new Refused("name", { text: name, other: taken ? "taken" : "characters" });
}

export function addSheet(book: Workbook, edit: Extract<Edit, { kind: "add-sheet" }>): Undo {
  mayBeNamed(book, edit.sheet);
  const sheet = new SheetState({
    name: edit.sheet,
    state: "visible",
    cells: new Map(),
    widths: new Map(),
    hiddenColumns: new Set(),
    hiddenRows: new Set(),
    frozen: edit.frozen ?? { rows: 0, columns: 0 },
    merges: [],
    choices: [],
    tables: edit.table ? [{ ...edit.table, columns: [], totals: false }] : [],
    protected: false,
    kept: [],
  });
  const after = edit.after === undefined ? -1 : book.sheetStates.indexOf(book.sheetOf(edit.after));
  book.sheetStates.splice(after < 0 ? book.sheetStates.length : after + 1, 0, sheet);
  book.restructure();
  return () => {
    book.sheetStates.splice(book.sheetStates.indexOf(sheet), 1);
    book.restructure();
  };
}

export function renameSheetTo(book: Workbook, sheet: SheetState, to: string): Undo | undefined {
  const from = sheet.name;
  if (from === to) return undefined;
  mayBeNamed(book, to, sheet);
  const undo: Undo[] = [];
  for (const other of book.sheetStates) {
    for (const [row, cells] of other.cells) {
      for (const [column, cell] of cells) {
        if (!cell.formula?.includes("!")) continue;
        const formula = renameSheet(cell.formula, from, to);
        if (formula === cell.formula) continue;
        undo.push(() => other.put(row, column, cell));
        other.put(row, column, { ...cell, formula });
        book.touch(other.name, row, column);
      }
    }
    const { choices } = other;
    if (choices.some((one) => one.source?.includes("!"))) {
      other.choices = choices.map((one) =>
        one.source === undefined ? one : { ...one, source: renameSheet(one.source, from, to) },
      );
      undo.push(() => {
        other.choices = choices;
      });
    }
  }
  const names = book.names();
  book.setNames(
    names.map((name) => ({
      ...name,
      formula: renameSheet(name.formula, from, to),
      ...(name.sheet?.toLowerCase() === from.toLowerCase() ? { sheet: to } : {}),
    })),
  );
  sheet.name = to;
  book.renamed(from, to);
  book.restructure();
  return () => {
    sheet.name = from;
    book.setNames(names);
    for (const back of undo.reverse()) back();
    book.renamed(to, from);
    book.restructure();
  };
}
