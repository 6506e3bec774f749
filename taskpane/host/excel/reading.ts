/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/**
 * Reading tables and lists: a first sync looks where they are (the top of the sheet and the surroundings of the selected
 * cell, names of tables and sheets), a second reads them, and nothing else of the workbook.
 */
import { isBlank } from "../../../src/table/blank.ts";
import type { Beside, Block, BookRead, CellValue, Host, Score, Table } from "../host.ts";
import { findHeads, findTable, type Head } from "../region.ts";
import { blockOf, listIn, toCells } from "./cells.ts";
import type { SheetNames } from "./names.ts";
import type { Runs } from "./runs.ts";
import { askKept, keptOf } from "./settings.ts";

/** Headings are looked for in so many rows and columns from A1, and in the first rows around the selected cell. */
const [TOP_ROWS, TOP_COLUMNS, REGION_ROWS] = [60, 256, 4];
/** Headings of a block beside the table are looked for in so many columns. */
const BESIDE_COLUMNS = 60;
/** Cells that are read at once; the web version answers no more than 5 MB. */
const CELLS_AT_ONCE = 100_000;

interface Place {
  readonly top: number;
  readonly left: number;
}

type Corner = Pick<Excel.Range, "rowIndex" | "columnIndex" | "values">;

export function reader(
  { read }: Runs,
  names: SheetNames,
): Pick<Host, "read" | "readRows" | "readTable" | "readList" | "select"> {
  /** The table that was seen to be the only one of its sheet. */
  let alone: (Place & { readonly sheet: string }) | undefined;

  const host: ReturnType<typeof reader> = {
    async read(wanted) {
      return read(async (context) => {
        const look = wanted.table && lookAround(context);
        const contents = wanted.lists && lookUp(context);
        const kept = wanted.settings && askKept(context);
        const line = wanted.line && context.workbook.getActiveCell().getEntireRow().getUsedRangeOrNullObject(true);
        if (line) line.load("values");
        await context.sync();
        if (look) names.keep(look.sheet);
        for (const sheet of contents?.sheets.items ?? []) names.keep(sheet);

        const lists = contents && wanted.lists!.map((name) => askList(contents, name));
        let asked = lists?.some((list) => list !== null) ?? false;
        const sync = async () => {
          asked = false;
          await context.sync();
        };
        const found = look && (await tableIn(look, sync, wanted.table!, wanted.beside));
        if (asked) await sync();
        if (found) alone = found.alone ? placeOf(found.table!) : undefined;
        const { alone: _, ...told } = found ?? { alone: false };
        return {
          ...told,
          ...(lists && { lists: lists.map((list) => list && listOf(list)) }),
          ...(kept && { settings: keptOf(kept) }),
          ...(line && { line: line.isNullObject ? [] : toCells(line.values)[0]! }),
        };
      });
    },

    async readRows(table, changed) {
      return read(async (context) => {
        const width = table.headings.length;
        const height = table.rows.length;
        const sheet = context.workbook.worksheets.getActiveWorksheet();
        sheet.load("name");
        const cell = context.workbook.getActiveCell();
        cell.load("rowIndex,columnIndex");
        const head = sheet.getRangeByIndexes(table.top, table.left, 1, width);
        head.load("values");
        const body = sheet.getRangeByIndexes(table.top + 1, table.left, Math.max(1, height), width);
        const line = body.getIntersectionOrNullObject(cell.getEntireRow());
        line.load("values");
        const others = spans(changed.filter((row) => row < height)).map(({ from, count }) => {
          const range = sheet.getRangeByIndexes(table.top + 1 + from, table.left, count, width);
          range.load("values");
          return { from, range };
        });
        await context.sync();
        const now = toCells(head.values)[0]!;
        if (sheet.name !== table.sheet || table.headings.some((heading, c) => heading !== now[c])) return null;
        const at = cell.rowIndex - table.top - 1;
        const inside = at >= -1 && at < height && inColumns(table, cell.columnIndex);
        // Elsewhere on the sheet there may be another table, unless it was seen that there is none.
        if (!inside && JSON.stringify(alone) !== JSON.stringify(placeOf(table))) return null;
        const selected = at >= 0 && at < height ? at : null;
        const rows = new Map<number, CellValue[]>();
        for (const { from, range } of others)
          toCells(range.values).forEach((cells, r) => void rows.set(from + r, cells));
        if (selected !== null && !line.isNullObject) rows.set(selected, toCells(line.values)[0]!);
        return { selected, rows };
      });
    },

    readTable: async (score) => (await host.read({ table: score })).table!,
    readList: async (name) => (await host.read({ lists: [name] })).lists![0]!,

    async select(place) {
      return read(async (context) => {
        const sheet = context.workbook.worksheets.getItem(place.sheet);
        sheet.activate();
        sheet.getRangeByIndexes(place.row, place.column, 1, 1).select();
        await context.sync();
      });
    },
  };
  return host;
}

