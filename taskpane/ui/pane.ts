/** The pane: puts the parts together and hands each the facts it shows. The only part that knows the others. */

import { rowBlocks } from "../../src/program/listing.ts";
import {
  type Column,
  MACHINE_COLUMNS,
  MATERIAL_COLUMNS,
  matchHeadings,
  normalHeading,
  RESULT_COLUMNS,
  ROW_COLUMNS,
} from "../../src/table/columns.ts";
import type { Units } from "../../src/units.ts";
import type { Block, Host } from "../host/host.ts";
import { additionOf } from "../work/adding.ts";
import { isSelfContained } from "../work/filling.ts";
import { missingSentences } from "../work/missing.ts";
import { advisor, planner } from "../work/planner.ts";
import { basisOf, match, unitsGiven } from "../work/planning.ts";
import { allFacts, selectedFacts } from "../work/programming.ts";
import { createSession } from "../work/session.ts";
import { emptyTable, STARTING_LISTS } from "../work/starting.ts";
import { type Advisor, besideKind, LISTS, type Planner, type Session, type State } from "../work/types.ts";
import { advice } from "./advice.ts";
import { type Asked, ask } from "./ask.ts";
import { type CalloutsFacts, callouts } from "./callouts.ts";
import { type CardFacts, card, cardLines, cardText } from "./card.ts";
import { cautions } from "./cautions.ts";
import { chain } from "./chain.ts";
import { copyText } from "./copy.ts";
import { h, replace } from "./dom.ts";
import { drawing } from "./drawing.ts";
import { type EmptyFacts, empty } from "./empty.ts";
import { cardFacts, programFigures, rowTitle } from "./figures.ts";
import { type FillFacts, fill, type Recognised } from "./fill.ts";
import { firstRun } from "./first.ts";
import { limits } from "./limits.ts";
import { message } from "./message.ts";
import { posted } from "./posted.ts";
import { program } from "./program.ts";
import { quote } from "./quote.ts";
import { tabs } from "./tabs.ts";
import { verdict } from "./verdict.ts";

const SEEN = "tablefeed.seen";

/** Meanings a column can be given by hand: inputs first, then results. */
const CHOICES = [
  ...ROW_COLUMNS.map((column) => ({ key: `in:${column.key}`, text: `→ ${column.heading}` })),
  ...RESULT_COLUMNS.filter((column) => column.key !== "row").map((column) => ({
    key: `out:${column.key}`,
    text: `← ${column.heading}`,
  })),
];

/** What the browser keeps for this person; nothing is lost where it keeps nothing. */
const memory = {
  seen(): boolean {
    try {
      return localStorage.getItem(SEEN) !== null;
    } catch {
      return false;
    }
  },
  keep(): void {
    try {
      localStorage.setItem(SEEN, "yes");
    } catch {
      // private windows keep nothing: the welcome comes again, and can be skipped again
    }
  },
};

