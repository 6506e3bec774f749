/** Faces. */
import type { Row } from "../table/rows.ts";
import type { Operation } from "./operation.ts";
import { planWall } from "./shared/wall/cut.ts";
import { straightWall } from "./shared/wall/pass.ts";
import { levelsOf } from "./shared/wall/wall.ts";

/** Axial depth and width of a pass where the row does not say, of the cutter diameter (common practice). */
const AXIAL = 0.1;
const WIDTH = 0.7;
/** One pass covers a face up to this share of the cutter, so that its edge stays over the work (common practice). */
const ONE_PASS = 0.85;

/** Strips that a face is milled in, and the width of each [mm]; without a width the strip that the row names, or the usual one. */
function strips({ totalWidth, radialDepth }: Row, diameter: number): { count: number; width: number } {
  const usual = radialDepth ?? WIDTH * diameter;
  if (totalWidth === undefined) return { count: 1, width: usual };
  const most = radialDepth ?? (totalWidth <= ONE_PASS * diameter ? ONE_PASS * diameter : usual);
  const { levels: count, axial: width } = levelsOf(totalWidth, most);
  return { count, width };
}

export const face: Operation = {
  needs: (row) => (row.depth === undefined ? ["axialDepth", "length"] : ["depth", "length"]),
  uses: [
    ...([
      "tool",
      "way",
      "depth",
      "axialDepth",
      "radialDepth",
      "totalWidth",
      "passes",
      "springPasses",
      "stickOut",
    ] as const),
    ...(["feedPerTooth", "wearFactor", "roughness"] as const),
  ],
  tools: ["face mill", "end mill"],
  levers: ["feedPerTooth", "axialDepth", "radialDepth", "surfaceSpeed", "tool"],
  // Which mill faces a part is a matter of the whole job: none is proposed.
  candidates: () => ({ tools: [], for: "wall" }),
  plan: (job) =>
    planWall(job, face, (tool) => {
      const depth = job.row.depth ?? job.row.axialDepth!;
      const { count, width } = strips(job.row, tool.diameter);
      return straightWall(job, tool, {
        width,
        depth,
        axial: AXIAL * tool.diameter,
        walls: 0,
        beside: { count: count - 1, width: (i) => width * (i + 2) },
      });
    }),
};
