/** Thread milling, internal and external, single- and full-profile: from the designation to passes, size and time. */
import type { Misfit } from "../findings.ts";
import type { Tool } from "../table/lists.ts";
import type { Direction } from "../table/results.ts";
import { fitChecks } from "../thread/fit.ts";
import type { Operation } from "./operation.ts";
import { holeBefore } from "./shared/hole.ts";
import { type Done, type Job, requireCells } from "./shared/job.ts";
import { judgeReach } from "./shared/reach.ts";
import { over, under } from "./shared/slack.ts";
import { cutThread } from "./shared/thread/cut.ts";
import { geometryOf, helixEnds, isThreadMill } from "./shared/thread/geometry.ts";
import { readThread, type ThreadSizes } from "./shared/thread/sizes.ts";

export const threadMill: Operation = {
  needs: () => ["thread", "depth"],
  uses: [
    ...(["tool", "startDiameter", "through", "hand", "way", "passes", "springPasses", "stickOut"] as const),
    ...(["feedPerTooth", "holeDepth", "drillOversize", "wearFactor", "measured", "wearValue"] as const),
  ],
  tools: ["thread mill single", "thread mill full"],
  levers: [
    ...(["wearValue", "passes", "springPasses", "feedPerTooth", "surfaceSpeed", "stickOut", "tool"] as const),
    ...(["startDiameter", "holeDepth"] as const),
  ],
  plan,
  candidates(job) {
    const sizes = readThread(job);
    if (!sizes) return { tools: [], for: "thread" };
    const { tools } = cutters(job, sizes, startDiameter(job, sizes));
    return { tools, for: "thread", thread: sizes.thread.designation };
  },
};

function plan(job: Job): Done {
  const { work, row } = job;
  // Without a depth the thread itself can still be worked out.
  const deep = requireCells(job, threadMill.needs(row));
  const sizes = readThread(job);
  if (!sizes) return {};
  const direction = threadDirection(job, sizes);
  work.set({ direction, sizeMin: sizes.pitchMin, sizeMax: sizes.pitchMax });
  const start = startDiameter(job, sizes);
  const { tool } = job;
  if (!tool && row.tool === undefined) noCutter(job, sizes, start);
  if (!tool) return {};
  work.set({ tool: tool.tool });
  const geometry = geometryOf(job, sizes, start, tool);
  if (!geometry) return { tool };
  if (row.depth !== undefined) {
    helixEnds(job, geometry, row.depth, direction.axis === "up");
    const { pathRadius, side } = geometry;
    const room = side === "inside" ? start - 2 * pathRadius : 2 * pathRadius - start;
    judgeReach(job, tool, row.depth + (tool.tipToProfile ?? 0), room, true);
  }
  return { tool, ...cutThread(job, geometry, deep) };
}

/** Which way the path runs for this hand and way with a clockwise spindle. */
function threadDirection({ row }: Job, { thread, internal }: ThreadSizes): Extract<Direction, { path: "circle" }> {
  const right = (row.hand ?? thread.hand) === "right";
  const climb = (row.way ?? "climb") === "climb";
  const counter = internal === climb;
  return {
    path: "circle",
    axis: counter === right ? "up" : "down",
    turn: counter ? "counter-clockwise" : "clockwise",
  };
}

function startDiameter(job: Job, sizes: ThreadSizes): number {
  const { work, row } = job;
  const { internal, majorMin: low, majorMax: limit } = sizes;
  if (internal) return holeBefore(job, sizes);
  const blank = row.startDiameter || limit;
  work.set({ startDiameter: blank });
  if (under(blank, low) || over(blank, limit)) work.find("blank-diameter", { value: blank, limit, low });
  return blank;
}

/** Listed cutters that can make the thread, stiffest first, and what keeps the others out. */
function cutters({ row, lists }: Job, sizes: ThreadSizes, start: number) {
  const depth = row.depth ?? sizes.pitch;
  const able: { tool: Tool; score: number }[] = [];
  const misses = new Map<Misfit, number>();
  for (const tool of lists.tools.items) {
    if (!isThreadMill(tool) || tool.diameter === undefined || tool.tipFlat === undefined) continue;
    const why = whyNot(tool, sizes, start, depth);
    if (why) misses.set(why, (misses.get(why) ?? 0) + 1);
    else {
      const neck = tool.neckDiameter ?? tool.diameter;
      const reach = tool.neckLength ?? tool.cuttingLength ?? depth;
      // Stiffness of the neck; a full-profile cutter saves turns, an HSS one bends three times as much.
      const score =
        (neck ** 4 / reach ** 3) * (tool.substrate === "hss" ? 0.35 : 1) * (tool.kind === "thread mill full" ? 1.5 : 1);
      able.push({ tool, score });
    }
  }
  return { tools: able.sort((a, b) => b.score - a.score).map((c) => c.tool), misses };
}

function noCutter(job: Job, sizes: ThreadSizes, start: number): void {
  job.work.find("no-tool-fits", {
    operation: "thread mill",
    thread: sizes.thread.designation,
    material: job.material?.material,
    misses: [...cutters(job, sizes, start).misses].sort((a, b) => b[1] - a[1]),
  });
}

/** The first thing that keeps a listed cutter from making a thread. */
function whyNot(tool: Tool, sizes: ThreadSizes, start: number, depth: number): Misfit | undefined {
  const { pitch, thread } = sizes;
  const kind = sizes.internal ? "internal" : "external";
  if (tool.profileAngle !== undefined && tool.profileAngle !== thread.profileAngle) return "profile angle";
  if (tool.kind === "thread mill full" && (tool.pitch === undefined || Math.abs(tool.pitch - pitch) > 1e-4 * pitch))
    return "pitch";
  if (sizes.internal && tool.diameter! >= start) return "too large";
  if ((tool.neckLength ?? tool.cuttingLength ?? 0) < depth + (tool.tipToProfile ?? 0)) return "neck short";
  try {
    const { checks } = fitChecks({
      kind,
      pitch,
      lead: pitch,
      profileAngle: thread.profileAngle,
      pitchDiameter: (sizes.pitchMin + sizes.pitchMax) / 2,
      rootDiameter: sizes.internal ? sizes.major : sizes.minorMin,
      wallDiameter: start,
      depth,
      cutterDiameter: tool.diameter!,
      tipFlat: tool.tipFlat!,
      neckDiameter: tool.neckDiameter ?? tool.diameter! * 0.6,
      neckLength: tool.neckLength ?? tool.cuttingLength ?? depth,
    });
    const failed = checks.find((c) => !c.passes && !(tool.neckDiameter === undefined && c.key === "profile height"));
    return failed && MISFIT[failed.key];
  } catch {
    return "does not fit";
  }
}

const MISFIT = {
  entry: "too large",
  "tip flat": "tip flat",
  "root diameter": "tip flat",
  "profile height": "profile height",
  "neck clearance": "neck rubs",
  "neck length": "neck short",
  crest: "crest",
} as const;
