/**
 * Hole work with tools that the list has no kind for: tapping, reaming, countersinking. Speeds are shares of the
 * drilling speed by common practice; the rows say that a plain HSS tool is assumed.
 */
import type { Material } from "../../table/lists.ts";
import { CLEARANCE, SPEED_PLACE } from "./choices.ts";
import type { Done, Job } from "./job.ts";
import { judgeFeed } from "./limits.ts";
import { breakthroughOf, Motion, motionOf } from "./motion.ts";
import { chooseSpeed } from "./speed.ts";

export interface PlainHole {
  readonly diameter: number;
  /** Share of the HSS range of speeds (common practice). */
  readonly speed: number;
  /** Feed per turn [mm]. */
  readonly perTurn: number;
  /** A tap's feed is its pitch: it is no result of its own. */
  readonly threaded: boolean;
  /** Travel below the face [mm]; undefined where a cell is missing. */
  readonly travel?: number;
  /** Goes out at the feed that it went in with. */
  readonly feedsOut: boolean;
  /** Seconds it stays at the bottom at this feed [mm/min]. */
  dwell?(feed: number, acceleration: number): number;
}

export function cutPlainHole(job: Job, hole: PlainHole): Done {
  const { work, row, material, machine } = job;
  work.find("tool-assumed", { operation: job.operation });
  const slowed = material && slower(material, hole.speed);
  const speed = chooseSpeed(job, { substrate: "hss" }, hole.diameter, SPEED_PLACE.drill, slowed);
  if (!speed) return {};
  const feed = judgeFeed(job, speed.rpm * hole.perTurn);
  work.step("tableFeed", feed, { perTurn: hole.threaded ? "pitch" : "feed" });
  work.set({
    tableFeed: feed,
    feedPerTooth: hole.threaded ? null : hole.perTurn,
    startDiameter: row.startDiameter ?? null,
  });
  const m = motionOf(machine);
  if (!m || hole.travel === undefined) return {};
  const motion = new Motion(m);
  motion.arrive(row);
  motion.feed(hole.travel + CLEARANCE, feed);
  if (hole.feedsOut) motion.feed(hole.travel + CLEARANCE, feed);
  else motion.rapid(hole.travel + CLEARANCE);
  if (hole.dwell) motion.wait(hole.dwell(feed, m.acceleration));
  return { time: motion.time, cutting: { seconds: motion.time.cutting, surfaceSpeed: speed.surfaceSpeed } };
}

/** Travel of a tool that goes through or to a depth [mm]. */
export const throughTravel = ({ row }: Job): number | undefined =>
  row.depth === undefined ? undefined : row.depth + breakthroughOf(row.through);

/** The material with its HSS speeds scaled. */
function slower(material: Material, share: number): Material {
  const scale = (v: number | undefined) => (v === undefined ? undefined : v * share);
  return { ...material, speedHssLow: scale(material.speedHssLow), speedHssHigh: scale(material.speedHssHigh) };
}
