/**
 * What to change in a row: the smallest change that makes it hold, and the cheapest row that holds. Both work the row
 * out again and again, with a bound on how often; nothing is guessed. Cheapest means money where the machine has a
 * rate (the edge's share is in it), else time.
 */
import type { FindingCode, LimitKey, Verdict } from "../findings.ts";
import type { Handed } from "../operations/shared/job.ts";
import type { Plan } from "../operations/shared/types.ts";
import type { Lists, ReadRow } from "../table/read.ts";
import { type Change, planned, situationOf, withChanges } from "./changes.ts";
import { cheapest } from "./cheapest.ts";
import { planRow } from "./row.ts";
import { type Found, Search, type Steps, weighty } from "./search.ts";
import { smallest } from "./smallest.ts";

export type { Change } from "./changes.ts";

/** A row's outcome in short. */
export interface Outcome {
  readonly verdict: Verdict;
  readonly limit: LimitKey | null;
  readonly load: number | null;
  /** Seconds and money per part. */
  readonly time: number | null;
  readonly cost: number | null;
}

export interface Advice {
  readonly kind: "smallest change" | "cheapest";
  readonly changes: readonly Change[];
  readonly before: Outcome;
  readonly after: Outcome;
}

export interface Advised {
  readonly advice: readonly Advice[];
  /** How often the row was worked out. */
  readonly tried: number;
  /** The row as it is. */
  readonly base?: Plan;
  /** Findings that no change of the row's cells relieved, weightiest first; empty for a row that holds. */
  readonly open: readonly FindingCode[];
}

const outcome = ({ verdict, binding, results: { load, time, cost } }: Plan): Outcome => ({
  verdict,
  limit: binding?.key ?? null,
  load: load ?? null,
  time: time ?? null,
  cost: cost ?? null,
});

/** Advice for one row, best first, and what nothing in the row relieves. */
export function advise(read: ReadRow, lists: Lists, sharing = 1, handed?: Handed): Advised {
  const steps = advising(read, lists, sharing, handed);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same in steps, one for each time that the row is worked out: to be looked for while a person goes on working. */
export function* advising(read: ReadRow, lists: Lists, sharing = 1, handed?: Handed): Steps<Advised> {
  const { row, problems } = read;
  if (row.operation === undefined || row.units === undefined || problems.length > 0)
    return { advice: [], tried: 0, open: [] };
  const search = new Search(row, lists, (changed) => planRow({ ...read, row: changed }, lists, sharing, false, handed));
  const { base } = search;
  const before = outcome(base);
  const told =
    (kind: Advice["kind"]) =>
    ({ changes, plan }: Found): Advice => {
      const now = situationOf(withChanges(row, changes), plan, lists);
      // What the plan took for a cell that was cleared.
      const all = changes.map((c) => (c.to === null ? { ...c, takes: planned(now, c.key) } : c));
      return { kind, changes: all, before, after: outcome(plan) };
    };
  const holding = yield* smallest(search);
  const cheap = yield* cheapest(search, holding);
  const advice = [...holding.map(told("smallest change")), ...(cheap ? [told("cheapest")(cheap)] : [])];
  const open = advice.length > 0 ? [] : weighty(base).map((f) => f.code);
  return { advice, tried: search.tried, base, open };
}
