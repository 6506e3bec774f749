/** References in formulas: read once, moved when rows come or go, when a sheet gets another name, or by an offset. Pure. */
import { tokenize } from "@borgar/fx/xlsx";
import { columnLetters, columnNumber } from "../model/address.ts";
import { LAST_COLUMN, LAST_ROW } from "../model/types.ts";

/** Rows that came or went on a sheet. */
export interface RowMove {
  readonly kind: "insert" | "delete";
  /** Sheet's name at that time. */
  readonly sheet: string;
  readonly row: number;
  readonly count: number;
}
export interface Rename {
  readonly kind: "rename";
  readonly sheet: string;
  readonly to: string;
}
/** A table's column that got another heading. */
export interface RenamedColumn {
  readonly kind: "column";
  /** Sheet of the table. */
  readonly sheet: string;
  readonly table: string;
  readonly from: string;
  readonly to: string;
}
export type Move = RowMove | Rename | RenamedColumn;

interface Reference {
  /** "Sheet1!" as spelled, or nothing. */
  readonly prefix: string;
  /** Name without quotes; absent on a reference to the formula's own sheet or into another file or over sheets. */
  readonly sheet?: string;
  /** Into another file, or over several sheets: left alone. */
  readonly foreign: boolean;
  readonly top?: number;
  readonly left?: number;
  readonly bottom?: number;
  readonly right?: number;
  /** Which of top, left, bottom, right carry a "$". */
  readonly fixed: readonly [boolean, boolean, boolean, boolean];
  readonly single: boolean;
}
/** A reference into a table, as spelled. */
interface Structured {
  readonly structured: string;
}
type Piece = string | Reference | Structured;

const CELLS = /^(\$?)([A-Za-z]{1,3})(\$?)(\d{1,7})(?::(\$?)([A-Za-z]{1,3})(\$?)(\d{1,7}))?$/;
const COLUMNS = /^(\$?)([A-Za-z]{1,3}):(\$?)([A-Za-z]{1,3})$/;
const ROWS = /^(\$?)(\d{1,7}):(\$?)(\d{1,7})$/;

function reference(value: string): Reference | undefined {
  const cut = value.lastIndexOf("!");
  const prefix = value.slice(0, cut + 1);
  const rest = value.slice(cut + 1);
  const name = prefix.slice(0, -1);
  const sheet = name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name;
  const foreign = sheet.includes("[") || sheet.includes(":");
  const base = { prefix, foreign, ...(sheet === "" ? {} : { sheet }) };
  const row = (text: string) => Number(text) - 1;
  let m = CELLS.exec(rest);
  if (m) {
    const left = columnNumber(m[2]!);
    const right = m[6] === undefined ? left : columnNumber(m[6]);
    if (left === undefined || right === undefined) return undefined;
    const single = m[8] === undefined;
    return {
      ...base,
      top: row(m[4]!),
      left,
      bottom: single ? row(m[4]!) : row(m[8]!),
      right,
      fixed: [m[3] === "$", m[1] === "$", single ? m[3] === "$" : m[7] === "$", single ? m[1] === "$" : m[5] === "$"],
      single,
    };
  }
  m = COLUMNS.exec(rest);
  if (m) {
    const [left, right] = [columnNumber(m[2]!), columnNumber(m[4]!)];
    if (left === undefined || right === undefined) return undefined;
    return { ...base, left, right, fixed: [false, m[1] === "$", false, m[3] === "$"], single: false };
  }
  m = ROWS.exec(rest);
  if (m)
    return {
      ...base,
      top: row(m[2]!),
      bottom: row(m[4]!),
      fixed: [m[1] === "$", false, m[3] === "$", false],
      single: false,
    };
  return undefined;
}

function pieces(formula: string): Piece[] {
  const out: Piece[] = [];
  for (const { type, value } of tokenize(formula) as { type: string; value: string }[]) {
    const found = type === "range" || type === "range_beam" ? reference(value) : undefined;
    if (found) out.push(found);
    else if (type === "structured") out.push({ structured: value });
    else if (typeof out.at(-1) === "string") out[out.length - 1] += value;
    else out.push(value);
  }
  return out;
}

