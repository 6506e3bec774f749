/** How many passes a wall takes: each count tried with its forces and what bending leaves. */
import { arcFeed } from "../../../mill/arc.ts";
import { bentPasses } from "../../../mill/bending.ts";
import { largestChip, thinnedFeed } from "../../../mill/chip.ts";
import { type MillCut, meanNormalForce, millForces, wallNormalForce } from "../../../mill/force.ts";
import { MOST_PASSES as PASS_LIMIT } from "../../../table/rows.ts";
import type { ToolBeam } from "../beam.ts";
import { BAD_END, BENDING_SHARE, chooseSprings, edgeForce, THINNING_LIMIT } from "../choices.ts";
import type { Job } from "../job.ts";
import { lightest } from "../pass-search.ts";
import { axialOf, effective, FIRST_CIRCLE, positions, RADIAL_SHARE, type SizedTool, type Wall } from "./wall.ts";

const MOST_PASSES = 5;
const MOST_SPRINGS = 2;
/** One pass more must bring the load down by as much as this. */
const WORTH = 0.98;

export interface Attempt {
  readonly depths: readonly number[];
  readonly passes: number;
  readonly springs: number;
  readonly radialDepth: number;
  readonly edgeFeed: number;
  readonly centreFeed: number;
  readonly chip: number;
  readonly tangential: number;
  /** The pass that bends the tool most: its peak force, and where that acts from the tip. */
  readonly bending: { readonly force: number; readonly loadFromTip: number; readonly deflection: number };
  readonly torque: number;
  readonly errors: readonly [number, number];
  readonly load: number;
}

export function choosePasses(
  job: Job,
  wall: Wall,
  tool: SizedTool,
  listed: number,
  beam: ToolBeam | undefined,
): Attempt | undefined {
  const { row } = job;
  const share = row.radialDepth ?? RADIAL_SHARE * tool.diameter;
  let least = 1;
  if (wall.circles) {
    const first = wall.full ? Math.min(wall.stock, (FIRST_CIRCLE * tool.diameter - wall.start!) / 2) : 0;
    least = wall.full
      ? 1 + Math.ceil((wall.stock - first) / share - 1e-9)
      : Math.max(1, Math.ceil(wall.stock / share - 1e-9));
  }
  if (least > PASS_LIMIT) {
    job.work.find("too-many-passes", { value: least, limit: PASS_LIMIT });
    return undefined;
  }
  const fixed = row.passes ?? (wall.circles ? undefined : 1);
  const counts =
    fixed !== undefined ? [fixed] : Array.from({ length: Math.max(1, MOST_PASSES - least + 1) }, (_, i) => least + i);
  return lightest(counts, (passes) => tryPasses(job, wall, tool, listed, beam, passes), WORTH);
}

