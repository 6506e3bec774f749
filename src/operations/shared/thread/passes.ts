/** How many passes a thread takes: each count tried with its feed, its forces and what bending leaves. */
import { arcDepth } from "../../../mill/arc.ts";
import { leastLayer } from "../../../mill/edge.ts";
import { type BendingThread, threadWalls, type WallBand } from "../../../mill/threadbias.ts";
import { engagedChip } from "../../../mill/threadfeed.ts";
import { threadEngagement, threadLoads } from "../../../mill/threadforce.ts";
import { startWear } from "../../../mill/wear.ts";
import type { Material } from "../../../table/lists.ts";
import type { Row } from "../../../table/rows.ts";
import { passDepths } from "../../../thread/passes.ts";
import type { ToolBeam } from "../beam.ts";
import { BAD_END, bendingShare, GOOD_END, STRESS_SAFETY, scatterShare, WEAR_REACH } from "../choices.ts";
import { edgeOfTool, type Force, forceOf } from "../force.ts";
import type { Job } from "../job.ts";
import { badStress, stressOf } from "../limits.ts";
import { once, onlyCells, rememberedFor, WAYS } from "../remembered.ts";
import { over } from "../slack.ts";
import { type CutterFeed, freeFeed, strongFeed } from "./feed.ts";
import { type Geometry, turnsOf } from "./geometry.ts";

/** Most passes and spring passes that a row chooses by itself. */
const MOST_PASSES = 5;
const MOST_SPRINGS = 3;
/** A way that costs more time has to bring the row this much nearer to its limits. */
const WORTH = 0.9;

/** A pass more that leaves stress and size above this share of what they were is of no use. */
const IDLE = 0.95;

/** One way of taking the thread out: so many passes and spring passes, with what follows from it. */
export interface Attempt extends CutterFeed {
  readonly depths: readonly number[];
  readonly passes: number;
  readonly springs: number;
  readonly radialDepth: number;
  readonly flankChip: number;
  readonly peak: number;
  readonly tangential: number;
  readonly torque: number;
  /** Where the wall ends up after each pass [mm]; none without a force or a beam. */
  readonly walls: () => WallBand | undefined;
  /** Wear value that brings the deepest wall to full depth; null when that is out of reach. */
  readonly start: () => number | null;
  /** Share of the allowed stress at its bad end. */
  readonly stress: number;
  /** Size error at its bad end over what it aims at. */
  readonly size: () => number;
  /** What the bad end of size error and scatter are of what a row may have. */
  readonly hold: () => number;
  /** Turns over feed: as the time goes. */
  readonly cost: number;
}

export interface ThreadTask {
  readonly job: Job;
  readonly g: Geometry;
  /** Largest chip that the milling list allows [mm]. */
  readonly listed: number;
  readonly teeth: number;
  readonly beam: ToolBeam | undefined;
  readonly loadFromTip: number;
  /** Whether a way to take the thread out is not likely to chatter. */
  readonly quiet: (attempt: Attempt) => boolean;
}

/** Cells of a row that its ways of taking the thread out hang on. */
const CELLS = ["way", "passes", "springPasses", "feedPerTooth", "wearFactor", "wearValue"] as const;

/** All that the ways of taking a thread out hang on: not how deep the hole is, nor what the machine can drive. */
interface CutTask extends Omit<ThreadTask, "job" | "quiet"> {
  readonly row: Pick<Row, (typeof CELLS)[number]>;
  readonly material: Material | undefined;
  /** Profiles that cut at the same time. */
  readonly profiles: number;
  /** Share of the tolerance that bending may use, and of the bending that changes from part to part. */
  readonly aim: number;
  readonly scatter: number;
}

const waysOf = rememberedFor<readonly Attempt[]>("thread ways", WAYS);

/**
 * The quickest way that keeps stress and size within what they aim at, or the one that comes closest at its price. Where that is
 * likely to chatter, more passes cut less at a time: as many as make it quiet, as long as tool and size hold as well as before.
 */
export function choosePasses(task: ThreadTask): Attempt {
  const quickest = quickestPasses(task);
  if (task.job.row.passes !== undefined || task.quiet(quickest)) return quickest;
  // The size as near as before, else one that holds as well as before.
  for (const how of ["size", "hold"] as const)
    for (let passes = quickest.passes + 1; passes <= MOST_PASSES; passes++) {
      const able = tryPasses(task, passes).filter(
        (a) => a.stress <= Math.max(1, quickest.stress) && a[how]() <= Math.max(1, quickest[how]()),
      );
      const first = able.reduce<Attempt | undefined>((near, a) => (near && near.cost <= a.cost ? near : a), undefined);
      if (first && task.quiet(first)) return first;
    }
  return quickest;
}

