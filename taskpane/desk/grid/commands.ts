/** What the person can have done to the sheet: each is one step of undo. */
import { areaName, readArea } from "../model/address.ts";
import { clearEdits, enterAllEdits, fillEdits, rowsIn } from "../model/blocks.ts";
import { displayText } from "../model/display.ts";
import { regionAt, sortEdits } from "../model/tables.ts";
import { type Area, type Edit, LAST_COLUMN, LAST_ROW } from "../model/types.ts";
import { attempt, type Context } from "./context.ts";
import { fittingWidth } from "./layout.ts";

export function apply(context: Context, label: string, make: () => readonly Edit[], reorders = false): boolean {
  return attempt(context, () => context.model.apply(make(), { by: "person", label, reorders }));
}

export const clear = (context: Context, label = "clear"): boolean =>
  apply(context, label, () => clearEdits(context.model, context.sheet(), context.cursor.area));

/** What is being typed, into the whole block; it stays open when it was refused. */
export function enterAll(context: Context): boolean {
  const { entry, model, cursor } = context;
  const text = entry.value;
  const { area, spot } = cursor;
  const sheet = context.sheet();
  if (!apply(context, "typing", () => enterAllEdits(model, sheet, area, spot, text))) return false;
  return context.finish(false);
}

export const fillDown = (context: Context): boolean =>
  apply(context, "fill", () => fillEdits(context.model, context.sheet(), context.cursor.area));

export function undo(context: Context): void {
  const label = context.model.undo();
  context.say(label ? context.words.undone(context.words.steps[label] ?? label) : context.words.nothingToUndo);
}

export function redo(context: Context): void {
  const label = context.model.redo();
  context.say(label ? context.words.redone(context.words.steps[label] ?? label) : context.words.nothingToRedo);
}

/** Rows of the selection that are to be seen; those of a whole column are as many as the sheet uses. */
export function selectedRows(context: Context): readonly number[] {
  const { model, cursor } = context;
  const rows = rowsIn(model, context.sheet(), cursor.area);
  return rows.length > 0 ? rows : [cursor.area.top];
}

export function insertRows(context: Context, below: boolean): void {
  const { model } = context;
  const sheet = context.sheet();
  const rows = selectedRows(context);
  const count = rows.length;
  const at = below ? rows.at(-1)! + 1 : rows[0]!;
  apply(context, "insert rows", () => {
    const edits: Edit[] = [{ kind: "insert-rows", sheet, row: at, count }];
    // Under the last row of a table the new rows belong to it.
    const table = model.sheet(sheet)?.tableAt(at - 1, context.cursor.spot.column);
    if (below && table && table.area.bottom === at - 1 && !table.totals)
      edits.push({
        kind: "table-area",
        sheet,
        table: table.name,
        area: { ...table.area, bottom: table.area.bottom + count },
      });
    return edits;
  });
  if (below) context.cursor.go({ row: at, column: context.cursor.spot.column });
}

export function deleteRows(context: Context): void {
  // From below, run by run: rows between them that a filter hides stay.
  const edits: Edit[] = [];
  let end: number | undefined;
  const rows = selectedRows(context);
  for (let i = rows.length - 1; i >= 0; i--) {
    const row = rows[i]!;
    end ??= row;
    if (rows[i - 1] === row - 1) continue;
    edits.push({ kind: "delete-rows", sheet: context.sheet(), row, count: end - row + 1 });
    end = undefined;
  }
  apply(context, "delete rows", () => edits);
}

export function sort(context: Context, descending: boolean): void {
  const { model } = context;
  const sheet = context.sheet();
  const { row, column } = context.cursor.spot;
  const region = regionAt(model, sheet, row, column);
  if (!region) {
    context.say(context.words.noTable, "refused");
    return;
  }
  apply(context, "sort", () => sortEdits(model, sheet, region, column, descending), true);
}

