/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/** Writing into sheets that are there: one read sync, one write sync. */
import type { Host, Written } from "../host.ts";
import { growths } from "../region.ts";
import { rectangles, toCells, toFormula } from "./cells.ts";
import { hold, put, target } from "./put.ts";
import { refuseHuge, refuseMoved, refuseOccupied, refuseProtected } from "./refusals.ts";
import type { Runs } from "./runs.ts";
import { supports, TABLE_RESIZE } from "./versions.ts";

type Writing = "appendRows" | "writeCells" | "insertFormula" | "insertCells";

export function writer({ write }: Runs): Pick<Host, Writing> {
  return {
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
  };
}
