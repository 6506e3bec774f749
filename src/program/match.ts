/**
 * Which made thing is which row: by size and depth, then by speed and feed, then by order. A thing that differs in
 * one of them still finds its row; one that differs in nearly all is not in the plan.
 */
import type { Cornered, Cuts, Group, Made, Turned } from "./made.ts";
import type { Hole } from "./shapes.ts";
import type { ArcShape, HoleShape, LineShape, RoundShape, RowFacts, ThreadShape, ToolZero } from "./types.ts";

export interface Match<M extends Made = Made> {
  readonly row: RowFacts;
  readonly group: Group<M>;
  /** How many of the group are this row's. */
  readonly number: number;
}

export interface Groups {
  readonly turned: readonly Group<Turned>[];
  readonly holes: readonly Group<Hole>[];
  readonly cornered: readonly Group<Cornered>[];
  readonly cuts: readonly Group<Cuts>[];
}

/**
 * How far things may differ and still be the same row: a cost of 1 for each attribute that is far off, less the nearer
 * it is. Judgement; a wrong radius or pitch, or a wrong depth, speed and feed together, still find their row.
 */
const WEIGHT = { size: 2, pitch: 2, depth: 1, speed: 0.5 } as const;
const MOST_COST = { thread: 3.3, round: 2.6, hole: 2.6, corner: 2.2, cut: 2.2 } as const;
/** Difference at which half of an attribute's cost is reached: mm, or share of speed and feed. */
const HALF = { size: 0.1, pitch: 0.05, depth: 0.5, share: 0.1 } as const;

const off = (difference: number, half: number) => {
  const d = Math.abs(difference);
  return Number.isNaN(d) ? 0.5 : d / (d + half);
};
const share = (found: number, wanted = Number.NaN) => (found > 0 ? off(Math.log(found / wanted), HALF.share) : 0.5);

function speeds(row: RowFacts, rpm: number, feed: number, weight: number): number {
  const f = Math.min(share(feed, row.feed), row.edgeFeed === undefined ? 1 : share(feed, row.edgeFeed));
  return weight * (share(rpm, row.rpm) + f);
}

/** Radius of the finished contour that a path belongs to. */
export const contourOf = (radius: number, { inside, cutter }: { inside: boolean; cutter: number }) =>
  inside ? radius + cutter / 2 : radius - cutter / 2;

export const finalRadius = (shape: { readonly radii: readonly number[] }) => shape.radii[shape.radii.length - 1]!;

const sizeOff = (shape: ThreadShape | RoundShape | ArcShape, radius: number) => {
  const wanted = finalRadius(shape);
  return Math.min(off(radius - wanted, HALF.size), off(radius - contourOf(wanted, shape), HALF.size));
};

function costOf(row: RowFacts, made: Made, toolZero: ToolZero): number {
  const { shape } = row;
  if (shape === undefined) return Number.POSITIVE_INFINITY;
  if (shape.kind === "thread") return made.kind === "turned" ? threadCost(row, shape, made, toolZero) : NEVER;
  if (shape.kind === "round") return made.kind === "turned" ? roundCost(row, shape, made) : NEVER;
  if (shape.kind === "arc") return made.kind === "cornered" ? cornerCost(row, shape, made) : NEVER;
  if (shape.kind === "line") return made.kind === "cuts" ? cutCost(row, shape, made) : NEVER;
  return made.kind === "hole" ? holeCost(row, shape, made) : NEVER;
}
const NEVER = Number.POSITIVE_INFINITY;

function threadCost(row: RowFacts, shape: ThreadShape, made: Turned, toolZero: ToolZero): number {
  if (made.rise === 0) return NEVER;
  const bottom = Math.min(shape.startZ, shape.endZ) - (toolZero === "tip" ? shape.tipToProfile : 0);
  const { rpm, feed } = made.runs[0]!;
  const cost =
    WEIGHT.size * sizeOff(shape, shape.inside ? made.most : made.least) +
    WEIGHT.pitch * off(Math.abs(made.rise) - shape.pitch, HALF.pitch) +
    WEIGHT.depth * off(made.bottom - bottom, HALF.depth) +
    speeds(row, rpm, feed, WEIGHT.speed);
  return cost <= MOST_COST.thread ? cost : NEVER;
}

