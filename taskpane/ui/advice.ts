/** Changes that would help the row, each with its effect and one button. */
import type { Suggestion } from "../work/types.ts";
import { h, type Part, replace } from "./dom.ts";

export interface AdviceFacts {
  readonly suggestions: readonly Suggestion[];
  /** A fill is running, or the row cannot be written: the buttons wait. */
  readonly busy: boolean;
}

export function advice(actions: { apply(suggestion: Suggestion): void }): Part<AdviceFacts> {
  const list = h("ul", { class: "advice" });
  const element = h(
    "section",
    { class: "section", "aria-labelledby": "advice-title" },
    h("h2", { id: "advice-title" }, "What would help"),
    list,
  );
  element.hidden = true;
  return {
    element,
    show({ suggestions, busy }) {
      element.hidden = suggestions.length === 0;
      replace(
        list,
        ...suggestions.map((suggestion) =>
          h(
            "li",
            {},
            h("strong", {}, suggestion.change),
            h("span", { class: "effect" }, `now: ${suggestion.before}`),
            h("span", { class: "effect" }, `then: ${suggestion.after}`),
            suggestion.writes.length > 0 &&
              h(
                "button",
                {
                  type: "button",
                  class: "main",
                  "data-focus": `apply ${suggestion.change}`,
                  "aria-label": `Write into the row: ${suggestion.change}`,
                  "aria-disabled": busy ? "true" : null,
                  onclick: () => actions.apply(suggestion),
                },
                "Write this into the row",
              ),
          ),
        ),
      );
    },
  };
}
