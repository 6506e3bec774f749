/**
 * The columns of the planning table and of the shop's lists: one declarative list each. Everything that reads or
 * writes a table goes by these: heading, other spellings, unit, limits, number format.
 */
import { MOST_TEETH } from "../mill/turn.ts";
import type { DimensionName } from "../units.ts";

export interface Column {
  /** Name in the code; never shown. */
  readonly key: string;
  /** Canonical heading. */
  readonly heading: string;
  /** Other spellings, written as `normalHeading` leaves them. */
  readonly aliases?: readonly string[];
  /** `length` etc. follow the row's units; without it the unit is fixed (see `unit`). */
  readonly dimension?: DimensionName;
  /** Fixed unit. */
  readonly unit?: string;
  readonly kind: "text" | "number" | "whole" | "word" | "flag";
  readonly words?: readonly string[];
  /** Smallest value; `above` excludes it. */
  readonly low?: number;
  readonly above?: boolean;
  readonly high?: number;
  /** Number format for display, for a metric and for an inch row. */
  readonly format?: readonly [mm: string, inch: string];
}

const OPERATIONS = [
  "drill",
  "thread mill",
  "bore",
  "boss",
  "slot",
  "side",
  "face",
  "tap",
  "ream",
  "countersink",
  "counterbore",
] as const;
export type Operation = (typeof OPERATIONS)[number];

const LENGTH = ["0.00", "0.0000"] as const;
const FINE = ["0.000", "0.00000"] as const;
const WHOLE = ["0", "0"] as const;
const ONE = ["0.0", "0.0"] as const;
const TWO = ["0.00", "0.00"] as const;

const text = (key: string, heading: string, aliases: string[] = []): Column => ({
  key,
  heading,
  aliases,
  kind: "text",
});
const word = (key: string, heading: string, words: readonly string[], aliases: string[] = []): Column => ({
  key,
  heading,
  aliases,
  kind: "word",
  words,
});
const above = (key: string, heading: string, dimension?: DimensionName, aliases: string[] = []): Column => ({
  key,
  heading,
  aliases,
  kind: "number",
  dimension,
  low: 0,
  above: true,
  format: dimension === "length" ? LENGTH : undefined,
});
const from0 = (key: string, heading: string, dimension?: DimensionName, aliases: string[] = []): Column => ({
  key,
  heading,
  aliases,
  kind: "number",
  dimension,
  low: 0,
  format: dimension === "length" ? LENGTH : undefined,
});
const whole = (key: string, heading: string, low: number, aliases: string[] = []): Column => ({
  key,
  heading,
  aliases,
  kind: "whole",
  low,
  format: WHOLE,
});

/** More passes than this are a slip of the finger. */
export const MOST_PASSES = 200;

