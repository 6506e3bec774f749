/** Checks of formula arguments. Each returns the value, so that a formula can check where it reads. */
import { TradeError } from "./errors.ts";
import type { DimensionName } from "./units.ts";

/** A finite number, else {@link TradeError} "value". */
export function finite(parameter: string, value: number): number {
  if (typeof value !== "number" || !Number.isFinite(value)) {
    throw new TradeError("value", parameter, value, { is: "number" });
  }
  return value;
}

/** A finite number above zero. */
export function positive(parameter: string, value: number): number {
  if (finite(parameter, value) <= 0) throw new TradeError("range", parameter, value, { is: "above-zero" });
  return value;
}

/** A finite number, zero or above. */
export function notNegative(parameter: string, value: number): number {
  if (finite(parameter, value) < 0) throw new TradeError("range", parameter, value, { is: "from-zero" });
  return value;
}

/** A whole number of at least `least`, and at most `most` where there is one. */
export function count(parameter: string, value: number, least = 1, most = Number.POSITIVE_INFINITY): number {
  if (!Number.isInteger(finite(parameter, value)) || value < least || value > most) {
    throw new TradeError("range", parameter, value, { is: "whole", least, most });
  }
  return value;
}

/**
 * A finite number in an interval; `dimension` (a key of units.ts) lets the message speak the user's unit.
 * Limits are included unless `open` says otherwise.
 */
export function within(
  parameter: string,
  value: number,
  low: number,
  high: number,
  dimension?: DimensionName,
  open: "none" | "low" | "high" | "both" = "none",
): number {
  finite(parameter, value);
  const openLow = open === "low" || open === "both";
  const openHigh = open === "high" || open === "both";
  if (value < low || value > high || (openLow && value === low) || (openHigh && value === high)) {
    throw new TradeError("range", parameter, value, { is: "between", low, high, open, dimension }, dimension);
  }
  return value;
}
