/** A plan in a person's words: made at the very end, from findings, in the row's units. */
import { FINDINGS, type Verdict } from "../findings.ts";
import type { Limit as BareLimit, Finding, Plan } from "../operations/shared/types.ts";
import type { ResultKey, Results } from "../table/results.ts";
import { ROW } from "../table/rows.ts";
import type { DimensionName } from "../units.ts";
import type { Step } from "./chain.ts";
import { Say } from "./say.ts";
import type { Said, Words } from "./types.ts";

export type { Verdict } from "../findings.ts";
export type { Sketch } from "../operations/shared/types.ts";
export type { Step } from "./chain.ts";

export interface Reason {
  /** Stable code, e.g. "neck-rubs"; codes are never renamed. */
  readonly code: string;
  readonly severity: Verdict;
  /** Sentence for a person, with the number and its limit in the row's units. */
  readonly text: string;
  /** At least one way out. */
  readonly wayOut: string;
  readonly value?: number;
  readonly limit?: number;
  readonly dimension?: DimensionName;
}

export interface Limit extends BareLimit {
  /** Plain name, e.g. "deflection", "tool stress", "spindle power". */
  readonly name: string;
}

/** Results by key: numbers in canonical units, the rest as text; null where the operation has none. */
export type SaidResults = Readonly<Partial<Record<ResultKey, number | string | null>>>;

/** A plan with its reasons in sentences. */
export interface RowPlan extends Omit<Plan, "limits" | "binding" | "results" | "steps"> {
  readonly reasons: readonly Reason[];
  readonly limits: readonly Limit[];
  readonly binding?: Limit;
  readonly results: SaidResults;
  /** The results before they were put into words. */
  readonly plain: Results;
  /** Empty where the words come without a chain. */
  readonly steps: readonly Step[];
}

/** Between the sentences of a row's reasons. */
const REASON_MARK = " · ";

function reason(finding: Finding, words: Words, say: Say): Reason {
  const { code, severity } = finding;
  const facts = finding.facts as { value?: number; limit?: number };
  const tell = words.findings[code] as (facts: object, say: Say, severity: Verdict) => Said;
  const [text, wayOut] = tell(facts, say, severity);
  const dimension = FINDINGS[code].dimension;
  return { code: spokenCode(finding), severity, text, wayOut, value: facts.value, limit: facts.limit, dimension };
}

/** The code that stands outside: a bad cell is known by its column. */
function spokenCode(finding: Finding): string {
  if (finding.code !== "bad-cell") return finding.code;
  return `bad-${ROW[finding.facts.about].heading.toLowerCase().replace(/ /g, "-")}`;
}

const reasonsOf = (plan: Plan, words: Words, say: Say): Reason[] =>
  plan.findings.map((finding) => reason(finding, words, say));

function resultsOf(plan: Plan, words: Words, say: Say, reasons: readonly Reason[]): SaidResults {
  const { direction, depths, ...plain } = plan.results;
  const said: { -readonly [K in keyof SaidResults]: SaidResults[K] } = { ...plain };
  if (direction) said.direction = words.direction(direction);
  if (depths) said.depths = "pecks" in depths ? words.pecks(depths.pecks) : say.list(depths);
  said.row = plan.row;
  said.verdict = words.verdicts[plan.verdict];
  said.reasons = reasons.map((r) => r.text).join(REASON_MARK);
  said.limit = plan.binding ? words.limits[plan.binding.key] : null;
  return said;
}

/** The results of `worded` alone: what stands in the cells of a table. */
export function wordedResults(plan: Plan, words: Words): SaidResults {
  const say = new Say(plan.units, words);
  return resultsOf(plan, words, say, reasonsOf(plan, words, say));
}

/** The plan with sentences for its findings and names for its limits. */
export function worded(plan: Plan, words: Words): RowPlan {
  const say = new Say(plan.units, words);
  const reasons = reasonsOf(plan, words, say);
  const named = (limit: BareLimit): Limit => ({ ...limit, name: words.limits[limit.key] });
  return {
    ...plan,
    reasons,
    limits: plan.limits.map(named),
    binding: plan.binding && named(plan.binding),
    results: resultsOf(plan, words, say, reasons),
    plain: plan.results,
    steps: words.chain?.(plan) ?? [],
  };
}