/** What a row may hold. */
export const ROW_COLUMNS: readonly Column[] = [
  text("row", "Row", ["op", "op no", "no", "nr", "pos", "step", "item", "line", "seq"]),
  text("feature", "Feature", ["description", "callout", "remark", "note", "merkmal", "beschreibung"]),
  word("operation", "Operation", OPERATIONS, ["process", "work", "bearbeitung", "arbeitsgang"]),
  word("units", "Units", ["mm", "in"], ["unit", "einheit"]),
  whole("quantity", "Quantity", 1, ["qty", "count", "holes", "pcs", "menge", "anzahl"]),
  text("material", "Material", ["matl", "mat", "werkstoff"]),
  text("machine", "Machine", ["mach", "maschine", "machine tool"]),
  text("tool", "Tool", ["cutter", "tool name", "werkzeug"]),
  text("thread", "Thread", ["thread size", "thread callout", "gewinde"]),
  from0("startDiameter", "Start diameter", "length", [
    "hole",
    "pilot",
    "pre hole",
    "start dia",
    "start ø",
    "kernloch",
    "vorbohrung",
  ]),
  above("finishDiameter", "Finish diameter", "length", [
    "dia",
    "diameter",
    "ø",
    "finish dia",
    "size ø",
    "durchmesser",
    "bore dia",
  ]),
  above("depth", "Depth", "length", ["deep", "z depth", "tiefe", "thread depth", "height"]),
  { key: "through", heading: "Through", aliases: ["thru", "durchgang"], kind: "flag" },
  word("hand", "Hand", ["right", "left"], ["thread hand"]),
  word("way", "Way", ["climb", "conventional"], ["milling way", "gleichlauf gegenlauf"]),
  above("length", "Length", "length", ["length of cut", "loc", "cut length", "länge"]),
  word("side", "Side", ["straight", "inside", "outside"], ["wall"]),
  above("radialDepth", "Radial depth", "length", ["ae", "stepover", "woc", "width of cut"]),
  above("axialDepth", "Axial depth", "length", ["ap", "doc", "depth of cut", "stepdown"]),
  { ...whole("passes", "Passes", 1, ["no of passes", "schnitte"]), high: MOST_PASSES },
  { ...whole("springPasses", "Spring passes", 0, ["spring", "free passes", "leerschnitte"]), high: MOST_PASSES },
  above("stickOut", "Stick-out", "length", ["stickout", "overhang", "projection", "auskraglänge", "ausspannlänge"]),
  above("surfaceSpeed", "Surface speed", "surface speed", [
    "sfm",
    "vc",
    "cutting speed",
    "schnittgeschwindigkeit",
    "speed",
  ]),
  { ...above("feedPerTooth", "Feed per tooth", "length", ["ipt", "fz", "chip load", "zahnvorschub"]), format: FINE },
  above("maxRpm", "Max rpm", undefined, ["rpm max", "rpm limit"]),
  above("holeDepth", "Hole depth", "length", ["drill depth", "bohrtiefe"]),
  whole("batch", "Batch", 1, ["lot", "lot size", "order quantity", "losgröße"]),
  { ...from0("drillOversize", "Drilling oversize", "length", ["oversize", "drill oversize"]), format: FINE },
  from0("spacing", "Spacing", "length", ["hole spacing", "pitch of holes", "abstand"]),
  { key: "wearFactor", heading: "Wear factor", aliases: ["wear"], kind: "number", low: 1, high: 3 },
  above("measured", "Measured", "length", ["gauged", "istmaß"]),
  { key: "wearValue", heading: "Wear value", aliases: ["wear offset", "offset"], kind: "number", dimension: "length" },
  { ...above("sizeTolerance", "Size tolerance", "length", ["tolerance", "tol", "toleranz"]), format: FINE },
];

const out = (
  key: string,
  heading: string,
  dimension?: DimensionName,
  format?: readonly [string, string],
  unit?: string,
  aliases: string[] = [],
): Column => ({ key, heading, kind: dimension || format ? "number" : "text", dimension, format, unit, aliases });

/** What PLAN answers, in this order. */
export const RESULT_COLUMNS: readonly Column[] = [
  out("row", "Row"),
  out("verdict", "Verdict"),
  out("reasons", "Reasons"),
  out("limit", "Limit"),
  out("load", "Load", undefined, TWO),
  out("tool", "Tool"),
  out("startDiameter", "Start diameter", "length", LENGTH),
  out("drill", "Drill"),
  out("spindleSpeed", "Spindle speed", undefined, WHOLE, "1/min", ["rpm", "speed rpm", "s", "drehzahl", "n"]),
  out("surfaceSpeed", "Surface speed", "surface speed", ONE),
  out("feedPerTooth", "Feed per tooth", "length", ["0.0000", "0.00000"]),
  out("tableFeed", "Table feed", "feed", ["0", "0.0"], undefined, ["feed", "feed rate", "ipm", "vf", "f", "vorschub"]),
  out("radialDepth", "Radial depth", "length", FINE),
  out("chipThickness", "Chip thickness", "length", ["0.0000", "0.00000"]),
  out("passes", "Passes", undefined, WHOLE),
  out("springPasses", "Spring passes", undefined, WHOLE),
  out("depths", "Depths"),
  out("pathRadius", "Path radius", "length", FINE),
  out("neckGap", "Neck gap", "length", FINE),
  out("direction", "Direction"),
  out("force", "Force", "force", ONE),
  out("power", "Power", "power", TWO),
  out("deflection", "Deflection", "length", ["0.0000", "0.00000"]),
  out("stress", "Stress", undefined, TWO),
  out("majorDiameter", "Major diameter", "length", FINE),
  out("startZ", "Start Z", "length", FINE),
  out("endZ", "End Z", "length", FINE),
  out("size", "Size", "length", FINE),
  out("sizeMin", "Size min", "length", FINE),
  out("sizeMax", "Size max", "length", FINE),
  out("timeEach", "Time each", undefined, ONE, "s", ["cycle", "cycle each", "stückzeit"]),
  out("time", "Time", undefined, ONE, "s", ["cycle time", "zeit"]),
  out("cost", "Cost", undefined, TWO, "money"),
];

