/** Results of single rows: planned, remembered by what they follow from, and as edits of the cells that differ. */
import type { Block, CellValue } from "../../host/host.ts";
import { firstBlock } from "../../host/region.ts";
import { type Lists, type RowPlan, rowPlanner } from "../../work/planner.ts";
import { changesFor, isEmptyRow, planningBlock } from "../../work/planning.ts";
import { LISTS } from "../../work/types.ts";
import { gridOf } from "../cells.ts";
import type { Model } from "../model/model.ts";
import type { Edit, Value } from "../model/types.ts";
import type { Site } from "../sites.ts";
import { cellsOf } from "./setups.ts";
import { roughersIn } from "./walls.ts";

/** Browsers differ in the last bits of sines and powers: that much is no other result. */
const LAST_BITS = 1e-12;
const same = (a: Value, b: Value): boolean =>
  typeof a === "number" && typeof b === "number" ? Math.abs(a - b) <= LAST_BITS * Math.abs(b) : a === b;

/** Plans that are remembered. */
const REMEMBERED = 20_000;

/** Rows of a table as their cells stand at one moment: each is read once. Good until something is written. */
export interface RowsNow {
  /** Plans rows, those that are not remembered read together: most of the reading is the headings. */
  remember(rows: readonly number[]): void;
  /** Of these rows, the ones that hang on a row above them, or did when they were planned. */
  hanging(rows: Iterable<number>): number[];
  /** Edits that bring the results of a row up to date; none when they are. */
  editsFor(row: number): Edit[];
}

export interface RowResults {
  /** Reads the lists again; true when they hold something else now. */
  readLists(): boolean;
  remembered(): number;
  now(site: Site): RowsNow;
}

/** Remembers the answer for each row. */
function once<T>(make: (row: number) => T): (row: number) => T {
  const known = new Map<number, T>();
  return (row) => {
    let found = known.get(row);
    if (found === undefined) {
      found = make(row);
      known.set(row, found);
    }
    return found;
  };
}

/** @param sharingOf - how many rows share the setup of a row */
export function rowResults(model: Model, sharingOf: (site: Site, cells: readonly CellValue[]) => number): RowResults {
  let memory = new Map<string, RowPlan | undefined>();
  let lists: Lists | undefined;
  /** Cells of the lists as they were read last; read first when a row is planned. */
  let listCells: CellValue[][][] | undefined;

  function cellsOfLists(): CellValue[][][] {
    return LISTS.map((name) => {
      const sheet = model.sheet(name);
      const block = sheet ? firstBlock(sheet.name, gridOf(sheet)) : null;
      return block === null ? [] : [[...block.headings], ...block.rows.map((row) => [...row])];
    });
  }
  const listsNow = (): Lists => {
    listCells ??= cellsOfLists();
    lists ??= rowPlanner.lists({ materials: listCells[0]!, tools: listCells[1]!, machines: listCells[2]! });
    return lists;
  };
  function readLists(): boolean {
    const before = listCells && JSON.stringify(listCells);
    listCells = cellsOfLists();
    if (JSON.stringify(listCells) === before) return false;
    lists = undefined;
    memory = new Map();
    return true;
  }

  /** The inputs of a row under the headings that the planner reads them by. */
  const headings = new WeakMap<Site, CellValue[]>();
  const headingsOf = (site: Site): CellValue[] => {
    const known = headings.get(site);
    if (known) return known;
    const [made] = planningBlock({ ...site.block, rows: [] }, site.matching, site.units);
    headings.set(site, made!);
    return made!;
  };
  const inputsOf = (site: Site, cells: readonly CellValue[]): CellValue[] => {
    const line = site.matching.inputs.map((m) => cells[m.at] ?? null);
    return line.length < headingsOf(site).length ? [...line, site.units ?? null] : line;
  };

  /** Rows that were planned with one above them, as their cells stood then. */
  const hung = new Set<string>();

  function now(site: Site): RowsNow {
    const cells = once((row) => cellsOf(model, site, row));
    const line = once((row) => `${site.sheet} ${JSON.stringify(inputsOf(site, cells(row)))}`);
    const above = once(roughersIn(model, site));
    const number = site.matching.inputs.findIndex((m) => m.column.key === "row");
    /** What the plan of a row follows from. */
    const key = once((row) => {
      const own = inputsOf(site, cells(row));
      if (number >= 0) own[number] = null;
      return [site.sheet, sharingOf(site, cells(row)), JSON.stringify(own), ...above(row).map(line)].join(" ");
    });

    function remember(rows: readonly number[]): void {
      const fresh = rows.filter((row) => !isEmptyRow(cells(row), site.matching) && !memory.has(key(row)));
      if (fresh.length === 0) return;
      if (memory.size > REMEMBERED) {
        memory = new Map();
        hung.clear();
      }
      const read = [...new Set([...fresh, ...fresh.flatMap(above)])];
      const reads = rowPlanner.read(
        headingsOf(site),
        read.map((row) => inputsOf(site, cells(row))),
      );
      const readAt = (row: number) => reads[read.indexOf(row)]!;
      for (const row of fresh) {
        if (above(row).length > 0) hung.add(line(row));
        if (memory.has(key(row))) continue;
        const sharing = sharingOf(site, cells(row));
        memory.set(key(row), rowPlanner.plan(readAt(row), listsNow(), sharing, above(row).map(readAt)));
      }
    }

    function editsFor(row: number): Edit[] {
      const sheet = model.sheet(site.sheet);
      if (sheet === undefined) return [];
      const { left } = site.block;
      const own = sheet.cells.get(row);
      const edits: Edit[] = [];
      const put = (column: number, value: Value, formula?: string, numberFormat?: string) => {
        const there = own?.get(column);
        const format =
          numberFormat !== undefined && model.style(there)?.numberFormat !== numberFormat ? numberFormat : undefined;
        if (same(there?.value ?? null, value) && there?.formula === formula && format === undefined) return;
        edits.push({
          kind: "cell",
          sheet: site.sheet,
          row,
          column,
          value,
          ...(formula === undefined ? {} : { formula }),
          ...(format === undefined ? {} : { numberFormat: format }),
        });
      };
      if (isEmptyRow(cells(row), site.matching)) {
        // Results of a row that was planned go with it; what else stands there is not ours.
        if ((own?.get(left + site.matching.basisAt!)?.value ?? null) === null) return [];
        for (const column of site.writes) put(column, null);
        return edits;
      }
      const here: Block = { ...site.block, top: row - 1, rows: [cells(row)] };
      remember([row]);
      for (const { column, value, format } of changesFor(here, site.matching, [memory.get(key(row))])) {
        if (typeof value === "object" && value !== null) put(left + column, "", value.formula.replace(/^=/, ""));
        else put(left + column, value, undefined, format);
      }
      return edits;
    }

    return {
      remember,
      editsFor,
      hanging: (rows) => [...rows].filter((row) => above(row).length > 0 || (hung.size > 0 && hung.has(line(row)))),
    };
  }

  return { readLists, remembered: () => memory.size, now };
}
