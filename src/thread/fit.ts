/** Does a single-profile cutter suit a thread: pitch range, way in, neck, major diameter. Lengths in any one unit. */
import { finite, notNegative, positive, within } from "../check.ts";
import { crestRise, flankTangent, minorFall, type ThreadKind, tipDiameter } from "./path.ts";
import { sweptPathRadius, widestTipFlat } from "./sweep.ts";
import { sweptCrestFlat } from "./swept-form.ts";

/** A stretch of the tool behind the profile, from the tip side to the holder side. */
export interface NeckPart {
  readonly length: number;
  /** Diameter at the tip side. */
  readonly diameter: number;
  /** Diameter at the holder side; the same when it is left out. */
  readonly endDiameter?: number;
}

/**
 * Gap per side between a neck and the wall while the cutter runs on its path.
 *
 *   internal: g = D0/2 − e − Dn/2;   external: g = e − Dn/2 − d0/2;   negative: the neck rubs
 *
 * @param wallDiameter - D0, hole (internal) or blank (external) [mm], scalar, > 0
 * @param pathRadius - e [mm], scalar, > 0
 * @param neckDiameter - Dn [mm], scalar, > 0
 * @param kind - internal or external thread
 * @returns g [mm]
 * @throws TradeError "range" when an argument is not above 0
 * @source DERIVED
 * @example
 * neckClearance(5, 0.585, 3.4, "internal") //=> 0.215
 */
export function neckClearance(
  wallDiameter: number,
  pathRadius: number,
  neckDiameter: number,
  kind: ThreadKind,
): number {
  const gap = positive("wallDiameter", wallDiameter) / 2 - positive("pathRadius", pathRadius);
  const Dn = positive("neckDiameter", neckDiameter);
  return (kind === "internal" ? gap : -gap) - Dn / 2;
}

/**
 * Smallest gap along a neck of several cylinders and cones, over the part that is inside the depth.
 *
 *   g = min over z ≤ depth of neckClearance at the diameter there
 *
 * @param wallDiameter - hole (internal) or blank (external) [mm], scalar, > 0
 * @param pathRadius - e [mm], scalar, > 0
 * @param parts - stretches from the profile towards the holder; length, diameter, endDiameter [mm]
 * @param depth - how deep the profile goes below the face [mm], scalar, ≥ 0
 * @param kind - internal or external thread
 * @returns gap and at, the place above the profile where it is [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * neckClearanceAlong(5, 0.5, [{ length: 4, diameter: 3 }, { length: 8, diameter: 3, endDiameter: 5 }], 8, "internal") //=> { gap: 0, at: 8 }
 */
export function neckClearanceAlong(
  wallDiameter: number,
  pathRadius: number,
  parts: readonly NeckPart[],
  depth: number,
  kind: ThreadKind,
): { gap: number; at: number } {
  let left = notNegative("depth", depth);
  let z = 0;
  let least = { gap: Number.POSITIVE_INFINITY, at: 0 };
  for (const part of parts) {
    const inside = Math.min(positive("length", part.length), left);
    const end = part.endDiameter ?? part.diameter;
    for (const share of [0, inside / part.length]) {
      const diameter = part.diameter + (end - part.diameter) * share;
      const gap = neckClearance(wallDiameter, pathRadius, diameter, kind);
      if (gap < least.gap) least = { gap, at: z + share * part.length };
    }
    z += part.length;
    left -= inside;
    if (left <= 0) break;
  }
  finite("parts", least.gap);
  return least;
}

/**
 * Finest pitch whose basic root is as wide as the cutter's tip flat (the helical sweep and the place in the tolerance
 * shift it a little: widestTipFlat is exact for one thread).
 *
 *   f = P/2 − (D − D2)·tan(α/2);   60°: P = 8·f;   55°: P ≈ 6·f
 *
 * @param tipFlat - f [mm], scalar, ≥ 0
 * @param profileAngle - α, included angle of the profile [deg], 60 or 55
 * @returns P [mm]
 * @throws TradeError "range" or "value" when an argument is outside its limits
 * @source ISO68 ISO228
 * @example
 * finestPitch(0.125, 60) //=> 1.00
 */
export function finestPitch(tipFlat: number, profileAngle: number): number {
  return notNegative("tipFlat", tipFlat) / (0.5 - crestRise(1, profileAngle) * flankTangent(profileAngle));
}

