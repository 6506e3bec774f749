/** How many passes a wall takes: each count tried with its forces and what bending leaves. */
import { arcFeed } from "../../../mill/arc.ts";
import { type BluntTool, wallLeft } from "../../../mill/bending.ts";
import { largestChip } from "../../../mill/chip.ts";
import { leastLayer } from "../../../mill/edge.ts";
import { type MillCut, millForces } from "../../../mill/force.ts";
import { type BendingWall, CORNERS, type Corner, wallCorner } from "../../../mill/wall-bias.ts";
import { FEED_LIMITS, FINISHING_SHARE, wallFeed } from "../../../mill/wall-feed.ts";
import { wallForces } from "../../../mill/wallnormal.ts";
import { startWear } from "../../../mill/wear.ts";
import type { Material } from "../../../table/lists.ts";
import { MOST_PASSES as PASS_LIMIT, type Row } from "../../../table/rows.ts";
import type { WallFeedBy } from "../../../table/steps.ts";
import type { ToolBeam } from "../beam.ts";
import { BAD_END, bendingShare, GOOD_END } from "../choices.ts";
import { edgeOfTool, forceOf } from "../force.ts";
import type { Job } from "../job.ts";
import { leastChipOf } from "../limits.ts";
import { lightest } from "../pass-search.ts";
import { once, onlyCells, rememberedFor, WAYS } from "../remembered.ts";
import { over } from "../slack.ts";
import {
  axialOf,
  effective,
  engagedEdge,
  FIRST_CIRCLE,
  positions,
  RADIAL_SHARE,
  type SizedTool,
  type Wall,
} from "./wall.ts";

/** Largest wear value of a wall [mm]: beyond it the tool or the depth is wrong, not the path (judgement). */
const WALL_WEAR_REACH = 0.2;

const MOST_PASSES = 5;
const MOST_SPRINGS = 2;
/** One pass more must bring the load down by as much as this. */
const WORTH = 0.98;

export interface Loads {
  readonly tangential: number;
  /** Mean over a turn, of the pass that has most of it [N]. */
  readonly axial: number;
  /** The pass that bends the tool most: its peak force, and where that acts from the tip. */
  readonly bending: { readonly force: number; readonly loadFromTip: number; readonly deflection: number };
  readonly torque: number;
}

const NO_LOADS: Loads = { tangential: 0, axial: 0, torque: 0, bending: { force: 0, loadFromTip: 0, deflection: 0 } };

export interface Attempt {
  readonly depths: readonly number[];
  readonly passes: number;
  readonly springs: number;
  readonly radialDepth: number;
  /** Axial depth of the pass that takes most [mm]. */
  readonly axialDepth: number;
  /** The edge engaged: diameter [mm] and angle [deg]. */
  readonly edge: { readonly diameter: number; readonly angle: number };
  readonly edgeFeed: number;
  readonly centreFeed: number;
  readonly by: WallFeedBy;
  /** Feed at the edge whose chip is the list's, within the limits of a feed [mm]. */
  readonly would: number;
  readonly chip: number;
  /** What the passes load tool and spindle with; asked for of the way that is taken. */
  readonly loads: () => Loads;
  /** Depth of the finished wall where the tool bends least and where it bends most [mm]; none without a force, a beam, a wall. */
  readonly size?: {
    readonly ends: () => readonly [number, number];
    /** Radius wear value that brings the end that bends least to size, or null when none does [mm]. */
    readonly start: () => number | null;
  };
  readonly load: number;
}

/** Feed of the list, and the row's own at the edge when it has one [mm]. */
export interface GivenFeed {
  readonly listed: number;
  readonly typed?: number;
  /** Share of the wanted feed that the spindle has power for [-]. */
  readonly spindle?: number;
}

/** Cells of a row that its ways of milling a wall hang on, beside the wall itself; and those of a wall that is judged by its size. */
const CELLS = ["way", "springPasses", "wearFactor"] as const;
const SIZE_CELLS = [...CELLS, "sizeTolerance", "wearValue"] as const;

