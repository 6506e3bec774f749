/** Drilling: the hole, the drill, speed and feed, torque and thrust against drill and spindle, pecks, what size comes out. */
import { peckDepths } from "../drill/deep.ts";
import { drillChip } from "../drill/force.ts";
import { drillTravel } from "../drill/point.ts";
import { CHISEL, standardChisel, wholeDrillThrust, wholeDrillTorque } from "../drill/whole.ts";
import { tableFeed } from "../mill/speed.ts";
import type { Tool } from "../table/lists.ts";
import type { Operation } from "./operation.ts";
import { CLEARANCE, isSize, SAME_SIZE } from "./shared/choices.ts";
import { judgeDepth, judgeDrill, judgeFlutes, judgeStart } from "./shared/drill-judge.ts";
import { forceOf } from "./shared/force.ts";
import { drillNamed, drillsOfSize, oversizeOf, threadHole } from "./shared/hole.ts";
import { judgeHoleSize, sizeLimits } from "./shared/hole-size.ts";
import { drillingFeed, holeSpeed, inDepth, judgeFeedOver } from "./shared/hole-tool.ts";
import { type Done, type Job, ofOtherKind, requireCells } from "./shared/job.ts";
import { judgeChip, judgeFeed, judgePower } from "./shared/limits.ts";
import { breakthroughOf, featureTime, type Motion } from "./shared/motion.ts";
import { judgeReach } from "./shared/reach.ts";
import { over, under } from "./shared/slack.ts";
import { readInternal, type ThreadSizes } from "./shared/thread/sizes.ts";

export const drill: Operation = {
  needs: (row) => (row.thread === undefined ? ["finishDiameter", "depth"] : ["depth"]),
  uses: [
    ...(["tool", "thread", "finishDiameter", "startDiameter", "through", "feedPerTooth", "stickOut"] as const),
    ...(["holeDepth", "drillOversize", "wearFactor", "sizeTolerance", "sizeClass"] as const),
  ],
  tools: ["drill"],
  levers: ["feedPerTooth", "surfaceSpeed", "stickOut", "tool"],
  plan,
  candidates(job) {
    const wanted = wantedHole(job, readInternal(job))?.diameter;
    return { tools: wanted === undefined ? [] : drillsOfSize(job, wanted), for: "drill" };
  },
};

const POINT_ANGLE = 118;
/** Drill that is assumed where none is listed: a jobber drill of high-speed steel. */
const ASSUMED = { substrate: "hss" } as const;

function plan(job: Job): Done {
  const { work, row, machine, tool } = job;
  const sizes = readInternal(job);
  const hole = wantedHole(job, sizes);
  if (hole === undefined) {
    if (row.thread === undefined) requireCells(job, drill.needs(row));
    return {};
  }
  const wanted = hole.diameter;
  const complete = requireCells(job, ["depth"]);
  work.set({ tool: tool?.tool ?? null });
  if (ofOtherKind(work, tool, "drill")) return { tool };
  named(job, wanted, sizes);
  const diameter = tool?.diameter ?? wanted;
  const own = tool ?? ASSUMED;
  work.set({ drill: drillNamed(job, diameter), startDiameter: row.startDiameter || null });
  const oversize = tool
    ? oversizeOf(job, diameter, tool.substrate)
    : (hole.oversize ?? oversizeOf(job, diameter, "hss"));
  judgeHole(job, diameter, oversize, sizes, own);
  if (row.startDiameter !== undefined && over(row.startDiameter, diameter + SAME_SIZE)) {
    work.find("no-stock", { value: row.startDiameter, limit: diameter });
    return { tool };
  }
  if (job.material?.group === "h") work.find("hard-to-drill", { material: job.material.material });
  const pointAngle = tool?.pointAngle ?? POINT_ANGLE;
  const teeth = tool?.teeth ?? 2;
  const share = inDepth(own, row.depth ?? 0, diameter);
  const speed = holeSpeed(job, own, diameter, share.speed);
  const fed = drillingFeed(job, own, diameter, teeth, share.feed);
  if (!speed || !fed) return { tool };
  const { perTurn } = fed;
  judgeFeedOver(job, fed);
  const feed = judgeFeed(job, tableFeed(speed.rpm, teeth, perTurn / teeth));
  work.step("tableFeed", feed, {
    rpm: speed.rpm,
    teeth,
    feed: perTurn / teeth,
    cap: machine?.maxFeed === undefined ? undefined : machine.maxFeed * 1000,
  });
  const chip = drillChip(perTurn, pointAngle);
  work.set({ feedPerTooth: perTurn / teeth, tableFeed: feed, chipThickness: chip });
  work.step("chip", chip, {
    feed: perTurn / teeth,
    radialDepth: diameter,
    diameter,
    edgeAngle: pointAngle / 2,
    drill: true,
  });
  judgeChip(job, chip, tool);
  forces(job, diameter, perTurn, pointAngle, speed.rpm);
  if (!complete) return { tool };
  return { tool, ...timing(job, diameter, pointAngle, feed, speed.surfaceSpeed) };
}

/** The hole that is asked for [mm]: its finished size, the drill of its thread, or the named drill's own size. */
function wantedHole(job: Job, sizes: ThreadSizes | undefined): { diameter: number; oversize?: number } | undefined {
  const { work, row, tool } = job;
  if (row.finishDiameter !== undefined) return { diameter: row.finishDiameter };
  if (sizes) {
    const hole = threadHole(job, sizes);
    work.step("startDiameter", hole.diameter, { oversize: hole.oversize });
    return hole;
  }
  return row.thread === undefined && tool?.diameter !== undefined ? { diameter: tool.diameter } : undefined;
}

