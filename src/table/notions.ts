/** A heading as notions: its words looked up in each language, compounds and abbreviations taken apart. */
import { Cache } from "../cache.ts";
import { compact, fold } from "./fold.ts";
import { common } from "./spellings/common.ts";
import { COMPOUNDING, LANGUAGES, spelledApart, type Words } from "./spellings/index.ts";

/** Notions in the order of their names, with a blank between two: how a heading is looked up. */
export type NotionSet = string;

/** What one word may stand for: each a list of notions. */
type Senses = readonly (readonly string[])[];

/** No heading of a column is longer. */
const LONGEST = 100;
/** Shorter parts of a compound, and shorter abbreviations, may be anything. */
const SHORTEST = 3;
/** More ways to read a heading than this are none. */
const MOST_SETS = 48;

const [GERMAN, JAPANESE] = [1, 5];

interface Lexicon {
  readonly language: number;
  readonly exact: ReadonlyMap<string, Senses>;
  /** Words without the ending that number and gender change. */
  readonly stems: ReadonlyMap<string, Senses>;
  /** The first two letters of every word: what begins otherwise is none. */
  readonly starts: ReadonlySet<string>;
  /** Length of the longest word. */
  readonly longest: number;
  readonly compounds: boolean;
  /** Letters of the shortest word inside a compound. */
  readonly shortest: number;
}

