/** Milling walls: circular bores and bosses, slots, side walls straight and in arcs, faces. */
import { arcDepth, arcFeed } from "../mill/arc.ts";
import { bentPasses } from "../mill/bending.ts";
import { largestChip, thinnedFeed } from "../mill/chip.ts";
import { millForces } from "../mill/force.ts";
import { tableFeed } from "../mill/speed.ts";
import { neckClearance } from "../thread/fit.ts";
import { arcFeedLimit } from "../time.ts";
import {
  BENDING_SHARE,
  chooseFeed,
  chooseSpeed,
  edgeForce,
  RAMP_ANGLE,
  requireCells,
  SPEED_PLACE,
  THINNING_LIMIT,
  UNCERTAINTY,
} from "./choices.ts";
import type { Done, Job } from "./job.ts";
import { judgeChip, judgeFeed, judgePower, judgeSize, judgeStress } from "./judge.ts";
import { Motion, motionOf } from "./motion.ts";
import type { Tool } from "./read.ts";
import { type ToolBeam, toolBeam, toolDeflectionCell } from "./tool-beam.ts";

const MOST_PASSES = 8;
const MOST_SPRINGS = 2;
/** Radial depth per pass where the row does not say, of the cutter diameter. */
const RADIAL_SHARE = 0.5;
/** First circle of a large bore from solid, of the cutter diameter: leaves no core. */
const FIRST_CIRCLE = 1.9;
/** Helical rise per turn is never more than this share of the cutter diameter. */
const RISE_SHARE = 0.25;
/** Axial depth of slots and faces where the row does not say, of the cutter diameter. */
const SLOT_AXIAL = 0.5;

/** The cut of a wall, brought to one shape for all these operations. */
interface Wall {
  readonly side: "inside" | "outside" | "straight";
  /** Diameter of the finished wall; straight walls have none [mm]. */
  readonly finish?: number;
  /** Diameter before the first pass; 0 is solid [mm]. */
  readonly start?: number;
  /** Radial stock to take off in all [mm] (straight walls and arcs). */
  readonly stock: number;
  /** Height of wall [mm]. */
  readonly depth: number;
  /** Axial depth per level [mm], and levels. */
  readonly axial: number;
  readonly levels: number;
  /** Rise per turn of a helical entry [mm]; 0 at depth. */
  readonly rise: number;
  /** Path per pass and level [mm] of a straight cut or part of an arc. */
  readonly length?: number;
  /** Full circles (bore, boss) rather than a length. */
  readonly circles: boolean;
  /** Wall judged by its size: 2 for diameters, 1 for one wall, 0 for none. */
  readonly walls: 0 | 1 | 2;
  readonly full: boolean;
}

export function planWall(job: Job): Done {
  const { work, row } = job;
  const kinds = job.operation === "face" ? ["face mill", "end mill"] : ["end mill", "ball end mill"];
  const tool = job.tool ?? (row.tool === undefined ? proposeTool(job, kinds) : undefined);
  if (!tool) {
    requireCells(work, needed(job));
    return {};
  }
  work.set({ tool: tool.tool });
  if (tool.kind !== undefined && !kinds.includes(tool.kind)) {
    work.reason(
      "stop",
      "tool-kind",
      `${tool.tool} is a ${tool.kind}; ${kinds[0]} is wanted`,
      "name another tool, or leave Tool blank",
    );
    return { tool };
  }
  if (tool.diameter === undefined || tool.teeth === undefined) {
    work.reason(
      "stop",
      "tool-incomplete",
      `${tool.tool} has no ${tool.diameter === undefined ? "Diameter" : "Teeth"} in the list`,
      "fill it in",
    );
    return { tool };
  }
  if (!requireCells(work, needed(job))) return { tool };
  const wall = wallOf(job, tool.diameter, tool);
  if (!wall) return { tool };
  return { tool, ...cut(job, wall, tool as SizedTool) };
}

