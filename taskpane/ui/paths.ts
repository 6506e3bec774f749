/** Planned path and program side by side: from above, and in section. The program is drawn over the plan, broken. */
import type { Picture, PictureLine, View } from "../../src/program/picture.ts";
import { h, type Part, replace, s } from "./dom.ts";

export interface PathsFacts {
  readonly title: string;
  readonly picture: Picture | undefined;
  /** The picture has what the program makes in it. */
  readonly compared: boolean;
}

/** Size of one view. */
const SIZE = { width: 144, height: 168 } as const;
const GAP = 8;

const CLASSES: Record<PictureLine["kind"], string> = {
  face: "edge",
  axis: "axis",
  wall: "stock",
  planned: "pass",
  program: "made",
  "planned arrow": "pass",
  "program arrow": "made arrow",
};

function drawn(view: View, left: number): SVGElement {
  const { box } = view;
  const scale = Math.min(SIZE.width / (box.right - box.left), SIZE.height / (box.top - box.bottom));
  const [w, t] = [(box.right - box.left) * scale, (box.top - box.bottom) * scale];
  const x = (v: number) => left + (SIZE.width - w) / 2 + (v - box.left) * scale;
  const y = (v: number) => 16 + (SIZE.height - t) / 2 + (box.top - v) * scale;
  const round = (v: number) => Number(v.toFixed(2));
  return s(
    "g",
    {},
    ...view.lines.map(({ kind, points }) =>
      s("path", {
        class: CLASSES[kind],
        d: points
          .filter(([px, py]) => Number.isFinite(px) && Number.isFinite(py))
          .map(([px, py], n) => `${n === 0 ? "M" : "L"}${round(x(px))} ${round(y(py))}`)
          .join(""),
      }),
    ),
  );
}

export function paths(): Part<PathsFacts> {
  const element = h("figure", { class: "paths" });
  return {
    element,
    show({ title, picture, compared }) {
      element.hidden = picture === undefined;
      if (picture === undefined) return;
      const what = compared ? "planned: full line; program: broken line" : "planned path";
      replace(
        element,
        s(
          "svg",
          {
            viewBox: `0 0 ${2 * SIZE.width + GAP} ${SIZE.height + 22}`,
            role: "img",
            "aria-label": `${title}: path from above and section, ${what}`,
          },
          s("text", { x: 0, y: 11, class: "small" }, "From above"),
          s("text", { x: SIZE.width + GAP, y: 11, class: "small" }, "Section"),
          drawn(picture.above, 0),
          drawn(picture.section, SIZE.width + GAP),
        ),
        h("figcaption", { class: "note" }, `${title}; ${what}`),
      );
    },
  };
}
