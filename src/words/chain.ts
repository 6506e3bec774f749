/** The steps of a plan in words: label, formula, worksheet function, source. Only what shows a row loads this. */
import type { Step as BareStep, Plan } from "../operations/shared/types.ts";
import type { SourceId } from "../sources.ts";
import { type Call, type CallArgument, type Segment, STEP, type StepKey, type StepQuantity } from "../table/steps.ts";
import { type DimensionName, fromCanonical, type Units } from "../units.ts";
import { Say } from "./say.ts";
import type { StepWords, Words } from "./types.ts";

/** One number of the chain, so that anyone can check it by hand. */
export interface Step {
  readonly key: StepKey;
  readonly label: string;
  readonly value: number | string;
  readonly dimension?: DimensionName;
  /** Unit when it is none of the dimensions: "1/min", "°", "s", "%". */
  readonly unit?: string;
  /** Formula in symbols and what they leave unsaid. */
  readonly formula: string;
  /** The single worksheet function that gives it, with the row's numbers, e.g. `=CUT.RPM(120,10,"mm")`. */
  readonly cell?: string;
  readonly source: SourceId;
}

/** The steps of a plan in the row's units. */
export function chain(plan: Pick<Plan, "steps" | "units">, words: Words, stepWords: StepWords): Step[] {
  const say = new Say(plan.units, words);
  return plan.steps.map((step) => told(step, stepWords, say, plan.units));
}

type Told = (facts: unknown, say: Say) => string;

function told({ key, value, facts }: BareStep, words: StepWords, say: Say, units: Units): Step {
  const quantity = STEP[key] as StepQuantity<unknown>;
  const [label, how] = words[key];
  const formula = typeof quantity.formula === "string" ? quantity.formula : quantity.formula(facts);
  const more = typeof how === "function" ? (how as Told)(facts, say) : (how ?? "");
  const call = facts === undefined ? null : (quantity.call?.(facts, units) ?? null);
  return {
    key,
    label: typeof label === "function" ? (label as Told)(facts, say) : label,
    value: typeof value === "number" ? value : valueText(key, value, say),
    dimension: typeof value === "number" ? quantity.dimension : undefined,
    unit: quantity.unit,
    formula: [formula, more].filter((part) => part !== "").join("; "),
    cell: call === null ? undefined : cellText(call, units),
    source: typeof quantity.source === "function" ? quantity.source(facts) : quantity.source,
  };
}

const valueText = (key: StepKey, value: readonly number[], say: Say) =>
  key === "speedRange" ? value.map((v) => say.value(v, "surface speed")).join(" – ") : say.list(value);

/** Text of a worksheet formula with a row's numbers. */
export function cellText([name, ...args]: Call, units: Units): string {
  const kept = [...args];
  while (kept.length > 0 && kept[kept.length - 1] === null) kept.pop();
  return `=CUT.${name}(${kept.map((a) => argument(a, units)).join(",")})`;
}

function argument(a: CallArgument, units: Units): string {
  if (a === null) return "";
  if (typeof a === "string") return `"${a.replace(/"/g, '""')}"`;
  if (typeof a === "boolean") return a ? "TRUE" : "FALSE";
  if (typeof a === "number") return written(a);
  if (isSegments(a)) return `{${a.map((s) => `${own(s.diameter, units)},${own(s.length, units)}`).join(";")}}`;
  const [value, dimension] = a;
  return written(fromCanonical(value, dimension, units));
}

const isSegments = (a: readonly Segment[] | readonly [number, DimensionName]): a is readonly Segment[] =>
  [...a].every((s) => typeof s === "object");
const own = (value: number, units: Units) => written(fromCanonical(value, "length", units));
const written = (value: number) => String(Number(value.toPrecision(15)));
