/**
 * The path of the cutter's centre that a row means: half a circle in, turns on the path, half a circle out; pecks of a
 * hole; straight cuts. X Y are from the feature's centre (straight cuts: from the start of the cut and its wall).
 */
import { CLEARANCE } from "../operations/shared/choices.ts";
import type { ArcShape, HoleShape, LineShape, RoundShape, Shape, ThreadShape, ToolZero } from "./types.ts";

/** One move to (x, y, z); arcs have their centre at (i, j) from where they start. `at` tells what it belongs to. */
export interface PathMove {
  readonly g: 0 | 1 | 2 | 3;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly i?: number;
  readonly j?: number;
  /** Degrees of arc, always positive. */
  readonly sweep?: number;
}

/** Moves of one pass, with what is to be said before it and which side compensation is on, if it is used. */
export interface PathPass {
  readonly note: string;
  readonly compensation?: "G41" | "G42";
  readonly moves: readonly PathMove[];
  /** The spindle turns back before the last move: tapping. */
  readonly reverse?: boolean;
}

class Pen {
  readonly moves: PathMove[] = [];
  x = 0;
  y = 0;
  z = CLEARANCE;

  /** To its place in the plane, then to the clearance height: at which height it comes the row does not tell. */
  over(x: number, y: number): void {
    this.put(0, { x, y });
    this.put(0, {});
  }

  /** Up or down at rapid. */
  rapid(z: number): void {
    this.put(0, { z });
  }

  feed(to: { x?: number; y?: number; z?: number }): void {
    this.put(1, to);
  }

  private put(g: 0 | 1, { x = this.x, y = this.y, z = this.z }: { x?: number; y?: number; z?: number }): void {
    this.moves.push({ g, x, y, z });
    [this.x, this.y, this.z] = [x, y, z];
  }

  /** Arc about (cx, cy) by so many degrees, counter-clockwise when `counter`, rising by `rise` in all. */
  arc(cx: number, cy: number, degrees: number, counter: boolean, rise = 0): void {
    const angle = ((counter ? 1 : -1) * degrees * Math.PI) / 180;
    const [dx, dy] = [this.x - cx, this.y - cy];
    // A full circle ends where it starts, to the last bit.
    const whole = Math.abs(degrees - 360) < 1e-9;
    const x = whole ? this.x : cx + dx * Math.cos(angle) - dy * Math.sin(angle);
    const y = whole ? this.y : cy + dx * Math.sin(angle) + dy * Math.cos(angle);
    const z = this.z + rise;
    this.moves.push({ g: counter ? 3 : 2, x, y, z, i: -dx, j: -dy, sweep: degrees });
    [this.x, this.y, this.z] = [x, y, z];
  }
}

/** Compensation side of a cutter that turns clockwise (M3): climb has the wall on its right, so the cutter is left of it. */
const sideOf = (climb: boolean): "G41" | "G42" => (climb ? "G41" : "G42");

/** The passes of a row's shape. */
export function pathOf(shape: Shape, toolZero: ToolZero): PathPass[] {
  switch (shape.kind) {
    case "thread":
      return threadPath(shape, toolZero === "tip" ? shape.tipToProfile : 0);
    case "round":
      return roundPath(shape);
    case "arc":
      return arcPath(shape);
    case "line":
      return linePath(shape);
    case "hole":
      return [holePath(shape)];
  }
}

/** Where the middle of the half circles in and out begins and ends: the middle of a hole, clear of a boss. */
function standOff(inside: boolean, radius: number, start: number, cutter: number): number {
  return inside ? 0 : Math.max(2 * radius, start / 2 + cutter / 2 + CLEARANCE);
}

/** Half a circle from the stand-off to the wall, or back: tangent to the path, in its sense inside, against it outside. */
function halfCircle(pen: Pen, inside: boolean, counter: boolean, toRadius: number, rise: number): void {
  const r = Math.hypot(pen.x, pen.y);
  // On the way in from the very middle the path's start at angle 0 tells where to.
  const [ux, uy] = r < 1e-12 ? [1, 0] : [pen.x / r, pen.y / r];
  const middle = (r + toRadius) / 2;
  pen.arc(ux * middle, uy * middle, 180, inside ? counter : !counter, rise);
}

function threadPath(shape: ThreadShape, lower: number): PathPass[] {
  const { inside, counterClockwise: counter, pitch, up, radii, springs } = shape;
  const turns = Math.abs(shape.endZ - shape.startZ) / pitch;
  const sense = up ? 1 : -1;
  return radii.flatMap((radius, n) =>
    shape.levels.map((level, k): PathPass => {
      const pen = new Pen();
      const off = standOff(inside, radius, shape.start, shape.cutter);
      const [first, last] = [shape.startZ + level - lower, shape.endZ + level - lower];
      // The half circle sweeps a quarter turn as seen from the thread's axis, so on the thread it rises a quarter pitch.
      const quarter = (sense * pitch) / 4;
      const flat = k === 0 && !roomBelow(shape);
      const rise = { in: up && flat ? 0 : quarter, out: !up && flat ? 0 : quarter };
      pen.over(off, 0);
      pen.rapid(first - rise.in);
      halfCircle(pen, inside, counter, radius, rise.in);
      turn(pen, turns, counter, last - first);
      halfCircle(pen, inside, counter, off, rise.out);
      pen.rapid(CLEARANCE);
      return {
        note: levelName(passName(n, radii.length, springs), k, shape.levels.length),
        compensation: sideOf(shape.climb),
        moves: pen.moves,
      };
    }),
  );
}

