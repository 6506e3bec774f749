/**
 * What the pane knows and does, without a page: reads through the host, plans, writes through the host, and turns
 * every failure into a message. Components only see the state.
 */

import { normalHeading } from "../../src/table/columns.ts";
import type { Units } from "../../src/units.ts";
import type { RowPlan } from "../../src/words/worded.ts";
import { type Block, type CellValue, type Host, HostError, type Table } from "../host/host.ts";
import type { Message } from "../ui/message.ts";
import { addCallouts } from "./commands/callouts.ts";
import type { Context } from "./commands/context.ts";
import { insertLive } from "./commands/live.ts";
import { writeNumbers } from "./commands/numbers.ts";
import { writeComparison, writeQuote } from "./commands/quote.ts";
import { addCard, applySuggestion, workOut } from "./commands/row.ts";
import { addLists, addTable } from "./commands/sheets.ts";
import { isEmptyRow, type Matching, match, planningBlock, planningScore, resultScore, unitsGiven } from "./planning.ts";
import { createStore } from "./state.ts";
import { type Advisor, LISTS, type PlanBlocks, type Planner, type Session, type State } from "./types.ts";

/** Milliseconds a row must stay selected before advice is looked for. */
const ADVICE_DELAY = 80;

const blockCells = (block: Block | null): CellValue[][] =>
  block === null ? [] : [[...block.headings], ...block.rows.map((row) => [...row])];

