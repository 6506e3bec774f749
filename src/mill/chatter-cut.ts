/** The milling cut as chatter sees it: how its force answers to a vibration, averaged over a turn. */
import { count, notNegative, positive, within } from "../check.ts";
import type { Way } from "./force.ts";
import { MOST_TEETH } from "./turn.ts";

/** A part of the edge's width that is engaged in a way of its own. */
export interface EdgePart {
  /** Of the axial depth that the cut is judged by [-]; those of all parts add up to 1. */
  readonly share: number;
  /** ae and D as in {@link ChatterCut}, Kt of this part [mm, mm, MPa]. */
  readonly radialDepth: number;
  readonly diameter: number;
  readonly slope: number;
}

export interface ChatterCut {
  /** z [-] */
  readonly teeth: number;
  /** ae of the straight cut with the same engagement [mm] */
  readonly radialDepth: number;
  /** D [mm] */
  readonly diameter: number;
  /** Kt, slope of the tangential force per width with the chip [MPa], see {@link forceSlope}. */
  readonly slope: number;
  /** Kr, radial over tangential force [-] */
  readonly radialRatio: number;
  readonly way: Way;
  /** v [m/min] */
  readonly surfaceSpeed: number;
  /** C, force per width and per slope of the wave that the flank meets [N/m]; 0: no process damping. */
  readonly processDamping: number;
  /** Parts of the width that differ, as of a profile; they stand in for radialDepth, diameter and slope. Left out: all of it alike. */
  readonly parts?: readonly EdgePart[];
}

/** Time-averaged matrices of a cut, row by row: of the force with the vibration, and with its speed. */
export interface Averaged {
  readonly A: readonly number[];
  readonly P: readonly number[];
}

/**
 * Slope of Kienzle's force with the chip: what a vibration feels. The specific force itself is 14 to 26 % higher.
 *
 *   Kt = dF/dh per width = (1 − m)·kc1.1·h^(−m)
 *
 * @param kc11 - kc1.1 [MPa], scalar, > 0
 * @param exponent - m [-], scalar, 0 ≤ m < 1
 * @param chipThickness - h, mean chip of the cut [mm], scalar, > 0
 * @returns Kt [MPa]
 * @throws TradeError "range" when an argument is outside its limits
 * @source KIENZLE1952
 * @example
 * forceSlope(1800, 0.25, 0.1) //=> 2400.68
 */
export function forceSlope(kc11: number, exponent: number, chipThickness: number): number {
  const m = within("exponent", exponent, 0, 1, undefined, "high");
  return (1 - m) * positive("kc11", kc11) * positive("chipThickness", chipThickness) ** -m;
}

/**
 * Time-averaged matrices of a cut: of the force with the vibration (A) and with its speed (P), row by row.
 *
 *   A = Kt·[[sc + Kr·ss, cc + Kr·sc], [−(ss − Kr·sc), −(sc − Kr·cc)]],   P = (C/v)·[[ss, sc], [sc, cc]]
 *   ss = z/2π·[θ/2 − sin 2θ/4],   cc = z/2π·[θ/2 + sin 2θ/4],   sc = z/2π·[sin²θ/2]
 *
 * θ from the entry to the exit of a tooth: climb π − φ to π, conventional 0 to φ, φ = 2·arcsin √(ae/D). Of an edge in parts it is
 * the mean of theirs, each by its share of the width.
 *
 * @param cut - cut.teeth [-], cut.radialDepth and cut.diameter [mm], cut.slope [MPa], cut.radialRatio [-], cut.way, cut.surfaceSpeed [m/min], cut.processDamping [N/m]
 * @returns A [N/mm²] and P [N·s/mm²], each as xx, xy, yx, yy
 * @throws TradeError "range" when a value is outside its limits (radialDepth at most diameter)
 * @source ALTINTAS1995 ALTINTAS2008
 * @example
 * averagedCut({ teeth: 4, radialDepth: 10, diameter: 10, slope: 1000, radialRatio: 0.4, way: "climb", surfaceSpeed: 60, processDamping: 0 }).A //=> [400.0, 1000.0, -1000.0, 400.0]
 */
export function averagedCut(cut: ChatterCut): Averaged {
  const z = count("teeth", cut.teeth, 1, MOST_TEETH);
  const Kr = notNegative("radialRatio", cut.radialRatio);
  // C/v in N·s/m² = 10⁻⁶ N·s/mm²
  const flank =
    (1e-6 * notNegative("processDamping", cut.processDamping) * 60) / positive("surfaceSpeed", cut.surfaceSpeed);
  const A = [0, 0, 0, 0];
  const P = [0, 0, 0, 0];
  /** Adds a part of the width that is engaged alike all along. */
  const add = (share: number, radialDepth: number, diameter: number, slope: number) => {
    const D = positive("diameter", diameter);
    const ae = within("radialDepth", positive("radialDepth", radialDepth), 0, D, "length", "low");
    const Kt = share * positive("slope", slope);
    const phi = 2 * Math.asin(Math.sqrt(ae / D));
    // Half of [θ/2 ∓ sin 2θ/4] is the same for both ways; sc changes its sign with the way.
    const teeth = z / (2 * Math.PI);
    const ss = teeth * halfGap(phi);
    const cc = teeth * (phi - halfGap(phi));
    const sc = (cut.way === "climb" ? -1 : 1) * teeth * (Math.sin(phi) ** 2 / 2);
    A[0]! += Kt * (sc + Kr * ss);
    A[1]! += Kt * (cc + Kr * sc);
    A[2]! -= Kt * (ss - Kr * sc);
    A[3]! -= Kt * (sc - Kr * cc);
    const damping = share * flank;
    P[0]! += damping * ss;
    P[1]! += damping * sc;
    P[3]! += damping * cc;
  };
  if (cut.parts === undefined) add(1, cut.radialDepth, cut.diameter, cut.slope);
  else for (const { share, radialDepth, diameter, slope } of cut.parts) add(share, radialDepth, diameter, slope);
  P[2] = P[1]!;
  return { A, P };
}

/** φ/2 − sin 2φ/4 without loss of figures at small angles. */
function halfGap(phi: number): number {
  if (phi > 0.2) return phi / 2 - Math.sin(2 * phi) / 4;
  const x = phi * phi;
  return (phi * x * (1 - (x / 5) * (1 - ((2 * x) / 21) * (1 - x / 18)))) / 3;
}
