/** What is being worked out for one row: numbers with their formulas, limits, reasons; and how they read in the row's units. */
import type { SourceId } from "../../sources.ts";
import { type DimensionName, fromCanonical, symbol, type Units } from "../../units.ts";
import type { Limit, Reason, Results, RowPlan, Sketch, Step, Verdict } from "./types.ts";

/** A number with its dimension for a worksheet formula; plain numbers and words go as they are. */
export type FormulaArgument = number | string | boolean | readonly [number, DimensionName] | null;

const WEIGHT: Record<Verdict, number> = { stop: 2, check: 1, ok: 0 };

export class Work {
  readonly units: Units;
  readonly steps: Step[] = [];
  readonly reasons: Reason[] = [];
  readonly limits: Limit[] = [];
  readonly results: Record<string, number | string | null> = {};
  sketch: Sketch | undefined;
  /** Steps and their worksheet formulas are kept for a person to read; a table of thousands does without. */
  readonly detail: boolean;

  constructor(units: Units, detail = true) {
    this.units = units;
    this.detail = detail;
  }

  /** A canonical value as text in the row's units, e.g. "0.031 mm". */
  say(value: number, dimension: DimensionName = "length"): string {
    const own = fromCanonical(value, dimension, this.units);
    return `${tidy(own, dimension === "length" ? (this.units === "in" ? 4 : 3) : 1)} ${symbol(dimension, this.units)}`;
  }

  /** A length as a bare number in the row's units, e.g. "0.3125". */
  number(value: number): string {
    return tidy(fromCanonical(value, "length", this.units), this.units === "in" ? 4 : 3);
  }

  /** Text of a worksheet formula with this row's numbers. */
  formula(name: string, ...args: FormulaArgument[]): string {
    if (!this.detail) return "";
    while (args.length > 0 && args[args.length - 1] === null) args.pop();
    return `=CUT.${name}(${args.map((a) => this.argument(a)).join(",")})`;
  }

  private argument(a: FormulaArgument): string {
    if (a === null) return "";
    if (typeof a === "string") return `"${a.replace(/"/g, '""')}"`;
    if (typeof a === "boolean") return a ? "TRUE" : "FALSE";
    const value = typeof a === "number" ? a : fromCanonical(a[0], a[1], this.units);
    return String(Number(value.toPrecision(15)));
  }

  /** An array constant of (diameter, length) pairs for a worksheet formula. */
  segments(parts: readonly { readonly diameter: number; readonly length: number }[]): string {
    return `{${parts
      .map((p) => `${this.argument([p.diameter, "length"])},${this.argument([p.length, "length"])}`)
      .join(";")}}`;
  }

  step(
    key: string,
    label: string,
    value: number | string,
    formula: string,
    source: SourceId,
    more: { dimension?: DimensionName; unit?: string; cell?: string } = {},
  ): void {
    if (this.detail) this.steps.push({ key, label, value, formula, source, ...more });
  }

  reason(
    severity: Verdict,
    code: string,
    text: string,
    wayOut: string,
    more: { value?: number; limit?: number; dimension?: DimensionName } = {},
  ): void {
    if (this.reasons.some((r) => r.code === code)) return;
    this.reasons.push({ severity, code, text, wayOut, ...more });
  }

  /** A limit as a ratio. A band, when given, is the load at the good and the bad end. */
  limit(
    key: string,
    name: string,
    value: number,
    limit: number,
    dimension?: DimensionName,
    band?: readonly [number, number],
  ): number {
    const load = value / limit;
    if (!Number.isFinite(load)) return 0;
    this.limits.push({ key, name, load, value, limit, dimension, band });
    return band ? band[1] : load;
  }

  set(results: Results): void {
    Object.assign(this.results, results);
  }

  finish(row: string | number | null, operation: string): RowPlan {
    const bad = (l: Limit) => l.band?.[1] ?? l.load;
    const limits = [...this.limits].sort((a, b) => bad(b) - bad(a));
    const binding = limits[0];
    const excess = (r: Reason) =>
      r.value !== undefined && r.limit ? Math.abs(Math.log(Math.abs(r.value / r.limit) || 1)) : 0;
    const reasons = [...this.reasons].sort((a, b) => WEIGHT[b.severity] - WEIGHT[a.severity] || excess(b) - excess(a));
    const verdict = reasons.reduce<Verdict>((v, r) => (WEIGHT[r.severity] > WEIGHT[v] ? r.severity : v), "ok");
    return {
      row,
      operation,
      units: this.units,
      verdict,
      reasons,
      limits,
      binding,
      results: {
        ...this.results,
        row,
        verdict,
        reasons: reasons.map((r) => r.text).join(" · "),
        limit: binding?.name ?? null,
        load: binding ? bad(binding) : null,
      },
      steps: this.steps,
      sketch: this.sketch,
    };
  }
}

/** A number with so many decimals, more where it takes them to show two digits, without trailing zeros. */
export function tidy(value: number, decimals = 3): string {
  if (value === 0) return "0";
  if (!Number.isFinite(value)) return Number.isNaN(value) ? "?" : value > 0 ? "∞" : "−∞";
  const needed = Math.max(decimals, 1 - Math.floor(Math.log10(Math.abs(value))));
  return String(Number(value.toFixed(Math.min(12, needed))));
}
