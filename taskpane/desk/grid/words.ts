/** Every word that the grid shows or speaks. Another language is another object of this shape. */
import type { Refused } from "../model/refused.ts";

export interface GridWords {
  readonly grid: (sheet: string) => string;
  /** How to move about and leave, for a screen reader. */
  readonly help: string;
  readonly corner: string;
  readonly columnName: (letters: string, heading: string) => string;
  readonly rowName: (row: number) => string;
  readonly cellName: (heading: string, row: string, address: string) => string;
  readonly unused: string;
  readonly stale: string;
  readonly address: string;
  readonly addressWrong: (text: string) => string;
  readonly content: string;
  readonly sheets: string;
  readonly addSheet: string;
  readonly sheetName: string;
  readonly newSheet: (number: number) => string;
  readonly sheetKeeps: (what: string) => string;
  readonly undo: string;
  readonly redo: string;
  readonly find: string;
  readonly more: string;
  readonly undone: (step: string) => string;
  readonly redone: (step: string) => string;
  readonly nothingToUndo: string;
  readonly nothingToRedo: string;
  /** Names of the steps of undo. */
  readonly steps: Readonly<Record<string, string>>;
  readonly choices: (count: number) => string;
  readonly choicesHint: string;
  readonly openChoices: string;
  readonly notListed: (text: string, heading: string) => string;
  readonly doubt: Readonly<Record<"comma" | "group" | "long" | "arguments", (text: string, mark: string) => string>>;
  readonly doubts: (count: number, first: string) => string;
  readonly findLabel: string;
  readonly findCount: (at: number, of: number) => string;
  readonly findNone: string;
  readonly findNext: string;
  readonly findBefore: string;
  readonly close: string;
  readonly cut: string;
  readonly copy: string;
  readonly paste: string;
  readonly pasteByKey: string;
  readonly clear: string;
  readonly fillDown: string;
  readonly insertAbove: (count: number) => string;
  readonly insertBelow: (count: number) => string;
  readonly deleteRows: (count: number) => string;
  readonly sortUp: string;
  readonly sortDown: string;
  readonly filter: string;
  readonly clearFilters: string;
  readonly filterTitle: (heading: string) => string;
  readonly filterSearch: string;
  readonly filterAll: string;
  readonly filterBlank: string;
  readonly filterMany: (shown: number, of: number) => string;
  readonly apply: string;
  readonly filtered: (shown: number, of: number) => string;
  readonly fitWidth: string;
  readonly hideColumns: string;
  readonly showColumns: string;
  readonly showUnused: (count: number) => string;
  readonly hideUnused: (count: number) => string;
  readonly copied: (cells: string) => string;
  readonly selected: (cells: string, rows: number, columns: number, numbers: number, sum: string) => string;
  readonly extend: string;
  readonly tooWide: string;
  readonly noTable: string;
  readonly kept: (typed: string) => string;
  /** The sentence for what was refused, with a way out. */
  readonly refused: (refusal: Refused) => string;
}

