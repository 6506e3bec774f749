/**
 * Normal forces of a thread mill, quick: what the solver of passes asks for again and again, without peaks and without checking
 * the cut anew for each depth.
 *
 * The mean over a turn swaps the two integrals of threadforce.ts: over θ each level u of the profile is closed (antiderivative.ts),
 * over u a few Gauss points do, with u = t2 − v² where the engagement starts like a root.
 */
import { gaussLegendre, powers } from "../numeric.ts";
import { antiderivative } from "./antiderivative.ts";
import { slidingSums } from "./profiles.ts";
import { checkedThreadCut, type ThreadCut } from "./threadforce.ts";

export interface NormalForces {
  /** At the instant an edge makes the wall, with a share of the edge force; + away from the wall [N]. */
  wall(from: number, to: number, share: number): number;
  /** Signed mean over a turn, of the chip alone [N]. */
  mean(from: number, to: number): number;
}

const POINTS = 6;
const GAUSS = gaussLegendre(POINTS);

/**
 * Normal forces between any two depths of one cut.
 *
 *   wall as wallNormal of threadMillForces;   mean = (z/2π)·∫ du ∫0^φ(u) (±Ft·sin θ + Fr·cos θ) dθ
 *
 * @param cut - the cut as for threadMillForces but for its depths; checked once, at the depths `from` to `to` given here
 * @param from - a depth before [mm], scalar, ≥ 0
 * @param to - and a deeper one, to check the cut with [mm], scalar
 * @returns wall(from, to, share) and mean(from, to) [N]
 * @throws TradeError "range" as threadMillForces does
 * @source KIENZLE1952 KLINE1982 ABRAMOWITZ
 * @example
 * threadNormal({ holeDiameter: 2.459, cutterDiameter: 2.35, tipFlat: 0.0625, profileAngle: 60, feedPerTooth: 0.01, teeth: 3, kc11: 800, exponent: 0.25, radialRatio: 0.35, internal: true }, 0, 0.2706).mean(0, 0.2706) //=> 3.0369
 */
