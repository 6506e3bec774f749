/** Arguments that make sense for every worksheet function, with their dimension: for property tests. Values in the "mm" column. */

/** What one unit of the "in" column is in the "mm" column (exact by definition: inch, pound, standard gravity). */
const POUND = 0.45359237 * 9.80665; // N
export const FACTOR = {
  length: 25.4,
  "surface speed": 0.3048,
  feed: 25.4,
  force: POUND,
  torque: (POUND * 25.4) / 1000,
  power: (550 * POUND * 0.3048) / 1000,
  "removal rate": 16.387064,
  stress: (1000 * POUND) / 645.16,
  modulus: (1000 * POUND) / 645.16,
  stiffness: POUND / 25.4,
  acceleration: 9.80665,
  density: 453.59237 / 16.387064,
  plain: 1,
} as const;
export type Dimension = keyof typeof FACTOR;

export type Kind =
  | {
      readonly name: string;
      readonly low: number;
      readonly high: number;
      readonly dimension: Dimension;
      readonly whole?: boolean;
    }
  | { readonly name: string; readonly words: readonly unknown[] }
  | { readonly name: string; readonly units: true }
  | { readonly name: string; readonly segments: true };

const number = (name: string, dimension: Dimension, low: number, high: number): Kind => ({
  name,
  low,
  high,
  dimension,
});
const whole = (name: string, low: number, high: number): Kind => ({ name, low, high, dimension: "plain", whole: true });
const words = (name: string, ...w: unknown[]): Kind => ({ name, words: w });
const L = (name: string, low: number, high: number) => number(name, "length", low, high);
const N = (name: string, low: number, high: number) => number(name, "plain", low, high);
const units: Kind = { name: "units", units: true };
const segments: Kind = { name: "segments", segments: true };
const thread = words("thread", "M10", "M10x1.25-6H", " m10 ", "3/8-16 UNC-2B", "3/8-24");
const kc11 = number("kc11", "stress", 600, 3000);
const exponent = N("exponent", 0.1, 0.4);
const modulus = number("modulus", "modulus", 200, 650);
const density = number("density", "density", 7, 15);
const acceleration = number("acceleration", "acceleration", 0.2, 8);
const ratio = N("radialRatio", 0, 0.6);
const side = words("side", "inside", "OUTSIDE ");
const figure = words("which", "peak", "mean", "peak tangential", "mean torque");
const sets = words("sets", "metric", "number letter fraction", "metric fraction");

export interface Spec {
  readonly params: readonly Kind[];
  /** Dimension of the answer; by the arguments where it depends on them. */
  readonly result: Dimension | "text" | ((values: readonly unknown[]) => Dimension);
}
const spec = (result: Spec["result"], ...params: Kind[]): Spec => ({ params, result });
const byFigure = (at: number) => (v: readonly unknown[]) => (v[at] === "mean torque" ? "torque" : "force") as Dimension;

