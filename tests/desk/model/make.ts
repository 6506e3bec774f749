/** Small workbooks for the tests of the model. */
import { createModel, type Model, type ModelOptions } from "../../../taskpane/desk/model/model.ts";
import type { Cell, Sheet, Style, TableRange, Value } from "../../../taskpane/desk/model/types.ts";

export type Written = Value | { readonly formula: string; readonly value?: Value } | Cell;

export function sheetOf(name: string, rows: readonly (readonly Written[])[], more: Partial<Sheet> = {}): Sheet {
  const cells = new Map<number, Map<number, Cell>>();
  rows.forEach((row, r) => {
    const line = new Map<number, Cell>();
    row.forEach((one, c) => {
      if (one === null) return;
      if (typeof one === "object" && !("error" in one)) line.set(c, { value: null, ...one } as Cell);
      else line.set(c, { value: one });
    });
    if (line.size > 0) cells.set(r, line);
  });
  return {
    name,
    state: "visible",
    cells,
    widths: new Map(),
    hiddenColumns: new Set(),
    hiddenRows: new Set(),
    frozen: { rows: 0, columns: 0 },
    merges: [],
    choices: [],
    tables: [],
    protected: false,
    kept: [],
    ...more,
  };
}

export const table = (name: string, top: number, left: number, bottom: number, right: number): TableRange => ({
  name,
  area: { top, left, bottom, right },
  columns: Array.from({ length: right - left + 1 }, (_, i) => `c${i}`),
  totals: false,
});

export function modelOf(
  sheets: readonly Sheet[],
  options: ModelOptions & { styles?: Style[]; names?: { name: string; formula: string; sheet?: string }[] } = {},
): Model {
  return createModel(
    {
      sheets,
      active: 0,
      styles: options.styles ?? [{ numberFormat: "General" }],
      names: options.names ?? [],
      date1904: false,
      kept: [],
    },
    { locale: "en-US", ...options },
  );
}

/** Everything of the workbook that can be compared. */
export function snapshot(model: Model): unknown {
  return model.sheets().map((sheet) => ({
    name: sheet.name,
    cells: [...sheet.cells]
      .map(([r, row]) => [
        r,
        [...row]
          .filter(([, cell]) => cell.value !== null || cell.formula !== undefined)
          .map(([c, { value, formula, style }]) => [c, value, formula, model.style({ value, style })?.numberFormat])
          .sort((a, b) => Number(a[0]) - Number(b[0])),
      ])
      .filter(([, row]) => (row as unknown[]).length > 0)
      .sort((a, b) => Number(a[0]) - Number(b[0])),
    tables: sheet.tables,
    merges: sheet.merges,
    choices: sheet.choices,
    widths: [...sheet.widths],
    hidden: [...sheet.hiddenColumns],
    names: model.names(),
  }));
}
