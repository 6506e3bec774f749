/** Arguments as functions want them: numbers of a range, one value, conditions. */
import type { Value } from "../../model/types.ts";
import {
  type Block,
  Failure,
  isBlock,
  isError,
  type Operand,
  Reference,
  toFlag,
  toNumber,
  toText,
  VALUE,
} from "../values.ts";
import type { Definition, Spot, World } from "../world.ts";

export const each = (
  least: number,
  most: number,
  run: (values: readonly Value[]) => Value,
  takesErrors = false,
): Definition => ({ kind: "each", least, most, run, takesErrors });

export const whole = (
  least: number,
  most: number,
  run: (args: readonly Operand[], spot: Spot, world: World) => Operand,
  more: { readonly volatile?: boolean; readonly arrays?: boolean } = {},
): Definition => ({ kind: "whole", least, most, run, ...more });

/** Blocks of an operand: one for each area of a reference. */
export function blocksOf(operand: Operand, world: World): Block[] {
  if (operand instanceof Reference) return operand.areas.map((area) => world.block(operand.sheet, area));
  if (isBlock(operand)) return [operand];
  return [[[operand ?? null]]];
}

export const blockOf = (operand: Operand, world: World): Block => blocksOf(operand, world)[0]!;

/** The one value of an operand; of a range or block its first. */
export function one(operand: Operand, spot: Spot, world: World): Value {
  if (operand === undefined) return null;
  const read = world.read(operand, spot, false);
  return isBlock(read) ? (read[0]?.[0] ?? null) : read;
}

export function number(operand: Operand, spot: Spot, world: World, otherwise?: number): number {
  const value = one(operand, spot, world);
  if (operand === undefined && otherwise !== undefined) return otherwise;
  return toNumber(value);
}
export const whole_ = (operand: Operand, spot: Spot, world: World, otherwise?: number): number =>
  Math.trunc(number(operand, spot, world, otherwise));
export const flag = (operand: Operand, spot: Spot, world: World, otherwise: boolean): boolean =>
  operand === undefined ? otherwise : toFlag(one(operand, spot, world));
export const words = (operand: Operand, spot: Spot, world: World): string => toText(one(operand, spot, world));

/** Every value of the arguments with whether it stood in a cell or block, in order. */
export function eachValue(
  args: readonly Operand[],
  world: World,
  seen: (value: Value, inCells: boolean) => void,
): void {
  for (const arg of args) {
    if (arg === undefined) seen(null, false);
    else if (arg instanceof Reference || isBlock(arg)) {
      for (const block of blocksOf(arg, world)) for (const row of block) for (const cell of row) seen(cell, true);
    } else seen(arg, false);
  }
}

/** Numbers as totals count them: in cells only numbers, as an argument of its own whatever can be read as one. */
export function numbers(args: readonly Operand[], world: World): number[] {
  const found: number[] = [];
  eachValue(args, world, (value, inCells) => {
    if (isError(value)) throw new Failure(value);
    if (typeof value === "number") found.push(value);
    else if (!inCells) found.push(toNumber(value));
  });
  return found;
}

/** A line of cells, row or column, as a list. */
export function line(operand: Operand, world: World): Value[] {
  const block = blockOf(operand, world);
  if (block.length === 1) return [...block[0]!];
  if (block.some((row) => row.length > 1)) throw new Failure(VALUE);
  return block.map((row) => row[0]!);
}

const escaped = (text: string) => text.replace(/[.+^${}()|[\]\\]/g, "\\$&");

/** Pattern with * and ? (and ~ before one that is meant itself) as an expression. */
export function pattern(text: string, all = true): RegExp {
  let made = "";
  for (let i = 0; i < text.length; i++) {
    const ch = text[i]!;
    if (ch === "~" && i + 1 < text.length) made += escaped(text[++i]!).replace(/^([*?])$/, "\\$1");
    else if (ch === "*") made += "[\\s\\S]*";
    else if (ch === "?") made += "[\\s\\S]";
    else made += escaped(ch);
  }
  return new RegExp(all ? `^${made}$` : made, "i");
}
export const hasPattern = (text: string): boolean => /[*?~]/.test(text);
