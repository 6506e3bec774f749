/** What is taken from @formulajs/formulajs as it is: money over time, distributions, number systems, units. */
import * as formulajs from "@formulajs/formulajs";
import type { Value } from "../../model/types.ts";
import { error, finite, isError, type Operand, toNumber, toText, VALUE } from "../values.ts";
import type { Definition, Definitions } from "../world.ts";
import { each, numbers, one, whole } from "./arguments.ts";

type Run = (...args: unknown[]) => unknown;

/** An answer of the library as a value; its errors are Error objects whose message is the code. */
function answer(found: unknown): Value {
  if (found instanceof Error) return error(found.message.startsWith("#") ? found.message : "#VALUE!");
  if (typeof found === "number") return finite(found);
  if (typeof found === "string" || typeof found === "boolean") return found;
  return VALUE;
}
/** A function named "A.B" is a part of another one there. */
const named = (name: string): Run =>
  name.split(".").reduce<unknown>((found, part) => (found as Record<string, unknown>)[part], formulajs) as Run;

/** One letter an argument: n number, t text, b yes or no; small letters after "|" may be left out. */
function scalar(name: string, spec: string): Definition {
  const [must = "", may = ""] = spec.split("|");
  const run = named(name);
  const letters = must + may;
  const read = (value: Value, i: number): unknown => {
    if (letters[i] === "t") return toText(value);
    const number = toNumber(value);
    return letters[i] === "b" ? number !== 0 : number;
  };
  return each(must.length, letters.length, (values) => answer(run(...values.map(read))));
}

const SCALARS: Readonly<Record<string, string>> = {
  PMT: "nnn|nn",
  FV: "nnn|nn",
  PV: "nnn|nn",
  NPER: "nnn|nn",
  IPMT: "nnnn|nn",
  PPMT: "nnnn|nn",
  SLN: "nnn",
  SYD: "nnnn",
  EFFECT: "nn",
  NOMINAL: "nn",
  RRI: "nnn",
  "NORM.DIST": "nnnb",
  "NORM.INV": "nnn",
  "NORM.S.DIST": "nb",
  "NORM.S.INV": "n",
  "T.DIST": "nnb",
  "T.INV": "nn",
  "CHISQ.DIST": "nnb",
  "CHISQ.INV": "nn",
  "BINOM.DIST": "nnnb",
  "POISSON.DIST": "nnb",
  "EXPON.DIST": "nnb",
  "WEIBULL.DIST": "nnnb",
  STANDARDIZE: "nnn",
  ERF: "n",
  ERFC: "n",
  GAMMALN: "n",
  BIN2DEC: "t",
  DEC2BIN: "n|n",
  HEX2DEC: "t",
  OCT2DEC: "t",
  BITAND: "nn",
  BITOR: "nn",
  BITXOR: "nn",
  ROMAN: "n",
  ARABIC: "t",
};

const list = (name: string, firsts: number): Definition =>
  whole(firsts + 1, 255, (args, spot, world): Operand => {
    const heads = args.slice(0, firsts).map((arg) => one(arg, spot, world));
    for (const head of heads) if (isError(head)) return head;
    return answer(named(name)(...heads.map((head) => toNumber(head)), numbers(args.slice(firsts), world)));
  });

/** The library converts by factors alone; degrees have different zeros. */
const KELVIN: Readonly<Record<string, readonly [factor: number, zero: number]>> = {
  K: [1, 0],
  kel: [1, 0],
  C: [1, 273.15],
  cel: [1, 273.15],
  F: [5 / 9, 273.15 - (32 * 5) / 9],
  fah: [5 / 9, 273.15 - (32 * 5) / 9],
};

export const library: Definitions = {
  ...Object.fromEntries(Object.entries(SCALARS).map(([name, spec]) => [name, scalar(name, spec)])),
  CONVERT: each(3, 3, ([value, from, to]) => {
    const [number, own, other] = [toNumber(value!), toText(from!), toText(to!)];
    const [a, b] = [KELVIN[own], KELVIN[other]];
    if (!a || !b) return answer(named("CONVERT")(number, own, other));
    const kelvin = number * a[0] + a[1];
    return finite(Number(((kelvin - b[1]) / b[0]).toPrecision(14)));
  }),
  NORMDIST: scalar("NORM.DIST", "nnnb"),
  NORMINV: scalar("NORM.INV", "nnn"),
  NORMSINV: scalar("NORM.S.INV", "n"),
  NORMSDIST: each(1, 1, ([z]) => answer((named("NORM.S.DIST") as Run)(toNumber(z!), true))),
  DEC2HEX: each(1, 2, (values) => {
    const found = answer(named("DEC2HEX")(...values.map((value) => toNumber(value))));
    return typeof found === "string" ? found.toUpperCase() : found;
  }),
  NPV: list("NPV", 1),
  IRR: whole(1, 2, ([flows, guess], spot, world) =>
    answer(named("IRR")(numbers([flows], world), guess === undefined ? 0.1 : toNumber(one(guess, spot, world)))),
  ),
};
