/**
 * Pitch diameter by wires and balls, and what to do in the control when it is off.
 * α is half the profile angle, λ the lead angle at the pitch diameter, tan λ = L/(π·D2).
 */
import { positive, within } from "../check.ts";
import { crestRise, minorFall, type ThreadKind } from "./path.ts";

/** Depth of the rounding at crest and root of the 55° profile, per unit of pitch (BS 84, from memory). */
const WHITWORTH_ROUNDING = 0.073917;

/** What is measured on. Lengths in any one unit. */
export interface Gauged {
  /** D2, pitch diameter. */
  readonly pitchDiameter: number;
  /** P, pitch. */
  readonly pitch: number;
  /** L, lead (the pitch for a single start). */
  readonly lead: number;
  /** W, diameter of the wires or balls. */
  readonly wireDiameter: number;
  /** Included angle of the profile [deg]. */
  readonly profileAngle: number;
}

const half = (profileAngle: number) =>
  (within("profileAngle", profileAngle, 0, 180, undefined, "both") * Math.PI) / 360;

/**
 * Distance of the wires' outer sides from the pitch diameter, helix included.
 *
 *   q = W·(1 + 1/sin α) − (P/2)·cot α + (W/2)·tan²λ·cos α·cot α
 */
function rise(g: Gauged, D2: number): number {
  const a = half(g.profileAngle);
  const W = g.wireDiameter;
  const cot = 1 / Math.tan(a);
  const slope = positive("lead", g.lead) / (Math.PI * D2);
  return W * (1 + 1 / Math.sin(a)) - (g.pitch / 2) * cot + (W / 2) * slope * slope * Math.cos(a) * cot;
}

function fits(g: Gauged, kind: ThreadKind, parameter: string): void {
  positive("pitch", g.pitch);
  positive(parameter, g.wireDiameter);
  if (g.profileAngle !== 60 && g.profileAngle !== 55) return;
  const { touchesFrom, touchesTo } = wireRange(g.pitch, g.profileAngle, kind);
  within(parameter, g.wireDiameter, touchesFrom, touchesTo, "length");
}

/**
 * Wire that touches the flanks at the pitch line.
 *
 *   W = P/(2·cos α)
 *
 * @param pitch - P [mm], scalar, > 0
 * @param profileAngle - 2·α, included angle of the profile [deg]
 * @returns W [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MH JONES1914
 * @example
 * bestWire(1, 60) //=> 0.57735
 */
export function bestWire(pitch: number, profileAngle: number): number {
  return positive("pitch", pitch) / (2 * Math.cos(half(profileAngle)));
}

/**
 * Wires and balls that touch the straight flanks of the basic profile, and the smallest that stands clear of the crests.
 *
 *   touch: 2·w/cos α with w the groove's half width where the flank ends; clear: ((P/2)·cot α + 2·h)/(1 + 1/sin α)
 *
 * @param pitch - P [mm], scalar, > 0
 * @param profileAngle - 2·α, included angle of the profile [deg], 60 or 55
 * @param kind - external: wires over the thread; internal: balls in it
 * @returns touchesFrom, touchesTo, clearFrom [mm]
 * @throws TradeError "range" or "value" when an argument is outside its limits
 * @source ISO68 BS84
 * @example
 * wireRange(1, 60, "external") //=> { touchesFrom: 0.288675, touchesTo: 1.010363, clearFrom: 0.505181 }
 */
export function wireRange(
  pitch: number,
  profileAngle: number,
  kind: ThreadKind,
): { touchesFrom: number; touchesTo: number; clearFrom: number } {
  const a = half(profileAngle);
  const out = crestRise(pitch, profileAngle);
  const into = minorFall(pitch, profileAngle);
  // Heights over the pitch line, per side: towards the crest the wire lies in from, and towards the root.
  const crest = (kind === "external" ? out : into) / 2;
  const bottom = (kind === "external" ? into : out) / 2;
  const rounding = profileAngle === 55 ? WHITWORTH_ROUNDING * pitch : 0;
  const wire = (height: number) => (2 * (pitch / 4 + height * Math.tan(a))) / Math.cos(a);
  return {
    touchesFrom: wire(-(bottom - rounding)),
    touchesTo: wire(crest - rounding),
    clearFrom: (pitch / (2 * Math.tan(a)) + 2 * crest) / (1 + 1 / Math.sin(a)),
  };
}