export function createSession(host: Host, plan: Planner, advise?: Advisor): Session {
  const store = createStore<State>({
    phase: "reading",
    table: null,
    matching: null,
    byHand: {},
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
  let reading: Promise<void> | undefined;
  let again: "all" | "selection" | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let advising: ReturnType<typeof setTimeout> | undefined;
  let hushed = false;

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

  const settledUnits = (matching: Matching): Units | "given" | undefined => unitsGiven(matching) ?? store.get().asked;
  const columnUnits = (matching: Matching): Units | undefined => {
    const units = settledUnits(matching);
    return units === "given" ? undefined : units;
  };

  const blocks = (table: Block, matching: Matching, lists: readonly (Block | null)[]): PlanBlocks => ({
    rows: planningBlock(table, matching, columnUnits(matching)),
    materials: blockCells(lists[0] ?? null),
    tools: blockCells(lists[1] ?? null),
    machines: blockCells(lists[2] ?? null),
  });

  /** The plan of the selected row alone: quick, whatever the length of the table. */
  function planSelected(): void {
    clearTimeout(advising);
    const { table, matching, lists } = store.get();
    const selected = table?.selected ?? null;
    if (table === null || matching === null || selected === null || isEmptyRow(table.rows[selected]!, matching)) {
      store.set({ plan: null, suggestions: [] });
      return;
    }
    if (settledUnits(matching) === undefined) {
      store.set({ plan: null, suggestions: [] });
      return;
    }
    const all = blocks(table, matching, lists);
    let line: RowPlan | null;
    try {
      line = plan(all, selected)[selected] ?? null;
    } catch (thrown) {
      store.set({ plan: null, suggestions: [] });
      fail(thrown);
      return;
    }
    store.set({ plan: line, suggestions: [] });
    if (line === null || advise === undefined) return;
    // The search for advice works the row out many times: the row is shown first.
    advising = setTimeout(() => {
      if (!alive || store.get().plan !== line) return;
      try {
        store.set({ suggestions: advise(all, selected) });
      } catch (thrown) {
        fail(thrown);
      }
    }, ADVICE_DELAY);
  }

  function take(table: Table | null): void {
    const { byHand } = store.get();
    store.set({
      phase: table === null ? "none" : "table",
      table,
      matching: table === null ? null : match(table.headings, byHand),
    });
  }

  /** The block of results right of the table, if there is one. */
  async function readBeside(table: Table | null): Promise<Block | null> {
    if (table === null) return null;
    const block = await host.readTable(resultScore);
    if (block === null || block.sheet !== table.sheet || block.top !== table.top) return null;
    return block.left === table.left + table.headings.length + 1 ? block : null;
  }

  async function readAll(): Promise<void> {
    const table = await host.readTable(planningScore);
    const lists: (Block | null)[] = [];
    for (const name of LISTS) lists.push(await host.readList(name));
    const beside = await readBeside(table);
    if (!alive) return;
    store.set({ lists, beside });
    take(table);
    planSelected();
  }

  async function readSelection(): Promise<void> {
    const before = store.get().table;
    const table = await host.readTable(planningScore);
    if (!alive) return;
    const same =
      before !== null &&
      table !== null &&
      before.sheet === table.sheet &&
      before.top === table.top &&
      before.left === table.left;
    if (!same) {
      await readAll();
      return;
    }
    take(table);
    planSelected();
  }

  /** One read at a time; what comes in between is made up for by one more at the end. */
  function request(what: "all" | "selection"): Promise<void> {
    if (reading !== undefined) {
      again = again === "all" ? "all" : what;
      return reading;
    }
    const run = async () => {
      let next: typeof again = what;
      while (next !== undefined && alive) {
        const now: "all" | "selection" = next;
        again = undefined;
        try {
          await (now === "all" ? readAll() : readSelection());
        } catch (thrown) {
          // While a cell is being edited there is nothing to tell: the next event reads again.
          // After a write its own message stands: what was written does not fail because it is not read again.
          if (!(thrown instanceof HostError && thrown.code === "editing") && !hushed) fail(thrown);
          if (store.get().phase === "reading") store.set({ phase: "none" });
        }
        next = again;
      }
      reading = undefined;
    };
    reading = run();
    return reading;
  }

  function later(what: "all" | "selection", delay: number): void {
    if (!alive || store.get().busy) return;
    if (again !== "all") again = what;
    clearTimeout(timer);
    timer = setTimeout(() => {
      const wanted = again ?? what;
      again = undefined;
      void request(wanted);
    }, delay);
  }

  const stops = [host.onSelectionChange(() => later("selection", 120)), host.onDataChange(() => later("all", 400))];

  /** Runs an action that writes: one at a time, with a message at the start, and at the end whatever happened. */
  async function act(start: string, action: () => Promise<Message | undefined>): Promise<void> {
    if (store.get().busy) return;
    store.set({ busy: true, message: { kind: "busy", text: start } });
    try {
      await reading;
      const done = await action();
      store.set({ message: done });
    } catch (thrown) {
      fail(thrown);
    } finally {
      store.set({ busy: false });
      hushed = true;
      await request("all");
      hushed = false;
    }
  }

  /** Table, matching and lists as they are now, ready to be planned; a message when they are not. */
  async function fresh(): Promise<{ table: Table; matching: Matching } | Message> {
    await readAll();
    const { table, matching } = store.get();
    if (table === null || matching === null)
      return {
        kind: "failed",
        text: "There is no planning table at the selection.",
        action: "Select a cell in the table and try again.",
      };
    if (settledUnits(matching) === undefined)
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
    readAll,
    fresh,
    blocks: (table, matching) => blocks(table, matching, store.get().lists),
    columnUnits,
  };

  return {
    store,
    refresh: () => request("all"),

    setUnits(units) {
      store.set({ asked: units });
      planSelected();
    },

    match(index, key) {
      const { table, byHand } = store.get();
      const heading = normalHeading(table?.headings[index]);
      if (table === null || heading === "") return;
      const next: Record<string, string> = { ...byHand };
      if (key === "auto") delete next[heading];
      else {
        // A meaning belongs to one column only.
        if (key !== "") for (const other of Object.keys(next)) if (next[other] === key) delete next[other];
        next[heading] = key;
      }
      store.set({ byHand: next, matching: match(table.headings, next) });
      planSelected();
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
      await request("all");
    },

    say: (message) => store.set({ message }),

    destroy() {
      alive = false;
      clearTimeout(timer);
      clearTimeout(advising);
      for (const stop of stops) stop();
    },
  };
}
