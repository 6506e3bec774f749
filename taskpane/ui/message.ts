/** One line of news: what was done, what went wrong and what to do, or what is asked. Screen readers hear it. */
import { h, type Part, replace } from "./dom.ts";

export interface Message {
  readonly kind: "done" | "failed" | "busy" | "asks";
  readonly text: string;
  /** What to do about it. */
  readonly action?: string;
  readonly question?: Question;
}

/** Things that a person says yes or no to, one by one. */
export interface Question {
  readonly points: readonly string[];
  readonly yes: string;
  readonly no: string;
  /** `agreed` are places in `points`; what is not among them stays as it is. Undefined: nothing is to be done. */
  answer(agreed: readonly number[] | undefined): void;
}

export function message(): Part<Message | undefined> {
  const told = h("div", { class: "message", role: "status", "aria-live": "polite" });
  const asks = h("div", {});
  const element = h("div", {}, told, asks);
  let shown: Message | undefined;
  return {
    element,
    show(message) {
      // What is ticked already would be lost when the question is built anew.
      if (message === shown) return;
      shown = message;
      told.classList.toggle("empty", message === undefined);
      replace(asks, message?.question && asked(message.question));
      if (message === undefined) {
        told.replaceChildren();
        return;
      }
      const mark = { done: "✓", failed: "✕", busy: "…", asks: "?" }[message.kind];
      replace(
        told,
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

function asked({ points, yes, no, answer }: Question): HTMLElement {
  const boxes = points.map((_, i) => h("input", { type: "checkbox", "data-focus": `yes ${i}` }) as HTMLInputElement);
  const ticked = () => boxes.flatMap((box, i) => (box.checked ? [i] : []));
  return h(
    "div",
    { class: "ask", role: "group", "aria-label": "What may be replaced" },
    ...points.map((text, i) => h("label", { class: "point" }, boxes[i]!, text)),
    h(
      "div",
      { class: "pair" },
      h("button", { type: "button", class: "main", "data-focus": "yes", onclick: () => answer(ticked()) }, yes),
      h("button", { type: "button", "data-focus": "no", onclick: () => answer(undefined) }, no),
    ),
  );
}