function roundCost(row: RowFacts, shape: RoundShape, made: Turned): number {
  const { rpm, feed } = made.runs[0]!;
  const cost =
    WEIGHT.size * sizeOff(shape, shape.inside ? made.most : made.least) +
    WEIGHT.depth * off(made.bottom + shape.depth, HALF.depth) +
    speeds(row, rpm, feed, WEIGHT.speed) +
    // turns that rise are a thread's
    (made.rise !== 0 && made.runs.every((run) => run.z1 > run.z0) ? 2 : 0);
  return cost <= MOST_COST.round ? cost : NEVER;
}

function cornerCost(row: RowFacts, shape: ArcShape, made: Cornered): number {
  const { rpm, feed } = made.runs[0]!;
  const cost =
    WEIGHT.size * sizeOff(shape, made.radius) +
    WEIGHT.depth * off(made.bottom + shape.depth, HALF.depth) +
    speeds(row, rpm, feed, WEIGHT.speed) +
    // leads turn as well, but other angles
    0.2 * off((made.runs[0]!.degrees - shape.sweep) / 90, 1);
  return cost <= MOST_COST.corner ? cost : NEVER;
}

function cutCost(row: RowFacts, shape: LineShape, made: Cuts): number {
  const { length, over, cutter } = shape;
  if (made.length < length - cutter - 0.5 || made.length > length + over + 2 * cutter + 10) return NEVER;
  const { rpm, feed } = made.runs[0]!;
  const cost =
    off((made.length - length - over) / cutter, 1) +
    WEIGHT.depth * off(made.bottom + shape.depth, HALF.depth) +
    speeds(row, rpm, feed, 2 * WEIGHT.speed);
  return cost <= MOST_COST.cut ? cost : NEVER;
}

/** Cycles that make such a hole; 0 is a hole written out in moves. */
const CYCLES: Record<HoleShape["what"], readonly number[]> = {
  drill: [0, 73, 81, 82, 83],
  tap: [0, 74, 84],
  ream: [0, 81, 82, 85, 86, 88, 89, 76, 87],
  countersink: [0, 81, 82],
};
const TAPPING = new Set([74, 84]);

function holeCost(row: RowFacts, shape: HoleShape, made: Hole): number {
  const tapped = TAPPING.has(made.cycle) || made.reversed;
  const cost =
    2 * off(made.bottom - shape.bottoms[shape.bottoms.length - 1]!, HALF.depth) +
    speeds(row, made.rpm, made.feed, 1) +
    (tapped !== (shape.what === "tap") ? 1.5 : CYCLES[shape.what].includes(made.cycle) ? 0 : 0.5);
  return cost <= MOST_COST.hole ? cost : NEVER;
}

/** Costs this close are a draw. */
const AS_NEAR = 0.05;

/** Gives every row what comes nearest to it, as many as it wants; what is left stays in the groups. */
export function matchGroups(rows: readonly RowFacts[], groups: Groups, toolZero: ToolZero): Match[] {
  const all: Group[] = [...groups.turned, ...groups.holes, ...groups.cornered, ...groups.cuts];
  const pairs: { cost: number; row: number; group: number }[] = [];
  rows.forEach((row, r) => {
    all.forEach((group, g) => {
      const cost = costOf(row, group.made[0]!, toolZero);
      if (cost < NEVER) pairs.push({ cost, row: r, group: g });
    });
  });
  // of equal ones the first row and its first group stay first
  pairs.sort((a, b) => a.cost - b.cost);
  const need = rows.map(({ shape, quantity }) => (shape?.kind === "arc" || shape?.kind === "line" ? 1 : quantity));
  const matches: Match[] = [];
  const give = ({ row, group }: { row: number; group: number }) => {
    const g = all[group]!;
    const number = Math.min(need[row]!, g.left);
    if (number === 0) return;
    need[row]! -= number;
    g.left -= number;
    matches.push({ row: rows[row]!, group: g, number });
  };
  // first each row one group that no other row is nearer to, so that rows which are alike share; then the rest
  const nearest = new Map<number, number>();
  for (const { cost, group } of pairs) if (!nearest.has(group)) nearest.set(group, cost);
  const served = new Set<number>();
  for (const pair of pairs) {
    if (served.has(pair.row) || pair.cost > nearest.get(pair.group)! + AS_NEAR || all[pair.group]!.left === 0) continue;
    served.add(pair.row);
    give(pair);
  }
  for (const pair of pairs) give(pair);
  return matches;
}
