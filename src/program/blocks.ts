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
 * True for programs that never write a decimal point and whose coordinates are whole numbers of four digits and more:
 * they count in least increments (0.001 mm, 0.0001 in), as controls without the calculator style of input do.
 */
export function countsIncrements(text: string): boolean {
  return (
    /[XYZ] ?[+-]?\d{4,}(?!\d*\.)/i.test(text) && !/[XYZIJKR] ?[+-]?\d*\.\d*/i.test(text.replace(/\([^)\n]*\)/g, ""))
  );
}

const isDigit = (c: number) => c >= 48 && c <= 57;
const isLetter = (c: number) => (c >= 65 && c <= 90) || (c >= 97 && c <= 122);
const LETTERS = Array.from({ length: 26 }, (_, i) => String.fromCharCode(65 + i));
const POWERS = Array.from({ length: 23 }, (_, i) => 10 ** i);

/** Reads one block after the other. */
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
    return this.text.length === 0 ? 1 : this.at / this.text.length;
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
    while (i < end) {
      const c = text.charCodeAt(i);
      if (c === 32 || c === 9 || c < 32) i++;
      else if (c === 40) {
        const close = text.indexOf(")", i);
        i = close < 0 || close >= end ? end : close + 1;
      } else if (c === 59) i = end;
      else if (c === 37) i = end;
      else if (isLetter(c)) i = this.word(i, end);
      else if (c === 47) {
        block.skippable = true;
        i++;
        // the number of the skip switch
        while (i < end && isDigit(text.charCodeAt(i))) i++;
      } else if (c === 58) i = this.digits(i + 1, end);
      else if (c === 35 || c === 91 || c === 61 || c === 38 || c === 64) {
        this.refusal = { why: "variable", line: this.line, word: text.slice(i, Math.min(end, i + 12)) };
        return;
      } else if (isDigit(c) && block.count === 0) {
        // a bare number at the head is a block number without its letter
        i = this.digits(i, end);
      } else {
        let j = i + 1;
        while (j < end && text.charCodeAt(j) > 32 && !isLetter(text.charCodeAt(j))) j++;
        block.strange.push(text.slice(i, Math.min(j, i + 12)));
        i = j;
      }
      if (this.refusal !== undefined) return;
    }
  }

  private digits(i: number, end: number): number {
    let at = i;
    while (at < end && isDigit(this.text.charCodeAt(at))) at++;
    return at;
  }

  /** A letter with its number, or a name. Answers where it ends. */
  private word(i: number, end: number): number {
    const { text, block } = this;
    const letter = LETTERS[(text.charCodeAt(i) & 0xdf) - 65]!;
    let at = i + 1;
    while (at < end && (text.charCodeAt(at) === 32 || text.charCodeAt(at) === 9)) at++;
    let sign = 1;
    let c = at < end ? text.charCodeAt(at) : 0;
    if (c === 43 || c === 45) {
      if (c === 45) sign = -1;
      at++;
      while (at < end && text.charCodeAt(at) === 32) at++;
      c = at < end ? text.charCodeAt(at) : 0;
    }
    let value = 0;
    let figures = 0;
    let places = 0;
    while (at < end && isDigit(c)) {
      value = value * 10 + (c - 48);
      figures++;
      c = text.charCodeAt(++at);
    }
    if (at < end && c === 46) {
      c = text.charCodeAt(++at);
      while (at < end && isDigit(c)) {
        value = value * 10 + (c - 48);
        figures++;
        places++;
        c = text.charCodeAt(++at);
      }
      if (places > 0) value /= places <= 22 ? POWERS[places]! : 10 ** places;
    }
    if (figures === 0) return this.name(i, end);
    if (at < end && c === 44 && isDigit(text.charCodeAt(at + 1))) {
      this.refusal = { why: "decimal-comma", line: this.line, word: text.slice(i, Math.min(end, at + 4)) };
      return end;
    }
    if (at < end && c === 61) return this.assignment(i, at, end);
    if (at + 1 < end && (c === 69 || c === 101) && /[+-]/.test(text[at + 1]!) && isDigit(text.charCodeAt(at + 2))) {
      const stop = this.digits(at + 2, end);
      value *= 10 ** Number(text.slice(at + 1, stop));
      at = stop;
    }
    if (letter === "N" || letter === "O") return at;
    block.letters[block.count] = letter;
    block.values[block.count] = sign * value;
    block.count++;
    return at;
  }

  /** "R1=5" is a variable; "S2=1500" and "M1=3" speak to another spindle and are only named. */
  private assignment(i: number, equals: number, end: number): number {
    const letter = this.text[i]!.toUpperCase();
    let stop = equals + 1;
    while (stop < end && this.text.charCodeAt(stop) > 32) stop++;
    const word = this.text.slice(i, Math.min(stop, i + 12));
    if ((letter === "S" || letter === "M" || letter === "H") && /^=\d+$/.test(this.text.slice(equals, stop))) {
      this.block.strange.push(word);
      return stop;
    }
    this.refusal = { why: "variable", line: this.line, word };
    return end;
  }

  /** A letter that no number follows: a name, or a variable. */
  private name(i: number, end: number): number {
    const { text, block } = this;
    let at = i + 1;
    while (at < end && (isLetter(text.charCodeAt(at)) || isDigit(text.charCodeAt(at)) || text[at] === "_")) at++;
    const name = text.slice(i, at).toUpperCase();
    let next = at;
    while (next < end && (text.charCodeAt(next) === 32 || text.charCodeAt(next) === 45)) next++;
    const c = next < end ? text.charCodeAt(next) : 0;
    if (c === 61 && name === "T") {
      // a tool called by its name
      const quoted = /^=\s*"[^"]*"/.exec(text.slice(next, end));
      block.letters[block.count] = "T";
      block.values[block.count] = this.line;
      block.count++;
      if (quoted) return next + quoted[0].length;
      let stop = next + 1;
      while (stop < end && text.charCodeAt(stop) > 32) stop++;
      return stop;
    }
    if (STEERING.test(name) || c === 35 || c === 91 || c === 61) {
      this.refusal = { why: "variable", line: this.line, word: text.slice(i, Math.min(end, i + 12)) };
      return end;
    }
    block.strange.push(name.length > 12 ? `${name.slice(0, 11)}…` : name);
    // what a name has in brackets belongs to it
    if (c === 40) {
      const close = text.indexOf(")", next);
      return close < 0 || close >= end ? end : close + 1;
    }
    return at;
  }
}
