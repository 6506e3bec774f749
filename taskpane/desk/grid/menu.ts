/** The menu of the selected cells: right click, long press, Shift+F10 or the button below the sheet. */

import { regionAt } from "../model/tables.ts";
import { hiddenNow, paste } from "./clipboard.ts";
import * as commands from "./commands.ts";
import type { Context } from "./context.ts";
import { make } from "./dom.ts";

interface Item {
  readonly text: string;
  readonly keys?: string;
  readonly run: () => void;
}

export class Menu {
  private readonly element: HTMLElement;
  private items: HTMLElement[] = [];

  constructor(
    private readonly context: () => Context,
    root: HTMLElement,
  ) {
    this.element = make("div", "tg-menu", { role: "menu" });
    this.element.hidden = true;
    this.element.addEventListener("keydown", (event) => this.onKey(event));
    this.element.addEventListener("focusout", (event) => {
      if (!this.element.contains(event.relatedTarget as Node | null)) this.close(false);
    });
    root.append(this.element);
  }

  private groups(): Item[][] {
    const context = this.context();
    const { words, cursor, model } = context;
    const count = commands.selectedRows(context).length;
    const sheet = context.sheet();
    const copy = (kind: "copy" | "cut") => () => {
      context.entry.focus();
      document.execCommand(kind);
    };
    const region = regionAt(model, sheet, cursor.spot.row, cursor.spot.column);
    const table: Item[] = region
      ? [
          { text: words.sortUp, run: () => commands.sort(context, false) },
          { text: words.sortDown, run: () => commands.sort(context, true) },
          { text: words.filter, run: () => context.openFilter() },
        ]
      : [];
    if (model.filters.any(sheet)) table.push({ text: words.clearFilters, run: () => model.filters.clear(sheet) });
    const columns: Item[] = [
      { text: words.fitWidth, run: () => commands.fitSelected(context) },
      { text: words.hideColumns, run: () => commands.hideColumns(context) },
    ];
    if (hiddenNow(context).size > context.view.unused.size)
      columns.push({ text: words.showColumns, run: () => commands.showColumns(context) });
    const unused = context.options.hiddenColumns?.(sheet).size ?? 0;
    if (unused > 0)
      columns.push({
        text: context.view.hideUnused ? words.showUnused(unused) : words.hideUnused(unused),
        run: () => context.switchUnused(),
      });
    return [
      [
        { text: words.cut, keys: "Ctrl+X", run: copy("cut") },
        { text: words.copy, keys: "Ctrl+C", run: copy("copy") },
        { text: words.paste, keys: "Ctrl+V", run: () => void this.paste() },
        { text: words.clear, keys: "Del", run: () => commands.clear(context) },
        { text: words.fillDown, keys: "Ctrl+D", run: () => commands.fillDown(context) },
      ],
      [
        { text: words.insertAbove(count), run: () => commands.insertRows(context, false) },
        { text: words.insertBelow(count), run: () => commands.insertRows(context, true) },
        { text: words.deleteRows(count), run: () => commands.deleteRows(context) },
      ],
      table,
      columns,
      [
        { text: words.find, keys: "Ctrl+F", run: () => context.openFind() },
        { text: words.redo, keys: "Ctrl+Y", run: () => commands.redo(context) },
      ],
    ];
  }

  private async paste(): Promise<void> {
    const context = this.context();
    try {
      const [item] = await navigator.clipboard.read();
      const text = async (type: string) => (item?.types.includes(type) ? await (await item.getType(type)).text() : "");
      paste(context, await text("text/plain"), await text("text/html"));
    } catch {
      context.say(context.words.pasteByKey, "refused");
    }
  }

  open(x: number, y: number): void {
    const context = this.context();
    const { root, view, cursor } = context;
    this.items = [];
    this.element.replaceChildren(
      ...this.groups()
        .filter((group) => group.length > 0)
        .flatMap((group, i) => [
          ...(i > 0 ? [make("div", "tg-line-between", { role: "separator" })] : []),
          ...group.map((item) => {
            const made = make(
              "div",
              "tg-item",
              { role: "menuitem", tabindex: -1 },
              make("span", "", {}, item.text),
              make("kbd", "", {}, item.keys ?? ""),
            );
            if (!item.keys) made.lastElementChild!.remove();
            made.addEventListener("click", () => {
              this.close(true);
              item.run();
            });
            this.items.push(made);
            return made;
          }),
        ]),
    );
    if (this.items[0]) this.items[0].tabIndex = 0;
    this.element.setAttribute("aria-label", context.words.more);
    this.element.hidden = false;
    const around = root.getBoundingClientRect();
    const cell = view.cellElement(cursor.spot.row, cursor.spot.column)?.getBoundingClientRect();
    const left = (Number.isNaN(x) ? (cell?.left ?? around.left) + 12 : x) - around.left;
    const top = (Number.isNaN(y) ? (cell?.bottom ?? around.top) : y) - around.top;
    const { offsetWidth, offsetHeight } = this.element;
    this.element.style.left = `${Math.max(4, Math.min(left, around.width - offsetWidth - 4))}px`;
    this.element.style.top = `${Math.max(4, Math.min(top, around.height - offsetHeight - 4))}px`;
    this.items[0]?.focus();
  }

  private close(back: boolean): void {
    if (this.element.hidden) return;
    this.element.hidden = true;
    if (back) this.context().entry.focus();
  }

  private onKey(event: KeyboardEvent): void {
    const at = this.items.indexOf(document.activeElement as HTMLElement);
    const count = this.items.length;
    const to = (i: number) => this.items[(i + count) % count]?.focus();
    switch (event.key) {
      case "ArrowDown":
        to(at + 1);
        break;
      case "ArrowUp":
        to(at - 1);
        break;
      case "Home":
        to(0);
        break;
      case "End":
        to(count - 1);
        break;
      case "Enter":
      case " ":
        this.items[at]?.click();
        break;
      case "Escape":
      case "Tab":
        this.close(true);
        break;
      default: {
        // The first letter goes to the item that begins with it.
        const letter = event.key.toLowerCase();
        if (letter.length !== 1 || event.ctrlKey || event.metaKey) return;
        const order = [...this.items.slice(at + 1), ...this.items.slice(0, at + 1)];
        order.find((item) => item.textContent?.toLowerCase().startsWith(letter))?.focus();
      }
    }
    event.preventDefault();
    event.stopPropagation();
  }
}
