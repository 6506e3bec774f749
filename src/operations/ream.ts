/** Reaming a hole to its finished size. */
import type { Operation } from "./operation.ts";
import { type Done, type Job, requireCells } from "./shared/job.ts";
import { cutPlainHole, throughTravel } from "./shared/plain-hole.ts";

/** Share of the HSS range of speeds, and feed per turn against diameter (common practice). */
const SPEED = 0.5;
const FEED = 0.02;

export const ream: Operation = {
  needs: () => ["finishDiameter", "depth"],
  uses: ["startDiameter", "through", "feedPerTooth"],
  tools: [],
  levers: ["feedPerTooth", "surfaceSpeed"],
  plan,
};

function plan(job: Job): Done {
  const { row } = job;
  requireCells(job, ream.needs(row));
  if (row.finishDiameter === undefined) return {};
  return cutPlainHole(job, {
    diameter: row.finishDiameter,
    speed: SPEED,
    perTurn: row.feedPerTooth ?? FEED * row.finishDiameter,
    threaded: false,
    travel: throughTravel(job),
    feedsOut: false,
  });
}
