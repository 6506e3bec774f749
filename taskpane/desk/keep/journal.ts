/**
 * The steps of a workbook as records of a store, one each: an edit writes its own step and nothing else, and what is
 * undone is taken out again. Read in the order of their numbers the records are the edits in their order.
 */
import type { Edit } from "../model/types.ts";

/** A piece of a step: what was joined to it later comes in parts of its own. */
export interface StepRecord {
  readonly number: number;
  readonly part: number;
  readonly edits: readonly Edit[];
}

export interface JournalChange {
  readonly put: readonly StepRecord[];
  /** Numbers of steps whose parts all go. */
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

/** Steps from their parts, in order. */
export function stepsFrom(records: readonly StepRecord[]): Edit[][] {
  const steps = new Map<number, Edit[]>();
  for (const { number, edits } of [...records].sort((a, b) => a.number - b.number || a.part - b.part)) {
    const step = steps.get(number);
    if (step) step.push(...edits);
    else steps.set(number, [...edits]);
  }
  return [...steps.values()];
}

export function createJournal(): Journal {
  let tracked: { readonly edits: readonly Edit[]; readonly number: number; part: number; length: number }[] = [];
  let firstLength = 0;
  let next = 0;

  return {
    change([first = [], ...rest]) {
      const put: StepRecord[] = [];
      // The oldest steps have become part of the first: their records stay as they are and where they are.
      while (tracked.length > 0 && first.length > firstLength && first[firstLength] === tracked[0]!.edits[0])
        firstLength += tracked.shift()!.length;
      if (first.length > firstLength) {
        put.push({ number: next++, part: 0, edits: first.slice(firstLength) });
        firstLength = first.length;
      }
      const known = new Map(tracked.map((entry) => [entry.edits, entry]));
      tracked = rest.map((edits) => {
        const entry = known.get(edits) ?? { edits, number: next++, part: 0, length: 0 };
        known.delete(edits);
        if (entry.length < edits.length) {
          put.push({ number: entry.number, part: entry.part++, edits: edits.slice(entry.length) });
          entry.length = edits.length;
        }
        return entry;
      });
      return { put, remove: [...known.values()].map(({ number }) => number) };
    },
  };
}