function quickestPasses(task: ThreadTask): Attempt {
  const { row } = task.job;
  const counts = row.passes === undefined ? Array.from({ length: MOST_PASSES }, (_, i) => i + 1) : [row.passes];
  const seen: Attempt[] = [];
  let best: Attempt | undefined;
  for (const passes of counts) {
    const tried = tryPasses(task, passes);
    const last = seen.at(-1);
    seen.push(...tried);
    // The size is worked out last: a dearer way need not be looked at.
    for (const a of tried) if ((!best || a.cost < best.cost) && a.stress <= 1 && a.size() <= 1) best = a;
    // More passes at the same feed only take longer.
    if (best && (passes + 1) / seen[0]!.centreFeed >= best.cost) break;
    // Where one pass more at the same feed brought next to nothing, the ones after it bring less.
    const now = seen.at(-1)!;
    const faster = last && over(now.centreFeed, last.centreFeed);
    if (last && !faster && now.stress > IDLE * last.stress && now.size() > IDLE * last.size()) break;
  }
  if (best) return best;
  seen.sort((a, b) => a.cost - b.cost);
  return seen.reduce((near, a) => (better(a, near) ? a : near));
}

/** A tool that holds comes first, then a size within reach; each further step must be worth its time. */
function better(a: Attempt, near: Attempt): boolean {
  if (a.stress > 1 || near.stress > 1) return Math.max(1, a.stress) < WORTH * near.stress;
  if (a.hold() > 1 && near.hold() > 1) return a.hold() < WORTH * near.hold();
  return a.hold() <= 1 && (near.hold() > 1 || a.size() < WORTH * near.size());
}

/** The ways with so many passes, with the spring passes that each may have. */
function tryPasses({ job, g, listed, teeth, beam, loadFromTip }: ThreadTask, passes: number): readonly Attempt[] {
  const { material } = job;
  const row = onlyCells(job.row, CELLS);
  const { profiles } = turnsOf(g.tool, g.sizes.pitch, job.row.depth ?? g.sizes.pitch);
  const names = [g.sizes.thread.designation, g.tool.tool, material?.material];
  const [aim, scatter] = [bendingShare(job.machine), scatterShare(job.machine)];
  const numbers = [g.start, g.tip, g.fullDepth, listed, loadFromTip, profiles, passes, aim, scatter];
  const held = [beam?.stickOut, beam?.options.holderStiffness];
  const key = JSON.stringify([names, numbers, held, CELLS.map((cell) => row[cell])]);
  return waysOf(job.lists).get(key, () =>
    ways({ g, listed, teeth, beam, loadFromTip, row, material, profiles, aim, scatter }, passes),
  );
}

