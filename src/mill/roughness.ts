/**
 * Theoretical roughness that milling leaves: the marks of the teeth, one beside the other. Real surfaces are rougher: built-up edge,
 * worn corners, vibration, and marks cut a second time. Values are Rz (peak to valley over the pattern); Ra is about a quarter of it.
 *
 * Each tooth leaves an arc of radius ρ; one that stands out leaves it deeper. The wall is the lower envelope of those arcs.
 */
import { count, notNegative, positive, within } from "../check.ts";
import type { Side } from "./arc.ts";
import type { Way } from "./force.ts";
import { MOST_TEETH } from "./turn.ts";

/**
 * Peak to valley of marks of one radius, equally far apart, each as deep as its tooth stands out; the pattern repeats.
 *
 *   y(x) = min over i of (x − i·f)²/(2ρ) − a_i;   Rz = max y − min y;   f²/(8ρ) when all teeth are level
 *
 * @param depths - a_i, how far each tooth stands out [mm], list, at least one
 * @param spacing - f, from mark to mark [mm], scalar, > 0
 * @param radius - ρ [mm], scalar, > 0
 * @returns Rz [mm]
 * @throws TradeError "range" when a value is outside its limits
 * @source MARTELLOTTI1941 DERIVED
 * @example
 * markHeight([0], 0.2, 0.8) //=> 0.00625
 * markHeight([0.02, 0, 0], 0.1, 5) //=> 0.00225
 */
export function markHeight(depths: readonly number[], spacing: number, radius: number): number {
  const z = count("depths", depths.length, 1, MOST_TEETH);
  const f = positive("spacing", spacing);
  const rho = positive("radius", radius);
  // y − x²/2ρ is a line for each mark: the lower envelope of three periods, looked at over the middle one.
  const hull: { x: number; c: number }[] = [];
  const meet = (p: { x: number; c: number }, q: { x: number; c: number }) => (rho * (q.c - p.c)) / (q.x - p.x);
  for (let i = 0; i < 3 * z; i++) {
    const x = i * f;
    const line = { x, c: (x * x) / (2 * rho) - depths[i % z]! };
    // later lines fall faster: an earlier one that is passed before it takes over never shows
    while (
      hull.length > 1 &&
      meet(hull[hull.length - 2]!, hull[hull.length - 1]!) >= meet(hull[hull.length - 2]!, line)
    ) {
      hull.pop();
    }
    hull.push(line);
  }
  const deepest = Math.max(...depths);
  let top = Number.NEGATIVE_INFINITY;
  for (let i = 1; i < hull.length; i++) {
    const [p, q] = [hull[i - 1]!, hull[i]!];
    const x = meet(p, q);
    // the ends of the three periods have no neighbours
    if (x < z * f * (1 - 1e-9) || x > 2 * z * f * (1 + 1e-9)) continue;
    top = Math.max(top, (x * x) / (2 * rho) - (x * p.x) / rho + p.c);
  }
  return top + deepest;
}

/** How far the teeth of a cutter that runs out stand from its axis, against the mean: e·cos(2πi/z), e half the indicator's reading. */
function eccentric(runout: number, teeth: number): number[] {
  const e = notNegative("runout", runout) / 2;
  return Array.from({ length: teeth }, (_, i) => e * Math.cos((2 * Math.PI * i) / teeth));
}

export interface MilledWall {
  /** Feed per tooth at the edge on the finished wall [mm] */
  readonly edgeFeed: number;
  readonly teeth: number;
  /** D [mm] */
  readonly diameter: number;
  /** Total indicator reading of the edge [mm] */
  readonly runout: number;
  readonly way: Way;
  /** The wall when it is an arc: diameter [mm] and side. */
  readonly arc?: { readonly diameter: number; readonly side: Side };
}

/**
 * Theoretical roughness of a side-milled wall, along the feed.
 *
 *   marks of ρ = R·(1 ± f·z/(2π·R))², + conventional, − climb; on an arc 1/ρ is less (inside) or more (outside) by 2/Dm
 *
 * With Martellotti's h = f²/(8·(R ± f·z/π)) as its first order when every tooth stands level; when runout lets one tooth make the
 * wall, the feed per turn takes the place of the feed per tooth.
 *
 * @param wall - wall.edgeFeed f [mm], wall.teeth z [-], wall.diameter 2R [mm], wall.runout [mm], wall.way, wall.arc (diameter Dm [mm], side)
 * @returns Rz [mm]
 * @throws TradeError "range" when a value is outside its limits
 * @source MARTELLOTTI1941 DERIVED
 * @example
 * wallRoughness({ edgeFeed: 0.1, teeth: 4, diameter: 10, runout: 0, way: "climb" }) //=> 0.00025649
 * wallRoughness({ edgeFeed: 0.1, teeth: 4, diameter: 10, runout: 0.02, way: "climb" }) //=> 0.0041
 */
export function wallRoughness(wall: MilledWall): number {
  const f = positive("edgeFeed", wall.edgeFeed);
  const z = count("teeth", wall.teeth, 1, MOST_TEETH);
  const R = positive("diameter", wall.diameter) / 2;
  const swing = (f * z) / (2 * Math.PI * R);
  let curve = 1 / (R * (1 + (wall.way === "climb" ? -1 : 1) * Math.min(swing, 0.9)) ** 2);
  if (wall.arc) {
    const Rw = positive("arc", wall.arc.diameter) / 2;
    if (wall.arc.side === "outside") curve += 1 / Rw;
    else curve -= 1 / within("diameter", Rw, R, Number.POSITIVE_INFINITY, "length", "low");
    // a bore that the cutter all but fills is as smooth as one can say
    curve = Math.max(curve, 1e-6);
  }
  return markHeight(eccentric(wall.runout, z), f, 1 / curve);
}

/**
 * Theoretical roughness of a milled floor, from the corner radius.
 *
 *   marks of the corner radius r: f²/(8·r) when every tooth stands level
 *
 * @param feedPerTooth - f [mm], scalar, > 0
 * @param teeth - z [-], whole, ≥ 1
 * @param cornerRadius - r [mm], scalar, > 0
 * @param runout - reading of an indicator along the axis [mm], scalar, ≥ 0
 * @returns Rz [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MARTELLOTTI1941 DERIVED
 * @example
 * floorRoughness(0.2, 4, 0.8, 0) //=> 0.00625
 */
export function floorRoughness(feedPerTooth: number, teeth: number, cornerRadius: number, runout: number): number {
  const z = count("teeth", teeth, 1, MOST_TEETH);
  return markHeight(
    eccentric(runout, z),
    positive("feedPerTooth", feedPerTooth),
    positive("cornerRadius", cornerRadius),
  );
}