type SizedTool = Tool & { diameter: number; teeth: number };

function needed({ row, operation }: Job): Record<string, unknown> {
  switch (operation) {
    case "bore":
    case "counterbore":
      return { "Finish diameter": row.finishDiameter, Depth: row.depth };
    case "boss":
      return {
        "Start diameter": row.startDiameter || undefined,
        "Finish diameter": row.finishDiameter,
        Depth: row.depth,
      };
    case "side":
      return {
        Depth: row.depth,
        "Radial depth": row.radialDepth,
        ...((row.side ?? "straight") === "straight"
          ? { Length: row.length }
          : { "Finish diameter": row.finishDiameter }),
      };
    case "face":
      return { "Axial depth": row.axialDepth ?? row.depth, Length: row.length };
    default:
      return { Depth: row.depth, Length: row.length };
  }
}

/** The listed cutter that fits and is thickest for its reach. */
function proposeTool({ work, row, lists, operation }: Job, kinds: readonly string[]): Tool | undefined {
  const inside = operation === "bore" || operation === "counterbore" || (operation === "side" && row.side === "inside");
  const most = inside ? 0.8 * (row.finishDiameter ?? 0) : Number.POSITIVE_INFINITY;
  const width = operation === "slot" ? (row.finishDiameter ?? row.radialDepth) : undefined;
  let best: { tool: Tool; score: number } | undefined;
  for (const tool of lists.tools.items) {
    if (tool.kind !== kinds[0] || tool.diameter === undefined || tool.diameter > most) continue;
    if (width !== undefined && tool.diameter > width * 1.0001) continue;
    const reach = Math.max(tool.cuttingLength ?? 0, tool.neckLength ?? 0);
    if (reach < (operation === "face" ? 0 : (row.depth ?? 0))) continue;
    if (
      operation !== "face" &&
      row.depth !== undefined &&
      tool.diameter > 4 * row.depth &&
      !inside &&
      width === undefined
    )
      continue;
    const score = tool.diameter / Math.max(1, (tool.stickOut ?? 4 * tool.diameter) / tool.diameter) ** 2;
    if (!best || score > best.score) best = { tool, score };
  }
  if (best) {
    work.reason(
      "ok",
      "tool-proposed",
      `proposed: ${best.tool.tool}, the stiffest listed cutter that fits`,
      "name it in the row to keep it",
    );
    return best.tool;
  }
  work.reason(
    "stop",
    "no-tool-fits",
    `no listed ${kinds[0]} fits this ${operation}`,
    "add a cutter to the list Tools, or name one",
  );
  return undefined;
}

function levelsOf(depth: number, axial: number): { axial: number; levels: number } {
  const levels = Math.max(1, Math.ceil(depth / axial - 1e-9));
  return { axial: depth / levels, levels };
}

