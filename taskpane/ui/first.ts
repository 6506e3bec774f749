/** First run: what this is in three lines, one useful action, and a way past it. */
import { h, type Part } from "./dom.ts";

export interface FirstActions {
  /** The one useful action. */
  start(): void;
  skip(): void;
}

export function firstRun(actions: FirstActions): Part<{ readonly shown: boolean; readonly useful: string }> {
  const start = h("button", { type: "button", class: "main", onclick: () => actions.start() });
  const element = h(
    "section",
    { class: "first", "aria-labelledby": "first-title" },
    h("h2", { id: "first-title" }, "From a planning table to a checked plan"),
    h(
      "ul",
      {},
      h("li", {}, "Put the cursor in your table: one heading row, one operation per row."),
      h("li", {}, "See what was recognised, then write the numbers. Other columns stay untouched."),
      h("li", {}, "Select a row to see what limits it, and every step of its calculation."),
    ),
    start,
    h("button", { type: "button", class: "quiet", onclick: () => actions.skip() }, "Skip this"),
  );
  element.hidden = true;
  return {
    element,
    show({ shown, useful }) {
      element.hidden = !shown;
      start.textContent = useful;
    },
  };
}
