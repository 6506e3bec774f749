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
export const WORTH = 0.97;
/** Other tools that money is looked for with, shares of the list's feed, and passes. */
const TOOLS = 4;
const FEEDS = [1, 0.8, 0.6, 0.4] as const;
const PASSES = [1, 2, 3, 4, 6] as const;

type Changes = readonly Change[];

/**
 * Branch and bound over tool, stick-out, speed, feed and passes, from the row as it is and from the smallest change that holds. The
 * price of a branch is bounded from below by the price already known for the tool, scaled as if half of it went with the passes.
 */
export function* cheapest(search: Search, holding: readonly Found[]): Steps<Found | undefined> {
  const { situation, base } = search;
  const { row, lists } = situation;
  const levers = new Set<Lever>(OPERATIONS[row.operation!].levers);
  let best: Found | undefined;
  let limit = base.verdict === "ok" ? price(base) * WORTH : Number.POSITIVE_INFINITY;
  const consider = (found: Found) => {
    if (found.plan.verdict !== "ok" || price(found.plan) >= limit) return;
    limit = price(found.plan);
    best = found;
  };
  for (const found of holding) consider(found);
  const others = levers.has("tool") ? otherTools(situation).slice(0, TOOLS) : [];
  const cheapest = [...holding].sort((a, b) => price(a.plan) - price(b.plan)).slice(0, 1);
  const branches: { fixed: Changes; here: Situation }[] = [
    { fixed: [], here: situation },
    ...cheapest.map(({ changes, plan }) => ({
      fixed: changes,
      here: situationOf(withChanges(row, changes), plan, lists),
    })),
    ...others.map((tool) => ({ fixed: [changeOf(situation, "tool", tool.tool)], here: { ...situation, tool } })),
  ];
  for (const { fixed, here } of branches) {
    if (here.tool === undefined) continue;
    const set = new Set(fixed.map((c) => c.key));
    const free = (key: Lever) => levers.has(key) && !set.has(key);
    const to = (key: Lever, value: number): Changes => [changeOf(situation, key, value)];
    const least = free("stickOut") ? shorter(here) : undefined;
    const feed = free("feedPerTooth") ? feedOf(here) : undefined;
    // The middle and the ends of the range: what is cheapest depends on what an edge costs.
    const range = free("surfaceSpeed") ? speedRange(here) : undefined;
    const speeds = range ? [range[1], (range[0] + range[1]) / 2, range[0]] : [];
    const now = mayGoFaster(here) ? Number.POSITIVE_INFINITY : (base.results.surfaceSpeed ?? 0);
    const counts = free("passes") ? PASSES.filter((n) => n !== base.results.passes) : [];
    for (const held of [[], ...(least === undefined ? [] : [to("stickOut", least)])]) {
      for (const speed of [[], ...speeds.filter((v) => v <= now).map((v) => to("surfaceSpeed", v))]) {
        if (search.spent) return best;
        const first = [...fixed, ...held, ...speed];
        const plan = yield* search.run(first);
        consider({ changes: first, plan });
        const used = (plan.results.passes ?? 1) + (plan.results.springPasses ?? 0);
        for (const f of feed === undefined ? [1] : FEEDS) {
          for (const n of [undefined, ...counts]) {
            if (f === 1 && n === undefined) continue;
            // Cutting goes with the passes; half of the known price may be moves and changes that do not.
            const bound = price(plan) * Math.min(1, 0.5 + (0.5 * (n ?? used)) / used);
            if (bound >= limit) continue;
            if (search.spent) return best;
            const changes = [
              ...first,
              ...(f === 1 ? [] : to("feedPerTooth", feed! * f)),
              ...(n === undefined ? [] : to("passes", n)),
            ];
            consider({ changes, plan: yield* search.run(changes) });
          }
        }
      }
    }
  }
  return best;
}
