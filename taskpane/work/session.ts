/**
 * What the pane knows and does, without a page: reads through the host, plans, writes through the host, and turns
 * every failure into a message. Components only see the state. What has to be read, and when, is the business of
 * due.ts; nothing is read of its own accord while the pane is not to be seen.
 */

import { normalHeading } from "../../src/table/columns.ts";
import type { Units } from "../../src/units.ts";
import type { RowPlan } from "../../src/words/worded.ts";
import { type Block, type CellValue, type Host, HostError, type Table } from "../host/host.ts";
import type { Message } from "../ui/message.ts";
import {
  handMatches,
  headTexts,
  KEPT_AS,
  type Kept,
  keptText,
  NOTHING_KEPT,
  readKept,
  scoreOf,
  withAnswer,
} from "./answers.ts";
import { addCallouts } from "./commands/callouts.ts";
import type { Context } from "./commands/context.ts";
import { insertLive } from "./commands/live.ts";
import { writeNumbers } from "./commands/numbers.ts";
import { writeComparison, writeQuote } from "./commands/quote.ts";
import { addCard, applySuggestion, workOut } from "./commands/row.ts";
import { addLists, addTable } from "./commands/sheets.ts";
import { type Due, dueAfter, everything, isNothing, merge, nothing } from "./due.ts";
import { looking } from "./looking.ts";
import { isEmptyRow, type Matching, match, planningBlock, resultScore, unitsGiven } from "./planning.ts";
import { createStore } from "./state.ts";
import { type Advisor, LISTS, type PlanBlocks, type Planner, type Session, type State } from "./types.ts";

/** Milliseconds that are waited for more of the same: another row selected, another cell typed. */
const [SELECTED, TYPED] = [120, 400];

