/** Holes that other rows find: which drill makes the hole of a thread, what a drill cuts over its size, what a drill is called. */
import { type DrillSet, nearestDrill } from "../../drill/sizes.ts";
import { nearestDrillInside } from "../../drill/tapdrill.ts";
import type { Tool } from "../../table/lists.ts";
import { drillNameOf, drillOversize, SAME_SIZE } from "./choices.ts";
import type { Job } from "./job.ts";
import type { ThreadSizes } from "./thread/sizes.ts";

export const DRILL_SETS_OF: Readonly<Record<"mm" | "in", readonly DrillSet[]>> = {
  mm: ["metric"],
  in: ["number", "letter", "fraction"],
};

/** Sets that a row's drills are named in: those of its thread, else of its units. */
export function setsOf({ work, row }: Pick<Job, "work" | "row">): readonly DrillSet[] {
  const metric = row.thread === undefined ? work.units === "mm" : /^\s*[MG]/i.test(row.thread);
  return DRILL_SETS_OF[metric ? "mm" : "in"];
}

/** Trade name of a drill of a size, in the row's own sets or, where they have none, in the others. */
export function drillNamed(job: Pick<Job, "work" | "row">, diameter: number): string | null {
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

/** A size at a limit is within it. */
const SLACK = 1e-7;

/**
 * The drill of the hole before a thread: one rule for the rows that drill it, tap it and mill it. Both its size and the
 * hole that it makes lie within the minor limits, so that the proposal, typed in as the hole, is still right. The shop's
 * own drills come first, those in the thread's own sets before the others; then the standard drills of the thread's sets,
 * of all sets, and those that only a drill which cuts close to its size can use. Of several the one nearest to the middle.
 */
export function threadHole(job: Job, sizes: ThreadSizes): ThreadHole {
  const { minorMin, minorMax, thread } = sizes;
  const middle = (minorMin + minorMax) / 2;
  const native = DRILL_SETS_OF[thread.native];
  let own: (ThreadHole & { readonly off: number }) | undefined;
  for (const tool of job.lists.tools.items) {
    const { diameter, substrate } = tool;
    if (tool.kind !== "drill" || diameter === undefined) continue;
    const oversize = oversizeOf(job, diameter, substrate);
    if (diameter < minorMin * (1 - SLACK) || diameter + oversize > minorMax * (1 + SLACK)) continue;
    // A drill of the other system is worth taking only where the thread's own has none.
    const off = Math.abs(diameter + oversize - middle) + (tool.units === thread.native ? 0 : minorMax);
    if (!own || off < own.off - SLACK) own = { diameter, oversize, off };
  }
  if (own) return own;
  const usual = oversizeOf(job, middle, "hss");
  const close = oversizeOf(job, middle, "carbide");
  for (const oversize of [usual, close]) {
    for (const sets of [native, undefined]) {
      const drill =
        minorMin + oversize < minorMax && nearestDrillInside(minorMin + oversize, minorMax, oversize, sets, middle);
      if (drill) return { diameter: drill.diameter, oversize };
    }
  }
  return { diameter: nearestDrill(middle - usual, native).diameter, oversize: usual };
}

/** Listed drills of a size. */
export const drillsOfSize = ({ lists }: Job, diameter: number): Tool[] =>
  lists.tools.items.filter(
    (t) => t.kind === "drill" && t.diameter !== undefined && Math.abs(t.diameter - diameter) <= SAME_SIZE,
  );
