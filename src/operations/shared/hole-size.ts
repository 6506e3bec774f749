/** The size of a straight hole against its limits: what the row allows, and what drills and reamers hold. */
import { standardTolerance } from "../../fits/limits.ts";
import type { Tool } from "../../table/lists.ts";
import type { Job } from "./job.ts";
import { over, under } from "./slack.ts";

/** Tolerance grade that a drill holds (common practice: jobber drills of high-speed steel IT12 to IT11, carbide IT10 to IT9). */
const DRILL_HOLDS = { hss: "11", carbide: "10" } as const;
/** Largest size of the grades' tables [mm]. */
const GRADED = 500;

export interface HoleLimits {
  readonly low: number;
  readonly high: number;
}

/** Limits of the finished hole [mm]: of its class, else the finish diameter and its tolerance to both sides. */
export function sizeLimits({ row, size }: Job): HoleLimits | undefined {
  if (size) return { low: size.min, high: size.max };
  if (row.finishDiameter === undefined || row.sizeTolerance === undefined) return undefined;
  return { low: row.finishDiameter - row.sizeTolerance, high: row.finishDiameter + row.sizeTolerance };
}

/** A drilled hole against limits: its mean size, and whether drills hold such a tolerance at all. */
export function judgeHoleSize(
  { work }: Job,
  diameter: number,
  size: number,
  { low, high }: HoleLimits,
  substrate: Tool["substrate"],
): void {
  work.set({ sizeMin: low, sizeMax: high });
  const large = over(size, high);
  if (large || under(size, low)) {
    work.find("drilled-size-out", { value: size, limit: large ? high : low, low, high });
    return;
  }
  if (diameter > GRADED) return;
  const grade = DRILL_HOLDS[substrate ?? "hss"];
  const holds = standardTolerance(diameter, grade);
  if (under(high - low, holds)) work.find("drill-tolerance", { value: high - low, limit: holds, grade: Number(grade) });
}
