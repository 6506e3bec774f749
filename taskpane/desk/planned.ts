/**
 * Results of the plan as plain values, kept fresh: an edit of a row, a list or a machine is followed by the results of
 * the rows it touches, in the same step of undo. The rows that were edited come at once; what else hangs on the edit
 * (rows that share a setup, that finish its wall, or a list) follows in slices, those in view first.
 */
import type { Block, CellValue } from "../host/host.ts";
import { firstBlock } from "../host/region.ts";
import { type Lists, LOOK_BACK, type RowPlan, rowPlanner } from "../work/planner.ts";
import { BASIS, changesFor, isEmptyRow, planningBlock } from "../work/planning.ts";
import { LISTS } from "../work/types.ts";
import { gridOf, rowOf } from "./cells.ts";
import type { Change, Model } from "./model/model.ts";
import type { Edit, Value } from "./model/types.ts";
import { type Hints, type Site, siteOf } from "./sites.ts";

/** Browsers differ in the last bits of sines and powers: that much is no other result. */
const LAST_BITS = 1e-12;
const same = (a: Value, b: Value): boolean =>
  typeof a === "number" && typeof b === "number" ? Math.abs(a - b) <= LAST_BITS * Math.abs(b) : a === b;

export interface Planned {
  /** Rows that are still to be planned. */
  waiting(): number;
  /** Resolves when nothing waits any more. */
  settled(): Promise<void>;
  /** Plans every row of every table and mends what is not up to date; how many rows were. */
  bringUpToDate(): Promise<number>;
  /** True for a formula that the planner itself keeps (the mark of changed inputs). */
  owns(sheet: string, row: number, column: number): boolean;
  sites(): readonly Site[];
  /** The person said something new in the pane: tables are looked for again. */
  again(): void;
  onWaiting(listener: (waiting: number) => void): void;
  onTrouble(listener: (sentence: string) => void): void;
  destroy(): void;
}

/** Milliseconds of planning at once: with the edit itself, and in a slice of what follows. */
const AT_ONCE = 24;
const SLICE = 10;
/** Rows that are read together. */
const TOGETHER = 8;
/** Plans that are remembered. */
const REMEMBERED = 20_000;

