/** Remarks as the text that a row carries. */
import type { Remark } from "./remark.ts";
import type { Sentences } from "./types.ts";

/** One remark. */
export const said = (remark: Remark, sentences: Sentences): string =>
  (sentences[remark.code] as (remark: Remark) => string)(remark);

/** Remarks one after the other; what would be said twice is said once. */
export const allSaid = (remarks: readonly Remark[], sentences: Sentences): string =>
  [...new Set(remarks.map((remark) => said(remark, sentences)))].join("; ");
