/** What cutting and ploughing forces are worked out with in a row. */
import { USUAL_EDGE } from "./choices.ts";
import type { Job } from "./job.ts";

export interface Force {
  /** kc1.1 with the row's wear [MPa], and exponent m of the chip. */
  readonly kc11: number;
  readonly exponent: number;
  /** Radial and axial over tangential force [-]. */
  readonly radialRatio: number;
  readonly axialRatio: number;
}

/** Radial over tangential force where the list has none (usual value, from memory). */
const RADIAL_RATIO = 0.35;

/** Undefined where the list has no force for the row's material. */
export function forceOf({ row, material }: Pick<Job, "row" | "material">): Force | undefined {
  const { kc11, exponent, radialRatio = RADIAL_RATIO, axialRatio = 0 } = material ?? {};
  if (kc11 === undefined || exponent === undefined) return undefined;
  return { kc11: kc11 * (row.wearFactor ?? 1), exponent, radialRatio, axialRatio };
}

/** What the edge of a cutter is taken for. */
export interface Edge {
  /** Sharp and honed end of its radius [mm]. */
  readonly radii: readonly [sharp: number, honed: number];
  /** Ploughing force per length [N/mm], and what it is at the two ends of the radius, as shares of itself. */
  readonly edgeTangential: number;
  readonly edgeRadial: number;
  readonly ends: readonly [sharp: number, honed: number];
}

/**
 * The edge of a cutter: the material's own ploughing force, else kc1.1 on an edge radius of chip (judgement; published fits lie
 * around it). Where the list has no radius it may be anything that is usual.
 */
export function edgeOfTool({ row, material }: Pick<Job, "row" | "material">, { kc11 }: Force, radius?: number): Edge {
  const { edgeTangential: own, edgeRadial } = material ?? {};
  const radii = radius === undefined ? USUAL_EDGE : ([radius, radius] as const);
  const middle = Math.sqrt(radii[0] * radii[1]);
  const worn = row.wearFactor ?? 1;
  const edgeTangential = own === undefined ? kc11 * middle : worn * own;
  return {
    radii,
    edgeTangential,
    edgeRadial: edgeRadial === undefined ? edgeTangential : worn * edgeRadial,
    // A force that the list tells, and one of a known radius, has no ends.
    ends: own === undefined && radius === undefined ? [radii[0] / middle, radii[1] / middle] : [1, 1],
  };
}
