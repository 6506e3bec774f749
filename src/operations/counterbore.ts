/** Counterbores, milled like a bore with a flat bottom. */
import type { Operation } from "./operation.ts";
import { circleWall } from "./shared/wall/circle.ts";
import { inBore, planWall, wallCutters } from "./shared/wall/cut.ts";

export const counterbore: Operation = {
  needs: () => ["finishDiameter", "depth"],
  uses: [
    ...([
      "startDiameter",
      "tool",
      "through",
      "way",
      "axialDepth",
      "radialDepth",
      "passes",
      "springPasses",
      "stickOut",
    ] as const),
    ...(["feedPerTooth", "wearFactor", "measured", "wearValue", "sizeTolerance", "roughness", "sizeClass"] as const),
  ],
  tools: ["end mill", "ball end mill"],
  levers: ["passes", "springPasses", "feedPerTooth", "surfaceSpeed", "stickOut", "tool"],
  candidates: (job) => wallCutters(job, counterbore, { fits: inBore }),
  plan: (job) =>
    planWall(job, counterbore, {
      fits: inBore,
      wall: (tool) => circleWall(job, tool, true),
    }),
};
