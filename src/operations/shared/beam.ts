/** The listed tool as a beam: its parts from the tip to the holder, how springy it is at the cut, what breaks it. */
import { Cache } from "../../cache.ts";
import type { Tool } from "../../table/lists.ts";
import { type BeamOptions, deflectionParts, fromLoad, type Segment } from "../../tool/beam.ts";
import { FLUTED_SHARE, STICK_OUT_RATIO } from "./choices.ts";
import type { Job } from "./job.ts";
import { over } from "./slack.ts";

export interface ToolBeam {
  /** From the tip to the holder [mm]. */
  readonly parts: readonly (Segment & { readonly part: string })[];
  readonly stickOut: number;
  readonly options: BeamOptions;
  /** Flexibility where the force acts [mm/N], the holder's spring included. */
  flexibility(loadFromTip: number): number;
  /** Parts from the point of load on. */
  loaded(loadFromTip: number): readonly Segment[];
}

/** Modulus of common tool materials [GPa], where the list is silent: cemented carbide 600, high-speed steel 210 (handbook values, from memory). */
const MODULUS = { carbide: 600, hss: 210 } as const;
/** Poisson's ratio: carbide 0.22, steel 0.29 (handbook values, from memory). */
const POISSON = { carbide: 0.22, hss: 0.29 } as const;

/**
 * The beam of a tool for a row, or undefined with a reason when the list lacks a size. A fluted part bends like a
 * round bar of 0.8 of its diameter.
 */
export function toolBeam({ work, row, machine }: Job, tool: Tool): ToolBeam | undefined {
  const stickOut = row.stickOut ?? tool.stickOut;
  const { diameter } = tool;
  if (stickOut === undefined || diameter === undefined) {
    work.find("no-stick-out", { tool: tool.tool });
    return undefined;
  }
  const shank = tool.shankDiameter ?? diameter;
  const ratioDiameter = tool.neckDiameter === undefined ? diameter : Math.max(diameter, shank);
  const most = tool.stickOutLimit ?? STICK_OUT_RATIO;
  const limit = most * ratioDiameter;
  work.limit("stickOut", stickOut, limit, "length");
  if (over(stickOut, limit)) work.find("stick-out", { value: stickOut, limit, ratio: stickOut / ratioDiameter, most });
  return beamOf(tool, stickOut, machine?.holderStiffness);
}

/** Beams that are kept of a tool, and places of load that are kept of a beam. */
const BEAMS = 8;
const LOADS = 64;
const beams = new WeakMap<Tool, Cache<string, ToolBeam>>();

/** The same beam for the same entry of a list, as long as it is held alike: it comes in many rows. */
function beamOf(tool: Tool, stickOut: number, holderStiffness: number | undefined): ToolBeam {
  const known = beams.get(tool) ?? new Cache<string, ToolBeam>("tool beams", BEAMS);
  beams.set(tool, known);
  return known.get(`${stickOut} ${holderStiffness}`, () => makeBeam(tool, stickOut, holderStiffness));
}

function makeBeam(tool: Tool, stickOut: number, holderStiffness: number | undefined): ToolBeam {
  const parts = partsOf(tool, stickOut);
  const substrate = tool.substrate ?? "carbide";
  const options: BeamOptions = {
    modulus: tool.modulus ?? MODULUS[substrate],
    poisson: POISSON[substrate],
    shear: true,
    stepFlexibility: true,
    holderStiffness,
  };
  /** From a point of load on, and how far that gives under 1 N. */
  const known = new Cache<number, { readonly parts: readonly Segment[]; readonly gives: number }>("loads", LOADS);
  const at = (loadFromTip: number) =>
    known.get(loadFromTip, () => {
      const from = fromLoad(parts, loadFromTip);
      return { parts: from, gives: deflectionParts(1, from, options).total };
    });
  return {
    parts,
    stickOut,
    options,
    loaded: (loadFromTip) => at(loadFromTip).parts,
    flexibility: (loadFromTip) => at(loadFromTip).gives,
  };
}

function partsOf(tool: Tool, stickOut: number): (Segment & { part: string })[] {
  const diameter = tool.diameter!;
  const shank = tool.shankDiameter ?? diameter;
  const { neckDiameter, neckLength, neckEndDiameter } = tool;
  const parts: (Segment & { part: string })[] = [];
  let at = 0;
  const add = (to: number, d: number, part: string, wide = d) => {
    const end = Math.min(to, stickOut);
    if (end - at <= 1e-9) return;
    // A cone that the holder grips ends where it is gripped.
    const holderDiameter = d + ((wide - d) * (end - at)) / (to - at);
    parts.push({ tipDiameter: d, holderDiameter, length: end - at, part });
    at = end;
  };
  if (tool.kind === "thread mill single") {
    if (neckDiameter !== undefined && neckLength !== undefined) add(neckLength, neckDiameter, "neck", neckEndDiameter);
    else if (tool.cuttingLength !== undefined) add(tool.cuttingLength, FLUTED_SHARE * diameter, "cutting part");
  } else {
    const core = FLUTED_SHARE * diameter;
    // A full-profile thread mill is no thicker at its core than its neck.
    const thread = tool.kind === "thread mill full";
    if (tool.cuttingLength !== undefined)
      add(tool.cuttingLength, thread ? Math.min(core, neckDiameter ?? core) : core, "cutting part");
    if (neckDiameter !== undefined && neckLength !== undefined) add(neckLength, neckDiameter, "neck", neckEndDiameter);
  }
  add(stickOut, shank, "shank");
  return parts;
}

/** The step of a deflection under a force that acts so far from the tip. */
export function deflectionStep(
  { work }: Job,
  beam: ToolBeam,
  loadFromTip: number,
  force: number,
  thread: boolean,
): void {
  const { modulus, poisson, holderStiffness } = beam.options;
  work.step("deflection", beam.flexibility(loadFromTip) * force, {
    thread,
    force,
    segments: work.detail
      ? beam.loaded(loadFromTip).map((p) => ({ diameter: p.holderDiameter, length: p.length }))
      : [],
    modulus,
    holder: holderStiffness,
    poisson,
    cones: beam.parts.some((p) => p.tipDiameter !== p.holderDiameter),
  });
}
