/**
 * What was worked out for rows that come to the same: a job has many features that are alike but for what they are called, how many
 * they are, how deep the hole is; and an edit or a piece of advice changes one cell.
 */
import { Cache } from "../../cache.ts";
import type { Lists } from "../../table/read.ts";
import type { Row, RowKey } from "../../table/rows.ts";

/** Ways of cutting that are remembered for each set of lists: those of a few dozen cuts that differ. More of them cost time to keep. */
export const WAYS = 200;

/**
 * A memory for each set of lists: two tables with lists of their own leave each other's alone, names of tools and materials are those
 * of one list, and what belongs to lists that nobody holds goes with them.
 */
export function rememberedFor<V>(name: string, most: number): (lists: Lists) => Cache<string, V> {
  const memories = new WeakMap<Lists, Cache<string, V>>();
  return (lists) => {
    const known = memories.get(lists);
    if (known) return known;
    const made = new Cache<string, V>(name, most);
    memories.set(lists, made);
    return made;
  };
}

/** Those cells of a row, and no others. */
export function onlyCells<K extends RowKey>(row: Row, keys: readonly K[]): Pick<Row, K> {
  const cells: Partial<Pick<Row, K>> = {};
  for (const key of keys) cells[key] = row[key];
  return cells as Pick<Row, K>;
}

/** The same answer each time, worked out when it is first asked for. */
export function once<T>(make: () => T): () => T {
  let made: { readonly answer: T } | undefined;
  return () => {
    made ??= { answer: make() };
    return made.answer;
  };
}
