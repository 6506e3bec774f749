/**
 * Hole work with tools that the list has no kind for: tapping, reaming, countersinking. Speeds are shares of the
 * drilling speed by common practice; the rows say that a plain HSS tool is assumed.
 */

import type { Material } from "../table/read.ts";
import { moveTime } from "../time.ts";
import { CLEARANCE, chooseSpeed, requireCells, SPEED_PLACE } from "./shared/choices.ts";
import type { Done, Job } from "./shared/job.ts";
import { judgeFeed } from "./shared/limits.ts";
import { breakthroughOf, Motion, motionOf } from "./shared/motion.ts";
import { readThread } from "./shared/thread-sizes.ts";

/** Share of the HSS range of speeds, and feed per turn against diameter (common practice). */
const PRACTICE = {
  tap: { speed: 0.4, feed: 0 },
  ream: { speed: 0.5, feed: 0.02 },
  countersink: { speed: 0.5, feed: 0.01 },
} as const;
type HoleWork = keyof typeof PRACTICE;

export function planHole(job: Job): Done {
  const { work, row, material, machine } = job;
  const operation = job.operation as HoleWork;
  const sizes = row.thread === undefined ? undefined : readThread(job);
  const diameter = operation === "tap" ? sizes?.major : row.finishDiameter;
  const complete = requireCells(
    work,
    operation === "tap"
      ? { Thread: row.thread, Depth: row.depth }
      : { "Finish diameter": row.finishDiameter, ...(operation === "ream" ? { Depth: row.depth } : {}) },
  );
  if (diameter === undefined) return {};
  work.reason(
    "ok",
    "tool-assumed",
    `a plain HSS tool for ${operation} is assumed: the tool list has no kind for it`,
    "check speed and feed against the tool's own figures",
  );
  const slowed = material && slower(material, PRACTICE[operation].speed);
  const speed = chooseSpeed(work, row, slowed, { tool: "", substrate: "hss" }, machine, diameter, SPEED_PLACE.drill);
  if (!speed) return {};
  const perTurn = operation === "tap" ? sizes!.pitch : (row.feedPerTooth ?? PRACTICE[operation].feed * diameter);
  const feed = judgeFeed(job, speed.rpm * perTurn);
  STEPS: work.step("tableFeed", "table feed", feed, operation === "tap" ? "n·pitch" : "n·feed per turn", "COMMON", {
    dimension: "feed",
  });
  work.set({
    tableFeed: feed,
    feedPerTooth: operation === "tap" ? null : perTurn,
    startDiameter: row.startDiameter ?? null,
  });
  if (sizes) work.set({ sizeMin: sizes.pitchMin, sizeMax: sizes.pitchMax });
  const m = motionOf(machine);
  if (!m || !complete) return {};
  const depth = row.depth ?? diameter / 2;
  const travel = depth + (operation === "countersink" ? 0 : breakthroughOf(row.through));
  const motion = new Motion(m);
  motion.arrive(row);
  motion.feed(travel + CLEARANCE, feed);
  if (operation === "tap") motion.feed(travel + CLEARANCE, feed);
  else motion.rapid(travel + CLEARANCE);
  if (operation === "countersink") motion.wait(moveTime(0.1 * diameter, feed, m.acceleration));
  return { time: motion.time, cutting: { seconds: motion.time.cutting, surfaceSpeed: speed.surfaceSpeed } };
}

/** The material with its HSS speeds scaled. */
function slower(material: Material, share: number): Material {
  const scale = (v: number | undefined) => (v === undefined ? undefined : v * share);
  return { ...material, speedHssLow: scale(material.speedHssLow), speedHssHigh: scale(material.speedHssHigh) };
}
