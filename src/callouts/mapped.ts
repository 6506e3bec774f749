/** A line of text that is put right bit by bit and still knows where each of its characters was pasted. */

/** One character for one: signs that mean the same. */
const SAME: readonly (readonly [RegExp, string])[] = [
  [/[\s\u00a0\u2000-\u200b\u202f\u3000\ufeff]/g, " "],
  [/[‐‑‒–—−]/g, "-"],
  [/[×✕⨯]/g, "x"],
  [/[”″“]/g, '"'],
  [/[’′‘`]/g, "'"],
  [/[⁄∕\\]/g, "/"],
  [/[º˚]/g, "°"],
  [/[ØøΦφϕ∅]/g, "⌀"],
  [/[⤓↓]/g, "↧"],
  [/⊔/g, "⌴"],
  [/（/g, "("],
  [/）/g, ")"],
];

export class Mapped {
  private constructor(
    readonly text: string,
    /** Place in the pasted line of each character. */
    private readonly from: readonly number[],
  ) {}

  /** The signs made one, runs of blanks made one blank. */
  static of(line: string): Mapped {
    const same = SAME.reduce((text, [pattern, to]) => text.replace(pattern, to), line);
    const from: number[] = [];
    let text = "";
    for (let i = 0; i < same.length; i++) {
      if (same[i] === " " && (text === "" || text.endsWith(" "))) continue;
      text += same[i];
      from.push(i);
    }
    return new Mapped(text.trimEnd(), from);
  }

  /** Every match of a global pattern in other words; a new character stands where its match stood. */
  replace(pattern: RegExp, to: (match: RegExpExecArray) => string): Mapped {
    let text = "";
    let done = 0;
    const from: number[] = [];
    for (const match of this.text.matchAll(pattern)) {
      const at = match.index;
      const put = to(match);
      text += this.text.slice(done, at) + put;
      from.push(...this.from.slice(done, at));
      const last = match[0].length - 1;
      for (let i = 0; i < put.length; i++) from.push(this.from[at + Math.min(i, last)]!);
      done = at + match[0].length;
    }
    if (done === 0) return this;
    return new Mapped(text + this.text.slice(done), [...from, ...this.from.slice(done)]);
  }

  /** Place in the pasted line of a stretch of this text. */
  stretch(at: number, end: number): { at: number; end: number } {
    return { at: this.from[at]!, end: this.from[end - 1]! + 1 };
  }
}
