/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/** What is seen before anything is written, and said instead. */
import { type Block, type CellValue, HostError, type Place } from "../host.ts";
import { spokenAddress } from "../reference.ts";
import { toCells } from "./cells.ts";

/** Cells that one request should carry at most; the web version refuses more than 5 MB. */
const CELLS_PER_SYNC = 100_000;

const protectedSheet = (name: string) =>
  new HostError(
    "protected",
    `The sheet "${name}" is protected; nothing was written. Unprotect it (Review, Unprotect Sheet) and try again.`,
  );

export const refuseProtected = (sheet: Excel.Worksheet): void => {
  if (sheet.protection.protected) throw protectedSheet(sheet.name);
};

export function refuseOccupied(sheet: string, place: Place, range: { readonly values: any[][] }): void {
  const cells = toCells(range.values);
  const row = cells.findIndex((line) => line.some((cell) => cell !== null));
  if (row < 0) return;
  const column = cells[row]!.findIndex((cell) => cell !== null);
  throw new HostError(
    "occupied",
    `Cell ${spokenAddress(sheet, place.row + row, place.column + column, 1, 1).split(":")[0]} is in the way; nothing was written. Clear it or move it, then try again.`,
  );
}

export function refuseHuge(cells: number): void {
  if (cells > CELLS_PER_SYNC)
    throw new HostError(
      "failed",
      `That is ${cells} cells, more than fit in one step (${CELLS_PER_SYNC}). Split the table over two sheets.`,
    );
}

export function refuseMoved(block: Block, now: readonly CellValue[]): void {
  if (block.headings.every((heading, i) => heading === now[i])) return;
  throw new HostError(
    "gone",
    `The headings at ${block.address} are no longer there; nothing was written. Select a cell in the table and try again.`,
  );
}
