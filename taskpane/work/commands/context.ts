/** What every command works with: the host, the state, and the ways to read the table anew and to write under a message. */

import type { Units } from "../../../src/units.ts";
import type { RowPlan } from "../../../src/words/worded.ts";
import type { Block, Host, Table } from "../../host/host.ts";
import type { Message } from "../../ui/message.ts";
import type { Matching } from "../planning.ts";
import type { Store } from "../state.ts";
import type { PlanBlocks, Planner, State } from "../types.ts";

export interface Context {
  readonly host: Host;
  readonly store: Store<State>;
  readonly plan: Planner;
  /** Runs an action that writes: one at a time, with a message at the start, and at the end whatever happened. */
  act(start: string, action: () => Promise<Message | undefined>): Promise<void>;
  /** Reads table and lists anew. */
  readAll(): Promise<void>;
  /** Table and matching as they are now, ready to be planned; a message when they are not. */
  fresh(): Promise<{ readonly table: Table; readonly matching: Matching } | Message>;
  /** What is planned: the table's inputs and the lists. */
  blocks(table: Block, matching: Matching): PlanBlocks;
  /** Units of a table that has no column for them. */
  columnUnits(matching: Matching): Units | undefined;
}

export const sentence = (count: number, one: string, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;

/** A sheet's name after the row: without the characters that sheet names cannot have, 31 at most. */
export function sheetNameFor(what: string, line: RowPlan, table: Table): string {
  const label = String(line.row ?? (table.selected ?? 0) + 1).replace(/[[\]:*?/\\']/g, " ");
  return `${what} ${label}`.slice(0, 31).trim();
}
