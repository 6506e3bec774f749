/** What the calculator is given and answers. */
import type { Sheet, Value } from "../model/types.ts";
import type { Block } from "./values.ts";

/** A sheet, and what it shows of answers that fill more than their formula's cell. */
export interface CalculatedSheet extends Sheet {
  readonly spills?: ReadonlyMap<number, ReadonlyMap<number, { readonly value: Value }>>;
}

/** The workbook as it is now. */
export interface Source {
  sheets(): readonly CalculatedSheet[];
  readonly names: readonly { readonly name: string; readonly formula: string; readonly sheet?: string }[];
  readonly date1904: boolean;
}

export interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

export interface Answer extends Place {
  readonly value: Value;
  /** The values of a formula that fills more than its own cell, its own first. */
  readonly spill?: Block;
  /** Not worked out here: the value is older than what it hangs on. */
  readonly stale?: boolean;
}

export interface Calculator {
  /** Cells changed: what hangs on them, worked out again. */
  changed(cells: readonly Place[]): Answer[];
  /** Rows, sheets or tables moved: everything is read anew; `cells` hold what changed with it. */
  rebuilt(cells: readonly Place[]): Answer[];
}
