/**
 * The workbook as the pane sees it. Two hosts carry it out: the spreadsheet program (excel.ts) and the embedded
 * sheet of the desk (sheet.ts). One contract is run against both (tests/host/contract.ts).
 *
 * Rows and columns count from 0. Values are raw: never display text. An error value is its code as text ("#N/A").
 */

/** Raw content of a cell; null is blank. */
export type CellValue = string | number | boolean | null;

/**
 * What may be written: a value (text stays text, even when it begins with "="), or a formula ("=…"). With `down` it is the
 * formula of the cell above, seen from this cell: a host may write such a column at once.
 */
export type Written = CellValue | { readonly formula: string; readonly down?: boolean };

/** A rectangle with a heading row. */
export interface Block {
  readonly sheet: string;
  /** Row and column of the first heading on its sheet. */
  readonly top: number;
  readonly left: number;
  readonly headings: readonly CellValue[];
  /** As many cells in each row as there are headings. */
  readonly rows: readonly (readonly CellValue[])[];
  /** The whole block with its headings as formulas refer to it, e.g. `Materials!$A$1:$V$20`. */
  readonly reference: string;
  /** The same for a person, e.g. "Plan A4:V49". */
  readonly address: string;
}

/** The planning table. */
export interface Table extends Block {
  /** Index into `rows` of the selected row; null when the selection is on none. */
  readonly selected: number | null;
}

/** Results that stand one column beside the table. */
export interface Beside extends Block {
  /** What stands in its first cell: a formula ("=…") for a live block, "" for numbers. */
  readonly formula: string;
}

/** How much a row of cells looks like the headings that are looked for; 0 is not at all. */
export type Score = (headings: readonly CellValue[]) => number;

/** What is to be read of a workbook: nothing else of it is touched. */
export interface Wanted {
  /** The planning table of the active sheet (region.ts does the choosing). */
  readonly table?: Score;
  /**
   * With the table, the block one column beside it. A host may leave the cells of its rows blank from the third column
   * on: what is asked is how far it goes and what made it.
   */
  readonly beside?: Score;
  /** What is kept in the workbook beside its cells. */
  readonly settings?: boolean;
  /** What stands in the row of the selection. */
  readonly line?: boolean;
  /** Lists by their names ("Materials", "Tools", "Machines", …): the table or the sheet of that name. */
  readonly lists?: readonly string[];
}

/** What was read of it; what was not wanted is undefined. */
export interface BookRead {
  /** The active sheet, when a table was wanted. */
  readonly sheet?: string;
  readonly table?: Table | null;
  readonly beside?: Beside | null;
  /** Cells of the row of the selection, from its first that is filled. */
  readonly line?: readonly CellValue[];
  /** By their names. */
  readonly settings?: Readonly<Record<string, string>>;
  /** In the order of the names; null for one that the workbook has not. */
  readonly lists?: readonly (Block | null)[];
  /** True when there can be no other planning table on the sheet than the one that was found, or none. */
  readonly whole?: boolean;
}

/** Rows of a table that were read again, by their place in `rows`. */
export interface RowsRead {
  readonly selected: number | null;
  readonly rows: ReadonlyMap<number, readonly CellValue[]>;
}

/** What happened to the cells of a workbook. */
export interface DataChange {
  /** The sheet; undefined when it is not known, and all of the workbook may have changed. */
  readonly sheet?: string;
  /** The cells, where none of them moved; undefined when any cell of the sheet may have changed. */
  readonly cells?: { readonly top: number; readonly left: number; readonly bottom: number; readonly right: number };
  /** Formulas were worked out again; nobody typed anything. */
  readonly calculated?: boolean;
}

/** A cell to write: position inside the block, -1 is the heading row; a column may be right beside the block. */
export interface Change {
  readonly row: number;
  readonly column: number;
  readonly value: Written;
  /** Number format of the cell from now on, e.g. "0.000". */
  readonly format?: string;
}

export interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** Bars of the numbers of one column, beside the block. */
export interface BarChart {
  readonly title: string;
  /** Columns of the names and of the numbers. */
  readonly names: number;
  readonly values: number;
  /** First of its rows, counted from the row under the headings. */
  readonly from: number;
  readonly count: number;
}

/** A new sheet with one block at its top left: lists, a ready-made table, the log of corrections. */
export interface NewSheet {
  readonly name: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly Written[])[];
  /** By column; undefined leaves the general format. */
  readonly formats?: readonly (string | undefined)[];
  /** By row, for its numbers; goes before the format of the column. */
  readonly rowFormats?: readonly (string | undefined)[];
  /** A page to be read and printed, not a table to be sorted: as wide as the paper, its headings on every sheet of it. */
  readonly page?: boolean;
  /** Left out by a host that has no charts, or refuses one. */
  readonly chart?: BarChart;
  /** Allowed words by column: a list of words, or a reference to a range ("Tools!$A$2:$A$200"). */
  readonly choices?: readonly (readonly string[] | string | undefined)[];
}

/** Number format of a cell of a new sheet; `row` counts from under the headings. */
export const formatAt = (sheet: NewSheet, row: number, column: number, cell: unknown): string | undefined =>
  (typeof cell === "number" ? sheet.rowFormats?.[row] : undefined) ?? sheet.formats?.[column];

/** Something of the user's that a write would take away, in one column. */
export interface Loss {
  readonly what: "formula" | "value";
  /** Counted from the first column of the block. */
  readonly column: number;
  readonly heading: string;
  /** How many cells. */
  readonly cells: number;
}

