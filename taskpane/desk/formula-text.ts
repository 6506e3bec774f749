/** Formulas between the desk and .xlsx files: names of our functions, references into tables. Pure. */
import { reference } from "../host/reference.ts";

/** Splits a formula into what lies outside and inside of quotes; only outside is changed. */
function outsideQuotes(formula: string, change: (text: string) => string): string {
  return formula
    .split(/("(?:[^"]|"")*"|'(?:[^']|'')*')/)
    .map((part, i) => (i % 2 === 0 ? change(part) : part))
    .join("");
}

/** The same for text in double quotes only: single quotes inside a table's brackets mean something else. */
function outsideDoubleQuotes(formula: string, change: (text: string) => string): string {
  return formula
    .split(/("(?:[^"]|"")*")/)
    .map((part, i) => (i % 2 === 0 ? change(part) : part))
    .join("");
}

/** `=CUT.RPM(A1)` → `_xldudf_CUT_RPM(A1)`, as files keep it: without "=", newer built-in functions prefixed. */
export function toFile(formula: string): string {
  return outsideQuotes(formula.replace(/^=/, ""), (text) =>
    text.replace(
      /\bCUT\.([A-Z][A-Z0-9.]*)(?=\s*\()/gi,
      (_, id: string) => `_xldudf_CUT_${id.toUpperCase().replaceAll(".", "_")}`,
    ),
  );
}

/** A file's formula as the desk calculates it; a leading "@" of our functions and prefixes of files go. */
export function fromFile(formula: string): string {
  return `=${outsideQuotes(formula.replace(/^=/, ""), (text) =>
    text
      .replace(/@?_xldudf_CUT[_.]([A-Z][A-Z0-9]*)(?=\s*\()/gi, (_, id: string) => `CUT.${id.toUpperCase()}`)
      .replace(/@(?=CUT\.)/gi, "")
      .replace(/_xl(?:fn|ws|pm)\.(?:_xl(?:fn|ws|pm)\.)*/gi, ""),
  )}`;
}

export const usesOurs = (formula: string): boolean => /\bCUT\.[A-Z]/i.test(formula);

/** A table of a file: its name, where it is (rows and columns from 0, headings included), its columns. */
export interface FileTable {
  readonly name: string;
  readonly sheet: string;
  readonly top: number;
  readonly left: number;
  /** Rows with the headings and the totals. */
  readonly rows: number;
  readonly hasHeadings: boolean;
  readonly hasTotals: boolean;
  readonly columns: readonly string[];
}

/** Items of a reference into a table: "[#All]", "[Dia]", "[Dia]:[Depth]", "@Dia", "[#This Row],[Dia]". */
function partsOf(inside: string): { areas: string[]; from?: string; to?: string } | undefined {
  let text = inside.trim();
  const areas: string[] = [];
  if (text.startsWith("@")) {
    areas.push("#this row");
    text = text.slice(1).trim();
  }
  if (text === "") return { areas };
  const plain = (name: string) => name.replace(/'(.)/g, "$1");
  if (!text.startsWith("[")) {
    if (text.startsWith("#")) return { areas: [...areas, text.toLowerCase()] };
    return { areas, from: plain(text), to: plain(text) };
  }
  const names: string[] = [];
  const item = /\s*\[((?:[^[\]']|'.)*)\]\s*([,:]?)/y;
  let ranged = false;
  while (item.lastIndex < text.length) {
    const found = item.exec(text);
    if (!found) return undefined;
    if (found[1]!.startsWith("#")) areas.push(found[1]!.toLowerCase());
    else names.push(plain(found[1]!));
    if (found[2] === ":") ranged = true;
  }
  if (names.length > 2 || (names.length === 2 && !ranged)) return undefined;
  return { areas, from: names[0], to: names.at(-1) };
}

/**
 * References into tables become plain ones, because the desk's engine knows no tables; one that cannot be resolved is
 * left as it is.
 *
 * @param row - row of the formula's own cell, from 0, for "this row"
 */
export function withoutTables(formula: string, tables: readonly FileTable[], sheet: string, row: number): string {
  if (tables.length === 0) return formula;
  // A name alone means its data.
  const spelled = tables.reduce(
    (text, { name }) =>
      outsideQuotes(text, (part) =>
        part.replace(
          new RegExp(`(?<![\\w.\\\\'!])${name.replace(/[.\\]/g, "\\$&")}(?![\\w.\\\\[('!])`, "gi"),
          `${name}[]`,
        ),
      ),
    formula,
  );
  if (!spelled.includes("[")) return formula;
  return outsideDoubleQuotes(spelled, (text) =>
    text.replace(
      /([A-Za-z_\\][\w.\\]*)?\[((?:[^[\]']|'.|\[(?:[^[\]']|'.)*\])*)\]/g,
      (whole, name: string | undefined, inside: string) => {
        const here = (t: FileTable) => t.sheet === sheet && row >= t.top && row < t.top + t.rows;
        const table = name ? tables.find((t) => t.name.toLowerCase() === name.toLowerCase()) : tables.find(here);
        const parts = partsOf(inside);
        if (!table || !parts) return whole;
        const at = (column: string | undefined, otherwise: number) =>
          column === undefined ? otherwise : table.columns.findIndex((c) => c.toLowerCase() === column.toLowerCase());
        const first = at(parts.from, 0);
        const last = at(parts.to, table.columns.length - 1);
        if (first < 0 || last < 0) return whole;
        const head = table.hasHeadings ? 1 : 0;
        const foot = table.hasTotals ? 1 : 0;
        const end = table.top + table.rows - 1;
        let rows: [number, number] = [table.top + head, end - foot];
        for (const area of parts.areas) {
          if (area === "#all") rows = [table.top, end];
          else if (area === "#headers") rows = [table.top, parts.areas.includes("#data") ? end - foot : table.top];
          else if (area === "#totals") rows = [parts.areas.includes("#data") ? table.top + head : end, end];
          else if (area === "#this row") rows = [row, row];
        }
        const full = reference(table.sheet, rows[0], table.left + first, rows[1] - rows[0] + 1, last - first + 1);
        return table.sheet === sheet ? full.slice(full.lastIndexOf("!") + 1) : full;
      },
    ),
  );
}
