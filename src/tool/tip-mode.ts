/**
 * The mode at the tip of a held tool where nobody has measured one: the beam of the tool on a holder that gives, with the
 * mass of the holder's end. An estimate whose two ends lie far apart, and to be shown as a band.
 */
import { notNegative, positive } from "../check.ts";
import { type BeamOptions, deflectionParts, type Segment, toolLength } from "./beam.ts";
import { toolFrequency } from "./frequency.ts";

/** What is assumed of the holding at one end of the band. */
export interface HoldingEnd {
  /** Of the listed push stiffness of the holder [-]. */
  readonly pushFactor: number;
  /** Of the usual tilt stiffness [-]; rigid when left out. */
  readonly tiltFactor?: number;
  /** Mass of the holder's end that swings with a tool of 12 mm shank [kg]. */
  readonly endMass: number;
  /** Of the listed damping [-]. */
  readonly dampingFactor: number;
  /** C of process damping [N/m]. */
  readonly processDamping: number;
}

/**
 * The band of holdings. Firm: the stiffest plausible holding with the strongest published damping; nominal: a plain collet
 * chuck; soft: a worn or long one. Judgement between published modes (a 12 mm cutter at 1243 Hz and 2.9 N/µm, Cornelius,
 * Karandikar, Schmitz); process damping between published coefficients (about 2.5e5 N/m for AISI 1018, 6.1e5 for AISI 1045,
 * from memory).
 */
export const HOLDING = {
  firm: { pushFactor: 1.3, endMass: 0, dampingFactor: 1.5, processDamping: 6e5 },
  nominal: { pushFactor: 1, tiltFactor: 1, endMass: 0.05, dampingFactor: 1, processDamping: 2.5e5 },
  soft: { pushFactor: 0.7, tiltFactor: 0.5, endMass: 0.05, dampingFactor: 0.6, processDamping: 1e5 },
} as const satisfies Record<string, HoldingEnd>;

/** Usual tilt stiffness of a holder for each mm² of shank diameter squared [N·m/rad]; judgement, see HOLDING. */
const TILT = 70;
/** Shank that the end mass belongs to [mm]. */
const SHANK = 12;
/** Damping ratio that no factor raises a mode above [-]. */
const MOST_DAMPING = 0.5;

export interface HeldTool {
  /** From the tip to the holder. */
  readonly segments: readonly Segment[];
  /** Diameter held [mm]. */
  readonly shankDiameter: number;
  /** E [GPa], ν [-], ρ [g/cm³] */
  readonly modulus: number;
  readonly poisson: number;
  readonly density: number;
  /** Push stiffness of the holder in the list [N/µm]. */
  readonly holderStiffness: number;
  /** Damping ratio in the list [-]. */
  readonly damping: number;
}

/**
 * Mode at the tip of a held tool.
 *
 *   k = 1/c,   m = m_FE + m₀·(d/12)³·s²,   f = √(k/m)/2π,   s = 1 − c_tool/c
 *
 * c is the flexibility of tool and holder at the tip, c_tool that of the tool in a rigid holder; m_FE the mass that the finite
 * elements swing with, k/(2π·f_FE)². The holder's end swings s times as far as the tip. Push spring: the listed stiffness times
 * pushFactor; tilt spring: 70·d² N·m/rad times tiltFactor, d the shank in mm.
 *
 * @param tool - tool.segments [mm], tool.shankDiameter d [mm], tool.modulus [GPa], tool.poisson [-], tool.density [g/cm³], tool.holderStiffness [N/µm], tool.damping [-]
 * @param end - end.pushFactor, end.tiltFactor (rigid when left out), end.dampingFactor [-], end.endMass m₀ [kg]
 * @returns frequency [Hz], stiffness [N/µm], damping [-]
 * @throws TradeError "range" when a value is outside its limits
 * @source PRZEMIENIECKI COMMON
 * @example
 * tipMode({ segments: [{ tipDiameter: 9.6, holderDiameter: 9.6, length: 26 }, { tipDiameter: 12, holderDiameter: 12, length: 14 }], shankDiameter: 12, modulus: 600, poisson: 0.22, density: 14.5, holderStiffness: 22, damping: 0.03 }, HOLDING.nominal).stiffness //=> 3.9
 */
export function tipMode(
  tool: HeldTool,
  end: HoldingEnd,
): { readonly frequency: number; readonly stiffness: number; readonly damping: number } {
  toolLength(tool.segments);
  const d = positive("shankDiameter", tool.shankDiameter);
  const holder: Pick<BeamOptions, "holderStiffness" | "holderTiltStiffness"> = {
    holderStiffness: positive("holderStiffness", tool.holderStiffness) * positive("pushFactor", end.pushFactor),
    ...(end.tiltFactor === undefined
      ? {}
      : { holderTiltStiffness: TILT * d * d * positive("tiltFactor", end.tiltFactor) }),
  };
  const beam = { modulus: tool.modulus, poisson: tool.poisson, shear: true, stepFlexibility: true, ...holder };
  const parts = deflectionParts(1, tool.segments, beam);
  const c = parts.total;
  const s = parts.holder / c;
  const k = 1 / c; // N/mm
  const free = toolFrequency(tool.segments, { modulus: tool.modulus, density: tool.density, ...holder });
  const own = (1000 * k) / (2 * Math.PI * free) ** 2; // kg
  const mass = own + notNegative("endMass", end.endMass) * (d / SHANK) ** 3 * s * s;
  return {
    frequency: Math.sqrt((1000 * k) / mass) / (2 * Math.PI),
    stiffness: k / 1000,
    damping: Math.min(MOST_DAMPING, positive("damping", tool.damping) * positive("dampingFactor", end.dampingFactor)),
  };
}
