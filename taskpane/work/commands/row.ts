/** Commands on the selected row: worked out on a sheet, a suggestion written into it, its card. */
import { type Column, ROW_COLUMNS } from "../../../src/table/columns.ts";
import { fromCanonical, type Units } from "../../../src/units.ts";
import type { CellValue } from "../../host/host.ts";
import { type Matching, WORKED_HEADINGS, workedRows } from "../planning.ts";
import type { Suggestion } from "../types.ts";
import { type Context, sentence, sheetNameFor } from "./context.ts";

export const workOut = (c: Context) => (): Promise<void> =>
  c.act("Working the row out …", async () => {
    await c.readAll();
    const { plan: line, table } = c.store.get();
    if (line === null || table === null || line.steps.length === 0)
      return {
        kind: "failed",
        text: "There is no row to work out.",
        action: "Select a cell in a row of the table that has its sizes filled in.",
      };
    await c.host.addSheet(
      { name: sheetNameFor("Worked", line, table), headings: WORKED_HEADINGS, rows: workedRows(line) },
      true,
    );
    return { kind: "done", text: `${sentence(line.steps.length, "step")} written out on a sheet of their own.` };
  });

export const applySuggestion =
  (c: Context) =>
  (suggestion: Suggestion): Promise<void> =>
    c.act("Writing into the row …", async () => {
      const { table, matching, plan: line } = c.store.get();
      if (table === null || matching === null || table.selected === null || line === null)
        return { kind: "failed", text: "No row is selected.", action: "Select the row again." };
      const missing: Column[] = [];
      const changes = suggestion.writes.flatMap(({ key, value }) => {
        const column = ROW_COLUMNS.find((c) => c.key === key);
        const found = matching.inputs.find((m) => m.column.key === key);
        if (found === undefined) {
          if (column) missing.push(column);
          return [];
        }
        return [{ row: table.selected!, column: found.at, value: inColumn(found, value, line.units) }];
      });
      if (missing.length > 0 || changes.length === 0)
        return {
          kind: "failed",
          text: `The table has no column for this: ${missing.map((c) => c.heading).join(", ")}.`,
          action: "Add a column with that heading, then try again.",
        };
      await c.host.writeCells(table, changes);
      return { kind: "done", text: `${suggestion.change}: written into the row.` };
    });

export const addCard =
  (c: Context) =>
  (lines: readonly (readonly [string, string])[]): Promise<void> =>
    c.act("Writing the card …", async () => {
      const [head, ...rows] = lines;
      const { plan: line, table } = c.store.get();
      if (head === undefined || line === null || table === null)
        return { kind: "failed", text: "No row is selected.", action: "Select the row again." };
      await c.host.addSheet({ name: sheetNameFor("Card", line, table), headings: head, rows }, true);
      return { kind: "done", text: "The card is on a sheet of its own. Print it from there." };
    });

/** A canonical value in the units of the column it goes into. */
function inColumn({ column, units }: Matching["inputs"][number], value: CellValue, rowUnits: Units): CellValue {
  if (typeof value !== "number" || column.dimension === undefined) return value;
  return round12(fromCanonical(value, column.dimension, units ?? rowUnits));
}

/** Takes the float noise off a number that a person will read in a cell. */
const round12 = (value: number) => Number(value.toPrecision(12));
