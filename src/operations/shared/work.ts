/** What is being worked out for one row: results, steps, limits, findings. Numbers and codes; no words. */
import { type FactsOf, FINDINGS, type FindingCode, type LimitKey, type Verdict, WEIGHT } from "../../findings.ts";
import type { Results } from "../../table/results.ts";
import type { StepFacts, StepKey } from "../../table/steps.ts";
import type { DimensionName, Units } from "../../units.ts";
import type { Finding, Limit, Path, Plan, Sketch, Step } from "./types.ts";

export class Work {
  readonly units: Units;
  readonly steps: Step[] = [];
  readonly findings: Finding[] = [];
  readonly limits: Limit[] = [];
  readonly results: Results = {};
  sketch: Sketch | undefined;
  path: Path | undefined;
  left: Plan["left"];
  /** Steps are kept for a person to read; a table of thousands does without. */
  readonly detail: boolean;

  constructor(units: Units, detail = true) {
    this.units = units;
    this.detail = detail;
  }

  /** A number of the chain. `facts` hold what its worksheet function is called with; without them it has none. */
  step<K extends StepKey>(key: K, value: Step["value"], facts?: StepFacts<K>): void {
    if (this.detail) this.steps.push({ key, value, facts } as Step);
  }

  /** Something found; each code once a row. The severity is the code's own unless the rule has several. */
  find<C extends FindingCode>(code: C, facts: FactsOf<C>, severity: Verdict = FINDINGS[code].severity): void {
    const about = (facts as { about?: unknown }).about;
    if (this.findings.some((f) => f.code === code && (f.facts as { about?: unknown }).about === about)) return;
    this.findings.push({ code, severity, facts } as Finding);
  }

  /** A limit as a ratio; answers the load, at the bad end of its band when it has one. */
  limit(
    key: LimitKey,
    value: number,
    limit: number,
    dimension?: DimensionName,
    band?: readonly [number, number],
  ): number {
    const load = value / limit;
    if (!Number.isFinite(load)) return 0;
    this.limits.push({ key, load, value, limit, dimension, band });
    return band ? band[1] : load;
  }

  set(results: Results): void {
    Object.assign(this.results, results);
  }

  finish(row: string | number | null, operation: string): Plan {
    const limits = [...this.limits].sort((a, b) => worstLoad(b) - worstLoad(a));
    const findings = [...this.findings].sort(
      (a, b) => WEIGHT[b.severity] - WEIGHT[a.severity] || excess(b) - excess(a),
    );
    const verdict = findings.reduce<Verdict>((v, r) => (WEIGHT[r.severity] > WEIGHT[v] ? r.severity : v), "ok");
    return {
      row,
      operation,
      units: this.units,
      verdict,
      findings,
      limits,
      binding: limits[0],
      results: { ...this.results, load: limits[0] ? worstLoad(limits[0]) : null },
      steps: this.steps,
      sketch: this.sketch,
      path: this.path,
      left: this.left,
    };
  }
}

/** Load of a limit, at the bad end of its band when it has one. */
export const worstLoad = (limit: Pick<Limit, "load" | "band">): number => limit.band?.[1] ?? limit.load;

/** How far a finding's value is from its limit, to put the weightiest first. */
function excess({ facts }: Finding): number {
  const { value, limit } = facts as { value?: number; limit?: number };
  return value !== undefined && limit ? Math.abs(Math.log(Math.abs(value / limit) || 1)) : 0;
}