export function fitWidth(context: Context, columns: readonly number[]): void {
  const { model, view } = context;
  const sheet = model.sheet(context.sheet())!;
  apply(context, "width", () =>
    columns.map((column) => ({
      kind: "width",
      sheet: sheet.name,
      column,
      width: fittingWidth(model, sheet, column, view.measure),
    })),
  );
}

const columnsOf = (context: Context): number[] => {
  const { left, right } = context.cursor.area;
  const end = Math.min(right, context.view.layout.columns.count - 1);
  return Array.from({ length: end - left + 1 }, (_, i) => left + i);
};

export const fitSelected = (context: Context): void => fitWidth(context, columnsOf(context));

export function hideColumns(context: Context): void {
  const columns = columnsOf(context);
  apply(context, "hide columns", () => [{ kind: "hide-columns", sheet: context.sheet(), columns, hidden: true }]);
}

export function showColumns(context: Context): void {
  const columns = [...context.model.sheet(context.sheet())!.hiddenColumns];
  apply(context, "show columns", () => [{ kind: "hide-columns", sheet: context.sheet(), columns, hidden: false }]);
}

/** The table around the cell first, then everything. */
export function selectAll(context: Context): void {
  const { model, cursor } = context;
  const region = regionAt(model, context.sheet(), cursor.spot.row, cursor.spot.column);
  const { area } = cursor;
  const bottom = region ? (region.table?.area.bottom ?? region.bottom) : 0;
  const already =
    !region ||
    (area.top <= region.top && area.bottom >= bottom && area.left <= region.left && area.right >= region.right);
  cursor.choose(
    already
      ? { top: 0, left: 0, bottom: LAST_ROW, right: LAST_COLUMN }
      : { top: region.top, left: region.left, bottom, right: region.right },
    cursor.spot,
  );
}

export function goTo(context: Context, text: string): boolean {
  const { model, cursor, words } = context;
  const at = text.lastIndexOf("!");
  const sheetName = at < 0 ? undefined : text.slice(0, at).replace(/^'|'$/g, "").replaceAll("''", "'");
  const sheet = sheetName === undefined ? model.sheet(context.sheet()) : model.sheet(sheetName);
  const area = readArea(text.slice(at + 1));
  if (!area || sheet?.state !== "visible") {
    context.say(words.addressWrong(text), "refused");
    return false;
  }
  if (sheet.name !== context.sheet()) model.setActive(sheet.name);
  if (area.top === area.bottom && area.left === area.right) cursor.go({ row: area.top, column: area.left });
  else {
    cursor.choose(area);
    context.view.reveal(area.top, area.left);
  }
  return true;
}

export function nextSheet(context: Context, by: 1 | -1): void {
  const visible = context.model.sheets().filter((one) => one.state === "visible");
  const at = visible.findIndex((one) => one.name === context.sheet());
  const next = visible[at + by];
  if (next) context.model.setActive(next.name);
}

/** More cells are not added up while a block is stretched. */
const MOST_ADDED = 200_000;

/** The block as a person reads it: its size, its numbers and their sum. */
export function describe(context: Context, area: Area): string {
  const { model, words, view } = context;
  const sheet = context.sheet();
  const used = model.used(sheet);
  const right = Math.min(area.right, Math.max(area.left, used.columns - 1));
  const rows = rowsIn(model, sheet, area);
  let [numbers, sum] = [0, 0];
  if (rows.length * (right - area.left + 1) <= MOST_ADDED) {
    for (const row of rows) {
      for (let column = area.left; column <= right; column++) {
        const value = model.cell(sheet, row, column)?.value;
        if (typeof value !== "number") continue;
        numbers += 1;
        sum += value;
      }
    }
  }
  const columns = Math.min(area.right, view.layout.columns.count - 1) - area.left + 1;
  // A sum of decimals carries the dust of binary numbers; twelve digits are what was typed.
  const total = displayText(Number(sum.toPrecision(12)), undefined, model.locale);
  return words.selected(areaName(area), rows.length, columns, numbers, total);
}
