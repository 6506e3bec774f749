/** Changes of one cell that are worth trying, with how much of a change each is. No verdicts here: only what to try. */

import { OPERATIONS } from "../operations/index.ts";
import { COMMON_LEVERS, type Lever } from "../operations/operation.ts";
import { USUAL_THREAD_FEED } from "../operations/shared/choices.ts";
import { holeRange, shareOf } from "../operations/shared/hole-tool.ts";
import { speedRange as listedRange, feedOf as listFeedOf, ownSpeedOf } from "../operations/shared/speed.ts";
import type { Plan } from "../operations/shared/types.ts";
import { goesIn, slotWidth } from "../operations/shared/wall/slot-width.ts";
import type { Material, Tool } from "../table/lists.ts";
import type { List, Lists } from "../table/read.ts";
import { ROW, type Row } from "../table/rows.ts";

/** A cell that advice changes: what is to be made is said in another cell at most, see along(). */
export type Changed = Lever | "depth" | "totalWidth";

/** One cell of the row: canonical units; undefined is blank before, null blank after. */
export interface Change<K extends Changed = Changed> {
  readonly key: K;
  readonly heading: string;
  readonly from: number | string | undefined;
  readonly to: number | string | null;
  /** What the plan takes where a cell is cleared. */
  readonly takes?: number | string;
}

export interface Candidate {
  readonly change: Change<Lever>;
  /** A cell that has to go with it, so that the row still makes the same part. */
  readonly along?: Change;
  /** Natural logarithm of the ratio for numbers; a cell that is cleared or a tool that is changed count as less than that. */
  readonly size: number;
}

/** What is known of a row while changes are sought. */
export interface Situation {
  readonly row: Row;
  readonly base: Plan;
  readonly lists: Lists;
  readonly material: Material | undefined;
  /** The tool that the plan uses. */
  readonly tool: Tool | undefined;
}

/** The entry of a list that a cell names; none for a blank. */
const named = <T>(list: List<T>, name: string | null | undefined): T | undefined =>
  name ? list.find(name) : undefined;

export function situationOf(row: Row, base: Plan, lists: Lists): Situation {
  const material = named(lists.materials, row.material);
  return { row, base, lists, material, tool: named(lists.tools, base.results.tool) };
}

/** Clearing a typed cell, or taking what the row itself proposes, is the least that can be asked. */
const SMALL = 0.05;
const CLEARED = 0.2;
/** The first other tools are tried early: a person would look into the crib before lowering everything. */
const OTHER_TOOL = 0.45;
const OTHER_MACHINE = 0.9;
/** So many of each kind are tried. */
const TOOLS_TRIED = 8;
const MACHINES_TRIED = 4;
/** Holes deeper than so many diameters are deep: no higher speed is advised there (common practice). */
const DEEP = 3;

type Try = readonly [to: number | string | null, size: number];
const ratio = (to: number, from: number) => Math.abs(Math.log(to / from));

/**
 * Whether the row itself may be run faster than it is: not unasked in S and H materials, nor in deep holes, nor where machine, tool or
 * row hold the spindle back.
 */
export function mayGoFaster({ row, base, material, tool }: Situation): boolean {
  if (material?.group === "s" || material?.group === "h") return false;
  if (base.findings.some((f) => f.code === "speed-capped")) return false;
  const diameter = tool?.diameter ?? row.finishDiameter ?? Number.POSITIVE_INFINITY;
  return row.operation !== "drill" || (row.depth ?? 0) <= DEEP * diameter;
}

/** Surface speed range of the row's material for its tool [m/min]. */
export function speedRange({ row, material, tool }: Situation): readonly [number, number] | undefined {
  const share = shareOf(row, tool);
  if (share !== undefined) return holeRange(material, tool?.substrate !== "carbide", share).range;
  return listedRange(material, tool?.substrate === "hss", ownSpeedOf(tool?.kind));
}

/** The row's own feed per tooth, else the list's [mm]; of hole tools the one that was planned. */
export function feedOf({ row, material, base, tool }: Situation): number | undefined {
  if (row.feedPerTooth !== undefined) return row.feedPerTooth;
  if (shareOf(row, tool) !== undefined) return base.results.feedPerTooth ?? undefined;
  if (!material || tool?.diameter === undefined) return undefined;
  if (row.operation === "thread mill") return ((material.threadFeed ?? USUAL_THREAD_FEED) / 100) * tool.diameter;
  return listFeedOf(material, tool.kind, tool.diameter);
}