const blockCells = (block: Block | null): CellValue[][] =>
  block === null ? [] : [[...block.headings], ...block.rows.map((row) => [...row])];

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
  let shown = false;
  let opened = false;
  /** What people said about headings, and the text of it that the workbook holds. */
  let kept: Kept = NOTHING_KEPT;
  let keptThere: string | null = null;
  let keeping: Promise<void> = Promise.resolve();
  /** What is out of date, and the sheet that was read last. */
  let due: Due = everything;
  let sheet: { readonly name: string; readonly whole: boolean } | undefined;
  let reading: Promise<void> | undefined;
  let stops: (() => void)[] | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const advising = looking();

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
    advising.stop();
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
    advising.start(
      () => advise(all, selected),
      () => alive && store.get().plan === line,
      (suggestions) => store.set({ suggestions }),
      fail,
    );
  }

  /** What people said is this from now on; it is kept in the workbook, one after the other. */
  function say(next: Kept): void {
    kept = next;
    store.set({ score: scoreOf(kept) });
    take(store.get().table);
    const text = keptText(kept);
    keeping = keeping.then(async () => {
      if (!alive || text === keptThere) return;
      try {
        await host.keep(KEPT_AS, text);
        keptThere = text;
      } catch (thrown) {
        const why = thrown instanceof HostError ? ` ${thrown.message}` : "";
        store.set({
          message: {
            kind: "failed",
            text: `The answer holds while this pane is open, but could not be kept in the workbook.${why}`,
            action: "Answer again when the workbook can be changed.",
          },
        });
      }
    });
  }

  function take(table: Table | null): void {
    const byHand = handMatches(kept, table?.headings);
    store.set({
      byHand,
      phase: table === null ? "none" : "table",
      table,
      matching: table === null ? null : match(table.headings, byHand),
    });
  }

  /** Reads what is due, all of it in one go; what proves to be out of date by that stays due. */
  async function readDue(): Promise<void> {
    listen();
    const now = due;
    due = nothing;
    try {
      if (now.table || now.lists) await readBook(now);
      if (!now.table && (now.selection || now.rows.size > 0)) await readSelection(now);
    } catch (thrown) {
      due = merge(due, now);
      throw thrown;
    }
  }

  async function readBook({ table: wantsTable, lists: wantsLists }: Due): Promise<void> {
    const read = await host.read({
      ...(wantsTable && { table: scoreOf(kept), beside: resultScore, settings: true }),
      ...(wantsLists && { lists: LISTS }),
    });
    if (!alive) return;
    if (read.lists) store.set({ lists: read.lists });
    const there = read.settings?.[KEPT_AS] ?? null;
    // What is on its way into the workbook is not in it yet.
    if (read.settings !== undefined && there !== keptThere && keptText(kept) === keptThere) {
      keptThere = there;
      kept = readKept(there ?? undefined);
      store.set({ score: scoreOf(kept) });
      await readBook({ ...nothing, table: true });
      return;
    }
    if (read.table !== undefined) {
      sheet = { name: read.sheet!, whole: read.whole ?? false };
      store.set({ beside: read.beside ?? null });
      take(read.table);
    }
    planSelected();
  }

  /** The selected row and the rows that were edited; the whole table only when a look at these does not do. */
  async function readSelection({ selection, rows }: Due): Promise<void> {
    const { table } = store.get();
    // A sheet that was looked through has no more tables for being clicked at.
    if (table === null && sheet?.whole === true) return;
    if (table === null && !selection) return;
    const read = table && (await host.readRows(table, [...rows]));
    if (!alive) return;
    if (table === null || read === null) {
      await readBook({ ...nothing, table: true });
      return;
    }
    const fresh = table.rows.map((cells, row) => read.rows.get(row) ?? cells);
    store.set({ table: { ...table, rows: fresh, selected: read.selected } });
    planSelected();
  }

  /** Table and lists as they are at this moment, whatever was read before. */
  async function readAll(): Promise<void> {
    due = everything;
    await readDue();
  }

  /** One read at a time; what comes in between is made up for by one more at the end. */
  function request(): Promise<void> {
    reading ??= (async () => {
      while (!isNothing(due) && alive) {
        try {
          await readDue();
        } catch (thrown) {
          if (store.get().phase === "reading") store.set({ phase: "none" });
          // While a cell is being edited there is nothing to tell: the next event reads again.
          // What was said of a write stands: it does not fail because it is not read again.
          const isSilent =
            store.get().message !== undefined || (thrown instanceof HostError && thrown.code === "editing");
          if (!isSilent) fail(thrown);
          break;
        }
      }
      reading = undefined;
    })();
    return reading;
  }

  /** Something has changed: it is read when nothing more has come for a while, and when the pane is to be seen. */
  function later(more: Due, delay: number): void {
    due = merge(due, more);
    if (!alive || !shown || isNothing(due) || store.get().busy) return;
    clearTimeout(timer);
    timer = setTimeout(() => void request(), delay);
  }

  /** Events are heard from the first read on. */
  function listen(): void {
    stops ??= [
      host.onSelectionChange((otherSheet) =>
        later({ ...nothing, selection: true, table: otherSheet, lists: otherSheet && isListless() }, SELECTED),
      ),
      host.onDataChange((change) => {
        const { table, lists } = store.get();
        later(dueAfter(change, { sheet: sheet?.name, table, lists }), TYPED);
      }),
    ];
  }
  const isListless = () => store.get().lists.some((list) => list === null);

  const stopShown = host.onShown((now) => {
    shown = now;
    if (opened && now) void request();
  });

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
      due = merge(due, { ...nothing, table: true, lists: isListless() });
      await request();
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
    open() {
      opened = true;
      if (shown) void request();
    },
    refresh() {
      store.set({ message: undefined });
      due = everything;
      return request();
    },

    setUnits(units) {
      store.set({ asked: units });
      planSelected();
    },

    match(index, key) {
      const { table } = store.get();
      if (table === null || normalHeading(table.headings[index]) === "") return;
      say(withAnswer(kept, table.headings, index, key === "auto" ? undefined : key));
      planSelected();
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
        say({ ...kept, heads: [...kept.heads.filter((other) => other.join("|") !== head.join("|")), head] });
      } catch (thrown) {
        fail(thrown);
        return;
      }
      due = merge(due, { ...nothing, table: true });
      await request();
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
      due = merge(due, { ...nothing, table: true });
      await request();
    },

    say: (message) => store.set({ message }),

    destroy() {
      alive = false;
      clearTimeout(timer);
      advising.stop();
      stopShown();
      for (const stop of stops ?? []) stop();
    },
  };
}
