/**
 * Chatter of a milling cut at no particular speed: the axial depth below which no spindle speed lets it start.
 *
 * Time-averaged cut (zero order) with process damping, any number of modes in the feed direction x and across it, y. With u the
 * vibration, Δ = u(t) − u(t − T) and μ = 1 − e^(−iωT), the cut answers with −b·A·μ·u − b·P·u̇, and the tool with G·force:
 *
 *   det(B + b·μ·A) = 0,   B = diag(1/Gx, 1/Gy) + iω·b·P
 *
 * A speed can only give |1 − μ| = 1. So a depth is stable at every speed if and only if both roots μ lie outside that circle
 * at every ω. The damping stands in its own directions: folded into one ratio it would come out several times too large.
 */
import { positive, within } from "../check.ts";
import { TradeError } from "../errors.ts";
import { maximum } from "../numeric.ts";
import { type Averaged, averagedCut, type ChatterCut } from "./chatter-cut.ts";

/** One way in which the tool tip swings. */
export interface ChatterMode {
  /** [Hz] */
  readonly frequency: number;
  /** Stiffness of the mode at the tool tip [N/µm]. */
  readonly stiffness: number;
  /** Damping ratio ζ [-]. */
  readonly damping: number;
}

/** Modes of the tool tip along the feed (x) and across it in the plane of the cut (y). */
export interface TipModes {
  readonly x: readonly ChatterMode[];
  readonly y: readonly ChatterMode[];
}

/** Where the frequencies are looked for, in parts of the lowest and of the highest mode. */
const FROM = 0.6;
const TO = 4;
const STEPS = 160;
/** How near the lowest place is looked for; its value is level there, so it is far nearer. */
const REFINED = 1e-5;

/** A sum of modes at ω: 1/G [N/mm], its real and its imaginary part put into `out` from a place on. */
function inverse(modes: readonly ChatterMode[], omega: number, out: Float64Array, place: number): void {
  let re = 0;
  let im = 0;
  for (const { frequency, stiffness, damping } of modes) {
    const r = omega / (2 * Math.PI * frequency);
    const a = 1 - r * r;
    const b = 2 * damping * r;
    const size = 1000 * stiffness * (a * a + b * b);
    re += a / size;
    im -= b / size;
  }
  const whole = re * re + im * im;
  out[place] = re / whole;
  out[place + 1] = -im / whole;
}

/** 1/Gx and 1/Gy at ω: four numbers from a place on. */
function inverses(modes: TipModes, omega: number, out: Float64Array, place: number): void {
  inverse(modes.x, omega, out, place);
  if (modes.y !== modes.x) {
    inverse(modes.y, omega, out, place + 2);
    return;
  }
  out[place + 2] = out[place]!;
  out[place + 3] = out[place + 1]!;
}

interface Sweep {
  readonly omegas: Float64Array;
  /** Four numbers an ω, see {@link inverses}. */
  readonly inverses: Float64Array;
  /** Place of the first ω above the lowest mode: just there a cut that chatters does so. */
  readonly above: number;
}
const sweeps = new WeakMap<TipModes, Sweep>();

/** The ω at which modes are looked at, from below the lowest to above the highest, with what the tool answers there. */
function sweepOf(modes: TipModes): Sweep {
  const known = sweeps.get(modes);
  if (known) return known;
  const all = [...modes.x, ...modes.y].map((m) => m.frequency);
  const low = 2 * Math.PI * FROM * Math.min(...all);
  const high = 2 * Math.PI * TO * Math.max(...all);
  const omegas = new Float64Array(STEPS + 1);
  const answers = new Float64Array(4 * (STEPS + 1));
  for (let i = 0; i <= STEPS; i++) {
    omegas[i] = low * (high / low) ** (i / STEPS);
    inverses(modes, omegas[i]!, answers, 4 * i);
  }
  const above = omegas.findIndex((omega) => omega > low / FROM);
  const sweep: Sweep = { omegas, inverses: answers, above };
  sweeps.set(modes, sweep);
  return sweep;
}

