/** Limits that every operation is held to, as ratios and findings. */

import type { SizeName } from "../../findings.ts";
import type { Tool } from "../../table/lists.ts";
import { wearChange } from "../../thread/gauging.ts";
import { largestMisesStress, largestPrincipalStress } from "../../tool/stress.ts";
import type { ToolBeam } from "./beam.ts";
import {
  BAD_END,
  BENDING_SHARE,
  GOOD_END,
  runoutFactor,
  SPINDLE_EFFICIENCY,
  STRESS_SAFETY,
  UNCERTAINTY,
} from "./choices.ts";
import type { Job } from "./job.ts";

/**
 * Spindle power [kW] and torque against the machine. Torque at the cutter [N·m]. A tool that fills its hole cannot be
 * relieved: where the spindle's torque is not enough it `stalls` in the cut.
 */
export function judgePower({ work, machine }: Job, meanTorque: number, rpm: number, stalls = false): number {
  const power = (2 * Math.PI * rpm * meanTorque) / 60000 / SPINDLE_EFFICIENCY;
  work.step("power", power, { efficiency: SPINDLE_EFFICIENCY });
  work.set({ power });
  const over = 1 + UNCERTAINTY.force;
  if (machine?.power !== undefined) {
    const load = work.limit("power", power, machine.power, "power", [
      (power * (2 - over)) / machine.power,
      (power * over) / machine.power,
    ]);
    if (load > 1) {
      work.find(
        "power-over",
        { value: power, limit: machine.power, most: power * over, short: machine.power30 },
        power > (machine.power30 ?? machine.power) ? "stop" : "check",
      );
    }
  }
  if (machine?.torque !== undefined) {
    const torque = meanTorque / SPINDLE_EFFICIENCY;
    const load = work.limit("torque", torque, machine.torque, "torque", [
      ((2 - over) * torque) / machine.torque,
      (over * torque) / machine.torque,
    ]);
    if (load > 1) {
      const stuck = stalls && (2 - over) * torque > machine.torque;
      work.find("torque-over", { value: torque, limit: machine.torque, stalls: stuck }, stuck ? "stop" : "check");
    }
  }
  return power;
}

/** Stress of the tool against its rupture strength over the safety factor; answers the share at the nominal force. */
export function judgeStress(
  { work, material }: Job,
  beam: ToolBeam,
  tool: Pick<Tool, "ruptureStrength" | "notchFactor" | "substrate" | "tool" | "runout">,
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
  const largest = tool.substrate === "hss" ? largestMisesStress : largestPrincipalStress;
  const { stress } = largest(force, beam.loaded(loadFromTip), { torque, notchFactor: notch, holderNotchFactor: 1 });
  const allowed = tool.ruptureStrength / STRESS_SAFETY;
  work.step("stress", stress, { notch, allowed, safety: STRESS_SAFETY });
  const high = (1 + UNCERTAINTY.force) * runoutFactor(chip, tool.runout, material?.exponent);
  const load = work.limit("stress", stress, allowed, "stress", [
    ((1 - UNCERTAINTY.force) * stress) / allowed,
    (high * stress) / allowed,
  ]);
  work.set({ stress: stress / allowed });
  if (load > 1) {
    work.find(
      "tool-stress",
      { value: stress * high, limit: allowed, nominal: stress },
      load > STRESS_SAFETY / 2 ? "stop" : "check",
    );
  }
}

/** Chip against the least chip that the edge cuts rather than rubs. */
export function judgeChip({ work, material }: Job, chip: number, edgeRadius: number | undefined, flank = false): void {
  const fraction = material?.leastChip;
  if (fraction === undefined || edgeRadius === undefined || edgeRadius === 0 || chip <= 0) return;
  const least = fraction * edgeRadius;
  work.step("leastChip", least, { fraction });
  work.limit("leastChip", least, chip, "length");
  if (chip < least) work.find("chip-too-thin", { value: chip, limit: least, flank });
}

export interface SizeJudgement {
  /** Size without bending, its limits, and what bending takes off it [mm] at the two force models. */
  readonly programmed: number;
  readonly low: number;
  readonly high: number;
  readonly errors: readonly [number, number];
  readonly of: SizeName;
}

/**
 * Size that the control is told to make: the wanted one, moved by the wear value that stands in it (positive: away
 * from the wall). A measured size gets the change of the wear value that would put it right.
 */
export function programmedSize({ work, row }: Job, wanted: number, inside: boolean): number {
  const sign = inside ? 1 : -1;
  if (row.measured !== undefined) {
    const change = sign * wearChange(row.measured, wanted);
    work.step("wearChange", change, { measured: row.measured, wanted, inside });
    work.find("wear-change", {
      measured: row.measured,
      wanted,
      change,
      becomes: row.wearValue === undefined ? undefined : row.wearValue + change,
    });
  }
  return wanted - sign * 2 * (row.wearValue ?? 0);
}

/** Predicted size against its limits, at the bad end of forces and flexibility. */
export function judgeSize({ work }: Job, { programmed, low, high, errors, of }: SizeJudgement): void {
  const middle = (errors[0] + errors[1]) / 2;
  const size = programmed + middle;
  const corners = errors.flatMap((e) => [programmed + e * GOOD_END, programmed + e * BAD_END]);
  const least = Math.min(...corners);
  const most = Math.max(...corners);
  const half = (high - low) / 2;
  const centre = (high + low) / 2;
  const allowed = BENDING_SHARE * half;
  const off = (s: number) => Math.abs(s - centre);
  const bad = Math.max(off(least), off(most));
  const good = least <= centre && most >= centre ? 0 : Math.min(off(least), off(most));
  work.set({ size, sizeMin: low, sizeMax: high });
  work.step("size", size, { of, programmed, least, most });
  work.limit("deflection", off(size), allowed, "length", [good / allowed, bad / allowed]);
  if (least < low || most > high) {
    const out = least < low ? least : most;
    work.find(size < low || size > high ? "size-out" : "size-may-be-out", {
      value: out,
      limit: out < low ? low : high,
      of,
      size,
      least,
      most,
      low,
      high,
    });
  } else if (bad > allowed * 1.0000001) {
    work.find("deflection-share", { value: bad, limit: allowed, of });
  }
}

/** Table feed against the machine and, on an arc, against what its acceleration allows there. Answers the feed to program. */
export function judgeFeed({ work, machine }: Job, feed: number, arcLimit?: number): number {
  let programmed = feed;
  if (machine?.maxFeed !== undefined) {
    const cap = machine.maxFeed * 1000;
    programmed = Math.min(feed, cap);
    work.limit("feed", programmed, cap, "feed");
    if (feed > cap) work.find("feed-capped", { value: feed, limit: cap });
  }
  if (arcLimit !== undefined) {
    work.limit("arcFeed", programmed, arcLimit, "feed");
    if (programmed > arcLimit) work.find("feed-not-reached", { value: programmed, limit: arcLimit });
  }
  return programmed;
}
