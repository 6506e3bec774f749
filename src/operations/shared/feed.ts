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
  STEPS: work.step(
    "edgeFeed",
    "feed per tooth at the edge",
    f.edgeFeed,
    `list or row ${work.say(f.listed)}, raised for the thin chip, at most × ${THINNING_LIMIT}`,
    "MARTELLOTTI1941",
    { dimension: "length" },
  );
  STEPS: work.step(
    arc ? "edgeTable" : "tableFeed",
    arc ? "feed of the edge" : "table feed",
    edgeTable,
    "n·z·fz",
    "MH",
    { dimension: "feed", cell: work.formula("TABLEFEED", f.rpm, f.teeth, [f.edgeFeed, "length"]) },
  );
  if (arc) {
    STEPS: work.step(
      "tableFeed",
      "table feed at the cutter's centre",
      wanted,
      arc.side === "inside" ? "edge feed·(Dm − Dc)/Dm" : "edge feed·(Dm + Dc)/Dm",
      "DERIVED",
      {
        dimension: "feed",
        cell: work.formula("ARCFEED", [edgeTable, "feed"], [arc.diameter, "length"], [diameter, "length"], arc.side),
      },
    );
  }
  const feed = judgeFeed(job, wanted, f.arcLimit);
  const share = Math.min(feed, f.arcLimit ?? feed) / wanted;
  const chip = share * f.chip;
  STEPS: work.step(
    "chip",
    "largest chip",
    chip,
    share < 1 ? "h = fz(centre, at the feed really reached)·sin κ·sin φe" : "h = fz(centre)·sin κ·sin φe",
    "MARTELLOTTI1941",
    {
      dimension: "length",
      cell: work.formula(
        "CHIPTHICKNESS",
        [share * f.centreFeed, "length"],
        [f.radialDepth, "length"],
        [diameter, "length"],
        "max",
        f.edgeAngle,
      ),
    },
  );
  work.set({ tableFeed: feed, feedPerTooth: f.edgeFeed, radialDepth: f.radialDepth, chipThickness: chip });
  return { feed, share };
}
