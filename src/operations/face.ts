/** Faces. */
import type { Operation } from "./operation.ts";
import { planWall } from "./shared/wall/cut.ts";
import { straightWall } from "./shared/wall/pass.ts";

/** Axial depth and width of a pass where the row does not say, of the cutter diameter (common practice). */
const AXIAL = 0.1;
const WIDTH = 0.7;

export const face: Operation = {
  needs: (row) => (row.depth === undefined ? ["axialDepth", "length"] : ["depth", "length"]),
  uses: [
    ...(["tool", "way", "depth", "axialDepth", "radialDepth", "passes", "springPasses", "stickOut"] as const),
    ...(["feedPerTooth", "wearFactor", "roughness"] as const),
  ],
  tools: ["face mill", "end mill"],
  levers: ["axialDepth", "feedPerTooth", "surfaceSpeed", "tool"],
  plan: (job) =>
    planWall(job, face, {
      fits: () => true,
      reaches: () => true,
      wall: (tool) => {
        const depth = job.row.depth ?? job.row.axialDepth!;
        return straightWall(job, tool, {
          width: job.row.radialDepth ?? WIDTH * tool.diameter,
          depth,
          axial: Math.min(depth, AXIAL * tool.diameter),
          walls: 0,
        });
      },
    }),
};
