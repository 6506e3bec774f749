/**
 * The input. One text area lives in the active cell and always holds the focus, with the cell's text selected in it. So the
 * first key of a word, or of an input method, lands where it belongs: the browser itself puts it there, and nothing has to be
 * opened first.
 *
 * ready: nothing typed yet. typing: what is typed replaces the cell, arrows finish it. editing: arrows move in the text.
 */
import { make } from "./dom.ts";
import type { Measure } from "./measure.ts";

export type Mode = "ready" | "typing" | "editing";

export interface EntryEvents {
  /** The text changed by typing. */
  onInput(text: string): void;
  onMode(mode: Mode): void;
  onKey(event: KeyboardEvent): void;
  /** The focus went elsewhere in the page. */
  onLeft(): void;
  onFocus(): void;
}

export class Entry {
  readonly element: HTMLTextAreaElement;
  mode: Mode = "ready";
  /** What the cell held when typing began. */
  private before = "";
  /** The input is being moved from cell to cell: its losing the focus means nothing. */
  private moving = false;
  private cell: HTMLElement | undefined;

  constructor(
    private readonly events: EntryEvents,
    private readonly measure: Measure,
  ) {
    this.element = make("textarea", "tg-entry", {
      rows: 1,
      wrap: "off",
      spellcheck: "false",
      autocomplete: "off",
      autocapitalize: "off",
      autocorrect: "off",
      inputmode: "none",
    });
    const { element } = this;
    element.addEventListener("keydown", (event) => events.onKey(event));
    element.addEventListener("compositionstart", () => this.began());
    element.addEventListener("input", () => {
      this.began();
      this.grow();
      events.onInput(element.value);
    });
    element.addEventListener("focus", () => events.onFocus());
    element.addEventListener("blur", () => {
      // A window that loses the focus keeps it for when it comes back.
      if (this.moving || document.activeElement === element) return;
      events.onLeft();
    });
  }

  private began(): void {
    if (this.mode === "ready") this.setMode("typing");
  }

  private setMode(mode: Mode): void {
    if (this.mode === mode) return;
    this.mode = mode;
    this.element.classList.toggle("tg-open", mode !== "ready");
    this.cell?.classList.toggle("tg-opened", mode !== "ready");
    this.element.setAttribute("inputmode", mode === "ready" ? "none" : "text");
    this.events.onMode(mode);
  }

  /** Moves into a cell, focus and all. What is being typed stays. Without a label it only waits there for its cell. */
  placeIn(cell: HTMLElement, label: string): void {
    const { element } = this;
    if (element.parentElement !== cell) {
      const focused = document.activeElement === element;
      this.moving = true;
      this.cell?.classList.remove("tg-opened");
      cell.append(element);
      if (focused) element.focus({ preventScroll: true });
      this.moving = false;
    }
    this.cell = cell;
    if (label === "") return;
    cell.classList.toggle("tg-opened", this.mode !== "ready");
    if (element.getAttribute("aria-label") !== label) element.setAttribute("aria-label", label);
  }

  /** Shows what the cell holds, ready to be replaced. */
  ready(text: string): void {
    this.setMode("ready");
    this.before = text;
    const { element } = this;
    delete element.dataset.percent;
    if (element.value !== text) element.value = text;
    element.style.width = "";
    element.style.height = "";
    if (document.activeElement === element) element.select();
  }

  /** Opens the text for changes; the caret at its end. */
  edit(text = this.before): void {
    this.setMode("editing");
    const { element } = this;
    element.value = text;
    element.setSelectionRange(text.length, text.length);
    this.grow();
  }

  /** From typing to editing and back, the text as it is. */
  toggle(): void {
    if (this.mode === "ready") this.edit();
    else this.setMode(this.mode === "typing" ? "editing" : "typing");
  }

  /** Begins with a text as if it had been typed. */
  type(text: string, caret = text.length): void {
    this.setMode("typing");
    this.element.value = text;
    this.element.setSelectionRange(caret, caret);
    this.grow();
    this.events.onInput(text);
  }

  /** Other text while it is typed. */
  replace(text: string, caret = text.length): void {
    this.element.value = text;
    this.element.setSelectionRange(caret, caret);
    this.grow();
  }

  insert(text: string): void {
    const { element } = this;
    element.setRangeText(text, element.selectionStart, element.selectionEnd, "end");
    this.began();
    this.grow();
    this.events.onInput(element.value);
  }

  /** As wide and high as the text, within what is to be seen. */
  grow(): void {
    const { element, cell } = this;
    if (!cell) return;
    const lines = element.value.split("\n");
    const wide = Math.max(...lines.map((line) => this.measure.widthOf(line))) + 24;
    const grid = cell.closest(".tg-scroll");
    const room = grid ? grid.getBoundingClientRect().right - cell.getBoundingClientRect().left - 20 : wide;
    element.style.width = `${Math.max(cell.clientWidth, Math.min(wide, Math.max(room, cell.clientWidth)))}px`;
    element.style.height = lines.length > 1 ? `${Math.min(8, lines.length) * 20 + 8}px` : "";
  }

  get value(): string {
    return this.element.value;
  }

  get changed(): boolean {
    return this.mode !== "ready" && this.element.value !== this.before;
  }

  get focused(): boolean {
    return document.activeElement === this.element;
  }

  /** Gives the focus anew, so that a keyboard on the screen comes up. */
  reopen(): void {
    const { element } = this;
    this.moving = true;
    element.blur();
    element.focus({ preventScroll: true });
    this.moving = false;
    element.setSelectionRange(element.value.length, element.value.length);
  }

  focus(): void {
    this.element.focus({ preventScroll: true });
    if (this.mode === "ready") this.element.select();
  }
}
