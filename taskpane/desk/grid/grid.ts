/**
 * The grid: an entry surface for a workbook. It draws what the model holds and turns keys, mouse and fingers into edits of
 * the model; it keeps nothing of the workbook itself. README.md of this folder says what is where.
 */
import "./grid.css";
import { isPercentFormat } from "numfmt";
import { addressOf, type Place } from "../model/address.ts";
import { enterEdits } from "../model/blocks.ts";
import type { Change, Model } from "../model/model.ts";
import { Foot, Line } from "./bars.ts";
import * as clipboard from "./clipboard.ts";
import { attempt, type Context } from "./context.ts";
import { Cursor } from "./cursor.ts";
import { make } from "./dom.ts";
import { Entry } from "./entry.ts";
import { FilterPanel } from "./filter.ts";
import { Finder } from "./finder.ts";
import { onKey } from "./keys.ts";
import { ChoiceList } from "./list.ts";
import { Menu } from "./menu.ts";
import type { GridHandle, GridOptions } from "./options.ts";
import { headingOf } from "./paint.ts";
import * as pointer from "./pointer.ts";
import { View } from "./view.ts";
import { ENGLISH } from "./words.ts";

export type { GridHandle, GridOptions } from "./options.ts";

/** News stays so long; what was refused stays until the next key. */
const NEWS_FOR = 6000;