/**
 * Measurement over three wires on an external thread.
 *
 *   M = d2 + W·(1 + 1/sin α) − (P/2)·cot α + (W/2)·tan²λ·cos α·cot α
 *
 * @param thread - thread.pitchDiameter, thread.pitch, thread.lead, thread.wireDiameter [mm], thread.profileAngle [deg]
 * @returns M [mm]
 * @throws TradeError "range" when an argument is outside its limits, or the wire cannot touch the flanks
 * @source MH EURAMET10
 * @example
 * overWires({ pitchDiameter: 9.026, pitch: 1.5, lead: 1.5, wireDiameter: 0.866, profileAngle: 60 }) //=> 10.3268
 */
export function overWires(thread: Gauged): number {
  fits(thread, "external", "wireDiameter");
  const d2 = positive("pitchDiameter", thread.pitchDiameter);
  return d2 + rise(thread, d2);
}

/**
 * Measurement between the inner faces of two balls in an internal thread (over the balls it is 2·W more).
 *
 *   M = D2 − W·(1 + 1/sin α) + (P/2)·cot α − (W/2)·tan²λ·cos α·cot α
 *
 * @param thread - thread.pitchDiameter, thread.pitch, thread.lead, thread.wireDiameter (of the balls) [mm], thread.profileAngle [deg]
 * @returns M [mm]
 * @throws TradeError "range" when an argument is outside its limits, or the ball cannot touch the flanks
 * @source EURAMET10
 * @example
 * betweenBalls({ pitchDiameter: 27.7267, pitch: 3.5, lead: 3.5, wireDiameter: 2, profileAngle: 60 }) //=> 24.7554
 */
export function betweenBalls(thread: Gauged): number {
  fits(thread, "internal", "ballDiameter");
  const D2 = positive("pitchDiameter", thread.pitchDiameter);
  return D2 - rise(thread, D2);
}

/**
 * Pitch diameter from a measurement over wires (external) or between balls (internal).
 *
 *   D2 = M ∓ q(D2), solved by iteration because the helix term holds D2
 *
 * @param measured - M [mm], scalar, > 0
 * @param thread - thread.pitch, thread.lead, thread.wireDiameter [mm], thread.profileAngle [deg]
 * @param kind - external: over wires; internal: between balls
 * @returns D2 [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source MH EURAMET10
 * @example
 * gaugedPitchDiameter(10.32677938, { pitch: 1.5, lead: 1.5, wireDiameter: 0.866, profileAngle: 60 }, "external") //=> 9.026
 */
export function gaugedPitchDiameter(measured: number, thread: Omit<Gauged, "pitchDiameter">, kind: ThreadKind): number {
  const M = positive("measured", measured);
  const parameter = kind === "external" ? "wireDiameter" : "ballDiameter";
  fits({ ...thread, pitchDiameter: M }, kind, parameter);
  const sign = kind === "external" ? -1 : 1;
  let D2 = M;
  // Contracts by about (W/D2)·tan²λ each time: a handful of rounds.
  for (let i = 0; i < 60; i++) {
    const next = M + sign * rise({ ...thread, pitchDiameter: D2 }, D2);
    if (!(next > 0)) positive("measured", next);
    if (Math.abs(next - D2) <= 1e-15 * M) return next;
    D2 = next;
  }
  return D2;
}

/**
 * Amount to add to the radius wear value under cutter compensation, for an internal thread: a positive wear value moves
 * the path away from the wall. An external thread takes the opposite sign; a control that holds diameters takes twice the amount.
 *
 *   Δ = gain·(measured − wanted)/2
 *
 * @param measured - measured pitch diameter [mm], scalar, > 0
 * @param wanted - wanted pitch diameter [mm], scalar, > 0
 * @param gain - share of the error to correct at once [-], scalar, > 0
 * @returns Δ [mm]
 * @throws TradeError "range" when an argument is not above 0
 * @source COMMON
 * @example
 * wearChange(5.38, 5.42) //=> -0.02
 */
export function wearChange(measured: number, wanted: number, gain = 1): number {
  const off = positive("measured", measured) - positive("wanted", wanted);
  return (positive("gain", gain) * off) / 2;
}
