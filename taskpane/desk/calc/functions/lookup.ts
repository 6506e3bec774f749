/** Finding values in ranges, and ranges from numbers and text. */
import { parseA1Ref } from "@borgar/fx";
import { columnLetters } from "../../model/address.ts";
import { LAST_COLUMN, LAST_ROW, type Value } from "../../model/types.ts";
import {
  type Block,
  compare,
  Failure,
  inSheet,
  isBlock,
  isError,
  NA,
  type Operand,
  REF,
  Reference,
  VALUE,
} from "../values.ts";
import type { Definitions, Spot, World } from "../world.ts";
import { blockOf, flag, hasPattern, line, number, one, pattern, whole, whole_, words } from "./arguments.ts";

const sameKind = (a: Value, b: Value): boolean => typeof a === typeof b && !isError(a) && a !== null;

/** Place of a value in a list without order; text may hold * and ?. */
function find(list: readonly Value[], wanted: Value, patterns = true): number {
  if (typeof wanted === "string" && patterns && hasPattern(wanted)) {
    const like = pattern(wanted);
    return list.findIndex((value) => typeof value === "string" && like.test(value));
  }
  return list.findIndex((value) => sameKind(value, wanted) && compare(value, wanted) === 0);
}

/** Last place whose value is not larger, in a list that rises; -1 when all are. */
function sorted(list: readonly Value[], wanted: Value): number {
  const own = list.map((_, i) => i).filter((i) => sameKind(list[i]!, wanted));
  let low = 0;
  let high = own.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (compare(list[own[middle]!]!, wanted) <= 0) low = middle + 1;
    else high = middle;
  }
  return low === 0 ? -1 : own[low - 1]!;
}
/** The same of a list that falls: last place whose value is not smaller. */
function falling(list: readonly Value[], wanted: Value): number {
  let found = -1;
  for (let i = 0; i < list.length; i++) {
    if (!sameKind(list[i]!, wanted)) continue;
    if (compare(list[i]!, wanted) < 0) break;
    found = i;
  }
  return found;
}

function wantedOf(operand: Operand, spot: Spot, world: World): Value {
  const value = one(operand, spot, world);
  if (isError(value)) throw new Failure(value);
  return value ?? 0;
}

const column = (block: Block, c: number): Value[] => block.map((row) => row[c] ?? null);

function lookIn(across: boolean) {
  return whole(3, 4, ([wanted, table, index, near], spot, world) => {
    const value = wantedOf(wanted, spot, world);
    const block = blockOf(table, world);
    const at = whole_(index, spot, world);
    const width =
      table instanceof Reference
        ? across
          ? table.areas[0]!.bottom - table.areas[0]!.top + 1
          : table.areas[0]!.right - table.areas[0]!.left + 1
        : across
          ? block.length
          : block[0]!.length;
    if (at < 1) return VALUE;
    if (at > width) return REF;
    const list = across ? [...block[0]!] : column(block, 0);
    const place = flag(near, spot, world, true) ? sorted(list, value) : find(list, value);
    if (place < 0) return NA;
    return (across ? block[at - 1]?.[place] : block[place]![at - 1]) ?? 0;
  });
}

/** Part of an operand by row and column from 1; 0 is all of them. */
function part(operand: Operand, row: number, col: number, world: World): Operand {
  if (operand instanceof Reference) {
    const area = operand.areas[0]!;
    const made = {
      top: row === 0 ? area.top : area.top + row - 1,
      bottom: row === 0 ? area.bottom : area.top + row - 1,
      left: col === 0 ? area.left : area.left + col - 1,
      right: col === 0 ? area.right : area.left + col - 1,
    };
    if (row < 0 || col < 0 || made.bottom > area.bottom || made.right > area.right) return REF;
    return new Reference(operand.sheet, [made]);
  }
  const block = blockOf(operand, world);
  if (row < 0 || col < 0 || row > block.length || col > block[0]!.length) return REF;
  const rows = row === 0 ? block : [block[row - 1]!];
  return rows.map((cells) => (col === 0 ? [...cells] : [cells[col - 1]!]));
}

