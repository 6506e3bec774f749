/**
 * From a planned row to what the words of a program need. The only file here that knows how a plan is made: results
 * by their keys, and the wall's levels and helical entry from the operation itself.
 */
import { drillTravel, pointLength } from "../drill/point.ts";
import { TradeError } from "../errors.ts";
import { breakthroughOf } from "../operations/shared/motion.ts";
import { diameterAt, type Wall } from "../operations/shared/wall/wall.ts";
import { type Blocks, planRows } from "../plan/table.ts";
import type { Tool } from "../table/lists.ts";
import { type Lists, type ReadRow, readLists, readRows } from "../table/read.ts";
import type { OperationName, Row } from "../table/rows.ts";
import { parseThread } from "../thread/designation.ts";
import type { RowPlan } from "../words/worded.ts";
import {
  type ArcShape,
  type HoleShape,
  type LineShape,
  MOST_ROUNDS,
  type RoundShape,
  type RowFacts,
  type Shape,
  type ThreadShape,
} from "./types.ts";

/** Point of a drill that the list does not describe [deg]. */
const POINT_ANGLE = 118;
/** A full-profile cutter counts as reaching this share of a pitch further than it does: rounding of its length. */
const REACH_SLACK = 0.02;

/** Operations that a thread names. */
const THREADED: ReadonlySet<OperationName | undefined> = new Set(["thread mill", "tap", "drill"] as const);

/** Facts of every row of a table that has any content. */
export function tableFacts(blocks: Blocks): RowFacts[] {
  const lists = readLists(blocks.materials, blocks.tools, blocks.machines);
  const rows = readRows(blocks.rows);
  const lines = planRows(rows, lists, false);
  return rows.flatMap((read, i) => {
    const plan = lines[i];
    return plan === undefined ? [] : [rowFacts(read, plan, lists, i)];
  });
}

/** Facts of one row from its plan. */
export function rowFacts(read: ReadRow, plan: RowPlan, lists: Lists, index: number): RowFacts {
  const { row } = read;
  const toolName = plan.plain.tool || undefined;
  const tool = toolName === undefined ? undefined : lists.tools.find(toolName);
  const rpm = number(plan, "spindleSpeed");
  const feed = number(plan, "tableFeed");
  const meant = rpm !== undefined && feed !== undefined ? safeShape(read, plan, tool) : undefined;
  const rounds = meant === undefined ? 0 : roundsOf(meant);
  const shape = rounds > MOST_ROUNDS ? undefined : meant;
  const machine = row.machine === undefined ? undefined : lists.machines.find(row.machine);
  const caps = (
    [
      ["machine", machine?.maxRpm],
      ["tool", tool?.maxRpm],
      ["row", row.maxRpm],
    ] as const
  ).flatMap(([of, value]) => (value === undefined ? [] : [{ of, value }]));
  const perTooth = number(plan, "feedPerTooth");
  const curved = shape !== undefined && shape.kind !== "hole" && shape.kind !== "line";
  // A wear value moves the path of a wall that has a size.
  const worn = shape !== undefined && shape.kind !== "hole" && (shape.kind !== "line" || shape.what === "side");
  return {
    index,
    name: plan.row === null || plan.row === "" ? String(index + 1) : String(plan.row),
    operation: row.operation,
    units: plan.units,
    quantity: row.quantity ?? 1,
    title: (THREADED.has(row.operation) ? row.thread : undefined) ?? row.feature ?? "",
    tool: toolName ?? "",
    verdict: plan.verdict,
    reason: plan.reasons[0] !== undefined && plan.verdict !== "ok" ? plan.reasons[0].text : "",
    rpm,
    mostRpm: caps.sort((a, b) => a.value - b.value)[0],
    feed,
    edgeFeed:
      curved && perTooth !== undefined && tool?.teeth !== undefined && rpm !== undefined
        ? perTooth * tool.teeth * rpm
        : undefined,
    wearValue: worn ? row.wearValue : undefined,
    rounds: rounds > MOST_ROUNDS ? rounds : undefined,
    shape,
  };
}

/** How often the tool goes around or along, over all passes and levels. */
function roundsOf(shape: Shape): number {
  switch (shape.kind) {
    case "thread":
      return (Math.abs(shape.endZ - shape.startZ) / shape.pitch) * shape.levels.length * shape.radii.length;
    case "round":
      return (shape.fall > 0 ? shape.depth / shape.fall : 0) + shape.levels * shape.radii.length;
    case "arc":
      return shape.levels * shape.radii.length;
    case "line":
      return shape.levels * shape.offsets.length;
    case "hole":
      return shape.bottoms.length;
  }
}

