/** The smallest changes that make a row hold. */
import type { Lever } from "../operations/operation.ts";
import type { Plan } from "../operations/shared/types.ts";
import { type Candidate, type Change, type Changed, candidatesFor, situationOf, withChanges } from "./changes.ts";
import { RELIEF } from "./relief.ts";
import { badness, type Found, type Search, type Steps, weighty } from "./search.ts";

/** How often the row is worked out in all before pairs are tried, and how often for pairs. */
const FOR_SINGLES = 34;
const FOR_PAIRS = 20;
/** Different cells that are offered. */
const MOST_SINGLES = 3;
/** Singles that are combined when none is enough. */
const PARTNERS = 4;

type Partly = Candidate & { readonly plan: Plan };

/** Cells that may relieve what is wrong with a row. */
const leversFor = (plan: Plan) => new Set<Changed>(weighty(plan).flatMap((f) => RELIEF[f.code]));

const changesOf = ({ change, along }: Candidate): readonly Change[] => (along ? [change, along] : [change]);

/** The smallest changes that make the row hold, one a cell; pairs where no single one is enough. None for a row that holds. */
export function* smallest(search: Search): Steps<Found[]> {
  const { situation, base } = search;
  const found = new Map<Lever, Found>();
  const partly: Partly[] = [];
  for (const candidate of candidatesFor(situation, leversFor(base))) {
    if (search.tried >= FOR_SINGLES || found.size === MOST_SINGLES) break;
    const { key } = candidate.change;
    if (found.has(key)) continue;
    const changes = changesOf(candidate);
    const plan = yield* search.run(changes);
    if (plan.verdict === "ok") found.set(key, { changes, plan });
    else if (badness(plan) < badness(base)) partly.push({ ...candidate, plan });
  }
  if (found.size > 0) return [...found.values()];
  const both = yield* pairs(search, partly);
  if (both || base.verdict !== "stop") return both ? [both] : [];
  // Nothing makes it hold: what at least takes the stop away.
  const lighter = partly.find((c) => c.plan.verdict === "check");
  return lighter ? [{ changes: changesOf(lighter), plan: lighter.plan }] : [];
}

/** The singles that helped most, one a cell, each with what would relieve the rest. */
function* pairs(search: Search, partly: readonly Partly[]): Steps<Found | undefined> {
  const { row, lists } = search.situation;
  const firsts = new Map<Lever, Partly>();
  for (const one of [...partly].sort((a, b) => badness(a.plan) - badness(b.plan)))
    if (firsts.size < PARTNERS && !firsts.has(one.change.key)) firsts.set(one.change.key, one);
  for (const first of firsts.values()) {
    const own = changesOf(first);
    const rest = leversFor(first.plan);
    for (const { key } of own) rest.delete(key);
    const now = situationOf(withChanges(row, own), first.plan, lists);
    for (const second of candidatesFor(now, rest).slice(0, Math.floor(FOR_PAIRS / firsts.size))) {
      const changes = [...own, ...changesOf(second)];
      const plan = yield* search.run(changes);
      if (plan.verdict === "ok") return { changes, plan };
    }
  }
  return undefined;
}
