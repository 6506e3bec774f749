/** Milling walls: circular bores and bosses, slots, side walls straight and in arcs, faces. */
import { neckClearance } from "../thread/fit.ts";
import { arcFeedLimit } from "../time.ts";
import { type ToolBeam, toolBeam, toolDeflectionCell } from "./shared/beam.ts";
import { CLEARANCE, chooseFeed, chooseSpeed, requireCells, SPEED_PLACE } from "./shared/choices.ts";
import { programFeed } from "./shared/feed.ts";
import type { Done, Job } from "./shared/job.ts";
import { judgeChip, judgePower, judgeSize, judgeStress, programmedSize } from "./shared/limits.ts";
import { Motion, motionOf } from "./shared/motion.ts";
import { diameterAt, effective, needed, proposeTool, type SizedTool, type Wall, wallOf } from "./shared/wall.ts";
import { type Attempt, choosePasses } from "./shared/wall-passes.ts";

export function planWall(job: Job): Done {
  const { work, row } = job;
  const kinds = job.operation === "face" ? ["face mill", "end mill"] : ["end mill", "ball end mill"];
  const tool = job.tool ?? (row.tool === undefined ? proposeTool(job, kinds) : undefined);
  if (!tool) {
    requireCells(work, needed(job));
    return {};
  }
  work.set({ tool: tool.tool });
  if (tool.kind !== undefined && !kinds.includes(tool.kind)) {
    work.reason(
      "stop",
      "tool-kind",
      `${tool.tool} is a ${tool.kind}; ${kinds[0]} is wanted`,
      "name another tool, or leave Tool blank",
    );
    return { tool };
  }
  if (tool.diameter === undefined || tool.teeth === undefined) {
    work.reason(
      "stop",
      "tool-incomplete",
      `${tool.tool} has no ${tool.diameter === undefined ? "Diameter" : "Teeth"} in the list`,
      "fill it in",
    );
    return { tool };
  }
  if (!requireCells(work, needed(job))) return { tool };
  const wall = wallOf(job, tool.diameter, tool);
  if (!wall) return { tool };
  return { tool, ...cut(job, wall, tool as SizedTool) };
}

function cut(job: Job, wall: Wall, tool: SizedTool): Omit<Done, "tool"> {
  const { work, row, material, machine, operation } = job;
  const { diameter, teeth } = tool;
  const arc = wall.side !== "straight";
  const speed = chooseSpeed(work, row, material, tool, machine, diameter, SPEED_PLACE.mill);
  const listed = chooseFeed(work, row, material, diameter);
  work.set({ direction: wallDirection(job, wall) });
  const pathRadius = arc ? (wall.side === "inside" ? wall.finish! - diameter : wall.finish! + diameter) / 2 : undefined;
  if (wall.circles && pathRadius !== undefined) {
    STEPS: work.step(
      "pathRadius",
      "path radius of the cutter's centre",
      pathRadius,
      wall.side === "inside" ? "(Dm − Dc)/2" : "(Dm + Dc)/2",
      "DERIVED",
      { dimension: "length" },
    );
    work.set({ pathRadius, startDiameter: wall.start! });
    if (tool.neckDiameter !== undefined)
      work.set({
        neckGap: neckClearance(
          wall.finish!,
          pathRadius,
          tool.neckDiameter,
          wall.side === "inside" ? "internal" : "external",
        ),
      });
  }
  if (!speed || listed === undefined) return {};
  const beam = toolBeam(work, row, tool, machine);
  const chosen = choosePasses(job, wall, tool, listed, beam);
  if (!chosen) return {};
  radialStep(job, wall, chosen, diameter);
  const limit =
    pathRadius !== undefined && machine?.acceleration !== undefined
      ? arcFeedLimit(pathRadius, machine.acceleration, wall.rise)
      : undefined;
  const { feed, share } = programFeed(job, {
    ...chosen,
    listed,
    edgeAngle: tool.edgeAngle ?? 90,
    rpm: speed.rpm,
    teeth,
    diameter,
    arc: wall.side === "straight" ? undefined : { diameter: wall.finish!, side: wall.side },
    arcLimit: limit,
  });
  judgeChip(job, share * chosen.chip, tool.edgeRadius);
  const written = chosen.depths.map((d) => work.number(d)).join(" · ");
  work.set({
    passes: chosen.passes * (operation === "slot" || operation === "face" ? wall.levels : 1),
    springPasses: chosen.springs,
    depths: written,
  });
  const helixOnly = wall.rise > 0 && chosen.depths.length === 1;
  STEPS: work.step(
    "axialDepth",
    "axial depth",
    helixOnly ? wall.rise : wall.axial,
    helixOnly
      ? "rise per turn of the helix"
      : `${wall.levels} level${wall.levels > 1 ? "s" : ""} of equal depth${wall.rise > 0 ? " after the helical entry" : ""}`,
    "COMMON",
    { dimension: "length" },
  );
  STEPS: work.sketch = {
    kind: operation,
    inside: wall.side === "inside",
    holeDiameter: wall.finish,
    startDiameter: wall.start,
    depth: wall.depth,
    through: row.through,
    pathRadius,
    cutterDiameter: diameter,
    depths: chosen.depths,
    tool: beam?.parts.map((p) => ({ length: p.length, diameter: p.holderDiameter, part: p.part })),
    deflection: beam ? chosen.bending.deflection : undefined,
  };
  if (material?.kc11 === undefined || material.exponent === undefined) {
    work.reason(
      "check",
      "no-kc",
      "the material's row has no kc1.1 and exponent: force, bending and power are not worked out",
      "fill them in",
    );
  } else forces(job, wall, tool, chosen, beam, speed.rpm);
  return timing(job, wall, tool, chosen, feed, speed.surfaceSpeed);
}

