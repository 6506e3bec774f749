/** The cut of a thread: speed, feed, forces, bending, time. */
import { arcFeedLimit } from "../../../time.ts";
import { deflectionStep, type ToolBeam, toolBeam } from "../beam.ts";
import { CLEARANCE, SPEED_PLACE } from "../choices.ts";
import { programFeed } from "../feed.ts";
import type { Done, Job } from "../job.ts";
import { judgeChip, judgePower, judgeSize, judgeStress, programmedSize } from "../limits.ts";
import { Motion, motionOf } from "../motion.ts";
import { chooseFeed, chooseSpeed } from "../speed.ts";
import { type Geometry, turnsOf } from "./geometry.ts";
import { type Attempt, choosePasses } from "./passes.ts";

export function cutThread(job: Job, g: Geometry, deep: boolean): Omit<Done, "tool"> {
  const { work, row, material, machine } = job;
  const { sizes, tool, diameter, side, tip } = g;
  const speed = chooseSpeed(job, tool, diameter, SPEED_PLACE.mill);
  const listed = chooseFeed(job, diameter);
  const teeth = tool.teeth;
  if (teeth === undefined) {
    work.find("tool-incomplete", { tool: tool.tool, missing: "teeth" });
    return {};
  }
  if (!speed || listed === undefined || !(side === "outside" || diameter < g.start)) return {};
  const beam = toolBeam(job, tool);
  const loadFromTip =
    tool.kind === "thread mill full" ? Math.min(row.depth ?? 0, tool.cuttingLength ?? 0) / 2 : (tool.tipToProfile ?? 0);
  const chosen = choosePasses(job, g, listed, teeth, beam, loadFromTip);
  if (!chosen) return {};
  const arcLimit =
    machine?.acceleration === undefined ? undefined : arcFeedLimit(g.pathRadius, machine.acceleration, sizes.pitch);
  work.step("radialDepth", chosen.radialDepth, { side });
  const { feed, share } = programFeed(job, {
    ...chosen,
    listed,
    edgeAngle: 90,
    rpm: speed.rpm,
    teeth,
    diameter,
    arc: { diameter: tip, side },
    arcLimit,
  });
  work.step("flankChip", share * chosen.flankChip);
  work.step("depths", chosen.depths, {
    thread: sizes.thread.designation,
    start: g.start,
    flat: g.flat,
    passes: chosen.passes,
    springs: chosen.springs,
    cutter: diameter,
  });
  work.set({ passes: chosen.passes, springPasses: chosen.springs, depths: chosen.depths });
  judgeChip(job, share * chosen.flankChip, tool.edgeRadius, true);
  work.sketch = {
    kind: "thread mill",
    profileAngle: sizes.thread.profileAngle,
    inside: sizes.internal,
    holeDiameter: tip,
    startDiameter: g.start,
    depth: row.depth,
    through: row.through,
    pathRadius: g.pathRadius,
    cutterDiameter: diameter,
    tipFlat: g.flat,
    pitch: sizes.pitch,
    depths: chosen.depths,
    tool: beam?.parts.map((p) => ({ length: p.length, diameter: p.holderDiameter, part: p.part })),
    deflection: beam ? beam.flexibility(loadFromTip) * chosen.peak : undefined,
  };
  if (material?.kc11 !== undefined && material.exponent !== undefined)
    forces(job, g, chosen, beam, loadFromTip, speed.rpm);
  else work.find("no-kc", { bending: true });
  return deep ? timing(job, g, chosen, feed, speed.surfaceSpeed) : {};
}

function forces(
  job: Job,
  g: Geometry,
  chosen: Attempt,
  beam: ToolBeam | undefined,
  loadFromTip: number,
  rpm: number,
): void {
  const { work } = job;
  work.set({ force: chosen.tangential });
  work.step("force", chosen.tangential, { thread: true });
  judgePower(job, chosen.torque, rpm);
  if (!beam) return;
  work.set({ deflection: beam.flexibility(loadFromTip) * chosen.peak });
  deflectionStep(job, beam, loadFromTip, chosen.peak, true);
  judgeStress(job, beam, g.tool, chosen.peak, chosen.torque, loadFromTip, chosen.chip);
  const sign = g.sizes.internal ? -1 : 1;
  const middle = (g.sizes.pitchMin + g.sizes.pitchMax) / 2;
  const programmed = programmedSize(job, middle, g.sizes.internal);
  judgeSize(job, {
    programmed,
    low: g.sizes.pitchMin,
    high: g.sizes.pitchMax,
    errors: [sign * chosen.errors[0], sign * chosen.errors[1]],
    of: "pitch diameter",
  });
  work.step(
    "left",
    chosen.left.map((r) => programmed + sign * 2 * r),
  );
}

function timing(job: Job, g: Geometry, chosen: Attempt, feed: number, surfaceSpeed: number): Omit<Done, "tool"> {
  const { row, machine, work } = job;
  const m = motionOf(machine);
  if (!m) return {};
  const { turns, levels } = turnsOf(g.tool, g.sizes.pitch, row.depth!);
  const motion = new Motion(m);
  motion.arrive(row);
  const sign = g.side === "inside" ? 1 : -1;
  for (const depth of chosen.depths) {
    const radius = g.pathRadius - sign * (g.fullDepth - depth);
    motion.repeat(levels, () => {
      motion.rapid(row.depth! + CLEARANCE);
      motion.circle(Math.max(radius, 1e-3), turns, feed, g.sizes.pitch);
      motion.rapid(row.depth! + CLEARANCE);
    });
  }
  work.step("timeEach", motion.total(), { passes: chosen.depths.length, turns });
  return { time: motion.time, cutting: { seconds: motion.time.cutting, surfaceSpeed } };
}
