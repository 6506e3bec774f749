/**
 * A tool as a cantilever of cylinders and cones: deflection and slope under a force across its axis.
 *
 * Lengths in N, mm; the force stands at the tip or a little way up; the holder is rigid or a spring. Bending and shear
 * are exact integrals of the unit-load method: with t the place along a cone from diameter p to diameter r,
 * ∫ tᵃ(1 − t)ᵇ/d⁴ dt are beta functions over powers of p and r, so nothing cancels when a cone is nearly a cylinder.
 */
import { finite, notNegative, positive, within } from "../check.ts";
import { TradeError } from "../errors.ts";

/** One cylinder or cone of a tool. Tools are lists of them from the tip to the holder. */
export interface Segment {
  /** Diameter at the end that faces the tip [mm]. */
  readonly tipDiameter: number;
  /** Diameter at the end that faces the holder [mm]. */
  readonly holderDiameter: number;
  /** Length [mm]. */
  readonly length: number;
  /** Young's modulus of this part when it differs from the rest, e.g. a steel shank under a carbide head [GPa]. */
  readonly modulus?: number;
  /** Density of this part when it differs from the rest [g/cm³]. */
  readonly density?: number;
}

export interface BeamOptions {
  /** Young's modulus E [GPa]. */
  readonly modulus: number;
  /** Poisson's ratio ν [-]. */
  readonly poisson: number;
  /** Count shear. */
  readonly shear: boolean;
  /** Count the local give at each shoulder. */
  readonly stepFlexibility: boolean;
  /** Stiffness of the holder against a push across the axis at its face [N/µm]; rigid when left out. */
  readonly holderStiffness?: number;
  /** Stiffness of the holder against tilting [N·m/rad]; rigid when left out. */
  readonly holderTiltStiffness?: number;
  /** From the tip to the force [mm]; 0 when left out. */
  readonly loadDistance?: number;
}

/** What each cause adds to the deflection at the force [mm], the whole, and the slope there [rad]. */
export interface Deflection {
  readonly bending: number;
  readonly shear: number;
  readonly shoulders: number;
  readonly holder: number;
  readonly total: number;
  /** Rotation of the axis at the force [rad]. */
  readonly slope: number;
  /** Deflection at the tip: the part beyond the force stays straight [mm]. */
  readonly tip: number;
}

/** Local give of a shoulder: fit c = A·(1 − ρ^−B)^C to solid elements, see {@link shoulderGive}. */
const GIVE = { A: 0.277, B: 2.9, C: 1.85 };
/** Diameters closer than this are the same: no shoulder. */
const SAME = 1e-9;

/**
 * Checks a tool: at least one segment, every diameter and length above zero.
 *
 * @param segments - cylinders and cones from the tip to the holder; lengths and diameters [mm], > 0
 * @returns length of the tool [mm]
 * @throws TradeError "range" when a diameter or a length is not above 0, "blank" when there is no segment
 * @source ROARK
 * @example
 * toolLength([{ tipDiameter: 4, holderDiameter: 4, length: 12 }, { tipDiameter: 6, holderDiameter: 6, length: 15 }]) //=> 27
 */
export function toolLength(segments: readonly Segment[]): number {
  if (segments.length === 0) throw new TradeError("blank", "segments", undefined, { is: "segments" });
  let length = 0;
  for (const s of segments) {
    positive("segments", s.tipDiameter);
    positive("segments", s.holderDiameter);
    length += positive("segments", s.length);
  }
  return finite("segments", length);
}

/**
 * The part of a tool between a force and the holder.
 *
 * @param segments - cylinders and cones from the tip to the holder; lengths and diameters [mm], > 0
 * @param loadDistance - a, from the tip to the force [mm], scalar, ≥ 0, less than the tool's length
 * @returns segments from the force to the holder; lengths and diameters [mm]
 * @throws TradeError "range" when the force stands at the holder or beyond
 * @source ROARK
 * @example
 * fromLoad([{ tipDiameter: 4, holderDiameter: 6, length: 10 }], 5)[0].tipDiameter //=> 5
 */
export function fromLoad(segments: readonly Segment[], loadDistance: number): Segment[] {
  const length = toolLength(segments);
  within("loadDistance", loadDistance, 0, length, "length", "high");
  let rest = loadDistance;
  let i = 0;
  while (i < segments.length - 1 && segments[i]!.length <= rest) rest -= segments[i++]!.length;
  const first = segments[i]!;
  if (rest === 0) return segments.slice(i);
  const tipDiameter = first.tipDiameter + ((first.holderDiameter - first.tipDiameter) * rest) / first.length;
  return [{ ...first, tipDiameter, length: first.length - rest }, ...segments.slice(i + 1)];
}

