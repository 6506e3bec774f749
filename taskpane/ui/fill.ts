/** Filling the table: what was recognised, what will be written, and the buttons that write. */
import type { Units } from "../../src/units.ts";
import { h, type Part, replace } from "./dom.ts";

export interface Recognised {
  /** Heading as the user wrote it. */
  readonly heading: string;
  /** Position in the table, from 0. */
  readonly index: number;
  /** What it is taken for by its heading, with "→" (read) or "←" (written). */
  readonly automatic?: string;
  /** What it is taken for now: "in:depth", "out:tableFeed"; undefined when it is not used. */
  readonly key?: string;
  /** Unit read from the heading, or implied by the row. */
  readonly unit?: string;
  /** Matched by hand. */
  readonly byHand?: boolean;
}

export interface FillFacts {
  readonly where: string;
  readonly rows: number;
  readonly columns: readonly Recognised[];
  /** Meanings a column can be given by hand. */
  readonly choices: readonly { readonly key: string; readonly text: string }[];
  /** Units chosen when the table does not give them; "given" when it does. */
  readonly units: Units | "given" | undefined;
  /** What "Write numbers" will do, one sentence per line. */
  readonly writes: readonly string[];
  /** Sentences that say what stands in the way of a good answer (lists missing …). */
  readonly warnings: readonly string[];
  readonly lists: readonly { readonly name: string; readonly count: number }[];
  /** What it means for the plan that a list is missing, a sentence for each. */
  readonly missingLists: readonly string[];
  readonly busy: boolean;
  readonly canWrite: boolean;
  readonly canInsertLive: boolean;
  readonly canWorkOut: boolean;
}

export interface FillActions {
  setUnits(units: Units): void;
  /** Gives a column a meaning: a key of the choices, "" for not used, "auto" for what its heading says. */
  match(index: number, key: string): void;
  writeNumbers(): void;
  insertLive(): void;
  workOut(): void;
  addLists(): void;
}

export function fill(actions: FillActions): Part<FillFacts> {
  const body = h("div", {});
  const element = h(
    "section",
    { class: "section fill", "aria-labelledby": "fill-title" },
    h("h2", { id: "fill-title" }, "Fill the table"),
    body,
  );
  let open = false;

  const unitButton = (units: Units, text: string, facts: FillFacts) =>
    h(
      "button",
      {
        type: "button",
        class: "choice",
        "data-focus": `units ${units}`,
        "aria-pressed": facts.units === units ? "true" : "false",
        onclick: () => actions.setUnits(units),
      },
      text,
    );

  const columnLine = (column: Recognised, facts: FillFacts) => {
    if (column.heading === "") return h("li", {}, h("span", { class: "heading" }, "(no heading)"), "not used");
    const id = `match-${column.index}`;
    const automatic =
      column.automatic === undefined
        ? "not used"
        : `${column.automatic}${column.unit && !column.byHand ? ` [${column.unit}]` : ""}`;
    const chosen = column.byHand ? (column.key ?? "") : "auto";
    return h(
      "li",
      { class: column.key === undefined ? "unused" : null },
      h("label", { class: "heading", for: id }, column.heading),
      h(
        "select",
        {
          id,
          "data-focus": id,
          onchange: (event) => actions.match(column.index, (event.target as HTMLSelectElement).value),
        },
        h("option", { value: "auto", selected: chosen === "auto" }, automatic),
        column.automatic !== undefined && h("option", { value: "", selected: chosen === "" }, "not used"),
        ...facts.choices.map(({ key, text }) => h("option", { value: key, selected: key === chosen }, text)),
      ),
    );
  };

  let shown = "";
  return {
    element,
    show(facts) {
      // An open choice would close when its list is built anew.
      const now = JSON.stringify(facts);
      if (now === shown) return;
      shown = now;
      const known = facts.columns.filter((column) => column.key !== undefined);
      const unknown = facts.columns.filter((column) => column.key === undefined);
      const ready = facts.units !== undefined && facts.rows > 0;
      // A disabled button would lose the focus while its own work is going on.
      const waits = facts.busy ? "true" : null;
      const columns = h("ul", { class: "columns" });
      // Thousands of choices that nobody looks at would slow down each key that is pressed beside them.
      const list = () => {
        if (open && columns.childElementCount === 0)
          columns.append(...[...known, ...unknown].map((column) => columnLine(column, facts)));
      };
      list();
      const details = h(
        "details",
        {
          open,
          ontoggle: (event) => {
            open = (event.target as HTMLDetailsElement).open;
            list();
          },
        },
        h("summary", { "data-focus": "columns" }, `${known.length} of ${facts.columns.length} columns recognised`),
        h("p", { class: "hint" }, "→ is read, ← is written. Columns that are not used stay untouched."),
        columns,
      );
      replace(
        element.lastElementChild!,
        h(
          "p",
          { class: "where" },
          h("strong", {}, facts.where),
          ` · ${facts.rows} ${facts.rows === 1 ? "row" : "rows"}`,
        ),
        details,
        facts.units !== "given" &&
          h(
            "div",
            { class: "ask", role: "group", "aria-label": "Units of this table" },
            h("p", {}, "The table does not say its units. Which are they?"),
            h("div", { class: "pair" }, unitButton("mm", "mm, m/min", facts), unitButton("in", "in, ft/min", facts)),
          ),
        ...facts.warnings.map((text) => h("p", { class: "warning" }, text)),
        facts.missingLists.length > 0 &&
          h(
            "div",
            { class: "ask" },
            ...facts.missingLists.map((text) => h("p", {}, text)),
            h(
              "button",
              { type: "button", "data-focus": "lists", "aria-disabled": waits, onclick: () => actions.addLists() },
              "Add the starting lists",
            ),
          ),
        facts.lists.length > 0 &&
          h("p", { class: "hint" }, `Lists: ${facts.lists.map(({ name, count }) => `${name} ${count}`).join(" · ")}`),
        facts.writes.length > 0 &&
          h(
            "div",
            { class: "writes" },
            h("h3", {}, "This will be written"),
            h("ul", {}, ...facts.writes.map((text) => h("li", {}, text))),
          ),
        h(
          "button",
          {
            type: "button",
            class: "main",
            "data-focus": "write",
            disabled: !ready || !facts.canWrite,
            "aria-disabled": waits,
            onclick: () => actions.writeNumbers(),
          },
          "Write numbers",
        ),
        (facts.canInsertLive || facts.canWorkOut) &&
          h(
            "div",
            { class: "pair" },
            facts.canInsertLive &&
              h(
                "button",
                {
                  type: "button",
                  "data-focus": "live",
                  disabled: !ready,
                  "aria-disabled": waits,
                  onclick: () => actions.insertLive(),
                },
                "Insert live block",
              ),
            facts.canWorkOut &&
              h(
                "button",
                {
                  type: "button",
                  "data-focus": "work",
                  disabled: !ready,
                  "aria-disabled": waits,
                  onclick: () => actions.workOut(),
                },
                "Work one row out",
              ),
          ),
      );
    },
  };
}
