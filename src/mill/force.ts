/**
 * Forces of a cylindrical end mill, summed over teeth, helix and one turn.
 *
 * Per length of edge a tooth carries kc1.1·h^(1−m) + Kte against its motion and the radial ratio of that (or its own edge force)
 * towards the axis; the edges in the cut are summed in flutes.ts.
 *
 * Directions, as forces on the tool: normal + away from the wall, feed + the way the tool travels over the work.
 *   climb          normal = Σ(Ft·sin θ + Fr·cos θ),   feed = Σ( Ft·cos θ − Fr·sin θ)
 *   conventional   normal = Σ(−Ft·sin θ + Fr·cos θ),  feed = Σ(−Ft·cos θ − Fr·sin θ)
 */
import { count, notNegative, positive, within } from "../check.ts";
import { fluteSums } from "./flutes.ts";
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
  const kr = notNegative("radialRatio", cut.radialRatio);
  const Et = notNegative("edgeTangential", cut.edgeTangential ?? 0);
  const Er = notNegative("edgeRadial", cut.edgeRadial ?? 0);
  const ka = notNegative("axialRatio", cut.axialRatio ?? 0);
  const sense = cut.way === "conventional" ? -1 : 1;

  const sums = fluteSums(cut);
  sums.edged = Et > 0 || Er > 0;
  sums.engage(ae, ap);
  const { phi, psi, whole } = sums;

  /** From the sums of the chip part and of the edge part to the loads. */
  const load = (out: Loads, { c, s, t, ec, es, et }: typeof whole, length: number) => {
    const tc = length * (K * c + Et * ec);
    const ts = length * (K * s + Et * es);
    const rc = length * (kr * K * c + Er * ec);
    const rs = length * (kr * K * s + Er * es);
    out[0] = sense * ts + rc;
    out[1] = sense * tc - rs;
    out[2] = length * (K * t + Et * et);
  };
  const at = (tau: number, out: Loads) => {
    sums.at(tau);
    load(out, sums, 1);
  };
  // The means of the signed parts do not depend on the helix and are closed.
  const mean = new Float64Array(4);
  const share = (z * ap) / (2 * Math.PI);
  load(mean, whole, share);
  return { D, p: (2 * Math.PI) / z, phi, psi, at, mean, axial: ka * share * K * whole.t };
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
