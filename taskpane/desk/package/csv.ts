/** A table as CSV. Pure. */
import type { Value } from "../model/types.ts";

export interface Csv {
  /** UTF-8 with a byte order mark, so that spreadsheet programs read accents right. */
  readonly bytes: Uint8Array;
  /** Cells that got an apostrophe in front, because a spreadsheet program would have run them as a formula. */
  readonly guarded: number;
}

/**
 * Rows as RFC 4180 has them: fields with a comma, a quote or a line break in quotes, quotes doubled, lines ended by CR LF.
 * A text that begins with = + - @ (or a tab or carriage return before it) gets an apostrophe in front: spreadsheet
 * programs would take it for a formula. Numbers and texts that are nothing but a number are left alone.
 */
export function tableCsv(rows: readonly (readonly Value[])[], separator: "," | ";" | "\t" = ","): Csv {
  let guarded = 0;
  const field = (value: Value): string => {
    if (value === null) return "";
    if (typeof value === "number") return String(value);
    if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
    let text = typeof value === "object" ? value.error : value;
    const isNumber = /^[-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][-+]?\d+)?$/.test(text);
    if (typeof value === "string" && /^\s*[=+\-@]|^[\t\r]/.test(text) && !isNumber) {
      guarded++;
      text = `'${text}`;
    }
    return /["\r\n]/.test(text) || text.includes(separator) || /^\s|\s$/.test(text)
      ? `"${text.replaceAll('"', '""')}"`
      : text;
  };
  const lines = rows.map((row) => `${row.map(field).join(separator)}\r\n`);
  return { bytes: new TextEncoder().encode(`\ufeff${lines.join("")}`), guarded };
}
