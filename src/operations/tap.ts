/** Tapping: the tap's own pitch is the feed. */
import type { Operation } from "./operation.ts";
import { type Done, type Job, requireCells } from "./shared/job.ts";
import { cutPlainHole, throughTravel } from "./shared/plain-hole.ts";
import { readThread } from "./shared/thread/sizes.ts";

/** Share of the HSS range of speeds (common practice). */
const SPEED = 0.4;

export const tap: Operation = {
  needs: () => ["thread", "depth"],
  uses: ["startDiameter", "through"],
  tools: [],
  levers: ["surfaceSpeed"],
  plan,
};

function plan(job: Job): Done {
  const { work, row } = job;
  const sizes = row.thread === undefined ? undefined : readThread(job);
  requireCells(job, tap.needs(row));
  if (!sizes) return {};
  work.set({ sizeMin: sizes.pitchMin, sizeMax: sizes.pitchMax });
  return cutPlainHole(job, {
    diameter: sizes.major,
    speed: SPEED,
    perTurn: sizes.pitch,
    threaded: true,
    travel: throughTravel(job),
    feedsOut: true,
  });
}