/** All that the ways of milling a wall hang on: not how many there are, nor what the machine can drive. */
interface WallTask {
  readonly row: Pick<Row, (typeof SIZE_CELLS)[number]>;
  readonly wall: Wall;
  readonly given: GivenFeed;
  readonly tool: SizedTool;
  readonly material: Material | undefined;
  readonly beam: ToolBeam | undefined;
  readonly handed: Job["handed"];
  /** Share of the tolerance that bending may use. */
  readonly aim: number;
}

const waysOf = rememberedFor<Attempt>("wall ways", WAYS);

export function choosePasses(
  job: Job,
  wall: Wall,
  tool: SizedTool,
  given: GivenFeed,
  beam: ToolBeam | undefined,
): Attempt | undefined {
  const { row } = job;
  const share = row.radialDepth ?? RADIAL_SHARE * tool.diameter;
  const countOf = (stock: number) => Math.ceil(stock / share - 1e-9);
  let least = 1;
  if (wall.circles) {
    // From solid a first circle takes what it can.
    const first = Math.min(wall.stock, (FIRST_CIRCLE * tool.diameter - wall.start!) / 2);
    least = wall.full ? 1 + countOf(wall.stock - first) : Math.max(1, countOf(wall.stock));
  }
  if (least > PASS_LIMIT) {
    // A size beyond all bounds (1e308 in) overflows on the way here: what is told stays a number.
    job.work.find("too-many-passes", { value: Math.min(least, Number.MAX_SAFE_INTEGER), limit: PASS_LIMIT });
    return undefined;
  }
  const fixed = row.passes ?? (wall.circles ? undefined : 1);
  const counts =
    fixed !== undefined ? [fixed] : Array.from({ length: Math.max(1, MOST_PASSES - least + 1) }, (_, i) => least + i);
  const { material } = job;
  const cells = onlyCells(row, wall.walls === 0 ? CELLS : SIZE_CELLS);
  const held = [beam?.stickOut, beam?.options.holderStiffness];
  const { handed } = job;
  const aim = bendingShare(job.machine);
  const key = JSON.stringify([tool.tool, material?.material, cells, wall, given, held, handed?.left, aim]);
  const ways = waysOf(job.lists);
  const task: WallTask = { row: cells, wall, given, tool, material, beam, handed, aim };
  return lightest(counts, (passes) => ways.get(`${passes} ${key}`, () => tryPasses(task, passes)), WORTH);
}

/** The feed of the centre by the one rule, or the row's own at the edge. */
function feedFor(
  { row, wall, tool, given: { listed, typed, spindle } }: WallTask,
  edge: Attempt["edge"],
  radialDepth: number,
): Pick<Attempt, "edgeFeed" | "centreFeed" | "by" | "would"> {
  const { side } = wall;
  const arc = side === "straight" ? undefined : { diameter: wall.finish!, cutterDiameter: tool.diameter, side };
  const finishing = wall.walls > 0 && row.sizeTolerance !== undefined && radialDepth < FINISHING_SHARE * tool.diameter;
  const rule = wallFeed(
    {
      listed,
      radialDepth: Math.min(radialDepth, edge.diameter),
      diameter: edge.diameter,
      edgeAngle: edge.angle,
      arc,
      finishing,
    },
    FEED_LIMITS,
  );
  const would = rule.edgeFeed;
  if (typed === undefined) {
    const by = spindle === undefined ? rule.heldBy : "spindle";
    return { edgeFeed: would * (spindle ?? 1), centreFeed: rule.centreFeed * (spindle ?? 1), by, would };
  }
  const centreFeed = arc ? arcFeed(typed, arc.diameter, arc.cutterDiameter, arc.side) : typed;
  return { edgeFeed: typed, centreFeed, by: "row", would };
}

/** Share of the first pass that a row before may have taken away beyond its own size: a pass always has something to cut. */
const TAKEN = 0.99;

/** Stock that stands on the wall beyond the row's own, least and most [mm]: what the row that roughs it leaves. From solid there is none. */
export function standing(
  { handed }: Pick<Job, "handed">,
  wall: Wall,
  first: number,
): readonly [least: number, most: number] {
  if (!handed || wall.full) return [0, 0];
  const [least, most] = handed.left.map((left) => Math.max(left, -TAKEN * first));
  return [least!, most!];
}

