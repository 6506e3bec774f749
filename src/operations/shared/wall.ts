/** Walls to mill, brought to one shape for bore, boss, slot, side and face. */
import { arcDepth } from "../../mill/arc.ts";
import type { Tool } from "../../table/read.ts";
import { RAMP_ANGLE } from "./choices.ts";
import type { Job } from "./job.ts";

/** Radial depth per pass where the row does not say, of the cutter diameter. */
export const RADIAL_SHARE = 0.5;
/** First circle of a large bore from solid, of the cutter diameter: leaves no core. */
export const FIRST_CIRCLE = 1.9;
/** Helical rise per turn is never more than this share of the cutter diameter. */
const RISE_SHARE = 0.25;
/** Axial depth of slots and faces where the row does not say, of the cutter diameter. */
const SLOT_AXIAL = 0.5;

/** The cut of a wall, brought to one shape for all these operations. */
export interface Wall {
  readonly side: "inside" | "outside" | "straight";
  /** Diameter of the finished wall; straight walls have none [mm]. */
  readonly finish?: number;
  /** Diameter before the first pass; 0 is solid [mm]. */
  readonly start?: number;
  /** Radial stock to take off in all [mm] (straight walls and arcs). */
  readonly stock: number;
  /** Height of wall [mm]. */
  readonly depth: number;
  /** Axial depth per level [mm], and levels; a helical entry has its rise instead. */
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

export type SizedTool = Tool & { diameter: number; teeth: number };

export function needed({ row, operation }: Job): Record<string, unknown> {
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
export function proposeTool({ work, row, lists, operation }: Job, kinds: readonly string[]): Tool | undefined {
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

export function wallOf(job: Job, diameter: number, tool: Tool): Wall | undefined {
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
      STEPS: work.step(
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
      ...level,
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
      walls: 2,
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

/** Axial depth of a pass that starts with so much of the stock gone [mm]: the helix down into solid cuts its rise. */
export const axialOf = (wall: Wall, from: number) => (wall.rise > 0 && from === 0 ? wall.rise : wall.axial);

/** Radial positions of the passes: how much of the stock is gone after each [mm]. */
export function positions(wall: Wall, diameter: number, passes: number): number[] {
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

export const diameterAt = (wall: Wall, gone: number) =>
  wall.side === "inside" ? wall.start! + 2 * gone : wall.start! - 2 * gone;

/** Effective radial depth of a pass from one radial position to the next [mm]. */
export function effective(wall: Wall, diameter: number, from: number, to: number): number {
  if (wall.side === "straight" || wall.finish === undefined) return Math.min(to - from, diameter);
  return Math.min(diameter, arcDepth(diameterAt(wall, from), diameterAt(wall, to), diameter, wall.side));
}
