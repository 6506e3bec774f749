/** The quote of the whole table, and the same rows on two machines or in two materials side by side. */
import type { Choice } from "../../src/quote/compare.ts";
import type { QuoteOptions } from "../../src/quote/types.ts";
import { h, type Part, replace } from "./dom.ts";

export interface QuoteFacts {
  readonly materials: readonly string[];
  readonly machines: readonly string[];
  readonly busy: boolean;
}

export interface QuoteActions {
  quote(options: QuoteOptions): void;
  compare(choice: Choice, options: QuoteOptions): void;
  /** Says what is wrong with what was typed. */
  refuse(text: string, action: string): void;
}

export function quote(actions: QuoteActions): Part<QuoteFacts> {
  let facts: QuoteFacts = { materials: [], machines: [], busy: false };
  const currency = h("input", { id: "quote-currency", type: "text", maxlength: 12, autocomplete: "off" });
  const batch = h("input", { id: "quote-batch", type: "text", inputmode: "numeric", autocomplete: "off" });
  const what = h("select", { id: "quote-what", onchange: () => fill() });
  replace(what, h("option", { value: "machine" }, "two machines"), h("option", { value: "material" }, "two materials"));
  const first = h("select", { id: "quote-first" });
  const second = h("select", { id: "quote-second" });
  const field = (label: string, control: HTMLElement) =>
    h("div", { class: "field" }, h("label", { for: control.id }, label), control);
  const write = h(
    "button",
    { type: "button", class: "main", onclick: () => run((options) => actions.quote(options)) },
    "Write the quote",
  );
  const side = h(
    "button",
    {
      type: "button",
      onclick: () =>
        run((options) => {
          if (first.value === second.value) {
            actions.refuse(
              "Both sides are the same.",
              `Choose ${what.value === "machine" ? "two machines" : "two materials"} that differ.`,
            );
            return;
          }
          const pair = [first.value, second.value] as const;
          actions.compare(what.value === "machine" ? { machine: pair } : { material: pair }, options);
        }),
    },
    "Write the comparison",
  );
  const element = h(
    "details",
    { class: "section quote" },
    h("summary", {}, "Quote"),
    field("Currency, in your own words", currency),
    field("Parts per batch (blank: as each row says)", batch),
    write,
    h(
      "p",
      { class: "note" },
      "A sheet of its own: minutes and money by operation, tool and machine, the dearest rows, a range, and what is not in it.",
    ),
    h("h3", {}, "Side by side"),
    field("Compare", what),
    field("First", first),
    field("Second", second),
    side,
  );

  function run(then: (options: QuoteOptions) => void): void {
    const text = batch.value.trim();
    const parts = Number(text);
    if (text !== "" && !(/^\d+$/.test(text) && parts >= 1 && parts <= 1e9)) {
      actions.refuse(`Parts per batch is "${text}".`, "A whole number of at least 1 is wanted, or nothing.");
      return;
    }
    then({ currency: currency.value.trim() || undefined, batch: text === "" ? undefined : parts });
  }

  /** The names to choose from, keeping what was chosen. */
  function fill(): void {
    const names = what.value === "machine" ? facts.machines : facts.materials;
    for (const [i, control] of [first, second].entries()) {
      const kept = names.includes(control.value) ? control.value : names[Math.min(i, names.length - 1)];
      replace(control, ...names.map((name) => h("option", { value: name, selected: name === kept }, name)));
    }
  }

  return {
    element,
    show(next) {
      const same =
        next.materials.join("\n") === facts.materials.join("\n") &&
        next.machines.join("\n") === facts.machines.join("\n");
      facts = next;
      write.disabled = next.busy;
      side.disabled = next.busy || (what.value === "machine" ? next.machines : next.materials).length < 2;
      if (!same) fill();
    },
  };
}
