/**
 * Normal forces of a thread mill, quick: what the solver of passes asks for again and again, without peaks and without checking
 * the cut anew for each depth.
 *
 * The mean over a turn swaps the two integrals of threadforce.ts: over θ each level u of the profile is closed (antiderivative.ts),
 * over u a few Gauss points do, with u = t2 − v² where the engagement starts like a root.
 */
import { gaussLegendre } from "../numeric.ts";
import { antiderivative } from "./antiderivative.ts";
import { profileTrail, slidingSums } from "./profiles.ts";
import { type ThreadCut, threadWallForce } from "./threadforce.ts";

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
 *   wall as threadWallForce;   mean = (z/2π)·∫ du ∫0^φ(u) (±Ft·sin θ + Fr·cos θ) dθ
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
  threadWallForce({ ...cut, startDepth: from, endDepth: to });
  const R = cut.holeDiameter / 2;
  const Dc = cut.cutterDiameter;
  const side = cut.internal ? 1 : -1;
  const sense = cut.way === "conventional" ? -1 : 1;
  const f = cut.tipFlat;
  const alpha = (cut.profileAngle * Math.PI) / 360;
  const m = cut.exponent;
  const p = (2 * Math.PI) / cut.teeth;
  const K = cut.kc11 * cut.feedPerTooth ** (1 - m);
  const kr = cut.radialRatio;
  const thrust = cut.flankThrust ?? 1;
  const Et = cut.edgeTangential ?? 0;
  const Er = cut.edgeRadial ?? 0;
  const N = cut.turnsInCut ?? 1;
  const helical = N > 1 && cut.helixAngle !== undefined && cut.pitch !== undefined;
  const trail = helical ? profileTrail(cut.pitch, cut.helixAngle, Dc) : 0;
  // Where the teeth of each profile stand when one makes the wall does not hang on the pass: from N − 1 profiles ahead of it to N − 1
  // behind. Each has the angles of its teeth from the wall on, the last one past any engagement.
  const places = trail > 0 ? 2 * N - 1 : 1;
  const inTurn = Math.ceil(Math.PI / p) + 1;
  const angles: number[] = [];
  const cosines: number[] = [];
  const sines: number[] = [];
  const chips: number[] = [];
  for (let place = 0; place < places; place++) {
    const behind = trail > 0 ? ((((place - N + 1) * trail) % p) + p) % p : 0;
    let x = Math.min(Math.max(behind, 1e-9 * p), (1 - 1e-9) * p);
    for (let i = 0; i < inTurn; i++, x += p) {
      const sine = Math.sin(x);
      angles.push(x);
      cosines.push(Math.cos(x));
      sines.push(sine);
      chips.push(x < Math.PI ? K * sine ** (1 - m) : 0);
    }
  }
  const flankEdge = 2 / Math.cos(alpha);
  const flankChip = flankEdge * Math.sin(alpha) ** (1 - m);
  const G = antiderivative(m);

  // the pass that is looked at
  let [t1, t2, e, step, core, phiTip] = [0, 0, 0, 0, 0, 0];
  const set = (a: number, b: number) => {
    t1 = a;
    t2 = b;
    e = cut.internal ? R + b - Dc / 2 : R - b + Dc / 2;
    step = b - a;
    core = Dc - 2 * b;
    phiTip = engagement(0);
  };
  const engagement = (u: number) => {
    const swept = u < t1 ? step * (2 * R + side * (t1 + t2 - 2 * u)) : (t2 - u) * (2 * R + side * (t2 - u));
    const share = swept / (2 * e * (Dc - 2 * u));
    return share >= 1 ? Math.PI : share > 0 ? 2 * Math.asin(Math.sqrt(share)) : 0;
  };

  /** Length of the profile, along u, that cuts at an angle. */
  const lengthAt = (c: number) => {
    let length = 0;
    if (t1 > 0) {
      const slope = 2 * (c * e - side * step);
      const rest = step * (2 * R + side * (t1 + t2)) - c * e * Dc;
      if (slope > 0) length += Math.max(0, t1 - Math.max(0, -rest / slope));
      else if (slope < 0) length += Math.max(0, Math.min(t1, rest / -slope));
      else if (rest >= 0) length += t1;
    }
    const half = R - c * e;
    const last = c * e * core;
    const root2 = half * half + side * last;
    if (root2 >= 0) {
      const q = Math.sqrt(root2);
      if (cut.internal) length += Math.max(0, step - (half > 0 ? last / (half + q) : q - half));
      else if (half > 0) length += Math.max(0, t2 - last / (half + q) - Math.max(t1, t2 - half - q));
    }
    return length;
  };
  /** Force of the teeth of one profile at a place of the tables, as far as they reach into the cut. */
  const at = (place: number, share: number, reach: number) => {
    let sum = 0;
    for (let i = place * inTurn; angles[i]! < reach; i++) {
      const x = angles[i]!;
      const length = lengthAt(1 - cosines[i]!);
      const flat = x < phiTip ? f : 0;
      const chip = chips[i]!;
      const t = chip * (flat + flankChip * length) + share * Et * (flat + flankEdge * length);
      const r = kr * chip * (flat + thrust * flankChip * length) + share * Er * (flat + thrust * flankEdge * length);
      sum += sense * t * sines[i]! + r * cosines[i]!;
    }
    return sum;
  };

  return {
    wall(a, b, share) {
      set(a, b);
      const v = cut.internal ? step : (Math.sqrt(core * core + 4 * R * core) - core) / 2;
      const reach = Math.max(phiTip, engagement(t1), v < step ? engagement(t2 - v) : 0);
      if (!(trail > 0)) return N * at(0, share, reach);
      return slidingSums(N, (d) => at(d + N - 1, share, reach)).high;
    },
    mean(a, b) {
      set(a, b);
      let flank = 0;
      const level = (u: number) => {
        G.at(engagement(u));
        return sense * G.s + kr * thrust * G.c;
      };
      for (let i = 0; i < POINTS; i++) {
        const x = (1 + GAUSS.x[i]!) / 2;
        const w = GAUSS.w[i]! / 2;
        if (t1 > 0) flank += w * t1 * level(t1 * x);
        const v = Math.sqrt(step) * x;
        flank += w * Math.sqrt(step) * 2 * v * level(t2 - v * v);
      }
      G.at(phiTip);
      return (N * K * (flankChip * flank + f * (sense * G.s + kr * G.c))) / p;
    },
  };
}