function wallOf(job: Job, diameter: number, tool: Tool): Wall | undefined {
  const { work, row, operation } = job;
  const depth = row.depth ?? row.axialDepth!;
  const reach = Math.max(tool.cuttingLength ?? Number.POSITIVE_INFINITY, tool.neckLength ?? 0);
  if (operation !== "face" && depth > reach) {
    work.reason(
      "stop",
      "cutter-short",
      `the cutter reaches ${work.say(reach)}; the wall is ${work.say(depth)} high`,
      "take a longer cutter",
      { value: depth, limit: reach, dimension: "length" },
    );
  }
  const edge = tool.cuttingLength ?? depth;
  if (operation === "bore" || operation === "boss" || operation === "counterbore") {
    const finish = row.finishDiameter!;
    const start = row.startDiameter ?? 0;
    const inside = operation !== "boss";
    if (inside ? start >= finish : start <= finish) {
      work.reason(
        "stop",
        "no-stock",
        `start diameter ${work.say(start)} leaves nothing to cut for ${work.say(finish)}`,
        "correct Start diameter or Finish diameter",
        { value: start, limit: finish, dimension: "length" },
      );
      return undefined;
    }
    if (inside && diameter >= finish) {
      work.reason(
        "stop",
        "cutter-too-large",
        `the cutter ${work.say(diameter)} does not fit the bore ${work.say(finish)}`,
        "take a smaller cutter",
        { value: diameter, limit: finish, dimension: "length" },
      );
      return undefined;
    }
    const solid = inside && start < diameter;
    const radius = (inside ? Math.min(finish, FIRST_CIRCLE * diameter) - diameter : finish + diameter) / 2;
    const ramp = 2 * Math.PI * radius * Math.tan((RAMP_ANGLE * Math.PI) / 180);
    const rise = solid ? Math.min(depth, row.axialDepth ?? Math.min(ramp, RISE_SHARE * diameter)) : 0;
    const level = levelsOf(depth, Math.min(row.axialDepth ?? edge, edge));
    if (rise > 0) {
      work.step(
        "rise",
        "rise per turn of the helical entry",
        rise,
        row.axialDepth ? "from the row" : `ramp of ${RAMP_ANGLE}°, at most ${RISE_SHARE} × D`,
        "COMMON",
        { dimension: "length" },
      );
    }
    return {
      side: inside ? "inside" : "outside",
      finish,
      start,
      stock: Math.abs(finish - (solid ? Math.min(finish, Math.max(start, 0)) : start)) / 2,
      depth,
      axial: solid ? rise : level.axial,
      levels: solid ? 1 : level.levels,
      rise,
      circles: true,
      walls: 2,
      full: solid,
    };
  }
  const side = row.side ?? "straight";
  if (operation === "side" && side !== "straight") {
    const finish = row.finishDiameter!;
    if (side === "inside" && diameter >= finish) {
      work.reason(
        "stop",
        "cutter-too-large",
        `the cutter ${work.say(diameter)} does not fit the arc ${work.say(finish)}`,
        "take a smaller cutter",
        { value: diameter, limit: finish, dimension: "length" },
      );
      return undefined;
    }
    const stock = row.radialDepth! * (row.passes ?? 1);
    const start = side === "inside" ? Math.max(0, finish - 2 * stock) : finish + 2 * stock;
    if (row.length === undefined) {
      work.reason("ok", "arc-length", "Length is blank: a full circle is timed", "type the length of the arc");
    }
    return {
      side,
      finish,
      start,
      stock,
      depth,
      ...levelsOf(depth, Math.min(row.axialDepth ?? edge, edge)),
      rise: 0,
      length: row.length ?? Math.PI * finish,
      circles: false,
      walls: 1,
      full: false,
    };
  }
  if (operation === "side") {
    const each = row.radialDepth!;
    if (each > diameter) {
      work.reason(
        "stop",
        "radial-over-diameter",
        `radial depth ${work.say(each)} is more than the cutter ${work.say(diameter)}`,
        "take less per pass",
        { value: each, limit: diameter, dimension: "length" },
      );
      return undefined;
    }
    return {
      side: "straight",
      stock: each * (row.passes ?? 1),
      depth,
      ...levelsOf(depth, Math.min(row.axialDepth ?? edge, edge)),
      rise: 0,
      length: row.length!,
      circles: false,
      walls: 1,
      full: false,
    };
  }
  const width = operation === "face" ? (row.radialDepth ?? 0.7 * diameter) : (row.radialDepth ?? diameter);
  if (width > diameter * 1.0000001) {
    work.reason(
      "stop",
      "radial-over-diameter",
      `radial depth ${work.say(width)} is more than the cutter ${work.say(diameter)}`,
      operation === "slot"
        ? "take a cutter of the slot's width, or mill its walls as side passes"
        : "take less per pass",
      { value: width, limit: diameter, dimension: "length" },
    );
    return undefined;
  }
  if (operation === "slot" && row.finishDiameter !== undefined && row.finishDiameter < diameter * 0.9999) {
    work.reason(
      "stop",
      "cutter-too-large",
      `the cutter ${work.say(diameter)} is wider than the slot ${work.say(row.finishDiameter)}`,
      "take a smaller cutter",
      { value: diameter, limit: row.finishDiameter, dimension: "length" },
    );
  }
  const axial = row.axialDepth ?? (operation === "face" ? Math.min(depth, 0.1 * diameter) : SLOT_AXIAL * diameter);
  return {
    side: "straight",
    stock: Math.min(width, diameter),
    depth,
    ...levelsOf(depth, Math.min(axial, edge)),
    rise: 0,
    length: row.length!,
    circles: false,
    walls: operation === "slot" && row.sizeTolerance !== undefined ? 1 : 0,
    full: width >= diameter * 0.9999,
  };
}

