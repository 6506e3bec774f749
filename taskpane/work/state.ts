/** Plain state and who listens to it. Listeners hear once per turn, however many changes the turn made. */
export interface Store<T extends object> {
  get(): Readonly<T>;
  set(change: Partial<T>): void;
  /** Calls back after each change (not at once); the answer stops it. */
  subscribe(listener: (state: Readonly<T>) => void): () => void;
}

export function createStore<T extends object>(initial: T): Store<T> {
  let state: Readonly<T> = { ...initial };
  let waiting = false;
  const listeners = new Set<(state: Readonly<T>) => void>();
  return {
    get: () => state,
    set(change) {
      const keys = Object.keys(change) as (keyof T)[];
      if (keys.every((key) => Object.is(state[key], change[key]))) return;
      state = { ...state, ...change };
      if (waiting) return;
      waiting = true;
      queueMicrotask(() => {
        waiting = false;
        for (const listener of [...listeners]) listener(state);
      });
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
