/** The embedded spreadsheet of the desk as a host. Needs no screen: it talks to the sheets and the formula engine. */
import {
  type ICellData,
  ICommandService,
  type IObjectMatrixPrimitiveType,
  type IRange,
  IUndoRedoService,
  IUniverInstanceService,
  type Nullable,
  type Univer,
  UniverInstanceType,
  type Workbook,
  type Worksheet,
} from "@univerjs/core";
import { FormulaDataModel, SetFormulaCalculationResultMutation } from "@univerjs/engine-formula";
import {
  InsertSheetCommand,
  SetRangeValuesCommand,
  SetSelectionsOperation,
  SetWorksheetActivateCommand,
  SetWorksheetRowCountMutation,
  SheetsSelectionsService,
} from "@univerjs/sheets";
import { ConditionalFormattingRuleModel, SetCfCommand } from "@univerjs/sheets-conditional-formatting";
import {
  AddSheetDataValidationCommand,
  SheetDataValidationModel,
  UpdateSheetDataValidationRangeCommand,
} from "@univerjs/sheets-data-validation";
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
import { columnName, reference, spokenAddress } from "./reference.ts";
import { findTable, firstBlock, growths, type Selection } from "./region.ts";

const [STRING, NUMBER, BOOLEAN, FORCED_TEXT] = [1, 2, 3, 4];

/** Raw value of a cell of the engine. */
export function rawValue(cell: Nullable<ICellData>): CellValue {
  if (cell === null || cell === undefined) return null;
  if (cell.v === null || cell.v === undefined) {
    const text = cell.p?.body?.dataStream?.replace(/\r?\n$/, "").trim();
    return text ? text : null;
  }
  if (cell.v === "") return null;
  if (cell.t === BOOLEAN) return cell.v === 1 || cell.v === true || cell.v === "1" || cell.v === "TRUE";
  if (cell.t === NUMBER && typeof cell.v === "string" && cell.v.trim() !== "") {
    const number = Number(cell.v);
    return Number.isFinite(number) ? number : cell.v;
  }
  return cell.v;
}

/** A cell for the engine: every part of what was there before is replaced, only its style stays. */
function engineCell(value: Written, format?: string): ICellData {
  const style = format === undefined ? {} : { s: { n: { pattern: format } } };
  const empty = { v: null, f: null, si: null, p: null, t: null, custom: null };
  if (value === null || value === "") return { ...empty, ...style };
  if (typeof value === "object") return { ...empty, f: value.formula, ...style };
  if (typeof value === "number") return { ...empty, v: value, t: NUMBER, ...style };
  if (typeof value === "boolean") return { ...empty, v: value ? 1 : 0, t: BOOLEAN, ...style };
  const looksLikeNumber = value.trim() !== "" && Number.isFinite(Number(value));
  return { ...empty, v: value, t: looksLikeNumber ? FORCED_TEXT : STRING, ...style };
}

/** A command of the package that draws; without a screen it is not there. */
const SCROLL = "sheet.command.scroll-to-cell";

/** Mutations that change what a table is read from. */
const CHANGES =
  /^sheet\.mutation\.(?:set-range-values|insert-(?:row|col|sheet)|remove-(?:row|col|rows|sheet)|move-(?:range|rows|columns)|reorder-range|set-worksheet-name)/;

export interface SheetHost extends Host {
  /** The reason behind an error value, "" without one. */
  reasonAt(place: Place): string;
  /** Value of any cell, spilled ones included. */
  valueAt(place: Place): CellValue;
  /** How many changes of cells there were that were not calculations: tells whether there is something to save. */
  edits(): number;
}