function index([operand, row, col, area]: readonly Operand[], spot: Spot, world: World): Operand {
  if (isError(operand)) return operand;
  let from = operand;
  if (operand instanceof Reference && operand.areas.length > 1) {
    const which = operand.areas[whole_(area, spot, world, 1) - 1];
    if (which === undefined) return REF;
    from = new Reference(operand.sheet, [which]);
  }
  const r = whole_(row, spot, world, 0);
  const size =
    from instanceof Reference
      ? {
          rows: from.areas[0]!.bottom - from.areas[0]!.top + 1,
          columns: from.areas[0]!.right - from.areas[0]!.left + 1,
        }
      : { rows: isBlock(from) ? from.length : 1, columns: isBlock(from) ? from[0]!.length : 1 };
  // In a single row the one number counts columns.
  const found =
    col === undefined && size.rows === 1 && size.columns > 1
      ? part(from, 1, r, world)
      : part(from, r, whole_(col, spot, world, 0), world);
  return isBlock(found) && found.length === 1 && found[0]!.length === 1 ? found[0]![0]! : found;
}

const MODES: Readonly<Record<string, (list: readonly Value[], wanted: Value) => number>> = {
  "0": (list, wanted) => find(list, wanted, false),
  "2": (list, wanted) => find(list, wanted),
  "-1": (list, wanted) => nearest(list, wanted, -1),
  "1": (list, wanted) => nearest(list, wanted, 1),
};
function nearest(list: readonly Value[], wanted: Value, side: -1 | 1): number {
  let best = -1;
  list.forEach((value, i) => {
    if (!sameKind(value, wanted)) return;
    const order = compare(value, wanted);
    if (order !== 0 && Math.sign(order) !== side) return;
    if (best < 0 || Math.abs(Number(compare(value, list[best]!))) > 0) {
      const closer = best < 0 || (side < 0 ? compare(value, list[best]!) > 0 : compare(value, list[best]!) < 0);
      if (closer) best = i;
    }
  });
  return best;
}
function search(list: readonly Value[], wanted: Value, mode: number, direction: number): number {
  const run = MODES[String(mode)];
  if (run === undefined) throw new Failure(VALUE);
  if (direction !== -1) return run(list, wanted);
  const place = run([...list].reverse(), wanted);
  return place < 0 ? -1 : list.length - 1 - place;
}

