/**
 * The calculator: works out the formulas that hang on a change, and only those. Formulas it does not know keep the value
 * that the file came with, and say so. It is told of changes and answers with values; it writes nowhere.
 */
import type { Sheet, Value } from "../model/types.ts";
import { type Compiled, compileFormula } from "./compile.ts";
import { Dependents, type Group } from "./dependents.ts";
import { toSerial } from "./functions/dates.ts";
import { type Formula, Holding, idOf, nameOf } from "./holding.ts";
import { relativeKey } from "./key.ts";
import { Circle, describeCircle, Pending } from "./order.ts";
import { worldOf } from "./seen.ts";
import type { Answer, Calculator, Place, Source } from "./shapes.ts";
import { createSpills, LARGEST, type Spotted } from "./spills.ts";
import { type Block, error, Failure, isError, NAME, type Operand, Unknown } from "./values.ts";
import type { Spot } from "./world.ts";

export type { Answer, Calculator, Place, Source } from "./shapes.ts";

/** Formulas that are worked out inside each other before the far end is taken first. */
const DEEP = 150;
const clock = (): number => {
  const now = new Date();
  return toSerial(now.getTime() - now.getTimezoneOffset() * 60_000);
};

/**
 * @param opened - the workbook as the file had it: its plain formulas take one cell of a range, as their program did;
 *   what is typed here fills as many cells as it has answers
 */
