/** The words of headings, one lexicon a language: what each may stand for, and how words of it begin. */
import { Cache } from "../cache.ts";
import { compact, fold } from "./fold.ts";
import { common } from "./spellings/common.ts";
import { COMPOUNDING, LANGUAGES, spelledApart, type Words } from "./spellings/index.ts";

/** What one word may stand for: each a list of notions. */
export type Senses = readonly (readonly string[])[];

/** Shorter parts of a compound, and shorter abbreviations, may be anything. */
export const SHORTEST = 3;

export const [GERMAN, FRENCH, JAPANESE] = [1, 2, 5];

export interface Lexicon {
  readonly language: number;
  readonly exact: ReadonlyMap<string, Senses>;
  /** Words without the ending that number and gender change. */
  readonly stems: ReadonlyMap<string, Senses>;
  /** Length of the longest word with each beginning. */
  readonly reach: ReadonlyMap<string, number>;
  readonly compounds: boolean;
  /** Letters of the shortest word inside a compound. */
  readonly shortest: number;
}

/** A word without the ending of number and gender; "~" where a vowel went, so that a slip of one is not mended. */
export function stem(word: string, language: number): string {
  if (language === 0) return word.length < 5 ? word : word.replace(/(?<=ss|ch|x)es$|(?<!s)s$/, "");
  if (language === GERMAN || word.length < 4) return word;
  const one = word.replace(/(?<!s)s$/, "");
  return one.length < 4 ? one : one.replace(language === FRENCH ? /(?<![aeio])e$/ : /(?<![aeio])[aeio]$/, "~");
}

const KATAKANA: readonly (readonly [RegExp, string])[] = [
  [/ねじれ/g, "ネジレ"],
  [/ねじ/g, "ネジ"],
  [/たわみ/g, "タワミ"],
  [/はめあい/g, "ハメアイ"],
  [/はめ/g, "ハメ"],
  [/あけ/g, "アケ"],
  [/くず/g, "クズ"],
  [/一(?=刃)/g, "1"],
  // Long vowels at the end of a word are written and left out.
  [/ー/g, ""],
];

/** Japanese as it is compared: kana that follow a character are written and left out. */
export function japanese(text: string): string {
  if (!/[\u3041-\u30ff]/.test(text)) return text;
  const plain = KATAKANA.reduce((all, [from, to]) => all.replace(from, to), text);
  const bare = plain.replace(/[さきりしみちげけえたれるめのらいすうがあびまかわせよ]/g, "");
  return bare.trim() === "" ? plain : bare;
}

/** "d'" and "l'" before a word, in French and Italian. */
export const ELIDED = /(?<!\p{L})[dl]'(?=\p{L})/gu;

const written = (folded: string, language: number): string =>
  language === JAPANESE ? japanese(folded) : folded.replace(ELIDED, "");

/** Letters that tell how a word begins, and fewer of them that may be a whole word. */
const BEGINNING = 3;
const FEWER = [1, 2];

/** True for a word of Latin letters. */
export const latin = (word: string): boolean => /[a-z]/.test(word);

/** The languages that have a word of this beginning: one bit a language. */
const speakers = new Map<string, number>();

function lexiconOf(language: number): Lexicon {
  const exact = new Map<string, Senses>();
  const stems = new Map<string, Senses>();
  const put = (map: Map<string, Senses>, key: string, sense: readonly string[]) => {
    map.set(key, [...(map.get(key) ?? []), sense]);
  };
  const reach = new Map<string, number>();
  const begins = (letters: string, length: number) => {
    speakers.set(letters, (speakers.get(letters) ?? 0) | (1 << language));
    reach.set(letters, Math.max(length, reach.get(letters) ?? 0));
  };
  const add = (words: Words) => {
    for (const [key, texts] of Object.entries(words)) {
      const sense = key === "stop" ? [] : key.split(" ");
      for (const text of spelledApart(texts)) {
        const word = compact(written(fold(text), language));
        put(exact, word, sense);
        put(stems, stem(word, language), sense);
        begins(word.slice(0, BEGINNING), word.length);
        // Of other letters than a to z one or two may be a word cut short.
        if (!latin(word[0]!)) for (const letters of FEWER) begins(word.slice(0, letters), letters);
      }
    }
  };
  add(common);
  add(LANGUAGES[language]!.notions);
  return {
    language,
    exact,
    stems,
    reach,
    compounds: COMPOUNDING.has(language),
    shortest: language === JAPANESE ? 1 : SHORTEST,
  };
}

const made = new Cache<"all", readonly Lexicon[]>("lexicons", 1);

/** The lexicons of all languages, made when the first heading is read. */
export const lexicons = (): readonly Lexicon[] =>
  made.get("all", () => LANGUAGES.map((_, language) => lexiconOf(language)));

/** Beginnings of one letter or two are whole words: they end where one may, but inside others in Japanese. */
const mayBe = (ends: ReadonlySet<number>, to: number): number => (ends.has(to) ? -1 : 1 << JAPANESE);

/** The languages in which a word may begin at a place of a text without blanks: one bit a language. */
export function speakersAt(text: string, from: number, ends: ReadonlySet<number>): number {
  let languages = speakers.get(text.slice(from, from + BEGINNING)) ?? 0;
  for (const letters of FEWER)
    languages |= (speakers.get(text.slice(from, from + letters)) ?? 0) & mayBe(ends, from + letters);
  return languages;
}

/** Letters that number and gender add at the most; a word of fewer than three letters is no longer. */
const ENDING = 2;

/** How far a word of a language that begins at a place of a text may reach. */
export const reachAt = (of: Lexicon, text: string, from: number): number =>
  (of.reach.get(text.slice(from, from + BEGINNING)) ?? 0) + ENDING;
