/** What one hole, bore, seat or boss of a callout is planned as: its operation, its sizes, and what is to be asked about them. */
import type { OperationName } from "../table/rows.ts";
import type { Units } from "../units.ts";
import { DRILLED_GRADE, drilledTolerance, type Limits } from "./fits.ts";
import type { Remark } from "./remarks/remark.ts";
import type { Feature } from "./types.ts";
import { clean } from "./units.ts";

/** Larger holes are bored rather than drilled from solid [mm] (common practice). */
const LARGEST_DRILL = 40;

const INCH = 25.4;

/** The operation that a feature is made by. */
const MADE_BY: Readonly<Record<Feature["kind"], OperationName>> = {
  hole: "drill",
  drill: "drill",
  pilot: "drill",
  counterdrill: "drill",
  thread: "drill",
  ream: "ream",
  bore: "bore",
  boss: "boss",
  counterbore: "counterbore",
  spotface: "counterbore",
  countersink: "countersink",
};

export const isSeat = (operation: OperationName): boolean => operation === "counterbore" || operation === "countersink";

/** A hole is drilled where drilling holds its limits; a shaft class makes a boss of it. */
export function operationOf(
  f: Feature,
  nominal: number | null,
  limits: Limits | undefined,
  units: Units | null,
): { readonly operation: OperationName; readonly notes: readonly Remark[] } {
  if (f.kind === "counterdrill") return { operation: "drill", notes: [{ code: "counterdrill" }] };
  const plain: { operation: OperationName; notes: Remark[] } = { operation: MADE_BY[f.kind], notes: [] };
  if (f.kind !== "hole") return plain;
  if (limits?.shaft) return { operation: "boss", notes: [{ code: "shaft-class", fit: f.fit }] };
  if (nominal === null || units === null) return plain;
  const scale = units === "in" ? INCH : 1;
  const holds = drilledTolerance(nominal * scale);
  if (limits && holds !== undefined && (limits.high - limits.low) * scale < holds - 1e-9)
    return { operation: "bore", notes: [{ code: "bored-fine", grade: DRILLED_GRADE }] };
  if (nominal * scale > LARGEST_DRILL)
    return { operation: "bore", notes: [{ code: "bored-large", drill: LARGEST_DRILL }] };
  return plain;
}

/** The middle of the limits and half their width; a drill keeps its size, so limits that are not about it are only said. */
export function finishOf(
  f: Feature,
  nominal: number | null,
  limits: Limits | undefined,
  operation: OperationName,
): { readonly finish: number | null; readonly tolerance: number | null; readonly notes: readonly Remark[] } {
  if (!limits) return { finish: nominal, tolerance: null, notes: [] };
  const { low, high } = limits;
  const middle = clean((low + high) / 2);
  const half = clean((high - low) / 2);
  const fit = f.tolerance ? undefined : f.fit;
  if (operation === "drill" && middle !== nominal)
    return { finish: nominal, tolerance: null, notes: [{ code: "limits-lopsided", low, high, fit }] };
  return { finish: middle, tolerance: half, notes: [{ code: "limits-middle", low, high, fit, middle, half }] };
}

/** Depth of a countersink's cone from the face; null where an angle or a diameter is missing. */
export function coneDepth(f: Feature, finish: number | null, start: number | null): number | null {
  if (f.angle === undefined || finish === null || start === null || finish <= start) return null;
  return clean((finish - start) / 2 / Math.tan((f.angle * Math.PI) / 360));
}
