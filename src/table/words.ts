/** What the words of a cell mean, in every language at hand. */
import { Cache } from "../cache.ts";
import { compact, fold } from "./fold.ts";
import { japanese } from "./lexicon.ts";
import type { Column } from "./quantity.ts";
import { LANGUAGES, spelledApart } from "./spellings/index.ts";

/** A longer text is no word of a cell. */
const LONGEST = 80;

/** A word as it is compared: an angle beside it ("countersink 90°") says nothing of which word it is. */
const keyOf = (text: string): string => compact(japanese(fold(text).replace(/\d{2,3} *°/, "")));

/** Every spelling with the values that it may stand for; the column's own words stand for themselves. */
type Meanings = ReadonlyMap<string, readonly string[]>;

function meaningsOf(column: Column): Meanings {
  const table = new Map<string, readonly string[]>();
  const own = column.kind === "flag" ? ["yes", "no"] : column.words!;
  const sets = column.kind === "flag" ? ["flag", column.key] : [column.key];
  for (const { words } of LANGUAGES)
    for (const set of sets)
      for (const [value, texts] of Object.entries((words as Record<string, Record<string, string>>)[set] ?? {}))
        for (const text of spelledApart(texts)) {
          const key = keyOf(text);
          const values = table.get(key) ?? [];
          if (!values.includes(value)) table.set(key, [...values, value]);
        }
  for (const word of own) table.set(keyOf(word), [word]);
  return table;
}

/** Made once for each column, when its first cell of words is read; a table has few such columns. */
const tables = new Cache<Column, Meanings>("words of a column", 40);

/** The values that a text may stand for in a column of words or of yes and no: none, one, or several. */
export function meantBy(text: string, column: Column): readonly string[] {
  if (text.length > LONGEST) return [];
  const known = tables.get(column, () => meaningsOf(column));
  return known.get(keyOf(text)) ?? meantShort(text, known);
}

/** No shorter beginning is taken for a word: "c." may be anything. */
const SHORTEST = 3;

/** Words cut short by a full stop: "Gegenl.", "Gew.-bohren"; what all that it may stand for have in common. */
function meantShort(text: string, known: Meanings): readonly string[] {
  const parts = fold(text)
    .split(".")
    .map((part) => part.replace(/[^\p{L}\p{N}]/gu, ""));
  if (parts.length < 2 || parts.length > 3 || parts[0]!.length < SHORTEST) return [];
  const found = new Set<string>();
  for (const [word, values] of known) {
    const rest = word.slice(parts[0]!.length);
    if (!word.startsWith(parts[0]!) || !rest.endsWith(parts.at(-1)!)) continue;
    if (parts.length === 3 && !rest.slice(0, rest.length - parts[2]!.length).includes(parts[1]!)) continue;
    for (const value of values) found.add(value);
  }
  return [...found];
}
