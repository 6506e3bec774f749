/**
 * What to change: the smallest single change that makes a row hold every limit, and the fastest row that holds them.
 * Both are searches that work the row out again and again, with a bound on how often; nothing is guessed.
 */

import type { LimitKey, Verdict } from "../findings.ts";
import { OPERATIONS } from "../operations/index.ts";
import type { Lever } from "../operations/operation.ts";
import { DRILL_FEED_FACTOR } from "../operations/shared/choices.ts";
import { listedFeed } from "../operations/shared/speed.ts";
import type { Plan } from "../operations/shared/types.ts";
import type { Tool } from "../table/lists.ts";
import type { Quantity } from "../table/quantity.ts";
import type { Lists, ReadRow } from "../table/read.ts";
import { ROW, type Row } from "../table/rows.ts";
import { type DimensionName, fromCanonical, symbol, type Units } from "../units.ts";
import { tidy } from "../words/say.ts";
import { planRow } from "./row.ts";

type Key = Lever;

/** One cell of the row: canonical units, undefined is blank. */
export interface Change {
  readonly key: Key;
  readonly heading: string;
  readonly from: number | string | undefined;
  readonly to: number | string;
}

/** A row's outcome in short. */
export interface Outcome {
  readonly verdict: Verdict;
  readonly limit: LimitKey | null;
  readonly load: number | null;
  /** Seconds per part. */
  readonly time: number | null;
}

export interface Advice {
  readonly kind: "smallest change" | "fastest";
  readonly changes: readonly Change[];
  readonly before: Outcome;
  readonly after: Outcome;
}

/** Most times that a row is worked out for one piece of advice. */
export const ADVICE_BUDGET = 80;
/** Of these, kept back for leaving out what is not needed. */
const FOR_PRUNING = 6;
/** A row that is not this much faster is not worth a change. */
const WORTH = 0.97;

const outcome = (plan: Plan): Outcome => {
  const { load, time } = plan.results;
  return { verdict: plan.verdict, limit: plan.binding?.key ?? null, load: load ?? null, time: time ?? null };
};

class Search {
  tried = 0;
  readonly base: Plan;
  readonly read: ReadRow;
  readonly lists: Lists;
  private readonly sharing: number;
  constructor(read: ReadRow, lists: Lists, sharing: number) {
    this.read = read;
    this.lists = lists;
    this.sharing = sharing;
    this.base = this.run({});
  }

  run(change: Partial<Row>): Plan {
    this.tried++;
    return planRow({ ...this.read, row: { ...this.read.row, ...change } }, this.lists, this.sharing, false);
  }

  get left(): number {
    return ADVICE_BUDGET - FOR_PRUNING - this.tried;
  }
}

/**
 * Advice for one row, best first; empty when nothing listed would help.
 * The search covers passes, spring passes, feed per tooth up to the list's, speed within the material's range,
 * stick-out down to what the depth needs, the start diameter of a thread, and the other listed tools.
 */
export function advise(read: ReadRow, lists: Lists, sharing = 1): { advice: Advice[]; tried: number } {
  if (read.row.operation === undefined || read.row.units === undefined || read.problems.length > 0)
    return { advice: [], tried: 0 };
  const search = new Search(read, lists, sharing);
  const before = outcome(search.base);
  const advice: Advice[] = [];
  if (search.base.verdict !== "ok") {
    for (const { changes, plan } of smallest(search))
      advice.push({ kind: "smallest change", changes, before, after: outcome(plan) });
  }
  const quick = pruned(search, fastest(search));
  if (quick) advice.push({ kind: "fastest", changes: quick.changes, before, after: outcome(quick.plan) });
  return { advice, tried: search.tried };
}

interface Found {
  readonly changes: readonly Change[];
  readonly plan: Plan;
}

function change(search: Search, key: Key, to: number | string): Change {
  const given = search.read.row[key];
  const used = key === "feedPerTooth" ? baseFeed(search, toolOf(search)) : plannedValue(search.base, key);
  const from = given ?? (typeof used === "number" || typeof used === "string" ? used : undefined);
  return { key, heading: ROW[key].heading, from, to };
}

/** What the plan chose for a cell that is blank. */
const plannedValue = ({ results }: Plan, key: Key) =>
  key === "stickOut" || key === "feedPerTooth" ? undefined : results[key];

/** The tool of the row as it is planned now. */
function toolOf({ base, lists }: Search): Tool | undefined {
  const name = base.results.tool;
  return typeof name === "string" ? lists.tools.find(name) : undefined;
}

function baseFeed({ read, lists }: Search, tool: Tool | undefined): number | undefined {
  const { row } = read;
  if (row.feedPerTooth !== undefined) return row.feedPerTooth;
  const material = row.material === undefined ? undefined : lists.materials.find(row.material);
  const diameter = tool?.diameter;
  const listed = material && diameter !== undefined ? listedFeed(material, diameter) : undefined;
  return listed === undefined ? undefined : listed * (row.operation === "drill" ? DRILL_FEED_FACTOR : 1);
}

