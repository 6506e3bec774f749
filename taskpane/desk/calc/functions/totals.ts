/** Sums, counts and averages of ranges, with conditions and without. */
import * as formulajs from "@formulajs/formulajs";
import type { Value } from "../../model/types.ts";
import {
  DIV0,
  Failure,
  finite,
  isBlock,
  isError,
  NA,
  NUM,
  type Operand,
  Reference,
  toNumber,
  VALUE,
} from "../values.ts";
import type { Definition, Definitions, World } from "../world.ts";
import { blockOf, eachValue, number, numbers, one, whole, whole_ } from "./arguments.ts";
import { condition } from "./criteria.ts";

const MANY = 255;

const sum = (list: readonly number[]): number => {
  let total = 0;
  for (const x of list) total += x;
  return total;
};
const mean = (list: readonly number[]): number => {
  if (list.length === 0) throw new Failure(DIV0);
  return sum(list) / list.length;
};
/** Sum of squares of the distances from the mean. */
const spread = (list: readonly number[]): number => {
  const middle = mean(list);
  return sum(list.map((x) => (x - middle) ** 2));
};
const variance = (list: readonly number[], less: 0 | 1): number => {
  if (list.length <= less) throw new Failure(DIV0);
  return spread(list) / (list.length - less);
};
const smallest = (list: readonly number[]) => list.reduce((a, b) => Math.min(a, b), list[0] ?? 0);
const largest = (list: readonly number[]) => list.reduce((a, b) => Math.max(a, b), list[0] ?? 0);

const over = (fold: (list: number[]) => number): Definition =>
  whole(1, MANY, (args, _, world) => finite(fold(numbers(args, world))));

/** Totals that take text as 0 and TRUE as 1. */
const overAll = (fold: (list: number[]) => number): Definition =>
  whole(1, MANY, (args, _, world) => {
    const list: number[] = [];
    eachValue(args, world, (value, inCells) => {
      if (isError(value)) throw new Failure(value);
      if (typeof value === "number") list.push(value);
      else if (typeof value === "boolean") list.push(Number(value));
      else if (typeof value === "string") list.push(inCells ? 0 : toNumber(value));
    });
    return finite(fold(list));
  });

const count = (args: readonly Operand[], world: World, test: (value: Value, inCells: boolean) => boolean): number => {
  let n = 0;
  eachValue(args, world, (value, inCells) => {
    if (test(value, inCells)) n++;
  });
  return n;
};
const isCounted = (value: Value, inCells: boolean): boolean => {
  if (typeof value === "number") return true;
  if (inCells || isError(value)) return false;
  if (typeof value === "boolean") return true;
  if (value === null) return true;
  try {
    toNumber(value);
    return true;
  } catch {
    return false;
  }
};

/** Cells of a range by row and column, as far as anything stands in them; the others are blank. */
const cellsOf = (operand: Operand, world: World) => {
  if (!(operand instanceof Reference) && !isBlock(operand)) throw new Failure(VALUE);
  const block = blockOf(operand, world);
  const area = operand instanceof Reference ? operand.areas[0]! : undefined;
  return {
    block,
    rows: area ? area.bottom - area.top + 1 : block.length,
    columns: area ? area.right - area.left + 1 : (block[0]?.length ?? 0),
  };
};

/** Runs over the places where every condition holds; `pairs` are ranges and conditions in turn. */
function where(
  pairs: readonly Operand[],
  spot: Parameters<typeof one>[1],
  world: World,
  seen: (row: number, column: number) => void,
): void {
  const tests: { block: ReturnType<typeof cellsOf>; test: (value: Value) => boolean }[] = [];
  for (let i = 0; i + 1 < pairs.length; i += 2)
    tests.push({ block: cellsOf(pairs[i], world), test: condition(one(pairs[i + 1], spot, world)) });
  const [first] = tests;
  if (first === undefined) return;
  if (tests.some(({ block }) => block.rows !== first.block.rows || block.columns !== first.block.columns))
    throw new Failure(VALUE);
  // Below what is filled everything is blank: it is gone through only when it could count.
  const filled = Math.max(...tests.map(({ block }) => block.block.length));
  for (let r = 0; r < filled; r++)
    for (let c = 0; c < first.block.columns; c++)
      if (tests.every(({ block, test }) => test(block.block[r]?.[c] ?? null))) seen(r, c);
}

function matching(values: Operand, pairs: readonly Operand[], spot: Parameters<typeof one>[1], world: World): number[] {
  const found: number[] = [];
  // The range to add up starts where it starts, and is as large as the one that is tested.
  const corner = values instanceof Reference ? values.areas[0]! : undefined;
  const block = corner ? undefined : blockOf(values, world);
  where(pairs, spot, world, (r, c) => {
    const value =
      corner && values instanceof Reference
        ? world.value(values.sheet, corner.top + r, corner.left + c)
        : (block?.[r]?.[c] ?? null);
    if (isError(value)) throw new Failure(value);
    if (typeof value === "number") found.push(value);
  });
  return found;
}

