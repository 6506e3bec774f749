/**
 * First bending natural frequency of a tool: Euler–Bernoulli finite elements with consistent mass, inverse iteration
 * with the Rayleigh quotient. No shear, no rotary inertia, no give at the shoulders: solid elements vibrate lower, by
 * 3 % for a plain bar of 4 diameters, 16 % at 1.5 diameters, 4 to 15 % for a neck on a thicker shank; a real holder takes
 * more. An estimate, and to be shown as one.
 */
import { finite, positive } from "../check.ts";
import { gaussLegendre } from "../numeric.ts";
import { type Segment, toolLength } from "./beam.ts";

export interface FrequencyOptions {
  /** Young's modulus E [GPa]. */
  readonly modulus: number;
  /** Density ρ [g/cm³]. */
  readonly density: number;
  /** Stiffness of the holder against a push across the axis at its face [N/µm]; rigid when left out. */
  readonly holderStiffness?: number;
  /** Stiffness of the holder against tilting [N·m/rad]; rigid when left out. */
  readonly holderTiltStiffness?: number;
}

/** Elements along the tool, shared out by length/√diameter (the wave is shorter where the tool is thinner). */
const ELEMENTS = 32;
/** A cone has at least so many for each doubling of its diameter, however short it is. */
const PER_DOUBLING = 5;
/** A cone gets more: its bending line is no cubic. */
const CONE_SHARE = 2;
/** First root of cos λ·cosh λ = −1. */
const LAMBDA1 = 1.8751040687119611;

/**
 * First bending natural frequency of a uniform round bar, fixed at one end.
 *
 *   f = λ₁²/(2π·L²)·√(E·I/(ρ·A)),   I/A = d²/16,   λ₁ = 1.8751041
 *
 * @param diameter - d [mm], scalar, > 0
 * @param length - L [mm], scalar, > 0
 * @param modulus - E [GPa], scalar, > 0
 * @param density - ρ [g/cm³], scalar, > 0
 * @returns f [Hz]
 * @throws TradeError "range" when an argument is not above 0
 * @source BLEVINS
 * @example
 * uniformBarFrequency(10, 40, 600, 14.5) //=> 5624.482
 */
export function uniformBarFrequency(diameter: number, length: number, modulus: number, density: number): number {
  const d = positive("diameter", diameter);
  const L = positive("length", length);
  // GPa/(g/cm³) = 10⁶ m²/s² = 10¹² mm²/s²
  const wave = 1e6 * Math.sqrt(positive("modulus", modulus) / positive("density", density));
  return ((LAMBDA1 * LAMBDA1) / (2 * Math.PI * L * L)) * (d / 4) * wave;
}

/**
 * First bending natural frequency of a tool of cylinders and cones, fixed at the holder or on springs there.
 *
 *   K·x = (2π·f)²·M·x,   smallest f
 *
 * @param segments - cylinders and cones from the tip to the holder; lengths and diameters [mm], > 0
 * @param opts - opts.modulus E [GPa], > 0; opts.density ρ [g/cm³], > 0; opts.holderStiffness [N/µm] and opts.holderTiltStiffness [N·m/rad], rigid when left out
 * @returns f [Hz]
 * @throws TradeError "range" when an argument is not above 0
 * @source PRZEMIENIECKI BLEVINS
 * @example
 * toolFrequency([{ tipDiameter: 10, holderDiameter: 10, length: 40 }], { modulus: 600, density: 14.5 }) //=> 5624.48
 */
export function toolFrequency(segments: readonly Segment[], opts: FrequencyOptions): number {
  const length = toolLength(segments);
  const modulus = positive("modulus", opts.modulus);
  const density = positive("density", opts.density);

  // Scaled to length 1, the thickest diameter 1, E and ρ of the tool 1: nothing over- or underflows.
  let widest = 0;
  let total = 0;
  const share: number[] = [];
  for (const s of segments) {
    widest = Math.max(widest, s.tipDiameter, s.holderDiameter);
    const w = ((isCone(s) ? CONE_SHARE : 1) * s.length) / (Math.sqrt(s.tipDiameter) + Math.sqrt(s.holderDiameter));
    share.push(w);
    total += w;
  }
  const elements: Element[] = [];
  segments.forEach((s, i) => {
    // a hair below one half rounds down, so that the same tool in inches gets the same elements
    const even = Math.max(2, Math.ceil((ELEMENTS * share[i]!) / total - 0.500001));
    const steepness = Math.abs(Math.log2(s.tipDiameter / s.holderDiameter));
    const m = Math.max(even, Math.ceil(PER_DOUBLING * steepness - 0.500001));
    const E = s.modulus === undefined ? 1 : positive("modulus", s.modulus) / modulus;
    const rho = s.density === undefined ? 1 : positive("density", s.density) / density;
    const p = s.tipDiameter / widest;
    const r = s.holderDiameter / widest;
    const h = s.length / length;
    if (!isCone(s)) for (let e = 0; e < m; e++) elements.push(element(h / m, p, p, E, rho));
    else {
      // finer towards the thin end: equal steps of √d
      const a = Math.sqrt(p);
      const b = Math.sqrt(r);
      const at = (e: number) => a + ((b - a) * e) / m;
      for (let e = 0; e < m; e++) {
        const piece = (h * (at(e) + at(e + 1))) / (m * (a + b));
        elements.push(element(piece, at(e) ** 2, at(e + 1) ** 2, E, rho));
      }
    }
  });

  // Unit of stiffness: E·I/L³ with I of the widest section.
  const EI = (1000 * modulus * Math.PI * widest ** 4) / 64;
  const { holderStiffness: k1, holderTiltStiffness: k2 } = opts;
  const push = k1 === undefined ? 0 : EI / (1000 * positive("holderStiffness", k1) * length ** 3);
  const tilt = k2 === undefined ? 0 : EI / (1000 * positive("holderTiltStiffness", k2) * length);
  const omega2 = smallest(elements, push, tilt);
  const wave = (1e6 * Math.sqrt(modulus / density) * widest) / (4 * length * length);
  return finite("segments", (Math.sqrt(omega2) * wave) / (2 * Math.PI));
}

