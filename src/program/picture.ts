/**
 * The planned path and what the program makes instead, as lines to draw side by side: from above, and in section. Only
 * geometry, in mm: x to the right, y up (Z in the section, 0 at the face).
 */
import type { Made, Turned } from "./made.ts";
import { contourOf, finalRadius } from "./match.ts";
import { type PathMove, pathOf } from "./path.ts";
import type { HoleShape, LineShape, RowFacts, Shape, ThreadShape, ToolZero } from "./types.ts";

export type Point = readonly [x: number, y: number];

export interface PictureLine {
  /** What it stands for: `wall` before the work, `planned` and `program` after it, `arrow` the way round. */
  readonly kind: "face" | "axis" | "wall" | "planned" | "program" | "planned arrow" | "program arrow";
  readonly points: readonly Point[];
}

export interface View {
  readonly lines: readonly PictureLine[];
  readonly box: { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number };
}

export interface Picture {
  readonly above: View;
  readonly section: View;
}

/** Degrees between the points of a drawn arc. */
const STEP = 6;
/** Grooves that are drawn at the most: a long fine thread is told by its ends. */
const MOST_GROOVES = 80;
const HALF_FLANK = Math.tan(Math.PI / 6);

/** The picture of a row, with what the program makes of it when that is known; undefined where the plan has no shape. */
export function pictureOf({ shape }: RowFacts, made: Made | undefined, toolZero: ToolZero): Picture | undefined {
  if (shape === undefined) return undefined;
  return { above: view(aboveLines(shape, made, toolZero)), section: view(sectionLines(shape, made, toolZero)) };
}

