/**
 * Normal forces of an end mill, quick: what the solver of passes asks for again and again, without peaks and without checking the
 * cut anew for each depth.
 */
import { count, notNegative, positive, within } from "../check.ts";
import { fluteSums } from "./flutes.ts";
import type { MillCut } from "./force.ts";
import { MOST_TEETH } from "./turn.ts";

export interface WallForces {
  /**
   * Largest normal force while an edge makes the wall, from samples (within 1 % of the peak force), with a share of the edge's own
   * force; + away from the wall [N]. Radial depth above 0 and at most the diameter, axial depth above 0 [mm].
   */
  wall(radialDepth: number, axialDepth: number, share: number): number;
  /** Signed mean over a turn, of the chip alone: closed [N]. */
  mean(radialDepth: number, axialDepth: number): number;
}

/** Samples in each smooth piece of the time at the wall. */
const SAMPLES = 9;
const samples = new Float64Array(SAMPLES);
/** Ends of those pieces: the start, the end, and at most three places where an edge enters or leaves. */
const MOST_CUTS = 5;
const cuts = new Float64Array(MOST_CUTS);

/**
 * Normal forces of one cut at any depths.
 *
 *   wall as wallNormal of millForces;   mean as its meanNormal, without the edge's own force
 *
 * @param cut - the cut as for millForces but for its depths, with the full edge forces
 * @returns wall(radialDepth, axialDepth, share) and mean(radialDepth, axialDepth) [N]
 * @throws TradeError "range" when a value is outside its limits
 * @source KIENZLE1952 KLINE1982
 * @example
 * wallForces({ kc11: 1800, exponent: 0.25, feedPerTooth: 0.05, diameter: 10, teeth: 4, helixAngle: 30, radialRatio: 0.35 }).mean(1, 5) //=> 110.669
 * wallForces({ kc11: 1800, exponent: 0.25, feedPerTooth: 0.05, diameter: 10, teeth: 4, helixAngle: 0, radialRatio: 0.35, edgeRadial: 10 }).wall(1, 5, 1) //=> 50.0
 */
export function wallForces(cut: Omit<MillCut, "radialDepth" | "axialDepth">): WallForces {
  const m = within("exponent", cut.exponent, 0, 1, undefined, "high");
  const z = count("teeth", cut.teeth, 1, MOST_TEETH);
  const K = positive("kc11", cut.kc11) * positive("feedPerTooth", cut.feedPerTooth) ** (1 - m);
  const radialK = notNegative("radialRatio", cut.radialRatio) * K;
  const edgeTangential = notNegative("edgeTangential", cut.edgeTangential ?? 0);
  const edgeRadial = notNegative("edgeRadial", cut.edgeRadial ?? 0);
  const sense = cut.way === "conventional" ? -1 : 1;
  const p = (2 * Math.PI) / z;
  const sums = fluteSums(cut);
  /** Normal force at a rotation, with a share of the edge's own. */
  const normal = (tau: number, share: number) => {
    sums.at(tau);
    const { c, s, ec, es } = sums;
    return sense * (K * s + share * edgeTangential * es) + (radialK * c + share * edgeRadial * ec);
  };

  /** Puts where the pieces of the time at the wall begin and end into `cuts`, rising; how many. */
  const cutTime = (phi: number, psi: number) => {
    const span = Math.min(psi, p);
    cuts[0] = 0;
    cuts[1] = span;
    let n = 2;
    for (const place of [phi, psi, phi + psi]) {
      const b = place - p * Math.floor(place / p);
      if (!(b < span)) continue;
      let i = n++;
      for (; cuts[i - 1]! > b; i--) cuts[i] = cuts[i - 1]!;
      cuts[i] = b;
    }
    return n;
  };

  return {
    wall(ae, ap, share) {
      sums.edged = share !== 0;
      sums.engage(ae, ap);
      if (sums.psi === 0) return normal(1e-9 * p, share);
      const n = cutTime(sums.phi, sums.psi);
      let best = Number.NEGATIVE_INFINITY;
      for (let i = 0; i + 1 < n; i++) {
        const length = cuts[i + 1]! - cuts[i]!;
        if (!(length > 1e-11 * p)) continue;
        const from = cuts[i]! + 1e-9 * length;
        const step = (length * (1 - 2e-9)) / (SAMPLES - 1);
        for (let k = 0; k < SAMPLES; k++) {
          const force = normal(from + step * k, share);
          samples[k] = force;
          if (force > best) best = force;
        }
        // A top between two samples: the vertex of the parabola through it and its neighbours.
        for (let k = 1; k < SAMPLES - 1; k++) {
          const f0 = samples[k - 1]!;
          const f1 = samples[k]!;
          const f2 = samples[k + 1]!;
          const bend = f0 - 2 * f1 + f2;
          if (f1 < f0 || f1 < f2 || f1 < best - Math.abs(bend) || bend === 0) continue;
          best = Math.max(best, normal(from + step * (k + (f0 - f2) / (2 * bend)), share));
        }
      }
      return best;
    },
    mean(ae, ap) {
      sums.engage(ae, ap);
      const length = (z * ap) / (2 * Math.PI);
      return length * (sense * K * sums.whole.s + radialK * sums.whole.c);
    },
  };
}
