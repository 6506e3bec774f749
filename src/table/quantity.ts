/** How one column is declared, and the types that follow from the declarations. */
import type { DimensionName } from "../units.ts";

/** Number formats for display, for a metric and for an inch row. */
export type Format = readonly [mm: string, inch: string];

export interface Quantity {
  /** Canonical heading. */
  readonly heading: string;
  readonly kind: "text" | "number" | "whole" | "word" | "flag" | "depths" | "direction";
  /** `length` etc. follow the row's units; without it the unit is fixed (see `unit`). */
  readonly dimension?: DimensionName;
  /** Fixed unit. */
  readonly unit?: string;
  readonly words?: readonly string[];
  /** Smallest value; `above` excludes it. */
  readonly low?: number;
  readonly above?: boolean;
  readonly high?: number;
  readonly format?: Format;
}

/** True for a number within the limits of a quantity. */
export const isWithin = (
  value: number,
  { low = -Number.MAX_VALUE, high = Number.MAX_VALUE, above }: Pick<Quantity, "low" | "high" | "above">,
): boolean => (above ? value > low : value >= low) && value <= high;

/** A quantity under its key. */
export interface Column<K extends string = string> extends Quantity {
  /** Name in the code; never shown. */
  readonly key: K;
}

export type Columns = Readonly<Record<string, Quantity>>;

/** What a cell of a column holds once it is read. */
export type ValueOf<Q extends Quantity> = Q extends { kind: "word"; words: readonly (infer W)[] }
  ? W
  : Q extends { kind: "text" }
    ? string
    : Q extends { kind: "flag" }
      ? boolean
      : number;

/** A row of a table as it is read: every cell may be blank. */
export type RecordOf<C extends Columns> = { readonly [K in keyof C]?: ValueOf<C[K]> };

export const LENGTH: Format = ["0.00", "0.0000"];
export const FINE: Format = ["0.000", "0.00000"];
export const FINEST: Format = ["0.0000", "0.00000"];
/** What is typed stays as it was typed. */
const TEXT: Format = ["@", "@"];
export const WHOLE: Format = ["0", "0"];
export const ONE: Format = ["0.0", "0.0"];
export const TWO: Format = ["0.00", "0.00"];

type More = Partial<Omit<Quantity, "heading" | "kind" | "words">>;

/** Text of any length, and numbers that stay numbers. */
export const free = (heading: string) => ({ heading, kind: "text" }) as const;
/** A name or a designation: a spreadsheet that takes what is typed for a date ("1/4-20") or a number has to be told. */
export const text = (heading: string) => ({ heading, kind: "text", format: TEXT }) as const;
export const flag = (heading: string) => ({ heading, kind: "flag" }) as const;
export const word = <const W extends readonly string[]>(heading: string, words: W) =>
  ({ heading, kind: "word", words }) as const;
export const whole = (heading: string, low: number, more: More = {}) =>
  ({ heading, kind: "whole", low, format: WHOLE, ...more }) as const;
export const number = (heading: string, more: More = {}) => ({ heading, kind: "number", ...more }) as const;
/** A number above 0. */
export const above0 = (heading: string, more: More = {}) => number(heading, { low: 0, above: true, ...more });
/** A number of at least 0. */
export const from0 = (heading: string, more: More = {}) => number(heading, { low: 0, ...more });
/** A length above 0, and one of at least 0. */
export const length = (heading: string, format: Format = LENGTH) => above0(heading, { dimension: "length", format });
export const length0 = (heading: string, format: Format = LENGTH) => from0(heading, { dimension: "length", format });

/** The declarations as columns in their order. */
export function columnsOf<C extends Columns>(quantities: C): readonly Column<keyof C & string>[] {
  return (Object.keys(quantities) as (keyof C & string)[]).map((key) => ({ ...quantities[key]!, key }));
}
