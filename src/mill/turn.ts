/**
 * Means and peaks of a force that repeats with every tooth. The period is cut at the angles where an edge enters or leaves, so
 * that each piece is smooth; Gauss points drawn to the ends of the pieces cope with the power-law start of the chip.
 */
import { positive } from "../check.ts";
import { gaussLegendre } from "../numeric.ts";

/** Forces at one rotation: [normal to the wall, + away from it; along the feed; sum of tangential forces; torque]. */
export type Loads = Float64Array;

export interface Turn {
  /** Means over a turn. */
  readonly resultant: number;
  readonly normal: number;
  readonly feed: number;
  readonly tangential: number;
  readonly torque: number;
  /** Largest over a turn. */
  readonly peak: number;
  readonly peakTangential: number;
  /** Normal force while some part of an edge is at the wall: largest (most away from the wall) and least. */
  readonly wallHigh: number;
  readonly wallLow: number;
}

interface Rule {
  readonly x: Float64Array;
  readonly w: Float64Array;
}

/** Gauss points on [0, 1] after t = u³·(10 − 15u + 6u²), plus the two ends with weight 0. */
function ruleOf(n: number): Rule {
  const g = gaussLegendre(n);
  const x = new Float64Array(n + 2);
  const w = new Float64Array(n + 2);
  x[0] = 1e-9;
  x[n + 1] = 1 - 1e-9;
  for (let i = 0; i < n; i++) {
    const u = (1 + g.x[i]!) / 2;
    x[i + 1] = u * u * u * (10 - 15 * u + 6 * u * u);
    w[i + 1] = 15 * g.w[i]! * (u * (1 - u)) ** 2;
  }
  return { x, w };
}

/** All the rules there are, made once: few enough to need no memory. */
const RULES = { 7: ruleOf(7), 10: ruleOf(10), 14: ruleOf(14), 20: ruleOf(20), 28: ruleOf(28) } as const;

/** Points for a piece of that length [rad]; the steps are at odd lengths, which round inputs do not sit on. */
function rule(length: number): Rule {
  return RULES[length > 2.037 ? 28 : length > 1.013 ? 20 : length > 0.307 ? 14 : length > 0.103 ? 10 : 7];
}

/** More teeth than any cutter has: sums over teeth must end. */
export const MOST_TEETH = 1000;

/** Most points in a piece, and most cuts of a period. */
const MOST = 30;
const MOST_CUTS = 24;
/** Angles closer than this share of the period are one. */
const SAME = 1e-9;
const tau = new Float64Array(MOST);
const force = new Float64Array(MOST);
const tangential = new Float64Array(MOST);
const normal = new Float64Array(MOST);

/**
 * Means and peaks over one turn of a force with a period.
 *
 *   mean = (1/p)·Σ over pieces ∫ F dτ;   peak = largest sample, refined by parabolas
 *
 * @param period - p, angle from tooth to tooth [rad], scalar, > 0
 * @param breaks - angles [rad] at which an edge enters or leaves, any order, taken modulo p
 * @param at - sets the loads at an angle 0 < τ < p
 * @param wallSpan - an edge touches the wall from τ = 0 to this angle (modulo p) [rad], scalar, ≥ 0
 * @returns the figures of Turn, in the units of the loads
 * @throws TradeError "range" when the period is not above 0
 * @source ABRAMOWITZ
 * @example
 * overTurn(2, [1], (x, out) => { out[0] = x < 1 ? x : 0; }, 2).resultant //=> 0.2500000
 */
