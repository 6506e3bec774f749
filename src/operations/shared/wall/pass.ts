/** Straight passes along a length: slots and faces. */
import { MOST_PASSES } from "../../../table/rows.ts";
import type { Job } from "../job.ts";
import { over } from "../slack.ts";
import { edgeOf, levelsOf, type SizedTool, type Wall } from "./wall.ts";

/** Passes beside the first one: how many, and how wide the cut is after each of them [mm], from 0. */
export interface Beside {
  readonly count: number;
  width(after: number): number;
}

/** `axial` is the depth of a level where the row does not say [mm]; `walls` how many of the size are judged. */
export function straightWall(
  { work, row, operation }: Job,
  tool: SizedTool,
  pass: { width: number; depth: number; axial: number; walls: 0 | 1; beside?: Beside },
): Wall | undefined {
  const { diameter } = tool;
  const { width, depth, beside } = pass;
  if (over(width, diameter)) {
    work.find("radial-over-diameter", { value: width, limit: diameter, operation });
    return undefined;
  }
  if (beside && 1 + beside.count > MOST_PASSES) {
    work.find("too-many-passes", {
      value: Math.min(1 + beside.count, Number.MAX_SAFE_INTEGER),
      limit: MOST_PASSES,
    });
    return undefined;
  }
  return {
    side: "straight",
    stock: Math.min(width, diameter),
    depth,
    ...levelsOf(depth, Math.min(row.axialDepth ?? pass.axial, edgeOf(tool, depth))),
    rise: 0,
    length: row.length!,
    circles: false,
    walls: pass.walls,
    full: width >= diameter * 0.9999,
    beside: beside && Array.from({ length: beside.count }, (_, i) => beside.width(i)),
  };
}
