/** Thread milling, internal and external, single- and full-profile: from the designation to passes, size and time. */
import { type Drill, nearestDrill } from "../drill/sizes.ts";
import { nearestDrillInside, threadPercent } from "../drill/tapdrill.ts";
import { arcDepth, arcFeed } from "../mill/arc.ts";
import { bentPasses } from "../mill/bending.ts";
import { largestChip, thinnedFeed } from "../mill/chip.ts";
import { tableFeed } from "../mill/speed.ts";
import { threadMillForces } from "../mill/threadforce.ts";
import { fitChecks, neckClearance } from "../thread/fit.ts";
import { passDepths } from "../thread/passes.ts";
import { plainPathRadius, tipDiameter } from "../thread/path.ts";
import { sweptPathRadius, widestTipFlat } from "../thread/sweep.ts";
import { arcFeedLimit } from "../time.ts";
import {
  BENDING_SHARE,
  chooseFeed,
  chooseSpeed,
  drillOversize,
  edgeForce,
  NECK_ROOM,
  PERCENT_LIMIT,
  requireCells,
  SPEED_PLACE,
  STRESS_SAFETY,
  THINNING_LIMIT,
  UNCERTAINTY,
} from "./choices.ts";
import { attempt, type Done, type Job } from "./job.ts";
import { judgeChip, judgeFeed, judgePower, judgeSize, judgeStress } from "./judge.ts";
import { Motion, motionOf } from "./motion.ts";
import type { Tool } from "./read.ts";
import { readThread, type ThreadSizes } from "./thread-sizes.ts";
import { type ToolBeam, toolBeam, toolDeflectionCell } from "./tool-beam.ts";

/** Most passes and spring passes that a row chooses by itself. */
const MOST_PASSES = 6;
const MOST_SPRINGS = 3;

/** A thread-mill row as far as its geometry goes. */
interface Geometry {
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
  return { tool, ...cut(job, geometry, deep) };
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
  let drill: Drill | null = null;
  if (hole === undefined) {
    const oversize = drillOversize((minorMin + minorMax) / 2, "hss");
    drill =
      nearestDrillInside(minorMin, minorMax, oversize, native) ??
      nearestDrill((minorMin + minorMax) / 2 - oversize, native);
    hole = drill.diameter;
    work.step(
      "startDiameter",
      "drill before the thread",
      hole,
      `nearest drill inside the minor limits less a drilling oversize of ${work.say(oversize)}`,
      "COMMON",
      { dimension: "length" },
    );
  } else drill = nearestDrill(hole, native);
  const percent = threadPercent(sizes.major, sizes.pitch, Math.min(hole, sizes.major), thread.profileAngle);
  work.set({ startDiameter: hole, drill: Math.abs(drill.diameter - hole) < 0.011 ? drill.name : null });
  work.step("percent", "percent of thread", percent, "100·(D − d)/(2·0.6495·P)", "MH", {
    unit: "%",
    cell: work.formula("THREADPERCENT", thread.designation, [hole, "length"], work.units),
  });
  if (hole < minorMin * 0.9999999) {
    work.reason(
      "stop",
      "hole-under-minor",
      `the hole ${work.say(hole)} is under the least minor diameter ${work.say(minorMin)} (${percent.toFixed(0)} % of thread${percent > PERCENT_LIMIT ? ", more than the basic profile has" : ""})`,
      "drill or bore it larger first",
      { value: hole, limit: minorMin, dimension: "length" },
    );
  } else if (hole > minorMax * 1.0000001) {
    work.reason(
      "stop",
      "hole-over-minor",
      `the hole ${work.say(hole)} is over the largest minor diameter ${work.say(minorMax)}: only ${percent.toFixed(0)} % of thread is left`,
      "take a smaller drill: one drill does not serve every pitch of a diameter",
      { value: hole, limit: minorMax, dimension: "length" },
    );
  }
  return hole;
}

const isThreadMill = (tool: Tool) => tool.kind === "thread mill single" || tool.kind === "thread mill full";

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