const plain = (
  key: string,
  heading: string,
  unit?: string,
  low?: number,
  isAbove = false,
  aliases: string[] = [],
): Column => ({
  key,
  heading,
  kind: "number",
  unit,
  low,
  above: isAbove,
  aliases,
});

export const MATERIAL_COLUMNS: readonly Column[] = [
  text("material", "Material", ["name", "werkstoff"]),
  word("group", "Group", ["p", "m", "k", "n", "s", "h"], ["iso 513", "iso group"]),
  text("hardness", "Hardness"),
  plain("kc11", "kc1.1 [MPa]", "MPa", 0, true, ["kc11", "kc1 1"]),
  { key: "exponent", heading: "Exponent", aliases: ["m", "mc"], kind: "number", low: 0, high: 0.9 },
  { key: "radialRatio", heading: "Radial ratio", kind: "number", low: 0, high: 2 },
  { key: "axialRatio", heading: "Axial ratio", kind: "number", low: 0, high: 2 },
  { key: "leastChip", heading: "Least chip", kind: "number", low: 0, high: 2 },
  plain("speedCarbideLow", "Speed carbide low [m/min]", "m/min", 0, true),
  plain("speedCarbideHigh", "Speed carbide high [m/min]", "m/min", 0, true),
  plain("speedHssLow", "Speed HSS low [m/min]", "m/min", 0, true),
  plain("speedHssHigh", "Speed HSS high [m/min]", "m/min", 0, true),
  plain("feed3", "Feed 3 mm [mm per tooth]", "mm", 0, true),
  plain("feed6", "Feed 6 mm [mm per tooth]", "mm", 0, true),
  plain("feed12", "Feed 12 mm [mm per tooth]", "mm", 0, true),
  { key: "taylorN", heading: "Taylor n", kind: "number", low: 0, above: true, high: 1 },
  plain("referenceLife", "Reference life [min]", "min", 0, true),
  text("source", "Source"),
];

const TOOL_KINDS = [
  "drill",
  "end mill",
  "ball end mill",
  "face mill",
  "thread mill single",
  "thread mill full",
] as const;
export type ToolKind = (typeof TOOL_KINDS)[number];

export const TOOL_COLUMNS: readonly Column[] = [
  text("tool", "Tool", ["name", "cutter"]),
  word("kind", "Kind", TOOL_KINDS, ["type"]),
  word("units", "Units", ["mm", "in"], ["unit"]),
  above("diameter", "Diameter", "length", ["dia", "ø"]),
  { ...whole("teeth", "Teeth", 1, ["flutes", "z"]), high: MOST_TEETH },
  above("cuttingLength", "Cutting length", "length", ["loc", "flute length"]),
  above("neckDiameter", "Neck diameter", "length", ["neck"]),
  above("neckLength", "Neck length", "length", ["reach"]),
  above("shankDiameter", "Shank diameter", "length", ["shank"]),
  above("stickOut", "Stick-out", "length", ["stickout", "overhang"]),
  from0("cornerRadius", "Corner radius", "length", ["radius"]),
  from0("tipFlat", "Tip flat", "length", ["flat"]),
  { key: "profileAngle", heading: "Profile angle", kind: "number", unit: "°", low: 0, above: true, high: 120 },
  { key: "helix", heading: "Helix", aliases: ["helix angle"], kind: "number", unit: "°", low: 0, high: 80 },
  { key: "pointAngle", heading: "Point angle", kind: "number", unit: "°", low: 30, high: 180 },
  from0("edgeRadius", "Edge radius", "length"),
  { key: "edgeAngle", heading: "Edge angle", kind: "number", unit: "°", low: 0, above: true, high: 90 },
  from0("tipToProfile", "Tip to profile", "length"),
  plain("ruptureStrength", "Rupture strength [MPa]", "MPa", 0, true),
  plain("modulus", "Modulus [GPa]", "GPa", 0, true),
  { key: "notchFactor", heading: "Notch factor", kind: "number", low: 1, high: 5 },
  from0("runout", "Runout", "length"),
  word("substrate", "Substrate", ["carbide", "hss"], ["tool material"]),
  above("pitch", "Pitch", "length"),
  plain("maxRpm", "Max rpm", "1/min", 0, true),
  plain("price", "Price", "money", 0),
  whole("edges", "Edges", 1),
];

