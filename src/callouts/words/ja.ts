/** Japanese words of callouts (JIS practice; from memory). */
import type { Words } from "./words.ts";

export const JA: Words = {
  marks: [
    ["通し|貫通", "through"],

    ["深ざぐり|深ザグリ|ザグリ|座ぐり|座グリ", "counterbore"],
    ["皿もみ|皿モミ|皿ザグリ", "countersink"],
    ["深さ|深", "depth"],
    ["キリ|きり|ドリル", "drill"],
    ["リーマ", "ream"],
    ["タップ", "tap"],
    ["等分|等配", "equally"],
  ],
  counted: ["[箇個か]所|[ヶカケ]所|個|ヶ", "穴"],
};
