/**
 * Every number of a row's chain: its dimension, formula in symbols, source, and the single worksheet function that gives it.
 * What the formula was called with comes with the number; what it is called in a person's language stands in `words/`.
 */
import type { SourceId } from "../sources.ts";
import type { DimensionName, Units } from "../units.ts";

/** A number with its dimension for a worksheet formula; plain numbers and words go as they are. */
export type CallArgument = number | string | boolean | readonly [number, DimensionName] | null | readonly Segment[];
/** Part of a tool, from the load to the holder [mm]. */
export interface Segment {
  readonly diameter: number;
  readonly length: number;
}
/** Name of a worksheet function and its arguments. */
export type Call = readonly [name: string, ...args: CallArgument[]];

export interface StepQuantity<F = never> {
  readonly dimension?: DimensionName;
  /** Unit when it is none of the dimensions: "1/min", "°", "s", "%". */
  readonly unit?: string;
  readonly source: SourceId | ((facts: F | undefined) => SourceId);
  /** In symbols; "" where there are none. */
  readonly formula: string | ((facts: F | undefined) => string);
  readonly call?: (facts: F, units: Units) => Call | null;
}

type More<F> = Omit<StepQuantity<F>, "source" | "formula">;
const step = <F = never>(
  formula: StepQuantity<F>["formula"],
  source: StepQuantity<F>["source"],
  more: More<F> = {},
): StepQuantity<F> => ({ formula, source, ...more });

const length = (value: number): CallArgument => [value, "length"];
type Side = "inside" | "outside";
/** What sets a feed. */
export type FeedBy = WallFeedBy | "contour" | "strength";
/** What sets the feed of a wall. */
export type WallFeedBy = "chip" | "tooth" | "finish" | "edge" | "spindle" | "row";
type Standard = "unified" | "metric" | "pipe";

/** A size of a thread by its standard. */
const threadSize = (element: "pitch" | "minor", limit: "min" | "max") =>
  step<{ thread: string; standard: Standard }>("", standardOf, {
    dimension: "length",
    call: (f, units) => ["THREADSIZE", f.thread, element, limit, units],
  });
const standardOf = (f: { standard: Standard } | undefined): SourceId =>
  f?.standard === "metric" ? "ISO965" : f?.standard === "pipe" ? "ISO228" : "ASMEB11";

interface DrillCut {
  readonly diameter: number;
  readonly perRev: number;
  readonly kc11: number;
  readonly exponent: number;
  readonly pointAngle: number;
  /** Chisel edge over the diameter. */
  readonly chisel: number;
  /** A core hole takes some of it away: no function gives that. */
  readonly cored: boolean;
}
/** The function's other arguments before the chisel ratio follow. */
const drillCall =
  (name: string, ...before: CallArgument[]) =>
  (f: DrillCut, units: Units): Call | null =>
    f.cored
      ? null
      : [
          name,
          length(f.diameter),
          length(f.perRev),
          [f.kc11, "stress"],
          f.exponent,
          units,
          f.pointAngle,
          ...before,
          f.chisel,
        ];

