/** The search for passes, the same for threads and walls. */

/**
 * The first of the counts, fewest first, whose load is within its limit, else the one with the least load. A later count
 * must be better by `worth` to be preferred.
 */
export function lightest<A extends { readonly load: number }>(
  counts: readonly number[],
  attempt: (passes: number) => A,
  worth = 1,
): A | undefined {
  let best: A | undefined;
  for (const passes of counts) {
    const tried = attempt(passes);
    if (!best || tried.load < best.load * worth) best = tried;
    if (tried.load <= 1) break;
  }
  return best;
}
