/**
 * One piece of work, kept in this browser from the moment it is opened: the package as it came, and each step as it is
 * made. It outlives the tab, the browser and the server; it is given up only when the person says so.
 */
import type { Edit } from "../model/types.ts";
import { type Database, type KeptWork, openDatabase, partsOf, stepsOf } from "./database.ts";
import { createJournal, type StepRecord, stepsFrom } from "./journal.ts";
import { type Claim, claim, openWorks, otherTabs } from "./tabs.ts";

/** What of the model is followed. */
export interface Followed {
  steps(): readonly (readonly Edit[])[];
  unsaved(): boolean;
  onChange(listener: () => void): () => void;
}

export interface Brought {
  readonly work: KeptWork;
  readonly bytes: Uint8Array;
  readonly steps: readonly (readonly Edit[])[];
}

export interface Keeper {
  /** Begins a new piece of work; what was open before stays kept when it has unsaved changes. */
  begin(start: Start): Promise<void>;
  /** Stores each change of the model from now on. */
  follow(model: Followed): void;
  /** The work that is open has reached a file. */
  saved(file?: {
    readonly handle?: FileSystemFileHandle;
    readonly name?: string;
    readonly seen?: KeptWork["seen"];
  }): Promise<void>;
  /** Kept works with unsaved changes that no tab has open, newest first. */
  offers(): Promise<readonly KeptWork[]>;
  /** Takes a kept work up again; undefined when another tab was faster or it is gone. */
  bring(id: string, patience?: number): Promise<Brought | undefined>;
  /** The work that this tab had open before it was loaded again. */
  mine(): string | undefined;
  /** Gives a kept work up for good. */
  forget(id: string): Promise<void>;
  /** Stores what is waiting, at once. */
  flush(): Promise<void>;
  current(): KeptWork | undefined;
  /** Another tab that has the same file open: its name. */
  elsewhere(handle: FileSystemFileHandle): Promise<boolean>;
  onOthers(listener: () => void): void;
  /** Told when the browser does not store any more: the reason, or undefined when it does again. */
  onTrouble(listener: (problem: string | undefined) => void): void;
}

export interface Start {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly handle?: FileSystemFileHandle;
  readonly seen?: KeptWork["seen"];
  /** Steps that came with it, when it was brought back. */
  readonly from?: KeptWork;
}

/** Id of the work of this tab; it is there again when the tab is loaded again. */
const MINE = "tablefeed.work";
const session = {
  get(): string | undefined {
    try {
      return sessionStorage.getItem(MINE) ?? undefined;
    } catch {
      return undefined;
    }
  },
  set(id: string): void {
    try {
      sessionStorage.setItem(MINE, id);
    } catch {
      // a browser that keeps nothing offers nothing back either; the person hears of it through onTrouble
    }
  },
};

/** Works without unsaved changes are kept this long, so that a closed tab can be opened again as it was [ms]. */
const UNCHANGED_FOR = 24 * 3600 * 1000;

