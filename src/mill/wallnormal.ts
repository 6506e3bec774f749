/**
 * Normal forces of an end mill, quick: what the solver of passes asks for again and again, without peaks and without checking the
 * cut anew for each depth. Of the sums in force.ts only the part normal to the wall is made.
 */
import { count, notNegative, positive, within } from "../check.ts";
import { powers } from "../numeric.ts";
import { antiderivative } from "./antiderivative.ts";
import { type MillCut, STRAIGHT } from "./force.ts";
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
  const D = positive("diameter", cut.diameter);
  const z = count("teeth", cut.teeth, 1, MOST_TEETH);
  const K = positive("kc11", cut.kc11) * positive("feedPerTooth", cut.feedPerTooth) ** (1 - m);
  const slope = Math.tan((within("helixAngle", cut.helixAngle, 0, 90, undefined, "high") * Math.PI) / 180);
  const radialK = notNegative("radialRatio", cut.radialRatio) * K;
  const edgeTangential = notNegative("edgeTangential", cut.edgeTangential ?? 0);
  const edgeRadial = notNegative("edgeRadial", cut.edgeRadial ?? 0);
  const sense = cut.way === "conventional" ? -1 : 1;
  const p = (2 * Math.PI) / z;
  const power = powers(1 - m);
  const G = antiderivative(m);

  // the cut that is looked at: engagement, its antiderivatives, trail of the flute, edge forces, length of edge
  let [phi, wholeC, wholeS, psi, Et, Er, ap] = [0, 0, 0, 0, 0, 0, 0];
  let edged = false;
  const engage = (ae: number) => {
    phi = ae / D > 1 - 1e-15 ? Math.PI : 2 * Math.asin(Math.sqrt(ae / D));
    G.at(phi);
    wholeC = G.c;
    wholeS = G.s;
  };
  /** From the sums of cos and sin, of the chip part and of the edge part, to the force. */
  const normal = (c: number, s: number, ec: number, es: number) => sense * (K * s + Et * es) + (radialK * c + Er * ec);

  const straight = (tau: number) => {
    let c = 0;
    let s = 0;
    let ec = 0;
    let es = 0;
    for (let x = tau; x < phi; x += p) {
      const sine = Math.sin(x);
      const cosine = Math.cos(x);
      const f = power(sine);
      c += f * cosine;
      s += f * sine;
      ec += cosine;
      es += sine;
    }
    return normal(ap * c, ap * s, ap * ec, ap * es);
  };
  const helical = (tau: number) => {
    let c = 0;
    let s = 0;
    let ec = 0;
    let es = 0;
    let inside = 0; // leading ends in the cut
    for (let x = tau; x < phi; x += p) {
      G.at(x);
      c += G.c;
      s += G.s;
      if (edged) {
        ec += Math.sin(x);
        es += 1 - Math.cos(x);
      }
      inside++;
    }
    const passed = Math.max(0, Math.ceil((psi - tau) / p)); // flutes whose trailing end has not come to the wall
    let past = passed - inside; // flutes with the leading end out of the cut and the trailing end not
    for (let y = tau + passed * p - psi; y < phi; y += p) {
      G.at(y);
      c -= G.c;
      s -= G.s;
      if (edged) {
        ec -= Math.sin(y);
        es -= 1 - Math.cos(y);
      }
      past++;
    }
    const perAngle = ap / psi; // length of edge per angle, along the axis
    return normal(
      perAngle * (c + past * wholeC),
      perAngle * (s + past * wholeS),
      perAngle * (ec + past * Math.sin(phi)),
      perAngle * (es + past * (1 - Math.cos(phi))),
    );
  };

  /** Puts where the pieces of the time at the wall begin and end into `cuts`, rising; how many. */
  const cutTime = () => {
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
    wall(ae, axialDepth, share) {
      ap = axialDepth;
      engage(ae);
      Et = share * edgeTangential;
      Er = share * edgeRadial;
      edged = Et > 0 || Er > 0;
      psi = (2 * ap * slope) / D;
      if (psi < STRAIGHT) return straight(1e-9 * p);
      const n = cutTime();
      let best = Number.NEGATIVE_INFINITY;
      for (let i = 0; i + 1 < n; i++) {
        const length = cuts[i + 1]! - cuts[i]!;
        if (!(length > 1e-11 * p)) continue;
        const from = cuts[i]! + 1e-9 * length;
        const step = (length * (1 - 2e-9)) / (SAMPLES - 1);
        for (let k = 0; k < SAMPLES; k++) {
          const force = helical(from + step * k);
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
          best = Math.max(best, helical(from + step * (k + (f0 - f2) / (2 * bend))));
        }
      }
      return best;
    },
    mean(ae, axialDepth) {
      engage(ae);
      const share = (z * axialDepth) / (2 * Math.PI);
      return sense * (K * (share * wholeS)) + radialK * (share * wholeC);
    },
  };
}
