/** The trade's planning as the pane asks for it: the whole table, one row of it at the price of one, and advice for it. */
import { type Advice, advise, type Outcome } from "../../src/plan/advise.ts";
import { planRow } from "../../src/plan/row.ts";
import { sharedSetups } from "../../src/plan/setups.ts";
import { planRows } from "../../src/plan/table.ts";
import { type Lists, type ReadRow, readLists, readRows } from "../../src/table/read.ts";
import type { Units } from "../../src/units.ts";
import { changeText, nothingText } from "../../src/words/advice.ts";
import { full } from "../../src/words/en/full.ts";
import { worded } from "../../src/words/worded.ts";
import { digits, percent } from "../ui/numbers.ts";
import type { PlanBlocks, Planner, Suggestion } from "./types.ts";

function oneRow(blocks: PlanBlocks, only: number): { read: ReadRow; lists: Lists; sharing: number } | undefined {
  const rows = readRows(blocks.rows);
  const read = rows[only];
  if (read === undefined || read.empty) return undefined;
  // A machine's setup is shared by the rows planned on it, here as in the whole table.
  return { read, lists: readLists(blocks.materials, blocks.tools, blocks.machines), sharing: sharedSetups(rows)(read) };
}

export const planner: Planner = (blocks, only) => {
  if (only === undefined)
    return planRows(readRows(blocks.rows), readLists(blocks.materials, blocks.tools, blocks.machines), false);
  const one = oneRow(blocks, only);
  const lines: ReturnType<Planner>[number][] = [];
  if (one) lines[only] = worded(planRow(one.read, one.lists, one.sharing), full);
  return lines;
};

/** Changes that would help a row, best first, in words. */
export function advisor(blocks: PlanBlocks, only: number): readonly Suggestion[] {
  const one = oneRow(blocks, only);
  const units = one?.read.row.units;
  if (one === undefined || units === undefined) return [];
  const { advice, base, open } = advise(one.read, one.lists, one.sharing);
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
