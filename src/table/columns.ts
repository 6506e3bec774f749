/** The columns of every table, made from their declarations; and which heading of a person's table is which column. */
import { Cache } from "../cache.ts";
import { headingText } from "./headings.ts";
import { MACHINE, MATERIAL, TOOL } from "./lists.ts";
import { type Column, columnsOf } from "./quantity.ts";
import { RESULT } from "./results.ts";
import { ROW } from "./rows.ts";
import { LANGUAGES, spelledApart, spellingsOf } from "./spellings/index.ts";
import { factorFor, systemOf, type UnitText } from "./unit-text.ts";

export type { Column } from "./quantity.ts";

/** What a row may hold. */
export const ROW_COLUMNS = columnsOf(ROW, spellingsOf("row"));
/** What PLAN answers, in this order. */
export const RESULT_COLUMNS = columnsOf(RESULT, spellingsOf("result"));
export const MATERIAL_COLUMNS = columnsOf(MATERIAL, spellingsOf("material"));
export const TOOL_COLUMNS = columnsOf(TOOL, spellingsOf("tool"));
export const MACHINE_COLUMNS = columnsOf(MACHINE, spellingsOf("machine"));

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

/** Headings made normal before: whole sheets are asked again and again which of their rows are headings. */
const normal = new Cache<string, string>("normal headings", 2000);

/** Lower case, brackets off, punctuation to single spaces. */
export function normalHeading(heading: unknown): string {
  const text = String(heading ?? "");
  return normal.get(text, () =>
    withoutBrackets(text.toLowerCase())
      .replace(/[._:;,/\\\-–—#]+/g, " ")
      .replace(/\s+/g, " ")
      .trim(),
  );
}

export interface Match<K extends string = string> {
  /** Place of the column in the table, from 0. */
  readonly at: number;
  readonly heading: string;
  readonly column: Column<K>;
  /** Unit system that the heading itself names; it beats the row's units. */
  readonly units?: "mm" | "in";
  /** What its numbers are multiplied by where the heading names another unit than the column's fixed one. */
  readonly factor?: number;
}

/** What a spelling may mean: columns, each with the languages in which it does (one bit a language). */
type Meanings = ReadonlyMap<Column, number>;

interface SpellingTable {
  readonly canonical: ReadonlyMap<string, Column>;
  readonly spelled: ReadonlyMap<string, Meanings>;
}

/** Tables of a set of columns; the sets are few and live as long as the program. */
const tables = new WeakMap<readonly Column[], SpellingTable>();

function spellingTable(columns: readonly Column[]): SpellingTable {
  const known = tables.get(columns);
  if (known) return known;
  const canonical = new Map<string, Column>();
  const spelled = new Map<string, Map<Column, number>>();
  for (const column of columns) for (const key of headingText(column.heading).keys) canonical.set(key, column);
  for (const column of columns)
    column.spellings.forEach((texts, language) => {
      for (const text of texts === "" ? [] : spelledApart(texts)) {
        const key = headingText(text).keys[0]!;
        const meanings = spelled.get(key) ?? new Map<Column, number>();
        spelled.set(key, meanings.set(column, (meanings.get(column) ?? 0) | (1 << language)));
      }
    });
  const table = { canonical, spelled };
  tables.set(columns, table);
  return table;
}

/** What a heading may mean, and the unit that it names for each. */
interface Candidate {
  readonly at: number;
  readonly heading: string;
  readonly exact: boolean;
  readonly meanings: Meanings;
  readonly unit?: UnitText;
}

function candidate(heading: unknown, at: number, table: SpellingTable): Candidate | undefined {
  const { keys, unit } = headingText(heading);
  for (const key of keys) {
    const column = table.canonical.get(key);
    if (column) {
      if (unit && !fits(column, unit)) return undefined;
      return { at, heading: String(heading), exact: true, meanings: new Map([[column, 1]]), unit };
    }
  }
  for (const key of keys) {
    const all = table.spelled.get(key);
    if (!all) continue;
    const meanings = unit ? new Map([...all].filter(([column]) => fits(column, unit))) : all;
    if (meanings.size > 0) return { at, heading: String(heading), exact: false, meanings, unit };
  }
  return undefined;
}

/** True where a heading of that unit can be that column: sizes in a unit of either system, results in their own. */
function fits(column: Column, unit: UnitText): boolean {
  if (column.kind !== "number" && column.kind !== "whole") return true;
  const factor = factorFor(column, unit);
  if (factor === undefined) return false;
  if (column.dimension) return systemOf(column.dimension, factor) !== undefined;
  return factor === 1 || !RESULT_COLUMNS.includes(column as never);
}

/** How often each language can have said the headings of a table, and the languages that said most. */
function spokenMost(candidates: readonly Candidate[]): number[] {
  const counts = LANGUAGES.map(
    (_, language) => candidates.filter((c) => [...c.meanings.values()].some((said) => said & (1 << language))).length,
  );
  return [...new Set(counts)].sort((a, b) => b - a).map((count) => bitsOf(counts.map((own) => own === count)));
}

const bitsOf = (said: readonly boolean[]): number => said.reduce((bits, yes, at) => (yes ? bits | (1 << at) : bits), 0);

/** The one column that a heading means: in the language most spoken beside it, or as the only one still free. */
function meant({ meanings }: Candidate, spoken: readonly number[], taken: ReadonlySet<string>): Column | undefined {
  if (meanings.size === 1) return [...meanings.keys()][0];
  for (const languages of spoken) {
    const said = [...meanings].filter(([, bits]) => bits & languages).map(([column]) => column);
    if (said.length === 0) continue;
    const free = said.filter((column) => !taken.has(column.key));
    return free.length === 1 ? free[0] : undefined;
  }
  return undefined;
}

/**
 * Which column is which. The canonical heading beats other spellings; the first of two equal headings counts. A
 * spelling that means several columns is taken in the language that most headings of the table speak; one that means
 * two in one language is not guessed, unless all but one of them have a heading of their own. A unit in brackets or at
 * the end must be one of the column's.
 */
export function matchHeadings<K extends string>(
  headings: readonly unknown[],
  columns: readonly Column<K>[],
): Match<K>[] {
  const table = spellingTable(columns);
  const candidates = headings.flatMap((heading, at) => candidate(heading, at, table) ?? []);
  const found = new Map<string, { of: Candidate; column: Column }>();
  const put = (of: Candidate, column: Column) => {
    const known = found.get(column.key);
    if (!known || (of.exact && !known.of.exact)) found.set(column.key, { of, column });
  };
  const doubtful = candidates.filter((c) => c.meanings.size > 1);
  for (const c of candidates) if (c.meanings.size === 1) put(c, [...c.meanings.keys()][0]!);
  if (doubtful.length > 0) {
    const spoken = spokenMost(candidates);
    const taken = new Set(found.keys());
    for (const c of doubtful) {
      const column = meant(c, spoken, taken);
      if (column) put(c, column);
    }
  }
  return [...found.values()]
    .sort((a, b) => a.of.at - b.of.at)
    .map(({ of: { at, heading, unit }, column }) => ({
      at,
      heading,
      column: column as Column<K>,
      ...named(column, unit),
    }));
}

/** What a heading's unit says of the column's numbers. */
function named(column: Column, unit: UnitText | undefined): { units?: "mm" | "in"; factor?: number } {
  const factor = unit && factorFor(column, unit);
  if (factor === undefined) return { units: undefined };
  if (column.dimension) return { units: systemOf(column.dimension, factor) };
  return factor === 1 ? { units: undefined } : { units: undefined, factor };
}
