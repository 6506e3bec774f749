/** What the trade types, as it was typed: "3/8", "1-1/2", "10-24" are sizes here, never days of the year. */
import { CellValueType, type ICellData, type Nullable, type Univer } from "@univerjs/core";
import { AFTER_CELL_EDIT, SheetInterceptorService } from "@univerjs/sheets";

/** Fractions of an inch and two numbers with a dash; dates with a year stay dates. */
const SIZE = /^\s*(?:(?:\d+[- ])?\d+\/\d+\s*"?|#?\d+-\d+)\s*$/;

export function keepSizes(univer: Univer): void {
  univer
    .__getInjector()
    .get(SheetInterceptorService)
    .writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
      // Before the number formats have their say.
      priority: 100,
      handler(cell, _where, next) {
        const typed = textOf(cell);
        if (typed === undefined || !SIZE.test(typed)) return next(cell);
        return next({ ...cell, p: undefined, v: typed.trim(), t: CellValueType.FORCE_STRING });
      },
    });
}

function textOf(cell: Nullable<ICellData>): string | undefined {
  if (!cell || cell.f) return undefined;
  const rich = cell.p?.body?.dataStream?.replace(/\r?\n$/, "");
  return rich ?? (typeof cell.v === "string" ? cell.v : undefined);
}
