/**
 * What to change in a row: the smallest change that makes it hold, and the cheapest row that holds. Both work the row
 * out again and again, with a bound on how often; nothing is guessed. Cheapest means money where the machine has a
 * rate (the edge's share is in it), else time.
 */
import type { FindingCode, LimitKey, Verdict } from "../findings.ts";
import { WEIGHT } from "../findings.ts";
import { OPERATIONS } from "../operations/index.ts";
import type { Lever } from "../operations/operation.ts";
import type { Handed } from "../operations/shared/job.ts";
import type { Plan } from "../operations/shared/types.ts";
import type { Lists, ReadRow, Tool } from "../table/read.ts";
import {
  type Candidate,
  type Change,
  candidatesFor,
  changeOf,
  feedOf,
  mayGoFaster,
  otherTools,
  planned,
  type Situation,
  shortest,
  situationOf,
  speedRange,
  withChanges,
} from "./changes.ts";
import { RELIEF } from "./relief.ts";
import { planRow } from "./row.ts";

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

/** Most times that a row is worked out for its advice. */
export const ADVICE_BUDGET = 74;
/** Of these, for single changes and for pairs. */
const FOR_SINGLES = 34;
const FOR_PAIRS = 20;
/** Different cells that are offered. */
const MOST_SINGLES = 3;
/** Singles that are combined when none is enough. */
const PARTNERS = 4;
/** A row that is not this much cheaper is not worth a change. */
const WORTH = 0.97;

const outcome = (plan: Plan): Outcome => {
  const { load, time, cost } = plan.results;
  return {
    verdict: plan.verdict,
    limit: plan.binding?.key ?? null,
    load: load ?? null,
    time: time ?? null,
    cost: cost ?? null,
  };
};

/** Money where it is known, else seconds. */
const price = (plan: Plan): number => plan.results.cost ?? plan.results.time ?? Number.POSITIVE_INFINITY;

interface Found {
  readonly changes: readonly Change[];
  readonly plan: Plan;
}

/** A search that can be left between two times that the row is worked out. */
type Steps<T> = Generator<void, T>;

class Search {
  tried = 0;
  readonly base: Plan;
  readonly situation: Situation;
  private readonly read: ReadRow;
  private readonly lists: Lists;
  private readonly sharing: number;
  private readonly handed: Handed | undefined;

  constructor(read: ReadRow, lists: Lists, sharing: number, handed: Handed | undefined) {
    this.read = read;
    this.lists = lists;
    this.sharing = sharing;
    this.handed = handed;
    this.base = this.worked([]);
    this.situation = situationOf(read.row, this.base, lists);
  }

  /** Works the row out with changes; whoever looks on may rest before it. */
  *run(changes: readonly Change[]): Steps<Plan> {
    yield;
    return this.worked(changes);
  }

  private worked(changes: readonly Change[]): Plan {
    this.tried++;
    const changed = { ...this.read, row: withChanges(this.read.row, changes) };
    return planRow(changed, this.lists, this.sharing, false, this.handed);
  }

  get spent(): boolean {
    return this.tried >= ADVICE_BUDGET;
  }
}

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
  if (read.row.operation === undefined || read.row.units === undefined || read.problems.length > 0)
    return { advice: [], tried: 0, open: [] };
  const search = new Search(read, lists, sharing, handed);
  const { base } = search;
  const before = outcome(base);
  const told = (kind: Advice["kind"], { changes, plan }: Found): Advice => ({
    kind,
    changes: changes.map((c) => ({ ...c, takes: c.to === null ? takenBy(search, changes, plan, c.key) : undefined })),
    before,
    after: outcome(plan),
  });
  const holding = yield* smallest(search);
  const cheap = worthIt(yield* cheapest(search, holding), holding.slice(0, MOST_SINGLES));
  const advice = holding.slice(0, MOST_SINGLES).map((found) => told("smallest change", found));
  if (cheap) advice.push(told("cheapest", cheap));
  const open = advice.length > 0 ? [] : weighty(base).map((f) => f.code);
  return { advice, tried: search.tried, base, open };
}

/** What a plan took for a cell that was cleared. */
function takenBy({ situation: { row, lists } }: Search, changes: readonly Change[], plan: Plan, key: Lever) {
  return planned(situationOf(withChanges(row, changes), plan, lists), key);
}

const weighty = (plan: Plan) => plan.findings.filter((f) => f.severity !== "ok");

/** How far a row is from holding: stops, then checks, then the load. */
const badness = (plan: Plan): number =>
  weighty(plan).reduce((sum, f) => sum + (WEIGHT[f.severity] === 2 ? 100 : 1), 0) +
  Math.min(0.9, (plan.results.load ?? 0) / 10);

/** The smallest changes that make the row hold, one a cell; pairs where no single one is enough. None for a row that holds. */
function* smallest(search: Search): Steps<Found[]> {
  const levers = new Set<Lever>(weighty(search.base).flatMap((f) => RELIEF[f.code]));
  const singles = candidatesFor(search.situation, levers);
  const found: Found[] = [];
  const partly: (Candidate & { plan: Plan })[] = [];
  for (const candidate of singles) {
    if (search.tried >= FOR_SINGLES || found.length === MOST_SINGLES) break;
    const { change } = candidate;
    if (found.some((f) => f.changes[0]!.key === change.key)) continue;
    const changes = changesOf(candidate);
    const plan = yield* search.run(changes);
    if (plan.verdict === "ok") found.push({ changes, plan });
    else if (badness(plan) < badness(search.base)) partly.push({ ...candidate, plan });
  }
  if (found.length > 0) return found;
  const both = yield* pairs(search, partly);
  if (both.length > 0 || search.base.verdict !== "stop") return both;
  // Nothing makes it hold: what at least takes the stop away.
  const lighter = partly.find((c) => c.plan.verdict === "check");
  return lighter ? [{ changes: changesOf(lighter), plan: lighter.plan }] : [];
}

