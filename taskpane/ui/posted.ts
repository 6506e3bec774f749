/** The row's words of the program, and a posted program compared with the table: what differs, in sentences and drawn. */
import { MOST_CHARACTERS } from "../../src/program/blocks.ts";
import type { ProgramCheck } from "../../src/program/check.ts";
import { LISTING_CAUTION, rowBlocks } from "../../src/program/listing.ts";
import { pictureOf } from "../../src/program/picture.ts";
import { type ReportLine, report } from "../../src/program/report.ts";
import type { RowFacts, ToolZero } from "../../src/program/types.ts";
import { type Comparison, compareInSlices } from "../work/programming.ts";
import { h, type Part, replace } from "./dom.ts";
import { paths } from "./paths.ts";

export interface PostedFacts {
  /** The selected row, when it is planned. */
  readonly row: RowFacts | undefined;
  /** The units of the table are known. */
  readonly ready: boolean;
}

export interface PostedActions {
  /** All rows as they are now. */
  rows(): readonly RowFacts[];
  copy(text: string): Promise<boolean>;
  say(text: string, action?: string): void;
}

const WORDS = { ok: "Ok", check: "Check", stop: "Stop" } as const;
/** Lines of a result that are drawn at once; the rest on request. */
const SHOWN = 60;
/** Files that posts write; any other can be chosen as well. */
const FILES = ".nc,.cnc,.tap,.txt,.iso,.din,.eia,.ngc,.gcode,.mpf,.spf,.h,.i,text/plain";

