/** Holes that other rows find: which drill makes the hole of a thread, what a drill cuts over its size, what a drill is called. */
import { type DrillSet, nearestDrill } from "../../drill/sizes.ts";
import { nearestDrillInside, threadPercent } from "../../drill/tapdrill.ts";
import type { Tool } from "../../table/lists.ts";
import { drillNameOf, drillOversize, isSize, PERCENT_LIMIT } from "./choices.ts";
import type { Job } from "./job.ts";
import { over, under } from "./slack.ts";
import type { ThreadSizes } from "./thread/sizes.ts";

export const DRILL_SETS_OF: Readonly<Record<"mm" | "in", readonly DrillSet[]>> = {
  mm: ["metric"],
  in: ["number", "letter", "fraction"],
};

/** Sets that a row's drills are named in: those of its thread, else of its units. */
export function setsOf({ work, row, operation }: Pick<Job, "work" | "row" | "operation">): readonly DrillSet[] {
  const metric = operation === "ream" || row.thread === undefined ? work.units === "mm" : /^\s*[MG]/i.test(row.thread);
  return DRILL_SETS_OF[metric ? "mm" : "in"];
}

/** Trade name of a drill of a size, in the row's own sets or, where they have none, in the others. */
export function drillNamed(job: Pick<Job, "work" | "row" | "operation">, diameter: number): string | null {
  return drillNameOf(diameter, setsOf(job)) ?? drillNameOf(diameter, ["metric", "number", "letter", "fraction"]);
}

/** What a drill cuts over its size [mm]: the row's own figure, else the handbook's mean. */
export const oversizeOf = ({ row }: Pick<Job, "row">, diameter: number, substrate: Tool["substrate"]): number =>
  row.drillOversize ?? drillOversize(diameter, substrate);

export interface ThreadHole {
  /** Of the drill [mm]. */
  readonly diameter: number;
  /** What it is taken to cut over its size [mm]. */
  readonly oversize: number;
}

/**
 * The drill of the hole before a thread: one rule for the rows that drill it, tap it and mill it. Both its size and the
 * hole that it makes lie within the minor limits, so that the proposal, typed in as the hole, is still right. The shop's
 * own drills of the thread's system come first, then the standard drills of its sets, then the shop's others, then all
 * sets, and last those that only a drill which cuts close to its size can use. Of several the one nearest to the middle.
 */
export function threadHole(job: Job, sizes: ThreadSizes): ThreadHole {
  const { minorMin, minorMax, thread } = sizes;
  const middle = (minorMin + minorMax) / 2;
  const native = DRILL_SETS_OF[thread.native];
  const usual = oversizeOf(job, middle, "hss");
  const close = oversizeOf(job, middle, "carbide");
  const standard = (oversize: number, sets?: readonly DrillSet[]): ThreadHole | undefined => {
    if (minorMin + oversize > minorMax) return undefined;
    const drill = nearestDrillInside(minorMin + oversize, minorMax, oversize, sets, middle);
    return drill ? { diameter: drill.diameter, oversize } : undefined;
  };
  return (
    listedHole(job, sizes, middle, (units) => units === thread.native) ??
    standard(usual, native) ??
    listedHole(job, sizes, middle, (units) => units !== thread.native) ??
    standard(usual) ??
    standard(close, native) ??
    standard(close) ?? { diameter: nearestDrill(middle - usual, native).diameter, oversize: usual }
  );
}

/** The listed drill whose size and hole lie inside the minor limits, nearest to their middle. */
function listedHole(
  job: Job,
  { minorMin, minorMax }: ThreadSizes,
  middle: number,
  system: (units: Tool["units"]) => boolean,
): ThreadHole | undefined {
  let best: (ThreadHole & { readonly off: number }) | undefined;
  for (const { kind, diameter, substrate, units } of job.lists.tools.items) {
    if (kind !== "drill" || diameter === undefined || !system(units)) continue;
    const oversize = oversizeOf(job, diameter, substrate);
    if (under(diameter, minorMin) || over(diameter + oversize, minorMax)) continue;
    const off = Math.abs(diameter + oversize - middle);
    if (!best || under(off, best.off)) best = { diameter, oversize, off };
  }
  return best;
}

/** The hole that is made into a thread [mm]: the row's, else the one that the drill of this thread makes; judged by the minor limits. */
export function holeBefore(job: Job, sizes: ThreadSizes): number {
  const { work, row } = job;
  const { minorMin, minorMax, major, pitch, thread } = sizes;
  // What stands in the row is the hole itself; a drill that the row chooses makes a hole larger than itself.
  const typed = row.startDiameter || undefined;
  const drilled = typed === undefined ? threadHole(job, sizes) : { diameter: typed, oversize: 0 };
  const hole = drilled.diameter;
  const made = hole + drilled.oversize;
  if (typed === undefined) work.step("startDiameter", hole, { oversize: drilled.oversize });
  work.set({ startDiameter: hole, drill: drillNamed(job, hole) });
  const percent = threadPercent(major, pitch, Math.min(hole, major), thread.profileAngle);
  work.step("percent", percent, hole <= major ? { thread: thread.designation, hole } : undefined);
  if (under(made, minorMin))
    work.find("hole-under-minor", { value: made, limit: minorMin, percent, beyond: percent > PERCENT_LIMIT });
  else if (over(made, minorMax)) work.find("hole-over-minor", { value: made, limit: minorMax, percent });
  return hole;
}

/** Listed drills of a size. */
export const drillsOfSize = ({ lists }: Job, diameter: number): Tool[] =>
  lists.tools.items.filter((t) => t.kind === "drill" && t.diameter !== undefined && isSize(t.diameter, diameter));
