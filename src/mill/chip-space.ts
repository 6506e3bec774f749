/**
 * Room for chips in a full slot: whether the chips of a tooth find room in its flute, and how deep a slot lets them out. Numbers
 * of judgement, each with its name and reason, and all of them starting values that a shop changes.
 */
import { count, positive, within } from "../check.ts";

/** ISO 513 group of a work material. */
export type MaterialGroup = "P" | "M" | "K" | "N" | "S" | "H";

/** How the chips are moved out of the slot. */
export type Coolant = "flood" | "through" | "air" | "dry";

/**
 * Deepest step of a full slot with up to three flutes and flood coolant, in diameters. Common practice: one diameter where chips
 * break or are strong enough to climb; half in stainless and in S, where heat stays in the edge; a fifth in hardened steel, where
 * the edge cannot carry more.
 */
export const SLOT_STEP: Readonly<Record<MaterialGroup, number>> = { P: 1, M: 0.75, K: 1, N: 1, S: 0.5, H: 0.2 };

/**
 * Share of that step by the number of flutes. Long, soft chips (N) pack in four flutes, and weld; others only need the room
 * (common practice: two or three flutes for slots in aluminium).
 */
const FLUTES: Readonly<Record<"soft" | "other", readonly [upToThree: number, four: number, more: number]>> = {
  soft: [1, 0.5, 0.25],
  other: [1, 1, 0.5],
};

/** Share of that step by what moves the chips: a jet through the tool reaches the bottom, without any they are cut again. */
export const COOLANT_SHARE: Readonly<Record<Coolant, number>> = { through: 1.5, air: 1, flood: 1, dry: 0.5 };

/**
 * Deepest step of a full slot from which chips get out.
 *
 *   ap = D·step(group)·share(flutes)·share(coolant)
 *
 * @param group - ISO 513 group of the material
 * @param diameter - D [mm], scalar, > 0
 * @param teeth - flutes z [-], whole, ≥ 1
 * @param coolant - "flood", "through", "air" or "dry"
 * @param own - the material's own step [diameters], scalar, > 0; by its group when omitted
 * @returns ap [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source COMMON
 * @example
 * slotStep("N", 10, 4, "flood") //=> 5
 * slotStep("P", 10, 4, "flood") //=> 10
 */
export function slotStep(
  group: MaterialGroup,
  diameter: number,
  teeth: number,
  coolant: Coolant,
  own?: number,
): number {
  const z = count("teeth", teeth);
  const share = FLUTES[group === "N" ? "soft" : "other"][z <= 3 ? 0 : z === 4 ? 1 : 2];
  return positive("diameter", diameter) * positive("own", own ?? SLOT_STEP[group]) * share * COOLANT_SHARE[coolant];
}

/**
 * Volume of loose chips over the volume of the metal they were (short curls, commas, splinters); Klocke and König give 6 to 10
 * for curls and 3 for crumbs (from memory).
 */
export const CHIP_BULK: Readonly<Record<MaterialGroup, number>> = { P: 6, M: 8, K: 3, N: 8, S: 8, H: 4 };

/**
 * Cross-section of one flute, from the core that is left.
 *
 *   A = (π/4)·(D² − Dk²)/z·½,   Dk = core·D;   half of the ring is tooth
 *
 * The core by flutes: two 0.5, three 0.55, four 0.6, more 0.7 of the diameter (common practice).
 *
 * @param diameter - D [mm], scalar, > 0
 * @param teeth - z [-], whole, ≥ 1
 * @returns A [mm²]
 * @throws TradeError "range" when an argument is outside its limits
 * @source COMMON DERIVED
 * @example
 * fluteArea(10, 4) //=> 6.28319
 */
export function fluteArea(diameter: number, teeth: number): number {
  const z = count("teeth", teeth);
  const core = z <= 2 ? 0.5 : z === 3 ? 0.55 : z === 4 ? 0.6 : 0.7;
  return (Math.PI * positive("diameter", diameter) ** 2 * (1 - core * core)) / (8 * z);
}

/**
 * How full a flute gets with the chip of one pass through the work.
 *
 *   fill = bulk·fz·ae/A,   fz·ae the chip's cross-section per depth
 *
 * @param group - ISO 513 group of the material
 * @param feedPerTooth - fz [mm], scalar, > 0
 * @param radialDepth - ae [mm], scalar, 0 < ae ≤ D
 * @param diameter - D [mm], scalar, > 0
 * @param teeth - z [-], whole, ≥ 1
 * @returns share of the flute [-]; above 1 the chips are pressed
 * @throws TradeError "range" when an argument is outside its limits
 * @source COMMON DERIVED
 * @example
 * fluteFill("N", 0.08, 10, 10, 4) //=> 1.01859
 */
export function fluteFill(
  group: MaterialGroup,
  feedPerTooth: number,
  radialDepth: number,
  diameter: number,
  teeth: number,
): number {
  const ae = within("radialDepth", positive("radialDepth", radialDepth), 0, positive("diameter", diameter), "length");
  return (CHIP_BULK[group] * positive("feedPerTooth", feedPerTooth) * ae) / fluteArea(diameter, teeth);
}
