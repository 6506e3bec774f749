/** The pane: puts the parts together and hands each the facts it shows. The only part that knows the others. */

import { rowBlocks } from "../../src/program/listing.ts";
import type { Host } from "../host/host.ts";
import { additionOf } from "../work/adding.ts";
import { advisor, planner } from "../work/planner.ts";
import { basisOf, unitsGiven } from "../work/planning.ts";
import { allFacts, selectedFacts } from "../work/programming.ts";
import { createSession } from "../work/session.ts";
import { emptyTable, STARTING_LISTS } from "../work/starting.ts";
import type { Advisor, Planner, Session, State } from "../work/types.ts";
import { advice } from "./advice.ts";
import { ask } from "./ask.ts";
import { callouts } from "./callouts.ts";
import { type CardFacts, card, cardLines, cardText } from "./card.ts";
import { cautions } from "./cautions.ts";
import { chain } from "./chain.ts";
import { copyText } from "./copy.ts";
import { h, replace } from "./dom.ts";
import { drawing } from "./drawing.ts";
import { empty } from "./empty.ts";
import { askedFacts, backFacts, calloutsFacts, emptyFacts, fillFacts, noRowFacts } from "./facts.ts";
import { cardFacts, programFigures, rowTitle } from "./figures.ts";
import { fill } from "./fill.ts";
import { firstRun } from "./first.ts";
import { limits } from "./limits.ts";
import { message } from "./message.ts";
import { posted } from "./posted.ts";
import { program } from "./program.ts";
import { quote } from "./quote.ts";
import { tabs } from "./tabs.ts";
import { verdict } from "./verdict.ts";

const SEEN = "tablefeed.seen";

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
  let effect: { readonly of: readonly unknown[]; readonly is: ReturnType<typeof additionOf> } | undefined;
  const calloutsPart = callouts({
    effect(rows) {
      const { table, matching, asked } = session.store.get();
      if (table === null || matching === null) return undefined;
      const given = unitsGiven(matching);
      const of = [rows, table, matching, asked];
      // The pane is shown again and again while the same rows wait to be added.
      if (effect === undefined || of.some((one, i) => one !== effect!.of[i]))
        effect = { of, is: additionOf(table, matching, given === "given" ? undefined : (given ?? asked), rows) };
      return effect.is;
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
