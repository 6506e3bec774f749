/**
 * Motion times under limits of acceleration and jerk: straight moves, arcs and helices, and paths of several of them.
 *
 * The model: along the path the acceleration rises and falls at the rate a/τ up to a, τ the ramp time (0: at once); on an
 * arc the feed is limited so that the acceleration towards the centre stays within its limit. The two limits are independent of
 * each other; the acceleration is zero at every joint; no look-ahead beyond the joints. Feeds in mm/min, accelerations in
 * m/s², times in s. Published controls have ramp times near 0.1 s (0.5 m/s² with 5 m/s³: Zhang et al. 2021; 70 ms to reach the feed
 * with 10 ms of ramp: Chien, Sencer, Ward 2024).
 */
import { finite, notNegative, positive } from "./check.ts";
import { TradeError } from "./errors.ts";
import { root } from "./numeric.ts";

/** One move of a path: straight, or an arc or helix when it has a radius. */
export interface Move {
  /** Length along the path [mm]. */
  readonly length: number;
  /** Programmed feed along the path [mm/min]. */
  readonly feed: number;
  /** Radius of the arc [mm]; straight when left out. */
  readonly radius?: number;
  /** Rise of a helix per turn [mm]; 0 when left out. */
  readonly risePerTurn?: number;
}

export interface MoveReport {
  readonly time: number;
  /** Feed that is really reached [mm/min]. */
  readonly reached: number;
  /** What keeps the feed where it is: the program, the arc, or the room to accelerate. */
  readonly limitedBy: "feed" | "arc" | "acceleration";
}

export interface PathReport {
  readonly time: number;
  /** Time at the programmed feeds, without any limit [s]. */
  readonly programmed: number;
  /** Share of the time that acceleration and arcs cost, (time − programmed)/time [-]. */
  readonly lost: number;
  readonly moves: readonly MoveReport[];
}

/**
 * Time of a straight move from rest to rest.
 *
 *   to the speed v:  s = v/a + τ when v ≥ a·τ, else 2·√(v·τ/a);   way v·s/2
 *   t = l/v + s when l ≥ v·s;   else t = 2·s at the speed that the length allows:
 *     v = (a/2)·(√(τ² + 4·l/a) − τ) when that is ≥ a·τ, else v = ∛(l²·a/(4·τ))
 *
 * With τ = 0 the trapezoid l/v + v/a, and the triangle 2·√(l/a) when l < v²/a. The acceleration rises and falls in a straight
 * line within τ each.
 *
 * @param distance - l [mm], scalar, ≥ 0
 * @param feed - v [mm/min], scalar, > 0
 * @param acceleration - a [m/s²], scalar, > 0
 * @param rampTime - τ, from no acceleration to all of it, acceleration over jerk [s], scalar, ≥ 0
 * @returns t [s]
 * @throws TradeError "range" when an argument is outside its limits
 * @source KINEMATICS
 * @example
 * moveTime(25.4, 600, 0.25) //=> 2.58
 * moveTime(1, 3000, 2) //=> 0.0447213595
 * moveTime(1, 3000, 0.5, 0.1) //=> 0.1856636
 */
export function moveTime(distance: number, feed: number, acceleration: number, rampTime = 0): number {
  const v = positive("feed", feed) / 60;
  const a = 1000 * positive("acceleration", acceleration);
  return restToRest(notNegative("distance", distance), v, a, notNegative("rampTime", rampTime));
}

/**
 * Length of an arc or helix.
 *
 *   l = N·√((2·π·r)² + p²)
 *
 * @param radius - r [mm], scalar, > 0
 * @param turns - N [-], scalar, ≥ 0, parts of a turn count
 * @param risePerTurn - p [mm], scalar, its sign does not matter
 * @returns l [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source KINEMATICS
 * @example
 * arcLength(0.6, 1, 1) //=> 3.9002859
 */
export function arcLength(radius: number, turns: number, risePerTurn: number): number {
  return (
    notNegative("turns", turns) *
    Math.hypot(2 * Math.PI * positive("radius", radius), finite("risePerTurn", risePerTurn))
  );
}

