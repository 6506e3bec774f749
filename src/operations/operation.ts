/** What every operation must say of itself. Its file says it; `index.ts` is the one place that knows them all. */

import type { ProposedFor } from "../findings.ts";
import type { Tool, ToolKind } from "../table/lists.ts";
import type { Row, RowKey } from "../table/rows.ts";
import type { Done, Job } from "./shared/job.ts";

/** Cells of a row that advice may change. */
export type Lever = Extract<
  RowKey,
  | ("passes" | "springPasses" | "feedPerTooth" | "surfaceSpeed" | "maxRpm" | "stickOut" | "tool" | "startDiameter")
  | ("axialDepth" | "radialDepth" | "wearValue" | "holeDepth" | "machine")
>;

export interface Operation {
  /** Cells that must not be blank in this row. */
  needs(row: Row): readonly RowKey[];
  /** Further cells that it reads, beside those that every operation does (COMMON_CELLS). */
  readonly uses: readonly RowKey[];
  /** Kinds of listed tools that do it, the one that is proposed first; none: a plain tool is assumed. */
  readonly tools: readonly ToolKind[];
  readonly levers: readonly Lever[];
  plan(job: Job): Done;
  /** Listed tools worth trying where the row names none, best guess first; writes its findings to the job that it is given. */
  candidates(job: Job): Candidates;
}

export interface Candidates {
  readonly tools: readonly Tool[];
  readonly for: ProposedFor;
  readonly thread?: string;
}

/** Cells that every operation reads. */
export const COMMON_CELLS: readonly RowKey[] = [
  ...(["row", "feature", "operation", "units", "quantity", "material", "machine", "batch", "spacing"] as const),
  ...(["surfaceSpeed", "maxRpm"] as const),
];

/** Cells that advice may change whatever the operation. */
export const COMMON_LEVERS: readonly Lever[] = ["maxRpm", "machine"];
