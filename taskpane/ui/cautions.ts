/** The usual cautions of the trade; the pane and the printed card carry them alike. */
import { h } from "./dom.ts";

export const CAUTIONS: readonly string[] = [
  "Starting values only. Prove out with reduced overrides, a hand on feed hold.",
  "Never above the speed limits of tool, holder and chuck.",
  "Work holding, guards and eye protection come first.",
  "Magnesium and titanium chips can burn: keep them cleared, the right extinguisher at hand, no water on magnesium.",
  "Stress, deflection and frequency figures are estimates.",
  "Local codes, the makers' instructions and qualified people decide.",
];

export function cautions(): HTMLElement {
  return h(
    "section",
    { class: "section cautions", "aria-labelledby": "cautions-title" },
    h("h2", { id: "cautions-title" }, "Before the spindle turns"),
    h("ul", {}, ...CAUTIONS.map((text) => h("li", {}, text))),
  );
}