/** Path of the cutter and what it leaves, with everything that cannot work as a reason. */
function geometryOf({ work, row }: Job, sizes: ThreadSizes, start: number, tool: Tool): Geometry | undefined {
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
  work.step(
    "sweep",
    "pitch diameter the helical sweep alone would change",
    2 * (path.plain - e),
    "path radius without and with the sweep, twice the difference",
    "DERIVED",
    { dimension: "length" },
  );
  work.step(
    "pathRadius",
    "path radius of the cutter's centre",
    e,
    "tip at D2/2 + (P/4 − f/2)·√3 less Dc/2, corrected for the helical sweep",
    "DERIVED",
    { dimension: "length", cell: work.formula("THREADPATH", ...threadArgs) },
  );
  work.step(
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
    work.step(
      "neckGap",
      "gap between neck and wall",
      gap,
      sizes.internal ? "hole/2 − path radius − neck/2" : "path radius − neck/2 − blank/2",
      "DERIVED",
      {
        dimension: "length",
        cell: sizes.internal
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
function turnsOf(tool: Tool, pitch: number, depth: number): { turns: number; levels: number; profiles: number } {
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

function helixEnds({ work }: Job, { sizes, tool }: Geometry, depth: number): void {
  const { turns } = turnsOf(tool, sizes.pitch, depth);
  const low = -depth;
  const high = low + turns * sizes.pitch;
  const up = String(work.results.direction).startsWith("bottom up");
  work.set({ startZ: up ? low : high, endZ: up ? high : low });
  work.step(
    "turns",
    "turns of the helix",
    turns,
    tool.kind === "thread mill full" ? "one turn, all profiles cut at once" : "depth / pitch + 1",
    "COMMON",
  );
  work.step(
    "startZ",
    "helix starts at (profile's middle, 0 = face)",
    up ? low : high,
    "the profile's middle reaches the thread's full depth",
    "COMMON",
    { dimension: "length" },
  );
  if (tool.tipToProfile)
    work.step("tipZ", "tool tip at the deepest place", low - tool.tipToProfile, "depth and tip to profile", "COMMON", {
      dimension: "length",
    });
}

/** One way of taking the thread out: so many passes and spring passes, with what follows from it. */
interface Attempt {
  readonly depths: readonly number[];
  readonly passes: number;
  readonly springs: number;
  readonly radialDepth: number;
  readonly edgeFeed: number;
  readonly centreFeed: number;
  readonly chip: number;
  readonly flankChip: number;
  readonly peak: number;
  readonly tangential: number;
  readonly torque: number;
  /** Change of the pitch diameter by bending [mm], at the two force models; walls after each pass at the worse one. */
  readonly errors: readonly [number, number];
  readonly left: readonly number[];
  readonly load: number;
}

function cut(job: Job, g: Geometry, deep: boolean): Omit<Done, "tool"> {
  const { work, row, material, machine } = job;
  const { sizes, tool, diameter, side, tip } = g;
  const speed = chooseSpeed(work, row, material, tool, machine, diameter, SPEED_PLACE.mill);
  const listed = chooseFeed(work, row, material, diameter);
  const teeth = tool.teeth;
  if (teeth === undefined) {
    work.reason("stop", "tool-incomplete", `${tool.tool} has no Teeth in the list`, "fill it in");
    return {};
  }
  if (!speed || listed === undefined || !(side === "outside" || diameter < g.start)) return {};
  const beam = toolBeam(work, row, tool, machine);
  const loadFromTip =
    tool.kind === "thread mill full" ? Math.min(row.depth ?? 0, tool.cuttingLength ?? 0) / 2 : (tool.tipToProfile ?? 0);
  const chosen = choosePasses(job, g, listed, teeth, beam, loadFromTip);
  if (!chosen) return {};
  const arcLimit =
    machine?.acceleration === undefined ? undefined : arcFeedLimit(g.pathRadius, machine.acceleration, sizes.pitch);
  const edgeTable = tableFeed(speed.rpm, teeth, chosen.edgeFeed);
  const wantedFeed = arcFeed(edgeTable, tip, diameter, side);
  const u = work.units;
  work.step(
    "radialDepth",
    "effective radial depth (largest pass)",
    chosen.radialDepth,
    side === "inside" ? "(Dm² − Dw²)/(4·(Dm − Dc))" : "(Dw² − Dm²)/(4·(Dm + Dc))",
    "DERIVED",
    { dimension: "length" },
  );
  work.step(
    "edgeFeed",
    "feed per tooth at the edge",
    chosen.edgeFeed,
    `list or row ${work.say(listed)}, raised for the thin chip, at most × ${THINNING_LIMIT}`,
    "MARTELLOTTI1941",
    { dimension: "length" },
  );
  work.step("edgeTable", "feed of the edge", edgeTable, "n·z·fz", "MH", {
    dimension: "feed",
    cell: work.formula("TABLEFEED", speed.rpm, teeth, [chosen.edgeFeed, "length"]),
  });
  work.step(
    "tableFeed",
    "table feed at the cutter's centre",
    wantedFeed,
    side === "inside" ? "edge feed·(Dm − Dc)/Dm" : "edge feed·(Dm + Dc)/Dm",
    "DERIVED",
    {
      dimension: "feed",
      cell: work.formula("ARCFEED", [edgeTable, "feed"], [tip, "length"], [diameter, "length"], side),
    },
  );
  const feed = judgeFeed(job, wantedFeed, arcLimit);
  work.step("chip", "largest chip", chosen.chip, "h = fz(centre)·sin φe", "MARTELLOTTI1941", {
    dimension: "length",
    cell: work.formula(
      "CHIPTHICKNESS",
      [chosen.centreFeed, "length"],
      [chosen.radialDepth, "length"],
      [diameter, "length"],
    ),
  });
  work.step("flankChip", "chip on the flank", chosen.flankChip, "radial chip·sin(half the profile angle)", "DERIVED", {
    dimension: "length",
  });
  const written = chosen.depths.map((d) => work.number(d)).join(" · ");
  work.step(
    "depths",
    "radial depth after each pass",
    written,
    "equal cut area t·(f + t·tan 30°) each; spring passes at full depth",
    "DERIVED",
    {
      cell: work.formula(
        "THREADPASSES",
        sizes.thread.designation,
        [g.start, "length"],
        [g.flat, "length"],
        chosen.passes,
        u,
        chosen.springs,
        [diameter, "length"],
      ),
    },
  );
  work.set({
    tableFeed: feed,
    feedPerTooth: chosen.edgeFeed,
    radialDepth: chosen.radialDepth,
    chipThickness: chosen.chip,
    passes: chosen.passes,
    springPasses: chosen.springs,
    depths: written,
  });
  judgeChip(job, chosen.flankChip, tool.edgeRadius, "the chip on the flank");
  work.sketch = {
    kind: "thread mill",
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
  if (material?.kc11 !== undefined && material.exponent !== undefined)
    forces(job, g, chosen, beam, loadFromTip, speed.rpm);
  else
    work.reason(
      "check",
      "no-kc",
      "the material's row has no kc1.1 and exponent: force, bending and power are not worked out",
      "fill them in",
    );
  return deep ? timing(job, g, chosen, feed, speed.surfaceSpeed) : {};
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
  work.step(
    "force",
    "peak tangential force (largest pass)",
    chosen.tangential,
    "Kienzle kc = kc1.1·h^−m, summed over the profile, the teeth and a turn",
    "KIENZLE1952",
    { dimension: "force" },
  );
  judgePower(job, chosen.torque, rpm);
  if (!beam) return;
  const deflection = beam.flexibility(loadFromTip) * chosen.peak;
  work.set({ deflection });
  work.step(
    "deflection",
    "deflection at the cutter (peak force)",
    deflection,
    "stepped cantilever: bending, shear, shoulders, holder",
    "ROARK",
    {
      dimension: "length",
      cell: toolDeflectionCell(work, beam, loadFromTip, chosen.peak),
    },
  );
  judgeStress(job, beam, g.tool, chosen.peak, chosen.torque, loadFromTip);
  const sign = g.sizes.internal ? -1 : 1;
  judgeSize(job, {
    programmed: (g.sizes.pitchMin + g.sizes.pitchMax) / 2,
    low: g.sizes.pitchMin,
    high: g.sizes.pitchMax,
    errors: [sign * chosen.errors[0], sign * chosen.errors[1]],
    name: "pitch diameter",
  });
  work.step(
    "left",
    "pitch diameter after each pass",
    chosen.left.map((r) => work.number((g.sizes.pitchMin + g.sizes.pitchMax) / 2 + sign * 2 * r)).join(" · "),
    "each pass solved for the depth really cut; mean of the two force models",
    "KLINE1982",
  );
}

/** The fewest passes and spring passes that keep every limit, or those that come closest. */
function choosePasses(
  job: Job,
  g: Geometry,
  listed: number,
  teeth: number,
  beam: ToolBeam | undefined,
  loadFromTip: number,
): Attempt | undefined {
  const { row } = job;
  const counts = row.passes === undefined ? Array.from({ length: MOST_PASSES }, (_, i) => i + 1) : [row.passes];
  let best: Attempt | undefined;
  for (const passes of counts) {
    const tried = tryPasses(job, g, listed, teeth, beam, loadFromTip, passes);
    if (!best || tried.load < best.load) best = tried;
    if (tried.load <= 1) break;
  }
  return best;
}

function tryPasses(
  job: Job,
  g: Geometry,
  listed: number,
  teeth: number,
  beam: ToolBeam | undefined,
  loadFromTip: number,
  passes: number,
): Attempt {
  const { row, material } = job;
  const { sizes, diameter, side, start, fullDepth, flat, tool, tip } = g;
  const angle = sizes.thread.profileAngle;
  const cutting = passDepths(fullDepth, flat, angle, passes);
  const sign = side === "inside" ? 1 : -1;
  const wall = (depth: number) => start + sign * 2 * depth;
  let radialDepth = 0;
  cutting.forEach((t, i) => {
    radialDepth = Math.max(radialDepth, arcDepth(wall(i === 0 ? 0 : cutting[i - 1]!), wall(t), diameter, side));
  });
  const ae = Math.min(radialDepth, diameter);
  const edgeFeed = Math.min(THINNING_LIMIT * listed, thinnedFeed(listed, ae, diameter, 90));
  const centreFeed = arcFeed(edgeFeed, tip, diameter, side);
  const chip = largestChip(centreFeed, ae, diameter, 90);
  const flankChip = chip * Math.sin((angle * Math.PI) / 360);
  const edge = tool.edgeRadius ?? 0;
  const leastChip = (material?.leastChip ?? 0) * edge;
  const base = { passes, radialDepth, edgeFeed, centreFeed, chip, flankChip };
  if (material?.kc11 === undefined || material.exponent === undefined) {
    const springs = row.springPasses ?? 0;
    return {
      ...base,
      springs,
      depths: passDepths(fullDepth, flat, angle, passes, springs),
      peak: 0,
      tangential: 0,
      torque: 0,
      errors: [0, 0],
      left: [],
      load: 0,
    };
  }
  const kc11 = material.kc11 * (row.wearFactor ?? 1);
  const { profiles } = turnsOf(tool, sizes.pitch, row.depth ?? sizes.pitch);
  const force = (from: number, to: number) =>
    threadMillForces({
      holeDiameter: start,
      internal: sizes.internal,
      cutterDiameter: diameter,
      tipFlat: flat,
      profileAngle: angle,
      feedPerTooth: centreFeed,
      teeth,
      kc11,
      exponent: material.exponent!,
      startDepth: from,
      endDepth: Math.max(to, from * (1 + 1e-9) + 1e-9),
      radialRatio: material.radialRatio ?? 0.35,
      edgeTangential: edgeForce(kc11, edge),
      edgeRadial: edgeForce(kc11, edge),
      way: row.way ?? "climb",
      turnsInCut: profiles,
    });
  let peak = 0;
  let tangential = 0;
  let torque = 0;
  cutting.forEach((t, i) => {
    const f = force(i === 0 ? 0 : cutting[i - 1]!, t);
    peak = Math.max(peak, f.peak);
    tangential = Math.max(tangential, f.peakTangential);
    torque = Math.max(torque, f.meanTorque);
  });
  const c = beam?.flexibility(loadFromTip) ?? 0;
  const halfTolerance = (sizes.pitchMax - sizes.pitchMin) / 2;
  const bend = (depths: readonly number[], model: "wallNormal" | "meanNormal") =>
    bentPasses({
      depths,
      flexibility: c,
      normalForce: (from, to) => force(from, to)[model],
      chip: (from, to) => flankChipOf(g, centreFeed, wall(from), wall(to)),
      leastChip,
    });
  const most = row.springPasses ?? (c > 0 ? MOST_SPRINGS : 0);
  const all = passDepths(fullDepth, flat, angle, passes, most);
  const walls = [bend(all, "wallNormal"), bend(all, "meanNormal")] as const;
  const bad = (1 + UNCERTAINTY.force) * (1 + UNCERTAINTY.flexibility);
  const errorAfter = (n: number) => walls.map((w) => 2 * (fullDepth - w[n - 1]!)) as [number, number];
  let springs = row.springPasses ?? 0;
  if (row.springPasses === undefined) {
    while (springs < most) {
      const worst = Math.max(...errorAfter(passes + springs).map(Math.abs)) * bad;
      if (worst <= BENDING_SHARE * halfTolerance) break;
      const next = Math.max(...errorAfter(passes + springs + 1).map(Math.abs)) * bad;
      if (next > 0.98 * worst) break;
      springs++;
    }
  }
  const n = passes + springs;
  const errors = errorAfter(n);
  const size = (Math.max(...errors.map(Math.abs)) * bad) / (BENDING_SHARE * halfTolerance);
  const stress =
    beam && tool.ruptureStrength !== undefined
      ? roughStress(beam, tool, peak * (1 + UNCERTAINTY.force)) / (tool.ruptureStrength / STRESS_SAFETY)
      : 0;
  const rub = flankChip > 0 ? leastChip / flankChip : 0;
  return {
    ...base,
    depths: all.slice(0, n),
    springs,
    peak,
    tangential,
    torque,
    errors,
    left: all.slice(0, n).map((_, i) => fullDepth - (walls[0][i]! + walls[1][i]!) / 2),
    load: Math.max(size, stress, rub),
  };
}

/** Chip on the flank of a pass from one wall to the next [mm]. */
function flankChipOf(g: Geometry, centreFeed: number, from: number, to: number): number {
  const ae = Math.min(arcDepth(from, to, g.diameter, g.side), g.diameter);
  return ae <= 0
    ? 0
    : largestChip(centreFeed, ae, g.diameter, 90) * Math.sin((g.sizes.thread.profileAngle * Math.PI) / 360);
}

/** Bending stress at the thinnest end of the neck [MPa], enough to choose between numbers of passes. */
function roughStress(beam: ToolBeam, tool: Tool, force: number): number {
  let x = 0;
  let worst = 0;
  for (const part of beam.parts) {
    x += part.length;
    worst = Math.max(worst, (32 * force * x * (tool.notchFactor ?? 1)) / (Math.PI * part.holderDiameter ** 3));
  }
  return worst;
}

function timing(job: Job, g: Geometry, chosen: Attempt, feed: number, surfaceSpeed: number): Omit<Done, "tool"> {
  const { row, machine, work } = job;
  const m = motionOf(machine);
  if (!m) return {};
  const { turns, levels } = turnsOf(g.tool, g.sizes.pitch, row.depth!);
  const motion = new Motion(m);
  motion.arrive(row);
  const sign = g.side === "inside" ? 1 : -1;
  for (const depth of chosen.depths) {
    const radius = g.pathRadius - sign * (g.fullDepth - depth);
    for (let level = 0; level < levels; level++) {
      motion.rapid(row.depth! + 2);
      motion.circle(Math.max(radius, 1e-3), turns, feed, g.sizes.pitch);
      motion.rapid(row.depth! + 2);
    }
  }
  work.step(
    "timeEach",
    "time of one feature",
    motion.total(),
    `${chosen.depths.length} passes of ${turns.toFixed(2)} turns, arcs in and out, rapids; each move from rest to rest`,
    "DERIVED",
    { unit: "s" },
  );
  return { time: motion.time, cutting: { seconds: motion.time.cutting, surfaceSpeed } };
}