/**
 * Highest feed that an acceleration towards the centre allows on an arc or helix.
 *
 *   v = √(a·(r² + c²)/r),   c = p/(2·π)
 *
 * @param radius - r [mm], scalar, > 0
 * @param acceleration - a [m/s²], scalar, > 0
 * @param risePerTurn - p [mm], scalar, 0 for a flat arc
 * @returns v [mm/min]
 * @throws TradeError "range" when an argument is outside its limits
 * @source KINEMATICS
 * @example
 * arcFeedLimit(0.825, 0.5, 0) //=> 1218.60576
 * arcFeedLimit(0.6, 0.5, 1) //=> 1075.17017
 */
export function arcFeedLimit(radius: number, acceleration: number, risePerTurn: number): number {
  const r = positive("radius", radius);
  const c = finite("risePerTurn", risePerTurn) / (2 * Math.PI);
  return 60 * Math.sqrt((1000 * positive("acceleration", acceleration) * (r * r + c * c)) / r);
}

/**
 * Time of an arc or helix from rest to rest; the feed is never above {@link arcFeedLimit}.
 *
 *   t of {@link moveTime} with l of {@link arcLength} and v = min(feed, arc limit)
 *
 * @param radius - r [mm], scalar, > 0
 * @param turns - N [-], scalar, ≥ 0, parts of a turn count
 * @param feed - programmed feed along the path [mm/min], scalar, > 0
 * @param acceleration - a, along the path and towards the centre [m/s²], scalar, > 0
 * @param risePerTurn - p [mm], scalar, 0 for a flat arc
 * @param rampTime - τ, from no acceleration to all of it, acceleration over jerk [s], scalar, ≥ 0
 * @returns t [s]
 * @throws TradeError "range" when an argument is outside its limits
 * @source KINEMATICS
 * @example
 * arcTime(10, 1, 1000, 1, 0) //=> 3.78657785
 */
export function arcTime(
  radius: number,
  turns: number,
  feed: number,
  acceleration: number,
  risePerTurn: number,
  rampTime = 0,
): number {
  const limit = arcFeedLimit(radius, acceleration, risePerTurn);
  return moveTime(
    arcLength(radius, turns, risePerTurn),
    Math.min(positive("feed", feed), limit),
    acceleration,
    rampTime,
  );
}

/**
 * Time of a path of several moves that starts and ends at rest, and what each move comes to.
 *
 *   joints "stop": every move from rest to rest
 *   joints "flow": at a joint no faster than either move allows, nor than can be reached from the one before or braked to the one after
 *
 * @param moves - moves in order; each with length [mm], feed [mm/min], and for arcs radius and risePerTurn [mm]
 * @param opts - opts.acceleration along the path [m/s²]; opts.arcAcceleration towards the centre [m/s²], the same when left out; opts.rampTime [s], 0 when left out; opts.joints "stop" or "flow" (tangent joints, machine with look-ahead)
 * @returns time, programmed [s]; lost share [-]; per move time [s], reached feed [mm/min], limitedBy
 * @throws TradeError "range" when a length is below 0, a feed, radius or acceleration not above 0
 * @source KINEMATICS
 * @example
 * pathTime([{ length: 20, feed: 3000 }, { length: 25.132741, feed: 3000, radius: 4 }, { length: 20, feed: 3000 }], { acceleration: 1, arcAcceleration: 0.4, joints: "stop" }).time //=> 1.5683185
 */
