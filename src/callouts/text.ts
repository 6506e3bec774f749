/**
 * Drawing text to tokens: numbers, quantities, threads, tolerances, symbols and the plain-keyboard words for them.
 * Symbols are those of ASME Y14.5-2018 and ISO 129-1. Every character but spaces belongs to a token.
 * @source ASMEY145 ISO129
 */

import { drillNamed } from "../drill/sizes.ts";
import { TradeError } from "../errors.ts";
import { scanThread, VULGAR } from "./thread.ts";
import type { Content, Mark, Size, Token } from "./types.ts";
import { LANGUAGES } from "./words/index.ts";

const NUMBER = String.raw`(?!0\d)(?:\d+[.,]\d+|\d+\.(?!\d)|\.\d+|(?<=[⌀↧±x]\s?),\d+|\d+)`;
const COUNT_WORDS = ["ONE", "TWO", "THREE", "FOUR", "FIVE", "SIX", "SEVEN", "EIGHT", "NINE", "TEN", "ELEVEN", "TWELVE"];
const HOW_MANY = String.raw`(\d{1,4}|${COUNT_WORDS.join("|")})`;
const LETTER = "A-Za-zÀ-ÿ";
const COUNTED = LANGUAGES.flatMap((l) => l.counted).map((w) =>
  /[a-z]/i.test(w) ? `(?:${w})(?![${LETTER}])` : `(?:${w})`,
);
const PLACES = String.raw`(?:EQ\S*\s+SP\S*\s+)?(?:${COUNTED.join("|")})\.?`;
const QUANTITY = LANGUAGES.flatMap((l) => l.quantity ?? []).join("|");
const FILLERS = LANGUAGES.flatMap((l) => l.fillers ?? []).join("|");

/**
 * Number text to its value; a leading point is inch practice, a decimal comma metric practice. A leading comma is a
 * leading point read wrongly: metric practice writes the zero.
 */
function readNumber(text: string): Size {
  const value = Number(text.replace(",", ".").replace(/\.$/, ""));
  return { value, tells: /^[.,]/.test(text) ? "in" : text.includes(",") ? "mm" : undefined };
}

function readCount(text: string): number {
  const word = COUNT_WORDS.indexOf(text.toUpperCase());
  return word < 0 ? Number(text) : word + 1;
}

type Make = (match: RegExpExecArray, context: Context) => Content | undefined;
interface Context {
  /** Nothing but separators, fillers and quantities since the last separator. */
  readonly fresh: boolean;
  readonly previous: Content | undefined;
  readonly text: string;
  readonly at: number;
  /** Nothing but spaces before it on the line. */
  readonly first: boolean;
}
/** Patterns of words need not be tried on figures and signs. */
type Pattern = readonly [expression: RegExp, make: Make, letters?: boolean];

const pattern = (source: string, make: Make): Pattern => [new RegExp(source, "iy"), make];
const word = (source: string, mark: Mark): Pattern => {
  const latin = /[a-z]/i.test(source.replace(/\\[a-z]/gi, ""));
  const [expression, make] = pattern(latin ? `(?:${source})(?![${LETTER}])` : `(?:${source})`, () => ({
    kind: "mark",
    mark,
  }));
  return [expression, make, !/(?:^|\|)\d/.test(source)];
};
const counted = (kind: "times" | "count", text: string): Content | undefined => {
  const count = readCount(text);
  return count >= 1 ? { kind, count } : undefined;
};
const loose = (content: Content | undefined): Content | undefined =>
  content?.kind === "count" ? { ...content, loose: true } : content;
const afterSign = (previous: Content | undefined): boolean =>
  previous?.kind === "mark" &&
  ["diameter", "diameter word", "depth symbol", "depth", "by", "circle"].includes(previous.mark);
const atStart =
  (kind: "times"): Make =>
  (m, { fresh }) =>
    fresh ? counted(kind, m[1]!) : undefined;

const SUFFIX = String.raw`\s*(mm\b|millimet(?:er|re)s?\b|"|''|inch(?:es)?\b|in\b\.?(?!\s*(?:\d|the\b|all\b|both\b|an?\b)))`;

const BEFORE_FIT = new Set<Mark | undefined>(["through", "diameter word", "drill", "ream", "bore"]);
const markOf = (content: Content | undefined): Mark | undefined =>
  content?.kind === "mark" ? content.mark : undefined;

