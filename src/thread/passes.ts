/**
 * Radial passes of a V-profile cutter from the wall (the hole inside, the blank outside) to full depth.
 *
 * What the V cuts t deep is a trapezium: f wide at the tip and f + 2·t·tan(α/2) at the wall, so t·(f + t·tan(α/2)). The depth of
 * an area is the root of that quadratic, written so that no two near numbers are taken from each other.
 */
import { count, positive, within } from "../check.ts";
import { flankTangent, type ThreadKind } from "./path.ts";

/**
 * Area that a V with a flat tip cuts out of the wall, in an axial section.
 *
 *   A = t·(f + t·tan(α/2))
 *
 * @param depth - t, radial depth from the wall [mm], scalar, ≥ 0
 * @param tipFlat - f [mm], scalar, ≥ 0
 * @param profileAngle - α, included angle of the profile [deg]
 * @returns A [mm²]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * cutArea(0.541266, 0.125, 60) //=> 0.23680391
 */
export function cutArea(depth: number, tipFlat: number, profileAngle: number): number {
  const t = within("depth", depth, 0, Number.POSITIVE_INFINITY, "length");
  const f = within("tipFlat", tipFlat, 0, Number.POSITIVE_INFINITY, "length");
  return t * (f + t * flankTangent(profileAngle));
}

/**
 * Radial depth at which the V has cut an area: inverse of cutArea.
 *
 *   t = 2·A/(f + √(f² + 4·A·tan(α/2)))
 *
 * @param area - A [mm²], scalar, ≥ 0
 * @param tipFlat - f [mm], scalar, ≥ 0
 * @param profileAngle - α, included angle of the profile [deg]
 * @returns t [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * depthOfArea(0.23680391, 0.125, 60) //=> 0.541266
 */
export function depthOfArea(area: number, tipFlat: number, profileAngle: number): number {
  const A = within("area", area, 0, Number.POSITIVE_INFINITY);
  const f = within("tipFlat", tipFlat, 0, Number.POSITIVE_INFINITY, "length");
  if (A === 0) return 0;
  return (2 * A) / (f + Math.sqrt(f * f + 4 * A * flankTangent(profileAngle)));
}

/**
 * Full radial depth: from the wall to where the path puts the cutter's tip.
 *
 *   internal: T = rt − D0/2;   external: T = d0/2 − rt
 *
 * @param tipRadius - rt, radius of the tip [mm], scalar, > 0
 * @param wallDiameter - D0, diameter of the hole (internal) or of the blank (external) [mm], scalar, internal: < 2·rt, external: > 2·rt
 * @param kind - internal or external thread
 * @returns T [mm]
 * @throws TradeError "range" when the tip would not reach the wall; the parameter is holeDiameter
 * @source DERIVED
 * @example
 * fullDepth(3.03748, 5, "internal") //=> 0.53748
 */
export function fullDepth(tipRadius: number, wallDiameter: number, kind: ThreadKind): number {
  positive("tipRadius", tipRadius);
  if (kind === "internal") {
    return tipRadius - within("holeDiameter", wallDiameter, 0, 2 * tipRadius, "length", "both") / 2;
  }
  return within("holeDiameter", wallDiameter, 2 * tipRadius, Number.POSITIVE_INFINITY, "length", "low") / 2 - tipRadius;
}

/**
 * Radial depth from the wall after each pass, equal cut area each, then spring passes at full depth.
 *
 *   A(t_i) = A(T)·i/n
 *
 * @param total - T, full depth [mm], scalar, > 0
 * @param tipFlat - f [mm], scalar, ≥ 0
 * @param profileAngle - α, included angle of the profile [deg]
 * @param passes - n, cutting passes [-], whole, ≥ 1
 * @param springPasses - repeats at full depth [-], whole, ≥ 0
 * @returns t_1 … t_n and the repeats [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * passDepths(0.811899, 0.1875, 60, 2, 1) //=> [0.5360421, 0.811899, 0.811899]
 */
export function passDepths(
  total: number,
  tipFlat: number,
  profileAngle: number,
  passes: number,
  springPasses = 0,
): number[] {
  const T = positive("total", total);
  const n = count("passes", passes);
  const area = cutArea(T, tipFlat, profileAngle);
  const depths = Array.from({ length: n }, (_, i) =>
    i === n - 1 ? T : depthOfArea((area * (i + 1)) / n, tipFlat, profileAngle),
  );
  for (let i = count("springPasses", springPasses, 0); i > 0; i--) depths.push(T);
  return depths;
}

/**
 * Fewest equal-area passes whose first one goes no deeper than a limit.
 *
 *   n = ⌈A(T)/A(t1)⌉
 *
 * @param total - T, full depth [mm], scalar, > 0
 * @param tipFlat - f [mm], scalar, ≥ 0
 * @param profileAngle - α, included angle of the profile [deg]
 * @param firstDepth - t1, largest depth of the first pass [mm], scalar, > 0
 * @returns n [-]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * passesForFirstDepth(0.811899, 0.1875, 60, 0.5) //=> 3
 */
export function passesForFirstDepth(total: number, tipFlat: number, profileAngle: number, firstDepth: number): number {
  const all = cutArea(positive("total", total), tipFlat, profileAngle);
  const first = cutArea(positive("firstDepth", firstDepth), tipFlat, profileAngle);
  // A limit that is the first depth of n passes, rounded, still means n passes.
  return Math.max(1, Math.ceil((all / first) * (1 - 1e-12)));
}