/** A word without the ending of number and gender; "~" where a vowel went, so that a slip of one is not mended. */
function stem(word: string, language: number): string {
  if (language === 0) return word.replace(/(?<=ss|ch|x)es$|(?<!s)s$/, "");
  if (language === GERMAN || language === JAPANESE || word.length < 4) return word;
  return word.replace(/([^aeio])[aeio]?s?$/, (ending, last) => (/[aeio]/.test(ending) ? `${last}~` : last));
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

const written = (folded: string, language: number): string => (language === JAPANESE ? japanese(folded) : folded);

function lexiconOf(language: number): Lexicon {
  const exact = new Map<string, Senses>();
  const stems = new Map<string, Senses>();
  const put = (map: Map<string, Senses>, key: string, sense: readonly string[]) => {
    const senses = map.get(key) ?? [];
    const name = sense.join(" ");
    if (!senses.some((known) => known.join(" ") === name)) map.set(key, [...senses, sense]);
  };
  const add = (words: Words) => {
    for (const [key, texts] of Object.entries(words))
      for (const text of spelledApart(texts)) {
        const word = compact(written(fold(text), language));
        const sense = key === "stop" ? [] : key.split(" ");
        put(exact, word, sense);
        put(stems, stem(word, language), sense);
      }
  };
  add(common);
  add(LANGUAGES[language]!.notions);
  return {
    language,
    exact,
    stems,
    starts: new Set([...exact.keys()].map((word) => word.slice(0, 2))),
    longest: Math.max(...[...exact.keys()].map((word) => word.length)),
    compounds: COMPOUNDING.has(language),
    shortest: language === JAPANESE ? 1 : SHORTEST,
  };
}

const lexicons: (Lexicon | undefined)[] = [];
const lexicon = (language: number): Lexicon => {
  lexicons[language] ??= lexiconOf(language);
  return lexicons[language];
};

/** The letters and digits of a text without anything between, with the places where words begin and end. */
interface Spelled {
  readonly text: string;
  readonly edges: ReadonlySet<number>;
  /** By place: where the next word begins or the text ends. */
  readonly next: readonly number[];
  /** Ends of words that a full stop cuts short. */
  readonly cut: ReadonlySet<number>;
}

const WORD = /[\p{L}\p{N}%]+/gu;

/** What is written with signs or grown together. */
const SIGNS = /n[°.r]|[#±ø]|\+ ?\//;
const signsApart = (folded: string): string =>
  folded
    .replace(/n°|(?<![\p{L}\p{N}])n\.(?![\p{L}\p{N}])/gu, "no ")
    .replace(/(?<=\p{L}{3})nr(?![\p{L}\p{N}])/gu, " nr")
    .replace(/#/g, " no ")
    .replace(/\+ ?\/ ?-|±/g, " pm ")
    .replace(/ø/g, " ø ");

function spelled(folded: string): Spelled {
  const apart = SIGNS.test(folded) ? signsApart(folded) : folded;
  let text = "";
  const edges = new Set([0]);
  const cut = new Set<number>();
  for (const match of apart.matchAll(WORD)) {
    text += match[0];
    edges.add(text.length);
    if (apart[match.index + match[0].length] === ".") cut.add(text.length);
  }
  const next: number[] = [];
  for (let at = text.length - 1, edge = text.length; at >= 0; at--) {
    next[at] = edge;
    if (edges.has(at)) edge = at;
  }
  return { text, edges, next, cut };
}

/** True for a word's beginning, and for a beginning with the last letter: "Bem.", "Bemerkg.". */
const shortFor = (text: string, word: string): boolean =>
  word.startsWith(text) ||
  (text.length > SHORTEST && word.startsWith(text.slice(0, -1)) && word.endsWith(text.at(-1)!));

const latin = (text: string): boolean => /^[a-z]+$/.test(text);

const NONE: Senses = [];

/** What the letters between two places may stand for. */
function sensesOf({ text, edges, next, cut }: Spelled, from: number, to: number, of: Lexicon, short: boolean): Senses {
  const starts = edges.has(from);
  const ends = edges.has(to);
  if (!(starts && ends) && !(of.compounds && to - from >= of.shortest)) return NONE;
  const word = text.slice(from, to);
  const own = of.exact.get(word);
  if (own) return own;
  if (!ends || next[from]! < to) return NONE;
  if (short && cut.has(to) && (word.length >= SHORTEST || !latin(word)) && (starts || of.compounds)) {
    const found = [...of.exact].filter(([known]) => shortFor(word, known)).flatMap(([, senses]) => senses);
    if (found.length > 0) return found;
  }
  return of.stems.get(stem(word, of.language)) ?? NONE;
}

/** Letters that join two parts of a German compound. */
const JOINTS = ["s", "n", "en", "es"];

/** Every way to read a text in a language as a set of notions, by the fewest words. */
function setsIn(said: Spelled, of: Lexicon, short: boolean): NotionSet[] {
  const { text, edges } = said;
  /** By place: how few words lead there, and the sets that they make. */
  const reached: ({ words: number; sets: Set<NotionSet> } | undefined)[] = [{ words: 0, sets: new Set([""]) }];
  const arrive = (at: number, words: number, sets: Iterable<NotionSet>) => {
    const known = reached[at];
    if (known && known.words < words) return;
    const target = known && known.words === words ? known : { words, sets: new Set<NotionSet>() };
    for (const set of sets) if (target.sets.size < MOST_SETS) target.sets.add(set);
    reached[at] = target;
  };
  for (let from = 0; from < text.length; from++) {
    const here = reached[from];
    if (!here) continue;
    const longest = of.starts.has(text.slice(from, from + 2)) ? of.longest : 1;
    const last = Math.min(text.length, from + longest);
    for (let to = of.compounds ? from + 1 : said.next[from]!; to <= last; to = of.compounds ? to + 1 : said.next[to]!) {
      const senses = sensesOf(said, from, to, of, short);
      if (senses.length === 0) continue;
      const sets = senses.flatMap((sense) => [...here.sets].map((set) => withNotions(set, sense)));
      arrive(to, here.words + 1, sets);
      if (of.language === GERMAN && !edges.has(to))
        for (const joint of JOINTS)
          if (text.startsWith(joint, to) && !edges.has(to + joint.length))
            arrive(to + joint.length, here.words + 1, sets);
    }
  }
  return [...(reached[text.length]?.sets ?? [])].flatMap((set) => numbered(set));
}

/** Texts read before: every row of a sheet is asked whether it holds headings. */
const seen = new Cache<string, readonly (readonly NotionSet[])[]>("notions", 4000);

/** Every way to read a folded text, by language; `short`: with words that a full stop cuts short. */
export function notionSets(folded: string, short: boolean): readonly (readonly NotionSet[])[] {
  if (folded.length > LONGEST) return [];
  return seen.get(`${short ? "." : ""}|${folded}`, () => {
    const plain = spelled(folded);
    const kana = japanese(folded);
    if (plain.text === "") return [];
    return LANGUAGES.map((_, language) =>
      setsIn(language === JAPANESE && kana !== folded ? spelled(kana) : plain, lexicon(language), short),
    );
  });
}

/** "N" beside another word is a number, and alone is no word. */
function numbered(set: NotionSet): NotionSet[] {
  const notions = set.split(" ");
  if (!notions.includes("nr")) return set === "" ? [] : [set];
  return notions.length === 1
    ? []
    : [
        withNotions(
          "",
          notions.map((notion) => (notion === "nr" ? "no" : notion)),
        ),
      ];
}

/** A set with more notions in it. */
export function withNotions(set: NotionSet, more: readonly string[]): NotionSet {
  return [...new Set([...(set === "" ? [] : set.split(" ")), ...more])].sort().join(" ");
}
