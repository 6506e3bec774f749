/** The row of column letters, and the corner beside it. */
import { columnLetters } from "../model/address.ts";
import type { Model } from "../model/model.ts";
import type { SheetState } from "../model/state.ts";
import type { Area } from "../model/types.ts";
import { make } from "./dom.ts";
import type { Layout } from "./layout.ts";
import { headingOf } from "./paint.ts";
import type { GridWords } from "./words.ts";

export class Letters {
  element: HTMLElement;
  private readonly views = new Map<number, HTMLElement>();

  constructor(private readonly words: GridWords) {
    this.element = make("div");
  }

  /** An empty row in the sizes of the layout. */
  anew({ side, letters, fixedWidth }: Layout): HTMLElement {
    this.views.clear();
    const corner = make(
      "div",
      "tg-corner",
      { role: "columnheader", "aria-colindex": 1 },
      make("span", "tg-unseen", {}, this.words.corner),
    );
    corner.style.width = `${side}px`;
    const stick = make("div", "tg-stick", { role: "presentation" }, corner);
    stick.style.width = `${fixedWidth}px`;
    this.element = make("div", "tg-row tg-letters", { role: "row", "aria-rowindex": 1 }, stick);
    this.element.style.height = `${letters}px`;
    return this.element;
  }

  /** Makes the letters of the columns that are to be seen, takes the others away. */
  fill(
    { columns, side, frozenColumns }: Layout,
    model: Model,
    sheet: SheetState,
    wanted: readonly number[],
    wantedColumns: ReadonlySet<number>,
    area: Area,
  ): void {
    for (const [c, view] of this.views) {
      if (wantedColumns.has(c)) continue;
      view.remove();
      this.views.delete(c);
    }
    const stick = this.element.firstElementChild!;
    for (const c of wanted) {
      if (this.views.has(c)) continue;
      const letters = columnLetters(c);
      const heading = headingOf(model, sheet.name, sheet.frozen.rows + 1, c);
      const view = make(
        "div",
        "tg-letter",
        { role: "columnheader", "aria-colindex": c + 2, "aria-label": this.words.columnName(letters, heading) },
        letters,
        make("span", "tg-grip", { "aria-hidden": "true" }),
      );
      view.dataset.column = String(c);
      view.style.left = `${side + columns.offset(c)}px`;
      view.style.width = `${columns.sizeOf(c)}px`;
      if (c > 0 && columns.sizeOf(c - 1) === 0) view.classList.add("tg-gap");
      if (model.filters.of(sheet.name, c)) view.classList.add("tg-filtered");
      this.views.set(c, view);
      (c < frozenColumns ? stick : this.element).append(view);
    }
    this.mark(area);
  }

  /** Columns of the selection. */
  mark(area: Area): void {
    for (const [c, view] of this.views) view.classList.toggle("tg-on", c >= area.left && c <= area.right);
  }
}