/** The two roots η = b·μ of det(B + η·A) = 0 at a place of a sweep, as [re, im, re, im]; a root at infinity is left out as infinity. */
function roots({ A, P }: Averaged, { omegas, inverses: tool }: Sweep, at: number, depth: number): void {
  const xr = tool[4 * at]!;
  const xi = tool[4 * at + 1]!;
  const yr = tool[4 * at + 2]!;
  const yi = tool[4 * at + 3]!;
  const w = omegas[at]! * depth;
  const i11 = xi + w * P[0]!;
  const i22 = yi + w * P[3]!;
  const i12 = w * P[1]!; // B12 = B21 = i·i12
  const a = A[0]! * A[3]! - A[1]! * A[2]!;
  const br = xr * A[3]! + yr * A[0]!;
  const bi = i11 * A[3]! + i22 * A[0]! - i12 * (A[1]! + A[2]!);
  const cr = xr * yr - i11 * i22 + i12 * i12;
  const ci = xr * i22 + yr * i11;
  // √(b² − 4ac), the sign that does not cancel, then q/a and c/q
  const dr = br * br - bi * bi - 4 * a * cr;
  const di = 2 * br * bi - 4 * a * ci;
  const size = Math.sqrt(dr * dr + di * di);
  let sr = Math.sqrt(Math.max(0, (size + dr) / 2));
  let si = Math.sqrt(Math.max(0, (size - dr) / 2));
  if (di < 0) si = -si;
  if (br * sr + bi * si < 0) {
    sr = -sr;
    si = -si;
  }
  const qr = -(br + sr) / 2;
  const qi = -(bi + si) / 2;
  const q2 = qr * qr + qi * qi;
  ROOTS[0] = qr / a;
  ROOTS[1] = qi / a;
  ROOTS[2] = (cr * qr + ci * qi) / q2;
  ROOTS[3] = (ci * qr - cr * qi) / q2;
}

const ROOTS = new Float64Array(4);

/** A figure of the cut at a place of a sweep, put at the same place of `out`. */
type Figure = (sweep: Sweep, at: number, out: Float64Array) => void;

/** Least |1 − μ|² over both roots. */
const nearest =
  (cut: Averaged, depth: number): Figure =>
  (sweep, at, out) => {
    roots(cut, sweep, at, depth);
    out[at] = Number.POSITIVE_INFINITY;
    for (let i = 0; i < 4; i += 2) {
      const re = 1 - ROOTS[i]! / depth;
      const im = ROOTS[i + 1]! / depth;
      const d = re * re + im * im;
      if (d < out[at]!) out[at] = d;
    }
  };

/** Depth that one frequency allows where nothing but the structure damps: |η|²/(2·Re η), least over both roots. */
const undamped =
  (cut: Averaged): Figure =>
  (sweep, at, out) => {
    roots(cut, sweep, at, 1);
    out[at] = Number.POSITIVE_INFINITY;
    for (let i = 0; i < 4; i += 2) {
      const re = ROOTS[i]!;
      const im = ROOTS[i + 1]!;
      if (re > 0) out[at] = Math.min(out[at]!, (re * re + im * im) / (2 * re));
    }
  };

/** A sweep of one place, and the value there. */
const HERE: Sweep = { omegas: new Float64Array(1), inverses: new Float64Array(4), above: 0 };
const VALUE = new Float64Array(1);
const values = new Float64Array(STEPS + 1);

/** Least value of a figure over the range of the modes: a logarithmic sweep, then finer about its lowest points. */
function least(modes: TipModes, figure: Figure, enough = Number.NEGATIVE_INFINITY): number {
  const sweep = sweepOf(modes);
  const { omegas, above } = sweep;
  let best = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= STEPS; k++) {
    const i = (above + k) % (STEPS + 1);
    figure(sweep, i, values);
    best = Math.min(best, values[i]!);
    if (best < enough) return best;
  }
  const between = (omega: number) => {
    HERE.omegas[0] = omega;
    inverses(modes, omega, HERE.inverses, 0);
    figure(HERE, 0, VALUE);
    return -VALUE[0]!;
  };
  // A sharp mode may have its lowest point between two steps of a shallow dip: look into every dip.
  for (let i = 1; i < STEPS; i++) {
    if (Number.isFinite(values[i]!) && values[i]! <= Math.min(values[i - 1]!, values[i + 1]!))
      best = Math.min(best, -maximum(between, omegas[i - 1]!, omegas[i + 1]!, REFINED).value);
  }
  return best;
}

