/** Basic profiles of parallel threads: 60° (ISO 68-1, ASME B1.1) and 55° rounded (ISO 228-1). Any length unit. */
import { positive } from "../check.ts";
import { TradeError } from "../errors.ts";

/** Profile heights over the pitch: sharp triangle H, and depth from major to minor diameter per side. */
const PROFILES = {
  // H = P/(2·tan 30°); depth 5/8·H
  60: { triangle: Math.sqrt(3) / 2, depth: (5 / 16) * Math.sqrt(3), toPitch: (3 / 16) * Math.sqrt(3) },
  // H = P/(2·tan 27.5°) = 0.960491·P; depth 2/3·H = 0.640327·P; pitch line at half depth
  55: triangle55(),
} as const;

function triangle55() {
  const H = 0.5 / Math.tan((27.5 * Math.PI) / 180);
  return { triangle: H, depth: (2 / 3) * H, toPitch: H / 3 };
}

type ProfileAngle = keyof typeof PROFILES;

/** Checks that a thread of that pitch leaves a core. */
function core(major: number, pitch: number, angle: ProfileAngle): void {
  positive("major", major);
  positive("pitch", pitch);
  const most = major / (2 * PROFILES[angle].depth);
  if (pitch >= most) {
    throw new TradeError("range", "pitch", pitch, { is: "below", high: most, dimension: "length" }, "length");
  }
}

/**
 * Height of the fundamental triangle of a thread profile.
 *
 *   H = P/(2·tan(α/2)): 0.866025·P at 60°, 0.960491·P at 55°
 *
 * @param pitch - P [mm], scalar, > 0
 * @param profileAngle - α, included angle [deg], 60 or 55
 * @returns H [mm]
 * @throws TradeError "range" when the pitch is not above 0
 * @source ISO68 ISO228
 * @example
 * triangleHeight(1) //=> 0.866025
 * triangleHeight(1, 55) //=> 0.960491
 */
export function triangleHeight(pitch: number, profileAngle: 60 | 55 = 60): number {
  return PROFILES[profileAngle].triangle * positive("pitch", pitch);
}

/**
 * Depth of the basic profile per side, from major to minor diameter.
 *
 *   h = 5/8·H at 60°, 2/3·H at 55°
 *
 * @param pitch - P [mm], scalar, > 0
 * @param profileAngle - included angle [deg], 60 or 55
 * @returns h [mm]
 * @throws TradeError "range" when the pitch is not above 0
 * @source ISO68 ISO228
 * @example
 * profileDepth(1) //=> 0.541266
 * profileDepth(1, 55) //=> 0.640327
 */
export function profileDepth(pitch: number, profileAngle: 60 | 55 = 60): number {
  return PROFILES[profileAngle].depth * positive("pitch", pitch);
}

/**
 * Basic pitch diameter, not rounded.
 *
 *   D2 = D − 3/4·H at 60°, D − h at 55°
 *
 * @param major - D [mm], scalar, > 0
 * @param pitch - P [mm], scalar, > 0, small enough to leave a core
 * @param profileAngle - included angle [deg], 60 or 55
 * @returns D2 [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source ISO724 ISO228
 * @example
 * basicPitchDiameter(12, 1.5) //=> 11.0257
 * basicPitchDiameter(13.157, 25.4/19, 55) //=> 12.301
 */
export function basicPitchDiameter(major: number, pitch: number, profileAngle: 60 | 55 = 60): number {
  core(major, pitch, profileAngle);
  return major - 2 * PROFILES[profileAngle].toPitch * pitch;
}

/**
 * Basic minor diameter, not rounded.
 *
 *   D1 = D − 5/4·H at 60°, D − 2·h at 55°
 *
 * @param major - D [mm], scalar, > 0
 * @param pitch - P [mm], scalar, > 0, small enough to leave a core
 * @param profileAngle - included angle [deg], 60 or 55
 * @returns D1 [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source ISO724 ISO228
 * @example
 * basicMinorDiameter(12, 1.5) //=> 10.3762
 * basicMinorDiameter(13.157, 25.4/19, 55) //=> 11.445
 */
export function basicMinorDiameter(major: number, pitch: number, profileAngle: 60 | 55 = 60): number {
  core(major, pitch, profileAngle);
  return major - 2 * PROFILES[profileAngle].depth * pitch;
}

/**
 * Lead angle of a thread at its pitch diameter.
 *
 *   λ = arctan(L/(π·D2))
 *
 * @param lead - L [mm], scalar, > 0
 * @param pitchDiameter - D2 [mm], scalar, > 0
 * @returns λ [deg]
 * @throws TradeError "range" when an argument is not above 0
 * @source MH
 * @example
 * leadAngle(1, 5.35) //=> 3.4049
 */
export function leadAngle(lead: number, pitchDiameter: number): number {
  return (Math.atan(positive("lead", lead) / (Math.PI * positive("pitchDiameter", pitchDiameter))) * 180) / Math.PI;
}
