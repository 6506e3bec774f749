/** Worksheet functions: the tool as a beam. */

import type { Allowed } from "../src/allowed.ts";
import { TradeError } from "../src/errors.ts";
import { stableDepth } from "../src/mill/stability.ts";
import { MOST_TEETH } from "../src/mill/turn.ts";
import { isBlank } from "../src/table/blank.ts";
import { neckDeflection, type Segment, toolDeflection, toolStiffness } from "../src/tool/beam.ts";
import { toolFrequency } from "../src/tool/frequency.ts";
import { forceLimit, stickOutLimit } from "../src/tool/limits.ts";
import { largestMisesStress } from "../src/tool/stress.ts";
import type { Units } from "../src/units.ts";
import { type Cell, content } from "./cells.ts";
import { lifted } from "./lift.ts";
import { anyNumber, between, count, flag, list, optional, positive, units } from "./params.ts";

/** Cemented carbide, common practice; what the contract of these functions states as default. */
const CARBIDE = { modulus: 600, poisson: 0.22, density: 14.5 };

const SHAPE: Allowed = { is: "segment-rows" };
const size = positive("segments", "length");

/** Rows of two or three numbers from the tip to the holder; rows that are blank all over are passed over. */
const segments = list("segments", (block, u) => {
  const rows: Segment[] = [];
  const columns = width(block);
  if (columns < 2 || columns > 3) {
    throw new TradeError(
      columns === 0 ? "blank" : "value",
      "segments",
      `${columns} ${columns === 1 ? "column" : "columns"}`,
      SHAPE,
    );
  }
  block.forEach((line, i) => {
    const cells = Array.from({ length: columns }, (_, c) => line[c]);
    if (cells.every((cell) => isBlank(content(cell)))) return;
    const numbers = cells.map((cell) => entry(cell, i + 1, u));
    const tip = numbers[0]!;
    rows.push({ tipDiameter: tip, holderDiameter: columns === 3 ? numbers[1]! : tip, length: numbers[columns - 1]! });
  });
  return rows;
});

/** Columns up to the last that holds anything. */
function width(block: Cell[][]): number {
  let columns = 0;
  for (const line of block) {
    for (let c = line.length; c > columns; c--) {
      if (!isBlank(content(line[c - 1]))) columns = c;
    }
  }
  return columns;
}

/** One number of a segment; what is wrong with it is said with its row. */
function entry(cell: Cell, row: number, u: Units | undefined): number {
  try {
    return size.read(cell, u);
  } catch (thrown) {
    if (thrown instanceof TradeError) throw new TradeError(thrown.code, `segments, row ${row},`, thrown.value, SHAPE);
    throw thrown;
  }
}

const modulus = optional(positive("modulus", "modulus"), CARBIDE.modulus);
const density = optional(positive("density", "density"), CARBIDE.density);
const force = positive("force", "force");

const neck = lifted(
  [
    force,
    positive("neckDiameter", "length"),
    positive("neckLength", "length"),
    units,
    modulus,
    optional(positive("shankDiameter", "length")),
    optional(positive("shankLength", "length")),
  ],
  (F, d, l, _u, E, D, L) => neckDeflection(F, d, l, E, D, L),
  "length",
);
/**
 * Tip deflection of a neck on a shank: bending alone, rigid holder [mm or in].
 * @customfunction
 * @remarks Elementary beam theory; TOOLDEFLECTION adds shear and the give of the shoulder.
 * @param force Force across the axis at the tip [N or lbf].
 * @param neckDiameter Diameter of the neck [mm or in].
 * @param neckLength Length of the neck from the tip [mm or in].
 * @param units "mm" or "in".
 * @param [modulus] Young's modulus [GPa or 10⁶ lbf/in²], default 600 GPa (carbide).
 * @param [shankDiameter] Diameter of the shank [mm or in]; none: the neck ends in the holder.
 * @param [shankLength] Length of the shank from the neck to the holder [mm or in].
 * @returns Deflection [mm or in].
 * @example
 * =CUT.NECKDEFLECTION(20, 3.4, 15, "mm", 600, 6, 15) //=> 0.0098429
 */
export function NECKDEFLECTION(
  force: any[][],
  neckDiameter: any[][],
  neckLength: any[][],
  units: any[][],
  modulus?: any[][],
  shankDiameter?: any[][],
  shankLength?: any[][],
): any[][] {
  return neck(force, neckDiameter, neckLength, units, modulus, shankDiameter, shankLength);
}

