/** What a cell looks like: text, classes, colours. Nothing is written to the page that is there already. */
import { inArea } from "../model/address.ts";
import { displayText } from "../model/display.ts";
import type { Model } from "../model/model.ts";
import type { Style, Value } from "../model/types.ts";
import { contrast, readableOn } from "./colour.ts";
import type { Measure } from "./measure.ts";
import type { GridOptions } from "./options.ts";
import type { GridWords } from "./words.ts";

export interface CellView {
  readonly element: HTMLElement;
  readonly text: Text;
  /** What was painted last. */
  shown: string;
  classes: string;
  colours: string;
}

export interface Look {
  readonly text: string;
  readonly classes: string;
  readonly color: string;
  readonly fill: string;
  readonly description: string;
}

const VERDICTS = /^(?:ok|check|stop)$/;

export function lookOf(
  model: Model,
  options: GridOptions,
  words: GridWords,
  measure: Measure,
  sheet: string,
  row: number,
  column: number,
  width: number,
  heading: boolean,
): Look {
  const cell = model.cell(sheet, row, column);
  const style = model.style(cell);
  const value = cell?.value ?? null;
  let classes = "tg-cell";
  let description = "";
  const given = options.classOf?.(sheet, row, column);
  if (given) classes += given.split(/\s+/).reduce((all, one) => `${all} ${VERDICTS.test(one) ? `tg-${one}` : one}`, "");
  if (heading) classes += " tg-heading";
  else if (options.isUsed && !options.isUsed(sheet, row, column)) {
    classes += " tg-unused";
    description = words.unused;
  }
  const align =
    style?.align ?? (typeof value === "number" ? "right" : typeof value === "object" && value ? "center" : "");
  if (align === "right") classes += " tg-right";
  else if (align === "center") classes += " tg-center";
  if (style?.bold) classes += " tg-bold";
  if (style?.italic) classes += " tg-italic";
  if (value !== null && typeof value === "object") classes += " tg-error";
  if (cell?.stale) {
    classes += " tg-stale";
    description = words.stale;
  }
  const text = fitted(value, style, model, measure, width);
  if (text.startsWith("###")) description = words.tooWide;
  const coloured = !given && !classes.includes("tg-unused");
  return { text, classes, ...colours(coloured ? style : undefined), description };
}

/** The text, a number made shorter where it may be; never a number with its end cut off. */
function fitted(value: Value, style: Style | undefined, model: Model, measure: Measure, width: number): string {
  const text = displayText(value, style?.numberFormat, model.locale, model.date1904);
  const room = width - 11;
  if (typeof value !== "number") return text.includes("\n") ? text.replace(/\s*\n\s*/g, " ↵ ") : text;
  if (text.length * measure.digit < room * 0.8 || measure.widthOf(text, style?.bold) <= room) return text;
  if (!style || /^general$/i.test(style.numberFormat)) {
    for (let digits = 10; digits >= 3; digits--) {
      const shorter = displayText(Number(value.toPrecision(digits)), "General", model.locale, false);
      if (measure.widthOf(shorter, style?.bold) <= room) return shorter;
    }
  }
  return "#".repeat(Math.max(3, Math.floor(room / Math.max(measure.widthOf("#"), 1))));
}

/** Colours of the file, as long as the text on them can be read. */
function colours(style: Style | undefined): { color: string; fill: string } {
  const fill = style?.fill ?? "";
  const color = style?.color ?? "";
  if (fill === "" && color === "") return { color, fill };
  if (contrast(color || "#1b2429", fill || "#ffffff") >= 4.5) return { color, fill };
  return { color: readableOn(fill || "#ffffff"), fill };
}

export function newCell(column: number): CellView {
  const element = document.createElement("div");
  element.className = "tg-cell";
  element.setAttribute("role", "gridcell");
  element.setAttribute("aria-colindex", String(column + 2));
  element.setAttribute("aria-selected", "false");
  const text = document.createTextNode("");
  element.append(text);
  return { element, text, shown: "", classes: "tg-cell", colours: "" };
}

export function paintCell(view: CellView, look: Look, marks: string): void {
  const { element } = view;
  if (view.shown !== look.text) {
    view.text.data = look.text;
    view.shown = look.text;
  }
  const classes = look.classes + marks;
  if (view.classes !== classes) {
    element.className = classes;
    element.setAttribute("aria-selected", marks.includes("tg-sel") ? "true" : "false");
    view.classes = classes;
  }
  const colour = `${look.color}|${look.fill}|${look.description}`;
  if (view.colours !== colour) {
    element.style.color = look.color;
    element.style.backgroundColor = look.fill;
    if (look.description) element.setAttribute("aria-description", look.description);
    else element.removeAttribute("aria-description");
    view.colours = colour;
  }
}

/** The heading over a cell: of its table, else of the frozen part. */
export function headingOf(model: Model, sheet: string, row: number, column: number): string {
  const state = model.sheet(sheet);
  if (!state) return "";
  const table = state.tables.find((one) => one.headings !== false && inArea(one.area, row, column));
  const top = table ? table.area.top : state.frozen.rows - 1;
  return top >= 0 && top < row ? model.shown(sheet, top, column) : "";
}
