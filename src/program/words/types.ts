/** What a language has to say: one function for each code, so that a missing sentence does not compile. */
import type { Code, Finding } from "../findings.ts";

/** How values are written: in the row's units, with their unit. */
export interface Say {
  length(mm: number): string;
  /** A difference: with its sign. */
  change(mm: number): string;
  feed(mmPerMinute: number): string;
  rpm(value: number): string;
}

export type Sentences = {
  readonly [C in Code]: (finding: Extract<Finding, { code: C }>, say: Say) => string;
};

/** A language of the comparison. */
export interface Language {
  readonly sentences: Sentences;
  /** Where a difference is in some features of a row only. */
  some(text: string, some: number, all: number): string;
  /** Nothing was found to compare with: the table has no rows. */
  readonly noRows: string;
}
