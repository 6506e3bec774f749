/** Addresses and areas. Rows and columns count from 0. */
import { fromCol, toCol } from "@borgar/fx";
import { type Area, LAST_COLUMN, LAST_ROW } from "./types.ts";

export interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

const letters: string[] = [];
/** 0 → "A", 26 → "AA". */
export function columnLetters(column: number): string {
  letters[column] ??= toCol(column);
  return letters[column];
}

export const addressOf = (row: number, column: number): string => `${columnLetters(column)}${row + 1}`;

/** "B2:D9", "B2" for one cell, "B:D" and "2:9" for whole columns and rows. */
export function areaName(area: Area): string {
  if (area.top === 0 && area.bottom >= LAST_ROW) return `${columnLetters(area.left)}:${columnLetters(area.right)}`;
  if (area.left === 0 && area.right >= LAST_COLUMN) return `${area.top + 1}:${area.bottom + 1}`;
  const first = addressOf(area.top, area.left);
  return area.top === area.bottom && area.left === area.right
    ? first
    : `${first}:${addressOf(area.bottom, area.right)}`;
}

/** Reads "D5", "$D$5", "B2:D9", "B:D", "2:9"; undefined when it is none of them or lies outside of a sheet. */
export function readArea(text: string): Area | undefined {
  const found = /^\$?([a-z]{1,3})?\$?(\d{1,7})?(?::\$?([a-z]{1,3})?\$?(\d{1,7})?)?$/i.exec(text.trim());
  if (!found || text.trim() === "") return undefined;
  const [, c1, r1, c2, r2] = found;
  const paired = text.includes(":");
  if (paired ? !!c1 !== !!c2 || !!r1 !== !!r2 || (!c1 && !r1) : !c1 || !r1) return undefined;
  const columns = c1 ? [fromCol(c1), fromCol(c2 ?? c1)] : [0, LAST_COLUMN];
  const rows = r1 ? [Number(r1) - 1, Number(r2 ?? r1) - 1] : [0, LAST_ROW];
  const area = {
    top: Math.min(...rows),
    bottom: Math.max(...rows),
    left: Math.min(...columns),
    right: Math.max(...columns),
  };
  return area.top < 0 || area.bottom > LAST_ROW || area.right > LAST_COLUMN ? undefined : area;
}

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
