/**
 * Text of a program to blocks of words, one line at a time: a letter and its number, as ISO 6983 has them. Comments,
 * block numbers, program numbers and % lines are passed over; what is no word of the standard is named, never guessed.
 */

/** Why a program is not read any further, by block. */
export type Refusal =
  | { readonly why: "binary" | "empty" | "no-words" }
  | { readonly why: "long-text"; readonly characters: number; readonly most: number }
  | { readonly why: "long-block"; readonly line: number; readonly most: number }
  | { readonly why: "variable" | "decimal-comma"; readonly line: number; readonly word: string }
  | { readonly why: "turned" | "macro"; readonly line: number; readonly word: string };

/** One line of the program. The reader uses the same object again for the next one. */
export interface WordBlock {
  line: number;
  /** How many words there are; the arrays may be longer. */
  count: number;
  readonly letters: string[];
  readonly values: number[];
  /** Begins with a slash: the machine may skip it. */
  skippable: boolean;
  /** Names of more than one letter, and letters without a number. */
  readonly strange: string[];
}

/** A block of more characters than this, comments included, is no program that a person wrote or a post made. */
const MOST_IN_BLOCK = 2000;
/** Longer programs are not read: some 700,000 blocks. */
export const MOST_CHARACTERS = 20_000_000;
/** Characters looked at to tell text from something else. */
const SAMPLE = 4096;

/** Names that steer a program or compute: what it does then depends on values that are not in the text. */
const STEERING =
  /^(?:IF|ELSE|ELSIF|ENDIF|WHILE|ENDWHILE|FOR|ENDFOR|TO|DO|END|LOOP|ENDLOOP|REPEAT|UNTIL|GOTO|GOTOF|GOTOB|DEF|PROC|CALL|MCALL|CASE)\d*$/;

/** A sentence's worth of reason why the text cannot be a program, if it cannot. */
export function refusedText(text: string): Refusal | undefined {
  if (text.length > MOST_CHARACTERS) return { why: "long-text", characters: text.length, most: MOST_CHARACTERS };
  let strange = 0;
  const n = Math.min(text.length, SAMPLE);
  for (let i = 0; i < n; i++) {
    const c = text.charCodeAt(i);
    if (c === 0) return { why: "binary" };
    if ((c < 32 && c !== 9 && c !== 10 && c !== 13 && c !== 26 && c !== 3 && c !== 2) || c === 0xfffd) strange++;
  }
  if (strange > n / 50) return { why: "binary" };
  return /\S/.test(text) ? undefined : { why: "empty" };
}

/**
 * True for programs that never write a decimal point and have coordinates of four figures and more: they count in least
 * increments (0.001 mm, 0.0001 in), as controls without the calculator style of input do. Comments say nothing of it.
 */
export function countsIncrements(text: string): boolean {
  const words = text.replace(/\([^)\n\r]*\)?|;.*/g, "");
  return /[XYZ] ?[+-]?\d{4}/i.test(words) && !/[XYZIJKR] ?[+-]?\d*\./i.test(words);
}

const isDigit = (c: number) => c >= 48 && c <= 57;
const isLetter = (c: number) => (c >= 65 && c <= 90) || (c >= 97 && c <= 122);
const LETTERS = Array.from({ length: 26 }, (_, i) => String.fromCharCode(65 + i));

/**
 * Reads one block after the other. Behind the last character of a line stands its break, or nothing (NaN): neither is a
 * figure, a letter, nor a character over the space, so that what is read one by one ends there.
 */
export class BlockReader {
  readonly block: WordBlock = { line: 0, count: 0, letters: [], values: [], skippable: false, strange: [] };
  refusal: Refusal | undefined;
  private readonly text: string;
  private at = 0;
  private line = 0;

  constructor(text: string) {
    this.text = text;
    if (text.charCodeAt(0) === 0xfeff) this.at = 1;
  }

  /** Share of the text that is read. */
  get progress(): number {
    return this.text.length === 0 ? 1 : Math.min(1, this.at / this.text.length);
  }

  /** The next block, or undefined at the end and where the program is refused. */
  next(): WordBlock | undefined {
    const { text, block } = this;
    const start = this.at;
    if (this.refusal !== undefined || start >= text.length) return undefined;
    let end = start;
    const furthest = Math.min(text.length, start + MOST_IN_BLOCK + 1);
    while (end < furthest) {
      const c = text.charCodeAt(end);
      if (c === 10 || c === 13) break;
      end++;
    }
    this.line++;
    if (end - start > MOST_IN_BLOCK) {
      this.refusal = { why: "long-block", line: this.line, most: MOST_IN_BLOCK };
      return undefined;
    }
    this.at = end + (text.charCodeAt(end) === 13 && text.charCodeAt(end + 1) === 10 ? 2 : 1);
    block.line = this.line;
    block.count = 0;
    block.skippable = false;
    block.strange.length = 0;
    this.words(start, end);
    return this.refusal === undefined ? block : undefined;
  }

