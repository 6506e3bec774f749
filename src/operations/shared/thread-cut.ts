/** The cut of a thread: speed, feed, forces, bending, time. */
import { arcFeedLimit } from "../../time.ts";
import { type ToolBeam, toolBeam, toolDeflectionCell } from "./beam.ts";
import { CLEARANCE, chooseFeed, chooseSpeed, SPEED_PLACE } from "./choices.ts";
import { programFeed } from "./feed.ts";
import type { Done, Job } from "./job.ts";
import { judgeChip, judgePower, judgeSize, judgeStress, programmedSize } from "./limits.ts";
import { Motion, motionOf } from "./motion.ts";
import { type Geometry, turnsOf } from "./thread-geometry.ts";
import { type Attempt, choosePasses } from "./thread-passes.ts";

export function cutThread(job: Job, g: Geometry, deep: boolean): Omit<Done, "tool"> {
  const { work, row, material, machine } = job;
  const { sizes, tool, diameter, side, tip } = g;
  const speed = chooseSpeed(work, row, material, tool, machine, diameter, SPEED_PLACE.mill);
  const listed = chooseFeed(work, row, material, diameter);
  const teeth = tool.teeth;
  if (teeth === undefined) {
    work.reason("stop", "tool-incomplete", `${tool.tool} has no Teeth in the list`, "fill it in");
    return {};
  }
  if (!speed || listed === undefined || !(side === "outside" || diameter < g.start)) return {};
  const beam = toolBeam(work, row, tool, machine);
  const loadFromTip =
    tool.kind === "thread mill full" ? Math.min(row.depth ?? 0, tool.cuttingLength ?? 0) / 2 : (tool.tipToProfile ?? 0);
  const chosen = choosePasses(job, g, listed, teeth, beam, loadFromTip);
  if (!chosen) return {};
  const arcLimit =
    machine?.acceleration === undefined ? undefined : arcFeedLimit(g.pathRadius, machine.acceleration, sizes.pitch);
  const u = work.units;
  STEPS: work.step(
    "radialDepth",
    "effective radial depth (largest pass)",
    chosen.radialDepth,
    side === "inside" ? "(Dm² − Dw²)/(4·(Dm − Dc))" : "(Dw² − Dm²)/(4·(Dm + Dc))",
    "DERIVED",
    { dimension: "length" },
  );
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
  STEPS: work.step(
    "flankChip",
    "chip on the flank",
    share * chosen.flankChip,
    "radial chip·sin(half the profile angle)",
    "DERIVED",
    {
      dimension: "length",
    },
  );
  const written = chosen.depths.map((d) => work.number(d)).join(" · ");
  STEPS: work.step(
    "depths",
    "radial depth after each pass",
    written,
    "equal cut area t·(f + t·tan 30°) each; spring passes at full depth",
    "DERIVED",
    {
      cell: work.formula(
        "THREADPASSES",
        sizes.thread.designation,
        [g.start, "length"],
        [g.flat, "length"],
        chosen.passes,
        u,
        chosen.springs,
        [diameter, "length"],
      ),
    },
  );
  work.set({ passes: chosen.passes, springPasses: chosen.springs, depths: written });
  judgeChip(job, share * chosen.flankChip, tool.edgeRadius, "the chip on the flank");
  STEPS: work.sketch = {
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
  else
    work.reason(
      "check",
      "no-kc",
      "the material's row has no kc1.1 and exponent: force, bending and power are not worked out",
      "fill them in",
    );
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
  STEPS: work.step(
    "force",
    "peak tangential force (largest pass)",
    chosen.tangential,
    "Kienzle kc = kc1.1·h^−m, summed over the profile, the teeth and a turn",
    "KIENZLE1952",
    { dimension: "force" },
  );
  judgePower(job, chosen.torque, rpm);
  if (!beam) return;
  const deflection = beam.flexibility(loadFromTip) * chosen.peak;
  work.set({ deflection });
  STEPS: work.step(
    "deflection",
    "deflection at the cutter (peak force)",
    deflection,
    "stepped cantilever: bending, shear, shoulders, holder",
    "ROARK",
    {
      dimension: "length",
      cell: toolDeflectionCell(work, beam, loadFromTip, chosen.peak),
    },
  );
  judgeStress(job, beam, g.tool, chosen.peak, chosen.torque, loadFromTip, chosen.chip);
  const sign = g.sizes.internal ? -1 : 1;
  const middle = (g.sizes.pitchMin + g.sizes.pitchMax) / 2;
  const programmed = programmedSize(job, middle, g.sizes.internal);
  judgeSize(job, {
    programmed,
    low: g.sizes.pitchMin,
    high: g.sizes.pitchMax,
    errors: [sign * chosen.errors[0], sign * chosen.errors[1]],
    name: "pitch diameter",
  });
  STEPS: work.step(
    "left",
    "pitch diameter after each pass",
    chosen.left.map((r) => work.number(programmed + sign * 2 * r)).join(" · "),
    "each pass solved for the depth really cut; mean of the two force models",
    "KLINE1982",
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
  STEPS: work.step(
    "timeEach",
    "time of one feature",
    motion.total(),
    `${chosen.depths.length} passes of ${turns.toFixed(2)} turns, arcs in and out, rapids; each move from rest to rest`,
    "DERIVED",
    { unit: "s" },
  );
  return { time: motion.time, cutting: { seconds: motion.time.cutting, surfaceSpeed } };
}
