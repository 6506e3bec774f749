/** How cells of a planning table look in the grid: verdicts in their colours, what an operation does not use drawn back. */
import { matchHeadings, normalHeading, ROW_COLUMNS } from "../../src/table/columns.ts";
import type { CellValue } from "../host/host.ts";
import { findTable } from "../host/region.ts";
import { usesInput } from "../work/planner.ts";
import { planningScore } from "../work/planning.ts";
import { gridOf, plain } from "./cells.ts";
import type { Change, Model } from "./model/model.ts";

export interface Looks {
  classOf(sheet: string, row: number, column: number): string | undefined;
  isUsed(sheet: string, row: number, column: number): boolean;
  hiddenColumns(sheet: string): ReadonlySet<number>;
}

const VERDICTS = new Set(["ok", "check", "stop"]);
/** Inputs that are always in view, filled or not. */
const ALWAYS = new Set([
  "row",
  "feature",
  "operation",
  "units",
  "quantity",
  "material",
  "machine",
  "tool",
  "thread",
  "finishDiameter",
  "depth",
]);

interface Table {
  readonly top: number;
  end: number;
  readonly operationAt: number | undefined;
  /** Column of the sheet → key of the input. */
  readonly inputs: ReadonlyMap<number, string>;
  /** Columns that no row uses, and those of our own book-keeping. */
  readonly hidden: Set<number>;
  readonly own: ReadonlySet<number>;
}

export function createLooks(first: Model): Looks & { setModel(model: Model): void } {
  let model = first;
  let tables = new Map<string, Table | undefined>();
  /** Per sheet: column → row of a heading "Verdict". */
  let verdicts = new Map<string, ReadonlyMap<number, number>>();
  let forget: () => void = () => undefined;

  function attach(next: Model): void {
    forget();
    model = next;
    tables = new Map();
    verdicts = new Map();
    forget = model.onChange((change: Change) => {
      if (change.structure) {
        tables = new Map();
        verdicts = new Map();
        return;
      }
      for (const { sheet, row, column } of change.cells) {
        const table = tables.get(sheet);
        if (table) {
          if (row === table.top) tables.delete(sheet);
          else if (row > table.end && row <= table.end + 2) table.end = row;
          // A column that is no longer empty comes back; one that becomes empty stays until the sheet is read anew.
          if (row > table.top && row <= table.end && table.hidden.has(column) && !table.own.has(column))
            if ((model.typed(sheet, row, column)?.value ?? null) !== null) table.hidden.delete(column);
        }
        const heads = verdicts.get(sheet);
        if (heads?.get(column) === row || isVerdict(model.typed(sheet, row, column)?.value)) verdicts.delete(sheet);
      }
    });
  }

  const isVerdict = (value: unknown) =>
    typeof value === "string" && /verdict/i.test(value) && normalHeading(value) === "verdict";

  function verdictsOf(name: string): ReadonlyMap<number, number> {
    const known = verdicts.get(name);
    if (known) return known;
    const made = new Map<number, number>();
    const sheet = model.sheet(name);
    if (sheet) {
      const look = (row: number, column: number, value: unknown) => {
        if (isVerdict(value) && !((made.get(column) ?? Number.POSITIVE_INFINITY) < row)) made.set(column, row);
      };
      for (const [row, line] of sheet.cells) for (const [column, cell] of line) look(row, column, cell.value);
      for (const [row, line] of sheet.spills) for (const [column, cell] of line) look(row, column, cell.value);
    }
    verdicts.set(name, made);
    return made;
  }

  function tableOf(name: string): Table | undefined {
    if (tables.has(name)) return tables.get(name);
    const sheet = model.sheet(name);
    const grid = sheet ? gridOf(sheet) : [];
    const found = findTable(name, grid, null, planningScore);
    let table: Table | undefined;
    if (found) {
      const matched = matchHeadings(found.headings, ROW_COLUMNS);
      const inputs = new Map(matched.map((m) => [found.left + m.at, m.column.key]));
      // A formula fills its cell, also before anybody has worked it out.
      const formulas = new Set<number>();
      for (let row = found.top + 1; row <= found.top + found.rows.length; row++)
        for (const [c, cell] of sheet!.cells.get(row) ?? [])
          if (cell.formula !== undefined) formulas.add(c - found.left);
      const filled = (c: number) => formulas.has(c) || found.rows.some((row) => row[c] !== null && row[c] !== "");
      const hidden = new Set<number>();
      const own = new Set<number>();
      // An empty table shows all it can take; in a filled one what no row uses is out of the way.
      const anyRow = matched.some((m) => m.column.key === "operation" && filled(m.at));
      if (anyRow)
        found.headings.forEach((heading: CellValue, c) => {
          const key = inputs.get(found.left + c);
          if (["basis", "changed"].includes(normalHeading(heading))) own.add(found.left + c);
          if (heading !== null && (own.has(found.left + c) || (!(key !== undefined && ALWAYS.has(key)) && !filled(c))))
            hidden.add(found.left + c);
        });
      table = {
        top: found.top,
        end: found.top + found.rows.length,
        operationAt: [...inputs].find(([, key]) => key === "operation")?.[0],
        inputs,
        hidden,
        own,
      };
    }
    tables.set(name, table);
    return table;
  }

  attach(first);
  return {
    setModel: attach,
    classOf(sheet, row, column) {
      const head = verdictsOf(sheet).get(column);
      if (head === undefined || row <= head) return undefined;
      const value = plain(model.cell(sheet, row, column)?.value);
      return typeof value === "string" && VERDICTS.has(value) ? value : undefined;
    },
    isUsed(sheet, row, column) {
      const table = tableOf(sheet);
      const key = table?.inputs.get(column);
      if (table === undefined || key === undefined || row <= table.top || row > table.end) return true;
      if (table.operationAt === undefined) return true;
      const operation = model.cell(sheet, row, table.operationAt)?.value;
      return typeof operation !== "string" || usesInput(operation, key);
    },
    hiddenColumns: (sheet) => tableOf(sheet)?.hidden ?? new Set(),
  };
}
