/** What a row of the planning table may hold. One entry a column; the type of a row follows from them. */
import { above0, FINE, flag, free, length, length0, number, type RecordOf, text, whole, word } from "./quantity.ts";

/** Operations that a row can name. Each has its file in `operations/`; the index there holds exactly these. */
export const OPERATION_NAMES = [
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
export type OperationName = (typeof OPERATION_NAMES)[number];

/** More passes than this are a slip of the finger. */
export const MOST_PASSES = 200;

export const ROW = {
  row: free("Row"),
  feature: text("Feature"),
  operation: word("Operation", OPERATION_NAMES),
  units: word("Units", ["mm", "in"]),
  quantity: whole("Quantity", 1),
  material: text("Material"),
  machine: text("Machine"),
  tool: text("Tool"),
  thread: text("Thread"),
  startDiameter: length0("Start diameter"),
  finishDiameter: length("Finish diameter"),
  depth: length("Depth"),
  through: flag("Through"),
  hand: word("Hand", ["right", "left"]),
  way: word("Way", ["climb", "conventional"]),
  length: length("Length"),
  side: word("Side", ["straight", "inside", "outside"]),
  radialDepth: length("Radial depth"),
  axialDepth: length("Axial depth"),
  passes: whole("Passes", 1, { high: MOST_PASSES }),
  springPasses: whole("Spring passes", 0, { high: MOST_PASSES }),
  stickOut: length("Stick-out"),
  surfaceSpeed: above0("Surface speed", { dimension: "surface speed" }),
  feedPerTooth: length("Feed per tooth", FINE),
  maxRpm: above0("Max rpm"),
  holeDepth: length("Hole depth"),
  batch: whole("Batch", 1),
  /** How much the shop's drills cut over their size; blank: the handbook's mean. */
  drillOversize: length0("Drilling oversize", FINE),
  spacing: length0("Spacing"),
  wearFactor: number("Wear factor", { low: 1, high: 3 }),
  measured: length("Measured"),
  wearValue: number("Wear value", { dimension: "length" }),
  sizeTolerance: length("Size tolerance", FINE),
  /** Largest theoretical roughness Rz that is allowed. */
  roughness: above0("Roughness", { dimension: "roughness" }),
  /** What moves the chips; blank: flood. */
  coolant: word("Coolant", ["flood", "through", "air", "dry"]),
  /** Smallest inside corner of a straight wall: its radius. */
  insideCorner: length("Inside corner"),
  /** Tolerance class of ISO 286 on the finish diameter, such as H7. */
  sizeClass: text("Size class"),
  /** Width of the whole slot or face; wider than the cutter: passes side by side. */
  totalWidth: length("Total width"),
  /** What was assumed when the row was made. Shown, read by no operation. */
  remark: free("Remark"),
} as const;

export type Row = RecordOf<typeof ROW>;
export type RowKey = keyof typeof ROW;
