/**
 * The row to scale: tool in the hole or at the wall (a section), the path from above, and the wall enlarged with
 * the depth after each pass. Only the bend is exaggerated, and the drawing says by how much.
 */

import { fromCanonical, symbol, type Units } from "../../src/units.ts";
import type { Sketch } from "../../src/words/worded.ts";
import { bentShape, roundBelow } from "./bend.ts";
import { h, type Part, s } from "./dom.ts";
import { digits, inUnits, withUnit } from "./numbers.ts";

export interface DrawingFacts {
  readonly sketch: Sketch | undefined;
  readonly units: Units;
}

const WIDE = 296;
const SECTION = { width: 184, height: 280 };
const tangent = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
/** Height of a drill's point over its diameter; 118° where the tool list is silent. */
const pointOf = (sketch: Sketch) => 0.5 / tangent((sketch.pointAngle ?? 118) / 2);
/** How fast a thread's groove widens with its depth, to each side; 60° where the tool list is silent. */
const flankOf = (sketch: Sketch) => tangent((sketch.profileAngle ?? 60) / 2);
const round = (x: number) => Number(x.toFixed(2));
const path = (points: readonly (readonly [number, number])[]) =>
  points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${round(x)} ${round(y)}`).join("");

type ToolPart = NonNullable<Sketch["tool"]>[number];

/** What the section is made of, in mm: x from the axis of the hole (or the tool), z up from the face. */
interface Scene {
  readonly parts: readonly ToolPart[];
  readonly toolX: number;
  readonly tipZ: number;
  readonly depth: number;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

function usable(sketch: Sketch): ToolPart[] {
  return (sketch.tool ?? []).filter((part) => part.length > 0 && part.diameter > 0);
}

function sceneOf(sketch: Sketch): Scene | undefined {
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
function workOf(sketch: Sketch, scene: Scene): [number, number][][] {
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

function section(sketch: Sketch, scene: Scene, units: Units): SVGElement[] {
  const scale = Math.min(
    SECTION.width / (scene.right - scene.left),
    (SECTION.height - 14) / (scene.top - scene.bottom),
  );
  const x = (mm: number) => (mm - scene.left) * scale;
  const y = (mm: number) => (scene.top - mm) * scale;
  const drawn: SVGElement[] = [];

  for (const outline of workOf(sketch, scene)) {
    drawn.push(s("path", { class: "work", d: `${path(outline.map(([a, b]) => [x(a), y(b)] as const))}Z` }));
  }
  const radius = (sketch.holeDiameter ?? 0) / 2;
  const start = (sketch.startDiameter ?? 0) / 2;
  if (sketch.pitch && radius > 0) drawn.push(...threadLines(sketch, x, y, scale));
  else if (start > 0 && Math.abs(start - radius) * scale > 1) {
    for (const side of [-start, start]) {
      drawn.push(s("line", { class: "stock", x1: x(side), x2: x(side), y1: y(0), y2: y(-scene.depth) }));
    }
  }
  if (radius > 0) {
    drawn.push(s("line", { class: "axis", x1: x(0), x2: x(0), y1: y(scene.top), y2: y(scene.bottom) }));
  }

  // The tool as it is, then as it bends. What cuts is as wide as the cutter; it bends like something thinner.
  const cutter = sketch.cutterDiameter ?? 0;
  const isDrill = sketch.kind === "drill";
  let z = scene.tipZ;
  if (isDrill) {
    const half = cutter / 2;
    const point = [
      [-half, z],
      [0, z - cutter * pointOf(sketch)],
      [half, z],
    ] as const;
    drawn.push(s("path", { class: "tool", d: `${path(point.map(([a, b]) => [x(a), y(b)] as const))}Z` }));
  }
  for (const [i, part] of scene.parts.entries()) {
    const width = (i === 0 && !/neck/i.test(part.part) ? Math.max(part.diameter, cutter) : part.diameter) * scale;
    drawn.push(
      s("rect", {
        class: `tool ${/neck/i.test(part.part) ? "neck" : ""}`.trim(),
        x: round(x(scene.toolX) - width / 2),
        y: round(y(z + part.length)),
        width: round(width),
        height: round(part.length * scale),
      }),
    );
    z += part.length;
  }
  if (/neck/i.test(scene.parts[0]!.part) && cutter > scene.parts[0]!.diameter) {
    // A single-profile cutter is a disc at the end of its neck: as high as a groove is wide.
    const flat = sketch.tipFlat ?? 0;
    const high = flat + (cutter - scene.parts[0]!.diameter) * flankOf(sketch);
    const rim = (side: number): [number, number][] => [
      [scene.toolX + (side * scene.parts[0]!.diameter) / 2, scene.tipZ],
      [scene.toolX + (side * cutter) / 2, scene.tipZ + (high - flat) / 2],
      [scene.toolX + (side * cutter) / 2, scene.tipZ + (high + flat) / 2],
      [scene.toolX + (side * scene.parts[0]!.diameter) / 2, scene.tipZ + high],
    ];
    const disc = [...rim(-1), ...rim(1).reverse()].map(([a, b]) => [x(a), y(b)] as const);
    drawn.push(s("path", { class: "tool", d: `${path(disc)}Z` }));
  }
  const last = scene.parts[scene.parts.length - 1]!;
  if (z <= scene.top)
    drawn.push(
      s("rect", {
        class: "holder",
        x: round(x(scene.toolX - last.diameter * 0.8)),
        y: 0,
        width: round(last.diameter * 1.6 * scale),
        height: round(Math.max(y(z), 3)),
      }),
    );
  const bend = sketch.deflection ?? 0;
  const away = radius > 0 && sketch.inside !== false ? -1 : 1;
  if (bend > 0 && sketch.kind !== "drill") {
    const times = Math.max(1, roundBelow(Math.max(12 / (bend * scale), 1)));
    const shape = bentShape(scene.parts);
    const side = (sign: number) =>
      shape.map(([height, share], i) => {
        const part = partAt(scene.parts, i === 0 ? 0 : height - 1e-9);
        return [
          x(scene.toolX + away * share * bend * times + (sign * part.diameter) / 2),
          y(scene.tipZ + height),
        ] as const;
      });
    drawn.push(s("path", { class: "bent", d: path([...side(-1), ...side(1).reverse()]) }));
    drawn.push(
      s(
        "text",
        { class: "small", x: 0, y: SECTION.height + 12 },
        `dashed: bend of ${withUnit(bend, "length", units)} drawn ×${digits(times, 0)}`,
      ),
    );
  }

  // Scale bar.
  const room = fromCanonical((scene.right - scene.left) / 3, "length", units);
  const bar = roundBelow(room);
  const barWide = (bar / room) * ((scene.right - scene.left) / 3) * scale;
  const base = SECTION.height - 5;
  drawn.push(
    s("path", { class: "ruler", d: `M0 ${base - 3}v3h${round(barWide)}v-3` }),
    s("text", { class: "small", x: round(barWide + 5), y: base }, `${digits(bar, 4)} ${symbol("length", units)}`),
  );
  return drawn;
}

function partAt(parts: readonly ToolPart[], height: number): ToolPart {
  let from = 0;
  for (const part of parts) {
    from += part.length;
    if (height <= from) return part;
  }
  return parts[parts.length - 1]!;
}

function threadLines(
  sketch: Sketch,
  x: (mm: number) => number,
  y: (mm: number) => number,
  scale: number,
): SVGElement[] {
  const pitch = sketch.pitch!;
  const wall = sketch.holeDiameter! / 2;
  const depths = sketch.depths ?? [];
  const full = depths.length > 0 ? Math.max(...depths) : 0;
  const outward = sketch.inside === false ? -1 : 1;
  const turns = Math.floor((sketch.depth ?? 0) / pitch);
  const lines: SVGElement[] = [];
  for (const side of [-1, 1]) {
    if (pitch * scale < 2.5 || turns > 200 || full === 0) {
      const at = side * (wall + outward * full);
      lines.push(s("line", { class: "stock", x1: x(at), x2: x(at), y1: y(0), y2: y(-(sketch.depth ?? 0)) }));
      continue;
    }
    const points: [number, number][] = [];
    const shift = side < 0 ? pitch / 2 : 0;
    for (let i = 0; i < turns; i++) {
      const z = -i * pitch - shift;
      points.push([x(side * wall), y(z)], [x(side * (wall + outward * full)), y(z - pitch / 2)]);
    }
    points.push([x(side * wall), y(-turns * pitch - shift)]);
    lines.push(s("path", { class: "thread", d: path(points) }));
  }
  return lines;
}

/** Hole, path and cutter from above. */
function fromAbove(sketch: Sketch): SVGElement | undefined {
  const path = sketch.pathRadius ?? 0;
  const cutter = sketch.cutterDiameter ?? 0;
  const hole = sketch.holeDiameter ?? 0;
  if (!(path > 0 && cutter > 0 && hole > 0)) return undefined;
  const room = 94;
  const scale = room / (2 * Math.max(hole / 2, path + cutter / 2));
  const circle = (name: string, radius: number, cx = 0) =>
    s("circle", { class: name, cx: round(cx * scale), cy: 0, r: round(radius * scale) });
  const start = sketch.startDiameter ?? 0;
  return s(
    "g",
    { transform: `translate(${WIDE - room / 2 - 2} ${room / 2 + 16})` },
    s("text", { class: "small", x: 0, y: -room / 2 - 6, "text-anchor": "middle" }, "from above"),
    circle("edge", hole / 2),
    start > 0 && Math.abs(start - hole) * scale > 2 && circle("stock", start / 2),
    circle("axis", path),
    circle("tool", cutter / 2, path),
    s("path", { class: "cross", d: "M-4 0h8M0-4v8" }),
  );
}

/** The wall enlarged: what each pass takes. */
function passes(sketch: Sketch, units: Units): SVGElement | undefined {
  const depths = [...new Set((sketch.depths ?? []).filter((depth) => depth > 0))].sort((a, b) => a - b);
  const full = depths[depths.length - 1];
  if (full === undefined) return undefined;
  const flat = sketch.tipFlat ?? 0;
  const thread = sketch.pitch !== undefined;
  const widest = thread ? flat / 2 + full * flankOf(sketch) : full;
  const scale = Math.min(46 / full, thread ? 42 / widest : 46 / full);
  const middle = 44;
  const g = s(
    "g",
    { transform: `translate(${WIDE - 98} 152)` },
    s("text", { class: "small", x: 96, y: -10, "text-anchor": "end" }, "depth from wall"),
    s("line", { class: "edge", x1: 0, x2: 0, y1: 0, y2: 90 }),
  );
  // Pass depths that lie close together share a line of text less often when the labels spread over the height.
  const step = Math.min(15, 84 / depths.length);
  depths.forEach((depth, i) => {
    const at = depth * scale;
    if (thread) {
      const half = (flat / 2 + depth * flankOf(sketch)) * scale;
      const tip = (flat / 2) * scale;
      g.append(
        s("path", {
          class: "pass",
          d: path([
            [0, middle - half],
            [at, middle - tip],
            [at, middle + tip],
            [0, middle + half],
          ]),
        }),
      );
    } else g.append(s("line", { class: "pass", x1: round(at), x2: round(at), y1: 2, y2: 88 }));
    if (depths.length <= 8 || i === depths.length - 1) {
      g.append(
        s(
          "text",
          { class: "small", x: 97, "text-anchor": "end", y: round(middle + 4 + (i - (depths.length - 1) / 2) * step) },
          `${i + 1}  ${inUnits(depth, "length", units)}`,
        ),
      );
    }
  });
  return g;
}

/** The drawing in words, for who cannot see it. */
function describe(sketch: Sketch, units: Units): string {
  const length = (value: number) => withUnit(value, "length", units);
  const words: string[] = [];
  if (sketch.cutterDiameter) words.push(`cutter ${length(sketch.cutterDiameter)}`);
  const neck = usable(sketch).find((part) => /neck/i.test(part.part));
  if (neck) words.push(`neck ${length(neck.diameter)}, ${length(neck.length)} long`);
  if (sketch.holeDiameter) words.push(`${sketch.inside === false ? "boss" : "hole"} ${length(sketch.holeDiameter)}`);
  if (sketch.depth) words.push(`depth ${length(sketch.depth)}${sketch.through ? ", through" : ""}`);
  if (sketch.pathRadius) words.push(`path radius ${length(sketch.pathRadius)}`);
  if (sketch.depths?.length)
    words.push(`radial depths ${sketch.depths.map((d) => inUnits(d, "length", units)).join(", ")}`);
  if (sketch.deflection) words.push(`the tip bends ${length(sketch.deflection)}`);
  return `${sketch.kind}: ${words.join("; ")}`;
}

export function drawing(): Part<DrawingFacts> {
  const element = h("figure", { class: "drawing" });
  return {
    element,
    show({ sketch, units }) {
      const scene = sketch && sceneOf(sketch);
      element.hidden = scene === undefined;
      element.replaceChildren();
      if (sketch === undefined || scene === undefined) return;
      element.append(
        s(
          "svg",
          { viewBox: `0 0 ${WIDE} ${SECTION.height + 18}`, role: "img", "aria-label": describe(sketch, units) },
          ...section(sketch, scene, units),
          fromAbove(sketch),
          passes(sketch, units),
        ),
      );
    },
  };
}
