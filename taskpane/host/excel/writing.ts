/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/**
 * Writing into sheets that are there: one read sync, one write sync (more when one request would be too big). What is
 * written to is held on to from the one to the other: rows that others insert in between move it along.
 */
import { allowed, checkSame, isOver, type Standing, spans } from "../care.ts";
import { type Block, type Care, type CellValue, type Change, type Done, type Host, HostError } from "../host.ts";
import { spokenAddress } from "../reference.ts";
import { growths } from "../region.ts";
import { carryOut, untouched } from "./carry.ts";
import { toCell, toCells } from "./cells.ts";
import { batches, growth, type Part, type Piece, piece, piecesOf } from "./parts.ts";
import { target } from "./put.ts";
import {
  refuseArrays,
  refuseFiltered,
  refuseLocked,
  refuseMerged,
  refuseMoved,
  refuseOccupied,
  refuseProtected,
  refuseSpilled,
} from "./refusals.ts";
import type { Runs } from "./runs.ts";
import { MERGED_AREAS, SPILLS, supports } from "./versions.ts";

type Writing = "appendRows" | "writeCells" | "insertFormula" | "insertCells";

export function writer({ write }: Runs): Pick<Host, Writing> {
  const carefully = (batch: (context: Excel.RequestContext) => Promise<Done>): Promise<Done> =>
    write((context) => untouched(() => batch(context)));
  const host: Pick<Host, Writing> = {
    async appendRows(block, rows, spare = 0, same) {
      if (rows.length === 0) return {};
      const width = block.headings.length;
      const cells = rows.map((row) => Array.from({ length: width }, (_, c) => row[c] ?? null));
      const place = { row: block.top + 1 + block.rows.length - spare, column: block.left };
      return carefully(async (context) => {
        const looking = look(context, block.sheet, block, same);
        const { sheet, tables } = looking;
        // A blank leaves what a new row has by itself.
        const under = piece(
          sheet,
          place.row,
          place.column,
          cells.map((row) => row.map((cell) => cell ?? undefined)),
          undefined,
          JSON.stringify(cells).length,
          true,
        );
        tables.load("items/name,items/rows/count");
        const line = sheet
          .getRangeByIndexes(block.top, block.left, 1, width)
          .getEntireRow()
          .getUsedRangeOrNullObject(true);
        line.load("values,formulas,columnIndex");
        await looking.read([under]);
        looking.refuse([under], "growing");

        const table = tables.items[0];
        const inTable = table === undefined ? 0 : Math.max(0, table.rows.count - block.rows.length + spare);
        const own = Math.max(spare, inTable);
        const below = table?.showTotals ? inTable : cells.length;
        for (let r = 0; r < below; r++)
          for (let c = 0; c < width; c++) {
            // In rows that belong to the table already, other cells than those written may hold what they like.
            if (r < own && cells[r]![c] === null) continue;
            refuseOccupied(block.sheet, place.row + r, place.column + c, under.standing(r, c));
          }

        const lead = Array.from({ length: line.columnIndex }, () => ({ formula: "", value: null }));
        const grown = growths(
          [...lead, ...toCells(line.values)[0]!.map((value, c) => ({ formula: String(line.formulas[0]![c]), value }))],
          block,
          place.row - 1,
          place.row + cells.length - 1,
        );
        const more = table === undefined ? 0 : Math.max(0, cells.length - inTable);
        // Totals go down with what stands below them: there has to be room for that.
        const pushed =
          table?.showTotals && more > 0
            ? [{ from: block.top + 2 + table.rows.count, rows: more, column: block.left, columns: width }]
            : [];
        const rooms = [...grown, ...pushed].map((one) => {
          const room = sheet.getRangeByIndexes(one.from, one.column, one.rows, one.columns);
          room.load("values,formulas");
          return { room, ...one };
        });
        const heads = grown.map(({ column, formula }) =>
          piece(sheet, block.top, column, [[{ formula }]], undefined, formula.length),
        );
        if (rooms.length > 0) {
          for (const one of heads) one.load();
          await context.sync();
          for (const one of heads) one.keepRead();
          for (const { room, from, column } of rooms) refuseFilled(block.sheet, from, column, room);
        }

        const bigger =
          table === undefined || more === 0
            ? undefined
            : growth(
                sheet,
                table,
                { top: block.top, left: block.left, width },
                table.rows.count,
                cells.slice(cells.length - more),
              );
        // Rows that the table adds with their cells are not written once more.
        const put = bigger?.byRows === true ? piecesAbove(sheet, under, cells.length - more) : [under];
        if (bigger?.byRows && put.length > 0) {
          for (const one of put) one.load();
          await context.sync();
          for (const one of put) one.keepRead();
        }
        const grow = bigger && { ...bigger, bytes: 0, written: false };
        const parts: Part[] = [...(grow ? [grow] : []), ...put, ...heads];
        return carryOut(context, {
          parts,
          steps: [...(grow ? [grow] : []), ...put, ...heads],
          ...looking.watch([under]),
        });
      });
    },

    async writeCells(block, changes, care = {}) {
      if (changes.length === 0) return {};
      return carefully(async (context) => {
        const looking = look(context, block.sheet, block, care.same);
        const pieces = piecesOf(looking.sheet, block.top + 1, block.left, changes);
        // A formula in a blank column of a table is run down all of it: what is not written is put back with the rest.
        const filled = unwritten(looking.sheet, block, changes);
        await looking.read([...pieces, ...filled]);
        const standing = standingIn(block, pieces);
        const outside = ({ row, column }: Change) =>
          (column >= block.headings.length || row >= block.rows.length) && !isOver(block, care, row, column);
        for (const change of changes)
          if (outside(change))
            refuseOccupied(
              block.sheet,
              block.top + 1 + change.row,
              block.left + change.column,
              standing(change).standing,
            );
        const carried = new Set(allowed(block, changes, care, (change) => standing(change).standing));
        for (const change of changes) if (!carried.has(change)) standing(change).leave();
        looking.refuse(pieces);
        return carryOut(context, { parts: [...pieces, ...filled], steps: pieces, ...looking.watch(pieces) });
      });
    },

    async insertFormula(place, formula, [rows, columns], formats = []) {
      return carefully(async (context) => {
        const looking = look(context, place.sheet);
        const { sheet } = looking;
        const anchor = piece(sheet, place.row, place.column, [[{ formula }]], undefined, formula.length);
        const room = sheet.getRangeByIndexes(place.row, place.column, rows, columns);
        room.load("values,formulas");
        await looking.read([anchor]);
        refuseFilled(place.sheet, place.row, place.column, room);
        looking.refuse([anchor]);
        const shown = sheet.getRangeByIndexes(place.row, place.column, 1, 1);
        // Number formats of the cells that it will fill, under the headings.
        const dress = {
          ...{ cells: columns, bytes: 0, written: false },
          write() {
            formats.forEach((format, c) => {
              if (format === undefined || rows < 2) return;
              sheet.getRangeByIndexes(place.row + 1, place.column + c, rows - 1, 1).numberFormat = [[format]];
            });
          },
        };
        return carryOut(context, {
          parts: [anchor],
          steps: [anchor, dress],
          check: {
            load: () => shown.load("values"),
            look() {
              if (shown.values[0]![0] !== "#SPILL!") return;
              throw new HostError(
                "occupied",
                `The formula in ${spokenAddress(place.sheet, place.row, place.column, 1, 1).split(":")[0]} has no room: merged cells or a table are in the way.`,
              );
            },
          },
        });
      });
    },

    async insertCells(place, cells, formats) {
      const changes = cells.flatMap((row, r) =>
        row.map((value, column): Change => ({ row: r, column, value, format: formats?.[column] })),
      );
      if (changes.length === 0) return {};
      return carefully(async (context) => {
        const looking = look(context, place.sheet);
        const pieces = piecesOf(looking.sheet, place.row, place.column, changes);
        await looking.read(pieces);
        for (const { row, column, cells2d, standing } of pieces)
          cells2d.forEach((line, r) => {
            line.forEach((_, c) => {
              refuseOccupied(place.sheet, row + r, column + c, standing(r, c));
            });
          });
        looking.refuse(pieces);
        return carryOut(context, { parts: pieces, steps: pieces });
      });
    },
  };
  return host;
}

