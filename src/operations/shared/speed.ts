/** Spindle speed and feed of a row: its own, else the lists', within what tool, machine and row allow. */
import { spindleSpeed, surfaceSpeed } from "../../mill/speed.ts";
import { interpolate } from "../../numeric.ts";
import type { Material, Tool, ToolKind } from "../../table/lists.ts";
import type { Job } from "./job.ts";
import { over, under } from "./slack.ts";

export interface Speed {
  readonly rpm: number;
  readonly surfaceSpeed: number;
  /** The speed that wears the edge as much in the cut that the list is meant for [m/min]. */
  readonly listSpeed: number;
  /** The material's range for the tool's substrate [m/min]. */
  readonly range?: readonly [number, number];
}

/** Tools whose speeds are not the solid end mill's. */
export type OwnSpeed = "inserts" | "thread mill";

/** What is known of the cut when its speed is chosen. */
export interface SpeedFor {
  /** Factor on the list's range for how far the cutter is engaged (mill/engaged-speed.ts). */
  readonly engaged?: number;
  /** Inserted teeth, or a thread mill. */
  readonly own?: OwnSpeed;
  /** A range that stands in for the material's [m/min]. */
  readonly range?: readonly [number, number];
}

/** Whose speeds a kind of tool runs at; undefined for the solid end mill's. */
export const ownSpeedOf = (kind: ToolKind | undefined): OwnSpeed | undefined =>
  kind === "face mill" ? "inserts" : kind?.startsWith("thread mill") ? "thread mill" : undefined;

/** Speed of a thread mill over that of a solid end mill, where the list has none of its own (common practice). */
export const THREAD_SPEED = 0.75;

/** The material's own columns for a carbide tool of a kind [m/min], where both are filled in. */
function ownRange(material: Material | undefined, own: OwnSpeed | undefined) {
  const [low, high] =
    own === "inserts"
      ? [material?.speedInsertLow, material?.speedInsertHigh]
      : own === "thread mill"
        ? [material?.speedThreadLow, material?.speedThreadHigh]
        : [];
  return low !== undefined && high !== undefined ? ([low, high] as const) : undefined;
}

/**
 * A material's range for the tool [m/min]. Inserts without one of their own go by the solid cutter's, thread mills by
 * {@link THREAD_SPEED} of it; of high-speed steel there is one range for all that mills.
 */
export function speedRange(material: Material | undefined, hss: boolean, own?: OwnSpeed) {
  const special = hss ? undefined : ownRange(material, own);
  if (special) return special;
  const low = hss ? material?.speedHssLow : material?.speedCarbideLow;
  const high = hss ? material?.speedHssHigh : material?.speedCarbideHigh;
  if (low === undefined || high === undefined) return undefined;
  const share = own === "thread mill" && !hss ? THREAD_SPEED : 1;
  return [share * low, share * high] as const;
}

/** Whether a carbide thread mill's speed is a share of the end mill's for want of its own columns. */
export const threadSpeedAssumed = (material: Material, tool: Pick<Tool, "substrate">) =>
  tool.substrate !== "hss" && ownRange(material, "thread mill") === undefined;

/** Spindle speed within material, tool, machine and the row's own limit; undefined (with a finding) when nothing tells it. */
export function chooseSpeed(
  { work, row, machine, material }: Job,
  tool: Pick<Tool, "substrate" | "maxRpm"> | undefined,
  diameter: number,
  place: number,
  { engaged = 1, own, range: given }: SpeedFor = {},
): Speed | undefined {
  const hss = tool?.substrate === "hss";
  const listedRange = given ?? speedRange(material, hss, own);
  const range = listedRange && ([listedRange[0] * engaged, listedRange[1] * engaged] as const);
  const wanted = row.surfaceSpeed ?? (range ? range[0] + place * (range[1] - range[0]) : undefined);
  if (wanted === undefined) {
    if (material) work.find("no-speed", { material: material.material, hss });
    return undefined;
  }
  const caps = [
    [machine?.maxRpm, "machine"],
    [tool?.maxRpm, "tool"],
    [row.maxRpm, "row"],
  ] as const;
  let cap = Number.POSITIVE_INFINITY;
  let by: (typeof caps)[number][1] = "machine";
  for (const [value, name] of caps) {
    if (value !== undefined && value < cap) {
      cap = value;
      by = name;
    }
  }
  const free = spindleSpeed(wanted, diameter);
  let rpm = Math.min(free, cap);
  const least = machine?.minRpm ?? 0;
  if (under(rpm, least)) {
    rpm = least;
    work.find("speed-under-machine", { value: least, limit: free });
  }
  const vc = surfaceSpeed(rpm, diameter);
  if (range) {
    work.step("speedRange", range, { engaged });
    if (over(vc, range[1])) work.find("speed-over-material", { value: vc, limit: range[1] });
  }
  work.step("spindleSpeed", rpm, {
    wanted,
    diameter,
    cap: Number.isFinite(cap) ? cap : null,
    by: cap < free ? by : undefined,
    slow: rpm === least && least > 0,
  });
  work.step("surfaceSpeed", vc, { rpm, diameter });
  if (Number.isFinite(cap)) work.limit("spindleSpeed", rpm, cap);
  if (over(free, cap)) work.find("speed-capped", { value: free, limit: cap, by });
  work.set({ spindleSpeed: rpm, surfaceSpeed: vc });
  // The list's own reference life belongs to its solid cutter's range: other tools' speeds are brought to that.
  const solid = own ? speedRange(material, hss) : undefined;
  const terms = engaged * (solid && listedRange ? listedRange[1] / solid[1] : 1);
  return { rpm, surfaceSpeed: vc, listSpeed: vc / terms, range };
}

/**
 * Feed per tooth of the list at a diameter: 3, 6, 12 and 20 mm joined by lines, in proportion below the first, and above the
 * last with the square root of the diameter (common practice: a tooth grows slower than its cutter).
 */
export function listedFeed(material: Material, diameter: number): number | undefined {
  const points: [number, number][] = [];
  if (material.feed3 !== undefined) points.push([3, material.feed3]);
  if (material.feed6 !== undefined) points.push([6, material.feed6]);
  if (material.feed12 !== undefined) points.push([12, material.feed12]);
  if (material.feed20 !== undefined) points.push([20, material.feed20]);
  const [first, last] = [points[0], points[points.length - 1]];
  if (!first || !last) return undefined;
  if (diameter < first[0]) return (first[1] * diameter) / first[0];
  return diameter > last[0] ? last[1] * Math.sqrt(diameter / last[0]) : interpolate(points, diameter);
}

/** Feed of an inserted tooth over that of a solid cutter of 12 mm, where the list has none of its own (common practice). */
export const INSERT_FEED = 2;

/** Feed per tooth of the list for a cutter: inserts go by their own column, whatever the cutter's diameter. */
export function feedOf(material: Material, kind: ToolKind | undefined, diameter: number): number | undefined {
  if (kind !== "face mill") return listedFeed(material, diameter);
  if (material.feedInsert !== undefined) return material.feedInsert;
  const solid = listedFeed(material, 12);
  return solid === undefined ? undefined : INSERT_FEED * solid;
}
