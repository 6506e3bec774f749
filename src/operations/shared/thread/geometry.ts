/** Where a thread mill runs and what it leaves: path, reach, ends of the helix. */

import type { Tool, ToolKind } from "../../../table/lists.ts";
import { neckClearance } from "../../../thread/fit.ts";
import { plainPathRadius, tipDiameter } from "../../../thread/path.ts";
import { sweptPathRadius, widestTipFlat } from "../../../thread/sweep.ts";
import { NECK_ROOM } from "../choices.ts";
import { attempt, type Job, ofOtherKind } from "../job.ts";
import { over, under } from "../slack.ts";
import type { ThreadSizes } from "./sizes.ts";

/** A thread-mill row as far as its geometry goes. */
export interface Geometry {
  readonly sizes: ThreadSizes;
  readonly kind: "internal" | "external";
  readonly side: "inside" | "outside";
  /** Hole or blank before the cut [mm]. */
  readonly start: number;
  readonly tool: Tool;
  readonly diameter: number;
  readonly flat: number;
  readonly pathRadius: number;
  /** Diameter that the tip reaches: major inside, minor outside [mm]. */
  readonly tip: number;
  readonly fullDepth: number;
}

const THREAD_MILLS: readonly (ToolKind | undefined)[] = ["thread mill single", "thread mill full"];
export const isThreadMill = ({ kind }: Tool): boolean => THREAD_MILLS.includes(kind);

/** Path of the cutter and what it leaves, with everything that cannot work as a finding. */
export function geometryOf({ work, row }: Job, sizes: ThreadSizes, start: number, tool: Tool): Geometry | undefined {
  const { thread, internal, pitch } = sizes;
  const kind = internal ? "internal" : "external";
  const { diameter, tipFlat: flat } = tool;
  if (ofOtherKind(work, tool, "thread mill", THREAD_MILLS)) return undefined;
  if (diameter === undefined || flat === undefined) {
    work.find("tool-incomplete", { tool: tool.tool, missing: diameter === undefined ? "diameter" : "tipFlat" });
    return undefined;
  }
  const profileAngle = tool.profileAngle ?? thread.profileAngle;
  if (profileAngle !== thread.profileAngle) {
    work.find("profile-angle", { value: profileAngle, limit: thread.profileAngle });
    return undefined;
  }
  if (tool.kind === "thread mill full" && tool.pitch !== undefined && Math.abs(tool.pitch - pitch) > 1e-4 * pitch) {
    work.find("pitch-differs", { value: tool.pitch, limit: pitch });
    return undefined;
  }
  if (internal && !under(diameter, start))
    work.find("cutter-too-large", { value: diameter, limit: start, into: "hole" });
  const wanted = (sizes.pitchMin + sizes.pitchMax) / 2;
  const cutter = { cutterDiameter: diameter, tipFlat: flat, profileAngle, lead: pitch };
  const path = attempt(work, "no-path", () => ({
    plain: plainPathRadius(wanted, pitch, diameter, flat, profileAngle, kind),
    swept: sweptPathRadius(cutter, pitch, wanted, kind),
  }));
  if (!path) return undefined;
  const e = path.swept;
  const tip = tipDiameter(e, diameter, kind);
  work.step("sweep", 2 * (path.plain - e));
  const root = internal ? sizes.major : sizes.minorMin;
  const shallow = internal ? under(tip, root) : over(tip, root);
  // THREADPATH refuses a flat that leaves the root short, unless it is told the pitch diameter.
  const pitchDiameter = shallow ? wanted : undefined;
  work.step("pathRadius", e, { thread: thread.designation, cutter: diameter, flat, pitchDiameter });
  work.step(internal ? "majorDiameter" : "minorDiameter", tip);
  work.set({ pathRadius: e, majorDiameter: internal ? tip : null });
  if (shallow) {
    const would = widestTipFlat(cutter, pitch, wanted, root, kind);
    work.find("flat-too-wide", { value: tip, limit: root, flat, inside: internal, would });
  }
  const fullDepth = (internal ? tip - start : start - tip) / 2;
  if (fullDepth <= 0) {
    work.find("no-depth", { value: tip, limit: start });
    return undefined;
  }
  judgeReach(work, row, tool, sizes, start, e, fullDepth);
  return {
    sizes,
    kind,
    side: internal ? "inside" : "outside",
    start,
    tool,
    diameter,
    flat,
    pathRadius: e,
    tip,
    fullDepth,
  };
}

/** Neck against the wall, neck length and profile height against the depth, hole depth. */
function judgeReach(
  work: Job["work"],
  row: Job["row"],
  tool: Tool,
  sizes: ThreadSizes,
  start: number,
  e: number,
  fullDepth: number,
): void {
  const kind = sizes.internal ? "internal" : "external";
  const full = tool.kind === "thread mill full";
  if (tool.neckDiameter !== undefined) {
    const gap = neckClearance(start, e, tool.neckDiameter, kind);
    work.step("neckGap", gap, {
      side: sizes.internal ? "inside" : "outside",
      thread: sizes.internal && tool.diameter! <= start ? sizes.thread.designation : undefined,
      hole: start,
      cutter: tool.diameter!,
      neck: tool.neckDiameter,
      flat: tool.tipFlat!,
    });
    work.set({ neckGap: gap });
    if (!full && gap <= 0) work.find("neck-rubs", { value: gap, limit: 0 });
    else if (!full && under(gap, NECK_ROOM)) work.find("neck-tight", { value: gap, limit: NECK_ROOM });
    const height = (tool.diameter! - tool.neckDiameter) / 2;
    if (!full && under(height, fullDepth)) work.find("profile-shallow", { value: height, limit: fullDepth });
  }
  if (row.depth === undefined) return;
  const tipExtra = tool.tipToProfile ?? 0;
  const reach = tool.neckLength ?? tool.cuttingLength;
  const needed = row.depth + tipExtra;
  if (reach !== undefined && under(reach, needed)) work.find("neck-short", { value: reach, limit: needed });
  if (row.holeDepth !== undefined && !row.through && under(row.holeDepth, needed))
    work.find("hole-too-shallow", { value: row.holeDepth, limit: needed });
}

/** Turns per level and levels: one turn for a full-profile cutter that covers the depth, else one per pitch and one more. */
export function turnsOf(tool: Tool, pitch: number, depth: number): { turns: number; levels: number; profiles: number } {
  if (tool.kind === "thread mill full") {
    const covered = tool.cuttingLength ?? depth;
    return {
      turns: 1,
      levels: Math.max(1, Math.ceil(depth / covered - 1e-9)),
      profiles: Math.max(1, Math.round(Math.min(depth, covered) / pitch)),
    };
  }
  return { turns: depth / pitch + 1, levels: 1, profiles: 1 };
}

/** Where the helix starts and ends, from the face; upwards or downwards as the path runs. */
export function helixEnds({ work }: Job, { sizes, tool }: Geometry, depth: number, up: boolean): void {
  const { turns } = turnsOf(tool, sizes.pitch, depth);
  const low = -depth;
  const high = low + turns * sizes.pitch;
  work.set({ startZ: up ? low : high, endZ: up ? high : low });
  work.step("turns", turns, { full: tool.kind === "thread mill full" });
  work.step("startZ", up ? low : high);
  if (tool.tipToProfile) work.step("tipZ", low - tool.tipToProfile);
}
