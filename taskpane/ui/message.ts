/** One line of news: what was done, or what went wrong and what to do. Screen readers hear it. */
import { h, type Part, replace } from "./dom.ts";

export interface Message {
  readonly kind: "done" | "failed" | "busy";
  readonly text: string;
  /** What to do about it. */
  readonly action?: string;
}

export function message(): Part<Message | undefined> {
  const element = h("div", { class: "message", role: "status", "aria-live": "polite" });
  return {
    element,
    show(message) {
      element.classList.toggle("empty", message === undefined);
      if (message === undefined) {
        element.replaceChildren();
        return;
      }
      const mark = { done: "✓", failed: "✕", busy: "…" }[message.kind];
      replace(
        element,
        h(
          "p",
          { class: message.kind },
          h("span", { class: "mark", "aria-hidden": "true" }, mark),
          h("span", {}, message.text, message.action !== undefined && h("span", { class: "way-out" }, message.action)),
        ),
      );
    },
  };
}
