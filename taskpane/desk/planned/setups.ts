/** Which rows of a table share a setup: those of one machine. Kept as rows come, go and change. */
import { isBlank } from "../../../src/table/blank.ts";
import type { CellValue } from "../../host/host.ts";
import { isEmptyRow } from "../../work/planning.ts";
import { cellValueAt, rowOf } from "../cells.ts";
import type { Model } from "../model/model.ts";
import type { SheetState } from "../model/state.ts";
import type { Site } from "../sites.ts";

export interface Setups {
  /** Machine of each filled row, and how many rows each has. */
  readonly of: Map<number, string>;
  readonly count: Map<string, number>;
}

export const cellsOf = (model: Model, site: Site, row: number): CellValue[] => {
  const sheet = model.sheet(site.sheet);
  return sheet ? rowOf(sheet, row, site.block.left, site.block.headings.length) : [];
};

const asName = (cell: CellValue | undefined): string =>
  String(cell ?? "")
    .trim()
    .toLowerCase();

/** The machine of a row in small letters, "" where none is named; undefined for an empty row. */
function machineOf(site: Site, cells: readonly CellValue[]): string | undefined {
  if (isEmptyRow(cells, site.matching)) return undefined;
  const column = site.matching.inputs.find((m) => m.column.key === "machine");
  return asName(column && cells[column.at]);
}

/** The same for a row of the sheet: no more of its cells are read than it takes. */
export function machineAt(sheet: SheetState | undefined, site: Site, row: number): string | undefined {
  if (sheet === undefined) return undefined;
  const { inputs } = site.matching;
  const { left } = site.block;
  const filled = inputs.some((m) => m.column.key !== "row" && !isBlank(cellValueAt(sheet, row, left + m.at)));
  if (!filled) return undefined;
  const column = inputs.find((m) => m.column.key === "machine");
  return asName(column && cellValueAt(sheet, row, left + column.at));
}

export function setupsOf(model: Model, site: Site): Setups {
  const sheet = model.sheet(site.sheet);
  const of = new Map<number, string>();
  const count = new Map<string, number>();
  for (let row = site.block.top + 1; row <= site.end; row++) {
    const machine = machineAt(sheet, site, row);
    if (machine === undefined) continue;
    of.set(row, machine);
    count.set(machine, (count.get(machine) ?? 0) + 1);
  }
  return { of, count };
}

/** Rows that share the setup of a row. */
export const sharing = (setups: Setups | undefined, site: Site, cells: readonly CellValue[]): number => {
  const machine = machineOf(site, cells);
  return machine ? (setups?.count.get(machine) ?? 1) : 1;
};