/** Shows the pane in `element`, on the workbook of `host`. */
export function mountPane(
  element: HTMLElement,
  host: Host,
  plan: Planner = planner,
  advise: Advisor = advisor,
  options: { readonly welcome?: boolean } = {},
): { readonly session: Session; destroy(): void } {
  const session = createSession(host, plan, advise);
  let welcome = options.welcome !== false && !memory.seen();
  const past = () => {
    welcome = false;
    memory.keep();
    show(session.store.get());
  };

  const news = message();
  const first = firstRun({
    start() {
      past();
      const { phase, lists } = session.store.get();
      if (phase === "none") void session.addTable(emptyTable(session.store.get().lists));
      else if (lists.some((list) => list === null)) void session.addLists(STARTING_LISTS);
      else views.open("table");
    },
    skip: past,
  });
  const nothing = empty();
  const question = ask(session.match);
  const noRow = empty();
  const verdictPart = verdict();
  const programPart = program();
  const drawingPart = drawing();
  const advicePart = advice({ apply: (suggestion) => void session.apply(suggestion) });
  const limitsPart = limits();
  const chainPart = chain({ copy: copyText });
  const fillPart = fill({
    setUnits: session.setUnits,
    match: session.match,
    writeNumbers: () => void session.writeNumbers(),
    insertLive: () => void session.insertLive(),
    workOut: () => void session.workOut(),
    addLists: () => void session.addLists(STARTING_LISTS),
  });
  const calloutsPart = callouts({
    effect(rows) {
      const { table, matching, asked } = session.store.get();
      if (table === null || matching === null) return undefined;
      const given = unitsGiven(matching);
      return additionOf(table, matching, given === "given" ? undefined : (given ?? asked), rows);
    },
    add: session.addCallouts,
  });
  const quotePart = quote({
    quote: (options) => void session.writeQuote(options),
    compare: (choice, options) => void session.writeComparison(choice, options),
    refuse: (text, action) => session.say({ kind: "failed", text, action }),
  });
  const postedPart = posted({
    rows: () => allFacts(session.store.get()),
    copy: copyText,
    say: (text, action) => session.say({ kind: action === undefined ? "done" : "failed", text, action }),
  });
  const paper = card();
  let onPaper: CardFacts | undefined;

  const title = h("h2", { class: "row-title" });
  const notThese = h("p", { class: "warning" }, "Not to be programmed as long as the row says stop:");
  const limitsTitle = h("h3", {}, "Limits");
  const cardButtons = h(
    "div",
    { class: "pair" },
    // Panes inside Excel often cannot print; Excel can.
    host.kind === "excel"
      ? h(
          "button",
          { type: "button", onclick: () => onPaper && void session.addCard(cardLines(onPaper)) },
          "Card on a sheet",
        )
      : h("button", { type: "button", onclick: () => window.print() }, "Print card"),
    h(
      "button",
      {
        type: "button",
        onclick: async () => {
          const done = onPaper !== undefined && (await copyText(cardText(onPaper)));
          session.say(
            done
              ? { kind: "done", text: "The card is copied as text." }
              : {
                  kind: "failed",
                  text: "The card could not be copied.",
                  action: "Print it, or put it on a sheet, instead.",
                },
          );
        },
      },
      "Copy card",
    ),
  );
  const explained = h(
    "div",
    {},
    title,
    verdictPart.element,
    notThese,
    programPart.element,
    drawingPart.element,
    advicePart.element,
    h("section", { class: "section" }, limitsTitle, limitsPart.element),
    chainPart.element,
    h("section", { class: "section" }, h("h3", {}, "For the machine"), cardButtons),
  );
  const rowPanel = h("div", {}, noRow.element, explained);
  const tablePanel = h("div", {}, calloutsPart.element, fillPart.element, quotePart.element);
  const views = tabs([
    { key: "row", text: "This row", panel: rowPanel },
    { key: "table", text: "Whole table", panel: tablePanel },
    { key: "program", text: "Program", panel: h("div", {}, postedPart.element) },
  ]);
  const read = h("button", { type: "button", class: "quiet", onclick: () => void session.refresh() }, "Read again");

  const screen = h(
    "div",
    { class: "tf" },
    // The desk has a heading of its own.
    host.kind === "excel" && h("header", {}, h("h1", {}, "Tablefeed")),
    news.element,
    first.element,
    nothing.element,
    question.element,
    views.element,
    cautions(),
    h("footer", {}, read),
  );
  replace(element, screen);
  // At the end of the page, where the print style shows it alone.
  document.body.append(paper.element);

  function show(state: Readonly<State>): void {
    const { phase, table, matching, plan, suggestions } = state;
    news.show(state.message);
    const listless = state.lists.some((list) => list === null);
    first.show({
      shown: welcome && phase !== "reading",
      useful:
        phase === "none"
          ? "Make an empty planning table"
          : listless
            ? "Add the starting lists"
            : "Show what was recognised",
    });
    nothing.show(
      state.phase === "none" && state.from !== null
        ? backFacts(() => void session.goBack())
        : emptyFacts(
            state,
            () => void session.addTable(emptyTable(session.store.get().lists)),
            () => void session.pointAtHeadings(),
            welcome,
          ),
    );
    question.show(askedFacts(state));
    views.element.hidden = phase !== "table";
    if (table === null || matching === null) {
      paper.show(undefined);
      return;
    }
    fillPart.show(fillFacts(state));
    calloutsPart.show(calloutsFacts(state));
    quotePart.show(calloutsFacts(state));

    const row = selectedFacts(state);
    postedPart.show({ row, ready: (unitsGiven(matching) ?? state.asked) !== undefined });

    noRow.show(plan === null ? noRowFacts(state) : undefined);
    explained.hidden = plan === null;
    onPaper = undefined;
    if (plan !== null) {
      const figures = programFigures(plan);
      title.textContent = rowTitle(plan, table, matching);
      verdictPart.show(plan);
      notThese.hidden = plan.verdict !== "stop" || figures.length === 0;
      programPart.show(figures);
      drawingPart.show({ sketch: plan.sketch, units: plan.units });
      advicePart.show({ suggestions, busy: state.busy });
      limitsPart.show(plan);
      limitsTitle.parentElement!.hidden = plan.limits.length === 0;
      chainPart.show(plan);
      onPaper = {
        title: title.textContent,
        verdict: plan.verdict,
        facts: cardFacts(plan, table, matching),
        figures,
        reasons: plan.reasons,
        binding: plan.binding,
        words: row === undefined ? [] : rowBlocks(row, "tip"),
        basis: table.selected === null ? "" : basisOf(table.rows[table.selected]!, matching),
        drawing: drawingPart.element.querySelector("svg")?.cloneNode(true),
      };
    }
    paper.show(onPaper);
  }

  const stop = session.store.subscribe(show);
  show(session.store.get());
  session.open();
  return {
    session,
    destroy() {
      stop();
      session.destroy();
      paper.element.remove();
      element.replaceChildren();
    },
  };
}