const PATTERNS: readonly Pattern[] = [
  // What a hole is called at the head of its line: "HOLE 3:", "Pos 10", "A1".
  pattern(
    String.raw`(?:(?:HOLE|POS|ITEM|FEATURE|OP)\b\.?\s*\d{1,3}|[ABD-FHJKLN-QS-Z]\d{1,2})(?:\s*[:.)]|(?=\s+(?:⌀|\d+\s*x|M\d|\()))`,
    (_, { first }) => (first ? { kind: "filler" } : undefined),
  ),
  // A depth in diameters: 2D, 1.5×D.
  pattern(String.raw`(${NUMBER})\s?[x*]?\s?D(?![${LETTER}])(?!\.)`, (m, { previous }) =>
    previous === undefined ? undefined : { kind: "multiple", factor: readNumber(m[1]!).value },
  ),
  // A zero in front of a figure is a diameter sign read wrongly, or no number at all.
  pattern(String.raw`0\d[\d.,]*`, () => ({ kind: "unknown" })),
  // Quantities that stand before what they count: 4X, (4), 4-M6, 4 ⌀5, X4.
  pattern(String.raw`\(\s*(\d{1,4})\s*[x*]?\s*\)(?!\s*$)`, atStart("times")),
  pattern(String.raw`${HOW_MANY}\s*[x*](?=\s*(?:[⌀↧⌴⌵#("M'G]|R?\d*\.\d|[a-z]))`, atStart("times")),
  pattern(String.raw`(\d{1,4})\s*[x*](?=\s+\d)(?!\s+${NUMBER}\s*(?:°|deg))`, atStart("times")),
  pattern(String.raw`(\d{1,3})\s*[x*](?=\d+(?:/\d|-\d|[.,]\d))(?!${NUMBER}\s*(?:°|deg))`, atStart("times")),
  pattern(String.raw`(\d{1,3})\s*-\s*(?=M\s?\d|⌀|#\s*\d)`, atStart("times")),
  pattern(String.raw`(\d{1,3})\s+(?=⌀|M\s?\d|#\s*\d|\d+/\d+\s*-\s*\d)`, atStart("times")),
  pattern(String.raw`[x*]\s*(\d{1,3})(?=\s+[⌀M#])`, atStart("times")),
  // Quantities that stand behind: 2 PLACES, 4 HOLES, QTY 4, (4X), 6 EQ SP.
  pattern(String.raw`(?:IN\s+|AT\s+)?\(?\s?${HOW_MANY}\s?x?\s?\)?\s?${PLACES}`, (m) =>
    m[0].includes("(") === m[0].includes(")") ? counted("count", m[1]!) : undefined,
  ),
  pattern(String.raw`(?:${QUANTITY})(?![${LETTER}])\.?\s*[:=-]?\s*(\d{1,4})`, (m) => counted("count", m[1]!)),
  pattern(String.raw`\(\s?(\d{1,4})\s?x\s?\)\s*$`, (m) => counted("count", m[1]!)),
  pattern(String.raw`(\d{1,4})\s*x(?=\s*(?:[;,]|$))`, (m) => counted("count", m[1]!)),
  pattern(String.raw`\(\s*(\d{1,4})\s*\)\s*$`, (m) => loose(counted("count", m[1]!))),
  pattern(String.raw`(\d{1,4})\s+(?=EQ\S*\s*SP)`, (m, { previous }) =>
    afterSign(previous) ? undefined : loose(counted("count", m[1]!)),
  ),
  // Drills by their names: #7, NO. 7 DRILL, LETTER F, F DRILL.
  pattern(String.raw`(?:#\s*|(?:NO|NUMBER)\b\.?\s*)(\d{1,2})(?!\d|\.\d|\s*-\s*\d)`, (m) => drillToken(`#${m[1]}`)),
  pattern(String.raw`(?:LETTER|LTR\.?)\s+([A-Z])(?![A-Z])`, (m) => drillToken(m[1]!)),
  pattern(String.raw`["']([A-Z])["'](?=\s+DRILL)`, (m) => drillToken(m[1]!)),
  pattern(String.raw`([B-Z])(?=\s?\))`, (m, { text, at, previous }) =>
    text[at - 1] === "(" && previous?.kind === "separator" ? drillToken(m[1]!) : undefined,
  ),
  pattern(String.raw`([A-Z])(?=\s+DRILL)`, (m) => (/[B-Z]/.test(m[1]!) ? drillToken(m[1]!) : undefined)),
  // Tolerances and limits.
  pattern(String.raw`(?:±|\+\s*/\s*-)\s*(${NUMBER})`, (m) => {
    const upper = readNumber(m[1]!);
    return { kind: "tolerance", upper, lower: { ...upper, value: -upper.value } };
  }),
  pattern(
    String.raw`([+-])\s*(${NUMBER})(?!\d)(?:\s*[/,]?\s*(?=[+-])|\s*[/,]\s*|\s+)([+-]?)\s*(${NUMBER})(?!\d|[.,]\d)`,
    (m, { previous }) => {
      if (m[3] === "" && Number(m[4]!.replace(",", ".")) !== 0) return undefined;
      const after = previous?.kind === "mark" ? previous.mark : previous?.kind;
      if (!["length", "fit", "separator", "through"].includes(after ?? "")) return undefined;
      const signed = (sign: string, text: string) => {
        const size = readNumber(text);
        return { ...size, value: sign === "-" ? -size.value : size.value };
      };
      const pair = [signed(m[1]!, m[2]!), signed(m[3]!, m[4]!)].sort((a, b) => a.value - b.value);
      return { kind: "tolerance", lower: pair[0]!, upper: pair[1]! };
    },
  ),
  // One side alone, its other side on the next line or not written: "+.0005", "-.0000".
  pattern(String.raw`([+-])\s*(${NUMBER})(?!\d|\s*(?:x|°|DEEP|DP|-))`, (m, { previous, first }) => {
    const size = readNumber(m[2]!);
    const behind = previous?.kind === "length" ? previous.size.value : previous?.kind === "fit" || first ? 1e6 : 0;
    const isDecimal = /[.,]/.test(m[2]!) || size.value === 0;
    if (!isDecimal || size.value > behind / 10) return undefined;
    const none = { value: 0 };
    return m[1] === "-"
      ? { kind: "tolerance", half: true, lower: { ...size, value: -size.value || 0 }, upper: none }
      : { kind: "tolerance", half: true, lower: none, upper: size };
  }),
  pattern(String.raw`0\s*/\s*-\s*(${NUMBER})`, (m, { previous }) => {
    if (previous?.kind !== "length" && previous?.kind !== "separator") return undefined;
    const size = readNumber(m[1]!);
    return { kind: "tolerance", lower: { ...size, value: -size.value }, upper: { value: 0 } };
  }),
  pattern(String.raw`(\d*[.,]\d+)\s*(?:-|/|\bTO\b)\s*(\d*[.,]\d+)(?!\d|[.,]\d|\s*(?:°|deg))`, (m) => {
    const [one, other] = [readNumber(m[1]!), readNumber(m[2]!)];
    const [low, high] = one.value <= other.value ? [one, other] : [other, one];
    if (!(low.value > 0 && low.value > 0.8 * high.value)) return undefined;
    const size = { value: (low.value + high.value) / 2, tells: low.tells, limits: [low.value, high.value] as const };
    return { kind: "length", size };
  }),
  // Tolerance class right behind a size: 12 H7, 12H7, 12 H7/g6 (the shaft of the pair is left standing).
  pattern(String.raw`(JS|[A-HJKMNPR-V])(\d{1,2})(?!\d|[.,]\d|[a-z])`, (m, { previous }) =>
    previous?.kind === "length" || previous?.kind === "filler" || BEFORE_FIT.has(markOf(previous))
      ? { kind: "fit", text: m[0] }
      : undefined,
  ),
  // Angles, fractions, numbers.
  pattern(String.raw`(${NUMBER})\s*(?:°|DEG(?:REES?)?\b\.?)`, (m) => ({
    kind: "angle",
    degrees: readNumber(m[1]!).value,
  })),
  pattern(String.raw`(?:(\d{1,2})(?:\s*-\s*|\s+)?)?([¼½¾⅛⅜⅝⅞])(?:${SUFFIX})?`, (m) => fraction(m[1], VULGAR[m[2]!]!)),
  pattern(String.raw`(?:(\d{1,2})(?:\s*-\s*|\s+))?(\d{1,3}\s?/\s?\d{1,3})(?!\d|[.,]\d)(?:${SUFFIX})?`, (m) =>
    fraction(m[1], m[2]!),
  ),
  pattern(String.raw`\d+(?=,\d+\s*x?\s*${PLACES})`, (m) => ({ kind: "length", size: readNumber(m[0]) })),
  pattern(`(${NUMBER})(?:${SUFFIX})?`, (m) => {
    const size = readNumber(m[1]!);
    const units = m[2] === undefined ? undefined : /^m/i.test(m[2]) ? "mm" : "in";
    return Number.isFinite(size.value) ? { kind: "length", size: { ...size, units } } : undefined;
  }),
  // Symbols.
  pattern(String.raw`⌴\s*SF\b`, () => ({ kind: "mark", mark: "spotface" })),
  ...(
    [
      ["⌀", "diameter"],
      ["↧", "depth symbol"],
      ["⌴", "counterbore"],
      ["⌵", "countersink"],
    ] as const
  ).map(([symbol, mark]) => pattern(symbol, () => ({ kind: "mark", mark }))),
  pattern(String.raw`[x*](?=\s*(?:[.\d⌀↧]|$))`, () => ({ kind: "mark", mark: "by" })),
  // Words.
  ...LANGUAGES.flatMap((l) => l.marks).map(([source, mark]) => word(source, mark)),
  // What carries no meaning of its own between these.
  pattern(String.raw`(?:${FILLERS})(?![${LETTER}\d])|&`, () => ({ kind: "filler" })),
  pattern(String.raw`[,;:()\[\]|/\\.+-]`, (m) => ({ kind: "separator", sign: m[0] })),
  pattern(String.raw`[${LETTER}]+(?![\d])|[^\s,;()]+`, () => ({ kind: "unknown" })),
];

