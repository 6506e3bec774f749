/**
 * The calculator: works out the formulas that hang on a change, and only those. Formulas it does not know keep the value
 * that the file came with, and say so. It is told of changes and answers with values; it writes nowhere.
 */
import type { Area, Cell, Sheet, Value } from "../model/types.ts";
import { type Compiled, compileFormula } from "./compile.ts";
import { Dependents, type Group } from "./dependents.ts";
import { toSerial } from "./functions/dates.ts";
import { relativeKey } from "./key.ts";
import { Circle, describeCircle, Pending } from "./order.ts";
import type { Answer, CalculatedSheet, Calculator, Place, Source } from "./shapes.ts";
import {
  type Block,
  error,
  Failure,
  isBlock,
  isError,
  NAME,
  type Operand,
  Reference,
  SPILL,
  Unknown,
  VALUE,
} from "./values.ts";
import type { Spot, World } from "./world.ts";

export type { Answer, Calculator, Place, Source } from "./shapes.ts";

interface Formula {
  readonly group: Group;
  readonly row: number;
  readonly column: number;
  readonly id: number;
  state: "done" | "dirty" | "running";
  value: Value;
  stale: boolean;
  area?: Area;
  block?: Block;
  circle?: string;
}

const COLUMNS = 16_384;
/** Formulas that are worked out inside each other before the far end is taken first. */
const DEEP = 150;
/** Cells that one answer may fill. */
const LARGEST = 2_000_000;

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

  let sheets: readonly CalculatedSheet[] = [];
  let groups = new Map<string, Group>();
  let formulas: Map<number, Formula>[] = [];
  let spilled: Map<number, Formula>[] = [];
  let dependents: Dependents | undefined;
  const compiledBy = new Map<string, Compiled | undefined>();
  const stack: Formula[] = [];
  let staleRead = false;
  let time = 0;

  const cellAt = (sheet: number, row: number, column: number): Cell | undefined =>
    sheets[sheet]!.cells.get(row)?.get(column);
  const idOf = (row: number, column: number) => row * COLUMNS + column;
  const sheetIndex = (name: string) => sheets.findIndex((sheet) => sheet.name.toLowerCase() === name.toLowerCase());

  const world: World = {
    date1904: source.date1904,
    value(sheet, row, column) {
      const id = idOf(row, column);
      const own = formulas[sheet]!.get(id);
      if (own) return upToDate(own);
      const from = spilled[sheet]!.get(id);
      if (from) {
        upToDate(from);
        // It may have shrunk meanwhile.
        if (spilled[sheet]!.get(id) === from) return from.block?.[row - from.row]?.[column - from.column] ?? null;
        return null;
      }
      return cellAt(sheet, row, column)?.value ?? null;
    },
    used: (sheet) => usedOf(sheet),
    block(sheet, area) {
      const { rows, columns } = usedOf(sheet);
      const bottom = Math.min(area.bottom, Math.max(area.top, rows - 1));
      const right = Math.min(area.right, Math.max(area.left, columns - 1));
      // Only whole rows and columns are cut; a range of its own size stays that size.
      const tall = area.bottom - area.top > 100_000 ? bottom : area.bottom;
      const wide = area.right - area.left > 1_000 ? right : area.right;
      const made: Value[][] = new Array(tall - area.top + 1);
      for (let row = area.top; row <= tall; row++) {
        const line: Value[] = new Array(wide - area.left + 1);
        for (let column = area.left; column <= wide; column++)
          line[column - area.left] = world.value(sheet, row, column);
        made[row - area.top] = line;
      }
      return made;
    },
    read(operand, spot, array) {
      if (operand === undefined) return null;
      if (!(operand instanceof Reference)) return operand as Value | Block;
      const [area] = operand.areas;
      if (operand.areas.length !== 1 || area === undefined) return VALUE;
      if (area.top === area.bottom && area.left === area.right) return world.value(operand.sheet, area.top, area.left);
      if (!spot.single || array) return world.block(operand.sheet, area);
      if (area.left === area.right && spot.row >= area.top && spot.row <= area.bottom)
        return world.value(operand.sheet, spot.row, area.left);
      if (area.top === area.bottom && spot.column >= area.left && spot.column <= area.right)
        return world.value(operand.sheet, area.top, spot.column);
      return VALUE;
    },
    spill(sheet, row, column) {
      const own = formulas[sheet]!.get(idOf(row, column));
      if (own === undefined) return undefined;
      upToDate(own);
      return own.area ?? { top: row, bottom: row, left: column, right: column };
    },
    sheetNamed(name) {
      const found = sheetIndex(name);
      return found < 0 ? undefined : found;
    },
    sheetName: (sheet) => sheets[sheet]!.name,
    tableNamed: (name) => tableWhere((range) => range.name.toLowerCase() === name.toLowerCase()),
    tableAt: (sheet, row, column) =>
      tableWhere(
        ({ area }, on) =>
          on === sheet && row >= area.top && row <= area.bottom && column >= area.left && column <= area.right,
      ),
    name(name, sheet) {
      const own = sheets[sheet]?.name.toLowerCase();
      const like = source.names.filter((one) => one.name.toLowerCase() === name.toLowerCase());
      return (like.find((one) => one.sheet?.toLowerCase() === own) ?? like.find((one) => one.sheet === undefined))
        ?.formula;
    },
    now: () => time,
    hidden: (sheet, row) => sheets[sheet]!.hiddenRows.has(row),
    formula: (sheet, row, column) => cellAt(sheet, row, column)?.formula ?? "",
  };

  function tableWhere(test: (range: Sheet["tables"][number], sheet: number) => boolean) {
    for (const [sheet, { tables }] of sheets.entries())
      for (const range of tables) if (test(range, sheet)) return { sheet, range };
    return undefined;
  }

  let usedNow: { rows: number; columns: number }[] = [];
  function usedOf(sheet: number): { rows: number; columns: number } {
    const known = usedNow[sheet];
    if (known) return known;
    let [rows, columns] = [0, 0];
    for (const [row, line] of sheets[sheet]!.cells) {
      if (line.size === 0) continue;
      if (row >= rows) rows = row + 1;
      for (const column of line.keys()) if (column >= columns) columns = column + 1;
    }
    for (const { area } of spilled[sheet]!.values()) {
      if (area === undefined) continue;
      rows = Math.max(rows, area.bottom + 1);
      columns = Math.max(columns, area.right + 1);
    }
    usedNow[sheet] = { rows, columns };
    return usedNow[sheet]!;
  }

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

  const nameOf = (formula: Formula) => {
    const letters = (n: number): string =>
      (n < 26 ? "" : letters(Math.floor(n / 26) - 1)) + String.fromCharCode(65 + (n % 26));
    return `${letters(formula.column)}${formula.row + 1}`;
  };

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
          settle(formula, unknownValue(formula), true);
          return;
        } else if (thrown instanceof Circle && !thrown.includes(formula)) value = thrown.value;
        else throw thrown;
      }
      settle(formula, formula.circle === undefined ? value : error("#VALUE!", formula.circle), staleRead);
    } catch (thrown) {
      if (thrown instanceof Circle) {
        // Every formula of the circle says so, and what hangs on it takes the error on.
        const text = describeCircle(thrown.members.map((one) => nameOf(one as Formula)));
        settle(formula, error("#VALUE!", text), false);
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
    const cell = cellAt(formula.group.sheet, formula.row, formula.column);
    const kept = cell?.value ?? null;
    if (kept !== null) return kept;
    return error(NAME.error, "a function or name in this formula is not known here");
  }

  function release(formula: Formula): void {
    if (formula.area === undefined) return;
    const own = spilled[formula.group.sheet]!;
    const { top, left, bottom, right } = formula.area;
    for (let r = top; r <= bottom; r++)
      for (let c = left; c <= right; c++) {
        if (own.get(idOf(r, c)) === formula) own.delete(idOf(r, c));
        if (r !== formula.row || c !== formula.column) moved.push([formula.group.sheet, r, c]);
      }
    formula.area = undefined;
    formula.block = undefined;
  }
  /** Cells that spills have filled or left since they were last looked at. */
  let moved: [number, number, number][] = [];

  function settle(formula: Formula, answer: Value | Block, stale: boolean): void {
    const { group, row, column } = formula;
    const { sheet } = group;
    formula.state = "done";
    formula.stale = stale;
    const cell = cellAt(sheet, row, column);
    let block: Block | undefined = isBlock(answer) ? answer : undefined;
    if (block !== undefined && (block.length === 0 || block[0]!.length === 0)) block = [[VALUE]];
    if (stale && cell?.array !== undefined) {
      formula.value = block ? (block[0]![0] ?? null) : (answer as Value);
      return;
    }
    release(formula);
    // A block that came with the file in a fixed frame stays in it; a value fills all of it.
    const frame = cell?.array !== undefined && !cell.array.dynamic ? cell.array.area : undefined;
    if (frame) block = framed(block ?? [[answer as Value]], frame);
    if (block === undefined || (block.length === 1 && block[0]!.length === 1) || (group.single && !frame)) {
      formula.value = normal(block ? block[0]![0] : (answer as Value));
      return;
    }
    const area = { top: row, left: column, bottom: row + block.length - 1, right: column + block[0]!.length - 1 };
    const blocked =
      block.length * block[0]!.length > LARGEST ? [row, column] : frame ? undefined : obstacle(formula, area);
    if (blocked) {
      formula.value = SPILL(cellName(blocked[0]!, blocked[1]!));
      return;
    }
    formula.value = normal(block[0]![0]);
    formula.area = area;
    formula.block = block.map((line) => line.map((value) => normal(value)));
    for (let r = area.top; r <= area.bottom; r++)
      for (let c = area.left; c <= area.right; c++) {
        if (r === row && c === column) continue;
        spilled[sheet]!.set(idOf(r, c), formula);
        moved.push([sheet, r, c]);
      }
    usedNow[sheet] = undefined as never;
  }

  const cellName = (row: number, column: number) => nameOf({ row, column } as Formula);
  const normal = (value: Value | undefined): Value => value ?? 0;

  function framed(block: Block, area: Area): Block {
    const [rows, columns] = [area.bottom - area.top + 1, area.right - area.left + 1];
    return Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (_, c): Value => {
        const line = block[block.length === 1 ? 0 : r];
        return line?.[line.length === 1 ? 0 : c] ?? error("#N/A");
      }),
    );
  }

  function obstacle(formula: Formula, { top, left, bottom, right }: Area): [number, number] | undefined {
    const { sheet } = formula.group;
    if (bottom >= 1_048_576 || right >= COLUMNS) return [formula.row, formula.column];
    const inTable = sheets[sheet]!.tables.find(
      ({ area }) => top >= area.top && top <= area.bottom && left >= area.left && left <= area.right,
    );
    if (inTable) return [formula.row, formula.column];
    for (let r = top; r <= bottom; r++)
      for (let c = left; c <= right; c++) {
        if (r === formula.row && c === formula.column) continue;
        const other = spilled[sheet]!.get(idOf(r, c));
        if ((other && other !== formula) || formulas[sheet]!.has(idOf(r, c))) return [r, c];
        const cell = cellAt(sheet, r, c);
        // What an earlier answer of this formula left behind is its own.
        if (cell && (cell.value !== null || cell.formula !== undefined) && !ownSpill(formula, r, c)) return [r, c];
      }
    return undefined;
  }
  /** True for a value that the file holds as part of this formula's answer. */
  const ownSpill = (formula: Formula, r: number, c: number): boolean => {
    const area = cellAt(formula.group.sheet, formula.row, formula.column)?.array?.area;
    return area !== undefined && r >= area.top && r <= area.bottom && c >= area.left && c <= area.right;
  };

  function groupOf(sheet: number, row: number, column: number, formula: string, array: boolean): Group {
    const relative = relativeKey(formula, row, column);
    const single = !array && plain.has(relative);
    // What "this row" and a name of one sheet mean depends on where the formula stands.
    const table = relative.includes("[") ? (world.tableAt(sheet, row, column)?.range.name ?? "") : "";
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
    const cell = cellAt(sheet, row, column);
    const id = idOf(row, column);
    const old = formulas[sheet]!.get(id);
    if (old) {
      release(old);
      old.group.cells.get(column)?.delete(row);
      formulas[sheet]!.delete(id);
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
    formulas[sheet]!.set(id, made);
    return made;
  }

  function readAll(): void {
    sheets = source.sheets();
    groups = new Map();
    compiledBy.clear();
    formulas = sheets.map(() => new Map());
    spilled = sheets.map(() => new Map());
    usedNow = [];
    dependents = undefined;
    moved = [];
    sheets.forEach((sheet, s) => {
      for (const [row, line] of sheet.cells)
        for (const [column, cell] of line) if (cell.formula !== undefined) place(s, row, column);
      // Answers that the file holds are where they were.
      for (const formula of formulas[s]!.values()) {
        const array = cellAt(s, formula.row, formula.column)?.array;
        if (array === undefined) continue;
        const { area } = array;
        formula.area = area;
        formula.block = Array.from({ length: Math.min(area.bottom - area.top + 1, LARGEST) }, (_, r) =>
          Array.from(
            { length: area.right - area.left + 1 },
            (_cell, c) =>
              cellAt(s, area.top + r, area.left + c)?.value ??
              sheet.spills?.get(area.top + r)?.get(area.left + c)?.value ??
              null,
          ),
        );
        for (let r = area.top; r <= area.bottom; r++)
          for (let c = area.left; c <= area.right; c++)
            if (r !== formula.row || c !== formula.column) spilled[s]!.set(idOf(r, c), formula);
      }
    });
  }

  /** Works out what hangs on the cells, until spills have come to rest. */
  function settleAll(first: readonly [number, number, number][], changed: readonly Formula[]): Answer[] {
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
        const formula = formulas[group.sheet]!.get(idOf(r, c));
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
        for (const row of rows) dirty(formulas[group.sheet]!.get(idOf(row, column))!);
    spread(0);

    let done = 0;
    // A spill that reaches further, or gives cells free, can wake others; it comes to rest or is cut off.
    for (let round = 0; round < 20; round++) {
      moved = [];
      for (; done < queue.length; done++) work(queue[done]!);
      const now_ = moved;
      if (now_.length === 0) break;
      const before = queue.length;
      for (const [sheet, row, column] of now_) reach(sheet, row, column);
      for (const formula of blockedBefore(now_)) dirty(formula);
      spread(before);
      if (queue.length === before) break;
    }
    moved = [];
    return [...touched].map((formula) => ({
      sheet: sheets[formula.group.sheet]!.name,
      row: formula.row,
      column: formula.column,
      value: formula.value,
      ...(formula.block ? { spill: formula.block } : {}),
      ...(formula.stale ? { stale: true } : {}),
    }));
  }

  function* blockedBefore(places: readonly [number, number, number][]): Generator<Formula> {
    const on = new Set(places.map(([sheet]) => sheet));
    for (const sheet of on)
      for (const formula of formulas[sheet]!.values())
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
            settle(far, error("#VALUE!", describeCircle([nameOf(far)])), false);
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
  function toPlaces(cells: readonly Place[]): [number, number, number][] {
    const seen = new Set<string>();
    return cells.flatMap(({ sheet, row, column }): [number, number, number][] => {
      const s = sheetIndex(sheet);
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
      usedNow[sheet] = undefined as never;
      const old = formulas[sheet]!.get(idOf(row, column));
      const cell = cellAt(sheet, row, column);
      if (old === undefined && cell?.formula === undefined) continue;
      const made = place(sheet, row, column);
      if (made) changed.push(made);
    }
    const freed = moved;
    moved = [];
    // Something put in the way of a spill, or taken out of it.
    for (const [sheet, row, column] of [...places, ...freed]) {
      const from = spilled[sheet]?.get(idOf(row, column));
      if (from) changed.push(from);
    }
    for (const formula of blockedBefore(places)) changed.push(formula);
    return settleAll([...places, ...freed], changed);
  }

  return {
    changed(cells) {
      sheets = source.sheets();
      return take(cells);
    },
    rebuilt(cells) {
      readAll();
      return take(cells);
    },
  };
}