/** How far a tool needs to reach in a row [mm]; 0 where nothing tells it. */
const reachOf = (tool: Tool): number => Math.max(tool.neckLength ?? 0, tool.cuttingLength ?? 0);

/** A stick-out shorter than it is that still reaches, without a holder on neck or flutes [mm]. */
export function shorter({ row, tool }: Situation): number | undefined {
  if (!tool) return undefined;
  const least = Math.max(reachOf(tool), row.depth ?? 0);
  return least > 0 && least < (row.stickOut ?? tool.stickOut ?? 0) ? least : undefined;
}

/** How stiff a tool is that is held as the list says, as a cylinder; 0 for one of which the list does not say. */
const stiffness = (t: Tool) =>
  (t.neckDiameter ?? t.diameter!) ** 4 / (t.neckLength ?? t.stickOut ?? Number.POSITIVE_INFINITY) ** 3;

/** Tools of the same use that are not the row's own, stiffest first. */
export function otherTools({ row, lists, tool }: Situation): Tool[] {
  const { tools } = OPERATIONS[row.operation!];
  const kinds: readonly (string | undefined)[] = row.operation === "thread mill" ? tools : tools.slice(0, 1);
  const own = tool ?? named(lists.tools, row.tool);
  const reach = row.operation === "face" ? 0 : (row.depth ?? 0);
  return lists.tools.items
    .filter((t) => t !== own && kinds.includes(t.kind) && t.diameter !== undefined && reachOf(t) >= reach)
    .filter((t) => row.operation !== "slot" || slotTakes(row, own, t))
    .sort((a, b) => stiffness(b) - stiffness(a));
}

/** Without a width the cutter makes the slot: another size would make another one. */
const slotTakes = (row: Row, tool: Tool | undefined, other: Tool): boolean => {
  const width = slotWidth(row);
  return width === undefined ? other.diameter === tool?.diameter : goesIn(other.diameter!, width);
};

const steps = (from: number, factors: readonly number[]): Try[] => factors.map((f) => [from * f, ratio(f, 1)]);

/** What to try in each cell. */
const TRIES: Readonly<Record<Lever, (s: Situation) => readonly Try[]>> = {
  passes: ({ base: { results } }) => {
    const { passes, springPasses: springs } = results;
    if (!passes) return [];
    const all = (n: number) => n + (springs ?? 0);
    return [1, 2, 3, 4, 5, 6, 8].filter((n) => n !== passes).map((n): Try => [n, ratio(all(n), all(passes))]);
  },
  springPasses: ({ base: { results } }) => {
    const { passes, springPasses } = results;
    if (!passes) return [];
    const springs = springPasses ?? 0;
    return [0, 1, 2, 3, 4].filter((n) => n !== springs).map((n): Try => [n, ratio(passes + n, passes + springs)]);
  },
  feedPerTooth: (s) => {
    const feed = feedOf(s);
    return feed === undefined ? [] : steps(feed, [0.85, 0.7, 0.55, 0.4, 0.3, 0.2, 1.25, 1.6, 2, 3]);
  },
  surfaceSpeed: (s) => {
    const range = speedRange(s);
    const speed = s.base.results.surfaceSpeed;
    if (!range || !speed) return [];
    const most = mayGoFaster(s) ? Number.POSITIVE_INFINITY : speed;
    const speeds = [0, 0.25, 0.5, 0.75, 1].map((p) => range[0] + p * (range[1] - range[0]));
    // A range may be a single speed.
    return [...new Set(speeds)].filter((v) => ratio(v, speed) > 0.02 && v < most).map((v): Try => [v, ratio(v, speed)]);
  },
  maxRpm: ({ base: { results } }) => (results.spindleSpeed ? steps(results.spindleSpeed, [0.85, 0.7, 0.55, 0.4]) : []),
  stickOut: (s) => {
    const least = shorter(s);
    if (least === undefined) return [];
    const now = (s.row.stickOut ?? s.tool?.stickOut)!;
    return [0.25, 0.5, 0.75, 1].map((share): Try => {
      const to = now - share * (now - least);
      return [to, ratio(to, now)];
    });
  },
  // Of a wall whole levels: more of them, each as deep as the next.
  axialDepth: ({ row, base: { path } }) => {
    if (path?.kind !== "wall") return [];
    const { rise, depth, levels } = path.wall;
    if (rise > 0) return steps(row.axialDepth ?? rise, [0.7, 0.5, 0.35]);
    return [1, 2, 3, 5].map((more): Try => [depth / (levels + more), ratio(levels + more, levels)]);
  },
  radialDepth: ({ row, base }) => {
    const from = row.radialDepth ?? base.results.radialDepth;
    if (!from) return [];
    // Each pass of a side wall is as thick as the cell says: whole shares of it, with as many passes.
    return steps(from, row.operation === "side" ? [1 / 2, 1 / 3, 1 / 4] : [0.75, 0.5, 0.35, 0.25]);
  },
  wearValue: ({ base: { results } }) => (results.startWearValue ? [[results.startWearValue, SMALL]] : []),
  // A typed one is cleared like any other cell, see candidatesFor(): the plan's own is the one that fits.
  startDiameter: () => [],
  holeDepth: ({ base }) =>
    base.findings.flatMap((f): Try[] => (f.code === "hole-too-shallow" ? [[f.facts.limit, CLEARED]] : [])),
  machine: ({ row, lists: { machines } }) => {
    const own = named(machines, row.machine);
    const others = machines.items.filter((m) => m !== own).slice(0, MACHINES_TRIED);
    return others.map((m, i): Try => [m.machine, OTHER_MACHINE + i / 100]);
  },
  tool: (s) =>
    otherTools(s)
      .slice(0, TOOLS_TRIED)
      .map((t, i): Try => [t.tool, OTHER_TOOL + i / 20]),
};