function emptyFacts({ phase }: State, make: () => void, point: () => void, welcome: boolean): EmptyFacts | undefined {
  if (phase === "reading") return { text: "Reading the workbook …", todo: "" };
  if (phase !== "none") return undefined;
  return {
    text: "No planning table on this sheet.",
    todo: "Select a cell in your table: one heading row with Operation, Material and sizes, and one operation per row below it.",
    button: welcome ? undefined : { text: "Make an empty planning table", act: make },
    other: { text: "The selected row holds the headings", act: point },
  };
}

/** Cells that are shown of a column that is asked about. */
const SAMPLES = 3;

function askedFacts({ table, matching, busy }: State): Asked | undefined {
  const [doubt, ...more] = matching?.doubts ?? [];
  if (table === null || doubt === undefined || busy) return undefined;
  const cells = table.rows.map((row) => row[doubt.at] ?? null).filter((cell) => cell !== null && cell !== "");
  return {
    index: doubt.at,
    heading: String(table.headings[doubt.at]),
    samples: cells.slice(0, SAMPLES).map(String),
    options: doubt.options.flatMap((key) => CHOICES.find((choice) => choice.key === key) ?? []),
    more: more.length,
  };
}

function backFacts(act: () => void): EmptyFacts {
  return {
    text: "This sheet is not a planning table.",
    todo: "Read it, print it, or go back to change the rows.",
    button: { text: "Back to the table", act },
  };
}

function noRowFacts({ table, matching }: State): EmptyFacts {
  if (table !== null && matching !== null && table.selected !== null && unitsGiven(matching) === undefined)
    return { text: "The table does not say its units.", todo: "Choose mm or in under “Whole table”." };
  return { text: "No filled row is selected.", todo: "Select a cell in a row of the table to see what limits it." };
}

/** Names of a list: its column of names, else its first. */
function namesIn(list: Block | null | undefined, columns: readonly Column[]): string[] {
  if (!list) return [];
  const at = matchHeadings(list.headings, columns).find((m) => m.column === columns[0])?.at ?? 0;
  return list.rows.flatMap((row) => (typeof row[at] === "string" && row[at].trim() !== "" ? [row[at]] : []));
}

function calloutsFacts({ lists, matching, asked, busy }: State): CalloutsFacts {
  return {
    materials: namesIn(lists[0], MATERIAL_COLUMNS),
    machines: namesIn(lists[2], MACHINE_COLUMNS),
    ready: (unitsGiven(matching!) ?? asked) !== undefined,
    busy,
  };
}

/** How long a list of names may get before the rest is only counted. */
const NAMED = 6;