/** Wants a workbook to be open already: the engine makes its parts with the first one. */
export function sheetHost(univer: Univer): SheetHost {
  const injector = univer.__getInjector();
  const instances = injector.get(IUniverInstanceService);
  const commands = injector.get(ICommandService);
  const undo = injector.get(IUndoRedoService);
  const selections = injector.get(SheetsSelectionsService);
  const formulas = injector.get(FormulaDataModel);

  const workbookOrNone = () => instances.getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET);

  let writing = 0;
  let edits = 0;
  const dataListeners = new Set<() => void>();
  const selectionListeners = new Set<() => void>();
  /** Calls the listeners once, after `wait`; a shorter wait brings a waiting call forward. */
  const later = (listeners: Set<() => void>) => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    let due = 0;
    return (wait: number) => {
      const at = Date.now() + wait;
      if (timer !== undefined && due <= at) return;
      clearTimeout(timer);
      due = at;
      timer = setTimeout(() => {
        timer = undefined;
        for (const listener of [...listeners]) listener();
      }, wait);
    };
  };
  const tellData = later(dataListeners);
  const tellSelection = later(selectionListeners);
  /** The engine answers an edit after a tenth of a second: listeners hear of both at once, and do not hold it up. */
  const UNTIL_ANSWERED = 200;

  commands.onCommandExecuted(({ id }, options) => {
    if (id === SetFormulaCalculationResultMutation.id) {
      if (writing === 0) tellData(0);
      return;
    }
    // What the engine itself stores (answers, their look) is no edit.
    if (!CHANGES.test(id) || options?.fromFormula || options?.onlyLocal) return;
    edits++;
    if (writing === 0) tellData(UNTIL_ANSWERED);
  });
  let last = "";
  const selectionMoved = () => {
    const now = workbookOrNone();
    const cell = selections.getCurrentLastSelectionPrimaryCell();
    const key = `${now?.getActiveSheet()?.getSheetId()} ${cell?.actualRow} ${cell?.actualColumn}`;
    if (key === last) return;
    last = key;
    tellSelection(0);
  };
  selections.selectionMoveEnd$.subscribe(selectionMoved);
  selections.selectionSet$.subscribe(selectionMoved);
  commands.onCommandExecuted(({ id }) => {
    if (id === "sheet.operation.set-worksheet-active" || id === "sheet.operation.set-selections") selectionMoved();
  });

  function workbook(): Workbook {
    const book = workbookOrNone();
    if (!book) throw new HostError("gone", "No workbook is open.");
    return book;
  }
  function sheetOf(name: string): Worksheet {
    const sheet = workbook().getSheetBySheetName(name);
    if (!sheet) throw new HostError("gone", `The sheet "${name}" is no longer there.`);
    return sheet;
  }

  /** Spilled cells of a sheet; the engine keeps them apart from what was typed. */
  const spilled = (sheet: Worksheet) =>
    formulas.getArrayFormulaCellData()?.[workbook().getUnitId()]?.[sheet.getSheetId()];
  const value = (sheet: Worksheet, row: number, column: number, extra = spilled(sheet)): CellValue =>
    rawValue(sheet.getCellRaw(row, column)) ?? rawValue(extra?.[row]?.[column]);

  function gridOf(sheet: Worksheet): CellValue[][] {
    const extra = spilled(sheet);
    let rows = sheet.getLastRowWithContent() + 1;
    let columns = sheet.getLastColumnWithContent() + 1;
    for (const [r, line] of Object.entries(extra ?? {})) {
      rows = Math.max(rows, Number(r) + 1);
      for (const c of Object.keys(line ?? {})) columns = Math.max(columns, Number(c) + 1);
    }
    return Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (_, c) => value(sheet, r, c, extra)));
  }

  const selection = (): Selection | null => {
    const cell = selections.getCurrentLastSelectionPrimaryCell();
    return cell ? { row: cell.actualRow, column: cell.actualColumn } : null;
  };

  async function execute(id: string, params: object, what: string): Promise<void> {
    writing++;
    try {
      if (!(await commands.executeCommand(id, params))) throw new HostError("failed", `${what} did not work.`);
    } finally {
      writing--;
    }
  }

  async function put(sheet: Worksheet, cells: IObjectMatrixPrimitiveType<ICellData>): Promise<void> {
    if (Object.keys(cells).length === 0) return;
    const wanted = Object.keys(cells).map(Number);
    const columns = Object.values(cells).flatMap((line) => Object.keys(line ?? {}).map(Number));
    sheetSize(sheet, Math.max(...wanted) + 1, Math.max(...columns) + 1);
    const target = { unitId: workbook().getUnitId(), subUnitId: sheet.getSheetId() };
    const range = {
      startRow: Math.min(...wanted),
      endRow: Math.max(...wanted),
      startColumn: Math.min(...columns),
      endColumn: Math.max(...columns),
    };
    await execute(SetRangeValuesCommand.id, { ...target, range, value: cells }, "Writing the cells");
  }

  /** A sheet has to be as large as what is written into it. */
  function sheetSize(sheet: Worksheet, rows: number, columns: number): void {
    // By its own mutation: what is drawn has to hear of it, else nobody can scroll there.
    if (sheet.getRowCount() < rows)
      commands.syncExecuteCommand(
        SetWorksheetRowCountMutation.id,
        { unitId: workbook().getUnitId(), subUnitId: sheet.getSheetId(), rowCount: rows },
        { onlyLocal: true },
      );
    if (sheet.getColumnCount() < columns) sheet.setColumnCount(columns);
  }

  /** First cell of the formula whose block covers a cell; null without one. */
  function spillOver(sheet: Worksheet, row: number, column: number): string | null {
    const ranges = formulas.getArrayFormulaRange()?.[workbook().getUnitId()]?.[sheet.getSheetId()] ?? {};
    for (const line of Object.values(ranges as Record<number, Record<number, IRange | null>>)) {
      for (const range of Object.values(line)) {
        if (!range || row < range.startRow || row > range.endRow) continue;
        if (column >= range.startColumn && column <= range.endColumn)
          return `${columnName(range.startColumn)}${range.startRow + 1}`;
      }
    }
    return null;
  }

  function checkFree(sheet: Worksheet, row: number, column: number, rows: number, columns: number): void {
    const extra = spilled(sheet);
    for (let r = row; r < row + rows; r++) {
      for (let c = column; c < column + columns; c++) {
        if (value(sheet, r, c, extra) !== null || sheet.getCellRaw(r, c)?.f) {
          const where = spokenAddress(sheet.getName(), r, c, 1, 1).split(":")[0];
          const live = spillOver(sheet, r, c);
          throw new HostError(
            "occupied",
            live === null
              ? `There is already something in ${where}; nothing was written.`
              : `The live results are in the way in ${where}; nothing was written. Clear ${live} first to take them out.`,
          );
        }
      }
    }
  }

  /** Words to choose from, and colours, that the last row of a table has go on down to row `end`. */
  async function stretchRules(sheet: Worksheet, row: number, end: number): Promise<void> {
    const target = { unitId: workbook().getUnitId(), subUnitId: sheet.getSheetId() };
    const short = (range: IRange) => range.startRow <= row && range.endRow >= row && range.endRow < end;
    const longer = (ranges: readonly IRange[]) => ranges.map((r) => (short(r) ? { ...r, endRow: end } : r));
    if (injector.has(SheetDataValidationModel)) {
      for (const rule of injector.get(SheetDataValidationModel).getRules(target.unitId, target.subUnitId)) {
        if (!rule.ranges.some(short)) continue;
        const params = { ...target, ruleId: rule.uid, ranges: longer(rule.ranges) };
        await execute(UpdateSheetDataValidationRangeCommand.id, params, "Giving the new rows their choices");
      }
    }
    if (injector.has(ConditionalFormattingRuleModel)) {
      for (const rule of injector
        .get(ConditionalFormattingRuleModel)
        .getSubunitRules(target.unitId, target.subUnitId) ?? []) {
        if (!rule.ranges.some(short)) continue;
        const params = { ...target, cfId: rule.cfId, rule: { ...rule, ranges: longer(rule.ranges) } };
        await execute(SetCfCommand.id, params, "Giving the new rows their colours");
      }
    }
  }

  function checkThere(block: Block): Worksheet {
    const sheet = sheetOf(block.sheet);
    const same = block.headings.every((h, c) => value(sheet, block.top, block.left + c) === h);
    if (!same)
      throw new HostError("gone", `The table ${block.address} has been moved or changed; nothing was written.`);
    return sheet;
  }

  const matrix = (
    row: number,
    column: number,
    cells: readonly (readonly Written[])[],
    format: (row: number, column: number) => string | undefined = () => undefined,
  ): IObjectMatrixPrimitiveType<ICellData> =>
    Object.fromEntries(
      cells.map((line, r) => [
        row + r,
        Object.fromEntries(line.map((cell, c) => [column + c, engineCell(cell, format(r, c))])),
      ]),
    );

  return {
    kind: "sheet",

    async readTable(score): Promise<Table | null> {
      const sheet = workbook().getActiveSheet();
      return sheet ? findTable(sheet.getName(), gridOf(sheet), selection(), score) : null;
    },

    async readList(name) {
      const sheet = workbook()
        .getSheets()
        .find((s) => s.getName().trim().toLowerCase() === name.trim().toLowerCase());
      return sheet ? firstBlock(sheet.getName(), gridOf(sheet)) : null;
    },

    async addSheet(added: NewSheet, activate = false): Promise<Block> {
      const { name, headings, rows, choices } = added;
      const book = workbook();
      if (book.getSheets().some((s) => s.getName().toLowerCase() === name.toLowerCase()))
        throw new HostError("occupied", `There is already a sheet "${name}"; nothing was written.`);
      const before = book.getActiveSheet()?.getSheetId();
      const id = `sheet-${name.toLowerCase().replace(/[^a-z0-9]+/g, "-")}-${book.getSheetSize()}`;
      const columnData = Object.fromEntries(
        headings.map((heading, c) => {
          // Numbers show by their format, not with all the digits they hold.
          const letters = (cell: unknown) => (typeof cell === "number" ? 8 : String(cell ?? "").length);
          const longest = Math.max(heading.length, ...rows.slice(0, 50).map((row) => letters(row[c])));
          return [c, { w: Math.min(420, Math.max(60, longest * 7.4 + 20)) }];
        }),
      );
      const heading: ICellData["s"] = { bl: 1, bg: { rgb: "#e4e9ee" }, tb: 3, vt: 2 };
      const cellData: IObjectMatrixPrimitiveType<ICellData> = {
        0: Object.fromEntries(headings.map((h, c) => [c, { v: h, t: STRING, s: heading }])),
        ...matrix(1, 0, rows, (r, c) => formatAt(added, r, c, rows[r]![c])),
      };
      const batch = undo.__tempBatchingUndoRedo(book.getUnitId());
      try {
        const sheet = {
          id,
          name,
          rowCount: Math.max(100, rows.length + 50),
          columnCount: Math.max(20, headings.length + 4),
          cellData,
          columnData,
          freeze: { xSplit: 0, ySplit: 1, startRow: 1, startColumn: -1 },
          // The engine keeps this with the sheet; files say it as the setting of the printed page.
          ...(added.page ? { custom: { page: true } } : {}),
        };
        await execute(
          InsertSheetCommand.id,
          { unitId: book.getUnitId(), index: book.getSheetSize(), sheet },
          "Adding the sheet",
        );
        const made = sheetOf(name);
        for (const [c, allowed] of (choices ?? []).entries()) {
          if (allowed === undefined) continue;
          const rule = {
            uid: `choice-${id}-${c}`,
            type: "list",
            formula1: typeof allowed === "string" ? `=${allowed}` : allowed.join(","),
            ranges: [{ startRow: 1, endRow: made.getRowCount() - 1, startColumn: c, endColumn: c }],
            allowBlank: true,
            errorStyle: 2,
          };
          await execute(
            AddSheetDataValidationCommand.id,
            { unitId: book.getUnitId(), subUnitId: made.getSheetId(), rule },
            "Adding the choices",
          );
        }
        if (!activate && before !== undefined)
          await execute(SetWorksheetActivateCommand.id, { unitId: book.getUnitId(), subUnitId: before }, "Going back");
      } finally {
        batch.dispose();
      }
      return {
        sheet: name,
        top: 0,
        left: 0,
        headings,
        rows: rows.map((row) =>
          headings.map((_, c) => (typeof row[c] === "object" ? null : ((row[c] as CellValue) ?? null))),
        ),
        reference: reference(name, 0, 0, rows.length + 1, headings.length),
        address: spokenAddress(name, 0, 0, rows.length + 1, headings.length),
      };
    },

    async appendRows(block, rows, spare = 0) {
      if (rows.length === 0) return;
      const sheet = checkThere(block);
      const row = block.top + 1 + block.rows.length - spare;
      const width = block.headings.length;
      rows.slice(0, spare).forEach((line, r) => {
        line.forEach((cell, c) => {
          if (cell !== null) checkFree(sheet, row + r, block.left + c, 1, 1);
        });
      });
      if (rows.length > spare) checkFree(sheet, row + spare, block.left, rows.length - spare, width);
      const head = Array.from({ length: sheet.getLastColumnWithContent() + 1 }, (_, c) => ({
        formula: sheet.getCellRaw(block.top, c)?.f ?? "",
        value: value(sheet, block.top, c),
      }));
      const grown = growths(head, block, row - 1, row + rows.length - 1);
      for (const one of grown) checkFree(sheet, one.from, one.column, one.rows, one.columns);

      const cells: IObjectMatrixPrimitiveType<ICellData> = {};
      const at = (r: number) => {
        cells[r] ??= {};
        return cells[r]!;
      };
      rows.forEach((line, r) => {
        line.forEach((cell, c) => {
          if (cell !== null) at(row + r)[block.left + c] = engineCell(cell);
        });
      });
      for (const { column, formula } of grown) at(block.top)[column] = engineCell({ formula });
      // New rows look like the last one did, in the table and in the results beside it.
      const model = Math.max(block.top + 1, row - 1);
      const last = Math.max(row + rows.length, ...grown.map((one) => one.from + one.rows));
      for (let c = 0; c < sheet.getColumnCount(); c++) {
        const s = sheet.getCellRaw(model, c)?.s;
        if (!s) continue;
        for (let r = row; r < last; r++) {
          if (!sheet.getCellRaw(r, c)?.s) at(r)[c] = { ...cells[r]?.[c], s };
        }
      }
      const batch = undo.__tempBatchingUndoRedo(workbook().getUnitId());
      try {
        await put(sheet, cells);
        await stretchRules(sheet, model, last - 1);
      } finally {
        batch.dispose();
      }
    },

    async writeCells(block, changes: readonly Change[]) {
      const sheet = checkThere(block);
      const cells: IObjectMatrixPrimitiveType<ICellData> = {};
      for (const change of changes) {
        const row = block.top + 1 + change.row;
        // Inside the table the caller knows what is there; beside it nothing may be lost.
        if (change.column >= block.headings.length) checkFree(sheet, row, block.left + change.column, 1, 1);
        cells[row] ??= {};
        cells[row]![block.left + change.column] = engineCell(change.value, change.format);
      }
      await put(sheet, cells);
    },

    async insertFormula({ sheet: name, row, column }, formula, [rows, columns]) {
      const sheet = sheetOf(name);
      checkFree(sheet, row, column, rows, columns);
      sheetSize(sheet, row + rows, column + columns);
      await put(sheet, { [row]: { [column]: engineCell({ formula }) } });
    },

    async insertCells({ sheet: name, row, column }, cells, formats) {
      const sheet = sheetOf(name);
      checkFree(sheet, row, column, cells.length, Math.max(0, ...cells.map((line) => line.length)));
      await put(
        sheet,
        matrix(row, column, cells, (_, c) => formats?.[c]),
      );
    },

    async select({ sheet: name, row, column }) {
      const sheet = sheetOf(name);
      const target = { unitId: workbook().getUnitId(), subUnitId: sheet.getSheetId() };
      await execute(SetWorksheetActivateCommand.id, target, "Going to the sheet");
      const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
      const primary = { ...range, actualRow: row, actualColumn: column, isMerged: false, isMergedMainCell: false };
      await execute(
        SetSelectionsOperation.id,
        { ...target, selections: [{ range, primary, style: null }], reveal: true },
        "Going to the cell",
      );
      // Where there is a screen, it follows. From a frozen column it would not, so a cell right of it is shown.
      if (!commands.hasCommand(SCROLL)) return;
      const { startColumn, ySplit } = sheet.getFreeze();
      const seen = column < startColumn ? Math.max(column, startColumn - ySplit) : column;
      await commands.executeCommand(SCROLL, { range: { ...range, startColumn: seen, endColumn: seen } });
    },

    onSelectionChange(listener) {
      selectionListeners.add(listener);
      return () => selectionListeners.delete(listener);
    },

    onDataChange(listener) {
      dataListeners.add(listener);
      return () => dataListeners.delete(listener);
    },

    reasonAt({ sheet: name, row, column }) {
      const sheet = sheetOf(name);
      const cell = sheet.getCellRaw(row, column);
      const note = (cell?.custom ?? spilled(sheet)?.[row]?.[column]?.custom) as { why?: string } | null | undefined;
      const shown = value(sheet, row, column);
      return typeof shown === "string" && shown.startsWith("#") ? (note?.why ?? "") : "";
    },

    valueAt: ({ sheet, row, column }) => value(sheetOf(sheet), row, column),

    edits: () => edits,
  };
}
