/** Finds thread designations in drawing text. What a designation means is left to `parseThread`. */
import { TradeError } from "../errors.ts";
import { parseThread } from "../thread/designation.ts";
import type { Remark } from "./remarks/remark.ts";
import type { ThreadToken } from "./types.ts";

type Found = ThreadToken & { readonly at: number; readonly end: number };

/** Fractions of one character. */
export const VULGAR: Readonly<Record<string, string>> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

const NUMBER = String.raw`\d*[.,]?\d+`;
const HAND = String.raw`(?:\s*-?\s*(LH|RH)(?![A-Za-z]))?`;
const SIZE = String.raw`(?:(?:#|NO\.?)\s*\d{1,2}|\d{1,2}(?:\s*-\s*|\s+)\d{1,2}/\d{1,2}|\d{1,2}/\d{1,2}|\d?[¼½¾⅛⅜⅝⅞]|\d?\.\d{2,4}|\d{1,2})`;

const METRIC = /(M)\s?(\d+(?:[.,]\d+)?)(?![\d.,]*[A-WYZ°])/iy;
const METRIC_PITCH = new RegExp(
  String.raw`\s*[x*-]\s*(${NUMBER})(?!\d|[.,]\d|[DEFGHX]|\s*(?:[x*]\s?D|°|deg|mm|"|PL|HOLES))`,
  "iy",
);
const METRIC_CLASS = /(?:\s*-\s*|\s*)(\d[EFGH](?:\d[EFGH])?)(?![A-Za-z\d])/iy;
const DEPTH_FOLLOWS = /\s*(?:DEEP|DEPTH|DP|TIEF)/iy;
const METRIC_HAND = new RegExp(HAND, "iy");
const UNIFIED = new RegExp(
  String.raw`(${SIZE})\s*"?\s*-\s*(\d{1,2}(?:\.5|\s+1/2)?)(?!\d|[.,]\d|/\d|"|\s*(?:°|mm))(?:\s*-?\s*(UN[A-Z]{0,3}|N[CFS]|NEF)(?![A-Za-z]))?(?:\s*-?\s*([123]\s?[AB])(?![A-Za-z\d]))?${HAND}`,
  "iy",
);
const G_THREAD = new RegExp(
  String.raw`G\s?(?:\d-)?(?:\d{1,2}/\d{1,2}|\d)"?(?:\s?[AB](?![A-Za-z]))?${HAND}(?![\dA-Za-z]|[.,]\d)`,
  "iy",
);
const OTHER = [
  new RegExp(
    String.raw`(?:TR\s?\d+(?:\s*x\s*\d+)?|R[CP]?\s?\d{1,2}/\d{1,2}|MJ\s?\d+(?:\s*x\s*${NUMBER})?|PG\s?\d+|RD\s?\d+)(?![A-Za-z\d/])`,
    "iy",
  ),
  new RegExp(
    String.raw`(?:\d-)?${SIZE}"?(?:\s*-\s*\d{1,2}(?:\.5)?)?\s*-?\s*(?:NPTF|NPT|NPSM|NPSF|NPS|ANPT|PTF|BSPT|BSPP|BSP|BSW|BSF|(?:STUB\s+)?ACME|BUTT)(?:\s*-?\s*\d[A-Z])?(?![A-Za-z])`,
    "iy",
  ),
];

const match = (expression: RegExp, text: string, at: number) => {
  expression.lastIndex = at;
  return expression.exec(text);
};

/** The thread designation that starts at this place, if one does. A coarser look than the standards': errors are kept. */
export function scanThread(text: string, at: number, afterSize: boolean): Found | undefined {
  const before = at > 0 ? text[at - 1]! : " ";
  if (/[A-WYZa-wyz\d]/.test(before)) return undefined;
  if (!/[\d.#GMNPRT¼½¾⅛⅜⅝⅞]/i.test(text[at]!)) return undefined;
  for (const expression of OTHER) {
    const other = match(expression, text, at);
    if (other) return known(other[0], at, at + other[0].length);
  }
  const g = match(G_THREAD, text, at);
  // "⌀16 G6" and "H7/g6" are tolerance classes.
  const whole = g !== null && !g[0].includes("/");
  if (g && !(whole && (afterSize || g[0].startsWith("g")))) return known(g[0], at, at + g[0].length);
  return metric(text, at) ?? unified(text, at);
}

/** `M8×20` is a length behind the size, not a pitch: no standard pitch exceeds a third of its diameter. */
const PITCH_SHARE = 1 / 3;

function metric(text: string, at: number): Found | undefined {
  const size = match(METRIC, text, at);
  if (!size) return undefined;
  const major = size[2]!.replace(",", ".");
  let end = at + size[0].length;
  let designation = `M${major}`;
  const pitch = match(METRIC_PITCH, text, end);
  if (pitch && Number(pitch[1]!.replace(",", ".")) <= Number(major) * PITCH_SHARE) {
    const fine = `M${major}x${pitch[1]!.replace(",", ".")}`;
    const exists = known(fine, at, end).error === undefined;
    const cross = !pitch[0].includes("-");
    if (exists || (cross && !match(DEPTH_FOLLOWS, text, end + pitch[0].length))) {
      designation = fine;
      end += pitch[0].length;
    }
  }
  let note: Remark | undefined;
  const threadClass = match(METRIC_CLASS, text, end);
  if (threadClass) {
    // A text all in small letters does not tell 6H from 6h: a hole is the usual case.
    const small = size[1] === "m" && threadClass[1] !== threadClass[1]!.toUpperCase();
    if (small) note = { code: "small-letters", text: text.slice(at, end + threadClass[0].length) };
    designation += `-${small ? threadClass[1]!.toUpperCase() : threadClass[1]!}`;
    end += threadClass[0].length;
  }
  const hand = match(METRIC_HAND, text, end);
  if (hand?.[1]) {
    designation += `-${hand[1].toUpperCase()}`;
    end += hand[0].length;
  }
  return { ...known(designation, at, end), note };
}

function unified(text: string, at: number): Found | undefined {
  const found = match(UNIFIED, text, at);
  if (!found) return undefined;
  const series = found[3]?.toUpperCase();
  const old = series?.startsWith("N") ? series : undefined;
  const written = old ? found[0].replace(new RegExp(old, "i"), `U${old}`) : found[0];
  const token = known(written, at, at + found[0].length);
  // Two numbers with a dash are a thread only where the standard has them, a series or class, or a number sign.
  if (token.error && !series && !found[4] && !found[1]!.startsWith("#")) return undefined;
  return old ? { ...token, note: { code: "older-name", old } } : token;
}

function known(written: string, at: number, end: number): Found {
  const designation = written
    .trim()
    .replace(/(\d?)([¼½¾⅛⅜⅝⅞])/, (_, whole: string, f: string) => `${whole && `${whole}-`}${VULGAR[f]}`);
  try {
    const thread = parseThread(designation);
    return { kind: "thread", designation: thread.designation, thread, at, end };
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    return { kind: "thread", designation, error, at, end };
  }
}