export const PLAUSIBLE: Readonly<Record<string, Spec>> = {
  RPM: spec(
    "plain",
    number("surfaceSpeed", "surface speed", 10, 400),
    L("diameter", 1, 60),
    units,
    N("maxRpm", 500, 30000),
  ),
  SURFACESPEED: spec("surface speed", N("rpm", 10, 30000), L("diameter", 1, 60), units),
  TABLEFEED: spec(
    "length",
    N("rpm", 10, 30000),
    whole("teeth", 1, 8),
    L("feedPerTooth", 0.005, 0.3),
    L("maxFeed", 100, 20000),
  ),
  FEEDPERTOOTH: spec("length", L("tableFeed", 10, 9000), N("rpm", 10, 30000), whole("teeth", 1, 8)),
  REMOVALRATE: spec(
    "removal rate",
    L("radialDepth", 0.1, 20),
    L("axialDepth", 0.1, 20),
    number("tableFeed", "feed", 10, 9000),
    units,
  ),
  ENGAGEANGLE: spec("plain", L("radialDepth", 0.05, 4), L("diameter", 4, 20)),
  CHIPTHICKNESS: spec(
    "length",
    L("feedPerTooth", 0.005, 0.3),
    L("radialDepth", 0.05, 4),
    L("diameter", 4, 20),
    words("which", "max", "mean"),
    N("edgeAngle", 10, 90),
  ),
  THINNEDFEED: spec(
    "length",
    L("chipThickness", 0.005, 0.3),
    L("radialDepth", 0.05, 4),
    L("diameter", 4, 20),
    N("edgeAngle", 10, 90),
  ),
  BALLDIAMETER: spec("length", L("diameter", 4, 20), L("axialDepth", 0.05, 2), L("cornerRadius", 0, 2)),
  SCALLOP: spec("length", L("cornerRadius", 2, 10), L("stepover", 0.05, 4)),
  STEPOVER: spec("length", L("cornerRadius", 2, 10), L("scallop", 0.0005, 1.9)),
  ARCFEED: spec("length", L("edgeFeed", 10, 5000), L("arcDiameter", 21, 60), L("cutterDiameter", 2, 20), side),
  ARCDEPTH: spec(
    "length",
    L("startDiameter", 30, 30),
    L("finishDiameter", 30.5, 40),
    L("cutterDiameter", 2, 20),
    words("side", "inside"),
  ),
  THREADLEAD: spec("length", thread, units),
  THREADSIZE: spec("length", thread, words("element", "pitch", "minor"), words("limit", "min", "max", "BASIC"), units),
  THREADPERCENT: spec("plain", thread, L("holeDiameter", 7.5, 9.5), units),
  TAPDRILL: spec("length", thread, units, N("percent", 50, 90), sets),
  DRILLNAME: spec("text", L("diameter", 1, 12), units, sets),
  DRILLSIZE: spec("length", words("name", "#7", "f", "13/64", "5.1 mm"), units),
  NECKCLEARANCE: spec(
    "length",
    thread,
    L("holeDiameter", 8, 8.8),
    L("cutterDiameter", 4, 7.5),
    L("neckDiameter", 2, 4),
    L("tipFlat", 0, 0.12),
    units,
  ),
  THREADPATH: spec(
    "length",
    thread,
    L("cutterDiameter", 4, 7.5),
    L("tipFlat", 0, 0.12),
    units,
    L("pitchDiameter", 8.9, 9.2),
    words("sweep", true, false, "yes", 0),
  ),
  THREADPASSES: spec(
    "length",
    thread,
    L("holeDiameter", 8, 8.8),
    L("tipFlat", 0, 0.12),
    whole("passes", 1, 6),
    units,
    whole("springPasses", 0, 3),
    L("cutterDiameter", 4, 7.5),
    L("pitchDiameter", 8.9, 9.2),
  ),
  THREADSWEEP: spec("length", thread, L("cutterDiameter", 4, 7.5), L("tipFlat", 0, 0.12), units),
  OVERWIRES: spec(
    "length",
    words("thread", "M10-6g", "3/8-16 UNC-2A"),
    L("wireDiameter", 0.8, 1.2),
    units,
    L("pitchDiameter", 8.8, 9.1),
  ),
  BESTWIRE: spec("length", thread, units),
  BETWEENBALLS: spec("length", thread, L("ballDiameter", 0.8, 1.2), units, L("pitchDiameter", 8.8, 9.1)),
  WEARCHANGE: spec("length", L("measuredPitchDiameter", 8, 9), L("wantedPitchDiameter", 8, 9), N("gain", 0.3, 1)),
  SPECIFICFORCE: spec("stress", kc11, exponent, L("chipThickness", 0.005, 0.3), units, N("rakeAngle", -10, 20)),
  SPINDLEPOWER: spec(
    "power",
    number("removalRate", "removal rate", 0.1, 500),
    number("specificForce", "stress", 500, 5000),
    units,
    N("efficiency", 0.5, 1),
  ),
  SPINDLETORQUE: spec("torque", number("power", "power", 0.1, 20), N("rpm", 10, 30000), units),
  MILLFORCE: spec(
    byFigure(9),
    kc11,
    exponent,
    L("feedPerTooth", 0.01, 0.2),
    L("radialDepth", 0.1, 4),
    L("axialDepth", 0.5, 20),
    L("diameter", 4, 20),
    whole("teeth", 1, 6),
    N("helixAngle", 0, 45),
    units,
    figure,
    ratio,
  ),
  THREADMILLFORCE: spec(
    byFigure(11),
    thread,
    L("holeDiameter", 8, 8.4),
    L("cutterDiameter", 4, 7.5),
    L("tipFlat", 0, 0.12),
    L("feedPerTooth", 0.01, 0.1),
    whole("teeth", 1, 6),
    kc11,
    exponent,
    units,
    L("startDepth", 0, 0.3),
    L("endDepth", 0.35, 0.8),
    figure,
    ratio,
  ),
  DRILLTHRUST: spec(
    "force",
    L("diameter", 1, 20),
    L("feedPerRev", 0.02, 0.4),
    kc11,
    exponent,
    units,
    N("pointAngle", 90, 140),
    N("chiselFactor", 1, 2),
    N("chiselRatio", 0.02, 0.3),
  ),
  DRILLTORQUE: spec(
    "torque",
    L("diameter", 1, 20),
    L("feedPerRev", 0.02, 0.4),
    kc11,
    exponent,
    units,
    N("pointAngle", 90, 140),
    N("chiselRatio", 0.02, 0.3),
  ),
  TAPTORQUE: spec(
    "torque",
    thread,
    L("holeDiameter", 8, 9),
    kc11,
    exponent,
    units,
    N("chamferThreads", 1, 10),
    whole("flutes", 2, 6),
  ),
  CLASSSIZE: spec(
    "length",
    L("diameter", 1, 500),
    words("toleranceClass", "H7", "g6", "js9", "K7"),
    words("limit", "min", "max"),
    units,
  ),
  NECKDEFLECTION: spec(
    "length",
    number("force", "force", 1, 500),
    L("neckDiameter", 1, 8),
    L("neckLength", 2, 40),
    units,
    modulus,
    L("shankDiameter", 8, 16),
    L("shankLength", 5, 40),
  ),
  TOOLDEFLECTION: spec(
    "length",
    number("force", "force", 1, 500),
    segments,
    units,
    modulus,
    number("holderStiffness", "stiffness", 5, 80),
    words("shear", true, false),
    words("stepFlexibility", true, "no"),
  ),
  TOOLSTRESS: spec(
    "stress",
    number("force", "force", 1, 500),
    segments,
    units,
    number("torque", "torque", 0, 20),
    N("notchFactor", 1, 2),
  ),
  TOOLFREQUENCY: spec("plain", segments, units, modulus, density),
  STICKOUTLIMIT: spec(
    "length",
    number("force", "force", 1, 500),
    L("deflectionLimit", 0.001, 0.1),
    L("diameter", 2, 20),
    units,
    modulus,
  ),
  FORCELIMIT: spec("force", L("deflectionLimit", 0.001, 0.1), segments, units, modulus),
  STABLEDEPTH: spec(
    "length",
    N("rpm", 500, 20000),
    whole("teeth", 2, 6),
    L("radialDepth", 0.5, 4),
    L("diameter", 4, 20),
    number("kc", "stress", 700, 4000),
    segments,
    units,
    N("damping", 0.01, 0.08),
    ratio,
    modulus,
    density,
  ),
  DRILLPOINT: spec("length", L("diameter", 1, 20), N("pointAngle", 90, 180)),
  DRILLTRAVEL: spec(
    "length",
    L("depth", 1, 60),
    L("diameter", 1, 20),
    N("pointAngle", 90, 180),
    L("breakthrough", 0, 3),
  ),
  MOVETIME: spec(
    "plain",
    L("distance", 0, 500),
    number("feed", "feed", 10, 20000),
    acceleration,
    units,
    N("rampTime", 0, 0.2),
  ),
  ARCTIME: spec(
    "plain",
    L("radius", 0.2, 50),
    N("turns", 0, 10),
    number("feed", "feed", 10, 20000),
    acceleration,
    units,
    L("risePerTurn", -3, 3),
    N("rampTime", 0, 0.2),
  ),
  ARCFEEDLIMIT: spec("feed", L("radius", 0.2, 50), acceleration, units),
  TOOLLIFE: spec(
    "plain",
    N("speed", 20, 300),
    N("referenceSpeed", 50, 200),
    N("referenceLife", 5, 60),
    N("exponent", 0.1, 0.6),
  ),
  ECONOMICSPEED: spec(
    "plain",
    N("referenceSpeed", 50, 200),
    N("referenceLife", 5, 60),
    N("exponent", 0.1, 0.6),
    N("toolChangeTime", 1, 300),
    N("toolCost", 0.5, 50),
    N("rate", 20, 200),
  ),
  PARTCOST: spec(
    "plain",
    N("cycleTime", 1, 5000),
    N("rate", 0, 200),
    whole("batch", 1, 500),
    N("setupTime", 0, 9000),
    N("toolCostPerPart", 0, 20),
  ),
};

