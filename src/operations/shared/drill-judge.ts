/** What a drill is held to: torsion and buckling, flutes, depth, how it starts. */
import { PILOT_FROM } from "../../drill/deep.ts";
import { holeDrift, walkRatio } from "../../drill/start.ts";
import { drillBreakingTorque, drillBucklingThrust, HELD_POINT } from "../../drill/strength.ts";
import type { Tool } from "../../table/lists.ts";
import type { Job } from "./job.ts";
import { judgeBreaking } from "./limits.ts";
import { over, under } from "./slack.ts";

/** Depth in diameters beyond which no twist drill is planned (common practice). */
const DEEPEST = 50;
/** Breaking torque over what a drill is asked for (judgement: the load of a drill is known better than that of a mill). */
export const TORSION_SAFETY = 1.5;
/** Euler's thrust over what a drill is asked for (judgement). */
export const BUCKLING_SAFETY = 2;
/** Flutes above the full-diameter depth, in diameters, so that chips leave: worth a word under the first, to be looked at under the second (common practice: about 1.5). */
const OPEN_FLUTES = { note: 1.5, check: 1 } as const;
/** Depth in diameters from which a solid carbide drill wants coolant through it, and one of high-speed steel (common practice). */
export const COOLANT_FROM = { carbide: 5, hss: 15 } as const;
/** Depth in diameters from which it is worth saying how far a hole runs off (judgement). */
const DRIFT_FROM = 8;
/** Modulus of drills [GPa], where the list is silent (handbook values, from memory). */
const MODULUS = { carbide: 600, hss: 210 } as const;

const modulusOf = (tool: Tool) => tool.modulus ?? MODULUS[tool.substrate ?? "hss"];

/** Torque against what twists the drill off, thrust against what bends it away. */
export function judgeDrill({ work, row, tool }: Job, diameter: number, torque: number, thrust: number): void {
  if (!tool) return;
  if (tool.ruptureStrength === undefined) work.find("no-strength", { tool: tool.tool });
  else {
    const breaks = drillBreakingTorque(diameter, tool.ruptureStrength, tool.substrate === "carbide");
    work.step("breakingTorque", breaks, { safety: TORSION_SAFETY });
    work.set({ stress: (TORSION_SAFETY * torque) / breaks });
    judgeBreaking(work, ["torsion", "drill-torsion", "torque"], torque, breaks, TORSION_SAFETY);
  }
  const length = row.stickOut ?? tool.stickOut;
  if (length === undefined) return;
  const buckles = drillBucklingThrust(diameter, length, modulusOf(tool), HELD_POINT);
  work.step("buckling", buckles, { safety: BUCKLING_SAFETY });
  judgeBreaking(work, ["buckling", "drill-buckles", "force"], thrust, buckles, BUCKLING_SAFETY);
}

/** Whether the point holds on a bare face; a start hole of any size holds it. */
export function judgeStart({ work, row, tool }: Job, diameter: number, thrust: number): void {
  const length = tool && (row.stickOut ?? tool.stickOut);
  if (!tool || length === undefined || (row.startDiameter ?? 0) > 0) return;
  const ratio = walkRatio(thrust, diameter, length, modulusOf(tool));
  if (ratio > 1) work.find("spot-first", { value: thrust, limit: thrust / ratio });
}

/** Flutes long enough that chips leave: at least to the face, and open above it. */
export function judgeFlutes({ work, row }: Job, tool: Tool, diameter: number, travel: number): void {
  const flutes = tool.cuttingLength;
  if (flutes === undefined) return;
  if (under(flutes, travel)) {
    work.find("drill-too-short", { value: flutes, limit: travel });
    return;
  }
  for (const severity of ["check", "note"] as const) {
    const open = OPEN_FLUTES[severity];
    const limit = row.depth! + open * diameter;
    if (under(flutes, limit))
      work.find("flutes-full", { value: flutes, limit, open }, severity === "note" ? "ok" : severity);
  }
}

/** Deep holes: pilot, coolant, drift. False where the hole is deeper than twist drills go. */
export function judgeDepth({ work, row, tool }: Job, diameter: number, travel: number): boolean {
  if (over(travel, DEEPEST * diameter)) {
    work.find("too-deep", { value: travel, limit: DEEPEST * diameter, diameters: travel / diameter, most: DEEPEST });
    return false;
  }
  const depth = row.depth!;
  const piloted = (row.startDiameter ?? 0) > 0;
  if (over(depth, PILOT_FROM * diameter) && !piloted)
    work.find("pilot-wanted", { value: depth, limit: PILOT_FROM * diameter, diameter });
  const from = COOLANT_FROM[tool?.substrate ?? "hss"] * diameter;
  if (over(depth, from) && !tool?.coolantThrough) work.find("coolant-wanted", { value: depth, limit: from });
  if (over(depth, DRIFT_FROM * diameter))
    work.find("hole-runs-off", { drift: holeDrift(depth, piloted || tool?.substrate === "carbide") });
  return true;
}
