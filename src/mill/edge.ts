/**
 * The edge that is not sharp: what it leaves behind, what ploughing costs, and what a force law fitted to thick chips says about
 * thin ones.
 *
 * An edge pressed into the wall by x removes most of it; the rest flows under the edge and springs back. Two things are known of
 * that layer: an edge that hardly touches removes nothing (the layer is all of x), and however deep it goes the layer never gets
 * thicker than the least chip. The simplest law with both ends is
 *
 *   r = r∞·(1 − e^(−x/r∞)),   0 ≤ r′ = e^(−x/r∞) ≤ 1,   r ≤ x
 *
 * A law that removes nothing below the least chip and everything above it is not monotone: its layer falls back to zero, so that
 * a pass more could leave a worse wall.
 */
import { notNegative, positive, within } from "../check.ts";

/**
 * Chip at and above which the Kienzle fits in the handbooks were measured [mm]; common practice says 0.03 to 0.1. Below it the
 * law goes on as a straight line, a judgement that the caller can move.
 */
export const MEASURED_FROM = 0.03;

/**
 * Layer that an edge leaves on the wall after it went x deep into it.
 *
 *   r = r∞·(1 − e^(−x/r∞));   0 for a sharp edge (r∞ = 0)
 *
 * @param interference - x, how far the edge's path goes into the wall left before [mm], scalar
 * @param layer - r∞, thickest layer [mm], scalar, ≥ 0: the least chip normal to the wall, over the sine of a flank's half angle when x is radial
 * @returns r [mm], 0 where the edge does not touch
 * @throws TradeError "range" when the layer is negative
 * @source ARCONA1998 COMMON
 * @example
 * layerLeft(0.002, 0.002) //=> 0.001264241
 * layerLeft(0.5, 0.002) //=> 0.002
 * layerLeft(0.5, 0) //=> 0
 */
export function layerLeft(interference: number, layer: number): number {
  const r = notNegative("layer", layer);
  return r === 0 || !(interference > 0) ? 0 : -r * Math.expm1(-interference / r);
}

/**
 * Share of the full edge force that acts at an interference: it rises in a straight line to 1 at the least chip.
 *
 *   s = min(1, x/r∞)
 *
 * @param interference - x [mm], scalar
 * @param layer - r∞, as for layerLeft [mm], scalar, ≥ 0
 * @returns s [-], 0 where the edge does not touch
 * @throws TradeError "range" when the layer is negative
 * @source ENDRES1995 COMMON
 * @example
 * edgeShare(0.0005, 0.002) //=> 0.25
 * edgeShare(0.1, 0.002) //=> 1
 */
export function edgeShare(interference: number, layer: number): number {
  const r = notNegative("layer", layer);
  return interference > 0 ? (interference < r ? interference / r : 1) : 0;
}

/**
 * Least chip on a flank as a radial depth: the flank moves sin α normal to itself for each unit of radial depth.
 *
 *   r∞ = hmin/sin α,   hmin = fraction·rβ
 *
 * @param fraction - least chip over edge radius [-], scalar, ≥ 0
 * @param edgeRadius - rβ [mm], scalar, ≥ 0
 * @param halfAngle - α, half of the profile angle; 90 for a wall that the edge runs along [deg], scalar, 0 < α ≤ 90
 * @returns r∞ [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED COMMON
 * @example
 * leastLayer(0.3, 0.006, 30) //=> 0.0036
 * leastLayer(0.3, 0.006, 90) //=> 0.0018
 */
export function leastLayer(fraction: number, edgeRadius: number, halfAngle: number): number {
  const alpha = (within("halfAngle", halfAngle, 0, 90, undefined, "low") * Math.PI) / 180;
  return (notNegative("fraction", fraction) * notNegative("edgeRadius", edgeRadius)) / Math.sin(alpha);
}

export interface LinearLaw {
  /** Ktc, force per area of chip [MPa]. */
  readonly cutting: number;
  /** Kte, force per length of edge [N/mm]. */
  readonly edge: number;
}

