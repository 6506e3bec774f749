/** How long something takes, as far as a test may ask: the processor's time of the quickest of several goes, beside another's. */

/** Milliseconds of the processor in the quickest of `times` goes, whoever else wants it. */
export function quickest(call: () => unknown, times = 5): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < times; i++) {
    const start = process.cpuUsage();
    call();
    const { user, system } = process.cpuUsage(start);
    least = Math.min(least, (user + system) / 1000);
  }
  return least;
}

/**
 * How much longer eight times the size takes: eight times if the time grows with it, sixty-four times with its square. Below 20 ms
 * nothing can be told, and 1 is answered.
 */
export function growth(call: (size: number) => unknown, size: number, times = 5): number {
  call(size / 2);
  const eight = quickest(() => call(8 * size), times);
  return eight < 20 ? 1 : eight / quickest(() => call(size), times);
}
/** What {@link growth} must stay under. */
export const LINEAR = 32;
