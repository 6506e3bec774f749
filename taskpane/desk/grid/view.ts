/**
 * The sheet on the page: native scrolling, rows and columns made only where they are to be seen, letters, row numbers and
 * frozen cells held by the browser ("sticky"). After an edit only the cells that changed are drawn.
 */
import type { Model } from "../model/model.ts";
import type { SheetState } from "../model/state.ts";
import type { Area } from "../model/types.ts";
import { make } from "./dom.ts";
import { type Layout, layoutOf } from "./layout.ts";
import { Letters } from "./letters.ts";
import { Measure } from "./measure.ts";
import type { GridOptions } from "./options.ts";
import { type CellView, lookOf, newCell, paintCell } from "./paint.ts";
import { cellAt, firstScroll, placeCell, placeRow, scrollTo, seenIn } from "./places.ts";
import type { GridWords } from "./words.ts";

interface RowView {
  readonly element: HTMLElement;
  /** Holds the row number and the frozen cells in place. */
  readonly stick: HTMLElement;
  readonly number: HTMLElement;
  readonly cells: Map<number, CellView>;
}

/** Rows and columns made beyond what is to be seen, so that a flick of the wheel shows no gaps. */
const MORE_ROWS = 5;
const MORE_COLUMNS = 2;

export interface Cursor {
  readonly row: number;
  readonly column: number;
  readonly area: Area;
}

export class View {
  readonly scroller: HTMLElement;
  readonly measure: Measure;
  layout!: Layout;
  private readonly space: HTMLElement;
  private readonly head: HTMLElement;
  private readonly body: HTMLElement;
  private readonly letters: Letters;
  private readonly rowViews = new Map<number, RowView>();
  private readonly scrolls = new Map<SheetState, { top: number; left: number }>();
  private readonly resized: ResizeObserver;
  private readonly coarse = matchMedia("(pointer: coarse)");
  private sheet!: SheetState;
  private cursor: Cursor = { row: 0, column: 0, area: { top: 0, left: 0, bottom: 0, right: 0 } };
  private frame = 0;
  unused: ReadonlySet<number> = new Set();

  constructor(
    container: HTMLElement,
    private model: Model,
    private readonly options: GridOptions,
    private readonly words: GridWords,
    private readonly onScroll: () => void,
    private readonly onLayout: () => void,
    /** All cells are about to go: the input is to be taken out of its cell. */
    private readonly onClear: () => void,
  ) {
    this.head = make("div", "tg-head", { role: "rowgroup" });
    this.body = make("div", "tg-body", { role: "rowgroup" });
    this.space = make("div", "tg-space", { role: "presentation" }, this.head, this.body);
    this.scroller = make("div", "tg-scroll", { role: "grid", "aria-multiselectable": "true" }, this.space);
    this.letters = new Letters(words);
    container.append(this.scroller);
    this.measure = new Measure(this.scroller);
    this.scroller.addEventListener("scroll", this.scrolled, { passive: true });
    this.resized = new ResizeObserver(() => {
      if (this.scroller.clientWidth !== this.width || this.scroller.clientHeight !== this.height) this.relayout();
    });
    this.resized.observe(this.scroller);
    this.coarse.addEventListener("change", () => this.relayout());
    this.setModel(model);
  }

  private width = 0;
  private height = 0;

  setModel(model: Model): void {
    this.model = model;
    this.scrolls.clear();
    // Nothing of another workbook stays.
    this.frozen = "";
    this.showSheet();
  }

  /** Draws the active sheet from the ground up. */
  showSheet(): void {
    if (this.sheet) this.scrolls.set(this.sheet, { top: this.scroller.scrollTop, left: this.scroller.scrollLeft });
    this.sheet = this.model.sheet(this.model.active())!;
    const { row, column, area } = this.model.selection();
    this.cursor = { row, column, area };
    this.scroller.setAttribute("aria-label", this.words.grid(this.sheet.name));
    this.measureAnew();
    // Scrolled while there are no cells yet: the page is laid out once, with those that are to be seen.
    const at = this.scrolls.get(this.sheet) ?? firstScroll(this.layout, this.width, this.height, this.cursor);
    this.scroller.scrollTo(at.left, at.top);
    this.render();
    this.onLayout();
  }

