/**
 * Programs with one planted fault each: it is found with its code in its row, and nothing else is. What is expected was
 * written down before the comparison was looked at.
 */
import { describe, expect, it } from "vitest";
import type { JobOf } from "./jobs.ts";
import type { Style } from "./post.ts";
import { alarms, check, type RowCells } from "./shop.ts";
import {
  type ArcCut,
  type Cut,
  type HoleCut,
  type LineCut,
  type RoundCut,
  type ThreadCut,
  writeProgram,
} from "./writer.ts";

export const FULL: Style = { name: "full", arcs: "ij 360", lead: "half rising" };
export const WEAR: Style = { ...FULL, compensation: "wear" };
export const QUARTERS: Style = { name: "quarters", arcs: "ij 90", cycles: true, blockNumbers: true };
export const RADIUS: Style = { name: "radius", arcs: "r 90", numbers: "trimmed", modal: true };
export const STEPS: Style = { name: "incremental", arcs: "ij 180", incremental: true };
export const OTHER: Style = { name: "other unit", arcs: "ij 90", units: "in", cycles: true };
export const CONTOUR: Style = { name: "contour", arcs: "ij 180", compensation: "contour", lead: "straight" };

export interface Fault {
  readonly name: string;
  readonly job: JobOf;
  readonly style?: Style;
  /** Changes the cuts that a sound program is made of. */
  readonly cuts?: (cuts: Cut[]) => unknown;
  /** Changes the text of the program. */
  readonly text?: (text: string) => string;
  /** Changes the table (what is planned), not the program. */
  readonly rows?: (rows: readonly RowCells[]) => RowCells[];
  readonly zero?: "tip" | "profile";
  readonly expect: readonly string[];
  /** Words that the sentence must have: the numbers of the program and of the plan. */
  readonly says?: RegExp;
}

export const thread = (cuts: Cut[], n = 0) => cuts.filter((c) => c.op === "thread")[n] as ThreadCut;
export const round = (cuts: Cut[], n = 0) => cuts.filter((c) => c.op === "round")[n] as RoundCut;
export const hole = (cuts: Cut[], n = 0) => cuts.filter((c) => c.op === "hole")[n] as HoleCut;
export const line = (cuts: Cut[], n = 0) => cuts.filter((c) => c.op === "line")[n] as LineCut;
export const arc = (cuts: Cut[]) => cuts.find((c) => c.op === "arc") as ArcCut;
/** A speed, a feed or a fall multiplied. */
export const scale = (cut: Cut, key: string, by: number) => {
  const values = cut as unknown as Record<string, number>;
  values[key] = values[key]! * by;
};
export const widen = (cut: { radii: number[] }, by: number) => {
  cut.radii = cut.radii.map((r) => r + by);
};

/** A change that answers a list replaces the cuts; any other has changed them in place. */
function changed(cuts: Cut[], { cuts: change }: Fault): readonly Cut[] {
  const answer = change?.(cuts);
  return Array.isArray(answer) && answer.length > 0 && "op" in answer[0] ? answer : cuts;
}

/** Runs each fault as a test of its own. */
export function plant(title: string, faults: readonly Fault[]): void {
  describe(title, () => {
    for (const fault of faults)
      it(fault.name, () => {
        const cuts = fault.job.cuts();
        const written = writeProgram(changed(cuts, fault), fault.style ?? FULL);
        const text = fault.text?.(written) ?? written;
        if (fault.text) expect(text).not.toBe(written);
        const found = check(text, fault.rows?.(fault.job.rows) ?? fault.job.rows, fault.zero);
        const said = found.map((f) => `${f.block} ${f.row} ${f.severity} ${f.code}: ${f.text}`).join("\n");
        expect(alarms(found).sort(), said).toEqual([...fault.expect].sort());
        const alarm = found.filter((f) => f.severity !== "ok");
        if (fault.says) expect(alarm.map((f) => f.text).join("\n")).toMatch(fault.says);
        // each alarm that has a block names one where something moves or is refused
        for (const { block } of alarm) if (block !== "") expect(text.split(/\r?\n/)[block - 1]).toMatch(/[A-Z0-9]/i);
      });
  });
}
