/** What a language must have: a sentence for every code, a name for every limit and step. Nothing missing compiles. */
import type { FactsOf, FindingCode, LimitKey, SizeName, Verdict } from "../findings.ts";
import type { Plan } from "../operations/shared/types.ts";
import type { Direction } from "../table/results.ts";
import type { StepFacts, StepKey } from "../table/steps.ts";
import type { Step } from "./chain.ts";
import type { ErrorWords } from "./errors.ts";
import type { Say } from "./say.ts";

/** A sentence with the number and its limit, and at least one way out. */
export type Said = readonly [text: string, wayOut: string];

export type FindingWords = { readonly [C in FindingCode]: (facts: FactsOf<C>, say: Say, severity: Verdict) => Said };

/** Some of the findings' words, for a file of those that belong together. */
export const findingsOf = <C extends FindingCode>(words: Pick<FindingWords, C>): Pick<FindingWords, C> => words;

/** What a step is called, and what its formula's symbols leave unsaid. */
export type StepWords = {
  readonly [K in StepKey]: readonly [
    label: string | ((facts: StepFacts<K> | undefined) => string),
    how?: string | ((facts: StepFacts<K> | undefined, say: Say) => string),
  ];
};

export interface Words {
  readonly errors: ErrorWords;
  readonly findings: FindingWords;
  readonly limits: Readonly<Record<LimitKey, string>>;
  readonly sizes: Readonly<Record<SizeName, string>>;
  readonly verdicts: Readonly<Record<Verdict, string>>;
  /** What the arguments of formulas are called in the table. */
  readonly names: Readonly<Record<string, string>>;
  /** The steps of a plan; left out where nobody reads them. */
  chain?(plan: Pick<Plan, "steps" | "units">): readonly Step[];
  readonly advice: {
    readonly kinds: Readonly<Record<"smallest change" | "cheapest" | "nothing", string>>;
    readonly blank: string;
    nothing(reason: string, wayOut: string): string;
  };
  direction(direction: Direction): string;
  pecks(count: number): string;
}
