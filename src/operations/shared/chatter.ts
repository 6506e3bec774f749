/** Whether a cut is likely to chatter: the banded rule of mill/chatter-rule.ts with the modes of a row's tool, holder and machine. */
import { Cache } from "../../cache.ts";
import type { FactsOf } from "../../findings.ts";
import type { ChatterMode, TipModes } from "../../mill/chatter.ts";
import { type EdgePart, forceSlope } from "../../mill/chatter-cut.ts";
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
import { forceOf } from "./force.ts";
import type { Job } from "./job.ts";
import { over } from "./slack.ts";

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
  /** Profiles of a thread mill that cut at once; their edge is not engaged alike along its width. */
  readonly profiles?: number;
  readonly parts?: (kc11: number, exponent: number) => readonly EdgePart[];
}

type Held = Pick<HeldModes, "firm" | "nominal">;
const held = new Cache<string, Held>("tip modes", 500);
/** Of a beam, with the damping that they were worked out for. */
const swings = new WeakMap<ToolBeam, { readonly damping: number; readonly modes: Held }>();

/** Modes of a tool in a machine's holder at the two ends that judge; the same tool comes in many rows. */
function modesOf({ machine }: Job, beam: ToolBeam, tool: Tool): Held {
  const damping = machine?.damping ?? HOLDER.damping;
  const known = swings.get(beam);
  if (known?.damping === damping) return known.modes;
  const modes = heldModes(beam, tool, damping);
  swings.set(beam, { damping, modes });
  return modes;
}

function heldModes(beam: ToolBeam, tool: Tool, damping: number): Held {
  const shankDiameter = tool.shankDiameter ?? tool.diameter!;
  const { modulus, poisson, holderStiffness = HOLDER.stiffness } = beam.options;
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

type Measured = TipModes | { readonly unreadable: string };
/** Of a tool of a list, read once: what is worked out of them is worked out once. */
const measured = new WeakMap<Tool, Measured>();

/** Measured modes of the tool on this machine; the text that cannot be read where the list has such. */
function measuredModes({ machine }: Job, tool: Tool): Measured | undefined {
  const { tipModesX, tipModesOn } = tool;
  if (tipModesX === undefined) return undefined;
  if (tipModesOn !== undefined && tipModesOn.toLowerCase() !== machine?.machine.toLowerCase()) return undefined;
  const known = measured.get(tool);
  if (known) return known;
  const tipModesY = tool.tipModesY ?? tipModesX;
  const [x, y] = [readModes(tipModesX), readModes(tipModesY)];
  const read = x && y ? { x, y } : { unreadable: x ? tipModesY : tipModesX };
  measured.set(tool, read);
  return read;
}

interface Swinging {
  readonly cut: BandedCut;
  readonly depth: number;
  readonly measured: TipModes | undefined;
  readonly modes: () => Held;
}

/** A pass with what swings in it; undefined without the material's force. */
function swinging(job: Job, beam: ToolBeam, tool: Tool, pass: ChatterPass): Swinging | undefined {
  const { row } = job;
  const force = forceOf(job);
  if (!force) return undefined;
  const radialDepth = Math.min(pass.radialDepth, pass.diameter);
  const { diameter, teeth, surfaceSpeed } = pass;
  const { kc11, exponent, radialRatio } = force;
  const chip = meanChip(pass.centreFeed, radialDepth, diameter, pass.edgeAngle);
  const found = measuredModes(job, tool);
  return {
    cut: {
      teeth,
      radialDepth,
      diameter,
      slope: forceSlope(kc11, exponent, chip),
      parts: pass.parts?.(kc11, exponent),
      radialRatio,
      way: row.way ?? "climb",
      surfaceSpeed,
    },
    depth: pass.axialDepth,
    measured: found && "x" in found ? found : undefined,
    modes: () => modesOf(job, beam, tool),
  };
}

const ratioOf = ({ machine }: Job) => machine?.chatterRatio ?? ORDINARY_RATIO;
const likely = (job: Job, { cut, depth, measured, modes }: Swinging) =>
  measured ? measuredChatter(cut, measured, depth) : likelyToChatter(cut, modes(), depth, ratioOf(job));

/** Whether a pass is likely to chatter, without a word about it: for a row that chooses between ways to cut. */
export function chatters(job: Job, beam: ToolBeam, tool: Tool, passes: readonly ChatterPass[]): boolean {
  return passes.some((pass) => {
    const it = swinging(job, beam, tool, pass);
    return it !== undefined && likely(job, it);
  });
}

/** The pass that is most likely to chatter, judged; "check" at the most. Needs the material's force and a stick-out. */
export function judgeChatter(job: Job, beam: ToolBeam, tool: Tool, passes: readonly ChatterPass[]): void {
  const { work } = job;
  let worst: (FactsOf<"chatter"> & { readonly limit: number }) | undefined;
  for (const pass of passes) {
    const it = swinging(job, beam, tool, pass);
    if (!it || !likely(job, it)) continue;
    const { cut, depth, measured, modes } = it;
    const allows = chatterDepth(cut, measured ?? modes().firm, "firm");
    const nominal = measured ? allows : chatterDepth(cut, modes().nominal, "nominal");
    const limit = measured ? allows : Math.max(allows, ratioOf(job) * nominal);
    if (!worst || over(depth / limit, worst.value / worst.limit))
      worst = { value: depth, limit, allows, nominal, measured: measured !== undefined, profiles: pass.profiles };
  }
  const text = measuredModes(job, tool);
  if (text && "unreadable" in text) work.find("tip-modes-unreadable", { tool: tool.tool, text: text.unreadable });
  if (!worst) return;
  work.limit("chatter", worst.value, worst.limit, "length");
  work.find("chatter", worst);
}
