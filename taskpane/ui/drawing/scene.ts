/** What there is to draw of a row, in mm: the tool, the work around it, the shares of its shape. Nothing of the page. */
import type { Sketch } from "../../../src/words/worded.ts";

/** Width of the whole drawing, and the part of it that the section takes [px]. */
export const WIDE = 296;
export const SECTION = { width: 184, height: 280 };
const tangent = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
/** Height of a drill's point over its diameter; 118° where the tool list is silent. */
export const pointOf = (sketch: Sketch) => 0.5 / tangent((sketch.pointAngle ?? 118) / 2);
/** How fast a thread's groove widens with its depth, to each side; 60° where the tool list is silent. */
export const flankOf = (sketch: Sketch) => tangent((sketch.profileAngle ?? 60) / 2);
export const round = (x: number) => Number(x.toFixed(2));
export const path = (points: readonly (readonly [number, number])[]) =>
  points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${round(x)} ${round(y)}`).join("");

export type ToolPart = NonNullable<Sketch["tool"]>[number];

/** What the section is made of, in mm: x from the axis of the hole (or the tool), z up from the face. */
export interface Scene {
  readonly parts: readonly ToolPart[];
  readonly toolX: number;
  readonly tipZ: number;
  readonly depth: number;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

export function usable(sketch: Sketch): ToolPart[] {
  return (sketch.tool ?? []).filter((part) => part.length > 0 && part.diameter > 0);
}

export function sceneOf(sketch: Sketch): Scene | undefined {
  const parts = usable(sketch);
  if (parts.length === 0) return undefined;
  const depth = sketch.depth ?? 0;
  const hole = sketch.holeDiameter ?? 0;
  const toolX = sketch.pathRadius ?? 0;
  const length = parts.reduce((sum, part) => sum + part.length, 0);
  const widest = Math.max(...parts.map((part) => part.diameter), sketch.cutterDiameter ?? 0);
  const holder = widest * 0.9;
  const margin = Math.max(hole, widest) * 0.3;
  const aboveFace = Math.max(length - depth, 0);
  return {
    parts,
    toolX,
    tipZ: -depth,
    depth,
    left: -Math.max(hole / 2 + margin, holder - toolX, widest / 2 + margin),
    right: Math.max(hole / 2 + margin, toolX + holder),
    bottom: -depth - margin - (sketch.kind === "drill" ? hole * pointOf(sketch) : 0),
    // What does not bend may be cut off above the work, where nothing is to be seen.
    top: sketch.kind === "drill" ? Math.min(aboveFace, Math.max(depth * 0.5, widest * 2)) : aboveFace + margin * 0.8,
  };
}

/** The work in section, as closed outlines [x, z]. */
export function workOf(sketch: Sketch, scene: Scene): [number, number][][] {
  const { left, right, bottom, depth } = scene;
  const radius = (sketch.holeDiameter ?? 0) / 2;
  const tool = (sketch.cutterDiameter ?? scene.parts[0]!.diameter) / 2;
  if (radius > 0 && sketch.inside !== false) {
    const walls: [number, number][][] = [
      [
        [left, 0],
        [-radius, 0],
        [-radius, -depth],
        [-radius, bottom],
        [left, bottom],
      ],
      [
        [radius, 0],
        [right, 0],
        [right, bottom],
        [radius, bottom],
        [radius, -depth],
      ],
    ];
    if (!sketch.through)
      walls.push([
        [-radius, -depth],
        [0, -depth - (sketch.kind === "drill" ? 2 * radius * pointOf(sketch) : 0)],
        [radius, -depth],
        [radius, bottom],
        [-radius, bottom],
      ]);
    return walls;
  }
  if (radius > 0) {
    return [
      [
        [-radius, 0],
        [radius, 0],
        [radius, -depth],
        [right, -depth],
        [right, bottom],
        [left, bottom],
        [left, -depth],
        [-radius, -depth],
      ],
    ];
  }
  if (sketch.kind === "slot") {
    return [
      [
        [left, 0],
        [-tool, 0],
        [-tool, -depth],
        [tool, -depth],
        [tool, 0],
        [right, 0],
        [right, bottom],
        [left, bottom],
      ],
    ];
  }
  if (sketch.kind === "face") {
    return [
      [
        [left, -depth],
        [right, -depth],
        [right, bottom],
        [left, bottom],
      ],
    ];
  }
  return [
    [
      [left, 0],
      [-tool, 0],
      [-tool, bottom],
      [left, bottom],
    ],
  ];
}
