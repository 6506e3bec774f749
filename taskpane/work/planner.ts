/** The trade's planning as the pane asks for it: the whole table, one row of it at the price of one, and advice for it. */
import { Cache } from "../../src/cache.ts";
import { usesCell } from "../../src/operations/index.ts";
import { type Advice, advising, type Outcome } from "../../src/plan/advise.ts";
import { handedOn, LOOK_BACK } from "../../src/plan/handed.ts";
import { planRow } from "../../src/plan/row.ts";
import { sharedSetups } from "../../src/plan/setups.ts";
import { planRows } from "../../src/plan/table.ts";
import { type Lists, type ReadRow, readLists, readRows } from "../../src/table/read.ts";
import { OPERATION_NAMES, ROW, type RowKey } from "../../src/table/rows.ts";
import type { Units } from "../../src/units.ts";
import { changeText, nothingText } from "../../src/words/advice.ts";
import { full } from "../../src/words/en/full.ts";
import { type RowPlan, worded } from "../../src/words/worded.ts";
import type { CellValue } from "../host/host.ts";
import { digits, percent } from "../ui/numbers.ts";
import type { Advisor, PlanBlocks, Planner, Suggestion } from "./types.ts";

/** Rows that were read, under the headings and units of their table; at an edit one row differs, and the lists seldom do. */
const readBefore = new Cache<string, Cache<string, ReadRow>>("rows that were read", 4);
const ROWS = 20_000;
const listsBefore = new Cache<string, Lists>("lists that were read", 4);

function rowsOf([headings = [], ...rows]: readonly CellValue[][]): ReadRow[] {
  const known = readBefore.get(JSON.stringify(headings), () => new Cache<string, ReadRow>("rows of a table", ROWS));
  return rows.map((cells) => known.get(JSON.stringify(cells), () => readRows([headings, cells])[0]!));
}

const listsOf = ({ materials, tools, machines }: Omit<PlanBlocks, "rows">): Lists =>
  listsBefore.get(JSON.stringify([materials, tools, machines]), () => readLists(materials, tools, machines));

function oneRow(blocks: PlanBlocks, only: number) {
  const rows = rowsOf(blocks.rows);
  const read = rows[only];
  if (read === undefined || read.empty) return undefined;
  // A machine's setup is shared by the rows planned on it, here as in the whole table.
  const lists = listsOf(blocks);
  return { read, lists, sharing: sharedSetups(rows)(read), handed: handedOn(rows, lists)(only) };
}

export const planner: Planner = (blocks, only) => {
  if (only === undefined) return planRows(rowsOf(blocks.rows), listsOf(blocks), false);
  const one = oneRow(blocks, only);
  const lines: ReturnType<Planner>[number][] = [];
  if (one) lines[only] = worded(planRow(one.read, one.lists, one.sharing, true, one.handed), full);
  return lines;
};

export type { Lists, ReadRow, RowPlan };
export { LOOK_BACK };

/** Rows read and planned one by one, for who keeps the results of a table fresh. */
export const rowPlanner = {
  lists: listsOf,
  read: (headings: CellValue[], rows: CellValue[][]): ReadRow[] => readRows([headings, ...rows]),
  /**
   * @param sharing - rows of the table that share the setup of the row's machine
   * @param above - rows above it that may rough its wall, from the top down
   */
  plan: (read: ReadRow, lists: Lists, sharing: number, above: readonly ReadRow[] = []): RowPlan | undefined =>
    read.empty
      ? undefined
      : worded(planRow(read, lists, sharing, false, handedOn([...above, read], lists)(above.length)), full),
};

/** False for an input that the operation of its row does not look at. */
export function usesInput(operation: string, key: string): boolean {
  const name = OPERATION_NAMES.find((known) => known === operation.trim().toLowerCase());
  return !(key in ROW) || usesCell(name, key as RowKey);
}

/** Changes that would help a row, best first, in words; in steps of a few milliseconds. */
export function* advisor(blocks: PlanBlocks, only: number): ReturnType<Advisor> {
  const one = oneRow(blocks, only);
  const units = one?.read.row.units;
  if (one === undefined || units === undefined) return [];
  const { advice, base, open } = yield* advising(one.read, one.lists, one.sharing, one.handed);
  const found = advice.map((a) => suggestion(a, units));
  const nothing = base === undefined ? "" : nothingText(open, base, full);
  return nothing === "" ? found : [{ change: nothing, before: "", after: "", writes: [] }];
}

function suggestion({ kind, changes, before, after }: Advice, units: Units): Suggestion {
  const what = changes.map((change) => changeText(change, units, full)).join("; ");
  return {
    change: kind === "cheapest" ? `Cheapest that keeps all limits: ${what}` : what,
    before: outcomeText(before),
    after: outcomeText(after),
    writes: changes.map(({ key, to }) => ({ key, value: to })),
  };
}

function outcomeText({ verdict, limit, load, time, cost }: Outcome): string {
  return [
    full.verdicts[verdict],
    limit !== null && load !== null ? `${full.limits[limit]} ${percent(load)}` : "",
    time !== null ? `${digits(time, time < 100 ? 1 : 0)} s` : "",
    cost !== null ? `${digits(cost, 2)} per part` : "",
  ]
    .filter((part) => part !== "")
    .join(", ");
}
