/** Which listed cutters are worth proposing for a wall. */
import type { Tool } from "../../../table/lists.ts";
import type { Row } from "../../../table/rows.ts";
import type { Operation } from "../../operation.ts";
import type { Job } from "../job.ts";

/** Whether a listed cutter is worth proposing. */
export type Fits = (tool: { readonly diameter: number }, row: Row) => boolean;

/** A cutter for a bore is at most this share of it (common practice: room for chips and for the arc in). */
const INSIDE_SHARE = 0.8;
/** A cutter for an open wall is at most so many times as thick as the wall is high (common practice). */
const THICKEST = 4;
export const inBore: Fits = (tool, row) => tool.diameter <= INSIDE_SHARE * (row.finishDiameter ?? 0);
export const onWall: Fits = (tool, row) => row.depth === undefined || tool.diameter <= THICKEST * row.depth;

/** Listed cutters that fit, thickest for their reach first. */
export function wallCutters({ row, lists }: Job, operation: Operation, fits: Fits) {
  const kind = operation.tools[0]!;
  const able: { tool: Tool; score: number }[] = [];
  for (const tool of lists.tools.items) {
    const { diameter } = tool;
    if (tool.kind !== kind || diameter === undefined || !fits({ diameter }, row)) continue;
    if (Math.max(tool.cuttingLength ?? 0, tool.neckLength ?? 0) < (row.depth ?? 0)) continue;
    able.push({ tool, score: diameter / Math.max(1, (tool.stickOut ?? 4 * diameter) / diameter) ** 2 });
  }
  return { tools: able.sort((a, b) => b.score - a.score).map((c) => c.tool), for: "wall" as const };
}
