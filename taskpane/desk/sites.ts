/**
 * Planning tables of a workbook whose results stand in it as numbers: where the inputs are, where each result goes. Only
 * tables that were filled before, as their Basis column tells, are kept fresh; a shop's own numbers are never replaced
 * without being asked.
 */
import { type Match, matchHeadings, normalHeading, RESULT_COLUMNS } from "../../src/table/columns.ts";
import type { ResultKey } from "../../src/table/results.ts";
import type { Units } from "../../src/units.ts";
import type { Block, CellValue } from "../host/host.ts";
import { findTable } from "../host/region.ts";
import { isSelfContained } from "../work/filling.ts";
import {
  BASIS,
  CHANGED,
  type HandMatches,
  type Matching,
  match,
  planningScore,
  resultScore,
  unitsGiven,
} from "../work/planning.ts";
import { gridOf } from "./cells.ts";
import type { Model } from "./model/model.ts";

/** What the person said in the pane that the table itself does not say. */
export interface Hints {
  readonly byHand: HandMatches;
  /** How much a row looks like headings, by what is known of this workbook. */
  readonly score?: (headings: readonly CellValue[]) => number;
  readonly asked: Units | undefined;
}

export interface Site {
  readonly sheet: string;
  /** The table; its rows are read when they are needed. */
  readonly block: Block;
  /** Inputs, and where results go: positions counted from the table's first column, also of a block beside it. */
  readonly matching: Matching;
  /** Units where the table has no column for them. */
  readonly units: Units | undefined;
  /** Last row that belongs to the table. */
  readonly end: number;
  /** Columns of the sheet that the planner writes. */
  readonly writes: ReadonlySet<number>;
}

const at = (headings: readonly CellValue[], name: string): number =>
  headings.findIndex((heading) => normalHeading(heading) === normalHeading(name));

/** Where results go that stand in a block beside the table, with positions counted from the table. */
function besideOf(table: Block, grid: readonly (readonly CellValue[])[]): Partial<Matching> | undefined {
  const left = table.left + table.headings.length + 1;
  const line = grid[table.top]!.slice(left);
  const end = line.indexOf(null);
  const headings = end < 0 ? line : line.slice(0, end);
  if (resultScore(headings) === 0 || at(headings, BASIS) < 0) return undefined;
  const shift = left - table.left;
  const outputs = matchHeadings(headings, RESULT_COLUMNS).map((m): Match<ResultKey> => ({ ...m, at: m.at + shift }));
  const changed = at(headings, CHANGED);
  return {
    outputs,
    basisAt: at(headings, BASIS) + shift,
    ...(changed < 0 ? {} : { changedAt: changed + shift }),
  };
}

/** Sheets without that word have no site: their headings need not be understood. */
const mayBeBasis = (cell: CellValue) =>
  typeof cell === "string" && cell.length < 40 && cell.toLowerCase().includes(BASIS.toLowerCase());

/** The site of a sheet; undefined where there is none, or its units are not known. */
export function siteOf(model: Model, name: string, hints: Hints): Site | undefined {
  const sheet = model.sheet(name);
  if (sheet === undefined || sheet.protected) return undefined;
  const grid = gridOf(sheet);
  if (!grid.some((line) => line.some(mayBeBasis))) return undefined;
  const table = findTable(sheet.name, grid, null, hints.score ?? planningScore);
  if (table === null) return undefined;
  let matching = match(table.headings, hints.byHand);
  if (!isSelfContained(matching)) {
    const beside = besideOf(table, grid);
    // A table may carry its own basis without a column for the verdict; without any basis it is a shop's own.
    if (beside === undefined && (matching.outputs.length === 0 || matching.basisAt === undefined)) return undefined;
    // Results of the table's own columns and of the block beside it belong to one basis.
    matching = { ...matching, ...beside, outputs: [...matching.outputs, ...(beside?.outputs ?? [])] };
  }
  const given = unitsGiven(matching);
  if (given === undefined && hints.asked === undefined) return undefined;
  const writes = [...matching.outputs.map((m) => m.at), matching.basisAt!, matching.changedAt ?? matching.basisAt!];
  return {
    sheet: sheet.name,
    block: { ...table, rows: [] },
    matching,
    units: given === "given" ? undefined : (given ?? hints.asked),
    end: table.top + table.rows.length,
    writes: new Set(writes.map((c) => table.left + c)),
  };
}
