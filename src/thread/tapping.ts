/**
 * Cutting taps: torque, strength, lead.
 *
 * A tap turns out the ring between the hole and the thread's groove in one pass. The torque is the work of that chip:
 * per turn the section A of one groove runs once around, so 2π·M = kc·A·2π·r with r the radius of the section's centre.
 * The chamfer shares the depth among its teeth; each takes t/(z·C) of a depth t with z flutes and a chamfer of
 * C pitches. Such thin chips lie far under those Kienzle measured, so the specific force is held
 * at the chip of LEAST_CHIP. What the lands and the chips rub comes on top (TAP_FRICTION).
 */
import { notNegative, positive, within } from "../check.ts";
import { TradeError } from "../errors.ts";

/** Chip below which Kienzle's exponent is not carried on [mm]: the thinnest of usual measurements (judgement). */
const LEAST_CHIP = 0.05;
/** Torque of a sharp, oiled tap over that of its chips: rubbing lands and chips in the flutes (judgement, 1.3 to 2 in use). */
export const TAP_FRICTION = 1.5;
/** Diameter of the solid bar that twists off like a tap, over its nominal diameter (judgement: three or four flutes). */
export const TAP_CORE = 0.5;

/** Chamfer of a tap in pitches: the usual length, and the range of the standard. */
export const CHAMFER = {
  bottoming: { threads: 2, least: 1, most: 2 },
  "semi-bottoming": { threads: 2.5, least: 2, most: 3 },
  plug: { threads: 4, least: 3, most: 5 },
  taper: { threads: 8, least: 7, most: 10 },
} as const;
export type Chamfer = keyof typeof CHAMFER;
/** Longest chamfer that is taken as one [pitches]. */
const MOST_PITCHES = 15;

/**
 * Section of one groove that a tap cuts out of a hole: a trapezium under the flanks, from the hole to the major diameter.
 *
 *   A = t·(P/8 + t·tan(α/2)),   t = (D − d)/2
 *
 * @param major - D, major diameter [mm], scalar, > 0
 * @param pitch - P [mm], scalar, > 0
 * @param holeDiameter - d [mm], scalar, 0 < d < D
 * @param profileAngle - α [deg], 60 or 55
 * @returns A [mm²]
 * @throws TradeError "range" when an argument is outside its limits
 * @source ISO68 DERIVED
 * @example
 * tappedSection(6, 1, 5, 60) //=> 0.20684
 */
export function tappedSection(major: number, pitch: number, holeDiameter: number, profileAngle: number): number {
  const D = positive("major", major);
  const t = (D - within("holeDiameter", holeDiameter, 0, D, "length", "both")) / 2;
  const half = (within("profileAngle", profileAngle, 0, 180, undefined, "both") * Math.PI) / 360;
  return t * (positive("pitch", pitch) / 8 + t * Math.tan(half));
}

export interface TapCut {
  /** D, P, hole d [mm]; included angle of the profile [deg]. */
  readonly major: number;
  readonly pitch: number;
  readonly holeDiameter: number;
  readonly profileAngle: number;
  /** Flutes and length of the chamfer in pitches [-]. */
  readonly flutes: number;
  readonly chamferThreads: number;
  /** kc1.1 [MPa] and exponent [-] of the material. */
  readonly kc11: number;
  readonly exponent: number;
}

/**
 * Torque of a cutting tap at full chamfer.
 *
 *   M = 1.5·kc·A·r,   h = max(t/(z·C), 0.05 mm),   r = radius of the centre of the section
 *
 * @param cut - cut.major, cut.pitch, cut.holeDiameter [mm], cut.profileAngle [deg], cut.flutes, cut.chamferThreads [-], cut.kc11 [MPa], cut.exponent [-]
 * @returns M [N·m]
 * @throws TradeError "range" when a value is outside its limits
 * @source KIENZLE1952 DERIVED COMMON
 * @example
 * tapTorque({ major: 10, pitch: 1.5, holeDiameter: 8.5, profileAngle: 60, flutes: 3, chamferThreads: 4, kc11: 2220, exponent: 0.14 }) //=> 10.36754
 */
