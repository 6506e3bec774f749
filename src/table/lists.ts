/** What the shop's lists hold: materials, tools, machines. The types of their entries follow from the columns. */
import { MOST_TEETH } from "../mill/turn.ts";
import { above0, flag, free, from0, length, length0, number, type RecordOf, text, whole, word } from "./quantity.ts";

export const MATERIAL = {
  material: text("Material"),
  /** Workpiece material groups of ISO 513. */
  group: word("Group", ["p", "m", "k", "n", "s", "h"]),
  hardness: text("Hardness"),
  kc11: above0("kc1.1 [MPa]", { unit: "MPa" }),
  exponent: number("Exponent", { low: 0, high: 0.9 }),
  radialRatio: number("Radial ratio", { low: 0, high: 2 }),
  axialRatio: number("Axial ratio", { low: 0, high: 2 }),
  leastChip: number("Least chip", { low: 0, high: 2 }),
  /** Advance of a thread mill's edge along the thread per tooth, in percent of its diameter. */
  threadFeed: above0("Thread feed [% of diameter]", { unit: "%", high: 10 }),
  speedCarbideLow: above0("Speed carbide low [m/min]", { unit: "m/min" }),
  speedCarbideHigh: above0("Speed carbide high [m/min]", { unit: "m/min" }),
  speedHssLow: above0("Speed HSS low [m/min]", { unit: "m/min" }),
  speedHssHigh: above0("Speed HSS high [m/min]", { unit: "m/min" }),
  feed3: above0("Feed 3 mm [mm per tooth]", { unit: "mm" }),
  feed6: above0("Feed 6 mm [mm per tooth]", { unit: "mm" }),
  feed12: above0("Feed 12 mm [mm per tooth]", { unit: "mm" }),
  feed20: above0("Feed 20 mm [mm per tooth]", { unit: "mm" }),
  /** Inserted teeth have values of their own. */
  feedInsert: above0("Feed insert [mm per tooth]", { unit: "mm" }),
  speedInsertLow: above0("Speed insert low [m/min]", { unit: "m/min" }),
  speedInsertHigh: above0("Speed insert high [m/min]", { unit: "m/min" }),
  /** Carbide thread mills cut with their whole profile on a thin neck; blank: a stated share of the milling values. */
  speedThreadLow: above0("Speed thread mill low [m/min]", { unit: "m/min" }),
  speedThreadHigh: above0("Speed thread mill high [m/min]", { unit: "m/min" }),
  /** Drills have speeds and feeds of their own; blank: a stated share of the milling values. */
  drillSpeedCarbide: above0("Drill speed carbide [m/min]", { unit: "m/min" }),
  drillSpeedHss: above0("Drill speed HSS [m/min]", { unit: "m/min" }),
  drillFeedCarbide: above0("Drill feed carbide [mm per turn at 10 mm]", { unit: "mm" }),
  drillFeedHss: above0("Drill feed HSS [mm per turn at 10 mm]", { unit: "mm" }),
  taylorN: above0("Taylor n", { high: 1 }),
  referenceLife: above0("Reference life [min]", { unit: "min" }),
  /** Edge (ploughing) force per length of edge, where it was measured; the starting list does without. */
  edgeTangential: from0("Kte [N/mm]", { unit: "N/mm" }),
  edgeRadial: from0("Kre [N/mm]", { unit: "N/mm" }),
  /** Largest real chips over the listed one: to be looked at, and where edges break. Blank: 1.1 and 2. */
  thickChip: number("Thick chip [of feed]", { low: 1, high: 5 }),
  breakingChip: number("Breaking chip [of feed]", { low: 1, high: 10 }),
  /** Deepest step of a full slot with up to three flutes and flood coolant. Blank: by group, from 0.2 to 1. */
  slotStep: above0("Slot step [of diameter]", { high: 5 }),
  /** Other names that it is found by, several with ";" between them: numbers and short names of open standards. */
  designations: text("Designations"),
  source: free("Source"),
} as const;
export type Material = RecordOf<typeof MATERIAL> & { readonly material: string };

const TOOL_KINDS = [
  "drill",
  "end mill",
  "ball end mill",
  "face mill",
  "thread mill single",
  "thread mill full",
  "tap",
  "reamer",
  "countersink",
] as const;
export type ToolKind = (typeof TOOL_KINDS)[number];

