/** The section: tool in the hole or at the wall, to scale; only the bend is exaggerated, and says by how much. */
import { fromCanonical, symbol, type Units } from "../../../src/units.ts";
import type { Sketch } from "../../../src/words/worded.ts";
import { bentShape, roundBelow } from "../bend.ts";
import { s } from "../dom.ts";
import { digits, withUnit } from "../numbers.ts";
import { flankOf, path, pointOf, round, type Scene, SECTION, type ToolPart, workOf } from "./scene.ts";

export function section(sketch: Sketch, scene: Scene, units: Units): SVGElement[] {
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