export const MACHINE_COLUMNS: readonly Column[] = [
  text("machine", "Machine", ["name", "maschine"]),
  plain("minRpm", "Min rpm", "1/min", 0),
  plain("maxRpm", "Max rpm", "1/min", 0, true),
  plain("power", "Power [kW]", "kW", 0, true),
  plain("power30", "Power 30 min [kW]", "kW", 0, true),
  plain("torque", "Torque [N·m]", "N·m", 0, true),
  plain("maxFeed", "Max feed [m/min]", "m/min", 0, true),
  plain("rapid", "Rapid [m/min]", "m/min", 0, true),
  plain("acceleration", "Acceleration [m/s²]", "m/s²", 0, true),
  plain("toolChange", "Tool change [s]", "s", 0),
  plain("holderStiffness", "Holder stiffness [N/µm]", "N/µm", 0, true),
  { key: "damping", heading: "Damping", kind: "number", low: 0, above: true, high: 1 },
  plain("rate", "Rate [per hour]", "money/h", 0),
  plain("setup", "Setup [min]", "min", 0),
];

/** Unit hints that a heading may carry in brackets or as its last word. */
const UNIT_HINTS: Readonly<Record<string, "mm" | "in">> = {
  mm: "mm",
  "m/min": "mm",
  "mm/min": "mm",
  "mm/z": "mm",
  "mm/tooth": "mm",
  "mm per tooth": "mm",
  in: "in",
  inch: "in",
  inches: "in",
  '"': "in",
  sfm: "in",
  "ft/min": "in",
  "sfm ": "in",
  "in/min": "in",
  ipm: "in",
  ipt: "in",
  "in/tooth": "in",
};

/** Lower case, brackets off, punctuation to single spaces. */
export function normalHeading(heading: unknown): string {
  return String(heading ?? "")
    .toLowerCase()
    .replace(/[([{][^)\]}]*[)\]}]/g, " ")
    .replace(/[._:;,/\\\-–—#]+/g, " ")
    .replace(/\s+/g, " ")
    .trim();
}

/** The unit system a heading names, if it does: "Dia (mm)", "SFM", "Depth in". */
function headingUnits(heading: unknown): "mm" | "in" | undefined {
  const raw = String(heading ?? "")
    .trim()
    .toLowerCase();
  const bracket = /[([{]([^)\]}]*)[)\]}]/.exec(raw)?.[1]?.trim();
  if (bracket !== undefined && UNIT_HINTS[bracket]) return UNIT_HINTS[bracket];
  if (UNIT_HINTS[raw]) return UNIT_HINTS[raw];
  const last = /[\s,](mm|in|inch|m\/min|ft\/min|mm\/min|in\/min)$/.exec(raw)?.[1];
  return last ? UNIT_HINTS[last] : undefined;
}

export interface Match {
  /** Place of the column in the table, from 0. */
  readonly at: number;
  readonly heading: string;
  readonly column: Column;
  /** Unit system that the heading itself names; it beats the row's units. */
  readonly units?: "mm" | "in";
}

const wordsOf = (column: Column): string[] => [normalHeading(column.heading), ...(column.aliases ?? [])];
const tables = new WeakMap<readonly Column[], Map<string, Column>>();

/**
 * Which column is which. The canonical heading beats other spellings; the first of two equal headings counts.
 * A heading that ends in a unit ("Depth mm") is tried without it as well.
 */
export function matchHeadings(headings: readonly unknown[], columns: readonly Column[]): Match[] {
  let table = tables.get(columns);
  if (!table) {
    table = new Map();
    for (const column of columns) table.set(normalHeading(column.heading), column);
    for (const column of columns) for (const w of wordsOf(column)) if (!table.has(w)) table.set(w, column);
    tables.set(columns, table);
  }
  const found = new Map<string, Match & { exact: boolean }>();
  headings.forEach((heading, at) => {
    const normal = normalHeading(heading);
    if (normal === "") return;
    const column =
      table.get(normal) ?? table.get(normal.replace(/ (?:mm|in|inch|m min|ft min|mm min|in min|rpm)$/, ""));
    if (!column) return;
    const exact = normal === normalHeading(column.heading);
    const known = found.get(column.key);
    if (known && (known.exact || !exact)) return;
    found.set(column.key, { at, heading: String(heading), column, units: headingUnits(heading), exact });
  });
  return [...found.values()].map(({ at, heading, column, units }) => ({ at, heading, column, units }));
}
