/** What a springy tool leaves: each pass solved for the depth really cut, the rest carried to the next. */
import { finite, notNegative } from "../check.ts";
import { edgeShare, layerLeft } from "./edge.ts";

/** A tool that bends and whose edge is not sharp. */
export interface BluntTool {
  /** c, bending of the tool where it cuts, per force [mm/N]. */
  readonly flexibility: number;
  /**
   * F, force normal to the wall [N] when the wall goes from one depth to a deeper one; + pushes the tool away from it. `edge` is
   * the share of the full edge (ploughing) force, 0 to 1. Never asked for at from = to.
   */
  readonly normalForce: (from: number, to: number, edge: number) => number;
  /** r∞, thickest layer that the edge leaves, in the direction of the depths [mm]; 0 is a sharp edge. */
  readonly layer: number;
  /** Factor on the share of the edge force [-]; 1 without. */
  readonly edges?: number;
  /** Depth beyond which the tool cannot be pulled in [mm]; without it twice the pass. */
  readonly deepest?: number;
}

/** A pass that would take less than this share of its depth does not touch the wall. */
const UNTOUCHED = 1e-12;
/** Share of a pass to which its path is solved. */
const SOLVED = 1e-9;

/**
 * Wall that a pass of a springy tool with a blunt edge leaves.
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
 * @param tool - flexibility c [mm/N], force F(from, to, edge) [N], layer r∞ [mm], edges [-], deepest [mm]
 * @param before - a, depth of the wall before the pass [mm], scalar
 * @param depth - t, depth that the pass is programmed to reach [mm], scalar, ≥ 0
 * @returns wall [mm]
 * @throws TradeError "range" when the flexibility, the layer or the depth is negative
 * @source KLINE1982 ARCONA1998 DERIVED
 * @example
 * wallLeft({ flexibility: 0.001, layer: 0, normalForce: (a, b) => 250 * (b - a) }, 0, 1) //=> 0.8
 * wallLeft({ flexibility: 0.001, layer: 0, normalForce: (a, b) => 250 * (b - a) }, 0.8, 1) //=> 0.96
 */
export function wallLeft(tool: BluntTool, before: number, depth: number): number {
  notNegative("flexibility", tool.flexibility);
  const layer = notNegative("layer", tool.layer);
  const a = finite("before", before);
  const path = pathOf(tool, a, notNegative("depth", depth));
  return path - a <= UNTOUCHED * path ? a : path - layerLeft(path - a, layer);
}

/**
 * Path of a pass from the wall a programmed to t: the root of rest(p) = p − t + c·F(a → p) for a < p ≤ deepest, by false position
 * with halved ends (Illinois). At p = a the force is nothing and rest = a − t, which is known without asking; a tool that is pulled
 * in for ever stops at `deepest`.
 */
function pathOf(tool: BluntTool, a: number, t: number): number {
  const { flexibility: c, layer, edges = 1, deepest = 2 * t - a } = tool;
  if (c === 0 || t - a <= UNTOUCHED * t) return t;
  let low = a;
  let restLow = a - t;
  let high = t;
  let restHigh = c * tool.normalForce(a, t, edges * edgeShare(t - a, layer));
  while (restHigh < 0) {
    // pulled in: go on as far again, to the end
    if (high >= deepest) return deepest;
    low = high;
    restLow = restHigh;
    high = Math.min(deepest, high + 2 * Math.max(-restHigh, SOLVED * (t - a)));
    restHigh = high - t + c * tool.normalForce(a, high, edges * edgeShare(high - a, layer));
  }
  const close = SOLVED * (t - a) + 4 * Number.EPSILON * t;
  let side = 0;
  for (let i = 0; i < 200 && high - low > close && restHigh > close; i++) {
    const falsePosition = high - (restHigh * (high - low)) / (restHigh - restLow);
    // a jump of the force makes false position creep: halve now and then
    const p = i % 4 === 3 || !(falsePosition > low && falsePosition < high) ? (low + high) / 2 : falsePosition;
    const r = p - t + c * tool.normalForce(a, p, edges * edgeShare(p - a, layer));
    if (Math.abs(r) <= close) return p;
    if (r < 0) {
      low = p;
      restLow = r;
      if (side === -1) restHigh = Math.max(restHigh / 2, 2 * close);
      side = -1;
    } else {
      high = p;
      restHigh = r;
      if (side === 1) restLow /= 2;
      side = 1;
    }
  }
  return high;
}
