/**
 * What may be said of chatter before anybody has measured the machine: whether a cut is likely to chatter even in a stiff
 * holder, and how much any set-up allows. Linear theory with published modes condemns most ordinary rows, so the depth that
 * it calls stable is no verdict; the rule speaks only where both ends of what is known agree.
 */
import { notNegative, positive } from "../check.ts";
import { HOLDING } from "../tool/tip-mode.ts";
import { arcDepth, type Side } from "./arc.ts";
import { anySpeedDepth, type ChatterMode, stableAtAnySpeed, type TipModes } from "./chatter.ts";
import { type ChatterCut, type EdgePart, forceSlope } from "./chatter-cut.ts";
import { meanChip } from "./chip.ts";

/**
 * How many times the nominal depth limit a cut must pass before it is called likely to chatter. Not physics: calibrated on
 * ordinary recipes, of which fewer than one in a hundred goes beyond it, while two thirds of aggressive ones do.
 */
export const ORDINARY_RATIO = 100;

/** Share of itself that a depth is found to: it is told as "about". */
const TOLD = 1e-3;

/** A cut as for averagedCut, without the process damping: that belongs to the ends of the band. */
export type BandedCut = Omit<ChatterCut, "processDamping">;

/** One mode at each end of what is known about the holding, the same in every direction. */
export interface HeldModes {
  readonly firm: ChatterMode;
  readonly nominal: ChatterMode;
  readonly soft: ChatterMode;
}

export type HoldingName = keyof HeldModes;

const rounds = new WeakMap<ChatterMode, TipModes>();

/** The same list in both directions, the same for the same mode: what is worked out of it is worked out once. */
function round(mode: ChatterMode): TipModes {
  const known = rounds.get(mode);
  if (known) return known;
  const modes = [mode];
  const made = { x: modes, y: modes };
  rounds.set(mode, made);
  return made;
}
const damped = (cut: BandedCut, end: HoldingName): ChatterCut => ({
  ...cut,
  processDamping: HOLDING[end].processDamping,
});

/**
 * Whether a cut is likely to chatter even in a stiff holder: deeper than the limit at the firm end, and deeper than
 * {@link ORDINARY_RATIO} times the limit at the nominal end. Two tests, no search.
 *
 *   ap > b(firm) and ap > 100·b(nominal)
 *
 * @param cut - the cut as for averagedCut; cut.radialDepth and cut.diameter [mm], cut.slope [MPa], cut.surfaceSpeed [m/min]
 * @param modes - mode at the tip at the firm and the nominal end: frequency [Hz], stiffness [N/µm], damping [-]
 * @param depth - ap [mm], scalar, > 0
 * @param ratio - what stands in for the 100 [-], scalar, > 0
 * @returns whether it is likely to chatter
 * @throws TradeError "range" when a value is outside its limits
 * @source ALTINTAS1995 ALTINTAS2008 COMMON
 * @example
 * likelyToChatter({ teeth: 4, radialDepth: 12, diameter: 12, slope: 3000, radialRatio: 0.4, way: "climb", surfaceSpeed: 120 }, { firm: { frequency: 500, stiffness: 0.5, damping: 0.03 }, nominal: { frequency: 300, stiffness: 0.1, damping: 0.02 } }, 20) //=> true
 */
export function likelyToChatter(
  cut: BandedCut,
  modes: Pick<HeldModes, "firm" | "nominal">,
  depth: number,
  ratio: number = ORDINARY_RATIO,
): boolean {
  const ap = positive("depth", depth);
  if (stableAtAnySpeed(damped(cut, "firm"), round(modes.firm), ap)) return false;
  return !stableAtAnySpeed(damped(cut, "nominal"), round(modes.nominal), ap / positive("ratio", ratio));
}

/**
 * Whether a cut chatters at some speed with modes that were measured, at the end of the process damping that favours it.
 *
 *   ap > b with the measured modes and the firm end's C
 *
 * @param cut - the cut as for averagedCut; cut.radialDepth and cut.diameter [mm], cut.slope [MPa], cut.surfaceSpeed [m/min]
 * @param modes - measured modes along and across the feed: frequency [Hz], stiffness [N/µm], damping [-]
 * @param depth - ap [mm], scalar, > 0
 * @returns whether it is likely to chatter
 * @throws TradeError "range" when a value is outside its limits, "blank" when a direction has no mode
 * @source ALTINTAS1995 ALTINTAS2008
 * @example
 * measuredChatter({ teeth: 4, radialDepth: 6, diameter: 12, slope: 2003, radialRatio: 0.4, way: "climb", surfaceSpeed: 200 }, { x: [{ frequency: 1243, stiffness: 2.92, damping: 0.0619 }], y: [{ frequency: 1243, stiffness: 2.92, damping: 0.0619 }] }, 12) //=> true
 */
export function measuredChatter(cut: BandedCut, modes: TipModes, depth: number): boolean {
  return !stableAtAnySpeed(damped(cut, "firm"), modes, depth);
}

