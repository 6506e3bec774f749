/** The card for the machine: one row on one sheet of paper, plain HTML, drawn by the print style only. */
import type { Limit, Reason, Verdict } from "../../src/words/worded.ts";
import { CAUTIONS } from "./cautions.ts";
import { h, type Part, replace } from "./dom.ts";
import { percent, worst } from "./numbers.ts";
import type { Figure } from "./program.ts";

export interface CardFacts {
  readonly title: string;
  readonly verdict: Verdict;
  /** Who, where, with what: label and text. */
  readonly facts: readonly { readonly label: string; readonly text: string }[];
  readonly figures: readonly Figure[];
  readonly reasons: readonly Reason[];
  readonly binding?: Limit;
  /** Words of the program, to compare with. */
  readonly words?: readonly string[];
  readonly basis: string;
  readonly drawing?: Node;
}

const WORDS: Record<Verdict, string> = { ok: "OK", check: "CHECK FIRST", stop: "STOP — do not run as it stands" };

export function card(): Part<CardFacts | undefined> {
  const element = h("article", { class: "card", "aria-hidden": "true" });
  return {
    element,
    show(facts) {
      element.replaceChildren();
      if (facts === undefined) return;
      replace(
        element,
        h("h1", {}, facts.title),
        h("p", { class: "card-verdict" }, WORDS[facts.verdict]),
        h(
          "div",
          { class: "two" },
          h(
            "div",
            {},
            h(
              "table",
              {},
              h(
                "tbody",
                {},
                ...facts.facts.map(({ label, text }) => h("tr", {}, h("th", {}, label), h("td", {}, text))),
              ),
            ),
            facts.drawing,
          ),
          h(
            "table",
            { class: "figures" },
            h(
              "tbody",
              {},
              ...facts.figures.map(({ label, text, unit }) =>
                h("tr", {}, h("th", {}, label), h("td", {}, h("strong", {}, text), ` ${unit}`)),
              ),
            ),
          ),
        ),
        facts.binding && h("p", {}, `Nearest limit: ${facts.binding.name}, ${percent(worst(facts.binding))}`),
        facts.reasons.length > 0 &&
          h(
            "ul",
            {},
            ...facts.reasons.map((reason) =>
              h("li", {}, `${reason.text}${reason.wayOut === "" ? "" : ` → ${reason.wayOut}`}`),
            ),
          ),
        facts.words !== undefined &&
          facts.words.length > 0 &&
          h(
            "section",
            { class: "card-words" },
            h("h2", {}, WORDS_TITLE),
            h("pre", {}, shortWords(facts.words).join("\n")),
          ),
        h("h2", {}, "Before the spindle turns"),
        h("ul", { class: "small" }, ...CAUTIONS.map((text) => h("li", {}, text))),
        h(
          "p",
          { class: "sign" },
          "First part measured: ______________   Proved out by: ______________   Date: __________",
        ),
        h("p", { class: "small" }, `Basis ${facts.basis}`),
      );
    },
  };
}

const WORDS_TITLE = "Words to compare the program with — not a program to run";
/** Blocks that a sheet of paper has room for. */
const MOST_WORDS = 84;

function shortWords(words: readonly string[]): readonly string[] {
  if (words.length <= MOST_WORDS) return words;
  return [...words.slice(0, MOST_WORDS), `(AND ${words.length - MOST_WORDS} MORE BLOCKS, ALIKE)`];
}

/** The card as lines of label and text. */
export function cardLines(facts: CardFacts): [string, string][] {
  return [
    [facts.title, WORDS[facts.verdict]],
    ...facts.facts.map(({ label, text }): [string, string] => [label, text]),
    ...facts.figures.map(({ label, text, unit }): [string, string] => [label, unit === "" ? text : `${text} ${unit}`]),
    ...facts.reasons.map((reason, i): [string, string] => [
      `Point ${i + 1}`,
      `${reason.text}${reason.wayOut === "" ? "" : ` → ${reason.wayOut}`}`,
    ]),
    ...shortWords(facts.words ?? []).map((text, i): [string, string] => [i === 0 ? WORDS_TITLE : "", text]),
    ...CAUTIONS.map((text): [string, string] => ["Caution", text]),
    ["First part measured", ""],
    ["Proved out by, date", ""],
  ];
}

/** The card as plain text, for a message or a note on the control. */
export function cardText(facts: CardFacts): string {
  return cardLines(facts)
    .filter(([, text]) => text !== "")
    .map(([label, text]) => (label === "" ? text : `${label}: ${text}`))
    .join("\n");
}