const changesOf = ({ change, along }: Candidate): readonly Change[] => (along ? [change, along] : [change]);

/** The singles that helped most, each with what would relieve the rest. */
function* pairs(search: Search, partly: readonly (Candidate & { plan: Plan })[]): Steps<Found[]> {
  const most = search.tried + FOR_PAIRS;
  const best = [...partly].sort((a, b) => badness(a.plan) - badness(b.plan));
  const firsts = best.filter((c, i) => best.findIndex((o) => o.change.key === c.change.key) === i).slice(0, PARTNERS);
  for (const first of firsts) {
    const rest = new Set<Lever>(weighty(first.plan).flatMap((f) => RELIEF[f.code]));
    const own = changesOf(first);
    for (const { key } of own) rest.delete(key);
    const now = situationOf(withChanges(search.situation.row, own), first.plan, search.situation.lists);
    for (const second of candidatesFor(now, rest).slice(0, Math.ceil(FOR_PAIRS / firsts.length))) {
      if (search.tried >= most || search.spent) return [];
      const changes = [...own, ...changesOf(second)];
      const plan = yield* search.run(changes);
      if (plan.verdict === "ok") return [{ changes, plan }];
    }
  }
  return [];
}

/** The cheapest way, where it is another than those that are offered already and saves something against the cheapest of them. */
function worthIt(cheap: Found | undefined, offered: readonly Found[]): Found | undefined {
  const least = Math.min(...offered.filter((f) => f.plan.verdict === "ok").map((f) => price(f.plan)));
  return cheap && (least === Number.POSITIVE_INFINITY || price(cheap.plan) <= WORTH * least) ? cheap : undefined;
}

/** Cells that money is looked for in, and shares of the list's feed that are tried. */
const FEEDS = [1, 0.8, 0.6, 0.4] as const;
const PASSES = [1, 2, 3, 4, 6] as const;

/** Changes that stand, and the tool that they are tried with. */
interface Branch {
  readonly changes: readonly Change[];
  readonly tool: Tool | undefined;
}

/**
 * Branch and bound over tool, stick-out, speed, feed and passes. The price of a branch is bounded from below by the
 * price already known for the tool, scaled as if half of it went with feed and passes.
 */
function* cheapest(search: Search, holding: readonly Found[]): Steps<Found | undefined> {
  const { situation, base } = search;
  const { row } = situation;
  const levers = new Set<Lever>(row.operation === undefined ? [] : OPERATIONS[row.operation].levers);
  let best: Found | undefined;
  let limit = base.verdict === "ok" ? price(base) * WORTH : Number.POSITIVE_INFINITY;
  const consider = (changes: readonly Change[], plan: Plan) => {
    if (plan.verdict !== "ok" || changes.length === 0 || price(plan) >= limit) return;
    limit = price(plan);
    best = { changes, plan };
  };
  for (const { changes, plan } of holding) consider(changes, plan);
  const own = situation.tool;
  const others = levers.has("tool") ? otherTools(situation).slice(0, 4) : [];
  const start: Branch[] = [{ changes: [], tool: own }, ...holding.map((f) => ({ changes: f.changes, tool: own }))];
  const branches = [
    ...start.slice(0, 2),
    ...others.map((tool): Branch => ({ changes: [changeOf(situation, "tool", tool.tool)], tool })),
  ];
  for (const { changes: fixed, tool } of branches) {
    if (tool === undefined) continue;
    const set = new Set(fixed.map((c) => c.key));
    const free = (key: Lever) => levers.has(key) && !set.has(key);
    const range = speedRange(situation, tool);
    const faster = mayGoFaster(situation);
    const now = base.results.surfaceSpeed ?? 0;
    // The middle and the ends of the range: what is cheapest depends on what an edge costs.
    const speeds = free("surfaceSpeed") && range ? [range[1], (range[0] + range[1]) / 2, range[0]] : [];
    const speedChanges: (readonly Change[])[] = [
      [],
      ...speeds.filter((v) => faster || v <= now).map((v) => [changeOf(situation, "surfaceSpeed", v)]),
    ];
    const stick = row.stickOut ?? tool.stickOut ?? 0;
    const least = shortest(situation, tool) ?? stick;
    const sticks: (readonly Change[])[] = [[]];
    if (free("stickOut") && least < 0.95 * stick) sticks.push([changeOf(situation, "stickOut", least)]);
    const feed = feedOf(situation, tool);
    for (const held of sticks) {
      for (const speed of speedChanges) {
        if (search.spent) return best;
        const first = [...fixed, ...held, ...speed];
        const plan = first.length === 0 ? base : yield* search.run(first);
        consider(first, plan);
        const used = (plan.results.passes ?? 1) + (plan.results.springPasses ?? 0);
        for (const f of free("feedPerTooth") && feed !== undefined ? FEEDS : [1]) {
          for (const n of free("passes") ? [undefined, ...PASSES] : [undefined]) {
            if (f === 1 && n === undefined) continue;
            // Cutting goes with passes over feed; half of the known price may be moves and changes that do not.
            const bound = price(plan) * Math.min(1, 0.5 + (0.5 * (n ?? used)) / used) * Math.min(1, 0.5 + 0.5 / f);
            if (bound >= limit) continue;
            if (search.spent) return best;
            const changes = [...first];
            if (f !== 1) changes.push(changeOf(situation, "feedPerTooth", feed! * f));
            if (n !== undefined && !(row.passes === undefined && n === base.results.passes))
              changes.push(changeOf(situation, "passes", n));
            consider(changes, yield* search.run(changes));
          }
        }
      }
    }
  }
  return best;
}
