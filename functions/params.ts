/**
 * Kinds of argument. Each knows how to read one cell: its blank rule, its limits, its unit, its error.
 * Numbers come out in the canonical unit of their dimension.
 */
import type { Allowed } from "../src/allowed.ts";
import { TradeError } from "../src/errors.ts";
import { decimalText, inchText } from "../src/reading.ts";
import { isBlank } from "../src/table/blank.ts";
import { type DimensionName, parseUnits, toCanonical, type Units } from "../src/units.ts";
import { type Cell, CellError, content } from "./cells.ts";

export interface Param<T> {
  readonly name: string;
  /** Unit of the number, if it has one that follows `units`. */
  readonly dimension?: DimensionName;
  readonly isUnits?: boolean;
  /** Lists take their whole block and do not lift. */
  readonly isList?: boolean;
  /** 0 is not allowed: an older desktop program hands over an empty cell so, and there it counts as one. */
  readonly noZero?: boolean;
  /** Reads one cell (a list: the whole block). `units` is undefined in functions that have none. */
  read(cell: Cell, units: Units | undefined): T;
}

interface Limits {
  readonly low?: number;
  readonly high?: number;
  readonly openLow?: boolean;
  readonly openHigh?: boolean;
  readonly whole?: boolean;
}

/** Content of a required cell; an error cell goes through as it is. Where a word is wanted, 0 is a blank (`noZero`). */
function required(name: string, cell: Cell, allowed: Allowed, noZero = false): Cell {
  const value = typeof cell === "number" ? cell : content(cell);
  if (value instanceof CellError) throw value;
  if (isBlank(value) || (noZero && value === 0)) throw new TradeError("blank", name, value, allowed);
  return value;
}

/** A number. With `dimension` it follows the units; lengths take fractions of an inch as text too. */
function numeric(name: string, dimension: DimensionName | "plain length" | undefined, limits: Limits): Param<number> {
  const allowed: Allowed = { is: "number-limits", ...limits };
  const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY, openLow, openHigh, whole } = limits;
  const noZero = low > 0 || (openLow === true && low === 0) || high < 0 || (openHigh === true && high === 0);
  const takesInches = dimension === "length" || dimension === "plain length";
  const scale = dimension === "plain length" ? undefined : dimension;
  return {
    name,
    dimension: scale,
    noZero,
    read(cell, units) {
      let value: number;
      if (typeof cell === "number") value = cell;
      else {
        const raw = required(name, cell, allowed);
        if (typeof raw === "number") value = raw;
        else {
          const text = typeof raw === "string" ? raw : undefined;
          const inches = text !== undefined && takesInches ? inchText(text) : undefined;
          const number = text === undefined ? undefined : decimalText(text);
          if (inches !== undefined) value = units === "mm" ? inches * 25.4 : inches;
          else if (number !== undefined) value = number;
          else throw new TradeError("value", name, raw, allowed);
        }
      }
      if (!(value >= low && value <= high) || !Number.isFinite(value))
        throw new TradeError("range", name, value, allowed);
      if ((openLow && value === low) || (openHigh && value === high) || (whole && !Number.isInteger(value))) {
        throw new TradeError("range", name, value, allowed);
      }
      return scale !== undefined && units === "in" ? toCanonical(value, scale, units) : value;
    },
  };
}

type Dim = DimensionName | "plain length";

/** More than zero. */
export const positive = (name: string, dimension?: Dim) => numeric(name, dimension, { low: 0, openLow: true });
/** Zero or more. */
export const notNegative = (name: string, dimension?: Dim) => numeric(name, dimension, { low: 0 });
/** Any finite number. */
export const anyNumber = (name: string, dimension?: Dim) => numeric(name, dimension, {});
/** A whole number of at least `low`. */
export const count = (name: string, low = 1, high?: number) => numeric(name, undefined, { low, high, whole: true });
/** A plain number (no unit) in an interval. */
export const between = (name: string, low: number, high: number, open: { low?: boolean; high?: boolean } = {}) =>
  numeric(name, undefined, { low, high, openLow: open.low, openHigh: open.high });

/** "mm" or "in", always required. */
export const units: Param<Units> = {
  name: "units",
  isUnits: true,
  read(cell) {
    const value = content(cell);
    if (value instanceof CellError) throw value;
    return parseUnits("units", value);
  },
};

/** One of a few words, without regard to case and outer spaces. */
export function word<const W extends string>(name: string, words: readonly W[]): Param<W> {
  const allowed: Allowed = { is: "one-of-texts", texts: words };
  return {
    name,
    noZero: true,
    read(cell) {
      const raw = required(name, cell, allowed, true);
      const found = typeof raw === "string" ? words.find((w) => w === raw.trim().toLowerCase()) : undefined;
      if (found === undefined) throw new TradeError("value", name, raw, allowed);
      return found;
    },
  };
}

/** TRUE or FALSE; the words yes, no, true, false and the numbers 1 and 0 count. */
export function flag(name: string): Param<boolean> {
  const allowed: Allowed = { is: "true-or-false" };
  return {
    name,
    read(cell) {
      const raw = required(name, cell, allowed);
      const key = typeof raw === "string" ? raw.trim().toLowerCase() : raw;
      if (key === true || key === 1 || key === "true" || key === "yes" || key === "1") return true;
      if (key === false || key === 0 || key === "false" || key === "no" || key === "0") return false;
      throw new TradeError("value", name, raw, allowed);
    },
  };
}

/** Text, trimmed; a number in the cell is taken as its text. `parse` may turn it into something better. */
export function text<T = string>(name: string, allowed: Allowed, parse?: (text: string) => T): Param<T> {
  return {
    name,
    noZero: true,
    read(cell) {
      const raw = required(name, cell, allowed, true);
      if (typeof raw !== "string" && typeof raw !== "number") throw new TradeError("value", name, raw, allowed);
      const trimmed = String(raw).trim();
      return parse ? parse(trimmed) : (trimmed as T);
    },
  };
}

/** Blank or omitted gives `fallback` (canonical units) or undefined. */
export function optional<T>(param: Param<T>): Param<T | undefined>;
export function optional<T>(param: Param<T>, fallback: T): Param<T>;
export function optional<T>(param: Param<T>, fallback?: T): Param<T | undefined> {
  return {
    ...param,
    read(cell, u) {
      const value = typeof cell === "number" ? cell : content(cell);
      if (isBlank(value) || (value === 0 && param.noZero)) return fallback;
      return param.read(cell, u);
    },
  };
}

/** A whole block (segments, rows, materials, tools, machines): not lifted, read by `parse`. */
export function list<T>(name: string, parse: (block: Cell[][], u: Units | undefined) => T): Param<T> {
  return { name, isList: true, read: (block, u) => parse(block as Cell[][], u) };
}
