/** Sizes that are more likely a misreading than a hole. Rows beyond them are asked about, never taken. */
import type { Thread } from "../thread/types.ts";
import type { Units } from "../units.ts";
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

const show = (value: number) => String(Number(value.toPrecision(4)));

/** Why a row should be asked about, or nothing. */
export function doubtOf(
  cells: CalloutCells,
  units: Units | null,
  thread: Thread | undefined,
  limits: Plausible,
): string | undefined {
  const scale = units === "in" ? INCH : 1;
  const size = (value: unknown) => (typeof value === "number" ? value * scale : undefined);
  const { Operation, Quantity } = cells;
  const finish = size(cells["Finish diameter"]);
  const start = size(cells["Start diameter"]);
  const depth = size(cells.Depth);
  const said = (value: number) =>
    units === "in" ? `${show(value / INCH)} in` : `${show(value)} ${units ?? ""}`.trim();
  const seat = Operation === "counterbore" || Operation === "countersink";
  if (typeof Quantity === "number" && Quantity > limits.mostHoles) return `${Quantity} of them: is that so?`;
  if (finish !== undefined && finish < limits.smallestHole) return `⌀${said(finish)}: is that so? very small`;
  if (finish !== undefined && finish > limits.largestHole)
    return `⌀${said(finish)}: is that so? a decimal point may be lost`;
  const spacing = size(cells.Spacing);
  if (spacing !== undefined && spacing > limits.widest) return `${said(spacing)} apart: is that so?`;
  if (Operation === "drill" && finish !== undefined && finish > limits.largestDrill)
    return `a drill of ⌀${said(finish)}: is that so?`;
  if (seat && finish !== undefined && start !== undefined && finish <= start)
    return `the ${Operation} is not larger than its hole (${said(finish)}, ${said(start)}): is that so?`;
  if (Operation === "thread mill" && thread?.kind === "internal" && start !== undefined) {
    const unit = thread.native === "in" ? INCH : 1;
    const share = (thread.major * unit - start) / (1.5 * (Math.sqrt(3) / 2) * thread.pitch * unit);
    if (share < limits.leastThread) return `⌀${said(start)} for this thread: is that so? too large for a tap drill`;
    if (share > limits.mostThread) return `⌀${said(start)} for this thread: is that so? too small for a tap drill`;
  }
  if (depth === undefined) return undefined;
  const deep = `${said(depth)} deep: is that so?`;
  if (Operation === "thread mill" && thread) {
    const pitch = thread.pitch * (thread.native === "in" ? INCH : 1);
    const major = thread.major * (thread.native === "in" ? INCH : 1);
    if (depth < pitch) return `${deep} less than one pitch`;
    if (depth > limits.threadDepths * major) return `${deep} more than ${limits.threadDepths} diameters of thread`;
  } else if (Operation !== "boss") {
    const most = seat ? limits.seatDepths : Operation === "drill" ? limits.drillDepths : limits.holeDepths;
    if (depth > most * (finish ?? Number.POSITIVE_INFINITY) * 1.000001)
      return `${deep} ${seat ? "a seat of " : ""}more than ${most} diameters`;
  }
  return depth > limits.deepest ? `${deep} deeper than common work` : undefined;
}
