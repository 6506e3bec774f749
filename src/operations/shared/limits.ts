/** Limits that every operation is held to, as ratios and findings. */
import type { FindingCode, LimitKey } from "../../findings.ts";
import { runoutForce } from "../../mill/runout.ts";
import type { Tool } from "../../table/lists.ts";
import { largestMisesStress, largestPrincipalStress } from "../../tool/stress.ts";
import type { DimensionName } from "../../units.ts";
import type { ToolBeam } from "./beam.ts";
import { RUBS, SPINDLE_EFFICIENCY, STRESS_SAFETY, UNCERTAINTY } from "./choices.ts";
import type { Job } from "./job.ts";
import { over, under } from "./slack.ts";
import type { Work } from "./work.ts";

/** A force at the ends of what is known of it. */
export const FORCE = { low: 1 - UNCERTAINTY.force, high: 1 + UNCERTAINTY.force } as const;

/** The limit of what goes with a force; answers the load at its bad end. */
function forceLimit(
  work: Work,
  key: LimitKey,
  value: number,
  limit: number,
  dimension: DimensionName,
  high: number = FORCE.high,
): number {
  return work.limit(key, value, limit, dimension, [(FORCE.low * value) / limit, (high * value) / limit]);
}

/** What breaks a hole tool: a stop where the nominal load is over it, else looked at where the bad end is over its share. */
export function judgeBreaking(
  work: Work,
  [key, code, dimension]: readonly [
    LimitKey,
    Extract<FindingCode, "drill-torsion" | "drill-buckles" | "tap-torsion">,
    DimensionName,
  ],
  value: number,
  breaks: number,
  safety: number,
): void {
  const allowed = breaks / safety;
  if (forceLimit(work, key, value, allowed, dimension) > 1)
    work.find(code, { value: FORCE.high * value, limit: allowed, nominal: value }, value > breaks ? "stop" : "check");
}

/**
 * Spindle power [kW] and torque against the machine. Torque at the cutter [N·m]. A tool that fills its hole cannot be
 * relieved: where the spindle's torque is not enough it `stalls` in the cut.
 */
export function judgePower({ work, machine }: Job, meanTorque: number, rpm: number, stalls = false): void {
  const power = (2 * Math.PI * rpm * meanTorque) / 60000 / SPINDLE_EFFICIENCY;
  work.step("power", power, { efficiency: SPINDLE_EFFICIENCY });
  work.set({ power });
  if (machine?.power !== undefined && forceLimit(work, "power", power, machine.power, "power") > 1)
    work.find(
      "power-over",
      { value: power, limit: machine.power, most: power * FORCE.high, short: machine.power30 },
      power > (machine.power30 ?? machine.power) ? "stop" : "check",
    );
  if (machine?.torque !== undefined) {
    const torque = meanTorque / SPINDLE_EFFICIENCY;
    if (forceLimit(work, "torque", torque, machine.torque, "torque") > 1) {
      const stuck = stalls && FORCE.low * torque > machine.torque;
      work.find("torque-over", { value: torque, limit: machine.torque, stalls: stuck }, stuck ? "stop" : "check");
    }
  }
}

/** Teeth of a tool whose list row does not say. */
const UNKNOWN_TEETH = 4;

type Loaded = Pick<
  Tool,
  "ruptureStrength" | "safetyFactor" | "notchFactor" | "substrate" | "tool" | "runout" | "teeth"
>;

/** Largest stress in the tool [MPa]: carbide is brittle, high-speed steel yields. */
export function stressOf(beam: ToolBeam, tool: Loaded, force: number, torque: number, loadFromTip: number): number {
  const largest = tool.substrate === "hss" ? largestMisesStress : largestPrincipalStress;
  const notchFactor = tool.notchFactor ?? 1;
  return largest(force, beam.loaded(loadFromTip), { torque, notchFactor, holderNotchFactor: 1 }).stress;
}

