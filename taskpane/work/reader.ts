/**
 * Reads the workbook for the pane: what has to be read, and when, is the business of due.ts; nothing is read of its
 * own accord while the pane is not to be seen.
 */
import { type Host, HostError } from "../host/host.ts";
import { KEPT_AS } from "./answers.ts";
import { type Due, dueAfter, everything, isNothing, merge, nothing } from "./due.ts";
import { resultScore } from "./planning.ts";
import type { Said } from "./said.ts";
import type { Store } from "./state.ts";
import { LISTS, type State } from "./types.ts";

/** Milliseconds that are waited for more of the same: another row selected, another cell typed. */
const [SELECTED, TYPED] = [120, 400];

export interface Reader {
  /** The pane is there: it is read as soon as it is to be seen. */
  open(): void;
  /** What is out of date from now on; `request` reads it. */
  mark(more: Partial<Due>): void;
  /** Reads what is out of date. One read at a time; what comes in between is made up for by one more at the end. */
  request(): Promise<void>;
  /** Table and lists as they are at this moment, whatever was read before. */
  readAll(): Promise<void>;
  /** Waits for the read that is under way. */
  settled(): Promise<void> | undefined;
  isListless(): boolean;
  stop(): void;
}

export function createReader(
  host: Host,
  store: Store<State>,
  said: Said,
  planSelected: () => void,
  fail: (thrown: unknown) => void,
  isAlive: () => boolean,
): Reader {
  let shown = false;
  let opened = false;
  /** What is out of date, and the sheet that was read last. */
  let due: Due = everything;
  let sheet: { readonly name: string; readonly whole: boolean } | undefined;
  let reading: Promise<void> | undefined;
  let stops: (() => void)[] | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const isListless = () => store.get().lists.some((list) => list === null);

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
      ...(wantsTable && { table: store.get().score, beside: resultScore, settings: true }),
      ...(wantsLists && { lists: LISTS }),
    });
    if (!isAlive()) return;
    if (read.lists) store.set({ lists: read.lists });
    if (read.settings !== undefined && said.takeKept(read.settings[KEPT_AS] ?? null)) {
      await readBook({ ...nothing, table: true });
      return;
    }
    if (read.table !== undefined) {
      sheet = { name: read.sheet!, whole: read.whole ?? false };
      store.set({ beside: read.beside ?? null });
      said.take(read.table);
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
    if (!isAlive()) return;
    if (table === null || read === null) {
      await readBook({ ...nothing, table: true });
      return;
    }
    const fresh = table.rows.map((cells, row) => read.rows.get(row) ?? cells);
    store.set({ table: { ...table, rows: fresh, selected: read.selected } });
    planSelected();
  }

  function request(): Promise<void> {
    reading ??= (async () => {
      while (!isNothing(due) && isAlive()) {
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

  const mark = (more: Partial<Due>) => {
    due = merge(due, { ...nothing, ...more });
  };

  /** Something has changed: it is read when nothing more has come for a while, and when the pane is to be seen. */
  function later(more: Partial<Due>, delay: number): void {
    mark(more);
    if (!isAlive() || !shown || isNothing(due) || store.get().busy) return;
    clearTimeout(timer);
    timer = setTimeout(() => void request(), delay);
  }

  /** Events are heard from the first read on. */
  function listen(): void {
    stops ??= [
      host.onSelectionChange((otherSheet) =>
        later({ selection: true, table: otherSheet, lists: otherSheet && isListless() }, SELECTED),
      ),
      host.onDataChange((change) => {
        const { table, lists } = store.get();
        later(dueAfter(change, { sheet: sheet?.name, table, lists }), TYPED);
      }),
    ];
  }

  const stopShown = host.onShown((now) => {
    shown = now;
    if (opened && now) void request();
  });

  return {
    open() {
      opened = true;
      if (shown) void request();
    },
    mark,
    request,
    async readAll() {
      mark(everything);
      await readDue();
    },
    settled: () => reading,
    isListless,
    stop() {
      clearTimeout(timer);
      stopShown();
      for (const stop of stops ?? []) stop();
    },
  };
}
