/** One row: worked out by its operation, then time, tool life and cost. */
import { TradeError } from "../errors.ts";
import { OPERATIONS } from "../operations/index.ts";
import { type Job, startJob } from "../operations/shared/job.ts";
import type { Plan } from "../operations/shared/types.ts";
import type { Tool } from "../table/lists.ts";
import type { Lists, ReadRow } from "../table/read.ts";
import { bestOf, type Choice } from "./candidates.ts";
import { timeAndCost } from "./money.ts";

/** One row. `sharing` rows of the table share the setup of its machine. Without `detail` the steps are left out. */
export function planRow(read: ReadRow, lists: Lists, sharing = 1, detail = true): Plan {
  const started = startJob(read, lists, detail);
  const choice = proposed(read, lists, sharing);
  const job: Job = choice ? { ...started, tool: choice.tool } : started;
  const { operation, units } = read.row;
  const more = kept(job, () => {
    const done = operation === undefined || units === undefined ? {} : OPERATIONS[operation].plan(job);
    return timeAndCost(job, done, sharing);
  });
  if (choice) {
    const { tool, offer } = choice;
    job.work.find("tool-proposed", { tool: tool.tool, for: offer.for, thread: offer.thread });
  }
  return { ...job.work.finish(read.name, operation ?? ""), ...more };
}

/** The tool for a row that names none. */
function proposed(read: ReadRow, lists: Lists, sharing: number): Choice | undefined {
  const { operation, units, tool } = read.row;
  if (operation === undefined || units === undefined || tool !== undefined) return undefined;
  // Candidates are looked for on a job of their own: what they find is found again when the row is planned.
  const scratch = startJob(read, lists, false);
  const offer = kept(scratch, () => OPERATIONS[operation].candidates?.(scratch));
  if (!offer) return undefined;
  const run = (candidate: Tool) =>
    planRow({ ...read, row: { ...read.row, tool: candidate.tool } }, lists, sharing, false);
  return bestOf(offer, units, run);
}

/** Whatever ends the working out of a row becomes a finding of that row and leaves the other rows alone. */
function kept<T>({ work }: Job, run: () => T): T | undefined {
  try {
    return run();
  } catch (error) {
    if (error instanceof TradeError) work.find("cannot-be-computed", { error });
    else work.find("fault", { what: String(error) });
    return undefined;
  }
}
