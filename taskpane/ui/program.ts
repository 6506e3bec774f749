/** The numbers that go into the program, large enough to be read from the machine. */
import { h, type Part, replace } from "./dom.ts";

export interface Figure {
  readonly label: string;
  readonly text: string;
  readonly unit: string;
  /** Wide figures (a list of depths, a sentence) take the whole width. */
  readonly wide?: boolean;
}

export function program(): Part<readonly Figure[]> {
  const element = h("dl", { class: "program" });
  return {
    element,
    show(figures) {
      element.hidden = figures.length === 0;
      replace(
        element,
        ...figures.map(({ label, text, unit, wide }) =>
          h(
            "div",
            { class: wide ? "wide" : null },
            h("dt", {}, label),
            h(
              "dd",
              {},
              h("span", { class: /^-?[\d.]+$/.test(text) ? "figure" : "figure words" }, text),
              unit !== "" && h("span", { class: "unit" }, ` ${unit}`),
            ),
          ),
        ),
      );
    },
  };
}
