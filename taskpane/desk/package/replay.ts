/** Edits, in the order they were made, brought to how things stand in the end: where each row and each cell is then. Pure. */

import { inArea } from "../model/address.ts";
import { type Area, type Choices, type Edit, FileError, LAST_COLUMN, LAST_ROW, type Value } from "../model/types.ts";
import { type Move, movedFormula, type RowMove } from "./references.ts";
import { rowsFault, tableFault } from "./refusal.ts";
import { movedArea, movedRow, Rows } from "./rows.ts";
import { sheetNameFault } from "./sheet-names.ts";
import type { TablePart } from "./tables-read.ts";
import type { SheetEntry } from "./workbook-read.ts";

type CellEdit = Extract<Edit, { kind: "cell" }>;
export type Look = NonNullable<CellEdit["look"]>;

/** What a cell is to hold in the end. */
export interface NewCell {
  readonly value: Value;
  /** As a person reads it, with references as they are in the end. */
  readonly formula?: string;
  readonly array?: { readonly area: Area; readonly dynamic: boolean };
  readonly numberFormat?: string;
  readonly look?: Look;
}

export interface TablePlan {
  readonly file?: TablePart;
  readonly name: string;
  /** As it is now; undefined when its rows are gone. */
  area: Area | undefined;
  /** Headings as they are now. */
  readonly columns: string[];
}

export interface SheetPlan {
  /** Absent for a sheet that is new. */
  readonly entry?: SheetEntry;
  /** Name in the end. */
  name: string;
  readonly moves: RowMove[];
  readonly rows: Rows;
  readonly cells: Map<number, Map<number, NewCell>>;
  readonly widths: Map<number, number>;
  readonly hidden: Map<number, boolean>;
  readonly choices: Choices[];
  readonly tables: TablePlan[];
  readonly frozen?: { readonly rows: number; readonly columns: number };
  /** For a new sheet that is to be printed: rows of headings on each page. */
  readonly page?: { readonly headings: number };
}

export interface Plan {
  readonly sheets: SheetPlan[];
  /** Rows and names that moved, of all sheets, in order. */
  readonly moves: readonly Move[];
  /** What is kept beside the cells, as it is at the end. */
  readonly settings: ReadonlyMap<string, string | null>;
}

const bad = (message: string): FileError => new FileError("unsupported", message);