/** Room for a quarter pitch below the thread: known for through holes, and for blind ones whose depth is given. */
export function roomBelow({ through, inside, holeDepth, depth, tipToProfile, pitch }: ThreadShape): boolean {
  return through || (inside && (holeDepth ?? 0) >= depth + tipToProfile + pitch / 4);
}

/** Turns about the origin from where the pen stands: one block a full turn, the rest in a last one. */
function turn(pen: Pen, turns: number, counter: boolean, rise: number): void {
  const whole = Math.floor(turns + 1e-9);
  const rest = turns - whole;
  for (let i = 0; i < whole; i++) pen.arc(0, 0, 360, counter, rise / turns);
  if (rest > 1e-6) pen.arc(0, 0, 360 * rest, counter, (rise * rest) / turns);
}

function passName(n: number, all: number, springs: number): string {
  const cuts = all - springs;
  return n >= cuts ? `SPRING PASS ${n - cuts + 1} OF ${springs}` : `PASS ${n + 1} OF ${cuts}`;
}

function roundPath(shape: RoundShape): PathPass[] {
  const { inside, counterClockwise: counter, radii, depth, fall } = shape;
  return radii.flatMap((radius, n): PathPass[] => {
    const name = passName(n, radii.length, shape.springs);
    const off = standOff(inside, radius, shape.start, shape.cutter);
    const compensation = sideOf(shape.climb);
    if (n === 0 && fall > 0) {
      const pen = new Pen();
      pen.over(off, 0);
      pen.feed({ z: 0 });
      halfCircle(pen, inside, counter, radius, 0);
      turn(pen, depth / fall, counter, -depth);
      // once more around at depth, or the floor keeps the ramp
      turn(pen, 1, counter, 0);
      halfCircle(pen, inside, counter, off, 0);
      pen.rapid(CLEARANCE);
      return [{ note: `${name}, HELIX FROM SOLID`, compensation, moves: pen.moves }];
    }
    return levelZ(shape).map((z, k): PathPass => {
      const pen = new Pen();
      pen.over(off, 0);
      pen.rapid(z);
      halfCircle(pen, inside, counter, radius, 0);
      turn(pen, 1, counter, 0);
      halfCircle(pen, inside, counter, off, 0);
      pen.rapid(CLEARANCE);
      return { note: levelName(name, k, shape.levels), compensation, moves: pen.moves };
    });
  });
}

const levelZ = ({ depth, levels }: { depth: number; levels: number }) =>
  Array.from({ length: levels }, (_, k) => (k === levels - 1 ? -depth : (-depth * (k + 1)) / levels));
const levelName = (name: string, k: number, levels: number) =>
  levels > 1 ? `${name}, LEVEL ${k + 1} OF ${levels}` : name;

/** The arc begins at +X of its centre: where it lies on the part the row does not tell. Quarter circles in and out. */
function arcPath(shape: ArcShape): PathPass[] {
  const { inside, counterClockwise: counter, radii } = shape;
  const way = counter ? 1 : -1;
  return radii.flatMap((radius, n) =>
    levelZ(shape).map((z, k): PathPass => {
      const pen = new Pen();
      const lead = radius / 2;
      const middle = inside ? radius - lead : radius + lead;
      // A quarter circle that ends at (radius, 0) in the sense of the path comes from a side of it.
      pen.over(middle, -way * lead);
      pen.rapid(z);
      pen.arc(middle, 0, 90, inside ? counter : !counter);
      pen.arc(0, 0, shape.sweep, counter);
      const [ux, uy] = [pen.x / radius, pen.y / radius];
      pen.arc(ux * middle, uy * middle, 90, inside ? counter : !counter);
      pen.rapid(CLEARANCE);
      return {
        note: levelName(passName(n, radii.length, shape.springs), k, shape.levels),
        compensation: sideOf(shape.climb),
        moves: pen.moves,
      };
    }),
  );
}

function linePath(shape: LineShape): PathPass[] {
  return shape.offsets.flatMap((y, n) =>
    levelZ(shape).map((z, k): PathPass => {
      const pen = new Pen();
      pen.over(-shape.over, y);
      pen.rapid(z);
      pen.feed({ x: shape.length });
      pen.rapid(CLEARANCE);
      return {
        note: levelName(passName(n, shape.offsets.length, shape.springs), k, shape.levels),
        compensation: shape.what === "side" ? sideOf(shape.climb) : undefined,
        moves: pen.moves,
      };
    }),
  );
}

function holePath(shape: HoleShape): PathPass {
  const pen = new Pen();
  pen.over(0, 0);
  shape.bottoms.forEach((bottom, n) => {
    const before = shape.bottoms[n - 1];
    // back down to just above where the last peck ended
    if (before !== undefined) pen.rapid(before + CLEARANCE / 4);
    pen.feed({ z: bottom });
    // taps and reamers leave at feed, drills at rapid
    if (shape.what === "tap" || shape.what === "ream") pen.feed({ z: CLEARANCE });
    else pen.rapid(CLEARANCE);
  });
  const pecks = shape.bottoms.length;
  return { note: pecks > 1 ? `${pecks} PECKS` : "", moves: pen.moves, reverse: shape.what === "tap" };
}
