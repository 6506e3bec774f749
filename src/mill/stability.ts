/**
 * Chatter-free axial depth of a milling cut: zero-order (time-averaged) solution with one mode at the tool tip that is the
 * same in every radial direction.
 *
 * With equal modes in x and y the directional coefficients enter only through their trace and determinant, which depend on
 * the angle of engagement alone: −2·Kr·φ and (1 + Kr²)·(φ² − sin²φ). Climb and conventional cuts therefore share one answer.
 * The averaging is poor at small engagement (about φ < 30° with few teeth), where period-doubling chatter adds lobes, and it
 * knows no process damping, which helps at low speed. Damping is an estimate: so is the answer.
 */
import { count, notNegative, positive, within } from "../check.ts";
import { maximum, root } from "../numeric.ts";
import { MOST_TEETH } from "./turn.ts";

export interface StabilityCut {
  /** z [-] */
  readonly teeth: number;
  /** ae [mm] */
  readonly radialDepth: number;
  /** D [mm] */
  readonly diameter: number;
  /** Tangential cutting coefficient Kt at the chip that is cut [MPa]. */
  readonly kc: number;
  /** Radial over tangential force Kr [-]. */
  readonly radialRatio: number;
  /** Static stiffness at the tool tip [N/µm]. */
  readonly stiffness: number;
  /** Natural frequency of the tool [Hz]. */
  readonly frequency: number;
  /** Damping ratio ζ [-]. */
  readonly damping: number;
}

export interface StabilityPocket {
  /** Whole number of waves between two teeth at the left lobe of the pocket [-]. */
  readonly lobe: number;
  /** [1/min] */
  readonly rpm: number;
  /** Limiting axial depth at that speed [mm]. */
  readonly depth: number;
}

/**
 * Limiting axial depth of cut at a spindle speed, the least over all lobes.
 *
 *   b = −2π·|Λ|²/(z·Kt·ΛR),   Λ = μ/G(iω),   ω·T = 2πk + 2·arccot(ΛI/ΛR),
 *   (1 + Kr²)(φ² − sin²φ)·μ² − 2·Kr·φ·μ + 1 = 0,   G = (1/k)/(1 − r² + 2iζr)
 *
 * @param cut - the cut and the mode; cut.teeth [-], cut.radialDepth [mm], cut.diameter [mm], cut.kc [MPa], cut.radialRatio [-],
 *   cut.stiffness [N/µm], cut.frequency [Hz], cut.damping [-]
 * @param rpm - n [1/min], scalar, > 0
 * @returns b [mm]
 * @throws TradeError "range" when a value is outside its limits (radialDepth at most diameter, damping below 1)
 * @source ALTINTAS1995
 * @example
 * stableDepth({ teeth: 4, radialDepth: 10, diameter: 10, kc: 800, radialRatio: 0.35, stiffness: 10, frequency: 1000, damping: 0.03 }, 15000) //=> 4.19265
 */
export function stableDepth(cut: StabilityCut, rpm: number): number {
  const { scale, modes, zeta } = eigenvalues(cut);
  const turn = (2 * Math.PI * cut.frequency * 60) / (cut.teeth * positive("rpm", rpm)) / 2; // ωn·T/2
  let least = Number.POSITIVE_INFINITY;
  for (const mode of modes) {
    const best = bottom(mode, zeta);
    const near = Math.floor((best.r * turn - phase(mode, zeta, best.r)) / Math.PI);
    // So many lobes that they merge: the bottom of the boundary is at every speed.
    if (near > 1e9) {
      least = Math.min(least, best.value);
      continue;
    }
    // Past its bottom the boundary rises on both sides, so the lobes on either side of it decide.
    const first = Math.max(0, near);
    for (const k of [first, first + 1]) {
      const low = Math.max(mode.r0 * (1 + 1e-12), (k * Math.PI) / turn);
      const high = ((k + 1) * Math.PI) / turn;
      if (!(low < high)) continue;
      const f = (r: number) => r * turn - k * Math.PI - phase(mode, zeta, r);
      if (f(low) > 0 || f(high) < 0) continue;
      least = Math.min(least, boundary(mode, zeta, root(f, low, high)));
    }
  }
  return scale * least;
}

/**
 * Critical axial depth: chatter-free at every spindle speed.
 *
 *   b = min over ω of −2π·|Λ|²/(z·Kt·ΛR)
 *
 * @param cut - the cut and the mode, as for stableDepth; cut.radialDepth [mm], cut.diameter [mm], cut.kc [MPa], cut.stiffness [N/µm]
 * @returns b [mm]
 * @throws TradeError "range" when a value is outside its limits (radialDepth at most diameter, damping below 1)
 * @source ALTINTAS1995
 * @example
 * criticalDepth({ teeth: 4, radialDepth: 10, diameter: 10, kc: 800, radialRatio: 0.35, stiffness: 10, frequency: 1000, damping: 0.03 }) //=> 0.3659465
 */
export function criticalDepth(cut: StabilityCut): number {
  const { scale, modes, zeta } = eigenvalues(cut);
  return scale * Math.min(...modes.map((mode) => bottom(mode, zeta).value));
}

