/** Cuts on circular walls: feed of the cutter's centre, and the straight-wall depth with the same engagement. */
import { positive, within } from "../check.ts";

export type Side = "inside" | "outside";

/** Diameter of the path of the cutter's centre. */
function centrePath(finishDiameter: number, cutterDiameter: number, side: Side, name: string): number {
  const Dm = positive(name, finishDiameter);
  const Dc = positive("cutterDiameter", cutterDiameter);
  if (side === "outside") return Dm + Dc;
  return Dm - within("cutterDiameter", Dc, 0, Dm, "length", "both");
}

/**
 * Feed of the cutter's centre that moves the edge along the finished wall at the wanted feed.
 *
 *   vc = ve·(Dm − Dc)/Dm inside,   ve·(Dm + Dc)/Dm outside
 *
 * @param edgeFeed - ve, feed at the finished wall [mm/min], scalar, > 0 (a feed per tooth [mm] scales the same way)
 * @param arcDiameter - Dm, diameter of the finished wall [mm], scalar, > 0
 * @param cutterDiameter - Dc [mm], scalar, > 0; inside below Dm
 * @param side - "inside" (bore) or "outside" (boss)
 * @returns vc [mm/min]
 * @throws TradeError "range" when an argument is not above 0, or the cutter is not smaller than a bore
 * @source MH
 * @example
 * arcFeed(300, 20, 12, "inside") //=> 120
 * arcFeed(300, 20, 12, "outside") //=> 480
 */
export function arcFeed(edgeFeed: number, arcDiameter: number, cutterDiameter: number, side: Side): number {
  const path = centrePath(arcDiameter, cutterDiameter, side, "arcDiameter");
  return (positive("edgeFeed", edgeFeed) * path) / arcDiameter;
}

/**
 * Radial-depth compensation: depth of the straight cut with the same angle of engagement and the same area per travel of the
 * cutter's centre. Exact in the limit of small feed: the triangle of centre, wall and stock corner gives cos φe = 1 − 2·ae/Dc.
 *
 *   inside  ae = (Dm² − Dw²)/(4·(Dm − Dc)),   Dw at least |2·Dc − Dm| (the cutter sweeps that much by itself)
 *   outside ae = (Dw² − Dm²)/(4·(Dm + Dc)),   Dw at most Dm + 2·Dc (beyond it a wall of stock stays outside)
 *
 * @param startDiameter - Dw, stock before the cut [mm], scalar; inside 0 ≤ Dw < Dm, 0 = solid; outside Dw > Dm
 * @param finishDiameter - Dm, finished wall [mm], scalar, > 0
 * @param cutterDiameter - Dc [mm], scalar, > 0; inside below Dm
 * @param side - "inside" (bore) or "outside" (boss)
 * @returns ae [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * arcDepth(17, 20, 12, "inside") //=> 3.46875
 * arcDepth(23, 20, 12, "outside") //=> 1.0078125
 * arcDepth(0, 20, 12, "inside") //=> 12
 */
export function arcDepth(startDiameter: number, finishDiameter: number, cutterDiameter: number, side: Side): number {
  const path = centrePath(finishDiameter, cutterDiameter, side, "finishDiameter");
  const Dm = finishDiameter;
  const Dc = cutterDiameter;
  if (side === "inside") {
    const Dw = within("startDiameter", startDiameter, 0, Dm, "length", "high");
    return Math.min(Dc, ((Dm - Dw) * (Dm + Dw)) / (4 * path));
  }
  const Dw = within("startDiameter", startDiameter, Dm, Number.POSITIVE_INFINITY, "length", "low");
  return Math.min(Dc, ((Dw - Dm) * (Dw + Dm)) / (4 * path));
}
