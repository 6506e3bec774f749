/** Full circles: bores, counterbores and bosses. */
import { RAMP_ANGLE } from "../choices.ts";
import type { Job } from "../job.ts";
import { over, under } from "../slack.ts";
import { edgeOf, FIRST_CIRCLE, levelDepth, levelsOf, RADIAL_SHARE, type SizedTool, type Wall } from "./wall.ts";

/** Helical rise per turn is never more than this share of the cutter diameter. */
const RISE_SHARE = 0.25;

export function circleWall({ work, row }: Job, tool: SizedTool, inside: boolean): Wall | undefined {
  const { diameter } = tool;
  const depth = row.depth!;
  const finish = row.finishDiameter!;
  const start = row.startDiameter ?? 0;
  if (inside ? !under(start, finish) : !over(start, finish)) {
    work.find("no-stock", { value: start, limit: finish });
    return undefined;
  }
  if (inside && !under(diameter, finish)) {
    work.find("cutter-too-large", { value: diameter, limit: finish, into: "bore" });
    return undefined;
  }
  const solid = inside && start < diameter;
  const radius = (Math.min(finish, FIRST_CIRCLE * diameter) - diameter) / 2;
  const ramp = 2 * Math.PI * radius * Math.tan((RAMP_ANGLE * Math.PI) / 180);
  const rise = solid ? Math.min(depth, row.axialDepth ?? Math.min(ramp, RISE_SHARE * diameter)) : 0;
  if (solid) work.step("rise", rise, { typed: row.axialDepth !== undefined, angle: RAMP_ANGLE, share: RISE_SHARE });
  const stock = Math.abs(finish - start) / 2;
  const edge = edgeOf(tool, depth);
  const axial = row.axialDepth ?? levelDepth(tool, depth, Math.min(stock, row.radialDepth ?? RADIAL_SHARE * diameter));
  return {
    side: inside ? "inside" : "outside",
    finish,
    start,
    stock,
    depth,
    ...levelsOf(depth, Math.min(axial, edge)),
    rise,
    circles: true,
    walls: 2,
    full: solid,
  };
}