export function posted(actions: PostedActions): Part<PostedFacts> {
  let facts: PostedFacts = { row: undefined, ready: false };
  let file: { readonly name: string; readonly text: string } | undefined;
  let running: Comparison | undefined;
  let result:
    | { readonly check: ProgramCheck; readonly lines: readonly ReportLine[]; rows: readonly RowFacts[] }
    | undefined;
  let all = false;
  let pictured: string | undefined;

  const zero = h("select", { id: "posted-zero", onchange: () => draw() });
  replace(
    zero,
    h("option", { value: "tip" }, "at the tip"),
    h("option", { value: "profile" }, "at the middle of the lowest profile"),
  );
  const toolZero = () => zero.value as ToolZero;
  const listing = h("pre", { class: "listing", tabindex: 0, "aria-label": "Words of the selected row" });
  const noWords = h("p", { class: "hint" }, "Select a filled row of the table to see its words.");
  const copy = h("button", { type: "button", onclick: () => void copyWords() }, "Copy the words");
  const picture = paths();

  const text = h("textarea", {
    id: "posted-text",
    rows: 6,
    spellcheck: "false",
    autocapitalize: "off",
    placeholder: "G21 G90\nS4000 M3\n…",
    oninput: () => {
      file = undefined;
      opened.textContent = "";
    },
  });
  const chooser = h("input", { id: "posted-file", type: "file", accept: FILES, onchange: () => void open() });
  const opened = h("p", { class: "note opened", "aria-live": "polite" });
  const compare = h("button", { type: "button", class: "main", onclick: () => start() }, "Compare with the table");
  const bar = h("progress", { max: 1, value: 0, "aria-label": "Share of the program that is read" });
  const cancel = h("button", { type: "button", onclick: () => stop() }, "Cancel");
  const busy = h("div", { class: "reading", hidden: true }, bar, cancel);
  const outcome = h("div", { class: "outcome" });

  const field = (label: string, control: HTMLElement) =>
    h("div", { class: "field" }, h("label", { for: control.id }, label), control);
  const element = h(
    "div",
    { class: "posted" },
    h(
      "section",
      { class: "section" },
      h("h2", {}, "Words of this row"),
      h(
        "p",
        { class: "warning" },
        "To compare a program with, not to run: no fixture, offset, tool number or control is known here.",
      ),
      field("Thread mills are measured", zero),
      noWords,
      listing,
      copy,
    ),
    picture.element,
    h(
      "section",
      { class: "section" },
      h("h2", {}, "Posted program"),
      field("Paste it", text),
      field("or open its file", chooser),
      opened,
      compare,
      busy,
      h(
        "p",
        { class: "note" },
        "Read by the words of ISO 6983. Not looked at: collisions, clamps, offsets, what the control makes of it. The program is never changed; prove it out as always.",
      ),
      outcome,
    ),
  );

  async function copyWords(): Promise<void> {
    const done = await actions.copy(listing.textContent ?? "");
    actions.say(
      done ? "The words are copied." : "The words could not be copied.",
      done ? undefined : "Select them by hand.",
    );
  }

  async function open(): Promise<void> {
    const [chosen] = chooser.files ?? [];
    if (chosen === undefined) return;
    stop();
    if (chosen.size > MOST_CHARACTERS) {
      file = undefined;
      opened.textContent = `${chosen.name} has ${Math.round(chosen.size / 1e6)} MB; at most ${MOST_CHARACTERS / 1e6} MB are read. Compare one tool or one side at a time.`;
      return;
    }
    try {
      file = { name: chosen.name, text: await chosen.text() };
      text.value = "";
      opened.textContent = `Opened: ${chosen.name}`;
    } catch {
      file = undefined;
      opened.textContent = `${chosen.name} could not be read.`;
    }
    // the same file can be opened again after it was posted anew
    chooser.value = "";
  }

  function start(): void {
    stop();
    const program = file?.text ?? text.value;
    if (program.trim() === "") {
      result = undefined;
      replace(outcome, h("p", { class: "hint", role: "status" }, "Paste a program or open its file first."));
      return;
    }
    busy.hidden = false;
    bar.value = 0;
    compare.setAttribute("aria-disabled", "true");
    outcome.replaceChildren();
    const rows = actions.rows();
    running = compareInSlices(program, rows, toolZero(), {
      progress: (share) => {
        bar.value = share;
      },
      done(check) {
        result = { check, rows, lines: report(check.findings(), rows[0]?.units ?? "mm") };
        const drawable = new Set(rows.filter((row) => check.madeOf(row)).map((row) => row.name));
        all = false;
        pictured = result.lines.find((line) => line.severity !== "ok" && drawable.has(line.row))?.row;
        stop();
        draw();
      },
      failed() {
        stop();
        replace(
          outcome,
          h(
            "p",
            { class: "warning", role: "alert" },
            "The comparison failed. Nothing was changed; please report this program.",
          ),
        );
      },
    });
  }

  function stop(): void {
    running?.cancel();
    running = undefined;
    busy.hidden = true;
    compare.removeAttribute("aria-disabled");
  }

  function draw(): void {
    drawWords();
    drawOutcome();
    drawPicture();
  }

  function drawWords(): void {
    const { row } = facts;
    noWords.hidden = row !== undefined;
    listing.hidden = row === undefined;
    copy.hidden = row === undefined;
    const words = row === undefined ? "" : [...LISTING_CAUTION, ...rowBlocks(row, toolZero())].join("\n");
    if (listing.textContent !== words) listing.textContent = words;
  }

  function drawPicture(): void {
    const shown = result?.rows.find((r) => r.name === pictured) ?? facts.row;
    const compared = result?.rows.find((r) => r.index === shown?.index);
    const made = compared && result?.check.madeOf(compared);
    const title = [`Row ${shown?.name}`, shown?.operation, shown?.title];
    picture.show({
      title: title.filter((part) => part !== "" && part !== undefined).join(" · "),
      picture: shown && pictureOf(shown, made, toolZero()),
      compared: made !== undefined,
    });
  }

  function drawOutcome(): void {
    if (result === undefined) return;
    const { lines } = result;
    const of = (severity: ReportLine["severity"]) => lines.filter((line) => line.severity === severity).length;
    const differing = lines.filter((line) => line.severity !== "ok");
    // what stops comes first, in the order of the program; what is fine is folded away
    const ordered = [
      ...differing.filter((l) => l.severity === "stop"),
      ...differing.filter((l) => l.severity === "check"),
    ];
    const shown = all ? ordered : ordered.slice(0, SHOWN);
    replace(
      outcome,
      h(
        "p",
        { class: "tally", role: "status" },
        h(
          "strong",
          {},
          differing.length === 0 ? "Nothing differs from the plan." : `${of("stop")} stop, ${of("check")} check.`,
        ),
        ` ${lines.filter((line) => line.code === "").length} of ${result.rows.length} rows as planned.`,
      ),
      shown.length > 0 && h("ul", { class: "findings" }, ...shown.map((line, n) => entry(line, n))),
      shown.length < ordered.length &&
        h(
          "button",
          {
            type: "button",
            "data-focus": "posted all",
            onclick: () => {
              all = true;
              draw();
            },
          },
          `Show the other ${ordered.length - shown.length}`,
        ),
      of("ok") > 0 &&
        h(
          "details",
          { class: "fine" },
          h("summary", {}, `Fine or only told (${of("ok")})`),
          h(
            "ul",
            { class: "findings" },
            ...lines
              .filter((l) => l.severity === "ok")
              .slice(0, 500)
              .map((line, n) => entry(line, -1 - n)),
          ),
        ),
    );
  }

  function entry(line: ReportLine, n: number): HTMLElement {
    const where = [line.block === undefined ? "" : `Block ${line.block}`, line.row === "" ? "" : `row ${line.row}`]
      .filter((part) => part !== "")
      .join(", ");
    return h(
      "li",
      { class: line.severity },
      h("strong", {}, WORDS[line.severity]),
      where === "" ? ": " : ` · ${where}: `,
      line.text,
      line.row !== "" &&
        line.severity !== "ok" &&
        h(
          "button",
          {
            type: "button",
            class: "quiet",
            "data-focus": `posted ${n}`,
            "aria-pressed": String(line.row === pictured),
            onclick: () => {
              pictured = line.row;
              draw();
              picture.element.scrollIntoView?.({ block: "nearest" });
            },
          },
          `Draw row ${line.row}`,
        ),
    );
  }

  return {
    element,
    show(next) {
      // another row is another picture, until a finding is drawn again
      if (next.row?.name !== facts.row?.name && next.row !== undefined) pictured = undefined;
      facts = next;
      compare.disabled = !next.ready;
      drawWords();
      drawPicture();
    },
  };
}