export const STEP = {
  // thread
  pitch: step<{ thread: string; standard: Standard }>("", standardOf, {
    dimension: "length",
    call: (f, units) => ["THREADLEAD", f.thread, units],
  }),
  pitchMin: threadSize("pitch", "min"),
  pitchMax: threadSize("pitch", "max"),
  minorMin: threadSize("minor", "min"),
  minorMax: threadSize("minor", "max"),
  startDiameter: step<{ oversize: number }>("", "COMMON", { dimension: "length" }),
  percent: step<{ thread: string; hole: number }>("100·(D − d)/(2·0.6495·P)", "MH", {
    unit: "%",
    call: (f, units) => ["THREADPERCENT", f.thread, length(f.hole), units],
  }),
  sweep: step("", "DERIVED", { dimension: "length" }),
  pathRadius: step<
    | { thread: string; cutter: number; flat: number; pitchDiameter?: number; side?: undefined }
    | { side: Side; thread?: undefined }
  >(
    (f) =>
      f?.side === undefined ? "D2/2 + (P/4 − f/2)·√3 − Dc/2" : f.side === "inside" ? "(Dm − Dc)/2" : "(Dm + Dc)/2",
    "DERIVED",
    {
      dimension: "length",
      call: (f, units) =>
        f.thread === undefined
          ? null
          : [
              "THREADPATH",
              f.thread,
              length(f.cutter),
              length(f.flat),
              units,
              f.pitchDiameter === undefined ? null : length(f.pitchDiameter),
            ],
    },
  ),
  majorDiameter: step("2·(path radius + Dc/2)", "DERIVED", { dimension: "length" }),
  minorDiameter: step("2·(path radius − Dc/2)", "DERIVED", { dimension: "length" }),
  neckGap: step<{ side: Side; thread?: string; hole: number; cutter: number; neck: number; flat: number }>(
    "",
    "DERIVED",
    {
      dimension: "length",
      call: (f, units) =>
        f.thread === undefined
          ? null
          : ["NECKCLEARANCE", f.thread, length(f.hole), length(f.cutter), length(f.neck), length(f.flat), units],
    },
  ),
  turns: step<{ full: boolean }>((f) => (f?.full ? "" : "depth/P + 1"), "COMMON"),
  startZ: step("", "COMMON", { dimension: "length" }),
  tipZ: step("", "COMMON", { dimension: "length" }),
  depths: step<{
    thread: string;
    start: number;
    flat: number;
    passes: number;
    springs: number;
    cutter: number;
  }>("t·(f + t·tan 30°)", "DERIVED", {
    dimension: "length",
    call: (f, units) => [
      "THREADPASSES",
      f.thread,
      length(f.start),
      length(f.flat),
      f.passes,
      units,
      f.springs,
      length(f.cutter),
    ],
  }),
  left: step("", "KLINE1982", { dimension: "length" }),
  // hole
  travel: step<{ depth: number; diameter: number; pointAngle: number; out: number }>("", "MH", {
    dimension: "length",
    call: (f) => ["DRILLTRAVEL", length(f.depth), length(f.diameter), f.pointAngle, length(f.out)],
  }),
  pecks: step("", "COMMON", { dimension: "length" }),
  torque: step<DrillCut>("M = K·f^0.8·D^1.8·A", "SHAW1957", { dimension: "torque", call: drillCall("DRILLTORQUE") }),
  thrust: step<DrillCut>("F = 2·K·f^0.8·D^0.8·B + K·D²·J", "SHAW1957", {
    dimension: "force",
    call: drillCall("DRILLTHRUST", null),
  }),
  breakingTorque: step<{ safety: number }>("", "SECTIONS", { dimension: "torque" }),
  buckling: step<{ safety: number }>("π²·E·I/(0.7·L)²", "SECTIONS", { dimension: "force" }),
  tapTorque: step<{
    thread: string;
    hole: number;
    kc11: number;
    exponent: number;
    chamferThreads: number;
    flutes: number;
  }>("M = 1.5·kc·A·r", "KIENZLE1952", {
    dimension: "torque",
    call: (f, units) => [
      "TAPTORQUE",
      f.thread,
      length(f.hole),
      [f.kc11, "stress"],
      f.exponent,
      units,
      f.chamferThreads,
      f.flutes,
    ],
  }),
  tappedHole: step<{ depth: number; pitch: number; chamfer: number }>("depth + chamfer·P", "ASMEB949", {
    dimension: "length",
  }),
  ringTorque: step<{ teeth: number }>("M = kc·f·(D² − d²)/8", "KIENZLE1952", { dimension: "torque" }),
  drillFeed: step<{ ten: number | undefined; depth: number; typed: boolean }>("f₁₀·(D/10)^0.8", "MH", {
    dimension: "length",
  }),
  // speed and feed
  speedRange: step<{ engaged: number }>("", (f) => (f && f.engaged !== 1 ? "TATAR2020" : "COMMON"), {
    dimension: "surface speed",
  }),
  spindleSpeed: step<{
    wanted: number;
    diameter: number;
    cap: number | null;
    by?: "machine" | "tool" | "row";
    slow: boolean;
  }>("n = 1000·vc/(π·D)", "MH", {
    unit: "1/min",
    call: (f, units) => (f.slow ? null : ["RPM", [f.wanted, "surface speed"], length(f.diameter), units, f.cap]),
  }),
  surfaceSpeed: step<{ rpm: number; diameter: number }>("vc = π·D·n/1000", "MH", {
    dimension: "surface speed",
    call: (f, units) => ["SURFACESPEED", f.rpm, length(f.diameter), units],
  }),
  edgeFeed: step<{ listed: number; by: FeedBy }>(
    (f) => (f?.by === "chip" ? "h/(sin κ·sin φe)" : ""),
    "MARTELLOTTI1941",
    { dimension: "length" },
  ),
  roughness: step<{ of: "wall" | "floor" }>((f) => (f?.of === "floor" ? "f²/(8·r)" : "f²/(8·ρ)"), "MARTELLOTTI1941", {
    dimension: "roughness",
  }),
  edgeTable: step<{ rpm: number; teeth: number; feed: number }>("n·z·fz", "MH", {
    dimension: "feed",
    call: (f) => ["TABLEFEED", f.rpm, f.teeth, length(f.feed)],
  }),
  tableFeed: step<
    | { rpm: number; teeth: number; feed: number; cap?: number; arc?: undefined }
    | { edge: number; finish: number; diameter: number; arc: Side }
    | { perTurn: "pitch" | "feed"; arc?: undefined; rpm?: undefined }
  >(
    (f) =>
      f?.arc === "inside"
        ? "edge feed·(Dm − Dc)/Dm"
        : f?.arc === "outside"
          ? "edge feed·(Dm + Dc)/Dm"
          : f !== undefined && "perTurn" in f
            ? f.perTurn === "pitch"
              ? "n·P"
              : "n·f"
            : "vf = n·z·fz",
    (f) => (f?.arc !== undefined ? "DERIVED" : f !== undefined && "perTurn" in f ? "COMMON" : "MH"),
    {
      dimension: "feed",
      call: (f) =>
        f.arc !== undefined
          ? ["ARCFEED", [f.edge, "feed"], length(f.finish), length(f.diameter), f.arc]
          : "perTurn" in f
            ? null
            : ["TABLEFEED", f.rpm, f.teeth, length(f.feed), f.cap === undefined ? null : [f.cap, "feed"]],
    },
  ),
  handed: step<{ row: string | number | null }>("", "KLINE1982", { dimension: "length" }),
  radialDepth: step<{ side: Side; from?: number; to?: number; diameter?: number }>(
    (f) =>
      f?.side === "inside"
        ? "(Dm² − Dw²)/(4·(Dm − Dc)), Dw ≥ |2·Dc − Dm|"
        : f?.side === "outside"
          ? "(Dw² − Dm²)/(4·(Dm + Dc))"
          : "",
    (f) => (f === undefined ? "COMMON" : "DERIVED"),
    {
      dimension: "length",
      call: (f) =>
        f.from === undefined ? null : ["ARCDEPTH", length(f.from), length(f.to!), length(f.diameter!), f.side],
    },
  ),
  chip: step<{
    feed: number;
    radialDepth: number;
    diameter: number;
    edgeAngle: number;
    held?: boolean;
    drill?: boolean;
  }>(
    (f) => (f?.drill ? "h = (f/2)·sin(point/2)" : "h = fz(centre)·sin κ·sin φe"),
    (f) => (f?.drill ? "MH" : "MARTELLOTTI1941"),
    {
      dimension: "length",
      call: (f) => ["CHIPTHICKNESS", length(f.feed), length(f.radialDepth), length(f.diameter), "max", f.edgeAngle],
    },
  ),
  mostChip: step<{ runout: number; teeth: number }>("min(m·h + q·sin(π·m/z))", "DERIVED", { dimension: "length" }),
  flankChip: step("h·sin(α/2)", "DERIVED", { dimension: "length" }),
  leastChip: step<{ fraction: number }>("", "COMMON", { dimension: "length" }),
  axialDepth: step<{ rise: boolean; levels: number; helix: boolean }>("", "COMMON", { dimension: "length" }),
  rise: step<{ typed: boolean; angle: number; share: number }>("", "COMMON", { dimension: "length" }),
  // force, power, bending
  force: step<{ thread: boolean }>("kc = kc1.1·h^−m", "KIENZLE1952", { dimension: "force" }),
  axialForce: step<{ ratio: number }>("Fa = Ka·mean Ft", "ALTINTAS", { dimension: "force" }),
  power: step<{ efficiency: number }>("P = 2π·n·T/(60000·η)", "MH", { dimension: "power" }),
  deflection: step<{
    thread: boolean;
    force: number;
    segments: readonly Segment[];
    modulus: number;
    holder?: number;
    poisson: number;
    /** A part is a cone: the two columns that are shown do not hold it. */
    cones?: boolean;
  }>("", "ROARK", {
    dimension: "length",
    call: (f, units) =>
      // The worksheet function's own Poisson's ratio is that of carbide.
      f.poisson !== 0.22 || f.cones
        ? null
        : [
            "TOOLDEFLECTION",
            [f.force, "force"],
            f.segments,
            units,
            [f.modulus, "modulus"],
            f.holder === undefined ? null : [f.holder, "stiffness"],
          ],
  }),
  stress: step<{ notch: number; allowed: number; safety: number }>("", "ROARK", { dimension: "stress" }),
  // size
  size: step<{ of: string; programmed: number; least: number; most: number }>(
    "",
    (f) => (f === undefined ? "MH" : "KLINE1982"),
    { dimension: "length" },
  ),
  scatter: step<{ share: number; other: number }>("", "COMMON", { dimension: "length" }),
  startWear: step("", "DERIVED", { dimension: "length" }),
  wearChange: step<{ measured: number; wanted: number; inside: boolean }>(
    (f) => (f?.inside === false ? "(wanted − measured)/2" : "(measured − wanted)/2"),
    "COMMON",
    {
      dimension: "length",
      call: (f) => (f.inside ? ["WEARCHANGE", length(f.measured), length(f.wanted)] : null),
    },
  ),
  // time, life, money
  timeEach: step<{ passes?: number; turns?: number }>("", "DERIVED", { unit: "s" }),
  time: step("", "COMMON", { unit: "s" }),
  life: step<{ speed: number; reference: number; life: number; exponent: number }>("V·T^n = C", "TAYLOR1907", {
    unit: "min",
    call: (f) => ["TOOLLIFE", f.speed, f.reference, f.life, f.exponent],
  }),
  toolCost: step("", "COMMON", { unit: "money" }),
  cost: step<{ time: number; rate: number; batch?: number; setup: number; toolCost: number; sharing: number }>(
    (f) => (f?.batch === undefined ? "rate·time/3600 + tool cost" : "rate·(time + setup/batch)/3600 + tool cost"),
    "COMMON",
    {
      unit: "money",
      call: (f) => ["PARTCOST", f.time, f.rate, f.batch ?? 1, f.setup, f.toolCost],
    },
  ),
} satisfies Record<string, StepQuantity<any>>;

export type StepKey = keyof typeof STEP;
export type StepFacts<K extends StepKey> = (typeof STEP)[K] extends StepQuantity<infer F> ? F : never;
