/** Writes the plan as plain numbers: into the table's own columns, or as a block beside it. */
import type { RowPlan } from "../../../src/words/worded.ts";
import { besideBlock, changesFor } from "../planning.ts";
import { isNumbers } from "../types.ts";
import { type Context, sentence } from "./context.ts";

export const writeNumbers = (c: Context) => (): Promise<void> =>
  c.act("Writing numbers …", async () => {
    const now = await c.fresh();
    if ("kind" in now) return now;
    const { table, matching } = now;
    const { beside } = c.store.get();
    const plans = c.plan(c.blocks(table, matching));
    const told = tally(plans);
    if (matching.outputs.length > 0) {
      await c.host.writeCells(table, changesFor(table, matching, plans));
      return { kind: "done", text: told };
    }
    if (beside !== null && !isNumbers(beside))
      return {
        kind: "failed",
        text: "A live block stands beside the table; it shows these numbers already.",
        action: "Delete its first cell if you want plain numbers there.",
      };
    const left = table.left + table.headings.length + 1;
    const { cells, formats } = besideBlock(table, matching, plans, left);
    if (beside === null) {
      await c.host.insertCells({ sheet: table.sheet, row: table.top, column: left }, cells, formats);
      return { kind: "done", text: `${told} They stand beside the table.` };
    }
    // An earlier fill: its rows are written over, rows the table has got since are put below.
    const kept = Math.max(beside.rows.length, 0);
    const width = cells[0]!.length;
    await c.host.writeCells(
      beside,
      cells
        .slice(1, 1 + kept)
        .flatMap((row, r) =>
          row.slice(0, width).map((value, column) => ({ row: r, column, value, format: formats[column] })),
        ),
    );
    const more = cells.slice(1 + kept);
    if (more.length > 0) await c.host.appendRows(beside, more);
    return { kind: "done", text: `${told} The block beside the table is up to date.` };
  });

function tally(plans: readonly (RowPlan | undefined)[]): string {
  const counted = plans.filter((line) => line !== undefined);
  const of = (verdict: RowPlan["verdict"]) => counted.filter((line) => line.verdict === verdict).length;
  return `${sentence(counted.length, "row")} written: ${of("ok")} ok, ${of("check")} check, ${of("stop")} stop.`;
}
