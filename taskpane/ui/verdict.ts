/** The verdict in words with its reasons, the weightiest first, each with a way out. */
import type { Limit, Reason, Verdict } from "../../src/words/worded.ts";
import { h, type Part, replace } from "./dom.ts";
import { percent, worst } from "./numbers.ts";

export interface VerdictFacts {
  readonly verdict: Verdict;
  readonly reasons: readonly Reason[];
  readonly binding?: Limit;
}

const WORDS: Record<Verdict, { mark: string; word: string; sentence: string }> = {
  ok: { mark: "✓", word: "OK", sentence: "Nothing found against this row." },
  check: { mark: "!", word: "CHECK", sentence: "Can be run after a look at these points." },
  stop: { mark: "✕", word: "STOP", sentence: "Do not run this row as it stands." },
};

const SEVERITY: Record<Verdict, string> = { stop: "Stop", check: "Check", ok: "Note" };

export function verdict(): Part<VerdictFacts> {
  const element = h("div", { class: "verdict-block" });
  return {
    element,
    show({ verdict, reasons, binding }) {
      const { mark, word, sentence } = WORDS[verdict];
      replace(
        element,
        h(
          "p",
          { class: `verdict ${verdict}` },
          h("span", { class: "mark", "aria-hidden": "true" }, mark),
          h("strong", {}, word),
          h("span", {}, sentence),
        ),
        binding &&
          h(
            "p",
            { class: "binding" },
            worst(binding) > 1 ? "Over the limit: " : "Nearest limit: ",
            h("strong", {}, `${binding.name}, ${percent(worst(binding))}`),
            binding.band && " at worst",
          ),
        reasons.length > 0 &&
          h(
            "ol",
            { class: "reasons" },
            ...reasons.map((reason) =>
              h(
                "li",
                { class: reason.severity },
                h("span", { class: "severity" }, `${SEVERITY[reason.severity]}: `),
                reason.text,
                reason.wayOut !== "" && h("span", { class: "way-out" }, `→ ${reason.wayOut}`),
              ),
            ),
          ),
      );
    },
  };
}