type NumberKey = {
  [K in keyof RowPlan["plain"]]-?: NonNullable<RowPlan["plain"][K]> extends number ? K : never;
}[keyof RowPlan["plain"]];

function number({ plain }: RowPlan, key: NumberKey): number | undefined {
  const value = plain[key];
  return typeof value === "number" && Number.isFinite(value) ? value : undefined;
}

/** Radial depth after each pass [mm]. */
function depthsOf({ plain: { depths } }: RowPlan): readonly number[] {
  return depths && !("pecks" in depths) ? depths : [];
}

/** A row whose sizes no formula takes has no shape; its plan says why. */
function safeShape(read: ReadRow, plan: RowPlan, tool: Tool | undefined): Shape | undefined {
  try {
    return shapeOf(read, plan, tool);
  } catch (error) {
    if (error instanceof TradeError) return undefined;
    throw error;
  }
}

function shapeOf(read: ReadRow, plan: RowPlan, tool: Tool | undefined): Shape | undefined {
  const { row } = read;
  switch (row.operation) {
    case undefined:
      return undefined;
    case "thread mill":
      return tool && threadShape(row, plan, tool);
    case "drill":
    case "tap":
    case "ream":
    case "countersink":
      return holeShape(row, row.operation, plan, tool);
    case "bore":
    case "boss":
    case "counterbore":
    case "slot":
    case "side":
    case "face":
      return tool && wallShape(read, plan, tool);
    default:
      // An operation that is added says here what a program of it runs along, or it does not compile.
      return row.operation satisfies never;
  }
}

/** Radii of the passes from the depths: the last one is the path's own, the others stand off by what is left to cut. */
function radiiFrom(final: number, depths: readonly number[], inside: boolean): number[] {
  const full = depths[depths.length - 1];
  if (full === undefined) return [final];
  return depths.map((d) => final + (inside ? d - full : full - d));
}

function threadShape(row: Row, plan: RowPlan, tool: Tool): ThreadShape | undefined {
  const final = number(plan, "pathRadius");
  const startZ = number(plan, "startZ");
  const endZ = number(plan, "endZ");
  const { direction } = plan.plain;
  const { depth } = row;
  if (final === undefined || startZ === undefined || endZ === undefined || direction?.path !== "circle")
    return undefined;
  if (row.thread === undefined || depth === undefined || tool.diameter === undefined) return undefined;
  const thread = parseThread(row.thread, "Thread");
  const pitch = thread.pitch * (thread.native === "in" ? 25.4 : 1);
  const inside = thread.kind === "internal";
  const low = number(plan, "sizeMin");
  const high = number(plan, "sizeMax");
  return {
    kind: "thread",
    inside,
    hand: row.hand ?? thread.hand,
    climb: (row.way ?? "climb") === "climb",
    counterClockwise: direction.turn === "counter-clockwise",
    up: direction.axis === "up",
    pitch,
    depth,
    radii: radiiFrom(final, depthsOf(plan), inside),
    springs: number(plan, "springPasses") ?? 0,
    startZ,
    endZ,
    levels: tool.kind === "thread mill full" ? levelsOf(depth, pitch, tool.cuttingLength ?? depth) : [0],
    full: tool.kind === "thread mill full",
    tipToProfile: tool.tipToProfile ?? 0,
    cutter: tool.diameter,
    start: number(plan, "startDiameter") ?? 0,
    limits: low !== undefined && high !== undefined ? [low, high] : undefined,
    holeDepth: row.holeDepth,
    through: row.through ?? false,
  };
}

/** Levels of a full-profile cutter, whole pitches apart so that the turns meet. */
function levelsOf(depth: number, pitch: number, reach: number): number[] {
  const step = Math.max(1, Math.floor(reach / pitch + REACH_SLACK)) * pitch;
  const count = 1 + Math.max(0, Math.ceil((depth - reach) / step - REACH_SLACK));
  return Array.from({ length: Math.min(count, MOST_ROUNDS + 1) }, (_, k) => k * step);
}