export const TOOL = {
  tool: text("Tool"),
  kind: word("Kind", TOOL_KINDS),
  units: word("Units", ["mm", "in"]),
  diameter: length("Diameter"),
  teeth: whole("Teeth", 1, { high: MOST_TEETH }),
  cuttingLength: length("Cutting length"),
  neckDiameter: length("Neck diameter"),
  neckLength: length("Neck length"),
  shankDiameter: length("Shank diameter"),
  stickOut: length("Stick-out"),
  cornerRadius: length0("Corner radius"),
  tipFlat: length0("Tip flat"),
  profileAngle: above0("Profile angle", { unit: "°", high: 120 }),
  helix: number("Helix", { unit: "°", low: 0, high: 80 }),
  pointAngle: number("Point angle", { unit: "°", low: 30, high: 180 }),
  edgeRadius: length0("Edge radius"),
  edgeAngle: above0("Edge angle", { unit: "°", high: 90 }),
  tipToProfile: length0("Tip to profile"),
  ruptureStrength: above0("Rupture strength [MPa]", { unit: "MPa" }),
  modulus: above0("Modulus [GPa]", { unit: "GPa" }),
  notchFactor: number("Notch factor", { low: 1, high: 5 }),
  runout: length0("Runout"),
  substrate: word("Substrate", ["carbide", "hss"]),
  pitch: length("Pitch"),
  /** Chamfer of a tap in pitches: bottoming 1 to 2, plug 3 to 5, taper 7 to 10. */
  chamfer: above0("Chamfer [pitches]", { high: 15 }),
  maxRpm: above0("Max rpm", { unit: "1/min" }),
  price: from0("Price", { unit: "money" }),
  edges: whole("Edges", 1),
  /** Rupture strength over the stress that is allowed. Blank: 3. */
  safetyFactor: number("Safety factor", { low: 1, high: 10 }),
  /** Stick-out over diameter from which a row is to be looked at. Blank: 4. */
  stickOutLimit: number("Stick-out limit [of diameter]", { low: 1, high: 20 }),
  /** Measured modes of the tip, each as frequency [Hz] / stiffness [N/µm] / damping, several with ";" between them. */
  tipModesX: text("Tip modes x"),
  tipModesY: text("Tip modes y"),
  /** Machine that they were measured on; blank: all. */
  tipModesOn: text("Tip modes on"),
  /** Neck that is a cone: its diameter where it meets the shank. */
  neckEndDiameter: length("Neck end diameter"),
  /** Nose of the holder: what would meet the part, and how long it is before it grows thicker. */
  holderDiameter: length("Holder diameter"),
  holderLength: length("Holder length"),
  coolantThrough: flag("Coolant through"),
  /** Chisel edge of a drill over its diameter: standard 0.18, split 0.03. */
  chiselRatio: number("Chisel ratio", { low: 0, high: 0.4 }),
  /** Tolerance class of the hole that a reamer makes; blank: H7. */
  sizeClass: text("Size class"),
} as const;
export type Tool = RecordOf<typeof TOOL> & { readonly tool: string };

export const MACHINE = {
  machine: text("Machine"),
  minRpm: from0("Min rpm", { unit: "1/min" }),
  maxRpm: above0("Max rpm", { unit: "1/min" }),
  power: above0("Power [kW]", { unit: "kW" }),
  /** Rating for 30 min, where the machine has one. */
  power30: above0("Power 30 min [kW]", { unit: "kW" }),
  torque: above0("Torque [N·m]", { unit: "N·m" }),
  maxFeed: above0("Max feed [m/min]", { unit: "m/min" }),
  rapid: above0("Rapid [m/min]", { unit: "m/min" }),
  acceleration: above0("Acceleration [m/s²]", { unit: "m/s²" }),
  toolChange: from0("Tool change [s]", { unit: "s" }),
  holderStiffness: above0("Holder stiffness [N/µm]", { unit: "N/µm" }),
  damping: above0("Damping", { high: 1 }),
  rate: from0("Rate [per hour]", { unit: "money/h" }),
  setup: from0("Setup [min]", { unit: "min" }),
  /** Time in which the acceleration builds up: acceleration over jerk. */
  rampTime: from0("Ramp time [s]", { unit: "s", high: 1 }),
  /** Measured cycle over the planned one. */
  cycleFactor: number("Cycle factor", { low: 0.5, high: 3 }),
  /** Share of the size tolerance that bending may use unsaid. Blank: 50. */
  bendingShare: above0("Bending share [%]", { unit: "%", high: 100 }),
  /** Share of the bending that changes from part to part. Blank: 15. */
  sizeScatter: above0("Size scatter [%]", { unit: "%", high: 100 }),
  /** Half of what a tool's place changes by from one seat in the spindle to the next. Blank: 0.0015. */
  seatRepeats: above0("Seat repeats [mm]", { unit: "mm", high: 0.1 }),
  /** How much warmer or colder a part is cut than the one that was gauged. Blank: 3. */
  warmer: above0("Part warmth [K]", { unit: "K", high: 50 }),
  /** How many times the depth that a plain holder allows at every speed a cut may have. Blank: 100. */
  chatterRatio: above0("Chatter ratio", { high: 1e6 }),
} as const;
export type Machine = RecordOf<typeof MACHINE> & { readonly machine: string };
