/** Countersinking a hole to its finished diameter at the face. */
import { countersinkDepth, countersinkTravel, ringTorque } from "../drill/ream.ts";
import { drillFeed } from "../drill/start.ts";
import type { Tool } from "../table/lists.ts";
import type { Operation } from "./operation.ts";
import { CLEARANCE } from "./shared/choices.ts";
import { holeSpeed, judgeFeedOver, SHARE_OF_DRILL } from "./shared/hole-tool.ts";
import { type Done, type Job, requireCells } from "./shared/job.ts";
import { judgeFeed, judgePower } from "./shared/limits.ts";
import { Motion, motionOf } from "./shared/motion.ts";
import { judgeReach } from "./shared/reach.ts";

export const countersink: Operation = {
  needs: () => ["finishDiameter"],
  uses: ["tool", "startDiameter", "depth", "through", "holeDepth", "feedPerTooth", "stickOut", "wearFactor"],
  tools: ["countersink"],
  levers: ["feedPerTooth", "surfaceSpeed", "tool"],
  plan,
  candidates({ row, lists }) {
    const wanted = row.finishDiameter ?? Number.POSITIVE_INFINITY;
    const angle = coneAngle(row);
    const fits = (t: Tool) =>
      t.kind === "countersink" &&
      t.diameter !== undefined &&
      t.diameter >= wanted * (1 - 1e-9) &&
      (angle === undefined || Math.abs((t.pointAngle ?? ANGLE) - angle) < ANGLE_SLACK);
    const tools = lists.tools.items.filter(fits).sort((a, b) => a.diameter! - b.diameter!);
    return { tools, for: "countersink" };
  },
};

/** Included angle that is assumed [deg], and teeth. */
const ANGLE = 90;
const TEETH = 3;
/** Feed per turn over that of a drill of the same diameter (common practice: slow and steady, it chatters), and over the diameter. */
const FEED_OVER_DRILL = 0.6;
const FEED_SHARE = 0.01;
/** Turns that it stays at the bottom, so that every edge has been all the way round (common practice: one to three). */
const TURNS_AT_BOTTOM = 2;
/** Angles this near are the same cone [deg]. */
const ANGLE_SLACK = 2;

/** Angle of the cone that start, finish and depth describe [deg]. */
function coneAngle({ startDiameter: d, finishDiameter: D, depth: t }: Job["row"]): number | undefined {
  if (d === undefined || d <= 0 || D === undefined || t === undefined || d >= D) return undefined;
  return (360 / Math.PI) * Math.atan((D - d) / (2 * t));
}

function plan(job: Job): Done {
  const { work, row, material, tool } = job;
  if (!requireCells(job, countersink.needs(row))) return {};
  const diameter = row.finishDiameter!;
  const start = row.startDiameter ?? 0;
  work.set({ tool: tool?.tool ?? null, startDiameter: row.startDiameter || null });
  if (tool?.kind !== undefined && tool.kind !== "countersink") {
    work.find("tool-kind", { tool: tool.tool, kind: tool.kind, wanted: "countersink" });
    return { tool };
  }
  if (!tool && row.tool === undefined) work.find("tool-assumed", { operation: "countersink" });
  if (tool?.diameter !== undefined && tool.diameter < diameter * (1 - 1e-9))
    work.find("countersink-small", { value: tool.diameter, limit: diameter });
  if (start >= diameter * (1 - 1e-9)) {
    work.find("no-stock", { value: start, limit: diameter });
    return { tool };
  }
  const angle = tool?.pointAngle ?? ANGLE;
  judgeCone(job, diameter, start, angle);
  const own = tool ?? ({ substrate: "hss" } as const);
  const speed = holeSpeed(job, own, diameter, SHARE_OF_DRILL.countersink);
  if (!speed) return { tool };
  const listed =
    material?.drillFeedHss === undefined
      ? FEED_SHARE * diameter
      : FEED_OVER_DRILL * drillFeed(diameter, material.drillFeedHss);
  const perTurn = row.feedPerTooth ?? listed;
  judgeFeedOver(job, { perTurn, listed });
  const feed = judgeFeed(job, speed.rpm * perTurn);
  work.step("tableFeed", feed, { perTurn: "feed" });
  work.set({ tableFeed: feed, feedPerTooth: perTurn });
  if (material?.kc11 !== undefined && material.exponent !== undefined) {
    const kc11 = material.kc11 * (row.wearFactor ?? 1);
    const teeth = tool?.teeth ?? TEETH;
    const torque = ringTorque(diameter, start, perTurn, teeth, angle / 2, kc11, material.exponent);
    work.step("ringTorque", torque, { teeth });
    judgePower(job, torque, speed.rpm, true);
  } else work.find("no-kc", { bending: false });
  const tip = countersinkTravel(diameter, 0, angle);
  if (!row.through && row.holeDepth !== undefined && row.holeDepth < tip)
    work.find("point-through-bottom", { value: tip, limit: row.holeDepth });
  if (tool) judgeReach(job, tool, tip, diameter);
  const travel = start > 0 ? countersinkDepth(diameter, start, angle) : tip;
  const m = motionOf(job.machine);
  if (!m) return { tool };
  const motion = new Motion(m);
  motion.arrive(row);
  motion.feed(travel + CLEARANCE, feed);
  motion.rapid(travel + CLEARANCE);
  motion.wait((60 * TURNS_AT_BOTTOM) / speed.rpm);
  return { tool, time: motion.time, cutting: { seconds: motion.time.cutting, surfaceSpeed: speed.surfaceSpeed } };
}

/** A typed depth that the tool's angle does not give. */
function judgeCone({ work, row }: Job, diameter: number, start: number, angle: number): void {
  const wanted = coneAngle(row);
  if (wanted !== undefined && Math.abs(wanted - angle) >= ANGLE_SLACK)
    work.find("cone-angle", { value: row.depth!, limit: countersinkDepth(diameter, start, angle), angle });
}