const deflection = lifted(
  [
    force,
    segments,
    units,
    modulus,
    optional(positive("holderStiffness", "stiffness")),
    optional(flag("shear"), true),
    optional(flag("stepFlexibility"), true),
  ],
  (F, tool, _u, E, holderStiffness, shear, stepFlexibility) =>
    toolDeflection(F, tool, { modulus: E, poisson: CARBIDE.poisson, shear, stepFlexibility, holderStiffness }),
  "length",
);
/**
 * Deflection at the load of a stepped or tapered tool: bending, shear, give of the shoulders, springy holder [mm or in].
 * @customfunction
 * @remarks An end mill's fluted part bends like a round bar of 0.8 of its diameter: type that diameter. A sharp shoulder
 * adds a hinge of 0.277·(1 − (d/D)^2.9)^1.85 diameters of thin bar; give a fillet or cone as a tapered row.
 * @param force Force across the axis at the start of the first segment [N or lbf].
 * @param segments From the load to the holder: diameter, length, or diameter at the tip end, at the holder end, length [mm or in].
 * @param units "mm" or "in".
 * @param [modulus] Young's modulus [GPa or 10⁶ lbf/in²], default 600 GPa (carbide).
 * @param [holderStiffness] Stiffness of the holder [N/µm or 1000 lbf/in]; none: rigid.
 * @param [shear] Count shear, default TRUE.
 * @param [stepFlexibility] Count the local give of sharp shoulders, default TRUE.
 * @returns Deflection [mm or in].
 * @example
 * =CUT.TOOLDEFLECTION(100, {10,40}, "mm") //=> 0.00747873
 */
export function TOOLDEFLECTION(
  force: any[][],
  segments: any[][],
  units: any[][],
  modulus?: any[][],
  holderStiffness?: any[][],
  shear?: any[][],
  stepFlexibility?: any[][],
): any[][] {
  return deflection(force, segments, units, modulus, holderStiffness, shear, stepFlexibility);
}

const stress = lifted(
  [force, segments, units, optional(anyNumber("torque", "torque"), 0), optional(between("notchFactor", 1, 100), 1)],
  (F, tool, _u, torque, notchFactor) =>
    largestMisesStress(F, tool, { torque: Math.abs(torque), notchFactor, holderNotchFactor: notchFactor }).stress,
  "stress",
);
/**
 * Largest equivalent stress (von Mises) along the tool, in bending and torsion, an estimate [MPa or ksi].
 * @customfunction
 * @remarks Without torque it is also the largest principal stress; with torque it is above it, on the safe side for carbide.
 * The notch factor counts at the thin side of every shoulder and at the face of the holder.
 * @param force Force across the axis at the start of the first segment [N or lbf].
 * @param segments From the load to the holder: diameter, length, or diameter at the tip end, at the holder end, length [mm or in].
 * @param units "mm" or "in".
 * @param [torque] Torque about the axis [N·m or lbf·in], default 0.
 * @param [notchFactor] Factor on the stress at shoulders and at the holder, default 1.
 * @returns Stress [MPa or ksi].
 * @example
 * =CUT.TOOLSTRESS(100, {10,40}, "mm", 3) //=> 48.58372
 */
export function TOOLSTRESS(
  force: any[][],
  segments: any[][],
  units: any[][],
  torque?: any[][],
  notchFactor?: any[][],
): any[][] {
  return stress(force, segments, units, torque, notchFactor);
}

const frequency = lifted([segments, units, modulus, density], (tool, _u, E, rho) =>
  toolFrequency(tool, { modulus: E, density: rho }),
);
/**
 * First bending natural frequency of the bare tool fixed at the holder, an estimate [Hz].
 * @customfunction
 * @remarks Bare tool on an Euler–Bernoulli beam: no shear, no give at shoulders, no holder and no spindle. The tip of a held tool swings much slower: modes measured on 12 mm cutters lie near 1 to 2 kHz where this gives 5 to 8 kHz.
 * @param segments From the tip to the holder: diameter, length, or diameter at the tip end, at the holder end, length [mm or in].
 * @param units "mm" or "in".
 * @param [modulus] Young's modulus [GPa or 10⁶ lbf/in²], default 600 GPa (carbide).
 * @param [density] Density [g/cm³ or lb/in³], default 14.5 g/cm³ (carbide).
 * @returns Frequency [Hz].
 * @example
 * =CUT.TOOLFREQUENCY({10,40}, "mm") //=> 5624.48
 */
export function TOOLFREQUENCY(segments: any[][], units: any[][], modulus?: any[][], density?: any[][]): any[][] {
  return frequency(segments, units, modulus, density);
}

const stickOut = lifted(
  [force, positive("deflectionLimit", "length"), positive("diameter", "length"), units, modulus],
  (F, limit, d, _u, E) => stickOutLimit(F, limit, d, E),
  "length",
);
/**
 * Longest stick-out of a uniform round bar for a deflection that is allowed, bending alone [mm or in].
 * @customfunction
 * @remarks The inverse of NECKDEFLECTION; shear makes a bar of 4 diameters about 3 % softer.
 * @param force Force across the axis at the tip [N or lbf].
 * @param deflectionLimit Deflection that is allowed [mm or in].
 * @param diameter Diameter of the bar [mm or in]; an end mill bends like 0.8 of its diameter.
 * @param units "mm" or "in".
 * @param [modulus] Young's modulus [GPa or 10⁶ lbf/in²], default 600 GPa (carbide).
 * @returns Stick-out [mm or in].
 * @example
 * =CUT.STICKOUTLIMIT(100, 0.01, 10, "mm") //=> 44.539719
 */