function radialStep({ work }: Job, wall: Wall, chosen: Attempt, diameter: number): void {
  if (wall.finish === undefined || wall.side === "straight") {
    STEPS: work.step(
      "radialDepth",
      "radial depth",
      chosen.radialDepth,
      "from the row, or the stock in equal passes",
      "COMMON",
      { dimension: "length" },
    );
    return;
  }
  // The pass with the largest effective depth, written as its own formula.
  let from = 0;
  let at = 0;
  chosen.depths.slice(0, chosen.passes).forEach((d, i) => {
    const prior = i === 0 ? 0 : chosen.depths[i - 1]!;
    if (Math.abs(effective(wall, diameter, prior, d) - chosen.radialDepth) < 1e-12 * diameter && at === 0) {
      from = prior;
      at = d;
    }
  });
  STEPS: work.step(
    "radialDepth",
    "effective radial depth (largest pass)",
    chosen.radialDepth,
    wall.side === "inside" ? "(Dm² − Dw²)/(4·(Dm − Dc)), Dw at least |2·Dc − Dm|" : "(Dw² − Dm²)/(4·(Dm + Dc))",
    "DERIVED",
    {
      dimension: "length",
      cell: work.formula(
        "ARCDEPTH",
        [diameterAt(wall, from), "length"],
        [diameterAt(wall, at), "length"],
        [diameter, "length"],
        wall.side,
      ),
    },
  );
}

function wallDirection({ row }: Job, wall: Wall): string {
  const climb = (row.way ?? "climb") === "climb";
  if (wall.side === "straight" && wall.full) return "full width";
  if (wall.side === "straight") return climb ? "wall on the right of the travel" : "wall on the left of the travel";
  const counter = (wall.side === "inside") === climb;
  const turn = counter ? "counter-clockwise" : "clockwise";
  return wall.rise > 0 ? `top down, ${turn}` : turn;
}

function forces(job: Job, wall: Wall, tool: SizedTool, chosen: Attempt, beam: ToolBeam | undefined, rpm: number): void {
  const { work, row } = job;
  work.set({ force: chosen.tangential });
  STEPS: work.step(
    "force",
    "peak tangential force (largest pass)",
    chosen.tangential,
    "Kienzle kc = kc1.1·h^−m over teeth, helix and a turn",
    "KIENZLE1952",
    { dimension: "force" },
  );
  judgePower(job, chosen.torque, rpm);
  if (!beam) return;
  const { force, loadFromTip, deflection } = chosen.bending;
  work.set({ deflection });
  STEPS: work.step(
    "deflection",
    "deflection at the cut (peak force)",
    deflection,
    "stepped cantilever: bending, shear, shoulders, holder",
    "ROARK",
    { dimension: "length", cell: toolDeflectionCell(work, beam, loadFromTip, force) },
  );
  judgeStress(job, beam, tool, force, chosen.torque, loadFromTip, chosen.chip);
  if (wall.walls === 0) return;
  const finish = wall.finish ?? 0;
  const sign = wall.side === "inside" ? -1 : 1;
  if (row.sizeTolerance === undefined) {
    work.reason(
      "ok",
      "no-size-tolerance",
      `Size tolerance is blank: bending of ${work.say(Math.max(...chosen.errors.map(Math.abs)))} on the size is shown but not judged`,
      "type the allowed error of the size",
    );
    if (wall.finish !== undefined && wall.walls === 2)
      work.set({ size: finish + (sign * (chosen.errors[0] + chosen.errors[1])) / 2 });
    return;
  }
  judgeSize(job, {
    programmed: wall.walls === 2 ? programmedSize(job, finish, wall.side === "inside") : 0,
    low: finish - row.sizeTolerance,
    high: finish + row.sizeTolerance,
    errors: [sign * chosen.errors[0], sign * chosen.errors[1]],
    name: wall.walls === 2 ? "finished diameter" : "error of the wall",
  });
}

function timing(
  job: Job,
  wall: Wall,
  tool: SizedTool,
  chosen: Attempt,
  feed: number,
  surfaceSpeed: number,
): Omit<Done, "tool"> {
  const { row, machine, work, operation } = job;
  const m = motionOf(machine);
  if (!m) return {};
  const motion = new Motion(m);
  const d = tool.diameter;
  motion.arrive(row);
  chosen.depths.forEach((depth, i) => {
    const first = wall.full && i === 0;
    motion.repeat(first ? 1 : wall.levels, () => {
      if (wall.circles) {
        const at = diameterAt(wall, depth);
        const radius = Math.max(1e-3, (wall.side === "inside" ? at - d : at + d) / 2);
        motion.rapid(wall.depth + CLEARANCE);
        motion.circle(radius, first && wall.rise > 0 ? wall.depth / wall.rise + 1 : 1, feed, first ? wall.rise : 0);
        motion.rapid(wall.depth + CLEARANCE);
      } else {
        const over = operation === "face" ? d : d / 2;
        motion.rapid(wall.depth + CLEARANCE);
        if (wall.side === "straight") motion.feed(wall.length! + over, feed);
        else {
          const radius = (wall.side === "inside" ? wall.finish! - d : wall.finish! + d) / 2;
          motion.arc(radius, wall.length! / (Math.PI * wall.finish!), feed);
          motion.arc(radius / 2, 0.5, feed);
        }
        motion.rapid(wall.depth + CLEARANCE);
        motion.rapid((wall.length ?? 0) + over);
      }
    });
  });
  STEPS: work.step(
    "timeEach",
    "time of one feature",
    motion.total(),
    "every pass and level, arcs in and out, rapids; each move from rest to rest",
    "DERIVED",
    { unit: "s" },
  );
  return { time: motion.time, cutting: { seconds: motion.time.cutting, surfaceSpeed } };
}
