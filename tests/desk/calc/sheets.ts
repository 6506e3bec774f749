/** A small workbook for the calculator's tests, from rows of cells; text that begins with "=" is a formula. */
import { type Answer, type Calculator, createCalculator, type Source } from "../../../taskpane/desk/calc/calculator.ts";
import type { Area, Cell, Sheet, TableRange, Value } from "../../../taskpane/desk/model/types.ts";

export type Rows = readonly (readonly (string | number | boolean | null | Cell)[])[];

export interface Small {
  readonly calculator: Calculator;
  /** Types into a cell ("B3" of the first sheet, or "Other!B3") and takes in what comes of it. */
  type(place: string, content: string | number | boolean | null): Answer[];
  /** What is shown in a cell, with spilled values. */
  at(place: string): Value;
  /** True when the cell says that it was not worked out here. */
  stale(place: string): boolean;
  /** Takes in everything anew, as after rows were put in. */
  rebuild(): Answer[];
  put(place: string, cell: Cell): void;
  readonly names: { name: string; formula: string; sheet?: string }[];
}

export interface SmallSheet {
  readonly rows: Rows;
  readonly tables?: readonly TableRange[];
  readonly hiddenRows?: readonly number[];
}

function spot(place: string): { sheet: string | undefined; row: number; column: number } {
  const [, sheet, letters, row] = /^(?:(.+)!)?([A-Z]+)(\d+)$/.exec(place)!;
  const column = [...letters!].reduce((n, ch) => n * 26 + ch.charCodeAt(0) - 64, 0) - 1;
  return { sheet, row: Number(row) - 1, column };
}

const toCell = (content: string | number | boolean | null | Cell): Cell | undefined => {
  if (content === null) return undefined;
  if (typeof content === "object") return content;
  if (typeof content === "string" && content.startsWith("=")) return { value: null, formula: content.slice(1) };
  return { value: content };
};

/**
 * @param typed - formulas count as typed here (they fill as many cells as they have answers); false as a file of an
 *   older program has them
 */
export function small(
  sheets: Readonly<Record<string, SmallSheet | Rows>>,
  { typed = true, now, date1904 = false }: { typed?: boolean; now?: () => number; date1904?: boolean } = {},
): Small {
  const cells = new Map<string, Map<number, Map<number, Cell>>>();
  const made = Object.entries(sheets).map(([name, given]): Sheet => {
    const sheet: SmallSheet = Array.isArray(given) ? { rows: given as Rows } : (given as SmallSheet);
    const lines = new Map<number, Map<number, Cell>>();
    sheet.rows.forEach((row, r) => {
      const line = new Map<number, Cell>();
      row.forEach((content, c) => {
        const cell = toCell(content);
        if (cell) line.set(c, cell);
      });
      if (line.size > 0) lines.set(r, line);
    });
    cells.set(name, lines);
    return {
      name,
      state: "visible",
      cells: lines,
      widths: new Map(),
      hiddenColumns: new Set(),
      hiddenRows: new Set(sheet.hiddenRows ?? []),
      frozen: { rows: 0, columns: 0 },
      merges: [],
      choices: [],
      tables: sheet.tables ?? [],
      protected: false,
      kept: [],
    };
  });
  const names: Small["names"] = [];
  const source: Source = { sheets: () => made, names, date1904 };
  const first = made[0]!.name;
  const shown = new Map<string, Value>();
  const old = new Set<string>();
  const key = (sheet: string, row: number, column: number) => `${sheet}!${row},${column}`;

  const set = (sheet: string, row: number, column: number, cell: Cell | undefined) => {
    const lines = cells.get(sheet)!;
    const line = lines.get(row) ?? new Map<number, Cell>();
    if (cell) line.set(column, cell);
    else line.delete(column);
    lines.set(row, line);
  };
  const areas = new Map<string, Area>();
  const take = (answers: Answer[]): Answer[] => {
    for (const { sheet, row, column, value, spill, stale } of answers) {
      const own = key(sheet, row, column);
      const was = areas.get(own);
      if (was) {
        for (let r = was.top; r <= was.bottom; r++)
          for (let c = was.left; c <= was.right; c++) shown.delete(key(sheet, r, c));
        areas.delete(own);
      }
      shown.set(own, value);
      if (stale) old.add(own);
      else old.delete(own);
      if (!spill) continue;
      areas.set(own, {
        top: row,
        left: column,
        bottom: row + spill.length - 1,
        right: column + spill[0]!.length - 1,
      });
      spill.forEach((line, r) => {
        line.forEach((cell, c) => {
          shown.set(key(sheet, row + r, column + c), cell);
        });
      });
    }
    return answers;
  };
  const formulas = () =>
    made.flatMap((sheet) =>
      [...sheet.cells].flatMap(([row, line]) =>
        [...line].flatMap(([column, cell]) => (cell.formula === undefined ? [] : [{ sheet: sheet.name, row, column }])),
      ),
    );
  const opened = typed
    ? []
    : made.map((sheet) => ({ ...sheet, cells: structuredClone(sheet.cells) as Sheet["cells"] }));
  const calculator = createCalculator(source, opened, now);
  take(calculator.changed(formulas().filter((f) => cells.get(f.sheet)!.get(f.row)!.get(f.column)!.value === null)));

  return {
    calculator,
    names,
    type(place, content) {
      const { sheet = first, row, column } = spot(place);
      set(sheet, row, column, toCell(content));
      shown.delete(key(sheet, row, column));
      old.delete(key(sheet, row, column));
      return take(calculator.changed([{ sheet, row, column }]));
    },
    put(place, cell) {
      const { sheet = first, row, column } = spot(place);
      set(sheet, row, column, cell);
    },
    at(place) {
      const { sheet = first, row, column } = spot(place);
      const found = shown.get(key(sheet, row, column));
      return found !== undefined ? found : (cells.get(sheet)?.get(row)?.get(column)?.value ?? null);
    },
    stale(place) {
      const { sheet = first, row, column } = spot(place);
      return old.has(key(sheet, row, column));
    },
    rebuild: () => take(calculator.rebuilt(formulas())),
  };
}
