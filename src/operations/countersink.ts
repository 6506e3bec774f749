/** Countersinking a hole to its finished diameter at the face. */
import { moveTime } from "../time.ts";
import type { Operation } from "./operation.ts";
import { type Done, type Job, requireCells } from "./shared/job.ts";
import { cutPlainHole } from "./shared/plain-hole.ts";

/** Share of the HSS range of speeds, and feed per turn against diameter (common practice). */
const SPEED = 0.5;
const FEED = 0.01;

export const countersink: Operation = {
  needs: () => ["finishDiameter"],
  uses: ["startDiameter", "depth", "feedPerTooth"],
  tools: [],
  levers: ["feedPerTooth", "surfaceSpeed"],
  plan,
};

function plan(job: Job): Done {
  const { row } = job;
  if (!requireCells(job, countersink.needs(row))) return {};
  const diameter = row.finishDiameter!;
  return cutPlainHole(job, {
    diameter,
    speed: SPEED,
    perTurn: row.feedPerTooth ?? FEED * diameter,
    threaded: false,
    travel: row.depth ?? diameter / 2,
    feedsOut: false,
    dwell: (feed, acceleration) => moveTime(0.1 * diameter, feed, acceleration),
  });
}
