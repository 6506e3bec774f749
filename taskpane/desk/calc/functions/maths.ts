/** Arithmetic from number to number. */
import * as formulajs from "@formulajs/formulajs";
import { DIV0, Failure, finite, NUM, toNumber } from "../values.ts";
import type { Definition, Definitions } from "../world.ts";
import { each } from "./arguments.ts";

/** Numbers in, a number out; what is not a number afterwards is out of range. */
const from = (least: number, most: number, run: (...numbers: number[]) => number): Definition =>
  each(least, most, (values) => {
    const answer: unknown = run(...values.map(toNumber));
    return typeof answer === "number" ? finite(answer) : NUM;
  });
const guarded = (test: (x: number) => boolean, run: (x: number) => number) =>
  from(1, 1, (x) => (test(x) ? run(x) : Number.NaN));

const { ROUND, ROUNDUP, ROUNDDOWN } = formulajs;
const digits = (run: (number: number, digits: number) => unknown, least = 2): Definition =>
  from(least, 2, (x, n = 0) => run(x, Math.trunc(n)) as number);

/** A quotient that is whole but for the last bits is whole. */
const nearly = (x: number): number => {
  const rounded = Math.round(x);
  return Math.abs(x - rounded) <= 1e-12 * Math.max(1, Math.abs(x)) ? rounded : x;
};
const clean = (x: number): number => Number(x.toPrecision(15));
const zero = (y: number): void => {
  if (y === 0) throw new Failure(DIV0);
};

const ceiling = (x: number, step: number): number => (step === 0 ? 0 : clean(Math.ceil(nearly(x / step)) * step));
const floor = (x: number, step: number): number => (step === 0 ? 0 : clean(Math.floor(nearly(x / step)) * step));
const opposite = (x: number, step: number) => x > 0 && step < 0;

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
const factorial = (n: number): number => (n < 0 ? Number.NaN : n < 2 ? 1 : n * factorial(n - 1));

export const maths: Definitions = {
  ABS: from(1, 1, Math.abs),
  SIGN: from(1, 1, Math.sign),
  INT: from(1, 1, Math.floor),
  SQRT: guarded((x) => x >= 0, Math.sqrt),
  SQRTPI: guarded(
    (x) => x >= 0,
    (x) => Math.sqrt(x * Math.PI),
  ),
  EXP: from(1, 1, Math.exp),
  LN: guarded((x) => x > 0, Math.log),
  LOG10: guarded((x) => x > 0, Math.log10),
  LOG: each(1, 2, ([value, base]) => {
    const [x, b] = [toNumber(value!), base === undefined ? 10 : toNumber(base)];
    if (x <= 0 || b <= 0) return NUM;
    if (b === 1) return DIV0;
    return finite(b === 10 ? Math.log10(x) : b === 2 ? Math.log2(x) : Math.log(x) / Math.log(b));
  }),
  PI: each(0, 0, () => Math.PI),
  SIN: from(1, 1, Math.sin),
  COS: from(1, 1, Math.cos),
  TAN: from(1, 1, Math.tan),
  ASIN: from(1, 1, Math.asin),
  ACOS: from(1, 1, Math.acos),
  ATAN: from(1, 1, Math.atan),
  ATAN2: from(2, 2, (x, y) => {
    if (x === 0 && y === 0) throw new Failure(DIV0);
    return Math.atan2(y, x);
  }),
  SINH: from(1, 1, Math.sinh),
  COSH: from(1, 1, Math.cosh),
  TANH: from(1, 1, Math.tanh),
  ASINH: from(1, 1, Math.asinh),
  ACOSH: from(1, 1, Math.acosh),
  ATANH: from(1, 1, Math.atanh),
  DEGREES: from(1, 1, (x) => (x * 180) / Math.PI),
  RADIANS: from(1, 1, (x) => (x * Math.PI) / 180),
  POWER: from(2, 2, (x, y) => {
    if (x === 0 && y === 0) return Number.NaN;
    if (x === 0 && y < 0) throw new Failure(DIV0);
    return x ** y;
  }),
  MOD: from(2, 2, (x, y) => {
    zero(y);
    const rest = x - y * Math.floor(nearly(x / y));
    return Math.abs(rest) < 1e-14 * Math.abs(x) ? 0 : rest;
  }),
  QUOTIENT: from(2, 2, (x, y) => {
    zero(y);
    return Math.trunc(x / y);
  }),
  ROUND: digits(ROUND),
  ROUNDUP: digits(ROUNDUP),
  ROUNDDOWN: digits(ROUNDDOWN),
  TRUNC: digits(ROUNDDOWN, 1),
  MROUND: from(2, 2, (x, step) => {
    if (step === 0) return 0;
    if (x * step < 0) return Number.NaN;
    const n = nearly(Math.abs(x / step));
    return clean(Math.floor(n + 0.5) * Math.abs(step) * Math.sign(x));
  }),
  CEILING: from(2, 2, (x, step) => (opposite(x, step) ? Number.NaN : ceiling(x, step))),
  FLOOR: from(2, 2, (x, step) => {
    if (opposite(x, step)) return Number.NaN;
    if (step === 0 && x !== 0) throw new Failure(DIV0);
    return floor(x, step);
  }),
  "CEILING.MATH": from(1, 3, (x, step = 1, mode = 0) =>
    x < 0 && mode !== 0 ? -ceiling(-x, Math.abs(step)) : ceiling(x, Math.abs(step)),
  ),
  "FLOOR.MATH": from(1, 3, (x, step = 1, mode = 0) =>
    x < 0 && mode !== 0 ? -floor(-x, Math.abs(step)) : floor(x, Math.abs(step)),
  ),
  EVEN: from(1, 1, (x) => Math.sign(x) * 2 * Math.ceil(Math.abs(x) / 2)),
  ODD: from(1, 1, (x) => (x === 0 ? 1 : Math.sign(x) * (2 * Math.ceil((Math.abs(x) - 1) / 2) + 1))),
  FACT: from(1, 1, (x) => factorial(Math.trunc(x))),
  COMBIN: from(2, 2, (n, k) => {
    const [a, b] = [Math.trunc(n), Math.trunc(k)];
    if (a < 0 || b < 0 || a < b) return Number.NaN;
    let made = 1;
    for (let i = 1; i <= Math.min(b, a - b); i++) made = (made * (a - Math.min(b, a - b) + i)) / i;
    return Math.round(made);
  }),
  PERMUT: from(2, 2, (n, k) => factorial(Math.trunc(n)) / factorial(Math.trunc(n) - Math.trunc(k))),
  GCD: from(1, 255, (...all) => all.map(Math.trunc).reduce(gcd)),
  LCM: from(1, 255, (...all) => all.map(Math.trunc).reduce((a, b) => (a === 0 || b === 0 ? 0 : (a * b) / gcd(a, b)))),
  DELTA: from(1, 2, (x, y = 0) => (x === y ? 1 : 0)),
  RAND: { ...each(0, 0, () => Math.random()), volatile: true },
  RANDBETWEEN: {
    ...from(2, 2, (low, high) => {
      const [a, b] = [Math.ceil(low), Math.floor(high)];
      return a > b ? Number.NaN : a + Math.floor(Math.random() * (b - a + 1));
    }),
    volatile: true,
  },
} satisfies Record<string, Definition>;
