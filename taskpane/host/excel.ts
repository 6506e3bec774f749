/// <reference path="../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/**
 * The workbook in Excel. The only file that names Office: everything asynchronous, batched and versioned about it
 * stays in here. Each action makes one read sync and one write sync (a list: two reads, as it may be missing).
 */
import {
  type Block,
  type CellValue,
  type Change,
  formatAt,
  type Host,
  HostError,
  type NewSheet,
  type Place,
  type Table,
  type Written,
} from "./host.ts";
import { reference, spokenAddress } from "./reference.ts";
import { findTable, growths } from "./region.ts";

/** Requirement sets without which nothing works; the manifest declares the same. */
export const NEEDS: Readonly<Record<string, string>> = {
  SharedRuntime: "1.1",
  CustomFunctionsRuntime: "1.3",
  ExcelApi: "1.9",
};

/** Members used beyond NEEDS; each use is guarded. */
const ONE_UNDO_GROUP = "1.20";
/** Growing a table this way fills its calculated columns; adding rows with values leaves them blank. */
const TABLE_RESIZE = "1.13";

const supports = (version: string): boolean => Office.context.requirements.isSetSupported("ExcelApi", version);

/** Cells that one request should carry at most; the web version refuses more than 5 MB. */
const CELLS_PER_SYNC = 100_000;

const SENTENCES: Readonly<Record<string, readonly [HostError["code"], string]>> = {
  AccessDenied: [
    "protected",
    "Excel does not allow writing here. Unprotect the sheet or open the workbook for editing.",
  ],
  ItemNotFound: ["gone", "The table is no longer where it was. Select a cell in it and try again."],
  InvalidReference: ["gone", "The table is no longer where it was. Select a cell in it and try again."],
  ItemAlreadyExists: [
    "occupied",
    "There is a sheet or table of that name already. Rename or delete it, then try again.",
  ],
  InvalidOperationInCellEditMode: ["editing", "A cell is being edited. Press Enter or Esc, then try again."],
  NotImplemented: ["unsupported", "This version of Excel cannot do that. Update it, or use the desk in a browser."],
  UnsupportedOperation: [
    "unsupported",
    "This version of Excel cannot do that. Update it, or use the desk in a browser.",
  ],
  ApiNotFound: ["unsupported", "This version of Excel cannot do that. Update it, or use the desk in a browser."],
  ApiNotAvailable: ["unsupported", "This version of Excel cannot do that. Update it, or use the desk in a browser."],
  RequestPayloadSizeLimitExceeded: ["failed", "The table is too big for one step. Split it over two sheets."],
  ResponsePayloadSizeLimitExceeded: [
    "failed",
    "The sheet is too big to be read in one step. Move the table to a sheet of its own.",
  ],
  ConflictException: ["failed", "Somebody else changed the workbook at the same moment. Try again."],
  Conflict: ["failed", "Somebody else changed the workbook at the same moment. Try again."],
  RequestAborted: ["failed", "Excel stopped the step. Try again."],
  ServiceNotAvailable: ["failed", "Excel does not answer. Check the connection and try again."],
  Timeout: ["failed", "Excel took too long. Try again with fewer open workbooks."],
  InactiveWorkbook: ["failed", "Another workbook is in front. Click into this one and try again."],
  FilteredRangeConflict: ["failed", "A filter hides rows of the table. Clear the filter and try again."],
  MergedRangeConflict: ["failed", "Merged cells are in the way. Unmerge them and try again."],
};

/** What Excel reports, as a sentence of ours. */
export function toHostError(thrown: unknown): HostError {
  if (thrown instanceof HostError) return thrown;
  const code = typeof thrown === "object" && thrown !== null && "code" in thrown ? String(thrown.code) : "";
  const known = SENTENCES[code];
  if (known) return new HostError(...known);
  return new HostError(
    "failed",
    `Excel could not do it${code === "" ? "" : ` (${code})`}. Try again; if it happens again, save the workbook and reopen it.`,
  );
}

const protectedSheet = (name: string) =>
  new HostError(
    "protected",
    `The sheet "${name}" is protected; nothing was written. Unprotect it (Review, Unprotect Sheet) and try again.`,
  );

/** "" is how Excel says blank. */
const toCell = (value: unknown): CellValue =>
  value === "" || value === null || value === undefined
    ? null
    : typeof value === "string" || typeof value === "number" || typeof value === "boolean"
      ? value
      : String(value);
