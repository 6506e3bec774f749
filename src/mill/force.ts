/**
 * Forces of a cylindrical end mill, summed over teeth, helix and one turn.
 *
 * A tooth stands at the angle θ from the wall that is being made; it cuts for 0 < θ < φe with the chip fz·sin θ. Per length of edge
 * it carries kc1.1·h^(1−m) + Kte against its motion and the radial ratio of that (or its own edge force) towards the axis.
 * A flute of helix β trails by ψ = 2·ap·tan β/D over the depth and so covers an interval of θ: its force is the difference of
 * an antiderivative at the two ends, no slices needed. Full engagement is one wall of a slot; flutes may wrap around the tool.
 *
 * Directions, as forces on the tool: normal + away from the wall, feed + the way the tool travels over the work.
 *   climb          normal = Σ(Ft·sin θ + Fr·cos θ),   feed = Σ( Ft·cos θ − Fr·sin θ)
 *   conventional   normal = Σ(−Ft·sin θ + Fr·cos θ),  feed = Σ(−Ft·cos θ − Fr·sin θ)
 */
import { count, notNegative, positive, within } from "../check.ts";
import { powers } from "../numeric.ts";
import { antiderivative } from "./antiderivative.ts";
import { type Loads, MOST_TEETH, overTurn } from "./turn.ts";

export type Way = "climb" | "conventional";

export interface MillCut {
  /** kc1.1 [MPa] */
  readonly kc11: number;
  /** m [-] */
  readonly exponent: number;
  /** fz, of the cutter's centre [mm] */
  readonly feedPerTooth: number;
  /** ae [mm] */
  readonly radialDepth: number;
  /** ap [mm] */
  readonly axialDepth: number;
  /** D [mm] */
  readonly diameter: number;
  /** z [-] */
  readonly teeth: number;
  /** β [deg] */
  readonly helixAngle: number;
  /** Radial over tangential force of the chip [-]. */
  readonly radialRatio: number;
  /** Axial over tangential force of the chip [-]; 0 when omitted. */
  readonly axialRatio?: number;
  /** Edge (ploughing) force per length of engaged edge, tangential and radial [N/mm]; 0 when omitted. */
  readonly edgeTangential?: number;
  readonly edgeRadial?: number;
  /** Default "climb"; matters only to the signed figures and to edge forces. */
  readonly way?: Way;
}

export interface CutForces {
  /** Resultant in the radial plane: largest and mean of its magnitude over a turn [N]. */
  readonly peak: number;
  readonly mean: number;
  /** Largest sum of tangential forces [N]. */
  readonly peakTangential: number;
  /** [N·m] */
  readonly meanTorque: number;
  /** Signed mean normal to the wall, + away from it [N]. */
  readonly meanNormal: number;
  /** Signed mean along the feed, + with the tool's travel [N]. */
  readonly meanFeed: number;
  /** Mean axial force of the chip [N]. */
  readonly meanAxial: number;
  /** Signed normal force while some part of an edge makes the wall: largest and least over the depth [N]. */
  readonly wallNormal: number;
  readonly wallNormalLeast: number;
}

/** Below this trail of the flute [rad] the edge counts as straight. */
export const STRAIGHT = 1e-7;

/**
 * Forces of an end mill with Kienzle's specific force, edge forces added where they are given.
 *
 *   dFt = (kc1.1·(fz·sin θ)^(1−m) + Kte)·dz,   dFr = (Kr·kc1.1·(fz·sin θ)^(1−m) + Kre)·dz
 *
 * @param cut - the cut; cut.kc11 [MPa], cut.exponent [-], cut.feedPerTooth [mm], cut.radialDepth [mm], cut.axialDepth [mm],
 *   cut.diameter [mm], cut.teeth [-], cut.helixAngle [deg] (0 to below 90), cut.radialRatio [-], cut.axialRatio [-],
 *   cut.edgeTangential and cut.edgeRadial [N/mm], cut.way
 * @returns the figures of CutForces [N, N·m]
 * @throws TradeError "range" when a value is outside its limits (radialDepth at most diameter)
 * @source KIENZLE1952 ALTINTAS KLINE1982
 * @example
 * millForces({ kc11: 1800, exponent: 0.25, feedPerTooth: 0.05, radialDepth: 10, axialDepth: 5, diameter: 10, teeth: 4, helixAngle: 30, radialRatio: 0.35 }).peak //=> 1092.991
 */
export function millForces(cut: MillCut): CutForces {
  const { p, phi, psi, at, mean, D, axial } = rotation(cut);
  const turn = psi === 0 ? overTurn(p, [phi], at, 0) : overTurn(p, [phi, psi, phi + psi], at, psi);
  return {
    peak: turn.peak,
    mean: turn.resultant,
    peakTangential: turn.peakTangential,
    meanTorque: (mean[2]! * D) / 2 / 1000,
    meanNormal: mean[0]!,
    meanFeed: mean[1]!,
    meanAxial: axial,
    wallNormal: turn.wallHigh,
    wallNormalLeast: turn.wallLow,
  };
}

