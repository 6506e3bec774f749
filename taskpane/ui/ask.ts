/** Asks what a heading means that may mean several things: its name, three of its cells, and a button for each meaning. */
import { h, type Part, replace } from "./dom.ts";

export interface Asked {
  /** Position in the table, from 0. */
  readonly index: number;
  readonly heading: string;
  /** Cells below it, as they are. */
  readonly samples: readonly string[];
  readonly options: readonly { readonly key: string; readonly text: string }[];
  /** Questions after this one. */
  readonly more: number;
}

export function ask(answer: (index: number, key: string) => void): Part<Asked | undefined> {
  const element = h("section", { class: "section ask", "aria-labelledby": "ask-title" });
  element.hidden = true;
  let shown = "";
  return {
    element,
    show(asked) {
      const now = JSON.stringify(asked);
      if (now === shown) return;
      shown = now ?? "";
      element.hidden = asked === undefined;
      if (asked === undefined) {
        element.replaceChildren();
        return;
      }
      const { index, heading, samples, options, more } = asked;
      const button = (key: string, text: string) =>
        h(
          "button",
          { type: "button", class: "choice", "data-focus": `ask ${key}`, onclick: () => answer(index, key) },
          text,
        );
      replace(
        element,
        h("h2", { id: "ask-title" }, `What does “${heading}” mean?`),
        h("p", {}, samples.length === 0 ? "Its cells are blank." : `Its first cells: ${samples.join(" · ")}`),
        h("p", {}, "Until you say it, the column is neither read nor written."),
        h("div", { class: "choices" }, ...options.map(({ key, text }) => button(key, text)), button("", "not used")),
        h("p", { class: "hint" }, `Kept in the workbook, by the heading.${more === 0 ? "" : ` ${more} more to ask.`}`),
      );
    },
  };
}
