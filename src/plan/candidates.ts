/** Which listed tool a row with a blank Tool is planned with: the candidates are worked out, the best verdict wins, then the cost. */
import { WEIGHT } from "../findings.ts";
import type { Candidates } from "../operations/operation.ts";
import type { Plan } from "../operations/shared/types.ts";
import type { Tool } from "../table/lists.ts";
import type { Units } from "../units.ts";

/** Most candidates that are worked out for a row. */
export const MOST_CANDIDATES = 8;
/** Where one holds, so many more are worked out: the operation offers the likeliest first. */
const MORE_THAN_OK = 4;
/** A tool of the other system of units must be so much cheaper to be taken (judgement: equal worth, own units first). */
const FOREIGN = 1.05;
/** Costs closer than this share are equal: the operation's own order decides. */
const EQUAL = 0.01;

export interface Choice {
  readonly tool: Tool;
  readonly offer: Candidates;
}

/** The best of the candidates; `run` works the row out with a tool. Undefined when there are none. */
export function bestOf(offer: Candidates, units: Units, run: (tool: Tool) => Plan): Choice | undefined {
  // Tools of the row's own system first: those of the other fill what is left.
  const foreign = (tool: Tool) => (tool.units ?? units) !== units;
  const own = offer.tools.filter((tool) => !foreign(tool));
  const offered = [...own, ...offer.tools.filter(foreign)].slice(0, MOST_CANDIDATES);
  if (offered.length === 1) return { tool: offered[0]!, offer };
  let best: { tool: Tool; weight: number; worth: number } | undefined;
  let left = offered.length;
  for (const tool of offered) {
    if (left-- === 0) break;
    const { verdict, results } = run(tool);
    const weight = WEIGHT[verdict];
    const worth = (results.cost ?? results.time ?? results.load ?? 1) * (foreign(tool) ? FOREIGN : 1);
    if (!best || weight < best.weight || (weight === best.weight && worth < best.worth * (1 - EQUAL)))
      best = { tool, weight, worth };
    if (verdict === "ok") left = Math.min(left, MORE_THAN_OK);
  }
  return best && { tool: best.tool, offer };
}
