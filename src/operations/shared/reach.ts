/** Reach: the holder and the thick parts of a tool stay out of the part, and the holder grips the full shank. One rule for every operation. */
import type { Tool } from "../../table/lists.ts";
import type { Segment } from "../../tool/beam.ts";
import { fullShankFrom, reachFault } from "../../tool/reach.ts";
import type { Job } from "./job.ts";
import { under } from "./slack.ts";

/** Room between the holder's nose and the face of the part [mm] (judgement). */
export const HOLDER_ROOM = 1;

/**
 * Judges how a tool is held whose tip goes `depth` below the face; `widest` is the thickest round part that can follow it
 * in. Where neck and shank have rules of their own (`neckJudged`: threads, walls) only holder and grip are looked at.
 * A tool without a stick-out is not judged.
 */
export function judgeReach(
  { work, row }: Pick<Job, "work" | "row">,
  tool: Tool,
  depth: number,
  widest: number,
  neckJudged = false,
): void {
  const stickOut = row.stickOut ?? tool.stickOut;
  if (stickOut === undefined || tool.diameter === undefined) return;
  const cutting = tool.cuttingLength ?? 0;
  const shankFrom = fullShankFrom(cutting, tool.neckLength ?? 0);
  // An arbor carries a face mill: there is no shank to grip.
  if (tool.kind !== "face mill" && under(stickOut, shankFrom))
    work.find("grips-flutes", { value: stickOut, limit: shankFrom });
  const opening = { width: Math.max(widest, 1e-6), depth, pathRadius: 0, sideRoom: 0 };
  const pieces = neckJudged ? [] : piecesOf(tool, tool.diameter, stickOut);
  const fault = reachFault(pieces, Math.min(cutting, stickOut), undefined, { ...opening, clearance: 0 });
  if (fault && fault.piece < pieces.length)
    work.find("shank-hits", { value: depth - fault.missing, limit: depth, part: pieces[fault.piece]!.part });
  // A nose of known length may enter a wide bore; what is behind it never does.
  const { holderDiameter, holderLength } = tool;
  const known = holderDiameter !== undefined && holderLength !== undefined;
  const nose = known ? [cylinder(holderDiameter, holderLength)] : [];
  const hit = reachFault(nose, stickOut, known ? undefined : holderDiameter, { ...opening, clearance: HOLDER_ROOM });
  if (hit) work.find("holder-hits", { value: stickOut, limit: stickOut + hit.missing });
}

const cylinder = (diameter: number, length: number): Segment => ({
  tipDiameter: diameter,
  holderDiameter: diameter,
  length,
});

/** Neck and shank above the cutting part, up to the holder. */
function piecesOf(tool: Tool, diameter: number, stickOut: number): (Segment & { readonly part: "neck" | "shank" })[] {
  const pieces: (Segment & { readonly part: "neck" | "shank" })[] = [];
  const { cuttingLength = 0, neckDiameter, neckLength = 0, neckEndDiameter = neckDiameter } = tool;
  let at = Math.min(cuttingLength, stickOut);
  const end = Math.min(neckLength, stickOut);
  if (neckDiameter !== undefined && end > at) {
    pieces.push({ tipDiameter: neckDiameter, holderDiameter: neckEndDiameter!, length: end - at, part: "neck" });
    at = end;
  }
  if (stickOut > at) pieces.push({ ...cylinder(tool.shankDiameter ?? diameter, stickOut - at), part: "shank" });
  return pieces;
}
