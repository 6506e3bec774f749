/** The same rows with another machine or another material, side by side, and the batch from which the other one pays. */
import { TradeError } from "../errors.ts";
import { planRows } from "../plan/table.ts";
import type { List, Lists, ReadRow } from "../table/read.ts";
import { type BreakEven, breakEven } from "./break-even.ts";
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
  readonly breakEven: BreakEven;
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
  return {
    what,
    names,
    quotes,
    breakEven: breakEven(quotes, what === "machine" ? both(names, (name) => lists.machines.find(name)!) : undefined),
  };
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
