/** How long a wall takes: every pass on every level, from rest to rest. */
import { CLEARANCE } from "../choices.ts";
import type { Done, Job } from "../job.ts";
import { featureTime } from "../motion.ts";
import type { Attempt } from "./passes.ts";
import { diameterAt, type SizedTool, type Wall } from "./wall.ts";

export function wallTime(
  job: Job,
  wall: Wall,
  tool: SizedTool,
  chosen: Attempt,
  feed: number,
  listSpeed: number,
): Omit<Done, "tool"> {
  const { operation } = job;
  const d = tool.diameter;
  return featureTime(job, listSpeed, (motion) => {
    [...chosen.depths, ...(wall.beside ?? [])].forEach((depth, i) => {
      // A helical entry goes down through all levels at once; every other pass is made on each of them.
      const first = wall.rise > 0 && i === 0;
      motion.repeat(first ? 1 : wall.levels, () => {
        if (wall.circles) {
          const at = diameterAt(wall, depth);
          const radius = Math.max(1e-3, (wall.side === "inside" ? at - d : at + d) / 2);
          motion.rapid(wall.depth + CLEARANCE);
          motion.circle(radius, first ? wall.depth / wall.rise + 1 : 1, feed, first ? wall.rise : 0);
          motion.rapid(wall.depth + CLEARANCE);
        } else {
          const over = operation === "face" ? d : d / 2;
          motion.rapid(wall.depth + CLEARANCE);
          if (wall.side === "straight") motion.feed(wall.length! + over, feed);
          else {
            const radius = (wall.side === "inside" ? wall.finish! - d : wall.finish! + d) / 2;
            motion.arc(radius, wall.length! / (Math.PI * wall.finish!), feed, 0);
            motion.arc(radius / 2, 0.5, feed, 0);
          }
          motion.rapid(wall.depth + CLEARANCE);
          motion.rapid(wall.length! + over);
        }
      });
    });
    job.work.step("timeEach", motion.total());
  });
}
