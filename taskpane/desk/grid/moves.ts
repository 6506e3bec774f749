/** Where a key takes the cursor. */
import type { Model } from "../model/model.ts";
import { holds } from "../model/state.ts";
import type { Axis } from "./axis.ts";

export interface Spot {
  readonly row: number;
  readonly column: number;
}

export type Direction = "up" | "down" | "left" | "right";

/** One step, past what is hidden; from a merged cell past all of it. */
export function stepFrom(model: Model, rows: Axis, columns: Axis, from: Spot, direction: Direction): Spot {
  const sheet = model.sheet(model.active())!;
  const merge = sheet.mergeAt(from.row, from.column);
  let { row, column } = from;
  if (direction === "up") row = rows.step(merge?.top ?? row, -1);
  if (direction === "down") row = rows.step(merge?.bottom ?? row, 1);
  if (direction === "left") column = columns.step(merge?.left ?? column, -1);
  if (direction === "right") column = columns.step(merge?.right ?? column, 1);
  return firstOf(model, { row, column });
}

/** The first cell of a merged one. */
export function firstOf(model: Model, spot: Spot): Spot {
  const merge = model.sheet(model.active())!.mergeAt(spot.row, spot.column);
  return merge ? { row: merge.top, column: merge.left } : spot;
}

/** To the edge of what is filled, as Ctrl with an arrow goes. */
export function jumpFrom(model: Model, rows: Axis, columns: Axis, from: Spot, direction: Direction): Spot {
  const name = model.active();
  const used = model.used(name);
  const down = direction === "up" || direction === "down";
  const axis = down ? rows : columns;
  const by = direction === "up" || direction === "left" ? -1 : 1;
  const filled = (i: number) => holds(down ? model.cell(name, i, from.column) : model.cell(name, from.row, i));
  const end = by < 0 ? 0 : Math.max(0, (down ? used.rows : used.columns) - 1);
  const start = down ? from.row : from.column;
  let at = axis.step(start, by);
  if (at === start) return from;
  // Out of a filled run's end, or from a blank one, to where the next run begins.
  if (!filled(start) || !filled(at)) {
    while (!filled(at)) {
      const next = axis.step(at, by);
      if (next === at || (by > 0 ? next > end : next < end)) break;
      at = next;
    }
  } else {
    for (let next = axis.step(at, by); next !== at && filled(next); next = axis.step(at, by)) at = next;
  }
  // Beyond the last content there is nothing to jump to.
  if (by > 0 && at > end) at = Math.max(start, end);
  return firstOf(model, down ? { row: at, column: from.column } : { row: from.row, column: at });
}
