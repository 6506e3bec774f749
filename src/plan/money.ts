/** Time, tool life and cost of a row that is worked out. */
import { partCost } from "../cost.ts";
import { toolLife } from "../life.ts";
import { attempt, type Done, type Job } from "../operations/shared/job.ts";
import type { Plan } from "../operations/shared/types.ts";

/** Acceleration that costs more than this share and so many seconds of the cutting time is worth a word. */
const SLOWED = { share: 1.2, seconds: 0.5 } as const;

export function timeAndCost(job: Job, done: Done, sharing: number): Pick<Plan, "time" | "money" | "life"> {
  const { work, row } = job;
  const t = done.time;
  if (!t) return {};
  // A time is that of a listed machine.
  const { rate, toolChange: change = 0, setup: minutes = 0 } = job.machine!;
  const each = t.cutting + t.moving + t.waiting;
  const quantity = row.quantity ?? 1;
  const time = each * quantity + change;
  if (!Number.isFinite(time)) {
    work.find("no-time", {});
    return {};
  }
  work.step("time", time);
  work.set({ timeEach: each, time });
  const slowed = t.cutting - t.ideal;
  if (t.cutting > SLOWED.share * t.ideal && slowed > SLOWED.seconds)
    work.find("acceleration-time", { value: t.cutting, limit: t.ideal, more: slowed * quantity });
  const seconds = { ...t, change };
  const life = edgeLife(job, done);
  if (rate === undefined) return { time: seconds, life };
  let toolCost = 0;
  if (life !== undefined && done.tool!.price !== undefined) {
    const share = (done.cutting!.seconds * quantity) / 60 / life;
    toolCost = (share * done.tool!.price) / (done.tool!.edges ?? 1);
    work.step("toolCost", toolCost);
  }
  const { batch = 1 } = row;
  const setup = row.batch === undefined ? 0 : (minutes * 60) / sharing;
  const cost = attempt(work, "no-cost", () => partCost(time, rate, batch, setup, toolCost));
  if (cost === undefined) return { time: seconds, life };
  work.step("cost", cost, { time, rate, batch: row.batch, setup, toolCost, sharing });
  work.set({ cost });
  const money = { machine: (rate * time) / 3600, setup: (rate * (setup / batch)) / 3600, tool: toolCost };
  return { time: seconds, money, life };
}

/**
 * Life of an edge [min]. The list's reference life belongs to carbide at the top of its speed range; for HSS nothing
 * is known.
 */
function edgeLife({ work, material }: Job, { tool, cutting }: Done): number | undefined {
  const { speedCarbideHigh: reference, referenceLife: life, taylorN: exponent } = material ?? {};
  if (!cutting || !tool || tool.substrate === "hss" || !reference || !life || !exponent) return undefined;
  const speed = cutting.surfaceSpeed;
  return attempt(work, "no-life", () => {
    const minutes = toolLife(speed, reference, life, exponent);
    work.step("life", minutes, { speed, reference, life, exponent });
    return minutes;
  });
}