function checked(modes: TipModes): TipModes {
  for (const m of [...modes.x, ...modes.y]) {
    positive("frequency", m.frequency);
    positive("stiffness", m.stiffness);
    within("damping", m.damping, 0, 1, undefined, "both");
  }
  if (modes.x.length === 0 || modes.y.length === 0) throw new TradeError("blank", "modes", undefined, { is: "modes" });
  return modes;
}

/**
 * Whether an axial depth is free of chatter at every spindle speed.
 *
 *   |1 − μ| ≥ 1 for both roots of det(B + b·μ·A) = 0 at every ω from 0.6 of the lowest to 4 times the highest mode
 *
 * @param cut - the cut, as for averagedCut; cut.surfaceSpeed [m/min] matters to process damping only
 * @param modes - modes of the tool tip along and across the feed: frequency [Hz], stiffness [N/µm], damping [-]
 * @param depth - b, axial depth [mm], scalar, > 0
 * @returns whether it is stable at every speed
 * @throws TradeError "range" when a value is outside its limits, "blank" when a direction has no mode
 * @source ALTINTAS1995 ALTINTAS2008 DERIVED
 * @example
 * stableAtAnySpeed({ teeth: 4, radialDepth: 10, diameter: 10, slope: 800, radialRatio: 0.35, way: "climb", surfaceSpeed: 100, processDamping: 0 }, { x: [{ frequency: 1000, stiffness: 10, damping: 0.03 }], y: [{ frequency: 1000, stiffness: 10, damping: 0.03 }] }, 0.36) //=> true
 */
export function stableAtAnySpeed(cut: ChatterCut, modes: TipModes, depth: number): boolean {
  return stableAt(averagedCut(cut), checked(modes), positive("depth", depth));
}

function stableAt(matrices: Averaged, modes: TipModes, depth: number): boolean {
  return least(modes, nearest(matrices, depth), 1) >= 1;
}

/** Factor between the trial depths of a search, and the deepest that is tried [mm]. */
const GROWTH = 2;
const DEEPEST = 1e4;
/** Share of itself that a depth is found to, where the caller does not say. */
const FOUND = 1e-4;

/**
 * Largest axial depth that is free of chatter at every spindle speed.
 *
 *   without process damping b = min over ω of |η|²/(2·Re η), η = b·μ; with it the least b that some speed lets chatter
 *
 * Process damping adds to it, as a rule: the search starts at the depth without.
 *
 * @param cut - the cut, as for averagedCut; cut.surfaceSpeed [m/min], cut.processDamping [N/m]
 * @param modes - modes of the tool tip along and across the feed: frequency [Hz], stiffness [N/µm], damping [-]
 * @param found - share of itself that the depth is found to, scalar, > 0 [-]
 * @returns b [mm]; infinite when the process damps every depth up to 10 m
 * @throws TradeError "range" when a value is outside its limits, "blank" when a direction has no mode
 * @source ALTINTAS1995 ALTINTAS2008 DERIVED
 * @example
 * anySpeedDepth({ teeth: 4, radialDepth: 10, diameter: 10, slope: 800, radialRatio: 0.35, way: "climb", surfaceSpeed: 100, processDamping: 0 }, { x: [{ frequency: 1000, stiffness: 10, damping: 0.03 }], y: [{ frequency: 1000, stiffness: 10, damping: 0.03 }] }) //=> 0.36595
 */
export function anySpeedDepth(cut: ChatterCut, modes: TipModes, found = FOUND): number {
  checked(modes);
  const matrices = averagedCut({ ...cut, processDamping: 0 });
  const bare = least(modes, undamped(matrices));
  if (cut.processDamping === 0) return bare;
  const damped = averagedCut(cut);
  let high = 0.99 * bare;
  while (!stableAt(damped, modes, high)) high /= GROWTH;
  let low = high;
  do {
    low = high;
    high *= GROWTH;
    if (high > DEEPEST) return Number.POSITIVE_INFINITY;
  } while (stableAt(damped, modes, high));
  while (high / low > 1 + found) {
    const middle = Math.sqrt(low * high);
    if (stableAt(damped, modes, middle)) low = middle;
    else high = middle;
  }
  return low;
}
