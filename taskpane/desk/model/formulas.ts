/** What happens to the references of a formula when rows, sheets or the formula itself move. Formulas without "=". */
import { parse, parseA1Ref, type ReferenceA1, stringifyA1Ref, stringifyTokens, type Token, tokenize } from "@borgar/fx";
import { LAST_COLUMN, LAST_ROW } from "./types.ts";

const LOST = "#REF!";
const sameName = (a: string, b: string) => a.toLowerCase() === b.toLowerCase();

/** Runs `change` over each reference to cells; it answers the new text, or undefined to leave it. */
function eachReference(formula: string, change: (ref: ReferenceA1) => string | undefined): string {
  // Nothing that could be a reference: no tokens needed.
  if (!/[a-z]\$?\d|[a-z]\s*:|\d\s*:/i.test(formula)) return formula;
  let changed = false;
  const tokens = tokenize(formula).map((token): Token => {
    if (token.type !== "range" && token.type !== "range_beam") return token;
    const ref = parseA1Ref(token.value);
    if (!ref || !("range" in ref)) return token;
    const text = change(ref);
    if (text === undefined || text === token.value) return token;
    changed = true;
    return { ...token, value: text };
  });
  return changed ? stringifyTokens(tokens) : formula;
}

/** Sheet that a reference points into; undefined when into another file or a stack of sheets. */
function sheetOf(ref: ReferenceA1, own: string): string | undefined {
  const context = ref.context ?? [];
  if (context.length === 0) return own;
  if (context.length > 1 || /[:[\]]/.test(context[0]!)) return undefined;
  return context[0];
}

/**
 * Adjusts a formula after rows were inserted (count > 0) or deleted (count < 0) on a sheet. A range that loses some of
 * its rows shrinks; one that loses all of them becomes #REF!.
 *
 * @param own - sheet that the formula stands on
 * @param sheet - sheet whose rows move
 * @param row - first row that was inserted or deleted, from 0
 */
export function moveRows(formula: string, own: string, sheet: string, row: number, count: number): string {
  return eachReference(formula, (ref) => {
    const where = sheetOf(ref, own);
    if (where === undefined || !sameName(where, sheet)) return undefined;
    const { top, bottom } = ref.range;
    if (top === null || top === undefined) return undefined;
    const moved = movedRows(top, bottom ?? top, row, count);
    if (moved === undefined) return LOST;
    if (moved[0] === top && moved[1] === (bottom ?? top)) return undefined;
    return stringifyA1Ref({ ...ref, range: { ...ref.range, top: moved[0], bottom: moved[1] } });
  });
}

/** First and last row of a range after rows were inserted or deleted; undefined when none of it is left. */
export function movedRows(top: number, bottom: number, row: number, count: number): [number, number] | undefined {
  // A whole column stays one.
  if (top === 0 && bottom >= LAST_ROW) return [top, bottom];
  if (count >= 0) {
    const first = top >= row ? top + count : top;
    const last = bottom >= row ? bottom + count : bottom;
    return first > LAST_ROW ? undefined : [first, Math.min(last, LAST_ROW)];
  }
  const end = row - count;
  if (top >= row && bottom < end) return undefined;
  const first = top >= end ? top + count : Math.min(top, row);
  const last = bottom >= end ? bottom + count : bottom >= row ? row - 1 : bottom;
  return [first, last];
}

/** Follows a sheet that got another name. */
export function renameSheet(formula: string, from: string, to: string): string {
  let changed = false;
  const tokens = tokenize(formula).map((token): Token => {
    if (!/^range|^structured/.test(String(token.type)) || !token.value.includes("!")) return token;
    const at = token.value.lastIndexOf("!");
    const before = token.value.slice(0, at);
    const bare = before.startsWith("'") ? before.slice(1, -1).replaceAll("''", "'") : before;
    if (!sameName(bare, from)) return token;
    changed = true;
    return { ...token, value: `${quoteSheet(to)}${token.value.slice(at)}` };
  });
  return changed ? stringifyTokens(tokens) : formula;
}

/** A sheet's name as formulas write it. */
export const quoteSheet = (name: string): string =>
  /^[A-Za-z_][\w.]*$/.test(name) && !/^[a-z]{1,3}\d{1,7}$/i.test(name) && !/^r\d*c?\d*$|^c\d*$/i.test(name)
    ? name
    : `'${name.replaceAll("'", "''")}'`;

/** The formula as a copy of it reads `rows` and `columns` further: relative references move along, fixed ones stay. */
export function copied(formula: string, rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return formula;
  return eachReference(formula, (ref) => {
    const range = { ...ref.range };
    const shift = (
      side: "top" | "bottom" | "left" | "right",
      fixed: boolean | null | undefined,
      by: number,
      most: number,
    ) => {
      const at = range[side];
      if (at === null || at === undefined || fixed) return true;
      range[side] = at + by;
      return at + by >= 0 && at + by <= most;
    };
    const fits =
      shift("top", range.$top, rows, LAST_ROW) &&
      shift("bottom", range.$bottom, rows, LAST_ROW) &&
      shift("left", range.$left, columns, LAST_COLUMN) &&
      shift("right", range.$right, columns, LAST_COLUMN);
    if (!fits) return LOST;
    return stringifyA1Ref({ ...ref, range });
  });
}

/**
 * The formula of a row that was sorted from row `from` to row `to`: what points into its own row follows it, what
 * points elsewhere stays where it was.
 */
export function sorted(formula: string, own: string, from: number, to: number): string {
  if (from === to) return formula;
  return eachReference(formula, (ref) => {
    const { top, bottom, $top } = ref.range;
    const where = sheetOf(ref, own);
    if (where === undefined || !sameName(where, own) || $top || top !== from || (bottom ?? top) !== from)
      return undefined;
    return stringifyA1Ref({ ...ref, range: { ...ref.range, top: to, bottom: to } });
  });
}

/** A reference that was lost keeps the name of its sheet in some files. */
const LOST_ON_SHEET = /(?:'(?:[^']|'')*'|[\p{L}\p{N}_.]+)!#REF!/giu;

function isFormula(text: string): boolean {
  try {
    parse(tokenize(`=${text.replace(LOST_ON_SHEET, LOST)}`));
    return true;
  } catch {
    return false;
  }
}

/** The pieces of a text in turn outside and inside of quotes. */
const byQuotes = (text: string): string[] => text.split(/("(?:[^"]|"")*"|'(?:[^']|'')*')/);

/**
 * A typed formula as files hold it: commas between arguments, a point as the decimal mark. What is written with
 * semicolons and decimal commas is turned into that where it can be nothing else; undefined when no program could read
 * it: a file that holds such a formula counts as damaged.
 *
 * @param text - without "="
 * @returns the formula, and whether a comma in it may have been meant as a decimal mark
 */
export function readFormula(text: string, decimal: "." | ","): { formula: string; doubt: boolean } | undefined {
  const parts = byQuotes(text);
  if (isFormula(text)) {
    const mixed = /(?<![\p{L}\p{N}$.])\d+,\d/u;
    return { formula: text, doubt: decimal === "," && parts.some((part, i) => i % 2 === 0 && mixed.test(part)) };
  }
  const turned = parts
    .map((part, i) =>
      i % 2 === 0 ? part.replace(/(?<![\p{L}\p{N}$.])(\d*),(?=\d)/gu, "$1.").replaceAll(";", ",") : part,
    )
    .join("");
  return turned !== text && isFormula(turned) ? { formula: turned, doubt: false } : undefined;
}
