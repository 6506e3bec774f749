/** Tabs of the desk and each other: who has which work open. A tab that dies lets go of it by itself. */

const lockOf = (id: string) => `tablefeed-desk ${id}`;
const CHANNEL = "tablefeed-desk";

export interface Claim {
  release(): void;
}

/** Takes a work for this tab; undefined when another one has it. */
export function claim(id: string): Promise<Claim | undefined> {
  return new Promise((resolve, reject) => {
    navigator.locks
      .request(lockOf(id), { ifAvailable: true }, (lock) => {
        if (lock === null) {
          resolve(undefined);
          return undefined;
        }
        return new Promise<void>((end) => {
          resolve({ release: () => end() });
        });
      })
      .catch(reject);
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
