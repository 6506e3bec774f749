/** What each part of the pane shows, made of what the pane knows. Pure: no host, no page. */
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
import type { Block } from "../host/host.ts";
import { isSelfContained } from "../work/filling.ts";
import { missingSentences } from "../work/missing.ts";
import { match, unitsGiven } from "../work/planning.ts";
import { besideKind, LISTS, type State } from "../work/types.ts";
import type { Asked } from "./ask.ts";
import type { CalloutsFacts } from "./callouts.ts";
import type { EmptyFacts } from "./empty.ts";
import type { FillFacts, Recognised } from "./fill.ts";

/** Meanings a column can be given by hand: inputs first, then results. */
const CHOICES = [
  ...ROW_COLUMNS.map((column) => ({ key: `in:${column.key}`, text: `→ ${column.heading}` })),
  ...RESULT_COLUMNS.filter((column) => column.key !== "row").map((column) => ({
    key: `out:${column.key}`,
    text: `← ${column.heading}`,
  })),
];

export function emptyFacts(
  { phase }: State,
  make: () => void,
  point: () => void,
  welcome: boolean,
): EmptyFacts | undefined {
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

export function askedFacts({ table, matching, busy }: State): Asked | undefined {
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

export function backFacts(act: () => void): EmptyFacts {
  return {
    text: "This sheet is not a planning table.",
    todo: "Read it, print it, or go back to change the rows.",
    button: { text: "Back to the table", act },
  };
}

export function noRowFacts({ table, matching }: State): EmptyFacts {
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

export function calloutsFacts({ lists, matching, asked, busy }: State): CalloutsFacts {
  return {
    materials: namesIn(lists[0], MATERIAL_COLUMNS),
    machines: namesIn(lists[2], MACHINE_COLUMNS),
    ready: (unitsGiven(matching!) ?? asked) !== undefined,
    busy,
  };
}

/** How long a list of names may get before the rest is only counted. */
const NAMED = 6;

export function fillFacts(state: State): FillFacts {
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
