/** Chooses which rows of a table stay in view by the texts of one column. */
import { regionAt } from "../model/tables.ts";
import type { Context } from "./context.ts";
import { button, make } from "./dom.ts";

const MOST_SHOWN = 300;

export class FilterPanel {
  private readonly element: HTMLElement;

  constructor(
    private readonly context: () => Context,
    private readonly root: HTMLElement,
  ) {
    this.element = make("div", "tg-panel", { role: "dialog" });
    this.element.hidden = true;
    this.element.addEventListener("keydown", (event) => {
      event.stopPropagation();
      if (event.key !== "Escape") return;
      event.preventDefault();
      this.close(true);
    });
    this.element.addEventListener("focusout", (event) => {
      const to = event.relatedTarget as Node | null;
      if (to && !this.element.contains(to)) this.close(false);
    });
    root.append(this.element);
  }

  open(): void {
    const context = this.context();
    const { model, words, cursor, view } = context;
    const sheet = context.sheet();
    const { row, column } = cursor.spot;
    const region = regionAt(model, sheet, row, column);
    if (!region) {
      context.say(words.noTable, "refused");
      return;
    }
    const heading = model.shown(sheet, region.top, column);
    const texts = [...model.filters.texts(sheet, region, column)].sort(
      ([a], [b]) => Number(a === "") - Number(b === "") || a.localeCompare(b, undefined, { numeric: true }),
    );
    const kept = new Set(model.filters.of(sheet, column) ?? texts.map(([text]) => text));

    const search = make("input", "", {
      type: "search",
      placeholder: words.filterSearch,
      "aria-label": words.filterSearch,
    });
    const all = make("input", "", { type: "checkbox" });
    const list = make("div", "tg-checks");
    const hint = make("p", "tg-hint");
    const matching = () => {
      const wanted = search.value.trim().toLowerCase();
      return texts.filter(([text]) => (text || words.filterBlank).toLowerCase().includes(wanted));
    };
    const draw = () => {
      const found = matching();
      list.replaceChildren(
        ...found.slice(0, MOST_SHOWN).map(([text, count]) => {
          const box = make("input", "", { type: "checkbox" });
          box.checked = kept.has(text);
          box.addEventListener("change", () => {
            if (box.checked) kept.add(text);
            else kept.delete(text);
            mark();
          });
          return make(
            "label",
            "",
            {},
            box,
            make("span", "", {}, text || words.filterBlank),
            make("i", "", {}, String(count)),
          );
        }),
      );
      hint.textContent = found.length > MOST_SHOWN ? words.filterMany(MOST_SHOWN, found.length) : "";
      mark();
    };
    const mark = () => {
      const found = matching();
      const on = found.filter(([text]) => kept.has(text)).length;
      all.checked = on === found.length;
      all.indeterminate = on > 0 && on < found.length;
    };
    all.addEventListener("change", () => {
      for (const [text] of matching()) {
        if (all.checked) kept.add(text);
        else kept.delete(text);
      }
      draw();
    });
    search.addEventListener("input", draw);
    search.addEventListener("keydown", (event) => {
      if (event.key !== "Enter") return;
      // The key ends here: the focus is about to be in a cell.
      event.preventDefault();
      done();
    });
    const done = () => {
      this.close(true);
      // A search alone means: only these.
      const wanted = search.value.trim() === "" ? kept : new Set(matching().flatMap(([t]) => (kept.has(t) ? [t] : [])));
      const everything = texts.every(([text]) => wanted.has(text));
      model.filters.set(sheet, region, column, everything ? undefined : wanted);
      const hidden = model.filters.hidden(sheet);
      const rows = region.bottom - region.top;
      let gone = 0;
      for (let r = region.top + 1; r <= region.bottom; r++) if (hidden.has(r)) gone++;
      context.say(words.filtered(rows - gone, rows));
      // The cursor stays with what is to be seen.
      let to = cursor.spot.row;
      while (hidden.has(to)) to--;
      if (to === region.top && cursor.spot.row !== to) while (to < region.bottom && hidden.has(++to));
      queueMicrotask(() => cursor.go({ row: hidden.has(to) ? region.top : to, column }));
    };
    const title = make(
      "h2",
      "",
      { id: "tg-filter-title" },
      words.filterTitle(heading || view.scroller.ariaLabel || ""),
    );
    this.element.setAttribute("aria-labelledby", title.id);
    this.element.replaceChildren(
      title,
      search,
      make("label", "tg-all", {}, all, make("span", "", {}, words.filterAll)),
      list,
      hint,
      make(
        "div",
        "tg-panel-buttons",
        {},
        button("tg-main", words.apply, done),
        button("", words.close, () => this.close(true)),
      ),
    );
    draw();
    this.element.hidden = false;
    const cell = view.cellElement(row, column)?.getBoundingClientRect();
    const around = this.root.getBoundingClientRect();
    const left = (cell?.left ?? around.left) - around.left;
    const top = (cell?.bottom ?? around.top) - around.top;
    this.element.style.left = `${Math.max(4, Math.min(left, around.width - this.element.offsetWidth - 4))}px`;
    this.element.style.top = `${Math.max(4, Math.min(top, around.height - this.element.offsetHeight - 4))}px`;
    search.focus();
  }

  private close(back: boolean): void {
    if (this.element.hidden) return;
    this.element.hidden = true;
    if (back) this.context().entry.focus();
  }
}
