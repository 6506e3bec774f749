/** The columns of every table, made from their declarations; and which heading of a person's table is which column. */
import { MACHINE, MATERIAL, TOOL } from "./lists.ts";
import { type Column, columnsOf } from "./quantity.ts";
import { RESULT } from "./results.ts";
import { ROW } from "./rows.ts";
import { spellingsOf } from "./spellings/index.ts";

export type { Column } from "./quantity.ts";

/** What a row may hold. */
export const ROW_COLUMNS = columnsOf(ROW, spellingsOf("row"));
/** What PLAN answers, in this order. */
export const RESULT_COLUMNS = columnsOf(RESULT, spellingsOf("result"));
export const MATERIAL_COLUMNS = columnsOf(MATERIAL, spellingsOf("material"));
export const TOOL_COLUMNS = columnsOf(TOOL, spellingsOf("tool"));
export const MACHINE_COLUMNS = columnsOf(MACHINE, spellingsOf("machine"));

/** Unit hints that a heading may carry in brackets or as its last word. */
const UNIT_HINTS: Readonly<Record<string, "mm" | "in">> = {
  mm: "mm",
  "m/min": "mm",
  "mm/min": "mm",
  "mm/z": "mm",
  "mm/tooth": "mm",
  "mm per tooth": "mm",
  in: "in",
  inch: "in",
  inches: "in",
  '"': "in",
  sfm: "in",
  "ft/min": "in",
  "sfm ": "in",
  "in/min": "in",
  ipm: "in",
  ipt: "in",
  "in/tooth": "in",
};

const OPENS = /[([{]/g;
const CLOSES = /[)\]}]/g;

/** The first bracket of a text from a place on, with its ends; one look at each character, whatever stands there. */
function bracketIn(text: string, from: number): { start: number; end: number } | undefined {
  OPENS.lastIndex = from;
  const start = OPENS.exec(text)?.index;
  if (start === undefined) return undefined;
  CLOSES.lastIndex = start + 1;
  const close = CLOSES.exec(text)?.index;
  return close === undefined ? undefined : { start, end: close + 1 };
}

/** Brackets and what is in them made a blank. */
function withoutBrackets(text: string): string {
  let out = "";
  let at = 0;
  for (let b = bracketIn(text, at); b; b = bracketIn(text, at)) {
    out += `${text.slice(at, b.start)} `;
    at = b.end;
  }
  return out + text.slice(at);
}

/** Lower case, brackets off, punctuation to single spaces. */
export function normalHeading(heading: unknown): string {
  return withoutBrackets(String(heading ?? "").toLowerCase())
    .replace(/[._:;,/\\\-–—#]+/g, " ")
    .replace(/\s+/g, " ")
    .trim();
}

/** The unit system a heading names, if it does: "Dia (mm)", "SFM", "Depth in". */
function headingUnits(heading: unknown): "mm" | "in" | undefined {
  const raw = String(heading ?? "")
    .trim()
    .toLowerCase();
  const place = bracketIn(raw, 0);
  const bracket = place && raw.slice(place.start + 1, place.end - 1).trim();
  if (bracket !== undefined && UNIT_HINTS[bracket]) return UNIT_HINTS[bracket];
  if (UNIT_HINTS[raw]) return UNIT_HINTS[raw];
  const last = /[\s,](mm|in|inch|m\/min|ft\/min|mm\/min|in\/min)$/.exec(raw)?.[1];
  return last ? UNIT_HINTS[last] : undefined;
}

export interface Match<K extends string = string> {
  /** Place of the column in the table, from 0. */
  readonly at: number;
  readonly heading: string;
  readonly column: Column<K>;
  /** Unit system that the heading itself names; it beats the row's units. */
  readonly units?: "mm" | "in";
}

const wordsOf = (column: Column): string[] => [normalHeading(column.heading), ...column.aliases];
/** Spellings of a set of columns; the sets are few and live as long as the program. */
const spelled = new WeakMap<readonly Column[], ReadonlyMap<string, Column>>();

function spellingTable<K extends string>(columns: readonly Column<K>[]): ReadonlyMap<string, Column<K>> {
  const known = spelled.get(columns);
  if (known) return known as ReadonlyMap<string, Column<K>>;
  const table = new Map<string, Column<K>>();
  for (const column of columns) table.set(normalHeading(column.heading), column);
  for (const column of columns) for (const w of wordsOf(column)) if (!table.has(w)) table.set(w, column);
  spelled.set(columns, table);
  return table;
}

/**
 * Which column is which. The canonical heading beats other spellings; the first of two equal headings counts.
 * A heading that ends in a unit ("Depth mm") is tried without it as well.
 */
export function matchHeadings<K extends string>(
  headings: readonly unknown[],
  columns: readonly Column<K>[],
): Match<K>[] {
  const table = spellingTable(columns);
  const found = new Map<string, Match<K> & { exact: boolean }>();
  headings.forEach((heading, at) => {
    const normal = normalHeading(heading);
    if (normal === "") return;
    const column =
      table.get(normal) ?? table.get(normal.replace(/ (?:mm|in|inch|m min|ft min|mm min|in min|rpm)$/, ""));
    if (!column) return;
    const exact = normal === normalHeading(column.heading);
    const known = found.get(column.key);
    if (known && (known.exact || !exact)) return;
    found.set(column.key, { at, heading: String(heading), column, units: headingUnits(heading), exact });
  });
  return [...found.values()].map(({ at, heading, column, units }) => ({ at, heading, column, units }));
}
