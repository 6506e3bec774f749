/**
 * What the pane knows and does, without a page: what is read (reader.ts), what people said about headings (said.ts), the
 * plan of the selected row (selected.ts) and the commands that write, on one state. Every failure becomes a message.
 * Components only see the state.
 */

import { normalHeading } from "../../src/table/columns.ts";
import { type Host, HostError, type Table } from "../host/host.ts";
import type { Message } from "../ui/message.ts";
import { headTexts, NOTHING_KEPT, scoreOf, withAnswer } from "./answers.ts";
import { addCallouts } from "./commands/callouts.ts";
import type { Context } from "./commands/context.ts";
import { insertLive } from "./commands/live.ts";
import { writeNumbers } from "./commands/numbers.ts";
import { writeComparison, writeQuote } from "./commands/quote.ts";
import { addCard, applySuggestion, workOut } from "./commands/row.ts";
import { addLists, addTable } from "./commands/sheets.ts";
import { everything } from "./due.ts";
import type { Matching } from "./planning.ts";
import { createReader } from "./reader.ts";
import { createSaid } from "./said.ts";
import { createSelected } from "./selected.ts";
import { createStore } from "./state.ts";
import type { Advisor, Planner, Session, State } from "./types.ts";

export function createSession(host: Host, plan: Planner, advise?: Advisor): Session {
  const store = createStore<State>({
    phase: "reading",
    table: null,
    matching: null,
    byHand: {},
    score: scoreOf(NOTHING_KEPT),
    asked: undefined,
    lists: [null, null, null],
    beside: null,
    plan: null,
    suggestions: [],
    from: null,
    message: undefined,
    busy: false,
  });
  let alive = true;
  const isAlive = () => alive;

  const fail = (thrown: unknown): void => {
    if (!(thrown instanceof HostError)) console.error(thrown);
    const text =
      thrown instanceof HostError ? thrown.message : "Something went wrong in the pane; nothing more was written.";
    store.set({
      message: {
        kind: "failed",
        text,
        action: thrown instanceof HostError ? undefined : "Close the pane, open it again and try once more.",
      },
    });
  };

  const said = createSaid(host, store, isAlive);
  const selected = createSelected(store, plan, advise, fail, isAlive);
  const reader = createReader(host, store, said, selected.plan, fail, isAlive);

  /** Runs an action that writes: one at a time, with a message at the start, and at the end whatever happened. */
  async function act(start: string, action: () => Promise<Message | undefined>): Promise<void> {
    if (store.get().busy) return;
    store.set({ busy: true, message: { kind: "busy", text: start } });
    try {
      await reader.settled();
      const done = await action();
      store.set({ message: done });
    } catch (thrown) {
      fail(thrown);
    } finally {
      store.set({ busy: false });
      reader.mark({ table: true, lists: reader.isListless() });
      await reader.request();
    }
  }

  /** Table, matching and lists as they are now, ready to be planned; a message when they are not. */
  async function fresh(): Promise<{ table: Table; matching: Matching } | Message> {
    await reader.readAll();
    const { table, matching } = store.get();
    if (table === null || matching === null)
      return {
        kind: "failed",
        text: "There is no planning table at the selection.",
        action: "Select a cell in the table and try again.",
      };
    if (!selected.hasUnits(matching))
      return {
        kind: "failed",
        text: "The table does not say its units.",
        action: "Choose mm or in above, then write.",
      };
    return { table, matching };
  }

  const context: Context = {
    host,
    store,
    plan,
    act,
    readAll: reader.readAll,
    fresh,
    blocks: selected.blocks,
    columnUnits: selected.columnUnits,
  };

  return {
    store,
    open: reader.open,
    refresh() {
      store.set({ message: undefined });
      reader.mark(everything);
      return reader.request();
    },

    setUnits(units) {
      store.set({ asked: units });
      selected.plan();
    },

    match(index, key) {
      const { table } = store.get();
      if (table === null || normalHeading(table.headings[index]) === "") return;
      said.say(withAnswer(said.now(), table.headings, index, key === "auto" ? undefined : key));
      selected.plan();
    },

    async pointAtHeadings() {
      if (store.get().busy) return;
      try {
        const { line = [] } = await host.read({ line: true });
        const head = headTexts(line);
        if (head === undefined) {
          store.set({
            message: {
              kind: "failed",
              text: "The selected row holds no headings: they are texts, at least two of them side by side.",
              action: "Select a cell in the row of headings and try again.",
            },
          });
          return;
        }
        store.set({ message: undefined });
        const kept = said.now();
        said.say({ ...kept, heads: [...kept.heads.filter((other) => other.join("|") !== head.join("|")), head] });
      } catch (thrown) {
        fail(thrown);
        return;
      }
      reader.mark({ table: true });
      await reader.request();
    },

    writeNumbers: writeNumbers(context),
    insertLive: insertLive(context),
    workOut: workOut(context),
    apply: applySuggestion(context),
    addCallouts: addCallouts(context),
    writeQuote: writeQuote(context),
    writeComparison: writeComparison(context),
    addLists: addLists(context),
    addTable: addTable(context),
    addCard: addCard(context),

    async goBack() {
      const { from } = store.get();
      if (from === null) return;
      try {
        await host.select(from);
        store.set({ message: undefined });
      } catch (thrown) {
        fail(thrown);
      }
      store.set({ from: null });
      reader.mark({ table: true });
      await reader.request();
    },

    say: (message) => store.set({ message }),

    destroy() {
      alive = false;
      selected.stop();
      reader.stop();
    },
  };
}
