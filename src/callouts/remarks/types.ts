/** What a language has to say of callouts: one function for each code, so that a missing sentence does not compile. */
import type { Remark, RemarkCode } from "./remark.ts";

export type Sentences = {
  readonly [C in RemarkCode]: (remark: Extract<Remark, { code: C }>) => string;
};
