/**
 * Callouts of a drawing as rows of the user's own table: which cells, under which heading, with which number, and what
 * the table has no column for. Pure: no host, no page.
 */

import { type CalloutCell, type CalloutRow, calloutBlock, cellUnder } from "../../src/callouts/callouts.ts";
import { isBlank as blank } from "../../src/table/blank.ts";
import { ROW_COLUMNS } from "../../src/table/columns.ts";
import type { Units } from "../../src/units.ts";
import type { Block, CellValue } from "../host/host.ts";
import { isEmptyRow, type Matching } from "./planning.ts";

export interface Addition {
  /** As wide as the table; null leaves a cell as it is. */
  readonly rows: readonly (readonly CellValue[])[];
  /** Rows at the end of the table with nothing in them but their number: they are filled first. */
  readonly spare: number;
  /** What the callouts say that the table has no column for, and in how many rows. */
  readonly missing: readonly { readonly heading: string; readonly rows: number }[];
  /** The table has no column for remarks, though there are some: what was assumed is then only in the preview. */
  readonly noRemark: boolean;
  /** Row numbers of the first and the last new row, where the table numbers its rows. */
  readonly numbers: readonly [number, number] | null;
}

/** Rows at the end that hold nothing but a number, in any column. */
function spareRows(table: Block, matching: Matching): number {
  const row = matching.inputs.find((m) => m.column.key === "row")?.at;
  let spare = 0;
  while (spare < table.rows.length) {
    const cells = table.rows[table.rows.length - 1 - spare]!;
    if (!isEmptyRow(cells, matching) || cells.some((cell, c) => c !== row && !blank(cell))) break;
    spare++;
  }
  return spare;
}

/** Numbers go on by tens; by ones where the table itself counts so. */
function nextNumbers(used: readonly CellValue[], count: number): number[] | null {
  const filled = used.filter((cell) => !blank(cell));
  const numbers = filled.filter((cell) => typeof cell === "number");
  if (numbers.length < filled.length) return null;
  const largest = Math.max(0, ...numbers);
  const byOnes = numbers.length > 1 && numbers.every((n, i) => i === 0 || n === numbers[i - 1]! + 1);
  const first = byOnes ? largest + 1 : (Math.floor(largest / 10) + 1) * 10;
  return Array.from({ length: count }, (_, i) => first + i * (byOnes ? 1 : 10));
}

/**
 * @param units - the units of a table that has no column for them: lengths are turned into these
 */
export function additionOf(
  table: Block,
  matching: Matching,
  units: Units | undefined,
  callouts: readonly CalloutRow[],
): Addition {
  const spare = spareRows(table, matching);
  const kept = table.rows.length - spare;
  // The columns as they are matched, under names that the reader of callouts knows.
  const headings: (string | null)[] = table.headings.map(() => null);
  for (const { at, column, units: own } of matching.inputs) {
    const unit = own ?? (column.dimension === "length" ? units : undefined);
    headings[at] = `${column.heading}${unit === undefined ? "" : ` [${unit}]`}`;
  }
  const rows: CalloutCell[][] = calloutBlock(callouts, headings);

  const numberAt = matching.inputs.find((m) => m.column.key === "row")?.at;
  let numbers: Addition["numbers"] = null;
  if (numberAt !== undefined) {
    const own = table.rows.slice(kept).map((cells) => cells[numberAt] ?? null);
    const used = table.rows.map((cells) => cells[numberAt] ?? null);
    // Numbers that stand in spare rows already stay; what comes below goes on from them.
    const next = nextNumbers(used, rows.length);
    if (next !== null && rows.length > 0) {
      let taken = 0;
      const all = rows.map((line, r) => {
        const there = own[r];
        if (typeof there === "number") return there;
        const number = next[taken++]!;
        line[numberAt] = number;
        return number;
      });
      numbers = [all[0]!, all[all.length - 1]!];
    }
  }

  const there = new Set(matching.inputs.map((m) => m.column.heading));
  const missing = ROW_COLUMNS.flatMap(({ heading, key }) => {
    // Without a column for them the units are those of the table, and lengths are turned into these.
    if (there.has(heading) || key === "row" || key === "units" || key === "remark") return [];
    const count = callouts.filter((row) => {
      const cell = cellUnder(row, heading);
      return !blank(cell) && !(key === "quantity" && cell === 1);
    }).length;
    return count === 0 ? [] : [{ heading, rows: count }];
  });
  const noRemark = !there.has("Remark") && callouts.some(({ cells }) => !blank(cells.Remark ?? null));
  return { rows, spare, missing, noRemark, numbers };
}