export function overTurn(
  period: number,
  breaks: readonly number[],
  at: (tau: number, out: Loads) => void,
  wallSpan: number,
): Turn {
  const p = positive("period", period);
  const cuts = [0];
  for (const b of breaks.map((x) => x - p * Math.floor(x / p)).sort((x, y) => x - y)) {
    // breaks that meet but for rounding are one
    if (b - cuts[cuts.length - 1]! > SAME * p && p - b > SAME * p) cuts.push(b);
  }
  cuts.push(p);
  const out = new Float64Array(4);
  const sum = [0, 0, 0, 0, 0];
  const best = { peak: 0, tangential: 0, high: Number.NEGATIVE_INFINITY, low: Number.POSITIVE_INFINITY };
  const magnitude = () => out[0]! * out[0]! + out[1]! * out[1]!;
  for (let piece = 0; piece + 1 < cuts.length; piece++) {
    const a = cuts[piece]!;
    const length = cuts[piece + 1]! - a;
    const onWall = a + length / 2 < wallSpan;
    out.fill(0);
    at(a + length / 2, out);
    if (out[0] === 0 && out[1] === 0 && out[2] === 0) {
      if (onWall) {
        best.high = Math.max(best.high, 0);
        best.low = Math.min(best.low, 0);
      }
      continue; // no tooth in the cut
    }
    const before = sum.slice();
    const { x, w } = rule(length);
    const n = x.length;
    let strongest = 0;
    for (let i = 0; i < n; i++) {
      out.fill(0);
      tau[i] = a + length * x[i]!;
      at(tau[i]!, out);
      const f2 = magnitude();
      force[i] = f2;
      strongest = Math.max(strongest, f2);
      tangential[i] = out[2]!;
      normal[i] = out[0]!;
      if (w[i] === 0) continue;
      const weight = w[i]! * length;
      sum[0]! += weight * Math.sqrt(f2);
      sum[1]! += weight * out[0]!;
      sum[2]! += weight * out[1]!;
      sum[3]! += weight * out[2]!;
      sum[4]! += weight * out[3]!;
    }
    const dip = dipOf(force, n, strongest);
    if (dip !== undefined && cuts.length < MOST_CUTS) {
      // near zero the magnitude has a sharp bend: take the piece again in two halves that meet there
      for (let i = 0; i < 5; i++) sum[i] = before[i]!;
      cuts.splice(piece + 1, 0, dip);
      piece--;
      continue;
    }
    const look = (value: () => number) => (angle: number) => {
      out.fill(0);
      at(angle, out);
      return value();
    };
    best.peak = top(force, n, best.peak, 1, look(magnitude));
    best.tangential = top(
      tangential,
      n,
      best.tangential,
      1,
      look(() => out[2]!),
    );
    if (onWall) {
      const value = look(() => out[0]!);
      best.high = top(normal, n, best.high, 1, value);
      best.low = top(normal, n, best.low, -1, value);
    }
  }
  if (best.high < best.low) {
    // straight edges touch the wall at one angle only
    out.fill(0);
    at(1e-9 * p, out);
    best.high = best.low = out[0]!;
  }
  return {
    resultant: sum[0]! / p,
    normal: sum[1]! / p,
    feed: sum[2]! / p,
    tangential: sum[3]! / p,
    torque: sum[4]! / p,
    peak: Math.sqrt(best.peak),
    peakTangential: best.tangential,
    wallHigh: best.high,
    wallLow: best.low,
  };
}

/** Where the magnitude dips inside a piece to less than half of its largest, or undefined. Samples are squares. */
function dipOf(samples: Float64Array, n: number, strongest: number): number | undefined {
  for (let i = 2; i < n - 2; i++) {
    const f = samples[i]!;
    if (f > strongest / 4 || f > samples[i - 1]! || f > samples[i + 1]!) continue;
    const d0 = (f - samples[i - 1]!) / (tau[i]! - tau[i - 1]!);
    const d2 = (samples[i + 1]! - f) / (tau[i + 1]! - tau[i]!);
    const bend = (d2 - d0) / (tau[i + 1]! - tau[i - 1]!);
    return bend > 0 ? (tau[i - 1]! + tau[i]!) / 2 - d0 / (2 * bend) : tau[i]!;
  }
  return undefined;
}

/** Largest (sign 1) or least (sign −1) of `start` and a sampled smooth piece; tops that could win are refined. */
function top(samples: Float64Array, n: number, start: number, sign: 1 | -1, value: (angle: number) => number): number {
  let best = sign * start;
  let range = 0;
  for (let i = 0; i < n; i++) {
    best = Math.max(best, sign * samples[i]!);
    range = Math.max(range, Math.abs(samples[i]!));
  }
  const worth = best - 0.02 * range;
  for (let i = 1; i < n - 1; i++) {
    const f = sign * samples[i]!;
    if (f < worth || f < sign * samples[i - 1]! || f < sign * samples[i + 1]!) continue;
    let [x0, x1, x2] = [tau[i - 1]!, tau[i]!, tau[i + 1]!];
    let [f0, f1, f2] = [sign * samples[i - 1]!, f, sign * samples[i + 1]!];
    for (let step = 0; step < 6; step++) {
      const d0 = (f1 - f0) / (x1 - x0);
      const d2 = (f2 - f1) / (x2 - x1);
      const bend = (d2 - d0) / (x2 - x0);
      if (!(bend < 0)) break;
      const x = (x0 + x1) / 2 - d0 / (2 * bend);
      const gain = -bend * (x - x1) ** 2;
      if (gain < 1e-11 * range) {
        best = Math.max(best, f1 + gain);
        break;
      }
      const fx = sign * value(x);
      best = Math.max(best, fx);
      if (x < x1) {
        if (fx > f1) [x2, f2, x1, f1] = [x1, f1, x, fx];
        else [x0, f0] = [x, fx];
      } else if (fx > f1) [x0, f0, x1, f1] = [x1, f1, x, fx];
      else [x2, f2] = [x, fx];
    }
  }
  return sign * best;
}