/** Radial positions of the passes: how much of the stock is gone after each [mm]. */
function positions(wall: Wall, diameter: number, passes: number): number[] {
  const { stock } = wall;
  if (wall.walls === 0 || wall.full === false || !wall.circles) {
    return Array.from({ length: passes }, (_, i) => (i === passes - 1 ? stock : (stock * (i + 1)) / passes));
  }
  // From solid: a first circle, then equal passes to the size.
  const first = Math.min(wall.finish! * 0.98, FIRST_CIRCLE * diameter) / 2 - wall.start! / 2;
  if (passes === 1) return [stock];
  return Array.from({ length: passes }, (_, i) =>
    i === passes - 1 ? stock : first + ((stock - first) * i) / (passes - 1),
  );
}

const diameterAt = (wall: Wall, gone: number) =>
  wall.side === "inside" ? wall.start! + 2 * gone : wall.start! - 2 * gone;

/** Effective radial depth of a pass from one radial position to the next [mm]. */
function effective(wall: Wall, diameter: number, from: number, to: number): number {
  if (wall.side === "straight" || wall.finish === undefined) return Math.min(to - from, diameter);
  return Math.min(diameter, arcDepth(diameterAt(wall, from), diameterAt(wall, to), diameter, wall.side));
}

interface Attempt {
  readonly depths: readonly number[];
  readonly passes: number;
  readonly springs: number;
  readonly radialDepth: number;
  readonly edgeFeed: number;
  readonly centreFeed: number;
  readonly chip: number;
  readonly peak: number;
  readonly tangential: number;
  readonly torque: number;
  readonly errors: readonly [number, number];
  readonly load: number;
}

