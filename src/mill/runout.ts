/**
 * Runout as chip per tooth. A cutter that runs out by q (full indicator reading) carries its teeth on circles that differ: tooth i
 * stands at q/2·cos(a + 2πi/z) beside the mean. A tooth cuts from what the last tooth to reach that depth has left, m teeth before:
 *
 *   h_i = min over m of (m·h + ΔR over m teeth),   ΔR at most q·sin(πm/z), at least −q·sin(πm/z), 0 at m = z
 *
 * So no tooth takes more than z even chips (those of all the teeth it replaces), and none less than nothing.
 */
import { count, notNegative } from "../check.ts";
import { MOST_TEETH } from "./turn.ts";

export interface ToothChips {
  /** Chip of the tooth that cuts most and of the one that cuts least, at the worst way the cutter can sit [mm]. */
  readonly most: number;
  readonly least: number;
}

/**
 * Largest chip of the tooth that cuts most, and of the one that cuts least.
 *
 *   most = min over m = 1 … z of (m·h + q·sin(πm/z)),   least = max(0, min over m of (m·h − q·sin(πm/z)))
 *
 * On a flank both stand normal to it: take h and q times the sine of the half angle.
 *
 * @param chip - h, largest chip of a cutter that runs true [mm], scalar, ≥ 0
 * @param runout - q, full indicator reading at the edge [mm], scalar, ≥ 0
 * @param teeth - z [-], whole, ≥ 1
 * @returns most and least [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * runoutChips(0.02, 0.01, 2) //=> {"most":0.03,"least":0.01}
 * runoutChips(0.02, 1, 3) //=> {"most":0.06,"least":0}
 * runoutChips(0.02, 0.01, 1) //=> {"most":0.02,"least":0.02}
 */
export function runoutChips(chip: number, runout: number, teeth: number): ToothChips {
  const h = notNegative("chip", chip);
  const q = notNegative("runout", runout);
  const z = count("teeth", teeth, 1, MOST_TEETH);
  let [most, least] = [z * h, z * h];
  for (let m = 1; m < z; m++) {
    const beside = q * Math.sin((Math.PI * m) / z);
    most = Math.min(most, m * h + beside);
    least = Math.min(least, m * h - beside);
  }
  return { most, least: Math.max(0, least) };
}

/**
 * Force of the tooth that cuts most over the even one, by Kienzle's law.
 *
 *   (most/h)^(1−m), at most z^(1−m)
 *
 * @param chip - h, largest chip of a cutter that runs true [mm], scalar, ≥ 0
 * @param runout - q, full indicator reading at the edge [mm], scalar, ≥ 0
 * @param teeth - z [-], whole, ≥ 1
 * @param exponent - m, of the specific force [-], scalar
 * @returns factor [-], 1 where nothing is cut
 * @throws TradeError "range" when an argument is outside its limits
 * @source KIENZLE1952 DERIVED
 * @example
 * runoutForce(0.02, 0.01, 2, 0) //=> 1.5
 * runoutForce(0.001, 0.01, 3, 0.25) //=> 2.2795071
 */
export function runoutForce(chip: number, runout: number, teeth: number, exponent: number): number {
  const { most } = runoutChips(chip, runout, teeth);
  return chip > 0 ? (most / chip) ** (1 - exponent) : 1;
}