const oneCondition = (fold: (list: number[]) => number): Definition =>
  whole(2, 3, ([range, wanted, values], spot, world) =>
    finite(fold(matching(values ?? range, [range, wanted], spot, world))),
  );
const conditions = (fold: (list: number[]) => number): Definition =>
  whole(3, MANY, ([values, ...pairs], spot, world) => finite(fold(matching(values, pairs, spot, world))));

const nth = (pick: (sorted: number[], k: number) => number): Definition =>
  whole(2, 2, ([list, k], spot, world) => {
    const sorted = numbers([list], world).sort((a, b) => a - b);
    const at = Math.ceil(number(k, spot, world));
    return at < 1 || at > sorted.length ? NUM : pick(sorted, at);
  });

function between(sorted: readonly number[], at: number): number {
  const low = Math.floor(at);
  const next = sorted[Math.min(low + 1, sorted.length - 1)]!;
  return sorted[low]! + (at - low) * (next - sorted[low]!);
}
const share = (exclusive: boolean, of: number): Definition =>
  whole(2, 2, ([list, k], spot, world) => {
    const sorted = numbers([list], world).sort((a, b) => a - b);
    const p = (of === 4 ? whole_(k, spot, world) : number(k, spot, world)) / of;
    if (sorted.length === 0) return NUM;
    if (!exclusive) return p < 0 || p > 1 ? NUM : between(sorted, p * (sorted.length - 1));
    const at = p * (sorted.length + 1) - 1;
    return at < 0 || at > sorted.length - 1 ? NUM : between(sorted, at);
  });

const rank = (average: boolean): Definition =>
  whole(2, 3, ([value, list, order], spot, world) => {
    const x = number(value, spot, world);
    const all = numbers([list], world);
    const same = all.filter((y) => y === x).length;
    if (same === 0) return NA;
    const ascending = order !== undefined && number(order, spot, world) !== 0;
    const before = all.filter((y) => (ascending ? y < x : y > x)).length;
    return before + 1 + (average ? (same - 1) / 2 : 0);
  });

const VARIANTS: readonly ((list: number[]) => number)[] = [
  mean,
  (list) => list.length,
  (list) => list.length,
  largest,
  smallest,
  (list) => list.reduce((a, b) => a * b, 1),
  (list) => Math.sqrt(variance(list, 1)),
  (list) => Math.sqrt(variance(list, 0)),
  sum,
  (list) => variance(list, 1),
  (list) => variance(list, 0),
];

const pairsOf = (a: Operand, b: Operand, world: World): [number[], number[]] => {
  const [x, y] = [blockOf(a, world).flat(), blockOf(b, world).flat()];
  if (x.length !== y.length) throw new Failure(NA);
  const kept = x.map((_, i) => i).filter((i) => typeof x[i] === "number" && typeof y[i] === "number");
  for (const value of [...x, ...y]) if (isError(value)) throw new Failure(value);
  return [kept.map((i) => x[i] as number), kept.map((i) => y[i] as number)];
};
const fitted = (run: (y: number[], x: number[]) => number): Definition =>
  whole(2, 2, ([ys, xs], _, world) => {
    const [y, x] = pairsOf(ys, xs, world);
    return finite(run(y, x));
  });
const slope = (y: number[], x: number[]): number => {
  const [mx, my] = [mean(x), mean(y)];
  const under = sum(x.map((v) => (v - mx) ** 2));
  if (under === 0) throw new Failure(DIV0);
  return sum(x.map((v, i) => (v - mx) * (y[i]! - my))) / under;
};

const product = (list: number[]) => (list.length === 0 ? 0 : list.reduce((a, b) => a * b, 1));
const middle = (list: number[]) => {
  if (list.length === 0) return Number.NaN;
  return between(
    list.sort((a, b) => a - b),
    (list.length - 1) / 2,
  );
};
const stdev = (less: 0 | 1) => over((list) => Math.sqrt(variance(list, less)));
const vary = (less: 0 | 1) => over((list) => variance(list, less));
const averageIf = (list: number[]) => mean(list);

