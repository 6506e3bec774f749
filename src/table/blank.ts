/** What counts as an empty cell, everywhere. */
import type { Quantity } from "./quantity.ts";

/** True for a cell with nothing in it: null, undefined, or text of spaces only. A 0 is a number. */
export function isBlank(cell: unknown): boolean {
  return cell === null || cell === undefined || (typeof cell === "string" && cell.trim() === "");
}

/** True for a column in which 0 says something: a number within its limits, or no. */
export function allowsZero({ kind, low, high, above }: Quantity): boolean {
  if (kind === "flag") return true;
  if (kind !== "number" && kind !== "whole") return false;
  return !((low !== undefined && (low > 0 || (above === true && low === 0))) || (high !== undefined && high < 0));
}

/** True for an empty cell of a column: older desktop programs hand one over as 0, which counts where 0 is not allowed. */
export const isBlankIn = (cell: unknown, column: Quantity): boolean =>
  isBlank(cell) || (cell === 0 && !allowsZero(column));