export const SEGMENTS: readonly (readonly (readonly number[])[])[] = [
  [[6, 20]],
  [
    [3.4, 12],
    [6, 18],
  ],
  [
    [8, 8, 20],
    [8, 12, 10],
    [12, 12, 15],
  ],
];

/** Functions on whole tables: small tables that make sense. */
export const TABLES: Readonly<Record<string, readonly (readonly unknown[])[]>> = {
  rows: [
    ["Row", "Operation", "Units", "Material", "Machine", "Tool", "Finish diameter", "Depth", "Batch"],
    [1, "drill", "mm", "Steel", "Mill", "Drill", 8, 12, 10],
    [2, "drill", "in", "Steel", "Mill", null, "5/16", 0.5, 10],
  ],
  materials: [
    [
      "Material",
      "kc1.1 [MPa]",
      "Exponent",
      "Least chip",
      "Speed carbide low [m/min]",
      "Speed carbide high [m/min]",
      "Feed 6 mm [mm per tooth]",
    ],
    ["Steel", 1700, 0.25, 0.3, 80, 160, 0.04],
  ],
  tools: [
    ["Tool", "Kind", "Units", "Diameter", "Teeth", "Cutting length", "Substrate"],
    ["Drill", "drill", "mm", 8, 2, 60, "carbide"],
  ],
  machines: [
    ["Machine", "Max rpm", "Power [kW]", "Max feed [m/min]", "Rapid [m/min]", "Acceleration [m/s²]", "Rate [per hour]"],
    ["Mill", 8000, 10, 10, 20, 2, 70],
  ],
  headings: [["Row", "Operation", "Units", "Material", "Machine", "Tool", "Finish diameter", "Depth", "Batch"]],
  row: [[1, "drill", "mm", "Steel", "Mill", "Drill", 8, 12, 10]],
  batch: [[25]],
  program: [["G21 G90"], ["S4000 M3"], ["G0 X0 Y0 Z5"], ["G1 Z-14.4 F400"], ["G0 Z5"], ["M30"]],
  toolZero: [["tip"]],
};