export function tapTorque(cut: TapCut): number {
  const A = tappedSection(cut.major, cut.pitch, cut.holeDiameter, cut.profileAngle);
  const t = (cut.major - cut.holeDiameter) / 2;
  const m = within("exponent", cut.exponent, 0, 1, undefined, "high");
  const share = t / (positive("flutes", cut.flutes) * positive("chamferThreads", cut.chamferThreads));
  const kc = positive("kc11", cut.kc11) * Math.max(share, LEAST_CHIP) ** -m;
  // Centre of the trapezium from its wide side at the hole: t/3·(wide + 2·narrow)/(wide + narrow), narrow P/8.
  const narrow = cut.pitch / 8;
  const wide = 2 * (A / t) - narrow;
  const radius = cut.holeDiameter / 2 + ((t / 3) * (wide + 2 * narrow)) / (wide + narrow);
  return (TAP_FRICTION * kc * A * radius) / 1000;
}

/**
 * Torque of a machine tap in the form of the Soviet handbook, the rival of tapTorque.
 *
 *   M = 10·C·D^1.4·P^1.5·K
 *
 * @param major - D [mm], scalar, > 0
 * @param pitch - P [mm], scalar, > 0
 * @param factor - C: 0.027 steel, 0.013 grey iron [-], scalar, > 0
 * @param correction - K: 1.3 for soft steel, 1 for 600 to 800 MPa [-], scalar, > 0
 * @returns M [N·m]
 * @throws TradeError "range" when an argument is outside its limits
 * @source KOSILOVA
 * @example
 * handbookTapTorque(10, 1.5, 0.027, 1) //=> 12.4595
 */
export function handbookTapTorque(major: number, pitch: number, factor: number, correction: number): number {
  const size = positive("major", major) ** 1.4 * positive("pitch", pitch) ** 1.5;
  return 10 * positive("factor", factor) * size * positive("correction", correction);
}

/**
 * Torque that breaks a tap: a solid bar of half its diameter of high-speed steel or carbide.
 *
 *   M = π/16·(0.5·D)³·R/√3 (high-speed steel), π/16·(0.5·D)³·R (carbide)
 *
 * @param major - D [mm], scalar, > 0
 * @param ruptureStrength - R [MPa], scalar, > 0
 * @param brittle - true for carbide [-]
 * @returns M [N·m]
 * @throws TradeError "range" when an argument is outside its limits
 * @source ROARK COMMON
 * @example
 * tapBreakingTorque(6, 3500, false) //=> 10.713
 */
export function tapBreakingTorque(major: number, ruptureStrength: number, brittle: boolean): number {
  const shear = positive("ruptureStrength", ruptureStrength) / (brittle ? 1 : Math.sqrt(3));
  return ((Math.PI / 16) * (TAP_CORE * positive("major", major)) ** 3 * shear) / 1000;
}

/**
 * Depth of hole that a tap needs for a full thread.
 *
 *   t = thread depth + C·P + b
 *
 * @param threadDepth - depth of full thread [mm], scalar, > 0 (any length unit: all three the same)
 * @param pitch - P [mm], scalar, > 0
 * @param chamferThreads - C, chamfer of the tap in pitches [-], scalar, ≥ 0
 * @param room - b, room under the tap [mm], scalar, ≥ 0
 * @returns t, full-diameter depth of the hole [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source ASMEB949
 * @example
 * tappedHoleDepth(15, 1.5, 4, 0) //=> 21
 */
export function tappedHoleDepth(threadDepth: number, pitch: number, chamferThreads: number, room: number): number {
  const lead = notNegative("chamferThreads", chamferThreads) * positive("pitch", pitch);
  return positive("threadDepth", threadDepth) + lead + notNegative("room", room);
}

/**
 * Pitches of a tap's chamfer from a word or a number.
 *
 *   bottoming 2, semi-bottoming 2.5, plug 4, taper 8
 *
 * @param text - "bottoming", "semi-bottoming", "plug", "taper" or a number of pitches [-]
 * @param parameter - name of the argument for errors [-]
 * @returns pitches [-]
 * @throws TradeError "value" when it is none of them
 * @source ASMEB949
 * @example
 * chamferThreads("plug") //=> 4
 */
export function chamferThreads(text: string | number, parameter = "chamfer"): number {
  const word = typeof text === "number" ? String(text) : text.trim().toLowerCase();
  const known = CHAMFER[word as Chamfer]?.threads;
  if (known !== undefined) return known;
  const number = word === "" ? Number.NaN : Number(word);
  if (!(number > 0 && number <= MOST_PITCHES))
    throw new TradeError("value", parameter, text, { is: "chamfers", words: Object.keys(CHAMFER), most: MOST_PITCHES });
  return number;
}
