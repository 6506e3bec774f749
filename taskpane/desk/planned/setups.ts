/** Which rows of a table share a setup: those of one machine. Kept as rows come, go and change. */
import type { CellValue } from "../../host/host.ts";
import { isEmptyRow } from "../../work/planning.ts";
import { rowOf } from "../cells.ts";
import type { Model } from "../model/model.ts";
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

/** The machine of a row in small letters, "" where none is named; undefined for an empty row. */
export function machineOf(site: Site, cells: readonly CellValue[]): string | undefined {
  if (isEmptyRow(cells, site.matching)) return undefined;
  const column = site.matching.inputs.find((m) => m.column.key === "machine");
  return String((column && cells[column.at]) ?? "")
    .trim()
    .toLowerCase();
}

export function setupsOf(model: Model, site: Site): Setups {
  const of = new Map<number, string>();
  const count = new Map<string, number>();
  for (let row = site.block.top + 1; row <= site.end; row++) {
    const machine = machineOf(site, cellsOf(model, site, row));
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
