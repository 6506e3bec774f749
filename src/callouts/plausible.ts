/** Sizes that are more likely a misreading than a hole. Rows beyond them are asked about, never taken. */
import type { Thread } from "../thread/types.ts";
import type { Units } from "../units.ts";
import type { Remark } from "./remarks/remark.ts";
import type { CalloutCells } from "./types.ts";

const INCH = 25.4;

/** Lengths in mm. Common practice, on the safe side of everyday work on a machining centre; a shop may give its own. */
export const PLAUSIBLE = {
  smallestHole: 0.5,
  largestHole: 500,
  /** Deeper holes exist, but a lost decimal point is more likely. */
  deepest: 250,
  /** Depth over diameter of drilled and other holes. */
  drillDepths: 20,
  holeDepths: 10,
  /** Thread depth over major diameter. */
  threadDepths: 6,
  /** Seats deeper than this many of their diameters. */
  seatDepths: 2,
  /** Thread depth that a tap drill leaves, over 3/4·H·2: between these. */
  leastThread: 0.3,
  mostThread: 1.1,
  /** Drilled in one go, whatever the word. */
  largestDrill: 80,
  /** Largest over smallest diameter of one callout. */
  steps: 4,
  /** Distance of neighbours. */
  widest: 1000,
  mostHoles: 1000,
  /** A deviation of more than this share of its size. */
  tolerance: 0.2,
} as const;
export type Plausible = { readonly [K in keyof typeof PLAUSIBLE]: number };

/** Why a row should be asked about, or nothing. */
export function doubtOf(
  cells: CalloutCells,
  units: Units | null,
  thread: Thread | undefined,
  limits: Plausible,
): Remark | undefined {
  const scale = units === "in" ? INCH : 1;
  const size = (value: unknown) => (typeof value === "number" ? value * scale : undefined);
  const { Operation, Quantity } = cells;
  const finish = size(cells["Finish diameter"]);
  const start = size(cells["Start diameter"]);
  const depth = size(cells.Depth);
  const doubt = (mm: number) => ({ value: mm / scale, units });
  const seat = Operation === "counterbore" || Operation === "countersink";
  if (typeof Quantity === "number" && Quantity > limits.mostHoles) return { code: "so-many", count: Quantity };
  if (finish !== undefined && finish < limits.smallestHole) return { code: "so-small", ...doubt(finish) };
  if (finish !== undefined && finish > limits.largestHole) return { code: "so-large", ...doubt(finish) };
  const spacing = size(cells.Spacing);
  if (spacing !== undefined && spacing > limits.widest) return { code: "so-far-apart", ...doubt(spacing) };
  if (Operation === "drill" && finish !== undefined && finish > limits.largestDrill)
    return { code: "so-large-a-drill", ...doubt(finish) };
  if (seat && finish !== undefined && start !== undefined && finish <= start)
    return { code: "seat-not-larger", operation: Operation, hole: start / scale, ...doubt(finish) };
  if (Operation === "thread mill" && thread?.kind === "internal" && start !== undefined) {
    const unit = thread.native === "in" ? INCH : 1;
    const share = (thread.major * unit - start) / (1.5 * (Math.sqrt(3) / 2) * thread.pitch * unit);
    if (share < limits.leastThread) return { code: "start-large", ...doubt(start) };
    if (share > limits.mostThread) return { code: "start-small", ...doubt(start) };
  }
  if (depth === undefined) return undefined;
  if (Operation === "thread mill" && thread) {
    const pitch = thread.pitch * (thread.native === "in" ? INCH : 1);
    const major = thread.major * (thread.native === "in" ? INCH : 1);
    if (depth < pitch) return { code: "depth-below-pitch", ...doubt(depth) };
    if (depth > limits.threadDepths * major) return { code: "thread-deep", most: limits.threadDepths, ...doubt(depth) };
  } else if (Operation !== "boss") {
    const most = seat ? limits.seatDepths : Operation === "drill" ? limits.drillDepths : limits.holeDepths;
    if (depth > most * (finish ?? Number.POSITIVE_INFINITY) * 1.000001)
      return { code: "hole-deep", most, seat, ...doubt(depth) };
  }
  return depth > limits.deepest ? { code: "too-deep", ...doubt(depth) } : undefined;
}
