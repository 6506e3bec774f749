/** Edits of a package for the tests: what is changed, saved and refused. */
import { expect } from "vitest";
import { type Edit, FileError, type Value } from "../../../taskpane/desk/model/types.ts";
import { openPackage } from "../../../taskpane/desk/package/open.ts";
import { savePackage } from "../../../taskpane/desk/package/save.ts";
import { at, partText } from "./packages.ts";

export const SHEET = "xl/worksheets/sheet1.xml";
export const cell = (address: string, value: Value, more: object = {}, sheet = "S"): Edit => ({
  kind: "cell",
  sheet,
  ...at(address),
  value,
  ...more,
});
export const insert = (row: number, count = 1, sheet = "S"): Edit => ({
  kind: "insert-rows",
  sheet,
  row: row - 1,
  count,
});
export const remove = (row: number, count = 1, sheet = "S"): Edit => ({
  kind: "delete-rows",
  sheet,
  row: row - 1,
  count,
});
export const save = (bytes: Uint8Array, ...edits: Edit[]): Uint8Array => savePackage(openPackage(bytes).kept, edits);
export const sheetText = (bytes: Uint8Array): string => partText(bytes, SHEET);
export const refused = (bytes: Uint8Array, ...edits: Edit[]): string => {
  try {
    save(bytes, ...edits);
  } catch (problem) {
    expect(problem).toBeInstanceOf(FileError);
    return (problem as Error).message;
  }
  return "";
};
