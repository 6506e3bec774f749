/**
 * Shapes that the desk's parts share: what a workbook file holds (package/), what is edited (model/), what is drawn (grid/),
 * what is calculated (calc/). Rows and columns count from 0. No DOM here.
 */

/** An error value of a cell: "#N/A", "#VALUE!", … */
export interface CellError {
  readonly error: string;
  /** Why, where a worksheet function said so. */
  readonly reason?: string;
}
export type Value = string | number | boolean | null | CellError;

/** A rectangle; `right`/`bottom` included. A whole column ends at LAST_ROW, a whole row at LAST_COLUMN. */
export interface Area {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}
export const LAST_ROW = 1_048_575;
export const LAST_COLUMN = 16_383;

export interface Cell {
  readonly value: Value;
  /** Formula as a person reads and types it, without "=" and without the file's name prefixes. */
  readonly formula?: string;
  /** Set on the first cell of an array formula: where its answer stands. `dynamic`: it may grow and shrink. */
  readonly array?: { readonly area: Area; readonly dynamic: boolean };
  /** Index into Book.styles. */
  readonly style?: number;
  /** True when the desk could not calculate this formula and shows the value that the file came with. */
  readonly stale?: boolean;
}

/** The part of a cell's look that the desk shows. The file keeps the whole of it. */
export interface Style {
  readonly numberFormat: string;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly color?: string;
  readonly fill?: string;
  readonly align?: "left" | "center" | "right";
  readonly wrap?: boolean;
  readonly locked?: boolean;
}

/** Words that a cell may hold: a list, or the range they stand in. */
export interface Choices {
  readonly areas: readonly Area[];
  readonly words?: readonly string[];
  /** Range as a formula: "Tools!$A$2:$A$200", a name, a structured reference. */
  readonly source?: string;
}

export interface TableRange {
  readonly name: string;
  readonly area: Area;
  readonly columns: readonly string[];
  readonly totals: boolean;
  /** Set on a table without a row of headings. */
  readonly headings?: false;
}

export interface Sheet {
  readonly name: string;
  readonly state: "visible" | "hidden" | "veryHidden";
  /** Sparse: row → column → cell. */
  readonly cells: ReadonlyMap<number, ReadonlyMap<number, Cell>>;
  /** Column widths in characters, where the file says. */
  readonly widths: ReadonlyMap<number, number>;
  readonly hiddenColumns: ReadonlySet<number>;
  readonly hiddenRows: ReadonlySet<number>;
  readonly frozen: { readonly rows: number; readonly columns: number };
  readonly merges: readonly Area[];
  readonly choices: readonly Choices[];
  readonly tables: readonly TableRange[];
  readonly protected: boolean;
  /** Areas that rows can be inserted into or deleted from only as a whole: pivot tables. */
  readonly fixed?: readonly { readonly area: Area; readonly what: string }[];
  /** What this sheet holds that the desk keeps but cannot show: "2 charts", "a picture", … */
  readonly kept: readonly string[];
}

export interface Book {
  readonly sheets: readonly Sheet[];
  readonly active: number;
  readonly styles: readonly Style[];
  /** Defined names: name → formula text; `sheet` for a name of one sheet. */
  readonly names: readonly { readonly name: string; readonly formula: string; readonly sheet?: string }[];
  readonly date1904: boolean;
  /** What the file holds that the desk keeps but cannot show. */
  readonly kept: readonly string[];
  /** What this program keeps in the file beside its cells, by name. */
  readonly settings?: Readonly<Record<string, string>>;
}

/** An edit as the model makes it, in the order they were made; the package replays them on the file as it came. */
export type Edit =
  | {
      readonly kind: "cell";
      readonly sheet: string;
      readonly row: number;
      readonly column: number;
      readonly value: Value;
      readonly formula?: string;
      readonly numberFormat?: string;
      /** Set on the first cell of an array formula. */
      readonly array?: { readonly area: Area; readonly dynamic: boolean };
      /** A look of ours for a cell of a new sheet. */
      readonly look?: "heading" | "ok" | "check" | "stop" | "page";
    }
  | {
      readonly kind: "insert-rows" | "delete-rows";
      readonly sheet: string;
      readonly row: number;
      readonly count: number;
    }
  | { readonly kind: "table-area"; readonly sheet: string; readonly table: string; readonly area: Area }
  | { readonly kind: "width"; readonly sheet: string; readonly column: number; readonly width: number }
  | { readonly kind: "choices"; readonly sheet: string; readonly choices: Choices }
  | {
      readonly kind: "add-sheet";
      readonly sheet: string;
      readonly after?: string;
      readonly table?: { readonly name: string; readonly area: Area };
      readonly frozen?: { readonly rows: number; readonly columns: number };
      /** Printed as wide as the paper, with this many heading rows on each page. */
      readonly page?: { readonly headings: number };
    }
  /** What this program keeps in the file beside its cells; null takes it out. */
  | { readonly kind: "setting"; readonly name: string; readonly value: string | null }
  | { readonly kind: "rename-sheet"; readonly sheet: string; readonly to: string }
  | {
      readonly kind: "hide-columns";
      readonly sheet: string;
      readonly columns: readonly number[];
      readonly hidden: boolean;
    };

/** Why a file or an edit was refused: a sentence for the person. */
export class FileError extends Error {
  readonly code: "unreadable" | "encrypted" | "old-format" | "too-large" | "damaged" | "unsupported" | "cancelled";
  constructor(code: FileError["code"], message: string) {
    super(message);
    this.name = "FileError";
    this.code = code;
  }
}
