/**
 * The steps of a workbook as records of a store, one each: an edit writes its own step and nothing else, and what is
 * undone is taken out again. Read in the order of their numbers the records are the edits in their order.
 */
import type { Edit } from "../model/types.ts";

export interface JournalChange {
  readonly put: readonly { readonly number: number; readonly edits: readonly Edit[] }[];
  readonly remove: readonly number[];
}

export interface Journal {
  /**
   * What has to be stored after a change.
   *
   * @param steps - the model's steps: the same array for the same step each time; the first one cannot be undone and
   *   takes in the oldest others when there are too many
   */
  change(steps: readonly (readonly Edit[])[]): JournalChange;
}

export function createJournal(): Journal {
  let tracked: { readonly edits: readonly Edit[]; readonly number: number; length: number }[] = [];
  let firstLength = 0;
  let next = 0;

  return {
    change([first = [], ...rest]) {
      const put: { number: number; edits: readonly Edit[] }[] = [];
      // The oldest steps have become part of the first: their records stay as they are and where they are.
      while (tracked.length > 0 && first.length > firstLength && first[firstLength] === tracked[0]!.edits[0])
        firstLength += tracked.shift()!.length;
      if (first.length > firstLength) {
        put.push({ number: next++, edits: first.slice(firstLength) });
        firstLength = first.length;
      }
      const known = new Map(tracked.map((entry) => [entry.edits, entry]));
      tracked = rest.map((edits) => {
        const entry = known.get(edits) ?? { edits, number: next++, length: -1 };
        known.delete(edits);
        if (entry.length !== edits.length) {
          entry.length = edits.length;
          put.push({ number: entry.number, edits });
        }
        return entry;
      });
      return { put, remove: [...known.values()].map(({ number }) => number) };
    },
  };
}