/** The named drill against the hole; without one an assumed drill, when the shop has none of that size. */
function named(job: Job, wanted: number, sizes: ThreadSizes | undefined): void {
  const { work, row, tool } = job;
  if (!tool) {
    if (row.tool === undefined) work.find("no-drill-listed", { size: wanted, pointAngle: POINT_ANGLE });
    return;
  }
  if (tool.diameter === undefined || isSize(tool.diameter, wanted)) return;
  // A drill of a thread is judged by the hole that it makes: any within the minor limits will do.
  if (sizes && row.finishDiameter === undefined) return;
  work.find("wrong-drill", { value: tool.diameter, limit: wanted, tool: tool.tool, drill: drillNamed(job, wanted) });
}

/** The hole that comes out, against the thread's minor limits or the row's own. */
function judgeHole(
  job: Job,
  diameter: number,
  oversize: number,
  sizes: ThreadSizes | undefined,
  tool: Pick<Tool, "substrate">,
): void {
  const { work } = job;
  const size = diameter + oversize;
  work.step("size", size);
  work.set({ size });
  if (!sizes) {
    const limits = sizeLimits(job);
    if (limits) judgeHoleSize(job, diameter, size, limits, tool.substrate);
    return;
  }
  const [low, high] = [sizes.minorMin, sizes.minorMax];
  work.set({ sizeMin: low, sizeMax: high });
  if (under(size, low)) work.find("hole-under-minor", { value: size, limit: low });
  else if (over(size, high))
    work.find("hole-over-minor", { value: size, limit: high }, over(diameter, high) ? "stop" : "check");
}

/** A start hole at least this share of the drill guides it; a smaller one takes metal away (judgement). */
const GUIDE = 0.95;

function forces(job: Job, diameter: number, perTurn: number, pointAngle: number, rpm: number): void {
  const { work, row, tool } = job;
  const force = forceOf(job);
  if (!force) {
    work.find("no-kc", { bending: false });
    return;
  }
  const { kc11, exponent } = force;
  const start = row.startDiameter ?? 0;
  const cored = start > 0 && start < GUIDE * diameter;
  const chisel = cored
    ? 0
    : (tool?.chiselRatio ?? (tool?.substrate === "carbide" ? CHISEL.split : standardChisel(diameter)));
  // What a core hole takes away: the torque of its disc, and the lips' thrust by their length.
  const torqueLeft = cored ? 1 - (start / diameter) ** 2 : 1;
  const thrustLeft = cored ? 1 - start / diameter : 1;
  const torque = torqueLeft * wholeDrillTorque(diameter, perTurn, kc11, exponent, pointAngle, chisel);
  const thrust = thrustLeft * wholeDrillThrust(diameter, perTurn, kc11, exponent, pointAngle, chisel);
  const facts = { diameter, perRev: perTurn, kc11, exponent, pointAngle, chisel, cored };
  work.step("torque", torque, facts);
  work.step("thrust", thrust, facts);
  work.set({ force: thrust });
  judgePower(job, torque, rpm, true);
  judgeDrill(job, diameter, torque, thrust);
  judgeStart(job, diameter, thrust);
}

function timing(
  job: Job,
  diameter: number,
  pointAngle: number,
  feed: number,
  surfaceSpeed: number,
): Omit<Done, "tool"> {
  const { work, row, tool } = job;
  const depth = row.depth!;
  const out = breakthroughOf(row.through);
  const travel = drillTravel(depth, diameter, pointAngle, out);
  work.step("travel", travel, { depth, diameter, pointAngle, out });
  if (row.holeDepth !== undefined && !row.through && over(travel, row.holeDepth))
    work.find("point-through-bottom", { value: travel, limit: row.holeDepth });
  if (!judgeDepth(job, diameter, travel)) return {};
  if (tool) {
    judgeFlutes(job, tool, diameter, travel);
    judgeReach(job, tool, travel, diameter);
  }
  const depths = tool?.coolantThrough ? [travel] : peckDepths(travel, diameter);
  const pecks = depths.length;
  work.path = { kind: "pecks", bottoms: depths };
  work.set({ passes: pecks, depths: pecks > 1 ? { pecks } : null });
  if (pecks > 1) work.step("pecks", depths);
  work.sketch = {
    kind: "drill",
    pointAngle,
    holeDiameter: diameter,
    depth,
    through: row.through,
    cutterDiameter: diameter,
    tool: [{ length: tool?.cuttingLength ?? depth * 1.5, diameter, part: "drill" }],
  };
  return featureTime(job, surfaceSpeed, (motion) => peck(motion, depths, feed));
}

/** Full retract after each peck, rapid back to just above the bottom. */
function peck(motion: Motion, depths: readonly number[], feed: number): void {
  let bottom = 0;
  depths.forEach((next, i) => {
    const start = i === 0 ? -CLEARANCE : bottom - CLEARANCE / 4;
    if (i > 0) motion.rapid(bottom + CLEARANCE * 0.75);
    motion.feed(next - start, feed);
    motion.rapid(next + CLEARANCE);
    bottom = next;
  });
}
