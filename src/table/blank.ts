/** What counts as an empty cell, everywhere. */
import { isWithin, type Quantity } from "./quantity.ts";

/** True for a cell with nothing in it: null, undefined, or text of spaces only. A 0 is a number. */
export function isBlank(cell: unknown): boolean {
  return cell === null || cell === undefined || (typeof cell === "string" && cell.trim() === "");
}

/** True for a column in which 0 says something: a number within its limits, or no. */
export const allowsZero = (column: Quantity): boolean =>
  column.kind === "flag" || ((column.kind === "number" || column.kind === "whole") && isWithin(0, column));

/** True for an empty cell of a column: older desktop programs hand one over as 0, which counts where 0 is not allowed. */
export const isBlankIn = (cell: unknown, column: Quantity): boolean =>
  isBlank(cell) || (cell === 0 && !allowsZero(column));
