/** From places on the screen to cells and back. */
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
