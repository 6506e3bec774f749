/** What a plan answers of a row, in the order of its columns. */
import type { DimensionName } from "../units.ts";
import { FINE, FINEST, type Format, LENGTH, ONE, type Quantity, TWO, WHOLE } from "./quantity.ts";

const out = (heading: string, format: Format, more: { dimension?: DimensionName; unit?: string } = {}) =>
  ({ heading, kind: "number", format, ...more }) as const;
const size = (heading: string, format: Format = FINE) => out(heading, format, { dimension: "length" });
const said = (heading: string) => ({ heading, kind: "text" }) as const;

export const RESULT = {
  row: said("Row"),
  verdict: said("Verdict"),
  reasons: said("Reasons"),
  limit: said("Limit"),
  load: out("Load", TWO),
  tool: said("Tool"),
  startDiameter: size("Start diameter", LENGTH),
  drill: said("Drill"),
  spindleSpeed: out("Spindle speed", WHOLE, { unit: "1/min" }),
  surfaceSpeed: out("Surface speed", ONE, { dimension: "surface speed" }),
  feedPerTooth: size("Feed per tooth", FINEST),
  tableFeed: out("Table feed", ["0", "0.0"], { dimension: "feed" }),
  radialDepth: size("Radial depth"),
  chipThickness: size("Chip thickness", FINEST),
  passes: out("Passes", WHOLE),
  springPasses: out("Spring passes", WHOLE),
  depths: { heading: "Depths", kind: "depths" },
  pathRadius: size("Path radius"),
  neckGap: size("Neck gap"),
  direction: { heading: "Direction", kind: "direction" },
  force: out("Force", ONE, { dimension: "force" }),
  power: out("Power", TWO, { dimension: "power" }),
  deflection: size("Deflection", FINEST),
  stress: out("Stress", TWO),
  majorDiameter: size("Major diameter"),
  startZ: size("Start Z"),
  endZ: size("End Z"),
  size: size("Size"),
  sizeMin: size("Size min"),
  sizeMax: size("Size max"),
  timeEach: out("Time each", ONE, { unit: "s" }),
  time: out("Time", ONE, { unit: "s" }),
  cost: out("Cost", TWO, { unit: "money" }),
  startWearValue: size("Start wear value"),
  theoreticalRz: out("Theoretical Rz", ["0.00", "0"], { dimension: "roughness" }),
} as const satisfies Record<string, Quantity>;

export type ResultKey = keyof typeof RESULT;

/** How the tool travels: along the axis, around it (seen from above), or past a straight wall. */
export type Direction =
  | { readonly path: "circle"; readonly turn: "clockwise" | "counter-clockwise"; readonly axis?: "up" | "down" }
  | { readonly path: "wall"; readonly wall: "right" | "left" }
  | { readonly path: "full width" };

/** Radial depth after each pass [mm], or how many pecks. */
export type Depths = readonly number[] | { readonly pecks: number };

type ResultValue<Q extends Quantity> = Q extends { kind: "number" }
  ? number
  : Q extends { kind: "depths" }
    ? Depths
    : Q extends { kind: "direction" }
      ? Direction
      : string;

/** Results before they are put into words; numbers in the canonical unit of their dimension. */
export type Results = { readonly [K in ResultKey]?: ResultValue<(typeof RESULT)[K]> | null };
