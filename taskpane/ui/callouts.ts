/** Callouts pasted from a drawing: what each line becomes, what was assumed, and one button that adds the rows. */
import {
  type CalloutCell,
  type CalloutOptions,
  type CalloutRow,
  type OtherLine,
  readCallouts,
} from "../../src/callouts/callouts.ts";
import type { Units } from "../../src/units.ts";
import { h, type Part, replace } from "./dom.ts";
import { digits } from "./numbers.ts";

export interface CalloutsFacts {
  readonly materials: readonly string[];
  readonly machines: readonly string[];
  /** The units of the table are known. */
  readonly ready: boolean;
  readonly busy: boolean;
}

/** What adding rows would do to the table, worked out for the rows of the preview. */
export interface CalloutsEffect {
  readonly missing: readonly { readonly heading: string; readonly rows: number }[];
  readonly noRemark: boolean;
  readonly numbers: readonly [number, number] | null;
}

export interface CalloutsActions {
  effect(rows: readonly CalloutRow[]): CalloutsEffect | undefined;
  /** Answers whether the rows were written. */
  add(rows: readonly CalloutRow[]): Promise<boolean>;
}

/** Callouts of a preview that are drawn at once; the rest on request. */
const SHOWN = 40;
/** Milliseconds after the last key before the text is read. */
const PAUSE = 150;

const count = (n: number, one: string) => `${n} ${one}${n === 1 ? "" : "s"}`;

/** What a row became, as a person would say it: "6 × drill 3/8-16 UNC-2B tap drill, 0.875 deep [in]". */
export function rowWords(cells: CalloutRow["cells"]): string {
  const size = (cell: CalloutCell | undefined) => (typeof cell === "number" ? digits(cell, 4) : String(cell ?? ""));
  const { Quantity, Operation, Thread, Units: units } = cells;
  const start = cells["Start diameter"];
  const finish = cells["Finish diameter"];
  const has = (cell: CalloutCell | undefined): boolean => cell !== null && cell !== undefined && cell !== "";
  const what = [
    Operation ?? "no operation",
    Thread,
    Operation === "drill" && has(Thread) && !has(finish) ? "tap drill" : "",
    has(finish) ? `⌀${size(finish)}` : "",
    has(start) ? `over ⌀${size(start)}` : "",
    has(cells["Size tolerance"]) ? `± ${size(cells["Size tolerance"])}` : "",
    cells.Hand === "left" ? "left hand" : "",
  ];
  const where = [
    has(cells.Depth) ? `${size(cells.Depth)} deep` : "",
    cells.Through === "yes" ? "through" : "",
    has(cells["Hole depth"]) ? `hole ${size(cells["Hole depth"])}` : "",
    has(cells.Spacing) ? `${size(cells.Spacing)} apart` : "",
  ];
  const words = [what.filter((part) => has(part ?? null)).join(" "), ...where].filter((part) => part !== "").join(", ");
  return `${has(Quantity) ? `${Quantity} × ` : ""}${words}${has(units) ? ` [${units}]` : ""}`;
}

/** The rows of one callout together; neighbours share their source. */
function byCallout(rows: readonly CalloutRow[]): CalloutRow[][] {
  const groups: CalloutRow[][] = [];
  for (const row of rows) {
    const last = groups[groups.length - 1];
    if (last?.[0]?.source === row.source) last.push(row);
    else groups.push([row]);
  }
  return groups;
}

