/** Changes of one cell that are worth trying, with how much of a change each is. No verdicts here: only what to try. */

import { OPERATIONS } from "../operations/index.ts";
import { COMMON_LEVERS, type Lever } from "../operations/operation.ts";
import { USUAL_THREAD_FEED } from "../operations/shared/choices.ts";
import { holeRange, shareOf } from "../operations/shared/hole-tool.ts";
import { speedRange as listedRange, feedOf as listFeedOf, ownSpeedOf } from "../operations/shared/speed.ts";
import type { Plan } from "../operations/shared/types.ts";
import { goesIn, slotWidth } from "../operations/shared/wall/slot-width.ts";
import type { Material, Tool } from "../table/lists.ts";
import type { Lists } from "../table/read.ts";
import { ROW, type Row } from "../table/rows.ts";

/** One cell of the row: canonical units; undefined is blank before, null blank after. */
export interface Change {
  readonly key: Lever;
  readonly heading: string;
  readonly from: number | string | undefined;
  readonly to: number | string | null;
  /** What the plan takes where a cell is cleared. */
  readonly takes?: number | string;
}

export interface Candidate {
  readonly change: Change;
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

export function situationOf(row: Row, base: Plan, lists: Lists): Situation {
  const material = row.material === undefined ? undefined : lists.materials.find(row.material);
  const used = base.results.tool;
  return { row, base, lists, material, tool: typeof used === "string" ? lists.tools.find(used) : undefined };
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

/** Whether the row itself may be run faster than it is: not unasked in S and H materials, nor in deep holes. */
export function mayGoFaster({ row, material, tool }: Situation): boolean {
  if (material?.group === "s" || material?.group === "h") return false;
  const diameter = tool?.diameter ?? row.finishDiameter;
  return !(row.operation === "drill" && diameter !== undefined && (row.depth ?? 0) > DEEP * diameter);
}

/** Surface speed range of the row's material for a tool [m/min]. */
export function speedRange(
  { row, material }: Situation,
  tool: Tool | undefined,
): readonly [number, number] | undefined {
  const share = shareOf(row, tool ?? {});
  if (share !== undefined) return holeRange(material, (tool?.substrate ?? "hss") === "hss", share).range;
  return listedRange(material, tool?.substrate === "hss", ownSpeedOf(tool?.kind));
}

/** The row's own feed per tooth, else the list's [mm]; of hole tools the one that was planned. */
export function feedOf({ row, material, base }: Situation, tool: Tool | undefined): number | undefined {
  if (row.feedPerTooth !== undefined) return row.feedPerTooth;
  if (shareOf(row, tool ?? {}) !== undefined) return base.results.feedPerTooth ?? undefined;
  if (row.operation === "thread mill" && tool?.diameter !== undefined)
    return ((material?.threadFeed ?? USUAL_THREAD_FEED) / 100) * tool.diameter;
  return material && tool?.diameter !== undefined ? listFeedOf(material, tool.kind, tool.diameter) : undefined;
}

/** Shortest stick-out that still reaches, without a holder on neck or flutes [mm]. */
export function shortest({ row }: Situation, tool: Tool): number | undefined {
  const reach = Math.max(tool.neckLength ?? 0, tool.cuttingLength ?? 0, row.depth ?? 0);
  return reach > 0 ? reach : undefined;
}

/** Tools of the same use that are not the row's own, stiffest first. */
export function otherTools({ row, base, lists, tool }: Situation): Tool[] {
  if (row.operation === undefined) return [];
  const { tools } = OPERATIONS[row.operation];
  const kinds: readonly string[] = row.operation === "thread mill" ? tools : tools.slice(0, 1);
  const stiffness = (t: Tool) => (t.neckDiameter ?? t.diameter ?? 0) ** 4 / (t.neckLength ?? t.stickOut ?? 1) ** 3;
  return lists.tools.items
    .filter((t) => t.kind !== undefined && kinds.includes(t.kind) && t.diameter !== undefined)
    .filter((t) => t.tool !== base.results.tool && t.tool !== row.tool)
    .filter((t) => row.operation !== "slot" || tool === undefined || slotTakes(row, tool, t))
    .filter(
      (t) =>
        row.depth === undefined ||
        row.operation === "face" ||
        Math.max(t.neckLength ?? 0, t.cuttingLength ?? 0) >= row.depth,
    )
    .sort((a, b) => stiffness(b) - stiffness(a));
}

/** Without a width the cutter makes the slot: another size would make another one. */
const slotTakes = (row: Row, tool: Tool, other: Tool): boolean => {
  const width = slotWidth(row);
  return width === undefined ? other.diameter === tool.diameter : goesIn(other.diameter!, width);
};

const steps = (from: number, factors: readonly number[]): Try[] =>
  factors.map((f) => [from * f, Math.abs(Math.log(f))]);

/** What to try in each cell. */
const TRIES: Readonly<Record<Lever, (s: Situation) => readonly Try[]>> = {
  passes: ({ base }) => {
    const [passes, springs] = [base.results.passes ?? 0, base.results.springPasses ?? 0];
    if (passes <= 0) return [];
    return [1, 2, 3, 4, 5, 6, 8].filter((n) => n !== passes).map((n): Try => [n, ratio(n + springs, passes + springs)]);
  },
  springPasses: ({ base }) => {
    const [passes, springs] = [base.results.passes ?? 0, base.results.springPasses ?? 0];
    if (passes <= 0) return [];
    return [0, 1, 2, 3, 4].filter((n) => n !== springs).map((n): Try => [n, ratio(passes + n, passes + springs)]);
  },
  feedPerTooth: (s) => {
    const feed = feedOf(s, s.tool);
    return feed === undefined ? [] : steps(feed, [0.85, 0.7, 0.55, 0.4, 0.3, 0.2, 1.25, 1.6, 2, 3]);
  },
  surfaceSpeed: (s) => {
    const range = speedRange(s, s.tool);
    const speed = s.base.results.surfaceSpeed ?? 0;
    if (!range || speed <= 0) return [];
    const faster = mayGoFaster(s);
    return [0, 0.25, 0.5, 0.75, 1]
      .map((p) => range[0] + p * (range[1] - range[0]))
      .filter((v) => Math.abs(v / speed - 1) > 0.02 && (faster || v < speed))
      .map((v): Try => [v, ratio(v, speed)]);
  },
  maxRpm: ({ base }) => {
    const rpm = base.results.spindleSpeed ?? 0;
    return rpm > 0 ? steps(rpm, [0.85, 0.7, 0.55, 0.4]) : [];
  },
  stickOut: (s) => {
    const stick = s.row.stickOut ?? s.tool?.stickOut;
    const least = s.tool && shortest(s, s.tool);
    if (stick === undefined || least === undefined || least >= stick) return [];
    return [0.25, 0.5, 0.75, 1].map((share): Try => {
      const to = stick - share * (stick - least);
      return [to, ratio(to, stick)];
    });
  },
  // Of a wall whole levels: more of them, each as deep as the next.
  axialDepth: ({ row, base }) => {
    const wall = base.path?.kind === "wall" ? base.path.wall : undefined;
    const from = wall?.axial ?? row.axialDepth ?? row.depth;
    if (from === undefined) return [];
    if (wall && wall.rise > 0) return steps(row.axialDepth ?? wall.rise, [0.7, 0.5, 0.35]);
    const total = wall?.depth ?? from;
    const levels = Math.max(1, Math.round(total / from));
    return [1, 2, 3, 5].map((more): Try => [total / (levels + more), ratio(levels + more, levels)]);
  },
  // What is to be made is no matter of advice; see along().
  depth: () => [],
  totalWidth: () => [],
  radialDepth: ({ row, base }) => {
    const from = row.radialDepth ?? base.results.radialDepth ?? undefined;
    if (from === undefined) return [];
    // Each pass of a side wall is as thick as the cell says: whole shares of it, with as many passes.
    if (row.operation === "side") return steps(from, [1 / 2, 1 / 3, 1 / 4]);
    return steps(from, [0.75, 0.5, 0.35, 0.25]);
  },
  wearValue: ({ base }) => {
    const start = base.results.startWearValue;
    return typeof start === "number" && start !== 0 ? [[start, SMALL]] : [];
  },
  // A typed one is cleared like any other cell, see candidatesFor(): the plan's own is the one that fits.
  startDiameter: () => [],
  holeDepth: ({ base }) =>
    base.findings.flatMap((f): Try[] => (f.code === "hole-too-shallow" ? [[f.facts.limit, CLEARED]] : [])),
  machine: ({ row, lists }) =>
    lists.machines.items
      .filter((m) => m.machine.toLowerCase() !== row.machine?.toLowerCase())
      .slice(0, MACHINES_TRIED)
      .map((m, i): Try => [m.machine, OTHER_MACHINE + i / 100]),
  tool: (s) =>
    otherTools(s)
      .slice(0, TOOLS_TRIED)
      .map((t, i): Try => [t.tool, OTHER_TOOL + i / 20]),
};

/** What the plan chose for a cell that is blank. */
export function planned(s: Situation, key: Lever): number | string | undefined {
  if (key === "feedPerTooth") return feedOf(s, s.tool);
  if (key === "stickOut") return s.tool?.stickOut;
  const { results } = s.base;
  const own: Readonly<Partial<Record<Lever, unknown>>> = { ...results, maxRpm: results.spindleSpeed };
  const value = own[key];
  return typeof value === "number" || typeof value === "string" ? value : undefined;
}

export function changeOf(s: Situation, key: Lever, to: number | string | null): Change {
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
  if (operation === "face" && key === "radialDepth" && totalWidth === undefined && radialDepth !== undefined)
    return changeOf(s, "totalWidth", radialDepth);
  if (operation === "face" && key === "axialDepth" && depth === undefined && axialDepth !== undefined)
    return changeOf(s, "depth", axialDepth);
  if (operation !== "side" || key !== "radialDepth" || radialDepth === undefined || typeof to !== "number")
    return undefined;
  return changeOf(s, "passes", Math.round((passes * radialDepth) / to));
}

/** Every change of one cell worth trying among the levers that the operation has, the smallest first. */
export function candidatesFor(s: Situation, levers: ReadonlySet<Lever>): Candidate[] {
  const { operation } = s.row;
  if (operation === undefined) return [];
  const { levers: own, needs } = OPERATIONS[operation];
  const needed = needs(s.row);
  return [...own, ...COMMON_LEVERS]
    .filter((key) => levers.has(key))
    .flatMap((key): Candidate[] => {
      const tries = TRIES[key](s).map(([to, size]) => ({
        change: changeOf(s, key, to),
        size,
        along: along(s, key, to),
      }));
      // A cell that the person filled in may be what is wrong: the plan's own choice is tried first.
      const typed = s.row[key] !== undefined && !needed.includes(key) && key !== "machine" && !makesSize(s, key);
      return typed ? [{ change: changeOf(s, key, null), size: CLEARED }, ...tries] : tries;
    })
    .filter(
      ({ change }, i, all) => all.findIndex((c) => c.change.key === change.key && c.change.to === change.to) === i,
    )
    .sort((a, b) => a.size - b.size);
}

/** The row with changes in it. */
export const withChanges = (row: Row, changes: readonly Change[]): Row => ({
  ...row,
  ...Object.fromEntries(changes.map(({ key, to }) => [key, to ?? undefined])),
});