  private words(start: number, end: number): void {
    const { text, block } = this;
    let i = start;
    while (i < end && this.refusal === undefined) {
      const c = text.charCodeAt(i);
      if (c <= 32) i++;
      else if (c === 40) i = this.closed(i, end);
      else if (c === 59 || c === 37) i = end;
      else if (isLetter(c)) i = this.word(i, end);
      else if (c === 47) {
        block.skippable = true;
        // the number of the skip switch
        i = this.digits(i + 1);
      } else if (c === 58) i = this.digits(i + 1);
      else if (c === 35 || c === 91 || c === 61 || c === 38 || c === 64) i = this.variable(i, end);
      else if (isDigit(c) && block.count === 0) {
        // a bare number at the head is a block number without its letter
        i = this.digits(i);
      } else {
        let j = i + 1;
        while (text.charCodeAt(j) > 32 && !isLetter(text.charCodeAt(j))) j++;
        block.strange.push(text.slice(i, Math.min(j, i + 12)));
        i = j;
      }
    }
  }

  /** Where a comment ends that begins here: behind its bracket, or with the line. */
  private closed(i: number, end: number): number {
    let at = i;
    while (at < end && this.text.charCodeAt(at) !== 41) at++;
    return at + 1;
  }

  private digits(i: number): number {
    let at = i;
    while (isDigit(this.text.charCodeAt(at))) at++;
    return at;
  }

  /** Behind the characters that no space parts. */
  private solid(i: number): number {
    let at = i;
    while (this.text.charCodeAt(at) > 32) at++;
    return at;
  }

  /** What stands here needs values that are not in the text. */
  private variable(i: number, stop: number): number {
    this.refusal = { why: "variable", line: this.line, word: this.text.slice(i, Math.min(stop, i + 12)) };
    return stop;
  }

  private take(letter: string, value: number): void {
    const { block } = this;
    block.letters[block.count] = letter;
    block.values[block.count] = value;
    block.count++;
  }

  /** A letter with its number, or a name. Answers where it ends. */
  private word(i: number, end: number): number {
    const { text } = this;
    const letter = LETTERS[(text.charCodeAt(i) & 0xdf) - 65]!;
    let at = i + 1;
    while (text.charCodeAt(at) === 32 || text.charCodeAt(at) === 9) at++;
    let c = text.charCodeAt(at);
    const sign = c === 45 ? -1 : 1;
    if (c === 43 || c === 45) {
      at++;
      while (text.charCodeAt(at) === 32) at++;
      c = text.charCodeAt(at);
    }
    const first = at;
    let value = 0;
    let scale = 1;
    while (isDigit(c)) {
      value = value * 10 + (c - 48);
      c = text.charCodeAt(++at);
    }
    let figures = at - first;
    if (c === 46) {
      c = text.charCodeAt(++at);
      while (isDigit(c)) {
        value = value * 10 + (c - 48);
        scale *= 10;
        figures++;
        c = text.charCodeAt(++at);
      }
    }
    if (figures === 0) return this.name(i, end);
    if (c === 44 && isDigit(text.charCodeAt(at + 1))) {
      this.refusal = { why: "decimal-comma", line: this.line, word: text.slice(i, Math.min(end, at + 4)) };
      return end;
    }
    if (c === 61) return this.assignment(i, at);
    value /= scale;
    const power = c === 69 || c === 101 ? text.charCodeAt(at + 1) : 0;
    if ((power === 43 || power === 45) && isDigit(text.charCodeAt(at + 2))) {
      const stop = this.digits(at + 2);
      value *= 10 ** Number(text.slice(at + 1, stop));
      at = stop;
    }
    if (letter !== "N" && letter !== "O") this.take(letter, sign * value);
    return at;
  }

  /** "R1=5" is a variable; "S2=1500" and "M1=3" speak to another spindle and are only named. */
  private assignment(i: number, equals: number): number {
    const stop = this.solid(equals);
    if (!/^[SMH]/i.test(this.text[i]!) || !/^=\d+$/.test(this.text.slice(equals, stop))) return this.variable(i, stop);
    this.block.strange.push(this.text.slice(i, Math.min(stop, i + 12)));
    return stop;
  }

  /** A letter that no number follows: a name, or a variable. */
  private name(i: number, end: number): number {
    const { text, block } = this;
    let at = i + 1;
    while (isLetter(text.charCodeAt(at)) || isDigit(text.charCodeAt(at)) || text[at] === "_") at++;
    const name = text.slice(i, at).toUpperCase();
    let next = at;
    while (text.charCodeAt(next) === 32 || text.charCodeAt(next) === 45) next++;
    const c = text.charCodeAt(next);
    if (c === 61 && name === "T") {
      // a tool called by its name
      this.take("T", this.line);
      const quoted = /^=\s*"[^"]*"/.exec(text.slice(next, end));
      return quoted ? next + quoted[0].length : this.solid(next);
    }
    if (STEERING.test(name) || c === 35 || c === 91 || c === 61) return this.variable(i, end);
    block.strange.push(name.length > 12 ? `${name.slice(0, 11)}…` : name);
    // what a name has in brackets belongs to it
    return c === 40 ? this.closed(next, end) : at;
  }
}
