/**
 * Everything that a plan can find of a row: its code, how grave it is, and the values it comes with. No sentences:
 * those are made of these values in `words/`, where every code must have one. Codes are never renamed.
 */
import type { TradeError } from "./errors.ts";
import type { Coolant } from "./mill/chip-space.ts";
import type { ToolKind } from "./table/lists.ts";
import type { OperationName, RowKey } from "./table/rows.ts";
import type { WallFeedBy } from "./table/steps.ts";
import type { DimensionName } from "./units.ts";

export type Verdict = "ok" | "check" | "stop";
export const WEIGHT: Readonly<Record<Verdict, number>> = { stop: 2, check: 1, ok: 0 };

/** A value and the limit that it is held to, in the canonical unit of the finding's dimension. */
interface Against {
  readonly value: number;
  readonly limit: number;
}
/** A size that comes out between two ends, and its limits. */
interface Out {
  readonly of: SizeName;
  readonly least: number;
  readonly most: number;
  readonly low: number;
  readonly high: number;
}
interface Failed {
  readonly error: TradeError;
}
interface Listed {
  /** Name of the entry, and what is wrong in its row. */
  readonly about: string;
  readonly name: string;
  readonly error: TradeError;
}
interface Unknown {
  readonly name: string;
  readonly near: readonly string[];
}

interface Declared<F> {
  readonly severity: Verdict;
  readonly dimension?: DimensionName;
  /** Carries the type of the facts; never set. */
  readonly facts?: F;
}

/** `severity` is the gravest that the code has; a rule may say a lighter one. */
const finding = <F extends object = Record<never, never>>(
  severity: Verdict,
  dimension?: DimensionName,
): Declared<F> => ({ severity, dimension });

