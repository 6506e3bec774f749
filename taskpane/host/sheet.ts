/** The desk's workbook as a host: the model of the desk, seen as the pane sees a workbook. */

import { normalHeading } from "../../src/table/columns.ts";
import { gridOf, plain, rowOf } from "../desk/cells.ts";
import { addressOf } from "../desk/model/address.ts";
import type { Model, Change as ModelChange } from "../desk/model/model.ts";
import { Refused } from "../desk/model/refused.ts";
import { holds, type SheetState } from "../desk/model/state.ts";
import { withGrowth } from "../desk/model/tables.ts";
import { type Edit, LAST_ROW } from "../desk/model/types.ts";
import { CHANGED } from "../work/planning.ts";
import { allowed, checkSame, isOver, type Standing } from "./care.ts";
import {
  type Block,
  type CellValue,
  type Change,
  type DataChange,
  type Done,
  type Host,
  HostError,
  type HostErrorCode,
  type NewSheet,
  type Place,
  type Table,
} from "./host.ts";
import { onPageShown } from "./page.ts";
import { reference, spokenAddress } from "./reference.ts";
import { findTable, firstBlock, growths, readAtHand } from "./region.ts";
import { cellEdit, longerChoices, newSheet } from "./sheet-edits.ts";

export interface SheetHost extends Host {
  /** Another workbook is open now. */
  setModel(model: Model): void;
  /** The reason behind an error value, "" without one. */
  reasonAt(place: Place): string;
  /** Value of any cell, spilled ones included. */
  valueAt(place: Place): CellValue;
}

export interface SheetHostOptions {
  /** Shows a cell and selects it; without a screen the model's own selection is all there is. */
  readonly reveal?: (place: Place) => void;
  /** True while a cell is being edited and what is typed cannot be taken in. */
  readonly busy?: () => boolean;
  /** The sentence for what the model refused. */
  readonly words?: (refused: Refused) => string;
}

const CODES: Readonly<Record<string, HostErrorCode>> = {
  locked: "protected",
  occupied: "occupied",
  merged: "occupied",
  array: "occupied",
  sheet: "gone",
  name: "occupied",
};

const blockOf = (sheet: string, top: number, left: number, cells: CellValue[][]): Block => {
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
};

/** Cells that changed, as a rectangle around them for each sheet. */
function changesBySheet(cells: ModelChange["cells"]): DataChange[] {
  const bySheet = new Map<string, NonNullable<DataChange["cells"]>>();
  for (const { sheet, row, column } of cells) {
    const { top, left, bottom, right } = bySheet.get(sheet) ?? { top: row, left: column, bottom: row, right: column };
    bySheet.set(sheet, {
      ...{ top: Math.min(top, row), left: Math.min(left, column) },
      ...{ bottom: Math.max(bottom, row), right: Math.max(right, column) },
    });
  }
  return [...bySheet].map(([sheet, around]) => ({ sheet, cells: around }));
}