/** What a write must not harm, and what it may. */
export interface Care {
  /**
   * Cells that must hold what was read, compared in the write's own batch: columns of a block in all its rows, or in
   * `rows`. Any difference writes nothing ("changed").
   */
  readonly same?: { readonly block: Block; readonly columns: readonly number[]; readonly rows?: readonly number[] };
  /** What the person said may be replaced, column by column. */
  readonly agreed?: readonly Loss[];
  /** What the person wants to keep: these cells stay as they are. */
  readonly kept?: readonly Loss[];
  /** Formulas that are not the user's own. */
  readonly ours?: (formula: string) => boolean;
  /** Rows whose results an earlier fill wrote, as their basis tells: their values may be blanked. */
  readonly filled?: ReadonlySet<number>;
  /** A block of an earlier fill beside or below, whose cells may be replaced. */
  readonly over?: Block;
}

/** How a write ended that was carried out. */
export interface Done {
  /** A sentence when the host reported a fault and all was written nevertheless. */
  readonly note?: string;
}

export type HostErrorCode =
  /** What was read is no longer so: nothing was written, and it is to be read and planned again. */
  | "changed"
  /** Something of the user's would be lost: nothing was written until the person has said yes (`Asking`). */
  | "asks"
  /** The sheet is protected: nothing was written. */
  | "protected"
  /** There is content in the way: nothing was written. */
  | "occupied"
  /** The sheet or the block is no longer there, or has moved. */
  | "gone"
  /** A cell is being edited. */
  | "editing"
  /** This host cannot do it. */
  | "unsupported"
  /** The file cannot be read. */
  | "unreadable"
  | "failed";

/** What a host could not do, in a sentence for the person in front of it. */
export class HostError extends Error {
  readonly code: HostErrorCode;
  constructor(code: HostErrorCode, message: string) {
    super(message);
    this.name = "HostError";
    this.code = code;
  }
}

/** What would be lost, for the person to say yes or no to. */
export class Asking extends HostError {
  readonly losses: readonly Loss[];
  constructor(losses: readonly Loss[]) {
    super("asks", "Something in the table would be replaced; nothing was written.");
    this.losses = losses;
  }
}

/**
 * Writes end in one of four ways: all is written; nothing is; a fault stopped it half way and what had been written was
 * taken back; or the host answers no more, and the error says so. Each error's sentence says which.
 */
export interface Host {
  readonly kind: "excel" | "sheet";

  /** Reads all that is wanted in one go. */
  read(wanted: Wanted): Promise<BookRead>;

  /**
   * Reads the selected row and those in `changed` again. Null when that cannot be told from a look at the headings
   * and the row alone: the table is not where it was, or the selection may be in another one.
   */
  readRows(table: Table, changed: readonly number[]): Promise<RowsRead | null>;

  /**
   * The planning table at the selection, else the one in the selected rows, else the likeliest of the active sheet
   * (region.ts does the choosing).
   *
   * @param score - how much a row of cells looks like the headings of a planning table; 0 is not at all
   */
  readTable(score: (headings: readonly CellValue[]) => number): Promise<Table | null>;

  /** A list of the workbook ("Materials", "Tools", "Machines", …): the table or the sheet of that name; null without. */
  readList(name: string): Promise<Block | null>;

  /**
   * Adds a sheet; "occupied" when one of that name exists; a host that may stop half way finishes one that an
   * earlier try left half made. Does not leave the active sheet unless `activate`.
   */
  addSheet(sheet: NewSheet, activate?: boolean): Promise<Block & Done>;

  /**
   * Adds rows under a block, as one step of undo. "occupied" when there is something else below it. A blank (null)
   * leaves what a new row has by itself, such as the formula of a calculated column. Live formulas in the heading row
   * that run over the rows of the block are made long enough for the new ones.
   *
   * @param spare - rows at the end of the block that are to be filled first; "occupied" when a cell to be written there
   *   holds something
   */
  appendRows(block: Block, rows: readonly (readonly Written[])[], spare?: number, same?: Care["same"]): Promise<Done>;

  /**
   * Writes cells as one step of undo. Nothing else is touched. The block is checked first: "gone" when its headings
   * are no longer where they were, "occupied" when a cell beside or below the block holds something (a formula that
   * shows nothing as well), "asks" when a formula in it would be replaced or a value blanked.
   */
  writeCells(block: Block, changes: readonly Change[], care?: Care): Promise<Done>;

  /**
   * Puts a formula into a free place and leaves it to spill over `size` (rows, columns). "occupied" when a cell of
   * that rectangle holds something.
   *
   * @param formats - number formats by column for the cells under its first row
   */
  insertFormula(
    place: Place,
    formula: string,
    size: readonly [number, number],
    formats?: readonly (string | undefined)[],
  ): Promise<Done>;

  /** Writes a block into a free place; "occupied" when a cell of it holds something. */
  insertCells(
    place: Place,
    cells: readonly (readonly Written[])[],
    formats?: readonly (string | undefined)[],
  ): Promise<Done>;

  /**
   * Keeps a text in the workbook beside its cells, under a name of lower-case letters; null takes it out. It is saved
   * with the file and comes back with it.
   */
  keep(name: string, text: string | null): Promise<void>;

  /** Shows a cell and selects it. */
  select(place: Place): Promise<void>;

  /** Calls back when the selection has moved to another row or column, or to another sheet; the answer stops it. */
  onSelectionChange(listener: (otherSheet: boolean) => void): () => void;

  /** Calls back after a person or a recalculation changed cells; not for what this host wrote itself. */
  onDataChange(listener: (change: DataChange) => void): () => void;

  /** Calls back at once, and when the pane is shown or hidden; the answer stops it. */
  onShown(listener: (shown: boolean) => void): () => void;
}
