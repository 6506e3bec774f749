/** Looks for advice in slices, so that keys and clicks never wait for it. */
import type { Advisor, Suggestion } from "./types.ts";

/** Milliseconds a row must stay selected before advice is looked for: it is shown first. */
const DELAY = 80;
/** Longest time that the page stands still for it, but for the one step under way [ms]. */
const SLICE = 8;

export interface Looking {
  /** Looks for advice as long as `wanted`; what was looked for before is given up. */
  start(
    steps: () => ReturnType<Advisor>,
    wanted: () => boolean,
    done: (found: readonly Suggestion[]) => void,
    failed: (thrown: unknown) => void,
  ): void;
  stop(): void;
}

export function looking(): Looking {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return {
    start(steps, wanted, done, failed) {
      clearTimeout(timer);
      let search: ReturnType<Advisor> | undefined;
      const slice = () => {
        if (!wanted()) return;
        try {
          search ??= steps();
          const end = performance.now() + SLICE;
          do {
            const step = search.next();
            if (step.done) return done(step.value);
          } while (performance.now() < end);
        } catch (thrown) {
          return failed(thrown);
        }
        timer = setTimeout(slice, 0);
      };
      timer = setTimeout(slice, DELAY);
    },
    stop: () => clearTimeout(timer),
  };
}
