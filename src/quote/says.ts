/** What a quote assumes and what is not in it, as sentences for the person who has to defend it. */

import type { Lists } from "../table/read.ts";
import { tidy } from "../words/say.ts";
import { BAND_SHARE, QUOTE_UNCERTAINTY } from "./band.ts";
import type { BreakEven } from "./break-even.ts";
import type { QuoteSummary } from "./types.ts";

export const plural = (n: number, one: string, many = `${one}s`) => `${n} ${n === 1 ? one : many}`;
const minutes = (seconds: number) => `${(seconds / 60).toFixed(2)} min`;
const percent = (share: number) => `${(100 * share).toFixed(0)} %`;

/** Names for a sentence, the long list cut short and counted. */
function named(names: readonly string[]): string {
  const unique = [...new Set(names)];
  const shown = unique.slice(0, 4).join(", ");
  return unique.length > 4 ? `${shown} and ${unique.length - 4} more` : shown;
}

/** Which of two costs less, and from which batch on. */
export function breakEvenText(found: BreakEven, names: readonly [string, string]): string {
  switch (found.is) {
    case "nothing to compare":
      return "No row has a time on both sides: nothing to compare.";
    case "no rate":
      return "A machine has no rate: times can be compared, money and break-even batch cannot.";
    case "same setup":
      return `The setup is the same with both materials, so no batch turns it round: ${names[found.cheaper]} costs less to machine at every batch.`;
    case "always alike":
      return "Both cost the same at every batch: there is no break-even.";
    case "never":
      return `There is no break-even: ${names[found.cheaper]} costs less at every batch, by its setup and by its part${found.alike ? " or at the same" : ""}.`;
    case "below one part":
      return `The costs meet below one part: ${names[found.cheaper]} costs less at every batch.`;
    case "at": {
      const last = Math.floor(found.batch);
      return `Both cost the same at a batch of ${tidy(found.batch, 1)}: up to ${last} parts ${names[found.below]} costs less or the same, from ${last + 1} on ${names[found.below === 0 ? 1 : 0]}.`;
    }
  }
}

export function quoteAssumptions(q: Omit<QuoteSummary, "assumptions">, lists: Lists): string[] {
  if (q.rows.length === 0) return ["No row has a time: there is nothing to add up."];
  const say: string[] = ["One part is every row once, times its Quantity; all times are those of the plan."];
  if (q.leftOut.length > 0) say.push(`${plural(q.leftOut.length, "row")} not in the total, listed with the reason.`);
  if (q.stops.length > 0) {
    say.push(
      `${plural(q.stops.length, "row")} in the total cannot be made as planned (stop): put them right before the quote goes out.`,
    );
  }
  say.push(
    `A tool is changed when the row before on the same machine had another one, and at the start of each part: ${plural(q.changes, "change")} per part. Each row's own Time counts one; the quote counts ${plural(q.changesSaved, "change")} fewer.`,
    ...batchSentences(q, lists),
    ...moneySentences(q, lists),
  );
  if (q.own.money !== undefined) {
    say.push(
      `The rows' own costs add up to ${q.own.money.toFixed(2)}, the quote to ${q.money!.toFixed(2)}: the difference is the tool changes and how the setup is shared.`,
    );
  }
  say.push(
    `Acceleration costs ${minutes(q.acceleration.seconds)} of the cutting time per part, ${percent(q.acceleration.share)} of the time without setup.`,
    `The range from ${percent(BAND_SHARE)} to ${percent(1 - BAND_SHARE)} is a judgement: standard deviations of ${percent(QUOTE_UNCERTAINTY.cutting)} on cutting, ${percent(QUOTE_UNCERTAINTY.moves)} on moves, waits and tool changes, ${percent(QUOTE_UNCERTAINTY.setup)} on setup and ${percent(QUOTE_UNCERTAINTY.life)} on tool life, each common to all rows; forgotten features and scrap are not in it.`,
    "Not in the quote: stock, fixtures, programming, loading and unloading the part, replacing worn edges, inspection, deburring, scrap, overhead outside the rate.",
  );
  return say;
}

function batchSentences({ rows, batch }: Omit<QuoteSummary, "assumptions">, lists: Lists): string[] {
  const say: string[] = [];
  const unset = rows.filter((r) => r.batch === undefined);
  if (batch !== undefined) {
    say.push(
      `Batch of ${plural(batch, "part")}: each machine is set up once, shared equally by its rows with a time and by the parts.`,
    );
  } else if (unset.length === rows.length) say.push("Batch is blank: no setup in the total, no tools for the batch.");
  else {
    const batches = [...new Set(rows.map((r) => r.batch ?? "blank"))];
    say.push(
      `The rows have different batches (${named(batches.map(String))}): the table may hold more than one part. Each row bears its share of its machine's setup over its own batch${unset.length > 0 ? `; ${plural(unset.length, "row")} without one ${unset.length === 1 ? "bears" : "bear"} none` : ""}.`,
    );
  }
  const bare = rows.filter((r) => lists.machines.find(r.machine)!.setup === undefined).map((r) => r.machine);
  if (bare.length > 0) say.push(`No Setup in the list for ${named(bare)}: none in the total.`);
  const changeless = rows.filter((r) => lists.machines.find(r.machine)!.toolChange === undefined).map((r) => r.machine);
  if (changeless.length > 0) say.push(`No Tool change in the list for ${named(changeless)}: counted as no time.`);
  return say;
}

function moneySentences({ rows, paid, unpriced, tools }: Omit<QuoteSummary, "assumptions">, lists: Lists): string[] {
  if (paid === undefined)
    return ["No machine of these rows has a Rate above 0 in the list: a quote of time, without money."];
  const say: string[] = [];
  if (unpriced.length > 0) {
    say.push(
      `${plural(unpriced.length, "row")} on ${named(unpriced.map((r) => r.machine))} ${unpriced.length === 1 ? "has" : "have"} no rate: in the time, not in the money.`,
    );
  }
  say.push(
    "Tool cost is the share of an edge's life that is cut away (Taylor, from the list's reference life) times price per edge; lives of rows on one tool add up. Tools for the batch are rounded up and are not what the total holds.",
  );
  const lifeless = rows.filter((r) => r.edges === undefined).map((r) => r.tool);
  if (lifeless.length > 0)
    say.push(`No tool life is known for ${named(lifeless)}: their tool cost is not in the total.`);
  const free = tools.filter((t) => t.edges !== undefined && lists.tools.find(t.name)?.price === undefined);
  if (free.length > 0) say.push(`No Price in the list for ${named(free.map((t) => t.name))}: counted as free.`);
  return say;
}
