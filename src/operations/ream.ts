/** Reaming a drilled hole to its finished size: stock, lead, what size comes out. */
import { reamerDrill, reamStock, ringTorque } from "../drill/ream.ts";
import { DRILL_SETS } from "../drill/sizes.ts";
import { TradeError } from "../errors.ts";
import { classLimits } from "../fits/limits.ts";
import type { Tool } from "../table/lists.ts";
import type { Operation } from "./operation.ts";
import { CLEARANCE, SAME_SIZE } from "./shared/choices.ts";
import { forceOf } from "./shared/force.ts";
import { DRILL_SETS_OF, drillNamed, oversizeOf } from "./shared/hole.ts";
import { sizeLimits } from "./shared/hole-size.ts";
import { holeSpeed, openingFeed, SHARE_OF_DRILL } from "./shared/hole-tool.ts";
import { type Done, type Job, ofOtherKind, requireCells } from "./shared/job.ts";
import { judgePower } from "./shared/limits.ts";
import { breakthroughOf, featureTime, type Motion } from "./shared/motion.ts";
import { judgeReach } from "./shared/reach.ts";
import { over, under } from "./shared/slack.ts";

export const ream: Operation = {
  needs: () => ["finishDiameter", "depth"],
  uses: [
    ...(["tool", "startDiameter", "through", "feedPerTooth", "holeDepth", "stickOut"] as const),
    ...(["drillOversize", "wearFactor", "sizeTolerance", "sizeClass"] as const),
  ],
  tools: ["reamer"],
  levers: ["feedPerTooth", "surfaceSpeed", "startDiameter", "tool"],
  plan,
  candidates(job) {
    const wanted = job.row.finishDiameter;
    const fits = (t: Tool) => t.kind === "reamer" && near(t.diameter, wanted);
    return { tools: job.lists.tools.items.filter(fits), for: "reamer" };
  },
};

/** Feed per turn over that of a drill (common practice: 1.5 to 2), and over the diameter where the list has no feed of drills. */
const FEED = { overDrill: 1.5, ofDiameter: 0.02 } as const;
/** Teeth that are assumed. */
const TEETH = 6;
/** Lead of a machine reamer over its diameter (common practice: a 45° bevel, and room for chips under it). */
const LEAD = 0.1;
/** Class of the hole that a common reamer makes. */
const CLASS = "H7";
/** Stock over the largest usual, from which a reamer jams or breaks rather than cuts (judgement). */
const FAR_OVER = 2;
const LEAD_ANGLE = 45;

/** A reamer of a size, or of the nominal size whose middle of limits the row names; a blank is near nothing. */
const near = (d = Number.NaN, wanted = Number.NaN): boolean => Math.abs(d - wanted) <= Math.max(SAME_SIZE, 1e-3 * d);

function plan(job: Job): Done {
  const { work, row, tool } = job;
  const complete = requireCells(job, ream.needs(row));
  const wanted = row.finishDiameter;
  if (wanted === undefined) return {};
  work.set({ tool: tool?.tool ?? null });
  if (tool) {
    if (ofOtherKind(work, tool, "reamer")) return { tool };
    if (tool.diameter !== undefined && !near(tool.diameter, wanted)) {
      work.find("reamer-differs", { value: tool.diameter, limit: wanted, tool: tool.tool });
      return { tool };
    }
  } else if (row.tool === undefined) work.find("tool-assumed", { operation: "ream" });
  const diameter = tool?.diameter ?? wanted;
  const start = holeOf(job, diameter);
  reamedSize(job, diameter, tool);
  const own = tool ?? ({ substrate: "hss" } as const);
  const teeth = tool?.teeth ?? TEETH;
  const speed = holeSpeed(job, own, diameter, SHARE_OF_DRILL.reamer);
  if (!speed) return { tool };
  const { perTurn, feed } = openingFeed(job, diameter, speed.rpm, FEED);
  const force = forceOf(job);
  if (start !== undefined && start < diameter && force) {
    const torque = ringTorque(diameter, start, perTurn, teeth, LEAD_ANGLE, force.kc11, force.exponent);
    work.step("ringTorque", torque, { teeth });
    judgePower(job, torque, speed.rpm, true);
  }
  if (!complete) return { tool };
  const lead = LEAD * diameter;
  const travel = row.depth! + (row.through ? breakthroughOf(true) + lead : 0);
  if (!row.through && row.holeDepth !== undefined && under(row.holeDepth, row.depth! + lead))
    work.find("reamer-bottoms", { value: row.holeDepth, limit: row.depth! + lead, lead });
  if (tool) judgeReach(job, tool, travel, diameter);
  const moves = (motion: Motion) => {
    motion.feed(travel + CLEARANCE, feed);
    motion.rapid(travel + CLEARANCE);
  };
  return { tool, ...featureTime(job, speed.surfaceSpeed, moves) };
}

