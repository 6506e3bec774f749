/** Units as people write them in headings and cells. */
import { DIMENSIONS, type Units } from "../units.ts";
import { fold } from "./fold.ts";
import type { Quantity } from "./quantity.ts";

/** What a unit measures; "tooth" is a length for each tooth, "turn" one for each turn. */
type Measure =
  | "length"
  | "tooth"
  | "turn"
  | "surface speed"
  | "feed"
  | "turns"
  | "roughness"
  | "power"
  | "torque"
  | "stress"
  | "time"
  | "angle"
  | "force"
  | "acceleration"
  | "money"
  | "other";

export interface UnitText {
  readonly measure: Measure;
  /** Value in the canonical unit of the measure (mm, m/min, mm/min, 1/min, µm, kW, N·m, MPa, s, °, N, m/s²). */
  readonly factor: number;
}

const INCH = 25.4;
const FOOT = 0.3048;
const POUND_FORCE = 0.45359237 * 9.80665;

const UNITS: readonly (readonly [measure: Measure, factor: number, texts: string])[] = [
  ["length", 1, "mm|millimeter|millimeters|millimetre|millimetres|millimetri|milimetros|ミリ"],
  ["length", 10, "cm"],
  ["length", 0.001, "μm|um|micron|microns"],
  ["length", INCH, "in|inch|inches|\"|''|zoll|pouce|pouces|po|pulg|pulgada|pulgadas|poll|pollice|pollici|インチ"],
  ["length", INCH / 1000, "thou|mil|mils"],
  [
    "tooth",
    1,
    "mm/z|mm/tooth|mm/t|mm/zahn|mm/zahnchen|mm/dent|mm/d|mm/diente|mm/dente|mm/刃|mm/flute|mm per tooth|mm pro zahn|mm par dent|mm por diente|mm al dente",
  ],
  ["tooth", INCH, "ipt|in/tooth|in/z|in/t|inch/tooth|in per tooth|in/flute|in/dent|in/diente|in/dente|in/刃"],
  ["turn", 1, "mm/rev|mm/u|mm/tr|mm/tour|mm/vuelta|mm/giro|mm/rot|mm/r"],
  ["turn", INCH, "ipr|in/rev"],
  ["surface speed", 1, "m/min|smm|m/mn|m/分"],
  ["surface speed", FOOT, "sfm|sfpm|ft/min|fpm|surface feet|surface feet per minute"],
  ["feed", 1, "mm/min|mm/mn|mm/分|mmpm"],
  ["feed", INCH, "ipm|in/min|inch/min|in/分"],
  [
    "turns",
    1,
    "rpm|r.p.m.|1/min|min-1|min^-1|/min|u/min|u/min.|tr/min|tr/mn|t/min|rev/min|giri/min|g/min|giri/1'|vueltas/min|umin",
  ],
  ["roughness", 1, "rz μm"],
  ["roughness", INCH / 1000, "μin|uin|microinch|rz μin"],
  ["power", 1, "kw"],
  ["power", 0.001, "w"],
  ["power", (550 * POUND_FORCE * FOOT) / 1000, "hp"],
  // The metric horsepower: 75 kgf·m/s.
  ["power", (75 * 9.80665) / 1000, "ps|cv|ch"],
  ["torque", 1, "nm|n·m|n.m|n m"],
  ["torque", POUND_FORCE * FOOT, "ft-lb|ft·lb|ft lb|ftlb|lb-ft|lbf·ft|ft·lbf"],
  ["torque", POUND_FORCE * (INCH / 1000), "in-lb|in·lb|lb-in|lbf·in|in lb"],
  ["stress", 1, "mpa|n/mm2|n/mm^2"],
  ["stress", 1000, "gpa"],
  ["time", 1, "s|sec|sek|seg|秒"],
  ["time", 60, "min|minuten|分"],
  ["time", 3600, "h|std|時間"],
  ["angle", 1, "°|deg|grad|度"],
  ["force", 1, "n"],
  ["force", POUND_FORCE, "lbf|lb|lbs"],
  ["acceleration", 1, "m/s2|m/s^2"],
  ["acceleration", 9.80665, "g"],
  ["money", 1, "€|eur|$|usd|£|円|chf|€/h|eur/h|$/h|/h|ht"],
  // Another roughness than Rz: never taken for it.
  ["other", 1, "ra|ra μm|ra μin|kg|m"],
];

const BY_TEXT: ReadonlyMap<string, UnitText> = new Map(
  UNITS.flatMap(([measure, factor, texts]) =>
    texts.split("|").map((text) => [squeezed(fold(text)), { measure, factor }] as const),
  ),
);

/** A folded unit without blanks and full stops, a middle dot as it is. */
function squeezed(folded: string): string {
  return folded.replace(/[\s.]+/g, "").replace(/[・∙⋅•]/g, "·");
}

/** The unit that a folded text is, or undefined. */
export const unitOf = (folded: string): UnitText | undefined => BY_TEXT.get(squeezed(folded));

const FIXED: Readonly<Record<string, UnitText>> = {
  MPa: { measure: "stress", factor: 1 },
  GPa: { measure: "stress", factor: 1000 },
  "m/min": { measure: "surface speed", factor: 1 },
  mm: { measure: "length", factor: 1 },
  kW: { measure: "power", factor: 1 },
  N·m: { measure: "torque", factor: 1 },
  s: { measure: "time", factor: 1 },
  min: { measure: "time", factor: 60 },
  "1/min": { measure: "turns", factor: 1 },
  "°": { measure: "angle", factor: 1 },
  "m/s²": { measure: "acceleration", factor: 1 },
  money: { measure: "money", factor: 1 },
  "money/h": { measure: "money", factor: 1 },
};

const METRES_PER_MINUTE: Readonly<Partial<Record<Measure, number>>> = { "surface speed": 1, feed: 0.001 };

/**
 * What a value in that unit is to be multiplied by for the column: to the canonical unit of its dimension, or to its
 * fixed unit. Undefined where the unit measures something else.
 */
export function factorFor(
  column: Quantity & { readonly key?: string },
  { measure, factor }: UnitText,
): number | undefined {
  const { dimension, unit } = column;
  if (dimension === "length") {
    if (measure === "tooth") return column.key === "feedPerTooth" ? factor : undefined;
    return measure === "length" ? factor : undefined;
  }
  if (dimension === "roughness") {
    if (measure === "length") return factor === 0.001 ? 1 : undefined;
    return measure === "roughness" ? factor : undefined;
  }
  if (dimension === "surface speed") return measure === dimension ? factor : undefined;
  if (dimension === "feed")
    return measure === "feed" ? factor : measure === "surface speed" ? factor * 1000 : undefined;
  if (dimension === "force" || dimension === "power") return measure === dimension ? factor : undefined;
  if (unit === "m/min") {
    const to = METRES_PER_MINUTE[measure];
    return to === undefined ? undefined : to * factor;
  }
  const own = unit === undefined ? (column.key === "maxRpm" ? FIXED["1/min"] : undefined) : FIXED[unit];
  if (own === undefined) return undefined;
  const alike = own.measure === measure || (own.measure === "length" && (measure === "tooth" || measure === "turn"));
  return alike ? factor / own.factor : undefined;
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * b;

/** The system of units whose unit of that dimension has this factor, or undefined. */
export function systemOf(dimension: keyof typeof DIMENSIONS, factor = Number.NaN): Units | undefined {
  if (near(factor, 1)) return "mm";
  return near(factor, DIMENSIONS[dimension].factor) ? "in" : undefined;
}
