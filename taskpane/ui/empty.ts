/** What the pane shows when there is nothing to work on: a sentence, and what to do. */
import { h, type Part, replace } from "./dom.ts";

export interface EmptyFacts {
  readonly text: string;
  readonly todo: string;
  readonly button?: { readonly text: string; act(): void };
  /** Another way on. */
  readonly other?: { readonly text: string; act(): void };
}

export function empty(): Part<EmptyFacts | undefined> {
  const element = h("section", { class: "section blank" });
  return {
    element,
    show(facts) {
      element.hidden = facts === undefined;
      if (facts === undefined) {
        element.replaceChildren();
        return;
      }
      const { text, todo, button, other } = facts;
      replace(
        element,
        h("p", {}, h("strong", {}, text)),
        h("p", {}, todo),
        button &&
          h(
            "button",
            { type: "button", class: "main", "data-focus": "empty", onclick: () => button.act() },
            button.text,
          ),
        other && h("button", { type: "button", "data-focus": "empty other", onclick: () => other.act() }, other.text),
      );
    },
  };
}
