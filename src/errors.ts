/**
 * The one error type of the trade layer. It names the argument, the value that came and what is allowed,
 * so that a cell, a planning row and the task pane can each say it in their own place. What they say is in words/errors.ts.
 */
import type { Allowed } from "./allowed.ts";
import type { DimensionName } from "./units.ts";

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
  readonly allowed: Allowed;
  /** Dimension of the value (a key of units.ts), where it is a number with a unit. */
  readonly dimension?: DimensionName;

  constructor(code: TradeErrorCode, parameter: string, value: unknown, allowed: Allowed, dimension?: DimensionName) {
    // For who reads a log: people are shown errorText.
    super(`${code} ${parameter}: ${allowed.is}`);
    this.name = "TradeError";
    this.code = code;
    this.parameter = parameter;
    this.value = value;
    this.allowed = allowed;
    this.dimension = dimension;
  }
}
