/** Bosses: round walls milled from outside. */
import type { Operation } from "./operation.ts";
import { circleWall } from "./shared/wall/circle.ts";
import { planWall } from "./shared/wall/cut.ts";
import { onWall, wallCutters } from "./shared/wall/cutters.ts";

export const boss: Operation = {
  needs: () => ["startDiameter", "finishDiameter", "depth"],
  uses: [
    ...(["tool", "through", "way", "axialDepth", "radialDepth", "passes", "springPasses", "stickOut"] as const),
    ...(["feedPerTooth", "wearFactor", "measured", "wearValue", "sizeTolerance", "roughness", "sizeClass"] as const),
  ],
  tools: ["end mill", "ball end mill"],
  levers: [
    ...(["wearValue", "passes", "springPasses", "feedPerTooth", "surfaceSpeed", "stickOut", "tool"] as const),
    ...(["axialDepth", "radialDepth"] as const),
  ],
  candidates: (job) => wallCutters(job, boss, onWall),
  plan: (job) => planWall(job, boss, (tool) => circleWall(job, tool, false)),
};
