/** What the words of a cell mean, in every language at hand. */
import { compact, fold } from "./fold.ts";
import type { Column } from "./quantity.ts";
import { LANGUAGES, spelledApart } from "./spellings/index.ts";

/** A longer text is no word of a cell. */
const LONGEST = 80;

const keyOf = (text: string): string => compact(fold(text));

/** Every spelling with the values that it may stand for; the column's own words stand for themselves. */
type Meanings = ReadonlyMap<string, readonly string[]>;

/** Made once for each column, when its first cell of words is read. */
const tables = new WeakMap<Column, Meanings>();

function meaningsOf(column: Column): Meanings {
  const known = tables.get(column);
  if (known) return known;
  const table = new Map<string, readonly string[]>();
  const own = column.kind === "flag" ? ["yes", "no"] : column.words!;
  const sets = column.kind === "flag" ? ["flag", column.key] : [column.key];
  for (const { words } of LANGUAGES)
    for (const set of sets)
      for (const [value, texts] of Object.entries(
        (words as Record<string, Record<string, string>> | undefined)?.[set] ?? {},
      ))
        for (const text of spelledApart(texts)) {
          const key = keyOf(text);
          const values = table.get(key) ?? [];
          if (!values.includes(value)) table.set(key, [...values, value]);
        }
  for (const word of own) table.set(keyOf(word), [word]);
  tables.set(column, table);
  return table;
}

/** The values that a text may stand for in a column of words or of yes and no: none, one, or several. */
export function meantBy(text: string, column: Column): readonly string[] {
  if (text.length > LONGEST) return [];
  return meaningsOf(column).get(keyOf(text)) ?? [];
}