/**
 * Straight line that touches Kienzle's curve at a chip: the linear law with an edge force that a test around that chip would give.
 *
 *   F/b = kc1.1·h^(1−m);  slope at h0: Ktc = (1 − m)·kc1.1·h0^(−m);  the line meets h = 0 at Kte = m·kc1.1·h0^(1−m)
 *
 * Published fits of milling tests lie beside it: 12 N/mm here for the aluminium below, 11 to 18 in print.
 *
 * @param kc11 - kc1.1 [MPa], scalar, > 0
 * @param exponent - m [-], scalar, 0 ≤ m < 1
 * @param chip - h0, thinnest chip the fit was measured at [mm], scalar, > 0
 * @returns Ktc [MPa] and Kte [N/mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source KIENZLE1952 ALTINTAS DERIVED
 * @example
 * edgeLaw(780, 0.23, 0.03) //=> {"cutting":1345.388,"edge":12.05607}
 */
export function edgeLaw(kc11: number, exponent: number, chip: number): LinearLaw {
  const m = within("exponent", exponent, 0, 1, undefined, "high");
  const h0 = positive("chip", chip);
  const kc = positive("kc11", kc11) * h0 ** -m;
  return { cutting: (1 - m) * kc, edge: m * kc * h0 };
}

/**
 * How much more force a chip thinner than the measured ones takes when the curve goes on as its tangent instead of falling to zero.
 *
 *   q = (m + (1 − m)·x)/x^(1−m),   x = h/h0 < 1;   1 from h0 on
 *
 * @param exponent - m [-], scalar, 0 ≤ m < 1
 * @param chip - h [mm], scalar, > 0
 * @param measuredFrom - h0, thinnest chip the fit was measured at [mm], scalar, > 0
 * @returns q [-], 1 or more
 * @throws TradeError "range" when an argument is outside its limits
 * @source KIENZLE1952 DERIVED
 * @example
 * thinChipFactor(0.25, 0.01, 0.03) //=> 1.139754
 * thinChipFactor(0.25, 0.1, 0.03) //=> 1
 */
export function thinChipFactor(exponent: number, chip: number, measuredFrom: number): number {
  const m = within("exponent", exponent, 0, 1, undefined, "high");
  const x = positive("chip", chip) / positive("measuredFrom", measuredFrom);
  return x >= 1 ? 1 : (m + (1 - m) * x) / x ** (1 - m);
}

/**
 * Radial over tangential force at a chip: the edge pushes as hard as it drags, so the share grows as the chip thins.
 *
 *   Kr(h) = (kr·kc1.1·h^(1−m) + Kre)/(kc1.1·h^(1−m) + Kte)
 *
 * From kr at thick chips to Kre/Kte at none; published pairs Kre/Kte are 0.8 to 1.1.
 *
 * @param law - law.kc11 [MPa], law.exponent, law.radialRatio [-], law.edgeTangential and law.edgeRadial [N/mm]
 * @param chip - h [mm], scalar, > 0
 * @returns Kr [-]
 * @throws TradeError "range" when a value is outside its limits
 * @source ALTINTAS KIENZLE1952
 * @example
 * radialShare({ kc11: 631, exponent: 0, radialRatio: 99 / 631, edgeTangential: 13, edgeRadial: 10 }, 0.02) //=> 0.467603
 */
export function radialShare(
  law: {
    readonly kc11: number;
    readonly exponent: number;
    readonly radialRatio: number;
    readonly edgeTangential: number;
    readonly edgeRadial: number;
  },
  chip: number,
): number {
  const m = within("exponent", law.exponent, 0, 1, undefined, "high");
  const cutting = positive("kc11", law.kc11) * positive("chip", chip) ** (1 - m);
  const radial = notNegative("radialRatio", law.radialRatio) * cutting + notNegative("edgeRadial", law.edgeRadial);
  return radial / (cutting + notNegative("edgeTangential", law.edgeTangential));
}