function tryPasses(
  job: Job,
  wall: Wall,
  tool: SizedTool,
  listed: number,
  beam: ToolBeam | undefined,
  passes: number,
): Attempt {
  const { row, material } = job;
  const { diameter, teeth } = tool;
  const angle = tool.edgeAngle ?? 90;
  const cutting = positions(wall, diameter, passes);
  let radialDepth = 0;
  cutting.forEach((d, i) => {
    radialDepth = Math.max(radialDepth, effective(wall, diameter, i === 0 ? 0 : cutting[i - 1]!, d));
  });
  const edgeFeed = Math.min(THINNING_LIMIT * listed, thinnedFeed(listed, radialDepth, diameter, angle));
  const centreFeed = wall.side === "straight" ? edgeFeed : arcFeed(edgeFeed, wall.finish!, diameter, wall.side);
  const chip = largestChip(centreFeed, radialDepth, diameter, angle);
  const base = { passes, radialDepth, edgeFeed, centreFeed, chip };
  const chosenSprings = row.springPasses ?? 0;
  const spring = (n: number) => [...cutting, ...Array.from({ length: n }, () => wall.stock)];
  if (material?.kc11 === undefined || material.exponent === undefined) {
    return {
      ...base,
      springs: chosenSprings,
      depths: spring(chosenSprings),
      tangential: 0,
      bending: { force: 0, loadFromTip: 0, deflection: 0 },
      torque: 0,
      errors: [0, 0],
      load: 0,
    };
  }
  const sin = Math.sin((angle * Math.PI) / 180);
  const kc11 = material.kc11 * (row.wearFactor ?? 1);
  // Kienzle's kc already holds the size effect: the edge's ploughing counts only where it makes the wall.
  const edge = edgeForce(kc11, tool.edgeRadius);
  const cutOf = (from: number, to: number, edgeShare = 0): MillCut => ({
    // An edge at κ cuts a chip fz·sin κ thick and ap/sin κ wide: the same sum with kc11·sin^−m κ.
    kc11: kc11 * sin ** -material.exponent!,
    exponent: material.exponent!,
    feedPerTooth: centreFeed,
    radialDepth: Math.max(1e-9 * diameter, effective(wall, diameter, from, to)),
    axialDepth: axialOf(wall, from),
    diameter,
    teeth,
    helixAngle: tool.helix ?? 0,
    radialRatio: material.radialRatio ?? 0.35,
    axialRatio: material.axialRatio ?? 0,
    edgeTangential: edgeShare * edge,
    edgeRadial: edgeShare * edge,
    way: row.way ?? "climb",
  });
  let tangential = 0;
  let torque = 0;
  let bending = { force: 0, loadFromTip: 0, deflection: 0 };
  const loadFromTip = (from: number) => Math.min(axialOf(wall, from), tool.cuttingLength ?? wall.axial) / 2;
  const flexibility = (from: number) => beam?.flexibility(loadFromTip(from)) ?? 0;
  cutting.forEach((d, i) => {
    const from = i === 0 ? 0 : cutting[i - 1]!;
    const f = millForces(cutOf(from, d));
    const deflection = flexibility(from) * f.peak;
    if (deflection >= bending.deflection) bending = { force: f.peak, loadFromTip: loadFromTip(from), deflection };
    tangential = Math.max(tangential, f.peakTangential);
    torque = Math.max(torque, f.meanTorque);
  });
  const leastChip = (material.leastChip ?? 0) * (tool.edgeRadius ?? 0);
  const judged = wall.walls > 0 && row.sizeTolerance !== undefined && beam !== undefined;
  const most = row.springPasses ?? (judged ? MOST_SPRINGS : 0);
  let errors: [number, number] = [0, 0];
  let springs = chosenSprings;
  let size = 0;
  if (wall.walls > 0 && beam) {
    const bend = (normal: (from: number, to: number) => number) =>
      bentPasses({
        depths: spring(most),
        flexibility: flexibility(wall.stock),
        // A helical entry is loaded nearer to the tip: its force counts as one that bends the tool as far from the usual place.
        normalForce: (from, to) =>
          to - from <= 1e-9 ? 0 : (normal(from, to) * flexibility(from)) / flexibility(wall.stock),
        chip: (from, to) =>
          to - from <= 1e-9 ? 0 : largestChip(centreFeed, effective(wall, diameter, from, to), diameter, angle),
        leastChip,
      });
    const walls = [
      bend((from, to) => wallNormalForce(cutOf(from, to, 1))),
      bend((from, to) => meanNormalForce(cutOf(from, to))),
    ] as const;
    const after = (n: number) => walls.map((w) => wall.walls * (wall.stock - w[n - 1]!)) as [number, number];
    const allowed = BENDING_SHARE * (row.sizeTolerance ?? Number.POSITIVE_INFINITY);
    const worst = (n: number) => Math.max(...after(passes + n).map(Math.abs)) * BAD_END;
    springs = row.springPasses ?? chooseSprings(most, allowed, worst);
    errors = after(passes + springs);
    size = worst(springs) / allowed;
  }
  const rub = chip > 0 ? leastChip / chip : 0;
  return {
    ...base,
    springs,
    depths: spring(springs),
    tangential,
    bending,
    torque,
    errors,
    load: Math.max(size, rub),
  };
}