function drillToken(name: string): Content | undefined {
  try {
    const drill = drillNamed(name);
    return { kind: "length", size: { value: drill.diameter / 25.4, tells: "in" }, drill: drill.name };
  } catch (error) {
    if (error instanceof TradeError) return undefined;
    throw error;
  }
}

/** Inch fraction as the trade writes them: bottom a power of two to 128, top odd. */
function fraction(whole: string | undefined, text: string): Content | undefined {
  const [top = Number.NaN, bottom = Number.NaN] = text.split("/").map(Number);
  if (![2, 4, 8, 16, 32, 64, 128].includes(bottom) || top % 2 === 0 || top > bottom) return undefined;
  return { kind: "length", size: { value: Number(whole ?? 0) + top / bottom, units: "in" } };
}

const FRESH = new Set(["separator", "filler", "times"]);

/** Tokens of one line of plain text (see `plainText`). */
export function tokensOf(text: string): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  for (;;) {
    while (text[at] === " ") at++;
    if (at >= text.length) return tokens;
    const previous = tokens[tokens.length - 1];
    const fresh =
      previous === undefined || FRESH.has(previous.kind) || (tokens.length === 1 && markOf(previous) === "typical");
    const first = previous === undefined;
    const found = scanThread(text, at, previous?.kind === "length") ?? firstOf({ text, at, fresh, previous, first });
    tokens.push(found);
    at = found.end;
  }
}

/** Longer or more than any workpiece: not a size. */
const LARGEST = 1e6;
function sane(content: Content): boolean {
  if (content.kind === "length") return content.size.value < LARGEST;
  return content.kind !== "tolerance" || (content.upper.value < LARGEST && content.lower.value > -LARGEST);
}

function firstOf(context: Context): Token {
  const { text, at } = context;
  const letter = /[^\s\d.,;:()[\]|/+±#⌀↧⌴⌵-]/.test(text[at]!);
  for (const [expression, make, letters] of PATTERNS) {
    if (letters && !letter) continue;
    expression.lastIndex = at;
    const match = expression.exec(text);
    const content = match && match[0].length > 0 ? make(match, context) : undefined;
    if (content && sane(content)) return { ...content, at, end: at + match![0].length };
  }
  return { kind: "unknown", at, end: at + (text.codePointAt(at)! > 0xffff ? 2 : 1) };
}