export function createCalculator(source: Source, opened: readonly Sheet[], now: () => number = clock): Calculator {
  const plain = new Set<string>();
  for (const sheet of opened)
    for (const [row, line] of sheet.cells)
      for (const [column, cell] of line)
        if (cell.formula !== undefined && cell.array === undefined) plain.add(relativeKey(cell.formula, row, column));

  const held = new Holding();
  const spills = createSpills(held);
  let groups = new Map<string, Group>();
  let dependents: Dependents | undefined;
  const compiledBy = new Map<string, Compiled | undefined>();
  const stack: Formula[] = [];
  let staleRead = false;
  let time = 0;

  const world = worldOf(held, source, upToDate, () => time);

  /** What is read stands there when this returns; deep chains are taken up again from their other end. */
  function upToDate(formula: Formula): Value {
    if (formula.state === "running") {
      const from = stack.lastIndexOf(formula);
      throw new Circle(from < 0 ? [formula] : stack.slice(from));
    }
    if (formula.state === "dirty") {
      if (stack.length >= DEEP) throw new Pending(formula);
      run(formula);
    }
    if (formula.stale) staleRead = true;
    return formula.value;
  }

  function run(formula: Formula): void {
    const { group, row, column } = formula;
    formula.state = "running";
    stack.push(formula);
    const outer = staleRead;
    staleRead = false;
    try {
      let value: Value | Block;
      try {
        if (group.compiled === undefined) throw new Unknown();
        const spot: Spot = { sheet: group.sheet, row, column, single: group.single };
        value = world.read(group.compiled.code.value(spot) as Operand, spot, false);
      } catch (thrown) {
        if (thrown instanceof Failure) value = thrown.value;
        else if (thrown instanceof Unknown) {
          spills.settle(formula, unknownValue(formula), true);
          return;
        } else if (thrown instanceof Circle && !thrown.includes(formula)) value = thrown.value;
        else throw thrown;
      }
      spills.settle(formula, formula.circle === undefined ? value : error("#VALUE!", formula.circle), staleRead);
    } catch (thrown) {
      if (thrown instanceof Circle) {
        // Every formula of the circle says so, and what hangs on it takes the error on.
        const text = describeCircle(thrown.members.map((one) => nameOf(one as Formula)));
        spills.settle(formula, error("#VALUE!", text), false);
        thrown.value = error("#VALUE!", text);
        if (thrown.first !== formula) throw thrown;
        return;
      }
      formula.state = "dirty";
      throw thrown;
    } finally {
      stack.pop();
      staleRead = outer || staleRead;
    }
  }

  function unknownValue(formula: Formula): Value {
    const cell = held.cellAt(formula.group.sheet, formula.row, formula.column);
    const kept = cell?.value ?? null;
    if (kept !== null) return kept;
    return error(NAME.error, "a function or name in this formula is not known here");
  }

  function groupOf(sheet: number, row: number, column: number, formula: string, array: boolean): Group {
    const relative = relativeKey(formula, row, column);
    const single = !array && plain.has(relative);
    // What "this row" and a name of one sheet mean depends on where the formula stands.
    const table = relative.includes("[") ? (held.tableAt(sheet, row, column)?.range.name ?? "") : "";
    const key = `${sheet}|${single}|${table}|${relative}`;
    const known = groups.get(key);
    if (known) return known;
    let compiled: Compiled | undefined;
    if (compiledBy.has(key)) compiled = compiledBy.get(key);
    else {
      try {
        compiled = compileFormula(`=${formula}`, { sheet, row, column, single }, world);
      } catch (thrown) {
        if (!(thrown instanceof Unknown)) throw thrown;
      }
      compiledBy.set(key, compiled);
    }
    const made: Group = { sheet, compiled, single, cells: new Map() };
    groups.set(key, made);
    dependents = undefined;
    return made;
  }

  function place(sheet: number, row: number, column: number): Formula | undefined {
    const cell = held.cellAt(sheet, row, column);
    const id = idOf(row, column);
    const old = held.formulas[sheet]!.get(id);
    if (old) {
      spills.release(old);
      old.group.cells.get(column)?.delete(row);
      held.formulas[sheet]!.delete(id);
    }
    if (cell?.formula === undefined) return undefined;
    const group = groupOf(sheet, row, column, cell.formula, cell.array !== undefined);
    const rows = group.cells.get(column) ?? new Set<number>();
    if (rows.size === 0) group.cells.set(column, rows);
    if (!rows.has(row)) {
      rows.add(row);
      if (!(old && old.group === group)) dependents = undefined;
    }
    const made: Formula = { group, row, column, id, state: "done", value: cell.value, stale: cell.stale === true };
    held.formulas[sheet]!.set(id, made);
    return made;
  }

  function readAll(): void {
    held.begin(source.sheets());
    groups = new Map();
    compiledBy.clear();
    dependents = undefined;
    spills.moved();
    held.sheets.forEach((sheet, s) => {
      for (const [row, line] of sheet.cells)
        for (const [column, cell] of line) if (cell.formula !== undefined) place(s, row, column);
      // Answers that the file holds are where they were.
      for (const formula of held.formulas[s]!.values()) {
        const array = held.cellAt(s, formula.row, formula.column)?.array;
        if (array === undefined) continue;
        const { area } = array;
        formula.area = area;
        formula.block = Array.from({ length: Math.min(area.bottom - area.top + 1, LARGEST) }, (_, r) =>
          Array.from(
            { length: area.right - area.left + 1 },
            (_cell, c) =>
              held.cellAt(s, area.top + r, area.left + c)?.value ??
              sheet.spills?.get(area.top + r)?.get(area.left + c)?.value ??
              null,
          ),
        );
        for (let r = area.top; r <= area.bottom; r++)
          for (let c = area.left; c <= area.right; c++)
            if (r !== formula.row || c !== formula.column) held.spilled[s]!.set(idOf(r, c), formula);
      }
    });
  }

  /** Works out what hangs on the cells, until spills have come to rest. */
  function settleAll(first: readonly Spotted[], changed: readonly Formula[]): Answer[] {
    time = now();
    const touched = new Set<Formula>();
    const queue: Formula[] = [];
    const dirty = (formula: Formula) => {
      if (formula.state === "dirty") return;
      formula.state = "dirty";
      formula.circle = undefined;
      touched.add(formula);
      queue.push(formula);
    };
    const reach = (sheet: number, row: number, column: number) => {
      dependents ??= new Dependents(groups.values());
      dependents.of(sheet, row, column, (group, r, c) => {
        const formula = held.formulas[group.sheet]!.get(idOf(r, c));
        if (formula) dirty(formula);
      });
    };
    const spread = (from: number): void => {
      for (let i = from; i < queue.length; i++) {
        const { group, row, column, area } = queue[i]!;
        reach(group.sheet, row, column);
        if (area === undefined) continue;
        for (let r = area.top; r <= area.bottom; r++)
          for (let c = area.left; c <= area.right; c++) if (r !== row || c !== column) reach(group.sheet, r, c);
      }
    };
    const volatile = [...groups.values()].filter((group) => group.compiled?.volatile);
    for (const formula of changed) dirty(formula);
    for (const [sheet, row, column] of first) reach(sheet, row, column);
    for (const group of volatile)
      for (const [column, rows] of group.cells)
        for (const row of rows) dirty(held.formulas[group.sheet]!.get(idOf(row, column))!);
    spread(0);

    let done = 0;
    // A spill that reaches further, or gives cells free, can wake others; it comes to rest or is cut off.
    for (let round = 0; round < 20; round++) {
      spills.moved();
      for (; done < queue.length; done++) work(queue[done]!);
      const moved = spills.moved();
      if (moved.length === 0) break;
      const before = queue.length;
      for (const [sheet, row, column] of moved) reach(sheet, row, column);
      for (const formula of blockedBefore(moved)) dirty(formula);
      spread(before);
      if (queue.length === before) break;
    }
    spills.moved();
    return [...touched].map((formula) => ({
      sheet: held.sheets[formula.group.sheet]!.name,
      row: formula.row,
      column: formula.column,
      value: formula.value,
      ...(formula.block ? { spill: formula.block } : {}),
      ...(formula.stale ? { stale: true } : {}),
    }));
  }

  function* blockedBefore(places: readonly Spotted[]): Generator<Formula> {
    const on = new Set(places.map(([sheet]) => sheet));
    for (const sheet of on)
      for (const formula of held.formulas[sheet]!.values())
        if (isError(formula.value) && formula.value.error === "#SPILL!") yield formula;
  }

  function work(formula: Formula): void {
    const waiting: Formula[] = [formula];
    while (waiting.length > 0) {
      const next = waiting.at(-1)!;
      if (next.state !== "dirty") {
        waiting.pop();
        continue;
      }
      try {
        run(next);
        waiting.pop();
      } catch (thrown) {
        if (thrown instanceof Pending) {
          // A chain deeper than the stack: its far end first. One that comes back to itself is a circle.
          const far = thrown.formula as Formula;
          if (waiting.includes(far) || waiting.length > 5_000_000) {
            spills.settle(far, error("#VALUE!", describeCircle([nameOf(far)])), false);
            continue;
          }
          waiting.push(far);
        } else if (thrown instanceof Circle) waiting.pop();
        else throw thrown;
      }
    }
  }

  readAll();

  /** Each cell once, however often it is told. */
  function toPlaces(cells: readonly Place[]): Spotted[] {
    const seen = new Set<string>();
    return cells.flatMap(({ sheet, row, column }): Spotted[] => {
      const s = held.sheetIndex(sheet);
      const key = `${s} ${row} ${column}`;
      if (s < 0 || seen.has(key)) return [];
      seen.add(key);
      return [[s, row, column]];
    });
  }

  function take(cells: readonly Place[]): Answer[] {
    const places = toPlaces(cells);
    const changed: Formula[] = [];
    for (const [sheet, row, column] of places) {
      held.grown(sheet);
      const old = held.formulas[sheet]!.get(idOf(row, column));
      const cell = held.cellAt(sheet, row, column);
      if (old === undefined && cell?.formula === undefined) continue;
      const made = place(sheet, row, column);
      if (made) changed.push(made);
    }
    const freed = spills.moved();
    // Something put in the way of a spill, or taken out of it.
    for (const [sheet, row, column] of [...places, ...freed]) {
      const from = held.spilled[sheet]?.get(idOf(row, column));
      if (from) changed.push(from);
    }
    for (const formula of blockedBefore(places)) changed.push(formula);
    return settleAll([...places, ...freed], changed);
  }

  return {
    changed(cells) {
      held.sheets = source.sheets();
      return take(cells);
    },
    rebuilt(cells) {
      readAll();
      return take(cells);
    },
  };
}