/** Surface speed range of the row's material for a tool [m/min]. */
function speedRange({ read, lists }: Search, tool: Tool | undefined): readonly [number, number] | undefined {
  const material = read.row.material === undefined ? undefined : lists.materials.find(read.row.material);
  const low = tool?.substrate === "hss" ? material?.speedHssLow : material?.speedCarbideLow;
  const high = tool?.substrate === "hss" ? material?.speedHssHigh : material?.speedCarbideHigh;
  return low !== undefined && high !== undefined ? [low, high] : undefined;
}

/** Shortest stick-out that still reaches: neck or flutes, and the depth, whichever is longer [mm]. */
function shortest({ read }: Search, tool: Tool): number | undefined {
  const reach = Math.max(tool.neckLength ?? 0, tool.cuttingLength ?? 0, read.row.depth ?? 0);
  return reach > 0 ? reach : undefined;
}

const may = (row: Row, lever: Lever) => row.operation !== undefined && OPERATIONS[row.operation].levers.includes(lever);

/** Tools of the same use that are not the row's own, stiffest first. */
function otherTools(search: Search): Tool[] {
  const { row } = search.read;
  const own = search.base.results.tool;
  if (!may(row, "tool")) return [];
  // A face is milled by face mills, a wall by end mills, a thread by either kind of thread mill.
  const { tools } = OPERATIONS[row.operation!];
  const kinds: readonly string[] = row.operation === "thread mill" ? tools : tools.slice(0, 1);
  const most = row.operation === "slot" ? toolOf(search)?.diameter : Number.POSITIVE_INFINITY;
  const stiffness = (t: Tool) => (t.neckDiameter ?? t.diameter ?? 0) ** 4 / (t.neckLength ?? t.stickOut ?? 1) ** 3;
  return search.lists.tools.items
    .filter((t) => t.kind !== undefined && kinds.includes(t.kind) && t.tool !== own && t.diameter !== undefined)
    .filter((t) => (row.operation === "slot" ? t.diameter === most : true))
    .filter(
      (t) =>
        row.depth === undefined ||
        Math.max(t.neckLength ?? 0, t.cuttingLength ?? 0) >= row.depth ||
        row.operation === "face",
    )
    .sort((a, b) => stiffness(b) - stiffness(a));
}

/** Every single change worth trying, with its size: the natural logarithm of the ratio; a change of tool counts as one. */
function singles(search: Search): { change: Change; size: number }[] {
  const { row } = search.read;
  const { base } = search;
  const tool = toolOf(search);
  const all: { change: Change; size: number }[] = [];
  const add = (key: Key, to: number | string, size: number) => all.push({ change: change(search, key, to), size });
  const passes = Number(base.results.passes ?? 0);
  const springs = Number(base.results.springPasses ?? 0);
  if (may(row, "passes") && passes > 0) {
    for (let n = 1; n <= 8; n++)
      if (n !== passes) add("passes", n, Math.abs(Math.log((n + springs) / (passes + springs))));
    for (let n = 0; n <= 4; n++)
      if (n !== springs) add("springPasses", n, Math.abs(Math.log((passes + n) / (passes + springs))));
  }
  const feed = baseFeed(search, tool);
  if (feed !== undefined)
    for (const f of [0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 1.2, 1.5, 2, 3])
      add("feedPerTooth", feed * f, Math.abs(Math.log(f)));
  const range = speedRange(search, tool);
  const speed = Number(base.results.surfaceSpeed ?? 0);
  if (range && speed > 0) {
    for (const s of [0, 0.25, 0.5, 0.75, 1]) {
      const v = range[0] + s * (range[1] - range[0]);
      if (Math.abs(v / speed - 1) > 0.02) add("surfaceSpeed", v, Math.abs(Math.log(v / speed)));
    }
  }
  const stickOut = row.stickOut ?? tool?.stickOut;
  const least = tool && shortest(search, tool);
  if (may(row, "stickOut") && stickOut !== undefined && least !== undefined && least < stickOut) {
    for (const s of [0.2, 0.4, 0.6, 0.8, 1]) {
      const to = stickOut - s * (stickOut - least);
      add("stickOut", to, Math.abs(Math.log(to / stickOut)));
    }
  }
  if (may(row, "startDiameter") && row.startDiameter !== undefined) {
    const proposed = search.run({ startDiameter: undefined }).results.startDiameter;
    if (typeof proposed === "number")
      add("startDiameter", proposed, Math.abs(Math.log(proposed / row.startDiameter)) + 0.3);
  }
  otherTools(search).forEach((t, i) => {
    add("tool", t.tool, 1 + i / 100);
  });
  return all.sort((a, b) => a.size - b.size);
}