const placeOf = ({ sheet, top, left }: Block) => ({ sheet, top, left });
const inColumns = ({ left, headings }: Block, column: number) => column >= left && column < left + headings.length;

/** Numbers in a row, gathered. */
function spans(rows: readonly number[]): { from: number; count: number }[] {
  const made: { from: number; count: number }[] = [];
  for (const row of [...new Set(rows)].sort((a, b) => a - b)) {
    const last = made.at(-1);
    if (last && last.from + last.count === row) last.count++;
    else made.push({ from: row, count: 1 });
  }
  return made;
}

/** The table of the sheet, and the block beside it. */
async function tableIn(
  look: Look,
  sync: () => Promise<void>,
  score: Score,
  besideScore: Score | undefined,
): Promise<BookRead & { readonly alone: boolean }> {
  const { sheet, used, top, region, cell } = look;
  const none = { sheet: sheet.name, table: null, ...(besideScore && { beside: null }), alone: false };
  if (used.isNullObject || top.isNullObject) return { ...none, whole: used.isNullObject };
  const end = { row: used.rowIndex + used.rowCount - 1, column: used.columnIndex + used.columnCount - 1 };
  const whole = end.row < TOP_ROWS && end.column < TOP_COLUMNS;
  const heads = headsOf(whole ? [top] : [top, region], score);
  if (heads.length === 0) return { ...none, whole };

  const only = heads.length === 1 ? heads[0]! : undefined;
  // One row of headings: its columns down to the end of the sheet. Several: all that they may reach.
  const corner = whole
    ? { top: top.rowIndex, left: top.columnIndex }
    : { top: Math.min(...heads.map((head) => head.row)), left: only?.left ?? used.columnIndex };
  const right = only?.right ?? end.column;
  const tables = look.tables.items.map((table) => {
    const range = table.getRange();
    range.load("rowIndex,columnIndex,rowCount,columnCount");
    return { table, range };
  });
  let beside = besideScore && only && askBeside(look, { top: only.row, left: only.right + 2 }, end);
  let grid: CellValue[][];
  if (whole) {
    grid = toCells(top.values);
    if (tables.length > 0 || beside) await sync();
  } else grid = await valuesOf(sheet, sync, corner, end.row - corner.top + 1, right - corner.left + 1);

  const selection = { row: cell.rowIndex - corner.top, column: cell.columnIndex - corner.left };
  const found = findTable(sheet.name, grid, selection, score);
  if (found === null) return { ...none, whole };
  const table = asTable(found, corner, tables);
  const told = { sheet: sheet.name, table, whole, alone: whole && only !== undefined };
  if (besideScore === undefined) return told;
  if (only === undefined) {
    beside = askBeside(look, { top: table.top, left: table.left + table.headings.length + 1 }, end);
    if (beside) await sync();
  }
  return { ...told, beside: beside ? besideOf(sheet.name, beside, besideScore) : null };
}

interface Look {
  readonly sheet: Excel.Worksheet;
  readonly cell: Excel.Range;
  /** Where the sheet ends. */
  readonly used: Excel.Range;
  readonly top: Excel.Range;
  readonly region: Excel.Range;
  readonly tables: Excel.TableCollection;
}

/** What the first sync is asked about the active sheet. */
function lookAround(context: Excel.RequestContext): Look {
  const sheet = context.workbook.worksheets.getActiveWorksheet();
  sheet.load("id,name");
  const { tables } = sheet;
  tables.load("items/name,items/showTotals");
  const cell = context.workbook.getActiveCell();
  cell.load("rowIndex,columnIndex");
  const used = sheet.getUsedRangeOrNullObject(true);
  used.load("rowIndex,columnIndex,rowCount,columnCount");
  const top = sheet.getRangeByIndexes(0, 0, TOP_ROWS, TOP_COLUMNS).getUsedRangeOrNullObject(true);
  top.load("values,rowIndex,columnIndex");
  const region = cell
    .getSurroundingRegion()
    .getRow(0)
    .getResizedRange(REGION_ROWS - 1, 0);
  region.load("values,rowIndex,columnIndex");
  return { sheet, cell, used, top, region, tables };
}

/** Rows of headings in what was looked at, each once, by their places on the sheet. */
function headsOf(looked: readonly Corner[], score: Score): Head[] {
  const heads = new Map<string, Head>();
  for (const { values, rowIndex, columnIndex } of looked)
    for (const head of findHeads(toCells(values), score)) {
      const there = {
        ...head,
        row: head.row + rowIndex,
        left: head.left + columnIndex,
        right: head.right + columnIndex,
      };
      const key = `${there.row},${there.left}`;
      if (!heads.has(key)) heads.set(key, there);
    }
  return [...heads.values()];
}