interface Looking {
  readonly sheet: Excel.Worksheet;
  readonly tables: Excel.TableScopedCollection;
  /** Reads what is asked for, and what stands where the pieces go; stops when the block is not what it was. */
  read(pieces: readonly Piece[]): Promise<void>;
  /** Stops at what forbids the write. */
  refuse(pieces: readonly Piece[], growing?: "growing"): void;
  /** What is looked at again in the write's own batch. */
  watch(pieces: readonly Piece[]): Pick<Parameters<typeof carryOut>[1], "guard" | "shape" | "check">;
}

/** Asks for all that has to be seen before a write. */
function look(context: Excel.RequestContext, name: string, block?: Block, same?: Care["same"]): Looking {
  const sheet = target(context, name);
  sheet.autoFilter.load("isDataFiltered");
  const head = block && sheet.getRangeByIndexes(block.top, block.left, 1, block.headings.length);
  head?.load("values");
  const tables = (head ?? sheet.getRangeByIndexes(0, 0, 1, 1)).getTables(false);
  tables.load("items/name,items/showTotals,items/autoFilter/isDataFiltered");
  /** One column of the whole block: its shape tells that rows came in or went. */
  const spine = block && sheet.getRangeByIndexes(block.top, block.left, block.rows.length + 1, 1);
  spine?.load("rowIndex");
  const home = same && context.workbook.worksheets.getItem(same.block.sheet);
  const inputs = same === undefined ? [] : watched(home!, same);
  const pieceTables: Excel.TableScopedCollection[] = [];
  let merged: Excel.RangeAreas[] = [];

  const now = (row: number, column: number): CellValue => {
    for (const { range, from, count, first, rows } of inputs) {
      if (column < from || column >= from + count || row < first || row >= first + rows) continue;
      return toCell(range.values[row - first]?.[column - from]);
    }
    return null;
  };
  const load = () => {
    for (const { range } of inputs) range.load("values");
  };

  return {
    sheet,
    tables,
    async read(pieces) {
      load();
      for (const group of batches(pieces)) {
        for (const one of group) {
          one.load();
          if (supports(SPILLS)) one.range.load("hasSpill");
          one.range.format.protection.load("locked");
          const around = one.range.getTables(false);
          around.load("items/autoFilter/isDataFiltered");
          pieceTables.push(around);
          if (supports(MERGED_AREAS)) {
            const areas = one.range.getMergedAreasOrNullObject();
            areas.load("address");
            merged.push(areas);
          }
        }
        await context.sync();
        for (const one of group) one.keepRead();
      }
      merged = merged.filter((areas) => !areas.isNullObject);
      if (block) refuseMoved(block, toCells(head!.values)[0]!);
      if (same) checkSame(same, now);
    },
    refuse(pieces, growing) {
      if (growing) refuseProtected(sheet);
      else refuseLocked(sheet, pieces);
      const filters = [sheet, ...tables.items, ...pieceTables.flatMap((one) => one.items)];
      refuseFiltered(
        filters.some((one) => one.autoFilter.isDataFiltered),
        pieces,
      );
      for (const { address } of merged) refuseMerged(name, address, pieces);
      if (supports(SPILLS)) refuseSpilled(name, pieces);
      refuseArrays(name, pieces);
    },
    watch: (pieces) => ({
      ...(spine && {
        guard() {
          // Nulls leave cells as they are; a range that has got another shape refuses them.
          spine.formulas = Array.from({ length: block!.rows.length + 1 }, () => [null]) as any[][];
        },
        shape: { load: () => void spine.load("rowCount"), moved: () => spine.rowCount !== block!.rows.length + 1 },
      }),
      ...(same && { check: { load, look: () => checkSame(same, now, writtenIn(same.block, pieces)) } }),
    }),
  };
}