export function createKeeper(): Keeper {
  let database: Promise<Database> | undefined;
  /** The same once it is open: what is stored then is on its way before the page can go. */
  let opened: Database | undefined;
  const store = (): Promise<Database> => {
    database ??= openDatabase().then((db) => {
      opened = db;
      return db;
    });
    return database;
  };
  let current: KeptWork | undefined;
  let held: Claim | undefined;
  let stop: (() => void) | undefined;
  let waiting = false;
  let writing: Promise<void> = Promise.resolve();
  let write: () => Promise<void> = async () => undefined;
  let troubled: (problem: string | undefined) => void = () => undefined;
  let others: () => void = () => undefined;
  const tabs = otherTabs(() => others());

  /** Nothing that fails here may get in the way of working. */
  const guarded = async (work: () => Promise<void>): Promise<void> => {
    try {
      await work();
      troubled(undefined);
    } catch (problem) {
      console.warn("the browser did not store", problem);
      troubled(
        problem instanceof DOMException && problem.name === "QuotaExceededError"
          ? "the disk is full"
          : "it does not allow it here",
      );
    }
  };

  const put = (work: KeptWork) =>
    store().then((db) => db.run(["works"], "readwrite", (t) => t.put("works", work, work.id)));

  async function removeAll(id: string): Promise<void> {
    await (await store()).run(["works", "files", "steps"], "readwrite", (t) => {
      t.remove("works", id);
      t.remove("files", id);
      t.remove("steps", stepsOf(id));
    });
  }

  /** Works without unsaved changes that nobody has opened for a day. */
  async function tidy(): Promise<void> {
    const open = await openWorks();
    const works = await (await store()).run(["works"], "readonly", (t) => t.all<KeptWork>("works"));
    const old = Date.now() - UNCHANGED_FOR;
    for (const work of works) if (!work.unsaved && work.changed < old && !open.has(work.id)) await removeAll(work.id);
  }

  const flush = (): Promise<void> => {
    if (waiting) {
      waiting = false;
      // The browser keeps the order of what it is given; nothing waits for what came before.
      writing = Promise.all([writing, guarded(write)]).then(() => undefined);
    }
    return writing;
  };

  return {
    current: () => current,
    mine: () => session.get(),
    flush,
    onOthers: (listener) => {
      others = listener;
    },
    onTrouble: (listener) => {
      troubled = listener;
    },

    async begin({ name, bytes, handle, seen, from }) {
      stop?.();
      stop = undefined;
      await flush();
      if (from === undefined || from.id !== current?.id) {
        held?.release();
        held = undefined;
      }
      const now = Date.now();
      const id = from?.id ?? `${now.toString(36)}-${Math.random().toString(36).slice(2, 8)}`;
      const work: KeptWork = {
        id,
        name,
        opened: from?.opened ?? now,
        changed: from?.changed ?? now,
        unsaved: from?.unsaved ?? false,
        steps: from?.steps ?? 0,
        ...(handle ? { handle } : {}),
        ...(seen ? { seen } : {}),
      };
      current = work;
      await guarded(async () => {
        held ??= await claim(id);
        const db = await store();
        const put = (kept: KeptWork) =>
          db.run(["works", "files", "steps"], "readwrite", (t) => {
            // Steps may have been stored meanwhile: what is known of the work by now counts.
            t.put("works", current?.id === id && current.steps > kept.steps ? { ...kept, ...current } : kept, id);
            t.put("files", bytes, id);
            // The steps of a work that was brought back are written again by the journal, all of them in one go.
          });
        try {
          await put(work);
        } catch (problem) {
          // A handle that the browser does not store is no reason to lose the work.
          if (!(problem instanceof DOMException && problem.name === "DataCloneError")) throw problem;
          const { handle: _, ...rest } = work;
          await put(rest);
        }
        session.set(id);
      });
      tabs.tell();
      void guarded(tidy);
    },

    follow(model) {
      stop?.();
      let journal = createJournal();
      let first = true;
      write = async () => {
        const work = current;
        if (work === undefined) return;
        const steps = model.steps();
        const { put: written, remove } = journal.change(steps);
        const next: KeptWork = {
          ...work,
          changed: Date.now(),
          unsaved: model.unsaved(),
          steps: steps.filter(({ length }) => length > 0).length,
        };
        current = next;
        const all = first;
        first = false;
        try {
          const db = opened ?? (await store());
          await db.run(["works", "steps"], "readwrite", (t) => {
            if (all) t.remove("steps", stepsOf(next.id));
            for (const number of remove) t.remove("steps", partsOf(next.id, number));
            for (const record of written) t.put("steps", record, [next.id, record.number, record.part]);
            t.put("works", next, next.id);
          });
        } catch (problem) {
          // Next time all of it is stored.
          journal = createJournal();
          first = true;
          throw problem;
        }
        if (next.unsaved !== work.unsaved) tabs.tell();
      };
      const soon = () => {
        if (waiting) return;
        waiting = true;
        // Right after what the key press does, and before anything else: also in a tab that is not in front.
        queueMicrotask(() => void flush());
      };
      stop = model.onChange(soon);
      if (model.steps().some(({ length }) => length > 0)) soon();
    },

    async saved(file = {}) {
      await flush();
      if (current === undefined) return;
      current = {
        ...current,
        unsaved: false,
        changed: Date.now(),
        ...(file.name === undefined ? {} : { name: file.name }),
        ...(file.handle ? { handle: file.handle } : {}),
        ...(file.seen ? { seen: file.seen } : {}),
      };
      const work = current;
      await guarded(async () => void (await put(work)));
      tabs.tell();
    },

    async offers() {
      try {
        const open = await openWorks();
        const works = await (await store()).run(["works"], "readonly", (t) => t.all<KeptWork>("works"));
        return works
          .filter((work) => work.unsaved && !open.has(work.id) && work.id !== current?.id)
          .sort((a, b) => b.changed - a.changed);
      } catch {
        return [];
      }
    },

    async bring(id, patience) {
      try {
        const taken = await claim(id, patience);
        if (taken === undefined) return undefined;
        const db = await store();
        const found = await db.run(["works", "files", "steps"], "readonly", async (t) => {
          const [work, bytes, steps] = await Promise.all([
            t.get<KeptWork>("works", id),
            t.get<Uint8Array>("files", id),
            t.all<StepRecord>("steps", stepsOf(id)),
          ]);
          return work && bytes ? { work, bytes, steps: stepsFrom(steps) } : undefined;
        });
        if (found === undefined) {
          taken.release();
          return undefined;
        }
        held?.release();
        held = taken;
        current = found.work;
        return found;
      } catch (problem) {
        console.warn("nothing could be brought back", problem);
        return undefined;
      }
    },

    async forget(id) {
      await guarded(() => removeAll(id));
      tabs.tell();
    },

    async elsewhere(handle) {
      try {
        const open = await openWorks();
        const works = await (await store()).run(["works"], "readonly", (t) => t.all<KeptWork>("works"));
        for (const work of works)
          if (work.id !== current?.id && open.has(work.id) && work.handle && (await work.handle.isSameEntry(handle)))
            return true;
      } catch {
        // without a store nothing is known of other tabs
      }
      return false;
    },
  };
}
