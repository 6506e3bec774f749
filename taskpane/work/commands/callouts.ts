/** Adds rows that were read from a drawing under the table. */
import type { CalloutRow } from "../../../src/callouts/callouts.ts";
import { additionOf } from "../adding.ts";
import { besideKind } from "../types.ts";
import { type Context, replanned, sentence, show, withNote } from "./context.ts";

export const addCallouts =
  (c: Context) =>
  async (callouts: readonly CalloutRow[]): Promise<boolean> => {
    let written = false;
    await c.act("Adding the rows …", () =>
      replanned(c, async ({ table, matching }) => {
        const kind = besideKind(c.store.get().beside);
        const { rows, spare, numbers } = additionOf(table, matching, c.columnUnits(matching), callouts);
        if (rows.length === 0) return { kind: "failed", text: "There are no callouts to add." };
        const same = { block: table, columns: matching.inputs.map((m) => m.at) };
        const done = await c.host.appendRows(table, rows, spare, same);
        written = true;
        const first = table.top + 1 + table.rows.length - spare;
        // The last one first, so that as many of them as there is room for are in view.
        for (const row of [first + rows.length - 1, first])
          await show(c.host, { sheet: table.sheet, row, column: table.left });
        const told = [
          `${sentence(rows.length, "row")} added under the table`,
          numbers === null ? "" : `, numbered ${numbers[0]}${rows.length > 1 ? ` to ${numbers[1]}` : ""}`,
          `, from line ${first + 1} of the sheet.`,
        ].join("");
        const open = callouts.filter((row) => !row.understood).length;
        const left =
          open === 0
            ? ""
            : ` ${open === 1 ? "1 of them was" : `${open} of them were`} not understood: fill in by hand.`;
        // The desk plans rows of a table that has a basis as they come.
        const live =
          kind === "live" || (c.host.kind === "sheet" && (matching.basisAt !== undefined || kind === "numbers"));
        const action = live ? undefined : "Press “Write numbers” to plan them.";
        return withNote({ kind: "done", text: told + left, ...(action === undefined ? {} : { action }) }, done);
      }),
    );
    return written;
  };