const toCells = (values: unknown[][]): CellValue[][] => values.map((row) => row.map(toCell));
const isBlank = (cell: CellValue) => cell === null || (typeof cell === "string" && cell.trim() === "");

/**
 * What to hand to `formulas` so that the cell holds exactly `value`. Text that Excel would take for something else
 * (a formula, a date as in "1/2", a number, TRUE) gets the apostrophe that marks text; the apostrophe is not part of it.
 */
function toFormula(value: Written): string | number | boolean {
  if (value === null) return "";
  if (typeof value === "object") return value.formula;
  if (typeof value !== "string" || value === "") return value;
  const harmless = /^[A-Za-z\u00c0-\u024f][^0-9]*$/.test(value) && !/^(?:true|false)$/i.test(value);
  return harmless ? value : `'${value}`;
}

/** Changes gathered into rectangles: runs down a column, then equal runs of neighbouring columns side by side. */
export function rectangles(
  changes: readonly Change[],
): { row: number; column: number; cells: Written[][]; formats: (string | undefined)[][] }[] {
  const byColumn = new Map<number, Map<number, Change>>();
  for (const change of changes) {
    const column = byColumn.get(change.column) ?? new Map<number, Change>();
    column.set(change.row, change);
    byColumn.set(change.column, column);
  }
  const made: { row: number; column: number; cells: Written[][]; formats: (string | undefined)[][] }[] = [];
  for (const column of [...byColumn.keys()].sort((a, b) => a - b)) {
    const rows = [...byColumn.get(column)!.values()].sort((a, b) => a.row - b.row);
    for (let from = 0; from < rows.length; ) {
      let to = from + 1;
      while (to < rows.length && rows[to]!.row === rows[to - 1]!.row + 1) to++;
      const run = rows.slice(from, to);
      const beside = made.find(
        (one) =>
          one.row === run[0]!.row && one.cells.length === run.length && one.column + one.cells[0]!.length === column,
      );
      if (beside) {
        run.forEach((change, i) => {
          beside.cells[i]!.push(change.value);
          beside.formats[i]!.push(change.format);
        });
      } else {
        made.push({
          row: run[0]!.row,
          column,
          cells: run.map((change) => [change.value]),
          formats: run.map((change) => [change.format]),
        });
      }
      from = to;
    }
  }
  return made;
}

function blockOf(sheet: string, top: number, left: number, cells: CellValue[][]): Block {
  const [headings = [], ...rows] = cells;
  return {
    sheet,
    top,
    left,
    headings,
    rows,
    reference: reference(sheet, top, left, cells.length, headings.length),
    address: spokenAddress(sheet, top, left, cells.length, headings.length),
  };
}

/** The list on a sheet: from the first row with two headings, as far right as they go, down to the last row that holds something. */
function listIn(sheet: string, top: number, left: number, cells: CellValue[][]): Block | null {
  const head = cells.findIndex((row) => row.filter((cell) => typeof cell === "string" && !isBlank(cell)).length >= 2);
  if (head < 0) return null;
  const from = cells[head]!.findIndex((cell) => !isBlank(cell));
  let to = from;
  while (to + 1 < cells[head]!.length && !isBlank(cells[head]![to + 1]!)) to++;
  let end = head;
  cells.forEach((row, r) => {
    if (r > head && row.slice(from, to + 1).some((cell) => !isBlank(cell))) end = r;
  });
  return blockOf(
    sheet,
    top + head,
    left + from,
    cells.slice(head, end + 1).map((row) => row.slice(from, to + 1)),
  );
}

/** Waits until Office is there; answers whether this is Excel with what we need. */
export async function excelReady(): Promise<boolean> {
  const { host } = await Office.onReady();
  return (
    host === Office.HostType.Excel &&
    Object.entries(NEEDS).every(([set, version]) => Office.context.requirements.isSetSupported(set, version))
  );
}

/** Dark background in the Office theme, where the host says so. */
export function officeIsDark(): boolean {
  const background = Office.context.officeTheme?.bodyBackgroundColor ?? "";
  const [, r, g, b] = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})/i.exec(background) ?? [];
  if (r === undefined || g === undefined || b === undefined) return false;
  return 0.2126 * Number.parseInt(r, 16) + 0.7152 * Number.parseInt(g, 16) + 0.0722 * Number.parseInt(b, 16) < 110;
}

