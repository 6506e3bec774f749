/** Spellings of the columns by language: one file a language, each known by its key. */
import type { MACHINE, MATERIAL, TOOL } from "../lists.ts";
import type { ResultKey } from "../results.ts";
import type { RowKey } from "../rows.ts";
import { de } from "./de.ts";
import { en } from "./en.ts";

type Words<K extends string> = Readonly<Partial<Record<K, readonly string[]>>>;

export interface Spellings {
  readonly row: Words<RowKey>;
  readonly result: Words<ResultKey>;
  readonly material: Words<keyof typeof MATERIAL>;
  readonly tool: Words<keyof typeof TOOL>;
  readonly machine: Words<keyof typeof MACHINE>;
}

const LANGUAGES: readonly Spellings[] = [en, de];

/** Spellings of one table in all languages, by key. */
export function spellingsOf<T extends keyof Spellings>(table: T): Readonly<Record<string, readonly string[]>> {
  const all: Record<string, string[]> = {};
  for (const language of LANGUAGES)
    for (const [key, words] of Object.entries<readonly string[]>(language[table] as Record<string, readonly string[]>))
      all[key] = [...(all[key] ?? []), ...words];
  return all;
}
