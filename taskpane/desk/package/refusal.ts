/** Why a file could not hold an edit: asked before the edit is made, so that saving never has to refuse. Pure. */

import { addressOf, areaText, inArea, overlap } from "../model/address.ts";
import { type Area, type Book, type Edit, LAST_COLUMN, LAST_ROW, type Sheet } from "../model/types.ts";
import { sheetNameFault } from "./sheet-names.ts";
import { choicesFault } from "./sheet-sections.ts";
import { tableNameFault } from "./table-write.ts";

interface TableLike {
  readonly name: string;
  readonly area: Area;
  readonly totals: boolean;
  readonly headings?: false;
}

/** Rows that come or go and tables: a table keeps its headings, its totals and one row. */
export function rowsFault(
  tables: readonly TableLike[],
  kind: "insert" | "delete",
  row: number,
  count: number,
): string | undefined {
  if (kind === "insert") return undefined;
  const last = row + count - 1;
  for (const { name, area, totals, headings } of tables) {
    if (last < area.top || row > area.bottom) continue;
    if (headings !== false && row <= area.top && last >= area.top)
      return `Row ${area.top + 1} holds the headings of the table "${name}" and cannot be deleted.`;
    if (totals && last >= area.bottom)
      return `Row ${area.bottom + 1} holds the totals of the table "${name}" and cannot be deleted.`;
    const first = area.top + (headings === false ? 0 : 1);
    const bottom = area.bottom - (totals ? 1 : 0);
    if (row <= first && last >= bottom) return `The table "${name}" must keep one row; clear its cells instead.`;
  }
  return undefined;
}

/** A table's new place: headings stay where they are, the totals row as well, and nothing else may lie there. */
export function tableFault(
  tables: readonly TableLike[],
  merges: readonly Area[],
  name: string,
  area: Area,
): string | undefined {
  const table = tables.find((t) => t.name.toLowerCase() === name.toLowerCase());
  if (!table) return `There is no table "${name}" on this sheet.`;
  const own = table.area;
  if (area.top !== own.top || area.left !== own.left)
    return `The table "${name}" must begin where it does, at ${addressOf(own.top, own.left)}.`;
  if (area.bottom > LAST_ROW || area.right > LAST_COLUMN || area.right < area.left)
    return `The table "${name}" would leave the sheet.`;
  if (area.bottom - area.top < (table.headings === false ? 0 : 1) + (table.totals ? 1 : 0))
    return `The table "${name}" must keep one row.`;
  if (area.right < own.right)
    return `Columns cannot be taken out of the table "${name}" here; formulas may speak of them.`;
  if (table.totals && area.bottom !== own.bottom)
    return `The table "${name}" has a totals row at its end; insert rows above it instead.`;
  const other = tables.find((t) => t !== table && overlap(t.area, area));
  if (other) return `The table "${name}" would run into the table "${other.name}".`;
  if (merges.some((merge) => overlap(merge, area) && !overlap(merge, own)))
    return `The table "${name}" would run into merged cells.`;
  return undefined;
}

const heldBy = (
  sheet: Sheet,
  found: (area: Area, dynamic: boolean, row: number, column: number) => boolean,
): Area | undefined => {
  for (const [row, line] of sheet.cells)
    for (const [column, cell] of line)
      if (cell.array && found(cell.array.area, cell.array.dynamic, row, column)) return cell.array.area;
  return undefined;
};

const isSingle = (area: Area): boolean => area.top === area.bottom && area.left === area.right;