export function excelHost(): Host {
  /** Own writes under way, and the time until which events still belong to them. */
  let writing = 0;
  let quietUntil = 0;
  const own = () => writing > 0 || Date.now() < quietUntil;

  async function read<T>(batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
    try {
      return await Excel.run({ delayForCellEdit: true }, batch);
    } catch (thrown) {
      throw toHostError(thrown);
    }
  }

  async function write<T>(batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
    writing++;
    const options: Excel.RunOptions & { mergeUndoGroup?: boolean } = { delayForCellEdit: true };
    if (supports(ONE_UNDO_GROUP)) options.mergeUndoGroup = true;
    try {
      return await Excel.run(options, batch);
    } catch (thrown) {
      throw toHostError(thrown);
    } finally {
      writing--;
      quietUntil = Date.now() + 400;
    }
  }

  /** Holds calculation and screen until the sync that ends the fill. */
  function hold(context: Excel.RequestContext): void {
    context.application.suspendApiCalculationUntilNextSync();
    context.application.suspendScreenUpdatingUntilNextSync();
  }

  /** A sheet about to be written, with its protection to be loaded; `free` is a rectangle that must be empty. */
  function target(context: Excel.RequestContext, name: string): Excel.Worksheet {
    const sheet = context.workbook.worksheets.getItem(name);
    sheet.load("name");
    sheet.protection.load("protected");
    return sheet;
  }

  const refuseProtected = (sheet: Excel.Worksheet): void => {
    if (sheet.protection.protected) throw protectedSheet(sheet.name);
  };

  function refuseOccupied(sheet: string, place: Place, range: { readonly values: any[][] }): void {
    const cells = toCells(range.values);
    const row = cells.findIndex((line) => line.some((cell) => cell !== null));
    if (row < 0) return;
    const column = cells[row]!.findIndex((cell) => cell !== null);
    throw new HostError(
      "occupied",
      `Cell ${spokenAddress(sheet, place.row + row, place.column + column, 1, 1).split(":")[0]} is in the way; nothing was written. Clear it or move it, then try again.`,
    );
  }

  function put(
    sheet: Excel.Worksheet,
    top: number,
    left: number,
    cells: readonly (readonly Written[])[],
    formats?: readonly (readonly (string | undefined)[])[],
  ): void {
    const range = sheet.getRangeByIndexes(top, left, cells.length, cells[0]!.length);
    // The format first: a cell formatted as text would keep a formula as text.
    if (formats?.every((row) => row.every((format) => format !== undefined))) {
      range.numberFormat = formats.map((row) => row.map((format) => format!));
    } else if (formats) {
      for (let c = 0; c < cells[0]!.length; c++) {
        if (formats.every((row) => row[c] === undefined)) continue;
        for (let r = 0; r < cells.length; ) {
          let end = r + 1;
          while (end < cells.length && (formats[end]![c] === undefined) === (formats[r]![c] === undefined)) end++;
          if (formats[r]![c] !== undefined) {
            sheet.getRangeByIndexes(top + r, left + c, end - r, 1).numberFormat = formats
              .slice(r, end)
              .map((row) => [row[c]!]);
          }
          r = end;
        }
      }
    }
    range.formulas = cells.map((row) => row.map(toFormula));
  }

  /** Chart and page of a new sheet. What is refused here, as without a printer, is left out: the numbers stand. */
  async function dress(
    context: Excel.RequestContext,
    made: Excel.Worksheet,
    { headings, chart, page }: NewSheet,
    height: number,
  ): Promise<void> {
    if (!page && chart === undefined) return;
    try {
      if (chart !== undefined) {
        const cells = (column: number) => made.getRangeByIndexes(chart.from + 1, column, chart.count, 1);
        const bars = made.charts.add("BarClustered", cells(chart.values), "Columns");
        bars.title.text = chart.title;
        bars.legend.visible = false;
        bars.series.getItemAt(0).setXAxisValues(cells(chart.names));
        // Bars begin at the bottom; the list begins at the top.
        bars.axes.categoryAxis.reversePlotOrder = true;
        const left = headings.length + 1;
        const tall = Math.max(12, 2 * chart.count + 4);
        bars.setPosition(made.getRangeByIndexes(1, left, 1, 1), made.getRangeByIndexes(tall, left + 8, 1, 1));
      }
      if (page) {
        made.pageLayout.setPrintArea(made.getRangeByIndexes(0, 0, height + 1, headings.length));
        made.pageLayout.setPrintTitleRows("$1:$1");
        made.pageLayout.zoom = { horizontalFitToPages: 1 };
      }
      await context.sync();
    } catch (thrown) {
      console.warn(thrown);
    }
  }

  function refuseHuge(cells: number): void {
    if (cells > CELLS_PER_SYNC)
      throw new HostError(
        "failed",
        `That is ${cells} cells, more than fit in one step (${CELLS_PER_SYNC}). Split the table over two sheets.`,
      );
  }

  return {
    kind: "excel",

    async readTable(score) {
      return read(async (context) => {
        const sheet = context.workbook.worksheets.getActiveWorksheet();
        sheet.load("name");
        const cell = context.workbook.getActiveCell();
        cell.load("rowIndex,columnIndex");
        const used = sheet.getUsedRangeOrNullObject(true);
        used.load("values,rowIndex,columnIndex");
        await context.sync();
        if (used.isNullObject) return null;
        // The search reads from A1: the cells, with what is blank above and left of them cut off again afterwards.
        const grid = toCells(used.values);
        const top = used.rowIndex;
        const left = used.columnIndex;
        const at = { row: cell.rowIndex - top, column: cell.columnIndex - left };
        const found = findTable(sheet.name, grid, at, score);
        if (found === null) return null;
        const moved = blockOf(sheet.name, found.top + top, found.left + left, [
          [...found.headings],
          ...found.rows.map((row) => [...row]),
        ]);
        return { ...moved, selected: found.selected } satisfies Table;
      });
    },

    async readList(name) {
      return read(async (context) => {
        const table = context.workbook.tables.getItemOrNullObject(name);
        table.load("name");
        const sheet = context.workbook.worksheets.getItemOrNullObject(name);
        sheet.load("name");
        await context.sync();
        if (table.isNullObject && sheet.isNullObject) return null;
        const home = table.isNullObject ? sheet : table.worksheet;
        const range = table.isNullObject ? sheet.getUsedRangeOrNullObject(true) : table.getRange();
        home.load("name");
        range.load("values,rowIndex,columnIndex");
        await context.sync();
        if (range.isNullObject) return null;
        const list = listIn(home.name, range.rowIndex, range.columnIndex, toCells(range.values));
        // A table is referred to as one, so that formulas follow when it grows.
        const isWhole =
          list !== null && list.top === range.rowIndex && list.headings.length === range.values[0]!.length;
        return list !== null && isWhole && !table.isNullObject ? { ...list, reference: `${table.name}[#All]` } : list;
      });
    },

    async addSheet(sheet: NewSheet, activate = false) {
      return write(async (context) => {
        const there = context.workbook.worksheets.getItemOrNullObject(sheet.name);
        there.load("name");
        const namesake = context.workbook.tables.getItemOrNullObject(sheet.name);
        namesake.load("name");
        context.workbook.protection.load("protected");
        await context.sync();
        if (!there.isNullObject)
          throw new HostError(
            "occupied",
            `There is a sheet "${sheet.name}" already. Rename or delete it, then try again.`,
          );
        if (context.workbook.protection.protected)
          throw new HostError(
            "protected",
            "The workbook's structure is protected; no sheet was added. Unprotect it (Review, Protect Workbook) and try again.",
          );
        const width = sheet.headings.length;
        refuseHuge((sheet.rows.length + 1) * width);
        hold(context);
        const made = context.workbook.worksheets.add(sheet.name);
        const body = sheet.rows.map((row) => Array.from({ length: width }, (_, c) => row[c] ?? null));
        put(
          made,
          0,
          0,
          [sheet.headings, ...body],
          [
            sheet.headings.map(() => undefined),
            ...body.map((row, r) => row.map((cell, c) => formatAt(sheet, r, c, cell))),
          ],
        );
        const height = Math.max(body.length, 1);
        sheet.choices?.forEach((choice, c) => {
          if (choice === undefined) return;
          const column = made.getRangeByIndexes(1, c, height, 1);
          const source = typeof choice === "string" ? rangeOf(context, choice) : choice.join(",");
          column.dataValidation.rule = { list: { inCellDropDown: true, source } };
        });
        // A list of answers cannot spill inside a table: where there are formulas, plain cells it is.
        const plain = body.every((row) => row.every((cell) => typeof cell !== "object" || cell === null));
        if (!sheet.page && plain && width > 1 && namesake.isNullObject && new Set(sheet.headings).size === width) {
          const table = made.tables.add(made.getRangeByIndexes(0, 0, height + 1, width), true);
          if (/^[A-Za-z_][A-Za-z0-9_]*$/.test(sheet.name)) table.name = sheet.name;
        }
        made.freezePanes.freezeRows(1);
        made.getRangeByIndexes(0, 0, height + 1, width).format.autofitColumns();
        if (sheet.page) made.getRangeByIndexes(0, 0, 1, width).format.font.bold = true;
        if (activate) made.activate();
        await context.sync();
        await dress(context, made, sheet, height);
        return blockOf(sheet.name, 0, 0, [
          [...sheet.headings],
          ...body.map((row) => row.map((cell) => (typeof cell === "object" && cell !== null ? null : cell))),
        ]);
      });
    },

    async appendRows(block, rows, spare = 0) {
      if (rows.length === 0) return;
      const width = block.headings.length;
      const cells = rows.map((row) => Array.from({ length: width }, (_, c) => row[c] ?? null));
      const place = { sheet: block.sheet, row: block.top + 1 + block.rows.length - spare, column: block.left };
      refuseHuge(cells.length * width);
      return write(async (context) => {
        const sheet = target(context, block.sheet);
        const head = sheet.getRangeByIndexes(block.top, block.left, 1, width);
        head.load("values");
        const tables = head.getTables(false);
        tables.load("items/name,items/showTotals,items/rows/count");
        const under = sheet.getRangeByIndexes(place.row, place.column, cells.length, width);
        under.load("values,formulas");
        const line = head.getEntireRow().getUsedRangeOrNullObject(true);
        line.load("values,formulas,columnIndex");
        await context.sync();
        refuseProtected(sheet);
        refuseMoved(block, toCells(head.values)[0]!);

        const table = tables.items[0];
        const inTable = table === undefined ? 0 : Math.max(0, table.rows.count - block.rows.length + spare);
        const own = Math.max(spare, inTable);
        // In rows that belong to the table already, other cells than those written may hold what they like.
        refuseOccupied(block.sheet, place, {
          values: cells.map((row, r) =>
            row.map((cell, c) => {
              if (r < own && cell === null) return "";
              return under.values[r]![c] === "" ? under.formulas[r]![c] : under.values[r]![c];
            }),
          ),
        });
        const lead = Array.from({ length: line.columnIndex }, () => ({ formula: "", value: null }));
        const grown = growths(
          [...lead, ...toCells(line.values)[0]!.map((value, c) => ({ formula: String(line.formulas[0]![c]), value }))],
          block,
          place.row - 1,
          place.row + cells.length - 1,
        );
        if (grown.length > 0) {
          const rooms = grown.map((one) => {
            const room = sheet.getRangeByIndexes(one.from, one.column, one.rows, one.columns);
            room.load("values");
            return room;
          });
          await context.sync();
          grown.forEach((one, i) => {
            refuseOccupied(block.sheet, { sheet: block.sheet, row: one.from, column: one.column }, rooms[i]!);
          });
        }

        hold(context);
        const more = table === undefined ? 0 : cells.length - inTable;
        const written = (row: readonly Written[]) => row.map((cell) => (cell === null ? null : toFormula(cell)));
        let put = cells.length;
        if (more > 0 && supports(TABLE_RESIZE) && !table!.showTotals) {
          table!.resize(sheet.getRangeByIndexes(block.top, block.left, 1 + table!.rows.count + more, width));
        } else if (more > 0) {
          put = cells.length - more;
          table!.rows.add(
            undefined,
            cells.slice(put).map((row) => row.map(toFormula)),
          );
        }
        if (put > 0)
          sheet.getRangeByIndexes(place.row, place.column, put, width).formulas = cells.slice(0, put).map(written);
        for (const { column, formula } of grown)
          sheet.getRangeByIndexes(block.top, column, 1, 1).formulas = [[formula]];
        await context.sync();
      });
    },

    async writeCells(block, changes) {
      if (changes.length === 0) return;
      refuseHuge(changes.length);
      return write(async (context) => {
        const sheet = target(context, block.sheet);
        const head = sheet.getRangeByIndexes(block.top, block.left, 1, block.headings.length);
        head.load("values");
        // Cells beside or below the block are somebody else's until they are seen to be empty.
        const outside = rectangles(
          changes.filter(({ row, column }) => column >= block.headings.length || row >= block.rows.length),
        ).map(({ row, column, cells }) => {
          const place = { sheet: block.sheet, row: block.top + 1 + row, column: block.left + column };
          const range = sheet.getRangeByIndexes(place.row, place.column, cells.length, cells[0]!.length);
          range.load("values");
          return { place, range };
        });
        await context.sync();
        refuseProtected(sheet);
        refuseMoved(block, toCells(head.values)[0]!);
        for (const { place, range } of outside) refuseOccupied(block.sheet, place, range);
        hold(context);
        for (const { row, column, cells, formats } of rectangles(changes)) {
          put(sheet, block.top + 1 + row, block.left + column, cells, formats);
        }
        await context.sync();
      });
    },

    async insertFormula(place, formula, [rows, columns]) {
      return write(async (context) => {
        const sheet = target(context, place.sheet);
        const room = sheet.getRangeByIndexes(place.row, place.column, rows, columns);
        room.load("values");
        await context.sync();
        refuseProtected(sheet);
        refuseOccupied(place.sheet, place, room);
        sheet.getRangeByIndexes(place.row, place.column, 1, 1).formulas = [[formula]];
        await context.sync();
      });
    },

    async insertCells(place, cells, formats) {
      const width = Math.max(0, ...cells.map((row) => row.length));
      if (width === 0) return;
      refuseHuge(cells.length * width);
      return write(async (context) => {
        const sheet = target(context, place.sheet);
        const room = sheet.getRangeByIndexes(place.row, place.column, cells.length, width);
        room.load("values");
        await context.sync();
        refuseProtected(sheet);
        refuseOccupied(place.sheet, place, room);
        hold(context);
        const full = cells.map((row) => Array.from({ length: width }, (_, c) => row[c] ?? null));
        put(sheet, place.row, place.column, full, formats && full.map(() => full[0]!.map((_, c) => formats[c])));
        await context.sync();
      });
    },

    async select(place) {
      return read(async (context) => {
        const sheet = context.workbook.worksheets.getItem(place.sheet);
        sheet.activate();
        sheet.getRangeByIndexes(place.row, place.column, 1, 1).select();
        await context.sync();
      });
    },

    onSelectionChange(listener) {
      return listen(listener, (context, tell) => {
        const call = async () => tell();
        return [context.workbook.onSelectionChanged.add(call), context.workbook.worksheets.onActivated.add(call)];
      });
    },

    onDataChange(listener) {
      return listen(listener, (context, tell) => [
        context.workbook.worksheets.onChanged.add(async (event) => {
          // Another person's change, and our own, need no answer. Older hosts do not say who caused it.
          if (event.source === "Remote") return;
          const mine = event.triggerSource === undefined ? own() : event.triggerSource === "ThisLocalAddin";
          if (!mine) tell();
        }),
        context.workbook.worksheets.onCalculated.add(async () => {
          if (!own()) tell();
        }),
      ]);
    },
  };

  function refuseMoved(block: Block, now: readonly CellValue[]): void {
    if (block.headings.every((heading, i) => heading === now[i])) return;
    throw new HostError(
      "gone",
      `The headings at ${block.address} are no longer there; nothing was written. Select a cell in the table and try again.`,
    );
  }

  function listen(
    listener: () => void,
    add: (context: Excel.RequestContext, tell: () => void) => OfficeExtension.EventHandlerResult<any>[],
  ): () => void {
    let stopped = false;
    const tell = () => {
      if (!stopped) listener();
    };
    const handlers = read(async (context) => {
      const made = add(context, tell);
      await context.sync();
      return made;
    }).catch(() => [] as OfficeExtension.EventHandlerResult<any>[]); // without events the pane still reads on request
    return () => {
      if (stopped) return;
      stopped = true;
      void handlers
        .then(async (made) => {
          const first = made[0];
          if (first === undefined) return;
          await Excel.run(first.context, async (context) => {
            for (const handler of made) handler.remove();
            await context.sync();
          });
        })
        .catch(() => undefined); // the workbook is closing
    };
  }
}

/** The range that a reference such as `Tools!$A$2:$A$200` or `'Our tools'!$A$2` names. */
function rangeOf(context: Excel.RequestContext, ref: string): Excel.Range {
  const [, quoted, plain, address] = /^=?(?:'((?:[^']|'')+)'|([^'!]+))!(.+)$/.exec(ref) ?? [];
  if (address === undefined) throw new HostError("failed", `"${ref}" does not name a range.`);
  return context.workbook.worksheets.getItem((quoted ?? plain!).replaceAll("''", "'")).getRange(address);
}
