/** From cells to places on the screen and back. */

import type { SheetState } from "../model/state.ts";
import type { Area } from "../model/types.ts";
import type { Layout } from "./layout.ts";

/** Rows and columns beside the frozen ones that are to be seen. */
export function seenIn({ rows, columns, fixedHeight, fixedWidth, side, letters }: Layout, scroller: HTMLElement): Area {
  const { scrollTop, scrollLeft, clientWidth, clientHeight } = scroller;
  return {
    top: rows.indexAt(scrollTop + fixedHeight - letters),
    bottom: rows.indexAt(scrollTop + clientHeight - letters - 1),
    left: columns.indexAt(scrollLeft + fixedWidth - side),
    right: columns.indexAt(scrollLeft + clientWidth - side - 1),
  };
}

/** Cell under a point of the window; the nearest one outside of the sheet. */
export function cellAt(layout: Layout, scroller: HTMLElement, x: number, y: number): { row: number; column: number } {
  const box = scroller.getBoundingClientRect();
  const { rows, columns, side, letters, fixedHeight, fixedWidth } = layout;
  const inX = Math.min(Math.max(x - box.left, 0), scroller.clientWidth - 1);
  const inY = Math.min(Math.max(y - box.top, 0), scroller.clientHeight - 1);
  const across = inX < fixedWidth ? inX - side : inX - side + scroller.scrollLeft;
  const down = inY < fixedHeight ? inY - letters : inY - letters + scroller.scrollTop;
  return { row: rows.indexAt(Math.max(0, down)), column: columns.indexAt(Math.max(0, across)) };
}

/** Where a sheet is scrolled to when it is shown first: at its beginning, or with its cell in view and the row in the middle. */
export function firstScroll(
  layout: Layout,
  width: number,
  height: number,
  { row, column }: { readonly row: number; readonly column: number },
): { top: number; left: number } {
  const { rows, columns, side, letters, frozenRows, frozenColumns, fixedHeight, fixedWidth } = layout;
  const above = letters + rows.offset(row);
  const out = row >= frozenRows && above + rows.sizeOf(row) > height;
  const before = side + columns.offset(column);
  const aside = column >= frozenColumns && before + columns.sizeOf(column) > width;
  return {
    top: out ? Math.max(0, above - fixedHeight - (height - fixedHeight - rows.sizeOf(row)) / 2) : 0,
    left: aside ? Math.max(0, before - fixedWidth) : 0,
  };
}

/** Scrolls as little as needed to show a cell beside what is frozen. False when it was to be seen already. */
export function scrollTo(layout: Layout, scroller: HTMLElement, row: number, column: number): boolean {
  const { rows, columns, side, letters, frozenRows, frozenColumns, fixedHeight, fixedWidth } = layout;
  const { clientWidth, clientHeight } = scroller;
  let { scrollTop, scrollLeft } = scroller;
  if (row >= frozenRows) {
    const top = letters + rows.offset(row);
    const bottom = top + rows.sizeOf(row);
    if (top < scrollTop + fixedHeight) scrollTop = top - fixedHeight;
    else if (bottom > scrollTop + clientHeight) scrollTop = bottom - clientHeight;
  }
  if (column >= frozenColumns) {
    const left = side + columns.offset(column);
    const right = left + columns.sizeOf(column);
    // A wide cell shows its beginning.
    if (left < scrollLeft + fixedWidth || right - left > clientWidth - fixedWidth) scrollLeft = left - fixedWidth;
    else if (right > scrollLeft + clientWidth) scrollLeft = right - clientWidth;
  }
  if (scrollTop === scroller.scrollTop && scrollLeft === scroller.scrollLeft) return false;
  scroller.scrollTop = scrollTop;
  scroller.scrollLeft = scrollLeft;
  return true;
}

export function placeRow(layout: Layout, row: number, element: HTMLElement, stick: HTMLElement): void {
  const { rows, frozenRows, letters, fixedWidth } = layout;
  element.style.height = `${rows.sizeOf(row)}px`;
  const top = row < frozenRows ? letters + rows.offset(row) : rows.offset(row) - rows.offset(frozenRows);
  element.style.top = `${top}px`;
  stick.style.width = `${fixedWidth}px`;
}

/** @returns false when a merged cell covers it */
export function placeCell(
  { rows, columns, side }: Layout,
  sheet: SheetState,
  row: number,
  column: number,
  element: HTMLElement,
): boolean {
  const merge = sheet.merges.length > 0 ? sheet.mergeAt(row, column) : undefined;
  if (merge && (merge.top !== row || merge.left !== column)) return false;
  const end = Math.min((merge?.right ?? column) + 1, columns.count);
  element.style.left = `${side + columns.offset(column)}px`;
  element.style.width = `${columns.offset(end) - columns.offset(column)}px`;
  element.style.height = merge ? `${rows.offset(Math.min(merge.bottom + 1, rows.count)) - rows.offset(row)}px` : "";
  if (merge) {
    element.setAttribute("aria-colspan", String(merge.right - merge.left + 1));
    element.setAttribute("aria-rowspan", String(merge.bottom - merge.top + 1));
  } else if (element.hasAttribute("aria-colspan")) {
    element.removeAttribute("aria-colspan");
    element.removeAttribute("aria-rowspan");
  }
  return true;
}
