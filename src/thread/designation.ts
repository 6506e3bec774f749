/** Thread designations as drawings write them. */

import type { Allowed, ThreadFamily } from "../allowed.ts";
import { Cache } from "../cache.ts";
import { dayLike, takenForDate } from "../calendar.ts";
import { TradeError } from "../errors.ts";
import { readMetric } from "./metric-designation.ts";
import { readPipe } from "./pipe.ts";
import type { Thread } from "./types.ts";
import { readUnified } from "./unified-designation.ts";

const KNOWN: Allowed = { is: "thread-names" };

const notCovered = (family: ThreadFamily): Allowed => ({ is: "thread-not-covered", family });
/** Other thread systems: recognised, so that the answer says "not covered" and not "no such thread". */
const NOT_COVERED: readonly (readonly [RegExp, Allowed])[] = [
  [/NPS|NPT|PTF|DRYSEAL/, notCovered("american pipe")],
  [/ACME|STUB/, notCovered("acme")],
  [/BUTT|^S\s*\d+\s*X/, notCovered("buttress")],
  [/^TR\s*\d/, notCovered("trapezoidal")],
  [/^R[CP]?\s*\d.*\/|^R[CP]?\s*\d$|BSPT/, notCovered("sealed pipe")],
  [/BSP/, { is: "pipe-thread-name" }],
  [/BSW|BSF|WHIT|^W\s*\d|\bBA\b/, notCovered("whitworth")],
  [/^RD\s*\d/, notCovered("round")],
  [/^PG\s*\d/, notCovered("conduit")],
  [/^MJ\s*\d/, notCovered("mj")],
  [/UNM/, notCovered("miniature")],
  [/START|PH\s*\d|P\s*\d/, notCovered("several starts")],
  [/[0-9][GH]\s*\/\s*[0-9][EFGH]|[123]A\s*\/\s*[123]B|[123]B\s*\/\s*[123]A/, { is: "one-thread" }],
];

/** What is allowed when all but the last word of a designation is a thread, so that the last must be meant as its class. */
function noSuchClass(clean: string): Allowed | undefined {
  const match = /^(.*[^\s-])(?:\s*-\s*|\s+)([A-Za-z]{1,2}\d{0,2}|\d{1,2}[A-Za-z]{1,2}|\d)$/.exec(clean);
  if (!match) return undefined;
  const [, head = "", last = ""] = match;
  try {
    const thread =
      readUnified(head.toUpperCase(), "", head) ?? readMetric(head, "", head) ?? readPipe(head.toUpperCase(), "", head);
    return thread && { is: "thread-class", standard: thread.standard, threadClass: last };
  } catch (error) {
    if (error instanceof TradeError) return undefined;
    throw error;
  }
}

const FRACTIONS: Readonly<Record<string, string>> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** True for a designation that there is. */
function isThread(text: string): boolean {
  try {
    return parseThread(text) !== undefined;
  } catch (error) {
    if (error instanceof TradeError) return false;
    throw error;
  }
}

const read = new Cache<string, Thread>("thread designations", 4000);

/**
 * Thread that a designation means. Unified (UNC, UNF, UNEF, 4- to 32-UN, UNS, with UNR and UNJ forms), metric (M) and G.
 *
 *   No class: internal, 2B or 6H (M1 to M1.4 5H, UNJ 3B, UNR 2A); G without a letter: internal.
 *   Metric class letters keep their case: 6H is internal, 6h external.
 *
 * @param text - designation [-]
 * @param parameter - name of the argument for errors [-]
 * @returns the thread, sizes in its own unit [-]
 * @throws TradeError "blank" when nothing came; "unknown" when there is no such thread, with the nearest that exist
 * @source ASMEB11 ISO261 ISO965 ISO228
 * @example
 * parseThread("1/2-13 UNC-2B").major //=> 0.5
 * parseThread("M6").pitch //=> 1
 */
export function parseThread(text: string, parameter = "thread"): Thread {
  return read.get(text, () => Object.freeze(threadOf(text, parameter)));
}

function threadOf(text: string, parameter: string): Thread {
  const clean = text
    .trim()
    .replace(/\s+/g, " ")
    .replace(/[‐‑‒–—−]/g, "-")
    .replace(/[×✕⨯]/g, "x")
    .replace(/(\d?)\s*([¼½¾⅛⅜⅝⅞])/g, (_, whole: string, mark: string) => `${whole && `${whole} `}${FRACTIONS[mark]}`)
    .replace(/⁄/g, "/");
  if (clean === "") throw new TradeError("blank", parameter, text, KNOWN);
  const day = dayLike(Number(clean));
  if (day !== undefined) throw new TradeError("unknown", parameter, text, takenForDate(day, isThread));
  const upper = clean.toUpperCase();
  const other = NOT_COVERED.find(([pattern]) => pattern.test(upper));
  if (other) throw new TradeError("unknown", parameter, text, other[1]);
  const thread =
    readUnified(upper, parameter, text) ?? readMetric(clean, parameter, text) ?? readPipe(upper, parameter, text);
  if (thread === undefined) throw new TradeError("unknown", parameter, text, noSuchClass(clean) ?? KNOWN);
  return thread;
}