/** The tool at a corner of what is known, and the wall that it starts from [mm]. */
interface Cornered {
  readonly tool: BluntTool;
  readonly from: number;
}

function tryPasses(task: WallTask, passes: number): Attempt {
  const { row, wall, tool, material, beam } = task;
  const { diameter, teeth } = tool;
  const cutting = positions(wall, diameter, passes);
  const before = standing(task, wall, cutting[0]!);
  // Tool and chip are judged by the most that the row before may have left.
  const fromOf = (i: number) => (i === 0 ? -before[1] : cutting[i - 1]!);
  const own = (i: number) => effective(wall, diameter, fromOf(i), cutting[i]!);
  let most = 0;
  for (let i = 1; i < cutting.length; i++) if (own(i) >= own(most)) most = i;
  const radialDepth = Math.max(own(0), own(most), wall.corner ?? 0);
  const axialDepth = axialOf(wall, most === 0 ? 0 : cutting[most - 1]!);
  const edge = engagedEdge(tool, axialDepth);
  const { angle } = edge;
  const chipOf = (feed: number, ae: number) => largestChip(feed, Math.min(ae, edge.diameter), edge.diameter, angle);
  const feed = feedFor(task, edge, radialDepth);
  const { centreFeed } = feed;
  const chip = chipOf(centreFeed, radialDepth);
  const base = { passes, radialDepth, axialDepth, edge, ...feed, chip };
  const chosenSprings = row.springPasses ?? 0;
  const spring = (n: number) => [...cutting, ...Array.from({ length: n }, () => wall.stock)];
  const force = forceOf(task);
  if (!force) {
    return {
      ...base,
      springs: chosenSprings,
      depths: spring(chosenSprings),
      loads: () => NO_LOADS,
      load: 0,
    };
  }
  const sin = Math.sin((angle * Math.PI) / 180);
  const { kc11, exponent, radialRatio, axialRatio } = force;
  const cut: Omit<MillCut, "radialDepth" | "axialDepth"> = {
    // An edge at κ cuts a chip fz·sin κ thick and ap/sin κ wide: the same sum with kc11·sin^−m κ.
    kc11: kc11 * sin ** -exponent,
    exponent,
    feedPerTooth: centreFeed,
    diameter,
    teeth,
    helixAngle: tool.helix ?? 0,
    radialRatio,
    axialRatio,
    way: row.way ?? "climb",
  };
  // From solid the whole front cuts, wherever the tool is bent to.
  const radialOf = (from: number, to: number) =>
    wall.full && from === 0 && wall.circles ? diameter : Math.max(1e-9 * diameter, effective(wall, diameter, from, to));
  const loadFromTip = (from: number) => Math.min(axialOf(wall, from), tool.cuttingLength ?? wall.axial) / 2;
  const flexibility = (from: number) => beam?.flexibility(loadFromTip(from)) ?? 0;
  const loads = once((): Loads => {
    let { tangential, axial, torque, bending } = NO_LOADS;
    cutting.forEach((d, i) => {
      const from = fromOf(i);
      // Load and stress count in the tightest corner; the wall's size is that of the straight part.
      const widest = Math.max(radialOf(from, d), wall.corner ?? 0);
      const f = millForces({ ...cut, radialDepth: widest, axialDepth: axialOf(wall, from) });
      const deflection = flexibility(from) * f.peak;
      if (deflection >= bending.deflection) bending = { force: f.peak, loadFromTip: loadFromTip(from), deflection };
      tangential = Math.max(tangential, f.peakTangential);
      axial = Math.max(axial, f.meanAxial);
      torque = Math.max(torque, f.meanTorque);
    });
    return { tangential, axial, torque, bending };
  });
  const rub = leastChipOf(task, tool) / chip;
  const common = { ...base, loads };
  if (wall.walls === 0 || !beam) return { ...common, springs: chosenSprings, depths: spring(chosenSprings), load: rub };
  const give = flexibility(wall.stock);
  // Kienzle's kc already holds the size effect: the edge's ploughing counts only where it makes the wall.
  const { radii, edgeTangential, edgeRadial, ends: edges } = edgeOfTool(task, force, tool.edgeRadius);
  const leastShare = material?.leastChip ?? 0;
  const forces = wallForces({ ...cut, edgeTangential, edgeRadial });
  const bent: BendingWall = {
    // A helical entry is loaded nearer to the tip: its force counts as one that bends the tool as far from the usual place.
    wallForce: (from, to, share) =>
      (forces.wall(radialOf(from, to), axialOf(wall, from), share) * flexibility(from)) / give,
    meanForce: (from, to) => (forces.mean(radialOf(from, to), axialOf(wall, from)) * flexibility(from)) / give,
    flexibility: give,
    ends: [GOOD_END, BAD_END],
    layers: [leastLayer(leastShare, radii[0], 90), leastLayer(leastShare, radii[1], 90)],
    edges,
    deepest: wall.side === "outside" ? 0.49 * wall.start! : undefined,
  };
  // The wear value that stands in the control moves every pass; positive is away from the wall.
  const by = -(row.wearValue ?? 0);
  const moved = (depth: number, shift: number) => Math.max(0, depth + shift);
  /** Wall at a corner after all cutting passes and so many spring passes, each moved by as much. */
  const wallAt = ({ tool, from }: Cornered, shift: number, springs: number) => {
    let left = from;
    for (const depth of cutting) left = wallLeft(tool, left, moved(depth, shift));
    for (let i = 0; i < springs; i++) left = wallLeft(tool, left, moved(wall.stock, shift));
    return left;
  };
  const cornersAt = (end: Corner[0]): Cornered[] =>
    CORNERS.filter((c) => c[0] === end).map((corner) => ({
      tool: wallCorner(bent, corner),
      from: -before[end === "good" ? 0 : 1],
    }));
  const allowed = task.aim * (row.sizeTolerance ?? Number.POSITIVE_INFINITY);
  // The bad end alone tells which way to take; the whole band is worked out for the one that is taken.
  const badCorners = cornersAt("bad");
  const errorOf = (last: readonly number[]) => wall.walls * Math.max(...last.map((w) => Math.abs(wall.stock + by - w)));
  let springs = chosenSprings;
  let bad = badCorners.map((corner) => wallAt(corner, by, springs));
  // As many spring passes as bring the size within its share, each as long as it is worth its time.
  while (row.springPasses === undefined && springs < MOST_SPRINGS && over(errorOf(bad), allowed)) {
    // One pass more at full depth, from the wall that the ones before it left.
    const next = badCorners.map(({ tool }, i) => wallLeft(tool, bad[i]!, moved(wall.stock, by)));
    if (over(errorOf(next), WORTH * errorOf(bad))) break;
    springs++;
    bad = next;
  }
  const error = errorOf(bad);
  const band = once(() => {
    // Without a tolerance the bad end is all that is said.
    const corners = row.sizeTolerance === undefined ? badCorners : [...badCorners, ...cornersAt("good")];
    const last = corners.map((corner, i) => bad[i] ?? wallAt(corner, by, springs));
    return { corners, last };
  });
  return {
    ...common,
    springs,
    depths: spring(springs),
    size: {
      ends: () => {
        const { last } = band();
        return [Math.max(...last), Math.min(...last)];
      },
      start: once(() => {
        if (over(error / wall.walls, WALL_WEAR_REACH)) return null;
        // the corner that bends least, moved until it comes to size
        const { corners, last } = band();
        const most = Math.max(...last);
        const corner = corners[last.indexOf(most)]!;
        // Where no wear value stands in the control, the wall at full depth is known.
        const reached = (depth: number) =>
          depth === wall.stock && by === 0 ? most : wallAt(corner, depth - wall.stock, springs);
        return startWear(wall.stock, reached, WALL_WEAR_REACH);
      }),
    },
    load: Math.max(error / allowed, rub),
  };
}
