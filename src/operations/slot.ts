/** Slots: full width, or a narrower cutter along one wall. */
import { slotStep } from "../mill/chip-space.ts";
import type { Operation } from "./operation.ts";
import { planWall, type WallWork, wallCutters } from "./shared/wall/cut.ts";
import { straightWall } from "./shared/wall/pass.ts";
import { groupOf } from "./shared/wall/surface.ts";
import { SLOT_AXIAL } from "./shared/wall/wall.ts";

export const slot: Operation = {
  needs: () => ["depth", "length"],
  uses: [
    ...(["tool", "finishDiameter", "through", "way", "axialDepth", "radialDepth", "passes", "springPasses"] as const),
    ...(["stickOut", "feedPerTooth", "wearFactor", "sizeTolerance", "roughness", "coolant"] as const),
  ],
  tools: ["end mill", "ball end mill"],
  levers: ["axialDepth", "feedPerTooth", "surfaceSpeed", "stickOut", "tool"],
  candidates: (job) => wallCutters(job, slot, { fits }),
  plan: (job) =>
    planWall(job, slot, {
      fits,
      wall: (tool) => {
        const { row, work } = job;
        const { diameter } = tool;
        const group = groupOf(job.material);
        const wall = straightWall(job, tool, {
          width: row.radialDepth ?? diameter,
          depth: row.depth!,
          axial: Math.min(
            SLOT_AXIAL * diameter,
            group
              ? slotStep(group, diameter, tool.teeth, row.coolant ?? "flood", job.material?.slotStep)
              : Number.POSITIVE_INFINITY,
          ),
          walls: row.sizeTolerance === undefined ? 0 : 1,
        });
        if (wall && row.finishDiameter !== undefined && row.finishDiameter < diameter * 0.9999)
          work.find("cutter-too-large", { value: diameter, limit: row.finishDiameter, into: "slot" });
        return wall;
      },
    }),
};

/** As wide as the slot at most; without a width the cutter makes it, and is not much thicker than it is deep. */
const fits: WallWork["fits"] = (tool, row) => {
  const width = row.finishDiameter ?? row.radialDepth;
  return width === undefined
    ? tool.diameter <= 4 * (row.depth ?? Number.POSITIVE_INFINITY)
    : tool.diameter <= width * 1.0001;
};
