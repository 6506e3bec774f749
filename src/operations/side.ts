/** Side walls: straight, inside an arc, outside an arc. */
import { cornerDepth } from "../mill/corner.ts";
import type { Operation } from "./operation.ts";
import type { Job } from "./shared/job.ts";
import { over, under } from "./shared/slack.ts";
import { planWall } from "./shared/wall/cut.ts";
import { type Fits, inBore, onWall, wallCutters } from "./shared/wall/cutters.ts";
import { edgeOf, levelDepth, levelsOf, type SizedTool, type Wall } from "./shared/wall/wall.ts";

export const side: Operation = {
  needs: (row) => ["depth", "radialDepth", (row.side ?? "straight") === "straight" ? "length" : "finishDiameter"],
  uses: [
    ...([
      "tool",
      "finishDiameter",
      "through",
      "way",
      "length",
      "side",
      "axialDepth",
      "passes",
      "springPasses",
    ] as const),
    ...(["stickOut", "feedPerTooth", "wearFactor", "measured", "wearValue", "sizeTolerance"] as const),
    ...(["roughness", "insideCorner"] as const),
  ],
  tools: ["end mill", "ball end mill"],
  levers: [
    ...(["wearValue", "springPasses", "feedPerTooth", "surfaceSpeed", "stickOut", "tool"] as const),
    ...(["axialDepth", "radialDepth"] as const),
  ],
  candidates: (job) => wallCutters(job, side, fits),
  plan: (job) =>
    planWall(job, side, (tool) => ((job.row.side ?? "straight") === "straight" ? straight(job, tool) : arc(job, tool))),
};

const fits: Fits = (tool, row) => (row.side === "inside" ? inBore(tool, row) : onWall(tool, row));

function straight({ work, row }: Job, tool: SizedTool): Wall | undefined {
  const each = row.radialDepth!;
  const depth = row.depth!;
  if (over(each, tool.diameter)) {
    work.find("radial-over-diameter", { value: each, limit: tool.diameter, operation: "side" });
    return undefined;
  }
  const { insideCorner } = row;
  if (insideCorner !== undefined && under(insideCorner, tool.diameter / 2)) {
    work.find("cutter-too-large", { value: tool.diameter, limit: 2 * insideCorner, into: "arc" });
    return undefined;
  }
  const edge = edgeOf(tool, depth);
  return {
    side: "straight",
    stock: each * (row.passes ?? 1),
    depth,
    ...levelsOf(depth, Math.min(row.axialDepth ?? levelDepth(tool, depth, each), edge)),
    rise: 0,
    length: row.length!,
    circles: false,
    walls: 1,
    full: false,
    corner:
      insideCorner === undefined
        ? undefined
        : cornerDepth({
            radialDepth: each,
            cornerRadius: Math.max(insideCorner, tool.diameter / 2),
            // the roughing cutter is taken to have had the corner's own radius
            stockRadius: insideCorner,
            turn: 90,
            diameter: tool.diameter,
          }),
  };
}

function arc({ work, row }: Job, tool: SizedTool): Wall | undefined {
  const inside = row.side === "inside";
  const finish = row.finishDiameter!;
  const depth = row.depth!;
  if (inside && !under(tool.diameter, finish)) {
    work.find("cutter-too-large", { value: tool.diameter, limit: finish, into: "arc" });
    return undefined;
  }
  const stock = row.radialDepth! * (row.passes ?? 1);
  if (row.length === undefined) work.find("arc-length", {});
  const edge = edgeOf(tool, depth);
  return {
    side: inside ? "inside" : "outside",
    finish,
    start: inside ? Math.max(0, finish - 2 * stock) : finish + 2 * stock,
    stock,
    depth,
    ...levelsOf(depth, Math.min(row.axialDepth ?? levelDepth(tool, depth, row.radialDepth!), edge)),
    rise: 0,
    length: row.length ?? Math.PI * finish,
    circles: false,
    walls: 2,
    full: false,
  };
}
