/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/** Reading tables and lists. */
import type { Host, Table } from "../host.ts";
import { findTable } from "../region.ts";
import { blockOf, listIn, toCells } from "./cells.ts";
import type { Runs } from "./runs.ts";

export function reader({ read }: Runs): Pick<Host, "readTable" | "readList" | "select"> {
  return {
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

    async select(place) {
      return read(async (context) => {
        const sheet = context.workbook.worksheets.getItem(place.sheet);
        sheet.activate();
        sheet.getRangeByIndexes(place.row, place.column, 1, 1).select();
        await context.sync();
      });
    },
  };
}
