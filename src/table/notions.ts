/** A heading as notions: its words looked up in each language, compounds and abbreviations taken apart. */
import { Cache } from "../cache.ts";
import {
  ELIDED,
  GERMAN,
  JAPANESE,
  japanese,
  type Lexicon,
  latin,
  lexicons,
  reachAt,
  type Senses,
  SHORTEST,
  speakersAt,
  stem,
} from "./lexicon.ts";

/** Notions in the order of their names, with a blank between two: how a heading is looked up. */
export type NotionSet = string;

/** No heading of a column is longer. */
const LONGEST = 100;
/** More ways to read a heading than this are none. */
const MOST_SETS = 48;

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
const signsApart = (folded: string): string =>
  folded
    .replace(/n°|(?<![\p{L}\p{N}])n\.(?![\p{L}\p{N}])/gu, "no ")
    .replace(/(?<=\p{L}{3})nr(?![\p{L}\p{N}])/gu, " nr")
    .replace(ELIDED, " ")
    .replace(/#/g, " no ")
    .replace(/\+ ?\/ ?-|±/g, " pm ")
    .replace(/ø/g, " ø ");

function spelled(folded: string): Spelled {
  const apart = signsApart(folded);
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

/** A word with which a text may go on: where the next begins, and what it may stand for. */
interface Step {
  readonly to: number;
  readonly senses: Senses;
}

/** The words that may begin at a place. */
function stepsFrom(said: Spelled, from: number, of: Lexicon, short: boolean): Step[] {
  const { text, edges, next } = said;
  const last = Math.min(text.length, from + reachAt(of, text, from));
  const steps: Step[] = [];
  for (let to = of.compounds ? from + 1 : next[from]!; to <= last; to = of.compounds ? to + 1 : next[to]!) {
    const known = sensesOf(said, from, to, of, short);
    // A single letter at the end is a name: "Side A".
    const name = to === text.length && to - from === 1 && latin(text[from]!);
    const senses = name ? known.filter((sense) => sense.length > 0) : known;
    if (senses.length === 0) continue;
    steps.push({ to, senses });
    if (of.language === GERMAN && !edges.has(to))
      for (const joint of JOINTS)
        if (text.startsWith(joint, to) && !edges.has(to + joint.length)) steps.push({ to: to + joint.length, senses });
  }
  return steps;
}

/** Every way to read a text in a language as a set of notions, by the fewest words. */
function setsIn(said: Spelled, of: Lexicon, short: boolean): NotionSet[] {
  const { length } = said.text;
  // Most texts are no heading: whether words lead to the end is found before what they say.
  const steps: Step[][] = [];
  const fewest: (number | undefined)[] = [0];
  for (let from = 0; from < length; from++) {
    const words = fewest[from];
    if (words === undefined) continue;
    const here = stepsFrom(said, from, of, short);
    steps[from] = here;
    for (const { to } of here) fewest[to] = Math.min(words + 1, fewest[to] ?? Number.POSITIVE_INFINITY);
  }
  if (fewest[length] === undefined) return [];
  const sets: Set<NotionSet>[] = [new Set([""])];
  for (let from = 0; from < length; from++)
    for (const { to, senses } of steps[from] ?? []) {
      if (fewest[to] !== fewest[from]! + 1) continue;
      sets[to] ??= new Set();
      for (const sense of senses)
        for (const set of sets[from]!) if (sets[to].size < MOST_SETS) sets[to].add(withNotions(set, sense));
    }
  return [...sets[length]!].flatMap((set) => numbered(set));
}

/** Texts read before: every row of a sheet is asked whether it holds headings. */
const seen = new Cache<string, readonly (readonly NotionSet[])[]>("notions", 4000);

/** Every way to read a folded text, by language; `short`: with words that a full stop cuts short. */
export function notionSets(folded: string, short: boolean): readonly (readonly NotionSet[])[] {
  if (folded.length > LONGEST) return [];
  return seen.get(`${short ? "." : ""}|${folded}`, () => {
    const plain = spelled(folded);
    const kana = spelled(japanese(folded));
    return lexicons().map((of) => {
      const said = of.language === JAPANESE ? kana : plain;
      return speakersAt(said.text, 0, said.edges) & (1 << of.language) ? setsIn(said, of, short) : [];
    });
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
