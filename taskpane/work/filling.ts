/**
 * The cells of a fill: results into the table's own columns and, where the table has no column for the verdict, the
 * basis or its mark, these in a block beside it. Numbers never stand without them. Pure: no host, no page.
 */
import { type Column, matchHeadings, normalHeading, RESULT_COLUMNS } from "../../src/table/columns.ts";
import type { ResultKey } from "../../src/table/results.ts";
import type { RowPlan } from "../../src/words/worded.ts";
import type { Block, Care, Change } from "../host/host.ts";
import {
  BASIS,
  type BesideColumn,
  besideBlock,
  CHANGED,
  changesFor,
  isEmptyRow,
  isMark,
  type Matching,
} from "./planning.ts";

/** Results that stand beside a table which has columns of its own for the others. */
const NARROW: ReadonlySet<ResultKey> = new Set(["row", "verdict", "reasons", "limit", "load"]);

/** True for a table whose own columns hold the verdict, the basis and its mark: nothing goes beside it. */
export const isSelfContained = ({ outputs, basisAt, changedAt }: Matching): boolean =>
  outputs.some((m) => m.column.key === "verdict") && basisAt !== undefined && changedAt !== undefined;

/** Columns of the block beside a table, left to right; undefined where nothing goes there. */
export function besideColumns(matching: Matching): readonly Column<ResultKey>[] | undefined {
  if (matching.outputs.length === 0) return RESULT_COLUMNS;
  return isSelfContained(matching) ? undefined : RESULT_COLUMNS.filter(({ key }) => NARROW.has(key));
}

export interface Fill {
  readonly changes: readonly Change[];
  readonly care: Care;
  /** True when part of it stands beside the table. */
  readonly isBeside: boolean;
}

/**
 * @param beside - numbers of an earlier fill beside the table, which are brought up to date
 * @returns undefined when the block beside the table lacks what numbers must not be without
 */
export function fillOf(
  table: Block,
  matching: Matching,
  plans: readonly (RowPlan | undefined)[],
  beside: Block | null,
): Fill | undefined {
  const changes = [...changesFor(table, matching, plans)];
  const columns = besideColumns(matching);
  if (columns !== undefined) {
    const block = besideChanges(table, matching, plans, beside, columns);
    if (block === undefined) return undefined;
    changes.push(...block);
  }
  const care: Care = {
    same: { block: table, columns: matching.inputs.map((m) => m.at) },
    ours: isMark,
    filled: filledRows(table, matching, beside),
    ...(columns !== undefined && beside !== null ? { over: beside } : {}),
  };
  return { changes, care, isBeside: columns !== undefined };
}

function besideChanges(
  table: Block,
  matching: Matching,
  plans: readonly (RowPlan | undefined)[],
  beside: Block | null,
  columns: readonly Column<ResultKey>[],
): Change[] | undefined {
  const shift = table.headings.length + 1;
  const { cells, formats } = besideBlock(table, matching, plans, table.left + shift, placesIn(beside, columns));
  if (beside !== null) {
    const known = beside.headings.map(normalHeading);
    for (const needed of ["Verdict", BASIS, CHANGED]) if (!known.includes(normalHeading(needed))) return undefined;
  }
  const [head = [], ...rows] = cells;
  const changes: Change[] =
    beside === null ? head.map((value, c) => ({ row: -1, column: shift + c, value: value ?? null })) : [];
  rows.forEach((row, r) => {
    row.forEach((value, c) => {
      if (value === undefined) return;
      // A row without inputs has no results; where none were there is nothing to blank.
      if (value === null && isEmptyRow(table.rows[r]!, matching) && r >= (beside?.rows.length ?? 0)) return;
      changes.push({ row: r, column: shift + c, value, ...(formats[c] === undefined ? {} : { format: formats[c] }) });
    });
  });
  // Rows that the table no longer has.
  for (let r = rows.length; r < (beside?.rows.length ?? 0); r++)
    for (const c of head.keys()) changes.push({ row: r, column: shift + c, value: null });
  return changes;
}

/** Which result stands in which column of the block: as an earlier fill left it, else as it comes. */
function placesIn(beside: Block | null, columns: readonly Column<ResultKey>[]): readonly BesideColumn[] {
  if (beside === null) return [...columns, BASIS, CHANGED];
  const found = matchHeadings(beside.headings, RESULT_COLUMNS);
  return beside.headings.map((heading, at) => {
    const name = normalHeading(heading);
    if (name === normalHeading(BASIS)) return BASIS;
    if (name === normalHeading(CHANGED)) return CHANGED;
    return found.find((m) => m.at === at)?.column;
  });
}

/** Rows that carry a basis: what stands in their results is of an earlier fill. */
function filledRows(table: Block, { basisAt }: Matching, beside: Block | null): ReadonlySet<number> {
  const rows = new Set<number>();
  table.rows.forEach((cells, r) => {
    if (basisAt !== undefined && String(cells[basisAt] ?? "").startsWith("of ")) rows.add(r);
  });
  beside?.rows.forEach((cells, r) => {
    if ((cells[1] ?? null) !== null) rows.add(r);
  });
  return rows;
}