function cut(job: Job, wall: Wall, tool: SizedTool): Omit<Done, "tool"> {
  const { work, row, material, machine, operation } = job;
  const { diameter, teeth } = tool;
  const arc = wall.side !== "straight";
  const speed = chooseSpeed(work, row, material, tool, machine, diameter, SPEED_PLACE.mill);
  const listed = chooseFeed(work, row, material, diameter);
  work.set({ direction: wallDirection(job, wall) });
  const pathRadius = arc ? (wall.side === "inside" ? wall.finish! - diameter : wall.finish! + diameter) / 2 : undefined;
  if (wall.circles && pathRadius !== undefined) {
    work.step(
      "pathRadius",
      "path radius of the cutter's centre",
      pathRadius,
      wall.side === "inside" ? "(Dm − Dc)/2" : "(Dm + Dc)/2",
      "DERIVED",
      { dimension: "length" },
    );
    work.set({ pathRadius, startDiameter: wall.start! });
    if (tool.neckDiameter !== undefined)
      work.set({
        neckGap: neckClearance(
          wall.finish!,
          pathRadius,
          tool.neckDiameter,
          wall.side === "inside" ? "internal" : "external",
        ),
      });
  }
  if (!speed || listed === undefined) return {};
  const beam = toolBeam(work, row, tool, machine);
  const loadFromTip = Math.min(wall.axial, tool.cuttingLength ?? wall.axial) / 2;
  const chosen = choosePasses(job, wall, tool, listed, beam, loadFromTip);
  const edgeTable = tableFeed(speed.rpm, teeth, chosen.edgeFeed);
  const wantedFeed = arc ? arcFeed(edgeTable, wall.finish!, diameter, wall.side as "inside" | "outside") : edgeTable;
  radialStep(job, wall, chosen, diameter);
  work.step(
    "edgeFeed",
    "feed per tooth at the edge",
    chosen.edgeFeed,
    `list or row ${work.say(listed)}, raised for the thin chip, at most × ${THINNING_LIMIT}`,
    "MARTELLOTTI1941",
    { dimension: "length" },
  );
  work.step(arc ? "edgeTable" : "tableFeed", arc ? "feed of the edge" : "table feed", edgeTable, "n·z·fz", "MH", {
    dimension: "feed",
    cell: work.formula("TABLEFEED", speed.rpm, teeth, [chosen.edgeFeed, "length"]),
  });
  if (arc) {
    work.step(
      "tableFeed",
      "table feed at the cutter's centre",
      wantedFeed,
      wall.side === "inside" ? "edge feed·(Dm − Dc)/Dm" : "edge feed·(Dm + Dc)/Dm",
      "DERIVED",
      {
        dimension: "feed",
        cell: work.formula("ARCFEED", [edgeTable, "feed"], [wall.finish!, "length"], [diameter, "length"], wall.side),
      },
    );
  }
  const limit =
    pathRadius !== undefined && machine?.acceleration !== undefined
      ? arcFeedLimit(pathRadius, machine.acceleration, wall.rise)
      : undefined;
  const feed = judgeFeed(job, wantedFeed, limit);
  work.step("chip", "largest chip", chosen.chip, "h = fz(centre)·sin κ·sin φe", "MARTELLOTTI1941", {
    dimension: "length",
    cell: work.formula(
      "CHIPTHICKNESS",
      [chosen.centreFeed, "length"],
      [chosen.radialDepth, "length"],
      [diameter, "length"],
      "max",
      tool.edgeAngle ?? 90,
    ),
  });
  judgeChip(job, chosen.chip, tool.edgeRadius);
  const written = chosen.depths.map((d) => work.number(d)).join(" · ");
  work.set({
    feedPerTooth: chosen.edgeFeed,
    tableFeed: feed,
    radialDepth: chosen.radialDepth,
    chipThickness: chosen.chip,
    passes: chosen.passes * (operation === "slot" || operation === "face" ? wall.levels : 1),
    springPasses: chosen.springs,
    depths: written,
  });
  work.step(
    "axialDepth",
    "axial depth",
    wall.axial,
    wall.rise > 0 ? "rise per turn of the helix" : `${wall.levels} level${wall.levels > 1 ? "s" : ""} of equal depth`,
    "COMMON",
    { dimension: "length" },
  );
  work.sketch = {
    kind: operation,
    inside: wall.side === "inside",
    holeDiameter: wall.finish,
    startDiameter: wall.start,
    depth: wall.depth,
    through: row.through,
    pathRadius,
    cutterDiameter: diameter,
    depths: chosen.depths,
    tool: beam?.parts.map((p) => ({ length: p.length, diameter: p.holderDiameter, part: p.part })),
    deflection: beam ? beam.flexibility(loadFromTip) * chosen.peak : undefined,
  };
  if (material?.kc11 === undefined || material.exponent === undefined) {
    work.reason(
      "check",
      "no-kc",
      "the material's row has no kc1.1 and exponent: force, bending and power are not worked out",
      "fill them in",
    );
  } else forces(job, wall, tool, chosen, beam, loadFromTip, speed.rpm);
  return timing(job, wall, tool, chosen, feed, speed.surfaceSpeed);
}