const applied = (changes: readonly Change[]): Partial<Row> => Object.fromEntries(changes.map((c) => [c.key, c.to]));

/** The smallest change that makes the row hold, and the smallest one of another kind beside it. */
function smallest(search: Search): Found[] {
  const found: Found[] = [];
  for (const { change: one } of singles(search)) {
    if (search.left <= ADVICE_BUDGET / 2 || found.length === 2) break;
    if (found.some((f) => f.changes[0]!.key === one.key)) continue;
    const plan = search.run(applied([one]));
    if (plan.verdict === "ok") found.push({ changes: [one], plan });
  }
  return found;
}

/** Without the changes that it does as well without. */
function pruned(search: Search, found: Found | undefined): Found | undefined {
  let best = found;
  for (const one of found?.changes ?? []) {
    const fewer = best!.changes.filter((c) => c !== one);
    if (fewer.length === 0) break;
    const plan = search.run(applied(fewer));
    const [now, before] = [outcome(plan).time, outcome(best!.plan).time];
    if (plan.verdict === "ok" && now !== null && before !== null && now <= before * (1 + 1e-9))
      best = { changes: fewer, plan };
  }
  return best;
}

/**
 * Branch and bound over tool, stick-out, speed, feed and passes. The time of a branch is bounded from below by the
 * time already known for the tool, scaled as if all of it went with feed and passes.
 */
function fastest(search: Search): Found | undefined {
  const { row } = search.read;
  const baseTime = outcome(search.base).time;
  const bends = may(row, "stickOut");
  const own = toolOf(search);
  let best: { found: Found; time: number } | undefined;
  let limit = search.base.verdict === "ok" && baseTime !== null ? baseTime * WORTH : Number.POSITIVE_INFINITY;
  const tools = [own, ...otherTools(search).slice(0, 5)].filter((t): t is Tool => t !== undefined);
  for (const tool of tools) {
    const stick = row.stickOut ?? tool.stickOut;
    const least = shortest(search, tool);
    const range = speedRange(search, tool);
    const feed = baseFeed(search, tool);
    if (feed === undefined) continue;
    const fixed: Change[] = [];
    if (tool !== own) fixed.push(change(search, "tool", tool.tool));
    const speeds: Change[][] = range ? [[change(search, "surfaceSpeed", range[1])], []] : [[]];
    // The shorter stick-out first: where it helps at all it helps most.
    const sticks: Change[][] = [[]];
    if (bends && stick !== undefined && least !== undefined && least < 0.95 * stick)
      sticks.unshift([change(search, "stickOut", least)]);
    for (const s of sticks) {
      for (const v of speeds) {
        const rate = (plan: Plan) => outcome(plan).time ?? Number.POSITIVE_INFINITY;
        const first = search.run(applied([...fixed, ...s, ...v]));
        consider(first, [...fixed, ...s, ...v]);
        if (search.left <= 0) return best?.found;
        const used = Number(first.results.passes ?? 1) + Number(first.results.springPasses ?? 0);
        const passes = may(row, "passes") ? [1, 2, 3, 4, 6] : [undefined];
        for (const f of [1, 0.8, 0.6, 0.45, 0.3]) {
          for (const n of passes) {
            // Cutting time goes with passes over feed; half of the known time may be moves that do not.
            const bound = rate(first) * Math.min(1, 0.5 + (0.5 * (n ?? used)) / used) * Math.min(1, 0.5 + 0.5 / f);
            if (bound >= limit || (f === 1 && n === undefined)) continue;
            if (search.left <= 0) return best?.found;
            const changes = [...fixed, ...s, ...v];
            if (f !== 1) changes.push(change(search, "feedPerTooth", feed * f));
            // As many passes as the row chooses by itself is no change.
            if (n !== undefined && !(row.passes === undefined && n === search.base.results.passes))
              changes.push(change(search, "passes", n));
            consider(search.run(applied(changes)), changes);
          }
        }
      }
    }
  }
  return best?.found;

  function consider(plan: Plan, changes: readonly Change[]): void {
    const time = outcome(plan).time;
    if (plan.verdict !== "ok" || time === null || time >= limit || changes.length === 0) return;
    limit = time;
    best = { found: { changes, plan }, time };
  }
}

/** A change in words, in the row's units: "Stick-out 30 mm → 24 mm". */
export function changeText({ key, heading, from, to }: Change, units: Units): string {
  const dimension = (ROW[key] as Quantity).dimension;
  const say = (value: number | string | undefined) => {
    if (value === undefined) return "blank";
    if (typeof value === "string") return value;
    if (!dimension) return String(value);
    const own = fromCanonical(value, dimension as DimensionName, units);
    const decimals = dimension === "length" ? (units === "in" ? 4 : 3) : 1;
    return `${tidy(own, key === "feedPerTooth" ? decimals + 1 : decimals)} ${symbol(dimension, units)}`;
  };
  return `${heading} ${say(from)} → ${say(to)}`;
}
