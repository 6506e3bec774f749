/** What counts as an empty cell, everywhere. */

/** True for a cell with nothing in it: null, undefined, or text of spaces only. A 0 is a number. */
export function isBlank(cell: unknown): boolean {
  return cell === null || cell === undefined || (typeof cell === "string" && cell.trim() === "");
}
