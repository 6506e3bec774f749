/** One row: worked out by its operation, then time, tool life and cost. */
import { TradeError } from "../errors.ts";
import { OPERATIONS } from "../operations/index.ts";
import { type Job, startJob } from "../operations/shared/job.ts";
import type { Plan } from "../operations/shared/types.ts";
import type { Lists, ReadRow } from "../table/read.ts";
import { timeAndCost } from "./money.ts";

/** One row. `sharing` rows of the table share the setup of its machine. Without `detail` the steps are left out. */
export function planRow(read: ReadRow, lists: Lists, sharing = 1, detail = true): Plan {
  const job = startJob(read, lists, detail);
  const { operation, units } = read.row;
  const more = kept(job, () => {
    const done = operation === undefined || units === undefined ? {} : OPERATIONS[operation].plan(job);
    return timeAndCost(job, done, sharing);
  });
  return { ...job.work.finish(read.name, operation ?? ""), ...more };
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
