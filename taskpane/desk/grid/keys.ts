/** The keyboard of the grid. Anything not named here is left to the browser, which puts it into the input. */

import { type Area, LAST_COLUMN, LAST_ROW } from "../model/types.ts";
import * as commands from "./commands.ts";
import type { Context } from "./context.ts";
import type { ChoiceList } from "./list.ts";
import type { Direction } from "./moves.ts";

const ARROWS: Readonly<Record<string, Direction>> = {
  ArrowUp: "up",
  ArrowDown: "down",
  ArrowLeft: "left",
  ArrowRight: "right",
};

export function onKey(context: Context, list: ChoiceList, event: KeyboardEvent): void {
  // An input method is at work: its keys are its own.
  if (event.isComposing || event.keyCode === 229) return;
  const handled =
    leave(context, event) ||
    list.onKey(event) ||
    (context.entry.mode === "ready" ? whenReady(context, event) : whenTyping(context, event));
  if (!handled) return;
  event.preventDefault();
  event.stopPropagation();
}

/** On a Mac the command key does what Ctrl does elsewhere. */
const withControl = (event: KeyboardEvent) => event.ctrlKey || event.metaKey;

function leave(context: Context, event: KeyboardEvent): boolean {
  if (event.key !== "F6" || event.altKey) return false;
  if (context.finish(true)) context.options.onLeave?.(event.shiftKey ? "previous" : "next");
  return true;
}

function whenReady(context: Context, event: KeyboardEvent): boolean {
  const { cursor, entry } = context;
  const { key, shiftKey: shift } = event;
  const control = withControl(event);
  if (event.altKey) {
    if (key !== "ArrowDown") return false;
    context.openChoices();
    return true;
  }
  const arrow = ARROWS[key];
  if (arrow) {
    cursor.move(arrow, shift, control);
    return true;
  }
  switch (key) {
    case "Tab":
      if (control) return false;
      cursor.step("tab", shift);
      return true;
    case "Enter":
      if (control) return false;
      cursor.step("enter", shift);
      return true;
    case "Home":
    case "End":
      toEdge(context, key === "End", control, shift);
      return true;
    case "PageUp":
    case "PageDown": {
      const by = key === "PageUp" ? -1 : 1;
      if (control) commands.nextSheet(context, by);
      else cursor.page(by, shift);
      return true;
    }
    case "F2":
      entry.edit(context.model.editable(context.sheet(), cursor.spot.row, cursor.spot.column));
      return true;
    case "Delete":
      commands.clear(context);
      return true;
    case "Backspace":
      entry.type("");
      return true;
    case "Escape":
      cursor.go(cursor.spot);
      return true;
    case "ContextMenu":
      context.openMenu(Number.NaN, Number.NaN, true);
      return true;
    case "F10":
      if (!shift) return false;
      context.openMenu(Number.NaN, Number.NaN, true);
      return true;
    case " ":
      if (control === shift) return false;
      wholeLines(context, control);
      return true;
  }
  return control && !shift ? withLetter(context, key.toLowerCase()) : control && shift && redoKey(context, key);
}

function redoKey(context: Context, key: string): boolean {
  if (key.toLowerCase() !== "z") return false;
  commands.redo(context);
  return true;
}

function withLetter(context: Context, key: string): boolean {
  switch (key) {
    case "a":
      commands.selectAll(context);
      return true;
    case "d":
      commands.fillDown(context);
      return true;
    case "f":
      context.openFind();
      return true;
    case "y":
      commands.redo(context);
      return true;
    case "z":
      commands.undo(context);
      return true;
    // Cut, copy and paste come as events of the clipboard.
    default:
      return false;
  }
}

function toEdge(context: Context, end: boolean, control: boolean, extend: boolean): void {
  const { cursor, model, view } = context;
  const used = model.used(context.sheet());
  const { columns, rows, frozenColumns } = view.layout;
  const { row } = cursor.spot;
  let to = { row, column: 0 };
  if (end) {
    let column = Math.max(0, used.columns - 1);
    if (!control) {
      const filled = [...(model.sheet(context.sheet())!.cells.get(row) ?? [])].filter(
        ([, cell]) => cell.value !== null,
      );
      column = Math.max(0, ...filled.map(([c]) => c));
    }
    to = { row: control ? Math.max(0, used.rows - 1) : row, column };
  } else if (control) to = { row: Math.min(view.layout.frozenRows, rows.count - 1), column: frozenColumns };
  if (columns.sizeOf(to.column) === 0) to = { ...to, column: columns.step(to.column, end ? -1 : 1) };
  if (rows.sizeOf(to.row) === 0) to = { ...to, row: rows.step(to.row, end ? -1 : 1) };
  if (extend) cursor.stretchTo(to);
  else cursor.go(to);
}

function wholeLines(context: Context, columns: boolean): void {
  const { cursor } = context;
  const { area, spot } = cursor;
  cursor.choose(columns ? { ...area, top: 0, bottom: LAST_ROW } : { ...area, left: 0, right: LAST_COLUMN }, spot);
}

const isBlock = ({ top, left, bottom, right }: Area): boolean => top !== bottom || left !== right;

function whenTyping(context: Context, event: KeyboardEvent): boolean {
  const { cursor, entry } = context;
  const { key, shiftKey: shift } = event;
  const control = withControl(event);
  if (key === "Escape") {
    context.finish(false);
    return true;
  }
  if (key === "F2") {
    entry.toggle();
    return true;
  }
  if (key === "Enter" && event.altKey) {
    entry.insert("\n");
    return true;
  }
  if (event.altKey) return false;
  if (key === "Enter" && control && isBlock(cursor.area)) {
    commands.enterAll(context);
    return true;
  }
  if (key === "Enter" || (key === "Tab" && !control)) {
    if (context.finish(true) && !control) cursor.step(key === "Tab" ? "tab" : "enter", shift);
    return true;
  }
  // In a formula, and after F2, arrows move in the text.
  if (entry.mode === "editing" || entry.value.startsWith("=")) return false;
  const arrow = ARROWS[key];
  if (arrow && !shift) {
    if (context.finish(true)) cursor.move(arrow, false, control);
    return true;
  }
  if (key === "PageUp" || key === "PageDown") {
    if (context.finish(true)) {
      if (control) commands.nextSheet(context, key === "PageUp" ? -1 : 1);
      else cursor.page(key === "PageUp" ? -1 : 1, false);
    }
    return true;
  }
  return false;
}
