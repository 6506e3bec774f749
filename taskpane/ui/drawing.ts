/**
 * The row to scale: tool in the hole or at the wall (a section), the path from above, and the wall enlarged with
 * the depth after each pass. Only the bend is exaggerated, and the drawing says by how much.
 */

import type { Units } from "../../src/units.ts";
import type { Sketch } from "../../src/words/worded.ts";
import { h, type Part, s } from "./dom.ts";
import { SECTION, sceneOf, usable, WIDE } from "./drawing/scene.ts";
import { section } from "./drawing/section.ts";
import { fromAbove, passes } from "./drawing/views.ts";
import { inUnits, withUnit } from "./numbers.ts";

export interface DrawingFacts {
  readonly sketch: Sketch | undefined;
  readonly units: Units;
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