/**
 * Spindle speeds at which the limiting axial depth has its peaks (stability pockets), the fastest first.
 *
 *   b(n) at its largest near n = 60·f/(z·j),   j = 1, 2, …
 *
 * @param cut - the cut and the mode, as for stableDepth; cut.frequency [Hz]
 * @param pockets - how many [-], whole, ≥ 1
 * @returns for each pocket: lobe [-], rpm [1/min], depth [mm]
 * @throws TradeError "range" when a value is outside its limits
 * @source ALTINTAS1995
 * @example
 * stabilityPockets({ teeth: 4, radialDepth: 10, diameter: 10, kc: 800, radialRatio: 0.35, stiffness: 10, frequency: 1000, damping: 0.03 }, 1)[0].rpm //=> 14977.5
 */
export function stabilityPockets(cut: StabilityCut, pockets: number): StabilityPocket[] {
  count("pockets", pockets);
  const base = (60 * cut.frequency) / cut.teeth;
  const found: StabilityPocket[] = [];
  for (let j = 1; j <= pockets; j++) {
    const low = base / (j + 0.5);
    const high = base / (j - 0.45);
    const steps = 48;
    const at = (i: number) => low * (high / low) ** (i / steps);
    let best = 1;
    let depth = 0;
    for (let i = 1; i < steps; i++) {
      const b = stableDepth(cut, at(i));
      if (b > depth) {
        depth = b;
        best = i;
      }
    }
    const peak = maximum((n) => stableDepth(cut, n), at(best - 1), at(best + 1), 1e-7);
    found.push({ lobe: j, rpm: peak.x, depth: peak.value });
  }
  return found;
}

/** μ = a + ib, and the frequency ratio r0 above which ΛR < 0. */
interface Mode {
  readonly a: number;
  readonly b: number;
  readonly r0: number;
}

function eigenvalues(cut: StabilityCut): { scale: number; modes: Mode[]; zeta: number } {
  const z = count("teeth", cut.teeth, 1, MOST_TEETH);
  const D = positive("diameter", cut.diameter);
  const ae = within("radialDepth", positive("radialDepth", cut.radialDepth), 0, D, "length", "low");
  const Kt = positive("kc", cut.kc);
  const Kr = notNegative("radialRatio", cut.radialRatio);
  const k = positive("stiffness", cut.stiffness) * 1000; // N/mm
  positive("frequency", cut.frequency);
  const zeta = within("damping", cut.damping, 0, 1, undefined, "both");
  const phi = 2 * Math.asin(Math.sqrt(ae / D));
  const det = (1 + Kr * Kr) * gap(phi);
  const half = Kr * phi; // half the trace, sign turned
  const disc = half * half - det;
  const q = Math.sqrt(Math.abs(disc));
  const pairs: [number, number][] =
    disc >= 0
      ? [
          [(half + q) / det, 0],
          [1 / (half + q), 0],
        ]
      : [
          [half / det, q / det],
          [half / det, -q / det],
        ];
  // ΛR = a(1 − r²) − 2bζr is below 0 for r > r0; nowhere, and r0 is no number, for a = 0 and b < 0
  const modes = pairs.map(([a, b]) => ({ a, b, r0: a / (b * zeta + Math.hypot(b * zeta, a)) }));
  return { scale: (2 * Math.PI * k) / (z * Kt), modes: modes.filter((m) => Number.isFinite(m.r0)), zeta };
}

/** φ² − sin²φ, without loss of figures at small angles. */
function gap(phi: number): number {
  if (phi > 0.3) return phi * phi - Math.sin(phi) ** 2;
  const x = phi * phi;
  return (
    x *
    x *
    (1 / 3) *
    (1 - (2 / 15) * x * (1 - (3 / 42) * x * (1 - (2 / 45) * x * (1 - (1 / 33) * x * (1 - (2 / 91) * x)))))
  );
}

function lambda({ a, b }: Mode, zeta: number, r: number): [number, number] {
  const re = 1 - r * r;
  const im = 2 * zeta * r;
  return [a * re - b * im, a * im + b * re];
}

/** arccot(ΛI/ΛR) for ΛR < 0, between 0 and π. */
function phase(mode: Mode, zeta: number, r: number): number {
  const [re, im] = lambda(mode, zeta, r);
  return Math.atan2(-re, -im);
}

function boundary(mode: Mode, zeta: number, r: number): number {
  const [re, im] = lambda(mode, zeta, r);
  return re < 0 ? -(re * re + im * im) / re : Number.POSITIVE_INFINITY;
}

/** Lowest point of the boundary over all frequencies above r0. */
function bottom(mode: Mode, zeta: number): { r: number; value: number } {
  const span = Math.max(2, mode.r0);
  const at = (i: number) => mode.r0 + span * (i / 120) ** 3;
  let best = 1;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i <= 120; i++) {
    const v = boundary(mode, zeta, at(i));
    if (v < least) {
      least = v;
      best = i;
    }
  }
  const found = maximum((r) => -boundary(mode, zeta, r), at(best - 1), at(best + 1), 1e-9);
  return { r: found.x, value: -found.value };
}
