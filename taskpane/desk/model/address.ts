/**
 * Addresses as people and files spell them ("B7", "A1:C9", "A:A", "3:5") and areas. Rows and columns count from 0. The one owner of
 * column letters; references inside formulas are read by a parser (formulas.ts, package/references.ts, host/reference.ts).
 */
import { type Area, LAST_COLUMN, LAST_ROW } from "./types.ts";

export interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

const LETTERS: string[] = [];

/** 0 → "A", 26 → "AA". */
export function columnLetters(column: number): string {
  let letters = LETTERS[column];
  if (letters === undefined) {
    letters = "";
    for (let n = column + 1; n > 0; n = Math.floor((n - 1) / 26))
      letters = String.fromCharCode(65 + ((n - 1) % 26)) + letters;
    LETTERS[column] = letters;
  }
  return letters;
}

/** "AA" → 26; `undefined` when it is no column of a sheet. */
export function columnNumber(letters: string): number | undefined {
  let n = 0;
  if (letters.length === 0 || letters.length > 3) return undefined;
  for (let i = 0; i < letters.length; i++) {
    const c = letters.charCodeAt(i) & ~32;
    if (c < 65 || c > 90) return undefined;
    n = n * 26 + c - 64;
  }
  return n - 1 > LAST_COLUMN ? undefined : n - 1;
}

export const addressOf = (row: number, column: number): string => `${columnLetters(column)}${row + 1}`;

/** "B7" → row 6, column 1; `undefined` when it is no cell. Written for speed: it runs once a cell. */
export function cellAt(text: string): { row: number; column: number } | undefined {
  let i = 0;
  let column = 0;
  for (; i < text.length; i++) {
    const c = text.charCodeAt(i) & ~32;
    if (c < 65 || c > 90) break;
    column = column * 26 + c - 64;
  }
  let row = 0;
  const digits = i;
  for (; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c < 48 || c > 57) return undefined;
    row = row * 10 + c - 48;
  }
  if (digits === 0 || digits > 3 || i === digits || i - digits > 7) return undefined;
  if (row < 1 || row > LAST_ROW + 1 || column > LAST_COLUMN + 1) return undefined;
  return { row: row - 1, column: column - 1 };
}

/** "D5", "$D$5", "B2:D9", "B:D", "2:9" → an area; `undefined` when it is none of them or lies outside of a sheet. */
export function readArea(text: string): Area | undefined {
  const m = /^\$?([A-Za-z]{1,3})?\$?(\d{1,7})?(?::\$?([A-Za-z]{1,3})?\$?(\d{1,7})?)?$/.exec(text.trim());
  if (!m) return undefined;
  const [, c1, r1, c2, r2] = m;
  const alone = c2 === undefined && r2 === undefined;
  if (alone && (c1 === undefined || r1 === undefined || text.includes(":"))) return undefined;
  if (!alone && ((c1 === undefined) !== (c2 === undefined) || (r1 === undefined) !== (r2 === undefined)))
    return undefined;
  const left = c1 === undefined ? 0 : columnNumber(c1);
  const right = alone ? left : c2 === undefined ? LAST_COLUMN : columnNumber(c2);
  const top = r1 === undefined ? 0 : Number(r1) - 1;
  const bottom = alone ? top : r2 === undefined ? LAST_ROW : Number(r2) - 1;
  if (left === undefined || right === undefined) return undefined;
  if (top < 0 || bottom < 0 || top > LAST_ROW || bottom > LAST_ROW) return undefined;
  return {
    top: Math.min(top, bottom),
    left: Math.min(left, right),
    bottom: Math.max(top, bottom),
    right: Math.max(left, right),
  };
}

/** "B2:D9", "B2" for one cell, "B:D" and "2:9" for whole columns and rows. */
export function areaName(area: Area): string {
  if (area.top === 0 && area.bottom >= LAST_ROW) return `${columnLetters(area.left)}:${columnLetters(area.right)}`;
  if (area.left === 0 && area.right >= LAST_COLUMN) return `${area.top + 1}:${area.bottom + 1}`;
  return areaText(area);
}

/** The shortest spelling of an area. Whole columns and rows are spelled as cells, as files do in lists of ranges. */
export function areaText({ top, left, bottom, right }: Area): string {
  const from = addressOf(top, left);
  return top === bottom && left === right ? from : `${from}:${addressOf(bottom, right)}`;
}

/** A list of ranges, separated by spaces; what is no range is left out. */
export function areasAt(text: string): Area[] {
  return text
    .trim()
    .split(/\s+/)
    .map(readArea)
    .filter((area): area is Area => area !== undefined);
}

export const areasText = (areas: readonly Area[]): string => areas.map(areaText).join(" ");

export const inArea = (area: Area, row: number, column: number): boolean =>
  row >= area.top && row <= area.bottom && column >= area.left && column <= area.right;

export const overlap = (a: Area, b: Area): boolean =>
  a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right;

/** The rectangle between two corners. */
export const between = (a: { row: number; column: number }, b: { row: number; column: number }): Area => ({
  top: Math.min(a.row, b.row),
  bottom: Math.max(a.row, b.row),
  left: Math.min(a.column, b.column),
  right: Math.max(a.column, b.column),
});

/** What is left of an area when another is taken out of it: up to four areas. */
export function without(area: Area, hole: Area): Area[] {
  if (!overlap(area, hole)) return [area];
  const top = Math.max(area.top, hole.top);
  const bottom = Math.min(area.bottom, hole.bottom);
  const parts: Area[] = [];
  if (area.top < top) parts.push({ ...area, bottom: top - 1 });
  if (area.left < hole.left) parts.push({ ...area, top, bottom, right: hole.left - 1 });
  if (area.right > hole.right) parts.push({ ...area, top, bottom, left: hole.right + 1 });
  if (area.bottom > bottom) parts.push({ ...area, top: bottom + 1 });
  return parts;
}
