/** One row: worked out by its operation, then time, tool life and cost. */
import { TradeError } from "../errors.ts";
import { OPERATIONS } from "../operations/index.ts";
import { type Handed, type Job, startJob } from "../operations/shared/job.ts";
import type { Plan } from "../operations/shared/types.ts";
import type { Tool } from "../table/lists.ts";
import type { Lists, ReadRow } from "../table/read.ts";
import { bestOf, type Choice } from "./candidates.ts";
import { timeAndCost } from "./money.ts";

/** A row that is worked out and not told yet. */
interface Worked {
  readonly job: Job;
  readonly more?: Pick<Plan, "time" | "money" | "life">;
}

/**
 * One row. `sharing` rows of the table share the setup of its machine. Without `detail` the steps are left out. `handed` is what the
 * row that roughs its wall leaves on it (handed.ts).
 */
export function planRow(read: ReadRow, lists: Lists, sharing = 1, detail = true, handed?: Handed): Plan {
  const choice = proposed(read, lists, sharing, handed);
  const worked = (detail ? undefined : choice?.worked) ?? workOut(read, lists, sharing, detail, handed, choice?.tool);
  if (choice) {
    const { tool, offer } = choice;
    worked.job.work.find("tool-proposed", { tool: tool.tool, for: offer.for, thread: offer.thread });
  }
  return told(worked, read);
}

/** Works a row out with the tool that it names, or with one that is proposed. */
function workOut(
  read: ReadRow,
  lists: Lists,
  sharing: number,
  detail: boolean,
  handed: Handed | undefined,
  tool?: Tool,
): Worked {
  const started = startJob(read, lists, detail, handed);
  const job: Job = tool ? { ...started, tool } : started;
  const { operation, units } = read.row;
  const more = kept(job, () => {
    const done = operation === undefined || units === undefined ? {} : OPERATIONS[operation].plan(job);
    return timeAndCost(job, done, sharing);
  });
  return { job, more };
}

const told = ({ job, more }: Worked, read: ReadRow): Plan => ({
  ...job.work.finish(read.name, read.row.operation ?? ""),
  ...more,
});

/** The tool for a row that names none, and the row worked out with it where that is what the row comes to. */
function proposed(
  read: ReadRow,
  lists: Lists,
  sharing: number,
  handed: Handed | undefined,
): (Choice & { worked?: Worked }) | undefined {
  const { operation, units, tool } = read.row;
  if (operation === undefined || units === undefined || tool !== undefined) return undefined;
  // Candidates are looked for on a job of their own: what they find is found again when the row is planned.
  const scratch = startJob(read, lists, false);
  const offer = kept(scratch, () => OPERATIONS[operation].candidates(scratch));
  if (!offer) return undefined;
  const tried = new Map<Tool, Worked>();
  const run = (candidate: Tool) => {
    const typed = { ...read, row: { ...read.row, tool: candidate.tool } };
    const worked = workOut(typed, lists, sharing, false, handed);
    // Bad cells of the list count in the choice, and are said where a tool is typed.
    if (!lists.tools.problems.has(candidate.tool.toLowerCase())) tried.set(candidate, worked);
    return told(worked, typed);
  };
  const choice = bestOf(offer, units, run);
  return choice && { ...choice, worked: tried.get(choice.tool) };
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
