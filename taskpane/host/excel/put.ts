/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/** Putting cells into a sheet. */
import type { Written } from "../host.ts";
import { toFormula } from "./cells.ts";

/** Holds calculation and screen until the sync that ends the fill. */
export function hold(context: Excel.RequestContext): void {
  context.application.suspendApiCalculationUntilNextSync();
  context.application.suspendScreenUpdatingUntilNextSync();
}

/** A sheet about to be written, with its protection to be loaded. */
export function target(context: Excel.RequestContext, name: string): Excel.Worksheet {
  const sheet = context.workbook.worksheets.getItem(name);
  sheet.load("name");
  sheet.protection.load("protected");
  return sheet;
}

export function put(
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
