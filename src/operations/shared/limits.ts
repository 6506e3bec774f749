/** Limits that every operation is held to, as ratios and reasons. */

import type { Tool } from "../../table/read.ts";
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

/** Spindle power [kW] and torque against the machine. Torque at the cutter [N·m]. */
export function judgePower({ work, machine }: Job, meanTorque: number, rpm: number): number {
  const power = (2 * Math.PI * rpm * meanTorque) / 60000 / SPINDLE_EFFICIENCY;
  STEPS: work.step("power", "spindle power", power, "P = 2π·n·T/(60000·η), η = 0.85", "MH", {
    dimension: "power",
  });
  work.set({ power });
  const over = 1 + UNCERTAINTY.force;
  if (machine?.power !== undefined) {
    const load = work.limit("power", "spindle power", power, machine.power, "power", [
      (power * (2 - over)) / machine.power,
      (power * over) / machine.power,
    ]);
    if (load > 1) {
      work.reason(
        power > (machine.power30 ?? machine.power) ? "stop" : "check",
        "power-over",
        `spindle power ${work.say(power, "power")} (up to ${work.say(power * over, "power")}) against ${work.say(machine.power, "power")} of the machine${machine.power30 === undefined ? "" : ` (${work.say(machine.power30, "power")} for 30 min)`}`,
        "take less depth or feed",
        { value: power, limit: machine.power, dimension: "power" },
      );
    }
  }
  if (machine?.torque !== undefined) {
    const load = work.limit("torque", "spindle torque", meanTorque / SPINDLE_EFFICIENCY, machine.torque, "torque", [
      ((2 - over) * meanTorque) / SPINDLE_EFFICIENCY / machine.torque,
      (over * meanTorque) / SPINDLE_EFFICIENCY / machine.torque,
    ]);
    if (load > 1) {
      work.reason(
        "check",
        "torque-over",
        `spindle torque ${work.say(meanTorque / SPINDLE_EFFICIENCY, "torque")} against ${work.say(machine.torque, "torque")} of the machine`,
        "take less depth or feed, or a smaller cutter",
        { value: meanTorque / SPINDLE_EFFICIENCY, limit: machine.torque, dimension: "torque" },
      );
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
    work.reason(
      "ok",
      "no-strength",
      `${tool.tool} has no rupture strength in the list: its stress is not judged`,
      "fill in Rupture strength",
    );
    return;
  }
  const notchFactor = tool.notchFactor ?? 1;
  const largest = tool.substrate === "hss" ? largestMisesStress : largestPrincipalStress;
  const { stress } = largest(force, beam.loaded(loadFromTip), { torque, notchFactor, holderNotchFactor: 1 });
  const allowed = tool.ruptureStrength / STRESS_SAFETY;
  STEPS: work.step(
    "stress",
    "largest stress in the tool (estimate)",
    stress,
    `bending and torsion at each section, notch factor ${notchFactor}; allowed ${work.say(allowed, "stress")} = rupture strength / ${STRESS_SAFETY}`,
    "ROARK",
    { dimension: "stress" },
  );
  const high = (1 + UNCERTAINTY.force) * runoutFactor(chip, tool.runout, material?.exponent);
  const load = work.limit("stress", "tool stress", stress, allowed, "stress", [
    ((1 - UNCERTAINTY.force) * stress) / allowed,
    (high * stress) / allowed,
  ]);
  work.set({ stress: stress / allowed });
  if (load > 1) {
    work.reason(
      load > STRESS_SAFETY / 2 ? "stop" : "check",
      "tool-stress",
      `tool stress ${work.say(stress, "stress")} (up to ${work.say(high * stress, "stress")} with runout and an uncertain force) against the allowed ${work.say(allowed, "stress")}: it may break`,
      "more passes, less feed, shorter stick-out or a thicker neck",
      { value: stress * high, limit: allowed, dimension: "stress" },
    );
  }
}

/** Chip against the least chip that the edge cuts rather than rubs. */
export function judgeChip({ work, material }: Job, chip: number, edgeRadius: number | undefined, what = "chip"): void {
  const fraction = material?.leastChip;
  if (fraction === undefined || edgeRadius === undefined || edgeRadius === 0 || chip <= 0) return;
  const least = fraction * edgeRadius;
  STEPS: work.step("leastChip", "least chip", least, `${fraction} × edge radius`, "COMMON", { dimension: "length" });
  work.limit("leastChip", "least chip", least, chip, "length");
  if (chip < least) {
    work.reason(
      "check",
      "chip-too-thin",
      `${what} ${work.say(chip)} is under the least chip ${work.say(least)}: the edge rubs`,
      "more feed per tooth, fewer passes, or a sharper tool",
      { value: chip, limit: least, dimension: "length" },
    );
  }
}

export interface SizeJudgement {
  /** Size without bending, its limits, and what bending takes off it [mm] at the two force models. */
  readonly programmed: number;
  readonly low: number;
  readonly high: number;
  readonly errors: readonly [number, number];
  readonly name: string;
}

/**
 * Size that the control is told to make: the wanted one, moved by the wear value that stands in it (positive: away
 * from the wall). A measured size gets the change of the wear value that would put it right.
 */
export function programmedSize({ work, row }: Job, wanted: number, inside: boolean): number {
  const sign = inside ? 1 : -1;
  if (row.measured !== undefined) {
    const change = sign * wearChange(row.measured, wanted);
    STEPS: work.step(
      "wearChange",
      "add to the wear value (radius)",
      change,
      inside ? "(measured − wanted)/2" : "(wanted − measured)/2",
      "COMMON",
      {
        dimension: "length",
        cell: inside ? work.formula("WEARCHANGE", [row.measured, "length"], [wanted, "length"]) : undefined,
      },
    );
    work.reason(
      "ok",
      "wear-change",
      `measured ${work.say(row.measured)}, wanted ${work.say(wanted)}: add ${work.say(change)} to the radius wear value${row.wearValue === undefined ? "" : `, which makes it ${work.say(row.wearValue + change)}`}`,
      "write down what was changed; gauge the next part",
    );
  }
  return wanted - sign * 2 * (row.wearValue ?? 0);
}

/** Predicted size against its limits, at the bad end of forces and flexibility. */
export function judgeSize({ work }: Job, { programmed, low, high, errors, name }: SizeJudgement): void {
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
  STEPS: work.step(
    "size",
    name,
    size,
    `programmed ${work.say(programmed)} and what bending leaves; between ${work.say(least)} and ${work.say(most)}`,
    "KLINE1982",
    {
      dimension: "length",
    },
  );
  work.limit("deflection", "deflection", off(size), allowed, "length", [good / allowed, bad / allowed]);
  if (least < low || most > high) {
    const out = least < low ? least : most;
    work.reason(
      size < low || size > high ? "stop" : "check",
      size < low || size > high ? "size-out" : "size-may-be-out",
      `${name} comes out at ${work.say(size)}, down to ${work.say(least)} and up to ${work.say(most)}; ${work.say(low)} to ${work.say(high)} is allowed`,
      "a spring pass, more passes, shorter stick-out or a stiffer tool",
      { value: out, limit: out < low ? low : high, dimension: "length" },
    );
  } else if (bad > allowed * 1.0000001) {
    work.reason(
      "check",
      "deflection-share",
      `bending moves the ${name} by up to ${work.say(bad)}; the share kept for it is ${work.say(allowed)}`,
      "a spring pass, more passes, shorter stick-out or a stiffer tool",
      { value: bad, limit: allowed, dimension: "length" },
    );
  }
}

/** Table feed against the machine and, on an arc, against what its acceleration allows there. Answers the feed to program. */
export function judgeFeed({ work, machine }: Job, feed: number, arcLimit?: number): number {
  let programmed = feed;
  if (machine?.maxFeed !== undefined) {
    const cap = machine.maxFeed * 1000;
    programmed = Math.min(feed, cap);
    work.limit("feed", "table feed", programmed, cap, "feed");
    if (feed > cap) {
      work.reason(
        "check",
        "feed-capped",
        `table feed ${work.say(feed, "feed")} is above the machine's ${work.say(cap, "feed")} and was held there`,
        "fewer revolutions or teeth for the same chip",
        { value: feed, limit: cap, dimension: "feed" },
      );
    }
  }
  if (arcLimit !== undefined) {
    work.limit("arcFeed", "feed on this radius", programmed, arcLimit, "feed");
    if (programmed > arcLimit) {
      work.reason(
        "check",
        "feed-not-reached",
        `the machine reaches ${work.say(arcLimit, "feed")} on this radius, not the programmed ${work.say(programmed, "feed")}: the chip is thinner and the time longer than programmed`,
        "program the lower feed with fewer revolutions, or use a machine that accelerates faster",
        { value: programmed, limit: arcLimit, dimension: "feed" },
      );
    }
  }
  return programmed;
}
