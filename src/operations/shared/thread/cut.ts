/** The cut of a thread: speed, feed, forces, bending, time. */
import { arcFeed } from "../../../mill/arc.ts";
import { threadParts, threadWidth } from "../../../mill/chatter-rule.ts";
import type { WallBand } from "../../../mill/threadbias.ts";
import { arcFeedLimit } from "../../../time.ts";
import { deflectionStep, type ToolBeam, toolBeam } from "../beam.ts";
import { type ChatterPass, chatters, judgeChatter } from "../chatter.ts";
import { CLEARANCE, SPEED_PLACE, USUAL_THREAD_FEED } from "../choices.ts";
import { judgeThickChip, programFeed } from "../feed.ts";
import { forceOf } from "../force.ts";
import type { Done, Job } from "../job.ts";
import { judgeChip, judgePower, judgeStress, leastChipOf } from "../limits.ts";
import { featureTime } from "../motion.ts";
import { judgeRunout } from "../runout.ts";
import { judgeSize } from "../size.ts";
import { chooseSpeed, listedFeed, THREAD_SPEED, threadSpeedAssumed } from "../speed.ts";
import { type Geometry, turnsOf } from "./geometry.ts";
import { type Attempt, choosePasses } from "./passes.ts";

export function cutThread(job: Job, g: Geometry, deep: boolean): Omit<Done, "tool"> {
  const { work, row, material, machine } = job;
  const { sizes, tool, diameter, side, tip } = g;
  const speed = chooseSpeed(job, tool, diameter, SPEED_PLACE.mill, { own: "thread mill" });
  const listed = (material && listedFeed(material, diameter)) ?? row.feedPerTooth;
  if (material && material.threadFeed === undefined && row.feedPerTooth === undefined)
    work.find("list-thread-feed-blank", { material: material.material, percent: USUAL_THREAD_FEED });
  if (material && speed && row.surfaceSpeed === undefined && threadSpeedAssumed(material, tool))
    work.find("list-thread-speed-blank", { material: material.material, factor: THREAD_SPEED });
  const teeth = tool.teeth;
  if (listed === undefined && material) work.find("no-feed", { material: material.material });
  if (teeth === undefined) {
    work.find("tool-incomplete", { tool: tool.tool, missing: "teeth" });
    return {};
  }
  if (!speed || listed === undefined || !(side === "outside" || diameter < g.start)) return {};
  const beam = toolBeam(job, tool);
  const full = tool.kind === "thread mill full";
  const loadFromTip = full ? Math.min(row.depth ?? 0, tool.cuttingLength ?? 0) / 2 : (tool.tipToProfile ?? 0);
  const swung = { teeth, surfaceSpeed: speed.surfaceSpeed };
  let calm: Attempt | undefined; // the last one that was found quiet
  const quiet = (a: Attempt) => {
    if (beam && chatters(job, beam, tool, chatterPasses(job, g, a, { ...swung, centreFeed: a.centreFeed })))
      return false;
    calm = a;
    return true;
  };
  const chosen = choosePasses({ job, g, listed, teeth, beam, loadFromTip, quiet });
  const arcLimit =
    machine?.acceleration === undefined ? undefined : arcFeedLimit(g.pathRadius, machine.acceleration, sizes.pitch);
  work.step("radialDepth", chosen.radialDepth, { side });
  const { feed, share } = programFeed(job, {
    ...chosen,
    listed,
    edgeAngle: 90,
    rpm: speed.rpm,
    teeth,
    diameter,
    arc: { diameter: tip, side },
    arcLimit,
  });
  const flankChip = share * chosen.flankChip;
  work.step("flankChip", flankChip);
  work.step("depths", chosen.depths, {
    thread: sizes.thread.designation,
    start: g.start,
    flat: g.flat,
    passes: chosen.passes,
    springs: chosen.springs,
    cutter: diameter,
  });
  work.set({ passes: chosen.passes, springPasses: chosen.springs, depths: chosen.depths });
  judgeFeed(job, g, chosen, listed, share);
  judgeChip(job, flankChip, tool, true);
  const sine = chosen.flankChip / chosen.chip;
  judgeRunout(job, {
    chip: share * chosen.chip,
    listed,
    runout: tool.runout,
    teeth,
    leastChip: leastChipOf(job, tool) / sine,
  });
  if (beam) {
    // At its own feed a way that was found quiet is.
    const known = share === 1 && calm === chosen;
    const swinging = { ...swung, centreFeed: share * chosen.centreFeed };
    judgeChatter(job, beam, tool, known ? [] : chatterPasses(job, g, chosen, swinging));
  }
  work.sketch = {
    kind: "thread mill",
    profileAngle: sizes.thread.profileAngle,
    inside: sizes.internal,
    holeDiameter: tip,
    startDiameter: g.start,
    depth: row.depth,
    through: row.through,
    pathRadius: g.pathRadius,
    cutterDiameter: diameter,
    tipFlat: g.flat,
    pitch: sizes.pitch,
    depths: chosen.depths,
    tool: beam?.parts.map((p) => ({ length: p.length, diameter: p.holderDiameter, part: p.part })),
    deflection: beam ? beam.flexibility(loadFromTip) * chosen.peak : undefined,
  };
  if (forceOf(job)) forces(job, g, chosen, beam, loadFromTip, speed.rpm);
  else work.find("no-kc", { bending: true });
  return deep ? timing(job, g, chosen, feed, speed.listSpeed) : {};
}

