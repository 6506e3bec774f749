/** Looks that cells of a sheet take which are not in the file yet. Pure. */
import { inArea } from "../model/address.ts";
import type { SheetPlan } from "./replay.ts";
import { movedRow } from "./rows.ts";
import { cellsOf, type Outline, type RowSpan } from "./sheet-outline.ts";

export class SheetLooks {
  readonly #outline: Outline;
  readonly #plan: SheetPlan;
  readonly #rows: ReadonlyMap<number, RowSpan>;
  readonly #looks = new Map<number, Map<number, string>>();

  /** @param rows - the file's rows by their number */
  constructor(outline: Outline, plan: SheetPlan, rows: ReadonlyMap<number, RowSpan>) {
    this.#outline = outline;
    this.#plan = plan;
    this.#rows = rows;
  }

  /** Looks of the cells of a row of the file. */
  ofRow(row: number): Map<number, string> {
    let found = this.#looks.get(row);
    if (!found) {
      found = new Map();
      const span = this.#rows.get(row);
      if (span)
        for (const { column, style } of cellsOf(this.#outline, span))
          if (style && style !== "0") found.set(column, style);
      this.#looks.set(row, found);
    }
    return found;
  }

  /** Look of a cell that is not in the file yet: of its row, of the table row above that it continues, of its column. */
  base(row: number, column: number, rowStyle: string | undefined): number {
    if (rowStyle !== undefined) return Number(rowStyle);
    const table = this.#plan.tables.find((t) => t.area && inArea(t.area, row, column) && t.file);
    if (table) {
      const file = table.file!.area;
      const last = file.bottom - (table.file!.totals ? 1 : 0);
      const at = movedRow(last, this.#plan.moves);
      if (at !== undefined && row > at && last > file.top) {
        const style = this.ofRow(last).get(column);
        if (style !== undefined) return Number(style);
      }
    }
    return this.#columnStyle(column);
  }

  #columnStyles?: { from: number; to: number; style: number }[];
  #columnStyle(column: number): number {
    if (!this.#columnStyles) {
      const section = this.#outline.sections.find((s) => s.name === "cols");
      const text = section ? this.#outline.text.slice(section.openEnd, section.closeStart) : "";
      this.#columnStyles = [...text.matchAll(/<[^>]*>/g)].flatMap(([tag]) => {
        const number = (name: string) =>
          Number(new RegExp(`\\s${name}\\s*=\\s*["'](\\d+)`).exec(tag)?.[1] ?? Number.NaN);
        const [from, to, style] = [number("min") - 1, number("max") - 1, number("style")];
        return style > 0 ? [{ from, to, style }] : [];
      });
    }
    return this.#columnStyles.find(({ from, to }) => column >= from && column <= to)?.style ?? 0;
  }
}
