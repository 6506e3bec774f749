/** Mouse, finger and pen. A finger's swipe scrolls, a tap selects, a second tap edits; a mouse drags a block. */

import { addressOf } from "../model/address.ts";
import { type Area, LAST_COLUMN, LAST_ROW } from "../model/types.ts";
import { apply, fitWidth } from "./commands.ts";
import type { Context } from "./context.ts";

type Part = "cell" | "row" | "column" | "corner";

interface Hit {
  readonly part: Part;
  readonly row: number;
  readonly column: number;
}

/** Pixels from the edge at which dragging scrolls. */
const NEAR_EDGE = 24;

export function listen(context: Context, handle: HTMLElement): () => void {
  const { scroller } = context.view;
  let drag: { part: Part; pointer: number; x: number; y: number } | undefined;
  let frame = 0;

  function hit(event: MouseEvent): Hit | undefined {
    const target = event.target as Element;
    const cell = target.closest<HTMLElement>(".tg-cell");
    const row = Number(target.closest<HTMLElement>(".tg-row")?.dataset.row);
    if (cell) return { part: "cell", row, column: Number(cell.dataset.column) };
    if (target.closest(".tg-number")) return { part: "row", row, column: 0 };
    const letter = target.closest<HTMLElement>(".tg-letter");
    if (letter) return { part: "column", row: 0, column: Number(letter.dataset.column) };
    if (target.closest(".tg-corner")) return { part: "corner", row: 0, column: 0 };
    return undefined;
  }

  /** Inside the input while text is in it the browser does its own. */
  const inText = (event: Event) => event.target === context.entry.element && context.entry.mode !== "ready";

  function choose(at: Hit, extend: boolean): void {
    const { cursor, view } = context;
    if (at.part === "cell") {
      if (extend) cursor.stretchTo(at, false);
      else cursor.go(at, false);
      return;
    }
    const seen = view.visible();
    const { spot } = cursor;
    const from = extend ? spot : at;
    const area: Area =
      at.part === "row"
        ? { top: Math.min(from.row, at.row), bottom: Math.max(from.row, at.row), left: 0, right: LAST_COLUMN }
        : at.part === "column"
          ? {
              left: Math.min(from.column, at.column),
              right: Math.max(from.column, at.column),
              top: 0,
              bottom: LAST_ROW,
            }
          : { top: 0, left: 0, bottom: LAST_ROW, right: LAST_COLUMN };
    const start =
      at.part === "row"
        ? { row: from.row, column: extend ? spot.column : view.layout.frozenColumns > 0 ? 0 : seen.left }
        : at.part === "column"
          ? { row: extend ? spot.row : view.layout.frozenRows > 0 ? 0 : seen.top, column: from.column }
          : spot;
    cursor.choose(area, start);
  }

  const onDown = (event: PointerEvent) => {
    if (event.pointerType !== "mouse" || event.button > 0 || inText(event)) return;
    const target = event.target as Element;
    if (target.closest(".tg-grip")) {
      resize(context, event, Number(target.closest<HTMLElement>(".tg-letter")!.dataset.column));
      return;
    }
    if (target.closest(".tg-drop") || target.closest(".tg-handle")) return;
    const at = hit(event);
    if (!at) return;
    if (pointInto(context, event, at)) return;
    if (!context.finish(true)) {
      event.preventDefault();
      return;
    }
    choose(at, event.shiftKey);
    context.entry.focus();
    drag = { part: at.part, pointer: event.pointerId, x: event.clientX, y: event.clientY };
  };

  function dragged(): void {
    frame = 0;
    if (!drag) return;
    const box = scroller.getBoundingClientRect();
    const { layout } = context.view;
    let [byX, byY] = [0, 0];
    if (drag.x > box.right - NEAR_EDGE) byX = 20;
    else if (drag.x < box.left + layout.fixedWidth && scroller.scrollLeft > 0 && drag.x < box.left + layout.side)
      byX = -20;
    if (drag.y > box.bottom - NEAR_EDGE) byY = 14;
    else if (drag.y < box.top + layout.letters) byY = -14;
    if (byX !== 0 || byY !== 0) {
      scroller.scrollBy(byX, byY);
      frame = requestAnimationFrame(dragged);
    }
    const at = context.view.at(drag.x, drag.y);
    const { area } = context.cursor;
    if (drag.part === "cell") {
      const { row, column } = context.cursor.spot;
      const far = {
        row: area.top === row ? area.bottom : area.top,
        column: area.left === column ? area.right : area.left,
      };
      if (far.row !== at.row || far.column !== at.column) context.cursor.stretchTo(at, false);
    } else if (drag.part !== "corner") choose({ part: drag.part, ...at }, true);
  }

  const onMove = (event: PointerEvent) => {
    if (!drag || event.pointerId !== drag.pointer) return;
    // Held from the first move on, not before: a captured click would no longer tell its cell.
    if (!scroller.hasPointerCapture(event.pointerId)) scroller.setPointerCapture(event.pointerId);
    drag.x = event.clientX;
    drag.y = event.clientY;
    if (!frame) frame = requestAnimationFrame(dragged);
  };
  const onUp = (event: PointerEvent) => {
    if (!drag || event.pointerId !== drag.pointer) return;
    if (event.type === "pointerup" && frame) {
      cancelAnimationFrame(frame);
      drag.x = event.clientX;
      drag.y = event.clientY;
      dragged();
    }
    cancelAnimationFrame(frame);
    frame = 0;
    drag = undefined;
  };

  /** The browser would move the focus out of the input. */
  const onMouseDown = (event: MouseEvent) => {
    if (!inText(event)) event.preventDefault();
  };

  const onClick = (event: MouseEvent) => {
    const { pointerType } = event as PointerEvent;
    if (pointerType === "mouse" || pointerType === "" || inText(event)) return;
    if ((event.target as Element).closest(".tg-drop")) return;
    const at = hit(event);
    if (!at) return;
    const { cursor, entry, model } = context;
    if (!context.finish(true)) return;
    const again = at.part === "cell" && entry.focused && cursor.spot.row === at.row && cursor.spot.column === at.column;
    choose(at, false);
    entry.focus();
    if (!again) return;
    // The keyboard of the screen comes up with the focus: given anew, now that there is something to type.
    entry.edit(model.editable(context.sheet(), at.row, at.column));
    entry.reopen();
  };

  const onDouble = (event: MouseEvent) => {
    const target = event.target as Element;
    if (target.closest(".tg-grip")) {
      fitWidth(context, [Number(target.closest<HTMLElement>(".tg-letter")!.dataset.column)]);
      return;
    }
    const at = hit(event);
    if (at?.part !== "cell" || inText(event)) return;
    const { row, column } = context.cursor.spot;
    context.entry.edit(context.model.editable(context.sheet(), row, column));
    event.preventDefault();
  };

  const onMenu = (event: MouseEvent) => {
    if (inText(event)) return;
    const at = hit(event);
    if (!at) return;
    event.preventDefault();
    if (!context.finish(true)) return;
    const { area } = context.cursor;
    const inside = at.row >= area.top && at.row <= area.bottom && at.column >= area.left && at.column <= area.right;
    const kept =
      at.part === "cell"
        ? inside
        : at.part === "row"
          ? at.row >= area.top && at.row <= area.bottom && area.right >= LAST_COLUMN
          : at.column >= area.left && at.column <= area.right && area.bottom >= LAST_ROW;
    if (!kept) choose(at, false);
    context.entry.focus();
    context.openMenu(event.clientX, event.clientY, false);
  };

  // The handle of the block: a large target for a finger.
  let held: number | undefined;
  const onHandle = (event: PointerEvent) => {
    event.preventDefault();
    event.stopPropagation();
    if (event.type === "pointerdown") {
      held = event.pointerId;
      handle.setPointerCapture(event.pointerId);
    } else if (event.type === "pointermove") {
      if (held !== event.pointerId) return;
      const at = context.view.at(event.clientX, event.clientY);
      context.cursor.stretchTo(at, true);
    } else held = undefined;
  };

  scroller.addEventListener("pointerdown", onDown);
  scroller.addEventListener("pointermove", onMove);
  scroller.addEventListener("pointerup", onUp);
  scroller.addEventListener("pointercancel", onUp);
  scroller.addEventListener("mousedown", onMouseDown);
  scroller.addEventListener("click", onClick);
  scroller.addEventListener("dblclick", onDouble);
  scroller.addEventListener("contextmenu", onMenu);
  for (const type of ["pointerdown", "pointermove", "pointerup", "pointercancel"] as const)
    handle.addEventListener(type, onHandle);
  return () => cancelAnimationFrame(frame);
}