/** A thickness as a person types it: "20", "20 mm", "0.75 in". */
export function thicknessOf(typed: string, units: Units | undefined): CalloutOptions["thickness"] | "bad" | undefined {
  if (typed.trim() === "") return undefined;
  const match = /^\s*(\d{1,5}(?:[.,]\d{0,6})?|[.,]\d{1,6})\s*(mm|in|")?\s*$/i.exec(typed);
  const value = match ? Number(match[1]!.replace(",", ".")) : 0;
  const said = match?.[2] === undefined ? units : match[2].toLowerCase() === "mm" ? "mm" : "in";
  return value > 0 && said !== undefined ? { value, units: said } : "bad";
}

const hasOpen = (group: readonly CalloutRow[]) => group.some((row) => !row.understood);

export function callouts(actions: CalloutsActions): Part<CalloutsFacts> {
  let rows: CalloutRow[] = [];
  let others: readonly OtherLine[] = [];
  let facts: CalloutsFacts = { materials: [], machines: [], ready: false, busy: false };
  /** What was read last. */
  let known = "";
  let all = false;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const text = h("textarea", {
    id: "callouts-text",
    rows: 6,
    spellcheck: "false",
    placeholder: "6X 3/8-16 UNC-2B ↧ .75\n4X ⌀8.5 THRU",
    oninput: () => {
      clearTimeout(timer);
      timer = setTimeout(read, PAUSE);
    },
  });
  const choice = (id: string) => h("select", { id, onchange: () => read() });
  const units = choice("callouts-units");
  const material = choice("callouts-material");
  const machine = choice("callouts-machine");
  replace(units, ...["", "mm", "in"].map((value) => h("option", { value }, value === "" ? "not told" : value)));
  const field = (label: string, control: HTMLElement) =>
    h("div", { class: "field" }, h("label", { for: control.id }, label), control);
  const thickness = h("input", {
    id: "callouts-thickness",
    type: "text",
    placeholder: "20 mm",
    autocomplete: "off",
    oninput: () => {
      clearTimeout(timer);
      timer = setTimeout(read, PAUSE);
    },
  });
  const thick = field("Some holes go through. Thickness of the part there", thickness);
  thick.hidden = true;
  const preview = h("div", { class: "preview" });
  const element = h(
    "details",
    { class: "section callouts" },
    h("summary", {}, "From a drawing"),
    h("label", { for: text.id }, "Paste callouts, one per line"),
    text,
    field("Units of the drawing", units),
    field("Material of these rows", material),
    field("Machine of these rows", machine),
    thick,
    preview,
  );

  function read(): void {
    clearTimeout(timer);
    const said = units.value === "" ? undefined : (units.value as Units);
    const given = thicknessOf(thickness.value, said);
    const options: CalloutOptions = {
      units: said,
      thickness: given === "bad" ? undefined : given,
      material: material.value || undefined,
      machine: machine.value || undefined,
    };
    const now = JSON.stringify([text.value, thickness.value, options]);
    if (now === known) return;
    known = now;
    ({ rows, others } = readCallouts(text.value, options));
    thick.hidden = !rows.some((row) => row.cells.Through === "yes");
    thickness.setAttribute("aria-invalid", String(given === "bad"));
    draw();
  }

  async function add(): Promise<void> {
    // What was typed in the last moment belongs to it.
    read();
    if (facts.busy || rows.length === 0) return;
    if (!(await actions.add(rows))) return;
    text.value = "";
    // The next part has a thickness of its own.
    thickness.value = "";
    all = false;
    read();
    text.focus();
  }

  const line = (row: CalloutRow, told: Set<string>) => {
    // What holds for all rows of a callout is said once.
    const notes = row.note.split("; ").filter((note) => note !== "" && !told.has(note));
    for (const note of notes) told.add(note);
    return h(
      "li",
      { class: row.understood ? null : "open" },
      row.understood
        ? h("strong", {}, rowWords(row.cells))
        : h(
            "strong",
            {},
            h("span", { "aria-hidden": "true" }, "✕ "),
            row.cells.Operation
              ? `Not complete: ${rowWords(row.cells)}`
              : `Not understood: ${row.cells.Feature ?? ""} (kept as a row without an operation)`,
          ),
      notes.length > 0 && h("span", { class: "note" }, notes.join("; ").replace(/^not understood: /, "")),
    );
  };

  /** The lines that give no rows, with what they are. */
  const otherLines = () =>
    others.length > 0 &&
    h(
      "details",
      { class: "others" },
      h("summary", {}, `${count(others.length, "line")} without rows`),
      h(
        "ul",
        {},
        ...others
          .slice(0, all ? others.length : SHOWN)
          .map(({ line: n, text: was, what }) =>
            h("li", {}, h("span", { class: "source" }, `Line ${n}: ${was}`), h("span", { class: "note" }, what)),
          ),
        !all && others.length > SHOWN && h("li", {}, `and ${others.length - SHOWN} more`),
      ),
    );

  function draw(): void {
    if (rows.length === 0) {
      replace(preview, otherLines());
      return;
    }
    const groups = byCallout(rows);
    const open = rows.filter((row) => !row.understood).length;
    const untold = units.value === "" ? rows.filter((row) => row.cells.Operation && !row.cells.Units).length : 0;
    // What needs a look comes first, so that it is not lost in a long list.
    const ordered = [...groups.filter(hasOpen), ...groups.filter((group) => !hasOpen(group))];
    const shown = all ? ordered : ordered.slice(0, SHOWN);
    const effect = actions.effect(rows);
    replace(
      preview,
      h(
        "p",
        { class: "tally", role: "status" },
        h("strong", {}, `${count(groups.length, "callout")} → ${count(rows.length, "row")}`),
        open > 0 ? `, ${open} not understood or not complete (shown first)` : ", all understood",
      ),
      thickness.getAttribute("aria-invalid") === "true" &&
        h("p", { class: "warning" }, "Write the thickness as a number with mm or in, such as 20 mm."),
      untold > 0 &&
        h(
          "p",
          { class: "warning untold" },
          `${count(untold, "row")} ${untold === 1 ? "does" : "do"} not tell mm or in. Choose above which they are.`,
        ),
      h(
        "ol",
        { class: "read" },
        ...shown.map((group) => {
          const told = new Set<string>();
          return h(
            "li",
            {},
            h("span", { class: "source" }, `Line ${group[0]!.source.line}: ${group[0]!.source.text}`),
            h("ul", {}, ...group.map((row) => line(row, told))),
          );
        }),
      ),
      shown.length < ordered.length &&
        h(
          "button",
          {
            type: "button",
            "data-focus": "callouts all",
            onclick: () => {
              all = true;
              draw();
            },
          },
          `Show the other ${ordered.length - shown.length}`,
        ),
      otherLines(),
      effect?.noRemark === true &&
        h(
          "p",
          { class: "hint" },
          "To keep what was assumed with the rows, add a column with the heading Remark first.",
        ),
      effect !== undefined &&
        effect.missing.length > 0 &&
        h(
          "div",
          { class: "warning" },
          "The table has no column for this, and it will be left out: ",
          h("strong", {}, effect.missing.map(({ heading, rows: n }) => `${heading} (${count(n, "row")})`).join(", ")),
          ". To keep it, add a column with that heading first.",
        ),
      !facts.ready && h("p", { class: "warning" }, "Choose the units of the table below first."),
      effect?.numbers &&
        h("p", { class: "hint" }, `They will be numbered ${effect.numbers[0]} to ${effect.numbers[1]}.`),
      h(
        "button",
        {
          type: "button",
          class: "main",
          "data-focus": "callouts add",
          disabled: !facts.ready,
          "aria-disabled": facts.busy ? "true" : null,
          onclick: () => void add(),
        },
        "Add these rows to the table",
      ),
    );
  }

  /** Names of a list, the choice kept as far as it is still there. */
  function offer(select: HTMLSelectElement, names: readonly string[]): void {
    const chosen = select.value;
    replace(
      select,
      h("option", { value: "" }, "leave blank"),
      ...names.map((name) => h("option", { value: name, selected: name === chosen }, name)),
    );
  }

  let offered = "";
  /** What the preview was drawn of by the last news of the table. */
  let drawn: readonly unknown[] = [];
  return {
    element,
    show(now) {
      facts = now;
      const names = JSON.stringify([now.materials, now.machines]);
      if (names !== offered || material.options.length === 0) {
        offered = names;
        offer(material, now.materials);
        offer(machine, now.machines);
      }
      const of = [rows, others, rows.length > 0 && actions.effect(rows), now.ready, now.busy];
      if (of.every((one, i) => one === drawn[i])) return;
      drawn = of;
      draw();
    },
  };
}