export const FINDINGS = {
  // cells and lists
  "bad-cell": finding<{ about: RowKey; error: TradeError }>("stop"),
  "units-blank": finding("stop"),
  "operation-blank": finding("stop"),
  "material-blank": finding("stop"),
  "machine-blank": finding("check"),
  "row-incomplete": finding<{ missing: readonly RowKey[] }>("stop"),
  "unknown-material": finding<Unknown>("stop"),
  "unknown-tool": finding<Unknown>("stop"),
  "unknown-machine": finding<Unknown>("stop"),
  "list-material": finding<Listed>("check"),
  "list-tool": finding<Listed>("check"),
  "list-machine": finding<Listed>("check"),
  "cannot-be-computed": finding<Failed>("stop"),
  fault: finding<{ what: string }>("stop"),
  // tools
  "tool-kind": finding<{ tool: string; kind: ToolKind; wanted: ToolKind | "thread mill" }>("stop"),
  "unknown-class": finding<Failed>("stop"),
  "tool-incomplete": finding<{ tool: string; missing: "diameter" | "teeth" | "tipFlat" }>("stop"),
  "tool-proposed": finding<{ tool: string; for: ProposedFor; thread?: string }>("ok"),
  "tool-assumed": finding<{ operation: OperationName }>("ok"),
  "no-tool-fits": finding<{
    operation: OperationName;
    kind?: ToolKind;
    thread?: string;
    material?: string;
    /** How many listed cutters fail for each first reason, most first. */
    misses?: readonly (readonly [Misfit, number])[];
  }>("stop"),
  "no-drill-listed": finding<{ size: number; pointAngle: number }>("check"),
  "wrong-drill": finding<Against & { tool: string; drill: string | null }>("stop", "length"),
  // speed and feed
  "no-speed": finding<{ material: string; hss: boolean }>("stop"),
  "no-feed": finding<{ material: string }>("stop"),
  "speed-under-machine": finding<Against>("check"),
  "speed-over-material": finding<Against>("check", "surface speed"),
  "speed-capped": finding<Against & { by: "machine" | "tool" | "row" }>("ok"),
  "feed-capped": finding<Against>("check", "feed"),
  "feed-not-reached": finding<Against>("check", "feed"),
  "hard-to-drill": finding<{ material: string }>("check"),
  "feed-over-list": finding<Against & { listed: number }>("stop", "length"),
  "chip-too-thin": finding<Against & { flank: boolean }>("check", "length"),
  "chip-too-thick": finding<Against & { listed: number; would: number }>("stop", "length"),
  "chip-under-list": finding<Against & { by: Exclude<WallFeedBy, "chip"> | "feed" | "arc" }>("ok", "length"),
  "list-insert-blank": finding<{ material: string; factor: number }>("ok"),
  "feed-held": finding<Against & { by: "machine" | "arc" }>("ok", "feed"),
  "feed-for-spindle": finding<Against>("ok", "length"),
  "list-thread-feed-blank": finding<{ material: string; percent: number }>("ok"),
  "list-thread-speed-blank": finding<{ material: string; factor: number }>("ok"),
  "feed-by-strength": finding<{ value: number; centre: number }>("ok", "length"),
  "runout-thick": finding<Against & { even: number; runout: number }>("check", "length"),
  "runout-idle": finding<Against & { runout: number }>("ok", "length"),
  // force, power, bending
  "no-kc": finding<{ bending: boolean }>("check"),
  "power-over": finding<Against & { most: number; short?: number }>("stop", "power"),
  "torque-over": finding<Against & { stalls?: boolean }>("stop", "torque"),
  "no-stick-out": finding<{ tool: string }>("check"),
  "stick-out": finding<Against & { ratio: number; most: number }>("check", "length"),
  "no-strength": finding<{ tool: string }>("ok"),
  "tool-stress": finding<Against & { nominal: number }>("stop", "stress"),
  // chatter, chips, surface
  chatter: finding<Against & { allows: number; nominal: number; measured: boolean; profiles?: number }>(
    "check",
    "length",
  ),
  "tip-modes-unreadable": finding<{ tool: string; text: string }>("check"),
  "slot-too-deep": finding<Against & { teeth: number; coolant: Coolant }>("stop", "length"),
  "gullet-full": finding<Against & { teeth: number }>("check"),
  roughness: finding<Against & { of: "wall" | "floor" }>("check", "roughness"),
  // size
  /** A slot wider than its cutter: its walls are made by later passes, and not judged. */
  "slot-widened": finding<Against & { passes: number; step: number }>("check", "length"),
  "no-size-tolerance": finding<{ error: number }>("ok", "length"),
  "size-out": finding<Against & Out & { scrap: boolean; start: number | null }>("stop", "length"),
  "size-may-be-out": finding<Against & Out & { start: number; typed: boolean }>("check", "length"),
  "gauge-first": finding<Against & { of: SizeName; start: number | null; typed: boolean }>("ok", "length"),
  "size-scatter": finding<Against & { of: SizeName }>("stop", "length"),
  "measured-out": finding<Against & { of: SizeName; scrap: boolean; change: number }>("stop", "length"),
  "wear-change": finding<{ measured: number; wanted: number; change: number; becomes?: number }>("ok", "length"),
  // threads
  "unknown-thread": finding<Failed>("stop"),
  "no-path": finding<Failed>("stop"),
  "profile-angle": finding<Against>("stop"),
  "pitch-differs": finding<Against>("stop", "length"),
  "blank-diameter": finding<Against & { low: number }>("stop", "length"),
  "flat-too-wide": finding<Against & { flat: number; inside: boolean; would: number | null }>("stop", "length"),
  "no-depth": finding<Against>("stop", "length"),
  "neck-rubs": finding<Against>("stop", "length"),
  "neck-tight": finding<Against>("check", "length"),
  "profile-shallow": finding<Against>("stop", "length"),
  "neck-short": finding<Against>("stop", "length"),
  "no-thread": finding<Against>("stop", "length"),
  "hole-too-shallow": finding<Against>("stop", "length"),
  // holes
  "hole-under-minor": finding<Against & { percent?: number; beyond?: boolean }>("stop", "length"),
  "hole-over-minor": finding<Against & { percent?: number }>("stop", "length"),
  "drill-too-short": finding<Against>("stop", "length"),
  "point-through-bottom": finding<Against>("stop", "length"),
  "too-deep": finding<Against & { diameters: number; most: number }>("stop", "length"),
  "flutes-full": finding<Against & { open: number }>("check", "length"),
  "drill-torsion": finding<Against & { nominal: number }>("stop", "torque"),
  "drill-buckles": finding<Against & { nominal: number }>("stop", "force"),
  "spot-first": finding<Against>("ok", "force"),
  "pilot-wanted": finding<Against & { diameter: number }>("check", "length"),
  "coolant-wanted": finding<Against>("check", "length"),
  "hole-runs-off": finding<{ drift: number }>("ok", "length"),
  "drilled-size-out": finding<Against & { low: number; high: number }>("stop", "length"),
  "drill-tolerance": finding<Against & { grade: number }>("check", "length"),
  "not-internal": finding<{ thread: string }>("stop"),
  "tap-differs": finding<Against & { tool: string; thread: string }>("stop", "length"),
  "tap-torsion": finding<Against & { nominal: number }>("stop", "torque"),
  "tap-hole-depth": finding<{ needed: number; chamfer: number }>("ok", "length"),
  "tap-bottoms": finding<Against & { chamfer: number }>("stop", "length"),
  "tap-deep": finding<Against & { most: number }>("check", "length"),
  "reamer-differs": finding<Against & { tool: string }>("stop", "length"),
  "reamer-in-air": finding<Against>("stop", "length"),
  "ream-stock": finding<Against & { least: number; most: number }>("stop", "length"),
  "reamer-bottoms": finding<Against & { lead: number }>("stop", "length"),
  "reamed-size": finding<Against & { low: number; high: number }>("stop", "length"),
  "countersink-small": finding<Against>("stop", "length"),
  "cone-angle": finding<Against & { angle: number }>("check", "length"),
  // reach
  "grips-flutes": finding<Against>("stop", "length"),
  "shank-hits": finding<Against & { part: "neck" | "shank" }>("stop", "length"),
  "holder-hits": finding<Against>("stop", "length"),
  // walls
  "cutter-too-large": finding<Against & { into: "hole" | "bore" | "arc" | "slot" }>("stop", "length"),
  "cutter-short": finding<Against>("stop", "length"),
  "no-stock": finding<Against>("stop", "length"),
  "radial-over-diameter": finding<Against & { operation: OperationName }>("stop", "length"),
  "arc-length": finding("ok"),
  "stock-handed": finding<Against & { row: string | number | null; stock: number }>("ok", "length"),
  "too-many-passes": finding<Against>("stop"),
  // time and money
  "no-time": finding("stop"),
  "no-cost": finding<Failed>("stop"),
  "acceleration-time": finding<Against & { more: number }>("ok"),
  "no-life": finding<Failed>("check"),
} satisfies Record<string, Declared<object>>;

export type FindingCode = keyof typeof FINDINGS;
export type FactsOf<C extends FindingCode> = NonNullable<(typeof FINDINGS)[C]["facts"]>;

/** What a tool is proposed for. */
export type ProposedFor = "drill" | "thread" | "wall" | "tap" | "reamer" | "countersink";

/** The size that a tolerance is on. */
export type SizeName = "pitch diameter" | "finished diameter" | "wall error";

/** The first thing that keeps a listed cutter from making a thread. */
export type Misfit =
  | "profile angle"
  | "pitch"
  | "too large"
  | "neck short"
  | "tip flat"
  | "profile height"
  | "neck rubs"
  | "crest"
  | "does not fit";

/** What a row is held to, each as a ratio. */
export type LimitKey =
  | "power"
  | "torque"
  | "stress"
  | "leastChip"
  | "deflection"
  | "scatter"
  | "feed"
  | "arcFeed"
  | "spindleSpeed"
  | "stickOut"
  | "chip"
  | "chatter"
  | "slotStep"
  | "roughness"
  | "torsion"
  | "buckling";
