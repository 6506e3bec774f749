/** The browser's own store, as little of it as is used: three tables, whole transactions, promises. */

/** What is known of a kept piece of work without reading it. */
export interface KeptWork {
  readonly id: string;
  /** Name of the file, as the person knows it. */
  readonly name: string;
  /** When it was opened and last changed, milliseconds since 1970. */
  readonly opened: number;
  readonly changed: number;
  /** Steps that are in no file yet. */
  readonly unsaved: boolean;
  readonly steps: number;
  /** The file itself, where the browser gives a handle. */
  readonly handle?: FileSystemFileHandle;
  /** What the file looked like on disk when it was read or written last. */
  readonly seen?: { readonly modified: number; readonly size: number };
}

const NAME = "tablefeed-desk";
const VERSION = 1;
/** Works by id, the packages they began as, and each step of each in parts, by [id, number, part]. */
const TABLES = ["works", "files", "steps"] as const;
type Table = (typeof TABLES)[number];

const done = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

export interface Transaction {
  get<T>(table: Table, key: IDBValidKey): Promise<T | undefined>;
  all<T>(table: Table, keys?: IDBKeyRange): Promise<T[]>;
  put(table: Table, value: unknown, key?: IDBValidKey): void;
  remove(table: Table, key: IDBValidKey | IDBKeyRange): void;
}

export interface Database {
  /** Runs in one transaction: all of it is stored, or nothing. */
  run<T>(
    tables: readonly Table[],
    mode: "readonly" | "readwrite",
    work: (t: Transaction) => Promise<T> | T,
  ): Promise<T>;
  close(): void;
}

export async function openDatabase(factory: IDBFactory = indexedDB): Promise<Database> {
  const request = factory.open(NAME, VERSION);
  request.onupgradeneeded = () => {
    const database = request.result;
    for (const table of TABLES) if (!database.objectStoreNames.contains(table)) database.createObjectStore(table);
  };
  const database = await done(request);
  // A newer version of the desk in another tab may change the store: this one lets go.
  database.onversionchange = () => database.close();
  return {
    async run(tables, mode, work) {
      const transaction = database.transaction(tables as Table[], mode);
      const finished = new Promise<void>((resolve, reject) => {
        transaction.oncomplete = () => resolve();
        transaction.onabort = () => reject(transaction.error ?? new Error("the store gave up"));
      });
      // Whoever waits for the end hears of it below.
      finished.catch(() => undefined);
      const answer = await work({
        get: (table, key) => done(transaction.objectStore(table).get(key)),
        all: (table, keys) => done(transaction.objectStore(table).getAll(keys)),
        put: (table, value, key) => void transaction.objectStore(table).put(value, key),
        remove: (table, key) => void transaction.objectStore(table).delete(key),
      });
      // Said now, not left to the browser to find out: a page that goes the next moment takes nothing with it.
      if (mode === "readwrite") transaction.commit();
      await finished;
      return answer;
    },
    close: () => database.close(),
  };
}

export const stepsOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id, -1], [id, Number.MAX_SAFE_INTEGER]);

export const partsOf = (id: string, number: number): IDBKeyRange =>
  IDBKeyRange.bound([id, number, -1], [id, number, Number.MAX_SAFE_INTEGER]);
