/**
 * The one error type of the trade layer. It names the argument, the value that came and what is allowed,
 * so that a cell, a planning row and the task pane can each say it in their own place.
 */

import type { DimensionName } from "./units.ts";

/** Writes a number that is held in the canonical unit of `dimension` the way the reader wants it (unit included). */
export type Show = (value: number, dimension?: DimensionName) => string;

/**
 * - `blank`: required, and nothing came
 * - `value`: not a thing of the right kind (text where a number is wanted, an unknown word)
 * - `range`: a number outside its limits
 * - `unknown`: a look-up found nothing; `allowed` names the nearest that exist
 * - `unsolvable`: the question is well put and has no answer
 */
export type TradeErrorCode = "blank" | "value" | "range" | "unknown" | "unsolvable";

export class TradeError extends Error {
  readonly code: TradeErrorCode;
  /** Name of the argument as the caller knows it. */
  readonly parameter: string;
  /** What came. */
  readonly value: unknown;
  /** What is allowed, in words; a function of `show` where it holds numbers with a unit. */
  readonly allowed: string | ((show: Show) => string);

  /** Dimension of the value (a key of units.ts), where it is a number with a unit. */
  readonly dimension?: DimensionName;

  constructor(
    code: TradeErrorCode,
    parameter: string,
    value: unknown,
    allowed: string | ((show: Show) => string),
    dimension?: DimensionName,
  ) {
    super("");
    this.name = "TradeError";
    this.code = code;
    this.parameter = parameter;
    this.value = value;
    this.allowed = allowed;
    this.dimension = dimension;
    this.message = this.text();
  }

  /** The sentence for a person. `shown` replaces the value by what the user typed, `name` the argument's name by the user's. */
  text(show: Show = plain, shown?: string, name = this.parameter): string {
    const allowed = typeof this.allowed === "string" ? this.allowed : this.allowed(show);
    if (this.code === "blank") return `${name} is blank; ${allowed}`;
    const own =
      this.dimension !== undefined && typeof this.value === "number" && Number.isFinite(this.value)
        ? show(this.value, this.dimension)
        : quote(this.value);
    const value = shown ?? own;
    if (this.code === "unsolvable") return `no answer for ${name} ${value}: ${allowed}`;
    if (this.code === "unknown") return `${name} ${value} is not known; ${allowed}`;
    return `${name} is ${value}; ${allowed}`;
  }
}

const plain: Show = (value) => String(Number(value.toPrecision(6)));

/** Quotes a value for a message: text in quotes and cut at 40 characters, numbers as they are. */
export function quote(value: unknown): string {
  if (typeof value === "string") return `"${value.length > 40 ? `${value.slice(0, 39)}…` : value}"`;
  if (typeof value === "number") return Number.isFinite(value) ? plain(value) : String(value);
  if (value === null || value === undefined) return "blank";
  return typeof value === "boolean" ? String(value).toUpperCase() : Object.prototype.toString.call(value).slice(8, -1);
}
