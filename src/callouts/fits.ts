/** Limits of size of a feature of a callout: from limits, deviations or a tolerance class such as H7 and g6. */
import { TradeError } from "../errors.ts";
import { classLimits, standardTolerance } from "../fits/limits.ts";
import type { Units } from "../units.ts";
import type { Feature } from "./types.ts";
import { clean, inUnits } from "./units.ts";

const INCH = 25.4;
/** A drill holds about this grade (common practice); a hole with less tolerance is bored. */
export const DRILLED_GRADE = 11;
/** Classes that drawings of cut parts carry; A1, C6 or D9 behind a size is a datum, a chamfer or a depth rather than a class (common practice). */
const ORDINARY = /[E-V](?:[5-9]|1[0-3])$/i;

/** Limits of size in the units of a row. */
export interface Limits {
  readonly low: number;
  readonly high: number;
  readonly shaft?: boolean;
}

/** What the tables of ISO 286 answer; undefined where they hold nothing for the size or the class. */
function covered<T>(ask: () => T): T | undefined {
  try {
    return ask();
  } catch (problem) {
    if (problem instanceof TradeError) return undefined;
    throw problem;
  }
}

/** Tolerance that drilling holds on a diameter [mm]; undefined where the tables end. */
export const drilledTolerance = (diameter: number): number | undefined =>
  covered(() => standardTolerance(diameter, String(DRILLED_GRADE)));

/** Limits of size in the row's units, from limits, deviations or a tolerance class; undefined where they make no sense. */
export function limitsOf(f: Feature, units: Units | null): Limits | undefined {
  const limits = written(f, units);
  return limits && limits.low > 0 && limits.high > limits.low ? limits : undefined;
}

function written(f: Feature, units: Units | null): Limits | undefined {
  const nominal = inUnits(f.diameter, units);
  if (nominal === null) return undefined;
  if (f.tolerance) {
    // A side that is not written counts as 0 (see the note).
    const [lower, upper] = [inUnits(f.tolerance.lower, units)!, inUnits(f.tolerance.upper, units)!];
    return { low: clean(nominal + lower), high: clean(nominal + upper), shaft: /^[a-z]/.test(f.fit ?? "") };
  }
  if (f.diameter?.limits) {
    const { diameter } = f;
    const [low, high] = f.diameter.limits;
    const own = (value: number) => inUnits({ ...diameter, value }, units)!;
    return { low: own(low), high: own(high) };
  }
  if (!f.fit || units === null) return undefined;
  const scale = units === "in" ? INCH : 1;
  const known = ORDINARY.test(f.fit) ? covered(() => classLimits(nominal * scale, f.fit!)) : undefined;
  return (
    known && {
      low: clean(nominal + known.lower / scale),
      high: clean(nominal + known.upper / scale),
      shaft: known.kind === "shaft",
    }
  );
}
