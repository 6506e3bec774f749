/** The columns of every table, made from their declarations; and which heading of a person's table is which column. */
import { Cache } from "../cache.ts";
import { headingText } from "./headings.ts";
import { MACHINE, MATERIAL, TOOL } from "./lists.ts";
import { meaningsOf, type TableName } from "./meant.ts";
import { type Column, columnsOf } from "./quantity.ts";
import { RESULT } from "./results.ts";
import { ROW } from "./rows.ts";
import { LANGUAGES } from "./spellings/index.ts";
import { factorFor, systemOf, type UnitText } from "./unit-text.ts";

export { normalHeading } from "./headings.ts";
export type { Column } from "./quantity.ts";

/** What a row may hold. */
export const ROW_COLUMNS = columnsOf(ROW);
/** What PLAN answers, in this order. */
export const RESULT_COLUMNS = columnsOf(RESULT);
export const MATERIAL_COLUMNS = columnsOf(MATERIAL);
export const TOOL_COLUMNS = columnsOf(TOOL);
export const MACHINE_COLUMNS = columnsOf(MACHINE);

/** Which way to say it belongs to which columns. */
const NAMES = new Map<readonly Column[], TableName>([
  [ROW_COLUMNS, "row"],
  [RESULT_COLUMNS, "result"],
  [MATERIAL_COLUMNS, "material"],
  [TOOL_COLUMNS, "tool"],
  [MACHINE_COLUMNS, "machine"],
]);

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

/** What a heading may mean: columns, each with the languages in which it does (one bit a language). */
type Meanings = ReadonlyMap<Column, number>;

const canonicals = new Cache<readonly Column[], ReadonlyMap<string, Column>>("canonical headings", NAMES.size);

/** Columns by their canonical heading. */
const canonicalOf = (columns: readonly Column[]): ReadonlyMap<string, Column> =>
  canonicals.get(
    columns,
    () => new Map(columns.flatMap((column) => headingText(column.heading).keys.map((key) => [key, column]))),
  );

/** What a text means as a heading of a table, wherever it stands there. */
interface Understood {
  readonly exact: boolean;
  /** True where nothing in it tells which it is, or whether it is one. */
  readonly doubtful: boolean;
  readonly meanings: Meanings;
  readonly unit?: UnitText;
}

/** What a heading may mean, and the unit that it names for each. */
interface Candidate extends Understood {
  readonly at: number;
  readonly heading: string;
}

/**
 * Texts of a table that were understood, or not: every row of a sheet is asked, and a table is matched again and again. What a text
 * is apart from the table (headings.ts), and what its words may mean (notions.ts), is kept there, for all tables at once.
 */
const memories = new Cache<readonly Column[], Cache<string, { readonly is: Understood | undefined }>>(
  "tables whose headings were understood",
  NAMES.size,
);

/** A longer text is no heading of a column. */
const LONGEST = 200;

function candidate(heading: unknown, at: number, columns: readonly Column[]): Candidate | undefined {
  // No word of a heading is a number alone.
  if (typeof heading !== "string" || heading.length > LONGEST) return undefined;
  const { is } = memories
    .get(columns, () => new Cache("headings of a table", 4000))
    .get(heading, () => ({ is: understood(heading, columns) }));
  return is && { at, heading, ...is };
}

function understood(heading: string, columns: readonly Column[]): Understood | undefined {
  const { keys, texts, unit, told } = headingText(heading);
  const canonical = canonicalOf(columns);
  for (const key of keys) {
    const column = canonical.get(key);
    if (column) {
      if (unit && !fits(column, unit)) return undefined;
      return { exact: true, doubtful: false, meanings: new Map([[column, 1]]), unit };
    }
  }
  // Our own word for a result is never an input: "Depths" is no depth.
  const name = NAMES.get(columns)!;
  if (name === "row" && keys.some((key) => canonicalOf(RESULT_COLUMNS).has(key))) return undefined;
  for (const text of texts) {
    const said = meaningsOf(text, name);
    const meanings = (said ?? []).flatMap(({ key, languages, doubtful }) => {
      const column = columns.find((one) => one.key === key)!;
      if (unit && !fits(column, unit)) return [];
      // "Feed (mm/tooth)" says what "feed" alone does not.
      return [{ column, languages, doubtful: doubtful && (unit === undefined || unit.measure === "length") }];
    });
    const sure = meanings.filter((m) => !m.doubtful);
    const own = sure.length > 0 ? sure : meanings;
    if (own.length > 0)
      return {
        exact: false,
        doubtful: sure.length === 0,
        meanings: new Map(own.map((m) => [m.column, m.languages])),
        unit,
      };
    // Words in brackets that are understood make it another thing: "Ø (tool)" is not any "Ø".
    if (said !== undefined && text === texts[0] && told) return undefined;
  }
  return undefined;
}