/** What the plan chose for a cell that is blank. */
export function planned(s: Situation, key: Changed): number | string | undefined {
  if (key === "feedPerTooth") return feedOf(s);
  if (key === "stickOut") return s.tool?.stickOut;
  const { results } = s.base;
  return { ...results, maxRpm: results.spindleSpeed }[key as "passes"] ?? undefined;
}

export function changeOf<K extends Changed>(s: Situation, key: K, to: number | string | null): Change<K> {
  return { key, heading: ROW[key].heading, from: s.row[key] ?? planned(s, key), to };
}

/** A cutter that gives a slot its width is no choice of the plan's. */
const makesSize = ({ row }: Situation, key: Lever) =>
  key === "tool" && row.operation === "slot" && slotWidth(row) === undefined;

/**
 * What has to change as well, or another part would be made: a side wall's thinner pass wants as many more of them, and a face whose
 * only depth or width is that of a pass wants it said for the whole.
 */
function along(s: Situation, key: Lever, to: number | string | null): Change | undefined {
  const { operation, radialDepth, totalWidth, axialDepth, depth, passes = 1 } = s.row;
  if (radialDepth !== undefined && key === "radialDepth") {
    if (operation === "face" && totalWidth === undefined) return changeOf(s, "totalWidth", radialDepth);
    if (operation === "side" && to !== null) return changeOf(s, "passes", Math.round((passes * radialDepth) / +to));
  }
  return operation === "face" && key === "axialDepth" && depth === undefined
    ? changeOf(s, "depth", axialDepth!)
    : undefined;
}

/** Every change of one cell worth trying among the levers that the operation has, the smallest first. */
export function candidatesFor(s: Situation, levers: ReadonlySet<Changed>): Candidate[] {
  const { levers: own, needs } = OPERATIONS[s.row.operation!];
  const needed = needs(s.row);
  return [...own, ...COMMON_LEVERS]
    .filter((key) => levers.has(key))
    .flatMap((key) => {
      // A cell that the person filled in may be what is wrong: the plan's own choice is tried first.
      const typed = s.row[key] !== undefined && !needed.includes(key) && key !== "machine" && !makesSize(s, key);
      const tries: readonly Try[] = [...(typed ? [[null, CLEARED] as const] : []), ...TRIES[key](s)];
      return tries.map(([to, size]) => ({ change: changeOf(s, key, to), size, along: along(s, key, to) }));
    })
    .sort((a, b) => a.size - b.size);
}

/** The row with changes in it. */
export const withChanges = (row: Row, changes: readonly Change[]): Row => ({
  ...row,
  ...Object.fromEntries(changes.map(({ key, to }) => [key, to ?? undefined])),
});