/** A click on another cell while a formula wants a reference writes its address. */
function pointInto(context: Context, event: PointerEvent, at: Hit): boolean {
  const { entry } = context;
  if (at.part !== "cell" || entry.mode === "ready" || !entry.value.startsWith("=")) return false;
  const { selectionStart } = entry.element;
  if (!/[=(,;:+\-*/^&<>]\s*$/.test(entry.value.slice(0, selectionStart))) return false;
  event.preventDefault();
  entry.insert(addressOf(at.row, at.column));
  return true;
}

/** Drags the right edge of a column. */
function resize(context: Context, event: PointerEvent, column: number): void {
  event.preventDefault();
  const { view } = context;
  const grip = event.target as HTMLElement;
  const start = event.clientX;
  const width = view.layout.columns.sizeOf(column);
  let now = width;
  grip.setPointerCapture(event.pointerId);
  const letter = grip.closest<HTMLElement>(".tg-letter")!;
  const move = (next: PointerEvent) => {
    now = Math.max(24, width + next.clientX - start);
    letter.style.width = `${now}px`;
  };
  const up = () => {
    grip.removeEventListener("pointermove", move);
    if (now === width) return;
    const characters = Math.round(((now - 12) / view.measure.digit) * 100) / 100;
    apply(context, "width", () => [{ kind: "width", sheet: context.sheet(), column, width: Math.max(1, characters) }]);
  };
  grip.addEventListener("pointermove", move);
  grip.addEventListener("pointerup", up, { once: true });
  grip.addEventListener("pointercancel", up, { once: true });
}
