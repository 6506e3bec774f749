/** One cell by its column: its words in every language at hand, its numbers as people type them. */
import type { Allowed } from "../allowed.ts";
import { dayLike, takenForDate } from "../calendar.ts";
import { TradeError } from "../errors.ts";
import { inchText } from "../reading.ts";
import { toCanonical, type Units } from "../units.ts";
import type { Match } from "./columns.ts";
import { fold } from "./fold.ts";
import { numberText } from "./number-text.ts";
import { type Column, isWithin } from "./quantity.ts";
import { factorFor } from "./unit-text.ts";
import { meantBy } from "./words.ts";

const INCH = 25.4;
/** A day typed without its year is one of the year that it was typed in. */
const RECENT = 2020;

/** Reads one cell that is not blank by its column; throws TradeError that names the heading, the value and what is allowed. */
export function readCell(cell: unknown, match: Match, rowUnits: Units | undefined): unknown {
  const { column } = match;
  const name = column.heading.replace(/ \[.*/, "");
  if (typeof cell === "object") {
    const { code } = cell as { code?: unknown };
    throw new TradeError("value", name, typeof code === "string" ? code : cell, { is: "no-error-value" });
  }
  if (column.kind === "text") return String(cell).trim();
  if (column.kind === "flag") return readWord(cell, name, column) === "yes";
  if (column.kind === "word") return readWord(cell, name, column);
  return readNumber(cell, name, match, rowUnits);
}

function readWord(cell: unknown, name: string, column: Column): string {
  const text = String(cell).trim();
  const values = meantBy(text, column);
  if (values.length === 1) return values[0]!;
  if (values.length > 1) throw new TradeError("value", name, cell, { is: "one-meaning", words: values });
  throw new TradeError("value", name, cell, { is: "one-of", words: column.words ?? ["yes", "no"] });
}

/** "12 x 24": the sides of something, for two columns. */
const TWO_NUMBERS = /\d\s{0,3}[x×*]\s{0,3}\d/i;

function readNumber(
  cell: unknown,
  name: string,
  { column, units: own, factor }: Match,
  rowUnits: Units | undefined,
): number {
  const { dimension, unit } = column;
  let value: number | undefined;
  if (typeof cell === "number") value = cell;
  else if (typeof cell === "string") {
    // A fraction without a unit, or an inch mark, is inches whatever the row's units.
    const inches = dimension === "length" ? inchText(cell) : undefined;
    if (inches !== undefined) return checked(inches * INCH, name, cell, column);
    const read = numberText(cell);
    if (read && "readings" in read) {
      const [decimal, whole] = read.readings;
      throw new TradeError("value", name, cell, { is: "decimal-mark", decimal, whole });
    }
    if (TWO_NUMBERS.test(cell)) throw new TradeError("value", name, cell, { is: "one-number", units: unitsOf(column) });
    if (read?.unitText) {
      // Not every unit of a column has a place among those that are converted: "50 %", "12 N/mm".
      const by = fold(read.unitText) === fold(unit ?? "") ? 1 : read.unit && factorFor(column, read.unit);
      if (by === undefined) throw new TradeError("value", name, cell, limitsOf(column, unitsOf(column)));
      return checked(read.value * by, name, cell, column);
    }
    if (read?.fraction) {
      if (dimension !== "length") throw new TradeError("value", name, cell, limitsOf(column));
      return checked(read.value * INCH, name, cell, column);
    }
    value = read?.value;
  }
  if (value === undefined) throw new TradeError("value", name, cell, limitsOf(column));
  if (dimension && (own ?? rowUnits) === undefined) {
    throw new TradeError("value", name, cell, { is: "row-units-first" });
  }
  if (factor !== undefined) value *= factor;
  // No feature is that long: a fraction was taken for a day of these years.
  const day = dimension === "length" && typeof cell === "number" ? dayLike(cell) : undefined;
  if (day !== undefined && day.year >= RECENT)
    throw new TradeError(
      "value",
      name,
      cell,
      takenForDate(day, (typed) => inchText(typed) !== undefined),
    );
  return checked(dimension ? toCanonical(value, dimension, (own ?? rowUnits)!) : value, name, cell, column);
}

/** Units that a cell of the column may name. */
function unitsOf({ dimension, unit, key }: Column): readonly string[] {
  if (dimension === "length") return ["mm", "in"];
  if (dimension === "surface speed") return ["m/min", "ft/min"];
  if (dimension === "roughness") return ["µm", "µin"];
  if (unit !== undefined && !unit.startsWith("money")) return [unit];
  return key === "maxRpm" ? ["1/min"] : [];
}

function checked(value: number, name: string, cell: unknown, column: Column): number {
  if (!isWithin(value, column) || (column.kind === "whole" && !Number.isInteger(value)))
    throw new TradeError("range", name, cell, limitsOf(column));
  return value;
}

function limitsOf({ low, high, above, kind }: Column, units?: readonly string[]): Allowed {
  return { is: "number-limits", whole: kind === "whole", low, high, openLow: above, units };
}
