/** How long something takes, as far as a test may ask: the processor's time of the quickest of several goes, beside another's. */

/** Milliseconds of the processor in the quickest of `times` goes, whoever else wants it; no more goes once one took less than `enough`. */
export function quickest(call: () => unknown, times = 5, enough = 0): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < times && least > enough; i++) {
    const start = process.cpuUsage();
    call();
    const { user, system } = process.cpuUsage(start);
    least = Math.min(least, (user + system) / 1000);
  }
  return least;
}

/** Milliseconds of which nothing can be told. */
const TOO_QUICK = 20;

/**
 * How much longer eight times the size takes: eight times if the time grows with it, sixty-four times with its square. 1 where
 * that is too quick to tell.
 */
export function growth(call: (size: number) => unknown, size: number, times = 5): number {
  call(size / 2);
  const eight = quickest(() => call(8 * size), times, TOO_QUICK);
  return eight < TOO_QUICK ? 1 : eight / quickest(() => call(size), times);
}
/** What {@link growth} must stay under. */
export const LINEAR = 32;
