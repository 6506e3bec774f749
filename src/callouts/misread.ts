/**
 * Faults of reading (by eye, camera or keyboard) that leave no doubt: letters for figures inside a number, letters for
 * the diameter sign, a blank inside a number behind the diameter sign. Whatever may mean two things stays as it is.
 */
import { Mapped } from "./mapped.ts";
import type { Remark } from "./remarks/remark.ts";

/** What stands in for the diameter sign: names, codes of drawing text, look-alikes. */
const SIGN = /%%c|Ã˜|θ(?=\s?[\d.,])|(?<![A-Za-z])phi(?=\s?[\d.,])|(?<=^|[\sx*-])O(?=\d)/gi;

const FIGURES = "[0-9OoIl]";
/** A number with letters in it, or letters where only a number can stand. */
const NUMBER = new RegExp(
  [
    // With a figure, or behind a point or a sign of a number.
    `(?<![A-Za-z0-9])(?=[OoIl]*[0-9])${FIGURES}*[OoIl]${FIGURES}*(?![A-Za-wyz])`,
    `(?<=[⌀↧Mm#xX±])(?<![A-Za-z][MmxX])${FIGURES}+(?![A-Za-wyz])`,
    `(?<=(?:^|[\\s⌀±+\\-x(0-9])[.,])${FIGURES}+(?![A-Za-wyz])`,
    // l/4, lO-24 UNC, lOX ⌀, l2X ⌀, l.5
    "(?<![A-Za-z0-9])[lI](?=/[0-9])",
    "(?<![A-Za-z0-9])[lI][O0o](?=\\s?-\\s?[0-9OoIl]{2}\\s?(?:UN|N[CF]))",
    "(?<![A-Za-z0-9])[lI][O0o](?=\\s?[xX*]\\s?⌀)",
    "(?<=[xX]\\s?)[lI](?=[.,][0-9])",
  ].join("|"),
  "g",
);
const FIGURE: Readonly<Record<string, string>> = { O: "0", o: "0", I: "1", l: "1" };

/** A blank behind the point of a size, or spaced letters of THRU. */
const SPLIT = /(?<=⌀\s?)(\d*)\s?([.,])\s(?=\d)|(?<![A-Za-z])T\s?H\s?R\s?U(?![A-Za-z])/gi;

export interface Mended {
  readonly line: Mapped;
  /** What was put right, for the remark. */
  readonly notes: readonly Remark[];
}

/** The line with its plain faults put right, and what that was. */
export function mend(original: string): Mended {
  const notes: Remark[] = [];
  const say = (was: string, now: string) => {
    if (was.replace(/\s/g, "").toUpperCase() !== now.toUpperCase()) notes.push({ code: "read-as", was, now });
    return now;
  };
  let line = Mapped.of(original).replace(/[χХх]/g, () => "x");
  line = line.replace(SIGN, ([was]) => say(was!, "⌀"));
  line = line.replace(NUMBER, ([was]) =>
    /[OoIl]/.test(was!)
      ? say(
          was!,
          was!.replace(/[OoIl]/g, (c) => FIGURE[c]!),
        )
      : was!,
  );
  line = line.replace(SPLIT, ([was]) => {
    const now = was!.replace(/\s/g, "");
    if (/^[\d.,]/.test(now)) notes.push({ code: "read-as", was: was!, now });
    return now;
  });
  return { line, notes };
}
