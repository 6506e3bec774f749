/** Functions whose answer is a block: turned, sorted, picked, made up. */
import type { Value } from "../../model/types.ts";
import { type Block, compare, error, finite, isError, type Operand, toFlag, VALUE } from "../values.ts";
import type { Definitions, World } from "../world.ts";
import { blockOf, flag, number, whole, whole_ } from "./arguments.ts";

const turned = (block: Block): Value[][] => block[0]!.map((_, c) => block.map((row) => row[c] ?? null));
const filled = (block: Block): Value[][] => block.map((row) => row.map((cell) => cell ?? 0));
const order = (a: Value, b: Value): number => {
  // Blank cells and errors come last, whichever way it is sorted.
  const last = (value: Value) => (isError(value) ? 2 : value === null ? 1 : 0);
  return last(a) || last(b) ? last(a) - last(b) : compare(a, b);
};
const identity = (row: readonly Value[]) =>
  JSON.stringify(row.map((v) => (typeof v === "string" ? v.toLowerCase() : v)));
const flags = (operand: Operand, world: World): boolean[] =>
  blockOf(operand, world)
    .flat()
    .map((value) => toFlag(value));

function sortRows(
  rows: readonly (readonly Value[])[],
  keys: readonly { at: (i: number) => Value; down: boolean }[],
): Value[][] {
  return rows
    .map((row, i) => ({ row, i }))
    .sort((a, b) => {
      for (const { at, down } of keys) {
        const n = order(at(a.i), at(b.i));
        if (n !== 0) return down && at(a.i) !== null && at(b.i) !== null ? -n : n;
      }
      return a.i - b.i;
    })
    .map(({ row }) => [...row]);
}

const arrays = { arrays: true };

export const shapes: Definitions = {
  TRANSPOSE: whole(1, 1, ([arg], _, world) => turned(filled(blockOf(arg, world))), arrays),
  SEQUENCE: whole(1, 4, ([rows, columns, start, step], spot, world) => {
    const [tall, wide] = [whole_(rows, spot, world, 1), whole_(columns, spot, world, 1)];
    const [first, by] = [number(start, spot, world, 1), number(step, spot, world, 1)];
    if (tall < 1 || wide < 1 || tall * wide > 1_000_000) return VALUE;
    return Array.from({ length: tall }, (_, r) => Array.from({ length: wide }, (_, c) => first + (r * wide + c) * by));
  }),
  FILTER: whole(
    2,
    3,
    ([source, test, otherwise], _, world) => {
      const block = filled(blockOf(source, world));
      const kept = flags(test, world);
      const down = kept.length === block.length && blockOf(test, world).length > 1;
      const found =
        down || (block.length === 1 && kept.length === 1)
          ? block.filter((_row, r) => kept[r])
          : turned(turned(block).filter((_row, c) => kept[c]));
      if (kept.length !== block.length && kept.length !== block[0]!.length) return VALUE;
      if (found.length === 0 || found[0]!.length === 0)
        return otherwise ?? error("#CALC!", "nothing is left by the filter");
      return found;
    },
    arrays,
  ),
  SORT: whole(
    1,
    4,
    ([source, index, direction, byColumn], spot, world) => {
      const across = flag(byColumn, spot, world, false);
      const given = blockOf(source, world);
      const block = across ? turned(given) : given;
      const at = whole_(index, spot, world, 1) - 1;
      const down = number(direction, spot, world, 1) < 0;
      if (at < 0 || at >= block[0]!.length) return VALUE;
      const done = sortRows(block, [{ at: (i) => block[i]![at] ?? null, down }]);
      return filled(across ? turned(done) : done);
    },
    arrays,
  ),
  SORTBY: whole(
    2,
    255,
    ([source, ...by], spot, world) => {
      const block = blockOf(source, world);
      const keys: { at: (i: number) => Value; down: boolean }[] = [];
      for (let i = 0; i < by.length; i += 2) {
        const list = blockOf(by[i], world).flat();
        if (list.length !== block.length) return VALUE;
        keys.push({ at: (k) => list[k] ?? null, down: number(by[i + 1], spot, world, 1) < 0 });
      }
      return filled(sortRows(block, keys));
    },
    arrays,
  ),
  UNIQUE: whole(
    1,
    3,
    ([source, byColumn, once], spot, world) => {
      const across = flag(byColumn, spot, world, false);
      const given = filled(blockOf(source, world));
      const rows = across ? turned(given) : given;
      const seen = new Map<string, number>();
      for (const row of rows) seen.set(identity(row), (seen.get(identity(row)) ?? 0) + 1);
      const only = flag(once, spot, world, false);
      const taken = new Set<string>();
      const found = rows.filter((row) => {
        const key = identity(row);
        if (taken.has(key) || (only && seen.get(key)! > 1)) return false;
        taken.add(key);
        return true;
      });
      if (found.length === 0) return error("#CALC!", "no value stands there once");
      return across ? turned(found) : found;
    },
    arrays,
  ),
  MMULT: whole(
    2,
    2,
    ([left, right], _, world) => {
      const [a, b] = [blockOf(left, world), blockOf(right, world)];
      if (a[0]!.length !== b.length) return VALUE;
      const numeric = (value: Value | undefined) => {
        if (typeof value !== "number") return Number.NaN;
        return value;
      };
      const made = a.map((row) =>
        b[0]!.map((_cell, c) => row.reduce<number>((sum, value, k) => sum + numeric(value) * numeric(b[k]![c]), 0)),
      );
      return made.some((row) => row.some(Number.isNaN)) ? VALUE : made.map((row) => row.map(finite));
    },
    arrays,
  ),
  TAKE: whole(
    2,
    3,
    ([source, rows, columns], spot, world) => {
      const block = filled(blockOf(source, world));
      const cut = <T>(list: readonly T[], n: number): T[] => (n >= 0 ? list.slice(0, n) : list.slice(n));
      const some = rows === undefined ? block : cut(block, whole_(rows, spot, world));
      const made = columns === undefined ? some : some.map((row) => cut(row, whole_(columns, spot, world)));
      return made.length === 0 || made[0]!.length === 0 ? error("#CALC!", "nothing is left") : made;
    },
    arrays,
  ),
  VSTACK: whole(
    1,
    255,
    (args, _, world) => {
      const rows = args.flatMap((arg) => filled(blockOf(arg, world)));
      const wide = Math.max(...rows.map((row) => row.length));
      return rows.map((row) => Array.from({ length: wide }, (_cell, c) => row[c] ?? error("#N/A")));
    },
    arrays,
  ),
};
