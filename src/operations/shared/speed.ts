/** Spindle speed and feed of a row: its own, else the lists', within what tool, machine and row allow. */
import { spindleSpeed, surfaceSpeed } from "../../mill/speed.ts";
import { interpolate } from "../../numeric.ts";
import type { Material, Tool, ToolKind } from "../../table/lists.ts";
import type { Job } from "./job.ts";

export interface Speed {
  readonly rpm: number;
  readonly surfaceSpeed: number;
  /** The speed that wears the edge as much in the cut that the list is meant for [m/min]. */
  readonly listSpeed: number;
  /** The material's range for the tool's substrate [m/min]. */
  readonly range?: readonly [number, number];
}

/** What is known of the cut when its speed is chosen. */
export interface SpeedFor {
  /** Factor on the list's range for how far the cutter is engaged (mill/engaged-speed.ts). */
  readonly engaged?: number;
  /** Inserted teeth. */
  readonly inserts?: boolean;
}

/** A material's range for the tool [m/min]; inserts without one of their own go by the solid cutter's. */
export function speedRange(material: Material | undefined, hss: boolean, inserts = false) {
  const own = inserts && !hss && material?.speedInsertLow !== undefined && material.speedInsertHigh !== undefined;
  const low = own ? material.speedInsertLow : hss ? material?.speedHssLow : material?.speedCarbideLow;
  const high = own ? material.speedInsertHigh : hss ? material?.speedHssHigh : material?.speedCarbideHigh;
  return low !== undefined && high !== undefined ? ([low, high] as const) : undefined;
}

/** Spindle speed within material, tool, machine and the row's own limit; undefined (with a finding) when nothing tells it. */
export function chooseSpeed(
  { work, row, machine, material: listed }: Job,
  tool: Pick<Tool, "substrate" | "maxRpm"> | undefined,
  diameter: number,
  place: number,
  material: Material | undefined = listed,
  { engaged = 1, inserts = false }: SpeedFor = {},
): Speed | undefined {
  const hss = tool?.substrate === "hss";
  const listedRange = speedRange(material, hss, inserts);
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
  if (rpm < least) {
    rpm = least;
    work.find("speed-under-machine", { value: least, limit: free });
  }
  const vc = surfaceSpeed(rpm, diameter);
  if (range) {
    work.step("speedRange", range, { engaged });
    if (vc > range[1] * 1.000001) work.find("speed-over-material", { value: vc, limit: range[1] });
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
  if (cap < free) work.find("speed-capped", { value: free, limit: cap, by });
  work.set({ spindleSpeed: rpm, surfaceSpeed: vc });
  // The list's own reference life belongs to its solid cutter's range: insert's speeds are brought to that.
  const solid = inserts ? speedRange(material, hss) : undefined;
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