/** One cut at every rotation, and its means. */
function rotation(cut: MillCut) {
  const m = within("exponent", cut.exponent, 0, 1, undefined, "high");
  const D = positive("diameter", cut.diameter);
  const ae = within("radialDepth", positive("radialDepth", cut.radialDepth), 0, D, "length", "low");
  const ap = positive("axialDepth", cut.axialDepth);
  const z = count("teeth", cut.teeth, 1, MOST_TEETH);
  const K = positive("kc11", cut.kc11) * positive("feedPerTooth", cut.feedPerTooth) ** (1 - m);
  const helix = (within("helixAngle", cut.helixAngle, 0, 90, undefined, "high") * Math.PI) / 180;
  const kr = notNegative("radialRatio", cut.radialRatio);
  const Et = notNegative("edgeTangential", cut.edgeTangential ?? 0);
  const Er = notNegative("edgeRadial", cut.edgeRadial ?? 0);
  const ka = notNegative("axialRatio", cut.axialRatio ?? 0);
  const sense = cut.way === "conventional" ? -1 : 1;

  const phi = ae / D > 1 - 1e-15 ? Math.PI : 2 * Math.asin(Math.sqrt(ae / D));
  const p = (2 * Math.PI) / z;
  const trail = (2 * ap * Math.tan(helix)) / D;
  const psi = trail < STRAIGHT ? 0 : trail;
  const edged = Et > 0 || Er > 0;
  const power = powers(1 - m);
  const G = antiderivative(m);
  G.at(phi);
  const whole = { c: G.c, s: G.s, t: G.t, ec: Math.sin(phi), es: 1 - Math.cos(phi) };

  /** From the sums of the chip part and of the edge part to the loads. */
  const load = (out: Loads, c: number, s: number, t: number, ec: number, es: number, et: number) => {
    const tc = K * c + Et * ec;
    const ts = K * s + Et * es;
    const rc = kr * K * c + Er * ec;
    const rs = kr * K * s + Er * es;
    out[0] = sense * ts + rc;
    out[1] = sense * tc - rs;
    out[2] = K * t + Et * et;
  };

  const straight = (tau: number, out: Loads) => {
    let c = 0;
    let s = 0;
    let t = 0;
    let ec = 0;
    let es = 0;
    let et = 0;
    for (let x = tau; x < phi; x += p) {
      const sine = Math.sin(x);
      const cosine = Math.cos(x);
      const f = power(sine);
      c += f * cosine;
      s += f * sine;
      t += f;
      ec += cosine;
      es += sine;
      et += 1;
    }
    load(out, ap * c, ap * s, ap * t, ap * ec, ap * es, ap * et);
  };

  const perAngle = ap / psi; // length of edge per angle, along the axis
  const helical = (tau: number, out: Loads) => {
    let c = 0;
    let s = 0;
    let t = 0;
    let ec = 0;
    let es = 0;
    let et = 0;
    let inside = 0; // leading ends in the cut
    for (let x = tau; x < phi; x += p) {
      G.at(x);
      c += G.c;
      s += G.s;
      t += G.t;
      if (edged) {
        ec += Math.sin(x);
        es += 1 - Math.cos(x);
        et += x;
      }
      inside++;
    }
    const passed = Math.max(0, Math.ceil((psi - tau) / p)); // flutes whose trailing end has not come to the wall
    let past = passed - inside; // flutes with the leading end out of the cut and the trailing end not
    for (let y = tau + passed * p - psi; y < phi; y += p) {
      G.at(y);
      c -= G.c;
      s -= G.s;
      t -= G.t;
      if (edged) {
        ec -= Math.sin(y);
        es -= 1 - Math.cos(y);
        et -= y;
      }
      past++;
    }
    load(
      out,
      perAngle * (c + past * whole.c),
      perAngle * (s + past * whole.s),
      perAngle * (t + past * whole.t),
      perAngle * (ec + past * whole.ec),
      perAngle * (es + past * whole.es),
      perAngle * (et + past * phi),
    );
  };

  // The means of the signed parts do not depend on the helix and are closed.
  const mean = new Float64Array(4);
  const share = (z * ap) / (2 * Math.PI);
  load(mean, share * whole.c, share * whole.s, share * whole.t, share * whole.ec, share * whole.es, share * phi);
  return { D, p, phi, psi, at: psi === 0 ? straight : helical, mean, axial: ka * share * K * whole.t };
}

export interface LinearEdgeCut extends Omit<MillCut, "kc11" | "exponent" | "radialRatio" | "axialRatio"> {
  /** Cutting coefficients Ktc, Krc, Kac [MPa]. */
  readonly tangential: number;
  readonly radial: number;
  readonly axial?: number;
}

/**
 * Forces of an end mill with the linear-edge model, the alternative to Kienzle's: the chip part is proportional to the chip.
 *
 *   dFt = (Ktc·fz·sin θ + Kte)·dz,   dFr = (Krc·fz·sin θ + Kre)·dz
 *
 * @param cut - the cut as for millForces, with cut.tangential, cut.radial, cut.axial [MPa] in place of kc11, exponent and ratios
 * @returns the figures of CutForces [N, N·m]
 * @throws TradeError "range" when a value is outside its limits (radialDepth at most diameter)
 * @source ALTINTAS
 * @example
 * linearEdgeForces({ tangential: 800, radial: 200, edgeTangential: 15, edgeRadial: 12, feedPerTooth: 0.1, radialDepth: 10, axialDepth: 5, diameter: 10, teeth: 2, helixAngle: 30, way: "climb" }).meanTorque //=> 1.648240
 */
export function linearEdgeForces(cut: LinearEdgeCut): CutForces {
  const Ktc = positive("tangential", cut.tangential);
  return millForces({
    ...cut,
    kc11: Ktc,
    exponent: 0,
    radialRatio: notNegative("radial", cut.radial) / Ktc,
    axialRatio: notNegative("axial", cut.axial ?? 0) / Ktc,
  });
}