export const lookup: Definitions = {
  VLOOKUP: lookIn(false),
  HLOOKUP: lookIn(true),
  MATCH: whole(2, 3, ([wanted, range, kind], spot, world) => {
    const value = wantedOf(wanted, spot, world);
    const list = line(range, world);
    const how = number(kind, spot, world, 1);
    const place = how === 0 ? find(list, value) : how > 0 ? sorted(list, value) : falling(list, value);
    return place < 0 ? NA : place + 1;
  }),
  XMATCH: whole(2, 4, ([wanted, range, mode, direction], spot, world) => {
    const place = search(
      line(range, world),
      wantedOf(wanted, spot, world),
      whole_(mode, spot, world, 0),
      whole_(direction, spot, world, 1),
    );
    return place < 0 ? NA : place + 1;
  }),
  XLOOKUP: whole(3, 6, ([wanted, range, results, otherwise, mode, direction], spot, world) => {
    const list = line(range, world);
    const place = search(
      list,
      wantedOf(wanted, spot, world),
      whole_(mode, spot, world, 0),
      whole_(direction, spot, world, 1),
    );
    if (place < 0) return otherwise ?? NA;
    const down =
      blockOf(range, world).length > 1 || (range instanceof Reference && range.areas[0]!.bottom > range.areas[0]!.top);
    const found = down ? part(results, place + 1, 0, world) : part(results, 0, place + 1, world);
    return isBlock(found) && found.length === 1 && found[0]!.length === 1 ? found[0]![0]! : found;
  }),
  LOOKUP: whole(
    2,
    3,
    ([wanted, range, results], spot, world) => {
      const value = wantedOf(wanted, spot, world);
      const block = blockOf(range, world);
      const across = block.length < block[0]!.length;
      const list = across ? [...block[0]!] : column(block, 0);
      const place = sorted(list, value);
      if (place < 0) return NA;
      if (results === undefined) return across ? block.at(-1)![place]! : block[place]!.at(-1)!;
      return line(results, world)[place] ?? NA;
    },
    { arrays: true },
  ),
  INDEX: whole(2, 4, index),
  ROW: whole(0, 1, ([arg], spot) => {
    if (arg === undefined) return spot.row + 1;
    if (!(arg instanceof Reference)) return VALUE;
    const { top, bottom } = arg.areas[0]!;
    if (top === bottom || spot.single) return top + 1;
    return Array.from({ length: Math.min(bottom, LAST_ROW) - top + 1 }, (_, i) => [top + i + 1]);
  }),
  COLUMN: whole(0, 1, ([arg], spot) => {
    if (arg === undefined) return spot.column + 1;
    if (!(arg instanceof Reference)) return VALUE;
    const { left, right } = arg.areas[0]!;
    if (left === right || spot.single) return left + 1;
    return [Array.from({ length: right - left + 1 }, (_, i) => left + i + 1)];
  }),
  ROWS: whole(1, 1, ([arg]) =>
    arg instanceof Reference
      ? arg.areas[0]!.bottom - arg.areas[0]!.top + 1
      : isBlock(arg)
        ? arg.length
        : isError(arg)
          ? arg
          : 1,
  ),
  COLUMNS: whole(1, 1, ([arg]) =>
    arg instanceof Reference
      ? arg.areas[0]!.right - arg.areas[0]!.left + 1
      : isBlock(arg)
        ? arg[0]!.length
        : isError(arg)
          ? arg
          : 1,
  ),
  AREAS: whole(1, 1, ([arg]) => (arg instanceof Reference ? arg.areas.length : VALUE)),
  OFFSET: whole(
    3,
    5,
    ([from, rows, columns, height, width], spot, world) => {
      if (!(from instanceof Reference)) return isError(from) ? from : VALUE;
      const area = from.areas[0]!;
      const top = area.top + whole_(rows, spot, world, 0);
      const left = area.left + whole_(columns, spot, world, 0);
      const tall = whole_(height, spot, world, area.bottom - area.top + 1);
      const wide = whole_(width, spot, world, area.right - area.left + 1);
      if (tall === 0 || wide === 0) return REF;
      const made = {
        top: tall < 0 ? top + tall + 1 : top,
        bottom: tall < 0 ? top : top + tall - 1,
        left: wide < 0 ? left + wide + 1 : left,
        right: wide < 0 ? left : left + wide - 1,
      };
      return inSheet(made) ? new Reference(from.sheet, [made]) : REF;
    },
    { volatile: true },
  ),
  INDIRECT: whole(
    1,
    2,
    ([text], spot, world) => {
      const found = parseA1Ref(words(text, spot, world).trim());
      if (!found || !("range" in found)) return REF;
      const { context } = found as { context?: readonly string[] };
      const sheet = context?.length ? world.sheetNamed(context.at(-1)!) : spot.sheet;
      if (sheet === undefined || (context?.length ?? 0) > 1) return REF;
      const { top, left, bottom, right } = found.range;
      return new Reference(sheet, [
        { top: top ?? 0, left: left ?? 0, bottom: bottom ?? LAST_ROW, right: right ?? LAST_COLUMN },
      ]);
    },
    { volatile: true },
  ),
  ADDRESS: whole(2, 5, ([row, col, fixed, style, sheet], spot, world) => {
    const kind = whole_(fixed, spot, world, 1);
    if (style !== undefined && !flag(style, spot, world, true)) return VALUE;
    const r = whole_(row, spot, world);
    const c = whole_(col, spot, world);
    if (r < 1 || c < 1 || r > LAST_ROW + 1 || c > LAST_COLUMN + 1) return VALUE;
    const plain = `${kind === 1 || kind === 3 ? "$" : ""}${columnLetters(c - 1)}${kind === 1 || kind === 2 ? "$" : ""}${r}`;
    if (sheet === undefined) return plain;
    const name = words(sheet, spot, world);
    return `${/^[A-Za-z_][\w.]*$/.test(name) ? name : `'${name.replaceAll("'", "''")}'`}!${plain}`;
  }),
};
