/** Percent of thread that a hole leaves, and the customary drill before tapping. Lengths in mm. */
import { finite, positive, within } from "../check.ts";
import { TradeError } from "../errors.ts";
import { crestRise } from "../thread/path.ts";
import { DRILL_SETS, type Drill, type DrillSet, drillNamed, drillsOf, nearestDrill, nearestOf } from "./sizes.ts";

/** Share of full thread that Unified tap drills aim at (common practice, and the usual charts). */
const CUSTOMARY_PERCENT = 75;

/** Metric drills that custom puts elsewhere than the size nearest to D − P. */
const METRIC_EXCEPTIONS: readonly (readonly [number, number, number])[] = [
  [4.5, 0.75, 3.7],
  [12, 1.75, 10.2],
];

/** Customary drills of G threads [major, drill] (chart with ISO 228 tap drills; the same in several trade charts). */
const PIPE: readonly (readonly [number, number])[] = [
  [7.723, 6.8],
  [9.728, 8.8],
  [13.157, 11.8],
  [16.662, 15.25],
  [20.955, 19],
  [22.911, 21],
  [26.441, 24.5],
  [30.201, 28.25],
  [33.249, 30.75],
  [37.897, 35.5],
  [41.91, 39.5],
  [47.803, 45.5],
  [53.746, 51],
  [59.614, 57],
];

/**
 * Percent of full thread height that a hole leaves.
 *
 *   100·(D − d)/(2·h),   h = (3/8)·√3·P = 0.6495·P (60°), 0.640327·P (55°)
 *
 * Over 83.3 % (60°) the hole is under the basic minor diameter. Some texts call (5/8)·H, 0.5413·P, the full height; the
 * tap-drill tables themselves, and this, use 0.6495·P.
 *
 * @param major - D, basic major diameter [mm], scalar, > 0
 * @param pitch - P [mm], scalar, > 0
 * @param holeDiameter - d [mm], scalar, 0 < d ≤ D
 * @param profileAngle - included angle of the profile [deg], 60 or 55
 * @returns percent [%]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MH31
 * @example
 * threadPercent(6, 1, 5, 60) //=> 76.9800
 */
export function threadPercent(major: number, pitch: number, holeDiameter: number, profileAngle: number): number {
  const D = positive("major", major);
  const d = within("holeDiameter", holeDiameter, 0, D, "length", "low");
  return (100 * (D - d)) / (2 * crestRise(pitch, profileAngle));
}

/**
 * Hole that leaves a percent of full thread height: inverse of threadPercent.
 *
 *   d = D − 2·h·percent/100
 *
 * @param major - D, basic major diameter [mm], scalar, > 0
 * @param pitch - P [mm], scalar, > 0
 * @param percent - percent of full height [%], scalar, 0 < percent ≤ 100
 * @param profileAngle - included angle of the profile [deg], 60 or 55
 * @returns d [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MH31
 * @example
 * holeOfPercent(6, 1, 75, 60) //=> 5.02572
 */
export function holeOfPercent(major: number, pitch: number, percent: number, profileAngle: number): number {
  within("percent", percent, 0, 100, undefined, "low");
  return positive("major", major) - (2 * crestRise(pitch, profileAngle) * percent) / 100;
}

/** A thread as far as its tap drill goes. */
export interface Tapped {
  readonly standard: "unified" | "metric" | "pipe";
  /** Basic major diameter [mm]. */
  readonly major: number;
  /** Pitch [mm]. */
  readonly pitch: number;
  /** Included angle of the profile [deg]. */
  readonly profileAngle: number;
}