function cellFault(sheet: Sheet, edit: Extract<Edit, { kind: "cell" }>): string | undefined {
  const { row, column } = edit;
  if (!(row >= 0 && row <= LAST_ROW && column >= 0 && column <= LAST_COLUMN))
    return "There is no such cell on a sheet.";
  const where = addressOf(row, column);
  const merge = sheet.merges.find((area) => inArea(area, row, column));
  if (merge && (row !== merge.top || column !== merge.left) && (edit.value !== null || edit.formula !== undefined))
    return `Cell ${where} is covered by the merged cells ${areaText(merge)}; what is typed there would not be seen.`;
  const held = heldBy(sheet, (area, dynamic, r, c) => {
    if (dynamic || isSingle(area) || !inArea(area, row, column)) return false;
    return r !== row || c !== column || edit.formula !== sheet.cells.get(r)?.get(c)?.formula;
  });
  if (held)
    return `Cell ${where} is part of the array formula in ${areaText(held)}, which can only be changed as a whole.`;
  if (typeof edit.value === "string" && edit.value.length > 32_767)
    return `A cell holds at most 32,767 characters; these are ${edit.value.length}.`;
  if (edit.formula !== undefined && edit.formula.length > 8_192)
    return `A formula has at most 8,192 characters; this one has ${edit.formula.length}.`;
  const table = sheet.tables.find(
    (t) => t.headings !== false && row === t.area.top && column >= t.area.left && column <= t.area.right,
  );
  if (table) {
    const heading = edit.value === null || typeof edit.value === "object" ? "" : String(edit.value);
    if (heading === "" || edit.formula !== undefined)
      return `${where} is a heading of the table "${table.name}"; it needs a text.`;
    if (table.columns.some((c, i) => i !== column - table.area.left && c.toLowerCase() === heading.toLowerCase()))
      return `The table "${table.name}" has a column "${heading}" already.`;
  }
  return undefined;
}

function movedRowsFault(sheet: Sheet, kind: "insert" | "delete", row: number, count: number): string | undefined {
  if (!(Number.isInteger(row) && Number.isInteger(count) && row >= 0 && count >= 1 && row + count - 1 <= LAST_ROW))
    return "Rows to insert or delete must be on the sheet.";
  const table = rowsFault(sheet.tables, kind, row, count);
  if (table) return table;
  if (kind === "insert") {
    let last = 0;
    for (const at of sheet.cells.keys()) last = Math.max(last, at);
    if (last + count > LAST_ROW) return "There is no room for more rows: cells at the sheet's end would fall off.";
  }
  const end = row + count - 1;
  const cut = (area: Area) =>
    kind === "insert"
      ? row > area.top && row <= area.bottom
      : row <= area.bottom && end >= area.top && (row > area.top || end < area.bottom);
  const held = heldBy(sheet, (area, dynamic) => !dynamic && cut(area));
  if (held) return `Rows cannot be inserted or deleted inside of the array formula in ${areaText(held)}.`;
  const fixed = sheet.fixed?.find(({ area }) =>
    kind === "insert" ? cut(area) : row <= area.bottom && end >= area.top,
  );
  if (fixed) return `Rows cannot be inserted or deleted inside of ${fixed.what} in ${areaText(fixed.area)}.`;
  return undefined;
}

/** The sentence why an edit cannot be stored; `undefined` when it can. The book is as it is before the edit. */
export function refusal(book: Book, edit: Edit): string | undefined {
  const names = book.sheets.map((sheet) => sheet.name);
  if (edit.kind === "setting") return undefined;
  if (edit.kind === "add-sheet") {
    const fault = sheetNameFault(edit.sheet, names) ?? (edit.table && tableNameFault(edit.table.name));
    if (fault) return fault;
    const taken =
      edit.table &&
      book.sheets.some((s) => s.tables.some((t) => t.name.toLowerCase() === edit.table!.name.toLowerCase()));
    return taken ? `There is a table "${edit.table!.name}" already.` : undefined;
  }
  const sheet = book.sheets.find((s) => s.name.toLowerCase() === edit.sheet.toLowerCase());
  if (!sheet) return `There is no sheet "${edit.sheet}" in this workbook.`;
  switch (edit.kind) {
    case "cell":
      return cellFault(sheet, edit);
    case "insert-rows":
      return movedRowsFault(sheet, "insert", edit.row, edit.count);
    case "delete-rows":
      return movedRowsFault(sheet, "delete", edit.row, edit.count);
    case "table-area":
      return tableFault(sheet.tables, sheet.merges, edit.table, edit.area);
    case "choices":
      return choicesFault(edit.choices);
    case "rename-sheet":
      return sheetNameFault(
        edit.to,
        names.filter((name) => name !== sheet.name),
      );
    case "width":
      return edit.width >= 0 && edit.width <= 255 ? undefined : "A column is 0 to 255 characters wide.";
    case "hide-columns":
      return undefined;
  }
}
