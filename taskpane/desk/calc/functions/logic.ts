/** Conditions and what is asked of values. Branches that are not taken are not worked out. */
import type { Value } from "../../model/types.ts";
import {
  broadcast,
  error,
  Failure,
  isBlock,
  isError,
  NA,
  type Operand,
  Reference,
  toFlag,
  toNumber,
  VALUE,
} from "../values.ts";
import type { Code, Definition, Definitions, Spot, World } from "../world.ts";
import { each, eachValue, one, whole } from "./arguments.ts";

const lazy = (
  least: number,
  most: number,
  run: (args: readonly (Code | undefined)[], spot: Spot, world: World) => Operand,
): Definition => ({ kind: "lazy", least, most, run });

const valueIn = (code: Code | undefined, spot: Spot) => code?.value(spot) ?? null;

function all(args: readonly Operand[], world: World, fold: (flags: boolean[]) => boolean): Value {
  const flags: boolean[] = [];
  eachValue(args, world, (value, inCells) => {
    if (isError(value)) throw new Failure(value);
    if (!inCells) flags.push(toFlag(value));
    else if (typeof value === "boolean" || typeof value === "number") flags.push(Boolean(value));
  });
  return flags.length === 0 ? VALUE : fold(flags);
}

/** Takes the other value where the first one is an error of the kind. */
const otherwise = (caught: (code: string) => boolean): Definition =>
  lazy(2, 2, ([first, second], spot) => {
    let value: ReturnType<Code["value"]>;
    try {
      value = valueIn(first, spot);
    } catch (thrown) {
      if (!(thrown instanceof Failure)) throw thrown;
      value = thrown.value;
    }
    if (!isBlock(value)) return isError(value) && caught(value.error) ? (second?.operand(spot) ?? 0) : value;
    if (!value.some((row) => row.some((cell) => isError(cell) && caught(cell.error)))) return value;
    return broadcast([value, valueIn(second, spot)], ([a, b]) => (isError(a) && caught(a.error) ? b! : a!));
  });

const is = (test: (value: Value) => boolean) => each(1, 1, ([value]) => test(value!), true);
const ERRORS = ["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"];

export const logic: Definitions = {
  IF: lazy(2, 3, ([test, yes, no], spot) => {
    const asked = valueIn(test, spot);
    const branch = (code: Code | undefined, given: boolean, word: boolean): Operand =>
      code === undefined ? (given ? 0 : word) : code.operand(spot);
    if (isBlock(asked)) {
      const values = [asked, yes ? yes.value(spot) : 0, no ? no.value(spot) : false];
      return broadcast(values, ([a, b, c]) => (isError(a!) ? a : toFlag(a!) ? b! : c!));
    }
    if (isError(asked)) return asked;
    return toFlag(asked) ? branch(yes, true, true) : branch(no, false, false);
  }),
  IFS: lazy(2, 254, (args, spot) => {
    for (let i = 0; i + 1 < args.length; i += 2) {
      const asked = valueIn(args[i], spot);
      const first = isBlock(asked) ? asked[0]![0]! : asked;
      if (isError(first)) return first;
      if (toFlag(first)) return args[i + 1]?.operand(spot) ?? 0;
    }
    return NA;
  }),
  IFERROR: otherwise(() => true),
  IFNA: otherwise((code) => code === "#N/A"),
  CHOOSE: lazy(2, 255, ([index, ...choices], spot) => {
    const asked = valueIn(index, spot);
    const first = isBlock(asked) ? asked[0]![0]! : asked;
    const at = Math.trunc(toNumber(first));
    return at < 1 || at > choices.length ? VALUE : (choices[at - 1]?.operand(spot) ?? 0);
  }),
  SWITCH: lazy(3, 254, ([subject, ...pairs], spot) => {
    const asked = valueIn(subject, spot);
    const wanted = isBlock(asked) ? asked[0]![0]! : asked;
    if (isError(wanted)) return wanted;
    const like = (value: Value) => (typeof value === "string" ? value.toLowerCase() : value);
    for (let i = 0; i + 1 < pairs.length; i += 2) {
      const candidate = valueIn(pairs[i], spot);
      const value = isBlock(candidate) ? candidate[0]![0]! : candidate;
      if (like(value) === like(wanted)) return pairs[i + 1]?.operand(spot) ?? 0;
    }
    return pairs.length % 2 === 1 ? (pairs.at(-1)?.operand(spot) ?? 0) : NA;
  }),
  AND: whole(1, 255, (args, _, world) => all(args, world, (flags) => flags.every(Boolean))),
  OR: whole(1, 255, (args, _, world) => all(args, world, (flags) => flags.some(Boolean))),
  XOR: whole(1, 255, (args, _, world) => all(args, world, (flags) => flags.filter(Boolean).length % 2 === 1)),
  NOT: each(1, 1, ([value]) => !toFlag(value!)),
  TRUE: each(0, 0, () => true),
  FALSE: each(0, 0, () => false),
  NA: each(0, 0, () => NA),
  ISBLANK: is((value) => value === null),
  ISNUMBER: is((value) => typeof value === "number"),
  ISTEXT: is((value) => typeof value === "string"),
  ISNONTEXT: is((value) => typeof value !== "string"),
  ISLOGICAL: is((value) => typeof value === "boolean"),
  ISERROR: is((value) => isError(value)),
  ISERR: is((value) => isError(value) && value.error !== "#N/A"),
  ISNA: is((value) => isError(value) && value.error === "#N/A"),
  ISREF: whole(1, 1, ([arg]) => arg instanceof Reference),
  ISEVEN: each(1, 1, ([value]) => Math.trunc(toNumber(value!)) % 2 === 0),
  ISODD: each(1, 1, ([value]) => Math.trunc(toNumber(value!)) % 2 !== 0),
  "ERROR.TYPE": each(
    1,
    1,
    ([value]) => {
      const at = isError(value) ? ERRORS.indexOf(value.error) : -1;
      return at < 0 ? NA : at + 1;
    },
    true,
  ),
  N: whole(1, 1, ([arg], spot, world) => {
    const value = one(arg, spot, world);
    if (isError(value)) return value;
    return typeof value === "number" ? value : value === true ? 1 : 0;
  }),
  T: whole(1, 1, ([arg], spot, world) => {
    const value = one(arg, spot, world);
    return isError(value) || typeof value === "string" ? value : "";
  }),
  TYPE: whole(1, 1, ([arg], spot, world) => {
    if (isBlock(arg)) return 64;
    const value = one(arg, spot, world);
    return isError(value) ? 16 : typeof value === "string" ? 2 : typeof value === "boolean" ? 4 : 1;
  }),
  ISFORMULA: whole(1, 1, ([arg], _, world) => {
    if (!(arg instanceof Reference)) return error("#VALUE!");
    const { top, left } = arg.areas[0]!;
    return world.formula(arg.sheet, top, left) !== "";
  }),
};