/** Passes as chatter sees them: every profile that cuts, each by what its edge really engages. */
function chatterPasses(
  { row }: Job,
  g: Geometry,
  { depths, passes, radialDepth }: Pick<Attempt, "depths" | "passes" | "radialDepth">,
  cut: { readonly centreFeed: number; readonly teeth: number; readonly surfaceSpeed: number },
): ChatterPass[] {
  const { sizes, tool, diameter, side } = g;
  const { profiles } = turnsOf(tool, sizes.pitch, row.depth ?? sizes.pitch);
  return depths.slice(0, passes).map((endDepth, i) => {
    const startDepth = i === 0 ? 0 : depths[i - 1]!;
    return {
      centreFeed: cut.centreFeed,
      teeth: cut.teeth,
      surfaceSpeed: cut.surfaceSpeed,
      radialDepth,
      profiles,
      axialDepth: profiles * threadWidth(sizes.pitch, endDepth),
      diameter,
      edgeAngle: 90,
      parts: (kc11, exponent) =>
        threadParts({
          holeDiameter: g.start,
          side,
          cutterDiameter: diameter,
          pitch: sizes.pitch,
          halfAngle: sizes.thread.profileAngle / 2,
          startDepth,
          endDepth,
          feedPerTooth: cut.centreFeed,
          kc11,
          exponent,
        }),
    };
  });
}

/** The feed by the chip that it really makes: a typed one that is too high, one that the tool's strength holds down. */
function judgeFeed(job: Job, g: Geometry, chosen: Attempt, listed: number, share: number): void {
  const real = share * chosen.chip;
  judgeThickChip(job, real, listed, (chosen.edgeFeed * listed) / chosen.chip);
  if (chosen.by === "strength") {
    const free = arcFeed(1, g.tip, g.diameter, g.side);
    job.work.find("feed-by-strength", { value: chosen.edgeFeed, centre: chosen.edgeFeed * free });
  }
}

function forces(
  job: Job,
  g: Geometry,
  chosen: Attempt,
  beam: ToolBeam | undefined,
  loadFromTip: number,
  rpm: number,
): void {
  const { work } = job;
  work.set({ force: chosen.tangential });
  work.step("force", chosen.tangential, { thread: true });
  judgePower(job, chosen.torque, rpm);
  const walls = chosen.walls();
  if (!beam || !walls) return;
  work.set({ deflection: beam.flexibility(loadFromTip) * chosen.peak });
  deflectionStep(job, beam, loadFromTip, chosen.peak, true);
  judgeStress(job, beam, g.tool, chosen.peak, chosen.torque, loadFromTip, chosen.chip);
  judgeThread(job, g, chosen, walls);
}

/** Pitch diameter that comes out, as a band; a groove too shallow to have one is no thread. */
function judgeThread(job: Job, g: Geometry, chosen: Attempt, { deepest, shallowest }: WallBand): void {
  const { work, row } = job;
  const { internal, pitchMin: low, pitchMax: high } = g.sizes;
  const sign = internal ? 1 : -1;
  const middle = (low + high) / 2;
  const sizeAt = (wall: number) => middle + sign * 2 * (wall - g.fullDepth);
  const ends = [sizeAt(deepest.at(-1)!), sizeAt(shallowest.at(-1)!)] as const;
  const size = (ends[0] + ends[1]) / 2;
  work.step(
    "left",
    deepest.map((d, i) => sizeAt((d + shallowest[i]!) / 2)),
  );
  if (row.measured === undefined && sign * (size - g.start) <= 0) {
    work.set({ sizeMin: low, sizeMax: high });
    work.find("no-thread", { value: size, limit: g.start });
    return;
  }
  judgeSize(job, {
    low,
    high,
    of: "pitch diameter",
    inside: internal,
    walls: 2,
    programmed: middle - sign * 2 * (row.wearValue ?? 0),
    ends,
    start: chosen.start,
  });
}

function timing(job: Job, g: Geometry, chosen: Attempt, feed: number, listSpeed: number): Omit<Done, "tool"> {
  const depth = job.row.depth!;
  const { turns, levels } = turnsOf(g.tool, g.sizes.pitch, depth);
  const sign = g.side === "inside" ? 1 : -1;
  return featureTime(job, listSpeed, (motion) => {
    for (const gone of chosen.depths) {
      const radius = g.pathRadius - sign * (g.fullDepth - gone);
      motion.repeat(levels, () => {
        motion.rapid(depth + CLEARANCE);
        motion.circle(Math.max(radius, 1e-3), turns, feed, g.sizes.pitch);
        motion.rapid(depth + CLEARANCE);
      });
    }
    job.work.step("timeEach", motion.total(), { passes: chosen.depths.length, turns });
  });
}