function view(lines: readonly PictureLine[]): View {
  const all = lines.flatMap((line) => line.points).filter(([x, y]) => Number.isFinite(x) && Number.isFinite(y));
  const xs = all.map(([x]) => x);
  const ys = all.map(([, y]) => y);
  const [left, right, bottom, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const margin = 0.06 * Math.max(right - left, top - bottom, 1);
  return {
    lines,
    box: { left: left - margin, right: right + margin, bottom: bottom - margin, top: top + margin },
  };
}

const circle = (radius: number, x = 0, y = 0): Point[] => arcPoints(x, y, radius, 0, 360);

function arcPoints(cx: number, cy: number, radius: number, from: number, degrees: number): Point[] {
  const count = Math.max(1, Math.ceil(Math.abs(degrees) / STEP));
  return Array.from({ length: count + 1 }, (_, n): Point => {
    const angle = ((from + (degrees * n) / count) * Math.PI) / 180;
    return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
  });
}

/** An arrow head on a circle about the origin, at half past one. */
function arrow(radius: number, counter: boolean, size: number): Point[] {
  const at = Math.PI / 4;
  const way = counter ? 1 : -1;
  const [x, y] = [radius * Math.cos(at), radius * Math.sin(at)];
  const along = at + (way * Math.PI) / 2;
  const back = (turn: number): Point => [x - size * Math.cos(along + turn), y - size * Math.sin(along + turn)];
  return [back(0.5), [x, y], back(-0.5)];
}

// ---- from above

/** Points of moves in the plane, without the rapids. */
function planePoints(moves: readonly PathMove[]): Point[] {
  const points: Point[] = [];
  let at: Point = [0, 0];
  for (const move of moves) {
    if (move.g >= 2) {
      const [cx, cy] = [at[0] + (move.i ?? 0), at[1] + (move.j ?? 0)];
      const from = (Math.atan2(at[1] - cy, at[0] - cx) * 180) / Math.PI;
      const degrees = (move.g === 3 ? 1 : -1) * Math.min(360, move.sweep ?? 0);
      points.push(...arcPoints(cx, cy, Math.hypot(at[0] - cx, at[1] - cy), from, degrees));
    } else if (move.g === 1) points.push(at, [move.x, move.y]);
    at = [move.x, move.y];
  }
  return points;
}

function aboveLines(shape: Shape, made: Made | undefined, toolZero: ToolZero): PictureLine[] {
  if (shape.kind === "hole") return holeAbove(shape, made);
  const passes = pathOf(shape, toolZero);
  const last = passes[passes.length - 1]!;
  const lines: PictureLine[] = [{ kind: "planned", points: planePoints(last.moves) }];
  if (shape.kind === "line") return [...lines, ...lineAbove(shape, made)];
  const final = finalRadius(shape);
  const head = Math.max(0.12 * final, 0.05 * shape.cutter);
  lines.push({ kind: "planned arrow", points: arrow(final, shape.counterClockwise, head) });
  if (shape.start > 0) lines.unshift({ kind: "wall", points: circle(shape.start / 2) });
  lines.unshift({ kind: "wall", points: circle(contourOf(final, shape)) });
  if (made?.kind === "turned" || made?.kind === "cornered") {
    const run = lastRun(shape, made.runs);
    lines.push({ kind: "program", points: circle(run.radius) });
    lines.push({ kind: "program arrow", points: arrow(run.radius, run.turn === 1, 1.4 * head) });
  }
  return lines;
}

/** The run that makes the size. */
function lastRun<R extends { radius: number }>(shape: { inside: boolean }, runs: readonly R[]): R {
  return runs.reduce((a, b) => ((shape.inside ? b.radius > a.radius : b.radius < a.radius) ? b : a));
}

function holeAbove(shape: HoleShape, made: Made | undefined): PictureLine[] {
  const r = shape.diameter / 2;
  const cross = 0.3 * r;
  const lines: PictureLine[] = [
    { kind: "planned", points: circle(r) },
    {
      kind: "axis",
      points: [
        [-1.3 * r, 0],
        [1.3 * r, 0],
      ],
    },
    {
      kind: "axis",
      points: [
        [0, -1.3 * r],
        [0, 1.3 * r],
      ],
    },
  ];
  if (made?.kind === "hole") {
    lines.push({
      kind: "program",
      points: [
        [-cross, -cross],
        [cross, cross],
      ],
    });
    lines.push({
      kind: "program",
      points: [
        [-cross, cross],
        [cross, -cross],
      ],
    });
  }
  return lines;
}

function lineAbove(shape: LineShape, made: Made | undefined): PictureLine[] {
  const lines: PictureLine[] = [];
  if (shape.what === "side")
    lines.push({
      kind: "wall",
      points: [
        [0, 0],
        [shape.length, 0],
      ],
    });
  else {
    const half = shape.cutter / 2;
    lines.push({
      kind: "wall",
      points: [
        [0, half],
        [shape.length, half],
      ],
    });
    lines.push({
      kind: "wall",
      points: [
        [0, -half],
        [shape.length, -half],
      ],
    });
  }
  if (made?.kind === "cuts") {
    const y = shape.offsets[shape.offsets.length - 1]! + 0.1 * shape.cutter;
    lines.push({
      kind: "program",
      points: [
        [-shape.over, y],
        [made.length - shape.over, y],
      ],
    });
  }
  return lines;
}

// ---- in section: the wall on the right of the axis (inside) or the boss on its right (outside)

function sectionLines(shape: Shape, made: Made | undefined, toolZero: ToolZero): PictureLine[] {
  switch (shape.kind) {
    case "thread":
      return threadSection(shape, made?.kind === "turned" ? made : undefined, toolZero);
    case "hole":
      return holeSection(shape, made?.kind === "hole" ? made.bottom : undefined);
    case "line":
      return lineSection(shape, made);
    default: {
      const found = made?.kind === "turned" || made?.kind === "cornered" ? made : undefined;
      const run = found && lastRun(shape, found.runs);
      const radius =
        run && (run.compensation !== 0 && nearer(run.radius, shape) ? run.radius : contourOf(run.radius, shape));
      return [
        ...face(contourOf(finalRadius(shape), shape), shape.depth),
        { kind: "planned", points: step(contourOf(finalRadius(shape), shape), -shape.depth, shape.inside) },
        ...(found && radius !== undefined
          ? [{ kind: "program" as const, points: step(radius, found.bottom, shape.inside) }]
          : []),
      ];
    }
  }
}

/** A program that runs the contour itself. */
const nearer = (radius: number, shape: { readonly radii: readonly number[]; inside: boolean; cutter: number }) =>
  Math.abs(radius - contourOf(finalRadius(shape), shape)) < Math.abs(radius - finalRadius(shape));

const face = (radius: number, depth: number): PictureLine[] => [
  {
    kind: "face",
    points: [
      [0, 0],
      [1.6 * radius, 0],
    ],
  },
  {
    kind: "axis",
    points: [
      [0, 0.1 * depth],
      [0, -1.1 * depth],
    ],
  },
];

/** Wall and floor of a bore, or of what is left around a boss. */
const step = (radius: number, bottom: number, inside: boolean): Point[] =>
  inside
    ? [
        [radius, 0],
        [radius, bottom],
        [0, bottom],
      ]
    : [
        [0, 0],
        [radius, 0],
        [radius, bottom],
        [1.6 * radius, bottom],
      ];

function threadSection(shape: ThreadShape, made: Turned | undefined, toolZero: ToolZero): PictureLine[] {
  const wall = shape.start / 2;
  const lower = toolZero === "tip" ? shape.tipToProfile : 0;
  const planned = shape.full
    ? ([-shape.depth, Math.min(0, -shape.depth + shape.pitch * Math.floor(shape.depth / shape.pitch + 1e-6))] as const)
    : ([Math.min(shape.startZ, shape.endZ), Math.max(shape.startZ, shape.endZ)] as const);
  const root = contourOf(finalRadius(shape), shape);
  const lines: PictureLine[] = [
    ...face(Math.max(wall, root), shape.depth),
    {
      kind: "wall",
      points: [
        [wall, 0],
        [wall, -shape.depth - shape.pitch],
      ],
    },
    { kind: "planned", points: grooves(wall, root, planned[0], planned[1], shape.pitch) },
  ];
  const run = made && lastRun(shape, made.runs);
  if (run === undefined || !Number.isFinite(run.z0)) return lines;
  const [low, high] = [Math.min(run.z0, run.z1) + lower, Math.max(run.z0, run.z1) + lower];
  const pitch = Math.max(Math.abs(made!.rise), 0.05);
  const reach = shape.full ? high - pitch + Math.max(0, planned[1] - planned[0]) : high;
  const found = run.compensation !== 0 && nearer(run.radius, shape) ? run.radius : contourOf(run.radius, shape);
  lines.push({ kind: "program", points: grooves(wall, found, low, reach, pitch) });
  return lines;
}

/** The wall with a groove at every pitch from `low` to `high`, as a line from the bottom up. */
function grooves(wall: number, root: number, low: number, high: number, pitch: number): Point[] {
  const half = Math.min(Math.abs(root - wall) * HALF_FLANK, pitch / 2);
  const count = Math.min(MOST_GROOVES, Math.floor((high - low) / pitch + 1e-6) + 1);
  return Array.from({ length: count }, (_, n) => low + n * pitch).flatMap((z): Point[] => [
    [wall, z - half],
    [root, z],
    [wall, z + half],
  ]);
}

function holeSection(shape: HoleShape, bottom: number | undefined): PictureLine[] {
  const r = shape.diameter / 2;
  const planned = shape.bottoms[shape.bottoms.length - 1]!;
  const outline = (tip: number): Point[] => [
    [r, 0],
    [r, Math.min(0, tip + shape.point)],
    [0, tip],
  ];
  const lines: PictureLine[] = [...face(r, shape.depth), { kind: "planned", points: outline(planned) }];
  for (const peck of shape.bottoms.slice(0, -1))
    lines.push({
      kind: "planned",
      points: [
        [0, peck],
        [0.3 * r, peck],
      ],
    });
  if (bottom !== undefined) lines.push({ kind: "program", points: outline(bottom) });
  return lines;
}

function lineSection(shape: LineShape, made: Made | undefined): PictureLine[] {
  const width = shape.cutter;
  const floor = (z: number, kind: "planned" | "program"): PictureLine => ({
    kind,
    points: [
      [0, z],
      [width, z],
    ],
  });
  const levels = Array.from({ length: shape.levels }, (_, k) => (-shape.depth * (k + 1)) / shape.levels);
  return [
    {
      kind: "face",
      points: [
        [-0.4 * width, 0],
        [1.4 * width, 0],
      ],
    },
    {
      kind: "wall",
      points: [
        [0, 0],
        [0, -shape.depth],
      ],
    },
    ...levels.map((z) => floor(z, "planned")),
    ...(made?.kind === "cuts"
      ? [...new Set(made.runs.map((run) => run.z))].slice(0, 50).map((z) => floor(z, "program"))
      : []),
  ];
}
