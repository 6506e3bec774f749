/** Cells to numbers and back: what a spreadsheet hands over, and the errors it can show. */
import { TradeError, type TradeErrorCode } from "../src/errors.ts";
import { errors } from "../src/words/en/errors.ts";
import { errorText, quote, type Show } from "../src/words/errors.ts";

/** Whatever a host hands over for one cell. */
export type Cell = unknown;
/** What a host hands over for an argument: a block of cells; one cell or nothing is taken as well. */
export type Argument = Cell[][] | Cell;

/** Codes that a function may hand to the host. */
export const ERROR_CODES = ["#DIV/0!", "#VALUE!", "#N/A", "#NUM!", "#NULL!", "#NAME?", "#REF!"] as const;
export type ErrorCode = (typeof ERROR_CODES)[number];
const ERROR_TEXT =
  /^#(?:DIV\/0!|VALUE!|N\/A|NUM!|NULL!|NAME\?|REF!|SPILL!|CALC!|FIELD!|GETTING_DATA|BUSY!|CONNECT!|BLOCKED!|UNKNOWN!|EXTERNAL!|PYTHON!)$/;

/** An error value in a cell, with a sentence for the person who reads it. */
export class CellError {
  readonly code: string;
  readonly message: string;
  constructor(code: string, message: string) {
    this.code = code;
    this.message = message;
  }
}

const CODE_OF: Record<TradeErrorCode, ErrorCode> = {
  blank: "#VALUE!",
  value: "#VALUE!",
  range: "#VALUE!",
  unknown: "#N/A",
  unsolvable: "#NUM!",
};

/** The cell error that stands for an error of the trade layer; anything else that was thrown is a fault of ours and says so. */
export function toCellError(thrown: unknown, show?: Show, shown?: string): CellError {
  if (thrown instanceof CellError) return thrown;
  if (thrown instanceof TradeError)
    return new CellError(CODE_OF[thrown.code], errorText(thrown, errors, { show, shown }));
  return new CellError("#VALUE!", `this should not happen, please report it: ${String(thrown)}`);
}

/** Plain content of a cell: data-type objects by their basic value, error objects as CellError. */
export function content(cell: Cell): Cell {
  if (typeof cell === "string") return cell.charCodeAt(0) === 35 && ERROR_TEXT.test(cell) ? errorCell(cell) : cell;
  if (typeof cell !== "object" || cell === null) return cell;
  if (cell instanceof CellError) return cell;
  const object = cell as {
    basicValue?: unknown;
    basicType?: unknown;
    type?: unknown;
    code?: unknown;
    message?: unknown;
  };
  if (object.basicType === "Error" || object.type === "Error") return errorCell(String(object.basicValue ?? "#VALUE!"));
  if (typeof object.code === "string" && object.code.startsWith("#")) {
    return typeof object.message === "string" && object.message.trim() !== ""
      ? new CellError(object.code, object.message)
      : errorCell(object.code);
  }
  if ("basicValue" in object) return content(object.basicValue);
  return cell;
}

function errorCell(code: string): CellError {
  return new CellError(code, `the cell holds ${code}`);
}

/** Brings whatever stands for an argument into a rectangular block of at least one cell. */
export function toBlock(argument: Argument): Cell[][] {
  if (!Array.isArray(argument)) return [[argument]];
  if (argument.length === 0) return [[null]];
  if (!Array.isArray(argument[0])) return [argument as Cell[]];
  let columns = 1;
  for (const row of argument as Cell[][]) if (row.length > columns) columns = row.length;
  let ragged = false;
  for (const row of argument as Cell[][]) if (row.length !== columns) ragged = true;
  if (!ragged) return argument as Cell[][];
  return (argument as Cell[][]).map((row) => Array.from({ length: columns }, (_, c) => row[c] ?? null));
}

/** What the user typed, for a message. */
export function typed(cell: Cell): string {
  return quote(content(cell), errors.blank);
}
