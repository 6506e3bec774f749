/** Time, tool life and cost of a row that is worked out. */
import { partCost } from "../cost.ts";
import { TradeError } from "../errors.ts";
import { toolLife } from "../life.ts";
import type { Done, Job } from "../operations/shared/job.ts";
import type { Plan } from "../operations/shared/types.ts";

/** Acceleration that costs more than this share and so many seconds of the cutting time is worth a word. */
const SLOWED = { share: 1.2, seconds: 0.5 } as const;

export function timeAndCost(job: Job, done: Done, sharing: number): Pick<Plan, "time" | "money" | "life"> {
  const { work, row, machine } = job;
  const t = done.time;
  if (!t || !machine) return {};
  const each = t.cutting + t.moving + t.waiting;
  const quantity = row.quantity ?? 1;
  const change = machine.toolChange ?? 0;
  const time = each * quantity + change;
  if (!Number.isFinite(time) || time <= 0) {
    work.find("no-time", {});
    return {};
  }
  work.step("time", time);
  work.set({ timeEach: each, time });
  if (t.cutting > SLOWED.share * t.ideal && t.cutting - t.ideal > SLOWED.seconds)
    work.find("acceleration-time", { value: t.cutting, limit: t.ideal, more: (t.cutting - t.ideal) * quantity });
  const seconds = { ...t, change };
  const life = edgeLife(job, done);
  if (machine.rate === undefined) return { time: seconds, life };
  let toolCost = 0;
  if (done.cutting && done.tool?.price !== undefined && life !== undefined) {
    const share = (done.cutting.seconds * quantity) / 60 / life;
    toolCost = (share * done.tool.price) / (done.tool.edges ?? 1);
    work.step("toolCost", toolCost);
  }
  const setup = row.batch === undefined ? 0 : ((machine.setup ?? 0) * 60) / sharing;
  if (!Number.isFinite(machine.rate * (time + setup) + toolCost)) {
    work.find("no-cost", {});
    return { time: seconds, life };
  }
  const cost = partCost(time, machine.rate, row.batch ?? 1, setup, toolCost);
  work.step("cost", cost, { time, rate: machine.rate, batch: row.batch, setup, toolCost, sharing });
  work.set({ cost });
  const money = {
    machine: (machine.rate * time) / 3600,
    setup: (machine.rate * setup) / (3600 * (row.batch ?? 1)),
    tool: toolCost,
  };
  return { time: seconds, money, life };
}

/**
 * Life of an edge [min]. The list's reference life belongs to carbide at the top of its speed range; for HSS nothing
 * is known.
 */
function edgeLife({ work, material }: Job, { tool, cutting }: Done): number | undefined {
  const reference = material?.speedCarbideHigh;
  if (!cutting || tool === undefined || tool.substrate === "hss" || reference === undefined) return undefined;
  if (!material?.taylorN || !material.referenceLife) return undefined;
  const facts = {
    speed: cutting.surfaceSpeed,
    reference,
    life: material.referenceLife,
    exponent: material.taylorN,
  };
  try {
    const life = toolLife(facts.speed, reference, facts.life, facts.exponent);
    work.step("life", life, facts);
    return life;
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    work.find("no-life", { error });
    return undefined;
  }
}