function wallShape(read: ReadRow, plan: RowPlan, tool: Tool): RoundShape | ArcShape | LineShape | undefined {
  const { row } = read;
  const depths = depthsOf(plan);
  const { diameter } = tool;
  if (diameter === undefined || depths.length === 0) return undefined;
  if (plan.path?.kind !== "wall") return undefined;
  const { wall } = plan.path;
  const climb = (row.way ?? "climb") === "climb";
  const springs = number(plan, "springPasses") ?? 0;
  if (wall.side === "straight") return lineShape(row, wall, diameter, depths, springs, climb);
  const inside = wall.side === "inside";
  const common = {
    inside,
    climb,
    counterClockwise: inside === climb,
    radii: depths.map((gone, i) => {
      const at = exactEnd(wall, gone, i >= depths.length - 1 - springs);
      return inside ? (at - diameter) / 2 : (at + diameter) / 2;
    }),
    springs,
    depth: wall.depth,
    levels: wall.levels,
    cutter: diameter,
    start: wall.start ?? 0,
    tolerance: row.sizeTolerance,
  };
  if (wall.circles) return { kind: "round", fall: wall.rise, ...common };
  return { kind: "arc", sweep: Math.min(360, (360 * (wall.length ?? 0)) / (Math.PI * wall.finish!)), ...common };
}

/** Diameter after a pass; the last pass makes the finished size, whatever rounding its written depth has. */
const exactEnd = (wall: Wall, gone: number, last: boolean) => (last ? wall.finish! : diameterAt(wall, gone));

function lineShape(
  row: Row,
  wall: Wall,
  diameter: number,
  depths: readonly number[],
  springs: number,
  climb: boolean,
): LineShape {
  const what = row.operation === "slot" || row.operation === "face" ? row.operation : "side";
  const away = climb ? 1 : -1;
  const beside = offsetsBeside(what, wall);
  return {
    kind: "line",
    what,
    climb,
    length: wall.length!,
    over: what === "face" ? diameter : diameter / 2,
    // Travel along +X: a climb cut has the wall on its right, so the cutter stands at plus Y of it.
    offsets:
      what === "side"
        ? depths.map((gone) => away * (diameter / 2 + wall.stock - gone))
        : [...depths.slice(0, depths.length - beside.length).map(() => 0), ...beside],
    springs,
    depth: wall.depth,
    levels: wall.levels,
    cutter: diameter,
  };
}

/** Where the passes beside the first one run: strips of a face one after another, walls of a slot in turn, outwards [mm]. */
function offsetsBeside(what: LineShape["what"], { beside = [], stock }: Wall): number[] {
  const step = (beside[0] ?? stock) - stock;
  if (what === "face") return beside.map((_, i) => (i + 1) * step);
  return beside.map((_, i) => (i % 2 === 0 ? 1 : -1) * (Math.floor(i / 2) + 1) * step);
}

function holeShape(row: Row, what: HoleShape["what"], plan: RowPlan, tool: Tool | undefined): HoleShape | undefined {
  const thread = !THREADED.has(what) || row.thread === undefined ? undefined : parseThread(row.thread, "Thread");
  const major = thread && thread.major * (thread.native === "in" ? 25.4 : 1);
  const diameter = what === "tap" ? major : (tool?.diameter ?? row.finishDiameter);
  const through = row.through ?? false;
  const drill = what === "drill" ? (diameter ?? speedDiameter(plan)) : diameter;
  const depth = row.depth ?? (what === "countersink" && drill !== undefined ? drill / 2 : undefined);
  if (drill === undefined || depth === undefined) return undefined;
  const common = { kind: "hole" as const, what, depth, through, diameter: drill };
  if (what !== "drill") {
    const out = what === "countersink" ? 0 : breakthroughOf(through);
    const hand = what === "tap" ? (row.hand ?? thread?.hand ?? "right") : "right";
    return { ...common, hand, bottoms: [-(depth + out)], point: 0, out };
  }
  const angle = tool?.pointAngle ?? POINT_ANGLE;
  const out = breakthroughOf(through);
  const reached = plan.path?.kind === "pecks" ? plan.path.bottoms : [drillTravel(depth, drill, angle, out)];
  const bottoms = reached.map((z) => -z);
  return { ...common, hand: "right", bottoms, point: pointLength(drill, angle), out };
}

/** Diameter of a drill that the list does not hold, from its surface speed: D = 1000·vc/(π·n) [mm]. */
function speedDiameter(plan: RowPlan): number | undefined {
  const rpm = number(plan, "spindleSpeed");
  const speed = number(plan, "surfaceSpeed");
  return rpm === undefined || speed === undefined || rpm === 0 ? undefined : (1000 * speed) / (Math.PI * rpm);
}
