/** Circular bores, helical from solid or at depth. */
import type { Operation } from "./operation.ts";
import { circleWall } from "./shared/wall/circle.ts";
import { planWall } from "./shared/wall/cut.ts";
import { inBore, wallCutters } from "./shared/wall/cutters.ts";

export const bore: Operation = {
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
  levers: [
    ...(["wearValue", "passes", "springPasses", "feedPerTooth", "surfaceSpeed", "stickOut", "tool"] as const),
    ...(["axialDepth", "radialDepth"] as const),
  ],
  candidates: (job) => wallCutters(job, bore, inBore),
  plan: (job) => planWall(job, bore, (tool) => circleWall(job, tool, true)),
};
