/** The words of headings and cells by language: one file a language; what headings mean stands once, in notions. */
import type { MATERIAL, TOOL } from "../lists.ts";
import type { ValueOf } from "../quantity.ts";
import type { ROW } from "../rows.ts";
import { de } from "./de.ts";
import { en } from "./en.ts";
import { es } from "./es.ts";
import { fr } from "./fr.ts";
import { it } from "./it.ts";
import { ja } from "./ja.ts";

/** Spellings of each key as people write them, with a bar between two. */
type Spelled<K extends string> = Readonly<Partial<Record<K, string>>>;

/** Words by the notion that they name; a key of several notions with blanks between is named by one word. */
export type Words = Readonly<Record<string, string>>;

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
  /** Words of headings. "stop" are those that say nothing of their own. */
  readonly notions: Words;
  readonly words: CellWords;
}

/** The languages at hand, English first. */
export const LANGUAGES: readonly Spellings[] = [en, de, fr, es, it, ja];
/** Languages that write words together, by their place. */
export const COMPOUNDING: ReadonlySet<number> = new Set([0, 1, 5]);

/** One spelling and the same without what people leave out who have no umlauts. */
export function spelledApart(texts: string): string[] {
  const all = texts.split("|");
  if (!/[äöüÄÖÜ]/.test(texts)) return all;
  return all.flatMap((text) => {
    const plain = text.replace(/[äÄ]/g, "ae").replace(/[öÖ]/g, "oe").replace(/[üÜ]/g, "ue");
    return plain === text ? [text] : [text, plain];
  });
}
