/** Tabs of the desk and each other: who has which work open. A tab that dies lets go of it by itself. */

const lockOf = (id: string) => `tablefeed-desk ${id}`;
const CHANNEL = "tablefeed-desk";

export interface Claim {
  release(): void;
}

/**
 * Takes a work for this tab; undefined when another one has it.
 *
 * @param patience - milliseconds to wait for it: a page that is loaded again may come before its old self has let go
 */
export function claim(id: string, patience = 0): Promise<Claim | undefined> {
  return new Promise((resolve, reject) => {
    const how = patience > 0 ? { signal: AbortSignal.timeout(patience) } : { ifAvailable: true };
    navigator.locks
      .request(lockOf(id), how, (lock) => {
        if (lock === null) {
          resolve(undefined);
          return undefined;
        }
        return new Promise<void>((end) => {
          resolve({ release: () => end() });
        });
      })
      .catch((problem: unknown) => {
        if (patience > 0 && problem instanceof DOMException) resolve(undefined);
        else reject(problem);
      });
  });
}

/** Ids of the works that are open in any tab, this one's included. */
export async function openWorks(): Promise<ReadonlySet<string>> {
  const { held = [] } = await navigator.locks.query();
  const start = lockOf("");
  return new Set(held.flatMap(({ name }) => (name?.startsWith(start) ? [name.slice(start.length)] : [])));
}

/** News from the other tabs: something was opened, kept, saved or let go. */
export function otherTabs(heard: () => void): { tell(): void; close(): void } {
  const channel = new BroadcastChannel(CHANNEL);
  channel.onmessage = () => heard();
  return { tell: () => channel.postMessage("changed"), close: () => channel.close() };
}