export function STICKOUTLIMIT(
  force: any[][],
  deflectionLimit: any[][],
  diameter: any[][],
  units: any[][],
  modulus?: any[][],
): any[][] {
  return stickOut(force, deflectionLimit, diameter, units, modulus);
}

const largestForce = lifted(
  [positive("deflectionLimit", "length"), segments, units, modulus],
  (limit, tool, _u, E) =>
    forceLimit(limit, tool, { modulus: E, poisson: CARBIDE.poisson, shear: true, stepFlexibility: true }),
  "force",
);
/**
 * Largest force for a deflection that is allowed: TOOLDEFLECTION with its defaults, turned round [N or lbf].
 * @customfunction
 * @param deflectionLimit Deflection that is allowed [mm or in].
 * @param segments From the load to the holder: diameter, length, or diameter at the tip end, at the holder end, length [mm or in].
 * @param units "mm" or "in".
 * @param [modulus] Young's modulus [GPa or 10⁶ lbf/in²], default 600 GPa (carbide).
 * @returns Force [N or lbf].
 * @example
 * =CUT.FORCELIMIT(0.01, {10,40}, "mm") //=> 133.71261
 */
export function FORCELIMIT(deflectionLimit: any[][], segments: any[][], units: any[][], modulus?: any[][]): any[][] {
  return largestForce(deflectionLimit, segments, units, modulus);
}

/** The same tool comes with every cell of a call: its mode is worked out once for each list that was read. */
const modes = new WeakMap<readonly Segment[], { E: number; rho: number; stiffness: number; frequency: number }>();
function modeOf(tool: readonly Segment[], E: number, rho: number): { stiffness: number; frequency: number } {
  const known = modes.get(tool);
  if (known?.E === E && known.rho === rho) return known;
  const beam = { modulus: E, poisson: CARBIDE.poisson, shear: true, stepFlexibility: true };
  const mode = {
    E,
    rho,
    stiffness: toolStiffness(tool, beam),
    frequency: toolFrequency(tool, { modulus: E, density: rho }),
  };
  modes.set(tool, mode);
  return mode;
}

const stable = lifted(
  [
    positive("rpm"),
    count("teeth", 1, MOST_TEETH),
    positive("radialDepth", "length"),
    positive("diameter", "length"),
    positive("kc", "stress"),
    segments,
    units,
    optional(between("damping", 0, 1, { low: true, high: true }), 0.03),
    optional(between("radialRatio", 0, 10), 0.35),
    modulus,
    density,
  ],
  (rpm, teeth, radialDepth, diameter, kc, tool, _u, damping, radialRatio, E, rho) => {
    const { stiffness, frequency: f } = modeOf(tool, E, rho);
    return stableDepth({ teeth, radialDepth, diameter, kc, radialRatio, stiffness, frequency: f, damping }, rpm);
  },
  "length",
);
/**
 * Limiting axial depth of cut without chatter for the bare tool, zero-order solution with one mode at the tip, an estimate [mm or in].
 * @customfunction
 * @remarks Bare tool: static stiffness as TOOLDEFLECTION with its defaults, frequency as TOOLFREQUENCY, damping assumed. It leaves out holder, spindle and part, process damping at low speed, and flip chatter at small radial depths. No speed may be chosen by it without measured modes; PLAN judges chatter by a band instead.
 * @param rpm Spindle speed [1/min].
 * @param teeth Number of teeth.
 * @param radialDepth Radial depth of cut [mm or in].
 * @param diameter Diameter of the cutter [mm or in].
 * @param kc Specific cutting force at the chip that is cut [MPa or ksi].
 * @param segments From the tip to the holder: diameter, length, or diameter at the tip end, at the holder end, length [mm or in].
 * @param units "mm" or "in".
 * @param [damping] Damping ratio, an assumption, default 0.03.
 * @param [radialRatio] Radial over tangential force, default 0.35.
 * @param [modulus] Young's modulus [GPa or 10⁶ lbf/in²], default 600 GPa (carbide).
 * @param [density] Density [g/cm³ or lb/in³], default 14.5 g/cm³ (carbide).
 * @returns Axial depth [mm or in].
 * @example
 * =CUT.STABLEDEPTH(8000, 4, 10, 10, 2000, {8,25;10,15}, "mm") //=> 0.2204283
 */
export function STABLEDEPTH(
  rpm: any[][],
  teeth: any[][],
  radialDepth: any[][],
  diameter: any[][],
  kc: any[][],
  segments: any[][],
  units: any[][],
  damping?: any[][],
  radialRatio?: any[][],
  modulus?: any[][],
  density?: any[][],
): any[][] {
  return stable(rpm, teeth, radialDepth, diameter, kc, segments, units, damping, radialRatio, modulus, density);
}
