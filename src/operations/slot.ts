/** Slots: full width, a pass down the middle of a wider one and its walls after it, or a narrower cutter along one wall. */
import { slotStep } from "../mill/chip-space.ts";
import type { Row } from "../table/rows.ts";
import type { Operation } from "./operation.ts";
import { planWall } from "./shared/wall/cut.ts";
import { type Fits, onWall, wallCutters } from "./shared/wall/cutters.ts";
import { type Beside, straightWall } from "./shared/wall/pass.ts";
import { goesIn, slotWidth } from "./shared/wall/slot-width.ts";
import { groupOf } from "./shared/wall/surface.ts";
import { RADIAL_SHARE, SLOT_AXIAL } from "./shared/wall/wall.ts";

export const slot: Operation = {
  needs: () => ["depth", "length"],
  uses: [
    ...([
      "tool",
      "finishDiameter",
      "totalWidth",
      "through",
      "way",
      "axialDepth",
      "radialDepth",
      "passes",
      "springPasses",
    ] as const),
    ...(["stickOut", "feedPerTooth", "wearFactor", "sizeTolerance", "wearValue", "roughness", "coolant"] as const),
  ],
  tools: ["end mill", "ball end mill"],
  levers: ["axialDepth", "feedPerTooth", "surfaceSpeed", "stickOut", "tool"],
  candidates: (job) => wallCutters(job, slot, fits),
  plan: (job) =>
    planWall(job, slot, (tool) => {
      const { row, work } = job;
      const { diameter } = tool;
      const group = groupOf(job.material);
      const whole = slotWidth(row);
      const beside = sidePasses(row, diameter);
      const wall = straightWall(job, tool, {
        width: beside.count > 0 ? diameter : (row.radialDepth ?? diameter),
        depth: row.depth!,
        axial: Math.min(
          SLOT_AXIAL * diameter,
          group
            ? slotStep(group, diameter, tool.teeth, row.coolant ?? "flood", job.material?.slotStep)
            : Number.POSITIVE_INFINITY,
        ),
        walls: row.sizeTolerance === undefined || beside.count > 0 ? 0 : 1,
        beside,
      });
      if (wall && whole !== undefined && whole < diameter * 0.9999)
        work.find("cutter-too-large", { value: diameter, limit: whole, into: "slot" });
      if (wall && beside.count > 0)
        work.find(
          "slot-widened",
          { value: whole!, limit: diameter, passes: beside.count, step: beside.width(0) - diameter },
          row.sizeTolerance === undefined ? "ok" : "check",
        );
      return wall;
    }),
};

/** The passes that follow the one down the middle: as many on one wall as on the other (common practice: both are cut climb). */
function sidePasses(row: Row, diameter: number): Beside {
  const rest = (slotWidth(row) ?? 0) - diameter;
  if (rest <= 1e-4 * diameter) return { count: 0, width: () => diameter };
  const most = Math.min(row.radialDepth ?? RADIAL_SHARE * diameter, diameter);
  const count = 2 * Math.ceil(rest / (2 * most) - 1e-9);
  return { count, width: (i) => diameter + (rest * (i + 1)) / count };
}

/** As wide as the slot at most; without a width the cutter makes it, and is not much thicker than it is deep. */
const fits: Fits = (tool, row) => {
  const width = slotWidth(row) ?? row.radialDepth;
  return width === undefined ? onWall(tool, row) : goesIn(tool.diameter, width);
};
