/** What a person types, read; and a cell's content as text that reads back as the same. */
import { isDateFormat, isPercentFormat, isTextFormat } from "numfmt";
import { dateText, readDate } from "./dates.ts";
import { readFormula } from "./formulas.ts";
import type { Locale } from "./locale.ts";
import type { Cell, Value } from "./types.ts";

export interface Typed {
  readonly value: Value;
  /** Without "=". */
  readonly formula?: string;
  /** What the typing itself says of the format ("12 %", a date), for a cell that has none. */
  readonly numberFormat?: string;
  /** Why it stays text although it looks like a number; or that a formula may mean something else than was meant. */
  readonly doubt?: "comma" | "group" | "long" | "arguments";
  /** It begins like a formula, and no program could read it. */
  readonly unreadable?: true;
}

export interface ReadingRules {
  readonly locale: Locale;
  readonly date1904: boolean;
  /** Of the cell. */
  readonly numberFormat?: string;
}

/** Most characters in a cell (ECMA-376-1, 18.18.37 leaves it open; workbooks in practice hold 32,767). */
export const MOST_TEXT = 32_767;

const ERRORS = new Set(["#N/A", "#VALUE!", "#REF!", "#DIV/0!", "#NUM!", "#NAME?", "#NULL!", "#SPILL!", "#CALC!"]);
/** Two numbers with a slash or a dash are sizes in this trade, never days of the year. */
const SIZE = /^(?:(?:\d+[- ])?\d+\/\d+\s*"?|#?\d+-\d+)$/;

const general = (format: string | undefined) => format === undefined || format === "" || /^general$/i.test(format);

/** Reads typed or pasted text for a cell. Never guesses: what can be read in two ways stays text and says so. */
export function readTyped(text: string, rules: ReadingRules): Typed {
  if (text === "") return { value: null };
  const { numberFormat: format } = rules;
  if (format !== undefined && isTextFormat(format)) return { value: text.startsWith("'") ? text.slice(1) : text };
  if (text.startsWith("'")) return { value: text.slice(1) };
  if (/^=./s.test(text.trimStart()) && text.trimStart() !== "==") {
    const read = readFormula(text.trim().slice(1).trim(), rules.locale.decimal);
    if (read === undefined) return { value: text, unreadable: true };
    return { value: null, formula: read.formula, ...(read.doubt ? { doubt: "arguments" } : {}) };
  }
  const bare = text.trim();
  if (bare === "" || SIZE.test(bare)) return { value: text };
  if (/^(?:true|false)$/i.test(bare)) return { value: bare.length === 4 };
  if (ERRORS.has(bare.toUpperCase())) return { value: { error: bare.toUpperCase() } };
  const shows = format !== undefined && !general(format) && isDateFormat(format);
  const date = readDate(bare, rules.locale, rules.date1904, shows);
  if (date) return { value: date.serial, numberFormat: date.numberFormat };
  return readNumber(text, bare, rules.locale);
}

function readNumber(text: string, bare: string, { decimal }: Locale): Typed {
  const percent = bare.endsWith("%");
  // A true minus, a narrow space between groups: what other programs put on the clipboard.
  let digits = (percent ? bare.slice(0, -1).trimEnd() : bare).replace(/^[\u2212\u2013]/, "-").replace(/\s+/g, " ");
  if (!/^[+-]?[\d.,]/.test(digits)) return { value: text };
  const other = decimal === "." ? "," : ".";
  const grouped = new RegExp(
    `^[+-]?[1-9]\\d{0,2}(?:(?:\\${other}\\d{3})+|(?: \\d{3})+|(?:'\\d{3})+)(?:\\${decimal}\\d*)?$`,
  );
  if (grouped.test(digits)) {
    const groups = digits.split(other).length - 1;
    // 1,234 is one and a bit to one half of the trade and a thousand to the other.
    if (groups === 1 && !digits.includes(decimal)) return { value: text, doubt: "group" };
    digits = digits.replaceAll(other, "").replace(/[ ']/g, "");
  } else if (decimal === "," && /^[+-]?\d*\.\d*(?:e[+-]?\d+)?$/i.test(digits)) {
    // A decimal point is what the controls show; where it cannot part thousands it is read as one.
    digits = digits.replace(".", ",");
  }
  const plain = decimal === "," ? digits.replace(",", ".") : digits;
  if (
    !/^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d{1,3})?$/i.test(plain) ||
    (decimal === "," && digits.split(",").length > 2)
  )
    return decimal === "." && /^[+-]?\d*,\d+$/.test(digits) ? { value: text, doubt: "comma" } : { value: text };
  // Numbers of parts and programs: their zeros belong to them, and so do digits beyond what a number holds.
  if (/^[+-]?0\d/.test(plain) && !/[.e]/i.test(plain)) return { value: text };
  if (/^[+-]?\d{16,}$/.test(plain)) return { value: text, doubt: "long" };
  const value = Number(percent ? shifted(plain, -2) : plain);
  if (!Number.isFinite(value)) return { value: text };
  if (!percent) return { value: value === 0 ? 0 : value };
  const places = (plain.split(".")[1] ?? "").replace(/e.*$/i, "").length;
  return { value, numberFormat: places === 0 ? "0%" : `0.${"0".repeat(Math.min(places, 15))}%` };
}

/** The decimal number times a power of ten, without a rounding of its own. */
function shifted(plain: string, power: number): string {
  const [mantissa = "", exponent = "0"] = plain.toLowerCase().split("e");
  return `${mantissa}e${Number(exponent) + power}`;
}

/** A number with all its digits and the locale's decimal mark. */
export const numberText = (value: number, locale: Locale): string =>
  locale.decimal === "," ? String(value).replace(".", ",") : String(value);

/** What the input shows for a cell: reads back as the same value. */
export function editText(cell: Cell | undefined, rules: ReadingRules): string {
  if (!cell) return "";
  if (cell.formula !== undefined) return `=${cell.formula}`;
  const { value } = cell;
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "object") return value.error;
  if (typeof value === "string") return sameAs(readTyped(value, rules).value, value) ? value : `'${value}`;
  const { numberFormat: format } = rules;
  const tries: (string | undefined)[] = [];
  if (format !== undefined && !general(format)) {
    if (isDateFormat(format)) tries.push(dateText(value, rules.date1904));
    else if (isPercentFormat(format)) {
      const by100 = Number(shifted(String(value), 2));
      tries.push(`${numberText(by100, rules.locale)}%`);
    }
  }
  tries.push(numberText(value, rules.locale));
  for (const text of tries) if (text !== undefined && sameAs(readTyped(text, rules).value, value)) return text;
  const plain = numberText(value, rules.locale);
  if (format !== undefined && isTextFormat(format)) return plain;
  // More digits than are read back as a number: as a power of ten.
  return plain.includes("e") ? plain : value.toExponential().replace(".", rules.locale.decimal);
}

export const sameAs = (a: Value, b: Value): boolean =>
  a === b ||
  (typeof a === "object" &&
    a !== null &&
    typeof b === "object" &&
    b !== null &&
    a.error === b.error &&
    a.reason === b.reason);