/**
 * Customary drill before tapping. Unified: the number, letter or fraction size nearest to the hole for 75 % (or the
 * percent asked for). Metric: the metric size nearest to D − P, ties up, two customary exceptions; to the percent when
 * given. G threads: the customary size. Other sets on request: the nearest of them to the same hole.
 *
 *   d ≈ D − 2·h·percent/100;   metric d ≈ D − P
 *
 * It may lie outside the limits of the minor diameter (9/16-18 and 5/8-18 do).
 *
 * @param thread - standard; thread.major, thread.pitch [mm], thread.profileAngle [deg]
 * @param percent - percent of full height [%], scalar, 0 < percent ≤ 100; without it the custom of the standard
 * @param sets - sets to choose from; without it the custom of the standard
 * @returns drill; diameter [mm]
 * @throws TradeError "range" when the percent is outside its limits; "unknown" when no standard drill is near
 * @source MH31 ISO2306 COMMON
 * @example
 * tapDrill({ standard: "unified", major: 6.35, pitch: 1.27, profileAngle: 60 }).name //=> "#7"
 * tapDrill({ standard: "metric", major: 12, pitch: 1.75, profileAngle: 60 }).name //=> "10.2 mm"
 * tapDrill({ standard: "metric", major: 10, pitch: 1.25, profileAngle: 60 }).name //=> "8.8 mm"
 */
export function tapDrill(thread: Tapped, percent?: number, sets?: readonly DrillSet[]): Drill {
  const { standard, major, pitch, profileAngle } = thread;
  const own: readonly DrillSet[] = standard === "unified" ? ["number", "letter", "fraction"] : ["metric"];
  const custom = percent === undefined && (sets === undefined || (sets.length === 1 && sets[0] === "metric"));
  if (custom && standard === "metric") {
    const exception = METRIC_EXCEPTIONS.find(([D, P]) => near(D, major) && near(P, pitch));
    if (exception) return drillNamed(`${exception[2]} mm`);
  }
  if (custom && standard === "pipe") {
    const row = PIPE.find(([D]) => near(D, major));
    if (row) return drillNamed(`${row[1]} mm`);
  }
  let hole: number;
  if (percent === undefined && standard !== "unified") hole = major - pitch;
  else hole = holeOfPercent(major, pitch, percent ?? CUSTOMARY_PERCENT, profileAngle);
  return nearestDrill(finite("thread", hole), sets ?? own, standard === "unified" ? "in" : "mm");
}

/**
 * Drill for a hole with limits: of those whose hole (drill plus oversize) lies inside the limits, the one whose hole is
 * nearest to a target (without one, the middle of the limits). A tie goes to the larger.
 *
 *   low ≤ d + o ≤ high, least |d + o − target|
 *
 * @param low - least hole diameter [mm], scalar, > 0
 * @param high - largest hole diameter [mm], scalar, ≥ low
 * @param oversize - o, what the drill cuts over its size [mm], scalar, any
 * @param sets - sets to choose from; without it all four
 * @param target - wanted hole diameter [mm], scalar, > 0
 * @returns drill with diameter [mm], or null when no standard drill fits
 * @throws TradeError "range" when an argument is outside its limits
 * @source COMMON
 * @example
 * nearestDrillInside(4.917, 5.153, 0.05, ["metric"]).name //=> "5 mm"
 * nearestDrillInside(13.03, 13.04, 0, ["metric"]) //=> null
 */
export function nearestDrillInside(
  low: number,
  high: number,
  oversize = 0,
  sets: readonly DrillSet[] = DRILL_SETS,
  target = (low + high) / 2,
): Drill | null {
  positive("low", low);
  if (!(high >= low))
    throw new TradeError(
      "range",
      "high",
      high,
      { is: "between", low, high: Number.POSITIVE_INFINITY, open: "none", dimension: "length" },
      "length",
    );
  const slack = 1e-9 * high;
  const fits: Drill[] = [];
  for (const set of ["fraction", "number", "letter", "metric"] as const) {
    if (!sets.includes(set)) continue;
    for (const drill of drillsOf(set)) {
      const hole = drill.diameter + oversize;
      if (hole >= low - slack && hole <= high + slack) fits.push(drill);
    }
  }
  return nearestOf(fits, target - oversize) ?? null;
}

const near = (a: number, b: number) => Math.abs(a - b) <= 1e-9 * a;
