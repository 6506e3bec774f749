/** Operators between two values. */
import type { Value } from "../model/types.ts";
import { compare, error, Failure, finite, toNumber, toText } from "./values.ts";

export const ARITHMETIC: Readonly<Record<string, (a: Value, b: Value) => Value>> = {
  "+": (a, b) => finite(toNumber(a) + toNumber(b)),
  "-": (a, b) => finite(toNumber(a) - toNumber(b)),
  "*": (a, b) => finite(toNumber(a) * toNumber(b)),
  "/": (a, b) => {
    const [x, y] = [toNumber(a), toNumber(b)];
    if (y === 0) throw new Failure(error("#DIV/0!"));
    return finite(x / y);
  },
  "^": (a, b) => {
    const [x, y] = [toNumber(a), toNumber(b)];
    if (x === 0 && y === 0) throw new Failure(error("#NUM!"));
    if (x === 0 && y < 0) throw new Failure(error("#DIV/0!"));
    return finite(x ** y);
  },
  "&": (a, b) => toText(a) + toText(b),
  "=": (a, b) => compare(a, b) === 0,
  "<>": (a, b) => compare(a, b) !== 0,
  "<": (a, b) => compare(a, b) < 0,
  ">": (a, b) => compare(a, b) > 0,
  "<=": (a, b) => compare(a, b) <= 0,
  ">=": (a, b) => compare(a, b) >= 0,
};