function fillFacts(state: State): FillFacts {
  const { table, matching, byHand, asked, lists, beside, busy } = state;
  const { inputs, outputs, basisAt, changedAt } = matching!;
  const kind = besideKind(beside);
  const given = unitsGiven(matching!);
  const heard = match(table!.headings);
  const columns = table!.headings.map((heading, index): Recognised => {
    const name = heading === null ? "" : String(heading);
    if (index === basisAt) return { heading: name, index, automatic: "← basis of the numbers", key: "basis" };
    if (index === changedAt) return { heading: name, index, automatic: "← marks changed inputs", key: "changed" };
    const asInput = inputs.find((m) => m.at === index);
    const found = asInput ?? outputs.find((m) => m.at === index);
    const autoIn = heard.inputs.find((m) => m.at === index);
    const auto = autoIn ?? heard.outputs.find((m) => m.at === index);
    return {
      heading: name,
      index,
      automatic: auto && `${autoIn ? "→" : "←"} ${auto.column.heading}`,
      key: found && `${asInput ? "in" : "out"}:${found.column.key}`,
      unit:
        found &&
        (found.column.unit ??
          unitText(found.column.dimension, found.units ?? (given === "given" ? undefined : (given ?? asked)))),
      byHand: byHand[normalHeading(name)] !== undefined,
    };
  });

  const writes: string[] = [];
  if (outputs.length > 0) {
    const names = outputs.map((m) => `“${m.heading}”`);
    const shown =
      names.length > NAMED ? `${names.slice(0, NAMED).join(", ")} and ${names.length - NAMED} more` : names.join(", ");
    writes.push(
      `Numbers in ${outputs.length === 1 ? "the column" : `these ${outputs.length} columns`}: ${shown}. Numbers that stand there now are replaced; before a formula is, or a value is blanked, you are asked.`,
    );
    writes.push(
      isSelfContained(matching!)
        ? "The basis of each row, and a plain formula that marks rows whose inputs change later."
        : `The verdict, its reasons and the basis of each row ${kind === "numbers" ? `in the block beside the table, ${beside!.address}` : "in a block beside the table, one column away"}, with a plain formula that marks rows whose inputs change later.`,
    );
  } else if (kind === "numbers") {
    writes.push(`New numbers in the block beside the table, ${beside!.address}.`);
  } else if (kind === "none") {
    writes.push(
      `A block of ${RESULT_COLUMNS.length} result columns beside the table, one column away. The table itself stays as it is.`,
    );
    writes.push("With each row its basis, and a plain formula that marks rows whose inputs change later.");
  }

  const warnings: string[] = [];
  if (kind === "live")
    warnings.push(
      "A live block stands beside the table and shows its numbers. For plain numbers instead, delete its first cell.",
    );
  if (kind === "other")
    warnings.push(
      "Something stands beside the table that carries no basis and is no live block: it is left alone. Move it to make room for results.",
    );
  for (const key of ["operation", "material", "tool"]) {
    const column = ROW_COLUMNS.find((c) => c.key === key)!;
    if (!inputs.some((m) => m.column === column))
      warnings.push(`No column was recognised as ${column.heading}. Match one below, or add it.`);
  }
  return {
    where: table!.address,
    rows: table!.rows.length,
    columns,
    choices: CHOICES,
    units: given !== undefined ? "given" : asked,
    writes,
    warnings,
    lists: lists.flatMap((list, i) => (list === null ? [] : [{ name: LISTS[i]!, count: list.rows.length }])),
    missingLists: missingSentences(lists),
    busy,
    canWrite: isSelfContained(matching!) || kind === "none" || kind === "numbers",
    canInsertLive: kind === "none",
    canWorkOut: state.plan !== null,
  };
}

const UNIT_WORDS: Record<string, readonly [string, string]> = {
  length: ["mm", "in"],
  "surface speed": ["m/min", "ft/min"],
  feed: ["mm/min", "in/min"],
};
const unitText = (dimension: string | undefined, units: Units | undefined): string | undefined =>
  dimension === undefined || units === undefined ? undefined : UNIT_WORDS[dimension]?.[units === "in" ? 1 : 0];
