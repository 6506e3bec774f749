/** How many passes a thread takes: each count tried with its forces and what bending leaves. */
import { arcDepth, arcFeed } from "../../../mill/arc.ts";
import { bentPasses } from "../../../mill/bending.ts";
import { largestChip, thinnedFeed } from "../../../mill/chip.ts";
import { type ThreadCut, threadMillForces, threadWallForce } from "../../../mill/threadforce.ts";
import type { Tool } from "../../../table/lists.ts";
import { passDepths } from "../../../thread/passes.ts";
import type { ToolBeam } from "../beam.ts";
import {
  BAD_END,
  BENDING_SHARE,
  chooseSprings,
  edgeForce,
  runoutFactor,
  STRESS_SAFETY,
  THINNING_LIMIT,
  UNCERTAINTY,
} from "../choices.ts";
import type { Job } from "../job.ts";
import { lightest } from "../pass-search.ts";
import { type Geometry, turnsOf } from "./geometry.ts";

/** Most passes and spring passes that a row chooses by itself. */
const MOST_PASSES = 5;
const MOST_SPRINGS = 3;

/** One way of taking the thread out: so many passes and spring passes, with what follows from it. */
export interface Attempt {
  readonly depths: readonly number[];
  readonly passes: number;
  readonly springs: number;
  readonly radialDepth: number;
  readonly edgeFeed: number;
  readonly centreFeed: number;
  readonly chip: number;
  readonly flankChip: number;
  readonly peak: number;
  readonly tangential: number;
  readonly torque: number;
  /** Change of the pitch diameter by bending [mm], at the two force models; walls after each pass at the worse one. */
  readonly errors: readonly [number, number];
  readonly left: readonly number[];
  readonly load: number;
}

/** The fewest passes and spring passes that keep every limit, or those that come closest. */
export function choosePasses(
  job: Job,
  g: Geometry,
  listed: number,
  teeth: number,
  beam: ToolBeam | undefined,
  loadFromTip: number,
): Attempt | undefined {
  const { row } = job;
  const counts = row.passes === undefined ? Array.from({ length: MOST_PASSES }, (_, i) => i + 1) : [row.passes];
  return lightest(counts, (passes) => tryPasses(job, g, listed, teeth, beam, loadFromTip, passes));
}