export function pathTime(
  moves: readonly Move[],
  opts: {
    readonly acceleration: number;
    readonly arcAcceleration?: number;
    readonly rampTime?: number;
    readonly joints: "stop" | "flow";
  },
): PathReport {
  const a = 1000 * positive("acceleration", opts.acceleration);
  const ramp = notNegative("rampTime", opts.rampTime ?? 0);
  const towards = opts.arcAcceleration ?? opts.acceleration;
  const n = moves.length;
  const feeds = moves.map((m) => positive("feed", m.feed) / 60);
  const arcs = moves.map((m) =>
    m.radius === undefined
      ? Number.POSITIVE_INFINITY
      : arcFeedLimit(m.radius, positive("arcAcceleration", towards), m.risePerTurn ?? 0) / 60,
  );
  const caps = feeds.map((v, i) => Math.min(v, arcs[i]!));
  // joint[i]: speed between move i − 1 and move i
  const joint = new Array<number>(n + 1).fill(0);
  if (opts.joints === "flow") {
    const length = (i: number) => notNegative("distance", moves[i]!.length);
    for (let i = 1; i < n; i++) {
      const cap = Math.min(caps[i - 1]!, caps[i]!);
      joint[i] = reachedOver(length(i - 1), joint[i - 1]!, cap, a, ramp);
    }
    for (let i = n - 1; i > 0; i--) joint[i] = reachedOver(length(i), joint[i + 1]!, joint[i]!, a, ramp);
  } else if (opts.joints !== "stop") {
    throw new TradeError("value", "joints", opts.joints, { is: "one-of-texts", texts: ["stop", "flow"] });
  }
  let time = 0;
  let programmed = 0;
  const reports = moves.map((move, i): MoveReport => {
    const l = notNegative("distance", move.length);
    const v = caps[i]!;
    const v0 = joint[i]!;
    const v1 = joint[i + 1]!;
    const way = (top: number) => changeWay(v0, top, a, ramp) + changeWay(v1, top, a, ramp);
    const roomy = way(v) <= l;
    const top = roomy ? v : topSpeed(l, v0, v1, v, a, ramp, way);
    const t = changeTime(v0, top, a, ramp) + changeTime(v1, top, a, ramp) + (roomy ? Math.max(0, l - way(v)) / v : 0);
    time += t;
    programmed += l / feeds[i]!;
    return {
      time: t,
      reached: 60 * top,
      limitedBy: !roomy ? "acceleration" : arcs[i]! < feeds[i]! ? "arc" : "feed",
    };
  });
  return { time, programmed, lost: time > 0 ? Math.max(0, (time - programmed) / time) : 0, moves: reports };
}

function restToRest(l: number, v: number, a: number, ramp: number): number {
  const up = changeTime(0, v, a, ramp);
  if (l >= v * up) return l / v + up;
  return 2 * changeTime(0, fromRest(l, a, ramp), a, ramp);
}

/** Speed that a move from rest to rest reaches when it has no room for more: half its length is the way up. */
function fromRest(l: number, a: number, ramp: number): number {
  const v = (a / 2) * (Math.sqrt(ramp * ramp + (4 * l) / a) - ramp);
  return v >= a * ramp ? v : Math.cbrt((l * l * a) / (4 * ramp));
}

/** Time from one speed to another, without acceleration at both ends. */
function changeTime(from: number, to: number, a: number, ramp: number): number {
  const dv = Math.abs(to - from);
  return dv >= a * ramp ? dv / a + ramp : 2 * Math.sqrt((dv * ramp) / a);
}

/** Way of that: the ramps are symmetric, so the mean speed is the middle one. */
const changeWay = (from: number, to: number, a: number, ramp: number) =>
  ((from + to) / 2) * changeTime(from, to, a, ramp);

/** Speed that can be reached from another over a length, at most `cap`. */
function reachedOver(l: number, from: number, cap: number, a: number, ramp: number): number {
  if (cap <= from || changeWay(from, cap, a, ramp) <= l) return cap;
  if (ramp === 0) return Math.sqrt(from * from + 2 * a * l);
  return root((v) => changeWay(from, v, a, ramp) - l, from, cap);
}

/** Highest speed of a move that starts and ends at given speeds and has no room for its cap. */
function topSpeed(
  l: number,
  v0: number,
  v1: number,
  cap: number,
  a: number,
  ramp: number,
  way: (top: number) => number,
): number {
  if (ramp === 0) return Math.sqrt(a * l + (v0 * v0 + v1 * v1) / 2);
  if (v0 === 0 && v1 === 0) return fromRest(l, a, ramp);
  const least = Math.max(v0, v1);
  return way(least) >= l ? least : root((v) => way(v) - l, least, cap);
}
