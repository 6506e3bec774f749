/** Puts one live formula beside the table that plans all of it. */
import { normalHeading, RESULT_COLUMNS } from "../../../src/table/columns.ts";
import { missingLists } from "../missing.ts";
import { liveFormats, liveFormula, unitsGiven } from "../planning.ts";
import { besideKind } from "../types.ts";
import { type Context, freshly, withNote } from "./context.ts";

export const insertLive = (c: Context) => (): Promise<void> =>
  c.act("Inserting the live block …", async () => {
    const now = await freshly(c);
    if ("kind" in now) return now;
    const { table, matching } = now;
    const { lists, beside, byHand } = c.store.get();
    const kind = besideKind(beside);
    if (kind === "live")
      return { kind: "failed", text: "The live block is there already.", action: "It follows the table by itself." };
    if (kind !== "none")
      return {
        kind: "failed",
        text: `${kind === "numbers" ? "Numbers stand" : "Something else stands"} beside the table already; nothing was written.`,
        action: "Delete or move that block first if you want a live one there.",
      };
    if (unitsGiven(matching) === undefined)
      return {
        kind: "failed",
        text: "A live block reads the units from the table, and the table does not say them.",
        action: "Add a column Units with mm or in, then insert again.",
      };
    if (table.headings.some((heading) => byHand[normalHeading(heading)] !== undefined))
      return {
        kind: "failed",
        text: "A live block reads the headings by itself; columns matched by hand are not known to it.",
        action: "Rename those headings as they were matched, then insert again.",
      };
    const missing = missingLists(lists);
    if (missing.length > 0)
      return {
        kind: "failed",
        text: `A live block needs all three lists, and this workbook has no ${missing.join(" and no ")}; nothing was written.`,
        action: "Add the starting lists or your own, then insert again.",
      };
    const place = { sheet: table.sheet, row: table.top, column: table.left + table.headings.length + 1 };
    const size = [table.rows.length + 1, RESULT_COLUMNS.length] as const;
    const done = await c.host.insertFormula(place, liveFormula(table, lists), size, liveFormats(table, matching));
    return withNote(
      { kind: "done", text: "The live block stands beside the table and follows every change in it." },
      done,
    );
  });