  /** Measures everything again: after rows, widths, filters or the window changed. Keeps the cells that stay. */
  relayout(): void {
    this.measureAnew();
    this.render();
    this.onLayout();
  }

  private measureAnew(): void {
    this.width = this.scroller.clientWidth;
    this.height = this.scroller.clientHeight;
    this.unused = this.unusedNow();
    this.layout = layoutOf({
      model: this.model,
      sheet: this.sheet,
      measure: this.measure,
      width: this.width,
      height: this.height,
      coarse: this.coarse.matches,
      unused: this.unused,
      reach: this.cursor,
    });
    const { rows, columns, side, letters, frozenRows, fixedHeight } = this.layout;
    this.space.style.width = `${side + columns.length}px`;
    this.space.style.height = `${letters + rows.length}px`;
    this.head.style.height = `${fixedHeight}px`;
    this.body.style.height = `${rows.length - rows.offset(frozenRows)}px`;
    this.scroller.setAttribute("aria-rowcount", String(rows.count + 1));
    this.scroller.setAttribute("aria-colcount", String(columns.count + 1));
    this.scroller.classList.toggle("tg-coarse", this.coarse.matches);
    const frozen = `${frozenRows} ${this.layout.frozenColumns} ${this.sheet.name}`;
    if (frozen === this.frozen) this.place();
    else this.clear();
    this.frozen = frozen;
  }

  hideUnused = true;
  private frozen = "";

  private unusedNow(): ReadonlySet<number> {
    return this.options.hiddenColumns && this.hideUnused
      ? new Set(this.options.hiddenColumns(this.sheet.name))
      : new Set();
  }

  /** True when a column that nobody used holds something now, or the other way round. */
  unusedChanged(): boolean {
    const now = this.unusedNow();
    return now.size !== this.unused.size || [...now].some((column) => !this.unused.has(column));
  }

  private clear(): void {
    this.onClear();
    this.head.replaceChildren();
    this.body.replaceChildren();
    this.rowViews.clear();
    this.head.append(this.letters.anew(this.layout));
  }

  /** Takes an element off the page. The input goes out of it first: it would lose the focus, and keys with it. */
  private take(element: HTMLElement): void {
    if (element.contains(document.activeElement)) this.onClear();
    element.remove();
  }

  /** Puts what is on the page where it now belongs; the input keeps its cell, and with it the focus. */
  private place(): void {
    const { rows, columns, frozenRows, side } = this.layout;
    this.letters.element.replaceWith(this.letters.anew(this.layout));
    for (const [row, view] of this.rowViews) {
      if (row >= rows.count || (rows.sizeOf(row) === 0 && row !== this.cursor.row)) {
        this.take(view.element);
        this.rowViews.delete(row);
        continue;
      }
      placeRow(this.layout, row, view.element, view.stick);
      view.number.style.width = `${side}px`;
      for (const [column, cell] of view.cells) {
        const hidden = column >= columns.count || (columns.sizeOf(column) === 0 && column !== this.cursor.column);
        if (hidden || !placeCell(this.layout, this.sheet, row, column, cell.element)) {
          this.take(cell.element);
          view.cells.delete(column);
        } else this.paint(row, column, cell);
      }
    }
    this.head.classList.toggle("tg-none", frozenRows === 0);
  }