/**
 * Coarsest pitch whose depth from the basic minor diameter (outside: from the basic major) the V of the cutter takes in.
 *
 *   (Dc − Dn)/2 = (P/4 − f/2)/tan(α/2) + (D2 − D1)/2 (outside: (d − d2)/2)
 *
 * From the tip to the pitch line as in tipRadius, and on to the wall; both grow with P, so P is solved for.
 *
 * @param cutterDiameter - Dc [mm], scalar, > 0
 * @param neckDiameter - Dn, where the V ends [mm], scalar, 0 < Dn < Dc
 * @param tipFlat - f [mm], scalar, ≥ 0
 * @param profileAngle - α, included angle of the profile [deg], 60 or 55
 * @param kind - internal or external thread
 * @returns P [mm]
 * @throws TradeError "range" or "value" when an argument is outside its limits
 * @source DERIVED
 * @example
 * coarsestPitch(4.8, 3.4, 0.08, 60, "internal") //=> 1.18
 */
export function coarsestPitch(
  cutterDiameter: number,
  neckDiameter: number,
  tipFlat: number,
  profileAngle: number,
  kind: ThreadKind,
): number {
  positive("cutterDiameter", cutterDiameter);
  const height = (cutterDiameter - within("neckDiameter", neckDiameter, 0, cutterDiameter, "length", "both")) / 2;
  const t = flankTangent(profileAngle);
  const wall = (kind === "internal" ? minorFall(1, profileAngle) : crestRise(1, profileAngle)) / 2;
  return (height + notNegative("tipFlat", tipFlat) / (2 * t)) / (1 / (4 * t) + wall);
}

/** One question about cutter and thread, with the number and what it is held against. */
export interface FitCheck {
  readonly key: "entry" | "tip flat" | "profile height" | "neck clearance" | "neck length" | "root diameter" | "crest";
  readonly passes: boolean;
  readonly value: number;
  readonly limit: number;
}

/** Cutter, thread and wall for fitChecks. */
export interface FitCase {
  readonly kind: ThreadKind;
  readonly pitch: number;
  readonly lead: number;
  readonly profileAngle: number;
  /** Wanted pitch diameter. */
  readonly pitchDiameter: number;
  /** Diameter the tip must reach: basic major inside, basic minor outside. */
  readonly rootDiameter: number;
  /** Hole (internal) or blank (external). */
  readonly wallDiameter: number;
  /** Length of thread. */
  readonly depth: number;
  readonly cutterDiameter: number;
  readonly tipFlat: number;
  readonly neckDiameter: number;
  readonly neckLength: number;
}

/**
 * Checks of a single-profile cutter for one thread on its corrected path, each with value and limit.
 *
 *   entry: Dc < D0 · tip flat: f ≤ widest that does · profile height: (Dc − Dn)/2 ≥ depth of cut ·
 *   neck clearance: g > 0 · neck length ≥ thread length · root diameter reached by the tip · crest left at the wall ≥ 0
 *
 * @param c - the case; lengths [mm], c.profileAngle [deg]
 * @returns path radius [mm] and the checks; "entry" only inside
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * fitChecks({ kind: "internal", pitch: 1, lead: 1, profileAngle: 60, pitchDiameter: 5.425, rootDiameter: 6, wallDiameter: 5, depth: 10, cutterDiameter: 4.6, tipFlat: 0.08, neckDiameter: 3, neckLength: 12 }).checks.every((check) => check.passes) //=> true
 */
export function fitChecks(c: FitCase): { pathRadius: number; checks: FitCheck[] } {
  const inside = c.kind === "internal";
  const cutter = { ...c, profileHeight: undefined };
  const e = sweptPathRadius(cutter, c.pitch, c.pitchDiameter, c.kind);
  const reached = tipDiameter(e, c.cutterDiameter, c.kind);
  const depthOfCut = Math.abs(reached - c.wallDiameter) / 2;
  const height = (c.cutterDiameter - c.neckDiameter) / 2;
  const gap = neckClearance(c.wallDiameter, e, c.neckDiameter, c.kind);
  const flat = widestTipFlat(cutter, c.pitch, c.pitchDiameter, c.rootDiameter, c.kind);
  const meets = inside ? reached > c.wallDiameter : reached < c.wallDiameter;
  const crest = meets ? sweptCrestFlat(cutter, c.pitch, e, c.wallDiameter) : c.pitch;
  const at = (key: FitCheck["key"], value: number, limit: number, passes: boolean): FitCheck => ({
    key,
    passes,
    value,
    limit,
  });
  const checks = [
    at("tip flat", c.tipFlat, flat ?? 0, flat !== null && c.tipFlat <= flat),
    at("root diameter", reached, c.rootDiameter, inside ? reached >= c.rootDiameter : reached <= c.rootDiameter),
    at("profile height", height, depthOfCut, height >= depthOfCut),
    at("neck clearance", gap, 0, gap > 0),
    at("neck length", c.neckLength, c.depth, c.neckLength >= c.depth),
    at("crest", crest, 0, crest >= 0),
  ];
  if (inside) checks.unshift(at("entry", c.cutterDiameter, c.wallDiameter, c.cutterDiameter < c.wallDiameter));
  return { pathRadius: e, checks };
}
