/** From which batch the one of two quotes costs less than the other. */
import { breakEvenBatch, type Quote } from "../cost.ts";
import { TradeError } from "../errors.ts";
import type { Machine } from "../table/read.ts";
import type { QuoteSummary } from "./types.ts";

type Side = 0 | 1;

/** What comes of two quotes of the same rows; `cheaper` and `below` are places in their pair. */
export type BreakEven =
  | { readonly is: "nothing to compare" | "no rate" | "always alike" }
  /** The setup is the same with both, so no batch turns it round. */
  | { readonly is: "same setup"; readonly cheaper: Side }
  /** `alike`: by its setup or by its part the one only costs as much as the other. */
  | { readonly is: "never"; readonly cheaper: Side; readonly alike: boolean }
  /** The batch at which both cost the same, not rounded: less than one part, or the side that costs less up to it. */
  | { readonly is: "below one part"; readonly batch: number; readonly cheaper: Side }
  | { readonly is: "at"; readonly batch: number; readonly below: Side };

/** Compares two quotes of the same rows on two machines, or of two materials where no machines are given. */
export function breakEven(
  [a, b]: readonly [QuoteSummary, QuoteSummary],
  machines: readonly [Machine, Machine] | undefined,
): BreakEven {
  if (a.rows.length === 0) return { is: "nothing to compare" };
  if (a.money === undefined || b.money === undefined || a.unpriced.length > 0 || b.unpriced.length > 0)
    return { is: "no rate" };
  const [u, v] = [unitCost(a), unitCost(b)];
  if (machines === undefined) return { is: "same setup", cheaper: u <= v ? 0 : 1 };
  const [first, second] = [sideOf(a, machines[0]), sideOf(b, machines[1])];
  const [s, t] = [setupCost(first), setupCost(second)];
  const below = s <= t ? 0 : 1;
  try {
    const batch = breakEvenBatch(first, second);
    return batch < 1 ? { is: "below one part", batch, cheaper: below === 0 ? 1 : 0 } : { is: "at", batch, below };
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    if (u === v && s === t) return { is: "always alike" };
    return { is: "never", cheaper: u < v || (u === v && s < t) ? 0 : 1, alike: u === v || s === t };
  }
}

const sideOf = (q: QuoteSummary, machine: Machine): Quote => ({
  cycleTime: q.seconds - q.time.setup,
  rate: machine.rate!,
  setupTime: (machine.setup ?? 0) * 60,
  toolCostPerPart: q.paid!.tool,
});

/** Cost of one part without setup. */
const unitCost = (q: QuoteSummary) => q.money! - q.paid!.setup;
const setupCost = (q: Quote) => (q.rate * q.setupTime) / 3600;
