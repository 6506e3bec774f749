/** Rows as the comparison knows them, with round numbers that are exact in binary, so that a limit can be met to the last bit. */
import type { Hole, Round, Straight } from "../../src/program/shapes.ts";
import type {
  ArcShape,
  HoleShape,
  LineShape,
  RoundShape,
  RowFacts,
  Shape,
  ThreadShape,
} from "../../src/program/types.ts";

/** Internal right-hand thread in climb milling: pitch 1, from Z-2 up to Z0.5, cutter 4 on radii 2 and 3. */
export const THREAD: ThreadShape = {
  kind: "thread",
  inside: true,
  hand: "right",
  climb: true,
  counterClockwise: true,
  up: true,
  pitch: 1,
  depth: 2,
  radii: [2, 3],
  springs: 0,
  startZ: -2,
  endZ: 0.5,
  levels: [0],
  full: false,
  tipToProfile: 0.75,
  cutter: 4,
  start: 7,
  through: true,
};

/** Bore 30 mm from 26 mm, 8 deep, in one pass of a 10 mm cutter. */
export const ROUND: RoundShape = {
  kind: "round",
  inside: true,
  climb: true,
  counterClockwise: true,
  radii: [10],
  springs: 0,
  depth: 8,
  levels: 1,
  cutter: 10,
  start: 26,
  fall: 0,
};

/** Quarter of an outside wall of radius 5, 6 deep, with a 10 mm cutter on radius 10. */
export const ARC: ArcShape = {
  kind: "arc",
  inside: false,
  climb: true,
  counterClockwise: false,
  radii: [10],
  springs: 0,
  depth: 6,
  levels: 1,
  cutter: 10,
  start: 0,
  sweep: 90,
};

export const SLOT: LineShape = {
  kind: "line",
  what: "slot",
  climb: true,
  length: 40,
  over: 4,
  offsets: [0],
  springs: 0,
  depth: 6,
  levels: 3,
  cutter: 8,
};

export const SIDE: LineShape = { ...SLOT, what: "side", offsets: [6, 4], springs: 1, levels: 1 };

/** Drill 8 mm: full diameter to 10, its point 2 more. */
export const DRILL: HoleShape = {
  kind: "hole",
  what: "drill",
  bottoms: [-12],
  depth: 10,
  point: 2,
  out: 0,
  through: false,
  diameter: 8,
  hand: "right",
};

export const rowOf = (shape: Shape | undefined, more: Partial<RowFacts> = {}): RowFacts => ({
  index: 0,
  name: "1",
  units: "mm",
  quantity: 1,
  title: "",
  tool: "",
  verdict: "ok",
  reason: "",
  rpm: 1000,
  feed: 200,
  shape,
  ...more,
});

/** State in which something is cut: what a program of `rowOf` has. */
const CUT = { line: 1, segment: 1, offset: 540, rpm: 1000, spindle: 1, feed: 200 };

/** A level turn on radius 10 at Z-8. */
export const turnOf = (more: Partial<Round> = {}): Round => ({
  ...{ ...CUT, kind: "round", x: 0, y: 0, radius: 10, turn: 1, degrees: 360, z0: -8, z1: -8, compensation: 0 },
  ...{ switched: false, uneven: 0, unevenLine: 0 },
  ...more,
});
/** A hole drilled to Z-12 by a cycle. */
export const holeOf = (more: Partial<Hole> = {}): Hole => ({
  ...{ ...CUT, kind: "hole", x: 0, y: 0, top: 2, bottom: -12, strokes: 1, cycle: 81, compensation: 0 },
  ...{ reversed: false },
  ...more,
});
/** A straight cut of 44 mm along X at Z-6. */
export const cutOf = (more: Partial<Straight> = {}): Straight => ({
  ...{ ...CUT, kind: "line", x0: 0, y0: 0, x1: 44, y1: 0, z: -6, compensation: 0 },
  ...more,
});
