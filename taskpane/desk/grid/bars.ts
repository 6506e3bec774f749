/** The line above the sheet (address and whole content of the cell) and the one below (sheets, undo, find, menu). */
import { areaName } from "../model/address.ts";
import * as commands from "./commands.ts";
import { attempt, type Context } from "./context.ts";
import { button, make, setText } from "./dom.ts";

/** Above the sheet. */
export class Line {
  readonly element: HTMLElement;
  private readonly address: HTMLInputElement;
  private readonly content: HTMLElement;
  private readonly note: HTMLElement;

  constructor(private readonly context: () => Context) {
    const { words } = context();
    this.address = make("input", "tg-address", { type: "text", "aria-label": words.address, spellcheck: "false" });
    this.content = make("div", "tg-content", { role: "region", "aria-label": words.content });
    this.note = make("div", "tg-note");
    this.element = make("div", "tg-top", {}, this.address, make("div", "tg-about", {}, this.content, this.note));
    this.address.addEventListener("focus", () => this.address.select());
    this.address.addEventListener("keydown", (event) => {
      event.stopPropagation();
      if (event.key === "Enter") {
        if (this.context().finish(true) && commands.goTo(this.context(), this.address.value))
          this.context().entry.focus();
      } else if (event.key === "Escape") {
        this.update();
        this.context().entry.focus();
      } else return;
      event.preventDefault();
    });
    this.address.addEventListener("blur", () => this.update());
  }

  update(): void {
    const { model, cursor, options, words } = this.context();
    const sheet = this.context().sheet();
    const { spot, area } = cursor;
    if (document.activeElement !== this.address) {
      const name = areaName(area);
      if (this.address.value !== name) this.address.value = name;
    }
    const cell = model.cell(sheet, spot.row, spot.column);
    const text =
      cell?.formula !== undefined ? `=${cell.formula}` : cell ? model.shown(sheet, spot.row, spot.column) : "";
    const exact = cell && typeof cell.value === "number" && cell.formula === undefined;
    const whole = exact ? model.editable(sheet, spot.row, spot.column) : text;
    const merge = model.sheet(sheet)?.mergeAt(spot.row, spot.column);
    const one = { top: spot.row, left: spot.column, bottom: spot.row, right: spot.column };
    const single = [merge, one].some((whole) => whole && areaName(area) === areaName(whole));
    const shown = exact && whole !== text ? `${text}   (${whole})` : text;
    setText(this.content, single ? shown : commands.describe(this.context(), area));
    const notes = [options.noteOf?.(sheet, spot.row, spot.column)];
    if (cell?.value !== null && typeof cell?.value === "object" && cell.value.reason) notes.push(cell.value.reason);
    if (cell?.stale) notes.push(words.stale);
    setText(this.note, [...new Set(notes.filter(Boolean))].join(" "));
  }
}

/** Below the sheet. */
export class Foot {
  readonly element: HTMLElement;
  private readonly tabs: HTMLElement;
  private readonly undo: HTMLButtonElement;
  private readonly redo: HTMLButtonElement;
  private readonly unused: HTMLButtonElement;
  private readonly filtered: HTMLButtonElement;
  private drawn = "";

  constructor(private readonly context: () => Context) {
    const { words } = context();
    this.tabs = make("div", "tg-tabs", { role: "tablist", "aria-label": words.sheets });
    this.undo = button("tg-undo", words.undo, () => this.with(commands.undo));
    this.redo = button("tg-redo", words.redo, () => this.with(commands.redo));
    this.unused = button("tg-switch", "", () => this.context().switchUnused());
    this.filtered = button("tg-switch tg-all-rows", words.clearFilters, () =>
      this.with(({ model, sheet }) => model.filters.clear(sheet())),
    );
    const add = button("tg-add", "+", () => this.add(), words.addSheet);
    const find = button("tg-search", words.find, () => this.context().openFind());
    const more = button("tg-more", words.more, () => {
      if (!this.context().finish(true)) return;
      const box = more.getBoundingClientRect();
      this.context().openMenu(box.left, box.top, false);
    });
    more.setAttribute("aria-haspopup", "menu");
    this.element = make(
      "div",
      "tg-foot",
      {},
      make("div", "tg-sheets", {}, this.tabs, add),
      this.filtered,
      this.unused,
      this.undo,
      this.redo,
      find,
      more,
    );
    this.tabs.addEventListener("keydown", (event) => this.onKey(event));
  }

