/**
 * Several like profiles on one cutter, each a little behind the one below it because the flutes are helical: a full-profile thread
 * mill. Each profile keeps its own forces; their sum is smoother than all of them at once.
 *
 * Profile k stands k pitches up the flute and trails by k·δ, δ = 2·P·tan β/Dc. Within one profile the helix is neglected.
 */
import { count, notNegative, positive, within } from "../check.ts";
import { type Loads, MOST_TEETH } from "./turn.ts";

/**
 * Angle by which each profile of a helical flute trails the one below it.
 *
 *   δ = 2·P·tan β/Dc
 *
 * @param pitch - P, distance of the profiles along the axis [mm], scalar, > 0
 * @param helixAngle - β [deg], scalar, 0 ≤ β < 90
 * @param cutterDiameter - Dc [mm], scalar, > 0
 * @returns δ [rad]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * profileTrail(1, 10, 4.5) //=> 0.07836755
 */
export function profileTrail(pitch: number, helixAngle: number, cutterDiameter: number): number {
  const beta = (within("helixAngle", helixAngle, 0, 90, undefined, "high") * Math.PI) / 180;
  return (2 * positive("pitch", pitch) * Math.tan(beta)) / positive("cutterDiameter", cutterDiameter);
}

export interface ProfileSum {
  /** Largest resultant in the radial plane, and its mean where it is wanted [N]. */
  readonly peak: number;
  readonly mean?: number;
  /** Largest sum of tangential forces [N]. */
  readonly peakTangential: number;
  /** Mean of the fourth load, the torque. */
  readonly torque: number;
}

/** Places in a tooth's turn at which the sum is taken: the peak comes out within 0.5 %. */
const PLACES = 240;
/** Squares that differ by less than this share of themselves may be of equal magnitudes. */
const ROUNDING = 1e-12;
/** Loads of one profile, twice round, and of all: normal, along the feed, tangential. */
const twice = [0, 1, 2].map(() => new Float64Array(2 * PLACES));
const sum = [new Float64Array(PLACES), new Float64Array(PLACES), new Float64Array(PLACES)] as const;

/** Adds the loads of one profile to those of all, taken from a place on and so much of a place before it. */
function addShifted(from: number, part: number): void {
  for (let d = 0; d < 3; d++) {
    const one = twice[d]!;
    const all = sum[d]!;
    for (let i = 0; i < PLACES; i++) all[i]! += (1 - part) * one[from + i]! + part * one[from + i - 1]!;
  }
}

/**
 * Largest and mean force of several profiles that trail one another, from the loads of one profile with its teeth.
 *
 *   F(τ) = |Σ_k f(τ − k·δ)|
 *
 * @param period - p, angle from tooth to tooth [rad], scalar, > 0
 * @param at - adds the loads of one profile at an angle 0 < τ < p
 * @param profiles - N [-], whole, ≥ 1
 * @param trail - δ [rad], scalar, ≥ 0
 * @param withMean - whether the mean is wanted too; false when omitted
 * @returns the figures of ProfileSum, in the units of the loads
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * sumProfiles(1, (x, out) => { out[0] += x < 0.5 ? 1 : 0; }, 2, 0.5).peak //=> 1.000
 */
export function sumProfiles(
  period: number,
  at: (tau: number, out: Loads) => void,
  profiles: number,
  trail: number,
  withMean = false,
): ProfileSum {
  const p = positive("period", period);
  const N = count("profiles", profiles, 1, MOST_TEETH);
  const shift = (notNegative("trail", trail) / p) * PLACES;
  const out = new Float64Array(4);
  let torque = 0;
  for (let i = 0; i < PLACES; i++) {
    out.fill(0);
    at(((i + 0.5) * p) / PLACES, out);
    // Twice round, so that what is up to a turn behind stands at a place before.
    for (let d = 0; d < 3; d++) {
      twice[d]![i] = out[d]!;
      twice[d]![i + PLACES] = out[d]!;
    }
    torque += (N * out[3]!) / PLACES;
  }
  for (const row of sum) row.fill(0);
  for (let k = 0; k < N; k++) {
    const back = (k * shift) % PLACES;
    const whole = Math.floor(back);
    addShifted(PLACES - whole, back - whole);
  }
  const [normal, feed, tangential] = sum;
  const square = (i: number) => normal[i]! * normal[i]! + feed[i]! * feed[i]!;
  let [largest, peakTangential] = [0, 0];
  for (let i = 0; i < PLACES; i++) {
    largest = Math.max(largest, square(i));
    peakTangential = Math.max(peakTangential, tangential[i]!);
  }
  // The exact magnitude is worked out where it can be the largest, and everywhere for its mean.
  let [peak, mean] = [0, 0];
  for (let i = 0; i < PLACES; i++) {
    if (!withMean && square(i) < largest * (1 - ROUNDING)) continue;
    const f = Math.hypot(normal[i]!, feed[i]!);
    peak = Math.max(peak, f);
    mean += f / PLACES;
  }
  return { peak, mean: withMean ? mean : undefined, peakTangential, torque };
}

/**
 * Force normal to the wall while each profile in turn makes its own part of it: the largest and the least over the profiles.
 *
 *   Fk = Σ_j f((k − j)·δ),   k = 0 … N − 1
 *
 * @param period - p, angle from tooth to tooth [rad], scalar, > 0
 * @param at - adds the loads of one profile at an angle 0 < τ < p
 * @param profiles - N [-], whole, ≥ 1
 * @param trail - δ [rad], scalar, ≥ 0
 * @returns largest and least, in the units of the loads
 * @throws TradeError "range" when an argument is outside its limits
 * @source KLINE1982 DERIVED
 * @example
 * wallProfiles(1, (x, out) => { out[0] += x < 0.5 ? 1 : 0; }, 3, 0.25) //=> {"high":2,"low":1}
 */
export function wallProfiles(
  period: number,
  at: (tau: number, out: Loads) => void,
  profiles: number,
  trail: number,
): { high: number; low: number } {
  const p = positive("period", period);
  const N = count("profiles", profiles, 1, MOST_TEETH);
  const step = notNegative("trail", trail);
  const out = new Float64Array(4);
  /** Normal force of a profile that is d places behind the one at the wall. */
  const behind = (d: number) => {
    const angle = (((d * step) % p) + p) % p;
    out.fill(0);
    at(Math.min(Math.max(angle, 1e-9 * p), (1 - 1e-9) * p), out);
    return out[0]!;
  };
  return slidingSums(N, behind);
}

/**
 * Largest and least of the sums over N profiles while each in turn is the one at the wall.
 *
 *   Fk = Σ_j f(k − j),   k = 0 … N − 1
 *
 * @param profiles - N [-], whole, ≥ 1
 * @param behind - f, what a profile adds that is so many places behind the one at the wall (ahead of it: below 0)
 * @returns largest and least, in the unit of f
 * @throws TradeError "range" when there is no profile
 * @source DERIVED
 * @example
 * slidingSums(3, (d) => d) //=> {"high":3,"low":-3}
 */
export function slidingSums(profiles: number, behind: (d: number) => number): { high: number; low: number } {
  const N = count("profiles", profiles, 1, MOST_TEETH);
  const ahead: number[] = [];
  let sum = 0;
  for (let j = 0; j < N; j++) {
    ahead.push(behind(-j));
    sum += ahead[j]!;
  }
  let [high, low] = [sum, sum];
  for (let k = 1; k < N; k++) {
    sum += behind(k) - ahead[N - k]!;
    high = Math.max(high, sum);
    low = Math.min(low, sum);
  }
  return { high, low };
}