function ways(task: CutTask, passes: number): readonly Attempt[] {
  const { row, material, g, listed, teeth, beam, loadFromTip, aim, scatter } = task;
  const { sizes, diameter, side, start, fullDepth, flat, tool } = g;
  const angle = sizes.thread.profileAngle;
  const sine = Math.sin((angle * Math.PI) / 360);
  const cutting = passDepths(fullDepth, flat, angle, passes);
  const sign = side === "inside" ? 1 : -1;
  let radialDepth = 0;
  let engagement = 0;
  cutting.forEach((to, i) => {
    const from = i === 0 ? 0 : cutting[i - 1]!;
    const pass = { holeDiameter: start, cutterDiameter: diameter, startDepth: from, endDepth: to };
    engagement = Math.max(engagement, threadEngagement({ ...pass, internal: sizes.internal }));
    radialDepth = Math.max(radialDepth, arcDepth(start + sign * 2 * from, start + sign * 2 * to, diameter, side));
  });
  const free = freeFeed(row, material, g, radialDepth, listed);
  const force = forceOf(task);
  if (!force) {
    const springs = row.springPasses ?? 0;
    const depths = passDepths(fullDepth, flat, angle, passes, springs);
    const flankChip = engagedChip(free.centreFeed, engagement) * sine;
    const none = { peak: 0, tangential: 0, torque: 0, stress: 0, size: () => 0, hold: () => 0, cost: depths.length };
    const known = { ...free, passes, radialDepth, springs, depths, flankChip };
    return [{ ...known, ...none, walls: () => undefined, start: () => null }];
  }
  const cut = cutOf(task, force);
  let peak = 0;
  let tangential = 0;
  let torque = 0;
  // Kienzle's kc already holds the size effect: the edge's ploughing counts only where it makes the wall.
  const loaded = { ...cut, feedPerTooth: free.centreFeed, edgeTangential: 0, edgeRadial: 0 };
  cutting.forEach((to, i) => {
    const f = threadLoads({ ...loaded, startDepth: i === 0 ? 0 : cutting[i - 1]!, endDepth: to });
    peak = Math.max(peak, f.peak);
    tangential = Math.max(tangential, f.peakTangential);
    torque = Math.max(torque, f.meanTorque);
  });
  const m = force.exponent;
  const allowed = (tool.ruptureStrength ?? Number.POSITIVE_INFINITY) / (tool.safetyFactor ?? STRESS_SAFETY);
  const full = beam ? stressOf(beam, tool, peak, torque, loadFromTip) / allowed : 0;
  const edge = edgeOfTool(task, force, tool.edgeRadius);
  const layerOf = (radius: number) => leastLayer(material?.leastChip ?? 0, radius, angle / 2);
  const layers = [layerOf(edge.radii[0]), layerOf(edge.radii[1])] as const;
  const feed = strongFeed(free, full * badStress(tool, free.chip, m, 0), {
    runout: tool.runout ?? 0,
    teeth,
    exponent: m,
    leastChip: layers[0],
  });
  const share = (feed.chip / free.chip) ** (1 - m);
  const stress = full * share * badStress(tool, feed.chip, m);
  const flexibility = beam?.flexibility(loadFromTip) ?? 0;
  const most = row.springPasses ?? (flexibility > 0 ? MOST_SPRINGS : 0);
  const bend = threadWalls({
    cut: { ...cut, feedPerTooth: feed.centreFeed, edgeTangential: edge.edgeTangential, edgeRadial: edge.edgeRadial },
    flexibility,
    ends: [GOOD_END, BAD_END],
    layers,
    edges: edge.ends,
  });
  const programmed = passDepths(fullDepth, flat, angle, passes, most);
  // The wear value that stands in the control moves every pass.
  const moved = (by: number, count: number) => programmed.slice(0, count).map((t) => Math.max(0, t + by));
  const by = -(row.wearValue ?? 0);
  // The bad end alone tells which way to take; the whole band is worked out for the one that is taken.
  const bad = series(bend, "bad", (count) => moved(by, count));
  const good = series(bend, "good", (count) => moved(by, count));
  const half = (sizes.pitchMax - sizes.pitchMin) / 2;
  const flankChip = engagedChip(feed.centreFeed, engagement) * sine;
  const attempts: Attempt[] = [];
  for (let springs = row.springPasses ?? 0; springs <= most; springs++) {
    const n = passes + springs;
    const error = (wall: number) => Math.abs(fullDepth + by - wall);
    const left = () => {
      if (!beam) return 0;
      const { deepest, shallowest } = bad(n);
      return 2 * Math.max(error(deepest[n - 1]!), error(shallowest[n - 1]!));
    };
    const band = () => {
      const [g, b] = [good(n), bad(n)];
      const over = (pick: (a: number, b: number) => number, key: keyof WallBand) =>
        Array.from({ length: n }, (_, i) => pick(g[key][i]!, b[key][i]!));
      return { deepest: over(Math.max, "deepest"), shallowest: over(Math.min, "shallowest") };
    };
    attempts.push({
      edgeFeed: feed.edgeFeed,
      centreFeed: feed.centreFeed,
      chip: feed.chip,
      by: feed.by,
      passes,
      radialDepth,
      flankChip,
      peak: share * peak,
      tangential: share * tangential,
      torque: share * torque,
      stress,
      springs,
      depths: programmed.slice(0, n),
      walls: () => (beam ? band() : undefined),
      start: once(() => {
        const reach = WEAR_REACH * sizes.pitch;
        if (left() / 2 > reach) return null;
        const corners = row.way === "conventional" ? "all" : "good";
        // Where no wear value stands in the control, the walls at full depth are known.
        const here = beam && by === 0 ? (corners === "all" ? band() : good(n)) : undefined;
        const wall = (depth: number) =>
          (depth === fullDepth && here ? here : bend(moved(depth - fullDepth, n), corners)).deepest[n - 1]!;
        return startWear(fullDepth, wall, reach);
      }),
      size: () => left() / (aim * half),
      hold: () => Math.max(left() / half, (scatter * left()) / (aim * half)),
      cost: n / feed.centreFeed,
    });
  }
  return attempts;
}

/** Walls at one end of what is known after at least so many passes; each pass is worked out once, when it is first asked for. */
function series(
  bend: ReturnType<typeof threadWalls>,
  end: "good" | "bad",
  programmed: (count: number) => readonly number[],
): (count: number) => WallBand {
  const deepest: number[] = [];
  const shallowest: number[] = [];
  let last: readonly number[] | undefined;
  return (count) => {
    if (deepest.length < count) {
      const more = bend(programmed(count).slice(deepest.length), end, last);
      deepest.push(...more.deepest);
      shallowest.push(...more.shallowest);
      last = more.last;
    }
    return { deepest, shallowest };
  };
}

/** The cut but for its feed, edge and depths. */
function cutOf(
  { row, g, teeth, profiles }: CutTask,
  { kc11, exponent, radialRatio }: Force,
): Omit<BendingThread["cut"], "feedPerTooth" | "edgeTangential" | "edgeRadial"> {
  const { sizes, tool } = g;
  return {
    holeDiameter: g.start,
    internal: sizes.internal,
    cutterDiameter: g.diameter,
    tipFlat: g.flat,
    profileAngle: sizes.thread.profileAngle,
    teeth,
    kc11,
    exponent,
    radialRatio,
    way: row.way ?? "climb",
    turnsInCut: profiles,
    helixAngle: tool.helix ?? 0,
    pitch: sizes.pitch,
  };
}
