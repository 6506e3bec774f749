/**
 * Where a single-profile cutter must run so that its straight flanks meet the pitch line of the thread,
 * without regard to the helix (see sweep.ts for what the helix adds). Lengths are in any one unit, written mm here.
 *
 * The profile is f/2 wide to each side at its tip and tan(α/2) wider for each unit further up. The groove is half a pitch wide at
 * the pitch line, P/4 to each side: so the tip stands (P/4 − f/2)/tan(α/2) beyond it, outwards in a hole, inwards on a bolt.
 */
import { positive, within } from "../check.ts";
import { TradeError } from "../errors.ts";
import { triangleHeight } from "./profile.ts";

export type ThreadKind = "internal" | "external";

/** D − D2 and D2 − D1 over the height H of the fundamental triangle (ISO 68-1, ASME B1.1; ISO 228-1). */
const CREST_RISE: Readonly<Record<number, number>> = { 60: 3 / 4, 55: 2 / 3 };
const MINOR_FALL: Readonly<Record<number, number>> = { 60: 1 / 2, 55: 2 / 3 };

/**
 * Tangent of half the included profile angle.
 *
 *   t = tan(α/2)
 *
 * @param profileAngle - included angle of the profile [deg], scalar, 0 < α < 180
 * @returns t [-]
 * @throws TradeError "range" when the angle is outside its limits
 * @source ISO68
 * @example
 * flankTangent(60) //=> 0.577350
 */
export function flankTangent(profileAngle: number): number {
  return Math.tan((within("profileAngle", profileAngle, 0, 180, undefined, "both") * Math.PI) / 360);
}

/**
 * Rise from the pitch diameter to the basic major diameter.
 *
 *   D − D2 = (3/4)·H = 0.649519·P (60°);   (2/3)·H = 0.640327·P (55°)
 *
 * @param pitch - P [mm], scalar, > 0
 * @param profileAngle - included angle of the profile [deg], 60 or 55
 * @returns D − D2 [mm]
 * @throws TradeError "range" when the pitch is not above 0; "value" when the profile is neither 60° nor 55°
 * @source ISO68 ISO228
 * @example
 * crestRise(1, 60) //=> 0.649519
 */
export function crestRise(pitch: number, profileAngle: number): number {
  return share(CREST_RISE, profileAngle) * triangleHeight(pitch, profileAngle as 60 | 55);
}

/**
 * Fall from the pitch diameter to the basic minor diameter.
 *
 *   D2 − D1 = H/2 = 0.433013·P (60°);   (2/3)·H = 0.640327·P (55°)
 *
 * @param pitch - P [mm], scalar, > 0
 * @param profileAngle - included angle of the profile [deg], 60 or 55
 * @returns D2 − D1 [mm]
 * @throws TradeError "range" when the pitch is not above 0; "value" when the profile is neither 60° nor 55°
 * @source ISO68 ISO228
 * @example
 * minorFall(1, 60) //=> 0.433013
 */
export function minorFall(pitch: number, profileAngle: number): number {
  return share(MINOR_FALL, profileAngle) * triangleHeight(pitch, profileAngle as 60 | 55);
}

function share(table: Readonly<Record<number, number>>, profileAngle: number): number {
  const value = table[profileAngle];
  if (value === undefined)
    throw new TradeError("value", "profileAngle", profileAngle, { is: "one-of-angles", angles: [60, 55] });
  return value;
}

/**
 * Radius of the cutter's tip at which its groove is half a pitch wide on the pitch line.
 *
 *   internal: rt = D2/2 + (P/4 − f/2)/tan(α/2);   external: rt = d2/2 − (P/4 − f/2)/tan(α/2)
 *
 * A flat of P/2 and more is wider than the whole groove at the pitch line and is refused. A flat over P/8 is not:
 * whether it leaves room for the mating crest is judged by the diameter at the tip (tipDiameter), not here.
 *
 * @param pitchDiameter - D2, wanted pitch diameter [mm], scalar, > 0
 * @param pitch - P [mm], scalar, > 0
 * @param tipFlat - f, flat at the cutter's tip [mm], scalar, 0 ≤ f < P/2
 * @param profileAngle - α, included angle of the profile [deg]
 * @param kind - internal or external thread
 * @returns rt [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * tipRadius(7.188101, 1.25, 0.15625, 60, "internal") //=> 4.000000
 */
export function tipRadius(
  pitchDiameter: number,
  pitch: number,
  tipFlat: number,
  profileAngle: number,
  kind: ThreadKind,
): number {
  positive("pitch", pitch);
  positive("pitchDiameter", pitchDiameter);
  within("tipFlat", tipFlat, 0, pitch / 2, "length", "high");
  const beyond = (pitch / 4 - tipFlat / 2) / flankTangent(profileAngle);
  if (kind === "internal") return pitchDiameter / 2 + beyond;
  within("pitchDiameter", pitchDiameter, 2 * beyond, Number.POSITIVE_INFINITY, "length", "low");
  return pitchDiameter / 2 - beyond;
}

/**
 * Radius of the cutter-centre circle for a wanted pitch diameter, without the helical sweep.
 *
 *   internal: e = rt − Dc/2;   external: e = rt + Dc/2
 *
 * @param pitchDiameter - D2, wanted pitch diameter [mm], scalar, > 0
 * @param pitch - P [mm], scalar, > 0
 * @param cutterDiameter - Dc, diameter over the tips [mm], scalar, > 0; internal: < 2·rt
 * @param tipFlat - f, flat at the cutter's tip [mm], scalar, 0 ≤ f < P/2
 * @param profileAngle - α, included angle of the profile [deg]
 * @param kind - internal or external thread
 * @returns e [mm]
 * @throws TradeError "range" when an argument is outside its limits; a cutter that fills the thread names the largest that does not
 * @source DERIVED
 * @example
 * plainPathRadius(7.188101, 1.25, 6, 0.15625, 60, "internal") //=> 1.000000
 */
export function plainPathRadius(
  pitchDiameter: number,
  pitch: number,
  cutterDiameter: number,
  tipFlat: number,
  profileAngle: number,
  kind: ThreadKind,
): number {
  positive("cutterDiameter", cutterDiameter);
  const rt = tipRadius(pitchDiameter, pitch, tipFlat, profileAngle, kind);
  if (kind === "external") return rt + cutterDiameter / 2;
  return rt - within("cutterDiameter", cutterDiameter, 0, 2 * rt, "length", "both") / 2;
}

/**
 * Diameter that the cutter's tip leaves at the root: the major diameter inside, the minor diameter outside.
 *
 *   internal: D = 2·(e + Dc/2);   external: d1 = 2·(e − Dc/2)
 *
 * @param pathRadius - e, radius of the cutter-centre circle [mm], scalar, > 0
 * @param cutterDiameter - Dc [mm], scalar, > 0; external: < 2·e
 * @param kind - internal or external thread
 * @returns D or d1 [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * tipDiameter(0.953567, 6, "internal") //=> 7.907134
 */
export function tipDiameter(pathRadius: number, cutterDiameter: number, kind: ThreadKind): number {
  positive("pathRadius", pathRadius);
  positive("cutterDiameter", cutterDiameter);
  if (kind === "internal") return 2 * pathRadius + cutterDiameter;
  return 2 * pathRadius - within("cutterDiameter", cutterDiameter, 0, 2 * pathRadius, "length", "both");
}
