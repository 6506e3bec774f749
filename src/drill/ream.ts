/** Holes that are finished after the drill: stock for a reamer, the drill before it, and how deep a countersink goes. */
import { notNegative, positive, within } from "../check.ts";
import { TradeError } from "../errors.ts";
import { type Drill, type DrillSet, nearestDrill } from "./sizes.ts";
import { nearestDrillInside } from "./tapdrill.ts";

/** Stock on the diameter by reamer diameter up to [mm]: least, most [mm]. */
const STOCK: readonly (readonly [number, number, number])[] = [
  [3, 0.05, 0.2],
  [6, 0.1, 0.25],
  [10, 0.1, 0.3],
  [20, 0.1, 0.4],
  [30, 0.2, 0.5],
  [Number.POSITIVE_INFINITY, 0.25, 0.6],
];

/** Least and largest stock on the diameter [mm]. */
export interface Stock {
  readonly least: number;
  readonly most: number;
}

/**
 * Stock on the diameter that a machine reamer wants: enough to cut and not to rub, little enough to leave the chips room.
 * Handbooks state 0.1 to 0.2 mm up to 5 mm, 0.2 to 0.3 up to 20, 0.3 to 0.4 up to 32; shops run from about half of the
 * least to a third over the most without harm, and that is what is given here.
 *
 *   table by diameter
 *
 * @param diameter - of the reamer [mm], scalar, > 0
 * @returns least and most [mm]
 * @throws TradeError "range" when the diameter is not above 0
 * @source TABELLENBUCH COMMON
 * @example
 * reamStock(10).most //=> 0.3
 */
export function reamStock(diameter: number): Stock {
  positive("diameter", diameter);
  const [, least, most] = STOCK.find(([upTo]) => diameter <= upTo)!;
  return { least, most };
}

/**
 * Drill before a reamer: the standard drill that leaves stock within the window by its size and by its hole, oversize
 * included; of several the one whose hole leaves stock nearest to the middle.
 *
 *   D − most ≤ d,   d + o ≤ D − least,   least |d + o − (D − (least + most)/2)|
 *
 * @param diameter - D of the reamer [mm], scalar, > 0
 * @param oversize - o, what the drill cuts over its size [mm], scalar, ≥ 0
 * @param sets - sets to choose from; without it metric
 * @returns drill; diameter [mm]
 * @throws TradeError "range" when an argument is outside its limits; "unknown" when no standard drill leaves stock within the window
 * @source TABELLENBUCH COMMON
 * @example
 * reamerDrill(10, 0.04).name //=> "9.8 mm"
 * reamerDrill(10, 0.12).name //=> "9.7 mm"
 */
export function reamerDrill(diameter: number, oversize: number, sets: readonly DrillSet[] = ["metric"]): Drill {
  const { least, most } = reamStock(diameter);
  const [low, high] = [diameter - most + notNegative("oversize", oversize), diameter - least];
  const drill = low <= high ? nearestDrillInside(low, high, oversize, sets, diameter - (least + most) / 2) : null;
  if (drill) return drill;
  const near = nearestDrill(Math.max(diameter - most, 0.05), sets);
  const { name, diameter: size } = near;
  throw new TradeError("unknown", "diameter", diameter, { is: "nearest-drill-stock", name, diameter: size });
}

/**
 * How far the edge of a countersink lies below the face: the cone falls from D/2 to d/2 at α/2 to its axis.
 *
 *   t = (D − d)/(2·tan(α/2))
 *
 * @param diameter - D, of the countersink at the face [mm], scalar, > 0 (any length unit: the answer is in it)
 * @param hole - d, of the hole, or of the tool's flat tip where that is larger [mm], scalar, 0 ≤ d < D
 * @param angle - α, included angle [deg], scalar, 0 < α < 180
 * @returns t, depth of the cone [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * countersinkDepth(12, 6, 90) //=> 3
 */
export function countersinkDepth(diameter: number, hole: number, angle: number): number {
  const D = positive("diameter", diameter);
  const d = within("hole", hole, 0, D, "length", "high");
  const half = (within("angle", angle, 0, 180, undefined, "both") * Math.PI) / 360;
  return (D - d) / (2 * Math.tan(half));
}

/**
 * Travel of a countersink's tip below the face: its pointed or flat tip runs ahead of the hole's edge.
 *
 *   l = (D − t)/(2·tan(α/2)), t diameter of the flat tip
 *
 * @param diameter - D, of the countersink at the face [mm], scalar, > 0 (any length unit: the answer is in it)
 * @param tip - t, diameter of the tool's flat tip, 0 for a point [mm], scalar, 0 ≤ t < D
 * @param angle - α, included angle [deg], scalar, 0 < α < 180
 * @returns l [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * countersinkTravel(12, 0, 90) //=> 6
 */
export function countersinkTravel(diameter: number, tip: number, angle: number): number {
  const D = positive("diameter", diameter);
  const t = within("tip", tip, 0, D, "length", "high");
  const half = (within("angle", angle, 0, 180, undefined, "both") * Math.PI) / 360;
  return (D - t) / (2 * Math.tan(half));
}

/**
 * Torque of a ring cut: counterboring, core drilling, reaming. The edges stand between two radii and carry Kienzle's force.
 *
 *   M = kc·f·(D² − d²)/8,   kc = kc1.1·h^(−m),   h = f/z·sin κr
 *
 * @param diameter - D, of the finished hole [mm], scalar, > 0
 * @param hole - d, of the hole before [mm], scalar, 0 ≤ d < D
 * @param feedPerRev - f [mm], scalar, > 0
 * @param teeth - z [-], scalar, > 0
 * @param edgeAngle - κr, 90 for a square shoulder, 45 for a common reamer's lead or a 90° countersink [deg], scalar, 0 < κr ≤ 90
 * @param kc11 - kc1.1 [MPa], scalar, > 0
 * @param exponent - m [-], scalar, 0 ≤ m < 1
 * @returns M [N·m]
 * @throws TradeError "range" when an argument is outside its limits
 * @source KIENZLE1952
 * @example
 * ringTorque(20, 11, 0.1, 2, 90, 1800, 0.25) //=> 13.28
 */
export function ringTorque(
  diameter: number,
  hole: number,
  feedPerRev: number,
  teeth: number,
  edgeAngle: number,
  kc11: number,
  exponent: number,
): number {
  const D = positive("diameter", diameter);
  const d = within("hole", hole, 0, D, "length", "high");
  const f = positive("feedPerRev", feedPerRev);
  const angle = (within("edgeAngle", edgeAngle, 0, 90, undefined, "low") * Math.PI) / 180;
  const h = (f / positive("teeth", teeth)) * Math.sin(angle);
  const kc = positive("kc11", kc11) * h ** -within("exponent", exponent, 0, 1, undefined, "high");
  return (kc * f * (D * D - d * d)) / 8 / 1000;
}
