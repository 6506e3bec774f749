/**
 * Stress in a tool under a force across its axis and a torque about it: at every section, with a notch factor where
 * the section changes. Two rival measures: the largest principal stress (brittle: carbide) and the equivalent stress of
 * von Mises (ductile: high-speed steel). The second is never smaller than the first; without torque they agree.
 *
 * Direct shear is left out: it is zero at the fibre where bending is largest.
 */
import { finite, notNegative, within } from "../check.ts";
import { fromLoad, type Segment } from "./beam.ts";

export interface StressOptions {
  /** Torque about the axis between the cutting edges and the holder [N·m]. */
  readonly torque: number;
  /** Factor on the stress at the thin side of every shoulder [-]. */
  readonly notchFactor: number;
  /** Factor on the stress at the face of the holder [-]. */
  readonly holderNotchFactor: number;
  /** From the tip to the force [mm]; 0 when left out. */
  readonly loadDistance?: number;
}

export interface PeakStress {
  /** Largest stress, notch factor included [MPa]. */
  readonly stress: number;
  /** The same section without its notch factor [MPa]. */
  readonly nominal: number;
  /** From the tip to that section [mm]. */
  readonly position: number;
  /** What is there. */
  readonly place: "along a part" | "shoulder" | "holder";
}

/** Diameters closer than this are the same: no shoulder. */
const SAME = 1e-9;

/**
 * Nominal bending stress at the surface of a round section.
 *
 *   σ = 32·M/(π·d³)
 *
 * @param moment - M [N·mm], scalar, ≥ 0
 * @param diameter - d [mm], scalar, > 0
 * @returns σ [MPa]
 * @throws TradeError "range" when an argument is outside its limits
 * @source ROARK
 * @example
 * bendingStress(4000, 10) //=> 40.743665
 */
export function bendingStress(moment: number, diameter: number): number {
  within("diameter", diameter, 0, Number.POSITIVE_INFINITY, "length", "low");
  return (32 * notNegative("moment", moment)) / (Math.PI * diameter ** 3);
}

/**
 * Largest principal stress of a round section in bending and torsion.
 *
 *   σ₁ = 16/(π·d³)·(M + √(M² + T²))
 *
 * @param moment - M [N·mm], scalar, ≥ 0
 * @param torque - T [N·mm], scalar, ≥ 0
 * @param diameter - d [mm], scalar, > 0
 * @returns σ₁ [MPa]
 * @throws TradeError "range" when an argument is outside its limits
 * @source SHIGLEY
 * @example
 * principalStress(4000, 3000, 10) //=> 45.836624
 */
export function principalStress(moment: number, torque: number, diameter: number): number {
  within("diameter", diameter, 0, Number.POSITIVE_INFINITY, "length", "low");
  notNegative("torque", torque);
  return (16 * (notNegative("moment", moment) + Math.hypot(moment, torque))) / (Math.PI * diameter ** 3);
}

/**
 * Equivalent stress of von Mises of a round section in bending and torsion.
 *
 *   σv = √(σ² + 3·τ²) = 16/(π·d³)·√(4·M² + 3·T²)
 *
 * @param moment - M [N·mm], scalar, ≥ 0
 * @param torque - T [N·mm], scalar, ≥ 0
 * @param diameter - d [mm], scalar, > 0
 * @returns σv [MPa]
 * @throws TradeError "range" when an argument is outside its limits
 * @source SHIGLEY
 * @example
 * misesStress(4000, 3000, 10) //=> 48.583725
 */
export function misesStress(moment: number, torque: number, diameter: number): number {
  within("diameter", diameter, 0, Number.POSITIVE_INFINITY, "length", "low");
  notNegative("torque", torque);
  return (16 * Math.hypot(2 * notNegative("moment", moment), Math.sqrt(3) * torque)) / (Math.PI * diameter ** 3);
}

/**
 * Largest principal stress along a tool (for brittle tool materials: cemented carbide), and where it is.
 *
 *   max of K·σ₁ over the tool;   K = notchFactor at the thin side of a shoulder, holderNotchFactor at the holder, else 1
 *
 * @param force - F [N], scalar, ≥ 0
 * @param segments - cylinders and cones from the tip to the holder; lengths and diameters [mm], > 0
 * @param opts - opts.torque [N·m]; opts.notchFactor, opts.holderNotchFactor [-], ≥ 1; opts.loadDistance tip to force [mm]
 * @returns stress, nominal [MPa]; position from the tip [mm]; place
 * @throws TradeError "range" when an argument is outside its limits
 * @source SHIGLEY PETERSON
 * @example
 * largestPrincipalStress(100, [{ tipDiameter: 10, holderDiameter: 10, length: 40 }], { torque: 3, notchFactor: 1, holderNotchFactor: 1 }).stress //=> 45.836624
 */