function radialStep({ work }: Job, wall: Wall, chosen: Attempt, diameter: number): void {
  if (wall.finish === undefined || wall.side === "straight") {
    work.step(
      "radialDepth",
      "radial depth",
      chosen.radialDepth,
      "from the row, or the stock in equal passes",
      "COMMON",
      { dimension: "length" },
    );
    return;
  }
  // The pass with the largest effective depth, written as its own formula.
  let from = 0;
  let at = 0;
  chosen.depths.slice(0, chosen.passes).forEach((d, i) => {
    const prior = i === 0 ? 0 : chosen.depths[i - 1]!;
    if (Math.abs(effective(wall, diameter, prior, d) - chosen.radialDepth) < 1e-12 * diameter && at === 0) {
      from = prior;
      at = d;
    }
  });
  work.step(
    "radialDepth",
    "effective radial depth (largest pass)",
    chosen.radialDepth,
    wall.side === "inside" ? "(Dm² − Dw²)/(4·(Dm − Dc)), Dw at least |2·Dc − Dm|" : "(Dw² − Dm²)/(4·(Dm + Dc))",
    "DERIVED",
    {
      dimension: "length",
      cell: work.formula(
        "ARCDEPTH",
        [diameterAt(wall, from), "length"],
        [diameterAt(wall, at), "length"],
        [diameter, "length"],
        wall.side,
      ),
    },
  );
}

function wallDirection({ row }: Job, wall: Wall): string {
  const climb = (row.way ?? "climb") === "climb";
  if (wall.side === "straight" && wall.full) return "full width";
  if (wall.side === "straight") return climb ? "wall on the right of the travel" : "wall on the left of the travel";
  const counter = (wall.side === "inside") === climb;
  const turn = counter ? "counter-clockwise" : "clockwise";
  return wall.rise > 0 ? `top down, ${turn}` : turn;
}

function choosePasses(
  job: Job,
  wall: Wall,
  tool: SizedTool,
  listed: number,
  beam: ToolBeam | undefined,
  loadFromTip: number,
): Attempt {
  const { row } = job;
  const share = row.radialDepth ?? RADIAL_SHARE * tool.diameter;
  let least = 1;
  if (wall.circles) {
    const first = wall.full ? Math.min(wall.stock, (FIRST_CIRCLE * tool.diameter - wall.start!) / 2) : 0;
    least = wall.full
      ? 1 + Math.ceil((wall.stock - first) / share - 1e-9)
      : Math.max(1, Math.ceil(wall.stock / share - 1e-9));
  }
  const fixed = row.passes ?? (wall.circles ? undefined : 1);
  const counts =
    fixed !== undefined ? [fixed] : Array.from({ length: Math.max(1, MOST_PASSES - least + 1) }, (_, i) => least + i);
  let best: Attempt | undefined;
  for (const passes of counts) {
    const tried = tryPasses(job, wall, tool, listed, beam, loadFromTip, passes);
    if (!best || tried.load < best.load * 0.98) best = tried;
    if (tried.load <= 1) break;
  }
  return best!;
}

