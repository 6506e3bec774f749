/** A wall to mill, brought to one shape for bore, boss, counterbore, slot, side and face. */
import { arcDepth } from "../../../mill/arc.ts";
import { ballDiameter, noseAngle } from "../../../mill/ball.ts";
import type { Tool } from "../../../table/lists.ts";

/** Radial depth per pass where the row does not say, of the cutter diameter. */
export const RADIAL_SHARE = 0.5;
/** First circle of a large bore from solid, of the cutter diameter: leaves no core. */
export const FIRST_CIRCLE = 1.9;
/** Axial depth of slots where the row does not say, of the cutter diameter. */
export const SLOT_AXIAL = 0.5;

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
  /** A slot or face wider than its pass: how much is gone after each further pass beside it, on each level [mm]. */
  readonly beside?: readonly number[];
  /** Straight wall: radial depth with the engagement of its tightest inside corner [mm], where the row names one. */
  readonly corner?: number;
}

export type SizedTool = Tool & { readonly diameter: number; readonly teeth: number };
export const isSized = (tool: Tool): tool is SizedTool => tool.diameter !== undefined && tool.teeth !== undefined;

/** Levels of equal depth, none deeper than `axial` [mm]. */
export function levelsOf(depth: number, axial: number): { axial: number; levels: number } {
  const levels = Math.max(1, Math.ceil(depth / axial - 1e-9));
  return { axial: depth / levels, levels };
}

/** A pass that takes more than this share of the cutter is no deeper than so many diameters where the row does not say (common practice). */
const WIDE = { share: 0.25, axial: 1 } as const;

/** Axial depth of a level where the row does not say [mm]: the whole edge in a thin cut, a diameter in a wide one. */
export const levelDepth = (tool: SizedTool, depth: number, radial: number): number =>
  Math.min(edgeOf(tool, depth), radial > WIDE.share * tool.diameter ? WIDE.axial * tool.diameter : depth);

/**
 * The edge that a cut of so much depth engages: its widest diameter [mm], and the angle of the edge there [deg], where the chip is
 * thickest. A ball or a corner radius that is cut in part is narrower and flatter than the cutter.
 */
export function engagedEdge(tool: SizedTool, axial: number): { diameter: number; angle: number } {
  const { diameter, edgeAngle: angle = 90 } = tool;
  const radius = Math.min(diameter / 2, tool.cornerRadius ?? (tool.kind === "ball end mill" ? diameter / 2 : 0));
  if (axial >= radius) return { diameter, angle };
  return { diameter: ballDiameter(diameter, axial, radius), angle: Math.min(angle, noseAngle(axial, radius)) };
}

/** How deep the edge reaches [mm], and the whole of the tool with its neck. */
export const edgeOf = (tool: Tool, depth: number): number => tool.cuttingLength ?? depth;
export const reachOf = (tool: Tool): number =>
  Math.max(tool.cuttingLength ?? Number.POSITIVE_INFINITY, tool.neckLength ?? 0);

/** Axial depth of a pass that starts with so much of the stock gone [mm]: the helix down into solid cuts its rise. */
export const axialOf = (wall: Wall, from: number) => (wall.rise > 0 && from === 0 ? wall.rise : wall.axial);

/** Radial positions of the passes: how much of the stock is gone after each [mm]. */
export function positions(wall: Wall, diameter: number, passes: number): number[] {
  const { stock } = wall;
  if (!wall.full || !wall.circles) {
    return Array.from({ length: passes }, (_, i) => (i === passes - 1 ? stock : (stock * (i + 1)) / passes));
  }
  // From solid: a first circle, then equal passes to the size.
  const first = (Math.min(wall.finish! * 0.98, FIRST_CIRCLE * diameter) - wall.start!) / 2;
  return Array.from({ length: passes }, (_, i) =>
    i === passes - 1 ? stock : first + ((stock - first) * i) / (passes - 1),
  );
}

export const diameterAt = (wall: Wall, gone: number) =>
  wall.side === "inside" ? Math.max(0, wall.start! + 2 * gone) : wall.start! - 2 * gone;

/** Effective radial depth of a pass from one radial position to the next [mm]. */
export function effective(wall: Wall, diameter: number, from: number, to: number): number {
  if (wall.side === "straight") return Math.min(to - from, diameter);
  return Math.min(diameter, arcDepth(diameterAt(wall, from), diameterAt(wall, to), diameter, wall.side));
}