  private with(work: (context: Context) => void): void {
    const context = this.context();
    if (!context.finish(true)) return;
    work(context);
    context.entry.focus();
  }

  update(): void {
    const { model, words, view, options } = this.context();
    for (const [made, can] of [
      [this.undo, model.canUndo()],
      [this.redo, model.canRedo()],
    ] as const) {
      // Stays reachable, so that the focus is not lost on a button that has nothing left to do.
      if ((made.getAttribute("aria-disabled") === "true") === can) made.setAttribute("aria-disabled", String(!can));
    }
    this.filtered.hidden = !model.filters.any(this.context().sheet());
    const count = options.hiddenColumns?.(this.context().sheet()).size ?? 0;
    this.unused.hidden = count === 0;
    if (count > 0) setText(this.unused, view.hideUnused ? words.showUnused(count) : words.hideUnused(count));
    const sheets = model.sheets().filter((one) => one.state === "visible");
    const active = this.context().sheet();
    const key = JSON.stringify([active, sheets.map((one) => one.name)]);
    if (key === this.drawn) return;
    this.drawn = key;
    const focused = this.tabs.contains(document.activeElement);
    this.tabs.replaceChildren(
      ...sheets.map(({ name }) => {
        const on = name === active;
        const tab = make("button", "tg-tab", { type: "button", role: "tab", "aria-selected": String(on) }, name);
        tab.tabIndex = on ? 0 : -1;
        tab.addEventListener("click", () => this.with(() => model.setActive(name)));
        tab.addEventListener("dblclick", () => this.rename(tab, name));
        return tab;
      }),
    );
    const now = this.tabs.querySelector<HTMLElement>("[aria-selected=true]");
    now?.scrollIntoView({ block: "nearest", inline: "nearest" });
    if (focused) now?.focus();
  }

  private onKey(event: KeyboardEvent): void {
    const tabs = [...this.tabs.querySelectorAll<HTMLButtonElement>("[role=tab]")];
    const at = tabs.indexOf(document.activeElement as HTMLButtonElement);
    if (at < 0) return;
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: tabs.length - 1 }[event.key];
    if (to !== undefined) {
      const { model, finish } = this.context();
      const name = tabs[(to + tabs.length) % tabs.length]!.textContent!;
      if (finish(true)) model.setActive(name);
    } else if (event.key === "F2") this.rename(tabs[at]!, tabs[at]!.textContent!);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  private rename(tab: HTMLElement, name: string): void {
    const { words } = this.context();
    const input = make("input", "tg-rename", { type: "text", maxlength: 31, "aria-label": words.sheetName });
    input.value = name;
    input.size = Math.max(8, name.length + 2);
    tab.replaceWith(input);
    input.select();
    input.focus();
    let over = false;
    const end = (keep: boolean) => {
      if (over) return;
      over = true;
      this.drawn = "";
      const context = this.context();
      const to = input.value.trim();
      if (keep && to !== name)
        attempt(context, () =>
          context.model.apply([{ kind: "rename-sheet", sheet: name, to }], { by: "person", label: "rename sheet" }),
        );
      this.update();
    };
    input.addEventListener("keydown", (event) => {
      event.stopPropagation();
      if (event.key !== "Enter" && event.key !== "Escape") return;
      event.preventDefault();
      end(event.key === "Enter");
      this.context().entry.focus();
    });
    input.addEventListener("blur", () => end(true));
  }

  private add(): void {
    const context = this.context();
    const { model, words } = context;
    if (!context.finish(true)) return;
    let number = model.sheets().length + 1;
    while (model.sheet(words.newSheet(number))) number++;
    const name = words.newSheet(number);
    const done = attempt(context, () =>
      model.apply([{ kind: "add-sheet", sheet: name, after: context.sheet() }], { by: "person", label: "add sheet" }),
    );
    if (done) model.setActive(name);
    context.entry.focus();
  }
}
