/** The text that a cell shows: its value under its number format. */
import { format, getLocale, isDateFormat, isTextFormat } from "numfmt";
import { as1900 } from "./dates.ts";
import type { Locale } from "./locale.ts";
import type { Value } from "./types.ts";

const OWN: Record<Locale["decimal"], string> = { ".": "en-US", ",": "de-DE" };

/** Tag that the formatter knows, with the decimal mark that typing goes by. */
function tagFor(locale: Locale): string {
  const known = getLocale(locale.tag);
  return known && known.decimal === locale.decimal && locale.tag.length > 0 ? locale.tag : OWN[locale.decimal];
}

const tags = new Map<Locale, string>();
const dates = new Map<string, boolean>();

/** @param numberFormat - format code of the file (ECMA-376-1, 18.8.30); undefined and "General" show the number as it is */
export function displayText(value: Value, numberFormat: string | undefined, locale: Locale, date1904 = false): string {
  if (value === null) return "";
  if (typeof value === "object") return value.error;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  const code = numberFormat ?? "General";
  if (typeof value === "string") {
    // Most formats say nothing about text.
    if (!code.includes("@") && code.split(";").length < 4) return value;
    return isTextFormat(code) ? value : safely(code, value, locale, value);
  }
  let shown = value;
  if (date1904) {
    if (!dates.has(code)) dates.set(code, isDateFormat(code));
    if (dates.get(code)) shown = as1900(value, true);
  }
  return safely(code, shown, locale, String(value));
}

function safely(code: string, value: number | string, locale: Locale, otherwise: string): string {
  if (!tags.has(locale)) tags.set(locale, tagFor(locale));
  try {
    return format(code, value, { locale: tags.get(locale) });
  } catch {
    // A format code that cannot be read: the value itself is never hidden.
    return otherwise;
  }
}
