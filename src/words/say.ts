/** How values read in a row's own units. The same in every language but for names. */
import type { TradeError } from "../errors.ts";
import { type DimensionName, fromCanonical, symbol, type Units } from "../units.ts";
import { errorText, type Show } from "./errors.ts";
import type { Words } from "./types.ts";

/** A number with so many decimals, more where it takes them to show two digits, without trailing zeros. */
export function tidy(value: number, decimals = 3): string {
  if (value === 0) return "0";
  if (!Number.isFinite(value)) return Number.isNaN(value) ? "?" : value > 0 ? "∞" : "−∞";
  const needed = Math.max(decimals, 1 - Math.floor(Math.log10(Math.abs(value))));
  return String(Number(value.toFixed(Math.min(12, needed))));
}

/** Between the entries of a list of depths. */
export const DEPTH_MARK = " · ";

export class Say {
  readonly units: Units;
  /** What errors say, and what a formula's argument is called in the table. */
  private readonly words: Pick<Words, "errors" | "names">;

  constructor(units: Units, words: Pick<Words, "errors" | "names">) {
    this.units = units;
    this.words = words;
  }

  /** A canonical value as text in the row's units, e.g. "0.031 mm". */
  value(value: number, dimension: DimensionName = "length"): string {
    const own = fromCanonical(value, dimension, this.units);
    return `${tidy(own, dimension === "length" ? (this.units === "in" ? 4 : 3) : 1)} ${symbol(dimension, this.units)}`;
  }

  /** A length as a bare number in the row's units, e.g. "0.3125". */
  number(value: number): string {
    return tidy(fromCanonical(value, "length", this.units), this.units === "in" ? 4 : 3);
  }

  /** Lengths as bare numbers: "0.31 · 0.44 · 0.54". */
  list(values: readonly number[]): string {
    return values.map((v) => this.number(v)).join(DEPTH_MARK);
  }

  /** What is wrong with an argument, in the row's units and by the name the person knows it by. */
  error(error: TradeError): string {
    const name = this.words.names[error.parameter];
    const show: Show = (v, dimension) => (dimension === undefined ? tidy(v) : this.value(v, dimension));
    return errorText(error, this.words.errors, { show, name });
  }
}