function tryPasses(
  job: Job,
  wall: Wall,
  tool: SizedTool,
  listed: number,
  beam: ToolBeam | undefined,
  loadFromTip: number,
  passes: number,
): Attempt {
  const { row, material } = job;
  const { diameter, teeth } = tool;
  const angle = tool.edgeAngle ?? 90;
  const cutting = positions(wall, diameter, passes);
  let radialDepth = 0;
  cutting.forEach((d, i) => {
    radialDepth = Math.max(radialDepth, effective(wall, diameter, i === 0 ? 0 : cutting[i - 1]!, d));
  });
  const edgeFeed = Math.min(THINNING_LIMIT * listed, thinnedFeed(listed, radialDepth, diameter, angle));
  const centreFeed = wall.side === "straight" ? edgeFeed : arcFeed(edgeFeed, wall.finish!, diameter, wall.side);
  const chip = largestChip(centreFeed, radialDepth, diameter, angle);
  const base = { passes, radialDepth, edgeFeed, centreFeed, chip };
  const chosenSprings = row.springPasses ?? 0;
  const spring = (n: number) => [...cutting, ...Array.from({ length: n }, () => wall.stock)];
  if (material?.kc11 === undefined || material.exponent === undefined) {
    return {
      ...base,
      springs: chosenSprings,
      depths: spring(chosenSprings),
      peak: 0,
      tangential: 0,
      torque: 0,
      errors: [0, 0],
      load: 0,
    };
  }
  const sin = Math.sin((angle * Math.PI) / 180);
  const kc11 = material.kc11 * (row.wearFactor ?? 1);
  const edge = edgeForce(kc11, tool.edgeRadius);
  const force = (from: number, to: number) =>
    millForces({
      // An edge at κ cuts a chip fz·sin κ thick and ap/sin κ wide: the same sum with kc11·sin^−m κ.
      kc11: kc11 * sin ** -material.exponent!,
      exponent: material.exponent!,
      feedPerTooth: centreFeed,
      radialDepth: Math.max(1e-9 * diameter, effective(wall, diameter, from, to)),
      axialDepth: wall.axial,
      diameter,
      teeth,
      helixAngle: tool.helix ?? 0,
      radialRatio: material.radialRatio ?? 0.35,
      axialRatio: material.axialRatio ?? 0,
      edgeTangential: edge,
      edgeRadial: edge,
      way: row.way ?? "climb",
    });
  let peak = 0;
  let tangential = 0;
  let torque = 0;
  cutting.forEach((d, i) => {
    const f = force(i === 0 ? 0 : cutting[i - 1]!, d);
    peak = Math.max(peak, f.peak);
    tangential = Math.max(tangential, f.peakTangential);
    torque = Math.max(torque, f.meanTorque);
  });
  const leastChip = (material.leastChip ?? 0) * (tool.edgeRadius ?? 0);
  const judged = wall.walls > 0 && row.sizeTolerance !== undefined && beam !== undefined;
  const most = row.springPasses ?? (judged ? MOST_SPRINGS : 0);
  let errors: [number, number] = [0, 0];
  let springs = chosenSprings;
  let size = 0;
  if (wall.walls > 0 && beam) {
    const bend = (model: "wallNormal" | "meanNormal") =>
      bentPasses({
        depths: spring(most),
        flexibility: beam.flexibility(loadFromTip),
        normalForce: (from, to) => (to - from <= 1e-9 ? 0 : force(from, to)[model]),
        chip: (from, to) =>
          to - from <= 1e-9 ? 0 : largestChip(centreFeed, effective(wall, diameter, from, to), diameter, angle),
        leastChip,
      });
    const walls = [bend("wallNormal"), bend("meanNormal")] as const;
    const after = (n: number) => walls.map((w) => wall.walls * (wall.stock - w[n - 1]!)) as [number, number];
    const bad = (1 + UNCERTAINTY.force) * (1 + UNCERTAINTY.flexibility);
    const allowed = BENDING_SHARE * (row.sizeTolerance ?? Number.POSITIVE_INFINITY);
    const worst = (n: number) => Math.max(...after(n).map(Math.abs)) * bad;
    if (row.springPasses === undefined) {
      while (
        springs < most &&
        worst(passes + springs) > allowed &&
        worst(passes + springs + 1) < 0.98 * worst(passes + springs)
      )
        springs++;
    }
    errors = after(passes + springs);
    size = worst(passes + springs) / allowed;
  }
  const rub = chip > 0 ? leastChip / chip : 0;
  return { ...base, springs, depths: spring(springs), peak, tangential, torque, errors, load: Math.max(size, rub) };
}

