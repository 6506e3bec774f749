/** Straight passes along a length: slots and faces. */
import type { Job } from "../job.ts";
import { over } from "../slack.ts";
import { edgeOf, levelsOf, type SizedTool, type Wall } from "./wall.ts";

/** `axial` is the depth of a level where the row does not say [mm]; `walls` how many of the size are judged. */
export function straightWall(
  { work, row, operation }: Job,
  tool: SizedTool,
  pass: { width: number; depth: number; axial: number; walls: 0 | 1; beside?: readonly number[] },
): Wall | undefined {
  const { diameter } = tool;
  const { width, depth } = pass;
  if (over(width, diameter)) {
    work.find("radial-over-diameter", { value: width, limit: diameter, operation });
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
    beside: pass.beside,
  };
}
