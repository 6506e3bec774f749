/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/** What is seen before anything is written, and said instead. */
import { isBlank } from "../../../src/table/blank.ts";
import { isFree, type Standing } from "../care.ts";
import { type Block, type CellValue, HostError } from "../host.ts";
import { corners, spokenAddress } from "../reference.ts";
import type { Piece } from "./parts.ts";

const at = (sheet: string, row: number, column: number) => spokenAddress(sheet, row, column, 1, 1).split(":")[0]!;

export function refuseProtected(sheet: Excel.Worksheet): void {
  if (!sheet.protection.protected) return;
  throw new HostError(
    "protected",
    `The sheet "${sheet.name}" is protected; nothing was written. Unprotect it (Review, Unprotect Sheet) and try again.`,
  );
}

/** On a protected sheet unlocked cells may be written; their formats are left alone. */
export function refuseLocked(sheet: Excel.Worksheet, pieces: readonly Piece[]): void {
  if (!sheet.protection.protected) return;
  if (pieces.some(({ range }) => range.format.protection.locked !== false)) refuseProtected(sheet);
  for (const one of pieces) one.plain();
}

export function refuseOccupied(sheet: string, row: number, column: number, standing: Standing): void {
  if (isFree(standing)) return;
  const shows = standing.formula !== "" && isBlank(standing.value) ? " (a formula that shows nothing)" : "";
  throw new HostError(
    "occupied",
    `Cell ${at(sheet, row, column)} is in the way${shows}; nothing was written. Clear it or move it, then try again.`,
  );
}

/** Rows that a filter hides are not written: nobody would see what happens to them. */
export function refuseFiltered(filtered: boolean, pieces: readonly Piece[]): void {
  if (!filtered || pieces.every(({ range }) => (range.rowHidden as boolean | null) === false)) return;
  throw new HostError(
    "failed",
    "A filter hides rows that are to be written; nothing was written. Clear the filter (Data, Clear) and try again.",
  );
}

/** @param areas - address as Excel gives it: "Plan!B4:C4,Plan!E9:E12" */
export function refuseMerged(sheet: string, areas: string, pieces: readonly Piece[]): void {
  for (const address of areas.split(",")) {
    const area = corners(address.slice(address.lastIndexOf("!") + 1));
    if (area === undefined) continue;
    for (const { row, column, cells2d } of pieces) {
      for (let r = Math.max(row, area.top); r <= Math.min(row + cells2d.length - 1, area.bottom); r++)
        for (let c = Math.max(column, area.left); c <= Math.min(column + cells2d[0]!.length - 1, area.right); c++)
          if (cells2d[r - row]![c - column] !== undefined)
            throw new HostError(
              "occupied",
              `Cell ${at(sheet, r, c)} is merged with its neighbours; nothing was written. Unmerge it (Home, Merge & Center) and try again.`,
            );
    }
  }
}

/** What a formula elsewhere fills must not be typed into: the formula would say #SPILL! and lose all it shows. */
export function refuseSpilled(sheet: string, pieces: readonly Piece[]): void {
  const one = pieces.find(
    ({ range, cells2d }) =>
      (range.hasSpill as boolean | null) !== false && cells2d.some((line) => line.some((cell) => cell !== undefined)),
  );
  if (one === undefined) return;
  throw new HostError(
    "occupied",
    `Cells from ${at(sheet, one.row, one.column)} on are filled by a formula that spills; nothing was written. Clear that formula if you want numbers there.`,
  );
}

/** A relative place in a formula: filled down, the next cell's formula would read differently. */
const RELATIVE = /(?<![$\w])[A-Z]{1,3}\$?\d|\$[A-Z]{1,3}\d/i;

/** The same formula in two cells side by side, though it has relative places: both are parts of one fixed array. */
export function refuseArrays(sheet: string, pieces: readonly Piece[]): void {
  for (const { row, column, cells2d, standing } of pieces) {
    const formulaAt = (r: number, c: number) =>
      r < cells2d.length && c < cells2d[0]!.length ? standing(r, c).formula : "";
    cells2d.forEach((line, r) => {
      line.forEach((_, c) => {
        const formula = formulaAt(r, c);
        if (!RELATIVE.test(formula)) return;
        const neighbours = [
          [r + 1, c],
          [r, c + 1],
        ] as const;
        for (const [nr, nc] of neighbours)
          if (formulaAt(nr, nc) === formula && [line[c], cells2d[nr]![nc]].some((value) => value !== undefined))
            throw new HostError(
              "occupied",
              `Cell ${at(sheet, row + r, column + c)} is part of a fixed array formula, which cannot be changed in part; nothing was written. Clear the whole array, then try again.`,
            );
      });
    });
  }
}

export function refuseMoved(block: Block, now: readonly CellValue[]): void {
  if (block.headings.every((heading, i) => heading === now[i])) return;
  throw new HostError(
    "gone",
    `The headings at ${block.address} are no longer there; nothing was written. Select a cell in the table and try again.`,
  );
}
