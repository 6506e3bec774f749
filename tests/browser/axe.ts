/** What axe-core has to say about a page: one way of asking for every page of ours. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";

/**
 * Findings as "rule: the elements", none where there is nothing to say. `part` narrows the search to an element, `rules`
 * to some rules. Our pages hold no frames: the mode without them finds the same in half of the time.
 */
export async function axe(page: Page, part?: string, rules?: string[]): Promise<string[]> {
  const builder = new AxeBuilder({ page }).setLegacyMode();
  if (part !== undefined) builder.include(part);
  if (rules !== undefined) builder.withRules(rules);
  const { violations } = await builder.analyze();
  return violations.map(({ id, nodes }) => {
    const elements = nodes.map((node) => node.html).join(" ");
    return `${id}: ${elements.slice(0, 300)}`;
  });
}

/** What a change of colours alone can break. */
export const COLOURS = ["color-contrast"];
