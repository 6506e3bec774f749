/** Feed of a thread mill: its contour feed, the chip that the list allows, what its neck stands. */

import { arcFeed } from "../../../mill/arc.ts";
import { largestChip } from "../../../mill/chip.ts";
import { engagementAngle } from "../../../mill/engagement.ts";
import { runoutForce } from "../../../mill/runout.ts";
import { threadFeed } from "../../../mill/threadfeed.ts";
import type { Material } from "../../../table/lists.ts";
import type { Row } from "../../../table/rows.ts";
import type { FeedBy } from "../../../table/steps.ts";
import { USUAL_THREAD_FEED } from "../choices.ts";
import { over } from "../slack.ts";
import type { Geometry } from "./geometry.ts";

/** What sets the feed: the row itself, the contour feed, the chip, the strength of the tool. */
export type ThreadFeedBy = Extract<FeedBy, "row" | "contour" | "chip" | "strength">;

export interface CutterFeed {
  readonly edgeFeed: number;
  readonly centreFeed: number;
  /** Largest radial chip [mm]. */
  readonly chip: number;
  readonly by: ThreadFeedBy;
}

/** Feed without regard to strength. `listed` is the largest chip that the milling list allows [mm]. */
export function freeFeed(
  row: Pick<Row, "feedPerTooth">,
  material: Material | undefined,
  g: Geometry,
  radialDepth: number,
  listed: number,
): CutterFeed {
  const { diameter, tip, side } = g;
  if (row.feedPerTooth !== undefined) {
    const centreFeed = arcFeed(row.feedPerTooth, tip, diameter, side);
    return {
      edgeFeed: row.feedPerTooth,
      centreFeed,
      chip: largestChip(centreFeed, radialDepth, diameter, 90),
      by: "row",
    };
  }
  const feed = threadFeed({
    contourFeed: ((material?.threadFeed ?? USUAL_THREAD_FEED) / 100) * diameter,
    listedChip: listed,
    cutterDiameter: diameter,
    tipDiameter: tip,
    side,
    engagement: engagementAngle(radialDepth, diameter),
  });
  return { edgeFeed: feed.edge, centreFeed: feed.centre, chip: feed.chip, by: feed.bound };
}

/** Halvings of the chip on the way to the one that a tool stands. */
const HALVINGS = 30;

/**
 * The feed lowered until the tool stands it, `load` being what it carries at the free feed with a true cutter; never below the
 * chip at which the edge starts to rub, nor a feed that the row states.
 */
export function strongFeed(
  feed: CutterFeed,
  load: number,
  tool: { readonly runout: number; readonly teeth: number; readonly exponent: number; readonly leastChip: number },
): CutterFeed {
  const { runout, teeth, exponent, leastChip } = tool;
  const at = (chip: number) => load * (chip / feed.chip) ** (1 - exponent) * runoutForce(chip, runout, teeth, exponent);
  if (feed.by === "row" || !over(at(feed.chip), 1)) return feed;
  let [low, high] = [Math.min(leastChip, feed.chip), feed.chip];
  if (over(at(low), 1)) high = low;
  for (let i = 0; i < HALVINGS && high > low; i++) {
    const chip = (low + high) / 2;
    if (over(at(chip), 1)) high = chip;
    else low = chip;
  }
  const share = low / feed.chip;
  if (share >= 1) return feed;
  return { edgeFeed: share * feed.edgeFeed, centreFeed: share * feed.centreFeed, chip: low, by: "strength" };
}
