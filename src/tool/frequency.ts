/**
 * First bending natural frequency of a tool: Euler–Bernoulli finite elements with consistent mass, inverse iteration
 * with the Rayleigh quotient. No shear, no rotary inertia: short tools vibrate lower (about 3 % at 4 diameters, 16 %
 * at 1.5 diameters, by solid elements), real holders lower still. An estimate, and to be shown as one.
 */
import { finite, positive } from "../check.ts";
import { TradeError } from "../errors.ts";
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
/** A cone gets more: the cubic shape is not its exact bending line. */
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
    const cone = s.tipDiameter === s.holderDiameter ? 1 : CONE_SHARE;
    const w = (cone * s.length) / Math.sqrt(Math.min(s.tipDiameter, s.holderDiameter));
    share.push(w);
    total += w;
  }
  const counts = share.map((w) => Math.max(2, Math.round((ELEMENTS * w) / total)));
  const n = counts.reduce((a, b) => a + b, 0);
  const dof = 2 * n + 2;
  const K = new Float64Array(4 * dof);
  const M = new Float64Array(4 * dof);
  let at = 0;
  segments.forEach((s, i) => {
    const m = counts[i]!;
    const h = s.length / length / m;
    const E = s.modulus === undefined ? 1 : positive("modulus", s.modulus) / modulus;
    const rho = s.density === undefined ? 1 : positive("density", s.density) / density;
    for (let e = 0; e < m; e++) {
      const p = (s.tipDiameter + ((s.holderDiameter - s.tipDiameter) * e) / m) / widest;
      const r = (s.tipDiameter + ((s.holderDiameter - s.tipDiameter) * (e + 1)) / m) / widest;
      if (p === r) cylinder(K, M, at, h, E * p ** 4, rho * p * p);
      else cone(K, M, at, h, p, r, E, rho);
      at += 2;
    }
  });

  // Holder: what is rigid is held by leaving its row out, what is a spring adds to the diagonal.
  // Unit of K: E·I/L³ with I of the widest section.
  const EI = (1000 * modulus * Math.PI * widest ** 4) / 64;
  const last = dof - 2;
  let size = dof;
  if (opts.holderStiffness === undefined && opts.holderTiltStiffness === undefined) size = last;
  else {
    hold(K, M, last, opts.holderStiffness, "holderStiffness", (1000 * length ** 3) / EI);
    hold(K, M, last + 1, opts.holderTiltStiffness, "holderTiltStiffness", (1000 * length) / EI);
  }
  const omega2 = smallest(K, M, size);
  const wave = (1e6 * Math.sqrt(modulus / density) * widest) / (4 * length * length);
  return finite("segments", (Math.sqrt(omega2) * wave) / (2 * Math.PI));
}

/** Spring on a degree of freedom, or none left of it when rigid. */
function hold(
  K: Float64Array,
  M: Float64Array,
  row: number,
  stiffness: number | undefined,
  name: string,
  unit: number,
): void {
  if (stiffness !== undefined) {
    K[4 * row + 3]! += positive(name, stiffness) * unit;
    return;
  }
  for (let k = 0; k < 4; k++) {
    K[4 * row + k] = 0;
    M[4 * row + k] = 0;
    if (k < 3 && row + 3 - k < K.length / 4) {
      K[4 * (row + 3 - k) + k] = 0;
      M[4 * (row + 3 - k) + k] = 0;
    }
  }
  K[4 * row + 3] = 1;
}

/** Bands are kept by row: entry (i, j), i − 3 ≤ j ≤ i, at 4·i + 3 − (i − j). */
function add(B: Float64Array, at: number, i: number, j: number, value: number): void {
  B[4 * (at + i) + 3 - (i - j)]! += value;
}

