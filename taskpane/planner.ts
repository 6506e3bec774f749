/** The trade's planning as the pane asks for it: the whole table, one row of it at the price of one, and advice for it. */

import type { RowPlan } from "../src/operations/shared/types.ts";
import { type Advice, advise, changeText, type Outcome } from "../src/plan/advise.ts";
import { planRow, planRows } from "../src/plan/evaluate.ts";
import { type Lists, type ReadRow, readLists, readRows } from "../src/table/read.ts";
import type { Units } from "../src/units.ts";
import type { CellValue } from "./host/host.ts";
import type { PlanBlocks, Planner, Suggestion } from "./session.ts";
import { digits, percent } from "./ui/numbers.ts";

/** Rows that are remembered as they were read. */
const REMEMBERED = 20_000;
/** What was read last: at an edit one row differs, and the lists seldom do. */
const memory = { headings: "", rows: new Map<string, ReadRow>(), key: "", lists: undefined as Lists | undefined };

function rowsOf(block: readonly CellValue[][]): ReadRow[] {
  const [headings = [], ...rows] = block;
  const own = JSON.stringify(headings);
  if (own !== memory.headings || memory.rows.size > REMEMBERED) {
    memory.headings = own;
    memory.rows = new Map();
  }
  const keys = rows.map((cells) => JSON.stringify(cells));
  const fresh = keys.map((_, i) => i).filter((i) => !memory.rows.has(keys[i]!));
  readRows([headings, ...fresh.map((i) => rows[i]!)]).forEach((read, n) => {
    memory.rows.set(keys[fresh[n]!]!, read);
  });
  return keys.map((key) => memory.rows.get(key)!);
}

function listsOf({ materials, tools, machines }: Pick<PlanBlocks, "materials" | "tools" | "machines">): Lists {
  const key = JSON.stringify([materials, tools, machines]);
  if (memory.lists === undefined || key !== memory.key) {
    memory.key = key;
    memory.lists = readLists(materials, tools, machines);
  }
  return memory.lists;
}

function oneRow(blocks: PlanBlocks, only: number): { read: ReadRow; lists: Lists; sharing: number } | undefined {
  const rows = rowsOf(blocks.rows);
  const read = rows[only];
  if (read === undefined || read.empty) return undefined;
  // A machine's setup is shared by the rows planned on it, here as in the whole table.
  const machine = read.row.machine?.toLowerCase();
  const sharing = rows.filter((row) => !row.empty && row.row.machine?.toLowerCase() === machine).length;
  return { read, lists: listsOf(blocks), sharing: machine === undefined ? 1 : sharing };
}

export const planner: Planner = (blocks, only) => {
  if (only === undefined) return planRows(rowsOf(blocks.rows), listsOf(blocks), false);
  const one = oneRow(blocks, only);
  const lines: ReturnType<Planner>[number][] = [];
  if (one) lines[only] = planRow(one.read, one.lists, one.sharing);
  return lines;
};

export type { Lists, ReadRow, RowPlan };

/** Rows read and planned one by one, for who keeps the results of a table fresh. */
export const rowPlanner = {
  lists: listsOf,
  read: (headings: CellValue[], rows: CellValue[][]): ReadRow[] => readRows([headings, ...rows]),
  /** @param sharing - rows of the table that share the setup of the row's machine */
  plan: (read: ReadRow, lists: Lists, sharing: number): RowPlan | undefined =>
    read.empty ? undefined : planRow(read, lists, sharing, false),
};

const HOLES = ["drill", "tap", "ream", "countersink"];
const WALLS = ["bore", "boss", "slot", "side", "face", "counterbore"];
/** Input columns that only some operations look at. */
const LOOKED_AT: Readonly<Record<string, readonly string[]>> = {
  thread: ["drill", "tap", "thread mill"],
  startDiameter: [...HOLES, "thread mill", "bore", "boss", "counterbore"],
  finishDiameter: [...HOLES, "bore", "boss", "side", "counterbore"],
  through: [...HOLES, "thread mill", "bore", "counterbore"],
  hand: ["thread mill", "tap"],
  way: ["thread mill", ...WALLS],
  length: ["slot", "side", "face"],
  side: ["side"],
  radialDepth: WALLS,
  axialDepth: WALLS,
  passes: ["thread mill", ...WALLS],
  springPasses: ["thread mill", ...WALLS],
  holeDepth: ["drill", "thread mill", "tap"],
  drillOversize: ["drill", "thread mill", "tap"],
  measured: ["thread mill", "bore", "boss", "counterbore"],
  wearValue: ["thread mill", "bore", "boss", "counterbore"],
  sizeTolerance: WALLS,
};

/** False for an input that the operation of its row does not look at. */
export const usesInput = (operation: string, key: string): boolean =>
  operation === "" || LOOKED_AT[key]?.includes(operation.trim().toLowerCase()) !== false;

/** Changes that would help a row, best first, in words. */
export function advisor(blocks: PlanBlocks, only: number): readonly Suggestion[] {
  const one = oneRow(blocks, only);
  const units = one?.read.row.units;
  if (one === undefined || units === undefined) return [];
  return advise(one.read, one.lists, one.sharing).advice.map((advice) => suggestion(advice, units));
}

function suggestion({ kind, changes, before, after }: Advice, units: Units): Suggestion {
  const what = changes.map((change) => changeText(change, units)).join("; ");
  return {
    change: kind === "fastest" ? `Fastest that keeps all limits: ${what}` : what,
    before: outcomeText(before),
    after: outcomeText(after),
    writes: changes.map(({ key, to }) => ({ key, value: to })),
  };
}

function outcomeText({ verdict, limit, load, time }: Outcome): string {
  return [
    verdict,
    limit !== null && load !== null ? `${limit} ${percent(load)}` : "",
    time !== null ? `${digits(time, time < 100 ? 1 : 0)} s per part` : "",
  ]
    .filter((part) => part !== "")
    .join(", ");
}
