/** A row of the shop as it is worked out, and what stands behind its numbers. */
import { type Case, planOf, type RowCells, STEEL } from "../findings/rule.ts";

export type More = Omit<Case, "row">;
export const at = (row: RowCells, more: More = {}) => planOf({ row: { ...STEEL, ...row }, ...more });
export type Plan = ReturnType<typeof at>;

export const known = (facts: object = {}) =>
  Object.fromEntries(Object.entries(facts).filter(([, v]) => v !== undefined));
/** Facts of a step, its value, and the facts of all steps. */
export const facts = (plan: Plan, key: string) => known(plan.steps.find((s) => s.key === key)?.facts);
export const value = (plan: Plan, key: string) => plan.steps.find((s) => s.key === key)?.value as number;
export const all = (plan: Plan) => Object.fromEntries(plan.steps.map((s) => [s.key, known(s.facts)]));
/** Value, limit and dimension of each limit. */
export const limits = (plan: Plan) =>
  Object.fromEntries(plan.limits.map(({ key, value, limit, dimension }) => [key, [value, limit, dimension]]));
