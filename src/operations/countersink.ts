/** Countersinking a hole to its finished diameter at the face. */
import { countersinkDepth, countersinkTravel, ringTorque } from "../drill/ream.ts";
import type { Tool } from "../table/lists.ts";
import type { Operation } from "./operation.ts";
import { CLEARANCE } from "./shared/choices.ts";
import { forceOf } from "./shared/force.ts";
import { holeSpeed, openingFeed, SHARE_OF_DRILL } from "./shared/hole-tool.ts";
import { type Done, type Job, ofOtherKind, requireCells } from "./shared/job.ts";
import { judgePower } from "./shared/limits.ts";
import { featureTime, type Motion } from "./shared/motion.ts";
import { judgeReach } from "./shared/reach.ts";
import { under } from "./shared/slack.ts";

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
      !under(t.diameter, wanted) &&
      (angle === undefined || sameCone(t.pointAngle ?? ANGLE, angle));
    const tools = lists.tools.items.filter(fits).sort((a, b) => a.diameter! - b.diameter!);
    return { tools, for: "countersink" };
  },
};

/** Included angle that is assumed [deg], and teeth. */
const ANGLE = 90;
const TEETH = 3;
/** Feed per turn over that of a drill of the same diameter (common practice: slow and steady, it chatters), and over the diameter. */
const FEED = { overDrill: 0.6, ofDiameter: 0.01 } as const;
/** Turns that it stays at the bottom, so that every edge has been all the way round (common practice: one to three). */
const TURNS_AT_BOTTOM = 2;
/** Angles this near are the same cone [deg]. */
const ANGLE_SLACK = 2;
const sameCone = (a: number, b: number): boolean => Math.abs(a - b) < ANGLE_SLACK;

/** Angle of the cone that start, finish and depth describe [deg]. */
function coneAngle({ startDiameter: d, finishDiameter: D, depth: t }: Job["row"]): number | undefined {
  if (!d || D === undefined || t === undefined || d >= D) return undefined;
  return (360 / Math.PI) * Math.atan((D - d) / (2 * t));
}

function plan(job: Job): Done {
  const { work, row, tool } = job;
  if (!requireCells(job, countersink.needs(row))) return {};
  const diameter = row.finishDiameter!;
  const start = row.startDiameter ?? 0;
  work.set({ tool: tool?.tool ?? null, startDiameter: row.startDiameter || null });
  if (ofOtherKind(work, tool, "countersink")) return { tool };
  if (!tool && row.tool === undefined) work.find("tool-assumed", { operation: "countersink" });
  if (tool?.diameter !== undefined && under(tool.diameter, diameter))
    work.find("countersink-small", { value: tool.diameter, limit: diameter });
  if (!under(start, diameter)) {
    work.find("no-stock", { value: start, limit: diameter });
    return { tool };
  }
  const angle = tool?.pointAngle ?? ANGLE;
  judgeCone(job, diameter, start, angle);
  const own = tool ?? ({ substrate: "hss" } as const);
  const speed = holeSpeed(job, own, diameter, SHARE_OF_DRILL.countersink);
  if (!speed) return { tool };
  const { perTurn, feed } = openingFeed(job, diameter, speed.rpm, FEED);
  const force = forceOf(job);
  if (force) {
    const teeth = tool?.teeth ?? TEETH;
    const torque = ringTorque(diameter, start, perTurn, teeth, angle / 2, force.kc11, force.exponent);
    work.step("ringTorque", torque, { teeth });
    judgePower(job, torque, speed.rpm, true);
  } else work.find("no-kc", { bending: false });
  const tip = countersinkTravel(diameter, 0, angle);
  if (!row.through && row.holeDepth !== undefined && under(row.holeDepth, tip))
    work.find("point-through-bottom", { value: tip, limit: row.holeDepth });
  if (tool) judgeReach(job, tool, tip, diameter);
  const travel = start > 0 ? countersinkDepth(diameter, start, angle) : tip;
  const moves = (motion: Motion) => {
    motion.feed(travel + CLEARANCE, feed);
    motion.rapid(travel + CLEARANCE);
    motion.wait((60 * TURNS_AT_BOTTOM) / speed.rpm);
  };
  return { tool, ...featureTime(job, speed.surfaceSpeed, moves) };
}

/** A typed depth that the tool's angle does not give. */
function judgeCone({ work, row }: Job, diameter: number, start: number, angle: number): void {
  const wanted = coneAngle(row);
  if (wanted !== undefined && !sameCone(wanted, angle))
    work.find("cone-angle", { value: row.depth!, limit: countersinkDepth(diameter, start, angle), angle });
}