export function threadNormal(cut: Omit<ThreadCut, "startDepth" | "endDepth">, from: number, to: number): NormalForces {
  const { p, profiles: N, trail } = checkedThreadCut({ ...cut, startDepth: from, endDepth: to });
  const { internal, radialRatio: kr, tipFlat: f, exponent: m } = cut;
  const R = cut.holeDiameter / 2;
  const Dc = cut.cutterDiameter;
  const side = internal ? 1 : -1;
  const sense = cut.way === "conventional" ? -1 : 1;
  const alpha = (cut.profileAngle * Math.PI) / 360;
  const K = cut.kc11 * cut.feedPerTooth ** (1 - m);
  const thrust = cut.flankThrust ?? 1;
  const Et = cut.edgeTangential ?? 0;
  const Er = cut.edgeRadial ?? 0;
  // Where the teeth of each profile stand when one makes the wall does not hang on the pass: from N − 1 profiles ahead of it to N − 1
  // behind. Each has its teeth from the wall on, the last one past any engagement: sine, cosine, 1 − cosine and chip's force per width.
  const places = trail > 0 ? 2 * N - 1 : 1;
  const power = powers(1 - m);
  const inTurn = Math.ceil(Math.PI / p) + 1;
  const teeth = new Float64Array(4 * places * inTurn);
  for (let place = 0, k = 0; place < places; place++) {
    const behind = trail > 0 ? ((((place - N + 1) * trail) % p) + p) % p : 0;
    let x = Math.min(Math.max(behind, 1e-9 * p), (1 - 1e-9) * p);
    for (let i = 0; i < inTurn; i++, x += p, k += 4) {
      const sine = Math.sin(x);
      const cosine = Math.cos(x);
      teeth[k] = sine;
      teeth[k + 1] = cosine;
      teeth[k + 2] = x < Math.PI ? 1 - cosine : Number.POSITIVE_INFINITY;
      teeth[k + 3] = K * power(sine); // behind a half turn it is not read
    }
  }
  const flankEdge = 2 / Math.cos(alpha);
  const flankChip = flankEdge * Math.sin(alpha) ** (1 - m);
  const G = antiderivative(m);

  const pathRadius = (t2: number) => (internal ? R + t2 - Dc / 2 : R - t2 + Dc / 2);
  /** (1 − cos φe)/2 of the profile at u from the tip, on a pass from t1 to t2 with the path's radius e. */
  const engaged = (u: number, t1: number, t2: number, e: number) => {
    const swept = u < t1 ? (t2 - t1) * (2 * R + side * (t1 + t2 - 2 * u)) : (t2 - u) * (2 * R + side * (t2 - u));
    return swept / (2 * e * (Dc - 2 * u));
  };
  const angleOf = (share: number) => 2 * Math.asin(Math.sqrt(Math.min(1, Math.max(0, share))));

  /** Length of the profile, along u, that cuts where 1 − cos θ is c. */
  const lengthAt = (c: number, t1: number, t2: number, e: number) => {
    let length = 0;
    if (t1 > 0) {
      const step = t2 - t1;
      const slope = 2 * (c * e - side * step);
      const rest = step * (2 * R + side * (t1 + t2)) - c * e * Dc;
      if (slope < 0) length = Math.max(0, Math.min(t1, rest / -slope));
      else length = rest < 0 ? Math.max(0, t1 + rest / slope) : t1;
    }
    const half = R - c * e;
    const last = c * e * (Dc - 2 * t2);
    // below 0 only behind the end of the engagement, where nothing is left of it
    const q = Math.sqrt(Math.max(0, half * half + side * last));
    if (internal) length += Math.max(0, t2 - t1 - (half > 0 ? last / (half + q) : q - half));
    else if (half > 0) length += Math.max(0, t2 - last / (half + q) - Math.max(t1, t2 - half - q));
    return length;
  };
  /**
   * Force of the teeth of one profile at a place of the table, as far as they reach into the cut: `tip` and `reach` are 1 − cos φe of
   * the tip and the largest of all.
   */
  const at = (place: number, share: number, t1: number, t2: number, e: number, tip: number, reach: number) => {
    let sum = 0;
    for (let k = 4 * place * inTurn; teeth[k + 2]! < reach; k += 4) {
      const c = teeth[k + 2]!;
      const length = lengthAt(c, t1, t2, e);
      const flat = c < tip ? f : 0;
      const chip = teeth[k + 3]!;
      const t = chip * (flat + flankChip * length) + share * Et * (flat + flankEdge * length);
      const r = kr * chip * (flat + thrust * flankChip * length) + share * Er * (flat + thrust * flankEdge * length);
      sum += sense * t * teeth[k]! + r * teeth[k + 1]!;
    }
    return sum;
  };
  /** Σ of the antiderivatives at a share of engagement, as the flanks count them. */
  const level = (share: number) => {
    G.at(angleOf(share));
    return sense * G.s + kr * thrust * G.c;
  };

  return {
    wall(t1, t2, share) {
      const e = pathRadius(t2);
      const core = Dc - 2 * t2;
      // Outside, the engagement above the last pass may have its top inside the stretch.
      const v = internal ? t2 - t1 : Math.min(t2 - t1, (Math.sqrt(core * core + 4 * R * core) - core) / 2);
      const tip = 2 * engaged(0, t1, t2, e);
      const reach = Math.max(tip, 2 * engaged(t2 - v, t1, t2, e));
      if (!(trail > 0)) return N * at(0, share, t1, t2, e, tip, reach);
      return slidingSums(N, (d) => at(d + N - 1, share, t1, t2, e, tip, reach)).high;
    },
    mean(t1, t2) {
      const e = pathRadius(t2);
      const root = Math.sqrt(t2 - t1);
      let flank = 0;
      for (let i = 0; i < POINTS; i++) {
        const x = (1 + GAUSS.x[i]!) / 2;
        const w = GAUSS.w[i]! / 2;
        if (t1 > 0) flank += w * t1 * level(engaged(t1 * x, t1, t2, e));
        const v = root * x;
        flank += w * root * 2 * v * level(engaged(t2 - v * v, t1, t2, e));
      }
      G.at(angleOf(engaged(0, t1, t2, e)));
      return (N * K * (flankChip * flank + f * (sense * G.s + kr * G.c))) / p;
    },
  };
}