/**
 * Cowper's shear coefficient of a round bar.
 *
 *   k = 6·(1 + ν)/(7 + 6·ν)
 *
 * @param poisson - ν [-], scalar, 0 ≤ ν ≤ 0.5
 * @returns k [-]
 * @throws TradeError "range" when ν is outside its limits
 * @source COWPER1966
 * @example
 * shearCoefficient(0.3) //=> 0.886364
 */
export function shearCoefficient(poisson: number): number {
  within("poisson", poisson, 0, 0.5);
  return (6 * (1 + poisson)) / (7 + 6 * poisson);
}

/**
 * Local give of a sharp shoulder, as the length of thin bar that would turn as much under the same moment.
 *
 *   c·d,   c = 0.277·(1 − ρ^−2.9)^1.85,   ρ = D/d
 *
 * The thin section bends into the thick one, so a stepped bar is softer than beam theory: c = 0.07 at 1.25:1, 0.18 at
 * 1.75:1, 0.24 at 2.5:1 in solid elements refined until the re-entrant corner no longer mattered (within 0.003 for
 * necks of 4 diameters and more; shorter necks differ by up to 0.015). A fillet takes some of it away: give that as a
 * cone. The thin bar is not made longer, the shoulder is a hinge; a rule that lengthens the whole tool instead comes to
 * smaller figures (about 0.17 at 2.5:1), because it lengthens the lever of the shank as well.
 *
 * @param thin - d, diameter of the thin side [mm], scalar, > 0
 * @param thick - D, diameter of the thick side [mm], scalar, ≥ d
 * @returns c·d [mm]
 * @throws TradeError "range" when d is not above 0 or D is less than d
 * @source SOLIDS
 * @example
 * shoulderGive(4, 10) //=> 0.96853
 * shoulderGive(4, 4) //=> 0
 */
export function shoulderGive(thin: number, thick: number): number {
  positive("thin", thin);
  within("thick", thick, thin, Number.POSITIVE_INFINITY, "length");
  return thin * GIVE.A * (1 - (thin / thick) ** GIVE.B) ** GIVE.C;
}

/**
 * Deflection of a tool under a force across its axis, cause by cause.
 *
 *   bending   F·∫ s²/(E·I) ds
 *   shear     F·∫ ds/(k·G·A),   G = E/(2·(1 + ν))
 *   shoulders F·Σ s²·c·d/(E·I) with d, I and E of the thin side
 *   holder    F/k₁ + F·L²/k₂
 *
 * s from the force, L from the force to the holder.
 *
 * @param force - F [N], scalar, ≥ 0
 * @param segments - cylinders and cones from the tip to the holder; lengths and diameters [mm], > 0
 * @param opts - opts.modulus E [GPa]; opts.poisson ν [-]; opts.shear, opts.stepFlexibility TRUE counts them; opts.holderStiffness k₁ [N/µm] and opts.holderTiltStiffness k₂ [N·m/rad], rigid when left out; opts.loadDistance tip to force [mm]
 * @returns bending, shear, shoulders, holder, total, tip [mm]; slope [rad]
 * @throws TradeError "range" when an argument is outside its limits
 * @source ROARK TIMOSHENKO COWPER1966 SOLIDS
 * @example
 * deflectionParts(100, [{ tipDiameter: 10, holderDiameter: 10, length: 40 }], { modulus: 600, poisson: 0.22, shear: true, stepFlexibility: true }).bending //=> 0.0072433183
 */
export function deflectionParts(force: number, segments: readonly Segment[], opts: BeamOptions): Deflection {
  notNegative("force", force);
  const E = 1000 * positive("modulus", opts.modulus);
  const shearFactor = (2 * (1 + opts.poisson)) / shearCoefficient(opts.poisson);
  const a = opts.loadDistance ?? 0;
  const parts = fromLoad(segments, a);
  let s = 0;
  let bending = 0;
  let shear = 0;
  let shoulders = 0;
  let slope = 0;
  for (let i = 0; i < parts.length; i++) {
    const part = parts[i]!;
    const { tipDiameter: p, holderDiameter: r, length: L } = part;
    const e = modulusOf(part, E);
    // ∫ dx/d⁴, ∫ x·dx/d⁴, ∫ x²·dx/d⁴ along the part
    const j0 = (L * (p * p + p * r + r * r)) / (3 * (p * r) ** 3);
    const j1 = (L * L * (2 * p + r)) / (6 * p * p * r ** 3);
    const j2 = L ** 3 / (3 * p * r ** 3);
    bending += (s * s * j0 + 2 * s * j1 + j2) / e;
    slope += (s * j0 + j1) / e;
    shear += L / (p * r) / e;
    s += L;
    const next = parts[i + 1];
    if (next !== undefined && opts.stepFlexibility) {
      const here = r <= next.tipDiameter;
      const thin = here ? r : next.tipDiameter;
      const thick = here ? next.tipDiameter : r;
      if (thick - thin > SAME * thick) {
        const turn = shoulderGive(thin, thick) / (modulusOf(here ? part : next, E) * thin ** 4);
        shoulders += s * s * turn;
        slope += s * turn;
      }
    }
  }
  const bend = (64 * force) / Math.PI;
  const k1 = opts.holderStiffness;
  const k2 = opts.holderTiltStiffness;
  const tilt = k2 === undefined ? 0 : (force * s) / (1000 * positive("holderTiltStiffness", k2));
  const push = k1 === undefined ? 0 : force / (1000 * positive("holderStiffness", k1));
  const result = {
    bending: bend * bending,
    shear: opts.shear ? ((4 * force) / Math.PI) * shearFactor * shear : 0,
    shoulders: bend * shoulders,
    holder: push + tilt * s,
    slope: bend * slope + tilt,
  };
  const total = result.bending + result.shear + result.shoulders + result.holder;
  return { ...result, total: finite("segments", total), tip: total + result.slope * a };
}

