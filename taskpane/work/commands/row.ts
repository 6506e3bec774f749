/** Commands on the selected row: worked out on a sheet, a suggestion written into it, its card. */
import { type Column, ROW_COLUMNS } from "../../../src/table/columns.ts";
import { fromCanonical, type Units } from "../../../src/units.ts";
import type { CellValue, Table } from "../../host/host.ts";
import type { Message } from "../../ui/message.ts";
import { basisOf, type Matching, WORKED_HEADINGS, workedRows } from "../planning.ts";
import type { Suggestion } from "../types.ts";
import {
  type Answers,
  asking,
  type Context,
  NOTHING,
  readAgain,
  replanned,
  sentence,
  sheetNameFor,
  withNote,
} from "./context.ts";

export const workOut = (c: Context) => (): Promise<void> =>
  c.act("Working the row out …", async () => {
    await readAgain(c);
    const { plan: line, table } = c.store.get();
    if (line === null || table === null || line.steps.length === 0)
      return {
        kind: "failed",
        text: "There is no row to work out.",
        action: "Select a cell in a row of the table that has its sizes filled in.",
      };
    const done = await c.host.addSheet(
      { name: sheetNameFor("Worked", line, table), headings: WORKED_HEADINGS, rows: workedRows(line) },
      true,
    );
    return withNote(
      { kind: "done", text: `${sentence(line.steps.length, "step")} written out on a sheet of their own.` },
      done,
    );
  });

export const applySuggestion =
  (c: Context) =>
  (suggestion: Suggestion): Promise<void> => {
    const { table, matching, plan } = c.store.get();
    const made = table !== null && matching !== null && table.selected !== null && plan !== null;
    return apply(
      c,
      suggestion,
      made ? { table, cells: table.rows[table.selected!]!, units: plan.units } : undefined,
      {},
    );
  };

/** The row that a suggestion was made for: where it stood, and what it was worked out from. */
interface MadeFor {
  readonly table: Table;
  readonly cells: readonly CellValue[];
  readonly units: Units;
}

const apply = (c: Context, suggestion: Suggestion, made: MadeFor | undefined, answers: Answers): Promise<void> =>
  c.act("Writing into the row …", () => {
    if (made === undefined)
      return Promise.resolve({ kind: "failed", text: "No row is selected.", action: "Select the row again." } as const);
    return asking(
      (said) => (said === undefined ? c.store.set({ message: NOTHING }) : void apply(c, suggestion, made, said)),
      () => replanned(c, (now) => writeInto(c, suggestion, made, now, answers)),
      answers,
    );
  });

async function writeInto(
  c: Context,
  suggestion: Suggestion,
  made: MadeFor,
  { table, matching }: { readonly table: Table; readonly matching: Matching },
  answers: Answers,
): Promise<Message> {
  const missing: Column[] = [];
  const row = rowMadeFor(made, table, matching);
  if (row === undefined)
    return {
      kind: "failed",
      text: "The row that this was suggested for has changed since, or is no longer there; nothing was written.",
      action: "Select the row and look at what it says now.",
    };
  const changes = suggestion.writes.flatMap(({ key, value }) => {
    const column = ROW_COLUMNS.find((one) => one.key === key);
    const found = matching.inputs.find((m) => m.column.key === key);
    if (found === undefined) {
      if (column) missing.push(column);
      return [];
    }
    return [{ row, column: found.at, value: inColumn(found, value, made.units) }];
  });
  if (missing.length > 0 || changes.length === 0)
    return {
      kind: "failed",
      text: `The table has no column for this: ${missing.map((column) => column.heading).join(", ")}.`,
      action: "Add a column with that heading, then try again.",
    };
  const same = { block: table, columns: matching.inputs.map((m) => m.at), rows: [row] };
  // What the suggestion takes out of the row, the person has just said yes to; a formula is asked about.
  const done = await c.host.writeCells(table, changes, { same, filled: new Set([row]), ...answers });
  const moved = row === made.table.selected ? "" : `, which is in line ${table.top + 2 + row} of the sheet now`;
  return withNote({ kind: "done", text: `${suggestion.change}: written into the row${moved}.` }, done);
}

/**
 * Where the row stands now: at its place when it is as it was, else the only one that is. Its number and name tell it
 * from a twin; where these have changed, what its numbers follow from does.
 */
function rowMadeFor({ table: old, cells }: MadeFor, table: Table, matching: Matching): number | undefined {
  const whole = (row: readonly CellValue[]) => JSON.stringify(matching.inputs.map((m) => row[m.at] ?? null));
  const follows = (row: readonly CellValue[]) => basisOf(row, matching);
  const inPlace = table.sheet === old.sheet && table.top === old.top ? old.selected! : -1;
  for (const key of [whole, follows]) {
    const is = (row: number) => table.rows[row] !== undefined && key(table.rows[row]) === key(cells);
    if (is(inPlace)) return inPlace;
    const found = [...table.rows.keys()].filter(is);
    if (found.length === 1) return found[0];
  }
  return undefined;
}

export const addCard =
  (c: Context) =>
  (lines: readonly (readonly [string, string])[]): Promise<void> =>
    c.act("Writing the card …", async () => {
      const [head, ...rows] = lines;
      const { plan: line, table } = c.store.get();
      if (head === undefined || line === null || table === null)
        return { kind: "failed", text: "No row is selected.", action: "Select the row again." };
      const done = await c.host.addSheet({ name: sheetNameFor("Card", line, table), headings: head, rows }, true);
      return withNote({ kind: "done", text: "The card is on a sheet of its own. Print it from there." }, done);
    });

/** A canonical value in the units of the column it goes into. */
function inColumn({ column, units }: Matching["inputs"][number], value: CellValue, rowUnits: Units): CellValue {
  if (typeof value !== "number" || column.dimension === undefined) return value;
  return round12(fromCanonical(value, column.dimension, units ?? rowUnits));
}

/** Takes the float noise off a number that a person will read in a cell. */
const round12 = (value: number) => Number(value.toPrecision(12));
