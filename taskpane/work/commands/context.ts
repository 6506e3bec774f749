/** What every command works with: the host, the state, and the ways to read the table anew and to write under a message. */

import type { Units } from "../../../src/units.ts";
import type { RowPlan } from "../../../src/words/worded.ts";
import {
  Asking,
  type Block,
  type Care,
  type Done,
  type Host,
  HostError,
  type Loss,
  type Place,
  type Table,
} from "../../host/host.ts";
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

export const NOTHING: Message = { kind: "done", text: "Nothing was written." };

/** What the person said may be replaced, and what is to stay. */
export type Answers = Pick<Care, "agreed" | "kept">;

/** How often a table that changes between reading and writing is planned anew. */
const TRIES = 3;

/** What fails while it reads says that nothing was written yet. */
async function reading<T>(read: () => Promise<T>): Promise<T> {
  try {
    return await read();
  } catch (thrown) {
    if (!(thrown instanceof HostError)) throw thrown;
    throw new HostError(thrown.code, `${thrown.message} Nothing was written.`);
  }
}
export const freshly = (c: Context): ReturnType<Context["fresh"]> => reading(() => c.fresh());
export const readAgain = (c: Context): Promise<void> => reading(() => c.readAll());

/** Reads, plans and writes; anew when what was read was no longer so at the moment of writing. */
export async function replanned(
  c: Context,
  write: (now: { readonly table: Table; readonly matching: Matching }) => Promise<Message>,
): Promise<Message> {
  for (let left = TRIES - 1; ; left--) {
    const now = await freshly(c);
    if ("kind" in now) return now;
    try {
      return await write(now);
    } catch (thrown) {
      if (!(thrown instanceof HostError) || (thrown.code !== "changed" && thrown.code !== "gone")) throw thrown;
      if (left > 0) continue;
      return {
        kind: "failed",
        text: thrown.message,
        action: "Somebody else may be working in this table. Try again when it is quiet.",
      };
    }
  }
}

/** Asks the person, column by column, before something of theirs is replaced; `again` goes on with the answers. */
export async function asking(
  again: (answers: Answers | undefined) => void,
  work: () => Promise<Message>,
  before: Answers = {},
): Promise<Message> {
  try {
    return await work();
  } catch (thrown) {
    if (!(thrown instanceof Asking)) throw thrown;
    const { losses } = thrown;
    return {
      kind: "asks",
      text: "Some of these cells hold something of yours. Tick what may be replaced; the rest stays as it is.",
      question: {
        points: losses.map(lossText),
        yes: "Write",
        no: "Write nothing",
        answer(ticked) {
          if (ticked === undefined) return again(undefined);
          again({
            agreed: [...(before.agreed ?? []), ...losses.filter((_, i) => ticked.includes(i))],
            kept: [...(before.kept ?? []), ...losses.filter((_, i) => !ticked.includes(i))],
          });
        },
      },
    };
  }
}

const lossText = ({ what, heading, cells }: Loss): string =>
  what === "formula"
    ? `“${heading}”: ${sentence(cells, "formula")} would be replaced`
    : `“${heading}”: ${sentence(cells, "value")} would be blanked`;

/** What was done, with what the host had to say about it. */
export const withNote = (message: Message, { note }: Done): Message =>
  note === undefined ? message : { ...message, text: `${message.text} ${note}` };

/** Shows a cell after a write; where that fails, what was written stands nevertheless. */
export async function show(host: Host, place: Place): Promise<void> {
  try {
    await host.select(place);
  } catch (thrown) {
    if (!(thrown instanceof HostError)) throw thrown;
  }
}
