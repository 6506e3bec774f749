/** Where a thread mill runs and what it leaves: path, reach, ends of the helix. */

import type { Tool } from "../../table/read.ts";
import { neckClearance } from "../../thread/fit.ts";
import { plainPathRadius, tipDiameter } from "../../thread/path.ts";
import { sweptPathRadius, widestTipFlat } from "../../thread/sweep.ts";
import { NECK_ROOM } from "./choices.ts";
import { attempt, type Job } from "./job.ts";
import type { ThreadSizes } from "./thread-sizes.ts";

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

export const isThreadMill = (tool: Tool) => tool.kind === "thread mill single" || tool.kind === "thread mill full";

/** Path of the cutter and what it leaves, with everything that cannot work as a reason. */
export function geometryOf({ work, row }: Job, sizes: ThreadSizes, start: number, tool: Tool): Geometry | undefined {
  const { thread, internal, pitch } = sizes;
  const kind = internal ? "internal" : "external";
  const { diameter, tipFlat: flat } = tool;
  if (!isThreadMill(tool) && tool.kind !== undefined) {
    work.reason(
      "stop",
      "tool-kind",
      `${tool.tool} is a ${tool.kind}; a thread mill is wanted`,
      "name a thread mill, or leave Tool blank",
    );
    return undefined;
  }
  if (diameter === undefined || flat === undefined) {
    work.reason(
      "stop",
      "tool-incomplete",
      `${tool.tool} has no ${diameter === undefined ? "Diameter" : "Tip flat"} in the list`,
      "fill it in: the path cannot be known without it",
    );
    return undefined;
  }
  const profileAngle = tool.profileAngle ?? thread.profileAngle;
  if (profileAngle !== thread.profileAngle) {
    work.reason(
      "stop",
      "profile-angle",
      `the cutter's profile is ${profileAngle}°, the thread's ${thread.profileAngle}°`,
      "take a cutter with the thread's profile",
    );
    return undefined;
  }
  if (tool.kind === "thread mill full" && tool.pitch !== undefined && Math.abs(tool.pitch - pitch) > 1e-4 * pitch) {
    work.reason(
      "stop",
      "pitch-differs",
      `the full-profile cutter's pitch is ${work.say(tool.pitch)}, the thread's ${work.say(pitch)}`,
      "take a cutter of the thread's pitch, or a single-profile one",
      { value: tool.pitch, limit: pitch, dimension: "length" },
    );
    return undefined;
  }
  if (internal && diameter >= start) {
    work.reason(
      "stop",
      "cutter-too-large",
      `the cutter ${work.say(diameter)} does not go into the hole ${work.say(start)}`,
      "take a smaller cutter",
      { value: diameter, limit: start, dimension: "length" },
    );
  }
  const wanted = (sizes.pitchMin + sizes.pitchMax) / 2;
  const cutter = { cutterDiameter: diameter, tipFlat: flat, profileAngle, lead: pitch };
  const path = attempt(work, "no-path", "take a smaller cutter or one with a narrower tip flat", () => ({
    plain: plainPathRadius(wanted, pitch, diameter, flat, profileAngle, kind),
    swept: sweptPathRadius(cutter, pitch, wanted, kind),
  }));
  if (!path) return undefined;
  const e = path.swept;
  const tip = tipDiameter(e, diameter, kind);
  const threadArgs = [thread.designation, [diameter, "length"], [flat, "length"], work.units] as const;
  STEPS: work.step(
    "sweep",
    "pitch diameter the helical sweep alone would change",
    2 * (path.plain - e),
    "path radius without and with the sweep, twice the difference",
    "DERIVED",
    { dimension: "length" },
  );
  STEPS: work.step(
    "pathRadius",
    "path radius of the cutter's centre",
    e,
    "tip at D2/2 + (P/4 − f/2)·√3 less Dc/2, corrected for the helical sweep",
    "DERIVED",
    { dimension: "length", cell: work.formula("THREADPATH", ...threadArgs) },
  );
  STEPS: work.step(
    internal ? "majorDiameter" : "minorDiameter",
    internal ? "major diameter left" : "minor diameter left",
    tip,
    internal ? "2·(path radius + Dc/2)" : "2·(path radius − Dc/2)",
    "DERIVED",
    { dimension: "length" },
  );
  work.set({ pathRadius: e, majorDiameter: internal ? tip : null });
  const root = internal ? sizes.major : sizes.minorMin;
  if (internal ? tip < root * 0.9999999 : tip > root * 1.0000001) {
    const would = widestTipFlat(cutter, pitch, wanted, root, kind);
    work.reason(
      "stop",
      "flat-too-wide",
      `the tip flat ${work.say(flat)} leaves the ${internal ? "major diameter at" : "minor diameter at"} ${work.say(tip)}, ${internal ? "under" : "over"} the basic ${work.say(root)}: the GO gauge will not enter`,
      would === null ? "this cutter cannot: take a smaller one" : `a tip flat of at most ${work.say(would)} would do`,
      { value: tip, limit: root, dimension: "length" },
    );
  }
  const fullDepth = (internal ? tip - start : start - tip) / 2;
  if (fullDepth <= 0) {
    work.reason(
      "stop",
      "no-depth",
      `the cutter does not reach the wall: tip at ${work.say(tip)}, wall at ${work.say(start)}`,
      "correct the start diameter or the cutter",
      { value: tip, limit: start, dimension: "length" },
    );
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
    STEPS: work.step(
      "neckGap",
      "gap between neck and wall",
      gap,
      sizes.internal ? "hole/2 − path radius − neck/2" : "path radius − neck/2 − blank/2",
      "DERIVED",
      {
        dimension: "length",
        cell:
          sizes.internal && tool.diameter! <= start
            ? work.formula(
                "NECKCLEARANCE",
                sizes.thread.designation,
                [start, "length"],
                [tool.diameter!, "length"],
                [tool.neckDiameter, "length"],
                [tool.tipFlat!, "length"],
                work.units,
              )
            : undefined,
      },
    );
    work.set({ neckGap: gap });
    if (!full && gap <= 0) {
      work.reason(
        "stop",
        "neck-rubs",
        `the neck rubs: it overlaps the wall by ${work.say(-gap)}`,
        "take a cutter with a thinner neck or a taller profile",
        { value: gap, limit: 0, dimension: "length" },
      );
    } else if (!full && gap < NECK_ROOM) {
      work.reason(
        "check",
        "neck-tight",
        `only ${work.say(gap)} is left between neck and wall; chips want ${work.say(NECK_ROOM)}`,
        "take a thinner neck, or blow the chips out",
        { value: gap, limit: NECK_ROOM, dimension: "length" },
      );
    }
    const height = (tool.diameter! - tool.neckDiameter) / 2;
    if (!full && height < fullDepth) {
      work.reason(
        "stop",
        "profile-shallow",
        `the cutter's profile is ${work.say(height)} high; the thread wants ${work.say(fullDepth)}`,
        "take a cutter with a taller profile",
        { value: height, limit: fullDepth, dimension: "length" },
      );
    }
  }
  if (row.depth === undefined) return;
  const tipExtra = tool.tipToProfile ?? 0;
  const reach = tool.neckLength ?? tool.cuttingLength;
  const needed = row.depth + tipExtra;
  if (reach !== undefined && reach < needed) {
    work.reason(
      "stop",
      "neck-short",
      `the cutter reaches ${work.say(reach)}; the thread and its tip want ${work.say(needed)}`,
      "take a longer neck",
      { value: reach, limit: needed, dimension: "length" },
    );
  }
  if (row.holeDepth !== undefined && row.through !== true && row.holeDepth < needed) {
    work.reason(
      "stop",
      "hole-too-shallow",
      `the hole is ${work.say(row.holeDepth)} deep; the thread and the cutter's tip want ${work.say(needed)}`,
      "drill deeper, or thread less deep",
      { value: row.holeDepth, limit: needed, dimension: "length" },
    );
  }
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

export function helixEnds({ work }: Job, { sizes, tool }: Geometry, depth: number): void {
  const { turns } = turnsOf(tool, sizes.pitch, depth);
  const low = -depth;
  const high = low + turns * sizes.pitch;
  const up = String(work.results.direction).startsWith("bottom up");
  work.set({ startZ: up ? low : high, endZ: up ? high : low });
  STEPS: work.step(
    "turns",
    "turns of the helix",
    turns,
    tool.kind === "thread mill full" ? "one turn, all profiles cut at once" : "depth / pitch + 1",
    "COMMON",
  );
  STEPS: work.step(
    "startZ",
    "helix starts at (profile's middle, 0 = face)",
    up ? low : high,
    "the profile's middle reaches the thread's full depth",
    "COMMON",
    { dimension: "length" },
  );
  if (tool.tipToProfile)
    STEPS: work.step(
      "tipZ",
      "tool tip at the deepest place",
      low - tool.tipToProfile,
      "depth and tip to profile",
      "COMMON",
      {
        dimension: "length",
      },
    );
}
