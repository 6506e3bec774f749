/** A heading taken apart: the unit that it names, and what is left of it to look a column up by. */
import { Cache } from "../cache.ts";
import { compact, fold } from "./fold.ts";
import { type UnitText, unitOf } from "./unit-text.ts";

export interface HeadingText {
  /** Folded, from the whole of it to the least: with what its brackets hold, without that, without a unit at its end. */
  readonly texts: readonly string[];
  /** The same without blanks and punctuation. */
  readonly keys: readonly string[];
  readonly unit?: UnitText;
  /** True where brackets hold words and not a unit: the first text has them. */
  readonly told: boolean;
}

const OPEN = "([{<【〔「『〈《";
const CLOSE = ")]}>】〕」』〉》";

/** What stands in brackets and what does not, in one look at each character; an open bracket ends with the text. */
function brackets(text: string): { outside: string; inside: string[] } {
  let outside = "";
  let inner: string | undefined;
  const inside: string[] = [];
  for (const c of text) {
    if (inner === undefined && OPEN.includes(c)) inner = "";
    else if (inner !== undefined && CLOSE.includes(c)) {
      inside.push(inner);
      outside += " ";
      inner = undefined;
    } else if (inner === undefined) outside += c;
    else inner += c;
  }
  if (inner !== undefined) inside.push(inner);
  return { outside, inside };
}

/** Headings made normal before: whole sheets are asked again and again which of their rows are headings. */
const normal = new Cache<string, string>("normal headings", 2000);

/** A heading as it is kept and compared: lower case, brackets off, punctuation to single blanks. */
export function normalHeading(heading: unknown): string {
  const text = String(heading ?? "");
  return normal.get(text, () =>
    brackets(text.toLowerCase())
      .outside.replace(/[._:;,/\\\-–—#]/g, " ")
      .replace(/\s+/g, " ")
      .trim(),
  );
}

/** Words that stand between a size and its unit: "Tiefe in mm", "profondeur en mm". */
const BETWEEN: ReadonlySet<string> = new Set(["in", "en"]);

/** Units that may end a heading without a bracket: a single letter may be anything, and "min" may be the least. */
const mayEnd = (text: string, { measure }: UnitText): boolean =>
  (text.replace(/\./g, "").length > 1 || text === '"' || text === "°") &&
  measure !== "time" &&
  (measure !== "money" || text.length > 2);

/** How many words a unit may have, the most first: "surface feet per minute". */
const WORDS = [4, 3, 2, 1];

/** A unit at the end of a heading, and the heading before it. */
function tail(text: string): { before: string; unit: UnitText } | undefined {
  const tokens = text.split(/[\s,;:]/);
  for (const count of WORDS) {
    const last = tokens.slice(-count).join(" ");
    const unit = unitOf(last);
    if (!unit || !mayEnd(last, unit)) continue;
    const before = tokens.slice(0, -count);
    if (BETWEEN.has(before.at(-1)!)) before.pop();
    return { before: before.join(" "), unit };
  }
  // "Depth/mm"
  const slash = text.indexOf("/");
  const last = text.slice(slash + 1).trim();
  const unit = slash < 0 ? undefined : unitOf(last);
  return unit && mayEnd(last, unit) ? { before: text.slice(0, slash), unit } : undefined;
}

/** Headings taken apart before: a table is matched again and again. */
const seen = new Cache<string, HeadingText>("headings", 4000);

/** Takes a heading apart; no keys where it is blank. */
export const headingText = (heading: string): HeadingText => seen.get(heading, () => takenApart(heading));

function takenApart(text: string): HeadingText {
  const { outside, inside } = brackets(fold(text));
  const bracketed = inside.map((content) => unitOf(content.trim())).find((unit) => unit !== undefined);
  const ended = tail(outside.trim());
  // "D (mm)" is not "Dmm"; "Avance (mm/dent)" is another feed than "Avance (mm/min)".
  const told = inside.filter((content) => unitOf(content.trim())?.measure !== "length");
  const texts = told.length > 0 ? [`${outside} ${told.join(" ")}`, outside] : [outside];
  if (ended) texts.push(ended.before);
  const whole = texts.map((text) => text.trim()).filter((text) => text !== "");
  return {
    texts: whole,
    keys: [...new Set(whole.map(compact))],
    unit: bracketed ?? ended?.unit,
    told: told.length > 0 && bracketed === undefined,
  };
}
