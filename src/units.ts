/**
 * Unit systems and exact factors. Conversion happens at the edges only (functions, planning rows, screens);
 * inside, everything is in the canonical unit of its dimension, which is the "mm" column.
 *
 * Factors are exact by definition (inch 25.4 mm, pound 0.45359237 kg, standard gravity 9.80665 m/s²).
 * @source SP811
 */
import { TradeError } from "./errors.ts";

export type Units = "mm" | "in";

const POUND_FORCE = 0.45359237 * 9.80665; // N
const INCH = 25.4; // mm

interface Dimension {
  /** Unit symbols as shown. */
  readonly mm: string;
  readonly in: string;
  /** One inch-system unit in canonical units. */
  readonly factor: number;
}

export const DIMENSIONS = {
  length: { mm: "mm", in: "in", factor: INCH },
  "surface speed": { mm: "m/min", in: "ft/min", factor: 0.3048 },
  feed: { mm: "mm/min", in: "in/min", factor: INCH },
  force: { mm: "N", in: "lbf", factor: POUND_FORCE },
  torque: { mm: "N·m", in: "lbf·in", factor: (POUND_FORCE * INCH) / 1000 },
  power: { mm: "kW", in: "hp", factor: (550 * POUND_FORCE * 0.3048) / 1000 },
  "removal rate": { mm: "cm³/min", in: "in³/min", factor: 2.54 ** 3 },
  stress: { mm: "MPa", in: "ksi", factor: (1000 * POUND_FORCE) / INCH ** 2 },
  modulus: { mm: "GPa", in: "10⁶ lbf/in²", factor: (1000 * POUND_FORCE) / INCH ** 2 },
  stiffness: { mm: "N/µm", in: "1000 lbf/in", factor: POUND_FORCE / INCH },
  acceleration: { mm: "m/s²", in: "g", factor: 9.80665 },
  roughness: { mm: "µm", in: "µin", factor: INCH / 1000 },
  density: { mm: "g/cm³", in: "lb/in³", factor: 453.59237 / 2.54 ** 3 },
} as const satisfies Record<string, Dimension>;

export type DimensionName = keyof typeof DIMENSIONS;

/** A value in the user's system to the canonical unit. */
export function toCanonical(value: number, dimension: DimensionName, units: Units): number {
  return units === "in" ? value * DIMENSIONS[dimension].factor : value;
}

/** A canonical value to the user's system. */
export function fromCanonical(value: number, dimension: DimensionName, units: Units): number {
  return units === "in" ? value / DIMENSIONS[dimension].factor : value;
}

/** Unit symbol of a dimension in a system. */
export function symbol(dimension: DimensionName, units: Units): string {
  return DIMENSIONS[dimension][units];
}

/** Reads "mm" or "in"; anything else is an error that names what is allowed. */
export function parseUnits(parameter: string, text: unknown): Units {
  const word = typeof text === "string" ? text.trim().toLowerCase() : text;
  if (word === "mm" || word === "in") return word;
  if (word === null || word === undefined || word === "") {
    throw new TradeError("blank", parameter, text, { is: "one-of-texts", texts: ["mm", "in"] });
  }
  throw new TradeError("value", parameter, text, { is: "one-of-texts", texts: ["mm", "in"] });
}
