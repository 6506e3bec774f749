/** Formulas between the desk and .xlsx files: names of our functions, references into tables. Pure. */

/** Splits a formula into what lies outside and inside of quotes; only outside is changed. */
function outsideQuotes(formula: string, change: (text: string) => string): string {
  return formula
    .split(/("(?:[^"]|"")*"|'(?:[^']|'')*')/)
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
  readonly rows: number;
  readonly hasTotals: boolean;
  readonly columns: readonly string[];
}
