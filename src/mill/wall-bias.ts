/**
 * Where a milled wall ends up after each pass, as a band. Two things are not known and so have two ends:
 *
 *   which force counts: the one at the instant an edge makes the wall, or the mean over a turn, signed (with climb it pushes the
 *   tool away, against it may pull in); how stiff and how sharp the tool is: a good and a bad end of flexibility times force, and of r∞
 *
 * All four corners are carried through all passes; the deepest and the shallowest wall are the band.
 */
import { notNegative } from "../check.ts";
import type { BluntTool } from "./bending.ts";

export interface BendingWall {
  /** Force normal to the wall at the instant an edge makes it, from one radial depth to another, with a share of the edge's own force [N]. */
  readonly wallForce: (from: number, to: number, edge: number) => number;
  /** Mean of it over a turn, signed, without the edge's own [N]. */
  readonly meanForce: (from: number, to: number) => number;
  /** c, bending of the tool where it cuts, per force [mm/N]. */
  readonly flexibility: number;
  /** Factors on c times force, good and bad end [-]; [1, 1] without. */
  readonly ends?: readonly [number, number];
  /** r∞, sharp and blunt end [mm]: the least chip. */
  readonly layers: readonly [number, number];
  /** Factors on the edge's force, sharp and blunt end [-]; [1, 1] without. */
  readonly edges?: readonly [number, number];
  /** Depth beyond which the tool is not pulled in [mm]. */
  readonly deepest?: number;
}

/** One corner of the band: which end of stiffness and sharpness, which force. */
export type Corner = readonly [end: "good" | "bad", force: "wall" | "mean"];
export const CORNERS: readonly Corner[] = [
  ["good", "wall"],
  ["good", "mean"],
  ["bad", "wall"],
  ["bad", "mean"],
];

/**
 * The tool of a wall at one corner of what is known, as wallLeft takes it.
 *
 * @param wall - forces [N], wall.flexibility [mm/N], wall.ends [-], wall.layers [mm], wall.edges [-]
 * @param corner - "good" or "bad" end, "wall" or "mean" force
 * @returns flexibility [mm/N], normalForce [N], layer [mm], edges [-], deepest [mm]
 * @throws TradeError "range" when the flexibility is negative
 * @source KLINE1982 ARCONA1998 DERIVED
 * @example
 * wallCorner({ wallForce: (a, b) => 300 * (b - a), meanForce: (a, b) => 100 * (b - a), flexibility: 0.001, ends: [0.5, 2], layers: [0, 0] }, ["bad", "wall"]).flexibility //=> 0.002
 */
export function wallCorner(wall: BendingWall, corner: Corner): BluntTool {
  const [end, force] = corner;
  const c = notNegative("flexibility", wall.flexibility);
  const at = end === "good" ? 0 : 1;
  const { ends = [1, 1], edges = [1, 1], layers, deepest } = wall;
  const normalForce = force === "mean" ? wall.meanForce : wall.wallForce;
  return { flexibility: c * ends[at], layer: layers[at], edges: edges[at], deepest, normalForce };
}