export function largestPrincipalStress(force: number, segments: readonly Segment[], opts: StressOptions): PeakStress {
  return peak(force, segments, opts, principalStress, PRINCIPAL_INSIDE);
}

/**
 * Largest equivalent stress of von Mises along a tool (for ductile tool materials: high-speed steel), and where it is.
 *
 *   max of K·σv over the tool;   K = notchFactor at the thin side of a shoulder, holderNotchFactor at the holder, else 1
 *
 * @param force - F [N], scalar, ≥ 0
 * @param segments - cylinders and cones from the tip to the holder; lengths and diameters [mm], > 0
 * @param opts - opts.torque [N·m]; opts.notchFactor, opts.holderNotchFactor [-], ≥ 1; opts.loadDistance tip to force [mm]
 * @returns stress, nominal [MPa]; position from the tip [mm]; place
 * @throws TradeError "range" when an argument is outside its limits
 * @source SHIGLEY PETERSON
 * @example
 * largestMisesStress(100, [{ tipDiameter: 10, holderDiameter: 10, length: 40 }], { torque: 3, notchFactor: 1, holderNotchFactor: 1 }).stress //=> 48.583725
 */
export function largestMisesStress(force: number, segments: readonly Segment[], opts: StressOptions): PeakStress {
  return peak(force, segments, opts, misesStress, MISES_INSIDE);
}

/**
 * Places s, from the force, where the stress of a cone d = d₀ + c·s may be stationary: roots of A·s² + B·s + C = 0.
 * Mises: d/ds of (4F²s² + 3T²)/d⁶ = 0. Principal: F·d = 3·c·√(F²s² + T²), squared.
 */
type Inside = (F: number, T: number, d0: number, c: number) => readonly [number, number, number];
const MISES_INSIDE: Inside = (F, T, d0, c) => [8 * c * F * F, -4 * d0 * F * F, 9 * c * T * T];
const PRINCIPAL_INSIDE: Inside = (F, T, d0, c) => [
  8 * c * c * F * F,
  -2 * d0 * c * F * F,
  9 * c * c * T * T - d0 * d0 * F * F,
];

function peak(
  force: number,
  segments: readonly Segment[],
  opts: StressOptions,
  measure: (moment: number, torque: number, diameter: number) => number,
  inside: Inside,
): PeakStress {
  notNegative("force", force);
  const T = 1000 * notNegative("torque", opts.torque);
  const notch = within("notchFactor", opts.notchFactor, 1, Number.POSITIVE_INFINITY);
  const holder = within("holderNotchFactor", opts.holderNotchFactor, 1, Number.POSITIVE_INFINITY);
  const a = opts.loadDistance ?? 0;
  const parts = fromLoad(segments, a);
  let best: PeakStress = { stress: -1, nominal: 0, position: a, place: "along a part" };
  const consider = (s: number, diameter: number, factor: number, place: PeakStress["place"]): void => {
    const nominal = measure(force * s, T, diameter);
    if (factor * nominal > best.stress) best = { stress: factor * nominal, nominal, position: a + s, place };
  };
  let s = 0;
  parts.forEach(({ tipDiameter: p, holderDiameter: r, length: L }, i) => {
    const before = parts[i - 1]?.holderDiameter ?? p;
    const after = parts[i + 1]?.tipDiameter ?? r;
    const step = (d: number, other: number): boolean => other - d > SAME * other;
    if (step(p, before)) consider(s, p, notch, "shoulder");
    else consider(s, p, 1, "along a part");
    const c = (r - p) / L;
    const d0 = p - c * s;
    for (const place of roots(inside(force, T, d0, c))) {
      if (place > s && place < s + L) consider(place, d0 + c * place, 1, "along a part");
    }
    s += L;
    if (i === parts.length - 1) consider(s, r, holder, "holder");
    else if (step(r, after)) consider(s, r, notch, "shoulder");
    else consider(s, r, 1, "along a part");
  });
  finite("force", best.stress);
  return best;
}

/** Of an equation without roots, NaN, and one that is not square, infinite, nothing is left. */
function roots([A, B, C]: readonly [number, number, number]): number[] {
  const q = -(B + (B < 0 ? -1 : 1) * Math.sqrt(B * B - 4 * A * C)) / 2;
  return [q / A, C / q].filter((x) => Number.isFinite(x));
}