export function replay(
  edits: readonly Edit[],
  entries: readonly SheetEntry[],
  tablesOf: (entry: SheetEntry) => TablePart[],
): Plan {
  const fresh = (name: string, entry?: SheetEntry): SheetPlan => ({
    name,
    ...(entry ? { entry } : {}),
    moves: [],
    rows: new Rows(),
    cells: new Map(),
    widths: new Map(),
    hidden: new Map(),
    choices: [],
    tables:
      entry?.type === "worksheet"
        ? tablesOf(entry).map((file) => ({ file, name: file.name, area: file.area, columns: [...file.columns] }))
        : [],
  });
  const sheets = entries.map((entry) => fresh(entry.name, entry));
  const moves: Move[] = [];
  const find = (name: string): SheetPlan => {
    const found = sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
    if (!found) throw bad(`There is no sheet "${name}" in this workbook.`);
    if (found.entry && found.entry.type !== "worksheet") throw bad(`The sheet "${name}" has no cells.`);
    return found;
  };
  const pendingCells: { sheet: SheetPlan; edit: CellEdit; home: string; since: number; sinceAll: number }[] = [];
  const pendingChoices: { sheet: SheetPlan; choices: Choices; home: string; since: number; sinceAll: number }[] = [];

  const settings = new Map<string, string | null>();

  for (const edit of edits) {
    if (edit.kind === "setting") {
      settings.set(edit.name, edit.value);
      continue;
    }
    if (edit.kind === "add-sheet") {
      const fault = sheetNameFault(
        edit.sheet,
        sheets.map((sheet) => sheet.name),
      );
      if (fault) throw bad(fault);
      const after = edit.after === undefined ? sheets.at(-1) : find(edit.after);
      const made: SheetPlan = {
        ...fresh(edit.sheet),
        ...(edit.frozen ? { frozen: edit.frozen } : {}),
        ...(edit.page ? { page: edit.page } : {}),
        tables: edit.table ? [{ name: edit.table.name, area: edit.table.area, columns: [] }] : [],
      };
      sheets.splice(after ? sheets.indexOf(after) + 1 : sheets.length, 0, made);
      continue;
    }
    const sheet = find(edit.sheet);
    switch (edit.kind) {
      case "cell":
        if (!inSheet(edit.row, edit.column))
          throw bad(`There is no cell in row ${edit.row + 1}, column ${edit.column + 1}.`);
        renamedHeading(sheet, edit, moves);
        pendingCells.push({ sheet, edit, home: sheet.name, since: sheet.moves.length, sinceAll: moves.length });
        break;
      case "insert-rows":
      case "delete-rows": {
        if (!(edit.count >= 1) || !inSheet(edit.row, 0)) throw bad("Rows to insert or delete must be on the sheet.");
        const kind = edit.kind === "insert-rows" ? "insert" : "delete";
        const live = sheet.tables.flatMap(({ area, name, file }) =>
          area
            ? [
                {
                  name,
                  area,
                  totals: file?.totals ?? false,
                  ...(file?.headings === false ? { headings: false as const } : {}),
                },
              ]
            : [],
        );
        const fault = rowsFault(live, kind, edit.row, edit.count);
        if (fault) throw bad(fault);
        const move: RowMove = { kind, sheet: sheet.name, row: edit.row, count: edit.count };
        if (kind === "insert") {
          const first = sheet.tables.some(
            ({ area, file }) => area && file?.headings !== false && edit.row === area.top + 1,
          );
          sheet.rows.insert(edit.row, edit.count, first ? edit.row : edit.row - 1);
        } else sheet.rows.delete(edit.row, edit.count);
        for (const table of sheet.tables) table.area = table.area && movedArea(table.area, [move]);
        sheet.moves.push(move);
        moves.push(move);
        break;
      }
      case "table-area": {
        const table = sheet.tables.find((t) => t.name.toLowerCase() === edit.table.toLowerCase());
        const live = sheet.tables.flatMap((t) =>
          t.area ? [{ name: t.name, area: t.area, totals: t.file?.totals ?? false }] : [],
        );
        const fault = tableFault(live, [], edit.table, edit.area);
        if (fault || !table) throw bad(fault ?? `There is no table "${edit.table}" on the sheet "${edit.sheet}".`);
        table.area = edit.area;
        break;
      }
      case "width":
        sheet.widths.set(edit.column, edit.width);
        break;
      case "hide-columns":
        for (const column of edit.columns) sheet.hidden.set(column, edit.hidden);
        break;
      case "choices":
        pendingChoices.push({
          sheet,
          choices: edit.choices,
          home: sheet.name,
          since: sheet.moves.length,
          sinceAll: moves.length,
        });
        break;
      case "rename-sheet": {
        const fault = sheetNameFault(
          edit.to,
          sheets.filter((s) => s !== sheet).map((s) => s.name),
        );
        if (fault) throw bad(fault);
        moves.push({ kind: "rename", sheet: sheet.name, to: edit.to });
        sheet.name = edit.to;
        break;
      }
    }
  }

  for (const { sheet, edit, home, since, sinceAll } of pendingCells) {
    const own = sheet.moves.slice(since);
    const row = movedRow(edit.row, own);
    if (row === undefined) continue;
    const formula =
      edit.formula === undefined
        ? undefined
        : movedFormula(edit.formula.replace(/^\s*=/, ""), home, moves.slice(sinceAll));
    const area = edit.array && movedArea(edit.array.area, own);
    const line = sheet.cells.get(row) ?? new Map<number, NewCell>();
    sheet.cells.set(row, line);
    const before = line.get(edit.column);
    const numberFormat = edit.numberFormat ?? before?.numberFormat;
    const look = edit.look ?? before?.look;
    line.set(edit.column, {
      value: edit.value,
      ...(formula ? { formula } : {}),
      ...(formula && area ? { array: { area, dynamic: edit.array!.dynamic } } : {}),
      ...(numberFormat === undefined ? {} : { numberFormat }),
      ...(look === undefined ? {} : { look }),
    });
  }
  for (const { sheet, choices, home, since, sinceAll } of pendingChoices) {
    const own = sheet.moves.slice(since);
    const areas = choices.areas.map((area) => movedArea(area, own)).filter((area): area is Area => area !== undefined);
    if (areas.length === 0) continue;
    sheet.choices.push({
      ...choices,
      areas,
      ...(choices.source === undefined ? {} : { source: movedFormula(choices.source, home, moves.slice(sinceAll)) }),
    });
  }
  return { sheets, moves, settings };
}

/** A heading of a table that changes is followed by the references that name it. */
function renamedHeading(sheet: SheetPlan, edit: CellEdit, moves: Move[]): void {
  const table = sheet.tables.find(
    ({ area, file }) =>
      file && file.headings !== false && area && inArea(area, edit.row, edit.column) && edit.row === area.top,
  );
  if (!table || edit.value === null || typeof edit.value === "object") return;
  const index = edit.column - table.area!.left;
  const from = table.columns[index];
  const to = String(edit.value);
  if (from === undefined || from === to || to === "") return;
  table.columns[index] = to;
  moves.push({ kind: "column", sheet: sheet.name, table: table.name, from, to });
}

const inSheet = (row: number, column: number): boolean =>
  Number.isInteger(row) &&
  Number.isInteger(column) &&
  row >= 0 &&
  column >= 0 &&
  row <= LAST_ROW &&
  column <= LAST_COLUMN;