/** The cells of a rectangle, in as few syncs as their number allows. */
async function valuesOf(
  sheet: Excel.Worksheet,
  sync: () => Promise<void>,
  { top, left }: Place,
  rows: number,
  columns: number,
): Promise<CellValue[][]> {
  const step = Math.max(1, Math.floor(CELLS_AT_ONCE / columns));
  const cells: CellValue[][] = [];
  for (let from = 0; from < rows; from += step) {
    const range = sheet.getRangeByIndexes(top + from, left, Math.min(step, rows - from), columns);
    range.load("values");
    await sync();
    cells.push(...toCells(range.values));
  }
  return cells;
}

/** A found table by its place on the sheet; a table of Excel's own is referred to as one, without its totals. */
function asTable(
  found: Table,
  corner: Place,
  tables: readonly { readonly table: Excel.Table; readonly range: Excel.Range }[],
): Table {
  const top = found.top + corner.top;
  const left = found.left + corner.left;
  const width = found.headings.length;
  const own = tables.find(
    ({ range }) => range.rowIndex === top && range.columnIndex === left && range.columnCount === width,
  );
  const data = own === undefined ? 0 : own.range.rowCount - 1 - (own.table.showTotals ? 1 : 0);
  const rows = own?.table.showTotals ? found.rows.slice(0, data) : found.rows;
  const block = blockOf(found.sheet, top, left, [[...found.headings], ...rows.map((row) => [...row])]);
  const { selected } = found;
  return {
    ...block,
    ...(own !== undefined && rows.length <= data && { reference: structured(own.table) }),
    selected: selected !== null && selected < rows.length ? selected : null,
  };
}

/** A table as formulas refer to it: they follow when it grows. */
const structured = ({ name, showTotals }: Excel.Table): string =>
  showTotals ? `${name}[[#Headers],[#Data]]` : `${name}[#All]`;

interface AskedBeside extends Place {
  readonly head: Excel.Range;
  readonly anchor: Excel.Range;
  readonly rows: Excel.Range;
}

/** Asks for the headings of what stands at a place, what its first cell holds, and how far down it goes. */
function askBeside(
  { sheet }: Look,
  { top, left }: Place,
  end: { readonly row: number; readonly column: number },
): AskedBeside | undefined {
  const columns = Math.min(end.column - left + 1, BESIDE_COLUMNS);
  if (columns < 1) return undefined;
  const head = sheet.getRangeByIndexes(top, left, 1, columns);
  head.load("values");
  const anchor = sheet.getRangeByIndexes(top, left, 1, 1);
  anchor.load("formulas");
  const rows = sheet.getRangeByIndexes(top, left, end.row - top + 1, 2);
  rows.load("values");
  return { top, left, head, anchor, rows };
}

function besideOf(sheet: string, { top, left, head, anchor, rows }: AskedBeside, score: Score): Beside | null {
  const line = toCells(head.values)[0]!;
  const blank = line.findIndex(isBlank);
  const headings = blank < 0 ? line : line.slice(0, blank);
  const formula = String(anchor.formulas[0]![0]);
  // A formula is told by what it is, also where it shows an error and no headings.
  if (score(headings) === 0 && !formula.startsWith("=")) return null;
  const known = toCells(rows.values).slice(1);
  let count = 0;
  for (let r = 0; r < known.length && r - count < 2; r++) if (known[r]!.some((cell) => !isBlank(cell))) count = r + 1;
  const body = known.slice(0, count).map((cells) => headings.map((_, c) => cells[c] ?? null));
  return { ...blockOf(sheet, top, left, [headings, ...body]), formula: formula.startsWith("=") ? formula : "" };
}

interface Contents {
  readonly tables: Excel.TableCollection;
  readonly sheets: Excel.WorksheetCollection;
}

/** What the first sync is asked about the workbook: names alone. */
function lookUp({ workbook }: Excel.RequestContext): Contents {
  const { tables, worksheets: sheets } = workbook;
  tables.load("items/name,items/showTotals");
  sheets.load("items/id,items/name");
  return { tables, sheets };
}

interface AskedList {
  readonly table: Excel.Table | undefined;
  readonly home: Excel.Worksheet;
  readonly range: Excel.Range;
}

/** Asks for the table of that name, else for what is filled of the sheet of that name; null without either. */
function askList({ tables, sheets }: Contents, name: string): AskedList | null {
  const called = (one: { readonly name: string }) => one.name.toLowerCase() === name.trim().toLowerCase();
  const table = tables.items.find(called);
  const sheet = sheets.items.find(called);
  if (table === undefined && sheet === undefined) return null;
  const home = table?.worksheet ?? sheet!;
  home.load("name");
  const range = table?.getRange() ?? sheet!.getUsedRangeOrNullObject(true);
  range.load("values,rowIndex,columnIndex");
  return { table, home, range };
}

function listOf({ table, home, range }: AskedList): Block | null {
  if (range.isNullObject) return null;
  const cells = toCells(range.values);
  if (table?.showTotals) cells.pop();
  const list = listIn(home.name, range.rowIndex, range.columnIndex, cells);
  if (list === null || table === undefined) return list;
  const isWhole = list.top === range.rowIndex && list.headings.length === range.values[0]!.length;
  return isWhole ? { ...list, reference: structured(table) } : list;
}
