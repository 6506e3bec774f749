/** The embedded sheet without a screen; bundled by sheet.test.ts because its packages do not load in Node as they are. */
import {
  type ICellData,
  ICommandService,
  IUniverInstanceService,
  type IWorkbookData,
  LocaleType,
  UndoCommand,
} from "@univerjs/core";
import { SetRangeValuesCommand } from "@univerjs/sheets";
import { toCell } from "../../taskpane/desk/book.ts";
import { facade, newUniver, registerSheets } from "../../taskpane/desk/engine.ts";
import { ENGLISH } from "../../taskpane/desk/locale.ts";
import type { CellValue } from "../../taskpane/host/host.ts";
import { sheetHost } from "../../taskpane/host/sheet.ts";
import type { Bench, Sheets } from "./contract.ts";

const univer = newUniver({ locales: { [LocaleType.EN_US]: ENGLISH } });
registerSheets(univer);
const api = facade(univer);
let count = 0;

export async function openSheets(sheets: Sheets): Promise<Bench> {
  const unit = `bench ${count++}`;
  const names = Object.keys(sheets);
  const data: IWorkbookData = {
    id: unit,
    name: "bench",
    appVersion: "0.25.1",
    locale: "enUS" as IWorkbookData["locale"],
    styles: {},
    sheetOrder: names,
    sheets: Object.fromEntries(
      names.map((name) => [
        name,
        {
          id: name,
          name,
          rowCount: 50,
          columnCount: 10,
          cellData: Object.fromEntries(
            sheets[name]!.map((row, r) => [r, Object.fromEntries(row.map((cell, c) => [c, toCell(cell)]))]),
          ),
        },
      ]),
    ),
  };
  api.createWorkbook(data);
  univer.__getInjector().get(IUniverInstanceService).focusUnit(unit);
  const host = sheetHost(univer);
  const commands = univer.__getInjector().get(ICommandService);
  const sheet = (name: string) => api.getActiveWorkbook()!.getSheetByName(name)!;
  const settle = () => new Promise<void>((resolve) => setTimeout(resolve, 300));
  await settle();
  const content = (value: CellValue): ICellData =>
    typeof value === "string" && value.startsWith("=")
      ? { f: value, v: null }
      : { f: null, ...toCell(value), ...(value === null ? { v: null } : {}) };
  return {
    host,
    probe: {
      async type(name, row, column, value) {
        await commands.executeCommand(SetRangeValuesCommand.id, {
          unitId: unit,
          subUnitId: name,
          range: { startRow: row, endRow: row, startColumn: column, endColumn: column },
          value: content(value),
        });
      },
      value: async (name, row, column) => host.valueAt({ sheet: name, row, column }),
      formula: async (name, row, column) => sheet(name).getRange(row, column).getFormula(),
      format: async (name, row, column) => sheet(name).getRange(row, column).getCellStyleData()?.n?.pattern ?? "",
      async select(name, row, column) {
        api.getActiveWorkbook()!.setActiveSheet(sheet(name));
        sheet(name).getRange(row, column).activate();
      },
      activeSheet: async () => api.getActiveWorkbook()!.getActiveSheet().getSheetName(),
      sheets: async () =>
        api
          .getActiveWorkbook()!
          .getSheets()
          .map((s) => s.getSheetName()),
      async undo() {
        await commands.executeCommand(UndoCommand.id);
      },
      settle,
    },
    async close() {
      api.disposeUnit(unit);
    },
  };
}