/** Stress at the bad end over the nominal one: an uncertain force on the tooth that runs out most. */
export function badStress(tool: Loaded, chip: number, exponent: number, runout = tool.runout ?? 0): number {
  return FORCE.high * runoutForce(Math.max(0, chip), runout, tool.teeth ?? UNKNOWN_TEETH, exponent);
}

/** Stress of the tool against its rupture strength over the safety factor; answers the share at the nominal force. */
export function judgeStress(
  { work, material }: Job,
  beam: ToolBeam,
  tool: Loaded,
  force: number,
  torque: number,
  loadFromTip: number,
  chip: number,
): void {
  if (tool.ruptureStrength === undefined) {
    work.find("no-strength", { tool: tool.tool });
    return;
  }
  const notch = tool.notchFactor ?? 1;
  const stress = stressOf(beam, tool, force, torque, loadFromTip);
  const safety = tool.safetyFactor ?? STRESS_SAFETY;
  const allowed = tool.ruptureStrength / safety;
  work.step("stress", stress, { notch, allowed, safety });
  const high = badStress(tool, chip, material?.exponent ?? 0);
  const load = forceLimit(work, "stress", stress, allowed, "stress", high);
  work.set({ stress: stress / allowed });
  if (load > 1) {
    work.find(
      "tool-stress",
      { value: stress * high, limit: allowed, nominal: stress },
      load > safety / 2 ? "stop" : "check",
    );
  }
}

/** Chip that an edge cuts rather than rubs [mm]; 0 where list or tool does not tell. */
export const leastChipOf = ({ material }: Pick<Job, "material">, tool: Pick<Tool, "edgeRadius"> | undefined): number =>
  (material?.leastChip ?? 0) * (tool?.edgeRadius ?? 0);

/**
 * Chip against the least chip that the edge cuts rather than rubs. Down to half of it a note: the least chip goes by the edge
 * radius, which few shops know.
 */
export function judgeChip(job: Job, chip: number, tool: Pick<Tool, "edgeRadius"> | undefined, flank = false): void {
  const { work, material } = job;
  const least = leastChipOf(job, tool);
  if (least === 0) return;
  work.step("leastChip", least, { fraction: material!.leastChip! });
  work.limit("leastChip", least, chip, "length");
  if (under(chip, RUBS * least)) work.find("chip-too-thin", { value: chip, limit: RUBS * least, flank });
  else if (under(chip, least)) work.find("chip-too-thin", { value: chip, limit: least, flank }, "ok");
}

/**
 * Table feed against the machine and, on an arc, against what its acceleration allows there. Answers the feed to program. A feed
 * that the row chose itself is held to what the machine reaches; one that was typed is kept, and judged.
 */
export function judgeFeed({ work, machine }: Job, feed: number, arcLimit?: number, typed = true): number {
  let programmed = feed;
  if (!typed) {
    const cap = machine?.maxFeed === undefined ? Number.POSITIVE_INFINITY : machine.maxFeed * 1000;
    const limit = Math.min(cap, arcLimit ?? Number.POSITIVE_INFINITY);
    programmed = Math.min(feed, limit);
    if (Number.isFinite(cap)) work.limit("feed", programmed, cap, "feed");
    if (arcLimit !== undefined) work.limit("arcFeed", programmed, arcLimit, "feed");
    if (over(feed, limit)) work.find("feed-held", { value: feed, limit, by: limit === arcLimit ? "arc" : "machine" });
    return programmed;
  }
  if (machine?.maxFeed !== undefined) {
    const cap = machine.maxFeed * 1000;
    programmed = Math.min(feed, cap);
    work.limit("feed", programmed, cap, "feed");
    if (over(feed, cap)) work.find("feed-capped", { value: feed, limit: cap });
  }
  if (arcLimit !== undefined) {
    work.limit("arcFeed", programmed, arcLimit, "feed");
    if (over(programmed, arcLimit)) work.find("feed-not-reached", { value: programmed, limit: arcLimit });
  }
  return programmed;
}