/** Hermite element of constant section. */
function cylinder(K: Float64Array, M: Float64Array, at: number, h: number, EI: number, rhoA: number): void {
  const k = EI / h ** 3;
  const k12 = 12 * k;
  const k6 = 6 * h * k;
  const k4 = 4 * h * h * k;
  const m = (rhoA * h) / 420;
  add(K, at, 0, 0, k12);
  add(K, at, 1, 0, k6);
  add(K, at, 1, 1, k4);
  add(K, at, 2, 0, -k12);
  add(K, at, 2, 1, -k6);
  add(K, at, 2, 2, k12);
  add(K, at, 3, 0, k6);
  add(K, at, 3, 1, k4 / 2);
  add(K, at, 3, 2, -k6);
  add(K, at, 3, 3, k4);
  add(M, at, 0, 0, 156 * m);
  add(M, at, 1, 0, 22 * h * m);
  add(M, at, 1, 1, 4 * h * h * m);
  add(M, at, 2, 0, 54 * m);
  add(M, at, 2, 1, 13 * h * m);
  add(M, at, 2, 2, 156 * m);
  add(M, at, 3, 0, -13 * h * m);
  add(M, at, 3, 1, -3 * h * h * m);
  add(M, at, 3, 2, -22 * h * m);
  add(M, at, 3, 3, 4 * h * h * m);
}

/** Hermite element of a cone from p to r: five Gauss points integrate its polynomials exactly. */
function cone(
  K: Float64Array,
  M: Float64Array,
  at: number,
  h: number,
  p: number,
  r: number,
  E: number,
  rho: number,
): void {
  const rule = gaussLegendre(5);
  for (let g = 0; g < 5; g++) {
    const t = (1 + rule.x[g]!) / 2;
    const w = (rule.w[g]! * h) / 2;
    const d = p + (r - p) * t;
    const stiff = (w * E * d ** 4) / h ** 4;
    const mass = w * rho * d * d;
    const N = [1 - 3 * t * t + 2 * t ** 3, h * t * (1 - t) ** 2, 3 * t * t - 2 * t ** 3, h * t * t * (t - 1)];
    const B = [12 * t - 6, h * (6 * t - 4), 6 - 12 * t, h * (6 * t - 2)];
    for (let i = 0; i < 4; i++) {
      for (let j = 0; j <= i; j++) {
        add(K, at, i, j, stiff * B[i]! * B[j]!);
        add(M, at, i, j, mass * N[i]! * N[j]!);
      }
    }
  }
}

/** Smallest eigenvalue of K·x = λ·M·x by inverse iteration; K is factored in place (banded Cholesky, L·Lᵀ). */
function smallest(K: Float64Array, M: Float64Array, n: number): number {
  for (let i = 0; i < n; i++) {
    for (let k = i < 3 ? 3 - i : 0; k < 4; k++) {
      const j = i - 3 + k;
      let sum = K[4 * i + k]!;
      for (let q = Math.max(0, i - 3, j - 3); q < j; q++) sum -= K[4 * i + 3 - i + q]! * K[4 * j + 3 - j + q]!;
      if (k < 3) K[4 * i + k] = sum / K[4 * j + 3]!;
      else {
        if (!(sum > 0)) throw new TradeError("unsolvable", "segments", sum, "the tool's sections differ too much");
        K[4 * i + 3] = Math.sqrt(sum);
      }
    }
  }
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  // A force at the tip is near enough to start from.
  y[0] = 1;
  let value = 0;
  for (let round = 0; round < 100; round++) {
    x.set(y);
    for (let i = 0; i < n; i++) {
      let sum = x[i]!;
      for (let j = i < 3 ? 0 : i - 3; j < i; j++) sum -= K[4 * i + 3 - i + j]! * x[j]!;
      x[i] = sum / K[4 * i + 3]!;
    }
    for (let i = n - 1; i >= 0; i--) {
      let sum = x[i]!;
      for (let j = Math.min(n - 1, i + 3); j > i; j--) sum -= K[4 * j + 3 - j + i]! * x[j]!;
      x[i] = sum / K[4 * i + 3]!;
    }
    // Rayleigh quotient of x = K⁻¹·y: xᵀ·K·x = xᵀ·y
    let above = 0;
    for (let i = 0; i < n; i++) above += x[i]! * y[i]!;
    y.fill(0);
    for (let i = 0; i < n; i++) {
      for (let j = i < 3 ? 0 : i - 3; j <= i; j++) {
        const m = M[4 * i + 3 - i + j]!;
        y[i]! += m * x[j]!;
        if (j < i) y[j]! += m * x[i]!;
      }
    }
    let below = 0;
    for (let i = 0; i < n; i++) below += x[i]! * y[i]!;
    const next = above / below;
    const scale = 1 / Math.sqrt(below);
    for (let i = 0; i < n; i++) y[i]! *= scale;
    if (round > 1 && Math.abs(next - value) <= 1e-12 * next) return next;
    value = next;
  }
  return value;
}
