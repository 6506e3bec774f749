/**
 * What a row chooses where its cells are blank, and the limits it is held to. Each rule is common practice of the
 * trade unless it names a source; all of them are starting values that the shop's own cells beat.
 */
import { type DrillSet, nearestDrill } from "../../drill/sizes.ts";
import { TradeError } from "../../errors.ts";
import { interpolate } from "../../numeric.ts";
import type { Machine, Material } from "../../table/lists.ts";
import { over } from "./slack.ts";

/** Place in the material's speed range: middle for milling, lower quarter for drilling (chips must come out of the hole). */
export const SPEED_PLACE = { mill: 0.5, drill: 0.25 } as const;
/** Feed per lip of a drill against the listed feed per tooth of a cutter of that diameter. */
export const DRILL_FEED_FACTOR = 1.5;
/**
 * Largest real chip over the list's: above `check` the row says so, at `stop` edges break (judgement: the list's chip is meant
 * for the edge's whole life, and double of it is what makers call the end of the range). The material's Thick chip and Breaking chip
 * beat them.
 */
export const CHIP_OVER = { check: 1.1, stop: 2 } as const;
/** The same for a material. */
export const chipOver = (material: Material | undefined): { readonly check: number; readonly stop: number } => ({
  check: material?.thickChip ?? CHIP_OVER.check,
  stop: Math.max(material?.breakingChip ?? CHIP_OVER.stop, material?.thickChip ?? 0),
});
/** A largest chip under this share of the list's is worth a word: the row costs more time and edge than it must. */
export const CHIP_UNDER = 0.5;
/** Share of the least chip under which rubbing is a check; above it a note, because few shops know their edge radius. */
export const RUBS = 0.5;
/** Efficiency from the spindle motor to the cut. */
export const SPINDLE_EFFICIENCY = 0.85;
/** Rupture strength is divided by this (judgement; carbide is brittle and its strength scatters). The tool's Safety factor beats it. */
export const STRESS_SAFETY = 3;
/** Share of the allowed size error (half the tolerance) that bending may use: the middle half stays. The machine's Bending share beats it. */
export const BENDING_SHARE = 0.5;
export const bendingShare = (machine: Machine | undefined): number =>
  machine?.bendingShare === undefined ? BENDING_SHARE : machine.bendingShare / 100;
/**
 * Share of the bending that changes from part to part: force and wear between two gaugings (judgement: forces of equal cuts
 * scatter by about 15 %). Only the rest is the same on every part and can be gauged away. The machine's Size scatter beats it.
 */
export const SCATTER_SHARE = 0.15;
export const scatterShare = (machine: Machine | undefined): number =>
  machine?.sizeScatter === undefined ? SCATTER_SHARE : machine.sizeScatter / 100;
/**
 * Half of what the place of the outermost tooth changes by from one clamping to the next, of the runout as full indicator reading:
 * it stands between true (0) and half of the reading outside.
 */
export const RUNOUT_SHARE = 0.25;
/** Half of what a holder's seat in the spindle changes by [mm] (judgement: clean tapers repeat within 2 to 4 µm). The machine's Seat repeats beats it. */
export const HOLDER_REPEATS = 0.0015;
/** How much warmer or colder the part is than the first one when it is cut [K] (judgement: a shop with coolant, over a day). The machine's Part warmth beats it. */
export const WARMER = 3;
/** Thermal expansion by group [1/K] (handbook values, from memory: steel 11.5, austenitic 16, grey iron 10.5, aluminium 23, titanium to nickel 9 to 13). */
export const EXPANSION = { p: 11.5e-6, m: 16e-6, k: 10.5e-6, n: 23e-6, s: 11e-6, h: 11.5e-6 } as const;
/** How many listed chips the tooth that runs out most may cut before it is said, and before the row is to be looked at (judgement). */
export const RUNOUT_OVER = { said: 1.2, check: 1.5 } as const;
/** Stick-out against diameter above which a row is to be looked at. The tool's Stick-out limit beats it. */
export const STICK_OUT_RATIO = 4;
/** Room per side that a neck needs for chips [mm]. */
export const NECK_ROOM = 0.05;
/** Percent of thread above which no tap or thread mill should be asked to go (the basic profile is 83.3 %). */
export const PERCENT_LIMIT = 100 * (5 / 6);
/** An end mill's fluted part bends like a round bar of this share of its diameter. */
export const FLUTED_SHARE = 0.8;
/** Height above the face at which rapid becomes feed [mm]. */
export const CLEARANCE = 2;
/** Distance between holes where the row does not say [mm]. */
export const DEFAULT_SPACING = 25;
/** How far a drill goes out of a through hole [mm]. */
export const BREAKTHROUGH = 1;
/** Ramp of a helical entry [deg]. */
export const RAMP_ANGLE = 3;

/** Stated uncertainties: share of the force, of the flexibility, and of the tool strength already at the mean. */
export const UNCERTAINTY = { force: 0.15, flexibility: 0.2 } as const;
/** What the uncertainties together make of a bending, at their good and at their bad end. */
export const GOOD_END = (1 - UNCERTAINTY.force) * (1 - UNCERTAINTY.flexibility);
export const BAD_END = (1 + UNCERTAINTY.force) * (1 + UNCERTAINTY.flexibility);

/**
 * How much a drill cuts over its size on average, by diameter [mm]: interpolated from Machinery's Handbook,
 * "Accuracy of drilled holes" (mean oversize; from memory).
 */
const OVERSIZE: readonly (readonly [number, number])[] = [
  [1.5875, 0.0381],
  [3.175, 0.0762],
  [6.35, 0.1016],
  [12.7, 0.127],
  [25.4, 0.1778],
];

/** Mean drilling oversize at a diameter [mm]; a carbide drill holds about a third of what a twist drill of HSS does. */
export function drillOversize(diameter: number, substrate: "carbide" | "hss" | undefined): number {
  const hss = diameter < 1.5875 ? (0.0381 * diameter) / 1.5875 : interpolate(OVERSIZE, diameter);
  return substrate === "carbide" ? hss / 3 : hss;
}

/** A drill within this of a size [mm] is the drill of that size. */
export const SAME_SIZE = 0.011;
export const isSize = (diameter: number, size: number): boolean => !over(Math.abs(diameter - size), SAME_SIZE);

/** Trade name of the drill of a size [mm] in the sets; null where they have none, or do not reach that far. */
export function drillNameOf(diameter: number, sets: readonly DrillSet[]): string | null {
  try {
    const drill = nearestDrill(diameter, sets);
    return isSize(drill.diameter, diameter) ? drill.name : null;
  } catch (error) {
    if (error instanceof TradeError) return null;
    throw error;
  }
}

/** Edge radius of a cutter whose list row does not say: sharp and honed end of what is usual [mm] (common practice). */
export const USUAL_EDGE = [0.003, 0.01] as const;
/** Thread feed in percent of the diameter for a material whose list row does not say (common practice in steel 0.7 to 1). */
export const USUAL_THREAD_FEED = 0.8;
/** Largest wear value that is still one, as a share of the pitch: beyond it the tool is wrong, not the path (judgement). */
export const WEAR_REACH = 0.15;
