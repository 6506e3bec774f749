/** A wall's passes as chatter sees them; a full slot in more levels where that keeps it quiet. */
import { MOST_PASSES } from "../../../table/rows.ts";
import type { ToolBeam } from "../beam.ts";
import { type ChatterPass, chatters } from "../chatter.ts";
import type { Job } from "../job.ts";
import { under } from "../slack.ts";
import type { Attempt } from "./passes.ts";
import type { SizedTool, Wall } from "./wall.ts";

/** A full slot is taken in steps down to this share of the cutter where deeper ones are likely to chatter (common practice in tough steel). */
const SHALLOW_STEP = 0.25;

export const chatterPass = (
  { radialDepth, axialDepth, centreFeed, edge }: Attempt,
  teeth: number,
  surfaceSpeed: number,
): ChatterPass => ({
  radialDepth,
  axialDepth,
  centreFeed,
  diameter: edge.diameter,
  edgeAngle: edge.angle,
  teeth,
  surfaceSpeed,
});

export interface SlotWay {
  readonly wall: Wall;
  readonly chosen: Attempt;
}

/** A full slot in more levels, where the usual ones are likely to chatter and shallower ones are not; whether it is known to be quiet. */
export function quietSlot(
  job: Job,
  beam: ToolBeam,
  tool: SizedTool,
  usual: SlotWay,
  surfaceSpeed: number,
  passesOf: (wall: Wall) => Attempt,
): SlotWay & { readonly quiet: boolean } {
  const isQuiet = (chosen: Attempt) => !chatters(job, beam, tool, [chatterPass(chosen, tool.teeth, surfaceSpeed)]);
  if (isQuiet(usual.chosen)) return { ...usual, quiet: true };
  const { wall } = usual;
  const enough = (levels: number) => levels > MOST_PASSES || under(wall.depth / levels, SHALLOW_STEP * tool.diameter);
  for (let levels = wall.levels + 1; !enough(levels); levels++) {
    const shallower = { ...wall, levels, axial: wall.depth / levels };
    const chosen = passesOf(shallower);
    if (isQuiet(chosen)) return { wall: shallower, chosen, quiet: true };
  }
  return { ...usual, quiet: false };
}