const HELD = 2000;
const cache = new Map<string, Piece[]>();
function cached(formula: string): Piece[] {
  let found = cache.get(formula);
  if (!found) {
    if (cache.size >= HELD) cache.clear();
    found = pieces(formula);
    cache.set(formula, found);
  }
  return found;
}

function spelled(ref: Reference): string {
  const [t, l, b, r] = ref.fixed.map((fixed) => (fixed ? "$" : ""));
  const { prefix, top, left, bottom, right } = ref;
  if (top === undefined) return `${prefix}${l}${columnLetters(left!)}:${r}${columnLetters(right!)}`;
  if (left === undefined) return `${prefix}${t}${top + 1}:${b}${bottom! + 1}`;
  const from = `${prefix}${l}${columnLetters(left)}${t}${top + 1}`;
  return ref.single ? from : `${from}:${r}${columnLetters(right!)}${b}${bottom! + 1}`;
}

/** A sheet's name with "!", in quotes where formulas need them. */
export function sheetPrefix(name: string): string {
  const plain =
    /^[A-Za-z_\u0080-\uffff][\w.\u0080-\uffff]*$/.test(name) && !/^[A-Za-z]{1,3}\d+$|^R\d*C?\d*$|^C\d*$/i.test(name);
  return plain ? `${name}!` : `'${name.replaceAll("'", "''")}'!`;
}

/**
 * Rows of a span after rows came or went; `undefined` when none is left. A span to the last row stays to the last row.
 * Rows that come right below a span do not belong to it.
 */
export function movedSpan(top: number, bottom: number, move: RowMove): readonly [number, number] | undefined {
  const { row, count } = move;
  const whole = bottom === LAST_ROW;
  if (move.kind === "insert") {
    const from = top >= row && !(whole && top === 0) ? top + count : top;
    const to = whole ? LAST_ROW : Math.min(LAST_ROW, bottom >= row ? bottom + count : bottom);
    return from > LAST_ROW ? undefined : [from, to];
  }
  const end = row + count - 1;
  const from = top > end ? top - count : Math.min(top, row);
  const to = whole ? LAST_ROW : bottom > end ? bottom - count : bottom >= row ? row - 1 : bottom;
  return to < from || (whole && top >= row && top <= end && end >= LAST_ROW) ? undefined : [from, to];
}

const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

/** Whether a formula on a sheet could be concerned by a move at all; cheap. */
export function concerns(formula: string, home: string, move: Move): boolean {
  return move.kind === "column" ? formula.includes("[") : mentions(formula, home, move.sheet);
}

/** The same for the XML of a sheet, where names may be spelled with references to characters. */
export function concernsXml(text: string, home: string, moves: readonly Move[]): boolean {
  const escaped = (name: string) => name.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
  return moves.some((move) => {
    if (move.kind === "column") return text.includes("[");
    const name = escaped(move.sheet);
    return (
      mentions(text, home, move.sheet) ||
      mentions(text, home, name) ||
      mentions(text, home, name.replaceAll("'", "&apos;"))
    );
  });
}

