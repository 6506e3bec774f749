/** From the feed of the edge to the feed to program, with the chip that results: the same for threads and walls. */
import { arcFeed, type Side } from "../../mill/arc.ts";
import { tableFeed } from "../../mill/speed.ts";
import { THINNING_LIMIT } from "./choices.ts";
import type { Job } from "./job.ts";
import { judgeFeed } from "./limits.ts";

export interface EdgeFeed {
  /** List's or row's feed per tooth, and what the thin chip made of it [mm]. */
  readonly listed: number;
  readonly edgeFeed: number;
  /** Feed per tooth of the cutter's centre, effective radial depth and largest chip [mm]. */
  readonly centreFeed: number;
  readonly radialDepth: number;
  readonly chip: number;
  readonly edgeAngle: number;
  readonly rpm: number;
  readonly teeth: number;
  readonly diameter: number;
  /** Finished wall, when it is an arc: diameter [mm] and side. */
  readonly arc?: { readonly diameter: number; readonly side: Side };
  /** Highest feed that the machine's acceleration allows on the path [mm/min]. */
  readonly arcLimit?: number;
}

/**
 * Table feed to program [mm/min], and which share of the wanted feed the machine really reaches: its cap and its
 * acceleration on the path make the chip thinner by that much. Every number of the way becomes a step.
 */
export function programFeed(job: Job, f: EdgeFeed): { feed: number; share: number } {
  const { work } = job;
  const { arc, diameter } = f;
  const edgeTable = tableFeed(f.rpm, f.teeth, f.edgeFeed);
  const wanted = arc ? arcFeed(edgeTable, arc.diameter, diameter, arc.side) : edgeTable;
  work.step("edgeFeed", f.edgeFeed, { listed: f.listed, most: THINNING_LIMIT });
  const table = { rpm: f.rpm, teeth: f.teeth, feed: f.edgeFeed };
  if (arc) {
    work.step("edgeTable", edgeTable, table);
    work.step("tableFeed", wanted, { edge: edgeTable, finish: arc.diameter, diameter, arc: arc.side });
  } else work.step("tableFeed", edgeTable, table);
  const feed = judgeFeed(job, wanted, f.arcLimit);
  const share = Math.min(feed, f.arcLimit ?? feed) / wanted;
  const chip = share * f.chip;
  work.step("chip", chip, {
    feed: share * f.centreFeed,
    radialDepth: f.radialDepth,
    diameter,
    edgeAngle: f.edgeAngle,
    held: share < 1,
  });
  work.set({ tableFeed: feed, feedPerTooth: f.edgeFeed, radialDepth: f.radialDepth, chipThickness: chip });
  return { feed, share };
}
