/** Circular bores, helical from solid or at depth. */
import type { Operation } from "./operation.ts";
import { circleWall } from "./shared/wall/circle.ts";
import { inBore, planWall } from "./shared/wall/cut.ts";

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
    ...(["feedPerTooth", "wearFactor", "measured", "wearValue", "sizeTolerance", "sizeClass"] as const),
  ],
  tools: ["end mill", "ball end mill"],
  levers: ["passes", "springPasses", "feedPerTooth", "surfaceSpeed", "stickOut", "tool"],
  plan: (job) =>
    planWall(job, bore, {
      fits: inBore,
      wall: (tool) => circleWall(job, tool, true),
    }),
};
