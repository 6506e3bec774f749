/**
 * What bending does to a size, judged. Two things are told apart. The bias is the same on every part: gauging the first
 * part and a wear value take it away, as long as the wear value reaches. The scatter changes from part to part and nothing
 * takes it away.
 */
import type { SizeName } from "../../findings.ts";
import { wearChange } from "../../thread/gauging.ts";
import { bendingShare, EXPANSION, HOLDER_REPEATS, RUNOUT_SHARE, scatterShare, WARMER } from "./choices.ts";
import type { Job } from "./job.ts";
import { over, under } from "./slack.ts";

export interface SizeBand {
  /** Limits of the size [mm]; the middle is wanted. */
  readonly low: number;
  readonly high: number;
  readonly of: SizeName;
  /** Inside, a deeper path makes the size larger. */
  readonly inside: boolean;
  /** Walls that the size spans: 2 for a diameter, 1 for a single wall. */
  readonly walls: 1 | 2;
  /** Size without bending, at the wear value that stands in the control [mm]. */
  readonly programmed: number;
  /** Size that comes out at it, where the tool bends least and where it bends most [mm]. */
  readonly ends: readonly [least: number, most: number];
  /** Radius wear value that brings the end that bends least to the middle, or null when none does [mm]. */
  readonly start: () => number | null;
}

/** The size of a row against its limits: what is measured, else what is predicted. */
export function judgeSize(job: Job, band: SizeBand): void {
  const { work, row, machine } = job;
  const { low, high, of, programmed, ends } = band;
  const half = (high - low) / 2;
  const centre = (high + low) / 2;
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  // What bending does is the change from the programmed size; what varies of it from part to part is the scatter.
  const share = scatterShare(machine);
  const bent = share * Math.max(...ends.map((s) => Math.abs(s - programmed)));
  const other = otherScatter(job, band);
  const scatter = Math.hypot(bent, other);
  work.set({ sizeMin: low, sizeMax: high });
  work.step("scatter", scatter, { share, other });
  judgeScatter(job, scatter, half, of);
  // A single wall has no nominal size in the row that a measurement could be compared with.
  if (of !== "wall error" && row.measured !== undefined) {
    work.set({ size: row.measured });
    judgeMeasured(job, band, row.measured, centre, half);
    return;
  }
  work.set({ size: (least + most) / 2 });
  work.step("size", (least + most) / 2, { of, programmed, least, most });
  const off = ends.map((s) => Math.abs(s - centre));
  const bias = Math.max(...off);
  const good = least <= centre && most >= centre ? 0 : Math.min(...off);
  work.limit("deflection", Math.abs((least + most) / 2 - centre), half, "length", [good / half, bias / half]);
  const silent = !over(bias + scatter, bendingShare(machine) * half);
  if (silent && row.wearValue === undefined) return;
  const start = band.start();
  if (start !== null) {
    work.set({ startWearValue: start });
    work.step("startWear", start);
  }
  if (silent) return;
  if (!over(bias, half)) {
    work.find("gauge-first", { value: bias, limit: half, of, start, typed: row.wearValue !== undefined });
    return;
  }
  const worst = Math.abs(least - centre) > Math.abs(most - centre) ? least : most;
  const facts = { value: worst, limit: worst < low ? low : high, of, least, most, low, high };
  // Past the limit at every end, on the side where the metal is gone: nothing makes that part good.
  const scrap = band.inside ? least > high : most < low;
  if (start === null || scrap) work.find("size-out", { ...facts, scrap, start });
  else work.find("size-may-be-out", { ...facts, start, typed: row.wearValue !== undefined });
}

/**
 * What changes a size from part to part beside bending, as half of its range [mm]: the tooth that stands out most makes the wall,
 * and stands between true and the listed runout from one clamping to the next; the holder's seat; the part's warmth. Independent of
 * each other, so they add up as squares.
 */
function otherScatter({ tool, material, machine }: Job, { low, high, of, walls }: SizeBand): number {
  const seat = Math.hypot(RUNOUT_SHARE * (tool?.runout ?? 0), machine?.seatRepeats ?? HOLDER_REPEATS);
  const warm =
    of === "wall error" ? 0 : EXPANSION[material?.group ?? "p"] * (machine?.warmer ?? WARMER) * ((low + high) / 2);
  return Math.hypot(walls * seat, warm);
}

function judgeScatter({ work, machine }: Job, scatter: number, half: number, of: SizeName): void {
  const share = bendingShare(machine) * half;
  work.limit("scatter", scatter, share, "length");
  if (over(scatter, half)) work.find("size-scatter", { value: scatter, limit: half, of }, "stop");
  else if (over(scatter, share)) work.find("size-scatter", { value: scatter, limit: share, of }, "check");
}

/** A measured size beats the prediction. Outside its limits it is never ok; the change of the wear value is said. */
function judgeMeasured({ work, row }: Job, band: SizeBand, measured: number, centre: number, half: number): void {
  const { low, high, of, inside, walls } = band;
  const away = inside ? 1 : -1;
  const change = (away * 2 * wearChange(measured, centre)) / walls;
  work.step("wearChange", change, { measured, wanted: centre, inside });
  work.find("wear-change", {
    measured,
    wanted: centre,
    change,
    becomes: row.wearValue === undefined ? undefined : row.wearValue + change,
  });
  work.limit("deflection", Math.abs(measured - centre), half, "length");
  const [small, large] = [under(measured, low), over(measured, high)];
  if (!small && !large) return;
  const scrap = inside ? large : small;
  work.find(
    "measured-out",
    { value: measured, limit: small ? low : high, of, scrap, change },
    scrap ? "stop" : "check",
  );
}
