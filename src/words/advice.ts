/** Advice in a person's words, in the row's units. */
import type { FindingCode, Verdict } from "../findings.ts";
import type { Plan } from "../operations/shared/types.ts";
import type { Quantity } from "../table/quantity.ts";
import { ROW, type RowKey } from "../table/rows.ts";
import { fromCanonical, symbol, type Units } from "../units.ts";
import { tidy } from "./say.ts";
import type { Words } from "./types.ts";
import { worded } from "./worded.ts";

/** One cell of a row before and after; undefined and null are blank. */
export interface CellChange {
  readonly key: RowKey;
  readonly heading: string;
  readonly from: number | string | undefined;
  readonly to: number | string | null;
  /** What the plan takes where the cell is cleared. */
  readonly takes?: number | string;
}

/** A change in words, in the row's units: "Stick-out 30 mm → 24 mm". */
export function changeText({ key, heading, from, to, takes }: CellChange, units: Units, words: Words): string {
  const { dimension }: Quantity = ROW[key];
  const say = (value: number | string | null | undefined) => {
    if (value === undefined || value === null) return words.advice.blank;
    if (typeof value === "string") return value;
    if (!dimension) return tidy(value, 0);
    const own = fromCanonical(value, dimension, units);
    const decimals = dimension === "length" ? (units === "in" ? 4 : 3) : 1;
    return `${tidy(own, key === "feedPerTooth" ? decimals + 1 : decimals)} ${symbol(dimension, units)}`;
  };
  return `${heading} ${say(from)} → ${say(to)}${takes === undefined ? "" : ` (${say(takes)})`}`;
}

/** Why there is nothing to change in a row's cells; "" where the row holds or something helps. */
export function nothingText(open: readonly FindingCode[], base: Plan, words: Words): string {
  if (open.length === 0) return "";
  const { reasons } = worded(base, words);
  const first = reasons.find((r) => r.code === open[0] && r.severity !== ("ok" satisfies Verdict)) ?? reasons[0];
  return first === undefined ? "" : words.advice.nothing(first.text, first.wayOut);
}
