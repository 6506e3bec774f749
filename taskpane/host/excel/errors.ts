/** What Excel reports, as sentences of ours. */
import { HostError } from "../host.ts";

const TOO_OLD = "This version of Excel cannot do that. Update it, or use the desk in a browser.";
const NO_ANSWER = "Excel does not answer. Check the connection and try again.";
const TABLE_IN_THE_WAY =
  "Excel cannot move the cells below: a table, a pivot table or the end of the sheet is in the way. Make room under the table and try again.";

/** By the codes of Excel.ErrorCodes, of OfficeExtension.ErrorCodes, and those that the web version answers besides. */
const SENTENCES: Readonly<Record<string, readonly [HostError["code"], string]>> = {
  AccessDenied: [
    "protected",
    "Excel does not allow writing here. Unprotect the sheet or open the workbook for editing.",
  ],
  ItemNotFound: ["gone", "The table is no longer where it was. Select a cell in it and try again."],
  InvalidReference: ["gone", "The table is no longer where it was. Select a cell in it and try again."],
  ItemAlreadyExists: [
    "occupied",
    "There is a sheet or table of that name already. Rename or delete it, then try again.",
  ],
  InvalidOperationInCellEditMode: ["editing", "A cell is being edited. Press Enter or Esc, then try again."],
  NotImplemented: ["unsupported", TOO_OLD],
  UnsupportedOperation: ["unsupported", TOO_OLD],
  UnsupportedFeature: ["unsupported", TOO_OLD],
  ApiNotFound: ["unsupported", TOO_OLD],
  ApiNotAvailable: ["unsupported", TOO_OLD],
  UnsupportedSheet: [
    "unsupported",
    "This kind of sheet has no cells to work with. Select a cell on an ordinary worksheet and try again.",
  ],
  InvalidSelection: ["gone", "What is selected is no cell. Select one cell in the table and try again."],
  InvalidBinding: ["gone", "The table is no longer where it was. Select a cell in it and try again."],
  RequestPayloadSizeLimitExceeded: ["failed", "The table is too big for one step. Split it over two sheets."],
  ResponsePayloadSizeLimitExceeded: [
    "failed",
    "The sheet is too big to be read in one step. Move the table to a sheet of its own.",
  ],
  ConflictException: ["failed", "Somebody else changed the workbook at the same moment. Try again."],
  Conflict: ["failed", "Somebody else changed the workbook at the same moment. Try again."],
  RequestAborted: ["failed", "Excel stopped the step. Try again."],
  ServiceNotAvailable: ["failed", NO_ANSWER],
  ConnectionFailure: ["failed", NO_ANSWER],
  ActivityLimitReached: ["failed", "Excel has too much to do at once. Wait a moment and try again."],
  OperationCellsExceedLimit: [
    "failed",
    "These are more cells than Excel handles in one step. Split the table over two sheets.",
  ],
  RangeExceedsLimit: ["failed", "The table is longer than Excel handles in one step. Split it over two sheets."],
  FormulaLengthExceedsLimit: [
    "failed",
    "A formula of the block would be too long for Excel: the table has too many columns of inputs. Match those that are not needed as not used, then try again.",
  ],
  InsertDeleteConflict: ["occupied", TABLE_IN_THE_WAY],
  NonBlankCellOffSheet: ["occupied", TABLE_IN_THE_WAY],
  PivotTableRangeConflict: [
    "occupied",
    "A pivot table is in the way. Move it, or make room beside the table, and try again.",
  ],
  EmptyChartSeries: [
    "failed",
    "Excel could not draw the chart: its cells are empty. Look at the numbers of the sheet.",
  ],
  InvalidOperation: [
    "failed",
    "Excel does not allow that for these cells, such as part of an array or of a linked table. Move the table to plain cells and try again.",
  ],
  OpenWorkbookLinksBlocked: [
    "failed",
    "A link to another workbook is blocked. Allow it (Data, Edit Links) and try again.",
  ],
  RefreshWorkbookLinksBlocked: [
    "failed",
    "Links to other workbooks cannot be refreshed. Allow it (Data, Edit Links) and try again.",
  ],
  Timeout: ["failed", "Excel took too long. Try again with fewer open workbooks."],
  InactiveWorkbook: ["failed", "Another workbook is in front. Click into this one and try again."],
  FilteredRangeConflict: ["failed", "A filter hides rows of the table. Clear the filter and try again."],
  MergedRangeConflict: ["failed", "Merged cells are in the way. Unmerge them and try again."],
};

/** What Excel reports, as a sentence of ours. */
export function toHostError(thrown: unknown): HostError {
  if (thrown instanceof HostError) return thrown;
  const code = typeof thrown === "object" && thrown !== null && "code" in thrown ? String(thrown.code) : "";
  const known = SENTENCES[code];
  if (known) return new HostError(...known);
  return new HostError(
    "failed",
    `Excel could not do it${code === "" ? "" : ` (${code})`}. Try again; if it happens again, save the workbook and reopen it.`,
  );
}