export const totals: Definitions = {
  SUM: over(sum),
  PRODUCT: over(product),
  SUMSQ: over((list) => sum(list.map((x) => x * x))),
  AVERAGE: over(mean),
  MIN: over(smallest),
  MAX: over(largest),
  MINA: overAll(smallest),
  MAXA: overAll(largest),
  AVERAGEA: overAll(mean),
  COUNT: whole(1, MANY, (args, _, world) => count(args, world, isCounted)),
  COUNTA: whole(1, MANY, (args, _, world) => count(args, world, (value, inCells) => value !== null || !inCells)),
  COUNTBLANK: whole(1, 1, ([range], _, world) => {
    const { block, rows, columns } = cellsOf(range, world);
    const filled = block.flat().filter((value) => value !== null && value !== "").length;
    return rows * columns - filled;
  }),
  MEDIAN: over(middle),
  GEOMEAN: over((list) => (list.some((x) => x <= 0) ? Number.NaN : Math.exp(mean(list.map(Math.log))))),
  HARMEAN: over((list) => (list.some((x) => x <= 0) ? Number.NaN : 1 / mean(list.map((x) => 1 / x)))),
  DEVSQ: over(spread),
  AVEDEV: over((list) => {
    const centre = mean(list);
    return mean(list.map((x) => Math.abs(x - centre)));
  }),
  STDEV: stdev(1),
  "STDEV.S": stdev(1),
  STDEVP: stdev(0),
  "STDEV.P": stdev(0),
  VAR: vary(1),
  "VAR.S": vary(1),
  VARP: vary(0),
  "VAR.P": vary(0),
  SKEW: over((list) => formulajs.SKEW(list) as number),
  KURT: over((list) => formulajs.KURT(list) as number),
  MODE: over((list) => {
    const seen = new Map<number, number>();
    for (const x of list) seen.set(x, (seen.get(x) ?? 0) + 1);
    const most = Math.max(0, ...seen.values());
    if (most < 2) throw new Failure(NA);
    return [...seen].find(([, n]) => n === most)![0];
  }),
  LARGE: nth((sorted, k) => sorted[sorted.length - k]!),
  SMALL: nth((sorted, k) => sorted[k - 1]!),
  PERCENTILE: share(false, 1),
  "PERCENTILE.INC": share(false, 1),
  "PERCENTILE.EXC": share(true, 1),
  QUARTILE: share(false, 4),
  "QUARTILE.INC": share(false, 4),
  "QUARTILE.EXC": share(true, 4),
  RANK: rank(false),
  "RANK.EQ": rank(false),
  "RANK.AVG": rank(true),
  SLOPE: fitted(slope),
  INTERCEPT: fitted((y, x) => mean(y) - slope(y, x) * mean(x)),
  CORREL: fitted((y, x) => slope(y, x) * Math.sqrt(spread(x) / spread(y))),
  RSQ: fitted((y, x) => slope(y, x) ** 2 * (spread(x) / spread(y))),
  FORECAST: whole(3, 3, ([at, ys, xs], spot, world) => {
    const [y, x] = pairsOf(ys, xs, world);
    return finite(mean(y) + slope(y, x) * (number(at, spot, world) - mean(x)));
  }),
  SUMPRODUCT: whole(
    1,
    MANY,
    (args, _, world) => {
      const blocks = args.map((arg) => blockOf(arg, world));
      const [first] = blocks;
      if (blocks.some((b) => b.length !== first!.length || b[0]!.length !== first![0]!.length)) return VALUE;
      let total = 0;
      first!.forEach((row, r) => {
        row.forEach((_cell, c) => {
          let part = 1;
          for (const block of blocks) {
            const value = block[r]![c]!;
            if (isError(value)) throw new Failure(value);
            part *= typeof value === "number" ? value : 0;
          }
          total += part;
        });
      });
      return finite(total);
    },
    { arrays: true },
  ),
  SUMIF: oneCondition(sum),
  AVERAGEIF: oneCondition(averageIf),
  SUMIFS: conditions(sum),
  AVERAGEIFS: conditions(averageIf),
  MINIFS: conditions(smallest),
  MAXIFS: conditions(largest),
  COUNTIF: whole(2, 2, (pair, spot, world) => countIfs(pair, spot, world)),
  COUNTIFS: whole(2, MANY, (pairs, spot, world) => countIfs(pairs, spot, world)),
  SUBTOTAL: whole(2, MANY, ([code, ...ranges], spot, world) => {
    const kind = whole_(code, spot, world);
    const fold = VARIANTS[(kind % 100) - 1];
    if (fold === undefined || kind < 0 || (kind > 11 && kind < 101)) return VALUE;
    const seen: Value[] = [];
    for (const range of ranges) {
      if (!(range instanceof Reference)) return VALUE;
      for (const area of range.areas) {
        const block = world.block(range.sheet, area);
        block.forEach((row, r) => {
          // Rows that a filter or a person has hidden do not count; nor do other subtotals.
          if (world.hidden(range.sheet, area.top + r)) return;
          row.forEach((value, c) => {
            if (!/\bSUBTOTAL\(/i.test(world.formula(range.sheet, area.top + r, area.left + c))) seen.push(value);
          });
        });
      }
    }
    if (kind % 100 === 3) return seen.filter((value) => value !== null).length;
    return finite(fold(numbers([[seen]], world)));
  }),
};

function countIfs(pairs: readonly Operand[], spot: Parameters<typeof one>[1], world: World): number {
  let n = 0;
  where(pairs, spot, world, () => n++);
  // What lies below the filled part is blank and was not gone through.
  const tests = [];
  for (let i = 0; i + 1 < pairs.length; i += 2) tests.push(condition(one(pairs[i + 1], spot, world)));
  if (tests.every((test) => test(null))) {
    const all = pairs.filter((_, i) => i % 2 === 0).map((range) => cellsOf(range, world));
    const filled = Math.max(...all.map(({ block }) => block.length));
    n += Math.max(0, all[0]!.rows - filled) * all[0]!.columns;
  }
  return n;
}