/** A heading as references into tables spell it: brackets, "#", "'" and "@" stand behind an apostrophe. */
const quotedHeading = (text: string): string => text.replace(/[[\]#'@]/g, "'$&");

/** The name of the table a reference speaks of; empty for the table that the formula stands in. */
const tableOf = (structured: string): string =>
  structured.slice(structured.lastIndexOf("!", structured.indexOf("[")) + 1, structured.indexOf("["));

function renamedColumn(structured: string, { table, from, to }: RenamedColumn): string {
  const own = tableOf(structured);
  if (own !== "" && !same(own, table)) return structured;
  const cut = structured.indexOf("[");
  const rest = structured
    .slice(cut)
    .replace(/(\[@?)((?:[^[\]']|'.)+)(?=\])/g, (whole, head: string, name: string) =>
      name.startsWith("#") || !same(name, quotedHeading(from)) ? whole : head + quotedHeading(to),
    );
  return structured.slice(0, cut) + rest;
}

/** Whether a formula on a sheet could speak of a sheet at all; cheap. */
export function mentions(formula: string, home: string, sheet: string): boolean {
  return same(home, sheet) || formula.toLowerCase().includes(sheet.toLowerCase().replaceAll("'", "''"));
}

/**
 * A formula after moves, in order. References whose cells are gone become #REF!.
 *
 * @param home - name of the formula's own sheet before the first move; empty for a formula without one
 * @param anchorBy - for a rule over an area: rows by which the area's first cell moved. References without "$" before
 *   the row are meant from each cell of the area, so they go with it.
 */
export function movedFormula(formula: string, home: string, moves: readonly Move[], anchorBy?: number): string {
  if (!moves.some((move) => concerns(formula, home, move))) return formula;
  let own = home;
  let now = cached(formula).slice();
  let changed = false;
  if (anchorBy !== undefined) {
    now = now.map((piece): Piece => {
      if (
        typeof piece === "string" ||
        "structured" in piece ||
        piece.foreign ||
        piece.top === undefined ||
        !same(piece.sheet ?? own, home)
      )
        return piece;
      if (piece.fixed[0] || piece.fixed[2]) return piece;
      const [top, bottom] = [piece.top + anchorBy, piece.bottom! + anchorBy];
      changed ||= anchorBy !== 0;
      return top < 0 || bottom > LAST_ROW ? `${piece.prefix}#REF!` : spelled({ ...piece, top, bottom });
    });
  }
  for (const move of moves) {
    now = now.map((piece): Piece => {
      if (typeof piece === "string") return piece;
      if ("structured" in piece) {
        if (move.kind !== "column") return piece;
        const structured = renamedColumn(piece.structured, move);
        changed ||= structured !== piece.structured;
        return { structured };
      }
      if (move.kind === "column" || piece.foreign || !same(piece.sheet ?? own, move.sheet)) return piece;
      if (move.kind === "rename") {
        if (piece.sheet === undefined) return piece;
        changed = true;
        return { ...piece, sheet: move.to, prefix: sheetPrefix(move.to) };
      }
      if (piece.top === undefined) return piece;
      // Ends may be spelled in either order.
      const [low, high] = [Math.min(piece.top, piece.bottom!), Math.max(piece.top, piece.bottom!)];
      const span = movedSpan(low, high, move);
      if (span && span[0] === low && span[1] === high) return piece;
      changed = true;
      if (!span) return `${piece.prefix}#REF!`;
      return piece.top <= piece.bottom!
        ? { ...piece, top: span[0], bottom: span[1] }
        : { ...piece, top: span[1], bottom: span[0] };
    });
    if (move.kind === "rename" && same(own, move.sheet)) own = move.to;
  }
  if (!changed) return formula;
  return now
    .map((piece) => (typeof piece === "string" ? piece : "structured" in piece ? piece.structured : spelled(piece)))
    .join("");
}

/** A shared formula as it stands some rows and columns away from the cell that holds it. Written for speed. */
export function offsetFormula(formula: string, rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return formula;
  let out = "";
  for (const piece of cached(formula)) {
    if (typeof piece === "string" || "structured" in piece) {
      out += typeof piece === "string" ? piece : piece.structured;
      continue;
    }
    const { fixed, prefix } = piece;
    out += prefix;
    let from = "";
    let to = "";
    let gone = false;
    if (piece.left !== undefined) {
      const left = fixed[1] ? piece.left : piece.left + columns;
      const right = fixed[3] ? piece.right! : piece.right! + columns;
      gone = left < 0 || right < 0 || left > LAST_COLUMN || right > LAST_COLUMN;
      if (!gone) {
        from = fixed[1] ? `$${columnLetters(left)}` : columnLetters(left);
        if (!piece.single) to = fixed[3] ? `$${columnLetters(right)}` : columnLetters(right);
      }
    }
    if (piece.top !== undefined && !gone) {
      const top = fixed[0] ? piece.top : piece.top + rows;
      const bottom = fixed[2] ? piece.bottom! : piece.bottom! + rows;
      gone = top < 0 || bottom < 0 || top > LAST_ROW || bottom > LAST_ROW;
      from += fixed[0] ? `$${top + 1}` : top + 1;
      if (!piece.single) to += fixed[2] ? `$${bottom + 1}` : bottom + 1;
    }
    out += gone ? "#REF!" : piece.single ? from : `${from}:${to}`;
  }
  return out;
}
