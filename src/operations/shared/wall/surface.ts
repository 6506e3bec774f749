/** What a cut leaves and where its chips go: roughness of wall or floor, room for chips in a full slot. */
import { fluteFill, type MaterialGroup, slotStep } from "../../../mill/chip-space.ts";
import { floorRoughness, wallRoughness } from "../../../mill/roughness.ts";
import type { Material } from "../../../table/lists.ts";
import type { Job } from "../job.ts";
import { over } from "../slack.ts";
import type { SizedTool, Wall } from "./wall.ts";

/** A step so many times too deep packs, a lesser one is to be looked at (judgement). */
const PACKS = 2;

/** Runout along the axis over that around it: seats and corners of a cutter stand more alike along the axis (common practice). */
const ALONG_AXIS = 0.3;

export const groupOf = (material: Material | undefined): MaterialGroup | undefined =>
  material?.group?.toUpperCase() as MaterialGroup | undefined;

/** A full slot: whether its chips get out of the step, and out of the flute. */
export function judgeSlot({ work, row, material }: Job, tool: SizedTool, axial: number, centreFeed: number): void {
  const group = groupOf(material);
  if (group === undefined) return;
  const { diameter, teeth } = tool;
  const coolant = row.coolant ?? "flood";
  const step = slotStep(group, diameter, teeth, coolant, material?.slotStep);
  work.limit("slotStep", axial, step, "length");
  for (const [share, severity] of [
    [PACKS, "stop"],
    [1, "check"],
  ] as const)
    if (over(axial, share * step))
      work.find("slot-too-deep", { value: axial, limit: share * step, teeth, coolant }, severity);
  const fill = fluteFill(group, centreFeed, diameter, diameter, teeth);
  if (fill > 1) work.find("gullet-full", { value: fill, limit: 1, teeth });
}

/** Theoretical roughness of the wall, or of a faced floor, against the row's Roughness. */
export function judgeRoughness({ work, row, operation }: Job, wall: Wall, tool: SizedTool, edgeFeed: number): void {
  const { diameter, teeth, runout = 0 } = tool;
  const floor = operation === "face";
  if (floor && !tool.cornerRadius) return;
  const rz =
    1000 *
    (floor
      ? floorRoughness(edgeFeed, teeth, tool.cornerRadius!, ALONG_AXIS * runout)
      : wallRoughness({
          edgeFeed,
          teeth,
          diameter,
          runout,
          way: row.way ?? "climb",
          arc: wall.side === "straight" ? undefined : { diameter: wall.finish!, side: wall.side },
        }));
  const of = floor ? "floor" : "wall";
  work.step("roughness", rz, { of });
  work.set({ theoreticalRz: rz });
  if (row.roughness === undefined) return;
  if (work.limit("roughness", rz, row.roughness, "roughness") > 1)
    work.find("roughness", { value: rz, limit: row.roughness, of });
}
