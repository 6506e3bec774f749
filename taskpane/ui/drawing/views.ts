/** Beside the section: the path from above, and the wall enlarged with what each pass takes. */
import type { Units } from "../../../src/units.ts";
import type { Sketch } from "../../../src/words/worded.ts";
import { s } from "../dom.ts";
import { inUnits } from "../numbers.ts";
import { flankOf, path, round, WIDE } from "./scene.ts";

/** Hole, path and cutter from above. */
export function fromAbove(sketch: Sketch): SVGElement | undefined {
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
export function passes(sketch: Sketch, units: Units): SVGElement | undefined {
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
