/** Findings as lines for a person: block, row, severity, code and a sentence in the row's units. */

import { fromCanonical, symbol, type Units } from "../units.ts";
import { tidy } from "../words/say.ts";
import type { Finding, Severity } from "./findings.ts";
import { ENGLISH } from "./words/en.ts";
import type { Language, Say } from "./words/types.ts";

export interface ReportLine {
  /** Line of the program, from 1. */
  readonly block: number | undefined;
  readonly row: string;
  readonly severity: Severity;
  /** Stable code; empty for a row in which nothing differs. */
  readonly code: string;
  readonly text: string;
}

/** How lengths and feeds are written for a row. */
function saying(units: Units): Say {
  const length = (mm: number) =>
    Number.isNaN(mm)
      ? "?"
      : `${tidy(fromCanonical(mm, "length", units), units === "in" ? 4 : 3)} ${symbol("length", units)}`;
  return {
    length,
    change: (mm) => `${mm > 0 ? "+" : ""}${length(mm)}`,
    feed: (v) => `${tidy(fromCanonical(v, "feed", units), units === "in" ? 1 : 0)} ${symbol("feed", units)}`,
    rpm: (v) => `${Math.round(v)} rpm`,
  };
}

/** Sentences for findings; what belongs to no row is written in `units`. */
export function report(findings: readonly Finding[], units: Units, language: Language = ENGLISH): ReportLine[] {
  return findings.map((finding) => {
    const say = saying(finding.row?.units ?? units);
    const sentence = language.sentences[finding.code] as (f: Finding, say: Say) => string;
    const text = sentence(finding, say);
    const [some, all] = finding.count ?? [0, 0];
    return {
      block: finding.line,
      row: finding.row?.name ?? "",
      severity: finding.severity,
      code: finding.code === "same" ? "" : finding.code,
      text: some < all ? language.some(text, some, all) : text,
    };
  });
}
