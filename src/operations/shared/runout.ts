/** Runout judged as chip per tooth: the tooth that cuts most against the list, the one that cuts least against the least chip. */
import { runoutChips } from "../../mill/runout.ts";
import { RUNOUT_OVER } from "./choices.ts";
import type { Job } from "./job.ts";
import { over, under } from "./slack.ts";

export interface RunningOut {
  /** Largest radial chip of a cutter that runs true, and the largest that the list allows [mm]. */
  readonly chip: number;
  readonly listed: number;
  readonly runout: number | undefined;
  readonly teeth: number;
  /** Chip below which the edge rubs, as a radial chip [mm]; 0 where that is not known. */
  readonly leastChip: number;
  /** How many listed chips the tooth that cuts most may take before the row is to be looked at; left out, as for threads. */
  readonly check?: number;
}

export function judgeRunout(
  { work }: Job,
  { chip, listed, runout, teeth, leastChip, check = RUNOUT_OVER.check }: RunningOut,
): void {
  if (!runout || teeth < 2) return;
  const { most, least } = runoutChips(chip, runout, teeth);
  work.step("mostChip", most, { runout, teeth });
  // The even chip has its own judgement; here only what runout adds.
  const meant = Math.max(listed, chip);
  for (const [share, severity] of [
    [check, "check"],
    [RUNOUT_OVER.said, "ok"],
  ] as const)
    if (over(most, share * meant))
      work.find("runout-thick", { value: most, limit: share * meant, even: chip, runout }, severity);
  const limit = leastChip / 2;
  if (!under(chip, limit) && under(least, limit)) work.find("runout-idle", { value: least, limit, runout });
}