  private readonly scrolled = (): void => {
    if (this.frame) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      this.render();
      this.onScroll();
    });
  };

  /** Rows and columns that are to be seen now. */
  visible(): Area {
    return seenIn(this.layout, this.scroller);
  }

  /** Makes what is missing on the screen, takes away what has left it. */
  render(): void {
    const { rows, columns, frozenRows, frozenColumns } = this.layout;
    const seen = this.visible();
    const wantedRows = new Set<number>();
    for (let r = 0; r < frozenRows; r++) if (rows.sizeOf(r) > 0) wantedRows.add(r);
    const first = Math.max(frozenRows, seen.top - MORE_ROWS);
    const last = Math.min(rows.count - 1, seen.bottom + MORE_ROWS);
    for (let r = first; r <= last; r++) if (rows.sizeOf(r) > 0) wantedRows.add(r);
    wantedRows.add(this.cursor.row);
    const wanted: number[] = [];
    for (let c = 0; c < frozenColumns; c++) if (columns.sizeOf(c) > 0) wanted.push(c);
    const from = Math.max(frozenColumns, seen.left - MORE_COLUMNS);
    const to = Math.min(columns.count - 1, seen.right + MORE_COLUMNS);
    for (let c = from; c <= to; c++) if (columns.sizeOf(c) > 0) wanted.push(c);

    for (const [r, view] of this.rowViews) {
      if (wantedRows.has(r)) continue;
      this.take(view.element);
      this.rowViews.delete(r);
    }
    const wantedColumns = new Set(wanted);
    this.letters.fill(this.layout, this.model, this.sheet, wanted, wantedColumns, this.cursor.area);
    const order = [...wantedRows].sort((a, b) => a - b);
    order.forEach((r, i) => {
      let view = this.rowViews.get(r);
      if (!view) {
        view = this.makeRow(r);
        this.rowViews.set(r, view);
        const parent = r < frozenRows ? this.head : this.body;
        let next: Element | null = null;
        for (let k = i + 1; k < order.length && !next; k++) {
          const later = this.rowViews.get(order[k]!)?.element;
          if (later?.parentElement === parent) next = later;
        }
        this.fillRow(r, view, wanted, wantedColumns);
        parent.insertBefore(view.element, next);
      } else this.fillRow(r, view, wanted, wantedColumns);
    });
  }

  private makeRow(row: number): RowView {
    const { side, frozenRows } = this.layout;
    const element = make("div", "tg-row", { role: "row", "aria-rowindex": row + 2 });
    const stick = make("div", "tg-stick", { role: "presentation" });
    const number = make(
      "div",
      "tg-number",
      { role: "rowheader", "aria-colindex": 1, "aria-label": this.words.rowName(row + 1) },
      String(row + 1),
    );
    number.style.width = `${side}px`;
    stick.append(number);
    element.append(stick);
    element.dataset.row = String(row);
    if (row === frozenRows - 1) element.classList.add("tg-last-frozen");
    const view = { element, stick, number, cells: new Map<number, CellView>() };
    placeRow(this.layout, row, view.element, view.stick);
    this.markNumber(row, view);
    return view;
  }

  private fillRow(row: number, view: RowView, wanted: readonly number[], wantedColumns: ReadonlySet<number>): void {
    const active = row === this.cursor.row ? this.cursor.column : -1;
    for (const [c, cell] of view.cells) {
      if (wantedColumns.has(c) || c === active) continue;
      this.take(cell.element);
      view.cells.delete(c);
    }
    for (const c of wanted) this.ensureCell(row, view, c);
    if (active >= 0) this.ensureCell(row, view, active);
  }

  private ensureCell(row: number, view: RowView, column: number): CellView | undefined {
    const there = view.cells.get(column);
    if (there) return there;
    const { frozenColumns } = this.layout;
    const made = newCell(column);
    const { element } = made;
    if (!placeCell(this.layout, this.sheet, row, column, element)) return undefined;
    element.dataset.column = String(column);
    view.cells.set(column, made);
    this.paint(row, column, made);
    const parent = column < frozenColumns ? view.stick : view.element;
    // In the order of columns, for whoever reads the page in its order.
    let next: Element | null = null;
    for (let child = parent.lastElementChild; child; child = child.previousElementSibling) {
      const at = (child as HTMLElement).dataset.column;
      if (at === undefined || Number(at) < column) break;
      next = child;
    }
    parent.insertBefore(element, next);
    return made;
  }

  private paint(row: number, column: number, view: CellView): void {
    const { columns, headings } = this.layout;
    const merge = this.sheet.merges.length > 0 ? this.sheet.mergeAt(row, column) : undefined;
    const width = columns.offset(Math.min((merge?.right ?? column) + 1, columns.count)) - columns.offset(column);
    const look = lookOf(
      this.model,
      this.options,
      this.words,
      this.measure,
      this.sheet.name,
      row,
      column,
      width,
      headings.has(row),
    );
    paintCell(view, look, this.marks(row, column, merge));
  }

  private marks(row: number, column: number, merge: Area | undefined): string {
    const { area } = this.cursor;
    let marks = merge ? " tg-merged" : "";
    const active = row === this.cursor.row && column === this.cursor.column;
    if (row >= area.top && row <= area.bottom && column >= area.left && column <= area.right) marks += " tg-sel";
    if (active) marks += " tg-active";
    if (column === this.layout.frozenColumns - 1) marks += " tg-edge";
    return marks;
  }

  private markNumber(row: number, view: RowView): void {
    const { area } = this.cursor;
    view.number.classList.toggle("tg-on", row >= area.top && row <= area.bottom);
  }

  /** Another cell or block is selected: only marks change. */
  moveCursor(cursor: Cursor): void {
    const before = this.cursor;
    this.cursor = cursor;
    const { rows, columns } = this.layout;
    if (cursor.row >= rows.count - 10 || cursor.column >= columns.count - 1) {
      this.relayout();
      return;
    }
    if (!this.rowViews.get(cursor.row)?.cells.has(cursor.column)) this.render();
    for (const [r, view] of this.rowViews) {
      const was = r === before.row || (r >= before.area.top && r <= before.area.bottom);
      const is = r === cursor.row || (r >= cursor.area.top && r <= cursor.area.bottom);
      if (!was && !is) continue;
      this.markNumber(r, view);
      for (const [c, cell] of view.cells) {
        const merge = this.sheet.merges.length > 0 ? this.sheet.mergeAt(r, c) : undefined;
        const base = cell.classes.replace(/ tg-(?:sel|active|edge|merged)\b/g, "");
        const classes = base + this.marks(r, c, merge);
        if (classes === cell.classes) continue;
        cell.element.className = classes;
        cell.element.setAttribute("aria-selected", classes.includes(" tg-sel") ? "true" : "false");
        cell.classes = classes;
      }
    }
    this.letters.mark(cursor.area);
  }

  /** Draws cells of the active sheet again; those out of sight are not there. */
  repaint(cells: Iterable<{ readonly row: number; readonly column: number }>): void {
    for (const { row, column } of cells) {
      const view = this.rowViews.get(row)?.cells.get(column);
      if (view) this.paint(row, column, view);
    }
  }

  repaintRows(rows: ReadonlySet<number>): void {
    for (const row of rows) {
      const view = this.rowViews.get(row);
      if (view) for (const [column, cell] of view.cells) this.paint(row, column, cell);
    }
  }

  cellElement(row: number, column: number): HTMLElement | undefined {
    return this.rowViews.get(row)?.cells.get(column)?.element;
  }

  /** Scrolls as little as needed to show a cell beside what is frozen. */
  reveal(row: number, column: number): void {
    if (scrollTo(this.layout, this.scroller, row, column)) this.render();
  }

  /** Cell under a point of the window; the nearest one outside of the sheet. */
  at(x: number, y: number): { row: number; column: number } {
    return cellAt(this.layout, this.scroller, x, y);
  }

  destroy(): void {
    cancelAnimationFrame(this.frame);
    this.resized.disconnect();
    this.scroller.remove();
  }
}
