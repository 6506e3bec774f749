/** The choices of a cell: filtered by what is typed, names shown whole. Typed text always counts as typed. */
import type { Context } from "./context.ts";
import { make } from "./dom.ts";

/** More are not drawn at once; typing finds the others. */
const MOST_SHOWN = 200;
let lists = 0;

export class ChoiceList {
  private readonly element: HTMLElement;
  private readonly options: HTMLElement;
  private readonly hint: HTMLElement;
  private readonly id = `tg-choices-${++lists}`;
  private all: readonly string[] = [];
  private shown: string[] = [];
  private at = -1;
  private open = false;

  constructor(
    private readonly context: () => Context,
    root: HTMLElement,
    /** A choice was taken. */
    private readonly take: (text: string) => void,
  ) {
    this.options = make("div", "tg-options", { role: "listbox", id: this.id, tabindex: 0 });
    // It can be scrolled, so it can be reached; what is typed belongs to the input all the same.
    this.options.addEventListener("focus", () => this.context().entry.focus());
    this.hint = make("p", "tg-hint");
    this.element = make("div", "tg-choices", {}, this.options, this.hint);
    this.element.hidden = true;
    // The input keeps the focus.
    this.element.addEventListener("mousedown", (event) => event.preventDefault());
    this.element.addEventListener("click", (event) => {
      const option = (event.target as Element).closest<HTMLElement>("[role=option]");
      if (option) this.choose(Number(option.dataset.at));
    });
    root.append(this.element);
  }

  get isOpen(): boolean {
    return this.open;
  }

  /** Opens over the active cell; `text` filters. */
  show(text: string, asked: boolean): void {
    const { model, cursor, words, entry } = this.context();
    const choices = model.choices(this.context().sheet(), cursor.spot.row, cursor.spot.column);
    if (!choices || choices.length === 0) {
      this.hide();
      return;
    }
    this.all = choices;
    this.options.setAttribute("aria-label", words.openChoices);
    this.filter(asked ? "" : text);
    if (this.shown.length === 0 || (!asked && this.shown.length === 1 && this.shown[0] === text)) {
      this.hide();
      return;
    }
    this.open = true;
    this.element.hidden = false;
    this.place();
    entry.element.setAttribute("aria-controls", this.id);
    entry.element.setAttribute("aria-autocomplete", "list");
    if (asked) {
      this.mark(Math.max(0, this.shown.indexOf(text)));
    } else this.mark(-1);
  }

  private filter(text: string): void {
    const parts = text.toLowerCase().split(/\s+/).filter(Boolean);
    const matching = this.all.filter((one) => parts.every((part) => one.toLowerCase().includes(part)));
    this.shown = matching.slice(0, MOST_SHOWN);
    this.options.replaceChildren(
      ...this.shown.map((one, i) =>
        make(
          "div",
          "tg-option",
          { role: "option", id: `${this.id}-${i}`, "aria-selected": "false", "data-at": i },
          one,
        ),
      ),
    );
    const { words } = this.context();
    const more = matching.length > MOST_SHOWN ? words.filterMany(MOST_SHOWN, matching.length) : "";
    this.hint.textContent = [words.choices(matching.length), more || words.choicesHint].join(" ");
  }

  private mark(at: number): void {
    const { entry } = this.context();
    const before = this.options.children[this.at];
    before?.setAttribute("aria-selected", "false");
    before?.classList.remove("tg-chosen");
    this.at = at;
    const now = this.options.children[at];
    if (!now) {
      entry.element.removeAttribute("aria-activedescendant");
      return;
    }
    now.setAttribute("aria-selected", "true");
    now.classList.add("tg-chosen");
    now.scrollIntoView({ block: "nearest" });
    entry.element.setAttribute("aria-activedescendant", now.id);
  }

  /** Under the cell, or above it where there is more room; wide enough for long names. */
  place(): void {
    if (!this.open) return;
    const { root, view, cursor } = this.context();
    const cell = view.cellElement(cursor.spot.row, cursor.spot.column);
    if (!cell) return;
    const at = cell.getBoundingClientRect();
    const around = root.getBoundingClientRect();
    const width = Math.min(Math.max(at.width, 340), around.width - 8);
    const below = around.bottom - at.bottom - 8;
    const above = at.top - around.top - 8;
    const { style } = this.element;
    style.width = `${width}px`;
    style.left = `${Math.max(4, Math.min(at.left - around.left, around.width - width - 4))}px`;
    const under = below >= 180 || below >= above;
    style.top = under ? `${at.bottom - around.top}px` : "";
    style.bottom = under ? "" : `${around.bottom - at.top}px`;
    this.options.style.maxHeight = `${Math.max(80, Math.min(320, (under ? below : above) - 30))}px`;
  }

  hide(): void {
    if (!this.open) return;
    this.open = false;
    this.element.hidden = true;
    this.at = -1;
    const { entry } = this.context();
    entry.element.removeAttribute("aria-activedescendant");
    entry.element.removeAttribute("aria-controls");
    entry.element.removeAttribute("aria-autocomplete");
  }

  private choose(at: number): void {
    const text = this.shown[at];
    if (text === undefined) return;
    this.hide();
    this.take(text);
  }

  /** Keys while the list is open. True when it took the key. */
  onKey(event: KeyboardEvent): boolean {
    const { entry } = this.context();
    if (event.altKey && event.key === "ArrowDown") {
      if (this.open && this.at < 0) this.mark(0);
      else this.show(entry.mode === "ready" ? this.context().entry.value : entry.value, true);
      return true;
    }
    if (!this.open) return false;
    switch (event.key) {
      case "ArrowDown":
      case "ArrowUp": {
        if (event.shiftKey || event.ctrlKey || event.metaKey) return false;
        // A whole word is typed and nothing marked: the arrow finishes it, as in any cell.
        if (this.at < 0 && this.all.some((one) => one.toLowerCase() === entry.value.trim().toLowerCase())) return false;
        const by = event.key === "ArrowDown" ? 1 : -1;
        const count = this.shown.length;
        this.mark(this.at < 0 ? (by > 0 ? 0 : count - 1) : (this.at + by + count) % count);
        return true;
      }
      case "Enter":
        if (this.at < 0) return false;
        this.choose(this.at);
        return true;
      case "Escape":
        this.hide();
        return entry.mode === "ready" || this.at >= 0;
      default:
        return false;
    }
  }
}
