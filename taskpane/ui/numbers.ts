/** How the pane writes numbers: in the units of the row, with the digits a control takes. */

import { type DimensionName, fromCanonical, symbol, type Units } from "../../src/units.ts";
import type { Limit } from "../../src/words/worded.ts";

/** Decimals a person wants to see, by dimension: [mm, in]. */
const DECIMALS: Record<DimensionName, readonly [number, number]> = {
  length: [3, 4],
  "surface speed": [0, 0],
  feed: [0, 1],
  force: [0, 1],
  torque: [2, 2],
  power: [2, 2],
  "removal rate": [1, 2],
  stress: [0, 0],
  modulus: [0, 1],
  stiffness: [1, 1],
  acceleration: [1, 2],
  roughness: [2, 0],
  density: [2, 3],
};

/**
 * A number with at most `decimals` decimals, but never fewer than two significant digits: 0.0004 stays visible,
 * and is not written with more zeros than it needs.
 */
export function digits(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return "—";
  if (value === 0) return "0";
  const size = Math.floor(Math.log10(Math.abs(value)));
  const places = Math.min(9, Math.max(decimals, 1 - size));
  const text = value.toFixed(places);
  const short = places > decimals || text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return short === "-0" ? "0" : short;
}

/** A canonical value as text in the row's units, without its unit. */
export function inUnits(value: number, dimension: DimensionName | undefined, units: Units): string {
  if (dimension === undefined) return digits(value, 2);
  return digits(fromCanonical(value, dimension, units), DECIMALS[dimension][units === "in" ? 1 : 0]);
}

/** A canonical value as text with its unit; text goes through. */
export function withUnit(
  value: number | string,
  dimension: DimensionName | undefined,
  units: Units,
  unit?: string,
): string {
  if (typeof value === "string") return value;
  const mark = dimension === undefined ? (unit ?? "") : symbol(dimension, units);
  const text = dimension === undefined && unit === "1/min" ? digits(value, 0) : inUnits(value, dimension, units);
  return mark === "" ? text : mark === "°" ? `${text}°` : `${text} ${mark}`;
}

/** A load as a person reads it: 0.834 → "83 %". */
export function percent(load: number): string {
  if (!Number.isFinite(load)) return "—";
  const value = load * 100;
  return `${value !== 0 && Math.abs(value) < 1 ? digits(value, 1) : Math.round(value)} %`;
}

/** The load of a limit at the bad end of the stated uncertainties, when these were worked out. */
export const worst = (limit: Limit): number => limit.band?.[1] ?? limit.load;
