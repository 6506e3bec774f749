/**
 * Which cells of a row can relieve which finding, the likeliest first. Exhaustive: a new finding must say what helps,
 * or that nothing in the row does (its way out then lies in a list, or outside the table).
 */
import type { FindingCode } from "../findings.ts";
import type { Lever } from "../operations/operation.ts";

const LIGHTER: readonly Lever[] = ["passes", "feedPerTooth", "stickOut", "tool", "radialDepth", "axialDepth"];
const TRUER: readonly Lever[] = [
  "wearValue",
  "springPasses",
  "passes",
  "stickOut",
  "tool",
  "feedPerTooth",
  "radialDepth",
];
const TOOL: readonly Lever[] = ["tool"];
const NONE: readonly Lever[] = [];

export const RELIEF: Readonly<Record<FindingCode, readonly Lever[]>> = {
  // cells and lists: only a person can say what was meant
  "bad-cell": NONE,
  "units-blank": NONE,
  "operation-blank": NONE,
  "material-blank": NONE,
  "machine-blank": NONE,
  "row-incomplete": NONE,
  "unknown-material": NONE,
  "unknown-tool": TOOL,
  "unknown-machine": ["machine"],
  "list-material": NONE,
  "list-tool": TOOL,
  "list-machine": ["machine"],
  "cannot-be-computed": ["tool", "startDiameter"],
  fault: NONE,
  // tools
  "tool-kind": TOOL,
  "tool-incomplete": TOOL,
  "tool-proposed": NONE,
  "tool-assumed": NONE,
  "no-tool-fits": ["startDiameter"],
  "no-drill-listed": NONE,
  "wrong-drill": TOOL,
  // speed and feed
  "no-speed": TOOL,
  "no-feed": NONE,
  "speed-under-machine": ["machine", "surfaceSpeed", "tool"],
  "speed-over-material": ["surfaceSpeed", "maxRpm"],
  "speed-capped": NONE,
  "feed-capped": ["feedPerTooth", "maxRpm", "surfaceSpeed", "machine", "tool"],
  "feed-not-reached": ["maxRpm", "surfaceSpeed", "feedPerTooth", "machine", "tool"],
  "chip-too-thin": ["feedPerTooth", "passes", "radialDepth", "tool"],
  "chip-too-thick": ["feedPerTooth", "tool"],
  "chip-under-list": NONE,
  "list-insert-blank": NONE,
  "feed-held": NONE,
  "feed-for-spindle": NONE,
  // chatter, chips, surface
  chatter: ["stickOut", "axialDepth", "radialDepth", "tool"],
  "tip-modes-unreadable": NONE,
  "slot-too-deep": ["axialDepth", "tool"],
  "flutes-full": ["feedPerTooth", "tool"],
  roughness: ["feedPerTooth", "tool"],
  "list-thread-feed-blank": NONE,
  "feed-by-strength": NONE,
  "runout-thick": ["feedPerTooth", "tool"],
  "runout-idle": NONE,
  // force, power, bending
  "no-kc": NONE,
  "power-over": ["axialDepth", "radialDepth", "feedPerTooth", "surfaceSpeed", "passes", "machine", "tool"],
  "torque-over": ["axialDepth", "radialDepth", "feedPerTooth", "passes", "machine", "tool"],
  "no-stick-out": ["stickOut", "tool"],
  "stick-out": ["stickOut", "tool"],
  "no-strength": NONE,
  "tool-stress": LIGHTER,
  // size
  "no-size-tolerance": NONE,
  "size-out": TRUER,
  "size-may-be-out": TRUER,
  "gauge-first": NONE,
  "size-scatter": ["stickOut", "tool", "springPasses", "passes", "feedPerTooth"],
  // The part is as it is: only the next one is helped, by the wear value that the finding names.
  "measured-out": NONE,
  "wear-change": NONE,
  // threads
  "unknown-thread": NONE,
  "no-path": TOOL,
  "profile-angle": TOOL,
  "pitch-differs": TOOL,
  "blank-diameter": ["startDiameter"],
  "flat-too-wide": TOOL,
  "no-thread": ["wearValue", "stickOut", "tool", "feedPerTooth"],
  "no-depth": ["startDiameter", "tool"],
  "neck-rubs": TOOL,
  "neck-tight": TOOL,
  "profile-shallow": ["tool", "startDiameter"],
  "neck-short": TOOL,
  "hole-too-shallow": ["holeDepth", "tool"],
  // holes
  "hole-under-minor": ["startDiameter", "tool"],
  "hole-over-minor": ["startDiameter", "tool"],
  "drill-too-short": TOOL,
  "point-through-bottom": ["holeDepth", "tool"],
  "too-deep": NONE,
  // walls
  "cutter-too-large": ["tool", "startDiameter"],
  "cutter-short": TOOL,
  "no-stock": ["startDiameter"],
  "radial-over-diameter": ["radialDepth", "tool"],
  "arc-length": NONE,
  "too-many-passes": ["radialDepth", "tool"],
  // time and money
  "no-time": NONE,
  "no-cost": NONE,
  "acceleration-time": NONE,
  "no-life": NONE,
};
