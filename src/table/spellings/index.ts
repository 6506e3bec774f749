/** Spellings of the columns and the words of their cells by language: one file a language, each known by its key. */
import type { MACHINE, MATERIAL, TOOL } from "../lists.ts";
import type { ValueOf } from "../quantity.ts";
import type { ResultKey } from "../results.ts";
import type { ROW, RowKey } from "../rows.ts";
import { de } from "./de.ts";
import { en } from "./en.ts";
import { es } from "./es.ts";
import { fr } from "./fr.ts";
import { it } from "./it.ts";
import { ja } from "./ja.ts";

/** Spellings of each key as people write them, with a bar between two. */
type Spelled<K extends string> = Readonly<Partial<Record<K, string>>>;

/** What stands in cells of a column of words or of yes and no. */
export interface CellWords {
  readonly operation?: Spelled<ValueOf<(typeof ROW)["operation"]>>;
  readonly units?: Spelled<"mm" | "in">;
  readonly hand?: Spelled<"right" | "left">;
  readonly way?: Spelled<"climb" | "conventional">;
  readonly side?: Spelled<"straight" | "inside" | "outside">;
  readonly coolant?: Spelled<ValueOf<(typeof ROW)["coolant"]>>;
  readonly kind?: Spelled<ValueOf<(typeof TOOL)["kind"]>>;
  readonly substrate?: Spelled<ValueOf<(typeof TOOL)["substrate"]>>;
  readonly group?: Spelled<ValueOf<(typeof MATERIAL)["group"]>>;
  /** Every column of yes and no. */
  readonly flag?: Spelled<"yes" | "no">;
  /** A column of yes and no of its own: "thru" and "blind" in the column Through. */
  readonly through?: Spelled<"yes" | "no">;
}

export interface Spellings {
  readonly row: Spelled<RowKey>;
  readonly result?: Spelled<ResultKey>;
  readonly material?: Spelled<keyof typeof MATERIAL & string>;
  readonly tool?: Spelled<keyof typeof TOOL & string>;
  readonly machine?: Spelled<keyof typeof MACHINE & string>;
  readonly words?: CellWords;
}

/** The languages at hand, English first. */
export const LANGUAGES: readonly Spellings[] = [en, de, fr, es, it, ja];

type Table = Exclude<keyof Spellings, "words">;

/** Spellings of one table by key, a text for each language. */
export function spellingsOf(table: Table): Readonly<Record<string, readonly string[]>> {
  const all: Record<string, string[]> = {};
  LANGUAGES.forEach((language, at) => {
    for (const [key, texts] of Object.entries(language[table] ?? {})) {
      all[key] ??= LANGUAGES.map(() => "");
      all[key][at] = texts as string;
    }
  });
  return all;
}

/** One spelling and the same without what people leave out who have no umlauts. */
export function spelledApart(texts: string): string[] {
  return texts.split("|").flatMap((text) => {
    const plain = text.replace(/[äÄ]/g, "ae").replace(/[öÖ]/g, "oe").replace(/[üÜ]/g, "ue");
    return plain === text ? [text] : [text, plain];
  });
}
