/** What whoever mounts the grid gives it and gets back. */
import type { Place } from "../model/address.ts";
import type { Model } from "../model/model.ts";
import type { GridWords } from "./words.ts";

export interface GridOptions {
  readonly model: Model;
  readonly words?: GridWords;
  /** F6 and Ctrl+F6 (with Shift: previous): the focus is to go elsewhere. */
  onLeave?(direction: "next" | "previous"): void;
  /** After the selection moved. The same as model.onSelect, for those who only have the grid. */
  onSelect?(place: Place): void;
  /** Classes of a cell: "ok", "check", "stop" colour a verdict; others are the mounter's own. */
  classOf?(sheet: string, row: number, column: number): string | undefined;
  /** A sentence about a cell, shown under its content: why it is an error, that it is not recalculated. */
  noteOf?(sheet: string, row: number, column: number): string | undefined;
  /** False for a cell that the operation of its row does not use: it is drawn back. */
  isUsed?(sheet: string, row: number, column: number): boolean;
  /** Columns that no row of the sheet uses; a switch of the grid hides and shows them. Asked anew at each change. */
  hiddenColumns?(sheet: string): ReadonlySet<number>;
  /** Hides those columns from the beginning. Default true. */
  readonly hideUnused?: boolean;
}

export interface GridHandle {
  /** Gives the grid the focus. */
  focus(): void;
  /** Shows and selects a cell. */
  select(place: Place, how?: { readonly focus?: boolean }): void;
  /** Finishes what is being typed. False when it was refused: then it stays open, with the reason beside it. */
  endEditing(commit: boolean): boolean;
  readonly editing: boolean;
  /** Draws the classes, notes and hidden columns anew. */
  refresh(): void;
  setModel(model: Model): void;
  /** Says something in the grid's line for news. */
  say(text: string, kind?: "news" | "refused"): void;
  destroy(): void;
}
