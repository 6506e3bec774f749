/** Tapping: the hole, the lead, torque against tap and spindle. The tap's own pitch is the feed. */

import type { Tool } from "../table/lists.ts";
import { chamferThreads, tapBreakingTorque, tappedHoleDepth, tapTorque } from "../thread/tapping.ts";
import type { Operation } from "./operation.ts";
import { CLEARANCE } from "./shared/choices.ts";
import { forceOf } from "./shared/force.ts";
import { holeBefore } from "./shared/hole.ts";
import { holeSpeed, SHARE_OF_DRILL } from "./shared/hole-tool.ts";
import { type Done, type Job, ofOtherKind, requireCells } from "./shared/job.ts";
import { judgeBreaking, judgeFeed, judgePower } from "./shared/limits.ts";
import { breakthroughOf, featureTime, type Motion } from "./shared/motion.ts";
import { judgeReach } from "./shared/reach.ts";
import { over, under } from "./shared/slack.ts";
import { readInternal, type ThreadSizes } from "./shared/thread/sizes.ts";

export const tap: Operation = {
  needs: () => ["thread", "depth"],
  uses: ["tool", "startDiameter", "through", "hand", "holeDepth", "stickOut", "drillOversize", "wearFactor"],
  tools: ["tap"],
  levers: ["surfaceSpeed", "startDiameter", "tool"],
  plan,
  candidates(job) {
    const sizes = readInternal(job);
    const tools = sizes ? job.lists.tools.items.filter((t) => t.kind === "tap" && makes(t, sizes)) : [];
    return { tools, for: "tap" };
  },
};

/** Tap that is assumed where none is listed: three flutes, plug chamfer, high-speed steel (rupture strength as in the starting list). */
const ASSUMED = { substrate: "hss", teeth: 3, chamfer: chamferThreads("plug"), ruptureStrength: 3500 } as const;
/** Breaking torque over what a tap is asked for (judgement). */
export const TAP_SAFETY = 1.5;
/** Depth in diameters from which chips fill a tap's flutes (common practice: 2 to 3). */
const DEEP = 3;
/** Sizes and pitches closer than this share are the same: lists hold inch sizes with four digits. */
const SAME = 2e-3;

const same = (value: number, wanted: number): boolean => Math.abs(value - wanted) <= SAME * wanted;

/** Whether a listed tap has the thread's size and pitch; one without a diameter has none. */
const makes = ({ diameter = Number.NaN, pitch }: Tool, sizes: ThreadSizes): boolean =>
  same(diameter, sizes.major) && (pitch === undefined || same(pitch, sizes.pitch));

function plan(job: Job): Done {
  const { work, row, tool } = job;
  const sizes = readInternal(job);
  const complete = requireCells(job, tap.needs(row));
  if (!sizes) return {};
  work.set({ sizeMin: sizes.pitchMin, sizeMax: sizes.pitchMax, tool: tool?.tool ?? null });
  if (!tool && row.tool === undefined) work.find("tool-assumed", { operation: "tap" });
  if (tool && !suits(job, tool, sizes)) return { tool };
  const own = { ...ASSUMED, ...(tool && given(tool)) };
  const start = holeBefore(job, sizes);
  const speed = holeSpeed(job, own, sizes.major, SHARE_OF_DRILL.tap);
  if (!speed) return { tool };
  const feed = judgeFeed(job, speed.rpm * sizes.pitch);
  work.step("tableFeed", feed, { perTurn: "pitch" });
  work.set({ tableFeed: feed, feedPerTooth: null });
  load(job, sizes, start, own, speed.rpm);
  if (!complete) return { tool };
  const depth = row.depth!;
  lead(job, sizes, own.chamfer);
  if (over(depth, DEEP * sizes.major)) work.find("tap-deep", { value: depth, limit: DEEP * sizes.major, most: DEEP });
  const travel = depth + (row.through ? breakthroughOf(true) + own.chamfer * sizes.pitch : 0);
  if (tool) judgeReach(job, tool, travel, Math.min(start, sizes.minorMax));
  const moves = (motion: Motion) => motion.repeat(2, () => motion.feed(travel + CLEARANCE, feed));
  return { tool, ...featureTime(job, speed.surfaceSpeed, moves) };
}

/** What the list says of a tap, blanks left out. */
const given = ({ substrate, teeth, chamfer, ruptureStrength, maxRpm }: Tool) =>
  Object.fromEntries(
    Object.entries({ substrate, teeth, chamfer, ruptureStrength, maxRpm }).filter(([, v]) => v !== undefined),
  ) as Partial<Pick<Tool, "substrate" | "teeth" | "chamfer" | "ruptureStrength" | "maxRpm">>;

function suits({ work }: Job, tool: Tool, sizes: ThreadSizes): boolean {
  if (ofOtherKind(work, tool, "tap")) return false;
  if (tool.diameter !== undefined && !same(tool.diameter, sizes.major)) {
    work.find("tap-differs", {
      value: tool.diameter,
      limit: sizes.major,
      tool: tool.tool,
      thread: sizes.thread.designation,
    });
    return false;
  }
  if (tool.pitch !== undefined && !same(tool.pitch, sizes.pitch)) {
    work.find("pitch-differs", { value: tool.pitch, limit: sizes.pitch });
    return false;
  }
  return true;
}

interface OwnTap {
  readonly substrate: "carbide" | "hss";
  readonly teeth: number;
  readonly chamfer: number;
  readonly ruptureStrength: number;
}

function load(job: Job, sizes: ThreadSizes, hole: number, own: OwnTap, rpm: number): void {
  const { work } = job;
  const force = forceOf(job);
  if (!force) {
    work.find("no-kc", { bending: false });
    return;
  }
  if (hole >= sizes.major) return;
  const { kc11, exponent } = force;
  const cut = { kc11, exponent, flutes: own.teeth, chamferThreads: own.chamfer };
  const { major, pitch, thread } = sizes;
  const torque = tapTorque({ ...cut, major, pitch, profileAngle: thread.profileAngle, holeDiameter: hole });
  work.step("tapTorque", torque, { ...cut, thread: thread.designation, hole });
  judgePower(job, torque, rpm, true);
  const breaks = tapBreakingTorque(major, own.ruptureStrength, own.substrate === "carbide");
  work.step("breakingTorque", breaks, { safety: TAP_SAFETY });
  work.set({ stress: (TAP_SAFETY * torque) / breaks });
  judgeBreaking(work, ["torsion", "tap-torsion", "torque"], torque, breaks, TAP_SAFETY);
}

/** The chamfer must run out below the last full thread. */
function lead({ work, row }: Job, sizes: ThreadSizes, chamfer: number): void {
  const needed = tappedHoleDepth(row.depth!, sizes.pitch, chamfer, 0);
  work.step("tappedHole", needed, { depth: row.depth!, pitch: sizes.pitch, chamfer });
  if (row.through) return;
  if (row.holeDepth === undefined) work.find("tap-hole-depth", { needed, chamfer });
  else if (under(row.holeDepth, needed)) work.find("tap-bottoms", { value: row.holeDepth, limit: needed, chamfer });
}
