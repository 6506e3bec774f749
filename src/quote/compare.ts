/** The same rows with another machine or another material, side by side, and the batch from which the other one pays. */
import { breakEvenBatch, type Quote } from "../cost.ts";
import { TradeError } from "../errors.ts";
import { planRows } from "../plan/table.ts";
import type { List, Lists, ReadRow } from "../table/read.ts";
import { tidy } from "../words/say.ts";
import { quote } from "./quote.ts";
import type { QuoteOptions, QuoteSummary } from "./types.ts";

export interface Choice {
  /** Names of two machines, or of two materials, of the lists. */
  readonly machine?: readonly [string, string];
  readonly material?: readonly [string, string];
}

export interface Comparison {
  readonly what: "machine" | "material";
  readonly names: readonly [string, string];
  /** Both count the same rows: those with a time in both. */
  readonly quotes: readonly [QuoteSummary, QuoteSummary];
  readonly breakEven: {
    /** Batch at which both cost the same, not rounded; undefined where there is none. */
    readonly batch?: number;
    readonly text: string;
  };
}

/** Something of each of two, in their order. */
const both = <T, U>([first, second]: readonly [T, T], make: (one: T, at: 0 | 1) => U): [U, U] => [
  make(first, 0),
  make(second, 1),
];

/**
 * Plans and quotes the rows twice. Every row takes the named machine or material, whatever it holds. Throws TradeError
 * "unknown" with the nearest names when a name is not in its list, "blank" when nothing is to be compared.
 */
export function compare(
  rows: readonly ReadRow[],
  lists: Lists,
  choice: Choice,
  options: QuoteOptions = {},
): Comparison {
  const what = choice.machine ? "machine" : "material";
  const pair = choice.machine ?? choice.material;
  if (pair === undefined) {
    throw new TradeError("blank", "choice", undefined, { is: "pair-of-names" });
  }
  const names = both(pair, (name) =>
    what === "machine" ? known(lists.machines, what, name).machine : known(lists.materials, what, name).material,
  );
  const sides = both(names, (name) => {
    const own = rows.map((read) =>
      read.empty
        ? read
        : {
            ...read,
            row: { ...read.row, [what]: name },
            problems: read.problems.filter((p) => p.key !== what),
          },
    );
    const lines = planRows(own, lists, false);
    return { own, lines, alone: quote(lines, own, lists, options) };
  });
  const quotes = both(sides, ({ own, lines }, i) => {
    const leave = new Map(options.leave ?? []);
    const other = sides[i === 0 ? 1 : 0].alone;
    for (const { at, reason } of other.leftOut) leave.set(at, leave.get(at) ?? `not with ${names[1 - i]}: ${reason}`);
    // What is wrong with the row itself comes before what is wrong with it on the other side.
    for (const { at, reason } of sides[i].alone.leftOut) leave.set(at, reason);
    return quote(lines, own, lists, { ...options, leave });
  });
  return { what, names, quotes, breakEven: breakEven(names, quotes, lists, what) };
}

function known<T>(list: List<T>, parameter: string, name: string | undefined): T {
  const found = name === undefined ? undefined : list.find(name);
  if (found !== undefined) return found;
  const near = list.nearest(name ?? "");
  throw new TradeError(name === undefined || name.trim() === "" ? "blank" : "unknown", parameter, name, {
    is: "in-list",
    near,
  });
}

function breakEven(
  names: readonly [string, string],
  quotes: readonly [QuoteSummary, QuoteSummary],
  lists: Lists,
  what: Comparison["what"],
): Comparison["breakEven"] {
  const [a, b] = quotes;
  if (a.rows.length === 0) return { text: "No row has a time on both sides: nothing to compare." };
  if (a.money === undefined || b.money === undefined || a.unpriced.length > 0 || b.unpriced.length > 0) {
    return { text: "A machine has no rate: times can be compared, money and break-even batch cannot." };
  }
  if (what === "material") {
    const cheaper = unitCost(a) <= unitCost(b) ? 0 : 1;
    return {
      text: `The setup is the same with both materials, so no batch turns it round: ${names[cheaper]} costs less to machine at every batch.`,
    };
  }
  const sides = both(quotes, (q, i): Quote => {
    const machine = lists.machines.find(names[i])!;
    return {
      cycleTime: q.seconds - q.time.setup,
      rate: machine.rate!,
      setupTime: (machine.setup ?? 0) * 60,
      toolCostPerPart: q.paid!.tool,
    };
  });
  const small = setupCost(sides[0]) <= setupCost(sides[1]) ? 0 : 1;
  try {
    const batch = breakEvenBatch(sides[0], sides[1]);
    const from = Math.floor(batch) + 1;
    const below = small;
    const text =
      batch < 1
        ? `The costs meet below one part: ${names[1 - below]} costs less at every batch.`
        : `Both cost the same at a batch of ${tidy(batch, 1)}: up to ${Math.floor(batch)} parts ${names[below]} costs less or the same, from ${from} on ${names[1 - below]}.`;
    return { batch, text };
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    const [u, v] = [unitCost(a), unitCost(b)];
    const [s, t] = [setupCost(sides[0]), setupCost(sides[1])];
    if (u === v && s === t) return { text: "Both cost the same at every batch: there is no break-even." };
    const better = u < v || (u === v && s < t) ? 0 : 1;
    return {
      text: `There is no break-even: ${names[better]} costs less at every batch, by its setup and by its part${u === v || s === t ? " or at the same" : ""}.`,
    };
  }
}

/** Cost of one part without setup. */
const unitCost = (q: QuoteSummary) => q.money! - q.paid!.setup;
const setupCost = (q: Quote) => (q.rate * q.setupTime) / 3600;
