/** The cheapest way to make a row that holds. */
import { OPERATIONS } from "../operations/index.ts";
import type { Lever } from "../operations/operation.ts";
import {
  type Change,
  changeOf,
  feedOf,
  mayGoFaster,
  otherTools,
  type Situation,
  shorter,
  situationOf,
  speedRange,
  withChanges,
} from "./changes.ts";
import { type Found, price, type Search, type Steps } from "./search.ts";

/** A row that is not this much cheaper is not worth a change. */
const WORTH = 0.97;
/** Other tools that money is looked for with, shares of the list's feed, and passes. */
const TOOLS = 4;
const FEEDS = [1, 0.8, 0.6, 0.4] as const;
const PASSES = [1, 2, 3, 4, 6] as const;

type Changes = readonly Change[];

/**
 * The cheapest way, where it saves something against the row and the changes that are offered already: branch and bound over tool,
 * stick-out, speed, passes and feed, from the cheapest of those changes and from the row as it is. The price of a branch is bounded
 * from below by the price already known for the tool, scaled as if half of it went with the passes.
 */
export function* cheapest(search: Search, holding: readonly Found[]): Steps<Found | undefined> {
  const { situation, base } = search;
  const { row, lists } = situation;
  const levers = new Set<Lever>(OPERATIONS[row.operation!].levers);
  const offered = [{ changes: [], plan: base }, ...holding].filter((f) => f.plan.verdict === "ok");
  const least = offered.sort((a, b) => price(a.plan) - price(b.plan)).slice(0, 1);
  let limit = WORTH * Math.min(...least.map((f) => price(f.plan)));
  let best: Found | undefined;
  const consider = (found: Found) => {
    if (price(found.plan) >= limit) return;
    limit = price(found.plan);
    best = found;
  };
  const branches: { fixed: Changes; here: Situation }[] = [
    ...least.map(({ changes, plan }) => ({
      fixed: changes,
      here: situationOf(withChanges(row, changes), plan, lists),
    })),
    { fixed: [], here: situation },
    ...otherTools(situation)
      .slice(0, TOOLS)
      .map((tool) => ({ fixed: [changeOf(situation, "tool", tool.tool)], here: { ...situation, tool } })),
  ];
  for (const { fixed, here } of branches) {
    if (here.tool === undefined) continue;
    const set = new Set(fixed.map((c) => c.key));
    const free = (key: Lever) => levers.has(key) && !set.has(key);
    const to = (key: Lever, value: number): Changes => [changeOf(situation, key, value)];
    const short = free("stickOut") ? shorter(here) : undefined;
    const feed = free("feedPerTooth") ? feedOf(here) : undefined;
    // The middle and the ends of the range: what is cheapest depends on what an edge costs.
    const range = free("surfaceSpeed") ? speedRange(here) : undefined;
    const speeds = range ? [range[1], (range[0] + range[1]) / 2, range[0]] : [];
    const now = mayGoFaster(here) ? Number.POSITIVE_INFINITY : (base.results.surfaceSpeed ?? 0);
    const counts = free("passes") ? PASSES.filter((n) => n !== base.results.passes) : [];
    for (const stick of [[], ...(short === undefined ? [] : [to("stickOut", short)])]) {
      for (const speed of [[], ...speeds.filter((v) => v <= now).map((v) => to("surfaceSpeed", v))]) {
        if (search.spent) return best;
        const first = [...fixed, ...stick, ...speed];
        const plan = yield* search.run(first);
        const used = (plan.results.passes ?? 1) + (plan.results.springPasses ?? 0);
        for (const n of [undefined, ...counts]) {
          // Cutting goes with the passes; half of the known price may be moves and changes that do not.
          const bound = price(plan) * Math.min(1, 0.5 + (0.5 * (n ?? used)) / used);
          const cut = n === undefined ? first : [...first, ...to("passes", n)];
          for (const share of feed === undefined ? [1] : FEEDS) {
            if (bound >= limit) break;
            if (search.spent) return best;
            const changes = share === 1 ? cut : [...cut, ...to("feedPerTooth", feed! * share)];
            const found = { changes, plan: yield* search.run(changes) };
            if (found.plan.verdict !== "ok") continue;
            consider(found);
            // A lower feed takes longer.
            break;
          }
        }
      }
    }
  }
  return best;
}
