/** What formulas see of the workbook, and the shape of the functions they call. */
import type { Area, TableRange, Value } from "../model/types.ts";
import type { Block, Operand } from "./values.ts";

/** The cell a formula stands in; `single`: a formula of the old kind, which takes one cell of a range, its own line's. */
export interface Spot {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
  readonly single: boolean;
}

/** A piece of a formula: what it points at, or the values that are there. */
export interface Code {
  operand(spot: Spot): Operand;
  value(spot: Spot): Value | Block;
}

export interface World {
  /** Up-to-date value of a cell. */
  value(sheet: number, row: number, column: number): Value;
  /** Values of an operand; ranges are cut to what holds something. `array`: whole blocks are wanted here. */
  read(operand: Operand, spot: Spot, array: boolean): Value | Block;
  /** Values of an area, as far as the sheet holds something (at least one cell). */
  block(sheet: number, area: Area): Block;
  used(sheet: number): { readonly rows: number; readonly columns: number };
  spill(sheet: number, row: number, column: number): Area | undefined;
  sheetNamed(name: string): number | undefined;
  sheetName(sheet: number): string;
  tableNamed(name: string): { readonly sheet: number; readonly range: TableRange } | undefined;
  tableAt(
    sheet: number,
    row: number,
    column: number,
  ): { readonly sheet: number; readonly range: TableRange } | undefined;
  /** Formula of a defined name. */
  name(name: string, sheet: number): string | undefined;
  /** Days since the workbook's day 0. */
  now(): number;
  readonly date1904: boolean;
  /** True for a row that is hidden on its sheet. */
  hidden(sheet: number, row: number): boolean;
  /** Formula of a cell, "" without one. */
  formula(sheet: number, row: number, column: number): string;
}

interface Common {
  readonly least: number;
  readonly most: number;
  readonly volatile?: boolean;
  /** Arguments are taken as blocks even in a formula of the old kind. */
  readonly arrays?: boolean;
}
export type Definition = Common &
  (
    | {
        /** Works out its arguments itself, those it needs. */
        readonly kind: "lazy";
        run(args: readonly (Code | undefined)[], spot: Spot, world: World): Operand;
      }
    | { readonly kind: "whole"; run(args: readonly Operand[], spot: Spot, world: World): Operand }
    | {
        /** From value to value; blocks are gone through place by place. */
        readonly kind: "each";
        readonly takesErrors?: boolean;
        run(values: readonly Value[]): Value;
      }
  );

export type Definitions = Readonly<Record<string, Definition>>;
