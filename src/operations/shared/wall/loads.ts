/** What the force of a wall's passes does: to the spindle, to the tool, to the size. */
import { deflectionStep, type ToolBeam } from "../beam.ts";
import { forceOf } from "../force.ts";
import type { Job } from "../job.ts";
import { judgePower, judgeStress } from "../limits.ts";
import { judgeSize } from "../size.ts";
import type { Attempt } from "./passes.ts";
import type { SizedTool, Wall } from "./wall.ts";

export function judgeLoads(
  job: Job,
  wall: Wall,
  tool: SizedTool,
  chosen: Attempt,
  beam: ToolBeam | undefined,
  rpm: number,
): void {
  const { work, row } = job;
  const { tangential, axial, torque, bending } = chosen.loads();
  work.set({ force: tangential });
  work.step("force", tangential, { thread: false });
  if (axial > 0) work.step("axialForce", axial, { ratio: forceOf(job)!.axialRatio });
  judgePower(job, torque, rpm);
  if (!beam) return;
  const { force, loadFromTip, deflection } = bending;
  work.set({ deflection });
  deflectionStep(job, beam, loadFromTip, force, false);
  judgeStress(job, beam, tool, force, torque, loadFromTip, chosen.chip);
  const { size } = chosen;
  if (!size) return;
  const reached = size.ends();
  // What is measured is known; else what bending is worked out to leave.
  const known = wall.walls === 2 && row.measured !== undefined ? measuredLeft(wall, row.measured) : undefined;
  work.left = known ?? [wall.stock - reached[0], wall.stock - reached[1]];
  const inside = wall.side === "inside";
  // Inside, a deeper wall is a larger size; a straight wall is judged by the stock left on it.
  const [finish, sign] = [wall.finish ?? 0, inside ? 1 : -1];
  const sizeAt = (depth: number) => finish + sign * wall.walls * (depth - wall.stock);
  const ends = [sizeAt(reached[0]), sizeAt(reached[1])] as const;
  if (row.sizeTolerance === undefined) {
    work.find("no-size-tolerance", { error: Math.max(...ends.map((s) => Math.abs(s - finish))) });
    if (wall.walls === 2) work.set({ size: (ends[0] + ends[1]) / 2 });
    return;
  }
  judgeSize(job, {
    low: finish - row.sizeTolerance,
    high: finish + row.sizeTolerance,
    of: wall.walls === 2 ? "finished diameter" : "wall error",
    inside,
    walls: wall.walls === 2 ? 2 : 1,
    programmed: finish - sign * wall.walls * (row.wearValue ?? 0),
    ends,
    start: size.start,
  });
}

/** Stock that stands on a round wall whose size was measured, a side [mm]. */
function measuredLeft(wall: Wall, measured: number): readonly [number, number] {
  const left = ((wall.side === "inside" ? 1 : -1) * (wall.finish! - measured)) / 2;
  return [left, left];
}