function tryPasses(
  job: Job,
  g: Geometry,
  listed: number,
  teeth: number,
  beam: ToolBeam | undefined,
  loadFromTip: number,
  passes: number,
): Attempt {
  const { row, material } = job;
  const { sizes, diameter, side, start, fullDepth, flat, tool, tip } = g;
  const angle = sizes.thread.profileAngle;
  const cutting = passDepths(fullDepth, flat, angle, passes);
  const sign = side === "inside" ? 1 : -1;
  const wall = (depth: number) => start + sign * 2 * depth;
  let radialDepth = 0;
  cutting.forEach((t, i) => {
    radialDepth = Math.max(radialDepth, arcDepth(wall(i === 0 ? 0 : cutting[i - 1]!), wall(t), diameter, side));
  });
  const ae = Math.min(radialDepth, diameter);
  const edgeFeed = Math.min(THINNING_LIMIT * listed, thinnedFeed(listed, ae, diameter, 90));
  const centreFeed = arcFeed(edgeFeed, tip, diameter, side);
  const chip = largestChip(centreFeed, ae, diameter, 90);
  const flankChip = chip * Math.sin((angle * Math.PI) / 360);
  const edge = tool.edgeRadius ?? 0;
  const leastChip = (material?.leastChip ?? 0) * edge;
  const base = { passes, radialDepth, edgeFeed, centreFeed, chip, flankChip };
  if (material?.kc11 === undefined || material.exponent === undefined) {
    const springs = row.springPasses ?? 0;
    return {
      ...base,
      springs,
      depths: passDepths(fullDepth, flat, angle, passes, springs),
      peak: 0,
      tangential: 0,
      torque: 0,
      errors: [0, 0],
      left: [],
      load: 0,
    };
  }
  const kc11 = material.kc11 * (row.wearFactor ?? 1);
  const { profiles } = turnsOf(tool, sizes.pitch, row.depth ?? sizes.pitch);
  // Kienzle's kc already holds the size effect: the edge's ploughing counts only where it makes the wall.
  const ploughing = edgeForce(kc11, edge);
  const cutOf = (from: number, to: number, edgeShare = 0): ThreadCut => ({
    holeDiameter: start,
    internal: sizes.internal,
    cutterDiameter: diameter,
    tipFlat: flat,
    profileAngle: angle,
    feedPerTooth: centreFeed,
    teeth,
    kc11,
    exponent: material.exponent!,
    startDepth: from,
    endDepth: Math.max(to, from * (1 + 1e-9) + 1e-9),
    radialRatio: material.radialRatio ?? 0.35,
    edgeTangential: edgeShare * ploughing,
    edgeRadial: edgeShare * ploughing,
    way: row.way ?? "climb",
    turnsInCut: profiles,
  });
  let peak = 0;
  let tangential = 0;
  let torque = 0;
  cutting.forEach((t, i) => {
    const f = threadMillForces(cutOf(i === 0 ? 0 : cutting[i - 1]!, t));
    peak = Math.max(peak, f.peak);
    tangential = Math.max(tangential, f.peakTangential);
    torque = Math.max(torque, f.meanTorque);
  });
  const c = beam?.flexibility(loadFromTip) ?? 0;
  const halfTolerance = (sizes.pitchMax - sizes.pitchMin) / 2;
  const bend = (depths: readonly number[], normalForce: (from: number, to: number) => number) =>
    bentPasses({
      depths,
      flexibility: c,
      normalForce,
      chip: (from, to) => flankChipOf(g, centreFeed, wall(from), wall(to)),
      leastChip,
    });
  const most = row.springPasses ?? (c > 0 ? MOST_SPRINGS : 0);
  const all = passDepths(fullDepth, flat, angle, passes, most);
  const walls = [
    bend(all, (from, to) => threadWallForce(cutOf(from, to, 1))),
    bend(all, (from, to) => threadMillForces(cutOf(from, to)).meanNormal),
  ] as const;
  const errorAfter = (n: number) => walls.map((w) => 2 * (fullDepth - w[n - 1]!)) as [number, number];
  const worst = (springs: number) => Math.max(...errorAfter(passes + springs).map(Math.abs)) * BAD_END;
  const allowed = BENDING_SHARE * halfTolerance;
  const springs = row.springPasses ?? chooseSprings(most, allowed, worst);
  const n = passes + springs;
  const errors = errorAfter(n);
  const size = worst(springs) / allowed;
  const stress =
    beam && tool.ruptureStrength !== undefined
      ? roughStress(beam, tool, peak * (1 + UNCERTAINTY.force) * runoutFactor(chip, tool.runout, material.exponent)) /
        (tool.ruptureStrength / STRESS_SAFETY)
      : 0;
  const rub = flankChip > 0 ? leastChip / flankChip : 0;
  return {
    ...base,
    depths: all.slice(0, n),
    springs,
    peak,
    tangential,
    torque,
    errors,
    left: all.slice(0, n).map((_, i) => fullDepth - (walls[0][i]! + walls[1][i]!) / 2),
    load: Math.max(size, stress, rub),
  };
}

/** Chip on the flank of a pass from one wall to the next [mm]. */
function flankChipOf(g: Geometry, centreFeed: number, from: number, to: number): number {
  const ae = Math.min(arcDepth(from, to, g.diameter, g.side), g.diameter);
  return ae <= 0
    ? 0
    : largestChip(centreFeed, ae, g.diameter, 90) * Math.sin((g.sizes.thread.profileAngle * Math.PI) / 360);
}

/** Bending stress at the thinnest end of the neck [MPa], enough to choose between numbers of passes. */
function roughStress(beam: ToolBeam, tool: Tool, force: number): number {
  let x = 0;
  let worst = 0;
  for (const part of beam.parts) {
    x += part.length;
    worst = Math.max(worst, (32 * force * x * (tool.notchFactor ?? 1)) / (Math.PI * part.holderDiameter ** 3));
  }
  return worst;
}
