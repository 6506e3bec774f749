/** The active cell and the block around it. */
import { between } from "../model/address.ts";
import { type Area, LAST_COLUMN, LAST_ROW } from "../model/types.ts";
import type { Context } from "./context.ts";
import { type Direction, firstOf, jumpFrom, type Spot, stepFrom } from "./moves.ts";

export class Cursor {
  /** Corner of the block opposite to the active cell. */
  private lead: Spot = { row: 0, column: 0 };
  /** Column where a run of Tab began: Enter goes back to it, one row down. */
  private tabbedFrom: number | undefined;

  constructor(private readonly context: () => Context) {}

  get spot(): Spot {
    const { row, column } = this.context().model.selection();
    return { row, column };
  }

  get area(): Area {
    return this.context().model.selection().area;
  }

  /** Makes a cell the active one. */
  go(spot: Spot, reveal = true): void {
    const { model, view } = this.context();
    const at = firstOf(model, spot);
    this.lead = at;
    this.tabbedFrom = undefined;
    model.select({ sheet: model.active(), ...at }, this.wholeMerges(between(at, at)));
    if (reveal) view.reveal(at.row, at.column);
  }

  /** Stretches the block from the active cell to another. */
  stretchTo(spot: Spot, reveal = true): void {
    const { model, view } = this.context();
    this.lead = spot;
    const { row, column } = this.spot;
    model.select({ sheet: model.active(), row, column }, this.wholeMerges(between(this.spot, spot)));
    if (reveal) view.reveal(spot.row, spot.column);
  }

  /** Selects a block; whole rows and columns too. */
  choose(area: Area, spot: Spot = { row: area.top, column: area.left }): void {
    const { model } = this.context();
    this.lead = { row: Math.min(area.bottom, LAST_ROW), column: Math.min(area.right, LAST_COLUMN) };
    this.tabbedFrom = undefined;
    model.select({ sheet: model.active(), ...spot }, area);
  }

  /** A selection made by others: the block's far corner follows. */
  follow(): void {
    const { area, spot } = this;
    const inside = between(spot, this.lead);
    if (
      inside.top !== area.top ||
      inside.bottom !== area.bottom ||
      inside.left !== area.left ||
      inside.right !== area.right
    )
      this.lead = { row: area.bottom, column: area.right };
  }

  move(direction: Direction, extend: boolean, jump: boolean): void {
    const { model, view } = this.context();
    const { rows, columns } = view.layout;
    const from = extend ? this.lead : this.spot;
    const to = (jump ? jumpFrom : stepFrom)(model, rows, columns, from, direction);
    if (extend) this.stretchTo(to);
    else this.go(to);
  }

  page(by: 1 | -1, extend: boolean): void {
    const { view } = this.context();
    const { rows, fixedHeight } = view.layout;
    const from = extend ? this.lead : this.spot;
    const room = Math.max(rows.size, view.scroller.clientHeight - fixedHeight - rows.size);
    const row = rows.indexAt(Math.max(0, rows.offset(from.row) + by * room));
    const to = { row, column: from.column };
    if (extend) this.stretchTo(to);
    else this.go(to);
  }

  /** Tab and Enter: inside a block they go round in it, otherwise on from the cell. */
  step(kind: "tab" | "enter", back: boolean): void {
    const { area, spot } = this;
    const { model, view } = this.context();
    const merge = model.sheet(model.active())!.mergeAt(spot.row, spot.column);
    const single = merge
      ? area.bottom <= merge.bottom && area.right <= merge.right
      : area.top === area.bottom && area.left === area.right;
    if (!single) {
      this.stepInside(kind, back);
      return;
    }
    if (kind === "tab") {
      const began = this.tabbedFrom ?? spot.column;
      this.move(back ? "left" : "right", false, false);
      this.tabbedFrom = began;
      return;
    }
    const began = this.tabbedFrom;
    this.move(back ? "up" : "down", false, false);
    if (began !== undefined && !back) this.go({ row: this.spot.row, column: began });
    view.reveal(this.spot.row, this.spot.column);
  }

  private stepInside(kind: "tab" | "enter", back: boolean): void {
    const { model, view } = this.context();
    const { area } = this;
    const { rows, columns } = view.layout;
    const bottom = Math.min(area.bottom, rows.count - 1);
    const right = Math.min(area.right, columns.count - 1);
    let { row, column } = this.spot;
    const by = back ? -1 : 1;
    const along = (i: number, axis: typeof rows, low: number, high: number): number | undefined => {
      for (let k = i + by; k >= low && k <= high; k += by) if (axis.sizeOf(k) > 0) return k;
      return undefined;
    };
    const wrap = (axis: typeof rows, low: number, high: number) =>
      back
        ? (along(high + 1, axis, low, high) ?? high)
        : axis.sizeOf(low) > 0
          ? low
          : (along(low, axis, low, high) ?? low);
    if (kind === "tab") {
      const next = along(column, columns, area.left, right);
      column = next ?? wrap(columns, area.left, right);
      if (next === undefined) row = along(row, rows, area.top, bottom) ?? wrap(rows, area.top, bottom);
    } else {
      const next = along(row, rows, area.top, bottom);
      row = next ?? wrap(rows, area.top, bottom);
      if (next === undefined) column = along(column, columns, area.left, right) ?? wrap(columns, area.left, right);
    }
    model.select({ sheet: model.active(), row, column }, area);
    view.reveal(row, column);
  }

  /** A block that cuts a merged cell takes all of it. */
  private wholeMerges(area: Area): Area {
    const { model } = this.context();
    const { merges } = model.sheet(model.active())!;
    let grown = area;
    for (let again = merges.length > 0; again; ) {
      again = false;
      for (const one of merges) {
        if (one.top > grown.bottom || one.bottom < grown.top || one.left > grown.right || one.right < grown.left)
          continue;
        const next = {
          top: Math.min(one.top, grown.top),
          bottom: Math.max(one.bottom, grown.bottom),
          left: Math.min(one.left, grown.left),
          right: Math.max(one.right, grown.right),
        };
        if (JSON.stringify(next) !== JSON.stringify(grown)) {
          grown = next;
          again = true;
        }
      }
    }
    return grown;
  }
}
