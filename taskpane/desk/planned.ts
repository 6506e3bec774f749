/**
 * Results of the plan as plain values, kept fresh: an edit of a row, a list or a machine is followed by the results of
 * the rows it touches, in the same step of undo. The rows that were edited come at once; what else hangs on the edit
 * (rows that share a setup, that finish its wall, or a list) follows in slices, those in view first.
 */
import { BASIS } from "../work/planning.ts";
import { LISTS } from "../work/types.ts";
import type { Change, Model } from "./model/model.ts";
import type { Edit } from "./model/types.ts";
import { type RowsNow, rowResults } from "./planned/results.ts";
import { machineAt, type Setups, setupsOf, sharing } from "./planned/setups.ts";
import { below } from "./planned/walls.ts";
import { type Hints, type Site, siteOf } from "./sites.ts";

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

/** Milliseconds of planning at once: with the edit itself, and in a slice of what follows, long beside the 4 ms that a browser rests between two. */
const AT_ONCE = 24;
const SLICE = 20;
/** Rows that are read together. */
const TOGETHER = 8;
export function keepPlanned(model: Model, hints: () => Hints): Planned {
  let sites: Site[] = [];
  let setups = new Map<Site, Setups>();
  let pending: { readonly site: Site; readonly rows: Set<number> }[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;
  let mended = 0;
  let idle: (() => void)[] = [];
  let waitingListener: (waiting: number) => void = () => undefined;
  let troubleListener: (sentence: string) => void = () => undefined;
  let told = "";
  /** Results belong to the step they follow from; what is mended without one is a step of its own. */
  let joins = true;

  const results = rowResults(model, (site, cells) => sharing(setups.get(site), site, cells));

  const waiting = () => pending.reduce((sum, { rows }) => sum + rows.size, 0);

  function findSites(): void {
    const before = sites.map((site) => ({ site, count: setups.get(site)?.count }));
    sites = model.sheets().flatMap((sheet) => siteOf(model, sheet.name, hints()) ?? []);
    setups = new Map(sites.map((site) => [site, setupsOf(model, site)]));
    pending = [];
    for (const site of sites) {
      // Rows that went or came change the share of the setup of those that stay.
      const old = before.find((one) => one.site.sheet === site.sheet)?.count;
      const now = setups.get(site)!;
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
      const now = results.now(near.site);
      for (let from = 0; from < order.length && performance.now() < end; from += TOGETHER) {
        const some = order.slice(from, from + TOGETHER);
        now.remember(some);
        for (const row of some) {
          near.rows.delete(row);
          const made = now.editsFor(row);
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

  /** Takes in the machines that rows are planned on now; the rows whose share of a setup changes by it. */
  function resettled(site: Site, rows: Iterable<number>): number[] {
    const known = setups.get(site)!;
    const sheet = model.sheet(site.sheet);
    const other = new Set<string>();
    for (const row of rows) {
      const was = known.of.get(row);
      const now = machineAt(sheet, site, row);
      if (was === now) continue;
      for (const [machine, step] of [
        [was, -1],
        [now, 1],
      ] as const) {
        if (machine === undefined) continue;
        known.count.set(machine, (known.count.get(machine) ?? 0) + step);
        other.add(machine);
      }
      if (now === undefined) known.of.delete(row);
      else known.of.set(row, now);
    }
    return other.size === 0 ? [] : [...known.of].flatMap(([row, machine]) => (other.has(machine) ? [row] : []));
  }

  function take(change: Change): void {
    if (change.by === "planner" || change.by === "filter" || change.by === "open") return;
    const listed = change.cells.some(({ sheet }) => isList(sheet)) || change.structure;
    // Widths, filters and the like are no news.
    if (listed && results.readLists()) for (const site of sites) later(site, all(site));
    if (change.structure || moves(change.cells)) {
      // Rows that still wait may stand elsewhere now.
      const everything = (listed && results.remembered() === 0) || waiting() > 0;
      findSites();
      for (const site of sites) later(site, everything ? all(site) : results.now(site).hanging(all(site)));
    }
    const edited: { now: RowsNow; site: Site; row: number }[] = [];
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
      if (rows.size === 0) continue;
      later(site, resettled(site, rows));
      const now = results.now(site);
      later(site, now.hanging(below(site, rows)));
      for (const row of rows) edited.push({ now, site, row });
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
    for (const { now, site, row } of edited) {
      if (performance.now() > end) later(site, [row]);
      else {
        pending.find((one) => one.site === site)?.rows.delete(row);
        edits.push(...now.editsFor(row));
      }
    }
    write(edits);
    goOn();
  }

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