const plural = (count: number, one: string, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;

export const ENGLISH: GridWords = {
  grid: (sheet) => `Sheet ${sheet}`,
  help: "Arrow keys move, typing replaces, F2 edits, Shift+F10 opens the menu of the cell, F6 leaves the sheet.",
  corner: "Select everything",
  columnName: (letters, heading) => (heading ? `${heading}, column ${letters}` : `Column ${letters}`),
  rowName: (row) => `Row ${row}`,
  cellName: (heading, row, address) => [heading, row, address].filter((part) => part !== "").join(", "),
  unused: "not used by this operation",
  stale: "Not recalculated here: this is the value that the file came with.",
  address: "Go to cell",
  addressWrong: (text) => `“${text}” is no cell of this sheet. Write it like D5 or B2:D9.`,
  content: "Content of the cell",
  sheets: "Sheets",
  addSheet: "Add a sheet",
  sheetName: "Name of the sheet",
  newSheet: (number) => `Sheet ${number}`,
  sheetKeeps: (what) => `Kept in the file, not shown here: ${what}.`,
  undo: "Undo",
  redo: "Redo",
  find: "Find",
  more: "Menu",
  undone: (step) => `Undone: ${step}.`,
  redone: (step) => `Done again: ${step}.`,
  nothingToUndo: "There is nothing to undo.",
  nothingToRedo: "There is nothing to do again.",
  steps: {
    edit: "an edit",
    typing: "typing",
    clear: "clearing cells",
    cut: "cutting cells",
    paste: "pasting",
    fill: "filling down",
    "insert rows": "inserting rows",
    "delete rows": "deleting rows",
    sort: "sorting",
    width: "a column's width",
    "hide columns": "hiding columns",
    "show columns": "showing columns",
    "add sheet": "adding a sheet",
    "rename sheet": "renaming a sheet",
  },
  choices: (count) => `${plural(count, "choice")}.`,
  choicesHint: "↓ to choose, Enter takes it, Escape closes",
  openChoices: "Show the choices",
  notListed: (text, heading) =>
    `“${text}” is not among the choices${heading ? ` of ${heading}` : ""}. It is kept as typed.`,
  doubt: {
    comma: (text) => `“${text}” stays text: the decimal mark here is a point. Write ${text.replace(",", ".")}.`,
    group: (text, mark) =>
      `“${text}” stays text, because it could be ${text.replace(/[.,]/g, "")} or ${text.replace(/[.,]/g, mark)}. Write it one of these ways.`,
    long: (text) => `“${text}” stays text: a number holds 15 digits.`,
    arguments: (text) =>
      `In “${text}” the comma parts two arguments. In formulas the decimal mark is a point: 1.5, or part the arguments with semicolons.`,
  },
  doubts: (count, first) =>
    `${plural(count, "cell")} may not be what ${count === 1 ? "it looks" : "they look"} like, e.g. “${first}”. Numbers and formulas that can be read in two ways are not guessed at: they are kept as they were written.`,
  findLabel: "Find in the workbook",
  findCount: (at, of) => `${at} of ${of}`,
  findNone: "Not found",
  findNext: "Next",
  findBefore: "Previous",
  close: "Close",
  cut: "Cut",
  copy: "Copy",
  paste: "Paste",
  pasteByKey: "The browser gives the clipboard to the keys only: press Ctrl+V.",
  clear: "Clear",
  fillDown: "Fill down",
  insertAbove: (count) => `Insert ${plural(count, "row")} above`,
  insertBelow: (count) => `Insert ${plural(count, "row")} below`,
  deleteRows: (count) => `Delete ${plural(count, "row")}`,
  sortUp: "Sort: smallest first",
  sortDown: "Sort: largest first",
  filter: "Filter …",
  clearFilters: "Show all rows",
  filterTitle: (heading) => `Show rows by ${heading}`,
  filterSearch: "Search",
  filterAll: "All",
  filterBlank: "(blank)",
  filterMany: (shown, of) => `${shown} of ${of}: type to find the others`,
  apply: "Apply",
  filtered: (shown, of) => `${shown} of ${plural(of, "row")} shown.`,
  fitWidth: "Fit the width",
  hideColumns: "Hide columns",
  showColumns: "Show hidden columns",
  showUnused: (count) => `Show ${plural(count, "unused column")}`,
  hideUnused: (count) => `Hide ${plural(count, "unused column")}`,
  copied: (cells) => `Copied ${cells}.`,
  selected: (cells, rows, columns, numbers, sum) =>
    `${cells}: ${plural(rows, "row")}, ${plural(columns, "column")}${numbers > 1 ? `; ${numbers} numbers, sum ${sum}` : ""}`,
  extend: "Drag to select more cells",
  tooWide: "The column is too narrow for this number.",
  noTable: "There is no table at this cell.",
  kept: (typed) => `Not entered: “${typed}”.`,
  refused({ code, detail: { at, text, other } }) {
    switch (code) {
      case "array":
        return `${at} is part of the answer of the formula in ${other}. Change the formula there.`;
      case "locked":
        return `The sheet “${text}” is protected, so ${at} stays as it is. Take the protection off in the program that set it.`;
      case "merged":
        return `${at} is covered by the merged cell ${other}. Write there.`;
      case "sheet":
        return `There is no sheet “${text}” any more.`;
      case "name":
        return other === "taken"
          ? `A sheet named “${text}” exists already.`
          : `“${text}” cannot name a sheet: 1 to 31 characters, none of [ ] : * ? / \\.`;
      case "outside":
        return "That is beyond the end of the sheet.";
      case "table":
        if (other === "merged") return "A table with merged cells is not sorted. Split them first.";
        if (other === "array") return `The formula in ${at} fills several cells; such a table is not sorted.`;
        return `The table “${text}” keeps its headings and at least one row.`;
      case "occupied":
        return `The table “${text}” stands in the way.`;
      case "formula":
        return `The formula cannot be read${text ? `: ${text}` : ""}: a bracket, a quote or a sign is missing or too many. Put an apostrophe before it to keep it as text.`;
      case "ambiguous":
        return `“${text}” can be read in two ways.`;
      case "file":
        return text ?? "The file cannot take this.";
      case "long":
        return `A cell holds 32,767 characters at most; this has ${text}.`;
    }
  },
};