function writtenIn({ top, left }: Block, pieces: readonly Piece[]) {
  return (row: number, column: number): boolean =>
    pieces.some((one) => {
      const r = top + 1 + row - one.row;
      const c = left + column - one.column;
      return one.cells2d[r]?.[c] !== undefined;
    });
}

/** Ranges of the cells that must not have changed. */
function watched(sheet: Excel.Worksheet, { block, columns, rows }: NonNullable<Care["same"]>) {
  const lines = rows === undefined ? [{ from: 0, count: block.rows.length }] : spans(rows);
  return lines.flatMap(({ from: first, count: height }) =>
    height === 0
      ? []
      : spans(columns).map(({ from, count }) => ({
          range: sheet.getRangeByIndexes(block.top + 1 + first, block.left + from, height, count),
          from,
          count,
          first,
          rows: height,
        })),
  );
}

/** Cells that are not written, of columns that get formulas. */
function unwritten(sheet: Excel.Worksheet, block: Block, changes: readonly Change[]): Piece[] {
  const columns = new Map<number, Set<number>>();
  for (const { row, column, value } of changes) {
    if (column >= block.headings.length || typeof value !== "object" || value === null) continue;
    columns.set(column, (columns.get(column) ?? new Set()).add(row));
  }
  return [...columns].flatMap(([column, rows]) =>
    spans([...block.rows.keys()].filter((row) => !rows.has(row))).map(({ from, count }) => {
      const blank = Array.from({ length: count }, () => [undefined]);
      return piece(sheet, block.top + 1 + from, block.left + column, blank, undefined, 0, true);
    }),
  );
}

/** What stands where a change goes, found by its place. */
function standingIn(block: Block, pieces: readonly Piece[]) {
  const places = new Map<string, { piece: Piece; r: number; c: number }>();
  for (const one of pieces)
    one.cells2d.forEach((line, r) => {
      line.forEach((_, c) => {
        places.set(`${one.row + r},${one.column + c}`, { piece: one, r, c });
      });
    });
  return ({ row, column }: Change): { standing: Standing; leave(): void } => {
    const { piece: one, r, c } = places.get(`${block.top + 1 + row},${block.left + column}`)!;
    return { standing: one.standing(r, c), leave: () => one.leave(r, c) };
  };
}

function refuseFilled(sheet: string, row: number, column: number, room: Excel.Range): void {
  toCells(room.values).forEach((line, r) => {
    line.forEach((value, c) => {
      const formula = String(room.formulas[r]![c]);
      refuseOccupied(sheet, row + r, column + c, { formula: formula.startsWith("=") ? formula : "", value });
    });
  });
}

/** The first rows of a piece as a piece of their own. */
function piecesAbove(sheet: Excel.Worksheet, { row, column, cells2d }: Piece, rows: number): Piece[] {
  const first = cells2d.slice(0, rows);
  return rows === 0 ? [] : [piece(sheet, row, column, first, undefined, JSON.stringify(first).length)];
}
