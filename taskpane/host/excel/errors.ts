/** What Excel reports, as sentences of ours. */
import { HostError } from "../host.ts";

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
  NotImplemented: ["unsupported", "This version of Excel cannot do that. Update it, or use the desk in a browser."],
  UnsupportedOperation: [
    "unsupported",
    "This version of Excel cannot do that. Update it, or use the desk in a browser.",
  ],
  ApiNotFound: ["unsupported", "This version of Excel cannot do that. Update it, or use the desk in a browser."],
  ApiNotAvailable: ["unsupported", "This version of Excel cannot do that. Update it, or use the desk in a browser."],
  RequestPayloadSizeLimitExceeded: ["failed", "The table is too big for one step. Split it over two sheets."],
  ResponsePayloadSizeLimitExceeded: [
    "failed",
    "The sheet is too big to be read in one step. Move the table to a sheet of its own.",
  ],
  ConflictException: ["failed", "Somebody else changed the workbook at the same moment. Try again."],
  Conflict: ["failed", "Somebody else changed the workbook at the same moment. Try again."],
  RequestAborted: ["failed", "Excel stopped the step. Try again."],
  ServiceNotAvailable: ["failed", "Excel does not answer. Check the connection and try again."],
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
