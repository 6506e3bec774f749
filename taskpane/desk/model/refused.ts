/** Why an edit was refused. The sentence for the person is made where words are made (grid/words.ts). */
export type RefusalCode =
  /** The cell belongs to an array formula whose first cell is elsewhere. */
  | "array"
  /** The sheet is protected and the cell locked. */
  | "locked"
  /** The cell is covered by a merged cell. */
  | "merged"
  /** No such sheet. */
  | "sheet"
  /** A sheet of that name exists, or the name is not allowed. */
  | "name"
  /** Outside of what a sheet can hold. */
  | "outside"
  /** A table keeps its headings and at least one row; it is not sorted across merged cells or array formulas. */
  | "table"
  /** Something stands where rows or a table would go. */
  | "occupied"
  /** The formula cannot be read. */
  | "formula"
  /** What is typed can be read in two ways. */
  | "ambiguous"
  /** The file cannot take it; `text` is the sentence. */
  | "file"
  /** More text than a cell can hold. */
  | "long";

export interface RefusalDetail {
  /** The cell or area it is about, as a person reads it: "D5". */
  readonly at?: string;
  readonly text?: string;
  readonly other?: string;
}

export class Refused extends Error {
  readonly code: RefusalCode;
  readonly detail: RefusalDetail;
  constructor(code: RefusalCode, detail: RefusalDetail = {}) {
    super(`refused (${code})${detail.at ? ` at ${detail.at}` : ""}${detail.text ? `: ${detail.text}` : ""}`);
    this.name = "Refused";
    this.code = code;
    this.detail = detail;
  }
}
