/**
 * What a person said about headings, as the workbook keeps it. An answer belongs to the heading's text: it follows the
 * column wherever it is moved, and into other tables of the workbook. A column that was given another heading is found
 * again by its neighbours: where the old heading is gone, and one column that nobody knows stands between the same two
 * headings as the old one did, the answer is that column's. Pure.
 */
import { normalHeading } from "../../src/table/columns.ts";
import type { CellValue } from "../host/host.ts";
import { type HandMatches, match, planningScore } from "./planning.ts";

/** Name under which the workbook keeps it. */
export const KEPT_AS = "headings";

export interface Answer {
  /** Heading, as `normalHeading` makes it. */
  readonly heading: string;
  /** "in:depth", "out:tableFeed", "" for "not used". */
  readonly key: string;
  /** Headings that stood left and right of it; "" at an end of the table. */
  readonly between: readonly [left: string, right: string];
}

export interface Kept {
  readonly answers: readonly Answer[];
  /** Rows that were said to hold headings, by their texts. */
  readonly heads: readonly (readonly string[])[];
}

export const NOTHING_KEPT: Kept = { answers: [], heads: [] };

const isTexts = (value: unknown): value is string[] =>
  Array.isArray(value) && value.every((one) => typeof one === "string");

/** What a text of the workbook says; a text that is damaged or of a later kind says nothing. */
export function readKept(text: string | undefined): Kept {
  if (text === undefined) return NOTHING_KEPT;
  try {
    const { is, answers, heads } = JSON.parse(text);
    if (is !== 1 || !Array.isArray(answers) || !Array.isArray(heads)) return NOTHING_KEPT;
    return {
      answers: answers.flatMap((one): Answer[] => {
        const [heading, key, left, right] = isTexts(one) ? one : [];
        if (!heading || key === undefined || left === undefined || right === undefined) return [];
        return key === "" || /^(?:in|out):[a-zA-Z0-9]+$/.test(key) ? [{ heading, key, between: [left, right] }] : [];
      }),
      heads: heads.filter(isTexts),
    };
  } catch {
    return NOTHING_KEPT;
  }
}

/** The text that the workbook keeps; null where there is nothing to keep. */
export const keptText = ({ answers, heads }: Kept): string | null =>
  answers.length === 0 && heads.length === 0
    ? null
    : JSON.stringify({ is: 1, answers: answers.map((a) => [a.heading, a.key, ...a.between]), heads });

const betweenAt = (headings: readonly string[], at: number): [string, string] => [
  headings[at - 1] ?? "",
  headings[at + 1] ?? "",
];

/**
 * With what a person says of one column of a table: a key, "" for not used, undefined to take it back. A meaning belongs
 * to one column of a table only.
 */
export function withAnswer(kept: Kept, headings: readonly CellValue[], at: number, key: string | undefined): Kept {
  const names = headings.map(normalHeading);
  const heading = names[at]!;
  const here = new Set(names);
  const gone = followed(kept, headings).find(({ to }) => to === heading)?.from;
  const others = kept.answers.filter(
    (one) => one.heading !== heading && one.heading !== gone && !(key && one.key === key && here.has(one.heading)),
  );
  return {
    ...kept,
    answers: key === undefined ? others : [...others, { heading, key, between: betweenAt(names, at) }],
  };
}

/** Answers whose heading is gone from the table, with the heading that stands in its place now. */
export function followed(kept: Kept, headings: readonly CellValue[]): { from: string; to: string; key: string }[] {
  const names = headings.map(normalHeading);
  const here = new Set(names);
  const lost = kept.answers.filter((one) => !here.has(one.heading));
  if (lost.length === 0) return [];
  const said = new Map(kept.answers.map((one) => [one.heading, one.key]));
  const { inputs, outputs, doubts, basisAt, changedAt } = match(headings);
  const known = new Set([...inputs, ...outputs, ...doubts].map((one) => one.at));
  const free = names.flatMap((name, at) =>
    name === "" || known.has(at) || said.has(name) || at === basisAt || at === changedAt ? [] : [{ name, at }],
  );
  const same = ([left, right]: readonly [string, string], at: number) => {
    const [l, r] = betweenAt(names, at);
    return l === left && r === right;
  };
  const found = lost.flatMap(({ heading, key, between }) => {
    const there = free.filter(({ at }) => same(between, at));
    return there.length === 1 ? [{ from: heading, to: there[0]!.name, key }] : [];
  });
  // Two answers that would go to one column go to none.
  return found.filter(({ to }) => found.filter((other) => other.to === to).length === 1);
}

/** What is said about headings, with those of a table that have taken the place of others. */
export function handMatches(kept: Kept, headings: readonly CellValue[] = []): HandMatches {
  return Object.fromEntries([
    ...kept.answers.map(({ heading, key }) => [heading, key]),
    ...followed(kept, headings).map(({ to, key }) => [to, key]),
  ]);
}

/** Headings that a person pointed at count for more than any that look like ones. */
const POINTED_AT = 1000;
/** A row of headings has as many texts at the least. */
export const FEWEST = 2;

/** Texts of a row that is said to hold headings; undefined where it holds too few. */
export function headTexts(cells: readonly CellValue[]): string[] | undefined {
  const texts = cells.flatMap((cell) => (typeof cell === "string" ? normalHeading(cell) : "")).filter((t) => t !== "");
  return texts.length < FEWEST ? undefined : [...new Set(texts)];
}

const scores = new WeakMap<Kept, (headings: readonly CellValue[]) => number>();

/**
 * How much cells look like the headings of a planning table, by what is known of this workbook. A row that was said to
 * hold headings is known again by half of them, so that columns may be added, taken out and renamed.
 */
export function scoreOf(kept: Kept): (headings: readonly CellValue[]) => number {
  if (kept.answers.length === 0 && kept.heads.length === 0) return planningScore;
  const known = scores.get(kept);
  if (known) return known;
  const byHand = handMatches(kept);
  const made = (headings: readonly CellValue[]): number => {
    const texts = new Set(headTexts(headings) ?? []);
    for (const head of kept.heads) {
      const shared = head.filter((text) => texts.has(text)).length;
      if (shared >= FEWEST && 2 * shared >= head.length) return POINTED_AT + shared;
    }
    return planningScore(headings, byHand);
  };
  scores.set(kept, made);
  return made;
}
