/** Whether a cut is likely to chatter: the banded rule of mill/chatter-rule.ts with the modes of a row's tool, holder and machine. */
import { Cache } from "../../cache.ts";
import { type ChatterMode, forceSlope, type TipModes } from "../../mill/chatter.ts";
import {
  type BandedCut,
  chatterDepth,
  type HeldModes,
  likelyToChatter,
  measuredChatter,
  ORDINARY_RATIO,
} from "../../mill/chatter-rule.ts";
import { meanChip } from "../../mill/chip.ts";
import type { Tool } from "../../table/lists.ts";
import { HOLDING, tipMode } from "../../tool/tip-mode.ts";
import type { ToolBeam } from "./beam.ts";
import type { Job } from "./job.ts";

/** Holder stiffness [N/µm] and damping where the machine's row tells none: a plain collet chuck (judgement). */
export const HOLDER = { stiffness: 22, damping: 0.03 } as const;
/** Density where the list has none [g/cm³]: cemented carbide, high-speed steel (handbook values, from memory). */
const DENSITY = { carbide: 14.5, hss: 8 } as const;

export interface ChatterPass {
  /** Effective radial depth, axial depth, diameter and feed per tooth of the centre [mm]. */
  readonly radialDepth: number;
  readonly axialDepth: number;
  readonly diameter: number;
  readonly centreFeed: number;
  readonly edgeAngle: number;
  readonly teeth: number;
  /** [m/min] */
  readonly surfaceSpeed: number;
}

const held = new Cache<string, Pick<HeldModes, "firm" | "nominal">>("tip modes", 500);

/** Modes of a tool in a machine's holder at the two ends that judge; the same tool comes in many rows. */
function modesOf({ machine }: Job, beam: ToolBeam, tool: Tool): Pick<HeldModes, "firm" | "nominal"> {
  const shankDiameter = tool.shankDiameter ?? tool.diameter!;
  const holderStiffness = machine?.holderStiffness ?? HOLDER.stiffness;
  const damping = machine?.damping ?? HOLDER.damping;
  const { modulus, poisson } = beam.options;
  const density = DENSITY[tool.substrate ?? "carbide"];
  const sizes = beam.parts.flatMap((p) => [p.tipDiameter, p.holderDiameter, p.length]);
  const key = [...sizes, shankDiameter, holderStiffness, damping, modulus, poisson, density].join();
  return held.get(key, () => {
    const whole = { segments: beam.parts, shankDiameter, modulus, poisson, density, holderStiffness, damping };
    return { firm: tipMode(whole, HOLDING.firm), nominal: tipMode(whole, HOLDING.nominal) };
  });
}

/** Modes as a list holds them: frequency/stiffness/damping, several with ";" between. Undefined where they cannot be read. */
export function readModes(text: string): ChatterMode[] | undefined {
  const modes = text.split(";").map((part) => {
    const [frequency, stiffness, damping, ...more] = part
      .split("/")
      .map((t) => (t.trim() === "" ? Number.NaN : Number(t)));
    const sound = more.length === 0 && frequency! > 0 && stiffness! > 0 && damping! > 0 && damping! < 1;
    return sound ? { frequency: frequency!, stiffness: stiffness!, damping: damping! } : undefined;
  });
  return modes.every((m) => m !== undefined) ? modes : undefined;
}

/** Measured modes of the tool on this machine; null where the list's text cannot be read. */
function measuredModes({ work, machine }: Job, tool: Tool): TipModes | undefined | null {
  const { tipModesX, tipModesY = tipModesX, tipModesOn } = tool;
  if (tipModesX === undefined || tipModesY === undefined) return undefined;
  if (tipModesOn !== undefined && tipModesOn.toLowerCase() !== machine?.machine.toLowerCase()) return undefined;
  const [x, y] = [readModes(tipModesX), readModes(tipModesY)];
  if (x && y) return { x, y };
  work.find("tip-modes-unreadable", { tool: tool.tool, text: x ? tipModesY : tipModesX });
  return null;
}

/** The pass that is most likely to chatter, judged; "check" at the most. Needs the material's force and a stick-out. */
export function judgeChatter(job: Job, beam: ToolBeam, tool: Tool, pass: ChatterPass): void {
  const { work, row, material } = job;
  if (material?.kc11 === undefined || material.exponent === undefined) return;
  const radialDepth = Math.min(pass.radialDepth, pass.diameter);
  const { axialDepth, diameter, teeth, surfaceSpeed } = pass;
  const chip = meanChip(pass.centreFeed, radialDepth, diameter, pass.edgeAngle);
  const cut: BandedCut = {
    teeth,
    radialDepth,
    diameter,
    slope: forceSlope(material.kc11 * (row.wearFactor ?? 1), material.exponent, chip),
    radialRatio: material.radialRatio ?? 0.35,
    way: row.way ?? "climb",
    surfaceSpeed,
  };
  const measured = measuredModes(job, tool);
  if (measured) {
    if (!measuredChatter(cut, measured, axialDepth)) return;
    const allows = chatterDepth(cut, measured, "firm");
    work.limit("chatter", axialDepth, allows, "length");
    work.find("chatter", { value: axialDepth, limit: allows, allows, nominal: allows, measured: true });
    return;
  }
  const modes = modesOf(job, beam, tool);
  if (!likelyToChatter(cut, modes, axialDepth)) return;
  const allows = chatterDepth(cut, modes.firm, "firm");
  const nominal = chatterDepth(cut, modes.nominal, "nominal");
  const limit = Math.max(allows, ORDINARY_RATIO * nominal);
  work.limit("chatter", axialDepth, limit, "length");
  work.find("chatter", { value: axialDepth, limit, allows, nominal, measured: false });
}
