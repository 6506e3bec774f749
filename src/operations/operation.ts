/** What every operation must say of itself. Its file says it; `index.ts` is the one place that knows them all. */

import type { ToolKind } from "../table/lists.ts";
import type { Row, RowKey } from "../table/rows.ts";
import type { Done, Job } from "./shared/job.ts";

/** Cells of a row that advice may change. */
export type Lever = Extract<
  RowKey,
  "passes" | "springPasses" | "feedPerTooth" | "surfaceSpeed" | "stickOut" | "tool" | "startDiameter"
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
}

/** Cells that every operation reads. */
export const COMMON_CELLS: readonly RowKey[] = [
  ...(["row", "feature", "operation", "units", "quantity", "material", "machine", "batch", "spacing"] as const),
  ...(["surfaceSpeed", "maxRpm"] as const),
];
