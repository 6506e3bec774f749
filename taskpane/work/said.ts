/** What people said about headings, while the pane is open: known to the state, and kept in the workbook. */
import { type Host, HostError, type Table } from "../host/host.ts";
import { handMatches, KEPT_AS, type Kept, keptText, NOTHING_KEPT, readKept, scoreOf } from "./answers.ts";
import { match } from "./planning.ts";
import type { Store } from "./state.ts";
import type { State } from "./types.ts";

export interface Said {
  now(): Kept;
  /** What people said is this from now on; it is kept in the workbook, one after the other. */
  say(next: Kept): void;
  /** Takes what the workbook holds; true where it says something else than before. */
  takeKept(there: string | null): boolean;
  /** Shows a table, with its columns told by heading and by what was said. */
  take(table: Table | null): void;
}

export function createSaid(host: Host, store: Store<State>, isAlive: () => boolean): Said {
  let kept: Kept = NOTHING_KEPT;
  /** The text of it that the workbook holds. */
  let keptThere: string | null = null;
  let keeping: Promise<void> = Promise.resolve();

  function take(table: Table | null): void {
    const byHand = handMatches(kept, table?.headings);
    store.set({
      byHand,
      phase: table === null ? "none" : "table",
      table,
      matching: table === null ? null : match(table.headings, byHand),
    });
  }

  async function keep(text: string | null): Promise<void> {
    if (!isAlive() || text === keptThere) return;
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
  }

  return {
    now: () => kept,
    take,
    say(next) {
      kept = next;
      store.set({ score: scoreOf(kept) });
      take(store.get().table);
      const text = keptText(kept);
      keeping = keeping.then(() => keep(text));
    },
    takeKept(there) {
      // What is on its way into the workbook is not in it yet.
      if (there === keptThere || keptText(kept) !== keptThere) return false;
      keptThere = there;
      kept = readKept(there ?? undefined);
      store.set({ score: scoreOf(kept) });
      return true;
    },
  };
}
