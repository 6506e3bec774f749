/** A number as people type it into a cell, with its unit if there is one. One look at each character. */
import { decimalText } from "../reading.ts";
import { fold, plainWidth } from "./fold.ts";
import { type UnitText, unitOf } from "./unit-text.ts";

/** What a text says: a number, a fraction, or a comma that may mean two things; with the unit behind it. */
export type NumberText = { readonly unit?: UnitText; readonly unitText?: string } & (
  | { readonly value: number; readonly fraction: boolean }
  | { readonly readings: readonly [decimal: string, whole: string] }
);

/** No number that anybody types is longer. */
const LONGEST = 64;

const FRACTION = /^(?:(\d{1,6})(?:-| {1,3}))?(\d{1,6})\/(\d{1,6})$/;
/** Groups of three, by blanks or apostrophes, or by points or commas where more than one stands there. */
const GROUPED = /^[+-]?\d{1,3}(?:[ ']\d{3})+(?:[.,]\d+)?$/;
const GROUPED_MARKS =
  /^[+-]?\d{1,3}(?:(?:,\d{3}){2,}(?:\.\d+)?|(?:\.\d{3}){2,}(?:,\d+)?|(?:,\d{3})+\.\d+|(?:\.\d{3})+,\d+)$/;
const COMMA = /^([+-]?)(\d*),(\d+)$/;

function numberIn(text: string): { value: number; fraction: boolean } | { readings: [string, string] } | undefined {
  const fraction = FRACTION.exec(text);
  if (fraction) {
    const bottom = Number(fraction[3]);
    return bottom === 0
      ? undefined
      : { value: Number(fraction[1] ?? 0) + Number(fraction[2]) / bottom, fraction: true };
  }
  const comma = COMMA.exec(text);
  if (comma) {
    const [, sign = "", whole = "", part = ""] = comma;
    const grouped = part.length === 3 && whole.length > 0 && whole.length <= 3 && !whole.startsWith("0");
    if (grouped) return { readings: [`${sign}${whole}.${part}`, `${sign}${whole}${part}`] };
    return { value: Number(`${sign}${whole === "" ? "0" : whole}.${part}`), fraction: false };
  }
  if (GROUPED.test(text)) return { value: Number(text.replace(/[ ']/g, "").replace(",", ".")), fraction: false };
  if (GROUPED_MARKS.test(text)) {
    const last = Math.max(text.lastIndexOf(","), text.lastIndexOf("."));
    const decimals = text.indexOf(text[last]!) === last;
    const whole = (decimals ? text.slice(0, last) : text).replace(/[.,]/g, "");
    return { value: Number(decimals ? `${whole}.${text.slice(last + 1)}` : whole), fraction: false };
  }
  const value = decimalText(text);
  return value === undefined ? undefined : { value, fraction: false };
}

/** Reads "12,5", "12.5 mm", "½", "1 1/2", "Ø8", full-width digits; undefined where no number stands there. */
export function numberText(text: string): NumberText | undefined {
  if (text.length > LONGEST) return undefined;
  const plain = plainWidth(text)
    .trim()
    .replace(/^[Øø⌀∅φΦ]\s*/, "");
  // A unit such as "1/min" or "mm2" ends in digits or holds them: then the number ends before its first letter.
  const whole = numberIn(plain.replace(/\.$/, ""));
  if (whole) return whole;
  const letter = plain.search(/[^\d.,/+\-\s'eE]|[eE](?![+-]?\d)/);
  // Behind the last digit at the latest: "12 -", "12'".
  const end = plain.search(/\D*$/);
  const cut = letter < 0 ? end : Math.min(letter, end);
  const number = numberIn(plain.slice(0, cut).trim());
  const unitText = plain.slice(cut).trim();
  if (number) return { ...number, unit: unitOf(fold(unitText)), unitText };
  // "3000 1/min", "3000 /min"
  const blank = plain.indexOf(" ");
  const before = numberIn(plain.slice(0, blank));
  const unit = before && unitOf(fold(plain.slice(blank + 1)));
  return before && unit ? { ...before, unit, unitText: plain.slice(blank + 1) } : undefined;
}
