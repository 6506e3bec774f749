/** Spindle speed and feed of a row: its own, else the lists', within what tool, machine and row allow. */
import { spindleSpeed, surfaceSpeed } from "../../mill/speed.ts";
import { interpolate } from "../../numeric.ts";
import type { Material, Tool } from "../../table/lists.ts";
import type { Job } from "./job.ts";

export interface Speed {
  readonly rpm: number;
  readonly surfaceSpeed: number;
  /** The material's range for the tool's substrate [m/min]. */
  readonly range?: readonly [number, number];
}

/** Spindle speed within material, tool, machine and the row's own limit; undefined (with a finding) when nothing tells it. */
export function chooseSpeed(
  { work, row, machine, material: listed }: Job,
  tool: Pick<Tool, "substrate" | "maxRpm"> | undefined,
  diameter: number,
  place: number,
  material: Material | undefined = listed,
): Speed | undefined {
  const hss = tool?.substrate === "hss";
  const low = hss ? material?.speedHssLow : material?.speedCarbideLow;
  const high = hss ? material?.speedHssHigh : material?.speedCarbideHigh;
  const range = low !== undefined && high !== undefined ? ([low, high] as const) : undefined;
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
    work.step("speedRange", range);
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
  return { rpm, surfaceSpeed: vc, range };
}

/** Feed per tooth of the list at a diameter: 3, 6 and 12 mm joined by lines, in proportion below 3 mm, level above 12. */
export function listedFeed(material: Material, diameter: number): number | undefined {
  const points: [number, number][] = [];
  if (material.feed3 !== undefined) points.push([3, material.feed3]);
  if (material.feed6 !== undefined) points.push([6, material.feed6]);
  if (material.feed12 !== undefined) points.push([12, material.feed12]);
  const first = points[0];
  if (!first) return undefined;
  return diameter < first[0] ? (first[1] * diameter) / first[0] : interpolate(points, diameter);
}

/** The row's own feed per tooth or the list's; undefined (with a finding) when neither is there. */
export function chooseFeed({ work, row, material }: Job, diameter: number, factor = 1): number | undefined {
  if (row.feedPerTooth !== undefined) return row.feedPerTooth;
  const listed = material ? listedFeed(material, diameter) : undefined;
  if (listed !== undefined) return listed * factor;
  if (material) work.find("no-feed", { material: material.material });
  return undefined;
}