export function keepPlanned(model: Model, hints: () => Hints): Planned {
  let sites: Site[] = [];
  let lists: Lists | undefined;
  let listCells: CellValue[][][] = [];
  let memory = new Map<string, RowPlan | undefined>();
  /** Per site: machine of each filled row, and how many rows each has. */
  let machines = new Map<Site, { readonly of: Map<number, string>; readonly count: Map<string, number> }>();
  let pending: { readonly site: Site; readonly rows: Set<number> }[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;
  let mended = 0;
  let idle: (() => void)[] = [];
  let waitingListener: (waiting: number) => void = () => undefined;
  let troubleListener: (sentence: string) => void = () => undefined;
  let told = "";
  /** Results belong to the step they follow from; what is mended without one is a step of its own. */
  let joins = true;

  const waiting = () => pending.reduce((sum, { rows }) => sum + rows.size, 0);

  function readLists(): void {
    listCells = LISTS.map((name) => {
      const sheet = model.sheet(name);
      const block = sheet ? firstBlock(sheet.name, gridOf(sheet)) : null;
      return block === null ? [] : [[...block.headings], ...block.rows.map((row) => [...row])];
    });
    lists = undefined;
    memory = new Map();
  }
  const listsNow = (): Lists => {
    lists ??= rowPlanner.lists({ materials: listCells[0]!, tools: listCells[1]!, machines: listCells[2]! });
    return lists;
  };

  const cellsOf = (site: Site, row: number): CellValue[] => {
    const sheet = model.sheet(site.sheet);
    return sheet ? rowOf(sheet, row, site.block.left, site.block.headings.length) : [];
  };
  const machineOf = (site: Site, cells: readonly CellValue[]): string | undefined => {
    if (isEmptyRow(cells, site.matching)) return undefined;
    const column = site.matching.inputs.find((m) => m.column.key === "machine");
    return String((column && cells[column.at]) ?? "")
      .trim()
      .toLowerCase();
  };

  function countMachines(site: Site): { of: Map<number, string>; count: Map<string, number> } {
    const of = new Map<number, string>();
    const count = new Map<string, number>();
    for (let row = site.block.top + 1; row <= site.end; row++) {
      const machine = machineOf(site, cellsOf(site, row));
      if (machine === undefined) continue;
      of.set(row, machine);
      count.set(machine, (count.get(machine) ?? 0) + 1);
    }
    return { of, count };
  }

  function findSites(): void {
    const before = sites.map((site) => ({ site, count: machines.get(site)?.count }));
    sites = model.sheets().flatMap((sheet) => siteOf(model, sheet.name, hints()) ?? []);
    machines = new Map(sites.map((site) => [site, countMachines(site)]));
    pending = [];
    for (const site of sites) {
      // Rows that went or came change the share of the setup of those that stay.
      const old = before.find((one) => one.site.sheet === site.sheet)?.count;
      const now = machines.get(site)!;
      if (old === undefined) continue;
      const other = new Set([...old.keys(), ...now.count.keys()].filter((m) => old.get(m) !== now.count.get(m)));
      if (other.size > 0)
        later(
          site,
          [...now.of].flatMap(([row, machine]) => (other.has(machine) ? [row] : [])),
        );
    }
  }

  function later(site: Site, rows: Iterable<number>): void {
    const found = pending.find((one) => one.site === site);
    const set = found?.rows ?? new Set<number>();
    if (!found) pending.push({ site, rows: set });
    for (const row of rows) set.add(row);
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

  /** Cells that say which rows cut one wall, one after the other; as they stand, so that nothing has to be read. */
  function wallCells(site: Site, row: number): Record<"operation" | "start" | "finish" | "feature", string> {
    const cells = model.sheet(site.sheet)?.cells.get(row);
    const text = (key: string) => {
      const at = site.matching.inputs.find((m) => m.column.key === key)?.at;
      return String((at === undefined ? "" : cells?.get(site.block.left + at)?.value) ?? "")
        .trim()
        .toLowerCase();
    };
    return {
      operation: text("operation"),
      start: text("startDiameter"),
      finish: text("finishDiameter"),
      feature: text("feature"),
    };
  }
  /** Rows above one that may rough its wall, and theirs, from the top down; which of them does, the planner finds. */
  function roughers(site: Site, row: number): number[] {
    const found = new Set<number>();
    const look = (from: number) => {
      const own = wallCells(site, from);
      if (own.operation === "" || (own.start === "" && own.feature === "")) return;
      for (let at = from - 1; at > site.block.top && at >= from - LOOK_BACK; at--) {
        if (found.has(at)) continue;
        const { operation, finish, feature } = wallCells(site, at);
        if (operation !== own.operation) continue;
        if ((own.start === "" || own.start !== finish) && (own.feature === "" || own.feature !== feature)) continue;
        found.add(at);
        look(at);
      }
    };
    look(row);
    return [...found].sort((a, b) => a - b);
  }
  /** Rows that were planned with one above them, as their cells stood then. */
  const hung = new Set<string>();
  const lineOf = (site: Site, row: number): string =>
    `${site.sheet} ${JSON.stringify(inputsOf(site, cellsOf(site, row)))}`;
  /** Of these rows, the ones that hang on another or did. */
  const hanging = (site: Site, rows: readonly number[]) =>
    rows.filter((row) => roughers(site, row).length > 0 || hung.has(lineOf(site, row)));
  const below = (site: Site, row: number) =>
    hanging(
      site,
      Array.from({ length: Math.max(0, Math.min(site.end - row, LOOK_BACK)) }, (_, i) => row + 1 + i),
    );

  const sharingOf = (site: Site, cells: readonly CellValue[]): number => {
    const machine = machineOf(site, cells);
    return machine ? (machines.get(site)?.count.get(machine) ?? 1) : 1;
  };
  const keyOf = (site: Site, row: number): string => {
    const cells = cellsOf(site, row);
    const number = site.matching.inputs.findIndex((m) => m.column.key === "row");
    const line = inputsOf(site, cells);
    if (number >= 0) line[number] = null;
    const above = roughers(site, row).map((at) => lineOf(site, at));
    return [site.sheet, sharingOf(site, cells), JSON.stringify(line), ...above].join(" ");
  };

  /** Plans of rows, those that are not remembered read together: most of the reading is the headings. */
  function remember(site: Site, rows: readonly number[]): void {
    const fresh = rows.filter((row) => !isEmptyRow(cellsOf(site, row), site.matching) && !memory.has(keyOf(site, row)));
    if (fresh.length === 0) return;
    if (memory.size > REMEMBERED) memory = new Map();
    const above = fresh.map((row) => roughers(site, row));
    const read = [...new Set([...fresh, ...above.flat()])];
    const reads = rowPlanner.read(
      headingsOf(site),
      read.map((row) => inputsOf(site, cellsOf(site, row))),
    );
    const readAt = (row: number) => reads[read.indexOf(row)]!;
    fresh.forEach((row, i) => {
      const key = keyOf(site, row);
      if (above[i]!.length > 0) hung.add(lineOf(site, row));
      if (memory.has(key)) return;
      const sharing = sharingOf(site, cellsOf(site, row));
      memory.set(key, rowPlanner.plan(readAt(row), listsNow(), sharing, above[i]!.map(readAt)));
    });
  }

  /** Edits that bring the results of a row up to date; none when they are. */
  function editsFor(site: Site, row: number): Edit[] {
    const sheet = model.sheet(site.sheet);
    if (sheet === undefined) return [];
    const cells = cellsOf(site, row);
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
    if (isEmptyRow(cells, site.matching)) {
      // Results of a row that was planned go with it; what else stands there is not ours.
      if ((own?.get(left + site.matching.basisAt!)?.value ?? null) === null) return [];
      for (const column of site.writes) put(column, null);
      return edits;
    }
    const here: Block = { ...site.block, top: row - 1, rows: [cells] };
    remember(site, [row]);
    for (const { column, value, format } of changesFor(here, site.matching, [memory.get(keyOf(site, row))])) {
      if (typeof value === "object" && value !== null) put(left + column, "", value.formula.replace(/^=/, ""));
      else put(left + column, value, undefined, format);
    }
    return edits;
  }

  function write(edits: readonly Edit[]): void {
    if (edits.length === 0) return;
    try {
      model.apply(edits, { by: "planner", label: "plan", joins });
      joins = true;
    } catch (problem) {
      pending = [];
      const sentence = "Results could not be written: the table is protected, or part of it cannot be changed.";
      if (told !== sentence) troubleListener(sentence);
      told = sentence;
      console.warn(problem);
    }
  }

  /** Plans rows of a site until the time is up; the rest waits. */
  function work(budget: number): void {
    const end = performance.now() + budget;
    const at = model.selection();
    const edits: Edit[] = [];
    while (pending.length > 0 && performance.now() < end) {
      const near = pending.find(({ site }) => site.sheet === at.sheet) ?? pending[0]!;
      const order = [...near.rows].sort((a, b) => Math.abs(a - at.row) - Math.abs(b - at.row));
      for (let from = 0; from < order.length && performance.now() < end; from += TOGETHER) {
        const some = order.slice(from, from + TOGETHER);
        remember(near.site, some);
        for (const row of some) {
          near.rows.delete(row);
          const made = editsFor(near.site, row);
          if (made.length > 0) mended += 1;
          edits.push(...made);
        }
      }
      if (near.rows.size === 0) pending = pending.filter((one) => one !== near);
    }
    write(edits);
    goOn();
  }

  function goOn(): void {
    const left = waiting();
    waitingListener(left);
    if (left === 0) {
      const done = idle;
      idle = [];
      for (const resolve of done) resolve();
    } else timer ??= setTimeout(slice, 0);
  }
  function slice(): void {
    timer = undefined;
    work(SLICE);
  }

  const isList = (sheet: string) => LISTS.some((name) => name.toLowerCase() === sheet.trim().toLowerCase());

  const all = (site: Site) => {
    const rows: number[] = [];
    for (let row = site.block.top + 1; row <= site.end; row++) rows.push(row);
    return rows;
  };

  /** True when an edit may have moved the bounds of a table, or made one. */
  function moves(cells: Change["cells"]): boolean {
    return cells.some(({ sheet, row, column }) => {
      if (isList(sheet)) return false;
      const site = sites.find((one) => one.sheet === sheet);
      if (site === undefined) return model.typed(sheet, row, column)?.value === BASIS;
      const { top, left, headings } = site.block;
      if (column < left - 1) return false;
      return row === top || (row > site.end && row <= site.end + 2 && column < left + headings.length);
    });
  }

  function take(change: Change): void {
    if (change.by === "planner" || change.by === "filter" || change.by === "open") return;
    const listed = change.cells.some(({ sheet }) => isList(sheet)) || change.structure;
    if (listed) {
      const before = JSON.stringify(listCells);
      const old = { lists, memory };
      readLists();
      // Widths, filters and the like are no news.
      if (JSON.stringify(listCells) === before) ({ lists, memory } = old);
      else for (const site of sites) later(site, all(site));
    }
    if (change.structure || moves(change.cells)) {
      const everything = listed && memory.size === 0;
      findSites();
      for (const site of sites) later(site, everything ? all(site) : hanging(site, all(site)));
    }
    const edited: { site: Site; row: number }[] = [];
    for (const site of sites) {
      const rows = new Set<number>();
      for (const { sheet, row, column } of change.cells)
        if (
          sheet === site.sheet &&
          row > site.block.top &&
          row <= site.end &&
          !(change.by === "calculator" && site.writes.has(column))
        )
          rows.add(row);
      const known = machines.get(site)!;
      for (const row of rows) {
        const was = known.of.get(row);
        const now = machineOf(site, cellsOf(site, row));
        if (was !== now) {
          for (const [machine, step] of [
            [was, -1],
            [now, 1],
          ] as const) {
            if (machine === undefined) continue;
            known.count.set(machine, (known.count.get(machine) ?? 0) + step);
            later(
              site,
              [...known.of].flatMap(([other, name]) => (name === machine ? [other] : [])),
            );
          }
          if (now === undefined) known.of.delete(row);
          else known.of.set(row, now);
        }
        edited.push({ site, row });
        later(site, below(site, row));
      }
    }
    if (change.by === "undo" || change.by === "redo") {
      // The step brought its results along; what was still under way when it was made is mended.
      for (const site of sites) later(site, all(site));
      goOn();
      return;
    }
    joins = true;
    const end = performance.now() + AT_ONCE;
    const edits: Edit[] = [];
    for (const { site, row } of edited) {
      if (performance.now() > end) later(site, [row]);
      else {
        pending.find((one) => one.site === site)?.rows.delete(row);
        edits.push(...editsFor(site, row));
      }
    }
    write(edits);
    goOn();
  }

  readLists();
  findSites();
  const stop = model.onChange(take);
  const settled = () => (waiting() === 0 ? Promise.resolve() : new Promise<void>((resolve) => idle.push(resolve)));

  return {
    waiting,
    settled,
    async bringUpToDate() {
      mended = 0;
      joins = false;
      for (const site of sites) later(site, all(site));
      goOn();
      await settled();
      joins = true;
      return mended;
    },
    owns(sheet, row, column) {
      const site = sites.find((one) => one.sheet === sheet);
      return (
        site !== undefined &&
        site.matching.changedAt !== undefined &&
        column === site.block.left + site.matching.changedAt &&
        row > site.block.top &&
        row <= site.end
      );
    },
    sites: () => sites,
    again() {
      findSites();
      goOn();
    },
    onWaiting: (listener) => {
      waitingListener = listener;
    },
    onTrouble: (listener) => {
      troubleListener = listener;
    },
    destroy() {
      stop();
      clearTimeout(timer);
    },
  };
}
