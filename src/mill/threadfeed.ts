/**
 * Feed of a thread mill. What is listed for thread mills is a contour feed: the advance of the edge along the thread per tooth.
 * The chip that it makes also depends on the arc: a cutter that nearly fills its hole meets a long arc and a thick chip. So two
 * bounds, the smaller counts: the contour feed taken to the cutter's centre, and the centre's feed whose largest real chip is the
 * listed chip of a milling cutter.
 */
import { positive, within } from "../check.ts";
import { arcFeed, type Side } from "./arc.ts";

export interface ThreadFeedCase {
  /** Contour feed per tooth, at the edge [mm]. */
  readonly contourFeed: number;
  /** Largest chip that the milling list allows at that diameter [mm]. */
  readonly listedChip: number;
  /** Dc, over the tips [mm]. */
  readonly cutterDiameter: number;
  /** Dm, diameter that the tip reaches: major inside, minor outside [mm]. */
  readonly tipDiameter: number;
  readonly side: Side;
  /** Largest engagement of any pass [deg], from threadEngagement. */
  readonly engagement: number;
}

export interface ThreadFeed {
  /** Feed per tooth of the cutter's centre and of its edge [mm]. */
  readonly centre: number;
  readonly edge: number;
  /** Largest radial chip [mm]. */
  readonly chip: number;
  /** Which of the two holds it there. */
  readonly bound: "contour" | "chip";
}

/**
 * Largest radial chip of a pass at a feed of the centre.
 *
 *   h = fz·sin φe,   φe < 90°;   fz, φe ≥ 90°
 *
 * @param centreFeed - fz, per tooth, of the cutter's centre [mm], scalar, > 0
 * @param engagement - φe [deg], scalar, 0 < φe ≤ 180
 * @returns h [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MARTELLOTTI1941
 * @example
 * engagedChip(0.02, 30) //=> 0.0100
 * engagedChip(0.02, 120) //=> 0.02
 */
export function engagedChip(centreFeed: number, engagement: number): number {
  const phi = (within("engagement", engagement, 0, 180, undefined, "low") * Math.PI) / 180;
  return positive("centreFeed", centreFeed) * (phi >= Math.PI / 2 ? 1 : Math.sin(phi));
}

/**
 * Feed per tooth of a thread mill, centre and edge.
 *
 *   fz = min(fc·(Dm ∓ Dc)/Dm, hlist/sin φe),   − inside, + outside
 *
 * @param feed - the case; feed.contourFeed, feed.listedChip, feed.cutterDiameter, feed.tipDiameter [mm], feed.engagement [deg], feed.side
 * @returns centre, edge, chip [mm] and the bound
 * @throws TradeError "range" when a value is outside its limits (inside, the cutter is smaller than the tip's circle)
 * @source COMMON DERIVED
 * @example
 * threadFeed({ contourFeed: 0.04, listedChip: 0.03, cutterDiameter: 4, tipDiameter: 5, side: "inside", engagement: 90 }) //=> {"centre":0.008,"edge":0.04,"chip":0.008,"bound":"contour"}
 */
export function threadFeed(feed: ThreadFeedCase): ThreadFeed {
  const contour = positive("contourFeed", feed.contourFeed);
  const listed = positive("listedChip", feed.listedChip);
  const perEdge = arcFeed(1, feed.tipDiameter, feed.cutterDiameter, feed.side);
  const byContour = contour * perEdge;
  const byChip = listed / engagedChip(1, feed.engagement);
  const centre = Math.min(byContour, byChip);
  return {
    centre,
    edge: centre / perEdge,
    chip: engagedChip(centre, feed.engagement),
    bound: byContour <= byChip ? "contour" : "chip",
  };
}