/**
 * Depth that every spindle speed allows, with the damping of the process at one end of its band.
 *
 *   b as in anySpeedDepth
 *
 * @param cut - the cut as for averagedCut; cut.radialDepth and cut.diameter [mm], cut.slope [MPa], cut.surfaceSpeed [m/min]
 * @param modes - one mode for all directions, or modes along and across the feed: frequency [Hz], stiffness [N/µm], damping [-]
 * @param end - "firm", "nominal" or "soft"
 * @returns b [mm]; infinite when the process damps every depth
 * @throws TradeError "range" when a value is outside its limits, "blank" when a direction has no mode
 * @source ALTINTAS1995 ALTINTAS2008
 * @example
 * chatterDepth({ teeth: 4, radialDepth: 10, diameter: 10, slope: 800, radialRatio: 0.35, way: "climb", surfaceSpeed: 1e6 }, { frequency: 1000, stiffness: 10, damping: 0.03 }, "nominal") //=> 0.366
 */
export function chatterDepth(cut: BandedCut, modes: ChatterMode | TipModes, end: HoldingName): number {
  return anySpeedDepth(damped(cut, end), "x" in modes ? modes : round(modes), TOLD);
}

/**
 * Width of cut of a single-profile thread mill, the axial depth that its chatter is judged by.
 *
 *   b = min(0.9·P, P/8 + 2·t·tan 30°)
 *
 * The V is P/8 wide at its flat and grows by tan 30° to each side for each unit of depth; a full profile is 0.9 of the pitch wide.
 *
 * @param pitch - P [mm], scalar, > 0
 * @param radialDepth - t, depth of the profile in the work [mm], scalar, ≥ 0
 * @returns b [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED COMMON
 * @example
 * threadWidth(1, 0.3) //=> 0.47141
 */
export function threadWidth(pitch: number, radialDepth: number): number {
  const P = positive("pitch", pitch);
  return Math.min(0.9 * P, P / 8 + 2 * notNegative("radialDepth", radialDepth) * Math.tan(Math.PI / 6));
}

/** A pass of a thread mill as its chatter sees it. */
export interface ThreadPassCut {
  /** Hole inside, blank outside [mm]. */
  readonly holeDiameter: number;
  readonly side: Side;
  /** Dc, over the tips [mm] */
  readonly cutterDiameter: number;
  /** Depth of the tip from the wall before and after the pass [mm]. */
  readonly startDepth: number;
  readonly endDepth: number;
  readonly pitch: number;
  /** Half of the profile angle [deg]. */
  readonly halfAngle: number;
  /** fz of the cutter's centre [mm] */
  readonly feedPerTooth: number;
  readonly kc11: number;
  readonly exponent: number;
}

/** Places on a stretch of a flank and their weights: Gauss-Legendre of four points on 0 to 1. */
const PLACES: readonly (readonly [number, number])[] = [
  [0.0694318442029737, 0.173927422568727],
  [0.3300094782075719, 0.326072577431273],
  [0.6699905217924281, 0.326072577431273],
  [0.9305681557970263, 0.173927422568727],
];

/**
 * How a thread mill's profile is engaged along its width: at u below the tip it is a cutter of diameter Dc − 2u whose wall comes t − u
 * deep, so the flanks cut less of the turn than the tip does, and half of the radial chip.
 *
 *   width P/8 at the tip, 2·du·tan α on the flanks;   ae(u) from the walls Rh + max(0, t1 − u) and Rh + t2 − u;
 *   Kt = (1 − m)·kc1.1·h_m^(−m), h_m·sin α on the flanks
 *
 * @param pass - pass.holeDiameter, pass.cutterDiameter, pass.startDepth, pass.endDepth, pass.pitch, pass.feedPerTooth [mm],
 *   pass.halfAngle [deg], pass.kc11 [MPa], pass.exponent [-]
 * @returns parts of the width, for ChatterCut.parts
 * @throws TradeError "range" when a value is outside its limits
 * @source MARTELLOTTI1941 KIENZLE1952 DERIVED
 * @example
 * threadParts({ holeDiameter: 8.5, side: "inside", cutterDiameter: 7.6, startDepth: 0, endDepth: 0.82, pitch: 1.5, halfAngle: 30, feedPerTooth: 0.014, kc11: 2220, exponent: 0.14 })[0] //=> {"share":0.165292,"radialDepth":3.008819,"diameter":7.6,"slope":3743.953}
 */
export function threadParts(pass: ThreadPassCut): EdgePart[] {
  const { holeDiameter: Dh, side, cutterDiameter: Dc, startDepth: t1, endDepth: t2, feedPerTooth } = pass;
  const sign = side === "inside" ? 1 : -1;
  const alpha = (pass.halfAngle * Math.PI) / 180;
  const tip = pass.pitch / 8;
  const flanks = 2 * t2 * Math.tan(alpha);
  const part = (u: number, width: number, sine: number): EdgePart => {
    const diameter = Dc - 2 * u;
    const radialDepth = arcDepth(Dh + sign * 2 * Math.max(0, t1 - u), Dh + sign * 2 * (t2 - u), diameter, side);
    const chip = sine * meanChip(feedPerTooth, radialDepth, diameter, 90);
    return {
      share: width / (tip + flanks),
      radialDepth,
      diameter,
      slope: forceSlope(pass.kc11, pass.exponent, chip),
    };
  };
  const parts = [part(0, tip, 1)];
  const stretch = (from: number, to: number) => {
    for (const [at, weight] of PLACES)
      parts.push(part(from + at * (to - from), weight * ((to - from) / t2) * flanks, Math.sin(alpha)));
  };
  // Below the depth of the pass before, its wall was there; above it the hole's own.
  if (t1 > 0) stretch(0, t1);
  stretch(t1, t2);
  return parts;
}
