/** Thread milling, internal and external, single- and full-profile: from the designation to passes, size and time. */
import { nearestDrill } from "../drill/sizes.ts";
import { nearestDrillInside, threadPercent } from "../drill/tapdrill.ts";
import type { Tool } from "../table/read.ts";
import { fitChecks } from "../thread/fit.ts";
import { drillNameOf, drillOversize, PERCENT_LIMIT, requireCells } from "./shared/choices.ts";
import type { Done, Job } from "./shared/job.ts";
import { cutThread } from "./shared/thread-cut.ts";
import { geometryOf, helixEnds, isThreadMill } from "./shared/thread-geometry.ts";
import { readThread, type ThreadSizes } from "./shared/thread-sizes.ts";

export function planThreadMill(job: Job): Done {
  const { work, row } = job;
  const named = requireCells(work, { Thread: row.thread });
  const deep = requireCells(work, { Depth: row.depth });
  if (!named) return {};
  const sizes = readThread(job);
  if (!sizes) return {};
  work.set({ direction: threadDirection(job, sizes), sizeMin: sizes.pitchMin, sizeMax: sizes.pitchMax });
  const start = startDiameter(job, sizes);
  const tool = job.tool ?? (row.tool === undefined ? proposeTool(job, sizes, start) : undefined);
  if (!tool) return {};
  work.set({ tool: tool.tool });
  const geometry = geometryOf(job, sizes, start, tool);
  if (!geometry) return { tool };
  if (row.depth !== undefined) helixEnds(job, geometry, row.depth);
  return { tool, ...cutThread(job, geometry, deep) };
}

/** Which way the path runs for this hand and way with a clockwise spindle. */
function threadDirection({ row }: Job, { thread, internal }: ThreadSizes): string {
  const right = (row.hand ?? thread.hand) === "right";
  const climb = (row.way ?? "climb") === "climb";
  const counter = internal === climb;
  return `${counter === right ? "bottom up" : "top down"}, ${counter ? "counter-clockwise" : "clockwise"}`;
}

function startDiameter({ work, row }: Job, sizes: ThreadSizes): number {
  const { thread, internal, minorMin, minorMax } = sizes;
  if (!internal) {
    const blank = row.startDiameter || sizes.majorMax;
    work.set({ startDiameter: blank });
    if (blank < sizes.majorMin || blank > sizes.majorMax * 1.0000001) {
      work.reason(
        "stop",
        "blank-diameter",
        `the blank ${work.say(blank)} is outside the thread's major diameter ${work.say(sizes.majorMin)} to ${work.say(sizes.majorMax)}`,
        "turn or mill it to size first",
        { value: blank, limit: sizes.majorMax, dimension: "length" },
      );
    }
    return blank;
  }
  const native = thread.native === "in" ? (["number", "letter", "fraction"] as const) : (["metric"] as const);
  let hole = row.startDiameter || undefined;
  // What stands in the row is the hole itself; a drill that the row chooses makes a hole larger than itself.
  let made = hole ?? 0;
  if (hole === undefined) {
    const oversize = row.drillOversize ?? drillOversize((minorMin + minorMax) / 2, "hss");
    const drill =
      nearestDrillInside(minorMin, minorMax, oversize, native) ??
      nearestDrill((minorMin + minorMax) / 2 - oversize, native);
    hole = drill.diameter;
    made = hole + oversize;
    STEPS: work.step(
      "startDiameter",
      "drill before the thread",
      hole,
      `nearest drill inside the minor limits less a drilling oversize of ${work.say(oversize)}`,
      "COMMON",
      { dimension: "length" },
    );
  }
  const percent = threadPercent(sizes.major, sizes.pitch, Math.min(hole, sizes.major), thread.profileAngle);
  work.set({ startDiameter: hole, drill: drillNameOf(hole, native) });
  STEPS: work.step("percent", "percent of thread", percent, "100·(D − d)/(2·0.6495·P)", "MH", {
    unit: "%",
    cell:
      hole <= sizes.major ? work.formula("THREADPERCENT", thread.designation, [hole, "length"], work.units) : undefined,
  });
  if (made < minorMin * 0.9999999) {
    work.reason(
      "stop",
      "hole-under-minor",
      `the hole ${work.say(made)} is under the least minor diameter ${work.say(minorMin)} (${percent.toFixed(0)} % of thread${percent > PERCENT_LIMIT ? ", more than the basic profile has" : ""})`,
      "drill or bore it larger first",
      { value: made, limit: minorMin, dimension: "length" },
    );
  } else if (made > minorMax * 1.0000001) {
    work.reason(
      "stop",
      "hole-over-minor",
      `the hole ${work.say(made)} is over the largest minor diameter ${work.say(minorMax)}: only ${percent.toFixed(0)} % of thread is left`,
      "take a smaller drill: one drill does not serve every pitch of a diameter",
      { value: made, limit: minorMax, dimension: "length" },
    );
  }
  return hole;
}

/** The stiffest listed cutter that can make the thread; the row says that it is a proposal, or why none fits. */
function proposeTool({ work, row, lists, material }: Job, sizes: ThreadSizes, start: number): Tool | undefined {
  const depth = row.depth ?? sizes.pitch;
  let best: { tool: Tool; score: number } | undefined;
  const misses = new Map<string, number>();
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
      if (!best || score > best.score) best = { tool, score };
    }
  }
  if (best) {
    work.reason(
      "ok",
      "tool-proposed",
      `proposed: ${best.tool.tool}, the stiffest listed cutter that fits ${sizes.thread.designation}`,
      "name it in the row to keep it",
    );
    return best.tool;
  }
  const list = [...misses].sort((a, b) => b[1] - a[1]).map(([why, n]) => `${n} × ${why}`);
  work.reason(
    "stop",
    "no-tool-fits",
    `no listed thread mill can make ${sizes.thread.designation} in ${material?.material ?? "this material"}${list.length > 0 ? ` (${list.join(", ")})` : ": the list has none"}`,
    "add a cutter to the list Tools",
  );
  return undefined;
}

/** The first thing that keeps a listed cutter from making a thread, in two or three words. */
function whyNot(tool: Tool, sizes: ThreadSizes, start: number, depth: number): string | undefined {
  const { pitch, thread } = sizes;
  const kind = sizes.internal ? "internal" : "external";
  if (tool.profileAngle !== undefined && tool.profileAngle !== thread.profileAngle) return "other profile angle";
  if (tool.kind === "thread mill full" && (tool.pitch === undefined || Math.abs(tool.pitch - pitch) > 1e-4 * pitch))
    return "other pitch";
  if (sizes.internal && tool.diameter! >= start) return "too large for the hole";
  if ((tool.neckLength ?? tool.cuttingLength ?? 0) < depth + (tool.tipToProfile ?? 0)) return "neck too short";
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
    return (
      failed &&
      {
        entry: "too large for the hole",
        "tip flat": "tip flat too wide",
        "root diameter": "tip flat too wide",
        "profile height": "profile too shallow",
        "neck clearance": "neck rubs",
        "neck length": "neck too short",
        crest: "crest cut away",
      }[failed.key]
    );
  } catch {
    return "does not fit";
  }
}
