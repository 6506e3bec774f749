/** The whole calculation, step by step, so that anyone can check it by hand. */

import type { Units } from "../../src/units.ts";
import type { Step } from "../../src/words/worded.ts";
import { sourceText } from "../work/planning.ts";
import { h, type Part, replace } from "./dom.ts";
import { withUnit } from "./numbers.ts";

export interface ChainFacts {
  readonly steps: readonly Step[];
  readonly units: Units;
}

export interface ChainActions {
  /** Copies text; says whether it worked. */
  copy(text: string): Promise<boolean>;
}

export function chain({ copy }: ChainActions): Part<ChainFacts> {
  const list = h("ol", { class: "chain" });
  const summary = h("summary", {});
  const element = h("details", { class: "section" }, summary, list);
  return {
    element,
    show({ steps, units }) {
      element.hidden = steps.length === 0;
      summary.textContent = `How it was worked out (${steps.length} steps)`;
      replace(
        list,
        ...steps.map((step, i) => {
          const button =
            step.cell !== undefined &&
            h(
              "button",
              {
                type: "button",
                class: "copy",
                "data-focus": `copy ${step.key} ${i}`,
                "aria-label": `Copy the formula for ${step.label}`,
                onclick: async (event: Event) => {
                  const target = event.currentTarget as HTMLElement;
                  target.textContent = (await copy(step.cell!)) ? "Copied" : "Not copied";
                  setTimeout(() => {
                    target.textContent = "Copy";
                  }, 1500);
                },
              },
              "Copy",
            );
          return h(
            "li",
            {},
            h(
              "div",
              { class: "line" },
              h("span", {}, step.label),
              h("strong", {}, withUnit(step.value, step.dimension, units, step.unit)),
            ),
            step.formula !== "" && h("div", { class: "formula" }, step.formula),
            step.cell !== undefined && h("div", { class: "cell" }, h("code", {}, step.cell), button),
            h("div", { class: "source" }, sourceText(step.source)),
          );
        }),
      );
    },
  };
}