export function sheetHost(first: Model, options: SheetHostOptions = {}): SheetHost {
  let model = first;
  const selections = new Set<(otherSheet: boolean) => void>();
  let active = first.active();
  const changes = new Set<(change: DataChange) => void>();
  let forget: (() => void)[] = [];

  function attach(): void {
    for (const stop of forget) stop();
    forget = [
      model.onSelect(() => {
        const other = model.active() !== active;
        active = model.active();
        for (const listener of [...selections]) listener(other);
      }),
      model.onChange((change: ModelChange) => {
        if (change.by === "pane" || change.by === "filter") return;
        const told = change.structure ? [{}] : changesBySheet(change.cells);
        for (const one of told) for (const listener of [...changes]) listener(one);
      }),
    ];
  }
  attach();

  const sheetOf = (name: string): SheetState => {
    const sheet = model.sheet(name);
    if (sheet === undefined) throw new HostError("gone", `There is no sheet "${name}" any more; nothing was written.`);
    return sheet;
  };

  function write(edits: readonly Edit[], label: string): void {
    if (options.busy?.()) throw new HostError("editing", "A cell is being edited. Press Enter or Esc, then try again.");
    try {
      model.apply(edits, { by: "pane", label });
    } catch (problem) {
      if (!(problem instanceof Refused)) throw problem;
      const sentence = options.words?.(problem) ?? problem.message;
      throw new HostError(CODES[problem.code] ?? "failed", `${sentence} Nothing was written.`);
    }
  }

  const occupied = (sheet: SheetState, row: number, column: number): boolean => {
    const cell = sheet.typed(row, column);
    if (holds(cell)) return true;
    return sheet.spills.get(row)?.has(column) === true || sheet.arrayAt(row, column) !== undefined;
  };
  function checkFree(sheet: SheetState, row: number, column: number, rows: number, columns: number): void {
    for (let r = row; r < row + rows; r++) {
      for (let c = column; c < column + columns; c++) {
        if (!occupied(sheet, r, c)) continue;
        const from = sheet.spills.get(r)?.get(c) ?? sheet.arrayAt(r, c);
        const where = spokenAddress(sheet.name, r, c, 1, 1).split(":")[0];
        throw new HostError(
          "occupied",
          from === undefined || (from.row === r && from.column === c)
            ? `There is already something in ${where}; nothing was written.`
            : `The live results are in the way in ${where}; nothing was written. Clear ${addressOf(from.row, from.column)} first to take them out.`,
        );
      }
    }
  }

  const valueIn = (block: Block) => (row: number, column: number) =>
    plain(model.cell(block.sheet, block.top + 1 + row, block.left + column)?.value);

  function checkThere(block: Block): SheetState {
    const sheet = sheetOf(block.sheet);
    const now = rowOf(sheet, block.top, block.left, block.headings.length);
    if (block.headings.some((heading, c) => (heading === "" ? null : heading) !== now[c]))
      throw new HostError("gone", `The table ${block.address} has been moved or changed; nothing was written.`);
    return sheet;
  }

  const formatOf = (sheet: SheetState, row: number, column: number): string | undefined => {
    const format = model.style(sheet.typed(row, column))?.numberFormat;
    return format === undefined || format === "General" ? undefined : format;
  };

  const selectedLine = (): readonly CellValue[] => {
    const sheet = model.sheet(model.active());
    return sheet === undefined ? [] : (gridOf(sheet)[model.selection().row] ?? []);
  };

  const host: SheetHost = {
    kind: "sheet",

    setModel(next) {
      model = next;
      active = next.active();
      attach();
      for (const listener of [...changes]) listener({});
    },

    read: (wanted) =>
      readAtHand(
        { ...host, settings: model.settings, line: selectedLine },
        wanted,
        model.active(),
        (name, row, column) => {
          const formula = model.typed(name, row, column)?.formula;
          return formula === undefined ? "" : `=${formula}`;
        },
      ),

    async keep(name, text) {
      write([{ kind: "setting", name, value: text }], "match");
    },

    async readRows(table, changed) {
      const sheet = model.sheet(model.active());
      if (sheet?.name !== table.sheet) return null;
      const { top, left, headings } = table;
      const now = rowOf(sheet, top, left, headings.length);
      const { row, column } = model.selection();
      const at = row - top - 1;
      const inside = at >= -1 && at < table.rows.length && column >= left && column < left + headings.length;
      if (!inside || headings.some((heading, c) => (heading === "" ? null : heading) !== now[c])) return null;
      const selected = at < 0 ? null : at;
      const wanted = [...changed, ...(selected === null ? [] : [selected])].filter((r) => r < table.rows.length);
      return {
        selected,
        rows: new Map(wanted.map((r) => [r, rowOf(sheet, top + 1 + r, left, headings.length)])),
      };
    },

    async readTable(score): Promise<Table | null> {
      const sheet = model.sheet(model.active());
      if (sheet === undefined) return null;
      const { row, column } = model.selection();
      return findTable(sheet.name, gridOf(sheet), { row, column }, score);
    },

    async readList(name) {
      const wanted = name.trim().toLowerCase();
      for (const sheet of model.sheets()) {
        const table = sheet.tables.find((one) => one.name.toLowerCase() === wanted);
        if (table === undefined) continue;
        const { top, left, right, bottom } = table.area;
        const end = bottom - (table.totals ? 1 : 0);
        const cells = Array.from({ length: end - top + 1 }, (_, r) => rowOf(sheet, top + r, left, right - left + 1));
        return blockOf(sheet.name, top, left, cells);
      }
      const sheet = model.sheets().find((one) => one.name.trim().toLowerCase() === wanted);
      return sheet === undefined ? null : firstBlock(sheet.name, gridOf(sheet));
    },

    async addSheet(added: NewSheet, activate = false): Promise<Block & Done> {
      const { name, headings, rows } = added;
      if (model.sheet(name))
        throw new HostError("occupied", `There is already a sheet "${name}"; nothing was written.`);
      write(newSheet(model, added), "add sheet");
      if (activate) model.setActive(name);
      return blockOf(name, 0, 0, [
        [...headings],
        ...rows.map((row) =>
          headings.map((_, c) => (typeof row[c] === "object" ? null : ((row[c] as CellValue) ?? null))),
        ),
      ]);
    },

    async appendRows(block, rows, spare = 0, same) {
      if (rows.length === 0) return {};
      const sheet = checkThere(block);
      if (same) checkSame(same, valueIn(same.block));
      const row = block.top + 1 + block.rows.length - spare;
      const width = block.headings.length;
      rows.slice(0, spare).forEach((line, r) => {
        line.forEach((cell, c) => {
          if (cell !== null) checkFree(sheet, row + r, block.left + c, 1, 1);
        });
      });
      if (rows.length > spare) checkFree(sheet, row + spare, block.left, rows.length - spare, width);
      const used = sheet.used().columns;
      const values = rowOf(sheet, block.top, 0, used);
      const head = values.map((value, c) => {
        const formula = sheet.typed(block.top, c)?.formula;
        return { formula: formula === undefined ? "" : `=${formula}`, value };
      });
      const end = row + rows.length - 1;
      const grown = growths(head, block, row - 1, end);
      for (const one of grown) checkFree(sheet, one.from, one.column, one.rows, one.columns);

      // New rows look like the last one did.
      const pattern = Math.max(block.top + 1, row - 1);
      const formats = Array.from({ length: width }, (_, c) => formatOf(sheet, pattern, block.left + c));
      const cells = rows.flatMap((line, r) =>
        line.flatMap((cell, c) => {
          const at = block.left + c;
          const format = formatOf(sheet, row + r, at) === undefined ? formats[c] : undefined;
          return cell === null ? [] : [cellEdit(sheet.name, row + r, at, cell, format)];
        }),
      );
      // The mark of changed inputs comes with the results: it is not copied down from the row above.
      const mark = block.headings.findIndex((heading) => normalHeading(heading) === normalHeading(CHANGED));
      if (mark >= 0) for (let r = row; r <= end; r++) cells.push(cellEdit(sheet.name, r, block.left + mark, null));
      const edits: Edit[] = withGrowth(model, sheet.name, cells);
      for (const { column, formula } of grown) edits.push(cellEdit(sheet.name, block.top, column, { formula }));
      edits.push(...longerChoices(sheet, pattern, end));
      write(edits, "add rows");
      return {};
    },

    async writeCells(block, changed: readonly Change[], care = {}) {
      const sheet = checkThere(block);
      if (care.same) checkSame(care.same, valueIn(care.same.block));
      const outside = ({ row, column }: Change) => column >= block.headings.length || row >= block.rows.length;
      for (const change of changed)
        if (outside(change) && !isOver(block, care, change.row, change.column))
          checkFree(sheet, block.top + 1 + change.row, block.left + change.column, 1, 1);
      const standing = ({ row, column }: Change): Standing => {
        const [r, c] = [block.top + 1 + row, block.left + column];
        const formula = sheet.typed(r, c)?.formula;
        return { formula: formula === undefined ? "" : `=${formula}`, value: plain(sheet.typed(r, c)?.value) };
      };
      const cells = allowed(block, changed, care, standing).map((change) => {
        const row = block.top + 1 + change.row;
        const column = block.left + change.column;
        const same = change.format !== undefined && formatOf(sheet, row, column) === change.format;
        const made = cellEdit(sheet.name, row, column, change.value, same ? undefined : change.format);
        // Headings of a block beside the table look like headings.
        const heading = change.row === -1 && change.column >= block.headings.length;
        return heading ? ({ ...made, look: "heading" } as const) : made;
      });
      if (cells.length > 0) write(cells, "write cells");
      return {};
    },

    async insertFormula({ sheet: name, row, column }, formula, [rows, columns], formats = []) {
      const sheet = sheetOf(name);
      checkFree(sheet, row, column, rows, columns);
      const dressed = formats.flatMap((format, c) =>
        format === undefined
          ? []
          : Array.from({ length: rows - 1 }, (_, r) => cellEdit(sheet.name, row + 1 + r, column + c, null, format)),
      );
      write([...dressed, cellEdit(sheet.name, row, column, { formula })], "insert a formula");
      return {};
    },

    async insertCells({ sheet: name, row, column }, cells, formats) {
      const sheet = sheetOf(name);
      checkFree(sheet, row, column, cells.length, Math.max(0, ...cells.map((line) => line.length)));
      const edits = cells.flatMap((line, r) =>
        line.flatMap((cell, c) => {
          const format = r === 0 ? undefined : formats?.[c];
          if (cell === null && format === undefined) return [];
          const made = cellEdit(sheet.name, row + r, column + c, cell, format);
          return [r === 0 && typeof cell === "string" ? ({ ...made, look: "heading" } as const) : made];
        }),
      );
      write(edits, "insert cells");
      return {};
    },

    async select({ sheet: name, row, column }) {
      const place = { sheet: sheetOf(name).name, row: Math.min(row, LAST_ROW), column };
      if (options.reveal) options.reveal(place);
      else model.select(place);
    },

    onSelectionChange(listener) {
      selections.add(listener);
      return () => selections.delete(listener);
    },

    onDataChange(listener) {
      changes.add(listener);
      return () => changes.delete(listener);
    },

    onShown: onPageShown,

    reasonAt({ sheet, row, column }) {
      const value = model.cell(sheet, row, column)?.value;
      return typeof value === "object" && value !== null ? (value.reason ?? "") : "";
    },

    valueAt: ({ sheet, row, column }) => plain(model.cell(sheet, row, column)?.value),
  };
  return host;
}
