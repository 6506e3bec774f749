/**
 * The one feed rule of walls: the feed of the cutter's centre whose largest real chip is the list's, on that wall and engagement,
 * held back where something other than the chip decides.
 *
 * The list's feed per tooth is read as the largest chip an edge is meant to cut; at half engagement and more feed and chip are the
 * same. Chip thickness follows the feed of the centre, not that of the edge.
 */
import { positive } from "../check.ts";
import { arcFeed, type Side } from "./arc.ts";
import { largestChip } from "./chip.ts";

/**
 * Limits of the feed beside the chip, as multiples of the list's feed per tooth. Judgement, each with its reason; common practice
 * where it says so.
 */
export interface FeedLimits {
  /**
   * Feed of the centre in a thin cut. The chip is thin only as long as the depth is: a corner or a lump of stock makes the chip
   * as thick as the feed, and the tooth must live through it.
   */
  readonly tooth: number;
  /** Feed at the edge and of the centre when finishing: the surface decides there, not the chip (common practice). */
  readonly finish: number;
  /** Feed at the edge of an inside wall: in a bore hardly larger than the cutter the edge runs many times the centre. */
  readonly insideEdge: number;
}
export const FEED_LIMITS: FeedLimits = { tooth: 3, finish: 1.3, insideEdge: 3 };

/** A cut thinner than this share of the cutter, with a size to hold, is a finishing cut (common practice). */
export const FINISHING_SHARE = 0.1;

export interface WallCut {
  /** Largest chip wanted: the list's feed per tooth [mm]. */
  readonly listed: number;
  /** Effective radial depth of the pass that is engaged most [mm]. */
  readonly radialDepth: number;
  /** D of the engaged edge [mm]: for a ball or a corner radius cut in part the effective one. */
  readonly diameter: number;
  /** κ [deg]; for a corner radius cut in part the angle at the top of the cut. */
  readonly edgeAngle: number;
  /** The finished wall when it is an arc: its diameter and the cutter's own [mm], and the side. */
  readonly arc?: { readonly diameter: number; readonly cutterDiameter: number; readonly side: Side };
  readonly finishing: boolean;
}

export interface WallFeed {
  /** Feed per tooth of the cutter's centre, and what it is at the edge [mm]. */
  readonly centreFeed: number;
  readonly edgeFeed: number;
  /** Largest chip it cuts [mm]. */
  readonly chip: number;
  /** What sets the feed: the wanted chip, or the limit that holds it under that. */
  readonly heldBy: "chip" | "tooth" | "finish" | "edge";
}

/**
 * Feed per tooth of the cutter's centre whose largest real chip is the list's, within the limits that hold it back.
 *
 *   fc = min(h/(sin κ·sin φe), tooth·h),   finishing also ≤ finish·h at centre and edge,   inside also ≤ insideEdge·h at the edge
 *
 * with h the listed chip and φe the angle of engagement (at most 90°) of the effective radial depth.
 *
 * @param cut - cut.listed h, cut.radialDepth and cut.diameter [mm], cut.edgeAngle κ [deg], cut.arc (diameter and cutterDiameter [mm], side), cut.finishing
 * @param limits - multiples of the listed feed [-]: limits.tooth, limits.finish, limits.insideEdge
 * @returns centreFeed, edgeFeed and chip [mm]; heldBy
 * @throws TradeError "range" when a value is outside its limits (radialDepth at most diameter)
 * @source MARTELLOTTI1941 COMMON
 * @example
 * wallFeed({ listed: 0.05, radialDepth: 1, diameter: 10, edgeAngle: 90, finishing: false }, FEED_LIMITS).centreFeed //=> 0.083333
 * wallFeed({ listed: 0.05, radialDepth: 0.2, diameter: 10, edgeAngle: 90, finishing: true }, FEED_LIMITS).heldBy //=> finish
 */
export function wallFeed(cut: WallCut, limits: FeedLimits): WallFeed {
  const h = positive("listed", cut.listed);
  const perFeed = largestChip(1, cut.radialDepth, cut.diameter, cut.edgeAngle);
  const { arc } = cut;
  /** Feed of the centre for a feed at the edge. */
  const centre = (edge: number) => (arc ? arcFeed(edge, arc.diameter, arc.cutterDiameter, arc.side) : edge);
  const candidates: [WallFeed["heldBy"], number][] = [
    ["chip", h / perFeed],
    ["tooth", positive("tooth", limits.tooth) * h],
  ];
  if (cut.finishing) {
    const most = positive("finish", limits.finish) * h;
    candidates.push(["finish", Math.min(most, centre(most))]);
  }
  if (arc?.side === "inside") candidates.push(["edge", centre(positive("insideEdge", limits.insideEdge) * h)]);
  const [heldBy, fc] = candidates.reduce((least, c) => (c[1] < least[1] ? c : least));
  return { centreFeed: fc, edgeFeed: fc / centre(1), chip: fc * perFeed, heldBy };
}
