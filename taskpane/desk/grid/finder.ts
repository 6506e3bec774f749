/** Finds a text in the workbook and goes from one cell that holds it to the next. */
import type { Place } from "../model/address.ts";
import { findText } from "../model/find.ts";
import type { Context } from "./context.ts";
import { button, make } from "./dom.ts";

export class Finder {
  readonly element: HTMLElement;
  private readonly input: HTMLInputElement;
  private readonly count: HTMLElement;
  private found: Place[] = [];
  private at = -1;
  private soughtAt = -1;

  constructor(private readonly context: () => Context) {
    const { words } = context();
    this.input = make("input", "", { type: "search", "aria-label": words.findLabel, placeholder: words.findLabel });
    this.count = make("span", "tg-count", { role: "status" });
    this.element = make(
      "div",
      "tg-finder",
      { role: "search" },
      this.input,
      this.count,
      button("", "‹", () => this.next(-1), words.findBefore),
      button("", "›", () => this.next(1), words.findNext),
      button("", "✕", () => this.close(), words.close),
    );
    this.element.hidden = true;
    this.input.addEventListener("input", () => this.seek());
    this.element.addEventListener("keydown", (event) => {
      event.stopPropagation();
      if (event.key === "Enter" && event.target === this.input) this.next(event.shiftKey ? -1 : 1);
      else if (event.key === "Escape") this.close();
      else if (event.key === "F6") this.close();
      else return;
      event.preventDefault();
    });
  }

  open(): void {
    this.element.hidden = false;
    this.input.focus();
    this.input.select();
    if (this.input.value !== "") this.seek(false);
  }

  private close(): void {
    this.element.hidden = true;
    this.context().entry.focus();
  }

  private seek(go = true): void {
    const { model, cursor } = this.context();
    const sheet = this.context().sheet();
    this.found = findText(model, this.input.value, sheet);
    this.soughtAt = model.revision();
    const { row, column } = cursor.spot;
    // From the cursor on.
    const after = this.found.findIndex(
      (p) => p.sheet === sheet && (p.row > row || (p.row === row && p.column >= column)),
    );
    this.at = this.found.length === 0 ? -1 : Math.max(0, after);
    if (go && this.at >= 0) this.show();
    this.tell();
  }

  private next(by: 1 | -1): void {
    const { model } = this.context();
    if (this.soughtAt !== model.revision()) this.seek(false);
    if (this.found.length === 0) return;
    this.at = (this.at + by + this.found.length) % this.found.length;
    this.show();
    this.tell();
  }

  private show(): void {
    const context = this.context();
    const place = this.found[this.at]!;
    if (!context.finish(true)) return;
    if (place.sheet !== context.sheet()) context.model.setActive(place.sheet);
    context.cursor.go(place);
  }

  private tell(): void {
    const { words } = this.context();
    const blank = this.input.value.trim() === "";
    this.count.textContent = blank
      ? ""
      : this.found.length === 0
        ? words.findNone
        : words.findCount(this.at + 1, this.found.length);
  }
}
