/** What the searches for advice share: a row that is worked out again and again, with a bound on how often. */
import type { Verdict } from "../findings.ts";
import type { Plan } from "../operations/shared/types.ts";
import type { Lists } from "../table/read.ts";
import type { Row } from "../table/rows.ts";
import { type Change, type Situation, situationOf, withChanges } from "./changes.ts";

/** Most times that a row is worked out for its advice. */
export const ADVICE_BUDGET = 74;

/** A search that can be left between two times that the row is worked out. */
export type Steps<T> = Generator<void, T>;

/** Changes of a row, and the row as it is planned with them. */
export interface Found {
  readonly changes: readonly Change[];
  readonly plan: Plan;
}

export class Search {
  /** How often the row was worked out. */
  tried = 1;
  /** The row as it is. */
  readonly base: Plan;
  readonly situation: Situation;
  private readonly workOut: (row: Row) => Plan;
  private readonly known = new Map<string, Plan>();

  constructor(row: Row, lists: Lists, workOut: (row: Row) => Plan) {
    this.workOut = workOut;
    this.base = workOut(row);
    this.situation = situationOf(row, this.base, lists);
  }

  /** The row with changes, worked out once for each; whoever looks on may rest before it. */
  *run(changes: readonly Change[]): Steps<Plan> {
    if (changes.length === 0) return this.base;
    const key = JSON.stringify(changes.map((c) => [c.key, c.to]));
    let plan = this.known.get(key);
    if (plan === undefined) {
      yield;
      this.tried++;
      plan = this.workOut(withChanges(this.situation.row, changes));
      this.known.set(key, plan);
    }
    return plan;
  }

  get spent(): boolean {
    return this.tried >= ADVICE_BUDGET;
  }
}

/** What is wrong with a row. */
export const weighty = (plan: Plan) => plan.findings.filter((f) => f.severity !== "ok");

/** How far a row is from holding: stops, then checks, then the load. */
const FAR: Readonly<Record<Verdict, number>> = { stop: 100, check: 1, ok: 0 };
export const badness = ({ findings, results: { load } }: Plan): number =>
  findings.reduce((sum, f) => sum + FAR[f.severity], 0) + Math.min(0.9, (load ?? 0) / 10);

/** Money where it is known, else seconds. */
export const price = (plan: Plan): number => plan.results.cost ?? plan.results.time ?? Number.POSITIVE_INFINITY;
