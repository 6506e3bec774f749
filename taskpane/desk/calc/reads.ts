/** Cells that a formula reads, as distances from its own cell: the same for every cell that holds the formula. */
import type { Area } from "../model/types.ts";

/** An edge of a reference: a fixed line of the sheet, or a distance from the formula's own cell. */
export interface Edge {
  readonly fixed: boolean;
  readonly at: number;
}
/** Cells that a formula reads, as seen from any cell that holds it. */
export interface Reads {
  readonly sheet: number;
  readonly top: Edge;
  readonly left: Edge;
  readonly bottom: Edge;
  readonly right: Edge;
}

export const edgeAt = (edge: Edge, own: number): number => (edge.fixed ? edge.at : own + edge.at);
export const areaAt = (reads: Reads, row: number, column: number): Area => {
  const [a, b] = [edgeAt(reads.top, row), edgeAt(reads.bottom, row)];
  const [c, d] = [edgeAt(reads.left, column), edgeAt(reads.right, column)];
  return { top: Math.min(a, b), bottom: Math.max(a, b), left: Math.min(c, d), right: Math.max(c, d) };
};