function isCone(s: Segment): boolean {
  return Math.abs(s.tipDiameter - s.holderDiameter) > 1e-12 * s.holderDiameter;
}

/** A piece of the bar between two nodes; w and w′ at the tip end, then at the holder end. */
interface Element {
  readonly h: number;
  /** Flexibility as a cantilever held at the holder end: ∫ ds/EI, ∫ s·ds/EI, ∫ s²·ds/EI, s from the tip end; exact. */
  readonly j0: number;
  readonly j1: number;
  readonly j2: number;
  /** Consistent mass for the cubic shape, lower triangle by rows. */
  readonly mass: Float64Array;
}

function element(h: number, p: number, r: number, E: number, rho: number): Element {
  const scale = 1 / (E * p * r ** 3);
  const mass = new Float64Array(10);
  if (p === r) {
    const m = (rho * p * p * h) / 420;
    mass.set([156, 22 * h, 4 * h * h, 54, 13 * h, 156, -13 * h, -3 * h * h, -22 * h, 4 * h * h]);
    for (let i = 0; i < 10; i++) mass[i]! *= m;
  } else {
    // five Gauss points integrate the polynomials of a cone exactly
    const rule = gaussLegendre(5);
    const N = [0, 0, 0, 0];
    for (let g = 0; g < 5; g++) {
      const t = (1 + rule.x[g]!) / 2;
      const d = p + (r - p) * t;
      const m = ((rule.w[g]! * h) / 2) * rho * d * d;
      N[0] = (1 - t) * (1 - t) * (1 + 2 * t);
      N[1] = h * t * (1 - t) * (1 - t);
      N[2] = t * t * (3 - 2 * t);
      N[3] = h * t * t * (t - 1);
      for (let i = 0, k = 0; i < 4; i++) for (let j = 0; j <= i; j++) mass[k++]! += m * N[i]! * N[j]!;
    }
  }
  return {
    h,
    j0: (scale * h * (p * p + p * r + r * r)) / (3 * p * p),
    j1: (scale * h * h * (2 * p + r)) / (6 * p),
    j2: (scale * h ** 3) / 3,
    mass,
  };
}

/**
 * Smallest λ of K·x = λ·M·x by inverse iteration. A cantilever is statically determinate: K⁻¹·y is a walk to the holder
 * for shear and moment and a walk back for slope and deflection, without a matrix and without cancellation.
 */
function smallest(elements: readonly Element[], push: number, tilt: number): number {
  const n = elements.length;
  const x = new Float64Array(2 * n + 2);
  const y = new Float64Array(2 * n + 2);
  const force = new Float64Array(n + 1);
  const moment = new Float64Array(n + 1);
  y[0] = 1; // a force at the tip is near enough to start from
  let value = 0;
  for (let round = 0; round < 200; round++) {
    let Q = y[0]!;
    let N = y[1]!;
    for (let i = 0; i < n; i++) {
      force[i] = Q;
      moment[i] = N;
      N += y[2 * i + 3]! - Q * elements[i]!.h;
      Q += y[2 * i + 2]!;
    }
    x[2 * n] = push * Q;
    x[2 * n + 1] = tilt * N;
    for (let i = n - 1; i >= 0; i--) {
      const { h, j0, j1, j2 } = elements[i]!;
      const turn = x[2 * i + 3]!;
      x[2 * i] = x[2 * i + 2]! - h * turn - moment[i]! * j1 + force[i]! * j2;
      x[2 * i + 1] = turn + moment[i]! * j0 - force[i]! * j1;
    }
    // Rayleigh quotient of x = K⁻¹·y: xᵀ·K·x = xᵀ·y; then y = M·x for the next round
    let above = 0;
    for (let i = 0; i < x.length; i++) above += x[i]! * y[i]!;
    y.fill(0);
    for (let e = 0; e < n; e++) {
      const m = elements[e]!.mass;
      for (let i = 0, k = 0; i < 4; i++) {
        for (let j = 0; j <= i; j++, k++) {
          y[2 * e + i]! += m[k]! * x[2 * e + j]!;
          if (j < i) y[2 * e + j]! += m[k]! * x[2 * e + i]!;
        }
      }
    }
    let below = 0;
    for (let i = 0; i < x.length; i++) below += x[i]! * y[i]!;
    const next = above / below;
    const scale = 1 / Math.sqrt(below);
    for (let i = 0; i < y.length; i++) y[i]! *= scale;
    if (round > 1 && Math.abs(next - value) <= 1e-13 * next) return next;
    value = next;
  }
  return value;
}