export function mountGrid(container: HTMLElement, options: GridOptions): GridHandle {
  const words = options.words ?? ENGLISH;
  const root = make("div", "tg");
  const news = make("div", "tg-news", { role: "status", "aria-live": "polite" });
  const help = make("p", "tg-help", { id: "tg-help" }, words.help);
  const drop = make("button", "tg-drop", { type: "button", tabindex: -1, "aria-hidden": "true" }, "▾");
  const handle = make("div", "tg-handle", { "aria-hidden": "true", title: words.extend });
  let model = options.model;
  let forget: (() => void)[] = [];
  let timer = 0;

  const context = {
    root,
    options,
    words,
    model,
    finish,
    say,
    sheet: () => context.model.active(),
    openMenu: (x: number, y: number) => menu.open(x, y),
    openChoices: () => {
      list.show(context.model.shown(context.sheet(), cursor.spot.row, cursor.spot.column), true);
      if (!list.isOpen && model.filters.any(context.sheet())) filter.open();
    },
    openFilter: () => filter.open(),
    openFind: () => finder.open(),
    switchUnused: () => {
      view.hideUnused = !view.hideUnused;
      view.relayout();
      foot.update();
      entry.focus();
    },
  } as unknown as { -readonly [K in keyof Context]: Context[K] };
  const get = () => context as Context;

  const cursor = new Cursor(get);
  context.cursor = cursor;
  const line = new Line(get);
  const foot = new Foot(get);
  const finder = new Finder(get);
  const menu = new Menu(get, root);
  const filter = new FilterPanel(get, root);
  const list = new ChoiceList(get, root, take);

  container.replaceChildren(root);
  root.append(line.element, finder.element);
  const middle = make("div", "tg-middle");
  root.append(middle, news, foot.element, help);
  const view = new View(
    middle,
    model,
    options,
    words,
    () => list.place(),
    placed,
    () => context.entry?.placeIn(view.scroller, ""),
  );
  context.view = view;
  view.scroller.setAttribute("aria-describedby", help.id);
  view.hideUnused = options.hideUnused ?? true;

  const entry = new Entry(
    {
      onKey: (event) => {
        if (news.classList.contains("tg-refused") && !["Shift", "Control", "Alt", "Meta"].includes(event.key)) quiet();
        onKey(get(), list, event);
      },
      onInput: (text) => {
        percent(text);
        list.show(entry.value, false);
      },
      onMode: () => {
        if (entry.mode === "ready") list.hide();
      },
      onLeft: () => {
        list.hide();
        root.classList.remove("tg-focused");
        if (entry.mode === "ready") return;
        const typed = entry.value;
        if (finish(true)) return;
        // Nobody is there to mend it: the cell keeps what it held, and the line says what was typed.
        const reason = news.textContent ?? "";
        finish(false);
        say(`${words.kept(typed)} ${reason}`, "refused");
      },
      onFocus: () => {
        root.classList.add("tg-focused");
        if (entry.mode === "ready") entry.element.select();
      },
    },
    view.measure,
  );
  context.entry = entry;
  placed();

  clipboard.listen(get(), entry.element);
  const stop = pointer.listen(get(), handle);
  drop.addEventListener("mousedown", (event) => event.preventDefault());
  drop.addEventListener("click", (event) => {
    event.stopPropagation();
    entry.focus();
    if (list.isOpen) list.hide();
    else get().openChoices();
  });

  /** The input, the button of choices and the handle belong to the active cell, wherever it was drawn. */
  function placed(): void {
    if (!context.entry) return;
    const { row, column } = cursor.spot;
    const cell = view.cellElement(row, column);
    if (!cell) return;
    const sheet = context.sheet();
    const name = words.cellName(headingOf(model, sheet, row, column), words.rowName(row + 1), addressOf(row, column));
    entry.placeIn(cell, name);
    if (entry.mode === "ready") entry.ready(model.editable(sheet, row, column));
    if (model.choices(sheet, row, column)) {
      if (drop.parentElement !== cell) cell.append(drop);
    } else drop.remove();
    const { area } = cursor;
    const corner = view.cellElement(area.bottom, area.right) ?? cell;
    if (handle.parentElement !== corner) {
      handle.parentElement?.classList.remove("tg-handled");
      corner.append(handle);
      corner.classList.add("tg-handled");
    }
    list.place();
  }

  function finish(commit: boolean): boolean {
    if (entry.mode === "ready") return true;
    const sheet = context.sheet();
    const { row, column } = cursor.spot;
    if (!commit || !entry.changed) {
      list.hide();
      entry.ready(model.editable(sheet, row, column));
      return true;
    }
    return enter(sheet, row, column, entry.value);
  }

  function enter(sheet: string, row: number, column: number, text: string): boolean {
    const done = attempt(get(), () => {
      const { typed, edits } = enterEdits(model, sheet, row, column, text);
      model.apply(edits, { by: "person", label: "typing" });
      list.hide();
      entry.ready(model.editable(sheet, row, column));
      const choices = typeof typed.value === "string" && typed.value !== "" && model.choices(sheet, row, column);
      if (typed.doubt) say(words.doubt[typed.doubt](text, model.locale.decimal), "refused");
      else if (choices && !choices.some((one) => one.toLowerCase() === String(typed.value).trim().toLowerCase()))
        say(words.notListed(String(typed.value), headingOf(model, sheet, row, column)));
    });
    if (!done && entry.mode !== "ready" && !entry.focused && document.hasFocus()) view.reveal(row, column);
    return done;
  }

  /** In a cell that shows per cent the sign is there from the first digit on, so that 12 is seen to be 12 %. */
  function percent(text: string): void {
    const { row, column } = cursor.spot;
    if (text.endsWith("%%")) entry.replace(text.slice(0, -1));
    else if (/^[-+]?[\d.,]$/.test(text) && entry.mode === "typing" && !entry.element.dataset.percent) {
      const format = model.style(model.typed(context.sheet(), row, column))?.numberFormat;
      if (format === undefined || !isPercentFormat(format)) return;
      entry.element.dataset.percent = "yes";
      entry.replace(`${text}%`, text.length);
    }
  }

  /** A choice taken from the list. */
  function take(text: string): void {
    const { row, column } = cursor.spot;
    const sheet = context.sheet();
    // The words of a list are meant as they are: "1/2" is no formula and no number.
    const read = model.read(text, sheet, row, column);
    const exact = typeof read.value === "number" || read.value === text ? text : `'${text}`;
    entry.edit(exact);
    if (!enter(sheet, row, column, exact)) entry.edit(exact);
    entry.focus();
  }

  function say(text: string, kind: "news" | "refused" = "news"): void {
    clearTimeout(timer);
    news.textContent = text;
    news.classList.toggle("tg-refused", kind === "refused");
    news.classList.add("tg-shown");
    if (kind === "news") timer = window.setTimeout(quiet, NEWS_FOR);
  }
  function quiet(): void {
    clearTimeout(timer);
    news.classList.remove("tg-shown", "tg-refused");
    news.textContent = "";
  }

  // What changed is gathered, and drawn once when all who listen to the model are done.
  let dirty: Place[] = [];
  let anew = false;
  let awaited = false;
  let show: Place | undefined;
  function changed(change: Change): void {
    for (const cell of change.cells) dirty.push(cell);
    // What was taken back or done again is shown; results that followed from it come before it or after it.
    if (change.by === "undo") show = change.cells.at(-1);
    else if (change.by === "redo") show = change.cells[0];
    anew ||= change.structure;
    if (awaited) return;
    awaited = true;
    queueMicrotask(draw);
  }
  function draw(): void {
    awaited = false;
    const cells = dirty;
    const all = anew;
    dirty = [];
    anew = false;
    // A sheet that was shown may be gone, or have another name.
    if (all && model.active() !== shownSheet) followSelection();
    else if (all || view.unusedChanged()) view.relayout();
    else {
      const sheet = context.sheet();
      const here = cells.filter((cell) => cell.sheet === sheet);
      // A row's cells may look otherwise when another of its cells changed.
      if (options.classOf || options.isUsed) view.repaintRows(new Set(here.map((cell) => cell.row)));
      else view.repaint(here);
      const beyond = here.some(
        ({ row, column }) => row >= view.layout.rows.count || column >= view.layout.columns.count,
      );
      if (beyond) view.relayout();
      else placed();
    }
    if (show && model.sheet(show.sheet)?.state === "visible") {
      if (show.sheet !== model.active()) model.setActive(show.sheet);
      cursor.go(show);
    }
    show = undefined;
    line.update();
    foot.update();
  }

  let shownSheet = model.active();
  function followSelection(): void {
    if (model.active() !== shownSheet || !model.sheet(shownSheet)) {
      shownSheet = model.active();
      if (entry.mode !== "ready") entry.ready("");
      cursor.follow();
      view.showSheet();
      const kept = model.sheet(shownSheet)?.kept ?? [];
      if (kept.length > 0) say(words.sheetKeeps(kept.join(", ")));
      foot.update();
    } else {
      cursor.follow();
      view.moveCursor({ ...cursor.spot, area: cursor.area });
      placed();
    }
    line.update();
    options.onSelect?.({ sheet: context.sheet(), ...cursor.spot });
  }

  function attach(next: Model): void {
    for (const one of forget) one();
    model = next;
    context.model = next;
    forget = [next.onChange(changed), next.onSelect(followSelection)];
    shownSheet = next.active();
    cursor.follow();
  }
  attach(model);
  line.update();
  foot.update();

  return {
    focus: () => entry.focus(),
    select(place, how = {}) {
      if (!finish(true)) finish(false);
      const sheet = model.sheet(place.sheet);
      if (!sheet) return;
      if (sheet.name !== model.active()) model.setActive(sheet.name);
      cursor.go(place);
      if (how.focus) entry.focus();
    },
    endEditing: (commit) => finish(commit),
    get editing() {
      return entry.mode !== "ready";
    },
    refresh() {
      view.relayout();
      line.update();
      foot.update();
    },
    setModel(next) {
      list.hide();
      entry.ready("");
      attach(next);
      view.setModel(next);
      placed();
      quiet();
      line.update();
      foot.update();
    },
    say,
    destroy() {
      for (const one of forget) one();
      stop();
      clearTimeout(timer);
      view.destroy();
      root.remove();
    },
  };
}