/** The drilled hole [mm]: the row's, else that of the drill that leaves the right stock, preferably a listed one; judged by its stock. */
function holeOf(job: Job, diameter: number): number | undefined {
  const { work, row } = job;
  const { least, most } = reamStock(diameter);
  // A hole of 0 is none: an empty cell of an older program.
  if (row.startDiameter) {
    work.set({ startDiameter: row.startDiameter, drill: drillNamed(job, row.startDiameter) });
    judgeStock(job, diameter, row.startDiameter, least, most);
    return row.startDiameter;
  }
  const drill = drillBefore(job, diameter);
  if (drill === undefined) return undefined;
  const made = drill + oversizeOf(job, drill, "hss");
  work.set({ startDiameter: drill, drill: drillNamed(job, drill) });
  work.step("startDiameter", drill, { oversize: made - drill });
  judgeStock(job, diameter, made, least, most);
  return drill;
}

function judgeStock({ work }: Job, diameter: number, hole: number, least: number, most: number): void {
  const stock = diameter - hole;
  if (!under(hole, diameter)) work.find("reamer-in-air", { value: hole, limit: diameter });
  else if (under(stock, least)) work.find("ream-stock", { value: stock, limit: least, least, most }, "check");
  else if (over(stock, FAR_OVER * most))
    work.find("ream-stock", { value: stock, limit: FAR_OVER * most, least, most }, "stop");
  else if (over(stock, most)) work.find("ream-stock", { value: stock, limit: most, least, most }, "check");
}

/** Drill before the reamer: of the shop's own that leave the right stock the one nearest to the middle, else a standard size. */
function drillBefore(job: Job, diameter: number): number | undefined {
  const { least, most } = reamStock(diameter);
  const target = diameter - (least + most) / 2;
  let best: { d: number; off: number } | undefined;
  for (const { kind, diameter: d } of job.lists.tools.items) {
    if (kind !== "drill" || d === undefined) continue;
    const made = d + oversizeOf(job, d, "hss");
    // The size itself leaves stock within the window too, so that it may be typed in as the hole.
    if (under(diameter - made, least) || over(diameter - d, most)) continue;
    const off = Math.abs(made - target);
    if (!best || under(off, best.off)) best = { d, off };
  }
  if (best) return best.d;
  const oversize = oversizeOf(job, target, "hss");
  for (const sets of [DRILL_SETS_OF[job.work.units], DRILL_SETS]) {
    try {
      return reamerDrill(diameter, oversize, sets).diameter;
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
    }
  }
  return undefined;
}

/** The reamed hole lies within the reamer's class; the row's limits must take that in. */
function reamedSize(job: Job, diameter: number, tool: Tool | undefined): void {
  const { work } = job;
  const nominal = Math.round(diameter * 1e6) / 1e6;
  const made = classLimits(nominal, tool?.sizeClass ?? CLASS);
  work.set({ size: (made.min + made.max) / 2, sizeMin: made.min, sizeMax: made.max });
  const limits = sizeLimits(job);
  if (!limits) return;
  const { low, high } = limits;
  work.set({ sizeMin: low, sizeMax: high });
  const large = over(made.max, high);
  if (!large && !under(made.min, low)) return;
  const middle = (made.min + made.max) / 2;
  const facts = { value: large ? made.max : made.min, limit: large ? high : low, low: made.min, high: made.max };
  work.find("reamed-size", facts, middle > high || middle < low ? "stop" : "check");
}
