/** What a springy tool leaves: each pass solved for the depth really cut, the rest carried to the next. */
import { notNegative } from "../check.ts";

export interface PassSeries {
  /** Depth that each pass is programmed to reach, from the wall before the first [mm], rising or level. */
  readonly depths: readonly number[];
  /** Bending of the tool where it cuts, per force [mm/N]. */
  readonly flexibility: number;
  /** Force normal to the wall [N] when the wall goes from one depth to another; + pushes the tool away from it. */
  readonly normalForce: (from: number, to: number) => number;
  /** Thickest chip [mm] of a pass between two depths; with `leastChip` it decides whether the pass cuts at all. */
  readonly chip?: (from: number, to: number) => number;
  /** Chip [mm] below which the edge rubs: such a pass takes nothing off. */
  readonly leastChip?: number;
}

/**
 * Depth of the wall after each pass of a tool that bends.
 *
 *   w_i = t_i − c·F(w_{i−1} → w_i)
 *
 * solved for w_i by the secant method; a pass whose force would hold the tool off altogether, or whose chip is
 * under the least chip, leaves the wall as it was. A force that pulls in (negative) makes w_i exceed t_i.
 *
 * @param series - programmed depths [mm], flexibility c [mm/N], force F(from, to) [N], chip rule [mm]
 * @returns depth after each pass [mm], as long as `series.depths`
 * @throws TradeError "range" when the flexibility or a depth is negative
 * @source KLINE1982 COMMON
 * @example
 * bentPasses({ depths: [1, 1], flexibility: 0.001, normalForce: (a, b) => 250 * (b - a) }) //=> [0.8, 0.96]
 */
export function bentPasses(series: PassSeries): number[] {
  const c = notNegative("flexibility", series.flexibility);
  let wall = 0;
  return series.depths.map((depth) => {
    const t = notNegative("depth", depth);
    if (t <= wall) return wall;
    if (series.leastChip !== undefined && series.chip && series.chip(wall, t) < series.leastChip) return wall;
    wall = Math.max(wall, solvePass(wall, t, c, series.normalForce));
    return wall;
  });
}

/** Root of w − t + c·F(a, w) near t. */
function solvePass(a: number, t: number, c: number, force: PassSeries["normalForce"]): number {
  if (c === 0) return t;
  const rest = (w: number) => w - t + c * force(a, w);
  let w0 = t;
  let r0 = rest(t);
  const held = t - r0 <= a;
  // Force roughly follows the depth cut: start from the linear estimate.
  let w1 = held ? a + ((t - a) * (t - a)) / (t - a + r0) : t - r0 * ((t - a) / (t - a + r0));
  for (let i = 0; i < 20; i++) {
    if (w1 <= a) w1 = a + (t - a) * 1e-6;
    const r1 = rest(w1);
    if (Math.abs(r1) <= 1e-12 * (t - a) || r1 === r0) return w1;
    const next = w1 - (r1 * (w1 - w0)) / (r1 - r0);
    w0 = w1;
    r0 = r1;
    if (next <= a && w1 <= a + (t - a) * 2e-6) return a;
    w1 = next;
  }
  return w1;
}