function forces(
  job: Job,
  wall: Wall,
  tool: SizedTool,
  chosen: Attempt,
  beam: ToolBeam | undefined,
  loadFromTip: number,
  rpm: number,
): void {
  const { work, row } = job;
  work.set({ force: chosen.tangential });
  work.step(
    "force",
    "peak tangential force (largest pass)",
    chosen.tangential,
    "Kienzle kc = kc1.1·h^−m over teeth, helix and a turn, with the edge's ploughing force kc1.1·edge radius per mm",
    "KIENZLE1952",
    { dimension: "force" },
  );
  judgePower(job, chosen.torque, rpm);
  if (!beam) return;
  const deflection = beam.flexibility(loadFromTip) * chosen.peak;
  work.set({ deflection });
  work.step(
    "deflection",
    "deflection at the cut (peak force)",
    deflection,
    "stepped cantilever: bending, shear, shoulders, holder",
    "ROARK",
    { dimension: "length", cell: toolDeflectionCell(work, beam, loadFromTip, chosen.peak) },
  );
  judgeStress(job, beam, tool, chosen.peak, chosen.torque, loadFromTip);
  if (wall.walls === 0) return;
  const finish = wall.finish ?? 0;
  const sign = wall.side === "inside" ? -1 : 1;
  if (row.sizeTolerance === undefined) {
    work.reason(
      "ok",
      "no-size-tolerance",
      `Size tolerance is blank: bending of ${work.say(Math.max(...chosen.errors.map(Math.abs)))} on the size is shown but not judged`,
      "type the allowed error of the size",
    );
    if (wall.finish !== undefined && wall.walls === 2)
      work.set({ size: finish + (sign * (chosen.errors[0] + chosen.errors[1])) / 2 });
    return;
  }
  judgeSize(job, {
    programmed: finish,
    low: finish - row.sizeTolerance,
    high: finish + row.sizeTolerance,
    errors: [sign * chosen.errors[0], sign * chosen.errors[1]],
    name: wall.walls === 2 ? "finished diameter" : "wall",
  });
  if (wall.walls === 1)
    work.set({
      size: sign * ((chosen.errors[0] + chosen.errors[1]) / 2),
      sizeMin: -row.sizeTolerance,
      sizeMax: row.sizeTolerance,
    });
}

function timing(
  job: Job,
  wall: Wall,
  tool: SizedTool,
  chosen: Attempt,
  feed: number,
  surfaceSpeed: number,
): Omit<Done, "tool"> {
  const { row, machine, work, operation } = job;
  const m = motionOf(machine);
  if (!m) return {};
  const motion = new Motion(m);
  const d = tool.diameter;
  motion.arrive(row);
  chosen.depths.forEach((depth, i) => {
    const first = wall.full && i === 0;
    for (let level = 0; level < (first ? 1 : wall.levels); level++) {
      if (wall.circles) {
        const at = diameterAt(wall, depth);
        const radius = Math.max(1e-3, (wall.side === "inside" ? at - d : at + d) / 2);
        motion.rapid(wall.depth + 2);
        motion.circle(radius, first && wall.rise > 0 ? wall.depth / wall.rise + 1 : 1, feed, first ? wall.rise : 0);
        motion.rapid(wall.depth + 2);
      } else {
        const over = operation === "face" ? d : d / 2;
        motion.rapid(wall.depth + 2);
        if (wall.side === "straight") motion.feed(wall.length! + over, feed);
        else {
          const radius = (wall.side === "inside" ? wall.finish! - d : wall.finish! + d) / 2;
          motion.arc(radius, wall.length! / (Math.PI * wall.finish!), feed);
          motion.arc(radius / 2, 0.5, feed);
        }
        motion.rapid(wall.depth + 2);
        motion.rapid((wall.length ?? 0) + over);
      }
    }
  });
  work.step(
    "timeEach",
    "time of one feature",
    motion.total(),
    "every pass and level, arcs in and out, rapids; each move from rest to rest",
    "DERIVED",
    { unit: "s" },
  );
  return { time: motion.time, cutting: { seconds: motion.time.cutting, surfaceSpeed } };
}