/** True where a heading of that unit can be that column: sizes in a unit of either system, results in their own. */
function fits(column: Column, unit: UnitText): boolean {
  if (column.kind !== "number" && column.kind !== "whole") return unit.measure === "length" || unit.measure === "other";
  const factor = factorFor(column, unit);
  if (factor === undefined) return false;
  if (column.dimension) return systemOf(column.dimension, factor) !== undefined;
  return factor === 1 || !RESULT_COLUMNS.some((own) => own === column);
}

/** How many headings of a table each language can have said. */
const counted = (candidates: readonly Candidate[]): number[] =>
  LANGUAGES.map(
    (_, language) => candidates.filter((c) => [...c.meanings.values()].some((said) => said & (1 << language))).length,
  );

/** The languages that can have said most headings, then those that can have said fewer. */
function spokenMost(candidates: readonly Candidate[]): number[] {
  const counts = counted(candidates);
  return [...counts].sort((a, b) => b - a).map((count) => bitsOf(counts.map((own) => own === count)));
}

const bitsOf = (said: readonly boolean[]): number => said.reduce((bits, yes, at) => (yes ? bits | (1 << at) : bits), 0);

/** So many more headings than in its own language must be said in another, before a word of it is strange. */
const SURE_OF_LANGUAGE = 2;

/**
 * Headings of a language that the table does not speak: a German "Fase" is no Italian one. English is spoken
 * everywhere.
 */
function strangers(candidates: readonly Candidate[]): ReadonlySet<Candidate> {
  const counts = counted(candidates);
  const most = Math.max(...counts.slice(1));
  const familiar = bitsOf(counts.map((count, language) => language === 0 || most - count < SURE_OF_LANGUAGE));
  return new Set(candidates.filter((c) => [...c.meanings.values()].every((languages) => (languages & familiar) === 0)));
}

/** The one column that a heading means: in the language most spoken beside it, or as the only one still free. */
function meant({ meanings }: Candidate, spoken: readonly number[], taken: ReadonlySet<string>): Column | undefined {
  for (const languages of spoken) {
    const said = [...meanings].filter(([, bits]) => bits & languages).map(([column]) => column);
    if (said.length === 0) continue;
    const free = said.filter((column) => !taken.has(column.key));
    return free.length === 1 ? free[0] : undefined;
  }
  return undefined;
}

/** A heading that may mean several columns, or one of them or something else. */
export interface Doubt<K extends string = string> {
  /** Place of the column in the table, from 0. */
  readonly at: number;
  readonly heading: string;
  readonly columns: readonly Column<K>[];
}

/**
 * Which column is which, and which headings leave it open. The canonical heading beats other spellings; the first of
 * two equal headings counts. A spelling that means several columns is taken in the language that most headings of the
 * table speak; one that means two in one language is not guessed, unless all but one of them have a heading of their
 * own. A unit in brackets or at the end must be one of the column's.
 */
export function readHeadings<K extends string>(
  headings: readonly unknown[],
  columns: readonly Column<K>[],
): { matches: Match<K>[]; doubts: Doubt<K>[] } {
  const candidates = headings.flatMap((heading, at) => candidate(heading, at, columns) ?? []);
  const found = new Map<string, { of: Candidate; column: Column }>();
  const put = (of: Candidate, column: Column) => {
    const known = found.get(column.key);
    if (!known || (of.exact && !known.of.exact)) found.set(column.key, { of, column });
  };
  const strange = strangers(candidates);
  const open = candidates.filter((c) => c.doubtful || c.meanings.size > 1 || strange.has(c));
  for (const c of candidates) if (!open.includes(c)) put(c, [...c.meanings.keys()][0]!);
  const left: Candidate[] = [];
  const spoken = spokenMost(candidates);
  const taken = new Set(found.keys());
  for (const c of open) {
    const column = c.doubtful || strange.has(c) ? undefined : meant(c, spoken, taken);
    if (column) put(c, column);
    else left.push(c);
  }
  const doubts = left.map(({ at, heading, meanings }) => ({
    at,
    heading,
    columns: [...meanings.keys()].filter((column) => !found.has(column.key)) as Column<K>[],
  }));
  const matches = [...found.values()]
    .sort((a, b) => a.of.at - b.of.at)
    .map(({ of: { at, heading, unit }, column }) => ({
      at,
      heading,
      column: column as Column<K>,
      ...named(column, unit),
    }));
  return { matches, doubts: doubts.filter((doubt) => doubt.columns.length > 0) };
}

/** Which column is which: what `readHeadings` is sure of. */
export const matchHeadings = <K extends string>(
  headings: readonly unknown[],
  columns: readonly Column<K>[],
): Match<K>[] => readHeadings(headings, columns).matches;

/** What a heading's unit says of the column's numbers. */
function named(column: Column, unit: UnitText | undefined): { units?: "mm" | "in"; factor?: number } {
  const factor = unit && factorFor(column, unit);
  if (column.dimension) return { units: systemOf(column.dimension, factor) };
  return factor === 1 ? {} : { factor };
}
