/** From the feed of the centre to the feed to program, with the chip that results: the same for threads and walls. */
import { arcFeed, type Side } from "../../mill/arc.ts";
import { tableFeed } from "../../mill/speed.ts";
import type { FeedBy, WallFeedBy } from "../../table/steps.ts";
import { CHIP_UNDER, chipOver } from "./choices.ts";
import type { Job } from "./job.ts";
import { judgeFeed } from "./limits.ts";
import { over, under } from "./slack.ts";

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
  /** Diameter of the edge that is engaged, where it is not the whole cutter's [mm]. */
  readonly engaged?: number;
  /** Finished wall, when it is an arc: diameter [mm] and side. */
  readonly arc?: { readonly diameter: number; readonly side: Side };
  /** Highest feed that the machine's acceleration allows on the path [mm/min]. */
  readonly arcLimit?: number;
  /** What set the feed. */
  readonly by: FeedBy;
}

/**
 * Table feed to program [mm/min], and which share of the wanted feed the machine really reaches: its cap and its
 * acceleration on the path make the chip thinner by that much. Every number of the way becomes a step.
 */
export function programFeed(job: Job, f: EdgeFeed): { feed: number; share: number; heldBy?: "arc" | "feed" } {
  const { work } = job;
  const { arc, diameter } = f;
  const edgeTable = tableFeed(f.rpm, f.teeth, f.edgeFeed);
  const wanted = arc ? arcFeed(edgeTable, arc.diameter, diameter, arc.side) : edgeTable;
  work.step("edgeFeed", f.edgeFeed, { listed: f.listed, by: f.by });
  const table = { rpm: f.rpm, teeth: f.teeth, feed: f.edgeFeed };
  if (arc) {
    work.step("edgeTable", edgeTable, table);
    work.step("tableFeed", wanted, { edge: edgeTable, finish: arc.diameter, diameter, arc: arc.side });
  } else work.step("tableFeed", edgeTable, table);
  const feed = judgeFeed(job, wanted, f.arcLimit, job.row.feedPerTooth !== undefined);
  const share = Math.min(feed, f.arcLimit ?? feed) / wanted;
  const chip = share * f.chip;
  const engaged = f.engaged ?? diameter;
  work.step("chip", chip, {
    feed: share * f.centreFeed,
    radialDepth: Math.min(f.radialDepth, engaged),
    diameter: engaged,
    edgeAngle: f.edgeAngle,
    held: share < 1,
  });
  work.set({ tableFeed: feed, feedPerTooth: f.edgeFeed, radialDepth: f.radialDepth, chipThickness: chip });
  return { feed, share, heldBy: share < 1 ? (feed < wanted && feed !== f.arcLimit ? "feed" : "arc") : undefined };
}

/** A chip that is thicker than the list's by more than the material bears. `would` is the feed at the edge whose chip is the list's. */
export function judgeThickChip({ work, material }: Job, real: number, listed: number, would: number): void {
  const { check, stop } = chipOver(material);
  for (const [share, severity] of [
    [stop, "stop"],
    [check, "check"],
  ] as const)
    if (over(real, share * listed))
      work.find("chip-too-thick", { value: real, limit: share * listed, listed, would }, severity);
}

/**
 * The largest real chip against the list's, above and below. `would` is the feed at the edge whose chip is the list's.
 * A share below 1 is what the machine makes of the feed.
 */
export function judgeRealChip(
  job: Job,
  {
    chip,
    share,
    heldBy,
    listed,
    would,
    by,
  }: { chip: number; share: number; heldBy?: "arc" | "feed"; listed: number; would: number; by: WallFeedBy },
): void {
  const { work } = job;
  const real = share * chip;
  work.limit("chip", real, chipOver(job.material).check * listed, "length");
  judgeThickChip(job, real, listed, would);
  const limit = CHIP_UNDER * listed;
  if (!under(real, limit)) return;
  const held = heldBy !== undefined && !under(chip, limit) ? heldBy : by;
  if (held !== "chip") work.find("chip-under-list", { value: real, limit, by: held });
}
