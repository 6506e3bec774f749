/** What a springy tool leaves: each pass solved for the depth really cut, the rest carried to the next. */
import { notNegative } from "../check.ts";
import { edgeShare, layerLeft } from "./edge.ts";

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

export interface BluntPasses {
  /** Depth that each pass is programmed to reach, from the wall before the first [mm], rising or level. */
  readonly depths: readonly number[];
  /** c, bending of the tool where it cuts, per force [mm/N]. */
  readonly flexibility: number;
  /**
   * F, force normal to the wall [N] when the wall goes from one depth to a deeper one; + pushes the tool away from it. `edge` is
   * the share of the full edge (ploughing) force, 0 to 1. Never asked for at from = to.
   */
  readonly normalForce: (from: number, to: number, edge: number) => number;
  /** r∞, thickest layer that the edge leaves, in the direction of the depths [mm]; 0 is a sharp edge. */
  readonly layer: number;
  /** Depth beyond which the tool cannot be pulled in [mm]; without it twice the pass. */
  readonly deepest?: number;
}

export interface PassLeft {
  /** Depth that the edge's path really reached, and depth of the wall it left [mm]. */
  readonly path: number;
  readonly wall: number;
}

/** A pass that would take less than this share of its depth does not touch the wall. */
const UNTOUCHED = 1e-12;
/** Share of a pass to which its path is solved. */
const SOLVED = 1e-9;

/**
 * What each pass of a springy tool with a blunt edge leaves.
 *
 *   p = t − c·F(a → p),   wall = p − r∞·(1 − e^(−(p − a)/r∞)),   a = wall before
 *
 * A pass that does not touch the wall (t ≤ a) leaves it as it was.
 *
 * More passes never leave a worse wall while F pushes away, grows with p and falls with a: then
 *   dp/da = −c·Fa/(1 + c·Fp) ≥ 0,   dp/dt = 1/(1 + c·Fp) ≥ 0,   dwall = (1 − r′)·dp + r′·da ≥ 0   since 0 ≤ r′ ≤ 1,
 * so the wall rises with t and with the wall before. A spring pass starts from a wall ≥ a and so ends at one ≥ a; of n + 1
 * passes with equal areas the last k are programmed no shallower than the last k of n, and the first of them starts at a wall ≥ 0.
 * And 0 ≤ r ≤ p − a keeps every wall between a and t.
 *
 * @param series - programmed depths [mm], flexibility c [mm/N], force F(from, to, edge) [N], layer r∞ [mm], deepest [mm]
 * @returns path and wall after each pass [mm], as long as `series.depths`
 * @throws TradeError "range" when the flexibility, the layer or a depth is negative
 * @source KLINE1982 ARCONA1998 DERIVED
 * @example
 * passesLeft({ depths: [1, 1], flexibility: 0.001, layer: 0, normalForce: (a, b) => 250 * (b - a) }) //=> [{"path":0.8,"wall":0.8},{"path":0.96,"wall":0.96}]
 */
export function passesLeft(series: BluntPasses): PassLeft[] {
  const c = notNegative("flexibility", series.flexibility);
  const layer = notNegative("layer", series.layer);
  let wall = 0;
  return series.depths.map((depth) => {
    const t = notNegative("depth", depth);
    if (t - wall <= UNTOUCHED * t) return { path: t, wall };
    const a = wall;
    const force = (p: number) => series.normalForce(a, p, edgeShare(p - a, layer));
    const path = c === 0 ? t : pathOf(a, t, series.deepest ?? 2 * t - a, (p) => p - t + c * force(p));
    wall = path - layerLeft(path - a, layer);
    return { path, wall };
  });
}

/**
 * Root of rest(p) = p − t + c·F(a → p) for a < p ≤ deepest, by false position with halved ends (Illinois). At p = a the force is
 * nothing and rest = a − t, which is known without asking; a tool that is pulled in for ever stops at `deepest`.
 */
function pathOf(a: number, t: number, deepest: number, rest: (p: number) => number): number {
  let [low, restLow] = [a, a - t];
  let [high, restHigh] = [t, rest(t)];
  while (restHigh < 0) {
    // pulled in: go on as far again, to the end
    if (high >= deepest) return deepest;
    [low, restLow] = [high, restHigh];
    high = Math.min(deepest, high + 2 * Math.max(-restHigh, SOLVED * (t - a)));
    restHigh = rest(high);
  }
  const close = SOLVED * (t - a) + 4 * Number.EPSILON * t;
  let side = 0;
  for (let i = 0; i < 200 && high - low > close && restHigh > close; i++) {
    const falsePosition = high - (restHigh * (high - low)) / (restHigh - restLow);
    // a jump of the force makes false position creep: halve now and then
    const p = i % 4 === 3 || !(falsePosition > low && falsePosition < high) ? (low + high) / 2 : falsePosition;
    const r = rest(p);
    if (Math.abs(r) <= close) return p;
    if (r < 0) {
      [low, restLow] = [p, r];
      if (side === -1) restHigh = Math.max(restHigh / 2, 2 * close);
      side = -1;
    } else {
      [high, restHigh] = [p, r];
      if (side === 1) restLow /= 2;
      side = 1;
    }
  }
  return high;
}