/**
 * Deflection of a tool at the force.
 *
 *   δ = bending + shear + shoulders + holder
 *
 * @param force - F [N], scalar, ≥ 0
 * @param segments - cylinders and cones from the tip to the holder; lengths and diameters [mm], > 0
 * @param opts - as for deflectionParts; opts.modulus [GPa]; opts.poisson [-]
 * @returns δ [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source ROARK TIMOSHENKO COWPER1966 SOLIDS
 * @example
 * toolDeflection(100, [{ tipDiameter: 10, holderDiameter: 10, length: 40 }], { modulus: 600, poisson: 0.22, shear: true, stepFlexibility: true }) //=> 0.0074787261
 */
export function toolDeflection(force: number, segments: readonly Segment[], opts: BeamOptions): number {
  return deflectionParts(force, segments, opts).total;
}

/**
 * Static stiffness of a tool at the force.
 *
 *   k = F/δ
 *
 * @param segments - cylinders and cones from the tip to the holder; lengths and diameters [mm], > 0
 * @param opts - as for deflectionParts; opts.modulus [GPa]; opts.poisson [-]
 * @returns k [N/µm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source ROARK
 * @example
 * toolStiffness([{ tipDiameter: 10, holderDiameter: 10, length: 40 }], { modulus: 600, poisson: 0.22, shear: false, stepFlexibility: false }) //=> 13.805827
 */
export function toolStiffness(segments: readonly Segment[], opts: BeamOptions): number {
  return 1 / (1000 * toolDeflection(1, segments, opts));
}

/**
 * Tip deflection of a neck on a shank by elementary beam theory (bending alone, sharp model, rigid holder).
 *
 *   δ = F·l³/(3·E·I₁) + F·((l + L)³ − l³)/(3·E·I₂),   I = π·d⁴/64
 *
 * @param force - F [N], scalar, ≥ 0
 * @param neckDiameter - d₁ [mm], scalar, > 0
 * @param neckLength - l [mm], scalar, > 0
 * @param modulus - E [GPa], scalar, > 0
 * @param shankDiameter - d₂ [mm], scalar, > 0; only together with shankLength
 * @param shankLength - L [mm], scalar, > 0; only together with shankDiameter
 * @returns δ [mm]
 * @throws TradeError "range" when an argument is outside its limits, "blank" when only one of the shank's sizes is given
 * @source ROARK
 * @example
 * neckDeflection(20, 3.4, 15, 600) //=> 0.0057167
 * neckDeflection(20, 3.4, 15, 600, 6, 15) //=> 0.0098429
 */
export function neckDeflection(
  force: number,
  neckDiameter: number,
  neckLength: number,
  modulus: number,
  shankDiameter?: number,
  shankLength?: number,
): number {
  notNegative("force", force);
  const E = 1000 * positive("modulus", modulus);
  const l = positive("neckLength", neckLength);
  let sum = l ** 3 / positive("neckDiameter", neckDiameter) ** 4;
  if (shankDiameter !== undefined || shankLength !== undefined) {
    if (shankDiameter === undefined) throw lacksShank("shankDiameter", shankDiameter);
    if (shankLength === undefined) throw lacksShank("shankLength", shankLength);
    const L = positive("shankLength", shankLength);
    sum += (L * (3 * l * (l + L) + L * L)) / positive("shankDiameter", shankDiameter) ** 4;
  }
  return finite("force", (64 * force * sum) / (3 * Math.PI * E));
}

const lacksShank = (parameter: string, value: unknown) =>
  new TradeError("blank", parameter, value, { is: "shank-sizes" });

function modulusOf(part: Segment, E: number): number {
  return part.modulus === undefined ? E : 1000 * positive("modulus", part.modulus);
}
